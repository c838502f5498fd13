// Whether two things measure the same, as far as standing in one column goes.
import { hardPart, isHard } from './dimension.ts';
import type { Measure } from './measure.ts';

/** Labels of what is counted don't matter beside a hard unit. */
export function alikeMeasures(a: Measure, b: Measure): boolean {
  if (a.kind !== 'amount' || b.kind !== 'amount') return a.kind === b.kind || a.kind === 'open';
  if (a.dimension === b.dimension) return true;
  return isHard(a.dimension) && hardPart(a.dimension) === hardPart(b.dimension);
}
