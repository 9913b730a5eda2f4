/**
 * What a cook may ask a batch to be, read from typed words and solved for a factor.
 * The twin of targets.py.
 */

import SAID from "../../data/said/size-size.js";
import { baseSize, middle, parseLeading, parseNumber, sizeOf } from "../amounts/amounts.js";
import { Fraction, ONE, ZERO, smaller } from "../amounts/fraction.js";
import { panFactor, readOwnTin } from "../amounts/tins.js";
import { joinAnd } from "../words/joining.js";
import { didYouMean } from "../words/nearest.js";
import { speaker } from "../words/said.js";
import { BETWEEN, plainlyTyped } from "./typed-sizes.js";

const say = speaker(SAID);

const COUNTED = /^(\d{1,9})\s*(?:x|×|\*|(?:([a-z-]+)\s+)?of)\s*(.+)$/i;
const TO_THE_BRIM = /\s*(?:filled\s+)?to the brim\s*$/i;
const THING = /^[a-z][a-z -]*$/i;

/** @param {string} text @returns {Target} */
export function parseTimes(text) {
  const factor = parseNumber(text);
  if (!factor.above(ZERO)) {
    throw say.refuse("nothing");
  }
  return { sort: "times", factor };
}

/** @param {string} text @param {string} system @param {Tables} tables @returns {Target} */
export function parseWanted(text, system, tables) {
  const counted = COUNTED.exec(text);
  const each = counted && parseLeading(counted[3], system, tables).amount;
  if (counted && each?.unit && each.low.above(ZERO)) {
    const count = new Fraction(BigInt(counted[1]));
    const amount = { ...each, low: each.low.times(count), high: each.high.times(count) };
    return { sort: "makes", amount, things: "" };
  }
  const { amount, rest } = parseLeading(text, system, tables);
  if (!amount || !amount.low.above(ZERO)) {
    throw say.refuse("not_an_amount", { text });
  }
  return { sort: "makes", amount, things: rest };
}

/** @param {string} text @param {string} system @param {Tables} tables @returns {Target} */
export function parseFill(text, system, tables) {
  const containers = text.trim().split(BETWEEN).map((part) => {
    const found = COUNTED.exec(part);
    const { amount: size, rest } = found ? parseLeading(found[3], system, tables) : { amount: null };
    if (!found || !size || !size.low.above(ZERO) || BigInt(found[1]) < 1n) {
      throw say.refuse("no_containers", { text: part });
    }
    if (!["volume", "mass"].includes(sizeOf(size.unit, tables))) {
      throw say.refuse("no_size", { text: part });
    }
    const brim = rest.toLowerCase().includes("brim");
    return { count: BigInt(found[1]), size, brim, thing: found[2] || thingIn(rest) };
  });
  return { sort: "fill", containers };
}

/** What a container was called after its size: "bottles" of "190 ml bottles". @param {string} rest */
function thingIn(rest) {
  const words = rest.replace(TO_THE_BRIM, "").trim();
  return THING.test(words) && !words.toLowerCase().includes("brim") ? words : "";
}

/** @param {string} text @param {string} system @param {Tables} tables @returns {Target} */
export function parseHave(text, system, tables) {
  const have = text.trim().split(BETWEEN).map((part) => {
    const { amount, rest } = parseLeading(part, system, tables);
    const words = [amount?.noun, rest].filter(Boolean).join(" ").replace(/^of\s+/, "");
    if (!amount || !amount.low.above(ZERO) || !words) {
      throw say.refuse("nothing_on_hand", { text: part });
    }
    return { amount, words };
  });
  return { sort: "have", have };
}

/** @param {string} text @param {string} system @param {Tables} tables @returns {Target} */
export function parseVessel(text, system, tables) {
  const tin = readOwnTin(text);
  if (tin) return { sort: "tin", tin };
  const { amount } = parseLeading(text, system, tables);
  if (!amount || !amount.low.above(ZERO) || sizeOf(amount.unit, tables) !== "volume") {
    throw say.refuse("no_vessel", { text });
  }
  return { sort: "vessel", capacity: amount };
}

/**
 * Read one target by its name: "times", "makes", "fill", "have" or "vessel"; throws Unreadable.
 * @param {string} sort
 * @param {string} typed
 * @param {string} system
 * @param {Tables} tables
 * @returns {Target}
 */
export function parseTarget(sort, typed, system, tables) {
  const text = plainlyTyped(sort, typed, tables);
  /** @type {Record<string, typeof parseWanted>} */
  const readers = { makes: parseWanted, fill: parseFill, have: parseHave, vessel: parseVessel };
  return sort === "times" ? parseTimes(text) : readers[sort](text, system, tables);
}

