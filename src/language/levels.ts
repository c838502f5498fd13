// Levels 1 to 5, loosest first: or, and, not; comparisons; clauses; sums; products.
// Loops go on to the left, so a chain of ten thousand plus signs needs no stack.
import { termAfter } from './amounts.ts';
import { maybeClause } from './clauses.ts';
import { maybeTogether } from './lists.ts';
import { DEEPEST, type Reader } from './reader.ts';
import type { Arithmetic, Formula, Relation } from './tree.ts';
import { expectValue } from './values.ts';

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
  return r.sees(word) || r.sees(',', word);
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

/** comparison = picked [ relation picked ] */
function readComparison(r: Reader): Formula {
  const from = r.token.from;
  if (r.sees('is')) return readQuestion(r, from);
  const left = readPicked(r);
  if (r.problem) return left;
  if (r.sees('is', 'between')) {
    const opSpot = r.take(2, 'operator');
    const low = readSum(r);
    if (!r.maybe('and')) {
      return r.fail({
        code: 'phrase-slot',
        spots: [opSpot],
        phrase: 'is between',
        wanted: 'two limits',
        like: 'thickness is between 4 in and 6 in',
      });
    }
    const high = readPicked(r);
    return { kind: 'between', opSpot, of: left, low, high, spot: r.since(from) };
  }
  const found = relationAt(r);
  if (!found) return left;
  const opSpot = r.take(found.words, 'operator');
  const right = readPicked(r);
  const relation = (found.relation === 'is' && maybeOrLess(r)) || found.relation;
  return { kind: 'comparison', relation, opSpot, left, right, spot: r.since(from) };
}

const RELATIONS: readonly (readonly [string, Relation])[] = [
  ['is not more than', 'at-most'],
  ['is not greater than', 'at-most'],
  ['is not over', 'at-most'],
  ['is no more than', 'at-most'],
  ['is not less than', 'at-least'],
  ['is not under', 'at-least'],
  ['is no less than', 'at-least'],
  ['is more than', 'more'],
  ['is greater than', 'more'],
  ['is less than', 'less'],
  ...['bigger', 'larger', 'longer', 'wider', 'higher', 'deeper', 'thicker'].map(
    (word) => [`is ${word} than`, 'more'] as const,
  ),
  ...['smaller', 'shorter', 'narrower', 'lower', 'thinner', 'fewer'].map(
    (word) => [`is ${word} than`, 'less'] as const,
  ),
  ['is at least', 'at-least'],
  ['is at most', 'at-most'],
  ['is equal to', 'is'],
  ['is exactly', 'is'],
  ['is over', 'more'],
  ['is above', 'more'],
  ['is under', 'less'],
  ['is below', 'less'],
  ['is not', 'is-not'],
  ['is', 'is'],
  ['equals', 'is'],
  ['under', 'less'],
  ['=', 'is'],
  ['≠', 'is-not'],
  ['>', 'more'],
  ['<', 'less'],
  ['≥', 'at-least'],
  ['≤', 'at-most'],
];
const RELATION_WORDS = RELATIONS.map(([words, relation]) => ({
  words: words.split(' '),
  relation,
}));

function relationAt(r: Reader): { words: number; relation: Relation } | null {
  const found = RELATION_WORDS.find(({ words }) => r.sees(...words));
  return found ? { words: found.words.length, relation: found.relation } : null;
}

/** `is the deck longer than the slab?`: the question for the statement. */
function readQuestion(r: Reader, from: number): Formula {
  const is = r.take(1, 'operator');
  const left = readPicked(r);
  if (r.problem) return left;
  const found = RELATION_WORDS.find(
    ({ words }) => words[0] === 'is' && words.length > 1 && r.sees(...words.slice(1)),
  );
  if (!found) {
    return r.fail({ code: 'missing-value', spots: [is], after: null });
  }
  const opSpot = r.take(found.words.length - 1, 'operator');
  const right = readPicked(r);
  const { relation } = found;
  return { kind: 'comparison', relation, opSpot, left, right, spot: r.since(from) };
}

/** `is 4 in or less`: the limit said after its amount. */
function maybeOrLess(r: Reader): Relation | null {
  if (!r.sees('or') || r.choosingOrs.has(r.at)) return null;
  const side = OR_LESS.get(r.peek(1).text);
  if (!side) return null;
  r.take(2, 'operator');
  return side;
}

const OR_LESS: ReadonlyMap<string, Relation> = new Map(
  Object.entries({
    less: 'at-most',
    fewer: 'at-most',
    under: 'at-most',
    lower: 'at-most',
    more: 'at-least',
    over: 'at-least',
    greater: 'at-least',
    higher: 'at-least',
  }),
);

/** picked = closed { 'or' closed [','] 'whichever is greater' more } */
function readPicked(r: Reader): Formula {
  const from = r.token.from;
  let left = readClosed(r);
  while (!r.problem && r.sees('or') && r.choosingOrs.has(r.at)) {
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
      });
    }
    r.take(1, 'phrase');
    left = { kind: 'pick', which, items: [left, right], spot: r.since(from) };
    left = goOn(r, left, true);
  }
  return left;
}

