// Whether this page is the only one on a notebook. A lock is held as long as the page is on it; it only
// informs: what keeps two pages from writing over one another is the revision that each keeping compares.

/** As far as the browser's locks are needed here. */
export type Locks = Pick<LockManager, 'request'>;

interface Held {
  readonly id: string;
  readonly letGo: () => void;
  /** Settles when the lock is free again. */
  readonly gone: Promise<unknown>;
}

/** Returns how to ask for a notebook: true when no other page is on it, null where the browser has no locks. */
export function aloneOn(locks: Locks | undefined): (id: string) => Promise<boolean | null> {
  let held: Held | null = null;
  return async (id) => {
    if (!locks) return null;
    if (held?.id === id) return true;
    held?.letGo();
    await held?.gone;
    const free = await new Promise<boolean>((resolve) => {
      held = hold(locks, id, { ifAvailable: true }, resolve);
    });
    // Another page is on it: this one takes its turn when that one is left.
    if (!free) held = hold(locks, id, {}, () => undefined);
    return free;
  };
}

function hold(
  locks: Locks,
  id: string,
  how: { readonly ifAvailable?: true },
  told: (free: boolean) => void,
): Held {
  let letGo = (): void => undefined;
  const until = new Promise<void>((done) => (letGo = done));
  const leaving = new AbortController();
  // A request that takes its turn can be called off before its turn comes.
  const options = how.ifAvailable ? how : { signal: leaving.signal };
  const gone = locks
    .request(`notebook/${id}`, options, (lock) => {
      told(lock !== null);
      return lock === null ? undefined : until;
    })
    .catch(() => told(true));
  return {
    id,
    letGo: () => {
      letGo();
      leaving.abort();
    },
    gone,
  };
}
