// What moves when some cells do: the cells that need them, in an order in which they can be worked, and how each
// is worked. Edges come from the text of formulas, as they do in the notebook.
import type { CellState, Outcome, Value } from '../engine/outcome.ts';
import type { WorkedBy } from '../engine/reach.ts';
import type { Plan } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import type { Holds } from '../quantity/form.ts';
import type { Shown } from '../quantity/show.ts';

/** What has to be asked of a notebook to work some of it beside it; an `Estimate` answers all of it. */
export interface Asked {
  state(cell: CellId): CellState;
  evaluate(plan: Plan): Outcome;
  reach(cells: readonly CellId[], way: 'up' | 'down'): readonly CellId[];
  workedBy(cell: CellId): WorkedBy | null;
  say(value: Value, holds: Holds): Shown;
}

export interface WebStep extends WorkedBy {
  readonly cell: CellId;
}

export interface Web {
  /** The cells that are given other values. */
  readonly moved: readonly CellId[];
  /** What needs them and has a value as the notebook stands, each after what it needs. */
  readonly steps: readonly WebStep[];
}

/** `wanted`: only what these need, and these; null: all that moves. */
export function webOf(
  asked: Asked,
  moved: readonly CellId[],
  wanted: readonly CellId[] | null,
): Web {
  const needed = wanted && new Set([...wanted, ...asked.reach(wanted, 'down')]);
  const steps = asked.reach(moved, 'up').flatMap((cell): readonly WebStep[] => {
    if (needed && !needed.has(cell)) return [];
    // Without a value now it has none in a trial either: what leaves it out goes on leaving it out.
    if (asked.state(cell).outcome.kind !== 'value') return [];
    const by = asked.workedBy(cell);
    return by ? [{ ...by, cell }] : [];
  });
  return { moved, steps };
}
