// The pieces of a difference told apart: what prices did, what sizes did, what formulas did, and what each comes to.
import type { Way } from '../versions/cell-change.ts';
import { centsOf, moneyText } from '../versions/cents.ts';
import type { Piece } from '../versions/why-moved.ts';

export const WHY_KINDS = ['price', 'size', 'formula', 'line', 'table', 'together', 'tool'] as const;
export type WhyKind = (typeof WHY_KINDS)[number];

export function whyKind({ changes, ways }: Pick<Piece, 'changes' | 'ways'>): WhyKind {
  if (changes.length === 0) return 'tool';
  const kinds = new Set(ways.flatMap((way) => kindOf(way) ?? []));
  const [only] = kinds;
  return kinds.size === 1 && only ? only : 'together';
}

/** Null: it moves no total by itself. */
function kindOf(way: Way): WhyKind | null {
  switch (way) {
    case 'price':
      return 'price';
    case 'size':
    case 'time':
    case 'rate':
    case 'share':
    case 'count':
    case 'answer':
    case 'known':
    case 'unknown':
      return 'size';
    case 'formula':
    case 'mended':
    case 'broken':
    case 'by-hand':
      return 'formula';
    case 'added':
    case 'removed':
    case 'line':
      return 'line';
    case 'table':
      return 'table';
    case 'renamed':
    case 'moved':
    case 'source':
    case 'remarks':
      return null;
  }
}

export function sayKind(kind: WhyKind): string {
  switch (kind) {
    case 'price':
      return 'prices that moved';
    case 'size':
      return 'sizes, counts and other givens';
    case 'formula':
      return 'formulas written anew, mended or set by hand';
    case 'line':
      return 'lines added and taken out';
    case 'table':
      return 'rows of tables';
    case 'together':
      return 'changes that only work together';
    case 'tool':
      return 'this version of the tool works it otherwise';
  }
}

export interface KindSum {
  readonly kind: WhyKind;
  readonly pieces: number;
  readonly amount: string;
}

/** What each kind comes to; together they are the whole difference. Kinds without a piece are left out. */
export function kindSums(pieces: readonly Piece[]): readonly KindSum[] {
  return WHY_KINDS.flatMap((kind) => {
    const own = pieces.filter((piece) => whyKind(piece) === kind);
    const cents = own.reduce((sum, { amount }) => sum + centsOf(amount), 0n);
    return own.length === 0 ? [] : [{ kind, pieces: own.length, amount: moneyText(cents) }];
  });
}
