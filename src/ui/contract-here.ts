// The contract of the open notebook: the snapshot that was signed, and its change orders.
import type { Versions } from '../store/versions-shelf.ts';
import { type Contract, contractOf } from '../versions/contract.ts';
import type { Snapshot } from '../versions/snapshot.ts';
import { acceptedOf } from '../versions/standing.ts';

/** Null: nothing was accepted. */
export function contractHere(versions: Versions): (Contract & { readonly of: Snapshot }) | null {
  const signed = signedOf(versions);
  if (!signed) return null;
  return {
    ...contractOf(signed.values.total.price, versions.orders, versions.orderLog),
    of: signed,
  };
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
