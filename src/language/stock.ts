// Pieces, and the stock they are cut from: `5 pieces of 9 ft from 16 ft boards`, `10 footers`.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { expectSlot, slotEnd } from './values.ts';
import { labelAt } from './length-labels.ts';
import { ARTICLES } from './lexer.ts';
import { sortBefore } from './asides.ts';
import { seesAmount, writtenAmount } from './amounts.ts';
import type { Form } from '../quantity/form.ts';
import { unitByKey } from '../quantity/units.ts';
import { likeWritten } from './amounts-held.ts';

/** `[pieces] of 9 ft from 16 ft boards` after a count. Null where no `from` follows: then it is no piece phrase. */
export function piecesOf(r: Reader, count: Formula): Formula | null {
  const beside = r.token.kind === 'number';
  const opening = beside ? 0 : r.sees('of') || r.sees('at') || r.sees('@') ? 1 : 2;
  const end = slotEnd(r, opening);
  const from = end < 0 ? 0 : cutFrom(r, end);
  if (from === 0) return null;
  r.take(opening, 'phrase');
  const length = expectSlot(r);
  if (r.problem) return length;
  r.take(cutFrom(r, 0), 'phrase');
  const stock = stockOf(r);
  if (!stock) {
    return r.fail({
      code: 'phrase-slot',
      spots: [r.since(count.spot.from)],
      phrase: 'pieces of … from …',
      wanted: 'the stock it is cut from',
      like: '5 pieces of 9 ft from 16 ft boards',
      fixes: ['boards', 'pieces'].map((by) => r.fix(`From ${by} of that`, r.afterLast(), ` ${by}`)),
    });
  }
  return { kind: 'pieces', count, length, ...stock, spot: r.since(count.spot.from) };
}

/** `from`, `, cut from`, `out of`: how many tokens of it stand there, 0 for none. */
export function cutFrom(r: Reader, ahead: number): number {
  const label = labelAt(r, ahead);
  if (label > 0) {
    const from = cutFrom(r, ahead + label);
    return from === 0 ? 0 : label + from;
  }
  const comma = r.seesAt(ahead, ',') ? 1 : 0;
  const cut = comma + (CUT.has(r.peek(ahead + comma).text) ? 1 : 0);
  if (r.seesAt(ahead + cut, 'out', 'of')) return cut + 2;
  return r.seesAt(ahead + cut, 'from') && (comma === 0 || cut > comma) ? cut + 1 : 0;
}

const CUT: ReadonlySet<string> = new Set(['cut', 'ripped', 'sawn', 'made', 'taken']);

/** `cut from 16 ft boards` after a run: how many tokens stand before the stock; 0 where none is meant. */
export function stockAfter(r: Reader, ahead: number): number {
  const from = cutFrom(r, ahead);
  if (from === 0) return 0;
  const article = ARTICLES.has(r.peek(ahead + from).text) ? 1 : 0;
  const first = r.vocabulary.nounAt(r.tokens, r.at + ahead + from + article);
  if (first && r.seesAt(ahead + from + article + first.length, 'of')) return from;
  if (footersLength(r, ahead + from + article) > 0) return from;
  const end = slotEnd(r, ahead + from + article);
  if (end < 0) return 0;
  const noun = r.vocabulary.nounAt(r.tokens, r.at + end + sortBefore(r, end));
  return noun ? from : 0;
}

/** `16 ft boards`, `stock length boards`, `boards of stock length`: what one holds, and the noun. */
export function stockOf(
  r: Reader,
): { stock: Formula; noun: string; nounSpot: { from: number; to: number } } | null {
  r.skipArticle();
  const first = r.vocabulary.nounAt(r.tokens, r.at);
  if (first && r.seesAt(first.length, 'of')) {
    const nounSpot = r.take(first.length, 'phrase');
    r.take(1, 'phrase');
    return { stock: expectSlot(r), noun: first.noun, nounSpot };
  }
  const footers = footersAt(r);
  if (footers) return footers;
  const stock = seesAmount(r) ? writtenAmount(r) : expectSlot(r);
  if (!r.problem) r.take(sortBefore(r, 0), 'unread');
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  if (!noun) return null;
  return { stock, noun: noun.noun, nounSpot: r.take(noun.length, 'phrase') };
}

/** `10 footers`: pieces of ten feet. */
function footersAt(r: Reader): ReturnType<typeof stockOf> {
  const length = footersLength(r, 0);
  if (length === 0) return null;
  const { text } = r.token;
  const nounSpot = r.take(length, 'phrase');
  const form: Form = { over: [{ kind: 'unit', unit: unitByKey('ft'), count: null }], under: [] };
  const stock = likeWritten(r, r.number(text, text, nounSpot), { kind: 'form', form, larger: [] });
  return { stock, noun: 'piece', nounSpot };
}

function footersLength(r: Reader, ahead: number): number {
  const { kind, text } = r.peek(ahead);
  const hyphen = r.seesAt(ahead + 1, '-') ? 1 : 0;
  if (kind !== 'number' || !/^\d{1,3}$/.test(text)) return 0;
  return /^footers?$/.test(r.peek(ahead + 1 + hyphen).text) ? 2 + hyphen : 0;
}
