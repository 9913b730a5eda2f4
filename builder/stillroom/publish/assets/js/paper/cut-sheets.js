// The sheets of pieces cut for a gift, as printing/templates/cuts.typ sets them: each piece at its true
// size with its words under it, what lies on its side with its head to the right, a ruler at the foot.

import { measuringHolder } from "./card-faces.js";
import { linesOf } from "./gift-cuts.js";
import { addRuler } from "./sheets.js";

const SIZES_PT = [10, 9.5, 9];
const GAP_MM = 1.5; // between a piece and its words

/**
 * Return the sheets that cut-layout.js laid, to be printed on `paper`.
 * @param {LaidPiece[][]} laid
 * @param {Paper} paper
 * @param {CutsData} data
 */
export function drawSheets(laid, paper, data) {
  const sheets = document.createElement("div");
  sheets.className = "stillroom-sheets";
  for (const pieces of laid) {
    const page = document.createElement("section");
    page.className = "sheet-page gift-page";
    page.dataset.paper = paper.id;
    page.append(...pieces.map((one) => place(one, data)));
    addRuler(page);
    sheets.append(page);
  }
  fitWords(sheets, data);
  return sheets;
}

/**
 * A piece as SVG whose unit is a millimetre, with half a millimetre round it for its own lines.
 * @param {Piece} one
 * @param {CutsData} data
 */
export function drawPiece(one, data) {
  const { outline, folds, circle } = linesOf(one, data);
  const [width, height] = [one.width + 1, one.height + 1];
  const svg = make("svg", {
    class: "gift-piece", viewBox: `-0.5 -0.5 ${width} ${height}`,
    width: `${width}mm`, height: `${height}mm`, style: `--piece-width: ${width}`, "aria-hidden": "true",
  });
  svg.append(make("path", { class: "gift-cut", d: `M${outline.map((at) => at.join(" ")).join("L")}Z` }));
  const dashed = folds.map((/** @type {any[]} */ [from, to]) => `M${from.join(" ")}L${to.join(" ")}`);
  if (dashed.length) svg.append(make("path", { class: "gift-fold", d: dashed.join("") }));
  if (circle) svg.append(make("circle", { class: "gift-fold", cx: one.width / 2, cy: one.height / 2, r: circle / 2 }));
  return svg;
}

/** @param {LaidPiece} laid @param {CutsData} data */
function place({ piece, x, y, boxWidth, boxHeight, turned }, data) {
  const box = document.createElement("div");
  box.className = "gift-place";
  // turned on its upper left corner, and moved back by what was its height
  const at = `left:${turned ? x + boxHeight : x}mm;top:${y}mm;width:${boxWidth}mm;height:${boxHeight}mm`;
  box.style.cssText = turned ? `${at};rotate:90deg` : at;
  const svg = drawPiece(piece, data);
  svg.style.cssText += ";position:absolute;left:-0.5mm;top:-0.5mm";
  const told = document.createElement("div");
  told.className = "gift-told";
  told.style.top = `${piece.height + GAP_MM}mm`;
  const head = document.createElement("h2");
  head.textContent = piece.name;
  const measures = document.createElement("p");
  measures.textContent = piece.words;
  told.append(head, measures);
  box.append(svg, told);
  return box;
}

// Words stand in as small a type as they need.
/** @param {HTMLElement} sheets @param {CutsData} data */
function fitWords(sheets, { layout }) {
  const holder = measuringHolder();
  holder.append(sheets);
  const room = ((layout.words - 2) / 25.4) * 96;
  for (const told of sheets.querySelectorAll(".gift-told")) {
    for (const size of SIZES_PT) {
      told.style.fontSize = `${size}pt`;
      if (told.offsetHeight <= room) break;
    }
  }
  sheets.remove();
  holder.remove();
}

/** @param {string} tag @param {Record<string, any>} attributes @returns {SVGElement} */
function make(tag, attributes) {
  const node = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  return node;
}
