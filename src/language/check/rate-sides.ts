// The two sides of a rate, and which of them the quantity before `at` measures.
import { type Dimension, PLAIN, hardPart, withoutNounsAbove } from '../../quantity/dimension.ts';
import { type AmountMeasure, amountMeasure } from '../../quantity/measure.ts';
import { onceEach } from '../../quantity/once.ts';
import {
  EACH,
  abovePart,
  belowPart,
  cancelEach,
  countedNoun,
  powerOf,
  withNouns,
  withoutCounts,
} from './counted.ts';

export interface Sides {
  readonly over: Dimension;
  readonly under: Dimension;
}

/** What a rate is of and per: as written, or for one that was worked out what stands above and below the line. */
export function sidesOf(rate: AmountMeasure): Sides | null {
  if (rate.rate) return { over: rate.rate.over.dimension, under: rate.rate.under.dimension };
  const under = belowPart(rate.dimension);
  return under === PLAIN ? null : { over: abovePart(rate.dimension), under };
}

interface WayAt {
  readonly manner: 'at-multiplied' | 'at-divided';
  /** The left side with the counts dropped that had to be dropped. */
  readonly left: Dimension;
}

/**
 * L is compared with its counts first, then without those beside a hard unit, and then by what stands
 * above its own line (8 hours per post at $50 per hour).
 */
export function wayOf(left: AmountMeasure, sides: Sides): WayAt | null {
  const full = left.dimension;
  const dropped = withoutNounsAbove(full);
  const tries: readonly (readonly [Dimension, Dimension])[] = [
    [full, full],
    [dropped, dropped],
    [withoutPeople(full), withoutPeople(full)],
    [abovePart(full), full],
    [withoutCounts(abovePart(full)), withoutCounts(full)],
  ];
  for (const [compared, used] of tries) {
    if (fits(compared, sides.under)) return { manner: 'at-multiplied', left: used };
    if (compared === sides.over && compared !== PLAIN) return { manner: 'at-divided', left: used };
  }
  return null;
}

/** 3 people × 4 days at $400 per day: the people go on counting, as they do beside hours. */
const withoutPeople = onceEach((a: Dimension) =>
  withNouns(
    a,
    a.nouns.filter((n) => n.noun !== 'person' || n.power < 0),
  ),
);

/** The same thing; `each` is per whatever is counted, or a plain number of them. */
function fits(left: Dimension, under: Dimension): boolean {
  if (left === under) return left !== PLAIN;
  if (countedNoun(under) === EACH) return left === PLAIN || countedNoun(left) !== null;
  return powerOf(under, EACH) === 1 && left === hardPart(under) && left !== PLAIN;
}

/** Every `each` done with. */
export function tidied(measure: AmountMeasure, left: Dimension, right: Dimension): AmountMeasure {
  const cancelled = cancelEach(measure.dimension, left, right);
  if (powerOf(cancelled, EACH) === 0) return amountMeasure(cancelled, measure.scale);
  const nouns = cancelled.nouns.filter((n) => n.noun !== EACH);
  return amountMeasure(withNouns(cancelled, nouns), measure.scale);
}
