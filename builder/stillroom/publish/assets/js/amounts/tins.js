/** Which tin another batch wants to stand as high in: the twin of tins.py. */

import SAID from "../../data/said/amounts-amounts.js";
import { speaker } from "../words/said.js";
import { showDecimal } from "./amounts.js";
import { Fraction, HALF, ONE } from "./fraction.js";

const say = speaker(SAID);

const QUARTER_CIRCLE = new Fraction(3126535n, 995207n * 4n); // pi as Python's limit_denominator(10**6)
const INCH = new Fraction(254, 100);
const TIN = new RegExp(
  String.raw`^(?:an? |one )?(\d{1,9}(?:\.\d{1,9})?)(?:\s*(?:cm)?\s*(?:x|×|by)\s*(\d{1,9}(?:\.\d{1,9})?))?`
  + String.raw`[\s-]*(cm|inch(?:es)?|in)\b[\s-]*.*\b(?:tin|pan|dish|mould|tray)\b.*$`, "i",
);
/** @type {Record<string, number>} */
const WIDEST = { cm: 40, inch: 16 };

/** @param {string} words @returns {Tin | null} */
function readTin(words) {
  const found = TIN.exec(words);
  if (!found || !Number(found[1])) return null;
  const unit = found[3].toLowerCase() === "cm" ? "cm" : "inch";
  return { words, unit, across: found[1], along: found[2] ?? null };
}

/**
 * Read the tin a cook has: "24 cm round tin", or shorter "24 cm round"; null for no tin.
 * @param {string} text
 */
export function readOwnTin(text) {
  return readTin(text.trim()) ?? readTin(say("tin", { size: text.trim() }));
}

/** @param {Tin} tin */
function areaOf({ words, unit, across, along }) {
  const cm = unit === "inch" ? INCH : ONE;
  const own = Fraction.of(across);
  const square = own.times(along ? Fraction.of(along) : own).times(cm).times(cm);
  return !along && words.toLowerCase().includes("round") ? square.times(QUARTER_CIRCLE) : square;
}

/** By how much a recipe grows to stand as high in another tin. @param {Tin} own @param {Tin} other */
export function panFactor(own, other) {
  return areaOf(other).over(areaOf(own));
}

/**
 * Return the sentence of a tin {words, unit, across, along} at a factor; "" for the same tin.
 * @param {Tin | null} tin
 * @param {Fraction} factor
 */
export function tinNote(tin, factor) {
  if (!tin || factor.equals(ONE)) return "";
  const choices = factor.whole ? [say("of_them", { count: factor })] : [];
  const own = Fraction.parse(tin.across);
  if (tin.along) {
    const area = showDecimal(own.times(Fraction.parse(tin.along)).times(factor), 0);
    choices.push(say("one_of", { size: area, unit: say(tin.unit === "cm" ? "square_cm" : "square_inches") }));
  } else {
    const across = acrossOf(tin, factor);
    if (new Fraction(across).equals(own)) return "";
    if (across) choices.push(say("one_of", { size: across, unit: tin.unit }));
  }
  if (!choices.length) choices.push(say("share_it"));
  return say("to_stand_as_high", {
    times: showDecimal(factor), tin: tin.words, choices: choices.join(say("or_else")),
  });
}

/**
 * The nearest whole size of the same shape, 0 when no oven takes it.
 * @param {Tin} tin
 * @param {Fraction} factor
 */
function acrossOf(tin, factor) {
  for (let size = 1; size <= WIDEST[tin.unit]; size += 1) {
    if (!factor.above(panFactor(tin, { ...tin, across: new Fraction(size).plus(HALF) }))) return size;
  }
  return 0;
}
