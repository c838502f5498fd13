// Level 6: the phrases. Each begins with fixed words; a phrase wins over a name only if those are more.
import { expectAmount, likeWritten, seesAmount, writtenAmount } from './amounts.ts';
import type { Form } from '../quantity/form.ts';
import { unitByKey } from '../quantity/units.ts';
import { skipStuffAfter, sortBefore } from './asides.ts';
import { ARTICLES } from './lexer.ts';
import { howManyAt } from './how-many.ts';
import { expectList } from './lists.ts';
import { isNumberWord } from './numbers.ts';
import { LEAVE_OPEN } from './problems.ts';
import { labelAt, skipThing, takeLabel } from './outlines.ts';
import type { Reader } from './reader.ts';
import { costKindAt, readRecap } from './recaps.ts';
import { readSpaced, spacedOpening } from './spaced.ts';
import { spokenAt } from './spoken.ts';
import type { Formula } from './tree.ts';
import { sizePhraseAt } from './size-phrases.ts';
import { sizeStandsAt } from './sizes.ts';
import { tablePhraseAt } from './table-phrases.ts';
import { expectSlot, expectValue, slotEnd } from './values.ts';
import { byFirstWord } from './words.ts';

export interface Phrase {
  /** How many words it opens with. */
  readonly opening: number;
  read(r: Reader): Formula;
}

/** The phrase that begins here, if any. */
export function phraseAt(r: Reader): Phrase | null {
  if (r.token.kind !== 'word' || r.token.text === 'in') return null;
  const skip = ARTICLES.has(r.token.text) ? 1 : 0;
  const wanted = countsOfNoTable(r, skip) ? howManyAt(r, skip) : null;
  if (wanted) return wanted;
  const ofTable = tablePhraseAt(r, skip);
  if (ofTable) return ofTable;
  const ofSize = sizePhraseAt(r, skip);
  if (ofSize) return ofSize;
  const kind = costKindAt(r, skip + 2);
  if (r.seesAt(skip, 'total', 'of') && kind) {
    return { opening: skip + 2 + kind.length, read: readRecap };
  }
  if (r.seesAt(skip, 'total', 'cost', 'of') && !costsAnAmount(r, skip + 3)) {
    return { opening: skip + 3, read: readRecap };
  }
  for (const { words, read } of OPENINGS_BY_WORD.get(r.peek(skip).text) ?? []) {
    if (r.seesAll(skip, words)) return { opening: skip + words.length, read };
  }
  if (r.seesAt(skip, 'fewest')) {
    const noun = r.vocabulary.nounAt(r.tokens, r.at + skip + 1);
    return noun ? { opening: skip + 2 + noun.length, read: readFewest } : null;
  }
  const spaced = spacedOpening(r, skip);
  if (spaced > 0) return { opening: spaced, read: () => readSpaced(r, spaced) };
  return spokenAt(r, skip);
}

/** `how many bags for …`: no table is called so. */
function countsOfNoTable(r: Reader, skip: number): boolean {
  if (!r.seesAt(skip, 'how', 'many')) return false;
  const article = ARTICLES.has(r.peek(skip + 2).text) ? 1 : 0;
  if (r.vocabulary.tableAt(r.tokens, r.at + skip + 2 + article, r.part, r.self)) return false;
  for (let i = skip + 3; i < skip + 10; i++) {
    const { kind, text } = r.peek(i);
    if (kind === 'end') return false;
    if (ASKS_OF.has(text)) return true;
  }
  return false;
}

const ASKS_OF: ReadonlySet<string> = new Set(
  'for in is are to do does will of every at apart needed required need fit from go'.split(' '),
);

/** `total cost of 3 bags at $4 each` is no recap of a part. */
function costsAnAmount(r: Reader, ahead: number): boolean {
  if (r.vocabulary.partAt(r.tokens, r.at + ahead)) return false;
  return (
    r.peek(ahead).kind === 'number' || r.seesAt(ahead, '(') || isNumberWord(r.peek(ahead).text)
  );
}

interface Opening {
  readonly words: readonly string[];
  readonly read: (r: Reader) => Formula;
}

