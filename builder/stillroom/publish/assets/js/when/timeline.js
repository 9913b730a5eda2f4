/**
 * The dates of a batch in the browser: core/when/timeline.py and core/when/verdicts.py, the same dates and
 * the same words. Pure: data in (core.timeline_data), plain objects out, today an argument.
 */

import { addSpan, isoDay, sayDay } from "./dates.js";
import { firstDay, layOut } from "./stage-dates.js";

/** Return the dates of a batch started on a day, for a giving day if there is one. */
export function planForward(recipe, start, givingDay = null, today = null) {
  return plan(recipe, start, givingDay, today, "forward");
}

/** Return the dates of a batch for a giving day: from its latest start, or from today if later. */
export function planBack(recipe, givingDay, today = null) {
  const latest = latestStartBest(recipe, givingDay);
  const start = today !== null && latest < today ? today : latest;
  return plan(recipe, start, givingDay, today, "back");
}

/** Return the last start day that has it at its best and finished by the giving day. */
export function latestStartBest(recipe, givingDay) {
  return latest(recipe.stages, givingDay, naturalGivingDay);
}

/** Return the last start day that has it usable and finished by the giving day. */
export function latestStartUsable(recipe, givingDay) {
  return latest(recipe.stages, givingDay, firstGivingDay);
}

/** Return the first day it can go out at its best. */
export function naturalGivingDay(stages, start) {
  return outFrom(stages, layOut(stages, start));
}

/** Return the first day it can go out usable, finished before its best. */
export function firstGivingDay(stages, start) {
  return outFrom(stages, laidUsable(stages, start));
}

function firstUsableDay(stages, start) {
  const laid = laidUsable(stages, start);
  return Math.max(laid.usable, laid.ready);
}

function laidUsable(stages, start) {
  const natural = layOut(stages, start);
  if (natural.usableHeld === null || natural.usable >= natural.best) return natural;
  return layOut(stages, start, Math.max(natural.usable, natural.usableHeld));
}

function outFrom(stages, laid) {
  const before = Math.max(0, ...stages.map((stage) => stage.before_giving ?? 0));
  return Math.max(laid.usable, laid.ready + before, laid.workDone + 1);
}

function latest(stages, givingDay, out) {
  let start = givingDay - (out(stages, givingDay) - givingDay);
  while (out(stages, start) > givingDay) start -= 1;
  while (out(stages, start + 1) <= givingDay) start += 1;
  return start;
}

function earliestFresh(stages, keep, givingDay) {
  if (!keep) return null;
  const keptUntil = (start) => addSpan(layOut(stages, start).made, keep, { longest: false });
  let start = givingDay - (keptUntil(givingDay) - givingDay);
  while (keptUntil(start) < givingDay) start += 1;
  while (keptUntil(start - 1) >= givingDay) start -= 1;
  return start;
}

function fitted(stages, start, give) {
  const natural = layOut(stages, start);
  if (outFrom(stages, natural) <= give || natural.bestHeld === null) return natural;
  const usable = laidUsable(stages, start);
  const spare = give - outFrom(stages, usable);
  const held = usable.usableHeld ?? usable.bestHeld ?? start;
  return layOut(stages, start, Math.max(natural.usable, held) + Math.max(spare, 0));
}

function anchored(stages, laid, give) {
  return stages
    .filter((stage) => stage.before_giving !== undefined)
    .map((stage) => {
      const day = Math.max(give - stage.before_giving, Math.min(laid.ready, give), laid.start);
      const begins = (day - laid.start) * 1440;
      return {
        name: stage.name, word: stage.word, role: stage.role,
        from: day, to: day, to_earliest: day, dates: [day],
        minutes: stage.minutes, times: 1, every: null, condition: "", where: stage.where ?? "",
        open_ended: false, begins_minute: begins, ends_minute: begins + stage.minutes,
      };
    });
}

