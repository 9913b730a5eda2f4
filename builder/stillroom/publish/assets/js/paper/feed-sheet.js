// A sheet that shows by how many millimetres a printer misses, as printing/templates/feed_sheet.typ: two
// long lines at a known distance from the paper's edges, moved by what the printer is already told.

import SAID from "../../data/said/paper-feed.js";
import { speaker } from "../words/said.js";
import { addRuler } from "./sheets.js";

const say = speaker(SAID);
const LINES_MM = 20; // printing/feed_sheet.py
const CLEAR_MM = 5; // how near the lines go to the paper's edges

/**
 * Return the sheet for `paper`, moved by `shift`, [right, down] in mm.
 * @param {Paper} paper
 * @param {number[]} shift
 */
export function feedSheet(paper, shift) {
  const [x, y] = shift.map((mm) => LINES_MM + mm);
  const { width, height } = paper;
  const sheets = document.createElement("div");
  sheets.className = "stillroom-sheets";
  const page = document.createElement("section");
  page.className = "sheet-page feed-sheet";
  page.dataset.paper = paper.id;
  page.innerHTML = `<svg viewBox="0 0 ${width} ${height}" width="${width}mm" height="${height}mm" aria-hidden="true"><path d="M${x} ${CLEAR_MM}V${height - CLEAR_MM}M${CLEAR_MM} ${y}H${width - CLEAR_MM}" fill="none" stroke="#000" stroke-width="0.2"/></svg>`;
  const told = document.createElement("div");
  told.className = "feed-told";
  const head = document.createElement("h2");
  head.textContent = say("title");
  told.append(head, ...["print", "across", "down", "page", "moved"].map((name) => {
    const line = document.createElement("p");
    line.textContent = say(name, { lines: LINES_MM });
    return line;
  }));
  page.append(told);
  addRuler(page);
  sheets.append(page);
  return sheets;
}
