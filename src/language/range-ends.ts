// The two ends of a range: which is less, what lies in the middle of them, and whether more of it is better.
import { MONEY, TIME } from '../quantity/dimension.ts';
import type { Form } from '../quantity/form.ts';
import { type Fraction, type Measure, conversion } from '../quantity/measure.ts';
import type { Amount, Negative } from './tree.ts';

/** An amount, with a sign before it or not. */
export type Signed = Amount | Negative;

/** Below nought where the first is less, above where it is more; null where they can't be compared. */
export function standing(a: Signed | undefined, b: Signed | undefined): number | null {
  const [one, other] = [a && valueOf(a), b && valueOf(b)];
  if (!a || !b || !one || !other) return null;
  const [from, to] = [measureOf(a), measureOf(b)];
  if (!isAlike(from, to)) return null;
  if (from.kind !== 'amount' || to.kind !== 'amount') return one.compare(other);
  return one.mul(from.scale).compare(other.mul(to.scale));
}

/** Do they measure the very same thing? */
export function isAlike(a: Measure, b: Measure): boolean {
  if (a.kind !== 'amount' || b.kind !== 'amount') return a.kind === b.kind;
  return a.dimension === b.dimension && (a.rate === null) === (b.rate === null);
}

/** More of it in an hour or a day is better; a price per hour is not. */
export function isMoreInATime({ over, under }: Form): boolean {
  const priced = over.some((term) => term.kind === 'unit' && term.unit.dimension === MONEY);
  return (
    !priced &&
    under.some((term) =>
      term.kind === 'unit' ? term.unit.dimension === TIME : TIMES.has(term.noun),
    )
  );
}

/** Times that are counted and not measured. */
const TIMES: ReadonlySet<string> = new Set(['shift', 'day', 'week', 'month', 'year']);

export function valueOf(end: Signed): Fraction | null {
  if (end.kind === 'amount') return end.value;
  return end.of.kind === 'amount' && end.of.value ? end.of.value.neg() : null;
}

export function measureOf(end: Signed): Measure {
  const amount = end.kind === 'amount' ? end : end.of;
  if (amount.kind !== 'amount') throw new Error(`${amount.kind} at the end of a range`);
  return amount.holds.measure;
}

/** The middle in the unit of the finer one. */
export function middleOf(
  a: { readonly value: Fraction; readonly measure: Measure },
  b: { readonly value: Fraction; readonly measure: Measure },
): { readonly value: Fraction; readonly measure: Measure } {
  if (a.measure.kind !== 'amount' || b.measure.kind !== 'amount') {
    return { value: a.value.add(b.value).div(2), measure: a.measure };
  }
  const fine = a.measure.scale.compare(b.measure.scale) <= 0 ? a.measure : b.measure;
  const sum = a.value
    .mul(conversion(a.measure, fine))
    .add(b.value.mul(conversion(b.measure, fine)));
  return { value: sum.div(2), measure: fine };
}

export function wordsOf(end: Signed): string {
  if (end.kind === 'amount') return end.say;
  return end.of.kind === 'amount' ? `−${end.of.say}` : '';
}