const WHICH: ReadonlyMap<string, 'greater' | 'less'> = new Map(
  Object.entries({
    greater: 'greater',
    larger: 'greater',
    bigger: 'greater',
    more: 'greater',
    higher: 'greater',
    less: 'less',
    lesser: 'less',
    smaller: 'less',
    lower: 'less',
  }),
);

/** closed = sum { [','] clause | ',' operator … } */
export function readClosed(r: Reader): Formula {
  return goOn(r, maybeTogether(r) ?? readSum(r), false);
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
    left = sumFrom(r, termFrom(r, left));
    closed = false;
  }
  return left;
}

/** Is there an operator so many tokens ahead? A minus tight to its amount after a comma is a sign. */
export function seesOperator(r: Reader, ahead: number): boolean {
  if (ahead > 0 && r.seesAt(ahead, '-') && !r.peek(ahead + 1).gap) return false;
  return sumOperator(r, ahead) !== null || termOperator(r, ahead) !== null;
}

function readSum(r: Reader): Formula {
  return sumFrom(r, termFrom(r, expectValue(r)));
}

interface Operator {
  readonly op: Arithmetic;
  readonly words: number;
}

function sumOperator(r: Reader, ahead: number): Operator | null {
  if (r.seesAt(ahead, 'plus') || r.seesAt(ahead, '+')) return { op: 'plus', words: 1 };
  if (r.seesAt(ahead, 'minus') || r.seesAt(ahead, '-')) return { op: 'minus', words: 1 };
  if (r.seesAt(ahead, 'less') && !r.seesAt(ahead + 1, 'than')) return { op: 'minus', words: 1 };
  if (r.seesAt(ahead, 'with') && !r.seesAt(ahead + 1, 'gaps')) return { op: 'plus', words: 1 };
  if (r.seesAt(ahead, 'w', '/') && !r.peek(ahead + 1).gap) return { op: 'plus', words: 2 };
  return null;
}

/** sum = term { ('plus' | 'minus' | 'less' | 'with') term }; a share takes no multiplication to itself. */
function sumFrom(r: Reader, first: Formula): Formula {
  let left = first;
  while (!r.problem) {
    const found = sumOperator(r, 0);
    if (!found) return left;
    const opSpot = r.take(found.words, 'operator');
    r.sums.push({ spot: opSpot, brackets: r.brackets });
    const value = expectValue(r);
    if (r.problem) return left;
    if (value.kind === 'amount' && r.sees('margin')) {
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
    if (isShare) left = termFrom(r, left);
  }
  return left;
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
    case 'times':
    case '×':
      return { op: 'times', words: 1 };
    case 'multiplied':
      return r.seesAt(ahead + 1, 'by') ? { op: 'times', words: 2 } : null;
    case 'by':
    case 'x':
      return { op: 'by', words: 1 };
    case 'at':
    case '@':
      return { op: 'at', words: 1 };
    case 'split':
      return r.peek(ahead + 1).kind === 'number' && r.seesAt(ahead + 2, 'ways')
        ? { op: 'over', words: 1 }
        : null;
    case 'divided':
      return r.seesAt(ahead + 1, 'by') ? { op: 'over', words: 2 } : null;
    case '÷':
    case '/':
    case 'over':
    case 'per':
      return { op: 'over', words: 1 };
    default:
      return null;
  }
}

/** term = value { operator value } */
function termFrom(r: Reader, first: Formula): Formula {
  let left = first;
  while (!r.problem) {
    const found = termOperator(r, 0);
    if (!found) return left;
    if (r.sees('per') && refusesPer(r)) return askPerWhat(r, left);
    const opSpot = r.take(found.words, 'operator');
    const right = expectValue(r);
    if (r.sees('ways')) r.take(1, 'phrase');
    const spot = { from: left.spot.from, to: r.since(left.spot.from).to };
    left = { kind: 'binary', op: found.op, opSpot, left, right, spot };
  }
  return left;
}

/** `per` after a name divides by a name or bracket; by a unit or noun alone it asks. */
function refusesPer(r: Reader): boolean {
  if (r.peek(1).kind === 'number' || r.peek(1).text === '(') return false;
  const term = termAfter(r, 1);
  const name = r.vocabulary.nameAt(r.tokens, r.at + 1, r.part, r.self);
  return (
    term !== null &&
    term.length - 1 > (name?.length ?? 0) - 1 &&
    (name?.length ?? 0) <= term.length - 1
  );
}

function askPerWhat(r: Reader, left: Formula): Formula {
  const term = termAfter(r, 1);
  const spot = { from: r.token.from, to: r.peek((term?.length ?? 2) - 1).to };
  const whatSpot = { from: r.peek(1).from, to: spot.to };
  const what = r.slice(whatSpot);
  const fits = [...r.vocabulary.namesIn(r.part, r.self)]
    .filter(({ id }) => r.holdsTerm(id, term?.term ?? null))
    .slice(0, 3);
  return r.fail({
    code: 'per-what',
    spots: [spot],
    what,
    fixes: [
      ...fits.map(({ say }) => r.fix(`Divided by ${say}`, spot, `divided by ${say}`)),
      r.fix(`For one ${what}`, { from: left.spot.to, to: spot.to }, ` divided by 1 ${what}`),
    ],
  });
}
