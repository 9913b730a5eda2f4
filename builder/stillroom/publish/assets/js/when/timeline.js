/**
 * The dates of a batch in the browser: core/when/timeline.py. Pure: data in (timeline_data.py),
 * plain objects out, today an argument. What is said of them: verdicts.js.
 */

import { addSpan } from "./dates.js";
import { layOut } from "./stage-dates.js";

/**
 * Return the dates of a batch started on a day, for a giving day if there is one.
 * @param {any} recipe
 * @param {number} start
 * @param {number | null} [givingDay]
 * @param {number | null} [today]
 */
export function planForward(recipe, start, givingDay = null, today = null) {
  return plan(recipe, start, givingDay, today, "forward");
}

/**
 * Return the dates of a batch for a giving day: from its latest start, or from today if later.
 * @param {any} recipe
 * @param {number} givingDay
 * @param {number | null} [today]
 */
export function planBack(recipe, givingDay, today = null) {
  const last = latestStartBest(recipe, givingDay);
  const start = today !== null && last < today ? today : last;
  return plan(recipe, start, givingDay, today, "back");
}

/**
 * Return the last start day that has it at its best and finished by the giving day.
 * @param {WhenRecipe} recipe
 * @param {number} givingDay
 */
export function latestStartBest(recipe, givingDay) {
  return latest(recipe.stages, givingDay, naturalGivingDay);
}

/**
 * Return the last start day that has it usable and finished by the giving day.
 * @param {WhenRecipe} recipe
 * @param {number} givingDay
 */
export function latestStartUsable(recipe, givingDay) {
  return latest(recipe.stages, givingDay, firstGivingDay);
}

/** Return the first day it can go out at its best. @param {Stage[]} stages @param {number} start */
export function naturalGivingDay(stages, start) {
  return outFrom(stages, layOut(stages, start));
}

/**
 * Return the first day it can go out usable, finished before its best.
 * @param {Stage[]} stages
 * @param {number} start
 */
export function firstGivingDay(stages, start) {
  return outFrom(stages, laidUsable(stages, start));
}

/** @param {Stage[]} stages @param {number} start */
function firstUsableDay(stages, start) {
  const laid = laidUsable(stages, start);
  return Math.max(laid.usable, laid.ready);
}

/** @param {Stage[]} stages @param {number} start */
function laidUsable(stages, start) {
  const natural = layOut(stages, start);
  if (natural.usableHeld === null || natural.usable >= natural.best) return natural;
  return layOut(stages, start, Math.max(natural.usable, natural.usableHeld));
}

/** @param {Stage[]} stages @param {Laid} laid */
function outFrom(stages, laid) {
  const before = Math.max(0, ...stages.map((stage) => stage.before_giving ?? 0));
  return Math.max(laid.usable, laid.ready + before, laid.workDone + 1);
}

/** @param {Stage[]} stages @param {number} givingDay @param {(stages: Stage[], start: number) => number} out */
function latest(stages, givingDay, out) {
  let start = givingDay - (out(stages, givingDay) - givingDay);
  while (out(stages, start) > givingDay) start -= 1;
  while (out(stages, start + 1) <= givingDay) start += 1;
  return start;
}

/** @param {Stage[]} stages @param {Span | null} keep @param {number} givingDay @returns {number | null} */
function earliestFresh(stages, keep, givingDay) {
  if (!keep) return null;
  /** @param {number} start */
  const keptUntil = (start) => addSpan(layOut(stages, start).made, keep, { longest: false });
  let start = givingDay - (keptUntil(givingDay) - givingDay);
  while (keptUntil(start) < givingDay) start += 1;
  while (keptUntil(start - 1) >= givingDay) start -= 1;
  return start;
}

/** @param {Stage[]} stages @param {number} start @param {number} give */
function fitted(stages, start, give) {
  const natural = layOut(stages, start);
  if (outFrom(stages, natural) <= give || natural.bestHeld === null) return natural;
  const usable = laidUsable(stages, start);
  const spare = give - outFrom(stages, usable);
  const held = usable.usableHeld ?? usable.bestHeld ?? start;
  return layOut(stages, start, Math.max(natural.usable, held) + Math.max(spare, 0));
}

/** @param {Stage[]} stages @param {Laid} laid @param {number} give @returns {DatedStage[]} */
function anchored(stages, laid, give) {
  return stages
    .flatMap((stage) => {
      if (stage.before_giving === undefined) return [];
      const day = Math.max(give - stage.before_giving, Math.min(laid.ready, give), laid.start);
      const begins = (day - laid.start) * 1440;
      return [{
        name: stage.name, word: stage.word, role: stage.role,
        from: day, to: day, to_earliest: day, dates: [day],
        minutes: stage.minutes, times: 1, every: null, condition: "", where: stage.where ?? "",
        open_ended: false, begins_minute: begins, ends_minute: begins + stage.minutes,
      }];
    });
}

/**
 * @param {WhenRecipe} recipe
 * @param {number} start
 * @param {number | null} givingDay
 * @param {number | null} today
 * @param {string} way
 */
function plan(recipe, start, givingDay, today, way) {
  const { stages, keep } = recipe;
  const naturalOut = naturalGivingDay(stages, start);
  const give = givingDay ?? naturalOut;
  const laid = fitted(stages, start, give);
  const keepUntil = keep ? addSpan(laid.made, keep, { longest: false }) : null;
  const rows = [...laid.rows, ...anchored(stages, laid, give)];
  const tending = rows.filter((row) => row.role === "tend").flatMap((row) => row.dates);
  return {
    way,
    today,
    start,
    usable: laid.usable,
    best: laid.best,
    ready: laid.ready,
    made: laid.made,
    makingDone: laid.makingDone,
    handsDone: laid.handsDone,
    give,
    asked: givingDay !== null,
    keepUntil,
    stages: rows,
    tending: [...new Set(tending)].sort((a, b) => a - b),
    firstUsable: firstUsableDay(stages, start),
    firstOut: firstGivingDay(stages, start),
    naturalOut,
    latestStartBest: latestStartBest(recipe, give),
    latestStartUsable: latestStartUsable(recipe, give),
    earliestStartFresh: earliestFresh(stages, keep, give),
  };
}
