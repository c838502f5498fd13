// A store that breaks at one step of a write, as a full disk or a browser that gives up would.
import type { UseStore } from 'idb-keyval';

/** The steps of a write, in order. */
export type Step =
  /** There is no connection. */
  | 'connect'
  | 'begin'
  /** What stands there is looked at before anything is written. */
  | 'look'
  /** The nth value, counted from 1: asking for it throws, or the browser gives up the whole when it gets there. */
  | `put ${number}`
  | `written ${number}`
  | `delete ${number}`
  /** All is written, and the disk has no room for it. */
  | 'end';

export const FULL = new DOMException('No room is left.', 'QuotaExceededError');

export class Faulty {
  /** Null: nothing breaks. */
  at: Step | null = null;
  /** How often it broke. */
  broke = 0;
  readonly use: UseStore;

  constructor(base: UseStore) {
    this.use = (mode, work) => {
      if (mode === 'readonly') return base(mode, work);
      if (this.#breaks('connect')) return Promise.reject(FULL);
      return base(mode, (values) => {
        if (this.#breaks('begin')) throw FULL;
        return work(this.#watched(values));
      });
    };
  }

  #breaks(step: Step): boolean {
    if (step !== this.at) return false;
    this.broke++;
    return true;
  }

  #watched(values: IDBObjectStore): IDBObjectStore {
    const work = values.transaction;
    let [puts, drops, open] = [0, 0, 0];
    let cause: DOMException | null = null;
    const giveUp = (): void => {
      cause = FULL;
      work.abort();
    };
    /** After the last request nothing is left but to end. */
    const followed = (request: IDBRequest): IDBRequest => {
      open++;
      request.addEventListener('success', () => {
        open--;
        // What hears this success may ask for more.
        queueMicrotask(() => {
          if (open === 0 && cause === null && puts + drops > 0 && this.#breaks('end')) giveUp();
        });
      });
      return request;
    };
    const transaction = shown(work, {
      error: () => cause ?? work.error,
    });
    return shown(values, {
      transaction: () => transaction,
      get: () => (key: IDBValidKey) => {
        const request = followed(values.get(key));
        if (this.#breaks('look')) giveUp();
        return request;
      },
      put: () => (value: unknown, key: IDBValidKey) => {
        puts++;
        if (this.#breaks(`put ${puts}`)) throw FULL;
        const request = followed(values.put(value, key));
        if (this.#breaks(`written ${puts}`)) request.addEventListener('success', giveUp);
        return request;
      },
      delete: () => (key: IDBValidKey) => {
        drops++;
        if (this.#breaks(`delete ${drops}`)) throw FULL;
        return followed(values.delete(key));
      },
    });
  }
}

/** An object with some of its members otherwise; its methods are still its own. */
function shown<T extends object>(target: T, otherwise: Readonly<Record<string, () => unknown>>): T {
  return new Proxy(target, {
    get: (_, name) => {
      const other = typeof name === 'string' ? otherwise[name] : undefined;
      if (other) return other();
      const own: unknown = Reflect.get(target, name, target);
      return typeof own === 'function' ? own.bind(target) : own;
    },
  });
}
