/** A timeline in words: core/when/timeline_words.py in the browser. Pure. */

import SAID from "../../data/said/when-dates.js";
import { sayDay, sayMinutes } from "../words/day-words.js";
import { speaker } from "../words/said.js";
import { firstDay } from "./stage-dates.js";

const say = speaker(SAID);

/**
 * Return a rhythm in words: "every day", "every 3 days", "twice a day".
 * @param {Span | null} every
 * @param {number} [times]
 */
export function sayRhythm(every, times = 1) {
  if (!every) return say("once");
  const [low, high, unit] = every;
  if (times > 1) return say(`often_${unit}`, { count: times });
  return say(`every_${unit}`, { count: high, number: low === high ? low : `${low}-${high}` });
}

/**
 * Return every stage with its dates in words, by date: [{name, when, handsOn, role, from}].
 * @param {Plan} plan
 * @returns {DateRow[]}
 */
export function describeDates(plan) {
  const rows = plan.stages.map(describeRow);
  /** @param {string} name @param {string} role @param {string} way @param {number} from */
  const age = (name, role, way, from) =>
    rows.push({ name: say(name), when: way ? say(way, { day: sayDay(from) }) : sayDay(from), handsOn: "", role, from });
  if (plan.usable < plan.best) age("usable", "usable", "from", plan.usable);
  age("best", "best", "from", plan.best);
  if (plan.asked) age("give", "give", "", plan.give);
  else age("can_be_given", "give", "from", plan.give);
  if (plan.keepUntil !== null) age("keeps", "keep", "until", plan.keepUntil);
  return rows.sort((one, two) => one.from - two.from);
}

/** @param {DatedStage} row @returns {DateRow} */
function describeRow(row) {
  let handsOn = row.minutes ? sayMinutes(row.minutes) : "";
  let when = sayDay(row.dates[0] ?? row.from);
  if (row.role === "tend" && row.dates.length > 1) {
    const [first, last] = [sayDay(row.dates[0]), sayDay(row.dates[row.dates.length - 1])];
    when = say("tended", { rhythm: sayRhythm(row.every, row.times), first, last });
    handsOn = say("each_time", { count: row.dates.length * row.times, minutes: handsOn });
  } else if (row.to > row.from) {
    when = say("days", { first: sayDay(row.from), last: sayDay(row.to) });
    if (row.condition) when = say("depends", { condition: row.condition, when });
    else if (row.to_earliest < row.to) when = say("at_the_earliest", { when, day: sayDay(row.to_earliest) });
  }
  if (row.where) when = say("where", { when, where: row.where });
  return { name: row.name, when, handsOn, role: row.role, from: firstDay(row) };
}

/**
 * Return one paragraph: what is begun, how it is tended, when it may be used and given.
 * @param {Plan} plan
 * @param {string} title
 */
export function sumUp(plan, title) {
  /** @type {[number, string][]} */
  const told = [];
  for (const row of plan.stages) {
    const { name, role, every, times, dates } = row;
    if (role === "tend" && dates.length > 1) {
      const words = { name, rhythm: sayRhythm(every, times), day: sayDay(dates[dates.length - 1]) };
      told.push([firstDay(row), say("tended_until", words)]);
    } else if (["tend", "strain", "bottle"].includes(role)) {
      told.push([dates[0], say("done_on", { name, day: sayDay(dates[0]) })]);
    }
  }
  /** @param {string} name @param {number} day */
  const age = (name, day) => told.push([day, say(name, { day: sayDay(day) })]);
  if (plan.usable < plan.best) age("usable_from", plan.usable);
  age("best_from", plan.best);
  age(plan.asked ? "given_on" : "can_be_given_on", plan.give);
  if (plan.keepUntil !== null) age("keeps_until", plan.keepUntil);
  const begun = say("begun", { title, day: sayDay(plan.start) });
  return [begun, ...told.sort((one, two) => one[0] - two[0]).map((one) => one[1])].join(" ");
}
