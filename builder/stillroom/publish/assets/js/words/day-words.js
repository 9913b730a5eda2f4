/** Days and lengths of time in words: core/words/day_words.py in the browser. Pure. */

import SAID from "../../data/said/words-words.js";
import { partsOf } from "../when/dates.js";
import { speaker } from "./said.js";

const say = speaker(SAID);

/** Return a month's name, counted from 1. @param {number} month */
export function sayMonth(month) {
  return SAID.phrases.months[month - 1];
}

/** Return a month's short name: "Jan", "Sept". @param {number} month */
export function shortMonth(month) {
  return SAID.phrases.months_short[month - 1];
}

/** Return "Saturday 18 December 2027". @param {number} day */
export function sayDay(day) {
  const { weekday, month, ...rest } = partsOf(day);
  return say("day", { ...rest, weekday: SAID.phrases.weekdays[weekday], month: sayMonth(month) });
}

/** Return "18 Dec 2027". @param {number} day */
export function sayDayShort(day) {
  const { month, ...rest } = partsOf(day);
  return say("day_short", { ...rest, month: shortMonth(month) });
}

/** Return "18 Dec". @param {number} day */
export function sayDayAndMonth(day) {
  const { month, ...rest } = partsOf(day);
  return say("day_and_month", { ...rest, month: shortMonth(month) });
}

/** Return hands-on time as a cook says it: "1 h 35 min". @param {number} minutes */
export function sayMinutes(minutes) {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (!hours) return say("minutes", { minutes: rest });
  if (!rest) return say("hours", { hours });
  return say("hours_and_minutes", { hours, minutes: rest });
}
