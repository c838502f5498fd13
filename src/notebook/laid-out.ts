// Text that is to be a table: its first line names the columns, each line after it is a row.
// What can't be read there is told cell by cell with the reason, and left blank.
import { isTextColumn } from '../engine/tables.ts';
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import { describe } from '../quantity/describe.ts';
import { alikeMeasures } from '../quantity/alike.ts';
import type { Measure } from '../quantity/measure.ts';
import { unitPhrases } from '../quantity/units.ts';
import type { Finding } from './document.ts';
import { refused } from './edits.ts';
import type { ColumnWish, TableWish } from './new-table.ts';
import type { NotPasted } from './paste-edit.ts';
import { MOST_PASTED, oddInPaste, pastedText } from './pasting.ts';

/** Where a table comes to stand: in a new cell (`after` null: at the end of the part), or in one that holds nothing yet. */
export type TablePlace =
  | {
      readonly kind: 'new';
      readonly part: string;
      readonly after: CellId | null;
      readonly name: string;
    }
  | { readonly kind: 'here'; readonly cell: CellId };

export interface Lines {
  readonly wish: TableWish;
  /** Cells for which there is no column, or that no reader of amounts would see to be wrong. */
  readonly odd: readonly NotPasted[];
}

/** The columns and rows that a text holds, before anything in them is read; or why it holds none. */
export function readLines(text: string, currency: string): Lines | Finding {
  const [first = [], ...lines] = pastedText(text).rows;
  if (first.length === 0) {
    const message = 'Name the columns in the first line, with a tab or a comma between them.';
    return refused('no-columns', message, null, null);
  }
  if (lines.length > MOST_PASTED) {
    const [many, most] = [lines.length, MOST_PASTED].map((n) => n.toLocaleString('en-US'));
    return refused(
      'too-much-pasted',
      `This has ${many} rows; ${most} are taken at once.`,
      null,
      null,
    );
  }
  const wide = Math.max(
    first.findLastIndex((head) => head !== '') + 1,
    ...lines.map((row) => (row.length > first.length ? 0 : row.findLastIndex((t) => t !== '') + 1)),
  );
  const heads = Array.from({ length: wide }, (_, k) => headOf(first[k] ?? '', currency));
  const odd: NotPasted[] = [];
  const rows = lines.map((row, r) => {
    row.slice(wide).forEach((words) => {
      if (words === '') return;
      odd.push({ row: r, column: null, text: words, why: 'There is no column for it.' });
    });
    return heads.map(({ unit }, k) => withUnit(row[k] ?? '', unit));
  });
  const columns = heads.map(({ column }) => column);
  const texts = columns.map((column, k) =>
    isTextColumn(
      column,
      rows.map((row) => row[k] ?? ''),
    ),
  );
  const kept = rows.map((row, r) =>
    row.map((words, k) => {
      const why = words === '' || texts[k] ? null : oddInPaste(words);
      if (why === null) return words;
      odd.push({ row: r, column: k, text: words, why });
      return '';
    }),
  );
  return { wish: { columns, rows: kept }, odd };
}

/** The same without what can't be read: `cells` are the table's as it stands when all of it is put in. */
export function laidOut(
  { wish, odd }: Lines,
  cells: readonly (readonly CellId[])[],
  state: (cell: CellId) => CellState,
): { readonly wish: TableWish; readonly refused: readonly NotPasted[] } {
  const measures: (Measure | null)[] = wish.columns.map(() => null);
  const told = [...odd];
  const rows = wish.rows.map((row, r) =>
    row.map((words, k) => {
      const id = cells[r]?.[k];
      if (words === '' || id === undefined) return words;
      const why = whyNot(state(id), measures[k] ?? null);
      if (why === null) {
        measures[k] ??= measureOf(state(id));
        return words;
      }
      told.push({ row: r, column: k, text: words, why });
      return '';
    }),
  );
  const refused = told.sort(
    (a, b) => a.row - b.row || (a.column ?? Infinity) - (b.column ?? Infinity),
  );
  return { wish: { ...wish, rows }, refused };
}

function whyNot({ reading, holds }: CellState, there: Measure | null): string | null {
  const [problem] = reading.problems;
  if (problem) return `${problem.headline} ${problem.explanation}`;
  if (!there || !holds || holds.measure.kind === 'open') return null;
  if (alikeMeasures(holds.measure, there)) return null;
  return `This column holds ${describe(there)}, and this is ${describe(holds.measure)}.`;
}

/** What the column measures as far as it is known. */
function measureOf({ holds, outcome }: CellState): Measure | null {
  if (!holds || holds.measure.kind === 'open' || outcome.kind === 'fault') return null;
  return holds.measure;
}

/** `length`, `volume: length by width`; `Length (ft)` is a length whose plain numbers are feet. */
function headOf(
  text: string,
  currency: string,
): { readonly column: ColumnWish; readonly unit: string | null } {
  const colon = text.search(/:(\s|$)/);
  if (colon >= 0) {
    const formula = text.slice(colon + 1).trim();
    const column = { name: text.slice(0, colon).trim(), formula: formula === '' ? null : formula };
    return { column, unit: null };
  }
  const [, name = '', unit = ''] = /^(.*\S)\s*[([]([^()[\]]+)[)\]]$/.exec(text) ?? [];
  const word = unit.trim().toLowerCase().replace(/\.$/, '');
  if (word !== currency && !unitPhrases.has(word))
    return { column: { name: text, formula: null }, unit: null };
  return { column: { name, formula: null }, unit: word };
}

/** A plain number in a column whose heading says its unit. */
function withUnit(text: string, unit: string | null): string {
  if (unit === null || !/^[\d,]*\.?\d+(\s+\d+\/\d+)?$|^\d+\/\d+$/.test(text)) return text;
  return /^\p{Sc}$/u.test(unit) ? `${unit}${text}` : `${text} ${unit}`;
}
