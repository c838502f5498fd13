// Decimal numbers of 64 digits, 20 of them guard, and the two rules that keep whole numbers whole:
// snap to 44 digits before every rounding and comparison, and drop what + and − leave of noise.
import Decimal from 'decimal.js';
import { Fraction } from './measure.ts';

const DIGITS = 64;
const KEPT = 44;

/** The most digits that one word of a decimal's inner array holds. */
const WORD = 7;

/**
 * The house's numbers. Made just as mathjs makes its own BigNumber class (a clone with a prototype of
 * its own that says what it is), so that it can be handed to mathjs in that class's stead.
 */
export const Dec: typeof Decimal = Decimal.clone({ precision: DIGITS, modulo: Decimal.EUCLID });
export type Dec = Decimal;

const prototype = Object.assign(Object.create(Dec.prototype as object) as object, {
  type: 'BigNumber',
  isBigNumber: true,
  toJSON(this: Dec) {
    return { mathjs: 'BigNumber', value: this.toString() };
  },
});
Object.defineProperty(Dec, 'prototype', { value: prototype });
Object.defineProperty(Dec, 'fromJSON', {
  value: (json: { readonly value: string }) => new Dec(json.value),
});

export const ZERO: Dec = new Dec(0);

/** To the digits that are kept: what every rounding, comparison and showing is done on. */
export function snapped(d: Dec): Dec {
  const words = d.d;
  if (words === null || words.length * WORD <= KEPT) return d;
  return d.toSignificantDigits(KEPT, Dec.ROUND_HALF_UP);
}

/** a + b, zero where only noise is left. */
export function plusDropping(a: Dec, b: Dec): Dec {
  return dropped(a.plus(b), a, b);
}

/** a − b, zero where only noise is left. */
export function minusDropping(a: Dec, b: Dec): Dec {
  return dropped(a.minus(b), a, b);
}

function dropped(result: Dec, a: Dec, b: Dec): Dec {
  // The exponent of a zero says nothing of its size.
  if (a.isZero() || b.isZero()) return result;
  return result.e < Math.max(a.e, b.e) - KEPT ? ZERO : result;
}

/** The snapped value to a whole number: up towards more, down towards less, or the nearest with half away from zero. */
export function roundedToWhole(d: Dec, way: 'up' | 'down' | 'nearest'): Dec {
  return snapped(d).toDecimalPlaces(0, ROUNDING[way]);
}

const ROUNDING = {
  up: Decimal.ROUND_CEIL,
  down: Decimal.ROUND_FLOOR,
  nearest: Decimal.ROUND_HALF_UP,
} as const;

/** To 64 digits where the fraction has no end. */
export function fromFraction(f: Fraction): Dec {
  const over = new Dec(digitsOf(f.s * f.n));
  return f.d === 1n ? over : over.div(digitsOf(f.d));
}

/** As a number where that is exact: text takes longer. */
function digitsOf(whole: bigint): number | string {
  const number = Number(whole);
  return Number.isSafeInteger(number) ? number : whole.toString();
}

/** Exactly. */
export function toFraction(d: Dec): Fraction {
  return new Fraction(d.toFixed());
}

/** d × by: times the numerator first, so that what comes out even stays even. */
export function scaled(d: Dec, by: Fraction): Dec {
  const over = by.n === 1n && by.s === 1n ? d : d.times(digitsOf(by.s * by.n));
  return by.d === 1n ? over : over.div(digitsOf(by.d));
}
