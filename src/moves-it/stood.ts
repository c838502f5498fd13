// What a result came to at some moment, kept so that it can be told later how far it moved since: in the result's own
// words, whatever it is written in by then. A result is a cell, what a part costs, or the job as a whole.
import type { CellId } from '../language/tree.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';
import { Dec, minusDropping, scaled } from '../quantity/decimal.ts';
import { MONEY } from '../quantity/dimension.ts';
import { type Holds, NONE_WRITTEN } from '../quantity/form.ts';
import { type Fraction, ONE, amountMeasure } from '../quantity/measure.ts';
import { MINUS } from '../quantity/number-text.ts';

export type Result =
  | { readonly of: 'cell'; readonly cell: CellId }
  /** Its direct cost, or what it adds to the price where nothing in it is a cost. */
  | { readonly of: 'part'; readonly part: string }
  | { readonly of: 'direct' | 'price' };

export interface Stood {
  /** As it was shown; null: it had no value. */
  readonly text: string | null;
  /** Of a number: decimal text in inches, pounds, minutes and dollars (and powers and counts of them); else null. */
  readonly amount: string | null;
  /** What it measured: amounts of one dimension are told apart by how much. */
  readonly dimension: string;
}

export interface Moved {
  readonly moves: 'up' | 'down' | 'not' | 'otherwise';
  /** By how much, without a sign: `2 bags`. Null where it is no number, or measured something else before. */
  readonly by: string | null;
}

/** Two amounts that agree to so many digits are one: the rest is noise of bringing them to one unit. */
const DIGITS = 30;

const DOLLARS: Holds = { measure: amountMeasure(MONEY), showIn: null, written: NONE_WRITTEN };

export function stoodOf(door: EstimateDoor, result: Result): Stood {
  const { value, holds, text } = here(door, result);
  if (!(value instanceof Dec) || !holds) return { text, amount: null, dimension: '' };
  const [scale, dimension] = unitsOf(holds);
  return { text, amount: scaled(value, scale).toSignificantDigits(50).toString(), dimension };
}

/** From what it was to what it is now. */
export function movedSince(door: EstimateDoor, result: Result, before: Stood): Moved {
  return movedFrom(door, result, before, stoodOf(door, result));
}

/** From one moment to another, told as the notebook shows this result. */
export function movedFrom(door: EstimateDoor, result: Result, before: Stood, after: Stood): Moved {
  const { holds } = here(door, result);
  const alike = before.dimension === after.dimension;
  if (before.amount === null || after.amount === null || !alike) {
    return { moves: before.text === after.text && alike ? 'not' : 'otherwise', by: null };
  }
  const [from, to] = [new Dec(before.amount), new Dec(after.amount)];
  const same = from.toSignificantDigits(DIGITS).eq(to.toSignificantDigits(DIGITS));
  const difference = same ? new Dec(0) : minusDropping(to, from);
  const moves = same ? 'not' : difference.isNegative() ? 'down' : 'up';
  if (!holds || unitsOf(holds)[1] !== after.dimension) return { moves, by: null };
  const held = scaled(difference.abs(), ONE.div(unitsOf(holds)[0]));
  return { moves, by: door.say(held, holds).text };
}

/** How many lines its sum leaves out, because they have no value yet. */
export function leftOutOf(door: EstimateDoor, result: Result): number {
  if (result.of === 'cell') {
    const { outcome } = door.state(result.cell);
    return outcome.kind === 'value' ? outcome.leftOut.length : 0;
  }
  const { parts, total } = door.costs();
  const row = result.of === 'part' ? parts.find(({ key }) => key === result.part) : total;
  return row?.incomplete.length ?? 0;
}

/** Which is more: as a sort asks; null where they are not of a kind. */
export function compareStood(a: Stood, b: Stood): number | null {
  if (a.amount === null || b.amount === null || a.dimension !== b.dimension) return null;
  const [one, other] = [new Dec(a.amount), new Dec(b.amount)].map((amount) =>
    amount.toSignificantDigits(DIGITS),
  );
  return one.comparedTo(other);
}

/** `+2 bags`, `−$45.36`; null where it did not move or can't be told by how much. */
export function signed({ moves, by }: Moved): string | null {
  if (by === null || (moves !== 'up' && moves !== 'down')) return null;
  return `${moves === 'up' ? '+' : MINUS}${by}`;
}

function here(
  door: EstimateDoor,
  result: Result,
): { readonly value: unknown; readonly holds: Holds | null; readonly text: string | null } {
  if (result.of === 'cell') {
    const { outcome, holds } = door.state(result.cell);
    const value = outcome.kind === 'value' ? outcome.value : null;
    return { value, holds, text: door.shown(result.cell)?.text ?? null };
  }
  const sum = sumOf(door, result);
  if (sum === null) return { value: null, holds: null, text: null };
  const value = new Dec(sum);
  return { value, holds: DOLLARS, text: door.say(value, DOLLARS).text };
}

/** Decimal text; null of a part that is not there. */
function sumOf(
  door: EstimateDoor,
  result: Exclude<Result, { readonly of: 'cell' }>,
): string | null {
  const { parts, total } = door.costs();
  if (result.of !== 'part') return total[result.of];
  const row = parts.find(({ key }) => key === result.part);
  if (!row) return null;
  return row.lines === 0 ? row.price : row.direct;
}

function unitsOf({ measure }: Holds): readonly [Fraction, string] {
  return measure.kind === 'amount' ? [measure.scale, measure.dimension.key] : [ONE, measure.kind];
}
