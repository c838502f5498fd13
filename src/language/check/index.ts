// Checking a formula before any number is known: what everything measures, the exact scalings between
// unlike units, and how shares and rates are taken. The door of this folder.
import { withoutNounsAbove } from '../../quantity/dimension.ts';
import { amountMeasure } from '../../quantity/measure.ts';
import type { Nouns } from '../../quantity/nouns.ts';
import type { Report } from '../../words/report.ts';
import type { Checked } from '../plan.ts';
import type { Surroundings } from '../reading.ts';
import type { SizeTable } from '../size-table.ts';
import type { CellId, Formula } from '../tree.ts';
import type { Checking } from './checking.ts';
import { work } from './work.ts';

export interface Check {
  /** Null where there is a problem, a hole, or a cell that is waited for. */
  readonly checked: Checked | null;
  readonly problems: readonly Report[];
  /** Cells it names that hold nothing yet; empty when there is a problem or a result. */
  readonly waitsFor: readonly CellId[];
  /** What was decided in the reader's stead, one short sentence each. */
  readonly notes: readonly string[];
}

/** `text` is the formula as typed: spots point into it, and fixes replace stretches of it. */
export function check(
  tree: Formula,
  surroundings: Surroundings,
  nouns: Nouns,
  text: string,
  sizes: readonly SizeTable[] = NONE,
): Check {
  const checking: Checking = {
    text,
    surroundings,
    nouns,
    sizes,
    problems: [],
    waitsFor: [],
    notes: [],
  };
  const worked = work(tree, checking);
  const { problems, waitsFor, notes } = checking;
  return {
    checked: worked && problems.length === 0 ? asResult(worked) : null,
    problems: problems.length === 0 ? NONE : problems,
    waitsFor: problems.length === 0 && waitsFor.length > 0 ? waitsFor : NONE,
    notes: notes.length === 0 ? NONE : notes,
  };
}

/** One for all: there are three lists a formula, and most have nothing in them. */
const NONE: readonly never[] = [];

/** At the result, what is counted beside a hard unit drops out: 12 joists × 10 ft is 120 ft. */
function asResult(checked: Checked): Checked {
  const { measure } = checked.holds;
  if (measure.kind !== 'amount') return checked;
  const kept = withoutNounsAbove(measure.dimension);
  if (kept === measure.dimension) return checked;
  const result = amountMeasure(kept, measure.scale, measure.rate);
  return { ...checked, holds: { ...checked.holds, measure: result } };
}
