// What goes on with a written amount where it stands as a value: `10% off X`, `2 days of 8 hours`, `2 men 8 hours`,
// `40 sq m of turf`, `18" o.c. along 24'`. None of it is looked for in a slot.
import { isWrittenLength } from './amounts-held.ts';
import { seesAmount, writtenAmount } from './amounts.ts';
import { type Dimension, LENGTH, MONEY, TIME, hardPart, isHard } from '../quantity/dimension.ts';
import { skipOfStuff, skipStuffAfter } from './asides.ts';
import { ARTICLES } from './lexer.ts';
import { alongSlope } from './falls.ts';
import { roundFrom } from './round-shapes.ts';
import { skipThingAtEnd } from './length-labels.ts';
import { offWords } from './taken-off.ts';
import { partOf } from './part-of.ts';
import { piecesOf } from './stock.ts';
import { refuseMarginOn } from './spoken.ts';
import type { Reader } from './reader.ts';
import { roughCount, roughDimension } from './rough.ts';
import { sizeBeside, sizedOf } from './sized.ts';
import { spacedWithoutNoun } from './spaced.ts';
import type { Amount, Arithmetic, Formula } from './tree.ts';
import { expectSlot, expectValue, slotEnd } from './values.ts';

export function afterAmount(r: Reader, amount: Formula): Formula {
  if (r.problem) return amount;
  if (amount.kind !== 'amount') {
    skipOfStuff(r, 'measure');
    if (amount.kind === 'binary') {
      skipStuffAfter(r);
      skipThingAtEnd(r);
    }
    return amount;
  }
  const limit = elseLimit(r, amount);
  if (limit) return limit;
  const cut = r.sees('of') || r.sees('at') || r.sees('@') || r.token.kind === 'number';
  const taken = r.sees('of') ? sizedOf(r, amount) : null;
  const made = taken ?? (cut ? piecesOf(r, amount) : null);
  if (made) return made;
  if (amount.holds.measure.kind === 'share') return onShare(r, amount);
  if (r.sees('of')) {
    const product = refusePairs(r, amount) ?? countOfAmounts(r, amount);
    if (product) return product;
    const { at } = r;
    const holds = isMeasured(amount) || HOLDERS.has(roughCount(r, amount) ?? '');
    if (!amount.bare) skipOfStuff(r, holds ? 'measure' : 'count');
    if (r.at === at) return partOf(r, amount);
  }
  return besides(r, amount);
}

/** What holds other things: `3 boxes of nails` are boxes. */
const HOLDERS: ReadonlySet<string> = new Set(
  `box bundle pallet carton case crate pack packet roll tube can pail bucket barrel drum cartridge
   bottle jar spool reel bale skid kit set load truck truckload bag sack bin row layer coil`.split(
    /\s+/,
  ),
);

/** `4 cy min, else 0.59 cy`: the other, but no less than this. */
function elseLimit(r: Reader, amount: Amount): Formula | null {
  // The minutes of a rate are no minimum: that word is passed over, and marked so.
  const passed = r.marks.at(-1)?.kind === 'unread';
  const said = passed ? (r.tokens[r.at - 1]?.text ?? '') : '';
  const which = /^min(imum)?$/.test(said) ? 'greater' : /^max(imum)?$/.test(said) ? 'less' : null;
  const comma = r.sees(',') ? 1 : 0;
  if (!which || !(r.seesAt(comma, 'else') || r.seesAt(comma, 'otherwise'))) return null;
  r.take(comma + 1, 'phrase');
  const other = expectValue(r);
  return { kind: 'pick', which, items: [other, amount], spot: r.since(amount.spot.from) };
}

