// What a value measures and in what it is held: the static side of every quantity.
//
// An amount is held as typed, as a decimal number beside an exact rational scale:
//   number × scale = the amount in inches, pounds, minutes and dollars (and powers and counts of them).
// No one base unit is safe for both amounts and rates, so the scale travels with the measure
// and a conversion happens only where unlike scales meet. Scales are exact; numbers are decimals.
import Fraction from 'fraction.js';
import { type Dimension, PLAIN, overDimension, timesDimension } from './dimension.ts';
import { onceAPair } from './once.ts';

export { Fraction };

/** The two sides of a rate as they were written: 40 sq ft per hour, 1/4 in per ft, $6.48 per bag. */
export interface RateSides {
  readonly over: AmountMeasure;
  readonly under: AmountMeasure;
}

/** A number, quantity, money, count or rate. */
export interface AmountMeasure {
  readonly kind: 'amount';
  /** The same for equal measures. Measures are interned: `===` compares them. */
  readonly key: string;
  readonly dimension: Dimension;
  /** Held number × scale = the amount in in, lb, min, $. Positive. */
  readonly scale: Fraction;
  /** Kept until arithmetic other than scaling by a number is done with it; null for what is no rate. */
  readonly rate: RateSides | null;
}

/** A percentage; 10% is held as 0.1. */
export interface ShareMeasure {
  readonly kind: 'share';
  readonly key: 'share';
}
export interface YesNoMeasure {
  readonly kind: 'yes-no';
  readonly key: 'yes-no';
}
export interface TextMeasure {
  readonly kind: 'text';
  readonly key: 'text';
}
/** A bare `?`: nobody has said yet what it will measure. */
export interface OpenMeasure {
  readonly kind: 'open';
  readonly key: 'open';
}

export type Measure = AmountMeasure | ShareMeasure | YesNoMeasure | TextMeasure | OpenMeasure;

export const SHARE: ShareMeasure = { kind: 'share', key: 'share' };
export const YES_NO: YesNoMeasure = { kind: 'yes-no', key: 'yes-no' };
export const TEXT: TextMeasure = { kind: 'text', key: 'text' };
export const OPEN: OpenMeasure = { kind: 'open', key: 'open' };

export const ONE = new Fraction(1);

const known = new Map<string, AmountMeasure>();
const scaleKeys = new WeakMap<Fraction, string>();

function keyOf(scale: Fraction): string {
  let key = scaleKeys.get(scale);
  if (key === undefined) scaleKeys.set(scale, (key = scale.toFraction()));
  return key;
}

/** The one measure of this dimension, scale and rate sides. */
export function amountMeasure(
  dimension: Dimension,
  scale: Fraction = ONE,
  rate: RateSides | null = null,
): AmountMeasure {
  const key =
    dimension.key + '*' + keyOf(scale) + (rate ? `{${rate.over.key}|${rate.under.key}}` : '');
  const found = known.get(key);
  if (found) return found;
  const made: AmountMeasure = { kind: 'amount', key, dimension, scale, rate };
  known.set(key, made);
  return made;
}

/** A plain number. */
export const NUMBER = amountMeasure(PLAIN);

/** The rate `over per under`, both sides kept. */
export const rateMeasure = onceAPair((over: AmountMeasure, under: AmountMeasure) =>
  amountMeasure(overDimension(over.dimension, under.dimension), over.scale.div(under.scale), {
    over: withoutRate(over),
    under: withoutRate(under),
  }),
);

export function withoutRate(m: AmountMeasure): AmountMeasure {
  return m.rate ? amountMeasure(m.dimension, m.scale) : m;
}

/** a × b; a rate stays a rate only when scaled by a plain number. */
export const timesMeasure = onceAPair((a: AmountMeasure, b: AmountMeasure) => {
  if (b === NUMBER) return a;
  if (a === NUMBER) return b;
  return amountMeasure(timesDimension(a.dimension, b.dimension), a.scale.mul(b.scale));
});

/** a ÷ b; a rate stays a rate only when divided by a plain number. */
export const overMeasure = onceAPair((a: AmountMeasure, b: AmountMeasure) => {
  if (b === NUMBER) return a;
  return amountMeasure(overDimension(a.dimension, b.dimension), a.scale.div(b.scale));
});

/** The exact factor that turns a number held in `from` into one held in `to`; dimensions must agree in their hard part. */
export const conversion = onceAPair((from: AmountMeasure, to: AmountMeasure) =>
  from.scale.div(to.scale),
);
