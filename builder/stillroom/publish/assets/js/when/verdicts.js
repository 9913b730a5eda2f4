/** What to tell a maker about a plan: core/when/verdicts.py in the browser. Pure. */

import SAID from "../../data/said/when-verdicts.js";
import { sayDay } from "../words/day-words.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

/** Return the verdict {code, text} on a plan of timeline.js. @param {Plan} facts */
export function giveVerdict(facts) {
  const code = verdictCode(facts, facts.way, facts.today);
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
  const given = Object.entries(blanks).flatMap(([name, day]) => (day === null ? [] : [[name, sayDay(day)]]));
  return { code, text: say(phraseName(code, facts), Object.fromEntries(given)) };
}

/** @param {Plan} facts @param {string} way @param {number | null} today */
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

/** @param {string} code @param {Plan} facts */
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
