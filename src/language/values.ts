// Levels 6 and 7: amounts, names, brackets, and the phrases that stand where a value is needed.
import { DEEPEST, type Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { maybeSized, sizedOf } from './sized.ts';
import { skipOfStuff } from './asides.ts';
import { expectAmount, seesAmount, writtenAmount } from './amounts.ts';
import { expectName } from './names.ts';
import { barsSpaced, readSpaced, spacedOpening } from './spaced.ts';
import { afterAmount } from './after-amount.ts';
import { refuseCall } from './calls.ts';
import { phraseAt } from './phrases.ts';
import { leftOver, missing } from './left-over.ts';
import { ONE } from '../quantity/measure.ts';
import { termAfter, withTails } from './rates.ts';
import { manyOfName } from './many-of-name.ts';
import { oneOf } from './rounding.ts';
import { timesAfter } from './times-after.ts';
import { sizeStandsAt, takeSize } from './sizes.ts';
import { partOf } from './part-of.ts';
import { piecesOf } from './stock.ts';

/** value = sign value | prime { 'squared' | 'cubed' } */
export function expectValue(r: Reader): Formula {
  if (r.depth >= DEEPEST) {
    return r.fail({ code: 'too-deep', spots: [r.token], most: DEEPEST });
  }
  r.depth++;
  r.steps++;
  const value = signed(r);
  r.depth--;
  return value;
}

function signed(r: Reader): Formula {
  const from = r.token.from;
  if (r.sees('-')) {
    r.take(1, 'operator');
    const of = expectValue(r);
    return { kind: 'negative', of, spot: r.since(from) };
  }
  let value = prime(r);
  for (;;) {
    const power =
      r.sees('squared') || r.sees('²') || seesSq(r) ? 2 : r.sees('cubed') || r.sees('³') ? 3 : null;
    if (!power) return (r.problem ? null : timesAfter(r, value)) ?? value;
    r.take(1, 'operator');
    value = { kind: 'power', of: value, power, spot: r.since(from) };
  }
}

/** `16' sq + 14' sq`: squared, where no unit goes on. */
function seesSq(r: Reader): boolean {
  if (!r.sees('sq') || r.vocabulary.unitAt(r.tokens, r.at) !== null) return false;
  const { kind, text } = r.peek(1);
  return kind === 'end' || /^[-+,.)?]$/.test(text) || text === 'plus';
}

function prime(r: Reader): Formula {
  if (r.sees('(') || r.sees('[')) {
    const bracket = expectBracket(r);
    if (r.problem) return bracket;
    const pieces = sizedOf(r, bracket) ?? maybePieces(r, bracket);
    const inUnit = pieces ? null : unitAfterBracket(r, bracket);
    if (!pieces) skipOfStuff(r, 'measure');
    return pieces ?? inUnit ?? bracket;
  }
  if (r.sees('a') || r.sees('an') || r.sees('the')) {
    // `a 20% margin`, `a quarter inch`, `the 12 ft`
    r.at++;
    if (!seesAmount(r)) r.at--;
  }
  // A name that begins with a number is no amount: `2x8 joists`, `1st step`.
  if (r.token.kind === 'number' && r.nameAt(0)) return afterName(r, expectName(r));
  if (r.sees('rebar') && !r.nameAt(0)) {
    const { from } = r.token;
    r.take(1, 'phrase');
    const bars = barsSpaced(r, from);
    if (bars) return bars;
    r.at--;
    r.marks.pop();
  }
  if (r.sees('one') || r.token.text === '1') {
    const opening = spacedOpening(r, 0);
    if (opening > 0) return readSpaced(r, opening);
  }
  const sized = maybeSized(r);
  if (sized) return sized;
  const many = manyOfName(r);
  if (many) return many;
  if (seesAmount(r)) {
    r.joinsInches = r.separating === 0;
    const amount = expectAmount(r);
    r.joinsInches = false;
    return afterAmount(r, amount);
  }
  if (r.token.kind === 'quoted') {
    const text = r.token.text;
    return { kind: 'words', text, spot: r.take(1, 'amount') };
  }
  const one = maybeOne(r);
  if (one) return afterAmount(r, one);
  const call = refuseCall(r);
  if (call) return call;
  const name = r.nameAt(0);
  const phrase = phraseAt(r);
  const own = name?.length ?? 0;
  // `joists 16 oc on 16 ft` beside a cell Joists: a name and a number side by side say nothing.
  const setOut = own > 0 && phrase?.opening === own && spacedOpening(r, 0) === own;
  if (phrase && (phrase.opening > own || (setOut && r.peek(own).kind === 'number')))
    return phrase.read(r);
  if (name) return afterName(r, expectName(r));
  if (r.sees('yes') || r.sees('no')) {
    const value = r.sees('yes');
    return { kind: 'yes-no', value, spot: r.take(1, 'amount') };
  }
  return missing(r);
}

