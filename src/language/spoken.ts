// Sums said as one tells somebody to work them: `add 10% to materials`, `take 5% off labour`, `multiply 12 by 4`.
// Each comes to a tree that a tidy sentence says too. A slot is one amount, name or bracket; arithmetic that goes on
// after the last one could belong to it or to the whole, and asks.
import { seesAmount, writtenAmount } from './amounts.ts';
import { ARTICLES } from './lexer.ts';
import { expectList } from './lists.ts';
import { WHICH } from './which.ts';
import { howManyAt } from './how-many.ts';
import { seesOperator } from './operators.ts';
import { outlineAt } from './outlines.ts';
import type { Phrase } from './phrases.ts';
import { partOf } from './part-of.ts';
import type { Reader } from './reader.ts';
import { readRoundedFirst, seesRoundFirst } from './rounded-first.ts';
import type { Amount, Arithmetic, Formula } from './tree.ts';
import { expectSlot } from './values.ts';
import { SHARE_LABELS } from './words.ts';

/** The phrase of speech that begins so many tokens ahead, an article before it. */
export function spokenAt(r: Reader, skip: number): Phrase | null {
  const read = VERBS.get(r.peek(skip).text);
  if (read && skip === 0) return { opening: 1, read };
  const overtime = overtimeAt(r, skip);
  if (overtime) return overtime;
  if (skip === 0 && seesRoundFirst(r)) return { opening: 2, read: readRoundedFirst };
  if (saysShareOf(r, skip)) return { opening: skip + 2, read: (at) => readShareOf(at, skip + 2) };
  return changeAt(r, skip) ?? howManyAt(r, skip) ?? pairAt(r, skip) ?? outlineAt(r, skip);
}

/** `time and a half of labour rate`: so much more than the plain rate. */
function overtimeAt(r: Reader, skip: number): Phrase | null {
  const found = OVERTIME.find(({ words }) => r.seesAll(skip, words));
  if (!found) return null;
  const opening = skip + found.words.length;
  if (!/^(of|on|at|for|times|x)$/.test(r.peek(opening).text)) return null;
  return {
    opening,
    read: (at) => {
      const from = at.token.from;
      const opSpot = at.take(opening + 1, 'operator');
      const left = at.number(found.value, found.say, opSpot);
      const right = expectSlot(at);
      return { kind: 'binary', op: 'times', opSpot, left, right, spot: at.since(from) };
    },
  };
}

const OVERTIME = [
  { words: ['time', 'and', 'a', 'half'], value: '3/2', say: '1 1/2' },
  { words: ['time', 'and', 'a', 'quarter'], value: '5/4', say: '1 1/4' },
] as const;

const VERBS: ReadonlyMap<string, (r: Reader) => Formula> = new Map([
  ['add', readAdd],
  ...['take', 'deduct', 'subtract', 'remove', 'knock'].map((word) => [word, readTake] as const),
  ...['increase', 'raise', 'bump'].map((word) => [word, (r: Reader) => readBy(r, 'plus')] as const),
  ...['decrease', 'reduce', 'lower', 'discount', 'drop'].map(
    (word) => [word, (r: Reader) => readBy(r, 'minus')] as const,
  ),
  ['split', (r: Reader) => readBy(r, 'over')],
  ['share', (r: Reader) => readBy(r, 'over')],
  ['whichever', readWhichever],
  ['multiply', (r: Reader) => readBy(r, 'times')],
  ['divide', (r: Reader) => readBy(r, 'over')],
  ['halve', (r: Reader) => readTimesAlone(r, '1/2', 'half')],
  ['triple', (r: Reader) => readTimesAlone(r, '3', '3')],
]);

