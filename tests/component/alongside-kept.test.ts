// What is kept beside a notebook: the saved shape as it was shipped, whole or not at all, never over another page's.
import { createStore, promisifyRequest } from 'idb-keyval';
import { describe, expect, test } from 'vitest';
import { takenAlongside } from '../../src/store/alongside-shapes.ts';
import { Shelf } from '../../src/store/shelf.ts';
import first from '../versions/files/alongside-1.json';

const { watched, varied, alternatives } = first;

const LAID = {
  watched: watched.map((one) => ({
    ...one,
    of: one.of as 'cell' | 'part' | 'price',
    better: one.better as 'less' | null,
  })),
  varied,
  alternatives,
};

function shelfOf() {
  const store = createStore(`beside ${crypto.randomUUID()}`, 'kept');
  const raw = (key: string): Promise<unknown> =>
    store('readonly', (values) => promisifyRequest<unknown>(values.get(key)));
  return { shelf: new Shelf(store), raw };
}

describe('what is laid beside a notebook', () => {
  test('is read as it was first kept', () => {
    expect(takenAlongside(first)).toEqual({ kind: 'taken', value: first });
  });

  test('is kept as it is read, one revision after the other', async () => {
    const { shelf, raw } = shelfOf();
    expect(await shelf.alongside('a')).toEqual({ kind: 'absent' });
    for (const revision of [1, 2, 3, 4]) {
      expect(await shelf.keepAlongside('a', LAID, revision - 1)).toEqual({
        kind: 'kept',
        revision,
      });
    }
    expect(await raw('alongside/a')).toEqual(first);
  });

  test('is not written over what another page laid there in between', async () => {
    const { shelf } = shelfOf();
    await shelf.keepAlongside('a', LAID, 0);
    const mine = { ...LAID, watched: [] };
    expect(await shelf.keepAlongside('a', mine, 0)).toEqual({ kind: 'behind', revision: 1 });
    expect(await shelf.alongside('a')).toMatchObject({ value: { revision: 1, varied } });
  });

  test('goes with its notebook', async () => {
    const { shelf } = shelfOf();
    await shelf.keepAlongside('a', LAID, 0);
    await shelf.keepAlongside('b', LAID, 0);
    await shelf.remove('a');
    expect(await shelf.alongside('a')).toEqual({ kind: 'absent' });
    expect((await shelf.alongside('b')).kind).toBe('taken');
  });

  test('of a later shape is left alone, and what can’t be read says why', () => {
    expect(takenAlongside({ ...first, v: 2 })).toEqual({ kind: 'newer' });
    const wrong = (more: object): string => {
      const read = takenAlongside({ ...first, ...more });
      return read.kind === 'unreadable' ? read.why : read.kind;
    };
    expect(wrong({ watched: null })).toMatch(/^watched: /);
    expect(wrong({ revision: 0 })).toMatch(/^revision: /);
    expect(wrong({ alternatives: [{ name: 'A', puts: [{ key: 'a-2' }] }] })).toMatch(
      /^alternatives\.0\.puts\.0\.formula: /,
    );
    const [one] = watched;
    expect(wrong({ watched: [{ ...one, began: { ...one.began, amount: 'forty' } }] })).toBe(
      'watched.0.began.amount: no number',
    );
    expect(wrong({ watched: [{ ...one, of: 'row' }] })).toMatch(/^watched\.0\.of: /);
  });

  test('keeps what a later version of the same shape added', () => {
    const more = { ...first, colour: 'graphite' };
    expect(takenAlongside(more)).toEqual({ kind: 'taken', value: more });
  });
});
