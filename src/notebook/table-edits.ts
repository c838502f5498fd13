// Edits of tables as splices: only the cells and lines concerned are written, padded as their neighbours are.
import type { Cell, Part, Splice, Table, TableRow } from './document.ts';
import {
  type Edit,
  type Edits,
  type MeantTable,
  NOTHING,
  addCellEdit,
  isRefused,
  refused,
} from './edits.ts';
import { lineBreak, oneLine, tableLead } from './lines.ts';
import { nameKey, nameProblem, sayNameProblem } from './names.ts';
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

/** `formula` null: the column works nothing by itself. */
export function columnFormulaEdit(cell: Cell, index: number, formula: string | null): Edits {
  const table = tableOf(cell);
  const column = columnAt(cell, index);
  const base = cell.spot.from;
  const body = formula === null ? '' : oneLine(formula);
  const meant = meantOf(table);
  meant.columns[index] = [column.name, body === '' ? null : body];
  const insert = body === '' ? '' : `: ${asTableCell(body)}`;
  const splice = { from: base + column.nameSpot.to, to: base + column.spot.to, insert };
  const say =
    body === '' ? `${cell.name}, ${column.name}` : `${cell.name}, ${column.name}: ${body}`;
  return [edited(cell, say, [splice], meant)];
}

/** A new last column; its rows are blank, or take its formula. */
export function addColumnEdit(
  notebook: NotebookText,
  cell: Cell,
  name: string,
  formula: string | null,
): Edits {
  const table = tableOf(cell);
  const clean = oneLine(name);
  const refusal = columnRefusal(cell, clean, null);
  if (refusal) return refusal;
  const { text } = notebook;
  const base = cell.spot.from;
  const body = formula === null ? '' : oneLine(formula);
  const head = asTableCell(body === '' ? clean : `${clean}: ${body}`);
  const header = headerLine(text, base, table);
  const delimiter = delimiterLine(text, base, table);
  const lines = [
    { line: header, many: table.columns.length, insert: ` ${head} |` },
    { line: delimiter, many: table.columns.length, insert: `${'-'.repeat(head.length + 2)}|` },
    ...table.rows.map((row) => ({
      line: lineOf(cell, row),
      many: cellRooms(text, lineOf(cell, row)).length,
      insert: `${' '.repeat(head.length + 2)}|`,
    })),
  ];
  const splices = lines.map(({ line, many, insert }): Splice => {
    const bar = text.charAt(line.to - 1) === '|' ? '' : ' |';
    const missing = ' |'.repeat(Math.max(0, table.columns.length - many));
    return { from: line.to, to: line.to, insert: `${bar}${missing}${insert}` };
  });
  const meant = meantOf(table);
  meant.columns.push([clean, body === '' ? null : body]);
  for (const row of meant.rows) row.push('');
  return [edited(cell, `${cell.name}, column ${clean}`, splices, meant)];
}

export function removeColumnEdit(notebook: NotebookText, cell: Cell, index: number): Edits {
  const table = tableOf(cell);
  const column = columnAt(cell, index);
  if (table.columns.length === 1) {
    const message = `"${column.name}" is the only column of "${cell.name}". Remove the table instead.`;
    return refused('last-column', message, cell.part, cell.id);
  }
  const { text } = notebook;
  const base = cell.spot.from;
  const lines = [
    headerLine(text, base, table),
    delimiterLine(text, base, table),
    ...table.rows.map((row) => lineOf(cell, row)),
  ];
  const splices = lines.flatMap((line): readonly Splice[] => {
    const room = cellRooms(text, line)[index];
    return room ? [{ from: room.from - 1, to: room.to, insert: '' }] : [];
  });
  const meant = meantOf(table);
  meant.columns.splice(index, 1);
  for (const row of meant.rows) row.splice(index, 1);
  return [edited(cell, `${cell.name}, without column ${column.name}`, splices, meant)];
}

/** A new cell with a table of these columns and one blank row. */
export function addTableEdit(
  notebook: NotebookText,
  part: Part,
  after: Cell | null,
  name: string,
  columns: readonly { readonly name: string; readonly formula: string | null }[],
): Edits {
  const heads = columns.map(({ name: head, formula }) =>
    formula === null ? oneLine(head) : `${oneLine(head)}: ${oneLine(formula)}`,
  );
  const odd = columns.find((c) => nameProblem(oneLine(c.name)) !== null);
  const problem = odd && nameProblem(oneLine(odd.name));
  if (odd && problem) {
    return refused('not-a-name', sayNameProblem(oneLine(odd.name), problem), part.key, null);
  }
  if (columns.length === 0) {
    return refused('no-columns', 'A table needs a column or more.', part.key, null);
  }
  const edits = addCellEdit(notebook, part, after, name, '');
  if (isRefused(edits)) return edits;
  const end = lineBreak(notebook.text);
  const lead = tableLead(notebook, part, after);
  const widths = heads.map((head) => asTableCell(head).length);
  const lines = [
    rowLine(heads, widths),
    `|${widths.map((width) => '-'.repeat(width + 2)).join('|')}|`,
    rowLine(
      heads.map(() => ''),
      widths,
    ),
  ];
  const block = `${end}${lines.map((line) => `${end}${lead}${line}`).join('')}`;
  const line = `${oneLine(name)}:`;
  const asked = edits.map((edit): Edit => ({
    ...edit,
    splices: edit.splices.map((splice): Splice => {
      const at = splice.insert.lastIndexOf(line) + line.length;
      const { insert } = splice;
      return { ...splice, insert: `${insert.slice(0, at)}${block}${insert.slice(at)}` };
    }),
  }));
  return asked;
}

/** Why a column of this table can't be called so, or null. */
export function columnRefusal(cell: Cell, name: string, self: number | null) {
  const problem = nameProblem(name);
  if (problem) return refused('not-a-name', sayNameProblem(name, problem), cell.part, cell.id);
  const twin = tableOf(cell).columns.find(
    (c, k) => k !== self && nameKey(c.name) === nameKey(name),
  );
  if (!twin) return null;
  const message = `"${cell.name}" already has a column called "${twin.name}".`;
  return refused('same-name', message, cell.part, cell.id);
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

function edited(cell: Cell, say: string, splices: readonly Splice[], table: MeantTable): Edit {
  return { ...NOTHING, say, splices, cells: new Map([[cell.id, { table }]]) };
}

function rowAt(cell: Cell, index: number): TableRow {
  const row = tableOf(cell).rows[index];
  if (!row) throw new Error(`"${cell.name}" has no row ${index}`);
  return row;
}

function columnAt(cell: Cell, index: number) {
  const column = tableOf(cell).columns[index];
  if (!column) throw new Error(`"${cell.name}" has no column ${index}`);
  return column;
}

function lineOf(cell: Cell, row: TableRow): { from: number; to: number } {
  return { from: cell.spot.from + row.spot.from, to: cell.spot.from + row.spot.to };
}

function rowLine(texts: readonly string[], widths: readonly number[]): string {
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

function headerLine(text: string, base: number, table: Table): { from: number; to: number } {
  return lineAt(text, base + table.spot.from);
}

function delimiterLine(text: string, base: number, table: Table): { from: number; to: number } {
  const start = lineEnd(text, base + table.spot.from);
  const bar = text.indexOf('|', start);
  return lineAt(text, bar);
}

function lineAt(text: string, from: number): { from: number; to: number } {
  return { from, to: from + text.slice(from, lineEnd(text, from)).trimEnd().length };
}
