// The desk: what one finds on it, comes back to, and what happens when two pages lie on one notebook.
import { describe, expect, test } from 'vitest';
import { Journal } from '../../src/store/journal.ts';
import type { Locks } from '../../src/store/turn.ts';
import type { Desk } from '../../src/ui/desk.ts';
import type { DeskSettings } from '../../src/ui/desk-settings.ts';
import { browserOf } from './desk.ts';
import { SMALL_JOB, idOf, shownOf } from './drawn.ts';

const kept = (desk: Desk) => expect.poll(() => desk.keeping.kind).toBe('kept');

async function change(desk: Desk, cell: string, formula: string): Promise<void> {
  desk.session.apply((door) => door.setFormula(idOf(desk.session, cell), formula));
  await kept(desk);
}

describe('a desk', () => {
  test('has the demo on it for a newcomer, and keeps nothing until something is changed', async () => {
    const browser = browserOf();
    const desk = await browser.page();
    expect(desk.session.door.notebook.title).toBe('Back step');
    expect(desk.keeping).toEqual({ kind: 'kept', at: null });
    expect(await desk.list()).toEqual([]);
  });

  test('is found again as it was left: notebook, chosen cell and place', async () => {
    const browser = browserOf();
    const first = await browser.page();
    await change(first, 'Thickness', '5 in');
    first.session.choose(idOf(first.session, 'Waste'));
    await first.leave(321);
    const again = await browser.page();
    expect(shownOf(again.session, 'Thickness')).toBe('5 in');
    expect(again.session.chosen).toBe(idOf(again.session, 'Waste'));
    expect(again.place?.scroll).toBe(321);
  });

  test('keeps what was changed right before it is left', async () => {
    const browser = browserOf();
    const first = await browser.page({ later: () => () => undefined });
    first.session.apply((door) => door.setFormula(idOf(first.session, 'Thickness'), '6 in'));
    await first.leave(0);
    expect(shownOf((await browser.page()).session, 'Thickness')).toBe('6 in');
  });

  test('knows every cell again at the next visit, one that was renamed and one that came too', async () => {
    const browser = browserOf();
    const first = await browser.page();
    const keyOf = (desk: Desk, name: string) => desk.identities.cells.get(idOf(desk.session, name));
    const [waste, thickness] = [keyOf(first, 'Waste'), keyOf(first, 'Thickness')];
    const { part } = first.session.cell(idOf(first.session, 'Waste')) ?? { part: '' };
    first.session.apply((door) => door.rename(idOf(first.session, 'Waste'), 'Spare'));
    first.session.apply((door) => door.addCell(part, null, 'Sand', '2 bags'));
    await kept(first);
    const again = await browser.page();
    expect(waste).toBeDefined();
    expect(keyOf(again, 'Spare')).toBe(waste);
    expect(keyOf(again, 'Thickness')).toBe(thickness);
    expect(keyOf(again, 'Sand')).toBe(keyOf(first, 'Sand'));
  });

  test('does not keep what a tape only passes over', async () => {
    const browser = browserOf();
    const desk = await browser.page();
    desk.session.openTape(idOf(desk.session, 'Thickness'));
    desk.session.slideTape('7 in');
    expect(desk.keeping).toEqual({ kind: 'kept', at: null });
    desk.session.leaveTape();
    expect(desk.keeping).toEqual({ kind: 'kept', at: null });
    desk.session.openTape(idOf(desk.session, 'Thickness'));
    desk.session.slideTape('7 in');
    desk.session.keepTape();
    await kept(desk);
    expect(shownOf((await browser.page()).session, 'Thickness')).toBe('7 in');
  });

  test('holds several notebooks', async () => {
    const desk = await browserOf().page();
    await change(desk, 'Thickness', '5 in');
    await desk.openText('# Fence\n\n## Fence\n\n- Length: 40 ft\n');
    await kept(desk);
    expect((await desk.list()).map(({ title }) => title).sort()).toEqual(['Back step', 'Fence']);
    const [back] = (await desk.list()).filter(({ title }) => title === 'Back step');
    await desk.openKept(back?.id ?? '');
    expect(shownOf(desk.session, 'Thickness')).toBe('5 in');
  });

  test.each([
    ['of binary', '\0PNG\0\0', /does not look like text/],
    ['that is far too long', 'a'.repeat(2_000_001), /2\.0 million characters/],
  ])('refuses a file %s with its reason and keeps what was open', async (_, text, why) => {
    const desk = await browserOf().page();
    expect(await desk.openText(text)).toBe(false);
    expect(desk.session.notice?.text).toMatch(why);
    expect(desk.session.door.notebook.title).toBe('Back step');
  });

  test('opens an empty file', async () => {
    const desk = await browserOf().page();
    expect(await desk.openText('')).toBe(true);
    expect(desk.session.door.notebook.text).toBe('');
  });

  test('inserts a part and asks for its first given', async () => {
    const desk = await browserOf().page();
    const [template] = desk.templates;
    if (!template) throw new Error('no template');
    await desk.insert(template);
    const length = idOf(desk.session, 'Fence length');
    expect(desk.session.writing).toEqual({ kind: 'formula', cell: length });
    expect(shownOf(desk.session, 'Rails')).toBe('80 ft');
  });

  test('without a database shows the demo and says that nothing is kept', async () => {
    const { Shelf } = await import('../../src/store/shelf.ts');
    const shelf = new Shelf(() => Promise.reject(new Error('no storage here')));
    const desk = await browserOf().page({ shelf });
    desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Thickness'), '5 in'));
    await expect.poll(() => desk.keeping).toMatchObject({ kind: 'not-kept', why: 'refused' });
    expect(shownOf(desk.session, 'Thickness')).toBe('5 in');
  });
});

