// Adds to the job record that is kept in the browser beside the notebook. Two pages may add at once: what one of them
// kept in the meantime is read and added to, never written over.
import type { Recorded } from '../record/entry.ts';
import { plainRecord } from './record-shapes.ts';
import type { KeptVersions, VersionsShelf } from './versions-shelf.ts';

export type Added =
  | { readonly kind: 'kept'; readonly kept: KeptVersions }
  /** Nothing of it was written. */
  | {
      readonly kind: 'not-kept';
      readonly why: 'full' | 'refused' | 'newer' | 'unreadable' | 'busy';
    };

/** So often it begins again when another page was quicker. */
const MOST_TRIES = 8;

/** Resolves when all of it is written or none. */
export async function addRecords(
  shelf: VersionsShelf,
  id: string,
  fresh: readonly Recorded[],
): Promise<Added> {
  try {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const found = await shelf.take(id);
      if (found.kind === 'absent') return { kind: 'not-kept', why: 'unreadable' };
      if (found.kind !== 'taken') return { kind: 'not-kept', why: found.kind };
      const { versions } = found.value;
      const records = [...versions.records, ...fresh.map(plainRecord)];
      const after = { ...versions, records };
      const done = await shelf.keep(id, found.value, after);
      if (done.kind === 'kept')
        return {
          kind: 'kept',
          kept: { ...found.value, versions: after, revision: done.revision },
        };
    }
    return { kind: 'not-kept', why: 'busy' };
  } catch (cause) {
    const full = cause instanceof Error && cause.name === 'QuotaExceededError';
    return { kind: 'not-kept', why: full ? 'full' : 'refused' };
  }
}
