// Edits of a table's rows as splices: only the cells and lines concerned are written, padded as their neighbours are.
import type { Cell, Splice, Table, TableRow } from './document.ts';
import { type Edit, type Edits, type MeantTable, NOTHING } from './edits.ts';
import { lineBreak, oneLine } from './lines.ts';
import type { NotebookText } from './notebook-text.ts';
import { lineEnd, lineStart } from './outline.ts';
import { asTableCell, cellRooms, cellSpots } from './table-text.ts';

/** A text to put in a row and column. */
export interface RowText {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export function rowCellEdit(notebook: NotebookText, cell: Cell, wish: RowText): Edits {
  const table = tableOf(cell);
  const column = table.columns[wish.column];
  const text = oneLine(wish.text);
  return rowTextsEdit(notebook, cell, `${cell.name}, ${column?.name ?? ''}: ${text}`, [wish]);
}

/** Several texts at once, in rows that are there. */
export function rowTextsEdit(
  notebook: NotebookText,
  cell: Cell,
  say: string,
  wishes: readonly RowText[],
): Edits {
  const table = tableOf(cell);
  const meant = meantOf(table);
  const byRow = new Map<number, RowText[]>();
  for (const wish of wishes) {
    byRow.set(wish.row, [...(byRow.get(wish.row) ?? []), wish]);
    const row = meant.rows[wish.row];
    if (!row) throw new Error(`"${cell.name}" has no row ${wish.row}`);
    row[wish.column] = oneLine(wish.text);
  }
  const splices: Splice[] = [];
  for (const [index, texts] of byRow) {
    splices.push(...rowSplices(notebook.text, cell, table, table.rows[index], texts));
  }
  return [edited(cell, say, splices, meant)];
}

/** `after` null: at the end; -1: before the first. */
export function addRowsEdit(
  notebook: NotebookText,
  cell: Cell,
  after: number | null,
  rows: readonly (readonly string[])[],
): Edits {
  const table = tableOf(cell);
  const { text } = notebook;
  const at = after === null ? table.rows.length : after + 1;
  const base = cell.spot.from;
  const lead = rowLead(text, base, table);
  const end = lineBreak(text);
  const texts = rows.map((row) => table.columns.map((_, k) => oneLine(row[k] ?? '')));
  const widths = widthsOf(text, base, table);
  const lines = texts.map((row) => `${lead}${rowLine(row, widths)}`);
  const next = table.rows[at];
  const place = next ? lineStart(text, base + next.spot.from) : base + table.spot.to;
  const open = !next && !/[\r\n]$/.test(text.slice(0, place));
  const whole = lines.join(end);
  const insert = open ? `${end}${whole}` : `${whole}${end}`;
  const meant = meantOf(table);
  meant.rows.splice(at, 0, ...texts.map((row) => [...row]));
  const many = rows.length === 1 ? 'a row' : `${rows.length} rows`;
  return [edited(cell, `${cell.name}, ${many} more`, [{ from: place, to: place, insert }], meant)];
}

export function removeRowEdit(notebook: NotebookText, cell: Cell, index: number): Edits {
  const table = tableOf(cell);
  const { text } = notebook;
  const line = lineOf(cell, rowAt(cell, index));
  const from = lineStart(text, line.from);
  const to = lineEnd(text, line.to);
  const meant = meantOf(table);
  meant.rows.splice(index, 1);
  const say = `${cell.name}, without row ${index + 1}`;
  return [edited(cell, say, [{ from, to, insert: '' }], meant)];
}

/** The row goes to where `to` says it stands afterwards; lines between move up or down by one. */
export function moveRowEdit(notebook: NotebookText, cell: Cell, from: number, to: number): Edits {
  const table = tableOf(cell);
  const { text } = notebook;
  rowAt(cell, from);
  rowAt(cell, to);
  const meant = meantOf(table);
  const [row = []] = meant.rows.splice(from, 1);
  meant.rows.splice(to, 0, row);
  const order = table.rows.map((_, i) => i);
  const [moved = 0] = order.splice(from, 1);
  order.splice(to, 0, moved);
  const splices = order.flatMap((old, now): readonly Splice[] => {
    if (old === now) return [];
    const place = lineOf(cell, rowAt(cell, now));
    const line = lineOf(cell, rowAt(cell, old));
    return [{ ...place, insert: text.slice(line.from, line.to) }];
  });
  return [edited(cell, `${cell.name}, row ${from + 1} moved`, splices, meant)];
}

export function tableOf(cell: Cell): Table {
  if (!cell.table) throw new Error(`"${cell.name}" holds no table`);
  return cell.table;
}

/** What a table says, to be changed and read back. */
export function meantOf(table: Table): {
  columns: [string, string | null][];
  rows: string[][];
} {
  return {
    columns: table.columns.map(({ name, formula }) => [name, formula]),
    rows: table.rows.map((row) => [...row.texts]),
  };
}

/** The splices that put these texts into a row. */
export function rowSplices(
  text: string,
  cell: Cell,
  table: Table,
  row: TableRow | undefined,
  texts: readonly RowText[],
): readonly Splice[] {
  if (!row) throw new Error(`"${cell.name}" has no such row`);
  const line = lineOf(cell, row);
  const rooms = cellRooms(text, line);
  const most = Math.max(...texts.map((t) => t.column));
  if (most >= rooms.length) {
    const all = [...row.texts];
    for (const { column, text: now } of texts) all[column] = oneLine(now);
    const beyond = rooms.slice(table.columns.length);
    const kept = beyond.map((room) => text.slice(room.from, room.to).trim());
    const widths = widthsOf(text, cell.spot.from, table);
    return [{ ...line, insert: rowLine([...all, ...kept], widths) }];
  }
  const spots = cellSpots(text, line);
  return texts.map(({ column, text: now }): Splice => {
    const room = rooms[column] ?? line;
    const spot = spots[column] ?? line;
    const words = asTableCell(oneLine(now));
    // What follows moves only where there is no room left.
    const lead = spot.from > room.from ? '' : ' ';
    const blanks = Math.max(1, room.to - spot.from - words.length - lead.length);
    return { from: spot.from, to: room.to, insert: `${lead}${words}${' '.repeat(blanks)}` };
  });
}

export function edited(
  cell: Cell,
  say: string,
  splices: readonly Splice[],
  table: MeantTable,
): Edit {
  return { ...NOTHING, say, splices, cells: new Map([[cell.id, { table }]]) };
}

function rowAt(cell: Cell, index: number): TableRow {
  const row = tableOf(cell).rows[index];
  if (!row) throw new Error(`"${cell.name}" has no row ${index}`);
  return row;
}

export function lineOf(cell: Cell, row: TableRow): { from: number; to: number } {
  return { from: cell.spot.from + row.spot.from, to: cell.spot.from + row.spot.to };
}

export function rowLine(texts: readonly string[], widths: readonly number[]): string {
  return `| ${texts.map((text, k) => asTableCell(text).padEnd(widths[k] ?? 0)).join(' | ')} |`;
}

/** The blanks before a row. */
function rowLead(text: string, base: number, table: Table): string {
  const from = base + (table.rows.at(-1)?.spot.from ?? table.spot.from);
  return text.slice(lineStart(text, from), from);
}

function widthsOf(text: string, base: number, table: Table): readonly number[] {
  return cellRooms(text, headerLine(text, base, table)).map(({ from, to }) => to - from - 2);
}

export function headerLine(text: string, base: number, table: Table): { from: number; to: number } {
  return lineAt(text, base + table.spot.from);
}

export function delimiterLine(
  text: string,
  base: number,
  table: Table,
): { from: number; to: number } {
  const start = lineEnd(text, base + table.spot.from);
  const bar = text.indexOf('|', start);
  return lineAt(text, bar);
}

function lineAt(text: string, from: number): { from: number; to: number } {
  return { from, to: from + text.slice(from, lineEnd(text, from)).trimEnd().length };
}
