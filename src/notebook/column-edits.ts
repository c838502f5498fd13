// Edits of a table's columns as splices: what a column works, a new one, one that goes, one that moves.
import type { Cell, Splice, TableColumn } from './document.ts';
import { type Edits, refused } from './edits.ts';
import { oneLine } from './lines.ts';
import { nameKey, nameProblem, sayNameProblem } from './names.ts';
import type { NotebookText } from './notebook-text.ts';
import { delimiterLine, edited, headerLine, lineOf, meantOf, tableOf } from './table-edits.ts';
import { asTableCell, cellRooms } from './table-text.ts';

interface Line {
  readonly from: number;
  readonly to: number;
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

/** A new column; its rows are blank, or take its formula. `after` null: the last one; -1: the first. */
export function addColumnEdit(
  notebook: NotebookText,
  cell: Cell,
  after: number | null,
  name: string,
  formula: string | null,
): Edits {
  const table = tableOf(cell);
  const clean = oneLine(name);
  const refusal = columnRefusal(cell, clean, null);
  if (refusal) return refusal;
  const { text } = notebook;
  const wide = table.columns.length;
  const at = after === null ? wide : after + 1;
  if (at < 0 || at > wide) throw new Error(`"${cell.name}" has no column ${after}`);
  const body = formula === null ? '' : oneLine(formula);
  const head = asTableCell(body === '' ? clean : `${clean}: ${body}`);
  const [header, delimiter, ...rows] = linesOf(notebook, cell);
  const marks = '-'.repeat(head.length + 2);
  const blank = ' '.repeat(head.length + 2);
  const splices = [
    ...(header ? inserted(text, header, at, wide, ` ${head} `) : []),
    ...(delimiter ? inserted(text, delimiter, at, wide, marks) : []),
    ...rows.flatMap((line) => inserted(text, line, at, wide, blank)),
  ];
  const meant = meantOf(table);
  meant.columns.splice(at, 0, [clean, body === '' ? null : body]);
  for (const row of meant.rows) row.splice(at, 0, '');
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
  const splices = linesOf(notebook, cell).flatMap((line): readonly Splice[] => {
    const room = cellRooms(text, line)[index];
    return room ? [{ from: room.from - 1, to: room.to, insert: '' }] : [];
  });
  const meant = meantOf(table);
  meant.columns.splice(index, 1);
  for (const row of meant.rows) row.splice(index, 1);
  return [edited(cell, `${cell.name}, without column ${column.name}`, splices, meant)];
}

/** The column goes to where `to` says it stands afterwards; those between move by one. */
export function moveColumnEdit(
  notebook: NotebookText,
  cell: Cell,
  from: number,
  to: number,
): Edits {
  const table = tableOf(cell);
  const column = columnAt(cell, from);
  columnAt(cell, to);
  const [first, last] = from < to ? [from, to] : [to, from];
  const key = nameKey(column.name);
  const passed = table.columns.slice(first, last + 1).filter((c) => nameKey(c.name) === key);
  if (key !== '' && passed.length > 1) {
    // The first of two is the one that formulas mean.
    const message = `Two columns are called "${column.name}", and the first one is used. Give one of them a name of its own; then it can move.`;
    return refused('same-name', message, cell.part, cell.id);
  }
  const splices = linesOf(notebook, cell).flatMap((line) =>
    reordered(notebook.text, line, from, to, last),
  );
  const meant = meantOf(table);
  moved(meant.columns, from, to);
  for (const row of meant.rows) moved(row, from, to);
  return [edited(cell, `${cell.name}, column ${column.name} moved`, splices, meant)];
}

/** Why a column of this table can't be called so, or null. */
export function columnRefusal(cell: Cell, name: string, self: number | null) {
  const problem = nameProblem(name);
  if (problem === 'empty') {
    return refused(
      'not-a-name',
      'A column needs a name of one to eight words.',
      cell.part,
      cell.id,
    );
  }
  if (problem) return refused('not-a-name', sayNameProblem(name, problem), cell.part, cell.id);
  const twin = tableOf(cell).columns.find(
    (c, k) => k !== self && nameKey(c.name) === nameKey(name),
  );
  if (!twin) return null;
  const message = `"${cell.name}" already has a column called "${twin.name}".`;
  return refused('same-name', message, cell.part, cell.id);
}

export function columnAt(cell: Cell, index: number): TableColumn {
  const column = tableOf(cell).columns[index];
  if (!column) throw new Error(`"${cell.name}" has no column ${index}`);
  return column;
}

/** Header, marks under it, rows. */
function linesOf({ text }: NotebookText, cell: Cell): readonly Line[] {
  const table = tableOf(cell);
  const base = cell.spot.from;
  return [
    headerLine(text, base, table),
    delimiterLine(text, base, table),
    ...table.rows.map((row) => lineOf(cell, row)),
  ];
}

/** Before the room that stands at this place, or at the end; what stands beyond the last column stays beyond it. */
function inserted(
  text: string,
  line: Line,
  at: number,
  wide: number,
  words: string,
): readonly Splice[] {
  const rooms = cellRooms(text, line);
  const next = rooms[at];
  if (next) return [{ from: next.from, to: next.from, insert: `${words}|` }];
  // A row that ends before this place has a blank there already.
  if (rooms.length < at && at < wide) return [];
  const bar = text.charAt(line.to - 1) === '|' ? '' : ' |';
  const missing = ' |'.repeat(Math.max(0, at - rooms.length));
  return [{ from: line.to, to: line.to, insert: `${bar}${missing}${words}|` }];
}

function reordered(
  text: string,
  line: Line,
  from: number,
  to: number,
  last: number,
): readonly Splice[] {
  const rooms = cellRooms(text, line);
  const first = Math.min(from, to);
  const start = rooms[first];
  // A row that ends before both has blanks in both.
  if (!start) return [];
  const words: string[] = [];
  for (let k = 0; k <= last; k++) {
    const room = rooms[k];
    words.push(room ? text.slice(room.from, room.to) : '  ');
  }
  moved(words, from, to);
  const end = rooms[Math.min(last, rooms.length - 1)] ?? start;
  const bar = rooms.length <= last && text.charAt(end.to) !== '|' ? ' |' : '';
  const insert = words.slice(first, last + 1).join('|') + bar;
  return [{ from: start.from, to: end.to, insert }];
}

function moved<T>(list: T[], from: number, to: number): void {
  const [one] = list.splice(from, 1);
  if (one !== undefined) list.splice(to, 0, one);
}
