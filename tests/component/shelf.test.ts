// Keeping notebooks in the browser's own database: whole or not at all, never over somebody else's work.
import { createStore, promisifyRequest } from 'idb-keyval';
import { beforeEach, describe, expect, test } from 'vitest';
import { commit } from '../../src/store/commit.ts';
import { Shelf } from '../../src/store/shelf.ts';

let shelf: Shelf;
let store: ReturnType<typeof createStore>;
let name = '';

const raw = (key: string): Promise<unknown> =>
  store('readonly', (values) => promisifyRequest<unknown>(values.get(key)));
const put = (key: string, value: unknown) => commit(store, { puts: [[key, value]] });

beforeEach(() => {
  // A database of its own for each test.
  name = `shelf ${crypto.randomUUID()}`;
  store = createStore(name, 'kept');
  shelf = new Shelf(store);
});

const identities = {
  stem: 'a-',
  next: 3,
  parts: [{ key: 'a-1', name: 'Steps', cells: [['a-2', 'Waste'] as const] }],
};

const notebook = (text: string) => ({ id: 'a', title: 'Back step', text, identities });

describe('a shelf', () => {
  test('gives back what was kept on it, letter for letter', async () => {
    const text = '# Back step\r\n\n- Größe: 3 ft – “half”\u0000? \ud83e\ude9a\n';
    expect(await shelf.keep(notebook(text), 0, 1000)).toEqual({ kind: 'kept', revision: 1 });
    const taken = await shelf.take('a');
    expect(taken).toEqual({
      kind: 'taken',
      value: { v: 2, id: 'a', title: 'Back step', text, identities, revision: 1, keptAt: 1000 },
    });
  });

  test('has nothing for an id it does not know', async () => {
    expect(await shelf.take('nobody')).toEqual({ kind: 'absent' });
    expect(await shelf.place('nobody')).toBeNull();
    expect(await shelf.last()).toBeNull();
    expect(await shelf.list()).toEqual([]);
  });

  test('counts revisions up', async () => {
    await shelf.keep(notebook('one'), 0, 1);
    expect(await shelf.keep(notebook('two'), 1, 2)).toEqual({ kind: 'kept', revision: 2 });
  });

  test('writes nothing over what another page kept in between', async () => {
    await shelf.keep(notebook('one'), 0, 1);
    await shelf.keep(notebook('theirs'), 1, 2);
    expect(await shelf.keep(notebook('mine'), 1, 3)).toEqual({ kind: 'behind', revision: 2 });
    const taken = await shelf.take('a');
    expect(taken.kind === 'taken' && taken.value.text).toBe('theirs');
    expect((await shelf.list()).map(({ keptAt }) => keptAt)).toEqual([2]);
  });

  test('lets one of two pages through that keep at the same moment', async () => {
    await shelf.keep(notebook('one'), 0, 1);
    const other = new Shelf(createStore(name, 'kept'));
    const both = await Promise.all([
      shelf.keep(notebook('left'), 1, 2),
      other.keep(notebook('right'), 1, 2),
    ]);
    expect(both.map(({ kind }) => kind).sort()).toEqual(['behind', 'kept']);
  });

  test('lists what is kept, the last kept first, without the texts', async () => {
    await shelf.keep(notebook('x'), 0, 5);
    await shelf.keep({ id: 'b', title: 'Fence', text: 'y', identities: null }, 0, 9);
    expect(await shelf.list()).toEqual([
      { v: 1, id: 'b', title: 'Fence', revision: 1, keptAt: 9 },
      { v: 1, id: 'a', title: 'Back step', revision: 1, keptAt: 5 },
    ]);
  });

  test('keeps how a notebook was handed to a client, until the notebook goes; leaves a later shape alone', async () => {
    const handed = { level: 'work', from: 'Two Sticks', whom: 'the house', until: '2026-04-15' };
    expect(await shelf.handed('a')).toBeNull();
    await shelf.keepHanded('a', handed);
    expect(await shelf.handed('a')).toEqual({ v: 1, ...handed });
    expect(await shelf.handed('b')).toBeNull();
    await shelf.remove('a');
    expect(await raw('client/a')).toBeUndefined();
    await put('client/a', { v: 2, level: 'song' });
    expect(await shelf.handed('a')).toBeNull();
    expect(await raw('client/a')).toEqual({ v: 2, level: 'song' });
  });

  test('keeps the place where one left off and which notebook was open', async () => {
    await shelf.keepPlace('a', { part: 'Landing', cell: 'Waste', scroll: 420 });
    await shelf.keepLast('a');
    expect(await shelf.place('a')).toEqual({ v: 1, part: 'Landing', cell: 'Waste', scroll: 420 });
    expect(await shelf.last()).toBe('a');
  });

  test('forgets a notebook with all that belongs to it', async () => {
    await shelf.keep(notebook('x'), 0, 5);
    await shelf.keepPlace('a', { part: '', cell: null, scroll: 0 });
    await shelf.remove('a');
    expect(await shelf.take('a')).toEqual({ kind: 'absent' });
    expect(await shelf.list()).toEqual([]);
    expect(await shelf.place('a')).toBeNull();
  });

  test('leaves alone what a later version kept, and does not write over it', async () => {
    const later = { v: 3, id: 'a', title: 'Back step', pages: [], revision: 7, keptAt: 3 };
    await put('notebook/a', later);
    expect(await shelf.take('a')).toEqual({ kind: 'newer' });
    expect(await shelf.keep(notebook('mine'), 0, 4)).toEqual({ kind: 'behind', revision: 7 });
    expect(await raw('notebook/a')).toEqual(later);
  });

  test('says why something can’t be read and leaves it where it is', async () => {
    await put('notebook/a', {
      v: 1,
      id: 'a',
      title: 'Back step',
      text: 12,
      revision: 1,
      keptAt: 3,
    });
    expect(await shelf.take('a')).toMatchObject({
      kind: 'unreadable',
      why: expect.stringContaining('text'),
    });
    await put('entry/a', 'nonsense');
    expect(await shelf.list()).toEqual([]);
    expect(await raw('entry/a')).toBe('nonsense');
  });

  test('takes what was kept before there were identities, and keeps it with them from then on', async () => {
    const first = { v: 1, id: 'a', title: 'Back step', text: 'x', revision: 4, keptAt: 3 };
    await put('notebook/a', first);
    expect(await shelf.take('a')).toEqual({
      kind: 'taken',
      value: { ...first, v: 2, identities: null },
    });
    expect(await raw('notebook/a')).toEqual(first);
    expect(await shelf.keep(notebook('y'), 4, 5)).toEqual({ kind: 'kept', revision: 5 });
    expect(await shelf.take('a')).toMatchObject({ kind: 'taken', value: { identities } });
  });

  test('keeps fields that a later version added', async () => {
    await put('notebook/a', {
      v: 1,
      id: 'a',
      title: 't',
      text: 'x',
      revision: 1,
      keptAt: 3,
      colour: 'keel',
    });
    expect(await shelf.take('a')).toMatchObject({ kind: 'taken', value: { colour: 'keel' } });
  });
});

describe('a commit', () => {
  test('of which one value can’t be stored leaves nothing behind', async () => {
    await put('one', 'before');
    const wanted = {
      puts: [
        ['one', 'after'],
        ['two', () => 1],
        ['three', 3],
      ] as const,
    };
    await expect(commit(store, wanted)).rejects.toThrow(/could not be cloned/);
    expect(await raw('one')).toBe('before');
    expect(await raw('three')).toBeUndefined();
  });

  test('writes only when what stands there is what was expected', async () => {
    await put('one', 'theirs');
    const done = await commit(store, {
      expect: { key: 'one', holds: (found) => found === 'mine' },
      puts: [['one', 'new']],
    });
    expect(done).toEqual({ kind: 'otherwise', found: 'theirs' });
    expect(await raw('one')).toBe('theirs');
  });
});
