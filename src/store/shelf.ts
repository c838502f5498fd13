// Where notebooks are kept between visits: small verbs over one database of the browser.
import { type UseStore, promisifyRequest } from 'idb-keyval';
import type { KeptIdentities } from '../versions/identities.ts';
import { type Alongside, type KeptAlongside, takenAlongside } from './alongside-shapes.ts';
import { type HandedLast, keptHanded, takenHanded } from './client-shapes.ts';
import { type Commit, type Committed, commit } from './commit.ts';
import { database } from './database.ts';
import {
  type KeptEntry,
  type KeptHalf,
  type KeptNotebook,
  type KeptPlace,
  type Taken,
  takenEntry,
  takenHalf,
  takenRows,
  takenLast,
  takenNotebook,
  takenPlace,
  takenSaved,
} from './shapes.ts';

const NOTEBOOK = 'notebook/';
const ENTRY = 'entry/';
const PLACE = 'place/';
const SAVED = 'saved/';
const HALF = 'half/';
const ROWS = 'rows/';
const ALONGSIDE = 'alongside/';
const CLIENT = 'client/';
const LAST = 'last';
export const VERSIONS = 'versions/';
/** Which snapshot the price of a notebook stands beside. */
export const AGAINST = 'against/';
/** Of each snapshot: `snapshot/`, the notebook's id, `/`, its seal. */
export const SNAPSHOT = 'snapshot/';

/** A notebook as it is handed over to be kept. */
export interface KeptText {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Who is who in the text; null where nobody gave identities. */
  readonly identities: KeptIdentities | null;
}

/** Of a notebook, and of what is kept beside it: snapshots, orders, the record. 0: of none. */
export interface Revisions {
  readonly revision: number;
  readonly beside: number;
}

export const NO_REVISIONS: Revisions = { revision: 0, beside: 0 };

export type Keeping =
  | { readonly kind: 'kept'; readonly revision: number }
  /** Another page kept this notebook in the meantime: nothing was written. */
  | { readonly kind: 'behind'; readonly revision: number };

export class Shelf {
  readonly #store: UseStore;

  constructor(store: UseStore = database()) {
    this.#store = store;
  }

  /** Everything kept here, the last kept first. What can't be read is left where it is. */
  async list(): Promise<readonly KeptEntry[]> {
    const range = IDBKeyRange.bound(ENTRY, `${ENTRY}\uffff`);
    const raw = await this.#store('readonly', (s) => promisifyRequest<unknown[]>(s.getAll(range)));
    return raw
      .map(takenEntry)
      .flatMap((entry) => (entry.kind === 'taken' ? [entry.value] : []))
      .sort((a, b) => b.keptAt - a.keptAt);
  }

