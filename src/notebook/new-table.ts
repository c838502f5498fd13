// A table that begins: in a new cell, or in one in which nothing stands yet.
import type { Cell, Finding, Part, Splice } from './document.ts';
import {
  type Edit,
  type Edits,
  type MeantTable,
  NOTHING,
  addCellEdit,
  isRefused,
  refused,
} from './edits.ts';
import { leadAt, lineBreak, oneLine, tableLead } from './lines.ts';
import { nameKey, nameProblem, sayNameProblem } from './names.ts';
import type { NotebookText } from './notebook-text.ts';
import { rowLine } from './table-edits.ts';
import { asTableCell } from './table-text.ts';

/** A column as it is wished for. */
export interface ColumnWish {
  readonly name: string;
  readonly formula: string | null;
}

/** What a table is to hold; without rows it begins with a blank one. */
export interface TableWish {
  readonly columns: readonly ColumnWish[];
  readonly rows: readonly (readonly string[])[];
}

/** Columns are padded to what stands in them, up to so many letters. */
const WIDEST = 48;

/** A new cell with this table. */
export function addTableEdit(
  notebook: NotebookText,
  part: Part,
  after: Cell | null,
  name: string,
  wish: TableWish,
): Edits {
  const odd = wishRefusal(wish, part.key, null);
  if (odd) return odd;
  const edits = addCellEdit(notebook, part, after, name, '');
  if (isRefused(edits)) return edits;
  const block = blockOf(lineBreak(notebook.text), tableLead(notebook, part, after), wish);
  const line = `${oneLine(name)}:`;
  return edits.map((edit): Edit => ({
    ...edit,
    adds: edit.adds.map((added) => ({ ...added, table: meantBy(wish) })),
    splices: edit.splices.map((splice): Splice => {
      const at = splice.insert.lastIndexOf(line) + line.length;
      const { insert } = splice;
      return { ...splice, insert: `${insert.slice(0, at)}${block}${insert.slice(at)}` };
    }),
  }));
}

/** The table in a cell that holds nothing yet; its remarks stay below it. */
export function tableHereEdit(notebook: NotebookText, cell: Cell, wish: TableWish): Edits {
  if (!isBlank(cell)) {
    const message = `"${cell.name}" has a formula. A table takes the place of a blank or of a ?.`;
    return refused('not-blank', message, cell.part, cell.id);
  }
  const odd = wishRefusal(wish, cell.part, cell.id);
  if (odd) return odd;
  const { text } = notebook;
  const { to } = cell.formulaSpot;
  let { from } = cell.formulaSpot;
  while (/[ \t]/.test(text.charAt(from - 1))) from--;
  const lead = (leadAt(text, cell.spot.from) ?? '- ').replace(/[^\t]/g, ' ');
  const end = lineBreak(text);
  const block = blockOf(end, lead, wish);
  const edit = {
    ...NOTHING,
    say: `Lay out ${cell.name} as a table`,
    cells: new Map([[cell.id, { formula: '', table: meantBy(wish) }]]),
  };
  return [
    { ...edit, splices: [{ from, to, insert: block }] },
    { ...edit, splices: [{ from, to, insert: `${block}${end}` }] },
  ];
}

/** Does a table fit in its place? */
export function isBlank({ formula, table }: Cell): boolean {
  return table === null && /^\??$/.test(formula.trim());
}

/** Why these columns make no table, or null. */
export function wishRefusal(
  { columns }: TableWish,
  part: string,
  cell: number | null,
): Finding | null {
  if (columns.length === 0) {
    return refused('no-columns', 'A table needs a column or more.', part, cell);
  }
  const seen = new Map<string, string>();
  for (const [index, column] of columns.entries()) {
    const name = oneLine(column.name);
    const problem = nameProblem(name);
    if (problem) {
      const message =
        problem === 'empty'
          ? `Column ${index + 1} has no name. The first line names every column.`
          : sayNameProblem(name, problem);
      return refused('not-a-name', message, part, cell);
    }
    const twin = seen.get(nameKey(name));
    if (twin !== undefined) {
      const message = `Two columns are called "${twin}". Give one of them a name of its own.`;
      return refused('same-name', message, part, cell);
    }
    seen.set(nameKey(name), name);
  }
  return null;
}

function blockOf(end: string, lead: string, wish: TableWish): string {
  const heads = wish.columns.map(headOf);
  const rows = rowsOf(wish);
  const widths = heads.map((head, k) => {
    const longest = rows.reduce((most, row) => Math.max(most, asTableCell(row[k] ?? '').length), 0);
    return Math.max(asTableCell(head).length, Math.min(WIDEST, longest));
  });
  const lines = [
    rowLine(heads, widths),
    `|${widths.map((width) => '-'.repeat(width + 2)).join('|')}|`,
    ...rows.map((row) => rowLine(row, widths)),
  ];
  return `${end}${lines.map((line) => `${end}${lead}${line}`).join('')}`;
}

function meantBy(wish: TableWish): MeantTable {
  const columns = wish.columns.map(({ name, formula }): readonly [string, string | null] => [
    oneLine(name),
    formula === null || oneLine(formula) === '' ? null : oneLine(formula),
  ]);
  return { columns, rows: rowsOf(wish) };
}

/** As many texts as there are columns in each. */
function rowsOf({ columns, rows }: TableWish): readonly (readonly string[])[] {
  const all = rows.length === 0 ? [[]] : rows;
  return all.map((row) => columns.map((_, k) => oneLine(row[k] ?? '')));
}

function headOf({ name, formula }: ColumnWish): string {
  const body = formula === null ? '' : oneLine(formula);
  return body === '' ? oneLine(name) : `${oneLine(name)}: ${body}`;
}
