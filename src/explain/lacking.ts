// Why there is no value yet, in words.
import type { Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Book } from './book.ts';

/** As many names as one reads at a glance. */
const NAMED_AT_MOST = 3;

export function whyLacking(book: Book, outcome: Exclude<Outcome, { kind: 'value' }>): string {
  switch (outcome.kind) {
    case 'unknown':
      return outcome.for.length === 0
        ? 'not yet known'
        : `not yet known: needs ${names(book, outcome.for)}`;
    case 'waiting':
      return outcome.for.length === 0 ? 'waiting' : `waiting for ${names(book, outcome.for)}`;
    case 'fault':
      return 'no value yet';
  }
}

function names(book: Book, cells: readonly CellId[]): string {
  const said = cells.slice(0, NAMED_AT_MOST).map((cell) => book.facts(cell).name);
  const more = cells.slice(NAMED_AT_MOST).length;
  const all = more === 0 ? said : [...said, `${more} more`];
  return all.length < 2
    ? all.join('')
    : `${all.slice(0, -1).join(', ')} and ${all.slice(-1).join('')}`;
}