/** `add A to B`, `add A and B`, `add A, B and C`. */
function readAdd(r: Reader): Formula {
  const from = r.token.from;
  const up = r.nameAt(1) === null && (r.seesAt(1, 'up') || r.seesAt(1, 'together')) ? 1 : 0;
  const opSpot = r.take(1 + up, 'operator');
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
    r.maybe('and');
    items.push(expectSlot(r));
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
  const by = maybeBy(r, op);
  if (!by && !(op === 'minus' && seesAmount(r))) {
    return refuseHalf(r, from, verb, 'by ?', `${verb} $60 by 4`);
  }
  const right = expectSlot(r);
  if (r.problem) return right;
  if (op === 'over') r.maybe('ways');
  const spot = r.since(from);
  return ended(r, { kind: 'binary', op, opSpot, left, right, spot }, right);
}

/** The word between the two: `by`, `between`, `into`; `split $60 4 ways` has none. */
function maybeBy(r: Reader, op: Arithmetic): boolean {
  if (r.sees('equally') || r.sees('evenly')) r.take(1, 'unread');
  if (r.maybe('by')) return true;
  if (op === 'times') return r.maybe('times');
  if (op !== 'over') return false;
  return r.maybe('into') || r.maybe('between') || r.maybe('among') || r.seesAt(1, 'ways');
}

/** `whichever is greater of A and B`, `whichever is the less, A or B`. */
function readWhichever(r: Reader): Formula {
  const is = r.seesAt(1, 'is') ? 1 : 0;
  const article = ARTICLES.has(r.peek(1 + is).text) ? 1 : 0;
  const which = WHICH.get(r.peek(1 + is + article).text);
  if (which) return expectList(r, which, 2 + is + article);
  const spot = r.take(1, 'phrase');
  return r.fail({
    code: 'phrase-slot',
    spots: [spot],
    phrase: 'whichever is',
    wanted: '"greater" or "less"',
    like: 'whichever is greater of $85 and $120',
    fixes: [],
  });
}

/** `percent change from A to B`, `percentage increase from A to B`: by what share of the first. */
function changeAt(r: Reader, skip: number): Phrase | null {
  const percent = /^percent(age)?$/.test(r.peek(skip).text);
  const change = r.peek(skip + 1).text;
  if (!percent || !CHANGES.has(change) || !r.seesAt(skip + 2, 'from')) return null;
  return { opening: skip + 3, read: (at) => readChange(at, skip + 3, change) };
}

const CHANGES: ReadonlySet<string> = new Set('change increase rise decrease drop fall'.split(' '));

function readChange(r: Reader, opening: number, change: string): Formula {
  const from = r.token.from;
  const opSpot = r.take(opening, 'phrase');
  const whole = expectSlot(r);
  if (r.problem || !r.maybe('to')) {
    const like = 'percent change from $60 to $75';
    return r.problem ? whole : refuseHalf(r, from, `percent ${change} from`, 'to ?', like);
  }
  const other = expectSlot(r);
  const spot = r.since(from);
  const falls = /^(decrease|drop|fall)$/.test(change);
  const [left, right] = falls ? [whole, other] : [other, whole];
  const of: Formula = { kind: 'binary', op: 'minus', opSpot, left, right, spot };
  return { kind: 'what-share', of, whole, spot };
}

/** `difference between A and B`, `ratio of A to B`, `product of A and B`: words that open with what is asked. */
function pairAt(r: Reader, skip: number): Phrase | null {
  const word = r.peek(skip).text;
  const joined = r.seesAt(skip + 1, 'of') || r.seesAt(skip + 1, 'between');
  if (joined && (word === 'difference' || word === 'ratio' || word === 'product')) {
    return { opening: skip + 2, read: (at) => readPair(at, word, skip + 2) };
  }
  // What `how much` asked: `how much more is A than B`.
  const more = MORE_THAN.has(word) || word === 'less';
  if (!more || !r.seesAt(skip + 1, 'is') || skip > 0) return null;
  return { opening: 2, read: readHowMuchMore };
}

