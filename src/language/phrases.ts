// Level 6: the phrases. Each begins with fixed words; a phrase wins over a name only if those are more.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { ARTICLES } from './lexer.ts';
import { howManyAt } from './how-many.ts';
import { tablePhraseAt } from './table-phrases.ts';
import { sizePhraseAt } from './size-phrases.ts';
import { costKindAt, readRecap } from './recaps.ts';
import { readEvenGap, readFewest } from './gaps.ts';
import { readSpaced, spacedOpening } from './spaced.ts';
import { spokenAt } from './spoken.ts';
import { isNumberWord } from './numbers.ts';
import { expectList } from './lists.ts';
import { readFraction, readSame, readTimes, readWhatShare } from './part-of.ts';
import { readCircle, readDiagonal, readSquareRoot, readTriangle } from './geometry.ts';
import { byFirstWord } from './words.ts';
import { LEAVE_OPEN } from './problems.ts';

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
  { words: ['sum', 'up'], read: (r) => expectList(r, 'total') },
  { words: ['total', 'up'], read: (r) => expectList(r, 'total') },
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
  { words: ['square', 'root', 'of'], read: (r) => readSquareRoot(r, 3) },
  { words: ['sq', 'rt', 'of'], read: (r) => readSquareRoot(r, 3) },
  { words: ['sqrt', 'of'], read: (r) => readSquareRoot(r, 2) },
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
