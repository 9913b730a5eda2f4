/**
 * Days without a clock or a time zone: a day is its number, counted from 1970-01-01.
 *
 * Pure arithmetic, the same as Python's date and dateutil's relativedelta: months and years are
 * calendar months and years, and a day that the month lacks becomes its last.
 */

const DAY_MS = 86400000;

/**
 * Return the day number of "2027-12-18", or null when that is no day.
 * @param {string | null | undefined} iso
 */
export function parseDay(iso) {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso ?? "");
  if (!match) return null;
  const day = fromParts(Number(match[1]), Number(match[2]), Number(match[3]));
  return isoDay(day) === iso ? day : null;
}

/**
 * Return the day number of a year, a month from 1 and a day of it.
 * @param {number} year
 * @param {number} month
 * @param {number} day
 */
export function fromParts(year, month, day) {
  const stamp = new Date(0);
  stamp.setUTCFullYear(year, month - 1, day);
  return Math.round(stamp.getTime() / DAY_MS);
}

/** Return {year, month, day, weekday}; months from 1, weekday 0 is Monday. @param {number} day */
export function partsOf(day) {
  const stamp = new Date(day * DAY_MS);
  return {
    year: stamp.getUTCFullYear(),
    month: stamp.getUTCMonth() + 1,
    day: stamp.getUTCDate(),
    weekday: (stamp.getUTCDay() + 6) % 7,
  };
}

/** Return "2027-12-18". @param {number} day */
export function isoDay(day) {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

/** Return the number of days in a month. @param {number} year @param {number} month */
export function daysInMonth(year, month) {
  return partsOf(fromParts(year, month + 1, 0)).day;
}

/**
 * Return the day some months later; the 31st becomes the month's last day.
 * @param {number} day
 * @param {number} months
 */
export function addMonths(day, months) {
  const { year, month, day: number } = partsOf(day);
  const index = year * 12 + (month - 1) + months;
  const toYear = Math.floor(index / 12);
  const toMonth = (index % 12) + 1;
  return fromParts(toYear, toMonth, Math.min(number, daysInMonth(toYear, toMonth)));
}

/**
 * Return the day a span [low, high, unit] later, `times` over, by its longer end or its shorter.
 * @param {number} day
 * @param {Span} span
 */
export function addSpan(day, span, { longest = true, times = 1 } = {}) {
  const count = (longest ? span[1] : span[0]) * times;
  switch (span[2]) {
    case "minute": return day + Math.floor(count / 1440);
    case "hour": return day + Math.floor(count / 24);
    case "day": return day + count;
    case "week": return day + count * 7;
    case "month": return addMonths(day, count);
    default: return addMonths(day, count * 12);
  }
}

/** Return the reader's own today as a day number. */
export function today() {
  const now = new Date();
  return fromParts(now.getFullYear(), now.getMonth() + 1, now.getDate());
}