function readPair(r: Reader, word: string, opening: number): Formula {
  const from = r.token.from;
  const opSpot = r.take(opening, 'phrase');
  const left = expectSlot(r);
  const joined = r.maybe('and') || r.maybe('to') || (word === 'ratio' && r.maybe(':'));
  if (r.problem || !joined) {
    return r.problem ? left : refuseHalf(r, from, `${word} of`, 'and ?', `${word} of $60 and $42`);
  }
  const right = expectSlot(r);
  const spot = r.since(from);
  if (word !== 'difference') {
    const op = word === 'ratio' ? 'over' : 'times';
    return { kind: 'binary', op, opSpot, left, right, spot };
  }
  // Whichever comes first, what lies between them is no less than nothing.
  const items = [left, right];
  const greater: Formula = { kind: 'pick', which: 'greater', items, spot };
  const less: Formula = { kind: 'pick', which: 'less', items, spot };
  return { kind: 'binary', op: 'minus', opSpot, left: greater, right: less, spot };
}

const MORE_THAN: ReadonlySet<string> = new Set(
  'more bigger larger longer wider deeper taller higher dearer'.split(' '),
);

/** `more is A than B`, after `how much`. */
function readHowMuchMore(r: Reader): Formula {
  const from = r.token.from;
  const less = r.sees('less');
  const opSpot = r.take(2, 'phrase');
  const first = expectSlot(r);
  if (r.problem || !r.maybe('than')) {
    return r.problem
      ? first
      : refuseHalf(r, from, 'how much more is', 'than ?', 'how much more is $60 than $42');
  }
  const second = expectSlot(r);
  const [left, right] = less ? [second, first] : [first, second];
  return { kind: 'binary', op: 'minus', opSpot, left, right, spot: r.since(from) };
}

/** `deposit of 30% of materials`, `margin of 20% on labour`: what the share is called, said first. */
function saysShareOf(r: Reader, skip: number): boolean {
  const word = r.peek(skip).text;
  if (!(SHARE_LABELS.has(word) || word === 'margin') || !r.seesAt(skip + 1, 'of')) return false;
  if (r.peek(skip + 2).kind !== 'number') return false;
  for (let i = skip + 3; i < skip + 6; i++)
    if (r.seesAt(i, '%') || r.seesAt(i, 'percent')) return true;
  return false;
}

function readShareOf(r: Reader, opening: number): Formula {
  const isMargin = r.peek(opening - 2).text === 'margin';
  const { from } = r.token;
  r.take(opening, 'unread');
  const share = writtenAmount(r);
  if (r.problem || share.kind !== 'amount') return share;
  if (!r.sees('of') && !r.sees('on')) return share;
  return isMargin ? refuseMarginOn(r, share, from) : partOf(r, share);
}

/** `20% margin on labour`: the price that leaves it, or that share of it? */
export function refuseMarginOn(r: Reader, share: Amount, from: number): Formula {
  if (r.sees('margin')) r.take(1, 'phrase');
  // A margin is a share of the price; of the cost it would be a markup.
  const percent = r.slice(share.spot);
  const spot = { from, to: r.token.to };
  const rest = r.slice({ from: r.token.to, to: r.endOfBracket() }).trim();
  const whole = { from, to: r.endOfBracket() };
  return r.fail({
    code: 'margin-or-markup',
    spots: [spot],
    percent,
    fixes: [
      r.fix('The price for that margin', whole, `(${rest}) for a ${percent} margin`),
      r.fix('That share of it', whole, `${percent} of (${rest})`),
    ],
  });
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

function refuseHalf(r: Reader, from: number, phrase: string, open: string, like: string): Formula {
  return r.fail({
    code: 'phrase-slot',
    spots: [r.since(from)],
    phrase,
    wanted: `"${open.replace(' ?', '')}" and an amount`,
    like,
    fixes:
      r.token.kind === 'end' ? [r.fix('Leave it open for now', r.afterLast(), ` ${open}`)] : [],
  });
}
