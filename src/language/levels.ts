// Levels 1 to 5, loosest first: or, and, not; then picks, clauses, sums and products. Comparisons stand next door.
// Loops go on to the left, so a chain of ten thousand plus signs needs no stack.
import { maybeManyPer, maybePerNoun, termAfter, writtenAmount } from './amounts.ts';
import { skipWhatMoneyIsFor } from './asides.ts';
import { limitsAt, maybeClause } from './clauses.ts';
import { overCompares, readComparison } from './comparisons.ts';
import { maybeTogether } from './lists.ts';
import { LENGTH, MONEY } from '../quantity/dimension.ts';
import type { Term } from '../quantity/form.ts';
import { unitByKey } from '../quantity/units.ts';
import { ARTICLES } from './lexer.ts';
import { askAreaOver, askLayer, crossedByLabel, isLayer } from './outlines.ts';
import { DEEPEST, type Reader } from './reader.ts';
import { refuseTightRange } from './ranges.ts';
import { roughCount, roughDimension } from './rough.ts';
import { tablePhraseAt } from './table-phrases.ts';
import { maybeRoundedFirst } from './rounded-first.ts';
import { refuseOneMore, skipCentres, spacedAlong } from './spaced.ts';
import type { Arithmetic, Formula, Spaced } from './tree.ts';
import { closedWhole, expectValue } from './values.ts';
import { WHICH } from './which.ts';
import { OPERATOR_WORDS, SHARE_LABELS } from './words.ts';

/** or = and { 'or' and } */
export function readOr(r: Reader): Formula {
  const from = r.token.from;
  let left = readAnd(r);
  while (!r.problem && seesJoin(r, 'or')) {
    takeJoin(r);
    const right = readAnd(r);
    left = { kind: 'or', left, right, spot: r.since(from) };
  }
  return left;
}

/** and = not { 'and' not } */
function readAnd(r: Reader): Formula {
  const from = r.token.from;
  let left = readNot(r);
  while (!r.problem && seesJoin(r, 'and')) {
    takeJoin(r);
    const right = readNot(r);
    left = { kind: 'and', left, right, spot: r.since(from) };
  }
  return left;
}

function seesJoin(r: Reader, word: 'and' | 'or'): boolean {
  // After a comma a name may begin with the word: `…, and so on where …`.
  return r.sees(word) || (r.sees(',', word) && (r.nameAt(1)?.length ?? 0) <= 1);
}

function takeJoin(r: Reader): void {
  r.maybe(',');
  r.take(1, 'operator');
}

/** not = 'not' not | comparison */
function readNot(r: Reader): Formula {
  if (!r.sees('not')) return readComparison(r);
  if (r.depth >= DEEPEST) return r.fail({ code: 'too-deep', spots: [r.token], most: DEEPEST });
  const from = r.token.from;
  r.take(1, 'operator');
  r.depth++;
  const of = readNot(r);
  r.depth--;
  return { kind: 'not', of, spot: r.since(from) };
}

/** picked = closed { 'or' closed [','] 'whichever is greater' more } */
export function readPicked(r: Reader): Formula {
  const from = r.token.from;
  let left = readClosed(r);
  while (!r.problem && seesChoosingOr(r)) {
    r.maybe(',');
    r.take(1, 'phrase');
    const right = readClosed(r);
    if (r.problem) return right;
    r.maybe(',');
    r.take(1, 'phrase');
    r.maybe('is');
    r.skipArticle();
    const which = WHICH.get(r.token.text);
    if (!which) {
      return r.fail({
        code: 'phrase-slot',
        spots: [r.token],
        phrase: 'whichever is',
        wanted: '"greater" or "less"',
        like: 'thickness or 5 in, whichever is greater',
        fixes: ['greater', 'less'].map((by) =>
          r.fix(
            `Whichever is ${by}`,
            r.token.kind === 'end' ? r.afterLast() : r.token,
            r.token.kind === 'end' ? ` ${by}` : by,
          ),
        ),
      });
    }
    r.take(1, 'phrase');
    left = { kind: 'pick', which, items: [left, right], spot: r.since(from) };
    left = goOn(r, left, true);
  }
  return left;
}

function seesChoosingOr(r: Reader): boolean {
  const comma = r.sees(',') ? 1 : 0;
  return r.seesAt(comma, 'or') && r.choosingOrs.has(r.at + comma);
}

/** closed = sum { [','] clause | ',' operator … } */
export function readClosed(r: Reader): Formula {
  return goOn(r, maybeTogether(r) ?? maybeRoundedFirst(r, readSum) ?? readSum(r), false);
}

