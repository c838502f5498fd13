// Steps told one after another, each working on all that was told before: `take X and multiply it by Y, then halve it`,
// `…, and then round it up to the next 10`.
import { markedUp } from './clauses.ts';
import { seesOperator } from './operators.ts';
import type { Reader } from './reader.ts';
import { rounded, seesRounding } from './rounding.ts';
import type { Arithmetic, Formula } from './tree.ts';
import { closedWhole, expectSlot } from './values.ts';

/** How many words stand there for what was told so far: `it`, `that`, `the result`; 0 for none. */
export function itAt(r: Reader, ahead: number): number {
  if (r.nameAt(ahead)) return 0;
  return IT.find((words) => r.seesAll(ahead, words))?.length ?? 0;
}

const IT: readonly (readonly string[])[] = [
  ['the', 'whole', 'thing'],
  ['the', 'whole', 'lot'],
  ['all', 'of', 'it'],
  ['all', 'of', 'that'],
  ['the', 'result'],
  ['the', 'answer'],
  ['the', 'lot'],
  ['the', 'total'],
  ['everything'],
  ['it'],
  ['that'],
  ['this'],
  ['them'],
  ['those'],
];

const BY: ReadonlyMap<string, Arithmetic> = new Map([
  ['multiply', 'times'],
  ['times', 'times'],
  ['divide', 'over'],
  ['split', 'over'],
]);

const ALONE: ReadonlyMap<string, string> = new Map([
  ['double', '2'],
  ['triple', '3'],
  ['halve', '1/2'],
]);

/** The step that stands here after a comma, `and` or `then`, worked on `of`; null where none does. */
export function toldStep(r: Reader, of: Formula): Formula | null {
  const joined = joinedAt(r);
  if (joined === 0) return null;
  const verb = r.peek(joined);
  if (verb.kind !== 'word' || r.nameAt(joined)) return null;
  const it = itAt(r, joined + 1);
  const alone = ALONE.get(verb.text);
  if (alone !== undefined && (it > 0 || endsStep(r, joined + 1))) {
    const opSpot = r.take(joined + 1 + it, 'operator');
    const left = r.number(alone, alone === '1/2' ? 'half' : alone, opSpot);
    const spot = r.since(of.spot.from);
    return alone === '1/2'
      ? { kind: 'part-of', share: left, of, spot }
      : { kind: 'binary', op: 'times', opSpot, left, right: of, spot };
  }
  const op = BY.get(verb.text);
  if (op) return multiplied(r, of, op, joined, it);
  if (it > 0 && (verb.text === 'round' || verb.text === 'mark')) return endedBy(r, of, joined, it);
  if (seesRounding(r, joined)) return rounded(r, of, joined);
  return r.seesAt(joined, 'mark', 'up') ? endedBy(r, of, joined, 0) : null;
}

/** `, and then`: how many tokens join a step to what was told before; a comma alone does. */
function joinedAt(r: Reader): number {
  let ahead = r.sees(',') ? 1 : 0;
  if (r.seesAt(ahead, 'and')) ahead++;
  if (r.seesAt(ahead, 'then')) ahead++;
  return r.conditions > 0 && ahead > 0 && !r.sees(',') ? 0 : ahead;
}

/** `multiply it by Y`, `divide by Y`, `times it by Y`. */
function multiplied(
  r: Reader,
  of: Formula,
  op: Arithmetic,
  joined: number,
  it: number,
): Formula | null {
  const verb = r.peek(joined).text;
  const by = joined + 1 + it;
  const linked =
    r.seesAt(by, 'by') || (op === 'over' && (r.seesAt(by, 'between') || r.seesAt(by, 'into')));
  if (!linked || (verb === 'times' && it === 0)) return null;
  const opSpot = r.take(by + 1, 'operator');
  const right = expectSlot(r);
  if (r.problem) return right;
  const whole: Formula = {
    kind: 'binary',
    op,
    opSpot,
    left: closedWhole(of),
    right,
    spot: r.since(of.spot.from),
  };
  if (r.sees('then') || r.sees('and') || !seesOperator(r, 0)) return whole;
  const rest = { from: r.token.from, to: r.endOfBracket() };
  const last = { from: right.spot.from, to: rest.to };
  const tail = r.slice(rest).trim();
  return r.fail({
    code: 'two-readings',
    spots: [rest],
    about: `"${tail}" could belong to "${r.slice(right.spot)}" alone or to all that stands before it. A comma gives it to all; brackets give it to the last.`,
    fixes: [
      r.fix('To all of it', { from: r.gapBefore(rest.from), to: rest.from }, ', '),
      r.fix('To the last alone', last, `(${r.slice(last).trimEnd()})`),
    ],
  });
}

/** `round it up to the next 10`, `mark it up 20%`. */
function endedBy(r: Reader, of: Formula, joined: number, it: number): Formula | null {
  if (r.seesAt(joined, 'mark')) {
    if (!r.seesAt(joined + 1 + it, 'up')) return null;
    r.take(joined + 2 + it, 'phrase');
    return markedUp(r, of);
  }
  const way = r.peek(joined + 1 + it).text;
  if (!/^(up|down|to)$/.test(way)) return null;
  r.take(joined + 1 + it, 'phrase');
  return rounded(r, of, 0);
}

function endsStep(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  return kind === 'end' || /^[,.?)\]]$/.test(text) || text === 'and' || text === 'then';
}
