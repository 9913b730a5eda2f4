/**
 * Exact fractions of whole numbers without limit (BigInt), so that the browser scales as Python does.
 */

/** @param {bigint} a @param {bigint} b */
function gcd(a, b) {
  while (b) [a, b] = [b, a % b];
  return a < 0n ? -a : a;
}

/**
 * Whole division towards minus infinity, as Python's.
 * @param {bigint} a
 * @param {bigint} b
 */
function floorDiv(a, b) {
  const whole = a / b;
  return a % b !== 0n && a < 0n !== b < 0n ? whole - 1n : whole;
}

export class Fraction {
  /**
   * A fraction in its lowest terms; throws RangeError for a bottom of nothing.
   * @param {bigint | number | string} top
   * @param {bigint | number | string} [bottom]
   */
  constructor(top, bottom = 1n) {
    let n = BigInt(top);
    let d = BigInt(bottom);
    if (d === 0n) throw new RangeError("A fraction cannot divide by nothing.");
    if (d < 0n) [n, d] = [-n, -d];
    const shared = gcd(n, d) || 1n;
    this.n = n / shared;
    this.d = d / shared;
    Object.freeze(this);
  }

  /** Read "3/2", "0.95" or "7"; throws SyntaxError for anything else. @param {unknown} text */
  static parse(text) {
    const found = /^(-?\d+)(?:\.(\d+)|\/(\d+))?$/.exec(String(text));
    if (!found) throw new SyntaxError(`"${text}" is not a fraction.`);
    if (found[3]) return new Fraction(found[1], found[3]);
    const decimals = found[2] ?? "";
    return new Fraction(found[1] + decimals, 10n ** BigInt(decimals.length));
  }

  /** @param {Fraction | bigint | number | string} value */
  static of(value) {
    if (value instanceof Fraction) return value;
    return typeof value === "string" ? Fraction.parse(value) : new Fraction(value);
  }

  /** @param {Fraction | bigint | number | string} other */
  plus(other) {
    const { n, d } = Fraction.of(other);
    return new Fraction(this.n * d + n * this.d, this.d * d);
  }

  /** @param {Fraction | bigint | number | string} other */
  minus(other) {
    const { n, d } = Fraction.of(other);
    return new Fraction(this.n * d - n * this.d, this.d * d);
  }

  /** @param {Fraction | bigint | number | string} other */
  times(other) {
    const { n, d } = Fraction.of(other);
    return new Fraction(this.n * n, this.d * d);
  }

  /** @param {Fraction | bigint | number | string} other */
  over(other) {
    const { n, d } = Fraction.of(other);
    return new Fraction(this.n * d, this.d * n);
  }

  /** Below, equal or above: -1, 0 or 1. @param {Fraction | bigint | number | string} other */
  compare(other) {
    const { n, d } = Fraction.of(other);
    const difference = this.n * d - n * this.d;
    return difference < 0n ? -1 : difference > 0n ? 1 : 0;
  }

  /** @param {Fraction | bigint | number | string} other */
  equals(other) {
    return this.compare(other) === 0;
  }

  /** @param {Fraction | bigint | number | string} other */
  below(other) {
    return this.compare(other) < 0;
  }

  /** @param {Fraction | bigint | number | string} other */
  above(other) {
    return this.compare(other) > 0;
  }

  abs() {
    return this.n < 0n ? new Fraction(-this.n, this.d) : this;
  }

  /** The whole number at or below, as a BigInt. */
  floor() {
    return floorDiv(this.n, this.d);
  }

  /** The whole number at or above, as a BigInt. */
  ceil() {
    return -floorDiv(-this.n, this.d);
  }

  get whole() {
    return this.d === 1n;
  }

  toString() {
    return this.whole ? `${this.n}` : `${this.n}/${this.d}`;
  }
}

export const ZERO = new Fraction(0);
export const ONE = new Fraction(1);
export const HALF = new Fraction(1, 2);

/** @param {Fraction} a @param {Fraction} b */
export function smaller(a, b) {
  return b.below(a) ? b : a;
}

/** @param {Fraction} a @param {Fraction} b */
export function larger(a, b) {
  return b.above(a) ? b : a;
}
