// What is said of the ground that notebooks are kept on, and when.
import { describe, expect, test } from 'vitest';
import { type Has, sayLacks, sayStanding, sayUnsaved, standingOf } from '../../src/store/ground.ts';
import { browserOf } from './desk.ts';
import { idOf } from './drawn.ts';

const ALL: Has = { secure: true, database: true, locks: true, channel: true, storage: true };

function storage(persisted: boolean, persist: boolean) {
  let asked = 0;
  return {
    persisted: () => Promise.resolve(persisted),
    persist: () => {
      asked++;
      return Promise.resolve(persist);
    },
    asked: () => asked,
  };
}

describe('the browser', () => {
  test('is asked to hold on to what is kept, unless it promised already', async () => {
    const promised = storage(true, false);
    expect(await standingOf(promised, 'ask')).toBe('promised');
    expect(promised.asked()).toBe(0);
    expect(await standingOf(storage(false, true), 'ask')).toBe('promised');
    expect(await standingOf(storage(false, false), 'ask')).toBe('may-clear');
  });

  test('is not asked by a look', async () => {
    const one = storage(false, true);
    expect(await standingOf(one, 'look')).toBe('may-clear');
    expect(one.asked()).toBe(0);
  });

  test('that does not say, or refuses to be asked, promised nothing', async () => {
    expect(await standingOf(undefined, 'ask')).toBe('unknown');
    const refuses = { ...storage(false, true), persisted: () => Promise.reject(new Error('no')) };
    expect(await standingOf(refuses, 'ask')).toBe('unknown');
    expect(sayStanding('may-clear')).toMatch(/did not promise/);
  });

  test('is asked when something is kept for the first time, and not before', async () => {
    const asked: string[] = [];
    const standing = (how: 'look' | 'ask') => {
      asked.push(how);
      return Promise.resolve('may-clear' as const);
    };
    const desk = await browserOf().page({ standing });
    expect(asked).toEqual([]);
    for (const waste of ['12%', '13%']) {
      desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Waste'), waste));
      await expect.poll(() => desk.keeping.kind).toBe('kept');
    }
    expect(asked).toEqual(['ask']);
    expect(desk.standing).toBe('may-clear');
  });
});

describe('what is missing', () => {
  test('is nothing where all is there', () => {
    expect(sayLacks(ALL)).toEqual([]);
  });

  test('is said with what it means, each for itself', () => {
    expect(sayLacks({ ...ALL, secure: false, locks: false, storage: false })).toEqual([
      expect.stringContaining('plain HTTP'),
      expect.stringContaining('no locks'),
      expect.stringContaining('can’t be asked'),
    ]);
    expect(sayLacks({ ...ALL, locks: false, channel: false })).toEqual([
      expect.stringContaining('can’t hear each other'),
    ]);
    expect(sayLacks({ ...ALL, database: false })).toEqual([
      expect.stringContaining('save files before you leave'),
    ]);
  });
});

describe('what is in no file', () => {
  test('is said the sooner and weighs the more, the more there is and the less was promised', () => {
    const weights = (standing: 'promised' | 'may-clear') =>
      [9, 10, 30, 100, 300].map((changes) => sayUnsaved(changes, standing)?.weight ?? null);
    expect(weights('may-clear')).toEqual([null, 'quiet', 'quiet', 'due', 'due']);
    expect(weights('promised')).toEqual([null, null, 'quiet', 'quiet', 'due']);
    expect(sayUnsaved(34, null)?.say).toBe('34 changes in no file yet');
  });

  test('begins anew with a file, also at the next visit', async () => {
    const browser = browserOf();
    const desk = await browser.page({ standing: () => Promise.resolve('may-clear') });
    for (let n = 1; n <= 10; n++) {
      desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Waste'), `${n + 20}%`));
      await expect.poll(() => desk.keeping.kind).toBe('kept');
    }
    expect(desk.unsaved?.say).toMatch(/^10 changes/);
    await desk.savedAsFile();
    expect(desk.unsaved).toBeNull();
    expect((await browser.page()).unsaved).toBeNull();
  });
});
