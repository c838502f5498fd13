// What else another amount of a given would change: checks that would no longer hold, or would then, limits that are
// sensible and would be passed, and cells that would be left without a value. Worked exactly beside the notebook.
import type { Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import { cellsOf } from '../notebook/lines.ts';
import { remarkText } from '../notebook/remarks.ts';
import { type Limits, outsideLimits, readLimits } from '../notebook/sensible.ts';
import { Dec } from '../quantity/decimal.ts';
import { ExactWork, type Put } from './exactly.ts';
import { webOf } from './web.ts';
import type { Solves } from './would-take.ts';

export type Also =
  /** A check that holds now and would not. */
  | { readonly kind: 'says-no'; readonly cell: CellId; readonly caution: string | null }
  /** A check that does not hold now and would. */
  | { readonly kind: 'holds-then'; readonly cell: CellId }
  /** Its sensible limits would be passed, and are not now. */
  | {
      readonly kind: 'not-sensible';
      readonly cell: CellId;
      readonly side: 'below' | 'above';
      readonly shown: string;
      readonly limits: string;
    }
  /** It would have no value any more. */
  | { readonly kind: 'without-value'; readonly cell: CellId };

/** What weighs most first, each in the order in which the notebook is worked. */
export function alsoChanged(job: Solves, given: CellId, value: Dec): readonly Also[] {
  const web = webOf(job, [given], null);
  const exact = new ExactWork(job, web);
  exact.run(new Map([[given, value]]));
  const cells = new Map(job.notebook.parts.flatMap(cellsOf).map((cell) => [cell.id, cell]));
  const all = [given, ...web.steps.map(({ cell }) => cell)].flatMap((id) => {
    const cell = cells.get(id);
    return cell ? ofCell(job, cell, id === given ? value : exact.value(id)) : [];
  });
  return WEIGHTS.flatMap((kind) => all.filter((each) => each.kind === kind));
}

const WEIGHTS: readonly Also['kind'][] = ['says-no', 'without-value', 'not-sensible', 'holds-then'];

function ofCell(job: Solves, cell: Cell, then: Put | null): readonly Also[] {
  const { kind, outcome } = job.state(cell.id);
  if (then === null) return [{ kind: 'without-value', cell: cell.id }];
  if (kind === 'check' && outcome.kind === 'value' && outcome.value !== then) {
    return then === true
      ? [{ kind: 'holds-then', cell: cell.id }]
      : [{ kind: 'says-no', cell: cell.id, caution: remarkText(cell.remarks, 'caution') }];
  }
  return passed(job, cell, then);
}

function passed(job: Solves, cell: Cell, then: Put): readonly Also[] {
  const text = remarkText(cell.remarks, 'sensible');
  const { outcome, holds } = job.state(cell.id);
  if (text === null || !holds || !(then instanceof Dec)) return [];
  const limits = readLimits(text, (side) => job.draft(cell.id, side));
  if (!limits) return [];
  const side = sideOf({ kind: 'value', value: then, leftOut: [] }, limits);
  if (side === null || side === sideOf(outcome, limits)) return [];
  const shown = job.say(then, holds).text;
  return [{ kind: 'not-sensible', cell: cell.id, side, shown, limits: text }];

  function sideOf(of: Outcome, within: Limits): 'below' | 'above' | null {
    const found = outsideLimits({ outcome: of, holds }, within);
    return found === 'unlike' ? null : found;
  }
}
