/**
 * Amounts as a cook writes and reads them: typed text to exact numbers, exact numbers to what a
 * kitchen can measure. The twin of quantities.py and rounding.py, reading the same tables.
 */

import SAID from "../../data/said/amounts-amounts.js";
import { didYouMean } from "../words/nearest.js";
import { speaker } from "../words/said.js";
import { Fraction, HALF, ONE, ZERO } from "./fraction.js";

const say = speaker(SAID);

const VULGAR = {
  "½": [1, 2], "⅓": [1, 3], "⅔": [2, 3], "¼": [1, 4], "¾": [3, 4], "⅕": [1, 5], "⅖": [2, 5],
  "⅗": [3, 5], "⅘": [4, 5], "⅙": [1, 6], "⅚": [5, 6], "⅛": [1, 8], "⅜": [3, 8], "⅝": [5, 8], "⅞": [7, 8],
};
const SIGNS = Object.keys(VULGAR).join("");
// "1 000" is a thousand; "1 400" is asked, since it may be one thing of 400
const SPACED = String.raw`[1-9]\d{0,2}(?:[ \u00a0\u202f\u2009]\d{3})+(?!\d|\s*[/⁄]|[.,]\d)`;
const NUMBER = String.raw`(?:${SPACED}|\d+\s*[${SIGNS}]|[${SIGNS}]|\d+\s+\d+\s*[/⁄]\s*\d+|\d+\s*[/⁄]\s*\d+|\d+(?:[.,]\d+)*)`;
const SURE = /^(?:\d+(?:\.\d+)?|[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?)$/;
const COULD_BE_THOUSANDS = /^[1-9]\d{0,2}\.\d{3}$/;
const MOST_SIGNS = 60; // as in quantities.py
const WHOLE_SPACED = new RegExp(`^${SPACED}$`);
const WHOLE_NUMBER = new RegExp(`^${NUMBER}$`);
// what stands close behind a number and makes it none: "½½", "1..2", "1/2/3"
const NO_NUMBER = new RegExp(`^(?:[${SIGNS}]|[.,]{2}|[.,/⁄]\\s?\\d)`);
const LEADING = new RegExp(
  `^(about|roughly|around|c\\.)?\\s*(${NUMBER})(?:\\s*(?:-|–|to)\\s*(${NUMBER}))?([^]*)$`, "i",
);
const SHOWN = new Map(
  Object.entries(VULGAR)
    .filter(([, [, bottom]]) => [2, 3, 4, 8].includes(bottom))
    .map(([sign, [top, bottom]]) => [`${top}/${bottom}`, sign]),
);

/** Turn the book's shared tables from text into fractions, once. @param {Written} data @returns {Tables} */
export function readTables(data) {
  /** @type {Record<string, Unit>} */
  const units = {};
  for (const [name, unit] of Object.entries(data.units)) {
    units[name] = { ...unit, base: Fraction.parse(unit.base) };
  }
  /** @param {string[]} texts */
  const parse = (texts) => texts.map((text) => Fraction.parse(text));
  /** @type {Record<string, Record<string, Rung[]>>} */
  const ladders = {};
  for (const [system, named] of Object.entries(data.ladders)) {
    ladders[system] = {};
    for (const [name, rungs] of Object.entries(named)) {
      ladders[system][name] = rungs.map((/** @type {Written} */ rung) => ({
        begins: Fraction.parse(rung.begins),
        steps: parse(rung.steps),
        also: parse(rung.also),
        parts: rung.parts.map((/** @type {Written} */ part) => ({ unit: part.unit, of: parse(part.of) })),
        between: rung.between,
        finer: parse(rung.finer),
      }));
    }
  }
  return /** @type {any} */ ({ ...data, units, ladders, ...readWords(data) });
}

/**
 * The words of units by system, all that are read and those that are offered for a misspelt one.
 * @param {Written} data
 */
function readWords(data) {
  /** @type {Record<string, Map<string, string>>} */
  const words = {};
  /** @type {Record<string, string[]>} */
  const offered = {};
  for (const system of Object.keys(data.ladders)) {
    const own = new Map();
    for (const [name, unit] of Object.entries(data.units)) {
      if (!data.never_offered.includes(name)) for (const word of unit.words) own.set(word, name);
    }
    for (const [spoken, meaning] of Object.entries(data.reads)) {
      for (const word of spoken.split(", ")) own.set(word, meaning[system]);
    }
    offered[system] = [...own.keys()];
    for (const [spoken, meaning] of Object.entries(data.elsewhere)) {
      for (const word of spoken.split(", ")) own.set(word, meaning);
    }
    for (const name of data.never_offered) {
      for (const word of data.units[name].words) own.set(word, name);
    }
    words[system] = own;
  }
  return { words, offered };
}

/** Read a whole, decimal, mixed or vulgar number exactly; throws Unreadable. @param {string} text */
export function parseNumber(text) {
  let bare = text.trim().replaceAll("⁄", "/");
  if (bare.length > MOST_SIGNS || !WHOLE_NUMBER.test(bare)) {
    throw say.refuse("not_a_number", { text });
  }
  if (WHOLE_SPACED.test(bare)) return spaced(bare);
  let total = ZERO;
  for (const [sign, [top, bottom]] of Object.entries(VULGAR)) {
    if (bare.includes(sign)) {
      total = total.plus(new Fraction(top, bottom));
      bare = bare.replaceAll(sign, " ");
    }
  }
  for (const part of bare.replace(/\s*\/\s*/g, "/").split(/\s+/).filter(Boolean)) {
    const [top, bottom] = part.split("/");
    if (bottom && /^0+$/.test(bottom)) {
      throw say.refuse("divides_by_nothing", { text });
    }
    total = total.plus(decimal(top).over(bottom ? Fraction.parse(bottom) : ONE));
  }
  return total;
}

/** Read "1 000"; "1 400" is asked. The twin of quantities._spaced. @param {string} digits */
function spaced(digits) {
  const [first, ...groups] = digits.split(/\s+/);
  const together = [first, ...groups].join("");
  if (!groups[0].startsWith("0")) {
    throw say.refuse("two_amounts", { text: digits, together, first, rest: groups.join(" ") });
  }
  return Fraction.parse(together);
}

/**
 * Read digits as English writes them; "1,5" and "1.500" are asked. The twin of quantities._decimal.
 * @param {string} digits
 */
function decimal(digits) {
  if (SURE.test(digits) && !COULD_BE_THOUSANDS.test(digits)) {
    return Fraction.parse(digits.replaceAll(",", ""));
  }
  const [whole, ...rest] = digits.split(/[.,]/);
  if (rest.length !== 1) throw say.refuse("not_a_number", { text: digits });
  const point = `${whole}.${rest[0].replace(/0+$/, "") || "0"}`;
  if (rest[0].length !== 3) {
    throw say.refuse("comma_for_a_point", { text: digits, point });
  }
  const together = `${whole}${rest[0]}`.replace(/^0+(?=\d)/, "");
  throw say.refuse("two_ways", { text: digits, one: point, other: together });
}

/**
 * Split "1 l vodka" into {low, high, unit, noun} and the rest; no amount gives null.
 * @param {string} text
 * @param {string} system
 * @param {Tables} tables
 * @returns {{amount: Amount | null, rest: string}}
 */
export function parseLeading(text, system, tables) {
  text = text.trim();
  const found = LEADING.exec(text);
  if (!found) return { amount: null, rest: text };
  const low = parseNumber(found[2]);
  const high = found[3] ? parseNumber(found[3]) : low;
  const odd = NO_NUMBER.exec(found[4]);
  if (odd) {
    throw say.refuse("not_a_number", { text: text.slice(0, -found[4].length) + odd[0] });
  }
  if (high.below(low)) {
    throw say.refuse("backwards", { low: found[2], high: found[3] });
  }
  return takeUnit({ low, high, unit: "", noun: "" }, found[4], system, tables);
}

/**
 * @param {Amount} amount
 * @param {string} rest
 * @param {string} system
 * @param {Tables} tables
 * @returns {{amount: Amount, rest: string}}
 */
function takeUnit(amount, rest, system, tables) {
  const glued = /^\p{L}/u.test(rest);
  const words = rest.trim().split(/\s+/).filter(Boolean);
  const known = tables.words[system];
  for (const size of [3, 2, 1]) {
    const phrase = words.slice(0, size).join(" ").replace(/[.,]+$/, "");
    const spoken = known.has(phrase) ? phrase : phrase.toLowerCase();
    if (words.length >= size && known.has(spoken)) {
      return { amount: { ...amount, unit: known.get(spoken) ?? "" }, rest: words.slice(size).join(" ") };
    }
  }
  if (glued && words.length) {
    throw say.refuse("not_a_unit", { word: words[0], mend: didYouMean(words[0], tables.offered[system]) });
  }
  const noun = words.length ? tables.counted[words[0].toLowerCase().replace(/,+$/, "")] : undefined;
  if (noun) return { amount: { ...amount, noun: noun[0] }, rest: words.slice(1).join(" ") };
  return { amount, rest: words.join(" ") };
}

/** @param {Amount} amount */
export function middle(amount) {
  return amount.low.plus(amount.high).over(2);
}

/**
 * What a unit measures: "volume", "mass", "length", or "count" for none.
 * @param {string} unit
 * @param {Tables} tables
 */
export function sizeOf(unit, tables) {
  return unit ? tables.units[unit].size : "count";
}

/** A unit in ml, g or mm; counted things are 1. @param {string} unit @param {Tables} tables */
export function baseSize(unit, tables) {
  return unit ? tables.units[unit].base : ONE;
}

/** Show a number with the kitchen's fractions where one is exact, else in decimals. @param {Fraction} value */
export function showNumber(value) {
  const whole = value.floor();
  const sign = SHOWN.get(value.minus(new Fraction(whole)).toString());
  return sign ? `${whole || ""}${sign}` : showDecimal(value);
}

/**
 * Show a number in decimals, halves rounded up, without empty zeros.
 * @param {Fraction} value
 * @param {number} [places]
 */
export function showDecimal(value, places = 2) {
  const size = 10n ** BigInt(places);
  const scaled = value.times(new Fraction(size)).plus(HALF).floor();
  const part = scaled % size;
  if (!part) return `${scaled / size}`;
  const digits = part.toString().padStart(places, "0").replace(/0+$/, "");
  return `${scaled / size}.${digits}`;
}

/**
 * The multiple of a step nearest to a value, halves up, never nothing.
 * @param {Fraction} value
 * @param {Fraction} step
 */
export function nearestMultiple(value, step) {
  const count = value.over(step).plus(HALF).floor();
  return step.times(new Fraction(count < 1n ? 1n : count));
}

/** @param {Fraction} value @param {Rung[]} rungs */
function rungOf(value, rungs) {
  return /** @type {Rung} */ (rungs.findLast((rung) => !rung.begins.above(value))); // the first begins at nothing
}

/**
 * Round ml, g or mm to the easiest step within `near`, and say it: {value, text}.
 * @param {Fraction} value
 * @param {string} system
 * @param {string} name
 * @param {Fraction} near
 * @param {Tables} tables
 * @param {boolean} [tight]
 */
export function roundMeasure(value, system, name, near, tables, tight = false) {
  const rungs = tables.ladders[system][name];
  const rung = rungOf(value, rungs);
  let best = value;
  for (const step of tight ? [...rung.steps, ...rung.finer] : rung.steps) {
    best = [step, ...rung.also]
      .map((size) => nearestMultiple(value, size))
      .reduce((one, other) => (distance(other, value).below(distance(one, value)) ? other : one));
    if (!distance(best, value).above(near.times(value))) break;
  }
  return { value: best, text: sayMeasure(best, rungs, tables) };
}

/** @param {Fraction} one @param {Fraction} other */
function distance(one, other) {
  return one.minus(other).abs();
}

/** @param {Fraction} value @param {Rung[]} rungs @param {Tables} tables */
function sayMeasure(value, rungs, tables) {
  const rung = rungOf(value, rungs);
  const words = [];
  let rest = value;
  for (const [place, part] of rung.parts.entries()) {
    const size = tables.units[part.unit].base;
    let number = rest.over(size);
    const last = place === rung.parts.length - 1;
    if (!last && !part.of.some((share) => number.over(share).whole)) {
      number = part.of[0].times(new Fraction(number.over(part.of[0]).floor()));
    }
    if (number.above(ZERO)) {
      words.push(sayUnit(number, part.unit, tables));
      rest = rest.minus(number.times(size));
    }
    if (rest.equals(ZERO)) break;
  }
  return words.join(rung.between);
}

/**
 * Say a number of a unit: decimals for metric, kitchen fractions for the rest.
 * @param {Fraction} number
 * @param {string} unit
 * @param {Tables} tables
 */
export function sayUnit(number, unit, tables) {
  const known = tables.units[unit];
  const shown = known.decimal ? showDecimal(number) : showNumber(number);
  return `${shown} ${number.above(ONE) ? known.many : known.shown}`;
}
