// Which texts of a notebook can't be read as it stands: what they would name is not protected when a name comes in.
import type { Workings } from '../engine/workings.ts';
import type { Saying } from './mentions.ts';

export function isAtFault(workings: Workings, { cell, at, text }: Saying): boolean {
  if (!at) return workings.state(cell).reading.problems.length > 0;
  const rows = workings.rowsOf(cell) ?? [];
  // What a column says is at fault in every row that says nothing else.
  const row =
    at.row === null ? rows.find((ids) => says(workings, ids[at.column], text)) : rows[at.row];
  const id = row?.[at.column];
  return id !== undefined && workings.state(id).reading.problems.length > 0;
}

function says(workings: Workings, id: number | undefined, text: string): boolean {
  return id !== undefined && workings.state(id).input.formula === text;
}
