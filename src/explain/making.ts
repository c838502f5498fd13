// Steps out of words, numbers and notes.
import { type Piece, type Step, type Word, plainWords } from './step.ts';

export interface Made {
  readonly said: readonly Word[];
  readonly pieces?: readonly Piece[];
  readonly result: string;
  readonly note?: string | null;
}

/** A step that stands alone: no cell of its own, nothing below it. */
export function stepOf({ said, pieces = [], result, note = null }: Made): Step {
  return {
    cell: null,
    name: null,
    words: plainWords(said),
    said,
    numbers: pieces.map((piece) => piece.text).join(''),
    pieces,
    result,
    source: null,
    caution: null,
    note,
    parts: [],
    referredTo: false,
    open: null,
  };
}

/** Notes one after another, each said once; null where there are none. */
export function notes(...all: readonly (string | null)[]): string | null {
  const said = [...new Set(all.filter((note) => note !== null && note !== ''))];
  return said.length === 0 ? null : said.join(' ');
}
