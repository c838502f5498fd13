// A cell's value in the words of the page: a check holds or does not hold.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';

export const HOLDS = 'holds';
export const DOES_NOT_HOLD = 'does not hold';

/** Null where there is no value. */
export function valueSaid(door: EstimateDoor, cell: CellId): string | null {
  const { kind, outcome } = door.state(cell);
  if (kind === 'check' && outcome.kind === 'value' && typeof outcome.value === 'boolean') {
    return outcome.value ? HOLDS : DOES_NOT_HOLD;
  }
  return door.shown(cell)?.text ?? null;
}

/** A given still to come. */
export function isOpen({ outcome, kind }: CellState): boolean {
  return outcome.kind === 'unknown' && kind === 'given';
}

/** As it is read aloud: a mark of its own says what is not yet known. */
export function spoken(text: string): string {
  return text.startsWith('?') ? text.replace('?', 'not yet known') : text;
}