/** Clauses and, after a comma or a clause, further arithmetic; all of it works on what stands before. */
function goOn(r: Reader, first: Formula, isClosed: boolean): Formula {
  let left = first;
  let closed = isClosed;
  while (!r.problem) {
    const clause = maybeClause(r, left);
    if (clause) {
      left = clause;
      closed = true;
      continue;
    }
    const comma = r.sees(',') ? 1 : 0;
    if ((comma === 0 && !closed) || !seesOperator(r, comma)) break;
    r.at += comma;
    left = sumFrom(r, termFrom(r, closedWhole(left)));
    closed = false;
  }
  return left;
}

/** Is there an operator so many tokens ahead? A minus tight to its amount after a comma is a sign. */
export function seesOperator(r: Reader, ahead: number): boolean {
  if (ahead > 0 && r.seesAt(ahead, '-') && !r.peek(ahead + 1).gap) return false;
  // After a comma a name may begin with an operator word: `…, per side where …`.
  if (ahead > 0 && (r.nameAt(ahead)?.length ?? 0) > 1) {
    return false;
  }
  return sumOperator(r, ahead) !== null || termOperator(r, ahead) !== null;
}

export function readSum(r: Reader): Formula {
  return sumFrom(r, termFrom(r, expectValue(r)));
}

interface Operator {
  readonly op: Arithmetic;
  readonly words: number;
}

/** `then plus markup`, `then times 4`: one after the other, as it is read anyway. */
function oneWordMore(found: Operator | null): Operator | null {
  return found && { ...found, words: found.words + 1 };
}

