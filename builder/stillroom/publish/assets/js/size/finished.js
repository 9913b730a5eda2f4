/**
 * What a batch comes to at its size: to bottle, into what, how strong, how many servings.
 * The twin of finished.py (with fill_containers of bottling.py, mixtures.py and extracts.py).
 */

import STRENGTH_SAID from "../../data/said/batch-strength.js";
import SAID from "../../data/said/size-size.js";
import { roundMeasure, showDecimal } from "../amounts/amounts.js";
import { Fraction, HALF, ONE, ZERO, larger } from "../amounts/fraction.js";
import { joinAnd, joinRange } from "../words/joining.js";
import { speaker } from "../words/said.js";

const say = speaker(SAID);
const sayStrength = speaker(STRENGTH_SAID);
const MILLION = new Fraction(1000000);
const TRIED = 10000;

/**
 * Return the facts {name, text, how, brief} of a batch that scale.js worked out.
 * @param {ScaleRecipe} recipe
 * @param {Batch} batch
 * @param {Measures} measures
 * @param {Tables} tables
 * @returns {Fact[]}
 */
export function factsOfBatch(recipe, batch, measures, tables) {
  const own = recipe.finished;
  const there = yieldOf(own, batch.factor);
  const shares = batch.lines.map((line, place) => {
    const grows = recipe.lines[place].scales === "with the batch";
    return ONE.plus(line.off).over(grows ? ONE : batch.factor);
  });
  const facts = [];
  if (there?.volume.above(ZERO)) facts.push(toBottle(there, measures, tables));
  facts.push(...into(recipe, batch, there));
  if (own.strength) facts.push(...strengthFacts(own.strength, shares, batch.makes_ml, tables));
  if (own.fold) facts.push({ name: say("vanilla"), text: foldText(own.fold, shares, tables), how: own.fold.how, brief: false });
  return facts;
}

/** @param {FinishedData} finished @param {Fraction} factor @returns {ToBottle | null} */
function yieldOf({ yield: own }, factor) {
  if (!own) return null;
  /** @type {[string, Fraction][]} */
  const parts = own.parts.map(([name, ml], place) => {
    const spoon = place === own.parts.length - 1; // the tasting spoon is one, whatever the size
    return [name, spoon ? Fraction.parse(ml) : Fraction.parse(ml).times(factor)];
  });
  const volume = larger(parts.reduce((sum, [, ml]) => sum.plus(ml), ZERO), ZERO);
  const spread = Fraction.parse(own.spread).times(factor);
  return { parts, volume, low: larger(volume.minus(spread), ZERO), high: volume.plus(spread), source: own.source };
}

/** @param {ToBottle} there @param {Measures} measures @param {Tables} tables */
function toBottle({ parts, low, high, source }, measures, tables) {
  const kept = parts
    .filter(([, ml]) => !ml.abs().below(ONE))
    .map(([name, ml]) => say("part", { name, ml: `${ml.below(ZERO) ? "−" : ""}${showDecimal(ml.abs(), 0)}` }))
    .join(say("then"));
  const ends = [low, high].filter((end) => end.above(ZERO)).map((end) => volumeText(end, measures.system, tables));
  const text = joinRange(ends[0] === ends[1] ? ends.slice(0, 1) : ends);
  return { name: say("to_bottle"), text, how: say("from_source", { how: kept, source }), brief: true };
}

/** @param {Fraction} volume @param {string} system @param {Tables} tables */
function volumeText(volume, system, tables) {
  return roundMeasure(volume, system, "volume", Fraction.parse(tables.near.plain), tables).text;
}

