// The contract of the open notebook: the snapshot that was signed, and its change orders.
import type { Versions } from '../store/versions-shelf.ts';
import type { ChangeOrder } from '../versions/change-order.ts';
import { type Contract, contractOf } from '../versions/contract.ts';
import { holdingToo } from '../versions/held-twice.ts';
import type { Snapshot } from '../versions/snapshot.ts';
import { acceptedOf } from '../versions/standing.ts';

export interface ContractHere extends Contract {
  readonly of: Snapshot;
  /** Change orders that count, and hold some of what one before them holds, which counts as well. */
  readonly twice: readonly { readonly order: ChangeOrder; readonly too: ChangeOrder }[];
}

/** Null: nothing was accepted. */
export function contractHere(versions: Versions): ContractHere | null {
  const signed = signedOf(versions);
  if (!signed) return null;
  const contract = contractOf(signed.values.total.price, versions.orders, versions.orderLog);
  const seals = versions.snapshots.map(({ seal }) => seal);
  const counted = contract.rows.filter(({ sum }) => sum !== null).map(({ order }) => order);
  const twice = counted.flatMap((order, i) => {
    const too = holdingToo(order, counted.slice(0, i), seals).at(-1);
    return too ? [{ order, too }] : [];
  });
  return { ...contract, of: signed, twice };
}

/** What counts twice, and what to do about it, in words; empty where nothing does. */
export function sayTwice({ twice }: ContractHere): string {
  const [first] = twice;
  if (!first) return '';
  const { order, too } = first;
  return `Change order ${order.number} holds changes that change order ${too.number} holds as well, so that this sum counts them twice. Set one of the two back to priced, or make the later one anew${too.to.seal === null ? '' : ` from ${too.to.name}`}.`;
}

/**
 * The first that was accepted of those from which a change order was made: one that was accepted after it holds the
 * change already. Without change orders the one accepted last.
 */
function signedOf({ snapshots, log, orders }: Versions): Snapshot | null {
  const accepted = new Set(
    log.filter(({ happened }) => happened === 'accepted').map(({ snapshot }) => snapshot),
  );
  const from = new Set(orders.map((order) => order.from.seal));
  const found = snapshots.find(({ seal }) => accepted.has(seal) && from.has(seal));
  return found ?? acceptedOf(log, snapshots);
}
