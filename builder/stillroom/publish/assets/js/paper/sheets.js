// Lays fitted cards, tags or labels on sheets of paper and prints them. What is printed stands in
// one element beside the page's own, so that the rest can be left out of the print.

import { freePlaces, place, turn } from "./paper.js";
import SAID from "../../data/said/pages-print.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

// the ruler, its words and the margin no printer prints on
const RULER_NEEDS_MM = 17;

/**
 * Return the sheets for `items` (elements; `faces(item)` gives its front and, if any, back).
 * Backs are laid mirrored, for a sheet turned over on its long edge. `gone` are the places of the
 * first sheet that are used already, counted from 0; `shift` is what a printer is told to move, right
 * and down in mm.
 *
 * @param {any} grid
 * @param {any[]} items
 * @param {(item: any) => any[]} faces
 * @param {{startAt?: number, gone?: Set<number>, cutLines?: boolean, outline?: string, shift?: number[]}} [how]
 */
export function laySheets(grid, items, faces, { startAt = 1, gone, cutLines = true, outline = "", shift = [0, 0] } = {}) {
  const sheets = document.createElement("div");
  sheets.className = "stillroom-sheets";
  const pages = new Map();
  const free = freePlaces(items.length, startAt, gone);
  items.forEach((item, index) => {
    const at = free[index];
    const number = place(grid, at).page;
    if (!pages.has(number)) pages.set(number, { front: newPage(grid, "front"), back: null });
    const page = pages.get(number);
    const [front, back] = faces(item);
    const upright = grid.box.turned ? turn(grid.box) : grid.box;
    const drawn = [front];
    if (outline && cutLines) drawn.push(newOutline(outline, upright));
    if (grid.box.folded && cutLines) drawn.push(newFoldMark(upright));
    page.front.append(newPlace(grid, at, drawn, false, shift));
    if (back) {
      page.back ??= newPage(grid, "back");
      page.back.append(newPlace(grid, at, [back], true, shift));
    }
  });
  for (const { front, back } of pages.values()) {
    if (cutLines && !outline) addCutLines(grid, front, shift);
    sheets.append(front);
    if (back) sheets.append(back);
  }
  return sheets;
}

/**
 * Print the sheets alone. The paper's size is written for this one print: with the page's own
 * margins the browser would shrink the sheets to fit.
 * @param {HTMLElement} sheets
 * @param {Paper} paper
 */
export function printSheets(sheets, paper) {
  printAlone(sheets, "printing-sheets", paper, 0);
}

/**
 * Print an element alone on `paper` with a margin in mm, then put the page back as it was.
 * @param {HTMLElement} element
 * @param {string} printing
 * @param {Size} paper
 * @param {number} margin
 */
export function printAlone(element, printing, paper, margin) {
  const size = document.createElement("style");
  size.textContent = `@page { size: ${paper.width}mm ${paper.height}mm; margin: ${margin}mm; }`;
  document.head.append(size);
  document.body.append(element);
  document.body.classList.add(printing);
  const done = () => {
    document.body.classList.remove(printing);
    element.remove();
    size.remove();
  };
  window.addEventListener("afterprint", done, { once: true });
  window.print();
}

/** @param {Grid} grid @param {string} side */
function newPage(grid, side) {
  const page = document.createElement("section");
  page.className = "sheet-page";
  page.dataset.paper = grid.paper.id;
  page.dataset.side = side;
  return page;
}

/**
 * @param {Grid} grid
 * @param {number} index
 * @param {Node[]} content
 * @param {boolean} back
 * @param {number[]} shift
 */
function newPlace(grid, index, content, back, shift) {
  const { x, y } = place(grid, index, back);
  const { width, height, turned } = grid.box;
  const box = document.createElement("div");
  box.className = "sheet-place card-exact";
  box.style.cssText = `left:${x + shift[0]}mm;top:${y + shift[1]}mm;width:${width}mm;height:${height}mm`;
  box.append(...(turned ? [newTurned(grid.box, content, back)] : content));
  return box;
}

