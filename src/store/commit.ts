// Writing several values at once or not at all, and only when nobody wrote in between.
import type { UseStore } from 'idb-keyval';

export type Committed =
  | { readonly kind: 'done' }
  /** What stands there is not what was expected: nothing was written. */
  | { readonly kind: 'otherwise'; readonly found: unknown };

export interface Commit {
  readonly puts: readonly (readonly [key: string, value: unknown])[];
  readonly drops?: readonly string[];
  /** Looked at in the same transaction, before anything is written. */
  readonly expect?: { readonly key: string; readonly holds: (found: unknown) => boolean };
}

/** One transaction: a value that can't be stored, or a full disk, leaves everything as it was. */
export function commit(store: UseStore, wanted: Commit): Promise<Committed> {
  return store(
    'readwrite',
    (values) =>
      new Promise<Committed>((resolve, reject) => {
        const work = values.transaction;
        let outcome: Committed = { kind: 'done' };
        let cause: unknown = null;
        const write = (): void => {
          try {
            for (const [key, value] of wanted.puts) values.put(value, key);
            for (const key of wanted.drops ?? []) values.delete(key);
          } catch (thrown) {
            cause = thrown;
            work.abort();
          }
        };
        work.addEventListener('complete', () => resolve(outcome));
        // After an abort of our own the transaction has no error to give.
        work.addEventListener('abort', () => reject(asError(cause ?? work.error)));
        const { expect } = wanted;
        if (!expect) {
          write();
          return;
        }
        const look = values.get(expect.key);
        look.addEventListener('success', () => {
          if (expect.holds(look.result)) write();
          else outcome = { kind: 'otherwise', found: look.result };
        });
      }),
  );
}

function asError(cause: unknown): Error {
  return cause instanceof Error || cause instanceof DOMException
    ? cause
    : new Error('The browser gave up the writing without saying why.');
}
