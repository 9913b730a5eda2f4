/**
 * A recipe at another size: the twin of scaling.py, scaled_lines.py and whole_batches.py.
 *
 * Pure: it knows no page. Given the same data it returns the same words as Python, to the digit.
 */

import SAID from "../../data/said/size-size.js";
import {
  baseSize, middle, nearestMultiple, roundMeasure, sayUnit, showDecimal, showNumber,
  sizeOf,
} from "../amounts/amounts.js";
import { Fraction, HALF, ONE, ZERO, larger } from "../amounts/fraction.js";
import { solveTarget, writtenRange } from "./scale-targets.js";
import { tinNote } from "../amounts/tins.js";
import { joinAnd, joinRange } from "../words/joining.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);

const LINE = {
  note: "", note_counts: false, group: "", optional: false, low: "0", high: "0", unit: "",
  noun_one: "", noun_many: "", pack: "",
  about: false, per_low: "1", per_high: "1", of: null, scales: "with the batch", tolerance: "1/20",
  stated: false, near: "1/50", tight: "", halves: false, spooned: false, density: null,
  density_source: "", each_g: null,
};
const LINE_NUMBERS = ["low", "high", "per_low", "per_high", "tolerance", "near", "density", "each_g"];
const RECIPE_NUMBERS = [
  "makes_ml", "finished_density", "stands_ml", "vessel_share", "vessel_ml", "container_ml",
  "headspace_ml",
];
const REACH = 24n;
const VESSELS_TOLD = 4n; // nobody has more of one size: then the litres must do
const TWO = new Fraction(2);

/** @param {Written} row @param {string[]} names @returns {any} */
function withNumbers(row, names) {
  const read = { ...row };
  for (const name of names) if (row[name] !== null) read[name] = Fraction.parse(row[name]);
  return read;
}

/** @param {Written | null} amount @returns {Amount | null} */
function readAmount(amount) {
  return amount && withNumbers(amount, ["low", "high"]);
}

/** Turn a recipe's scaling data from text into fractions. @param {Written} data @returns {ScaleRecipe} */
export function readRecipe(data) {
  return {
    ...withNumbers(data, RECIPE_NUMBERS),
    makes: readAmount(data.makes),
    each: readAmount(data.each),
    lines: data.lines.map((/** @type {Written} */ line) => withNumbers({ ...LINE, ...line }, LINE_NUMBERS)),
  };
}

/**
 * Return the batch of a target in the reader's measures {system, by}; throws Unreadable.
 * @param {ScaleRecipe} recipe
 * @param {Target} target
 * @param {Measures} measures
 * @param {Tables} tables
 */
export function scale(recipe, target, measures, tables) {
  const solved = solveTarget(recipe, target, tables);
  const { factor } = solved;
  const asked = solved.containers.reduce((sum, { count }) => sum + count, 0n);
  const containers = asked || countContainers(recipe, factor);
  const lines = recipe.lines.map((line) => scaleLine(recipe, line, factor, containers, measures, tables));
  const broken = lines.some((line) => !line.holds && !line.unit);
  const fit = broken ? nearestFit(recipe, factor) : null;
  const makes = makesText(recipe, factor, measures, tables);
  const fills = fillsText(recipe, solved.containers, tables);
  return {
    factor,
    makes,
    makes_in_full: inFull(recipe, makes, fills),
    makes_ml: recipe.makes_ml && recipe.makes_ml.times(factor),
    fills,
    containers,
    lines,
    warnings: [
      ...lines.filter((line) => !line.holds).map((line) => warningOf(/** @type {MeasuredLine} */ (line), tables)),
      ...boilingWarnings(recipe, factor, tables),
    ],
    notes: notesOf(recipe, factor, tables, target.sort === "tin"),
    scarcest: solved.scarcest,
    left: solved.left,
    fit,
    fit_makes: fit ? makesText(recipe, fit, measures, tables) : "",
  };
}

/** @param {ScaleRecipe} recipe @param {Fraction} factor */
export function countContainers(recipe, factor) {
  let count = factor.ceil();
  if (recipe.each) count = middle(recipe.makes).times(factor).ceil();
  else if (recipe.makes_ml && recipe.container_ml) {
    count = recipe.makes_ml.times(factor).over(recipe.container_ml).ceil();
  }
  return count < 1n ? 1n : count;
}