/** @param {ScaleRecipe} recipe @param {Batch} batch @param {ToBottle | null} there @returns {Fact[]} */
function into(recipe, batch, there) {
  if (!batch.makes_ml || recipe.each) return []; // "9 jars of 200 ml" says it all
  const sizes = recipe.finished.containers.map(([one, many, ml, size]) => ({ one, many, ml: Fraction.parse(ml), size }));
  let [words, filled] = [batch.fills, batch.makes_ml];
  let least = batch.makes_ml.over(new Fraction(batch.containers));
  if (!batch.fills) {
    if (!sizes.length || recipe.stands_ml.equals(ZERO)) return []; // pieces fill no bag by the ml
    [words, filled] = fill(sizes, batch.makes_ml);
    least = /** @type {typeof sizes[number]} */ (sizes.at(-1)).ml;
  }
  const how = [say("said_to_make", { makes: plainly(batch.makes) })];
  const over = batch.makes_ml.minus(filled);
  if (filled.above(ZERO) && !over.below(ONE)) how.push(say("over", { ml: showDecimal(over, 0) }));
  if (there?.low.below(filled)) {
    const some = filled.minus(there.low).above(least);
    words = [words, say(some ? "some_not_full" : "last_not_full")].join(say("then"));
  }
  how.push(say("size_means"));
  return [{ name: say("into"), text: words, how: how.join(say("then")), brief: true }];
}

/** @param {{one: string, many: string, ml: Fraction, size: string}[]} sizes @param {Fraction} volume @returns {[string, Fraction]} */
function fill(sizes, volume) {
  const counts = sizes.length === 1
    ? [Number(volume.over(sizes[0].ml).floor())]
    : countsLeavingLeast(Number(volume.floor()), sizes.map(({ ml }) => Number(ml.ceil())));
  const counted = sizes.map((size, place) => /** @type {[number, typeof size]} */ ([counts[place], size])).filter(([count]) => count);
  const filled = counted.reduce((sum, [count, { ml }]) => sum.plus(ml.times(new Fraction(count))), ZERO);
  const words = counted.map(([count, { one, many, size }]) => say("of_size", { count, thing: count > 1 ? many : one, size }));
  return [joinAnd(words) || say("less_than_one", { thing: /** @type {typeof sizes[number]} */ (sizes.at(-1)).one }), filled];
}

/** @param {number} there @param {number[]} sizes */
function countsLeavingLeast(there, sizes) {
  /** @param {number} a @param {number} b @returns {number} */
  const gcd = (a, b) => (b ? gcd(b, a % b) : a);
  const grain = sizes.reduce(gcd);
  const steps = sizes.map((size) => size / grain);
  const all = Math.floor(there / grain);
  const large = Math.max(Math.ceil((all - TRIED) / steps[0]), 0);
  const reach = all - large * steps[0];
  const fewest = [0, ...Array(reach).fill(reach + 1)];
  const last = Array(reach + 1).fill(-1);
  for (let total = 1; total <= reach; total += 1) {
    steps.forEach((step, index) => {
      if (step <= total && fewest[total - step] + 1 < fewest[total]) {
        [fewest[total], last[total]] = [fewest[total - step] + 1, index];
      }
    });
  }
  let rest = reach;
  while (fewest[rest] > reach) rest -= 1;
  const counts = steps.map((_, index) => (index ? 0 : large));
  for (; rest; rest -= steps[last[rest]]) counts[last[rest]] += 1;
  return counts;
}

/* --- strength: floats, in the same order as mixtures.py ------------------------------------------ */

/** @param {Fraction} value */
function toFloat(value) {
  return Number(value.times(MILLION).plus(HALF).floor()) / 1e6;
}

/** @param {number} massFraction @param {Figures} figures */
function densityOf(massFraction, { density }) {
  return density.reduceRight((total, coefficient) => total * massFraction + coefficient, 0) / 1000;
}

/** @param {StrengthPart[]} parts @param {Fraction[]} shares @param {1 | 2} which @param {Figures} figures */
function abvOf(parts, shares, which, figures) {
  let [ethanol, water, sugar, rest] = [0, 0, 0, 0];
  for (const part of parts) {
    const share = toFloat(shares[part[0]]);
    ethanol += part[which][0] * share;
    water += part[which][1] * share;
    sugar += part[which][2] * share;
    rest += part[which][3] * share;
  }
  const liquid = ethanol + water;
  const solids = sugar * figures.sugar_ml_per_g + rest;
  const volume = liquid / densityOf(ethanol / liquid, figures) + solids;
  return ((100 * ethanol) / densityOf(1, figures)) / volume;
}

