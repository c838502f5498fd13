// What a total says of the lines that it leaves out.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';

/** `2 lines not yet known`; `1 line without a value` where something is at fault. */
export function sayLeftOut(leftOut: readonly CellId[], state: (cell: CellId) => CellState): string {
  const lines = leftOut.length === 1 ? '1 line' : `${leftOut.length} lines`;
  const areOpen = leftOut.every((id) => state(id).outcome.kind === 'unknown');
  return `${lines} ${areOpen ? 'not yet known' : 'without a value'}`;
}
