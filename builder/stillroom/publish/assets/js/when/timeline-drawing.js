/**
 * Draws a timeline anew into the picture that the server drew: publish/timeline_picture.py and
 * templates/fragments/timeline_picture.html in the browser, by the same rules of placing.
 */

import SAID from "../../data/said/when-dates.js";
import { sayDayAndMonth, sayDayShort, sayMinutes, shortMonth } from "../words/day-words.js";
import { joinAnd } from "../words/joining.js";
import { speaker } from "../words/said.js";
import { addMonths, fromParts, partsOf } from "./dates.js";
import { firstDay } from "./stage-dates.js";
import { sayRhythm } from "./timeline-words.js";

const say = speaker(SAID);

const SIDE = 8;
const TEXT = 13;
const LINE = 16;
const BAND = 12;
const GAP = 9;
const AXIS = 40;
const LETTER = 0.52;
const DAY = 1440;
const HOUR_STEPS = [60, 120, 180, 360, 720];
const DAY_STEPS = [1, 2, 3, 7, 14];
const MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60];

/** @param {string} words */
const textWidth = (words) => words.length * TEXT * LETTER;
const short = sayDayAndMonth;
/** @param {number} x */
const round = (x) => Math.round(x * 10) / 10;

/**
 * Redraw an <svg> made by the template; `label` becomes its text equivalent.
 * @param {SVGElement} svg
 * @param {Plan} plan
 * @param {string} label
 */
export function redraw(svg, plan, label) {
  const width = Number(svg.dataset.width);
  const name = svg.querySelector("pattern").id.replace(/-tend$/, "");
  const picture = drawTimeline(plan, width);
  svg.setAttribute("viewBox", `0 0 ${picture.width} ${picture.height}`);
  svg.setAttribute("aria-label", label);
  svg.querySelector(":scope > g").replaceChildren(...drawParts(picture, name));
}

/**
 * Return where every part of a plan stands in a picture of this width.
 * @param {Plan} plan
 * @param {number} width
 */
export function drawTimeline(plan, width) {
  /** @param {number} day */
  const minute = (day) => (day - plan.start) * DAY;
  const ends = plan.stages.map((row) => row.ends_minute);
  const days = [plan.best, plan.usable, plan.give, plan.ready].map(minute);
  const last = Math.max(...days, ...ends, 60);
  const horizon = last + Math.max(60, Math.floor(last / 12));
  /** @param {number} at */
  const place = (at) =>
    round(SIDE + ((width - 2 * SIDE) * Math.min(Math.max(at, 0), horizon)) / horizon);

  let y = 4;
  const lanes = listLanes(plan, horizon, minute).map((raw) => {
    const lane = placeLane(raw, place, y, width);
    y = lane.bandY + BAND + GAP;
    return lane;
  });
  return {
    width,
    height: y + AXIS,
    lanes,
    axis: drawAxis(plan.start, horizon, place, width),
    axisY: y,
    giveX: place(minute(plan.give)),
    giveY: lanes[lanes.length - 1].bandY + BAND / 2,
    goesOn: plan.keepUntil === null || minute(plan.keepUntil) > horizon,
  };
}

/** @param {Plan} plan @param {number} horizon @param {(day: number) => number} minute @returns {RawLane[]} */
function listLanes(plan, horizon, minute) {
  const groups = Map.groupBy(plan.stages, (row) => `${row.role}|${row.name}`);
  const lanes = [...groups.values()].map((rows) => {
    if (rows[0].role === "tend") return tendLane(rows, minute);
    if (rows[0].role === "rest") return restLane(rows);
    return workLane(rows, minute);
  });
  const give = say(plan.asked ? "lane_give" : "lane_can_be_given", { day: sayDayShort(plan.give) });
  const giving = { role: "give", words: give, dots: [minute(plan.give)] };
  return [...lanes, useLane(plan, horizon, minute), giving];
}

/** @param {DatedStage[]} rows @param {(day: number) => number} minute @returns {RawLane} */
function workLane(rows, minute) {
  const days = [...new Set(rows.flatMap((row) => row.dates))].map(short);
  const dots = rows.flatMap((row) =>
    row.dates.map((day) => (day === row.from ? row.begins_minute : minute(day))));
  return { role: rows[0].role, words: say("worked", { name: rows[0].name, days: joinAnd(days) }), dots };
}

