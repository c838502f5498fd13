// The working of a number as a value: steps going down like risers from the answer to the givens.
import type { CellId } from '../language/tree.ts';

/** A stretch of a line of numbers; `struck` is a unit that cancels against another in the same line. */
export interface Piece {
  readonly text: string;
  readonly struck: boolean;
}

/** A stretch of the words of a step; `cell` is the cell whose name it is, so that it can be opened. */
export interface Word {
  readonly text: string;
  readonly cell: CellId | null;
}

export interface Step {
  /** The cell whose value this step comes to; null for a step inside a formula. */
  readonly cell: CellId | null;
  /** Its name where `cell` is one. */
  readonly name: string | null;
  /** What is done, in words: `plus waste, 10% of slab volume`. `said` is the same in pieces. */
  readonly words: string;
  readonly said: readonly Word[];
  /** The line in numbers: `17.6 cubic feet ÷ 0.45 cubic feet per bag = 39.11 bags`; empty where there is none to show. `pieces` is the same with cancelled units marked. */
  readonly numbers: string;
  readonly pieces: readonly Piece[];
  /** What it comes to, with as many digits as the line above needs; or why there is no value yet. */
  readonly result: string;
  /** Where its cell says it comes from. */
  readonly source: string | null;
  readonly caution: string | null;
  /** What the reader of the formula decided on its own, and what there is to know about the step. */
  readonly note: string | null;
  /** What the step was worked from, first to last; for a named cell also the rest of its own steps, going down. */
  readonly parts: readonly Step[];
  /** It was worked further up: its parts are not repeated. */
  readonly referredTo: boolean;
  /** Works out what was not worked at once: the same step, opened. Null where nothing is folded away. */
  readonly open: (() => Step) | null;
}

export interface GoesInto {
  readonly cell: CellId;
  readonly name: string;
}

export interface Working {
  readonly cell: CellId;
  readonly name: string;
  /** The answer as it is shown, or why there is none yet. */
  readonly shown: string;
  /** Top step first, going down. */
  readonly steps: readonly Step[];
  /** Cells whose formulas use it, in the notebook's order. */
  readonly goesInto: readonly GoesInto[];
}

/** Words out of plain text and named pieces; plain text next to plain text is one. */
export function saying(...parts: readonly (string | readonly Word[])[]): readonly Word[] {
  const words: Word[] = [];
  for (const part of parts) {
    for (const word of typeof part === 'string' ? [{ text: part, cell: null }] : part) {
      const before = words.at(-1);
      if (word.text === '') continue;
      if (before?.cell === null && word.cell === null) {
        words.splice(-1, 1, { text: `${before.text}${word.text}`, cell: null });
      } else words.push(word);
    }
  }
  return words;
}

export function plainWords(said: readonly Word[]): string {
  return said.map((word) => word.text).join('');
}
