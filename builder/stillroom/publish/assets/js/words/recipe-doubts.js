/**
 * What a recipe's boxes lack before somebody else can read them: each doubt with its box. Pure.
 * The book's own check says more; here is what would keep it from reading the file at all.
 */

import SAID from "../../data/said/pages-send.js";
import { boxLines, manyLines, oneLine, stepLines } from "./recipe-boxes.js";
import { speaker } from "./said.js";

/** @typedef {{box: string, words: string}} Doubt @typedef {Record<string, string>} Boxes */

const say = speaker(SAID);
const WANTED = ["title", "kind", "makes", "ingredients", "method"];
const LONGEST = 900;
const MARKUP = /<(?!https?:\/\/|mailto:|[\w.+-]+@)[A-Za-z/!?][^<>]*>|<[!?]|!\[[^\]\n]*\]/;
/** Letters that stay letters once their signs are off, as the desk spells them. @type {Record<string, string>} */
const SPELLED = { ß: "ss", æ: "ae", œ: "oe", ø: "o", ł: "l", "&": "-and-", "'": "", "’": "" };
const HEADING = /^\s*(?:#|---\s*$)/m;

/** @param {Boxes} boxes @param {string[]} stages the words that a timeline may use @returns {Doubt[]} */
export function doubtsOf(boxes, stages) {
  /** @type {Doubt[]} */
  const found = [];
  /** @param {string} box @param {string} name @param {Record<string, unknown>} [blanks] */
  const doubt = (box, name, blanks) => {
    if (!found.some((one) => one.box === box)) found.push({ box, words: say(name, blanks) });
  };
  for (const box of WANTED) if (!oneLine(boxes[box] ?? "")) doubt(box, `no_${box}`);
  for (const [box, text] of Object.entries(boxes)) {
    const markup = text.match(MARKUP);
    if (markup) doubt(box, "markup", { words: markup[0].slice(0, 40) });
    if (manyLines(text).split("\n").some((line) => line.length > LONGEST)) doubt(box, "too_long");
  }
  if (HEADING.test(boxes.intro ?? "")) doubt("intro", "heading");
  if (/^(?:##\s+method\b|method\s*:\s*$)/im.test(boxes.after ?? "") || /^---\s*$/m.test(boxes.after ?? "")) doubt("after", "heading");
  if (oneLine(boxes.makes ?? "") && !/\p{N}|\b(?:a|an|one|two|three|four|five|six|eight|ten|twelve|dozen)\b/iu.test(boxes.makes)) {
    doubt("makes", "no_number");
  }
  for (const { text, heading } of boxLines(boxes.ingredients ?? "")) {
    if (!heading && !/\p{L}/u.test(text)) doubt("ingredients", "no_food", { words: text });
    const comma = text.match(/^\d{1,3},\d{1,3}(?!\d)/);
    if (comma) doubt("ingredients", "comma", { words: comma[0] });
  }
  if (boxes.ingredients && boxLines(boxes.ingredients).every((line) => line.heading)) doubt("ingredients", "no_ingredients");
  if (boxes.method && !stepLines(boxes.method).length) doubt("method", "no_method");
  for (const { text } of boxLines(boxes.timeline ?? "", false)) {
    if (!isStage(text, stages)) doubt("timeline", "no_stage", { words: text.slice(0, 60) });
  }
  return found;
}

/** Whether a line of a timeline begins with words that it may use: "strain and bottle: 40 minutes". @param {string} text @param {string[]} stages */
function isStage(text, stages) {
  const [word, ...rest] = text.toLowerCase().split(":");
  const parts = word.split(/\s+and\s+|,\s*/).map((part) => part.trim());
  return rest.length > 0 && (stages.includes(word.trim()) || parts.every((part) => stages.includes(part)));
}

/** The name of the file for a title. @param {string} title */
export function fileName(title) {
  const spelled = title.toLowerCase().replace(/[ßæœøł&'’]/g, (sign) => SPELLED[sign]);
  const bare = spelled.normalize("NFKD").replace(/\p{M}/gu, "").replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
  return `${bare.slice(0, 60).replace(/-+$/, "") || "recipe"}.md`;
}
