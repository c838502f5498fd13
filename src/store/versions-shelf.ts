// Where the versions of a notebook are kept in the browser, beside the notebook itself: snapshots, each written once and
// never again, and the logs and change orders, which are only added to. Read when somebody asks for versions.
import { type UseStore, promisifyRequest } from 'idb-keyval';
import type { Plain } from '../versions/canonical.ts';
import type { Job } from '../versions/job.ts';
import type { Snapshot } from '../versions/snapshot.ts';
import { commit } from './commit.ts';
import { database } from './database.ts';
import { SNAPSHOT_1, VERSIONS_1 } from './job-shapes.ts';
import { type Taken, taken, takenAgainst } from './shapes.ts';
import { AGAINST, type Keeping, SNAPSHOT, VERSIONS, keptText, revisionOf } from './shelf.ts';

/** What a job holds beside its notebook. */
export type Versions = Omit<Job, 'id' | 'title' | 'text' | 'identities'>;

export interface KeptVersions {
  readonly versions: Versions;
  /** 0: none are kept yet. */
  readonly revision: number;
  /** Seals of snapshots that are listed and can't be read here. */
  readonly unreadable: readonly string[];
}

export const NO_VERSIONS: Versions = {
  origin: null,
  snapshots: [],
  log: [],
  orders: [],
  orderLog: [],
  records: [],
};

export class VersionsShelf {
  readonly #store: UseStore;

  constructor(store: UseStore = database()) {
    this.#store = store;
  }

  /** Of a notebook without any: none. */
  async take(id: string): Promise<Taken<KeptVersions>> {
    const head = taken(VERSIONS_1, 1, await this.#get(VERSIONS + id));
    switch (head.kind) {
      case 'absent':
        return {
          kind: 'taken',
          value: { versions: NO_VERSIONS, revision: 0, unreadable: [] },
        };
      case 'newer':
      case 'unreadable':
        return head;
      case 'taken':
    }
    const { snapshots: seals, revision, v: _v, id: _id, ...beside } = head.value;
    const found = await Promise.all(
      seals.map(async (seal) => taken(SNAPSHOT_1, 1, await this.#get(keyOf(id, seal)))),
    );
    const snapshots = found.flatMap((one): readonly Snapshot[] =>
      one.kind === 'taken' ? [one.value.snapshot] : [],
    );
    const unreadable = seals.filter((_, i) => found[i].kind !== 'taken');
    const records = beside.records as readonly Plain[];
    return {
      kind: 'taken',
      value: { versions: { ...beside, records, snapshots }, revision, unreadable },
    };
  }

  /** What a notebook was made from; null where it was begun by itself, or that can't be read. */
  async origin(id: string): Promise<Versions['origin']> {
    const head = taken(VERSIONS_1, 1, await this.#get(VERSIONS + id));
    return head.kind === 'taken' ? head.value.origin : null;
  }

  /**
   * Keeps them unless another page did after `expected`. A snapshot that is there already is not written again;
   * what can't be read here stays listed where it is.
   */
  async keep(id: string, kept: KeptVersions, versions: Versions): Promise<Keeping> {
    const { snapshots, ...beside } = versions;
    const before = new Set(kept.versions.snapshots.map(({ seal }) => seal));
    const fresh = snapshots.filter(({ seal }) => !before.has(seal));
    const revision = kept.revision + 1;
    const seals = [...kept.unreadable, ...snapshots.map(({ seal }) => seal)];
    const done = await commit(this.#store, {
      expect: { key: VERSIONS + id, holds: (found) => revisionOf(found) === kept.revision },
      puts: [
        ...fresh.map((snapshot) => [keyOf(id, snapshot.seal), { v: 1, snapshot }] as const),
        [VERSIONS + id, { v: 1, id, revision, snapshots: seals, ...beside }],
      ],
    });
    return done.kind === 'done'
      ? { kind: 'kept', revision }
      : { kind: 'behind', revision: revisionOf(done.found) };
  }

  /**
   * A whole job that comes from a file, in one go: an import that is broken off has brought nothing. Where a notebook
   * of this id is kept already nothing is written.
   */
  async bring(job: Job, keptAt: number): Promise<Keeping> {
    const { id, title, text, identities, snapshots, origin, log, orders, orderLog, records } = job;
    const beside = { origin, log, orders, orderLog, records };
    const seals = snapshots.map(({ seal }) => seal);
    const { expect, puts } = keptText({ id, title, text, identities }, 0, keptAt);
    const done = await commit(this.#store, {
      expect,
      puts: [
        ...puts,
        ...snapshots.map((one) => [keyOf(id, one.seal), { v: 1, snapshot: one }] as const),
        [VERSIONS + id, { v: 1, id, revision: 1, snapshots: seals, ...beside }],
      ],
    });
    return done.kind === 'done'
      ? { kind: 'kept', revision: 1 }
      : { kind: 'behind', revision: revisionOf(done.found) };
  }

  /** The seal of the snapshot that the price was set beside last; null: of none. */
  async against(id: string): Promise<string | null> {
    const against = takenAgainst(await this.#get(AGAINST + id));
    return against.kind === 'taken' ? against.value.seal : null;
  }

  async keepAgainst(id: string, seal: string | null): Promise<void> {
    await commit(this.#store, { puts: [[AGAINST + id, { v: 1, seal }]] });
  }

  #get(key: string): Promise<unknown> {
    return this.#store('readonly', (s) => promisifyRequest<unknown>(s.get(key)));
  }
}

function keyOf(id: string, seal: string): string {
  return `${SNAPSHOT}${id}/${seal}`;
}