/** `10% off X`, `10% more than X`, `10% of X`, `15% profit on X`. */
function onShare(r: Reader, share: Amount): Formula {
  if (r.sees('of') || r.sees('on')) {
    if (r.sees('on', 'top', 'of')) return binaryAfter(r, share, 'plus', 3);
    return r.sees('on', 'top') ? share : partOf(r, share);
  }
  if (r.sees('margin', 'on') || r.sees('margin', 'of'))
    return refuseMarginOn(r, share, share.spot.from);
  if (r.sees('off') && offWords(r, 0) === 0)
    return binaryAfter(r, share, 'minus', r.seesAt(1, 'of') ? 2 : 1);
  if (r.sees('more', 'than')) return binaryAfter(r, share, 'plus', 2);
  if (r.sees('less', 'than')) return binaryAfter(r, share, 'minus', 2);
  if (r.sees('added', 'to')) return binaryAfter(r, share, 'plus', 2);
  const slope = r.sees('fall') || r.sees('slope') || r.sees('grade');
  return (slope ? alongSlope(r, share, share.spot.from) : null) ?? share;
}

/** X and then the amount that was said before it. */
function binaryAfter(r: Reader, right: Formula, op: Arithmetic, words: number): Formula {
  const opSpot = r.take(words, 'operator');
  const left = expectValue(r);
  return { kind: 'binary', op, opSpot, left, right, spot: r.since(right.spot.from) };
}

const MORE: ReadonlySet<string> = new Set(
  'more longer wider deeper taller higher thicker bigger'.split(' '),
);
const LESS: ReadonlySet<string> = new Set(
  'less shorter narrower shallower lower thinner smaller fewer'.split(' '),
);

/** `2 ft longer than X`, `$50 less than X`. */
function moreThan(r: Reader, amount: Amount): Formula | null {
  // `$100 off materials`
  const isMoney = r.sees('off') && roughDimension(r, amount) === MONEY;
  if (isMoney && offWords(r, 0) === 0)
    return binaryAfter(r, amount, 'minus', r.seesAt(1, 'of') ? 2 : 1);
  if (amount.bare || !r.seesAt(1, 'than')) return null;
  if (MORE.has(r.token.text)) return binaryAfter(r, amount, 'plus', 2);
  return LESS.has(r.token.text) ? binaryAfter(r, amount, 'minus', 2) : null;
}

function besides(r: Reader, amount: Amount): Formula {
  const more = moreThan(r, amount);
  if (more) return more;
  if (amount.bare) return amount;
  const square = refuseSquare(r, amount);
  if (square) return square;
  const made =
    sizeBeside(r, amount) ??
    roundFrom(r, amount) ??
    spacedWithoutNoun(r, amount) ??
    alongSlope(r, amount, amount.spot.from) ??
    countBeside(r, amount);
  if (made) return made;
  if (isMeasured(amount) && isPlain(amount)) skipStuffAfter(r);
  return amount;
}

/** `24 in square`: so long on every side, or so much of an area? */
function refuseSquare(r: Reader, side: Amount): Formula | null {
  if (!r.sees('square') || r.nameAt(0) || !isWrittenLength(side)) return null;
  if ((r.vocabulary.unitAt(r.tokens, r.at)?.length ?? 0) > 1) return null;
  const spot = { from: side.spot.from, to: r.token.to };
  const said = r.slice(side.spot);
  const unit = /^(.*\d)\s*([a-z'"]+)$/i.exec(side.say);
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${r.slice(spot)}" could be a square with sides of ${said}, or an area. Write the one that is meant.`,
    fixes: [
      r.fix(`${said} on every side`, spot, `${said} by ${said}`),
      ...(unit ? [r.fix('An area', spot, `${unit[1]} sq ${unit[2]}`)] : []),
    ],
  });
}

/** `3 pairs of hinges`: so many hinges, or so many pairs? */
function refusePairs(r: Reader, amount: Amount): Formula | null {
  if (roughCount(r, amount) !== 'pair' || !amount.value) return null;
  const article = ARTICLES.has(r.peek(1).text) ? 1 : 0;
  const noun = r.vocabulary.nounAt(r.tokens, r.at + 1 + article);
  if (!noun) return null;
  const spot = { from: amount.spot.from, to: r.peek(article + noun.length).to };
  const things = `${amount.value.mul(2).toString()} ${r.vocabulary.nouns.many(noun.noun)}`;
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${r.slice(spot)}" could be counted one by one, ${things}, or as ${amount.say}. Write the one that is meant.`,
    fixes: [r.fix(`${things}`, spot, things), r.fix(`${amount.say}`, spot, amount.say)],
  });
}