/** @param {DatedStage[]} rows @param {(day: number) => number} minute @returns {RawLane} */
function tendLane(rows, minute) {
  const rhythms = [...new Set(rows.map((row) => sayRhythm(row.every, row.times)))];
  const ticks = rows.flatMap((row) => row.dates.map(minute));
  /** @type {Band[]} */
  const bands = rows
    .map((row, index) => [row, rows[index - 1]])
    .filter(([row]) => row.dates.length > 1)
    .map(([row, before]) => ["tend", tendedFrom(row, before, minute), row.ends_minute]);
  const last = short(/** @type {number} */ (rows.at(-1)?.dates.at(-1)));
  const words = say(ticks.length > 1 ? "lane_tended" : "lane_tended_once", {
    name: rows[0].name, rhythms: rhythms.join(say("then")), day: last,
  });
  return { role: "tend", words, bands, ticks };
}

// a band of tending begins at its first day, or where the one before it ends
/** @param {DatedStage} row @param {DatedStage | undefined} before @param {(day: number) => number} minute */
function tendedFrom(row, before, minute) {
  const goesOn = before !== undefined && before.ends_minute >= row.begins_minute;
  return goesOn ? row.begins_minute : minute(firstDay(row));
}

/** @param {DatedStage[]} rows @returns {RawLane} */
function restLane(rows) {
  /** @type {Band[]} */
  const bands = rows.map((row) => [
    row.condition ? "window" : "rest", row.begins_minute, Math.max(row.ends_minute, 1),
  ]);
  const where = rows.find((row) => row.where)?.where;
  const condition = rows.find((row) => row.condition)?.condition;
  const said = [rows[0].name, where, condition].filter(Boolean).join(" ");
  const last = /** @type {DatedStage} */ (rows.at(-1)).to;
  let words = "lane_rests_on";
  if (last > rows[0].from) words = condition ? "lane_rests_about" : "lane_rests";
  return { role: "rest", words: say(words, { name: said, day: short(last) }), bands };
}

/** @param {Plan} plan @param {number} horizon @param {(day: number) => number} minute @returns {RawLane} */
function useLane(plan, horizon, minute) {
  /** @param {number} day */
  const from = (day) => {
    const busy = plan.stages
      .filter((row) => row.to === day && row.role !== "tend")
      .map((row) => row.ends_minute)
      .filter((end) => end < minute(day) + DAY);
    return Math.max(minute(day), ...busy);
  };
  const [usable, best] = [from(plan.usable), from(plan.best)];
  const end = plan.keepUntil === null ? horizon : minute(plan.keepUntil);
  /** @type {Band[]} */
  const bands = usable < best ? [["usable", usable, Math.min(best, end)]] : [];
  bands.push(["best", Math.min(best, end), Math.max(Math.min(best, end), end)]);
  let words = usable < best
    ? say("lane_use", { usable: sayDayShort(plan.usable), best: sayDayShort(plan.best) })
    : say("lane_best", { best: sayDayShort(plan.best) });
  if (plan.keepUntil !== null) words = say("lane_keeps", { words, day: sayDayShort(plan.keepUntil) });
  return { role: "use", words, bands };
}

/** @param {RawLane} lane @param {(at: number) => number} place @param {number} y @param {number} width */
function placeLane({ role, words, bands = [], ticks = [], dots = [] }, place, y, width) {
  const lines = wrap(words, width - 2 * SIDE);
  const wide = Math.max(...lines.map(textWidth));
  const first = place(Math.min(...ticks, ...dots, ...bands.map((band) => band[1])));
  const fits = first + wide <= width - SIDE;
  return {
    role,
    lines,
    x: fits ? Math.max(SIDE, first) : width - SIDE,
    anchor: fits ? "start" : "end",
    y: y + TEXT,
    bandY: y + LINE * lines.length + 3,
    bands: bands.map(([look, start, end]) => ({
      look, x: place(start), width: Math.max(round(place(end) - place(start)), 2),
    })),
    ticks: ticks.map(place),
    dots: dots.map(place),
  };
}

