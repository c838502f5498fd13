// Which change orders hold the same changes. Each goes from one snapshot to another; where the stretches of two overlap, what
// lies in both would count twice in the contract.
import type { ChangeOrder } from './change-order.ts';

type Ends = { readonly from: Seal; readonly to: Seal };
type Seal = { readonly seal: string | null };

/**
 * Those of `orders` that hold some of what lies between these two ends, where null is the notebook as it stands. `seals` are
 * those of all snapshots, in the order in which they were frozen.
 */
export function holdingToo(
  ends: Ends,
  orders: readonly ChangeOrder[],
  seals: readonly string[],
): readonly ChangeOrder[] {
  const now = seals.length;
  const [from, to] = stretch(ends, seals, () => now);
  return orders.filter((order) => {
    // An order of before its end was frozen: it ends somewhere after where it began, and no more is known.
    const [otherFrom, otherTo] = stretch(order, seals, (other) => (other ?? now) + 0.5);
    return from < otherTo && otherFrom < to;
  });
}

/** From the earlier end to the later one. */
function stretch(
  { from, to }: Ends,
  seals: readonly string[],
  notFrozen: (other: number | null) => number,
): readonly [number, number] {
  const at = ({ seal }: Seal): number | null => (seal === null ? null : seals.indexOf(seal));
  const [start, end] = [at(from), at(to)];
  const both = [start ?? notFrozen(end), end ?? notFrozen(start)] as const;
  return [Math.min(...both), Math.max(...both)];
}
