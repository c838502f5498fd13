// The givens that a result rests on, as far as they are numbers that can be moved.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import { Dec } from '../quantity/decimal.ts';
import { isHard } from '../quantity/dimension.ts';
import type { Asked } from './web.ts';

/** Numbers written into the notebook, in cells or in rows; what is read off tables of the trade is none of them. */
export function givensOf(asked: Asked, result: CellId): readonly CellId[] {
  return asked.reach([result], 'down').filter((cell) => {
    const { kind, input, outcome } = asked.state(cell);
    const isNumber = outcome.kind === 'value' && outcome.value instanceof Dec;
    return kind === 'given' && isNumber && !input.table && (input.source ?? null) === null;
  });
}

/** The number that a cell holds; null where it holds none. */
export function numberOf({ outcome }: Pick<CellState, 'outcome'>): Dec | null {
  return outcome.kind === 'value' && outcome.value instanceof Dec ? outcome.value : null;
}

/** Does it count whole things, of which there is no half? */
export function isWholeCount(state: CellState): boolean {
  const { holds, range } = state;
  if (holds?.measure.kind !== 'amount') return false;
  const { dimension } = holds.measure;
  const all = [numberOf(state), range?.best.value ?? null, range?.worst.value ?? null];
  return (
    !isHard(dimension) &&
    dimension.nouns.every((noun) => noun.power > 0) &&
    all.every((value) => value === null || value.isInteger())
  );
}