/** The browser's own locks, under names of this test's own. */
function ownLocks(): Locks {
  const test = crypto.randomUUID();
  const locks = navigator.locks as unknown as { request(...told: unknown[]): Promise<unknown> };
  const request = (name: string, ...told: unknown[]): Promise<unknown> =>
    locks.request(`${test} ${name}`, ...told);
  return { request } as Locks;
}

describe('two pages on one notebook', () => {
  async function two(own: Partial<DeskSettings> = {}) {
    const browser = browserOf();
    const one = await browser.page(own);
    await change(one, 'Thickness', '5 in');
    const other = await browser.page(own);
    await expect.poll(() => other.role).toBe('follows');
    return { browser, one, other };
  }

  // With locks, and as a page that came over plain HTTP without any.
  for (const [name, locks] of [
    ['with locks', ownLocks],
    ['without locks', () => undefined],
  ] as const) {
    test(`${name} the later one follows live, and takes over`, async () => {
      const { one, other } = await two({ locks: locks() });
      expect(one.role).toBe('writes');
      await change(one, 'Thickness', '6 in');
      await expect.poll(() => shownOf(other.session, 'Thickness')).toBe('6 in');
      expect(other.identities.cells).toEqual(one.identities.cells);

      const waste = idOf(other.session, 'Waste');
      expect(other.session.apply((door) => door.setFormula(waste, '12%'))).toBe(false);
      expect(other.session.notice?.text).toMatch(/^Nothing was changed/);
      expect(shownOf(other.session, 'Waste')).toBe('10%');

      // What the one that writes has not kept yet comes along.
      one.session.apply((door) => door.setFormula(idOf(one.session, 'Thickness'), '7 in'));
      await other.takeOver();
      await expect.poll(() => other.role).toBe('writes');
      await expect.poll(() => shownOf(other.session, 'Thickness')).toBe('7 in');
      await expect.poll(() => one.role).toBe('follows');
      await change(other, 'Waste', '12%');
      await expect.poll(() => shownOf(one.session, 'Waste')).toBe('12%');
    });

    test(`${name} a page that can not keep what it has does not let go of it`, async () => {
      let full = false;
      const shelf = browserOf().settings.shelf;
      const keep = shelf.keep.bind(shelf);
      shelf.keep = (...told) =>
        full ? Promise.reject(new DOMException('', 'QuotaExceededError')) : keep(...told);
      const { one, other } = await two({ locks: locks(), shelf });
      full = true;
      one.session.apply((door) => door.setFormula(idOf(one.session, 'Thickness'), '6 in'));
      await expect.poll(() => one.keeping.kind).toBe('not-kept');
      await other.takeOver();
      expect(other.session.notice?.text).toMatch(/does not let go/);
      expect([one.role, other.role]).toEqual(['writes', 'follows']);
      full = false;
      await kept(one);
      await expect.poll(() => shownOf(other.session, 'Thickness')).toBe('6 in');
    });
  }

  test('the later one writes when the first one is gone', async () => {
    const { one, other } = await two({ locks: ownLocks() });
    await one.openText('# Fence\n');
    await expect.poll(() => other.role).toBe('writes');
    await change(other, 'Waste', '12%');
  });

  /** Pages that can't hear each other, and have no locks. */
  async function deaf() {
    const browser = browserOf();
    const alone = { channel: () => null };
    const one = await browser.page(alone);
    await change(one, 'Thickness', '5 in');
    const other = await browser.page(alone);
    await change(one, 'Thickness', '6 in');
    other.session.apply((door) => door.setFormula(idOf(other.session, 'Waste'), '12%'));
    await expect.poll(() => other.keeping.kind).toBe('behind');
    return { browser, one, other };
  }

  test('that do not know of each other write over nothing', async () => {
    const { browser, other } = await deaf();
    await other.leave(0);
    const third = await browser.page();
    expect(shownOf(third.session, 'Thickness')).toBe('6 in');
    expect(shownOf(third.session, 'Waste')).toBe('10%');
    expect(shownOf(other.session, 'Waste')).toBe('12%');
  });

  test('the one that came second can follow what the other kept', async () => {
    const { one, other } = await deaf();
    await other.follow();
    expect(shownOf(other.session, 'Thickness')).toBe('6 in');
    await change(other, 'Waste', '12%');
    // Seen when the page is looked at again.
    await one.catchUp();
    expect(shownOf(one.session, 'Waste')).toBe('12%');
  });

  test('the one that came second can keep its own as a copy, and both are there', async () => {
    const { browser, one, other } = await deaf();
    await other.keepAsCopy();
    await kept(other);
    expect(other.session.door.notebook.title).toBe('Back step, a copy');
    expect((await one.list()).map(({ title }) => title).sort()).toEqual([
      'Back step',
      'Back step, a copy',
    ]);
    const third = await browser.page();
    expect(shownOf(third.session, 'Waste')).toBe('12%');
    expect(shownOf(third.session, 'Thickness')).toBe('5 in');
    expect(SMALL_JOB).not.toBe(third.session.door.notebook.text);
  });
});

