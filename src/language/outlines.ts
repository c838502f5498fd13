// Shapes as they are said: `perimeter of 6 m by 4.5 m`, `area of slab length by slab width`, `volume of 6 holes`.
// Each comes to a tree that a tidy sentence says too.
import type { Reader } from './reader.ts';
import { type Phrase, slotProblem } from './phrases.ts';
import { isRoundShape, readRound, roundSoon } from './round-shapes.ts';
import { FALLS, readFall } from './falls.ts';
import { ARTICLES } from './lexer.ts';
import { seesAmount, writtenAmount } from './amounts.ts';
import type { Formula } from './tree.ts';
import { expectSlot, expectValue, seesSlot, slotEnd } from './values.ts';
import { askForSides } from './asked-sides.ts';
import { skipThing, takeLabel } from './length-labels.ts';

export function outlineAt(r: Reader, skip: number): Phrase | null {
  if (r.seesAt(skip, 'total', 'cost', 'of')) return outlineAt(r, skip + 1);
  if (isRoundShape(r, skip)) return { opening: skip + 1, read: (at) => readRound(at, 'area') };
  const word = r.peek(skip).text;
  if (FALLS.has(word) && seesAmountAt(r, skip + 1)) {
    return { opening: skip + 1, read: (at) => readFall(at, skip + 1) };
  }
  if (!r.seesAt(skip + 1, 'of') && !r.seesAt(skip + 1, 'around')) return null;
  const ahead = skip + 2;
  if (word === 'perimeter' || (word === 'distance' && r.seesAt(skip + 1, 'around'))) {
    return { opening: ahead, read: readPerimeter };
  }
  if (r.seesAt(skip + 1, 'around')) return null;
  const round = roundSoon(r, ahead);
  if (word === 'circumference')
    return { opening: ahead, read: (at) => readRound(at, 'circumference') };
  if (word === 'area' && round) return { opening: ahead, read: (at) => readRound(at, 'area') };
  if (FALLS.has(word) && seesAmountAt(r, ahead)) {
    return { opening: ahead, read: (at) => readFall(at, ahead) };
  }
  if (!SAID_OF.has(word)) return null;
  const article = ARTICLES.has(r.peek(ahead).text) ? 1 : 0;
  return { opening: ahead, read: (at) => readMeasured(at, ahead, article) };
}

/** What one asks for before saying what it is of. */
const SAID_OF: ReadonlySet<string> = new Set(
  'area volume length width height depth weight size amount footprint cost price value'.split(' '),
);

function seesAmountAt(r: Reader, ahead: number): boolean {
  const article = ARTICLES.has(r.peek(ahead).text) ? 1 : 0;
  const at = r.at;
  r.at += ahead + article;
  const seen = seesAmount(r);
  r.at = at;
  return seen;
}

/** `perimeter of A by B`: twice both sides. */
function readPerimeter(r: Reader): Formula {
  const from = r.token.from;
  r.skipArticle();
  const opSpot = r.take(2, 'phrase');
  const article = r.token;
  r.skipArticle();
  if (!seesSlot(r)) return askForSides(r, from, article.from, 'perimeter');
  const a = seesAmount(r) ? writtenAmount(r) : expectSlot(r);
  takeLabel(r);
  const joined = ['by', 'x', '×', 'and'].includes(r.token.text);
  if (r.problem || !joined) {
    if (r.problem) return a;
    return slotProblem(
      r,
      from,
      'perimeter of',
      'two sides',
      'perimeter of 12 ft by 10 ft',
      'by ? ft',
    );
  }
  const plus = r.take(1, 'operator');
  const b = seesAmount(r) ? writtenAmount(r) : expectSlot(r);
  takeLabel(r);
  skipThing(r);
  const spot = r.since(from);
  const sides: Formula = {
    kind: 'binary',
    op: 'plus',
    opSpot: plus,
    left: a,
    right: b,
    spot: { from: a.spot.from, to: spot.to },
  };
  const two = r.number('2', '2', opSpot);
  return { kind: 'binary', op: 'times', opSpot, left: two, right: sides, spot };
}

/** `area of slab length by slab width`: what is asked is what it comes to. Of a thing, its measures are offered. */
function readMeasured(r: Reader, opening: number, article: number): Formula {
  const from = r.token.from;
  const word = r.tokens[r.at + opening - 2]?.text ?? '';
  const things = r.peek(opening + article).from;
  const seen = r.at + opening;
  const at = r.at;
  r.at = seen + article;
  const known = seesSlot(r) && slotEnd(r, 0) > 0;
  r.at = at;
  r.take(opening, 'unread');
  if (!known || isCountOfThings(r, article)) return askForSides(r, from, things, word);
  r.at += article;
  return expectValue(r);
}

/** `volume of 6 holes`: so many things, and nothing that says how large one is. */
function isCountOfThings(r: Reader, article: number): boolean {
  const { kind } = r.peek(article);
  if (kind !== 'number') return false;
  const noun = r.vocabulary.nounAt(r.tokens, r.at + article + 1);
  if (!noun) return false;
  const next = r.peek(article + 1 + noun.length);
  return next.kind === 'end' || ['in', ',', 'as', 'to', '?', 'plus', 'with'].includes(next.text);
}
