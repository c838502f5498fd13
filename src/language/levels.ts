// Levels 1 to 3, loosest first: or, and, not; then picks and what is closed by a comma or a clause. Comparisons stand next door.
import { DEEPEST, type Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { readComparison } from './comparisons.ts';
import { WHICH } from './which.ts';
import { maybeTogether } from './lists.ts';
import { maybeRoundedFirst } from './rounded-first.ts';
import { readSum, sumFrom } from './sums.ts';
import { maybeClause } from './clauses.ts';
import { doubledAfter } from './times-after.ts';
import { thingsAlong } from './spaced.ts';
import { toldStep } from './told-steps.ts';
import { seesOperator } from './operators.ts';
import { termFrom } from './products.ts';
import { closedWhole } from './values.ts';

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
    const clause =
      thingsAlong(r, left) ?? maybeClause(r, left) ?? toldStep(r, left) ?? doubledAfter(r, left);
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
