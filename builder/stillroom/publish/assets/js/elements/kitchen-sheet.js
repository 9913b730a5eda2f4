// The kitchen sheet: one recipe for the wall beside the stove, made of what stands on its page at
// the chosen size and for the chosen day. It leaves out the fitting and the printing (sheet-fit.js).

import { sayDayShort } from "../words/day-words.js";
import { describeDates } from "../when/timeline-words.js";
import SAID from "../../data/said/pages-sheet.js";
import SIZE_SAID from "../../data/said/size-size.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);
const saySize = speaker(SIZE_SAID);

const NOTE_LINES = 40; // more than a side holds: what is left of it decides how many are seen

/**
 * Return the sheet as one element; `plan` (timeline.js) gives dates and boxes, null leaves them blank.
 * @param {Plan | null} plan
 */
export function makeSheet(plan) {
  const sheet = make("article", "kitchen-sheet");
  const body = make("div", "kitchen-sheet__body", gather(), method());
  sheet.append(head(), body, plan ? whenDated(plan) : whenUndated(), ...care(), notes(), foot());
  return sheet;
}

function head() {
  const words = make("div", "",
    make("p", "kitchen-sheet__kind", textOf(".opening__kind")),
    make("h1", "", textOf(".leaf h1")),
  );
  const lead = textOf(".leaf .lead");
  if (lead) words.append(make("p", "kitchen-sheet__lead", lead));
  words.append(makes(), facts());
  const told = find('[data-scale="told"]');
  if (told && !told.hidden) {
    words.append(...[...told.children].map((one) => make("p", "kitchen-sheet__told", one.textContent)));
  }
  const drawn = find(".share__code svg"); // none in a book that has no address yet
  const code = drawn ? [make("div", "kitchen-sheet__code", drawn.cloneNode(true))] : [];
  return make("header", "kitchen-sheet__head", words, ...code);
}

function makes() {
  const times = find('stillroom-scale [name="times"]')?.value.trim();
  const scale = times && times !== "1" ? say("times", { times }) : "";
  return make("p", "kitchen-sheet__makes", say("makes"), make("strong", "", textOf('[data-fact="makes"] dd')), `${scale}.`);
}

// the strip's other facts and what the batch comes to, as one running line
function facts() {
  const pairs = all('.strip__fact:not([data-fact="makes"]), [data-scale="comes-to"] > div')
    .filter((pair) => textOf("dt", pair) !== saySize("servings")); // for the table, not for the stove
  return make("p", "kitchen-sheet__facts", ...pairs.flatMap((pair) => [
    make("span", "", make("i", "", say("name", { name: textOf("dt", pair) })), " ", make("strong", "", textOf("dd", pair))), " ",
  ]));
}

function gather() {
  const part = make("section", "kitchen-sheet__gather", make("h2", "", textOf(".gather h2")));
  part.append(...copies(".gather > :is(h3, ul)"));
  return part;
}

function method() {
  const part = make("section", "kitchen-sheet__method", make("h2", "", textOf(".method h2")));
  part.append(...copies(".method > :is(h3, ol, .heat)"));
  return part;
}

/** @param {Plan} plan */
function whenDated(plan) {
  const part = make("section", "kitchen-sheet__when", make("h2", "", say("when")));
  const tended = plan.stages.filter((stage) => stage.role === "tend");
  const rows = describeDates(plan).map((row) => {
    const when = row.handsOn ? say("hands_on", { when: row.when, time: row.handsOn }) : row.when;
    const said = make("dd", "", when);
    if (row.role === "tend") {
      const place = tended.findIndex(({ name, dates }) => name === row.name && dates[0] === row.from);
      const [stage] = tended.splice(place, 1);
      said.append(ticks(stage));
    }
    return make("div", "", make("dt", "", row.name), " ", said);
  });
  part.append(make("dl", "", ...rows), ...ofKind());
  return part;
}

