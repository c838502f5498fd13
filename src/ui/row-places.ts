// Where a cell of a table's row stands on the page, from its id and back.
import type { CellId } from '../language/tree.ts';
import { cellOf } from './reading-order.ts';
import type { Door } from './session.ts';

export interface RowPlace {
  /** The cell that holds the table. */
  readonly cell: CellId;
  /** From 0; -1 is the header. */
  readonly row: number;
  readonly column: number;
  /** The cell itself; null in the header. */
  readonly id: CellId | null;
}

/** Cells of rows have ids below nought. */
export function isOfRow(id: CellId): boolean {
  return id < 0;
}

/** The cell on the page: a row's cell stands where its table does. Null: it is not of this notebook, as a trade table is. */
export function standingOn(door: Door, id: CellId): CellId | null {
  if (!isOfRow(id)) return id;
  if (!door.has(id)) return null;
  const { inTable } = door.state(id).input;
  return inTable === undefined || isOfRow(inTable) ? null : inTable;
}

/** The first cell of a table; its header where it has no rows. */
export function firstPlace(door: Door, cell: CellId): RowPlace {
  const id = door.rows(cell)?.[0]?.[0] ?? null;
  return { cell, row: id === null ? -1 : 0, column: 0, id };
}

/** Null where it is no cell of a row on the page. */
export function placeOf(door: Door, id: CellId): RowPlace | null {
  if (!isOfRow(id)) return null;
  const cell = standingOn(door, id);
  return cell === null ? null : standingIn(door, { cell, row: 0, column: 0, id });
}

/** The same cell where it stands now; null where it is gone. */
export function standingIn(door: Door, at: RowPlace): RowPlace | null {
  const { cell, id } = at;
  if (id === null || !cellOf(door.notebook, cell)) return null;
  const rows = door.rows(cell) ?? [];
  if (rows[at.row]?.[at.column] === id) return at;
  for (const [row, ids] of rows.entries()) {
    const column = ids.indexOf(id);
    if (column >= 0) return { cell, row, column, id };
  }
  return null;
}

/** How a cell is called beside others: in its own table by its column alone. */
export function nameBeside(door: Door, id: CellId, within: RowPlace | null): string {
  const { input } = door.state(id);
  const at = isOfRow(id) && within && input.inTable === within.cell ? placeOf(door, id) : null;
  if (!at || at.row !== within?.row) return input.name;
  return input.name.slice(input.name.lastIndexOf(': ') + 2);
}
