/**
 * What a cook may ask a batch to be, read from typed words and solved for a factor.
 * The twin of targets.py.
 */

import { Unreadable, baseSize, middle, parseLeading, parseNumber, sizeOf } from "../amounts/amounts.js";
import { Fraction, ZERO, smaller } from "../amounts/fraction.js";
import { panFactor, readOwnTin } from "../amounts/tins.js";

const BETWEEN = /\s*(?:\+|;|,(?!\d)|\band\b)\s*/;
const COUNTED = /^(\d{1,9})\s*(?:x|×|\*|(?:[a-z-]+\s+)?of)\s*(.+)$/i;
const FILL_HELP = 'Write it as "12 x 50 ml" or "12 x 50 ml + 6 x 100 ml".';
const HAVE_HELP = 'Write it as "17 cinnamon sticks" or "500 g sugar + 1 l vodka".';

export function parseTimes(text) {
  const factor = parseNumber(text);
  if (!factor.above(ZERO)) {
    throw new Unreadable("A batch of nothing cannot be made.", 'Write a number such as "3" or "1/2".');
  }
  return { sort: "times", factor };
}

export function parseWanted(text, system, tables) {
  const { amount, rest } = parseLeading(text, system, tables);
  if (!amount || !amount.low.above(ZERO)) {
    throw new Unreadable(`"${text}" is not an amount.`, 'Write it as "750 ml" or "36 biscuits".');
  }
  return { sort: "makes", amount, things: rest };
}

export function parseFill(text, system, tables) {
  const containers = text.trim().split(BETWEEN).map((part) => {
    const found = COUNTED.exec(part);
    const { amount: size, rest } = found ? parseLeading(found[2], system, tables) : { amount: null };
    if (!found || !size || !size.low.above(ZERO) || BigInt(found[1]) < 1n) {
      throw new Unreadable(`"${part}" does not name containers.`, FILL_HELP);
    }
    if (!["volume", "mass"].includes(sizeOf(size.unit, tables))) {
      throw new Unreadable(`"${part}" does not say how much a container holds.`, FILL_HELP);
    }
    return { count: BigInt(found[1]), size, brim: rest.toLowerCase().includes("brim") };
  });
  return { sort: "fill", containers };
}

export function parseHave(text, system, tables) {
  const have = text.trim().split(BETWEEN).map((part) => {
    const { amount, rest } = parseLeading(part, system, tables);
    const words = [amount?.noun, rest].filter(Boolean).join(" ").replace(/^of\s+/, "");
    if (!amount || !amount.low.above(ZERO) || !words) {
      throw new Unreadable(`"${part}" does not say how much of what.`, HAVE_HELP);
    }
    return { amount, words };
  });
  return { sort: "have", have };
}

export function parseVessel(text, system, tables) {
  const tin = readOwnTin(text);
  if (tin) return { sort: "tin", tin };
  const { amount } = parseLeading(text, system, tables);
  if (!amount || !amount.low.above(ZERO) || sizeOf(amount.unit, tables) !== "volume") {
    throw new Unreadable(`"${text}" is not the size of a vessel.`, 'Write it as "1.5 l".');
  }
  return { sort: "vessel", capacity: amount };
}

/** Read one target by its name: "times", "makes", "fill", "have" or "vessel"; throws Unreadable. */
export function parseTarget(sort, text, system, tables) {
  const readers = { makes: parseWanted, fill: parseFill, have: parseHave, vessel: parseVessel };
  return sort === "times" ? parseTimes(text) : readers[sort](text, system, tables);
}

/** Return {factor, containers, scarcest, left} of a target; throws Unreadable when it cannot be had. */
export function solveTarget(recipe, target, tables) {
  const solved = solveAny(recipe, target, tables);
  if (solved.factor.above(new Fraction(tables.most_times))) {
    const most = tables.most_times.toLocaleString("en-GB");
    throw new Unreadable("That is more than a kitchen can make.", `Ask for ${most} times the recipe at most.`);
  }
  if (new Fraction(1).above(solved.factor.times(tables.least_part))) {
    throw new Unreadable("That is too little to measure.", `Ask for 1/${tables.least_part} of the recipe at least.`);
  }
  return solved;
}

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
      if (!recipe.tin) throw new Unreadable("This recipe names no tin of its own.", "Ask by what it makes.");
      return { ...plain, factor: panFactor(recipe.tin, target.tin) };
    case "vessel": {
      if (recipe.stands_ml.equals(ZERO)) {
        throw new Unreadable("Nothing of this recipe stands in a vessel.", "Ask by what it makes.");
      }
      const brim = middle(target.capacity).times(baseSize(target.capacity.unit, tables));
      return { ...plain, factor: brim.times(recipe.vessel_share).over(recipe.stands_ml) };
    }
    default:
      return solveHave(recipe, target, tables);
  }
}

function solveFill(recipe, { containers }, tables) {
  const wanted = containers.reduce(
    (sum, one) => sum.plus(holdsMl(recipe, one, tables).times(new Fraction(one.count))), ZERO,
  );
  return { factor: wanted.over(makesMl(recipe)), containers, scarcest: "", left: [] };
}

