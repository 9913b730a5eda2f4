/**
 * The dates of a batch begun while its produce is to be had: plan_in_season of core/when/season.py
 * in the browser. Pure; today is an argument.
 */

import SAID from "../../data/said/when-season.js";
import { sayDay } from "../words/day-words.js";
import { speaker } from "../words/said.js";
import { findSeason } from "./season.js";
import { planBack, planForward } from "./timeline.js";
import { giveVerdict } from "./verdicts.js";

const say = speaker(SAID);

/**
 * Return {plan, season, verdict}: the dates for a giving day, begun on the last day in season that has it at
 * its best if there is one to come, else by its age alone; and what the season adds.
 * @param {any} recipe
 * @param {number} givingDay
 * @param {number | null} [now]
 */
export function planInSeason(recipe, givingDay, now = null) {
  const aged = planBack(recipe, givingDay, now);
  const season = findSeason(recipe, aged.latestStartBest, givingDay, now, aged.latestStartUsable);
  if (season === null || season.start === null) return { plan: aged, season, verdict: giveVerdict(aged) };
  const plan = planForward(recipe, season.start, givingDay, now);
  return { plan, season, verdict: startInSeason(plan, now) };
}

/** @param {Plan} plan @param {number | null} now */
function startInSeason(plan, now) {
  let code = "start_in_season";
  if (plan.start === now) code = "start_in_season_today";
  else if (plan.latestStartBest === plan.latestStartUsable) code = "start_in_season_one";
  return { code: "start_in_season", text: say(code, { start: sayDay(plan.start), give: sayDay(plan.give) }) };
}
