// A change order added to what stands beside the notebook. What it goes to is frozen with it where it was the notebook as it
// stood: the next one starts from there.
import type { Versions } from '../store/versions-shelf.ts';
import { type ChangeOrder, type VersionNamed, changeOrder } from '../versions/change-order.ts';
import type { Comparison } from '../versions/compare.ts';
import { type OrderState, orderLogged } from '../versions/contract.ts';
import type { Snapshot } from '../versions/snapshot.ts';

export interface OrderAsked {
  readonly comparison: Comparison;
  /** Seals of what was compared; null is the notebook as it stands. */
  readonly from: string | null;
  readonly to: string | null;
  readonly date: string;
  readonly reason: string;
  readonly state: OrderState;
}

/** Null: the two are in different currencies. `freezeNow` freezes the notebook as it stands, under a name. */
export function orderAdded(
  versions: Versions,
  { comparison, from, to, date, reason, state }: OrderAsked,
  freezeNow: (name: string) => Snapshot,
): { readonly versions: Versions; readonly order: ChangeOrder } | null {
  const number = 1 + Math.max(0, ...versions.orders.map((order) => order.number));
  const made = changeOrder(comparison, { number, date, reason, fromSeal: from, toSeal: to });
  if (!made) return null;
  let { snapshots } = versions;
  const end = (named: VersionNamed): VersionNamed => {
    if (named.seal !== null) return named;
    const now = freezeNow(`Change order ${number}`);
    const last = snapshots.at(-1);
    const same = last?.hash === now.hash;
    if (!same) snapshots = [...snapshots, now];
    const { name, seal } = same ? last : now;
    return { name, seal };
  };
  const order: ChangeOrder = { ...made, from: end(made.from), to: end(made.to) };
  const orderLog = orderLogged(versions.orderLog, { order: number, state, date, note: '' });
  return {
    versions: { ...versions, snapshots, orders: [...versions.orders, order], orderLog },
    order,
  };
}
