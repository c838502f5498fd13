// Pasted text as an edit of a table: which cells it fills, which rows it adds, and what is refused and why.
import { isTextColumn } from '../engine/tables.ts';
import type { Cell, Finding } from './document.ts';
import { type Edits, isRefused, refused } from './edits.ts';
import type { NotebookText } from './notebook-text.ts';
import { MOST_PASTED, oddInPaste, pastedText, placesFor } from './pasting.ts';
import { type RowText, addRowsEdit, rowTextsEdit, tableOf } from './table-edits.ts';

/** A pasted cell that was not taken, and why. Rows and columns are counted from 0, as they stand in the table. */
export interface NotPasted {
  readonly row: number;
  /** Null: there is no column for it. */
  readonly column: number | null;
  readonly text: string;
  readonly why: string;
}

/** What the paste asks of whoever works the table. */
interface Asked {
  isText(column: number): boolean;
  /** Why a text can't be read in a column, or null. */
  why(column: number, text: string): string | null;
}

export function pasteEdit(
  notebook: NotebookText,
  cell: Cell,
  row: number,
  column: number,
  text: string,
  asked: Asked,
): { readonly edits: Edits; readonly refused: readonly NotPasted[] } | Finding {
  const table = tableOf(cell);
  const pasted = pastedText(text);
  const names = table.columns.map((c) => c.name);
  const { rows, places } = placesFor(pasted, names, column);
  if (rows.length === 0) {
    return refused('nothing-pasted', 'There is nothing in this to put in.', cell.part, cell.id);
  }
  if (rows.length > MOST_PASTED) {
    const many = rows.length.toLocaleString('en-US');
    const most = MOST_PASTED.toLocaleString('en-US');
    return refused(
      'too-much-pasted',
      `This has ${many} rows; ${most} are taken at once.`,
      cell.part,
      cell.id,
    );
  }
  const asText = table.columns.map(
    (c, k) => asked.isText(k) || staysText(table.rows, c, k, rows, places),
  );
  const reasons = new Map<string, string | null>();
  const whyNot = (k: number, words: string): string | null => {
    const odd = oddInPaste(words);
    if (odd !== null || asText[k]) return odd;
    const key = `${k}\0${words}`;
    let why = reasons.get(key);
    if (why === undefined) reasons.set(key, (why = asked.why(k, words)));
    return why;
  };
  const notTaken: NotPasted[] = [];
  const filled: RowText[] = [];
  const added: string[][] = [];
  rows.forEach((cells, i) => {
    const at = row + i;
    const fresh: string[] = table.columns.map(() => '');
    cells.forEach((words, j) => {
      if (words === '') return;
      const k = places[j] ?? null;
      if (k === null) {
        notTaken.push({ row: at, column: null, text: words, why: 'There is no column for it.' });
        return;
      }
      const why = whyNot(k, words);
      if (why !== null) notTaken.push({ row: at, column: k, text: words, why });
      else if (at < table.rows.length) filled.push({ row: at, column: k, text: words });
      else fresh[k] = words;
    });
    if (at >= table.rows.length) added.push(fresh);
  });
  const say = `${cell.name}, ${rows.length === 1 ? '1 row' : `${rows.length} rows`} pasted`;
  if (filled.length + added.length === 0) {
    const why = notTaken[0]?.why ?? 'Nothing stands in it.';
    return refused('nothing-pasted', `None of this could be put in. ${why}`, cell.part, cell.id);
  }
  const edits = joined(
    say,
    filled.length === 0 ? [] : rowTextsEdit(notebook, cell, say, filled),
    added.length === 0 ? [] : addRowsEdit(notebook, cell, null, added),
    cell,
    filled,
    added,
  );
  return { edits, refused: notTaken };
}

/** A column in which nothing stands yet, and into which words come and no amounts. */
function staysText(
  there: readonly { readonly texts: readonly string[] }[],
  column: { readonly name: string; readonly formula: string | null },
  k: number,
  rows: readonly (readonly string[])[],
  places: readonly (number | null)[],
): boolean {
  if (column.formula !== null || there.some((row) => (row.texts[k] ?? '') !== '')) return false;
  const j = places.indexOf(k);
  return (
    j >= 0 &&
    isTextColumn(
      column,
      rows.map((row) => row[j] ?? ''),
    )
  );
}

/** Filled cells and new rows in one edit, read back together. */
function joined(
  say: string,
  fill: Edits,
  add: Edits,
  cell: Cell,
  filled: readonly RowText[],
  added: readonly (readonly string[])[],
): Edits {
  if (isRefused(fill)) return fill;
  if (isRefused(add)) return add;
  const [one] = fill;
  const [other] = add;
  if (!one || !other) return [{ ...(one ?? other), say }];
  const table = tableOf(cell);
  const rows = table.rows.map((row) => [...row.texts]);
  for (const { row, column, text } of filled) rows[row][column] = text;
  const meant = {
    columns: table.columns.map((c) => [c.name, c.formula] as const),
    rows: [...rows, ...added],
  };
  const cells = new Map([[cell.id, { table: meant }]]);
  return [{ ...one, say, splices: [...one.splices, ...other.splices], cells }];
}
