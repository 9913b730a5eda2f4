/**
 * A recipe's boxes to the file that the book takes, and back: what the page "Send us a recipe" saves.
 * A file reads as the one that the desk would write (desk/recipe_writing.py). Pure.
 */

import { boxLines, manyLines, oneLine, stepLines } from "./recipe-boxes.js";

/** @typedef {import("./recipe-boxes.js").Line} Line @typedef {Record<string, string>} Boxes */

const ORDER = [
  "title", "kind", "summary", "makes", "ingredients", "vessels", "containers", "oven", "timeline", "season", "keeps",
  "acidity", "card", "cautions", "author", "units",
];
const LONGEST_HEADING = 60;
const LISTS = ["ingredients", "vessels", "containers", "timeline", "season", "cautions"];
/** @type {Record<string, string[]>} */
const UNDER = {
  keeps: ["unopened", "opened", "where", "source", "mark", "reason"],
  acidity: ["ph", "source"],
  card: ["what", "use", "keep", "net"],
};
/** @type {Record<string, string>} */
const ALSO = { vessel: "vessels", materials: "ingredients" };
// with none of the signs that a file reads as its own: a "#" would make a note of the rest
const STAGE = /^([A-Za-z][^:#"',[\]{}]{0,50}?)\s*:(?:\s+|$)/;

/** Whether words may stand as they are behind a colon or a dash: nobody reads anything else in them. @param {string} words */
function isPlain(words) {
  return /^[\p{L}½¼¾⅓⅔⅛\d][^:#"'[\]{}&*!|>%@`\\~]*$/u.test(words)
    && !/^(?:true|false|yes|no|on|off|null|y|n)$/i.test(words) && (/\s/.test(words) || /^\p{L}+$/u.test(words));
}

/** Words as the file takes them. @param {string} words */
function quoted(words) {
  return isPlain(words) ? words : `"${words.replace(/[\\"]/g, "\\$&")}"`;
}

/** Words below the method with their headings as a cook writes them. As desk/boxes.py has it. @param {string} after */
function headingsShown(after) {
  return after.replace(/^## (.{1,60}?)[ \t]*:?[ \t]*$/gmu, "$1:");
}

/**
 * Words below the method with their headings as a file has them: a few words and a colon, alone on a line, with
 * something below them. As desk/boxes.py has it.
 * @param {string} after
 */
function headingsMeant(after) {
  const lines = after.split("\n");
  return lines.flatMap((line, at) => {
    const words = line.trim();
    const isApart = at === 0 || !lines[at - 1].trim();
    const isHeading = words.endsWith(":") && [...words].length <= LONGEST_HEADING;
    if (!isApart || !isHeading || !lines.slice(at + 1).some((one) => one.trim())) return [line];
    return [`## ${words.slice(0, -1).trim()}`, ...(lines[at + 1].trim() ? [""] : [])];
  }).join("\n");
}

/** The whole file of what the boxes say. @param {Boxes} boxes */
export function writeRecipe(boxes) {
  const lines = ["---", ...ORDER.flatMap((key) => writeFact(key, boxes)), "---"];
  const intro = manyLines(boxes.intro ?? "");
  if (intro) lines.push("", intro);
  lines.push("", "## Method", "", ...writeSteps(stepLines(boxes.method ?? "")));
  const after = headingsMeant(manyLines(boxes.after ?? ""));
  if (after) lines.push("", after.startsWith("#") ? after : `## Notes\n\n${after}`);
  return `${lines.join("\n")}\n`;
}

/** @param {string} key @param {Boxes} boxes @returns {string[]} */
function writeFact(key, boxes) {
  if (UNDER[key]) {
    const said = UNDER[key].map((name) => [name, oneLine(boxes[`${key}_${name}`] ?? "")]).filter(([, words]) => words);
    if (key === "keeps" && said.length === 1 && said[0][0] === "unopened") return [`keeps: ${quoted(said[0][1])}`];
    return said.length ? [`${key}:`, ...said.map(([name, words]) => `  ${name}: ${quoted(words)}`)] : [];
  }
  if (!LISTS.includes(key)) {
    const words = oneLine(boxes[key] ?? "");
    return words ? [`${key}: ${quoted(words)}`] : [];
  }
  const rows = boxLines(boxes[key] ?? "", key === "ingredients");
  return rows.length ? [`${key}:`, ...rows.map((row) => writeRow(row, key))] : [];
}

/** @param {Line} row @param {string} key */
function writeRow(row, key) {
  if (row.heading) return `  - ${quoted(row.text)}:`;
  const stage = key === "timeline" ? row.text.match(STAGE) : null;
  const words = stage ? `${stage[1]}: ${quotedOrNot(row.text.slice(stage[0].length))}`.trimEnd() : quoted(row.text);
  return `${row.deep ? "      " : "  "}- ${words}`;
}

/** @param {string} words */
function quotedOrNot(words) {
  return words ? quoted(words) : "";
}

/** @param {Line[]} steps @returns {string[]} */
function writeSteps(steps) {
  let number = 0;
  return steps.flatMap((step, place) => {
    if (step.heading) return [...(place ? [""] : []), `### ${step.text}`, ""];
    number += 1;
    return [`${number}. ${step.text.replaceAll("‹", "{").replaceAll("›", "}")}`];
  });
}

/**
 * The boxes that a file fills, and each of its lines that has no box here.
 * @param {string} text @returns {{boxes: Boxes, left: string[]}}
 */
export function readRecipe(text) {
  const lines = text.replace(/^\uFEFF/, "").split(/\r\n|\r|\n/);
  const first = lines.findIndex((line) => line.trim());
  const last = lines.findIndex((line, at) => at > first && line.trim() === "---");
  if (first < 0 || lines[first].trim() !== "---" || last < 0) return { boxes: {}, left: [] };
  const found = readFacts(lines.slice(first + 1, last));
  return { boxes: { ...found.boxes, ...readBody(lines.slice(last + 1)) }, left: found.left };
}

/** @param {string[]} lines @returns {{boxes: Boxes, left: string[]}} */
function readFacts(lines) {
  /** @type {Boxes} */
  const boxes = {};
  /** @type {string[]} */
  const left = [];
  let key = "";
  for (const line of lines) {
    if (!line.trim() || line.trim().startsWith("#")) continue;
    const fact = line.match(/^([A-Za-z_]+):\s*(.*)$/);
    if (fact) key = ALSO[fact[1]] ?? fact[1];
    const known = fact ? takeFact(boxes, key, fact[2]) : takeRow(boxes, key, line);
    if (!known) left.push(line.trim());
  }
  return { boxes, left };
}

/** @param {Boxes} boxes @param {string} key @param {string} words */
function takeFact(boxes, key, words) {
  if (!ORDER.includes(key)) return false;
  const box = UNDER[key] ? `${key}_${UNDER[key][0]}` : key;
  const listed = LISTS.includes(key) ? words.match(/^\[([^[\]"']*)\]$/) : null;
  if (listed) boxes[box] = listed[1].split(",").map(oneLine).join("\n");
  else if (words) boxes[box] = unquoted(words);
  return true;
}

/** @param {Boxes} boxes @param {string} key @param {string} line */
function takeRow(boxes, key, line) {
  const under = line.match(/^\s+([a-z_]+):\s*(.*)$/);
  if (UNDER[key] && under && UNDER[key].includes(under[1])) {
    boxes[`${key}_${under[1]}`] = unquoted(under[2]);
    return true;
  }
  // an ingredient of several lines: its name, then its amount and its note, as the desk shows it
  if (key === "ingredients" && under && ["amount", "note"].includes(under[1]) && boxes[key]) {
    boxes[key] += `, ${unquoted(under[2])}`;
    return true;
  }
  const row = line.match(/^(\s*)-\s+(?:item:\s*)?(.*)$/);
  if (!row || !LISTS.includes(key)) return false;
  const heading = key === "ingredients" ? row[2].match(/^(".*"|[^"].*):$/) : null;
  const before = boxes[key] ?? "";
  const wasDeep = /(?:^|\n)[^\n]*:(?:\n[^\n]+)*$/.test(before) && row[1].length < 4;
  const gap = before ? (heading || (key === "ingredients" && wasDeep) ? "\n\n" : "\n") : "";
  boxes[key] = `${before}${gap}${heading ? `${unquoted(heading[1])}:` : readRow(row[2], key)}`;
  return true;
}

/** @param {string} words @param {string} key */
function readRow(words, key) {
  const stage = key === "timeline" && !words.startsWith('"') ? words.match(STAGE) : null;
  return stage ? `${stage[1]}: ${unquoted(words.slice(stage[0].length))}`.trim() : unquoted(words);
}

/** @param {string} words */
function unquoted(words) {
  const whole = words.trim();
  if (/^"(?:[^"\\]|\\.)*"$/.test(whole)) return whole.slice(1, -1).replace(/\\(["\\])/g, "$1");
  if (/^'(?:[^']|'')*'$/.test(whole)) return whole.slice(1, -1).replaceAll("''", "'");
  return whole.replace(/\s+#.*$/, "");
}

/** @param {string[]} lines @returns {Boxes} */
function readBody(lines) {
  const start = lines.findIndex((line) => /^##\s+method\s*$/i.test(line));
  const intro = lines.slice(0, start < 0 ? lines.length : start);
  const rest = start < 0 ? [] : lines.slice(start + 1);
  const end = rest.findIndex((line) => /^##\s/.test(line));
  const steps = end < 0 ? rest : rest.slice(0, end);
  return {
    intro: manyLines(intro.join("\n")),
    method: readSteps(steps),
    after: end < 0 ? "" : headingsShown(manyLines(rest.slice(end).join("\n"))),
  };
}

/** The steps as lines of a box; each with its number where the lines alone would be read otherwise. @param {string[]} lines */
function readSteps(lines) {
  /** @type {Line[]} */
  const found = [];
  for (const line of lines) {
    const heading = line.match(/^###\s+(.*)$/);
    const step = line.match(/^\s*\d{1,3}[.)]\s+(.*)$/);
    const last = found.at(-1);
    if (heading) found.push({ text: heading[1].trim(), heading: true, deep: false });
    else if (step) found.push({ text: marked(step[1].trim()), heading: false, deep: false });
    else if (line.trim() && last) last.text += ` ${marked(line.trim())}`;
    else if (line.trim()) found.push({ text: marked(line.trim()), heading: false, deep: false });
  }
  const plain = stepBox(found, false);
  const read = stepLines(plain);
  const same = read.length === found.length && read.every((line, at) => line.text === found[at].text && line.heading === found[at].heading);
  return same ? plain : stepBox(found, true);
}

/** @param {Line[]} lines @param {boolean} numbered */
function stepBox(lines, numbered) {
  let number = 0;
  return lines
    .map((line, place) => {
      if (line.heading) return `${place ? "\n" : ""}${line.text}:`;
      number += 1;
      const before = numbered ? `${number}. ` : "";
      return `${before}${line.text}`;
    })
    .join("\n");
}

/** A step as the box shows it: amounts without braces. @param {string} step */
function marked(step) {
  return step.replaceAll("{", "‹").replaceAll("}", "›");
}
