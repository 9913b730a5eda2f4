/**
 * What stands in the boxes of a recipe, line by line: the twin of desk/boxes.py. Pure.
 * @typedef {{text: string, heading: boolean, deep: boolean}} Line
 */

const BULLET = /^(?:[-*+•·‣▪–—]\s+|\(?\d{1,2}[.)]\s+|step\s+\d+[.:]?\s+)+/i;
const LONGEST_HEADING = 60;

/** Words without line ends and what cannot be seen or printed. @param {string} text */
export function oneLine(text) {
  return text.replace(/\p{C}/gu, " ").replace(/\s+/g, " ").trim();
}

/** Several lines without what cannot be seen or printed. @param {string} text */
export function manyLines(text) {
  return text.split(/\r\n|\r|\n/).map((line) => line.replace(/\p{C}/gu, " ").trimEnd()).join("\n").replace(/^\n+|\n+$/g, "");
}

/** @param {string} words */
function isHeading(words) {
  return words.endsWith(":") && words.length <= LONGEST_HEADING;
}

/** The lines of a list's box, without bullets; a blank line ends what stands under a heading. @param {string} text @param {boolean} [grouped] @returns {Line[]} */
export function boxLines(text, grouped = true) {
  /** @type {Line[]} */
  const found = [];
  let deep = false;
  for (const raw of manyLines(text).split("\n")) {
    const words = oneLine(raw).replace(BULLET, "");
    if (!words) {
      deep &&= Boolean(found.at(-1)?.heading);
    } else if (grouped && isHeading(words)) {
      deep = true;
      found.push({ text: words.slice(0, -1).trim(), heading: true, deep: false });
    } else {
      found.push({ text: words, heading: false, deep });
    }
  }
  return found;
}

const NUMBER = /^(?:\(?\d{1,2}[.)]\s|step\s+\d)/i;
const RUN_ON = /^(\d{1,2})[.)]\s+[\p{L}_]/u;

/** The steps that stand in one line: "1. Soak. 2. Stir."; else the line alone. @param {string} line @returns {string[]} */
function stepsInLine(line) {
  const found = [];
  let rest = line;
  for (let wanted = Number(RUN_ON.exec(line)?.[1] ?? NaN) + 1; ; wanted += 1) {
    const next = wanted ? new RegExp(`[.!?;]\\s+(?=${wanted}[.)]\\s+[\\p{L}_])`, "u").exec(rest) : null;
    if (!next) return [...found, rest];
    found.push(rest.slice(0, next.index + 1));
    rest = rest.slice(next.index + next[0].length);
  }
}

/**
 * The steps of a box as a file would have them: a line that goes on in the next is one step, several
 * with their numbers in one line are several, and a heading with nothing below it is a step.
 * @param {string} text
 * @returns {Line[]}
 */
export function stepLines(text) {
  /** @type {Line[]} */
  const found = [];
  for (const bare of manyLines(text).split("\n").flatMap((raw) => stepsInLine(oneLine(raw)))) {
    const words = bare.replace(BULLET, "");
    if (!words) continue;
    const last = found.at(-1);
    const goesOn = words === bare && last && !last.heading && !/[.!?:]$/.test(last.text) && /^\p{Ll}/u.test(words);
    const heads = !NUMBER.test(bare) && isHeading(words) && words.split(" ").length <= 6;
    if (goesOn && last) last.text = `${last.text} ${words}`;
    else if (heads) found.push({ text: words.slice(0, -1).trim(), heading: true, deep: false });
    else found.push({ text: words, heading: false, deep: false });
  }
  let number = 1;
  return found.flatMap((line, at) => {
    const below = found[at + 1];
    if (line.heading && below && !below.heading) return [line];
    return stepsInLine(`${number}. ${line.text}${line.heading ? ":" : ""}`).map((part) => {
      const step = part.replace(`${number}. `, "").replace(BULLET, "");
      number += 1;
      return { text: step, heading: false, deep: false };
    });
  });
}
