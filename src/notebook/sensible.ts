// The sensible limits of a given: `3 1/2 in up to 8 in`, `at least 3 in`, `up to 20%`.
import type { CellState, Outcome } from '../engine/outcome.ts';
import { standing, wordsOf } from '../language/range-ends.ts';
import type { Reading } from '../language/reading.ts';
import type { Range } from '../language/tree.ts';
import { hardPart } from '../quantity/dimension.ts';
import { type Dec, scaled, snapped } from '../quantity/decimal.ts';
import type { Holds } from '../quantity/form.ts';

/** One end of the limits, as it was worked. */
export interface Limit {
  readonly value: Dec;
  readonly holds: Holds;
}

export interface Limits {
  readonly low: Limit | null;
  readonly high: Limit | null;
  /** Both are plain amounts: they stay what they are whatever else changes. */
  readonly fixed: boolean;
}

type Draft = (text: string) => { readonly reading: Reading; readonly outcome: Outcome };

/** The limits, or null where they can't be read. */
export function readLimits(text: string, draft: Draft): Limits | null {
  const sides = splitLimits(text.trim());
  if (!sides) return null;
  const drafts = [sides.low, sides.high].map((side) => (side === null ? null : draft(side)));
  const [low, high] = drafts.map((side) => side && limitOf(side));
  if ((sides.low !== null && !low) || (sides.high !== null && !high)) return null;
  return { low, high, fixed: drafts.every((side) => !side || side.reading.tree.kind === 'amount') };
}

/** Where a value stands against its limits; null within them, or where there is nothing to compare. */
export function outsideLimits(
  { outcome, holds }: Pick<CellState, 'outcome' | 'holds'>,
  { low, high }: Limits,
): 'below' | 'above' | 'unlike' | null {
  if (outcome.kind !== 'value' || typeof outcome.value !== 'object' || !holds) return null;
  const value = { value: outcome.value, holds };
  if ((low && !alike(value, low)) || (high && !alike(value, high))) return 'unlike';
  if (low && plain(value).lessThan(plain(low))) return 'below';
  if (high && plain(value).greaterThan(plain(high))) return 'above';
  return null;
}

/** The ends of a range as limits are written, the lesser before the greater. */
export function upTo({ best, worst }: Range): string {
  const [low, high] = (standing(best, worst) ?? 0) <= 0 ? [best, worst] : [worst, best];
  return `${wordsOf(low)} up to ${wordsOf(high)}`;
}

/** Two amounts of one kind: are they the same? */
export function sameAmount(a: Limit, b: Limit): boolean {
  return plain(a).equals(plain(b));
}

/** The two sides of what a remark says, or null where it says neither. */
export function splitLimits(text: string): { low: string | null; high: string | null } | null {
  const both = /^(?:from\s+)?(.+?)\s+up\s+to\s+(.+)$/i.exec(text);
  if (both) return { low: both[1], high: both[2] };
  const high = /^(?:up\s+to|at\s+most|not\s+more\s+than)\s+(.+)$/i.exec(text);
  if (high) return { low: null, high: high[1] };
  const low = /^(?:at\s+least|not\s+less\s+than)\s+(.+)$/i.exec(text);
  if (low) return { low: low[1], high: null };
  return null;
}

function limitOf({ reading, outcome }: ReturnType<Draft>): Limit | null {
  const holds = reading.tree.kind === 'range' ? null : reading.checked?.holds;
  if (!holds || outcome.kind !== 'value' || typeof outcome.value !== 'object') return null;
  return { value: outcome.value, holds };
}

function alike(a: Limit, b: Limit): boolean {
  const [one, other] = [a.holds.measure, b.holds.measure];
  if (one.kind !== 'amount' || other.kind !== 'amount') return one.kind === other.kind;
  if (one.dimension === other.dimension) return true;
  // Labels below the line don't matter here, and a bare number is a count.
  return hardPart(one.dimension) === hardPart(other.dimension);
}

function plain({ value, holds }: Limit): Dec {
  if (holds.measure.kind !== 'amount') return snapped(value);
  return snapped(scaled(value, holds.measure.scale));
}
