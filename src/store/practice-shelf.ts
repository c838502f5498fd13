// Where it is kept on this machine what came of being asked; it is part of no notebook and of no file.
import { type UseStore, promisifyRequest } from 'idb-keyval';
import { type Committed, commit } from './commit.ts';
import { database } from './database.ts';
import { type Sitting, keptSitting, takenSitting } from './practice-shapes.ts';

const PRACTICE = 'practice/';
const ALL = [PRACTICE, `${PRACTICE}\uffff`] as const;

export class PracticeShelf {
  readonly #store: UseStore;

  constructor(store: UseStore = database()) {
    this.#store = store;
  }

  /** The last first. What a later version kept, or nobody can read, is left where it is and counted. */
  async list(): Promise<{ readonly sittings: readonly Sitting[]; readonly others: number }> {
    const range = IDBKeyRange.bound(...ALL);
    const raw = await this.#store('readonly', (s) => promisifyRequest<unknown[]>(s.getAll(range)));
    const all = raw.map(takenSitting);
    const sittings = all.flatMap((one) => (one.kind === 'taken' ? [one.value] : []));
    return {
      sittings: sittings.toSorted((a, b) => b.at - a.at),
      others: all.length - sittings.length,
    };
  }

  /** In the place of the same sitting as it was before. */
  keep(sitting: Sitting): Promise<Committed> {
    return commit(this.#store, { puts: [[PRACTICE + sitting.id, keptSitting(sitting)]] });
  }

  /** All of it, also what can't be read here. */
  async clear(): Promise<Committed> {
    const range = IDBKeyRange.bound(...ALL);
    const keys = await this.#store('readonly', (s) =>
      promisifyRequest<IDBValidKey[]>(s.getAllKeys(range)),
    );
    return commit(this.#store, { puts: [], drops: keys.map(String) });
  }
}
