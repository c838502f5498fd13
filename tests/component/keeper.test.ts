// Autosave: soon after a change, at once when asked, told plainly when it can't be, two pages never over one another.
import { createStore } from 'idb-keyval';
import { beforeEach, describe, expect, test } from 'vitest';
import { Journal, type Slips } from '../../src/store/journal.ts';
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

/** Slips that are gone with the test. */
function slips(): Slips {
  const held = new Map<string, string>();
  return {
    get length() {
      return held.size;
    },
    key: (n) => [...held.keys()][n] ?? null,
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
    removeItem: (key) => void held.delete(key),
  };
}

interface Settings {
  readonly room?: Room;
  readonly revision?: number;
  readonly shelf?: Shelf;
  readonly journal?: Journal;
  readonly now?: () => number;
}

function keeperOn(settings: Settings = {}) {
  const states: KeeperState[] = [];
  const waiting: (() => void)[] = [];
  const waits: string[] = [];
  const moves: number[] = [];
  let time = 1000;
  const keeper = new Keeper('a', settings.revision ?? 0, null, {
    shelf: settings.shelf ?? shelf,
    journal: settings.journal ?? new Journal(null, 'one'),
    now: settings.now ?? (() => (time += 1)),
    later: (call, wait) => {
      waiting.push(call);
      waits.push(wait);
      return () => waiting.splice(waiting.indexOf(call), 1);
    },
    channel: settings.room?.channel() ?? null,
    changed: (state) => states.push(state),
    moved: () => moves.push(moves.length),
  });
  return { keeper, states, waiting, waits, moves };
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

  test('tells the other page, which can follow and then keeps on from there', async () => {
    const room = new Room();
    const one = keeperOn({ room });
    const two = keeperOn({ room });
    one.keeper.keepSoon(text('theirs'));
    await one.keeper.flush();
    expect(two.moves).toHaveLength(1);
    two.keeper.follow(1, 1001);
    expect(two.keeper.state).toEqual({ kind: 'kept', at: 1001 });
    two.keeper.keepSoon(text('mine'));
    await two.keeper.flush();
    expect(await keptText()).toBe('mine');
    expect(one.moves).toHaveLength(1);
  });

  test('tells the other page, which keeps nothing over it while it has something of its own', async () => {
    const room = new Room();
    const journal = new Journal(slips(), 'two');
    const one = keeperOn({ room });
    const two = keeperOn({ room, journal });
    two.keeper.keepSoon(text('mine'));
    one.keeper.keepSoon(text('theirs'));
    await one.keeper.flush();
    expect(two.keeper.state).toEqual({ kind: 'behind' });
    expect(two.moves).toEqual([]);
    await two.keeper.flush();
    expect(await keptText()).toBe('theirs');
    expect(journal.left('a')).toMatchObject([{ notebook: { text: 'mine' }, revision: 0 }]);
    two.keeper.giveUp();
    expect(journal.left('a')).toEqual([]);
  });

  test('keeps on from change to change: who writes without a pause does not put it off', async () => {
    const { keeper, waiting } = keeperOn();
    keeper.keepSoon(text('one'));
    const [first] = waiting;
    keeper.keepSoon(text('two'));
    expect(waiting).toEqual([first]);
    first?.();
    await keeper.flush();
    expect(await keptText()).toBe('two');
  });

  test('leaves a slip at once when the page is left, and none once it is kept', async () => {
    const journal = new Journal(slips(), 'one');
    const { keeper } = keeperOn({ journal });
    keeper.keepSoon(text('one'));
    const kept = keeper.leave();
    expect(journal.left('a')).toMatchObject([{ notebook: text('one'), revision: 0 }]);
    await kept;
    expect(journal.left('a')).toEqual([]);
    expect(await keptText()).toBe('one');
  });

  test('is not put out by a clock that is set back', async () => {
    const times = [5000, 4000, 10];
    const { keeper, states } = keeperOn({ now: () => times.shift() ?? 1 });
    for (const words of ['one', 'two', 'three']) {
      keeper.keepSoon(text(words));
      await keeper.flush();
      expect(states.at(-1)?.kind).toBe('kept');
    }
    expect(await keptText()).toBe('three');
    expect(await shelf.list()).toMatchObject([{ revision: 3, keptAt: 10 }]);
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
    other.postMessage('hello');
    other.postMessage({ id: 'a' });
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
    const journal = new Journal(slips(), 'one');
    const { keeper, states, waiting, waits } = keeperOn({ shelf: fragile, journal });
    keeper.keepSoon(text('one'));
    await keeper.flush();
    expect(states.at(-1)).toEqual({ kind: 'not-kept', why: 'full', noted: true });
    expect(journal.left('a')).toMatchObject([{ notebook: text('one') }]);
    // It tries again by itself.
    expect(waits).toEqual(['soon', 'again']);
    broken = false;
    waiting[0]?.();
    await keeper.flush();
    expect(journal.left('a')).toEqual([]);
    expect(states.at(-1)?.kind).toBe('kept');
    expect(await keptText()).toBe('one');
  });

  test('says that nothing can be kept where the browser refuses', async () => {
    const closed = new Shelf(() => Promise.reject(new Error('no storage here')));
    const { keeper, states } = keeperOn({ shelf: closed });
    keeper.keepSoon(text('one'));
    await keeper.flush();
    expect(states.at(-1)).toEqual({ kind: 'not-kept', why: 'refused', noted: false });
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
