// The date mark of a card, worked out again when the reader types another made-on day: the same
// rule and the same words as core/label/date_marks.py (Annex X and Art. 24 of Regulation (EU)
// No 1169/2011). tests/data/date_marks.json is read by both.

import { addSpan, isoDay, parseDay, partsOf } from "../when/dates.js";

/** @type {Span} */
const FINE_FOR = [3, 3, "month"];
/** @type {Span} */
const MONTH_FOR = [18, 18, "month"];
// a span may stand beside them: published guidance for a food of which something is not known
const UNDATED = ["none", "not known"];

/**
 * The mark of something made on an ISO day. `keeps` is {term, span: [low, high, unit], language,
 * words: {"best before", "best before end", "use by"}}. Returns {text, iso}, or null for no day or
 * no mark.
 * @param {string} made
 * @param {Keeps} keeps
 */
export function markDate(made, keeps) {
  const day = parseDay(made);
  if (day === null || UNDATED.includes(keeps.term) || !keeps.span) return null;
  const last = addSpan(day, keeps.span, { longest: false });
  const iso = isoDay(last);
  if (keeps.term === "use by") {
    return { text: `${keeps.words["use by"]} ${say(last, "day", keeps.language, true)}`, iso };
  }
  const fineness = finenessFor(keeps.span);
  const term = fineness === "day" ? "best before" : "best before end";
  // a month or a year would promise its last day: the last whole month within it is named
  const month = last + 1 - partsOf(last + 1).day;
  if (fineness !== "day" && (month !== last || partsOf(last).month !== 12)) {
    return { text: `${keeps.words[term]} ${say(month, "month", keeps.language, true)}`, iso };
  }
  const withYear = partsOf(last).year !== partsOf(day).year;
  return { text: `${keeps.words[term]} ${say(last, fineness, keeps.language, withYear)}`, iso };
}

/** A day in full in the book's language: "25 November 2026". @param {string} made @param {string} language */
export function sayDate(made, language) {
  const day = parseDay(made);
  return day === null ? "" : say(day, "day", language, true);
}

/** @param {Span} span */
function finenessFor(span) {
  const start = /** @type {number} */ (parseDay("2025-01-01"));
  const end = addSpan(start, span, { longest: false });
  if (end <= addSpan(start, FINE_FOR)) return "day";
  return end <= addSpan(start, MONTH_FOR) ? "month" : "year";
}

/** @param {number} day @param {string} fineness @param {string} language @param {boolean} withYear */
function say(day, fineness, language, withYear) {
  const { year } = partsOf(day);
  if (fineness === "year") return String(year);
  /** @type {Intl.DateTimeFormatOptions} */
  const parts = { timeZone: "UTC", month: "long" };
  if (fineness === "day") parts.day = "numeric";
  if (fineness === "month" || withYear) parts.year = "numeric";
  const stamp = new Date(`${isoDay(day)}T00:00:00Z`);
  return new Intl.DateTimeFormat(language.replace("_", "-"), parts).format(stamp);
}