// dates that are the kind's and not the recipe's own say so on paper too
function ofKind() {
  const said = textOf(".when-of-kind");
  return said ? [make("p", "kitchen-sheet__of-kind", said)] : [];
}

// as many boxes to a day as it is tended times
/** @param {DatedStage} stage */
function ticks({ dates, times }) {
  const boxes = () => Array.from({ length: times }, () => make("span", "kitchen-sheet__tick"));
  return make("ul", times > 1 ? "kitchen-sheet__ticks kitchen-sheet__ticks--many" : "kitchen-sheet__ticks",
    ...dates.map((day) => make("li", "", ...boxes(), sayDayShort(day).replace(/ \d{4}$/, ""))));
}

// without a chosen day there is no date to print: blanks are left to write one in
function whenUndated() {
  /** @param {string} words */
  const blank = (words) => make("span", "", words, make("span", "kitchen-sheet__blank"));
  return make("section", "kitchen-sheet__when", make("h2", "", say("when")),
    make("p", "", textOf('[data-when="undated"]').replace(/^[^:]*:\s*/, "")),
    make("p", "kitchen-sheet__blanks", blank(say("begun_on")), " ", blank(say("to_be_given_on"))), ...ofKind());
}

function care() {
  const box = find(".leaf .take-care");
  if (!box) return [];
  const part = make("section", "kitchen-sheet__care", make("h2", "", textOf("h2", box)));
  const told = new Set();
  const cautions = make("ul", "", ...[...box.querySelectorAll(".take-care__caution")].map((one) => caution(one, told)));
  if (cautions.children.length) part.append(cautions);
  else part.append(copy(box.querySelector(":scope > p")));
  for (const line of box.querySelectorAll(".take-care__kitchen, .take-care__defer")) part.append(copy(line));
  return [part];
}

// each sentence to the receiver once; the sources stay on the page, a square away
/** @param {HTMLElement} one @param {Set<string>} told */
function caution(one, told) {
  const line = copy(one);
  for (const source of line.querySelectorAll(".source")) source.remove();
  const receiver = line.querySelector(".take-care__receiver");
  if (receiver && told.has(receiver.textContent)) receiver.remove();
  else if (receiver) told.add(receiver.textContent);
  return line;
}

function notes() {
  const lines = Array.from({ length: NOTE_LINES }, () => make("div", "kitchen-sheet__line"));
  return make("section", "kitchen-sheet__notes", make("h2", "", say("notes")), make("div", "kitchen-sheet__lines", ...lines));
}

function foot() {
  const link = find(".share__link");
  const address = link ? [say("page"), make("span", "kitchen-sheet__address", link.href)] : [];
  return make("footer", "kitchen-sheet__foot", ...address);
}

/* --- reading the page ------------------------------------------------------------------------- */

/** @param {string} selector @returns {any} */
function find(selector) {
  return document.querySelector(selector);
}

/** @param {string} selector @returns {HTMLElement[]} */
function all(selector) {
  return [...document.querySelectorAll(selector)];
}

/** @param {string} selector @param {ParentNode} [within] */
function textOf(selector, within = document) {
  return within.querySelector(selector)?.textContent.trim().replace(/\s+/g, " ") ?? "";
}

/** @param {string} selector */
function copies(selector) {
  return all(selector).map(copy);
}

/** A copy without what is hidden, and without the page's own names for things. @param {HTMLElement} original */
function copy(original) {
  const twin = original.cloneNode(true);
  for (const hidden of twin.querySelectorAll("[hidden], .visually-hidden")) hidden.remove();
  for (const named of [twin, ...twin.querySelectorAll("[id]")]) named.removeAttribute("id");
  return twin;
}

/** @param {string} tag @param {string} name @param {...(Node | string)} content */
function make(tag, name, ...content) {
  const made = document.createElement(tag);
  if (name) made.className = name;
  made.append(...content);
  return made;
}
