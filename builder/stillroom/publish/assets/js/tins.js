/** Which tin another batch wants to stand as high in: the twin of tins.py. */

import { showDecimal } from "./amounts.js";
import { Fraction, HALF, ONE } from "./fraction.js";

const WIDEST = { cm: 40, inch: 16 };

/** Return the sentence of a tin {words, unit, across, along} at a factor; "" for the same tin. */
export function tinNote(tin, factor) {
  if (!tin || factor.equals(ONE)) return "";
  const choices = factor.whole ? [`${factor} of them`] : [];
  const own = Fraction.parse(tin.across);
  if (tin.along) {
    const area = showDecimal(own.times(Fraction.parse(tin.along)).times(factor), 0);
    choices.push(`one of ${area} ${tin.unit === "cm" ? "cm²" : "square inches"}`);
  } else {
    const across = acrossOf(own.times(own).times(factor), WIDEST[tin.unit]);
    if (new Fraction(across).equals(own)) return "";
    if (across) choices.push(`one of ${across} ${tin.unit}`);
  }
  if (!choices.length) choices.push("share it among several");
  const start = `To stand as high it wants ${showDecimal(factor)} times the area of the ${tin.words}`;
  return `${start}: ${choices.join(", or ")}.`;
}

/** The nearest whole size of the same shape, 0 when no oven takes it. */
function acrossOf(wanted, widest) {
  for (let size = 1; size <= widest; size += 1) {
    const edge = new Fraction(size).plus(HALF);
    if (!wanted.above(edge.times(edge))) return size;
  }
  return 0;
}
