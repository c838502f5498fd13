// The browser's database that everything here is kept in. A write counts as done when the disk has it, not when the
// browser means to write it soon: a machine whose power fails keeps what the page called kept.
import { type UseStore, promisifyRequest } from 'idb-keyval';

export function database(name = 'storyrod', table = 'kept'): UseStore {
  let connection: Promise<IDBDatabase> | null = null;

  const connect = (): Promise<IDBDatabase> => {
    if (connection) return connection;
    const opening = open(name, table);
    connection = opening;
    const forget = (): void => {
      if (connection === opening) connection = null;
    };
    opening.then((base) => {
      // Closed by the browser: the next one who asks connects anew.
      base.addEventListener('close', forget);
      // Another page wants it away or otherwise: it is not held back.
      base.addEventListener('versionchange', () => {
        forget();
        base.close();
      });
    }, forget);
    return opening;
  };

  return async (mode, work) => {
    const base = await connect();
    try {
      return await work(begin(base, table, mode));
    } catch (cause) {
      if (!isClosed(cause)) throw cause;
      connection = null;
      return work(begin(await connect(), table, mode));
    }
  };
}

function open(name: string, table: string): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    // Where keeping is forbidden even this throws, and the promise says so.
    const request = indexedDB.open(name);
    request.addEventListener('upgradeneeded', () => request.result.createObjectStore(table));
    promisifyRequest(request).then(resolve, reject);
  });
}

function begin(base: IDBDatabase, table: string, mode: IDBTransactionMode): IDBObjectStore {
  const durability = mode === 'readonly' ? 'default' : 'strict';
  return base.transaction(table, mode, { durability }).objectStore(table);
}

/** The connection went before the transaction began: nothing was written by it. */
function isClosed(cause: unknown): boolean {
  return cause instanceof DOMException && cause.name === 'InvalidStateError';
}