/** Does it have a unit of length, weight, time or money above the line? */
function isMeasured({ holds: { measure } }: Amount): boolean {
  return measure.kind === 'amount' && isHard(measure.dimension);
}

function isPlain({ holds: { measure } }: Amount): boolean {
  return measure.kind === 'amount' && measure.rate === null;
}

/** `2 days of 8 hours`, `7 treads of 2 boards each`: so many times so much. */
function countOfAmounts(r: Reader, count: Amount): Formula | null {
  const { measure } = count.holds;
  if (measure.kind !== 'amount' || measure.rate || roughCount(r, count) === null) return null;
  const { at } = r;
  const marks = r.marks.length;
  const opSpot = r.take(1, 'operator');
  const named = r.nameAt(0) !== null && roughCount(r, count) !== null;
  if (!named) r.skipArticle();
  if (!seesAmount(r) && !named) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  const right = expectSlot(r);
  if (r.problem) return right;
  // `two rim joists of deck length`
  if (right.kind === 'name' && hardOf(r, right) !== LENGTH) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  const holds = right.kind === 'amount' ? right.holds.measure : null;
  if (right.kind === 'amount' && (right.bare || holds?.kind !== 'amount')) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  return {
    kind: 'binary',
    op: 'times',
    opSpot,
    left: count,
    right,
    spot: r.since(count.spot.from),
  };
}

function hardOf(r: Reader, tree: Formula): Dimension | null {
  const rough = roughDimension(r, tree);
  return rough && hardPart(rough);
}

/** `2 men 8 hours`, `6 holes 10" dia`: a count and, right beside it, what each of them takes. */
function countBeside(r: Reader, count: Amount): Formula | null {
  const noun = roughCount(r, count);
  if (noun === null || r.token.kind !== 'number') return null;
  const { at } = r;
  const marks = r.marks.length;
  if (slotEnd(r, 0) < 0) return null;
  const { from } = r.token;
  const amount = writtenAmount(r);
  const spot = { from, to: from };
  const square = r.problem || amount.kind !== 'amount' ? null : refuseSquare(r, amount);
  if (square) return square;
  const right = r.problem ? null : eachTakes(r, noun, amount);
  if (!right || right.kind === 'hole') {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  const opSpot = spot;
  const product: Formula = {
    kind: 'binary',
    op: 'times',
    opSpot,
    left: count,
    right,
    spot: r.since(count.spot.from),
  };
  return noun === 'person' ? hoursBeside(r, product) : product;
}

/** `3 men 2 days 8 hours a day`: the hours of a day, after the days. */
function hoursBeside(r: Reader, days: Formula): Formula {
  if (r.token.kind !== 'number' || slotEnd(r, 0) < 0) return days;
  const { at } = r;
  const marks = r.marks.length;
  const { from } = r.token;
  const right = writtenAmount(r);
  if (r.problem || !isTime(r, right)) {
    r.goBack(at, marks, r.brackets);
    return days;
  }
  const opSpot = { from, to: from };
  return { kind: 'binary', op: 'times', opSpot, left: days, right, spot: r.since(days.spot.from) };
}

/** What each of so many things takes: hours of people, or the size of a footing or a hole. */
function eachTakes(r: Reader, noun: string, amount: Formula): Formula | null {
  if (noun === 'person' && isTime(r, amount)) return amount;
  const round = roundFrom(r, amount);
  if (round) return round;
  const isLong = amount.kind === 'amount' && isWrittenLength(amount);
  return isLong && (r.sees('x') || r.sees('×') || r.sees('by')) ? amount : null;
}

const PERIODS: ReadonlySet<string> = new Set(['day', 'week', 'month', 'shift', 'year']);

/** Hours, days or weeks. */
export function isTime(r: Reader, tree: Formula): boolean {
  const count = roughCount(r, tree);
  if (count !== null) return PERIODS.has(count);
  if (tree.kind !== 'amount' || tree.holds.measure.kind !== 'amount') return false;
  const { dimension } = tree.holds.measure;
  return hardPart(dimension) === TIME;
}
