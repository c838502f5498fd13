// Levels 1 to 5, loosest first: or, and, not; then picks, clauses, sums and products. Comparisons stand next door.
// Loops go on to the left, so a chain of ten thousand plus signs needs no stack.
import { termAfter } from './amounts.ts';
import { maybeClause } from './clauses.ts';
import { readComparison } from './comparisons.ts';
import { maybeTogether } from './lists.ts';
import { DEEPEST, type Reader } from './reader.ts';
import { refuseTightRange } from './ranges.ts';
import type { Arithmetic, Formula } from './tree.ts';
import { closedWhole, expectValue } from './values.ts';

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

export const WHICH: ReadonlyMap<string, 'greater' | 'less'> = new Map(
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
      return r.seesAt(ahead + 1, 'gaps') ? null : { op: 'plus', words: 1 };
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
    const value = expectValue(r);
    if (r.problem) return left;
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
    if (found.op === 'at' && seesMarginAfter(r)) return left;
    const opSpot = r.take(found.words, 'operator');
    const right = expectValue(r);
    if (r.sees('ways')) r.take(1, 'phrase');
    const spot = { from: left.spot.from, to: r.since(left.spot.from).to };
    left = { kind: 'binary', op: found.op, opSpot, left, right, spot };
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
