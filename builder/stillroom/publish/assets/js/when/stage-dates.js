/**
 * Lay the stages of a recipe onto the calendar: core/when/stage_dates.py in the browser.
 *
 * Pure. The rules are told there; tests/browser/test_timeline_in_browser.py keeps the two the same.
 */

import { addSpan } from "./dates.js";

const WORKING_DAY_MINUTES = 12 * 60;
const DAY_MINUTES = 24 * 60;
/** @type {Record<string, number>} */
const SPAN_MINUTES = { minute: 1, hour: 60, day: 1440, week: 10080, month: 43200, year: 525600 };

/** @param {Stage} stage */
export const isMilestone = (stage) => stage.role === "usable" || stage.role === "best";
/**
 * The first day of a stage that a maker sees: what is made today is first shaken tomorrow.
 * @param {DatedStage} row
 */
export const firstDay = (row) => (row.role === "tend" ? row.dates[0] : row.from);
/** @param {Stage} stage */
const isAnchored = (stage) => stage.before_giving !== undefined || stage.role === "give";
/** @param {Span} span */
const spanMinutes = (span) => span[1] * SPAN_MINUTES[span[2]];
/** @param {Span} span */
const isWithinADay = (span) => span[2] === "minute" || span[2] === "hour";

/**
 * Return the stages dated from a start day; with `stop`, no wait for an age goes beyond it.
 * @param {any[]} stages
 * @param {number} start
 * @param {number | null} [stop]
 */
export function layOut(stages, start, stop = null) {
  const listed = stages.filter((stage) => !isAnchored(stage));
  const lastAge = listed.findLastIndex(isMilestone);
  const walk = new Walk(start, stop);
  listed.forEach((stage, index) => {
    if (index > lastAge) walk.stop = null;
    walk.take(stage);
  });
  return walk.laid();
}

class Walk {
  /** @param {number} start @param {number | null} stop */
  constructor(start, stop) {
    this.start = start;
    this.stop = stop;
    this.day = start;
    this.minute = 0;
    /** @type {DatedStage[]} */
    this.rows = [];
    /** @type {number | null} */
    this.openRest = null;
    /** @type {Record<string, number>} */
    this.ages = {};
    /** @type {Record<string, number>} */
    this.held = {};
    /** @type {number | null} */
    this.beforeAges = null;
  }

  /** @param {Stage} stage */
  take(stage) {
    if (isMilestone(stage)) this.milestone(stage);
    else if (stage.role === "rest") this.rest(stage);
    else if (stage.role === "tend" && stage.every) this.tend(stage);
    else this.work(stage);
  }

  /** @param {number} day */
  clip(day) {
    return this.stop === null ? day : Math.min(day, this.stop);
  }

  /** @param {number} day */
  go(day) {
    const to = this.clip(day);
    if (to > this.day) [this.day, this.minute] = [to, 0];
  }

  /** @param {number} day */
  moveTo(day) {
    this.go(day);
    if (this.openRest === null) return;
    const row = this.rows[this.openRest];
    row.to = row.to_earliest = Math.max(row.from, this.day);
    row.ends_minute = this.at(this.day, this.minute);
    this.openRest = null;
  }

  /** @param {number} minutes */
  passMinutes(minutes) {
    this.minute += minutes;
    while (this.minute > WORKING_DAY_MINUTES) {
      this.day += 1;
      this.minute = Math.max(0, this.minute - DAY_MINUTES);
    }
  }

  /** @param {number} day @param {number} minute */
  at(day, minute) {
    return (day - this.start) * DAY_MINUTES + minute;
  }

  /** @param {Stage} stage */
  begin(stage) {
    this.moveTo(stage.after ? addSpan(this.start, stage.after) : this.day);
  }

  /** @param {Stage} stage */
  milestone(stage) {
    this.beforeAges ??= this.day;
    const due = stage.age ? addSpan(this.ageBase(stage), stage.age) : this.day;
    this.ages[stage.role] = due;
    this.go(due);
    this.held[stage.role] = this.day;
  }

  /** @param {Stage} stage */
  ageBase(stage) {
    const bottled = this.rows.filter((row) => row.role === "bottle").at(-1);
    return stage.age_from === "bottling" && bottled ? bottled.to : this.start;
  }

