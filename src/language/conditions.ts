// Conditions: `A where C, B where D, otherwise E`, and with `if`, value first or condition first.
import { maybeClause } from './clauses.ts';
import { readOr, readPicked } from './levels.ts';
import { seesOperator } from './operators.ts';
import type { Reader } from './reader.ts';
import type { Condition, Formula } from './tree.ts';
import { expectSlot, expectValue, slotEnd } from './values.ts';
import { leftOver } from './left-over.ts';

type Branch = Condition['branches'][number];

/** A formula: a value, perhaps with conditions; or a condition first. */
export function readFormula(r: Reader): Formula {
  const from = r.token.from;
  if (r.sees('if')) return conditionFirst(r, from);
  const sums = r.sums.length;
  const value = readOr(r);
  if (r.problem) return value;
  const free = butFree(r, value, from);
  if (free) return free;
  if (!seesWhere(r)) return value;
  const sum = r.sums.slice(sums).findLast((s) => s.brackets === r.brackets);
  const branches = [branchOf(r, value)];
  return finishCondition(r, from, branches, sum?.spot ?? null, value);
}

/** `delivery, but free if materials is over $5,000`. Null where no exception is said so. */
function butFree(r: Reader, value: Formula, from: number): Formula | null {
  const but = (r.sees(',') ? 1 : 0) + (r.seesAt(r.sees(',') ? 1 : 0, 'but') ? 1 : 0);
  const free = FREE.has(r.peek(but).text) && r.peek(but).kind === 'word';
  const end = free ? but + 1 : r.seesAt(but - 1, 'but') ? slotEnd(r, but) : -1;
  if (end < 0 || !(r.seesAt(end, 'if') || r.seesAt(end, 'when') || r.seesAt(end, 'where')))
    return null;
  r.take(but, 'phrase');
  const special = free ? r.number('0', '0', r.take(1, 'amount')) : expectSlot(r);
  if (r.problem) return special;
  const branches = [branchOf(r, special)];
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  return { kind: 'condition', branches, otherwise: value, spot: r.since(from) };
}

const FREE: ReadonlySet<string> = new Set(['free', 'nothing', 'zero', 'none', 'waived']);

function seesWhere(r: Reader): boolean {
  const comma = r.sees(',') ? 1 : 0;
  return r.seesAt(comma, 'where') || r.seesAt(comma, 'if') || r.seesAt(comma, 'when');
}

function seesOtherwise(r: Reader, ahead: number): boolean {
  return r.seesAt(ahead, 'otherwise') || r.seesAt(ahead, 'else');
}

function branchOf(r: Reader, value: Formula): Branch {
  r.maybe(',');
  r.take(1, 'phrase');
  return { value, when: readWhen(r) };
}

function readWhen(r: Reader): Formula {
  r.conditions++;
  const when = readOr(r);
  r.conditions--;
  return when;
}

function conditionFirst(r: Reader, from: number): Formula {
  const branches: Branch[] = [];
  while (r.maybe('if') && !r.problem) {
    const when = readWhen(r);
    r.maybe(',');
    r.maybe('then');
    const value = readPicked(r);
    branches.push({ value, when });
    const comma = r.sees(',') ? 1 : 0;
    const otherwise = seesOtherwise(r, comma) ? comma : -1;
    if (otherwise < 0 || !r.seesAt(otherwise + 1, 'if')) break;
    r.take(otherwise + 1, 'phrase');
  }
  return finishCondition(r, from, branches, null, null);
}