/**
 * @param {StrengthData} own
 * @param {Fraction[]} shares
 * @param {Fraction | null} makes
 * @param {Tables} tables
 * @returns {Fact[]}
 */
function strengthFacts(own, shares, makes, tables) {
  const figures = tables.finished;
  let { abv, uncertainty } = own;
  if (own.parts) {
    abv = abvOf(own.parts, shares, 1, figures);
    const low = whole(abv * figures.low_share);
    const high = whole(abvOf(own.parts, shares, 2, figures) * figures.high_share);
    uncertainty = sayStrength("doubt", { low, high, why: own.doubt });
  }
  const shown = Number.isInteger(abv * 2) ? abv : whole(abv);
  const text = sayStrength("strength", { abv: shown, proviso: own.proviso ?? "" });
  const how = say("how_strong", { how: own.how, doubt: uncertainty });
  const fact = { name: say("strength"), text, how, brief: true };
  return [fact, ...pourFacts(own, abv, makes, figures)];
}

/**
 * @param {StrengthData} own
 * @param {number} abv
 * @param {Fraction | null} makes
 * @param {Figures} figures
 * @returns {Fact[]}
 */
function pourFacts(own, abv, makes, { least_drinks, drink }) {
  const pours = own.pours
    .map(([name, many, text]) => {
      const size = Fraction.parse(text);
      return { name, many, size, drinks: (toFloat(size) * abv) / 100 / drink.ethanol_ml };
    })
    .filter(({ drinks }) => drinks >= least_drinks);
  if (!pours.length) return [];
  /** @param {{name: string, size: Fraction}} pour */
  const named = ({ name, size }) => (name.includes(" ml") ? name : say("with_size", { name, ml: size.floor() }));
  const each = pours.map((pour) =>
    say("drinks", { name: named(pour), drinks: tenths(pour.drinks), many: drink.many }));
  const found = [{ name: say("in_a_serving"), text: each.join(say("then")), brief: false, how: drink.how }];
  const counted = pours
    .filter(({ name }) => !name.includes(" ml"))
    .map(({ name, many, size }) => {
      const count = makes ? makes.over(size).floor() : 0n;
      return count && `${count} ${count > 1n ? many : name.replace(/^a /, "")}`;
    })
    .filter(Boolean);
  if (makes && counted.length) {
    const times = toFloat(makes.over(pours[0].size));
    found.push({
      name: say("servings"), text: say("about", { amount: counted.join(say("or")) }), brief: true,
      how: say("drinks_in_all", { drinks: whole(pours[0].drinks * times), many: drink.many }),
    });
  }
  return found;
}

/** What a batch makes without its "about". @param {string} makes */
export function plainly(makes) {
  const about = say("about", { amount: "" });
  return makes.startsWith(about) ? makes.slice(about.length) : makes;
}

/** @param {number} value */
function whole(value) {
  return Math.floor(value + 0.5);
}

/** @param {number} value */
function tenths(value) {
  const count = Math.floor(value * 10 + 0.5);
  return `${Math.floor(count / 10)}.${count % 10}`;
}

/** @param {FoldData} own @param {Fraction[]} shares @param {Tables} tables */
function foldText(own, shares, tables) {
  const [grams, volume] = own.brings.map((rows) => rows.reduce(
    (sum, [place, text]) => sum.plus(Fraction.parse(text).times(shares[place])), ZERO,
  ));
  const { per_litre, least_abv } = tables.finished;
  const units = grams.over(volume.over(new Fraction(1000))).over(Fraction.parse(per_litre));
  const name = sayStrength("fold", { count: units.floor() });
  const text = sayStrength("fold_units", { name, count: showDecimal(units) });
  return own.strong_enough ? text : sayStrength("fold_too_weak", { text, least: least_abv });
}
