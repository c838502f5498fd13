// Which operator stands here: the words and signs between the terms of a sum and the values of a product.
import type { Reader } from './reader.ts';
import type { Arithmetic } from './tree.ts';
import { limitsAt } from './limit-words.ts';
import { ARTICLES } from './lexer.ts';
import { overCompares } from './comparisons.ts';
import { shareAhead } from './and-shares.ts';
import { setsOut } from './spaced.ts';
import { offAt } from './taken-off.ts';
import { tablePhraseAt } from './table-phrases.ts';

/** Is there an operator so many tokens ahead? A minus tight to its amount after a comma is a sign. */
export function seesOperator(r: Reader, ahead: number): boolean {
  if (ahead > 0 && r.seesAt(ahead, '-') && !r.peek(ahead + 1).gap) return false;
  // After a comma a name may begin with an operator word: `…, per side where …`.
  if (ahead > 0 && (r.nameAt(ahead)?.length ?? 0) > 1) {
    return false;
  }
  return sumOperator(r, ahead) !== null || termOperator(r, ahead) !== null;
}

export interface Operator {
  readonly op: Arithmetic;
  readonly words: number;
}

/** `then plus markup`, `then times 4`: one after the other, as it is read anyway. */
function oneWordMore(found: Operator | null): Operator | null {
  return found && { ...found, words: found.words + 1 };
}

export function sumOperator(r: Reader, ahead: number): Operator | null {
  const { kind, text } = r.peek(ahead);
  if (kind !== 'word' && kind !== 'symbol') return null;
  switch (text) {
    case 'plus':
    case '+':
      return { op: 'plus', words: 1 };
    case 'minus':
    case '-':
      return { op: 'minus', words: 1 };
    case 'less':
      return r.seesAt(ahead + 1, 'than') ? null : { op: 'minus', words: 1 };
    case 'with':
      if (r.seesAt(ahead + 1, 'gaps') || limitsAt(r, ahead)) return null;
      if (setsOut(r, ahead + 1)) return null;
      return { op: 'plus', words: 1 };
    case 'including':
    case 'incl':
    case 'inc':
      return { op: 'plus', words: 1 };
    case 'and':
      return joinedByAnd(r, ahead);
    case 'then':
      return thenNext(r, ahead);
    case 'add':
      return { op: 'plus', words: r.seesAt(ahead + 1, 'on') ? 2 : 1 };
    case 'subtract':
    case 'deduct':
      return { op: 'minus', words: 1 };
    case 'take':
    case 'knock':
      return r.seesAt(ahead + 1, 'away') || r.seesAt(ahead + 1, 'off')
        ? { op: 'minus', words: 2 }
        : null;
    case 'at':
      return offAt(r, ahead + 1) ? { op: 'minus', words: 1 } : null;
    case 'after':
      return isDiscount(r, ahead + 1) ? { op: 'minus', words: 1 } : null;
    case 'increased':
    case 'raised':
      return r.seesAt(ahead + 1, 'by') ? { op: 'plus', words: 2 } : null;
    case 'reduced':
    case 'decreased':
    case 'lowered':
    case 'discounted':
      return r.seesAt(ahead + 1, 'by') ? { op: 'minus', words: 2 } : null;
    case 'w':
      return r.seesAt(ahead + 1, '/') && !r.peek(ahead + 1).gap ? { op: 'plus', words: 2 } : null;
    default:
      return null;
  }
}

/** `then plus markup`, `then markup` */
function thenNext(r: Reader, ahead: number): Operator | null {
  if (r.conditions > 0) return null;
  const told = sumOperator(r, ahead + 1);
  if (told) return oneWordMore(told);
  return shareAhead(r, ahead + 1) ? { op: 'plus', words: 1 } : null;
}

/** `and then add 1`, `and subtract $50`, `and waste`: told one after the other. */
function joinedByAnd(r: Reader, ahead: number): Operator | null {
  if (r.seesAt(ahead + 1, 'then')) {
    if (r.conditions > 0) return null;
    const told = sumOperator(r, ahead + 2);
    if (told) return { ...told, words: told.words + 2 };
    return shareAhead(r, ahead + 2) ? { op: 'plus', words: 2 } : null;
  }
  if ((r.nameAt(ahead + 1)?.length ?? 0) > 1)
    return shareAhead(r, ahead + 1) ? { op: 'plus', words: 1 } : null;
  if (AND_THEN.has(r.peek(ahead + 1).text)) return oneWordMore(sumOperator(r, ahead + 1));
  return shareAhead(r, ahead + 1) ? { op: 'plus', words: 1 } : null;
}

/** After `and` these tell what to do next, and join no conditions. */
const AND_THEN: ReadonlySet<string> = new Set(
  'add plus subtract deduct take knock minus'.split(' '),
);

/** `materials after 10% discount` */
function isDiscount(r: Reader, ahead: number): boolean {
  const article = ARTICLES.has(r.peek(ahead).text) ? 1 : 0;
  if (r.peek(ahead + article).kind !== 'number') return false;
  for (let i = ahead + article + 1; i < ahead + 6; i++) if (r.seesAt(i, 'discount')) return true;
  return false;
}

export function termOperator(r: Reader, ahead: number): Operator | null {
  const token = r.peek(ahead);
  if (token.kind !== 'word' && token.kind !== 'symbol') return null;
  switch (token.text) {
    case 'then':
      return r.conditions === 0 ? oneWordMore(termOperator(r, ahead + 1)) : null;
    case 'times':
    case '×':
      return { op: 'times', words: 1 };
    case 'multiplied':
      return r.seesAt(ahead + 1, 'by') ? { op: 'times', words: 2 } : null;
    case 'by':
    case 'x':
      return { op: 'by', words: 1 };
    case 'at':
      if (comparesAt(r, ahead) || offAt(r, ahead + 1)) return null;
      return { op: 'at', words: 1 };
    case '@':
      return { op: 'at', words: 1 };
    case 'split':
      if (r.peek(ahead + 1).kind === 'number' && r.seesAt(ahead + 2, 'ways')) {
        return { op: 'over', words: 1 };
      }
      return sharesOut(r, ahead);
    case 'divided':
    case 'shared':
    case 'spread':
      return sharesOut(r, ahead);
    case 'over':
      return overCompares(r) && ahead === 0 ? null : { op: 'over', words: 1 };
    case '÷':
    case '/':
    case 'per':
      return { op: 'over', words: 1 };
    default:
      return null;
  }
}

/** `at least` compares or limits, unless it is the least figure of a table's column. */
function comparesAt(r: Reader, ahead: number): boolean {
  if (r.seesAt(ahead + 1, 'most')) return true;
  return r.seesAt(ahead + 1, 'least') && tablePhraseAt(r, ahead + 1) === null;
}

/** `split between 4`, `divided evenly among the crew`, `shared over 8 steps`. */
function sharesOut(r: Reader, ahead: number): Operator | null {
  const evenly = r.seesAt(ahead + 1, 'equally') || r.seesAt(ahead + 1, 'evenly') ? 1 : 0;
  const { kind, text } = r.peek(ahead + 1 + evenly);
  return kind === 'word' && SHARES_OUT.has(text) ? { op: 'over', words: 2 + evenly } : null;
}

const SHARES_OUT: ReadonlySet<string> = new Set(
  'between among amongst into by over across'.split(' '),
);