/** Every phrase with fixed opening words. */
export const OPENINGS: readonly Opening[] = [
  { words: ['total', 'of'], read: (r) => expectList(r, 'total') },
  { words: ['sum', 'of'], read: (r) => expectList(r, 'total') },
  { words: ['average', 'of'], read: (r) => expectList(r, 'average') },
  { words: ['greatest', 'of'], read: (r) => expectList(r, 'greater') },
  { words: ['largest', 'of'], read: (r) => expectList(r, 'greater') },
  { words: ['smallest', 'of'], read: (r) => expectList(r, 'less') },
  { words: ['least', 'of'], read: (r) => expectList(r, 'less') },
  ...['greater', 'larger', 'bigger', 'higher', 'highest', 'max', 'maximum'].map((word) => ({
    words: [word, 'of'],
    read: (r: Reader) => expectList(r, 'greater'),
  })),
  ...['lesser', 'smaller', 'lower', 'lowest', 'cheaper', 'min', 'minimum'].map((word) => ({
    words: [word, 'of'],
    read: (r: Reader) => expectList(r, 'less'),
  })),
  { words: ['what', 'share'], read: (r) => readWhatShare(r) },
  ...[
    ['what', 'percent'],
    ['what', 'percentage'],
    ['percent', 'that'],
    ['percentage', 'that'],
    ['per', 'cent', 'that'],
  ].map((words) => ({ words, read: (r: Reader) => readWhatShare(r, words.length) })),
  { words: ['square', 'root', 'of'], read: readSquareRoot },
  { words: ['diagonal', 'of'], read: (r) => readDiagonal(r, 2) },
  ...['of', 'across'].map((word) => ({
    words: ['corner', 'to', 'corner', word],
    read: (r: Reader) => readDiagonal(r, 4),
  })),
  { words: ['circle', 'area', 'for'], read: (r) => readCircle(r, 'area') },
  { words: ['circumference', 'for'], read: (r) => readCircle(r, 'circumference') },
  { words: ['triangle', 'area', 'for', 'sides'], read: readTriangle },
  { words: ['even', 'gap', 'for'], read: readEvenGap },
  ...Object.entries({ half: '1/2', third: '1/3', quarter: '1/4' }).map(([word, value]) => ({
    words: [word, 'of'],
    read: (r: Reader) => readFraction(r, value, word),
  })),
  { words: ['two', 'thirds', 'of'], read: (r) => readFraction(r, '2/3', 'two thirds') },
  { words: ['three', 'quarters', 'of'], read: (r) => readFraction(r, '3/4', 'three quarters') },
  { words: ['half', 'the'], read: (r) => readFraction(r, '1/2', 'half') },
  { words: ['twice'], read: (r) => readTimes(r, '2') },
  { words: ['double'], read: (r) => readTimes(r, '2') },
  { words: ['same', 'as'], read: readSame },
  { words: ['pi'], read: (r) => ({ kind: 'pi', spot: r.take(1, 'amount') }) },
];

const OPENINGS_BY_WORD = byFirstWord(OPENINGS);

/** `of` or `on` after a share, a fraction or a percent. */
export function partOf(r: Reader, share: Formula): Formula {
  r.take(1, 'operator');
  const of = alsoOf(r, share, expectValue(r));
  return { kind: 'part-of', share, of, spot: r.since(share.spot.from) };
}

/** `15% of materials and labour`: of both together. Where a comparison follows, `and` joins that. */
function alsoOf(r: Reader, share: Formula, first: Formula): Formula {
  const isOne = first.kind === 'name' || first.kind === 'amount';
  if (r.problem || !r.sees('and') || !isOne || !r.holdsShare(share) || first.kind === 'amount') {
    return first;
  }
  const items: Formula[] = [first];
  let end = slotEnd(r, 1);
  if (end < 0 || r.nameAt(1) === null || GOES_ON_AND.has(r.peek(end).text)) return first;
  while (r.sees('and') && end > 0 && r.nameAt(1) !== null && !GOES_ON_AND.has(r.peek(end).text)) {
    r.take(1, 'operator');
    items.push(expectSlot(r));
    end = slotEnd(r, 1);
  }
  const spot = r.since(first.spot.from);
  if (r.sees('together') || r.sees('combined')) r.take(1, 'unread');
  return { kind: 'list', what: 'total', items, spot };
}

/** After the second thing these would compare it, or work on it alone. */
const GOES_ON_AND: ReadonlySet<string> = new Set(
  'is are = > < ≥ ≤ ≠ equals plus minus times by at over divided x × ÷ / + - less with under'.split(
    ' ',
  ),
);

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

