// Versions in the browser's own database: snapshots written once, logs added to, never over another page's.
import { createStore, promisifyRequest } from 'idb-keyval';
import { beforeEach, describe, expect, test } from 'vitest';
import { commit } from '../../src/store/commit.ts';
import { Shelf } from '../../src/store/shelf.ts';
import { type KeptVersions, NO_VERSIONS, VersionsShelf } from '../../src/store/versions-shelf.ts';
import { verify } from '../../src/versions/snapshot.ts';
import { logged } from '../../src/versions/standing.ts';
import { frozen, opened } from '../versions/sides.ts';

let store: ReturnType<typeof createStore>;
let shelf: VersionsShelf;

const raw = (key: string): Promise<unknown> =>
  store('readonly', (values) => promisifyRequest<unknown>(values.get(key)));
const keys = () =>
  store('readonly', (values) => promisifyRequest<IDBValidKey[]>(values.getAllKeys()));

async function kept(): Promise<KeptVersions> {
  const taken = await shelf.take('a');
  if (taken.kind !== 'taken') throw new Error(taken.kind);
  return taken.value;
}

beforeEach(() => {
  // A database of its own for each test.
  store = createStore(`versions ${crypto.randomUUID()}`, 'kept');
  shelf = new VersionsShelf(store);
});

const job = opened('# K\n\n## P\n\n- A: $1\n  - cost: fee\n');
const [one, two] = [frozen(job, 'Bid 1'), frozen(job, 'Bid 2')];

describe('versions on the shelf', () => {
  test('are none where none were kept', async () => {
    expect(await kept()).toEqual({ versions: NO_VERSIONS, revision: 0, unreadable: [] });
  });

  test('come back as they were, every hash right', async () => {
    const log = logged([], { snapshot: one.seal, happened: 'sent', date: '2026-03-04', note: '' });
    const versions = { ...NO_VERSIONS, snapshots: [one, two], log };
    expect(await shelf.keep('a', await kept(), versions)).toEqual({ kind: 'kept', revision: 1 });
    const back = await kept();
    expect(back).toEqual({ versions, revision: 1, unreadable: [] });
    expect(back.versions.snapshots.flatMap(verify)).toEqual([]);
  });

  test('write a snapshot once, and nothing over what another page kept', async () => {
    await shelf.keep('a', await kept(), { ...NO_VERSIONS, snapshots: [one] });
    const mine = await kept();
    const key = `snapshot/a/${one.seal}`;
    const marked = { ...((await raw(key)) as object), v: 1, snapshot: { ...one, note: 'marked' } };
    await commit(store, { puts: [[key, marked]] });
    await shelf.keep('a', mine, { ...mine.versions, snapshots: [one, two] });
    expect(await raw(key)).toEqual(marked);
    expect((await kept()).versions.snapshots.flatMap(verify)).toEqual(['label']);
    expect(await shelf.keep('a', mine, NO_VERSIONS)).toEqual({ kind: 'behind', revision: 2 });
    expect((await kept()).versions.snapshots).toHaveLength(2);
  });

  test('leave alone what a later version kept, and keep listing what can not be read', async () => {
    await shelf.keep('a', await kept(), { ...NO_VERSIONS, snapshots: [one, two] });
    await commit(store, { puts: [[`snapshot/a/${one.seal}`, { v: 2 }]] });
    const mine = await kept();
    expect(mine.unreadable).toEqual([one.seal]);
    await shelf.keep('a', mine, mine.versions);
    expect((await kept()).unreadable).toEqual([one.seal]);
    await commit(store, { puts: [['versions/a', { v: 2 }]] });
    expect(await shelf.take('a')).toEqual({ kind: 'newer' });
  });

  test('go with their notebook, and with no other', async () => {
    for (const id of ['a', 'b']) {
      const none = { versions: NO_VERSIONS, revision: 0, unreadable: [] };
      await shelf.keep(id, none, { ...NO_VERSIONS, snapshots: [one] });
    }
    await new Shelf(store).remove('a');
    expect(await keys()).toEqual([`snapshot/b/${one.seal}`, 'versions/b']);
  });
});
