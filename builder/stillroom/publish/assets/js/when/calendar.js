/**
 * Makes a calendar file in the browser: core/when/calendar_entries.py and core/when/calendar_files.py,
 * with the same names of events, so that a file from the book and one made here update each
 * other. RFC 5545: CRLF, lines folded at 75 octets (3.1), text escaped (3.3.11). Pure.
 */

import SAID from "../../data/said/when-dates.js";
import { sayDay, sayMinutes } from "../words/day-words.js";
import { speaker } from "../words/said.js";
import { fromParts, isoDay, partsOf } from "./dates.js";

const say = speaker(SAID);

const PRODUCT = "-//Stillroom//Stillroom book//EN";
const DOMAIN = "stillroom";
const LINE = 75; // octets, RFC 5545, 3.1
const SEQUENCE_FROM = fromParts(2020, 1, 1);
/** @type {Record<string, string>} */
const FREQUENCIES = { day: "DAILY", week: "WEEKLY" };

/**
 * Return every entry of a plan: {uid, title, description, day, rule, reminders}.
 * @param {string} slug
 * @param {string} title
 * @param {Plan} plan
 * @returns {CalendarEntry[]}
 */
export function makeEntries(slug, title, plan) {
  const seen = new Map();
  /** @param {string} what */
  const uid = (what) => {
    const name = what.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
    seen.set(name, (seen.get(name) ?? 0) + 1);
    return `${slug}.${isoDay(plan.give).slice(0, 7)}.${name}-${seen.get(name)}@${DOMAIN}`;
  };
  const entries = plan.stages
    .filter((row) => row.dates.length)
    .map((row) => rowEntry(uid(row.word), title, row));
  /**
   * @param {string} word
   * @param {string} said
   * @param {number} day
   * @param {string} [description]
   * @param {number[]} [reminders]
   */
  const add = (word, said, day, description = "", reminders = []) =>
    entries.push({ uid: uid(word), title: say(`entry_${said}`, { title }), description, day, rule: "", reminders });
  if (plan.usable < plan.best) add("usable", "usable", plan.usable);
  add("best", "best", plan.best);
  const best = say("best_from", { day: sayDay(plan.best) });
  add("give", plan.asked ? "give" : "can_be_given", plan.give, best, [-15, 9]);
  if (plan.keepUntil !== null) add("keep", "keep", plan.keepUntil, say("keeps_today"), [9]);
  return entries;
}

/** @param {string} uid @param {string} title @param {DatedStage} row @returns {CalendarEntry} */
function rowEntry(uid, title, row) {
  const hands = row.minutes ? say("of_work", { minutes: sayMinutes(row.minutes) }) : "";
  const said = [hands, row.where, row.condition].filter(Boolean).join(", ");
  return {
    uid,
    title: say("entry", { count: row.times, name: row.name, title }),
    description: said ? `${said}.` : "",
    day: row.dates[0],
    rule: makeRule(row),
    reminders: row.role === "tend" ? [9] : [-15, 9],
  };
}

/**
 * Return the recurrence that expands to exactly the stage's dates, or "" for one date.
 * @param {DatedStage} row
 */
export function makeRule(row) {
  const count = row.dates.length;
  if (count < 2) return "";
  if (!row.every) return `FREQ=DAILY;COUNT=${count}`;
  const [step, , unit] = row.every;
  if (FREQUENCIES[unit]) return rule(FREQUENCIES[unit], step, count);
  const last = partsOf(row.from).day;
  const days = last > 28 ? Array.from({ length: last - 27 }, (_, n) => 28 + n) : [last];
  const position = days.length > 1 ? ";BYSETPOS=-1" : "";
  const months = step * (unit === "year" ? 12 : 1);
  return `${rule("MONTHLY", months, count)};BYMONTHDAY=${days.join(",")}${position}`;
}

/** @param {string} frequency @param {number} step @param {number} count */
const rule = (frequency, step, count) =>
  `FREQ=${frequency};COUNT=${count}${step > 1 ? `;INTERVAL=${step}` : ""}`;

/**
 * Return the text of a calendar file; `madeOn` stamps it and numbers its revision.
 * @param {string} name
 * @param {CalendarEntry[]} entries
 * @param {number} madeOn
 * @param {string} [url]
 */
export function makeCalendar(name, entries, madeOn, url = "") {
  const lines = [
    "BEGIN:VCALENDAR", "VERSION:2.0", `PRODID:${PRODUCT}`, "METHOD:PUBLISH",
    `X-WR-CALNAME:${name.split(/\s+/).join(" ").trim()}`,
    ...entries.flatMap((entry) => eventLines(entry, madeOn, url)),
    "END:VCALENDAR",
  ];
  return `${lines.map(foldLine).join("\r\n")}\r\n`;
}

/** @param {CalendarEntry} entry @param {number} madeOn @param {string} url */
function eventLines(entry, madeOn, url) {
  /** @param {number} day */
  const compact = (day) => isoDay(day).replaceAll("-", "");
  return [
    "BEGIN:VEVENT",
    `SUMMARY:${escapeText(entry.title)}`,
    `DTSTART;VALUE=DATE:${compact(entry.day)}`,
    `DTEND;VALUE=DATE:${compact(entry.day + 1)}`,
    `DTSTAMP:${compact(madeOn)}T000000Z`,
    `UID:${escapeText(entry.uid)}`,
    `SEQUENCE:${madeOn - SEQUENCE_FROM}`,
    ...(entry.rule ? [`RRULE:${entry.rule}`] : []),
    "CATEGORIES:Stillroom",
    ...(entry.description ? [`DESCRIPTION:${escapeText(entry.description)}`] : []),
    "TRANSP:TRANSPARENT",
    ...(url ? [`URL:${url}`] : []),
    ...entry.reminders.flatMap((hours) => [
      "BEGIN:VALARM", "ACTION:DISPLAY", `DESCRIPTION:${escapeText(entry.title)}`,
      `TRIGGER:${hours < 0 ? "-" : ""}PT${Math.abs(hours)}H`, "END:VALARM",
    ]),
    "END:VEVENT",
  ];
}

/** Escape a text value: backslash, semicolon, comma and line end. @param {string} text */
export function escapeText(text) {
  return text.replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\r\n|\n|\r/g, "\\n");
}

/**
 * Return a line in pieces of fewer than 75 octets: between two letters, and in no escape.
 * @param {string} line
 */
export function foldLine(line) {
  const encoder = new TextEncoder();
  const letters = [...line];
  const pieces = [];
  let [begin, octets] = [0, 0];
  for (const [place, letter] of letters.entries()) {
    const size = encoder.encode(letter).length;
    if (place > begin && octets + size >= LINE) {
      // a sign that escapes goes with what it escapes (RFC 5545, RFC 6868)
      const escapes = ["\\", "^"].includes(letters[place - 1]) && place - 1 > begin;
      const end = escapes ? place - 1 : place;
      pieces.push(letters.slice(begin, end).join(""));
      [begin, octets] = [end, place - end];
    }
    octets += size;
  }
  return [...pieces, letters.slice(begin).join("")].join("\r\n ");
}
