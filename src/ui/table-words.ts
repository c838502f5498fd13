// What a cell in a row of a table shows: its value, what is still open, what is wrong, and what its column works.
import type { CellId } from '../language/tree.ts';
import type { Cell, TableColumn } from '../notebook/document.ts';
import type { NotPasted } from '../notebook/paste-edit.ts';
import type { Report } from '../words/report.ts';
import type { Door } from './session.ts';
import { valueSaid } from './value-words.ts';

/** Where a cell stands: row and column from 0. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

export function isAt(one: Place, other: Place): boolean {
  return one.row === other.row && one.column === other.column;
}

interface RowCellShown {
  readonly text: string;
  readonly look: 'value' | 'open' | 'blank' | 'waits' | 'fault';
  readonly report: Report | null;
  /** What the column's formula comes to beside what was set in this row; null where nothing was set. */
  readonly ofColumn: string | null;
}

export function rowCellShown(door: Door, cell: Cell, place: Place, id: CellId): RowCellShown {
  const { outcome } = door.state(id);
  const own = ownText(cell, place);
  const formula = cell.table?.columns[place.column]?.formula ?? null;
  const shared = {
    report: outcome.kind === 'fault' ? outcome.report : null,
    ofColumn: own !== '' && formula !== null ? workedByColumn(door, cell, place, formula) : null,
  };
  const last = (): string => door.lastShown(id)?.text ?? '?';
  switch (outcome.kind) {
    case 'value':
      return { ...shared, text: valueSaid(door, id) ?? own, look: 'value' };
    case 'fault':
      return { ...shared, text: own === '' ? last() : own, look: 'fault' };
    case 'waiting':
      return { ...shared, text: last(), look: 'waits' };
    case 'unknown': {
      if (!outcome.for.includes(id)) return { ...shared, text: '?', look: 'waits' };
      if (own === '' && formula === null) return { ...shared, text: '', look: 'blank' };
      return { ...shared, text: own || '?', look: 'open' };
    }
  }
}

function workedByColumn(door: Door, cell: Cell, { row, column }: Place, formula: string): string {
  return door.draftInRow(cell.id, row, column, formula).shown?.text ?? 'not known';
}

/** What is written in the row itself. */
export function ownText(cell: Cell, { row, column }: Place): string {
  return cell.table?.rows[row]?.texts[column] ?? '';
}

/** Does text stand among these cells of a column? Then it stands left. */
export function isOfTexts(door: Door, ids: readonly (CellId | undefined)[]): boolean {
  return ids.some((id) => id !== undefined && door.state(id).holds?.measure.kind === 'text');
}

export function notPastedSaid(columns: readonly TableColumn[], one: NotPasted): string {
  const column = one.column === null ? '' : `, ${columns[one.column]?.name ?? ''}`;
  return `Row ${one.row + 1}${column}: “${one.text}”. ${one.why}`;
}

/** One amount whose commas part thousands, such as `1,200 ft`, is no row of several cells; nor is one range. */
export function isOneCell(text: string): boolean {
  if (/[\t\r\n]/.test(text)) return false;
  return !/,(?!\d{3}(?!\d))/.test(text) || (/\bbest\b/i.test(text) && /\bworst\b/i.test(text));
}
