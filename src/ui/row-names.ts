// What can be named or taken while a cell in a row is written: the row's other columns with their values there, then
// names of the notebook; in a column of texts, what stands in it already.
import { isTextColumn } from '../engine/tables.ts';
import { Nouns } from '../quantity/nouns.ts';
import type { Cell } from '../notebook/document.ts';
import { type Candidate, type Sense, namesFor, unitsFor } from './completing.ts';
import { senseInRow } from './sense-of.ts';
import type { Door } from './session.ts';
import type { Place } from './table-words.ts';

export interface RowOffers {
  readonly names: readonly Candidate[];
  readonly units: readonly Candidate[];
  readonly sense: (text: string) => Sense;
}

/** The row in which what stands at this place is worked: for what a column says, the first one. */
export function workedIn({ row, column }: Place): Place {
  return { row: Math.max(0, row), column };
}

export function rowOffers(door: Door, cell: Cell, place: Place): RowOffers {
  const { row, column } = workedIn(place);
  const nouns = new Nouns(door.notebook.settings.counted);
  const ids = door.rows(cell.id)?.[row] ?? [];
  const columns = (cell.table?.columns ?? []).flatMap(({ name }, k): readonly Candidate[] => {
    if (k === column || name === '') return [];
    const text = lowered(name);
    return [{ text, keys: [text.toLowerCase()], place: 'this row', cell: ids[k] ?? null }];
  });
  const known = new Set(columns.map(({ text }) => text.toLowerCase()));
  // A column's name wins over a cell's in its own rows.
  const others = namesFor(door.notebook, cell.part, cell.id).filter(
    ({ text }) => !known.has(text.toLowerCase()),
  );
  const own = ids[column];
  const { measure } = (own === undefined ? null : door.state(own).holds) ?? {};
  return {
    names: [...columns, ...others],
    units: unitsFor(nouns, measure?.kind === 'amount' ? measure.dimension : null),
    sense: senseInRow(door, cell, { row, column }, nouns),
  };
}

/** Texts of this column that begin like this, but for the same one. */
export function textsLike(cell: Cell, { row, column }: Place, typed: string): readonly Candidate[] {
  const begun = typed.trim().toLowerCase();
  const texts = new Set(
    cell.table?.rows.flatMap((one, r) => (r === row ? [] : (one.texts[column] ?? ''))),
  );
  if (begun === '') return [];
  return [...texts]
    .filter((text) => text.toLowerCase().startsWith(begun) && text.toLowerCase() !== begun)
    .slice(0, 8)
    .map((text) => ({ text, keys: [text.toLowerCase()], place: '', cell: null }));
}

/** Would the column hold words and no amounts with this text in it? Then it is a text and is not worked. */
export function isWords(cell: Cell, { row, column }: Place, text: string): boolean {
  const head = cell.table?.columns[column];
  if (!head || row < 0) return false;
  const texts = (cell.table?.rows ?? []).map((one, r) =>
    r === row ? text : (one.texts[column] ?? ''),
  );
  return isTextColumn(head, texts);
}

function lowered(name: string): string {
  return /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