  async take(id: string): Promise<Taken<KeptNotebook>> {
    return takenNotebook(await this.#get(NOTEBOOK + id));
  }

  /**
   * Keeps a notebook, unless another page kept it after `expected`, the revision this page knows of (0: it is new).
   * Rejects when the browser can't write: what was kept before is then still there.
   */
  async keep(notebook: KeptText, expected: number, keptAt: number): Promise<Keeping> {
    const revision = expected + 1;
    const done = await commit(this.#store, keptText(notebook, expected, keptAt));
    return done.kind === 'done'
      ? { kind: 'kept', revision }
      : { kind: 'behind', revision: revisionOf(done.found) };
  }

  async remove(id: string): Promise<Committed> {
    const range = IDBKeyRange.bound(`${SNAPSHOT}${id}/`, `${SNAPSHOT}${id}/\uffff`);
    const snapshots = await this.#store('readonly', (s) =>
      promisifyRequest<IDBValidKey[]>(s.getAllKeys(range)),
    );
    const own = [
      NOTEBOOK,
      ENTRY,
      PLACE,
      SAVED,
      HALF,
      ROWS,
      ALONGSIDE,
      VERSIONS,
      AGAINST,
      CLIENT,
    ].map((key) => key + id);
    return commit(this.#store, { puts: [], drops: [...own, ...snapshots.map(String)] });
  }

  async place(id: string): Promise<KeptPlace | null> {
    const place = takenPlace(await this.#get(PLACE + id));
    return place.kind === 'taken' ? place.value : null;
  }

  async keepPlace(id: string, place: Omit<KeptPlace, 'v'>): Promise<void> {
    await commit(this.#store, { puts: [[PLACE + id, { v: 1, ...place }]] });
  }

  /** The revisions that were saved as a file last. */
  async saved(id: string): Promise<Revisions> {
    const saved = takenSaved(await this.#get(SAVED + id));
    return saved.kind === 'taken' ? saved.value : NO_REVISIONS;
  }

  async keepSaved(id: string, { revision, beside }: Revisions, at: number): Promise<void> {
    await commit(this.#store, { puts: [[SAVED + id, { v: 2, revision, beside, at }]] });
  }

  /** The line that somebody was in the middle of when this notebook was left. */
  async half(id: string): Promise<KeptHalf | null> {
    const half = takenHalf(await this.#get(HALF + id));
    return half.kind === 'taken' ? half.value : null;
  }

  /** Null: nobody is any more. */
  async keepHalf(id: string, half: Omit<KeptHalf, 'v'> | null): Promise<void> {
    const key = HALF + id;
    await commit(
      this.#store,
      half ? { puts: [[key, { v: 1, ...half }]] } : { puts: [], drops: [key] },
    );
  }

  /** Rows for the job record that were not put in; empty where none are left. */
  async rows(id: string): Promise<string> {
    const rows = takenRows(await this.#get(ROWS + id));
    return rows.kind === 'taken' ? rows.value.text : '';
  }

  async keepRows(id: string, text: string): Promise<void> {
    const key = ROWS + id;
    await commit(
      this.#store,
      text === '' ? { puts: [], drops: [key] } : { puts: [[key, { v: 1, text }]] },
    );
  }

  /** What is watched and compared beside a notebook. */
  async alongside(id: string): Promise<Taken<KeptAlongside>> {
    return takenAlongside(await this.#get(ALONGSIDE + id));
  }

  /** Keeps it, unless another page did after `expected` (0: nothing was laid there yet). */
  async keepAlongside(id: string, alongside: Alongside, expected: number): Promise<Keeping> {
    const revision = expected + 1;
    const { watched, varied, alternatives } = alongside;
    const kept: KeptAlongside = { v: 1, revision, watched, varied, alternatives };
    const done = await commit(this.#store, {
      puts: [[ALONGSIDE + id, kept]],
      expect: { key: ALONGSIDE + id, holds: (found) => revisionOf(found) === expected },
    });
    return done.kind === 'done'
      ? { kind: 'kept', revision }
      : { kind: 'behind', revision: revisionOf(done.found) };
  }

  /** How it was handed to a client last; null where it never was. */
  async handed(id: string): Promise<HandedLast | null> {
    const handed = takenHanded(await this.#get(CLIENT + id));
    return handed.kind === 'taken' ? handed.value : null;
  }

  async keepHanded(id: string, handed: HandedLast): Promise<void> {
    await commit(this.#store, { puts: [[CLIENT + id, keptHanded(handed)]] });
  }

  /** The id of the notebook that was open last. */
  async last(): Promise<string | null> {
    const last = takenLast(await this.#get(LAST));
    return last.kind === 'taken' ? last.value.id : null;
  }

  async keepLast(id: string): Promise<void> {
    await commit(this.#store, { puts: [[LAST, { v: 1, id }]] });
  }

  #get(key: string): Promise<unknown> {
    return this.#store('readonly', (s) => promisifyRequest<unknown>(s.get(key)));
  }
}

/** What is written of a notebook, and what has to stand there before. */
export function keptText(
  { id, title, text, identities }: KeptText,
  expected: number,
  keptAt: number,
): Required<Pick<Commit, 'puts' | 'expect'>> {
  const revision = expected + 1;
  const kept: KeptNotebook = { v: 2, id, title, text, identities, revision, keptAt };
  const entry: KeptEntry = { v: 1, id, title, revision, keptAt };
  return {
    expect: { key: NOTEBOOK + id, holds: (found) => revisionOf(found) === expected },
    puts: [
      [NOTEBOOK + id, kept],
      [ENTRY + id, entry],
    ],
  };
}

/** 0 where nothing is kept; of what a later version kept, too, so that it is never written over. */
export function revisionOf(found: unknown): number {
  if (found === undefined) return 0;
  const revision =
    typeof found === 'object' && found && 'revision' in found ? found.revision : null;
  return typeof revision === 'number' ? revision : -1;
}
