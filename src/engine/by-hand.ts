// A value set by hand in place of a worked one: it has to be the same kind of thing.
import {
  type Dimension,
  MONEY,
  PLAIN,
  TIME,
  hardPart,
  isHard,
  withoutNounsAbove,
} from '../quantity/dimension.ts';
import type { Holds } from '../quantity/form.ts';
import { type AmountMeasure, NUMBER, amountMeasure } from '../quantity/measure.ts';
import { unitByKey } from '../quantity/units.ts';

/**
 * What the value by hand holds beside what the formula does; null where they are not of a kind.
 * A bare number is read as so many of what is counted, as money or as hours, as in a formula.
 */
export function handHolds(hand: Holds, worked: Holds): Holds | null {
  const showIn = hand.showIn ?? worked.showIn;
  if (hand.measure.kind === 'open') return worked;
  if (worked.measure.kind === 'open') return hand;
  if (hand.measure.kind !== 'amount' || worked.measure.kind !== 'amount') {
    return hand.measure.kind === worked.measure.kind ? { ...hand, showIn } : null;
  }
  const measure = sameMeasure(hand.measure, worked.measure);
  return measure && { ...hand, measure, showIn };
}

function sameMeasure(hand: AmountMeasure, worked: AmountMeasure): AmountMeasure | null {
  if (hand.dimension === worked.dimension) return hand;
  if (hand === NUMBER) return bareMeasure(worked);
  const [a, b] = [labelled(hand.dimension), labelled(worked.dimension)];
  return a === b ? amountMeasure(worked.dimension, hand.scale) : null;
}

/** A bare number beside it: so many of it. */
function bareMeasure(worked: AmountMeasure): AmountMeasure | null {
  const { dimension } = worked;
  if (dimension === MONEY) return amountMeasure(MONEY);
  if (dimension === TIME) return amountMeasure(TIME, unitByKey('hour').scale);
  const [only, ...more] = dimension.nouns;
  const isCount = only?.power === 1 && more.length === 0 && hardPart(dimension) === PLAIN;
  return isCount ? amountMeasure(dimension) : null;
}

/** What has to agree: counts only label lengths, areas, volumes and weights, but a price is per something. */
function labelled(dimension: Dimension): Dimension {
  if (!isHard(dimension)) return dimension;
  return dimension.money === 0 && dimension.time === 0
    ? hardPart(dimension)
    : withoutNounsAbove(dimension);
}
