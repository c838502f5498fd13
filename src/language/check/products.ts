// What a product or a quotient of two amounts measures, and when counted things forbid it.
import {
  type Dimension,
  PLAIN,
  countOf,
  hardPart,
  overDimension,
  powerDimension,
  timesDimension,
} from '../../quantity/dimension.ts';
import {
  type AmountMeasure,
  NUMBER,
  amountMeasure,
  overMeasure,
  timesMeasure,
} from '../../quantity/measure.ts';
import { cancelEach, goTogether, measuresAbove, powerOf, withoutCounts } from './counted.ts';

export type Product =
  | { readonly kind: 'fits'; readonly measure: AmountMeasure }
  /** A count of one thing beside what is per another. */
  | { readonly kind: 'per-another'; readonly counted: string; readonly per: string }
  /** A count divided by what is per something: it would count things squared. */
  | { readonly kind: 'over-per'; readonly counted: string; readonly per: string }
  /** Two different things counted, with nothing that says how many of one for each of the other. */
  | { readonly kind: 'thing-by-thing'; readonly left: string; readonly right: string }
  /** More lengths multiplied than there are directions; money times money. */
  | { readonly kind: 'too-high'; readonly what: 'length' | 'money' | 'time' | 'weight' };

type Pairs = WeakMap<AmountMeasure, WeakMap<AmountMeasure, Product>>;
const products: Pairs = new WeakMap();
const quotients: Pairs = new WeakMap();

/** left × right. Remembered: a notebook multiplies the same few measures over and over. */
export function productOf(left: AmountMeasure, right: AmountMeasure): Product {
  return remembered(products, left, right, product);
}

/** left ÷ right. */
export function quotientOf(left: AmountMeasure, right: AmountMeasure): Product {
  return remembered(quotients, left, right, quotient);
}

function remembered(
  pairs: Pairs,
  left: AmountMeasure,
  right: AmountMeasure,
  work: (left: AmountMeasure, right: AmountMeasure) => Product,
): Product {
  let row = pairs.get(left);
  if (!row) pairs.set(left, (row = new WeakMap()));
  let found = row.get(right);
  if (!found) row.set(right, (found = work(left, right)));
  return found;
}

function product(left: AmountMeasure, right: AmountMeasure): Product {
  if (left === NUMBER || right === NUMBER) {
    return { kind: 'fits', measure: timesMeasure(left, right) };
  }
  const whole = cancelEach(
    timesDimension(left.dimension, right.dimension),
    left.dimension,
    right.dimension,
  );
  const over = leftOver(whole, left.dimension, right.dimension);
  const clash =
    perAnother(over.leftAbove, over.rightBelow) ?? perAnother(over.rightAbove, over.leftBelow);
  if (clash) return clash;
  const pair = thingByThing(over.leftAbove, over.rightAbove);
  if (pair) {
    const lighter = hardPart(whole) === PLAIN ? withoutCountsBesideHard(left, right) : null;
    return lighter ? productOf(...lighter) : pair;
  }
  const high = tooHigh(whole);
  return high ?? { kind: 'fits', measure: amountMeasure(whole, left.scale.mul(right.scale)) };
}

/** `63 hours ÷ (2 people × 8 hours a day)` is days, for all of them: people who work hours go with the hours. */
function withoutPeople(left: Dimension, right: AmountMeasure): AmountMeasure | null {
  const works = powerOf(right.dimension, 'person') > 0 && right.dimension.time > 0;
  if (!works || left.time < 1 || powerOf(left, 'person') !== 0) return null;
  return amountMeasure(overDimension(right.dimension, countOf('person')), right.scale);
}

function quotient(left: AmountMeasure, right: AmountMeasure): Product {
  const lighter = right === NUMBER ? null : withoutPeople(left.dimension, right);
  if (lighter) return quotientOf(left, lighter);
  if (right === NUMBER) return { kind: 'fits', measure: overMeasure(left, right) };
  const turned = powerDimension(right.dimension, -1);
  const whole = cancelEach(overDimension(left.dimension, right.dimension), left.dimension, turned);
  const over = leftOver(whole, left.dimension, turned);
  const pair = thingByThing(over.leftAbove, over.rightAbove);
  if (pair) {
    if (measuresAbove(left.dimension)) {
      return quotientOf(amountMeasure(withoutCounts(left.dimension), left.scale), right);
    }
    return { kind: 'over-per', counted: pair.left, per: pair.right };
  }
  return { kind: 'fits', measure: amountMeasure(whole, left.scale.div(right.scale)) };
}

/** 12 holes × 1 cubic ft, times 2 bags per cubic ft: once the hard units cancel, the holes drop out. */
function withoutCountsBesideHard(
  left: AmountMeasure,
  right: AmountMeasure,
): [AmountMeasure, AmountMeasure] | null {
  if (measuresAbove(left.dimension)) {
    return [amountMeasure(withoutCounts(left.dimension), left.scale), right];
  }
  if (measuresAbove(right.dimension)) {
    return [left, amountMeasure(withoutCounts(right.dimension), right.scale)];
  }
  return null;
}

interface LeftOver {
  readonly leftAbove: readonly string[];
  readonly leftBelow: readonly string[];
  readonly rightAbove: readonly string[];
  readonly rightBelow: readonly string[];
}

/** The things that did not cancel, by the side they came from. */
function leftOver(whole: Dimension, left: Dimension, right: Dimension): LeftOver {
  const above = whole.nouns.filter((n) => n.power > 0).map((n) => n.noun);
  const below = whole.nouns.filter((n) => n.power < 0).map((n) => n.noun);
  return {
    leftAbove: above.filter((n) => powerOf(left, n) > 0),
    leftBelow: below.filter((n) => powerOf(left, n) < 0),
    rightAbove: above.filter((n) => powerOf(right, n) > 0),
    rightBelow: below.filter((n) => powerOf(right, n) < 0),
  };
}

function perAnother(above: readonly string[], below: readonly string[]): Product | null {
  for (const counted of above) {
    const per = below.find((n) => !goTogether(counted, n));
    if (per !== undefined) return { kind: 'per-another', counted, per };
  }
  return null;
}

function thingByThing(
  left: readonly string[],
  right: readonly string[],
): { kind: 'thing-by-thing'; left: string; right: string } | null {
  for (const a of left) {
    const b = right.find((n) => !goTogether(a, n));
    if (b !== undefined) return { kind: 'thing-by-thing', left: a, right: b };
  }
  return null;
}

export function tooHigh(whole: Dimension): Product | null {
  if (whole.length > 3) return { kind: 'too-high', what: 'length' };
  if (whole.money > 1) return { kind: 'too-high', what: 'money' };
  if (whole.time > 1) return { kind: 'too-high', what: 'time' };
  if (whole.mass > 1) return { kind: 'too-high', what: 'weight' };
  return null;
}