/** @param {string} words @param {number} width */
function wrap(words, width) {
  const lines = [""];
  for (const word of words.split(" ")) {
    const longer = `${lines.at(-1)} ${word}`.trim();
    if (lines.at(-1) && textWidth(longer) > width) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

/** @param {number} start @param {number} horizon @param {(at: number) => number} place @param {number} width */
function drawAxis(start, horizon, place, width) {
  /** @type {AxisMark[]} */
  let placed = [];
  for (const marks of scales(start, horizon)) {
    placed = marks.map(([minute, word, day]) => ({ x: place(minute), word, day }));
    if (placed.length >= 2 && keepApart(placed)) break;
  }
  let year = "";
  return placed.map(({ x, word, day }) => {
    const half = Math.max(textWidth(word), textWidth("2027")) / 2;
    if (x - half < 0 || x + half > width) return { x, word: "", year: "" };
    const now = day === null ? year : String(partsOf(day).year);
    const shown = { x, word, year: now === year ? "" : now };
    year = now;
    return shown;
  });
}

/** @param {AxisMark[]} marks */
function keepApart(marks) {
  return marks.slice(1).every((mark, index) =>
    mark.x - marks[index].x >= (textWidth(marks[index].word) + textWidth(mark.word)) / 2 + 6);
}

/** @param {number} start @param {number} horizon @returns {Generator<[number, string, number | null][]>} */
function* scales(start, horizon) {
  if (horizon <= 3 * DAY) {
    for (const step of HOUR_STEPS) {
      /** @type {[number, string, number | null][]} */
      /** @type {[number, string, number | null][]} */
    const marks = [];
      for (let at = 0; at < horizon; at += step) marks.push([at, sayMinutes(at), null]);
      yield marks;
    }
  }
  for (const step of DAY_STEPS) {
    /** @type {[number, string, number | null][]} */
    const marks = [];
    for (let day = 0; day <= Math.floor(horizon / DAY); day += step) {
      marks.push([day * DAY, short(start + day), start + day]);
    }
    yield marks;
  }
  for (const step of MONTH_STEPS) {
    const { year, month } = partsOf(start);
    /** @type {[number, string, number | null][]} */
    const marks = [];
    let day = fromParts(year, step > 6 ? 1 : month, 1);
    while ((day - start) * DAY <= horizon) {
      const at = partsOf(day);
      if (day >= start && (at.month - 1) % Math.min(step, 12) === 0) {
        marks.push([(day - start) * DAY, step < 12 ? shortMonth(at.month) : String(at.year), day]);
      }
      day = addMonths(day, step >= 12 ? step : 1);
    }
    yield marks;
  }
}

/** @param {Picture} picture @param {string} name */
function drawParts(picture, name) {
  const parts = picture.axis.map((mark) => path("when-grid", `M${mark.x} 0V${picture.axisY}`));
  parts.push(path("when-giving", `M${picture.giveX} ${picture.giveY}V${picture.axisY}`));
  parts.push(path("when-axis", `M0 ${picture.axisY}H${picture.width}`));
  for (const lane of picture.lanes) parts.push(...drawLane(lane, picture, name));
  for (const mark of picture.axis.filter((one) => one.word)) {
    parts.push(writing("when-scale", mark.word, mark.x, picture.axisY + 15));
    if (mark.year && mark.year !== mark.word) {
      parts.push(writing("when-scale when-scale--year", mark.year, mark.x, picture.axisY + 30));
    }
  }
  return parts;
}

/** @param {Lane} lane @param {Picture} picture @param {string} name */
function drawLane(lane, picture, name) {
  const y = lane.bandY;
  const parts = lane.bands.map((band) => make("rect", {
    class: `when-band when-band--${band.look}`, x: band.x, y, width: band.width, height: BAND,
    fill: `url(#${name}-${band.look})`,
  }));
  if (lane.role === "use" && picture.goesOn) {
    parts.push(path("when-on", `M${picture.width - 7} ${y + 1}l5 5l-5 5`));
  }
  parts.push(...lane.ticks.map((x) => path("when-tick", `M${x} ${y - 1}v14`)));
  parts.push(...lane.dots.map((x) => (lane.role === "give"
    ? path("when-give", `M${x} ${y - 1}l7 7l-7 7l-7 -7z`)
    : make("circle", { class: "when-dot", cx: x, cy: y + 6, r: 5 }))));
  const text = make("text", { class: "when-words", "text-anchor": lane.anchor, y: lane.y });
  lane.lines.forEach((line, index) => {
    const span = make("tspan", index ? { x: lane.x, dy: LINE } : { x: lane.x });
    span.textContent = line;
    text.append(span);
  });
  return [...parts, text];
}

/** @param {string} tag @param {Record<string, any>} attributes */
function make(tag, attributes) {
  const node = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  return node;
}

/** @param {string} look @param {string} d */
const path = (look, d) => make("path", { class: look, d });

/** @param {string} look @param {string} said @param {number} x @param {number} y */
function writing(look, said, x, y) {
  const text = make("text", { class: look, "text-anchor": "middle", x, y });
  text.textContent = said;
  return text;
}
