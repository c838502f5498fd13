// What came of being asked is kept on this machine, in a shape of its own, and can be cleared.
import { createStore, promisifyRequest } from 'idb-keyval';
import { beforeEach, describe, expect, test } from 'vitest';
import { commit } from '../../src/store/commit.ts';
import { type Sitting, takenSitting } from '../../src/store/practice-shapes.ts';
import { PracticeShelf } from '../../src/store/practice-shelf.ts';
import { Shelf } from '../../src/store/shelf.ts';

let store: ReturnType<typeof createStore>;
let shelf: PracticeShelf;

beforeEach(() => {
  store = createStore(`practice ${crypto.randomUUID()}`, 'kept');
  shelf = new PracticeShelf(store);
});

const sitting = (id: string, at: number): Sitting => ({
  id,
  at,
  notebook: 'Kestrel Court',
  result: 'Bags',
  seed: 7,
  steps: [{ name: 'Volume', cameOut: 'after-hint', mistakes: ['inches-for-feet'] }],
});

/** As it was written the first time; never to be written anew. */
const FIRST = {
  v: 1,
  id: 'a',
  at: 1000,
  notebook: 'Kestrel Court',
  result: 'Bags',
  seed: null,
  steps: [
    { name: 'Volume', cameOut: 'first', mistakes: [] },
    { name: 'Bags', cameOut: 'shown', mistakes: ['rounded-down', 'a mistake of a later version'] },
  ],
};

describe('the shape of a sitting', () => {
  test('is read as it was first written', () => {
    expect(takenSitting(FIRST)).toEqual({ kind: 'taken', value: FIRST });
  });

  test('of a later version is left alone, and what is none is told', () => {
    expect(takenSitting({ ...FIRST, v: 2 })).toEqual({ kind: 'newer' });
    expect(
      takenSitting({ ...FIRST, steps: [{ name: 'Bags', cameOut: 'guessed', mistakes: [] }] }),
    ).toMatchObject({ kind: 'unreadable' });
    expect(takenSitting(undefined)).toEqual({ kind: 'absent' });
  });
});

describe('the shelf', () => {
  test('gives back what was kept, the last first, each sitting once', async () => {
    await shelf.keep(sitting('a', 1));
    await shelf.keep(sitting('b', 2));
    await shelf.keep({ ...sitting('a', 1), steps: [] });
    const { sittings, others } = await shelf.list();
    expect(sittings.map(({ id, steps }) => [id, steps.length])).toEqual([
      ['b', 1],
      ['a', 0],
    ]);
    expect(others).toBe(0);
  });

  test('carries the number of its shape', async () => {
    await shelf.keep(sitting('a', 1));
    const raw = await store('readonly', (s) => promisifyRequest<unknown>(s.get('practice/a')));
    expect(raw).toMatchObject({ v: 1 });
  });

  test('counts what it can not read, and leaves it', async () => {
    await commit(store, { puts: [['practice/z', { v: 9 }]] });
    expect(await shelf.list()).toEqual({ sittings: [], others: 1 });
  });

  test('is cleared of all of it and of nothing else', async () => {
    const notebooks = new Shelf(store);
    await notebooks.keep({ id: 'n', title: 'K', text: '# K\n', identities: null }, 0, 1);
    await shelf.keep(sitting('a', 1));
    await commit(store, { puts: [['practice/z', { v: 9 }]] });
    await shelf.clear();
    expect(await shelf.list()).toEqual({ sittings: [], others: 0 });
    expect((await notebooks.take('n')).kind).toBe('taken');
  });
});
