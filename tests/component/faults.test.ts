// Every write breaks in turn at each of its steps: what was kept before is there to the letter, and whoever wrote is told.
import { type UseStore, promisifyRequest } from 'idb-keyval';
import { beforeEach, describe, expect, test } from 'vitest';
import { database } from '../../src/store/database.ts';
import { Journal } from '../../src/store/journal.ts';
import { Keeper, type KeeperState } from '../../src/store/keeper.ts';
import { PracticeShelf } from '../../src/store/practice-shelf.ts';
import { Shelf } from '../../src/store/shelf.ts';
import { NO_VERSIONS, VersionsShelf } from '../../src/store/versions-shelf.ts';
import type { Job } from '../../src/versions/job.ts';
import { keptIdentities } from '../../src/versions/identities.ts';
import { frozen, opened } from '../versions/sides.ts';
import { Faulty, type Step } from './faulty.ts';

let base: UseStore;
let faulty: Faulty;
let shelf: Shelf;
let versions: VersionsShelf;
let practice: PracticeShelf;

const job = opened('# K\n\n## P\n\n- A: $1\n  - cost: fee\n');
const [one, two] = [frozen(job, 'Bid 1'), frozen(job, 'Bid 2')];
const { notebook } = job.estimate;
const identities = keptIdentities(job.identities, notebook);
const text = (words: string) => ({ id: 'a', title: 'K', text: words, identities: null });

const sitting = { id: 's', at: 1, notebook: 'K', result: 'A', seed: null, steps: [] };

const whole: Job = {
  id: 'b',
  title: 'K',
  text: notebook.text,
  identities,
  ...NO_VERSIONS,
  snapshots: [one, two],
};

beforeEach(async () => {
  base = database(`faults ${crypto.randomUUID()}`);
  faulty = new Faulty(base);
  shelf = new Shelf(faulty.use);
  versions = new VersionsShelf(faulty.use);
  practice = new PracticeShelf(faulty.use);
  await shelf.keep(text('one'), 0, 1);
  await shelf.keepPlace('a', { part: 'P', cell: 'A', scroll: 4 });
  await shelf.keepLast('a');
  await versions.keep('a', await versionsOf('a'), { ...NO_VERSIONS, snapshots: [one] });
});

async function versionsOf(id: string) {
  const taken = await versions.take(id);
  if (taken.kind !== 'taken') throw new Error(taken.kind);
  return taken.value;
}

/** All that is kept, to the letter. */
async function all(): Promise<unknown> {
  return base('readonly', async (values) => {
    const [keys, held] = [values.getAllKeys(), values.getAll()].map(promisifyRequest);
    return [await keys, await held];
  });
}

const PUTS = (count: number): readonly Step[] => [
  'connect',
  'begin',
  'look',
  ...Array.from({ length: count }, (_, i) => `put ${i + 1}` as const),
  ...Array.from({ length: count }, (_, i) => `written ${i + 1}` as const),
  'end',
];

const WRITES: readonly (readonly [string, readonly Step[], () => Promise<unknown>])[] = [
  ['a text', PUTS(2), () => shelf.keep(text('two'), 1, 2)],
  [
    'a snapshot',
    PUTS(2),
    async () => {
      const kept = await versionsOf('a');
      return versions.keep('a', kept, { ...kept.versions, snapshots: [one, two] });
    },
  ],
  ['a job from a file', PUTS(5), () => versions.bring(whole, 2)],
  [
    'what is removed',
    ['connect', 'begin', 'delete 1', 'delete 3', 'delete 10', 'end'],
    () => shelf.remove('a'),
  ],
  [
    'rows that are not put in',
    ['connect', 'begin', 'put 1', 'written 1', 'end'],
    () => shelf.keepRows('a', '2026-05-04\tLanding'),
  ],
  [
    'beside which snapshot',
    ['connect', 'begin', 'put 1', 'written 1', 'end'],
    () => versions.keepAgainst('a', one.seal),
  ],
  [
    'where one left off',
    ['connect', 'begin', 'put 1', 'written 1', 'end'],
    () => shelf.keepLast('b'),
  ],
  [
    'what came of being asked',
    ['connect', 'begin', 'put 1', 'written 1', 'end'],
    () => practice.keep(sitting),
  ],
  [
    'what is watched and compared',
    ['connect', 'begin', 'look', 'put 1', 'written 1', 'end'],
    () => shelf.keepAlongside('a', { watched: [], varied: ['a-2'], alternatives: [] }, 0),
  ],
  [
    'how it was handed to a client',
    ['connect', 'begin', 'put 1', 'written 1', 'end'],
    () => shelf.keepHanded('a', { level: 'parts', from: '', whom: 'the house', until: '' }),
  ],
];