/** `half of X`, `a third of X`: a fraction in words. */
function readFraction(r: Reader, value: string, words: string): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(words.split(' ').length, 'amount');
  const share = r.number(value, words === 'half' ? words : value, r.since(from));
  if (r.sees('of')) return partOf(r, share);
  const of = expectValue(r);
  return { kind: 'part-of', share, of, spot: r.since(from) };
}

/** `twice X`. */
function readTimes(r: Reader, value: string): Formula {
  const from = r.token.from;
  const opSpot = r.take(1, 'operator');
  r.maybe('of');
  const left = r.number(value, value, opSpot);
  const right = expectValue(r);
  return { kind: 'binary', op: 'times', opSpot, left, right, spot: r.since(from) };
}

/** `same as X` is X. */
function readSame(r: Reader): Formula {
  r.skipArticle();
  r.take(2, 'phrase');
  return expectValue(r);
}

function readWhatShare(r: Reader, opening = 2): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(opening, 'phrase');
  if (r.sees('that')) r.take(1, 'phrase');
  if (r.sees('is') || r.sees('of')) return readShareAsked(r, from);
  const of = expectSlot(r);
  if (!r.maybe('is', 'of')) {
    return slotProblem(
      r,
      from,
      'what share',
      '"is of" and the whole',
      'what share $42 is of $60',
      'is of ?',
    );
  }
  const whole = expectSlot(r);
  return { kind: 'what-share', of, whole, spot: r.since(from) };
}

/** `what percent is A of B`, `what percentage of B is A`. */
function readShareAsked(r: Reader, from: number): Formula {
  const wholeFirst = r.sees('of');
  r.take(1, 'phrase');
  const first = expectSlot(r);
  const joined = wholeFirst ? r.maybe('is') : r.maybe('of');
  if (r.problem || !joined) {
    if (r.problem) return first;
    const open = wholeFirst ? 'is ?' : 'of ?';
    return slotProblem(
      r,
      from,
      'what percent',
      '"of" and the whole',
      'what share $42 is of $60',
      open,
    );
  }
  const second = expectSlot(r);
  const [of, whole] = wholeFirst ? [second, first] : [first, second];
  return { kind: 'what-share', of, whole, spot: r.since(from) };
}

function readSquareRoot(r: Reader): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(3, 'phrase');
  const of = expectValue(r);
  const spot = r.since(from);
  return askRootOfSum(r, of, spot) ?? { kind: 'square-root', of, spot };
}

/** `square root of 3 squared plus 4 squared`: of both together, or of the first alone? */
function askRootOfSum(r: Reader, of: Formula, spot: { from: number; to: number }): Formula | null {
  const joins = r.sees('plus') || r.sees('+') || r.sees('minus') || r.sees('-') || r.sees('less');
  if (r.problem || !joins || of.kind !== 'power' || of.power !== 2) return null;
  const end = slotEnd(r, 1);
  if (end < 0 || !(r.seesAt(end, 'squared') || r.seesAt(end, '²'))) return null;
  if (/^[([]/.test(r.slice(of.spot))) return null;
  const all = { from: of.spot.from, to: r.peek(end).to };
  return r.fail({
    code: 'two-readings',
    spots: [all],
    about: 'The square root could be of both together, or of the first alone. Brackets say which.',
    fixes: [
      r.fix('Of both together', all, `(${r.slice(all)})`),
      r.fix('Of the first alone', spot, `(${r.slice(spot)})`),
    ],
  });
}

/** `diagonal of A and B`, `corner to corner of a A by B patio`. */
function readDiagonal(r: Reader, opening: number): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(opening, 'phrase');
  // A cell may be called A.
  if (!r.nameAt(0)) r.skipArticle();
  const a = side(r, 'first');
  takeLabel(r);
  if (r.problem) return a;
  if (!(r.maybe('and') || r.maybe('by') || r.maybe('x') || r.maybe('×'))) {
    return slotProblem(
      r,
      from,
      'diagonal of',
      'two sides',
      'diagonal of 3 ft and 4 ft',
      'and ? ft',
    );
  }
  const b = side(r, 'second');
  takeLabel(r);
  const spot = r.since(from);
  skipThing(r);
  skipStuffAfter(r);
  return { kind: 'diagonal', a, b, spot };
}

/** `diagonal of 2x8` names two sides; where the other side is still told, `2x8` is the size, which then asks what is meant. */
function side(r: Reader, which: 'first' | 'second'): Formula {
  const size = sizeStandsAt(r, 0);
  const after = size ? r.peek(size.length).text : '';
  if (size?.known && (which === 'second' || after === 'and' || after === 'by'))
    return expectSlot(r);
  return seesAmount(r) ? writtenAmount(r) : expectSlot(r);
}

function readCircle(r: Reader, what: 'area' | 'circumference'): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(what === 'area' ? 3 : 2, 'phrase');
  r.skipArticle();
  const size = expectSlot(r);
  const named = size.kind === 'name' ? /\b(diameter|radius)$/.exec(size.say)?.[1] : undefined;
  const across = r.sees('diameter') || r.sees('radius') ? r.token.text : named;
  if (r.sees('diameter') || r.sees('radius')) r.take(1, 'phrase');
  if (across !== 'diameter' && across !== 'radius') {
    const phrase = what === 'area' ? 'circle area for' : 'circumference for';
    return slotProblem(r, from, phrase, '"diameter" or "radius"', `${phrase} 12 in diameter`, [
      ['Across it', 'diameter'],
      ['From its middle', 'radius'],
    ]);
  }
  return { kind: 'circle', what, across, size, spot: r.since(from) };
}

