// The connection to the browser's database: to the disk when it says done, made anew when it was closed.
import { promisifyRequest } from 'idb-keyval';
import { expect, test } from 'vitest';
import { commit } from '../../src/store/commit.ts';
import { database } from '../../src/store/database.ts';

const get = (store: ReturnType<typeof database>, key: string) =>
  store('readonly', (values) => promisifyRequest<unknown>(values.get(key)));

test('a write is done when the disk has it', async () => {
  const store = database(`database ${crypto.randomUUID()}`);
  const durability = await store('readwrite', (values) =>
    Promise.resolve(values.transaction.durability),
  );
  expect(durability).toBe('strict');
});

test('a connection that was closed is made anew, and the write is made', async () => {
  const store = database(`database ${crypto.randomUUID()}`);
  await store('readwrite', (values) => {
    values.transaction.db.close();
    return Promise.resolve();
  });
  await commit(store, { puts: [['one', 1]] });
  expect(await get(store, 'one')).toBe(1);
});

test('another page that wants the database away is not held up', async () => {
  const name = `database ${crypto.randomUUID()}`;
  const store = database(name);
  await commit(store, { puts: [['one', 1]] });
  await promisifyRequest(indexedDB.deleteDatabase(name));
  expect(await get(store, 'one')).toBeUndefined();
});
