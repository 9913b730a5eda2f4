/**
 * When the main produce of a recipe is to be had, beside when the recipe must be begun:
 * core/when/season.py in the browser, the same days and the same words. Pure; today is an argument.
 */

import SAID from "../../data/said/when-season.js";
import { sayDay, sayMonth } from "../words/day-words.js";
import { joinAnd } from "../words/joining.js";
import { speaker } from "../words/said.js";
import { fromParts, partsOf } from "./dates.js";
import { planForward } from "./timeline.js";

const say = speaker(SAID);

/**
 * Return what the season adds to a latest start, {start, text, aside}; null when it adds nothing.
 * `start` is null when no start in season is left; a season that begins by `latestUsable` is then
 * named as what has it ready, though not at its best.
 * @param {any} recipe
 * @param {number} latestStart
 * @param {number} givingDay
 * @param {number | null} [now]
 * @param {number | null} [latestUsable]
 */
export function findSeason(recipe, latestStart, givingDay, now = null, latestUsable = null) {
  const { season } = recipe;
  const wanted = now === null ? latestStart : Math.max(latestStart, now);
  if (nothingToSay(season, wanted) || wanted > givingDay) return null;
  let day = monthBefore(wanted);
  while (!season.includes(partsOf(day).month)) day = monthBefore(day);
  const { keepUntil } = planForward(recipe, day, givingDay);
  const wouldKeep = keepUntil === null || keepUntil >= givingDay;
  if (wouldKeep && (now === null || day >= now)) return note(recipe, "season_start", day, { latest: latestStart });
  const first = firstAfter(wanted, season);
  if (latestUsable !== null && first <= latestUsable) {
    return note(recipe, "season_usable", null, { first });
  }
  return note(recipe, wouldKeep ? "season_gone" : "season_would_not_keep");
}

/**
 * Return what the season says of a batch begun on a day; null when it is then in season.
 * @param {WhenRecipe} recipe
 * @param {number} start
 */
export function seasonOfStart(recipe, start) {
  return nothingToSay(recipe.season, start) ? null : note(recipe, "season_begun");
}

/**
 * Return whether nothing is to be said: no season is known, or the day lies in it.
 * @param {number[]} season
 * @param {number} day
 */
function nothingToSay(season, day) {
  return !season?.length || season.includes(partsOf(day).month);
}

/** Return the last day of the month before. @param {number} day */
function monthBefore(day) {
  const { year, month } = partsOf(day);
  return fromParts(year, month, 0);
}

/** Return the first day in season after one that is not. @param {number} day @param {number[]} season */
function firstAfter(day, season) {
  let first = day;
  while (!season.includes(partsOf(first).month)) {
    const { year, month } = partsOf(first);
    first = fromParts(year, month + 1, 1);
  }
  return first;
}

/**
 * @param {any} recipe
 * @param {string} code
 * @param {number | null} [start]
 * @param {Record<string, number>} [days]
 */
function note({ season }, code, start = null, days = {}) {
  /** @type {Texts} */
  const blanks = { months: sayMonths(season) };
  for (const [name, day] of Object.entries({ start, ...days })) {
    if (day !== null) blanks[name] = sayDay(day);
  }
  const aside = start === null ? "season_aside" : "season_aside_start";
  return { start, text: say(code, blanks), aside: say(aside, blanks) };
}

/** @param {number[]} season */
function sayMonths(season) {
  const names = season.map(sayMonth);
  const runsOn = season.slice(1).every((month, n) => (season[n] % 12) + 1 === month);
  if (runsOn && names.length > 2) return say("months_run", { first: names[0], last: names.at(-1) });
  return joinAnd(names);
}
