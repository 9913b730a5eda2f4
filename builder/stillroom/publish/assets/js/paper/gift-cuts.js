/**
 * The pieces cut for a gift: core/paper/gift_cuts.py and core/paper/gift_pieces.py in the browser, the same
 * figures and the same words from `data` (gift_pieces.cuts_data). Pure; lengths are millimetres.
 * What cannot be is thrown as Unreadable in plain words.
 */

import SAID from "../../data/said/paper-gifts.js";
import { Unreadable, fill } from "../words/said.js";
import { showMm } from "./paper.js";

/** @type {Record<string, any>} */
const words = SAID.phrases;

/**
 * Return the cloth that covers a lid; its words also say the ribbon that ties it.
 * @param {CutsData} data
 * @param {{lid: number, lidHeight?: number, turns?: number, bow?: boolean}} asked
 * @returns {Piece[]}
 */
export function lidPieces(data, { lid, lidHeight = data.measures.lidHeight, turns = 1, bow = true }) {
  const { measures } = data;
  check(measures, lid, "lid");
  check(measures, lidHeight, "lid_height", 0);
  if (!(turns >= 1)) throw new Unreadable(words.turns_least);
  const side = Math.ceil(lid + 2 * lidHeight + 2 * measures.overhang);
  const ribbon = Math.ceil(Math.PI * lid * turns) + (bow ? measures.bow : measures.knot);
  const tie = fill(words[bow ? "bow" : "knot"], { turns: words.turns[turns] });
  const said = fill(words.cloth, { side, lid: showMm(lid), ribbon, tie });
  return [piece("cloth", words.cloth_name, said, side, side, { lid })];
}

/**
 * Return the label round a bottle; `share` is one of data.shares.
 * @param {CutsData} data
 * @param {{bottle: number, wall: number, share?: string}} asked
 * @returns {Piece[]}
 */
export function labelPieces(data, { bottle, wall, share = "1" }) {
  const { measures } = data;
  check(measures, bottle, "bottle");
  check(measures, wall, "wall");
  const overlap = share === "1" ? measures.overlap : 0;
  const girth = Math.PI * bottle * data.shares[share] + overlap;
  const height = wall - 2 * measures.clearance;
  if (height < measures.leastLabel) throw new Unreadable(fill(words.low_wall, { value: showMm(wall) }));
  const width = Math.round(girth * 10) / 10;
  const said = fill(words[overlap ? "label_round" : "label_part"], {
    width: showMm(width), height: showMm(height), overlap, part: words.parts[share],
  });
  return [piece("label", words.label_name, said, width, height, { overlap })];
}

/**
 * Return the nets of a box of these inside measures and of the lid that slips over it.
 * @param {CutsData} data
 * @param {{length: number, width: number, height: number, boxLid: number}} asked
 * @returns {Piece[]}
 */
export function boxPieces(data, { length, width, height, boxLid }) {
  const { measures } = data;
  for (const [name, value] of Object.entries({ length, width, height, box_lid: boxLid })) {
    check(measures, value, name);
  }
  if (boxLid > height) throw new Unreadable(words.deep_lid);
  if (boxLid < measures.leastWall) {
    throw new Unreadable(fill(words.low_box, { value: showMm(boxLid), least: measures.leastWall }));
  }
  const play = 2 * measures.play;
  return [
    netPiece(words.box_name, length, width, height),
    netPiece(words.box_lid_name, length + play, width + play, boxLid),
  ];
}

/** @param {string} name @param {number} length @param {number} width @param {number} wall */
function netPiece(name, length, width, wall) {
  const [flatLength, flatWidth] = [length + 2 * wall, width + 2 * wall];
  const said = fill(words.net, {
    length: showMm(length), width: showMm(width), wall: showMm(wall),
    flat_length: showMm(flatLength), flat_width: showMm(flatWidth),
  });
  return piece("net", name, said, flatLength, flatWidth, { wall });
}

/**
 * @param {string} kind
 * @param {string} name
 * @param {string} told
 * @param {number} width
 * @param {number} height
 * @param {{wall?: number, lid?: number, overlap?: number}} facts
 * @returns {Piece}
 */
function piece(kind, name, told, width, height, { wall = 0, lid = 0, overlap = 0 }) {
  return { kind, name, words: told, width, height, wall, lid, overlap, turned: false };
}

/**
 * @param {Record<string, number>} measures
 * @param {number} value
 * @param {string} what
 * @param {number} [least]
 */
function check(measures, value, what, least = 1) {
  if ((value > 0 && value <= measures.largest) || (value === 0 && least === 0)) return;
  throw new Unreadable(fill(words.impossible, {
    what: words.what[what], value: showMm(value), least, most: measures.largest,
  }));
}

/**
 * Return the piece as it lies on a page, turned if only that fits; null when nothing does.
 * @param {Piece} one
 * @param {Paper} paper
 * @param {CutsData} data
 * @returns {Piece | null}
 */
export function placeOn(one, paper, { measures }) {
  const across = paper.width - 2 * measures.margin;
  const down = paper.height - measures.headAndFoot;
  if (one.width <= across && one.height <= down) return one;
  if (one.height <= across && one.width <= down) {
    return { ...one, width: one.height, height: one.width, turned: !one.turned };
  }
  return null;
}

/**
 * Return {outline, folds, circle}: the points to cut along, the dashed lines, a lid's diameter.
 * @param {Piece} piece
 * @param {CutsData} data
 * @returns {{outline: number[][], folds: number[][][], circle: number}}
 */
export function linesOf({ kind, width: w, height: h, wall, lid, overlap, turned }, { measures }) {
  if (kind === "net") return netLines(w, h, wall, Math.min(measures.tab, wall - measures.slope), measures.slope);
  const outline = [[0, 0], [w, 0], [w, h], [0, h]];
  if (!overlap) return { outline, folds: [], circle: lid };
  const fold = turned ? [[0, h - overlap], [w, h - overlap]] : [[w - overlap, 0], [w - overlap, h]];
  return { outline, folds: [fold], circle: 0 };
}

// The cross of a net: wall `t`, tabs of `a` with ends that slope by `s` on the walls at head and foot.
/** @param {number} w @param {number} h @param {number} t @param {number} a @param {number} s */
function netLines(w, h, t, a, s) {
  const [right, foot] = [w - t, h - t];
  const outline = [
    [t, 0], [right, 0], [right + a, s], [right + a, t - s], [right, t],
    [w, t], [w, foot], [right, foot], [right + a, foot + s], [right + a, h - s], [right, h],
    [t, h], [t - a, h - s], [t - a, foot + s], [t, foot],
    [0, foot], [0, t], [t, t], [t - a, t - s], [t - a, s],
  ];
  const base = [[t, t], [right, t], [right, foot], [t, foot]];
  const folds = base.map((corner, index) => [corner, base[(index + 1) % 4]]);
  const tabs = [t, right].flatMap((x) => [0, foot].map((y) => [[x, y], [x, y + t]]));
  return { outline, folds: [...folds, ...tabs], circle: 0 };
}
