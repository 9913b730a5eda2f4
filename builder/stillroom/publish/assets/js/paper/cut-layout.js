/**
 * Where the pieces cut for a gift lie on their sheets, each with its words under it:
 * core/paper/cut_layout.py in the browser, by the same figures. Pure; lengths are millimetres.
 */

import { placeOn } from "./gift-cuts.js";
import { nest } from "./nesting.js";

/**
 * Return the sheets the pieces go on; null when one is larger than the paper.
 * @param {Piece[]} pieces
 * @param {Paper} paper
 * @param {CutsData} data
 * @returns {LaidPiece[][] | null}
 */
export function layPieces(pieces, paper, data) {
  const { measures: { margin }, layout } = data;
  const free = [paper.width - 2 * margin, paper.height - layout.foot - margin];
  let lying = pieces;
  let laid = nest(lying.map((one) => boxOf(one, layout)), free[0], free[1]);
  if (!laid) { // goes on its sheet only on its side, with its words under it
    lying = pieces.map((one) => placeOn(one, paper, data) ?? one);
    laid = nest(lying.map((one) => boxOf(one, layout)), free[0], free[1]);
  }
  if (!laid) return null;
  /** @type {any[]} */
  const sheets = [];
  for (const { piece, sheet, x, y, turned } of laid) {
    const [boxWidth, boxHeight] = boxOf(lying[piece], layout);
    sheets[sheet] ??= [];
    sheets[sheet].push({ piece: lying[piece], x: margin + x, y: margin + y, boxWidth, boxHeight, turned });
  }
  return sheets;
}

/** @param {Size} piece @param {CutsData["layout"]} layout @returns {[number, number]} */
function boxOf({ width, height }, { words, leastWide }) {
  return [Math.max(width, leastWide), height + words];
}
