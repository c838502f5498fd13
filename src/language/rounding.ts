// Rounding as it is said: `rounded up`, `round to the nearest 1/16 in`, `up to the next half yard`.
import type { Reader } from './reader.ts';
import type { Formula, Way } from './tree.ts';
import { likeWritten } from './amounts-held.ts';
import { termAfter } from './rates.ts';
import { seesAmount } from './amounts.ts';
import { expectSlot } from './values.ts';
import { type Form, writtenUnits } from '../quantity/form.ts';
import { heldAmount } from '../quantity/amount.ts';
import { MONEY } from '../quantity/dimension.ts';
import { unitByKey } from '../quantity/units.ts';
import { roughDimension } from './rough.ts';
import { Fraction } from '../quantity/measure.ts';

/** `rounded …`, `round up …`, `rnd up`, and `nearest $50` alone. */
export function seesRounding(r: Reader, comma: number): boolean {
  if (r.seesAt(comma, 'rounded') || r.seesAt(comma, 'nearest')) return true;
  if (seesUpTo(r, comma)) return true;
  if (decimalsAt(r, comma) > 0) return true;
  const to = r.seesAt(comma, 'to') ? comma + (r.seesAt(comma + 1, 'the') ? 2 : 1) : -1;
  if (to > 0 && (r.seesAt(to, 'nearest') || r.seesAt(to, 'next'))) return true;
  if (r.seesAt(comma, 'roundup')) return true;
  return ROUND.has(r.peek(comma).text) && ['up', 'down', 'to'].includes(r.peek(comma + 1).text);
}

const ROUND: ReadonlySet<string> = new Set(['round', 'rnd', 'rd', 'rounding']);

/** `up to the next 1/4 yd`. */
function seesUpTo(r: Reader, comma: number): boolean {
  const the = r.seesAt(comma + 2, 'the') ? 1 : 0;
  const next = r.seesAt(comma + 2 + the, 'next') || r.seesAt(comma + 2 + the, 'nearest');
  return next && (r.seesAt(comma, 'up', 'to') || r.seesAt(comma, 'down', 'to'));
}

export function rounded(r: Reader, of: Formula, comma: number): Formula {
  r.at += comma;
  const opFrom = r.token.from;
  const roundup = r.maybe('roundup');
  if (r.sees('rounded') || ROUND.has(r.token.text)) r.take(1, 'phrase');
  let way: Way = roundup || r.sees('up') ? 'up' : r.sees('down') ? 'down' : 'nearest';
  if (r.sees('up') || r.sees('down')) r.take(1, 'phrase');
  const opSpot = r.since(opFrom);
  let step: Formula | null = null;
  if (r.sees('to') || r.sees('nearest')) {
    r.maybe('to');
    r.skipArticle();
    if (r.sees('next')) {
      if (way === 'nearest') way = 'up';
      r.take(1, 'phrase');
    } else if (r.sees('nearest')) r.take(1, 'phrase');
    step = stepIn(r, of, decimalsStep(r, of) ?? expectStep(r));
    if (/^(lengths?|increments?|multiples?|mark)$/.test(r.token.text) && !r.nameAt(0))
      r.take(1, 'unread');
  }
  return { kind: 'rounded', of, way, step, opSpot, spot: r.since(of.spot.from) };
}

/** `to 2 decimal places`, `to one decimal`: how many tokens; 0 where it is not said. */
function decimalsAt(r: Reader, ahead: number): number {
  if (!r.seesAt(ahead, 'to') || !DIGITS.has(r.peek(ahead + 1).text)) return 0;
  if (r.seesAt(ahead + 2, 'dp')) return 3;
  if (!/^decimals?$/.test(r.peek(ahead + 2).text)) return 0;
  return /^places?$/.test(r.peek(ahead + 3).text) ? 4 : 3;
}

const DIGITS: ReadonlyMap<string, number> = new Map(
  ['1', '2', '3', '4', 'one', 'two', 'three', 'four'].map(
    (said, i) => [said, (i % 4) + 1] as const,
  ),
);

/** One in the last of so many decimal places, its `to` taken already. */
function decimalsStep(r: Reader, of: Formula): Formula | null {
  r.at--;
  const words = decimalsAt(r, 0);
  r.at++;
  const digits = DIGITS.get(r.token.text);
  if (words === 0 || digits === undefined) return null;
  const spot = r.take(words - 1, 'phrase');
  const value = `0.${'0'.repeat(digits - 1)}1`;
  const step = r.number(value, value, spot);
  const money: Form = { over: [{ kind: 'unit', unit: unitByKey('$'), count: null }], under: [] };
  if (roughDimension(r, of) !== MONEY) return step;
  return likeWritten(r, step, { kind: 'form', form: money, larger: [] });
}

/** `in cy, to the nearest 1/4`: a bare step is one of what it is shown in. */
function stepIn(r: Reader, of: Formula, step: Formula | null): Formula | null {
  if (of.kind !== 'in-units' || step?.kind !== 'amount' || !step.bare) return step;
  return likeWritten(r, step, { kind: 'form', form: of.form, larger: [] });
}

/** An amount, a name, a bracket, a unit alone for one of it (`the next cubic yard`), or `whole bags`. */
export function expectStep(r: Reader): Formula | null {
  if (WHOLE.has(r.token.text) && (r.sees('whole') || r.nameAt(0) === null)) {
    r.take(1, 'phrase');
    if (r.sees('number') || r.sees('numbers')) r.take(1, 'phrase');
    else {
      if (termAfter(r, 0)) return oneOf(r);
    }
    return null;
  }
  const name = r.nameAt(0);
  const fraction = STEP_FRACTION.get(r.token.text);
  if (fraction && !name && termAfter(r, 1)) {
    r.at++;
    r.skipArticle();
    return oneOf(r, fraction);
  }
  const term = termAfter(r, 0);
  if (!seesAmount(r) && term && term.length >= (name?.length ?? 0)) return oneOf(r);
  return expectSlot(r);
}

/** `the next half yard`. */
const WHOLE: ReadonlySet<string> = new Set(['whole', 'full', 'complete', 'entire']);

const STEP_FRACTION: ReadonlyMap<string, string> = new Map(
  Object.entries({ half: '1/2', quarter: '1/4', third: '1/3' }),
);

/** A unit or noun alone: one of it, or so much of one. */
export function oneOf(r: Reader, much = '1'): Formula {
  const found = termAfter(r, 0);
  if (!found) return expectSlot(r);
  const spot = r.take(found.length, 'amount');
  const form: Form = { over: [found.term], under: [] };
  const held = heldAmount(new Fraction(much), form);
  const key = found.term.kind === 'unit' ? [found.term.unit.key] : [];
  const name = found.term.kind === 'unit' ? found.term.unit.one : found.term.noun;
  const holds = { measure: held.measure, showIn: null, written: writtenUnits(key) };
  return {
    kind: 'amount',
    value: held.value,
    holds,
    bare: false,
    label: null,
    say: `${much} ${name}`,
    spot,
  };
}
