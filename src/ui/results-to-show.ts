// The results of a notebook that can be chosen to be shown or practised, part by part: what is worked and has a value.
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import type { Door } from './session.ts';
import { cellOf } from './reading-order.ts';

export interface ResultsOfPart {
  readonly part: string;
  readonly cells: readonly Pick<Cell, 'id' | 'name'>[];
}

/** As many as a list to choose from holds; in a longer notebook one comes from the cell itself. */
const MOST = 1500;

/** The chosen one is among them whatever it is. */
export function resultsToShow(door: Door, chosen: CellId | null): readonly ResultsOfPart[] {
  let left = MOST;
  const found = door.notebook.parts.flatMap(({ name, blocks }) => {
    const cells = blocks.flatMap((block) => {
      if (block.kind !== 'cell' || left === 0) return [];
      const { cell } = block;
      if (cell.id !== chosen && !isResult(door, cell)) return [];
      left--;
      return [cell];
    });
    return cells.length === 0 ? [] : [{ part: name || 'Above the parts', cells }];
  });
  const isThere = chosen === null || cellOf(door.notebook, chosen) !== null;
  if (isThere || !door.has(chosen)) return found;
  const { name } = door.state(chosen).input;
  return [{ part: 'In a table', cells: [{ id: chosen, name }] }, ...found];
}

function isResult(door: Door, { id, table }: Cell): boolean {
  if (table) return false;
  const { kind, outcome } = door.state(id);
  return kind !== 'given' && outcome.kind === 'value';
}
