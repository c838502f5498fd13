// What is done to a table on the page: rows and columns that come, go and move, and text that is pasted.
// Each is one change; what comes back is where the keyboard goes, or null where it was refused.
import type { Cell } from '../notebook/document.ts';
import type { Session } from './session.ts';
import { HEADER } from './table-keys.ts';
import { type Place, isOneCell } from './table-words.ts';

/** Below this row, or as the first. */
export function addRow(session: Session, { id, table }: Cell, { row }: Place): Place | null {
  const many = table?.rows.length ?? 0;
  const after = many === 0 || row < 0 ? -1 : row;
  const done = session.apply((door) => door.addRow(id, many === 0 ? null : after, []));
  return done ? { row: after + 1, column: 0 } : null;
}

export function removeRow(session: Session, { id }: Cell, at: Place): Place | null {
  return session.apply((door) => door.removeRow(id, at.row)) ? at : null;
}

export function moveRow(session: Session, { id, table }: Cell, at: Place, by: -1 | 1) {
  const to = at.row + by;
  if (to < 0 || to >= (table?.rows.length ?? 0)) return null;
  const done = session.apply((door) => door.moveRow(id, at.row, to));
  return done ? { row: to, column: at.column } : null;
}

/** `text` is a name, or `name: formula`. */
export function addColumn(session: Session, { id }: Cell, after: number, text: string) {
  const colon = text.search(/:(\s|$)/);
  const name = colon < 0 ? text : text.slice(0, colon);
  const formula = colon < 0 ? null : text.slice(colon + 1).trim();
  const done = session.apply((door) => door.addColumn(id, after, name.trim(), formula || null));
  return done ? { row: HEADER, column: after + 1 } : null;
}

export function moveColumn(session: Session, { id, table }: Cell, at: Place, by: -1 | 1) {
  const to = at.column + by;
  if (to < 0 || to >= (table?.columns.length ?? 0)) return null;
  const done = session.apply((door) => door.moveColumn(id, at.column, to));
  return done ? { row: at.row, column: to } : null;
}

/** False where it was refused. What is written as it was changes nothing. */
export function renameColumn(session: Session, { id, table }: Cell, column: number, name: string) {
  if (name.trim() === table?.columns[column]?.name) return true;
  return session.apply((door) => door.renameColumn(id, column, name.trim()));
}

/** A row's text, or what a column works; false where it was refused. */
export function writeText(session: Session, { id, table }: Cell, at: Place, text: string): boolean {
  const { row, column } = at;
  const wanted = text.trim();
  if (row < 0) {
    if (wanted === (table?.columns[column]?.formula ?? '')) return true;
    return session.apply((door) => door.setColumnFormula(id, column, wanted || null));
  }
  if (wanted === (table?.rows[row]?.texts[column] ?? '')) return true;
  return session.apply((door) => door.setRowCell(id, row, column, wanted));
}

/** From this place on; what was not taken is told under the table. */
export function paste(session: Session, { id }: Cell, { row, column }: Place, text: string): void {
  session.setNotTaken(id, []);
  session.apply((door) => {
    if (isOneCell(text.trim()) && row >= 0) {
      return door.setRowCell(id, row, column, text.trim());
    }
    const pasted = door.pasteRows(id, Math.max(0, row), column, text);
    if ('refused' in pasted) session.setNotTaken(id, pasted.refused);
    return pasted;
  });
}

/** The next row below this one in which these words are written or shown; null where there is none. */
export function rowWith(session: Session, { id, table }: Cell, from: number, words: string) {
  const wanted = words.trim().toLowerCase();
  const many = table?.rows.length ?? 0;
  if (wanted === '' || !table) return null;
  const { door } = session;
  const ids = door.rows(id) ?? [];
  for (let step = 1; step <= many; step++) {
    const row = (Math.max(-1, from) + step) % many;
    const texts = table.rows[row]?.texts ?? [];
    const column = texts.findIndex((text, k) => {
      if (text.toLowerCase().includes(wanted)) return true;
      const shown = text === '' ? (door.shown(ids[row]?.[k] ?? 0)?.text ?? '') : '';
      return shown.toLowerCase().includes(wanted);
    });
    if (column >= 0) return { row, column };
  }
  return null;
}