/**
 * Return one line at a factor: its amount and item in words, its window, whether it holds.
 * @param {ScaleRecipe} recipe
 * @param {ScaleLine} line
 * @param {Fraction} factor
 * @param {bigint} containers
 * @param {Measures} measures
 * @param {Tables} tables
 * @returns {ScaledLine}
 */
export function scaleLine(recipe, line, factor, containers, measures, tables) {
  if (line.form === "words") {
    return {
      item: line.item, item_text: line.item, amount_text: line.written, exact: null, unit: "",
      low: null, high: null, holds: true, off: ZERO, why: "", aside: "", note: noteOf(line, factor),
    };
  }
  const forEach = line.scales === "per container";
  const times = forEach ? new Fraction(containers) : line.scales === "with the batch" ? factor : ONE;
  const [low, high] = writtenRange(recipe, line).map((end) => end.times(times));
  const own = measures.system === recipe.system && measures.by === "written";
  const asIs = times.equals(ONE) && line.form === "amount" && own;
  const shown = roundLine(line, low, high, measures, asIs ? line.written : "", tables);
  shown.note = noteOf(line, factor);
  if (forEach) shown.aside = say("for_each", { written: line.written, count: containers });
  return shown;
}

/** @param {ScaleLine} line @param {Fraction} factor */
function noteOf(line, factor) {
  if (!line.note_counts || factor.equals(ONE)) return line.note;
  return say("as_written_note", { note: line.note });
}

/**
 * @param {ScaleLine} line
 * @param {Fraction} low
 * @param {Fraction} high
 * @param {Measures} measures
 * @param {string} asWritten
 * @param {Tables} tables
 * @returns {ScaledLine}
 */
function roundLine(line, low, high, measures, asWritten, tables) {
  const mid = low.plus(high).over(2);
  const spread = low.equals(high) || line.stated ? line.tolerance : ZERO;
  /** @type {[Fraction, Fraction]} */
  const range = [low.times(ONE.minus(spread)), high.times(ONE.plus(spread))];
  if (asWritten) {
    return scaled(line, mid, range, asWritten, true, mid.times(baseSize(line.unit, tables)), ONE, tables);
  }
  return line.unit
    ? roundMeasured(line, low, high, range, measures, tables)
    : roundCounted(line, mid, [low, high], range, tables);
}

/**
 * @param {ScaleLine} line
 * @param {Fraction} mid
 * @param {[Fraction, Fraction]} ends
 * @param {[Fraction, Fraction]} range
 * @param {Tables} tables
 * @returns {ScaledLine}
 */
function roundCounted(line, mid, [low, high], range, tables) {
  const [first, last] = [low.ceil(), high.floor()];
  let [text, kitchen, holds, many] = [`${first}–${last}`, new Fraction(first + last, 2n), true, true];
  if (line.form !== "amount" || first <= 0n || first >= last) {
    const halves = line.halves && mid.below(new Fraction(tables.halves_below));
    [kitchen, holds] = roundCount(mid, range, halves);
    text = showNumber(kitchen);
    many = kitchen.above(ONE);
  }
  if (line.noun_one) text = `${text} ${many ? line.noun_many : line.noun_one}`;
  if (line.pack) text = say("of_pack", { amount: text, size: line.pack });
  if (line.about) text = say("about", { amount: text });
  const found = scaled(line, mid, range, text, holds, kitchen, ONE, tables);
  found.item_text = many ? line.many : line.one;
  if (!holds && line.each_g) found.aside = byWeight(mid.times(line.each_g));
  return found;
}

/**
 * @param {Fraction} value
 * @param {[Fraction, Fraction]} ends
 * @param {boolean} halves
 * @returns {[Fraction, boolean]}
 */
function roundCount(value, [low, high], halves) {
  const step = halves ? HALF : ONE;
  const nearest = nearestMultiple(value, step);
  const inside = [nearest, nearest.minus(step), nearest.plus(step)].find(
    (choice) => !choice.below(low) && !choice.above(high),
  );
  return [inside ?? nearest, inside !== undefined];
}

