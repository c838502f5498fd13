// Where keys go in a table: from cell to cell, up into its header, and on to the next one to write.
import type { Table } from '../notebook/document.ts';
import type { Goes } from './table-line.ts';
import type { Place } from './table-words.ts';

/** Rows that a page key goes. */
const PAGE = 10;

/** The row of the header. */
export const HEADER = -1;

/** What a key on a cell of a table asks for, while nothing is written. */
export type KeyAsked =
  | { readonly does: 'go'; readonly to: Place }
  /** `typed` in place of what stands there; null: what stands there. */
  | { readonly does: 'write'; readonly typed: string | null }
  | { readonly does: 'move-row' | 'move-column'; readonly by: -1 | 1 }
  | { readonly does: 'add-column'; readonly after: number }
  | { readonly does: 'leave' | 'rename' | 'add-row' | 'remove-row' | 'remove-column' };

export function askedBy(event: KeyboardEvent, at: Place, table: Table): KeyAsked | null {
  const { key, altKey } = event;
  const ctrl = event.ctrlKey || event.metaKey;
  const onHeader = at.row < 0;
  if (altKey) return ctrl ? null : movedBy(key, at);
  const to = ctrl ? farTo(key, table) : steppedTo(at, key, table);
  if (to) return { does: 'go', to };
  if (ctrl && key === 'Delete') {
    if (onHeader) return { does: 'remove-column' };
    return table.rows.length > 0 ? { does: 'remove-row' } : null;
  }
  if (ctrl) return null;
  switch (key) {
    case 'Insert':
      if (!onHeader) return { does: 'add-row' };
      return { does: 'add-column', after: event.shiftKey ? at.column - 1 : at.column };
    case 'F2':
      return onHeader ? { does: 'rename' } : { does: 'write', typed: null };
    case 'Enter':
      return { does: 'write', typed: null };
    case 'Escape':
      return { does: 'leave' };
    case 'Delete':
    case 'Backspace':
      return onHeader ? null : { does: 'write', typed: '' };
    default:
      if (onHeader || key.length !== 1 || key === ' ') return null;
      return { does: 'write', typed: key };
  }
}

function movedBy(key: string, { row }: Place): KeyAsked | null {
  const [back, on] = row < 0 ? ['ArrowLeft', 'ArrowRight'] : ['ArrowUp', 'ArrowDown'];
  if (key !== back && key !== on) return null;
  return { does: row < 0 ? 'move-column' : 'move-row', by: key === back ? -1 : 1 };
}

/** Where this key goes from here, staying within the table; null for keys that go nowhere. */
function steppedTo({ row, column }: Place, key: string, table: Table): Place | null {
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
function farTo(key: string, table: Table): Place | null {
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