describe('what could not be kept before the page was left', () => {
  /** One page after the other, with one journal for all. */
  function visits() {
    const browser = browserOf();
    let full = false;
    const { shelf } = browser.settings;
    const keep = shelf.keep.bind(shelf);
    shelf.keep = (...told) =>
      full ? Promise.reject(new DOMException('', 'QuotaExceededError')) : keep(...told);
    localStorage.clear();
    let pages = 0;
    const page = () =>
      browser.page({
        shelf,
        channel: () => null,
        journal: new Journal(localStorage, `p${++pages}`),
        // A page that was left tries nothing again.
        later: (call, wait) => {
          const timer = wait === 'soon' ? setTimeout(call, 0) : undefined;
          return () => clearTimeout(timer);
        },
      });
    return { page, fill: () => (full = true), free: () => (full = false) };
  }

  test('is there again at the next visit, and kept', async () => {
    const { page, fill, free } = visits();
    const before = await page();
    await change(before, 'Thickness', '5 in');
    fill();
    before.session.apply((door) => door.setFormula(idOf(before.session, 'Waste'), '12%'));
    await before.leave(0);
    expect(before.keeping).toEqual({ kind: 'not-kept', why: 'full', noted: true });
    free();
    const after = await page();
    expect(shownOf(after.session, 'Waste')).toBe('12%');
    expect(after.session.notice?.text).toMatch(/here again/);
    await kept(after);
    expect(Object.keys(localStorage)).toEqual([]);
    expect(shownOf((await page()).session, 'Waste')).toBe('12%');
  });

  test('is there again even where nothing was ever kept', async () => {
    const { page, fill } = visits();
    fill();
    const before = await page();
    before.session.apply((door) => door.setFormula(idOf(before.session, 'Waste'), '12%'));
    await before.leave(0);
    expect(shownOf((await page()).session, 'Waste')).toBe('12%');
  });

  test('goes beside what another page kept since, as a copy', async () => {
    const { page, fill, free } = visits();
    const one = await page();
    await change(one, 'Thickness', '5 in');
    const third = await page();
    fill();
    third.session.apply((door) => door.setFormula(idOf(third.session, 'Waste'), '12%'));
    await third.leave(0);
    free();
    await change(one, 'Thickness', '6 in');
    const fourth = await page();
    expect(fourth.session.notice?.text).toMatch(/kept as "Back step, a copy"/);
    const copy = (await fourth.list()).find(({ title }) => title === 'Back step, a copy');
    await fourth.openKept(copy?.id ?? '');
    expect(shownOf(fourth.session, 'Waste')).toBe('12%');
    expect(shownOf(fourth.session, 'Thickness')).toBe('5 in');
  });
});
