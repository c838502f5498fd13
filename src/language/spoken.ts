// Sums said as one tells somebody to work them: `add 10% to materials`, `take 5% off labour`, `multiply 12 by 4`.
// Each comes to a tree that a tidy sentence says too. A slot is one amount, name or bracket; arithmetic that goes on
// after the last one could belong to it or to the whole, and asks.
import { seesAmount } from './amounts.ts';
import { howManyAt } from './how-many.ts';
import { seesOperator } from './levels.ts';
import { outlineAt } from './outlines.ts';
import type { Phrase } from './phrases.ts';
import type { Reader } from './reader.ts';
import { readRoundedFirst, seesRoundFirst } from './rounded-first.ts';
import type { Arithmetic, Formula } from './tree.ts';
import { expectSlot } from './values.ts';

/** The phrase of speech that begins so many tokens ahead, an article before it. */
export function spokenAt(r: Reader, skip: number): Phrase | null {
  const read = VERBS.get(r.peek(skip).text);
  if (read && skip === 0) return { opening: 1, read };
  if (skip === 0 && seesRoundFirst(r)) return { opening: 2, read: readRoundedFirst };
  return howManyAt(r, skip) ?? outlineAt(r, skip);
}

const VERBS: ReadonlyMap<string, (r: Reader) => Formula> = new Map([
  ['add', readAdd],
  ...['take', 'deduct', 'subtract', 'remove', 'knock'].map((word) => [word, readTake] as const),
  ...['increase', 'raise', 'bump'].map((word) => [word, (r: Reader) => readBy(r, 'plus')] as const),
  ...['decrease', 'reduce', 'lower', 'discount', 'drop'].map(
    (word) => [word, (r: Reader) => readBy(r, 'minus')] as const,
  ),
  ['multiply', (r: Reader) => readBy(r, 'times')],
  ['divide', (r: Reader) => readBy(r, 'over')],
  ['halve', (r: Reader) => readTimesAlone(r, '1/2', 'half')],
  ['triple', (r: Reader) => readTimesAlone(r, '3', '3')],
]);

/** `add A to B`, `add A and B`, `add A, B and C`. */
function readAdd(r: Reader): Formula {
  const from = r.token.from;
  const opSpot = r.take(1, 'operator');
  const items = [expectSlot(r)];
  r.maybe('on');
  if (r.maybe('to')) {
    const [more] = items;
    const left = expectSlot(r);
    if (r.problem || !more) return left;
    const spot = r.since(from);
    return ended(r, { kind: 'binary', op: 'plus', opSpot, left, right: more, spot }, left);
  }
  while (!r.problem && (r.sees(',') || r.sees('and'))) {
    r.maybe(',');
    const last = r.maybe('and');
    items.push(expectSlot(r));
    if (last) break;
  }
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  if (items.length === 1) return refuseHalf(r, from, 'add', 'to ?', 'add 10% to $60');
  const spot = r.since(from);
  return ended(r, { kind: 'list', what: 'total', items, spot }, items.at(-1));
}

/** `take 5% off B`, `subtract A from B`; `take B` alone is B. */
function readTake(r: Reader): Formula {
  const from = r.token.from;
  const verb = r.token.text;
  const opSpot = r.take(1, 'operator');
  const right = expectSlot(r);
  if (r.problem) return right;
  if (!r.maybe('off', 'of') && !r.maybe('off') && !r.maybe('from')) {
    if (verb === 'take') return right;
    return refuseHalf(r, from, verb, 'from ?', 'subtract $5 from $60');
  }
  const left = expectSlot(r);
  if (r.problem) return left;
  const spot = r.since(from);
  return ended(r, { kind: 'binary', op: 'minus', opSpot, left, right, spot }, left);
}

/** `increase A by B`, `multiply A by B`, `divide A by B`. */
function readBy(r: Reader, op: Arithmetic): Formula {
  const from = r.token.from;
  const verb = r.token.text;
  const opSpot = r.take(1, 'operator');
  const left = expectSlot(r);
  if (r.problem) return left;
  const by = r.maybe('by') || (op === 'over' && r.maybe('into')) || (op === 'times' && r.maybe('times'));
  if (!by && !(op === 'minus' && seesAmount(r))) {
    return refuseHalf(r, from, verb, 'by ?', `${verb} $60 by 4`);
  }
  const right = expectSlot(r);
  if (r.problem) return right;
  const spot = r.since(from);
  return ended(r, { kind: 'binary', op, opSpot, left, right, spot }, right);
}

/** `halve X`, `triple X`. */
function readTimesAlone(r: Reader, value: string, say: string): Formula {
  const from = r.token.from;
  const opSpot = r.take(1, 'operator');
  const number = r.number(value, say, opSpot);
  const of = expectSlot(r);
  const spot = r.since(from);
  return value === '1/2'
    ? { kind: 'part-of', share: number, of, spot }
    : { kind: 'binary', op: 'times', opSpot, left: number, right: of, spot };
}

/** What goes on after the last slot without a comma asks whose it is. */
function ended(r: Reader, whole: Formula, last: Formula | undefined): Formula {
  if (!last || r.problem || !seesOperator(r, 0)) return whole;
  const rest = { from: r.token.from, to: r.endOfBracket() };
  const all = { from: last.spot.from, to: rest.to };
  const tail = r.slice(rest).trim();
  const ahead = last.spot.to <= whole.spot.to && whole.spot.to === last.spot.to;
  return r.fail({
    code: 'two-readings',
    spots: [rest],
    about: `"${tail}" could belong to "${r.slice(last.spot)}" alone or to all that stands before it. A comma gives it to all; brackets give it to the last.`,
    fixes: [
      r.fix('To all of it', { from: r.gapBefore(rest.from), to: rest.from }, ', '),
      ...(ahead ? [r.fix('To the last alone', all, `(${r.slice(all).trimEnd()})`)] : []),
    ],
  });
}

function refuseHalf(
  r: Reader,
  from: number,
  phrase: string,
  open: string,
  like: string,
): Formula {
  return r.fail({
    code: 'phrase-slot',
    spots: [r.since(from)],
    phrase,
    wanted: `"${open.replace(' ?', '')}" and an amount`,
    like,
    fixes: r.token.kind === 'end' ? [r.fix('Leave it open for now', r.afterLast(), ` ${open}`)] : [],
  });
}
