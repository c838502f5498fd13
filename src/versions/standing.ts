// What happened to snapshots: a log that is only ever added to, and where each one stands by it.
import type { Snapshot } from './snapshot.ts';

export type Happened = 'sent' | 'accepted' | 'superseded';

export interface LogEntry {
  /** The seal of the snapshot. */
  readonly snapshot: string;
  readonly happened: Happened;
  readonly date: string;
  readonly note: string;
}

export type Log = readonly LogEntry[];

export function logged(log: Log, entry: LogEntry): Log {
  return [...log, Object.freeze({ ...entry })];
}

/** What was said of it last; null: it was only frozen. */
export function standingOf(log: Log, { seal }: Pick<Snapshot, 'seal'>): LogEntry | null {
  return log.findLast((entry) => entry.snapshot === seal) ?? null;
}

/** The one the work is done by: accepted last, and not superseded since. */
export function acceptedOf(log: Log, snapshots: readonly Snapshot[]): Snapshot | null {
  for (const entry of log.toReversed()) {
    if (entry.happened !== 'accepted') continue;
    const found = snapshots.find(({ seal }) => seal === entry.snapshot);
    if (found && standingOf(log, found)?.happened === 'accepted') return found;
  }
  return null;
}
