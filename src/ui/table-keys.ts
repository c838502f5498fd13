// Where keys go in a table: from cell to cell, and on to the next one to write.
import type { Table } from '../notebook/document.ts';
import type { Place } from './table-words.ts';

/** Rows that a page key goes. */
const PAGE = 10;

/** Where this key goes from here, staying within the table; null for keys that go nowhere. */
export function steppedTo({ row, column }: Place, key: string, table: Table): Place | null {
  const lastRow = table.rows.length - 1;
  const lastColumn = table.columns.length - 1;
  switch (key) {
    case 'ArrowUp':
      return { row: Math.max(0, row - 1), column };
    case 'ArrowDown':
      return { row: Math.min(lastRow, row + 1), column };
    case 'ArrowLeft':
      return { row, column: Math.max(0, column - 1) };
    case 'ArrowRight':
      return { row, column: Math.min(lastColumn, column + 1) };
    case 'Home':
      return { row, column: 0 };
    case 'End':
      return { row, column: lastColumn };
    case 'PageUp':
      return { row: Math.max(0, row - PAGE), column };
    case 'PageDown':
      return { row: Math.min(lastRow, row + PAGE), column };
    default:
      return null;
  }
}

/** The next cell to write, on into the next row; null past the ends of the table. */
export function tabbedTo({ row, column }: Place, by: -1 | 1, table: Table): Place | null {
  const wide = table.columns.length;
  const next = row * wide + column + by;
  if (next < 0 || next >= wide * table.rows.length) return null;
  return { row: Math.floor(next / wide), column: next % wide };
}