function readTriangle(r: Reader): Formula {
  const from = r.token.from;
  r.take(4, 'phrase');
  const a = expectSlot(r);
  r.maybe(',');
  const b = expectSlot(r);
  r.maybe(',');
  const joined = r.maybe('and');
  const c = joined ? expectSlot(r) : null;
  if (!c) {
    return slotProblem(
      r,
      from,
      'triangle area for sides',
      'three sides',
      'triangle area for sides 3 ft, 4 ft and 5 ft',
      'and ? ft',
    );
  }
  return { kind: 'triangle', sides: [a, b, c], spot: r.since(from) };
}

function readFewest(r: Reader): Formula {
  const from = r.token.from;
  const like = 'fewest balusters of 1 1/2 in across 72 in with gaps under 4 in';
  r.skipArticle();
  r.take(1, 'phrase');
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  r.take(noun?.length ?? 0, 'phrase');
  if (!r.maybe('of'))
    return slotProblem(
      r,
      from,
      'fewest',
      'the width of one',
      like,
      'of ? in across ? ft with gaps under 4 in',
    );
  const width = expectSlot(r);
  if (!r.maybe('across'))
    return slotProblem(
      r,
      from,
      'fewest',
      '"across" and a length',
      like,
      'across ? ft with gaps under 4 in',
    );
  const across = expectSlot(r);
  if (!r.maybe('with', 'gaps'))
    return slotProblem(r, from, 'fewest', '"with gaps under"', like, 'with gaps under ? in');
  r.maybe('of');
  const under = r.maybe('under') || r.maybe('less', 'than');
  if (!under && !r.maybe('at', 'most') && !r.maybe('no', 'more', 'than')) {
    return slotProblem(
      r,
      from,
      'with gaps',
      '"under" or "at most" and a length',
      like,
      'under ? in',
    );
  }
  const gap = expectSlot(r);
  const gapRelation = under ? 'under' : 'at-most';
  const spot = r.since(from);
  return { kind: 'fewest', noun: noun?.noun ?? 'piece', width, across, gap, gapRelation, spot };
}

function readEvenGap(r: Reader): Formula {
  const from = r.token.from;
  const like = 'even gap for 13 balusters of 1 1/2 in across 72 in';
  r.skipArticle();
  r.take(3, 'phrase');
  const count = seesAmount(r) ? expectAmount(r) : expectSlot(r);
  if (!r.maybe('of'))
    return slotProblem(r, from, 'even gap for', 'the width of one', like, 'of ? in across ? ft');
  const width = expectSlot(r);
  if (!r.maybe('across'))
    return slotProblem(r, from, 'even gap for', '"across" and a length', like, 'across ? ft');
  const across = expectSlot(r);
  return { kind: 'even-gap', count, width, across, spot: r.since(from) };
}

export function slotProblem(
  r: Reader,
  from: number,
  phrase: string,
  wanted: string,
  like: string,
  /** What would stand at the end: with its amount still to come, or one of these, each with what it says. */
  open: string | readonly (readonly [string, string])[],
): Formula {
  const ways = typeof open === 'string' ? [[LEAVE_OPEN, open] as const] : open;
  const isEnd = r.token.kind === 'end';
  const fixes = isEnd ? ways.map(([say, words]) => r.fix(say, r.afterLast(), ` ${words}`)) : [];
  return r.fail({ code: 'phrase-slot', spots: [r.since(from)], phrase, wanted, like, fixes });
}