  /** @param {Stage} stage */
  rest(stage) {
    this.begin(stage);
    const from = this.day;
    const begins = this.at(this.day, this.minute);
    let earliest = this.day;
    if (stage.until) {
      this.moveTo(addSpan(this.start, stage.until));
      earliest = this.day;
    } else if (stage.lasts && isWithinADay(stage.lasts)) {
      this.passMinutes(spanMinutes(stage.lasts));
      earliest = this.day;
    } else if (stage.lasts) {
      earliest = this.clip(addSpan(from, stage.lasts, { longest: false }));
      this.moveTo(addSpan(from, stage.lasts));
    }
    this.add(stage, from, begins, this.day, earliest, []);
    if (!stage.until && !stage.lasts) {
      this.openRest = this.rows.length - 1;
      /** @type {DatedStage} */ (this.rows.at(-1)).open_ended = true;
    }
  }

  /** @param {Stage} stage one that is tended: it says how often, and how long or until when */
  tend(stage) {
    const before = this.rows.at(-1);
    const shared = stage.condition && before?.condition === stage.condition ? before : null;
    if (!shared) this.begin(stage);
    const from = shared ? shared.from : this.day;
    const begins = shared ? shared.begins_minute : this.at(this.day, this.minute);
    const [end, earliest] = stage.until
      ? Array(2).fill(Math.max(from, addSpan(this.start, stage.until)))
      : [addSpan(from, /** @type {Span} */ (stage.lasts)), addSpan(from, /** @type {Span} */ (stage.lasts), { longest: false })];
    this.moveTo(end);
    const last = this.clip(end);
    const dates = [];
    for (let times = 1; ; times += 1) {
      const day = addSpan(from, /** @type {Span} */ (stage.every), { longest: false, times });
      if (day > last) break;
      dates.push(day);
    }
    if (dates.length) this.add(stage, from, begins, last, Math.min(earliest, last), dates);
  }

  /** @param {Stage} stage */
  work(stage) {
    this.begin(stage);
    const from = this.day;
    const begins = this.at(this.day, this.minute);
    if (stage.lasts && !isWithinADay(stage.lasts)) {
      const days = Math.max(1, addSpan(from, stage.lasts) - from);
      const steps = Array.from({ length: days }, (_, step) => this.clip(from + step));
      const dates = [...new Set(steps)];
      this.moveTo(/** @type {number} */ (dates.at(-1)));
      const minutes = Math.ceil(stage.minutes / dates.length);
      this.add({ ...stage, minutes }, from, begins, this.day, this.day, dates);
      return;
    }
    this.passMinutes(stage.lasts ? spanMinutes(stage.lasts) : stage.minutes);
    this.add(stage, from, begins, this.day, this.day, [from]);
  }

  /**
   * @param {Stage} stage
   * @param {number} from
   * @param {number} begins
   * @param {number} to
   * @param {number} earliest
   * @param {number[]} dates
   */
  add(stage, from, begins, to, earliest, dates) {
    const ends = to === this.day ? this.at(this.day, this.minute) : this.at(to, 0);
    this.rows.push({
      name: stage.name,
      word: stage.word,
      role: stage.role,
      from,
      to: Math.max(from, to),
      to_earliest: Math.max(from, earliest),
      dates,
      minutes: stage.minutes,
      times: stage.times ?? 1,
      every: stage.every ?? null,
      condition: stage.condition ?? "",
      where: stage.where ?? "",
      open_ended: false,
      begins_minute: begins,
      ends_minute: Math.max(begins, ends),
    });
  }

  laid() {
    this.moveTo(this.day);
    const done = this.day;
    const usable = this.ages.usable ?? this.beforeAges ?? done;
    const best = Math.max(this.ages.best ?? usable, usable);
    /** @param {(row: DatedStage) => boolean} test */
    const ends = (test) => this.rows.filter(test).map((row) => row.to);
    const poured = ends((row) => row.role === "strain" || row.role === "bottle");
    const prepared = ends((row) => row.role === "prepare");
    const worked = ends((row) => row.role !== "tend" && row.role !== "rest");
    const rested = ends((row) => row.role === "rest" && !row.open_ended);
    return {
      start: this.start,
      usable,
      best,
      usableHeld: this.held.usable ?? this.beforeAges,
      bestHeld: this.held.best ?? this.held.usable ?? null,
      ready: Math.max(done, this.held.best ?? this.held.usable ?? done),
      made: (poured.length ? poured : prepared).at(-1) ?? this.start,
      makingDone: Math.max(this.start, ...prepared, ...rested),
      handsDone: Math.max(this.start, ...this.rows.flatMap((row) => row.dates)),
      workDone: Math.max(this.start, ...worked),
      rows: this.rows,
    };
  }
}
