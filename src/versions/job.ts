// A whole job: the notebook with the list of its identities, its snapshots and change orders and what happened to them.
import type { Plain } from './canonical.ts';
import { centsOf } from './cents.ts';
import type { ChangeOrder } from './change-order.ts';
import type { OrderLog } from './contract.ts';
import type { KeptIdentities } from './identities.ts';
import { type Snapshot, sayMismatch, verify } from './snapshot.ts';
import type { Log } from './standing.ts';
import type { Origin } from './working-copy.ts';

export interface Job {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly identities: KeptIdentities;
  /** What this notebook was made from, or null. */
  readonly origin: Origin | null;
  readonly snapshots: readonly Snapshot[];
  readonly log: Log;
  readonly orders: readonly ChangeOrder[];
  readonly orderLog: OrderLog;
  /** What happened on the job, entry by entry, kept as it is. */
  readonly records: readonly Plain[];
}

/** What doesn't match, in words, with the seal of the snapshot that it is about. */
export interface JobMismatch {
  readonly about: 'snapshot' | 'log' | 'order' | 'record' | 'file';
  readonly snapshot: string | null;
  readonly message: string;
}

/** Every hash looked at anew, and whether the logs speak of what is there. Empty: all of it is as it was made. */
export function verifyJob({ snapshots, log, orders, orderLog }: Job): readonly JobMismatch[] {
  const seals = new Set(snapshots.map(({ seal }) => seal));
  const numbers = new Set(orders.map(({ number }) => number));
  const found: JobMismatch[] = snapshots.flatMap((snapshot) =>
    verify(snapshot).map((mismatch) => ({
      about: 'snapshot',
      snapshot: snapshot.seal,
      message: sayMismatch(snapshot, mismatch),
    })),
  );
  if (seals.size < snapshots.length)
    found.push(of('snapshot', 'One snapshot is in this job more than once.'));
  if (numbers.size < orders.length)
    found.push(of('order', 'Two change orders have the same number.'));
  for (const order of orders.filter((one) => !addsUp(one)))
    found.push(
      of(
        'order',
        `Change order ${order.number} does not add up: an amount in it was changed since it was made.`,
      ),
    );
  const strays = log.filter(({ snapshot }) => !seals.has(snapshot));
  for (const { happened, date } of strays)
    found.push(of('log', `"${happened}" on ${date} is about a snapshot that is not here.`));
  for (const { state, date, order } of orderLog.filter(({ order }) => !numbers.has(order)))
    found.push(
      of('log', `"${state}" on ${date} is about change order ${order}, which is not here.`),
    );
  return found;
}

/** As it was made: the lines and the rest come to its net, and that from one total to the other. */
function addsUp({ lines, rest, net, before, after }: ChangeOrder): boolean {
  const cents = [...lines.map(({ difference }) => difference), rest, net, before, after];
  if (!cents.every((text) => /^-?\d+\.\d\d$/.test(text))) return false;
  const told = lines.reduce((sum, line) => sum + centsOf(line.difference), centsOf(rest));
  return told === centsOf(net) && centsOf(before) + centsOf(net) === centsOf(after);
}

function of(about: JobMismatch['about'], message: string): JobMismatch {
  return { about, snapshot: null, message };
}
