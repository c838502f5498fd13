// Cells, tables and parts by any words of their names: what is typed is the beginning of some of them, in any order.
import type { CellId } from '../language/tree.ts';
import type { Notebook } from '../notebook/document.ts';
import { allCells } from './reading-order.ts';

export interface CalledPlace {
  readonly name: string;
  /** The part it stands in; of a part itself, what it is. */
  readonly where: string;
  readonly part: string;
  /** Null: the part itself. */
  readonly cell: CellId | null;
}

const MOST = 40;

/** Names that begin with what was typed first, then those with words that do; each in the order of the notebook. */
export function placesCalled(notebook: Notebook, typed: string): readonly CalledPlace[] {
  const wanted = wordsOf(typed);
  const found = everyPlace(notebook).flatMap((place) => {
    const rank = rankOf(place, wanted, typed.trim().toLowerCase());
    return rank === null ? [] : [{ rank, place }];
  });
  return found
    .sort((a, b) => a.rank - b.rank)
    .slice(0, MOST)
    .map(({ place }) => place);
}

function everyPlace(notebook: Notebook): readonly CalledPlace[] {
  const byPart = new Map<string, CalledPlace[]>(notebook.parts.map(({ key }) => [key, []]));
  const names = new Map(notebook.parts.map(({ key, name }) => [key, name]));
  for (const { id, name, part, table } of allCells(notebook)) {
    const where = names.get(part) ?? '';
    byPart.get(part)?.push({ name, where: table ? `table, ${where}` : where, part, cell: id });
  }
  return notebook.parts.flatMap(({ key, name }) => [
    ...(key === '' ? [] : [{ name, where: 'part', part: key, cell: null }]),
    ...(byPart.get(key) ?? []),
  ]);
}

/** Null where a word that was typed begins none of its words. */
function rankOf(
  { name, where }: CalledPlace,
  wanted: readonly string[],
  typed: string,
): number | null {
  const own = wordsOf(name);
  const all = [...own, ...wordsOf(where)];
  if (!wanted.every((word) => all.some((one) => one.startsWith(word)))) return null;
  if (name.toLowerCase().startsWith(typed)) return 0;
  return wanted.every((word) => own.some((one) => one.startsWith(word))) ? 1 : 2;
}

function wordsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}#$%'’]+/gu) ?? [];
}
