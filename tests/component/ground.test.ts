// What is said of the ground that notebooks are kept on, and when.
import { describe, expect, test } from 'vitest';
import { type Has, sayLacks, sayStanding, sayUnsaved, standingOf } from '../../src/store/ground.ts';
import { takenSaved } from '../../src/store/shapes.ts';
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
      [9, 10, 30, 100, 300].map(
        (changes) => sayUnsaved({ notebook: changes, beside: 0 }, standing)?.weight ?? null,
      );
    expect(weights('may-clear')).toEqual([null, 'quiet', 'quiet', 'due', 'due']);
    expect(weights('promised')).toEqual([null, null, 'quiet', 'quiet', 'due']);
    expect(sayUnsaved({ notebook: 34, beside: 0 }, null)).toMatchObject({
      say: '34 changes in no file yet',
      more: '',
    });
    const some = sayUnsaved({ notebook: 30, beside: 4 }, null);
    expect(some?.say).toBe('34 changes in no file yet');
    expect(some?.more).toMatch(/^4 of them are snapshots, .* save the whole job/);
    const beside = sayUnsaved({ notebook: 0, beside: 12 }, null);
    expect(beside?.say).toBe('12 changes in no file of the whole job yet');
  });

  test('begins anew with a file, also at the next visit', async () => {
    const browser = browserOf();
    const desk = await browser.page({ standing: () => Promise.resolve('may-clear') });
    for (let n = 1; n <= 10; n++) {
      desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Waste'), `${n + 20}%`));
      await expect.poll(() => desk.keeping.kind).toBe('kept');
    }
    expect(desk.unsaved?.say).toMatch(/^10 changes/);
    await desk.savedAsFile('text');
    expect(desk.unsaved).toBeNull();
    expect((await browser.page()).unsaved).toBeNull();
  });

  test('counts what is added beside the notebook, which only a file of the whole job holds', async () => {
    const browser = browserOf();
    const may = { standing: () => Promise.resolve('may-clear' as const) };
    const desk = await browser.page(may);
    const binder = await desk.binder();
    for (let n = 1; n <= 11; n++) await binder.freeze(`Bid ${n}`, '');
    await expect.poll(() => desk.unsaved?.say).toBe('12 changes in no file yet');
    await desk.savedAsFile('text');
    expect(desk.unsaved?.say).toBe('11 changes in no file of the whole job yet');
    const next = await browser.page(may);
    await next.binder();
    await expect.poll(() => next.unsaved?.say).toBe('11 changes in no file of the whole job yet');
    await next.savedAsFile('whole job');
    expect(next.unsaved).toBeNull();
  });

  test('that was saved before files of the whole job were told apart was saved as a text', () => {
    const old = { v: 1, revision: 7, at: 5 };
    expect(takenSaved(old)).toMatchObject({ kind: 'taken', value: { revision: 7, beside: 0 } });
    expect(takenSaved({ v: 3, revision: 7 })).toEqual({ kind: 'newer' });
  });
});