function plan(recipe, start, givingDay, today, way) {
  const { stages, keep } = recipe;
  const naturalOut = naturalGivingDay(stages, start);
  const give = givingDay ?? naturalOut;
  const laid = fitted(stages, start, give);
  const keepUntil = keep ? addSpan(laid.made, keep, { longest: false }) : null;
  const rows = [...laid.rows, ...anchored(stages, laid, give)];
  const tending = rows.filter((row) => row.role === "tend").flatMap((row) => row.dates);
  const result = {
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
  result.verdict = giveVerdict(result, recipe.phrases, way, today);
  return result;
}

function giveVerdict(facts, phrases, way, today) {
  const code = verdictCode(facts, way, today);
  const blanks = {
    start: facts.start,
    usable: code === "late_for_best" ? facts.firstUsable : facts.usable,
    best: facts.best,
    give: facts.give,
    ready: facts.firstOut,
    keep: facts.keepUntil,
    last_best: facts.latestStartBest,
    last_usable: facts.latestStartUsable,
    fresh: facts.earliestStartFresh,
  };
  const phrase = phrases[phraseName(code, facts)];
  return { code, text: phrase.replace(/\{(\w+)\}/g, (_, name) => sayDay(blanks[name])) };
}

function verdictCode(facts, way, today) {
  if (!facts.asked) return "ready";
  if (today !== null && facts.give < today) return "passed";
  if (facts.keepUntil !== null && facts.keepUntil < facts.give) {
    return way === "batch" ? "past_keep" : "stale";
  }
  if (facts.give < facts.firstOut) {
    const ages = facts.makingDone <= facts.give && facts.give < facts.usable;
    return ages ? "late_for_giving" : "cannot";
  }
  if (facts.give < facts.naturalOut) return "late_for_best";
  if (way !== "back") return "in_time";
  return today === facts.latestStartBest ? "start_today" : "start_by";
}

function phraseName(code, facts) {
  if (code === "ready") {
    const one = facts.usable >= facts.best ? "_one" : "";
    return `ready${one}${facts.keepUntil === null ? "_no_keep" : ""}`;
  }
  if (code === "late_for_giving" && facts.handsDone > facts.give) return "late_for_giving_in_its_jar";
  if (code === "late_for_best" && facts.best <= facts.give) return "late_to_finish";
  const same = facts.latestStartBest === facts.latestStartUsable;
  return same && (code === "start_by" || code === "in_time") ? `${code}_one` : code;
}

/** Return what can still be made by a day, what fits best first: core.year.still_time. */
export function stillTime(recipes, givingDay, now) {
  const order = ["best", "usable", "late"];
  return recipes
    .map((recipe) => {
      const best = latestStartBest(recipe, givingDay);
      const usable = latestStartUsable(recipe, givingDay);
      const by = now <= best ? best : usable;
      const fits = now > by ? "late" : now <= best ? "best" : "usable";
      return { recipe, fits, by, spare: by - now, plan: planBack(recipe, givingDay, now) };
    })
    .sort((one, two) =>
      order.indexOf(one.fits) - order.indexOf(two.fits)
      || Math.abs(one.spare) - Math.abs(two.spare)
      || (one.recipe.title < two.recipe.title ? -1 : 1));
}

/** Return a plan, and what the season adds, as the document `stillroom dates --json` prints. */
export function timelineDocument(plan, season = null) {
  return {
    start: isoDay(plan.start),
    usable: isoDay(plan.usable),
    best: isoDay(plan.best),
    give: plan.asked ? isoDay(plan.give) : null,
    can_be_given: plan.asked ? null : isoDay(plan.give),
    keep_until: plan.keepUntil === null ? null : isoDay(plan.keepUntil),
    tending: plan.tending.map(isoDay),
    stages: plan.stages.map((row) => ({
      name: row.name, from: isoDay(firstDay(row)), to: isoDay(row.to),
    })),
    verdict: plan.verdict.text,
    verdict_code: plan.verdict.code,
    ready: isoDay(plan.ready),
    latest_start_best: isoDay(plan.latestStartBest),
    latest_start_usable: isoDay(plan.latestStartUsable),
    hands_on_minutes: plan.stages.reduce(
      (sum, row) => sum + row.minutes * row.times * row.dates.length, 0,
    ),
    season: season?.text ?? null,
    season_start: season?.start == null ? null : isoDay(season.start),
  };
}
