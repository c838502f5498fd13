// Mends of a given that is tied to nothing: tied to what was meant, or untied.
import type { Cell } from './document.ts';
import type { Mend, Mendable } from './mends.ts';
import { setRemark, withoutRemark } from './mend-words.ts';
import { TIE_WORD, givenCalled, nearTies, tieOf } from './ties.ts';

export function tied({ notebook }: Mendable, cell: Cell): readonly Mend[] {
  const cells = notebook.sections.flatMap((section) => section.cells);
  const words = tieOf(cell)?.text ?? '';
  const called = givenCalled(cells, cell, words);
  const near = nearTies(cells, cell);
  return [
    ...(called
      ? [setRemark(`Tie "${called.name}" to it`, called.id, TIE_WORD, words)]
      : near.map((other) => setRemark(`Write "${other}"`, cell.id, TIE_WORD, other))),
    untied(cell),
  ];
}

export function untied({ id }: Cell): Mend {
  return withoutRemark('Take it away', id, TIE_WORD);
}