describe('a write that breaks', () => {
  for (const [what, steps, write] of WRITES) {
    for (const step of steps) {
      test(`at ${step}, of ${what}, changes nothing, says so, and is made when it is tried again`, async () => {
        const before = await all();
        faulty.at = step;
        await expect(write()).rejects.toMatchObject({ name: 'QuotaExceededError' });
        expect(faulty.broke).toBe(1);
        expect(await all()).toEqual(before);
        faulty.at = null;
        await write();
        expect(await all()).not.toEqual(before);
      });
    }
  }

  test('is broken at every step there is', async () => {
    // A step later than the last is never reached, so that the lists above leave none out.
    for (const [what, later] of [
      ['a text', 'put 3'],
      ['a snapshot', 'put 3'],
      ['a job from a file', 'put 6'],
      // One snapshot more is there by now.
      ['what is removed', 'delete 13'],
      ['rows that are not put in', 'put 2'],
      ['what is watched and compared', 'put 2'],
      ['beside which snapshot', 'put 2'],
      ['where one left off', 'put 2'],
      ['what came of being asked', 'put 2'],
      ['how it was handed to a client', 'put 2'],
    ] as const) {
      faulty.at = later;
      await WRITES.find(([name]) => name === what)?.[2]();
      expect(faulty.broke).toBe(0);
    }
  });
});

describe('a page whose writing breaks', () => {
  for (const step of PUTS(2)) {
    test(`at ${step} tells, leaves a slip and keeps by itself as soon as it can`, async () => {
      const states: KeeperState[] = [];
      let again: () => void = () => undefined;
      const journal = new Journal(localStorage, crypto.randomUUID());
      const keeper = new Keeper('a', 1, 1, {
        shelf,
        journal,
        now: () => 2,
        later: (call) => {
          again = call;
          return () => undefined;
        },
        channel: null,
        changed: (state) => states.push(state),
        moved: () => undefined,
      });
      faulty.at = step;
      keeper.keepSoon(text('two'));
      await keeper.flush();
      expect(states.at(-1)).toEqual({ kind: 'not-kept', why: 'full', noted: true });
      expect(await shelf.take('a')).toMatchObject({ value: { text: 'one', revision: 1 } });
      expect(journal.left('a')).toMatchObject([{ notebook: text('two'), revision: 1 }]);
      faulty.at = null;
      again();
      await expect.poll(() => keeper.state.kind).toBe('kept');
      expect(await shelf.take('a')).toMatchObject({ value: { text: 'two', revision: 2 } });
      expect(journal.left('a')).toEqual([]);
    });
  }
});

describe('a job from a file', () => {
  test('comes whole, and never over a notebook that is kept here', async () => {
    expect(await versions.bring(whole, 2)).toEqual({ kind: 'kept', revision: 1 });
    expect(await shelf.take('b')).toMatchObject({ value: { text: notebook.text, identities } });
    expect((await versionsOf('b')).versions).toEqual({ ...NO_VERSIONS, snapshots: [one, two] });
    expect((await shelf.list()).map(({ id }) => id).sort()).toEqual(['a', 'b']);
    const before = await all();
    expect(await versions.bring({ ...whole, text: 'x' }, 3)).toEqual({
      kind: 'behind',
      revision: 1,
    });
    expect(await all()).toEqual(before);
  });
});
