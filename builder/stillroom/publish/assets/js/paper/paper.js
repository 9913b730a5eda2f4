// Where boxes stand on a sheet, in millimetres: the browser's form of core/paper/sheets.py. The sizes
// themselves are not here; they come with the page, written from the Python tables.

import SAID from "../../data/said/paper-sheets.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

/**
 * How many boxes stand on a sheet and where the block begins. A box is turned only when it goes on
 * no other way; the grid's box then says `turned`. Throws when not one goes on.
 * @param {Paper} paper
 * @param {Box} box
 * @param {boolean} [densest]
 * @returns {Grid}
 */
export function impose(paper, box, densest = false) {
  const ways = [box, turn(box)];
  /** @param {Box} one */
  const each = (one) => countOn(paper, one).reduce((columns, rows) => columns * rows);
  if (densest) ways.sort((one, other) => each(other) - each(one));
  const lying = ways.find((one) => countOn(paper, one).every((count) => count > 0));
  if (!lying) {
    const name = box.name[0].toUpperCase() + box.name.slice(1);
    throw say.refuse("does_not_go", {
      box: name, paper: paper.name, width: showMm(box.width), height: showMm(box.height),
    });
  }
  const [columns, rows] = countOn(paper, lying);
  return {
    paper, box: lying, columns, rows,
    left: (paper.width - columns * lying.width) / 2,
    top: (paper.height - rows * lying.height) / 2,
    pitchX: lying.width, pitchY: lying.height,
  };
}

/** The sizes of cards from the smallest: large type takes the first that holds it. As printing/cards.py. */
export const LARGER = ["id-1", "90x65", "a7", "folded-a6"];

/** The box a card takes on its sheet: a folded card lies there opened. @param {Box} size @returns {Box} */
export function boxOfCard(size) {
  return size.folded ? { ...size, width: 2 * size.width } : size;
}

/**
 * The one of an id; what a form offers is always in the list.
 * @template {{id: string}} T
 * @param {T[]} list
 * @param {string} id
 * @returns {T}
 */
export function withId(list, id) {
  return /** @type {T} */ (list.find((one) => one.id === id));
}

/** The same box lying on its other side. @param {Box} box @returns {Box} */
export function turn(box) {
  return { ...box, width: box.height, height: box.width, turned: !box.turned };
}

/** @param {Paper} paper @param {Box} box @returns {[number, number]} */
function countOn(paper, box) {
  return [Math.floor(round(paper.width / box.width)), Math.floor(round(paper.height / box.height))];
}

/**
 * The grid of a bought sheet of labels from typed measures; throws in words when impossible.
 * @param {Paper} paper
 * @param {Box} box
 * @param {Omit<Grid, "paper" | "box">} typed
 * @returns {Grid}
 */
export function labelSheet(paper, box, typed) {
  const { columns, rows, left, top, pitchX, pitchY } = typed;
  if (!(columns >= 1 && rows >= 1)) throw say.refuse("no_label");
  const right = left + (columns - 1) * pitchX + box.width;
  const bottom = top + (rows - 1) * pitchY + box.height;
  if (left < 0 || top < 0 || round(right) > paper.width || round(bottom) > paper.height) {
    throw say.refuse("off_the_paper", {
      right: showMm(right), bottom: showMm(bottom), paper: paper.name,
      width: showMm(paper.width), height: showMm(paper.height),
    });
  }
  if ((columns > 1 && pitchX < box.width) || (rows > 1 && pitchY < box.height)) {
    throw say.refuse("overlap");
  }
  return { paper, box, columns, rows, left, top, pitchX, pitchY };
}

/**
 * The place of the box counted `index` from 0; on the back the columns run the other way.
 * @param {Grid} grid
 * @param {number} index
 * @param {boolean} [back]
 */
export function place(grid, index, back = false) {
  const perPage = grid.columns * grid.rows;
  const onPage = index % perPage;
  const column = onPage % grid.columns;
  const row = Math.floor(onPage / grid.columns);
  const x = grid.left + column * grid.pitchX;
  return {
    page: Math.floor(index / perPage), column, row,
    x: back ? grid.paper.width - x - grid.box.width : x,
    y: grid.top + row * grid.pitchY,
  };
}

/**
 * The places that `count` boxes take from `startAt` on, past those that are gone; counted from 0.
 * @param {number} count
 * @param {number} [startAt]
 * @param {Set<number>} [gone]
 */
export function freePlaces(count, startAt = 1, gone = new Set()) {
  const free = [];
  for (let at = startAt - 1; free.length < count; at += 1) if (!gone.has(at)) free.push(at);
  return free;
}

/** A length to the hundredth of a millimetre, without needless noughts. @param {number} length */
export function showMm(length) {
  return String(Math.round(length * 100) / 100);
}

// 297 / 74.25 and the like must not fall a hair under a whole number
/** @param {number} value */
function round(value) {
  return Math.round(value * 1e6) / 1e6;
}
