// Autosave: soon after a change, at once when asked, told plainly when it can't be, two pages never over one another.
import { createStore } from 'idb-keyval';
import { beforeEach, describe, expect, test } from 'vitest';
import { type Channel, Keeper, type KeeperState } from '../../src/store/keeper.ts';
import { Shelf } from '../../src/store/shelf.ts';

let shelf: Shelf;
let name = '';

beforeEach(() => {
  name = `keeper ${crypto.randomUUID()}`;
  shelf = new Shelf(createStore(name, 'kept'));
});

/** Pages that hear each other, without a browser between them. */
class Room {
  readonly #listeners: ((event: { data: unknown }) => void)[][] = [];

  channel(): Channel {
    const own: ((event: { data: unknown }) => void)[] = [];
    this.#listeners.push(own);
    return {
      postMessage: (data) => {
        for (const others of this.#listeners)
          if (others !== own) for (const hear of others) hear({ data });
      },
      addEventListener: (_, hear) => own.push(hear),
      close: () => undefined,
    };
  }
}

function keeperOn(settings: { room?: Room; revision?: number; shelf?: Shelf } = {}) {
  const states: KeeperState[] = [];
  const waiting: (() => void)[] = [];
  let time = 1000;
  const keeper = new Keeper('a', settings.revision ?? 0, null, {
    shelf: settings.shelf ?? shelf,
    now: () => (time += 1),
    later: (call) => {
      waiting.push(call);
      return () => waiting.splice(waiting.indexOf(call), 1);
    },
    channel: settings.room?.channel() ?? null,
    changed: (state) => states.push(state),
  });
  return { keeper, states, waiting };
}

const text = (words: string) => ({
  id: 'a',
  title: 'Back step',
  text: words,
  identities: null,
});

async function keptText(): Promise<string | null> {
  const taken = await shelf.take('a');
  return taken.kind === 'taken' ? taken.value.text : null;
}

describe('a keeper', () => {
  test('waits for the last of several changes and keeps that one once', async () => {
    const { keeper, states, waiting } = keeperOn();
    keeper.keepSoon(text('o'));
    keeper.keepSoon(text('on'));
    keeper.keepSoon(text('one'));
    expect(waiting).toHaveLength(1);
    expect(await keptText()).toBeNull();
    waiting[0]?.();
    await keeper.flush();
    expect(await keptText()).toBe('one');
    expect(states.at(-1)).toEqual({ kind: 'kept', at: 1001 });
    expect(await shelf.list()).toMatchObject([{ revision: 1 }]);
  });

  test('keeps at once when the page is left', async () => {
    const { keeper } = keeperOn();
    keeper.keepSoon(text('one'));
    await keeper.flush();
    expect(await keptText()).toBe('one');
  });

  test('keeps a change that came while another one was being written', async () => {
    const { keeper, states } = keeperOn();
    keeper.keepSoon(text('one'));
    const first = keeper.flush();
    // The writing has begun, and ends in a later turn.
    await Promise.resolve();
    await Promise.resolve();
    keeper.keepSoon(text('two'));
    await first;
    expect(states.at(-1)).toEqual({ kind: 'keeping' });
    await keeper.flush();
    expect(await keptText()).toBe('two');
  });

  test('tells the other page, which keeps nothing over it', async () => {
    const room = new Room();
    const one = keeperOn({ room });
    const two = keeperOn({ room });
    one.keeper.keepSoon(text('theirs'));
    await one.keeper.flush();
    expect(two.keeper.state).toEqual({ kind: 'behind' });
    two.keeper.keepSoon(text('mine'));
    await two.keeper.flush();
    expect(await keptText()).toBe('theirs');
  });

  test('finds out by itself when it was not told', async () => {
    const one = keeperOn();
    const two = keeperOn();
    one.keeper.keepSoon(text('theirs'));
    await one.keeper.flush();
    two.keeper.keepSoon(text('mine'));
    await two.keeper.flush();
    expect(two.states.at(-1)).toEqual({ kind: 'behind' });
    expect(await keptText()).toBe('theirs');
  });

  test('is not put off by messages about other notebooks or of other kinds', () => {
    const room = new Room();
    const { keeper } = keeperOn({ room });
    const other = room.channel();
    other.postMessage({ id: 'b', revision: 9 });
    other.postMessage({ id: 'a', revision: 0 });
    (other.postMessage as (data: unknown) => void)('hello');
    (other.postMessage as (data: unknown) => void)({ id: 'a' });
    expect(keeper.state.kind).toBe('kept');
  });

  test('says that there is no room left, loses nothing, and keeps again when there is', async () => {
    const full = new DOMException('', 'QuotaExceededError');
    let broken = true;
    const fragile = new Shelf((mode, callback) =>
      broken && mode === 'readwrite'
        ? Promise.reject(full)
        : createStore(name, 'kept')(mode, callback),
    );
    const { keeper, states } = keeperOn({ shelf: fragile });
    keeper.keepSoon(text('one'));
    await keeper.flush();
    expect(states.at(-1)).toEqual({ kind: 'not-kept', why: 'full' });
    broken = false;
    await keeper.flush();
    expect(states.at(-1)?.kind).toBe('kept');
    expect(await keptText()).toBe('one');
  });

  test('says that nothing can be kept where the browser refuses', async () => {
    const closed = new Shelf(() => Promise.reject(new Error('no storage here')));
    const { keeper, states } = keeperOn({ shelf: closed });
    keeper.keepSoon(text('one'));
    await keeper.flush();
    expect(states.at(-1)).toEqual({ kind: 'not-kept', why: 'refused' });
  });

  test('keeps what waits before it is closed, and nothing after', async () => {
    const { keeper } = keeperOn();
    keeper.keepSoon(text('one'));
    await keeper.close();
    keeper.keepSoon(text('two'));
    await keeper.flush();
    expect(await keptText()).toBe('one');
  });
});
