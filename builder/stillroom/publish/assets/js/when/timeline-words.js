/** A timeline in words: core/when/timeline_words.py in the browser. Pure. */

import { sayDay, sayMinutes } from "./dates.js";
import { firstDay } from "./stage-dates.js";

const OFTEN = { 2: "twice", 3: "three times", 4: "four times" };

/** Return a span [low, high, unit] as a cook writes it. */
export function saySpan([low, high, unit]) {
  return `${low === high ? low : `${low}-${high}`} ${unit}${high === 1 ? "" : "s"}`;
}

/** Return a rhythm in words: "every day", "every 3 days", "twice a day". */
export function sayRhythm(every, times = 1) {
  if (!every) return "once";
  if (times > 1) return `${OFTEN[times] ?? `${times} times`} a ${every[2]}`;
  return every[1] === 1 ? `every ${every[2]}` : `every ${saySpan(every)}`;
}

/** Return every stage with its dates in words, by date: [{name, when, handsOn, role, from}]. */
export function describeDates(plan) {
  const rows = plan.stages.map(describeRow);
  const age = (name, role, words, from) => rows.push({ name, when: words, handsOn: "", role, from });
  if (plan.usable < plan.best) age("Usable", "usable", `from ${sayDay(plan.usable)}`, plan.usable);
  age("At its best", "best", `from ${sayDay(plan.best)}`, plan.best);
  if (plan.asked) age("Give", "give", sayDay(plan.give), plan.give);
  else age("Can be given", "give", `from ${sayDay(plan.give)}`, plan.give);
  if (plan.keepUntil !== null) {
    age("Keeps", "keep", `until ${sayDay(plan.keepUntil)}`, plan.keepUntil);
  }
  return rows.sort((one, two) => one.from - two.from);
}

function describeRow(row) {
  const where = row.where ? `, ${row.where}` : "";
  let handsOn = row.minutes ? sayMinutes(row.minutes) : "";
  let when = sayDay(row.dates[0] ?? row.from);
  if (row.role === "tend" && row.dates.length > 1) {
    when = `${sayRhythm(row.every, row.times)}, ${sayDay(row.dates[0])} to ${sayDay(row.dates.at(-1))}`;
    handsOn = `${row.dates.length * row.times} × ${handsOn}`;
  } else if (row.to > row.from) {
    when = `${sayDay(row.from)} to ${sayDay(row.to)}`;
    if (row.condition) when = `${row.condition}, about ${when}`;
    else if (row.to_earliest < row.to) when += ` (${sayDay(row.to_earliest)} at the earliest)`;
  }
  return { name: row.name, when: when + where, handsOn, role: row.role, from: firstDay(row) };
}

/** Return one paragraph: what is begun, how it is tended, when it may be used and given. */
export function sumUp(plan, title) {
  const told = [];
  for (const row of plan.stages) {
    if (row.role === "tend" && row.dates.length > 1) {
      const until = sayDay(row.dates.at(-1));
      told.push([firstDay(row), `${row.name} ${sayRhythm(row.every, row.times)} until ${until}.`]);
    } else if (["tend", "strain", "bottle"].includes(row.role)) {
      told.push([row.dates[0], `${row.name} on ${sayDay(row.dates[0])}.`]);
    }
  }
  if (plan.usable < plan.best) told.push([plan.usable, `Usable from ${sayDay(plan.usable)}.`]);
  told.push([plan.best, `At its best from ${sayDay(plan.best)}.`]);
  told.push([plan.give, `${plan.asked ? "Given" : "It can be given"} on ${sayDay(plan.give)}.`]);
  if (plan.keepUntil !== null) told.push([plan.keepUntil, `Keeps until ${sayDay(plan.keepUntil)}.`]);
  const begun = `${title}, begun on ${sayDay(plan.start)}.`;
  return [begun, ...told.sort((one, two) => one[0] - two[0]).map((one) => one[1])].join(" ");
}
