// Why there is no value yet, in words.
import type { Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Book } from './book.ts';

/** As many names as one reads at a glance. */
const NAMED_AT_MOST = 3;

/** `self` is the cell of which it is said, if it is one. */
export function whyLacking(
  book: Book,
  outcome: Exclude<Outcome, { kind: 'value' }>,
  self: CellId | null = null,
): string {
  const others = outcome.kind === 'fault' ? [] : outcome.for.filter((cell) => cell !== self);
  switch (outcome.kind) {
    case 'unknown':
      return others.length === 0 ? 'not yet known' : `not yet known: needs ${names(book, others)}`;
    case 'waiting':
      return others.length === 0 ? 'waiting' : `waiting for ${names(book, others)}`;
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