/**
 * @param {ScaleLine} line
 * @param {Fraction} low
 * @param {Fraction} high
 * @param {[Fraction, Fraction]} range
 * @param {Measures} measures
 * @param {Tables} tables
 * @returns {ScaledLine}
 */
function roundMeasured(line, low, high, range, measures, tables) {
  const [through, name] = throughOf(line, measures, tables);
  const unit = baseSize(line.unit, tables);
  const sizes = [low, high].map((end) => end.times(unit).times(through));
  const mid = sizes[0].plus(sizes[1]).over(2);
  /** @param {Fraction} size */
  const round = (size) => roundMeasure(size, measures.system, name, line.near, tables, !!line.tight);
  let single = line.form === "ratio" || sizes[0].equals(sizes[1]);
  let rounded = (single ? [mid] : sizes).map(round);
  if (!single && rounded[0].text === rounded[1].text) {
    single = true;
    rounded = rounded.slice(0, 1);
  }
  const back = rounded.map((end) => end.value.over(through).over(unit));
  const window = single
    ? range
    : [low.times(ONE.minus(line.tolerance)), high.times(ONE.plus(line.tolerance))];
  let holds = !back[0].below(window[0]) && !(/** @type {Fraction} */ (back.at(-1))).above(window[1]);
  const kitchen = rounded.reduce((sum, end) => sum.plus(end.value), ZERO).over(new Fraction(rounded.length));
  if (!line.tight && !line.stated) {
    const blind = Fraction.parse(tables.blind[sizeOf(line.unit, tables)]);
    holds = holds || !kitchen.minus(mid).abs().above(blind);
  }
  let text = joinRange(rounded.map((end) => end.text));
  if (line.about) text = say("about", { amount: text });
  const found = scaled(line, low.plus(high).over(2), range, text, holds, kitchen, through, tables);
  if (!through.equals(ONE) && line.density) found.why = say("through", { density: showDecimal(line.density, 3), source: line.density_source });
  if (!holds && line.density && name !== "mass") {
    const bulk = mid.over(through);
    found.aside = byWeight(sizeOf(line.unit, tables) === "mass" ? bulk : bulk.times(line.density));
  }
  return found;
}

/** @param {Fraction} grams */
function byWeight(grams) {
  return say("by_weight", { grams: showDecimal(grams, grams.below(new Fraction(10)) ? 1 : 0) });
}

/** @param {ScaleLine} line @param {Measures} measures @param {Tables} tables @returns {[Fraction, string]} */
function throughOf(line, measures, tables) {
  const size = sizeOf(line.unit, tables);
  if (size === "volume") {
    if (measures.by === "weight" && line.density) return [line.density, "mass"];
    return [ONE, line.spooned ? "spoon" : "volume"];
  }
  if (size === "mass") {
    if (measures.by === "volume" && line.density) return [ONE.over(line.density), "spoon"];
    return [ONE, "mass"];
  }
  return [ONE, "length"];
}

/**
 * @param {ScaleLine} line
 * @param {Fraction} mid
 * @param {[Fraction, Fraction]} ends
 * @param {string} text
 * @param {boolean} holds
 * @param {Fraction} kitchen
 * @param {Fraction} through
 * @param {Tables} tables
 * @returns {ScaledLine}
 */
function scaled(line, mid, [low, high], text, holds, kitchen, through, tables) {
  const exact = mid.times(baseSize(line.unit, tables)).times(through);
  const several = !line.unit && mid.above(ONE);
  return {
    item: line.item,
    item_text: line.unit ? line.item : several ? line.many : line.one,
    amount_text: text,
    exact: mid, unit: line.unit, low, high, holds,
    off: kitchen.minus(exact).over(exact),
    why: "", aside: "", note: "",
  };
}

/** @param {MeasuredLine} line @param {Tables} tables */
function warningOf(line, tables) {
  const named = { item: line.item, amount: line.amount_text };
  if (!line.unit) {
    const ends = { low: showDecimal(line.low), high: showDecimal(line.high) };
    return say("no_whole_number", { ...named, ...ends });
  }
  const percent = showDecimal(line.off.abs().times(new Fraction(100)), 0);
  const asked = `${showDecimal(line.exact)} ${tables.units[line.unit].shown}`;
  return say(line.off.above(ZERO) ? "more" : "less", { ...named, percent, asked });
}