/**
 * Return {factor, containers, scarcest, left} of a target; throws Unreadable when it cannot be had.
 * @param {ScaleRecipe} recipe
 * @param {Target} target
 * @param {Tables} tables
 * @returns {Solved}
 */
export function solveTarget(recipe, target, tables) {
  const solved = solveAny(recipe, target, tables);
  if (solved.factor.above(new Fraction(tables.most_times))) {
    const most = tables.most_times.toLocaleString("en-GB");
    throw say.refuse("too_much", { most });
  }
  if (new Fraction(1).above(solved.factor.times(tables.least_part))) {
    throw say.refuse("too_little", { least: tables.least_part });
  }
  return solved;
}

/** @param {ScaleRecipe} recipe @param {Target} target @param {Tables} tables @returns {Solved} */
function solveAny(recipe, target, tables) {
  const plain = { containers: [], scarcest: "", left: [] };
  switch (target.sort) {
    case "times":
      return { ...plain, factor: target.factor };
    case "makes":
      return { ...plain, factor: factorOfMakes(recipe, target, tables) };
    case "fill":
      return solveFill(recipe, target, tables);
    case "tin":
      if (!recipe.tin) throw say.refuse("no_tin");
      return { ...plain, factor: panFactor(recipe.tin, target.tin) };
    case "vessel": {
      if (recipe.stands_ml.equals(ZERO)) {
        throw say.refuse("stands_in_nothing");
      }
      const brim = middle(target.capacity).times(baseSize(target.capacity.unit, tables));
      return { ...plain, factor: brim.times(recipe.vessel_share).over(recipe.stands_ml) };
    }
    default:
      return solveHave(recipe, target, tables);
  }
}

/**
 * @param {ScaleRecipe} recipe
 * @param {Extract<Target, {sort: "fill"}>} target
 * @param {Tables} tables
 * @returns {Solved}
 */
function solveFill(recipe, { containers }, tables) {
  const wanted = containers.reduce(
    (sum, one) => sum.plus(holdsMl(recipe, one, tables).times(new Fraction(one.count))), ZERO,
  );
  return { factor: wanted.over(makesMl(recipe)), containers, scarcest: "", left: [] };
}

/**
 * What one container holds; of a jar known by its brim, less the published headspace.
 * @param {ScaleRecipe} recipe
 * @param {Filled} container
 * @param {Tables} tables
 */
function holdsMl(recipe, { size, brim }, tables) {
  const held = millilitres(recipe, size, tables);
  if (!brim) return held;
  if (!recipe.headspace_ml) {
    throw say.refuse("no_brim");
  }
  if (!held.above(recipe.headspace_ml)) throw say.refuse("all_headspace");
  return held.minus(recipe.headspace_ml);
}

/** @param {ScaleRecipe} recipe @param {Extract<Target, {sort: "makes"}>} target @param {Tables} tables */
function factorOfMakes(recipe, { amount, things }, tables) {
  const made = middle(recipe.makes);
  if (!amount.unit) {
    if (recipe.makes.unit && things) {
      throw say.refuse("unknown_unit", { word: things, mend: didYouMean(things, tables.offered[recipe.system]) });
    }
    if (recipe.makes.unit) {
      throw say.refuse("measured");
    }
    return middle(amount).over(made);
  }
  const unit = recipe.each ? recipe.each.unit : recipe.makes.unit;
  const whole = recipe.each ? middle(recipe.each).times(made) : made;
  if (unit && sizeOf(unit, tables) === sizeOf(amount.unit, tables)) {
    return middle(amount).times(baseSize(amount.unit, tables)).over(baseSize(unit, tables)).over(whole);
  }
  return millilitres(recipe, amount, tables).over(makesMl(recipe));
}

/** @param {ScaleRecipe} recipe */
function makesMl(recipe) {
  if (!recipe.makes_ml) {
    throw say.refuse("counted", { things: recipe.things });
  }
  return recipe.makes_ml;
}

/** @param {ScaleRecipe} recipe @param {Amount} amount @param {Tables} tables */
function millilitres(recipe, amount, tables) {
  const size = sizeOf(amount.unit, tables);
  const base = middle(amount).times(baseSize(amount.unit, tables));
  if (size === "volume") return base;
  if (size === "mass" && recipe.finished_density) return base.over(recipe.finished_density);
  throw say.refuse("not_measured_so");
}

/**
 * @param {ScaleRecipe} recipe
 * @param {Extract<Target, {sort: "have"}>} target
 * @param {Tables} tables
 * @returns {Solved}
 */