/** Further branches and the `otherwise`; outside brackets nothing may follow the last value. */
function finishCondition(
  r: Reader,
  from: number,
  branches: Branch[],
  sum: { from: number; to: number } | null,
  first: Formula | null,
): Formula {
  while (!r.problem) {
    const comma = r.maybe(',');
    if (!comma && !seesOtherwise(r, 0)) break;
    if (seesOtherwise(r, 0) || r.closes) break;
    const at = r.token.from;
    const value = readOr(r);
    if (r.problem) break;
    if (!seesWhere(r)) {
      return r.closes
        ? askOtherwise(r, r.since(from), { from: at, to: at }, 'otherwise ')
        : leftOver(r);
    }
    branches.push(branchOf(r, value));
  }
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  if (!r.maybe('otherwise') && !r.maybe('else')) {
    if (!r.closes) return leftOver(r);
    const end = r.endOfBracket();
    return askOtherwise(r, r.since(from), { from: end, to: end }, ', otherwise 0', first);
  }
  const lastFrom = r.token.from;
  const inBrackets = r.brackets > 0;
  const otherwise = inBrackets ? readPicked(r) : expectValue(r);
  if (r.problem) return otherwise;
  const lastTo = r.since(lastFrom).to;
  if (!inBrackets && goesOn(r, otherwise)) return refuseTail(r, from, lastFrom, lastTo);
  if (!inBrackets && sum && first) return refuseSum(r, from, sum, first, lastTo);
  return { kind: 'condition', branches, otherwise, spot: r.since(from) };
}

function askOtherwise(
  r: Reader,
  condition: { from: number; to: number },
  at: { from: number; to: number },
  insert: string,
  first: Formula | null = null,
): Formula {
  const say = insert.startsWith(',') ? 'Otherwise nothing' : 'Otherwise this';
  const sum =
    first?.kind === 'binary' && (first.op === 'plus' || first.op === 'minus') ? first : null;
  const rest = sum ? r.slice({ from: sum.spot.to, to: at.from }) : '';
  const plain = sum ? r.slice(sum.left.spot) : '';
  return r.fail({
    code: 'missing-otherwise',
    spots: [condition],
    fixes: [
      // `materials less 5% if materials is over $4,000`: else without the 5%.
      ...(sum
        ? [
            r.fix(
              `Otherwise ${plain}`,
              { from: sum.spot.from, to: at.to },
              `(${r.slice(sum.spot)})${rest}, otherwise ${asSlot(sum.left, plain)}`,
            ),
          ]
        : []),
      r.fix(say, at, insert),
    ],
  });
}

/** One amount, name or bracket as it stands, anything else in brackets. */
function asSlot(tree: Formula, words: string): string {
  return tree.kind === 'name' || tree.kind === 'amount' ? words : `(${words})`;
}

function goesOn(r: Reader, last: Formula): boolean {
  const comma = r.sees(',') ? 1 : 0;
  if (seesOperator(r, comma)) return true;
  const at = r.at;
  const marks = r.marks.length;
  const clause = maybeClause(r, last) !== null;
  if (!r.problem) {
    r.at = at;
    r.marks.length = marks;
  }
  return clause && !r.problem;
}

function refuseTail(r: Reader, from: number, lastFrom: number, lastTo: number): Formula {
  const end = r.endOfBracket();
  const rest = { from: lastTo, to: end };
  const tail = r
    .slice(rest)
    .replace(/^\s*,?\s*/, '')
    .trim();
  return r.fail({
    code: 'two-readings',
    spots: [rest.from < rest.to ? { from: r.token.from, to: end } : r.since(from)],
    about: `"${tail}" could go with the whole condition or with its last value alone. Brackets say which.`,
    fixes: [
      r.fix(
        'With the whole',
        { from, to: end },
        `(${r.slice({ from, to: lastTo })})${r.slice(rest)}`,
      ),
      r.fix(
        'With the last value',
        { from: lastFrom, to: end },
        `(${r.slice({ from: lastFrom, to: end }).trimEnd()})`,
      ),
    ],
  });
}

function refuseSum(
  r: Reader,
  from: number,
  sum: { from: number; to: number },
  first: Formula,
  lastTo: number,
): Formula {
  const firstText = r.slice(first.spot);
  const after = r.slice({ from: sum.to, to: lastTo }).trim();
  return r.fail({
    code: 'two-readings',
    spots: [{ from: sum.from, to: sum.to }],
    about: `The condition could choose all of "${firstText}" or only what stands after "${r.slice(sum)}". Brackets say which.`,
    fixes: [
      r.fix('Choose all of it', first.spot, `(${firstText})`),
      r.fix('Choose the last part', { from: sum.to, to: lastTo }, ` (${after})`),
    ],
  });
}