/**
 * Say the containers asked for: "12 bottles of 50 ml and 1 bottle of 100 ml".
 * @param {ScaleRecipe} recipe
 * @param {Filled[]} asked
 * @param {Tables} tables
 */
function fillsText(recipe, asked, tables) {
  return joinAnd(asked.map(({ count, size, brim, thing }) => {
    const own = count > 1n ? recipe.container_many : recipe.container;
    const words = { count, thing: thing || own, size: sayUnit(middle(size), size.unit, tables) };
    return say(brim ? "of_size_to_the_brim" : "of_size", words);
  }));
}

/** @param {ScaleRecipe} recipe @param {string} makes @param {string} fills */
function inFull(recipe, makes, fills) {
  if (!fills) return makes;
  return recipe.each ? fills : say("in_full", { makes, fills });
}

/**
 * Say what a batch makes.
 * @param {ScaleRecipe} recipe
 * @param {Fraction} factor
 * @param {Measures} measures
 * @param {Tables} tables
 */
export function makesText(recipe, factor, measures, tables) {
  const { unit, about } = recipe.makes;
  const [low, high] = [recipe.makes.low.times(factor), recipe.makes.high.times(factor)];
  const near = Fraction.parse(tables.near.plain);
  if (unit && factor.equals(ONE) && measures.system === recipe.system) return recipe.makes_written;
  if (unit) {
    const name = sizeOf(unit, tables) === "mass" ? "mass" : "volume";
    const ends = [low, high].map(
      (end) => roundMeasure(end.times(baseSize(unit, tables)), measures.system, name, near, tables).text,
    );
    const text = joinRange(ends[0] === ends[1] ? [ends[0]] : ends);
    return about ? say("about", { amount: text }) : text;
  }
  if (recipe.each) return jarsText(recipe, low.plus(high).over(2));
  if (high.below(ONE)) return say("less_than_one", { thing: recipe.thing });
  /** @param {Fraction} value */
  const whole = (value) => larger(new Fraction(value.plus(HALF).floor()), ONE);
  const [from, to] = [whole(low), whole(high)];
  const number = from.equals(to) ? `${from}` : `${from}–${to}`;
  const text = `${number} ${to.above(ONE) ? recipe.things : recipe.thing}`;
  return about || !from.equals(low) ? say("about", { amount: text }) : text;
}

/** @param {ScaleRecipe} recipe @param {Fraction} count */
function jarsText(recipe, count) {
  const size = recipe.each_written;
  const full = count.floor();
  if (!full) return say("part_of_one", { thing: recipe.thing, size });
  const text = say("of_size", { count: full, thing: full > 1n ? recipe.things : recipe.thing, size });
  return count.whole ? text : say("and_a_part", { text });
}

/** @param {ScaleRecipe} recipe @param {Fraction} factor @param {Tables} tables @param {boolean} ownTin @returns {string[]} */
function notesOf(recipe, factor, tables, ownTin) {
  if (factor.equals(ONE)) return [];
  const notes = recipe.notes[factor.above(ONE) ? "larger" : "smaller"];
  const ofVessels = [boiledApart(recipe, factor, tables) ? "" : vesselNote(recipe, factor), ownTin ? "" : tinNote(recipe.tin, factor)];
  return [...notes, ...ofVessels.filter(Boolean)];
}

/** @param {ScaleRecipe} recipe @param {Fraction} factor */
function vesselNote(recipe, factor) {
  if (!recipe.vessel_ml || recipe.stands_ml.equals(ZERO)) return "";
  const wanted = filledMl(recipe, factor);
  if (!wanted.above(recipe.vessel_ml)) return "";
  const litres = new Fraction(wanted.over(new Fraction(100)).ceil(), 10n);
  const own = showDecimal(recipe.vessel_ml.over(new Fraction(1000)));
  const vessels = wanted.over(recipe.vessel_ml).ceil();
  const words = { own, litres: showDecimal(litres, 1), count: vessels };
  return say(vessels > VESSELS_TOLD ? "vessel" : "vessels", words);
}