/** What one container holds; of a jar known by its brim, less the published headspace. */
function holdsMl(recipe, { size, brim }, tables) {
  const held = millilitres(recipe, size, tables);
  if (!brim) return held;
  if (!recipe.headspace_ml) {
    throw new Unreadable(
      "Only the jars of a preserve are reckoned from their brim.", "Write what one holds when it is filled.",
    );
  }
  if (!held.above(recipe.headspace_ml)) throw new Unreadable("Such a jar is all headspace.", "Name a larger one.");
  return held.minus(recipe.headspace_ml);
}

function factorOfMakes(recipe, { amount, things }, tables) {
  const made = middle(recipe.makes);
  if (!amount.unit) {
    if (recipe.makes.unit && things) {
      throw new Unreadable(`"${things}" is not a unit.`, 'Write it as "750 ml", "1½ pints" or "2 1/2 cups".');
    }
    if (recipe.makes.unit) {
      throw new Unreadable("This recipe is measured, not counted.", 'Write it as "750 ml".');
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

function makesMl(recipe) {
  if (!recipe.makes_ml) {
    throw new Unreadable(
      "This recipe makes things that are counted, not poured.",
      `Write it as "${middle(recipe.makes)} ${recipe.things}".`,
    );
  }
  return recipe.makes_ml;
}

function millilitres(recipe, amount, tables) {
  const size = sizeOf(amount.unit, tables);
  const base = middle(amount).times(baseSize(amount.unit, tables));
  if (size === "volume") return base;
  if (size === "mass" && recipe.finished_density) return base.over(recipe.finished_density);
  throw new Unreadable("This recipe is not measured so.", 'Write a volume, such as "750 ml".');
}

function solveHave(recipe, target, tables) {
  const allowed = target.have.map(({ amount, words }) => {
    const line = findLine(words, recipe.lines, tables);
    const [need, there] = inOneMeasure(recipe, line, amount, tables);
    return { own: there.over(need), line, need, there, amount };
  });
  const factor = allowed.map((row) => row.own).reduce(smaller);
  const scarcest = allowed.find((row) => row.own.equals(factor)).line.item;
  const left = allowed
    .filter((row) => row.own.above(factor))
    .map(({ line, need, there, amount }) => ({
      item: line.item,
      amount: there.minus(need.times(factor)).over(there).times(middle(amount)),
      unit: amount.unit,
    }));
  return { factor, containers: [], scarcest: allowed.length > 1 ? scarcest : "", left };
}

function inOneMeasure(recipe, line, have, tables) {
  if (line.scales !== "with the batch" || line.form === "words") {
    throw new Unreadable(`"${line.item}" does not grow with the batch.`, "Name another ingredient.");
  }
  const need = writtenMiddle(recipe, line).times(baseSize(line.unit, tables));
  const there = middle(have).times(baseSize(have.unit, tables));
  const sizes = `${sizeOf(line.unit, tables)} ${sizeOf(have.unit, tables)}`;
  if (sizeOf(line.unit, tables) === sizeOf(have.unit, tables)) return [need, there];
  if (sizes === "mass volume" && line.density) return [need, there.times(line.density)];
  if (sizes === "volume mass" && line.density) return [need, there.over(line.density)];
  if (sizes === "count mass" && line.each_g) return [need, there.over(line.each_g)];
  throw new Unreadable(
    `"${line.item}" is not measured so in this recipe.`, `It is written as ${line.written}.`,
  );
}

/** The least and the most of a line in one batch as written, in the line's own unit. */
export function writtenRange(recipe, line) {
  if (line.form !== "ratio" || line.of === null) return [line.low, line.high];
  const base = middle(recipe.lines[line.of]);
  return [line.low.times(base).over(line.per_high), line.high.times(base).over(line.per_low)];
}

function writtenMiddle(recipe, line) {
  const [low, high] = writtenRange(recipe, line);
  return low.plus(high).over(2);
}

/** The line a cook's words mean: a whole name, else the one that holds every word. */
export function findLine(words, lines, tables) {
  const wanted = stems(words, tables);
  const whole = lines.find((line) => {
    const own = stems(line.item, tables);
    return own.size === wanted.size && [...wanted].every((word) => own.has(word));
  });
  if (whole) return whole;
  const fits = lines.filter((line) => {
    const own = stems(line.item, tables).add(line.noun_one);
    return wanted.size && [...wanted].every((word) => own.has(word));
  });
  if (fits.length === 1) return fits[0];
  if (fits.length) {
    const both = fits.map((line) => `"${line.item}"`).join(" and ");
    throw new Unreadable(`"${words}" fits ${both}.`, "Write the whole name.");
  }
  const names = lines.map((line) => line.item).sort().join(", ");
  throw new Unreadable(`"${words}" is not in this recipe.`, `It may be: ${names}.`);
}

function stems(words, tables) {
  return new Set((words.toLowerCase().match(/[a-zà-öø-ÿ]+/g) ?? []).map((word) => singular(word, tables)));
}

function singular(word, tables) {
  const { same, odd, endings } = tables.one_and_many;
  if (same.includes(word) || word.length < 3) return word;
  if (Object.hasOwn(odd, word)) return odd[word];
  const found = endings.find(([many]) => word.endsWith(many) && word.length > many.length);
  return found ? word.slice(0, word.length - found[0].length) + found[1] : word;
}