/** `(3600 + 1200) mm`, `(6 + 2) posts`: plain numbers in brackets, in that unit. Null where something else stands there. */
function unitAfterBracket(r: Reader, bracket: Formula): Formula | null {
  const term = r.nameAt(0) === null ? termAfter(r, 0) : null;
  if (!term || r.token.kind !== 'word' || term.term.count !== null || !isBare(bracket)) return null;
  // `(3 + 4) in cubic feet`
  if (r.sees('in') && !(r.peek(1).kind === 'end' || /^[,)]$/.test(r.peek(1).text))) return null;
  if (r.seesAt(term.length, 'every') || r.seesAt(term.length, 'of')) return null;
  const opSpot = { from: bracket.spot.to, to: r.token.from };
  const right = oneOf(r);
  return {
    kind: 'binary',
    op: 'times',
    opSpot,
    left: bracket,
    right,
    spot: r.since(bracket.spot.from),
  };
}

/** Is it made of written plain numbers alone? */
function isBare(tree: Formula): boolean {
  if (tree.kind === 'amount') return tree.bare;
  if (tree.kind === 'bracket' || tree.kind === 'negative') return isBare(tree.of);
  return tree.kind === 'binary' && isBare(tree.left) && isBare(tree.right);
}

/** `a pair of hinges`, `an hour at labour rate`: one of it. Names and phrases that begin so win. */
function maybeOne(r: Reader): Formula | null {
  if (!(r.sees('a') || r.sees('an')) || r.nameAt(0)) return null;
  const term = termAfter(r, 1);
  if (!term || term.term.count !== null || phraseAt(r)) return null;
  const { from } = r.token;
  const start = r.at;
  r.at += term.length;
  const one = { value: ONE, say: '1', whole: true };
  return withTails(r, one, [term.term], null, from, start);
}

/** One amount, one name or one bracket: what a phrase or clause takes. */
export function expectSlot(r: Reader): Formula {
  if (r.token.kind === 'number' && r.nameAt(0)) return expectName(r);
  const size = sizeStandsAt(r, 0);
  if (size) return takeSize(r, size);
  if (seesAmount(r)) return expectAmount(r);
  if (r.sees('(') || r.sees('[')) return expectBracket(r);
  if (r.nameAt(0)) return expectName(r);
  if (r.sees('-') && !r.peek(1).gap) return expectValue(r);
  r.skipArticle();
  if (seesAmount(r)) return expectAmount(r);
  if (r.sees('pi')) return expectValue(r);
  return missing(r);
}

/**
 * How many tokens ahead the slot ends that begins so many ahead; -1 where none does. Brackets are
 * skipped, not read, so that looking ahead never costs more than the text is long.
 */
export function slotEnd(r: Reader, ahead: number): number {
  const token = r.peek(ahead);
  if (token.text === '(' || token.text === '[') {
    const close = r.closing.get(r.at + ahead);
    return close === undefined ? -1 : close + 1 - r.at;
  }
  const { at, brackets } = r;
  const marks = r.marks.length;
  r.at += ahead;
  let end = -1;
  if (seesAmount(r)) {
    writtenAmount(r);
    if (!r.problem) end = r.at - at;
  } else {
    const name = r.nameAt(0);
    if (name) end = ahead + name.length;
  }
  r.goBack(at, marks, brackets);
  return end;
}

export function seesSlot(r: Reader): boolean {
  if (seesAmount(r) || r.sees('(') || r.sees('[') || r.nameAt(0) !== null) return true;
  return sizeStandsAt(r, 0) !== null;
}

function afterName(r: Reader, name: Formula): Formula {
  if (name.kind !== 'name') return name;
  const pieces = sizedOf(r, name) ?? maybePieces(r, name);
  if (pieces) return pieces;
  if ((r.sees('of') || r.sees('on')) && !r.sees('on', 'top')) {
    if (r.holdsShare(name)) return partOf(r, name);
    const { at } = r;
    skipOfStuff(r, 'measure');
    if (r.at === at && !r.surroundings) return partOf(r, name);
  }
  return name;
}

function maybePieces(r: Reader, count: Formula): Formula | null {
  const follows = r.sees('pieces', 'of') || r.sees('piece', 'of') || r.sees('of');
  return follows ? piecesOf(r, count) : null;
}

function expectBracket(r: Reader): Formula {
  const open = r.token;
  r.at++;
  r.brackets++;
  const { conditions, beside } = r;
  r.conditions = 0;
  r.beside = 0;
  const inner = r.readFormula(r);
  r.conditions = conditions;
  r.beside = beside;
  if (r.problem) return inner;
  if (!r.sees(')') && !r.sees(']')) {
    const atEnd = r.token.kind === 'end';
    if (!atEnd) return leftOver(r);
    return r.fail({
      code: 'unclosed-bracket',
      spots: [{ from: open.from, to: open.to }],
      fixes: [{ say: 'Close it at the end', formula: r.text.trimEnd() + ')' }],
    });
  }
  r.at++;
  r.brackets--;
  // The brackets belong to the spot, so that a fix can move the whole.
  return closedWhole({ ...inner, spot: r.since(open.from) });
}

/**
 * `(1 − 10%) plus 20%`: shares taken from a bare 1 end where it is closed, so that closing stays in the tree.
 * Any other brackets are told by the tree's shape.
 */
export function closedWhole(tree: Formula): Formula {
  let left = tree;
  while (left.kind === 'binary' && (left.op === 'plus' || left.op === 'minus')) left = left.left;
  const isWhole = left !== tree && left.kind === 'amount' && /^(1|100%)$/.test(left.say);
  return isWhole ? { kind: 'bracket', of: tree, spot: tree.spot } : tree;
}