/**
 * Whether more is asked for than sets at once: each batch then has the vessel to itself.
 * @param {ScaleRecipe} recipe
 * @param {Fraction} factor
 * @param {Tables} tables
 */
function boiledApart(recipe, factor, tables) {
  const { kinds, most } = tables.boiled_at_once;
  return kinds.includes(recipe.kind) && factor.above(new Fraction(most));
}

/** @param {ScaleRecipe} recipe @param {Fraction} factor @param {Tables} tables @returns {string[]} */
function boilingWarnings(recipe, factor, tables) {
  if (!boiledApart(recipe, factor, tables)) return [];
  const { most, words } = tables.boiled_at_once;
  const sets = factor.over(new Fraction(most)).ceil();
  const holds = recipe.vessel_ml ? filledMl(recipe, factor).over(recipe.vessel_ml).ceil() : 0n;
  return [words.replace("{batches}", `${holds > sets ? holds : sets}`)];
}

/**
 * How large a vessel is wanted, of which only its share may be filled.
 * @param {ScaleRecipe} recipe
 * @param {Fraction} factor
 */
function filledMl(recipe, factor) {
  return recipe.stands_ml.times(factor).over(recipe.vessel_share);
}

/**
 * The nearest factor at which everything counted comes out whole, or null.
 * @param {ScaleRecipe} recipe
 * @param {Fraction} factor
 * @returns {Fraction | null}
 */
export function nearestFit(recipe, factor) {
  const counted = recipe.lines
    .filter((line) => line.form !== "words" && !line.unit && line.scales === "with the batch")
    .map((line) => /** @type {Counted} */ ([line, ...writtenRange(recipe, line)]));
  const fitting = choices(counted, factor).filter((choice) => counted.every((row) => fits(row, choice)));
  if (!fitting.length) return null;
  return fitting.reduce((best, choice) => {
    const [old, now] = [best.minus(factor).abs(), choice.minus(factor).abs()];
    return now.below(old) || (now.equals(old) && choice.above(best)) ? choice : best;
  });
}

/** @param {Fraction} step @param {Fraction} factor @returns {Fraction[]} */
function multiplesNear(step, factor) {
  const centre = factor.over(step).floor();
  const found = [];
  for (let n = centre - REACH > 1n ? centre - REACH : 1n; n <= centre + REACH + 1n; n += 1n) {
    found.push(step.times(new Fraction(n)));
  }
  return found;
}

/** @param {Counted[]} counted @param {Fraction} factor @returns {Fraction[]} */
function choices(counted, factor) {
  const fixed = counted.filter(([, low, high]) => low.equals(high));
  if (fixed.length) {
    const grains = fixed.map(([line, low]) => (line.halves ? HALF : ONE).over(low));
    return multiplesNear(grains.reduce(commonStep), factor);
  }
  return counted.flatMap(([, low, high]) => multiplesNear(TWO.over(low.plus(high)), factor));
}

/** @param {Fraction} one @param {Fraction} other */
function commonStep(one, other) {
  /** @param {bigint} a @param {bigint} b @returns {bigint} */
  const gcd = (a, b) => (b ? gcd(b, a % b) : a);
  return new Fraction((one.n * other.n) / gcd(one.n, other.n), gcd(one.d, other.d));
}

/** @param {Counted} row @param {Fraction} factor */
function fits([line, low, high], factor) {
  const grain = line.halves ? HALF : ONE;
  const least = low.times(factor).over(grain).ceil();
  return high.times(factor).over(grain).floor() >= (least > 1n ? least : 1n);
}

/**
 * Return a part of an ingredient ({low, high, unit, about, written}) as it stands in a step.
 * @param {ScaleRecipe} recipe
 * @param {ScaleLine} line
 * @param {LinePart} part
 * @param {Fraction} factor
 * @param {bigint} containers
 * @param {Measures} measures
 * @param {Tables} tables
 */
export function scalePart(recipe, line, part, factor, containers, measures, tables) {
  const own = {
    ...line, ...part, form: "amount", of: null,
    spooned: line.spooned && sizeOf(part.unit, tables) === "volume",
  };
  return scaleLine(recipe, own, factor, containers, measures, tables).amount_text;
}