function sumOperator(r: Reader, ahead: number): Operator | null {
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
      return { op: 'plus', words: 1 };
    case 'including':
    case 'incl':
    case 'inc':
      return { op: 'plus', words: 1 };
    case 'and':
      return r.seesAt(ahead + 1, 'add') ? { op: 'plus', words: 2 } : null;
    case 'then':
      return r.conditions === 0 ? oneWordMore(sumOperator(r, ahead + 1)) : null;
    case 'add':
      return { op: 'plus', words: 1 };
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

/** sum = term { ('plus' | 'minus' | 'less' | 'with') term }; a share takes no multiplication to itself. */
function sumFrom(r: Reader, first: Formula): Formula {
  let left = first;
  while (!r.problem) {
    const found = sumOperator(r, 0);
    if (!found) return left;
    const opSpot = r.take(found.words, 'operator');
    r.sums.push({ spot: opSpot, brackets: r.brackets });
    if (r.slice(opSpot) !== 'minus' && found.op === 'minus') {
      const hole = refuseTightRange(r, opSpot);
      if (hole) return hole;
    }
    const said = shareSaidAfter(r) ?? expectValue(r);
    if (r.problem) return left;
    const value = atBothEnds(r, said) ?? said;
    if (found.op === 'plus' && left.kind === 'spaced' && isOneMore(r, left, value)) {
      return refuseOneMore(r, left, opSpot, value);
    }
    if (r.sees('on', 'top') || r.sees('extra') || r.sees('more') || r.sees('again')) {
      if (r.nameAt(0) === null && r.holdsShare(value)) r.take(r.sees('on') ? 2 : 1, 'unread');
    }
    if (!r.sees('margin')) skipWhatMoneyIsFor(r, value);
    if (value.kind === 'amount' && r.holdsShare(value) && r.sees('margin')) {
      if (r.slice(opSpot).toLowerCase() !== 'with') return refuseMargin(r, opSpot, value.spot);
      // `labour with a 20% margin`
      r.take(1, 'phrase');
      const shares = [{ share: value, label: 'margin' }];
      left = { kind: 'for-shares', of: left, shares, spot: r.since(left.spot.from) };
      continue;
    }
    const isShare = r.holdsShare(value);
    const more = isShare ? termOperator(r, 0) : null;
    if (more && more.op !== 'at') return refuseShareTimes(r, left, opSpot, value);
    const right = isShare ? value : termFrom(r, value);
    const spot = { from: left.spot.from, to: Math.max(right.spot.to, r.since(left.spot.from).to) };
    left = { kind: 'binary', op: found.op, opSpot, left, right, spot };
    if (isShare && termOperator(r, 0)) left = termFrom(r, closedWhole(left));
  }
  return left;
}

/** `less 1 1/2 in both ends`, `plus 3 in at each side`: twice that length. Null where it is said of none. */
function atBothEnds(r: Reader, value: Formula): Formula | null {
  const joined = /^(at|on|off|from|for)$/.test(r.token.text) ? 1 : 0;
  const each = r.peek(joined);
  if (each.kind !== 'word' || !/^(both|each|either)$/.test(each.text)) return null;
  if (!/^(ends?|sides?|edges?)$/.test(r.peek(joined + 1).text) || r.nameAt(joined)) return null;
  if (roughDimension(r, value) !== LENGTH) return null;
  const opSpot = r.take(joined + 2, 'operator');
  const left = r.number('2', '2', opSpot);
  return {
    kind: 'binary',
    op: 'times',
    opSpot,
    left,
    right: value,
    spot: r.since(value.spot.from),
  };
}

/** `materials after 10% discount` */
function isDiscount(r: Reader, ahead: number): boolean {
  const article = ARTICLES.has(r.peek(ahead).text) ? 1 : 0;
  if (r.peek(ahead + article).kind !== 'number') return false;
  for (let i = ahead + article + 1; i < ahead + 6; i++) if (r.seesAt(i, 'discount')) return true;
  return false;
}

/** `plus VAT at 20%`, `plus overhead of 12%`: a share with its name before it. Null where none stands so. */
function shareSaidAfter(r: Reader): Formula | null {
  let words = 0;
  const article = ARTICLES.has(r.token.text) ? 1 : 0;
  while (words < 2 && saysShare(r, article + words)) words++;
  const joined = article + words;
  if (words === 0 || !(r.seesAt(joined, 'at') || r.seesAt(joined, 'of') || r.seesAt(joined, '@')))
    return null;
  if (r.peek(joined + 1).kind !== 'number') return null;
  for (let i = joined + 2; i < joined + 5; i++) {
    if (r.seesAt(i, '%') || r.seesAt(i, 'percent')) {
      r.take(joined + 1, 'unread');
      return writtenAmount(r);
    }
  }
  return null;
}

/** A label of a share, or a word that is nothing else here: `VAT`. */
function saysShare(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  if (kind !== 'word' || OPERATOR_WORDS.has(text)) return false;
  return SHARE_LABELS.has(text) || /^(vat|gst|hst|pst|sales|tax|oh|ohp|p)$/.test(text);
}

/** A bare one, or one of the very thing that is set out, after a count with both its ends. */
function isOneMore(r: Reader, spaced: Spaced, value: Formula): boolean {
  if (spaced.ends !== 'both' || value.kind !== 'amount' || !value.value?.equals(1)) return false;
  if (/^[([]/.test(r.slice(spaced.spot))) return false;
  return value.bare || roughCount(r, value) === spaced.noun;
}

function refuseMargin(
  r: Reader,
  opSpot: { from: number },
  amount: { from: number; to: number },
): Formula {
  const percent = r.slice(amount);
  const spot = { from: opSpot.from, to: r.token.to };
  return r.fail({
    code: 'margin-or-markup',
    spots: [{ from: amount.from, to: r.token.to }],
    percent,
    fixes: [
      r.fix('A share of the price', spot, `for a ${percent} margin`),
      r.fix('A share of the cost', spot, `marked up ${percent}`),
    ],
  });
}

function refuseShareTimes(
  r: Reader,
  left: Formula,
  opSpot: { from: number; to: number },
  share: Formula,
): Formula {
  const begin = r.token.from;
  const right = termFrom(r, share);
  if (r.problem) return right;
  const whole = { from: left.spot.from, to: share.spot.to };
  const product = { from: share.spot.from, to: r.since(share.spot.from).to };
  return r.fail({
    code: 'two-readings',
    spots: [
      { from: opSpot.from, to: share.spot.to },
      { from: begin, to: product.to },
    ],
    about: `"${r.slice({ from: begin, to: product.to })}" could work on everything before it, or on "${r.slice(share.spot)}" alone. Brackets say which.`,
    fixes: [
      r.fix('On everything before it', whole, `(${r.slice(whole)})`),
      r.fix('On the share alone', product, `(${r.slice(product)})`),
    ],
  });
}

function termOperator(r: Reader, ahead: number): Operator | null {
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
      if (comparesAt(r, ahead)) return null;
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

/** `2 people times 3 days at $180 a day each`: per day and per person, so it multiplies both. */
function isForEachOne(right: Formula): boolean {
  return right.kind === 'amount' && / per \S+ each$/.test(right.say);
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

/** What is in each, after a division: `20' sticks`, `350 per box`. Null where it is said in full. */
function inEach(r: Reader, left: Formula, op: Arithmetic): Formula | null {
  if ((op !== 'over' && op !== 'at') || r.token.kind !== 'number' || r.nameAt(0)) return null;
  const noun = r.seesAt(1, 'per') ? roughCount(r, left) : null;
  if (noun !== null) return maybeManyPer(r, noun);
  return op === 'at' || r.seesAt(1, 'per') ? null : maybePerNoun(r);
}

/** term = value { operator value } */
function termFrom(r: Reader, first: Formula): Formula {
  let left = first;
  while (!r.problem) {
    const crossed = crossedByLabel(r, left);
    if (crossed) {
      left = crossed;
      continue;
    }
    const tight = r.sees('(') && !r.token.gap && left.kind === 'amount' && left.bare;
    const found: Operator | null = tight ? { op: 'times', words: 0 } : termOperator(r, 0);
    if (!found) return left;
    if (r.sees('per') && refusesPer(r)) return perUnit(r, left) ?? askPerWhat(r, left);
    if (found.op === 'at' && seesMarginAfter(r)) return left;
    const here = { from: r.token.from, to: r.token.from };
    const opSpot = found.words > 0 ? r.take(found.words, 'operator') : here;
    const right = inEach(r, left, found.op) ?? expectValue(r);
    if (r.sees('ways')) r.take(1, 'phrase');
    if (found.op === 'over') skipCentres(r);
    if (found.op === 'at' && !r.problem) {
      const spaced = roughDimension(r, left) === LENGTH ? spacedAlong(r, left, right) : null;
      if (spaced) {
        left = spaced;
        continue;
      }
    }
    const asked = askAreaOver(r, left, found.op, right) ?? askLayer(r, left, opSpot, right);
    if (asked) return asked;
    const each = found.op === 'at' && isForEachOne(right);
    const op = isLayer(r, left, found.op, opSpot, right) ? 'by' : each ? 'times' : found.op;
    const spot = { from: left.spot.from, to: r.since(left.spot.from).to };
    left = { kind: 'binary', op, opSpot, left, right, spot };
  }
  return left;
}

/** `at a 20% margin` closes the sum before it, as `for` does. */
export function seesMarginAfter(r: Reader): boolean {
  for (let i = 1; i <= 7 && r.peek(i).kind !== 'end'; i++) {
    if (r.seesAt(i, '%', 'margin') || r.seesAt(i, 'percent', 'margin')) return true;
    if (!['a', 'an', '/', '-'].includes(r.peek(i).text) && r.peek(i).kind !== 'number')
      return false;
  }
  return false;
}

/** `per` after a name divides by a name or bracket; by a unit or noun alone it asks. */
function refusesPer(r: Reader): boolean {
  if (r.peek(1).kind === 'number' || r.peek(1).text === '(') return false;
  const term = termAfter(r, 1);
  const name = r.nameAt(1);
  return (
    term !== null &&
    term.length - 1 > (name?.length ?? 0) - 1 &&
    (name?.length ?? 0) <= term.length - 1
  );
}

/** `materials per sq ft of deck area`, `cost / area per sq ft`: a price per unit asked for. Null: it asks. */
function perUnit(r: Reader, left: Formula): Formula | null {
  const found = termAfter(r, 1);
  if (found?.term.kind !== 'unit' || found.term.count !== null) return null;
  const { from } = r.token;
  const money: Term = { kind: 'unit', unit: unitByKey('$'), count: null };
  const form = { over: [money], under: [found.term] };
  if (r.seesAt(found.length, 'of')) {
    if (roughDimension(r, left) !== MONEY) return null;
    const opSpot = r.take(found.length + 1, 'operator');
    const right = termFrom(r, expectValue(r));
    const spot = r.since(left.spot.from);
    const of: Formula = { kind: 'binary', op: 'over', opSpot, left, right, spot };
    return { kind: 'in-units', of, form, formSpot: opSpot, spot };
  }
  if (left.kind !== 'binary' || left.op !== 'over' || roughDimension(r, left.left) !== MONEY)
    return null;
  if (roughDimension(r, left.right) !== found.term.unit.dimension) return null;
  r.take(found.length, 'phrase');
  return {
    kind: 'in-units',
    of: left,
    form,
    formSpot: r.since(from),
    spot: r.since(left.spot.from),
  };
}

function askPerWhat(r: Reader, left: Formula): Formula {
  const found = termAfter(r, 1);
  const term = found?.term ?? null;
  const spot = { from: r.token.from, to: r.peek((found?.length ?? 2) - 1).to };
  const what = r.slice({ from: r.peek(1).from, to: spot.to });
  const many =
    term?.kind === 'unit' ? term.unit.many : term ? r.vocabulary.nouns.many(term.noun) : what;
  const fits = [...r.vocabulary.namesIn(r.part, r.self)]
    .filter(({ id }) => r.holdsTerm(id, term))
    .slice(0, 3);
  const after = { from: left.spot.to, to: spot.to };
  // `8 hours at 50 per hour`: a price without its sign.
  const price =
    left.kind === 'binary' && left.op === 'at' && left.right.kind === 'amount' && left.right.bare
      ? { from: left.right.spot.from, to: left.right.spot.from }
      : null;
  return r.fail({
    code: 'per-what',
    spots: [spot],
    what,
    many,
    fixes: [
      ...(price ? [r.fix('A price', price, r.vocabulary.sign)] : []),
      ...fits.map(({ say }) => r.fix(`Divided by ${say}`, spot, `divided by ${say}`)),
      r.fix(`For one ${what}`, after, ` divided by 1 ${what}`),
    ],
  });
}
