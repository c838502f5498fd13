// Where keys go in a table: from cell to cell, up into its header, and on to the next one to write.
import type { Table } from '../notebook/document.ts';
import type { Goes } from './table-line.ts';
import type { Place } from './table-words.ts';

/** Rows that a page key goes. */
const PAGE = 10;

/** The row of the header. */
export const HEADER = -1;

/** Where this key goes from here, staying within the table; null for keys that go nowhere. */
export function steppedTo({ row, column }: Place, key: string, table: Table): Place | null {
  const lastRow = table.rows.length - 1;
  const lastColumn = table.columns.length - 1;
  switch (key) {
    case 'ArrowUp':
      return { row: Math.max(HEADER, row - 1), column };
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
      return { row: row === 0 ? HEADER : Math.max(0, row - PAGE), column };
    case 'PageDown':
      return { row: Math.min(lastRow, row + PAGE), column };
    default:
      return null;
  }
}

/** Ctrl with Home or End: the first cell of all, the last. */
export function farTo(key: string, table: Table): Place | null {
  if (key === 'Home') return { row: 0, column: 0 };
  if (key !== 'End') return null;
  return { row: table.rows.length - 1, column: table.columns.length - 1 };
}

/**
 * The next cell to write once this one is kept, on into the next row; null where there is none: it stays, or the
 * table ends. Below the last row there is none yet.
 */
export function goesTo({ row, column }: Place, goes: Goes, table: Table): Place | null {
  const wide = table.columns.length;
  switch (goes) {
    case 'stays':
      return null;
    case 'below':
      return row + 1 < table.rows.length ? { row: row + 1, column } : null;
    case 'on':
    case 'back': {
      const next = row * wide + column + (goes === 'on' ? 1 : -1);
      const first = row < 0 ? HEADER * wide : 0;
      const end = row < 0 ? 0 : wide * table.rows.length;
      if (next < first || next >= end) return null;
      return { row: Math.floor(next / wide), column: ((next % wide) + wide) % wide };
    }
  }
}