// What lies on its side: its head to the right, and on the back to the left, so that both sides
// of one card have the same head once the sheet is turned on its long edge.
/** @param {Size} box @param {Node[]} content @param {boolean} back */
function newTurned({ width, height }, content, back) {
  const turned = document.createElement("div");
  turned.className = "sheet-turned";
  const at = back ? `0 ${height}mm` : `${width}mm 0`;
  turned.style.cssText = `width:${height}mm;height:${width}mm;translate:${at};rotate:${back ? -90 : 90}deg`;
  turned.append(...content);
  return turned;
}

/**
 * Add the ruler at the foot of the first sheet, or alone where the last row comes down so far.
 * @param {HTMLElement} sheets
 * @param {Grid} grid
 */
export function addRulerTo(sheets, grid) {
  const foot = grid.paper.height - grid.top - (grid.rows - 1) * grid.pitchY - grid.box.height;
  if (foot >= RULER_NEEDS_MM) {
    addRuler(/** @type {Element} */ (sheets.firstElementChild));
    return;
  }
  const page = newPage(grid, "ruler");
  addRuler(page);
  sheets.append(page);
}

/**
 * Add a ruler of 50 mm at the foot of a page, to check that the printer does not shrink it.
 * @param {Element} page
 */
export function addRuler(page) {
  const ticks = Array.from({ length: 51 }, (_, mm) => `M${mm} 8v-${mm % 10 === 0 ? 4 : mm % 5 === 0 ? 3 : 2}`);
  const ruler = document.createElement("div");
  ruler.className = "sheet-ruler";
  ruler.innerHTML = `<svg viewBox="0 0 50 8" width="50mm" height="8mm" aria-hidden="true"><path d="M0 8H50${ticks.join("")}" fill="none" stroke="#000" stroke-width="0.12"/></svg><p>${say("ruler_is")}</p>`;
  page.append(ruler);
}

// What a pair of scissors follows: the tag's own shape, and a luggage tag's hole.
/** @param {string} shape @param {Size} box */
function newOutline(shape, { width, height }) {
  /** @type {Texts} */
  const paths = {
    rectangle: `M0 0H${width}V${height}H0z`,
    wrap: `M0 0H${width}V${height}H0z`,
    round: `M0 ${height / 2}a${width / 2} ${height / 2} 0 1 0 ${width} 0a${width / 2} ${height / 2} 0 1 0 -${width} 0z`,
    luggage: `M9 0H${width}V${height}H9L0 ${height - 9}V9zM6 ${height / 2}a2 2 0 1 0 4 0a2 2 0 1 0 -4 0z`,
  };
  const outline = document.createElement("div");
  outline.className = "tag-outline";
  outline.innerHTML = `<svg viewBox="0 0 ${width} ${height}" aria-hidden="true"><path d="${paths[shape]}"/></svg>`;
  return outline;
}

// Short dashes at head and foot, where a folded card is folded: they end up in the crease.
/** @param {Size} box */
function newFoldMark({ width, height }) {
  const mark = document.createElement("div");
  mark.className = "fold-mark";
  mark.innerHTML = `<svg viewBox="0 0 ${width} ${height}" aria-hidden="true"><path d="M${width / 2} 0v5M${width / 2} ${height - 5}v5"/></svg>`;
  return mark;
}

// A hairline along every edge of the grid, running out to the paper's edge as a guide for a blade.
// It is drawn as one SVG: borders would be moved to whole pixels, a quarter of a millimetre.
/** @param {Grid} grid @param {Element} page @param {number[]} shift */
function addCutLines(grid, page, shift) {
  const xs = new Set();
  const ys = new Set();
  for (let column = 0; column < grid.columns; column += 1) {
    xs.add(grid.left + column * grid.pitchX).add(grid.left + column * grid.pitchX + grid.box.width);
  }
  for (let row = 0; row < grid.rows; row += 1) {
    ys.add(grid.top + row * grid.pitchY).add(grid.top + row * grid.pitchY + grid.box.height);
  }
  const { width, height } = grid.paper;
  const across = [...xs].map((x) => `M${x + shift[0]} 0V${height}`);
  const down = [...ys].map((y) => `M0 ${y + shift[1]}H${width}`);
  const lines = document.createElement("div");
  lines.className = "cut-lines";
  lines.innerHTML = `<svg viewBox="0 0 ${width} ${height}" width="${width}mm" height="${height}mm" aria-hidden="true"><path d="${[...across, ...down].join("")}"/></svg>`;
  page.append(lines);
}
