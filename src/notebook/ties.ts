// Givens that move together: the words after `moves with` say what moves them (the lumber yard, one crew), and all that
// say the same are tied. They are words of their own and no names of cells, so that no rename touches them.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import { nearNames } from '../words/near.ts';
import type { Cell, Finding, Remark } from './document.ts';
import {
  type Edit,
  type Edits,
  isRefused,
  refused,
  remarkEdit,
  removeRemarkEdit,
} from './edits.ts';
import { nameKey } from './names.ts';
import type { NotebookText } from './notebook-text.ts';

export const TIE_WORD = 'moves with';

export interface Tie {
  /** As the first of them says it. */
  readonly words: string;
  /** A table among them stands for all givens in its rows. */
  readonly cells: readonly Cell[];
}

/** By what moves them, in the order in which that is first said; one that stands alone is among them. */
export function tiesAmong(cells: readonly Cell[]): readonly Tie[] {
  const ties = new Map<string, { readonly words: string; readonly cells: Cell[] }>();
  for (const cell of cells) {
    const words = tieOf(cell)?.text ?? '';
    if (words === '') continue;
    const tie = ties.get(nameKey(words));
    if (tie) tie.cells.push(cell);
    else ties.set(nameKey(words), { words, cells: [cell] });
  }
  return [...ties.values()];
}

export function tieOf({ remarks }: Cell): Remark | null {
  return remarks.find(({ kind }) => kind === TIE_WORD) ?? null;
}

/** Ties that can't do what they say. */
export function tieFindings(
  cells: readonly Cell[],
  state: (cell: CellId) => CellState,
): readonly Finding[] {
  const ties = tiesAmong(cells);
  const isWorked = (cell: Cell): boolean => !cell.table && state(cell.id).kind !== 'given';
  const alone = new Set(
    ties
      .map((tie) => tie.cells.filter((cell) => !isWorked(cell)))
      .filter(([first, ...more]) => first && !first.table && more.length === 0)
      .map(([first]) => first.id),
  );
  return cells.flatMap((cell) => {
    const tie = tieOf(cell);
    if (!tie) return [];
    const point = (code: string, message: string): readonly Finding[] => [
      { code, message, part: cell.part, cell: cell.id, spot: null },
    ];
    if (tie.text === '')
      return point(
        'tie-without-words',
        `"${cell.name}" does not say what it moves with. Write what moves it, as in "the lumber yard", and the same under what moves with it.`,
      );
    if (isWorked(cell))
      return point(
        'tied-not-given',
        `"${cell.name}" is worked, so it moves with what it is worked from. "${TIE_WORD}" stands under givens.`,
      );
    if (!alone.has(cell.id)) return [];
    return point('tied-alone', sayAlone(cell, tie.text, cells));
  });
}

function sayAlone(cell: Cell, words: string, cells: readonly Cell[]): string {
  const begins = `Only "${cell.name}" moves with "${words}", so it is tied to nothing.`;
  const named = givenCalled(cells, cell, words);
  if (named) return `${begins} "${named.name}" is tied to it once it says the same words.`;
  const [near] = nearTies(cells, cell);
  if (near !== undefined) return `${begins} Nearest here: "${near}".`;
  return `${begins} Write the same words under what moves with it.`;
}

/** Other words after `moves with` that these may be meant to be. */
export function nearTies(cells: readonly Cell[], cell: Cell): readonly string[] {
  const words = tieOf(cell)?.text ?? '';
  const others = tiesAmong(cells)
    .map((tie) => tie.words)
    .filter((other) => nameKey(other) !== nameKey(words));
  return nearNames(words, others, 1);
}

/** The cell whose name was written as what moves this one: in its own part before others. */
export function givenCalled(cells: readonly Cell[], cell: Cell, words: string): Cell | null {
  const called = cells.filter(
    (other) => other.id !== cell.id && nameKey(other.name) === nameKey(words),
  );
  return called.find(({ part }) => part === cell.part) ?? called[0] ?? null;
}

/** All of them say these words, in one step; null: none of them says any. */
export function tieEdit(
  notebook: NotebookText,
  cells: readonly Cell[],
  words: string | null,
): Edits {
  const each: (readonly Edit[])[] = [];
  for (const cell of cells) {
    if (words === null && !tieOf(cell)) continue;
    const edits =
      words === null
        ? removeRemarkEdit(cell, TIE_WORD)
        : remarkEdit(notebook, cell, TIE_WORD, words);
    if (isRefused(edits)) return edits;
    each.push(edits);
  }
  const [first] = each;
  if (!first || words?.trim() === '')
    return refused('nothing-tied', 'Say what moves them, as in "the lumber yard".', null, null);
  const names = cells.map(({ name }) => name).join(', ');
  const say = words === null ? `Untie ${names}` : `Tie ${names}: ${words.trim()}`;
  const wordings = Math.max(...each.map((edits) => edits.length));
  return Array.from({ length: wordings }, (_, k) => {
    const all = each.map((edits) => edits[Math.min(k, edits.length - 1)]);
    return {
      ...first[0],
      say,
      splices: all.flatMap(({ splices }) => splices),
      cells: new Map(all.flatMap((edit) => [...edit.cells])),
    };
  });
}