function solveHave(recipe, target, tables) {
  const allowed = target.have.map(({ amount, words }) => {
    const lines = findLines(words, recipe.lines, tables);
    // dough and topping both want sugar: what is there has to do for all of them
    const withAmounts = lines.filter((line) => line.form !== "words");
    const used = (withAmounts.length ? withAmounts : lines)
      .map((line) => shareUsed(recipe, line, amount, tables))
      .reduce((sum, one) => sum.plus(one), ZERO);
    return { own: ONE.over(used), item: lines[0].item, used, amount };
  });
  const factor = allowed.map((row) => row.own).reduce(smaller);
  const scarcest = allowed.find((row) => row.own.equals(factor))?.item ?? "";
  const left = allowed
    .filter((row) => row.own.above(factor))
    .map(({ item, used, amount }) => ({
      item,
      amount: ONE.minus(used.times(factor)).times(middle(amount)),
      unit: amount.unit,
    }));
  return { factor, containers: [], scarcest: allowed.length > 1 ? scarcest : "", left };
}

/**
 * Which part of what is there one batch needs for a line.
 * @param {ScaleRecipe} recipe
 * @param {ScaleLine} line
 * @param {Amount} have
 * @param {Tables} tables
 */
function shareUsed(recipe, line, have, tables) {
  const [need, there] = inOneMeasure(recipe, line, have, tables);
  return need.over(there);
}

/**
 * @param {ScaleRecipe} recipe
 * @param {ScaleLine} line
 * @param {Amount} have
 * @param {Tables} tables
 * @returns {[Fraction, Fraction]}
 */
function inOneMeasure(recipe, line, have, tables) {
  if (line.scales !== "with the batch" || line.form === "words") {
    throw say.refuse("does_not_grow", { item: line.item });
  }
  const need = writtenMiddle(recipe, line).times(baseSize(line.unit, tables));
  const there = middle(have).times(baseSize(have.unit, tables));
  const sizes = `${sizeOf(line.unit, tables)} ${sizeOf(have.unit, tables)}`;
  if (sizeOf(line.unit, tables) === sizeOf(have.unit, tables)) return [need, there];
  if (sizes === "mass volume" && line.density) return [need, there.times(line.density)];
  if (sizes === "volume mass" && line.density) return [need, there.over(line.density)];
  if (sizes === "count mass" && line.each_g) return [need, there.over(line.each_g)];
  throw say.refuse("item_not_measured_so", { item: line.item, written: line.written });
}

/**
 * The least and the most of a line in one batch as written, in the line's own unit.
 * @param {ScaleRecipe} recipe
 * @param {ScaleLine} line
 * @returns {[Fraction, Fraction]}
 */
export function writtenRange(recipe, line) {
  if (line.form !== "ratio" || line.of === null) return [line.low, line.high];
  const base = middle(recipe.lines[line.of]);
  return [line.low.times(base).over(line.per_high), line.high.times(base).over(line.per_low)];
}

/** @param {ScaleRecipe} recipe @param {ScaleLine} line */
function writtenMiddle(recipe, line) {
  const [low, high] = writtenRange(recipe, line);
  return low.plus(high).over(2);
}

/**
 * The lines a cook's words mean: all of a whole name, else the one that holds every word.
 * @param {string} words
 * @param {ScaleLine[]} lines
 * @param {Tables} tables
 * @returns {ScaleLine[]}
 */
function findLines(words, lines, tables) {
  const wanted = stems(words, tables);
  const whole = lines.filter((line) => {
    const own = stems(line.item, tables);
    return own.size === wanted.size && [...wanted].every((word) => own.has(word));
  });
  if (whole.length) return whole;
  const fits = lines.filter((line) => {
    const own = stems(line.item, tables).add(line.noun_one);
    return wanted.size && [...wanted].every((word) => own.has(word));
  });
  if (fits.length === 1) return fits;
  if (fits.length) {
    throw say.refuse("fits_several", { words, items: joinAnd(fits.map((line) => `"${line.item}"`)) });
  }
  throw say.refuse("not_in_recipe", { words, mend: didYouMean(words, lines.map((line) => line.item)) });
}

/** @param {string} words @param {Tables} tables */
function stems(words, tables) {
  return new Set((words.toLowerCase().match(/[a-zà-öø-ÿ]+/g) ?? []).map((word) => singular(word, tables)));
}

/**
 * The singular of one word in small letters: singular_word of core/words/plurals.py.
 * @param {string} word
 * @param {Tables} tables
 */
export function singular(word, tables) {
  const { same, odd, endings } = tables.one_and_many;
  if (same.includes(word) || word.length < 3) return word;
  if (Object.hasOwn(odd, word)) return odd[word];
  const found = endings.find(([many]) => word.endsWith(many) && word.length > many.length);
  return found ? word.slice(0, word.length - found[0].length) + found[1] : word;
}
