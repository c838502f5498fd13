// How the values of a given are spread over its range: triangular where a first value stands with best and
// worst, even between two ends. Held as plain numbers in the measure of the given itself.
import type { CellState } from '../engine/outcome.ts';
import { type Dec, scaled } from '../quantity/decimal.ts';
import { type Measure, conversion } from '../quantity/measure.ts';

export interface Spread {
  readonly best: number;
  readonly worst: number;
  /** Of a triangular one: where from best (0) to worst (1) it is likeliest; null: even. */
  readonly likeliest: number | null;
}

/** The spread of a given that has a range and a value; null of any other cell. */
export function spreadOf({ range, outcome, holds }: CellState): Spread | null {
  if (!range || !holds || outcome.kind !== 'value' || typeof outcome.value !== 'object')
    return null;
  const [best, worst] = [range.best, range.worst].map(({ value, holds: own }) =>
    heldIn(value, own.measure, holds.measure).toNumber(),
  );
  if (range.plain === 'middle') return { best, worst, likeliest: null };
  const likeliest = worst === best ? 0 : (outcome.value.toNumber() - best) / (worst - best);
  return { best, worst, likeliest: Math.min(1, Math.max(0, likeliest)) };
}

/** A number held in one measure as it is held in another of the same dimension. */
export function heldIn(value: Dec, from: Measure, to: Measure): Dec {
  if (from === to || from.kind !== 'amount' || to.kind !== 'amount') return value;
  return scaled(value, conversion(from, to));
}

/** The value that a share `u` of all chances lies before, counted from best to worst. */
export function valueAt({ best, worst, likeliest }: Spread, u: number): number {
  return best + (worst - best) * (likeliest === null ? u : along(likeliest, u));
}

function along(likeliest: number, u: number): number {
  return u < likeliest ? Math.sqrt(u * likeliest) : 1 - Math.sqrt((1 - u) * (1 - likeliest));
}
