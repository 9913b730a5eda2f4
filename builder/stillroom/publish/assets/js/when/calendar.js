/**
 * Makes a calendar file in the browser: core/when/calendar_entries.py and publish/calendar_files.py,
 * with the same names of events, so that a file from the book and one made here update each
 * other. RFC 5545: CRLF, lines folded at 75 octets (3.1), text escaped (3.3.11). Pure.
 */

import { fromParts, isoDay, partsOf, sayDay, sayMinutes } from "./dates.js";

const PRODUCT = "-//Stillroom//Stillroom book//EN";
const DOMAIN = "stillroom";
const SEQUENCE_FROM = fromParts(2020, 1, 1);
const FREQUENCIES = { day: "DAILY", week: "WEEKLY" };

/** Return every entry of a plan: {uid, title, description, day, rule, reminders}. */
export function makeEntries(slug, title, plan) {
  const seen = new Map();
  const uid = (what) => {
    const name = what.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
    seen.set(name, (seen.get(name) ?? 0) + 1);
    return `${slug}.${isoDay(plan.give).slice(0, 7)}.${name}-${seen.get(name)}@${DOMAIN}`;
  };
  const entries = plan.stages
    .filter((row) => row.dates.length)
    .map((row) => rowEntry(uid(row.word), title, row));
  const add = (word, said, day, description = "", reminders = []) =>
    entries.push({ uid: uid(word), title: `${said}: ${title}`, description, day, rule: "", reminders });
  if (plan.usable < plan.best) add("usable", "Usable now", plan.usable);
  add("best", "At its best", plan.best);
  add("give", plan.asked ? "Give" : "Can be given", plan.give, `At its best from ${sayDay(plan.best)}.`, [-15, 9]);
  if (plan.keepUntil !== null) {
    add("keep", "Use up", plan.keepUntil, "It keeps unopened until today.", [9]);
  }
  return entries;
}

function rowEntry(uid, title, row) {
  const often = { 1: "", 2: " twice" }[row.times] ?? ` ${row.times} times`;
  const said = [row.minutes ? `${sayMinutes(row.minutes)} of work` : "", row.where, row.condition]
    .filter(Boolean).join(", ");
  return {
    uid,
    title: `${row.name}${often}: ${title}`,
    description: said ? `${said}.` : "",
    day: row.dates[0],
    rule: makeRule(row),
    reminders: row.role === "tend" ? [9] : [-15, 9],
  };
}

/** Return the recurrence that expands to exactly the stage's dates, or "" for one date. */
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

const rule = (frequency, step, count) =>
  `FREQ=${frequency}${step > 1 ? `;INTERVAL=${step}` : ""};COUNT=${count}`;

/** Return the text of a calendar file; `madeOn` stamps it and numbers its revision. */
export function makeCalendar(name, entries, madeOn, url = "") {
  const lines = [
    "BEGIN:VCALENDAR", "VERSION:2.0", `PRODID:${PRODUCT}`, "METHOD:PUBLISH",
    `X-WR-CALNAME:${escapeText(name)}`,
    ...entries.flatMap((entry) => eventLines(entry, madeOn, url)),
    "END:VCALENDAR",
  ];
  return `${lines.map(foldLine).join("\r\n")}\r\n`;
}

function eventLines(entry, madeOn, url) {
  const compact = (day) => isoDay(day).replaceAll("-", "");
  return [
    "BEGIN:VEVENT",
    `SUMMARY:${escapeText(entry.title)}`,
    `DTSTART;VALUE=DATE:${compact(entry.day)}`,
    `DTEND;VALUE=DATE:${compact(entry.day + 1)}`,
    `DTSTAMP:${compact(madeOn)}T000000Z`,
    `UID:${entry.uid}`,
    `SEQUENCE:${madeOn - SEQUENCE_FROM}`,
    ...(entry.rule ? [`RRULE:${entry.rule}`] : []),
    ...(entry.description ? [`DESCRIPTION:${escapeText(entry.description)}`] : []),
    ...(url ? [`URL:${url}`] : []),
    "CATEGORIES:Stillroom",
    "TRANSP:TRANSPARENT",
    ...entry.reminders.flatMap((hours) => [
      "BEGIN:VALARM", "ACTION:DISPLAY", `DESCRIPTION:${escapeText(entry.title)}`,
      `TRIGGER:${hours < 0 ? "-" : ""}PT${Math.abs(hours)}H`, "END:VALARM",
    ]),
    "END:VEVENT",
  ];
}

/** Escape a text value: backslash, semicolon, comma and line end. */
export function escapeText(text) {
  return text.replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\r?\n/g, "\\n");
}

/** Fold a line so that none is longer than 75 octets, never within a letter. */
export function foldLine(line) {
  const encoder = new TextEncoder();
  const lines = [];
  let current = "";
  let octets = 0;
  for (const letter of line) {
    const size = encoder.encode(letter).length;
    if (octets + size > 75) {
      lines.push(current);
      [current, octets] = [" ", 1];
    }
    current += letter;
    octets += size;
  }
  return [...lines, current].join("\r\n");
}
