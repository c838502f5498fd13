// What share of a sum each kind of cost has, in tenths of a percent that add up to a hundred percent.
import { COST_KINDS } from '../notebook/recap.ts';
import { givenOut } from '../versions/cents.ts';
import { type ByKind, eachKind } from './budget.ts';

/** Null where the sum is nothing, or a kind is less than nothing: then shares say nothing. */
export function sharesOf(cents: ByKind): ByKind<number> | null {
  const all = COST_KINDS.map((kind) => cents[kind]);
  const sum = all.reduce((one, other) => one + other, 0n);
  if (sum <= 0n || all.some((each) => each < 0n)) return null;
  const tenths = givenOut(
    all.map((each) => each * 1000n),
    sum,
  );
  return eachKind((kind) => Number(tenths[COST_KINDS.indexOf(kind)]) / 10);
}
