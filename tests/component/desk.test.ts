// The desk: what one finds on it, comes back to, and what happens when two pages lie on one notebook.
import { describe, expect, test } from 'vitest';
import type { Desk } from '../../src/ui/desk.ts';
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
    await expect.poll(() => desk.keeping).toEqual({ kind: 'not-kept', why: 'refused' });
    expect(shownOf(desk.session, 'Thickness')).toBe('5 in');
  });
});

describe('two pages on one notebook', () => {
  async function two() {
    const browser = browserOf();
    const one = await browser.page();
    await change(one, 'Thickness', '5 in');
    const other = await browser.page();
    return { browser, one, other };
  }

  test('the later one is told and writes nothing over the first', async () => {
    const { browser, one, other } = await two();
    await change(one, 'Thickness', '6 in');
    await expect.poll(() => other.keeping.kind).toBe('behind');
    other.session.apply((door) => door.setFormula(idOf(other.session, 'Waste'), '12%'));
    await other.leave(0);
    const third = await browser.page();
    expect(shownOf(third.session, 'Thickness')).toBe('6 in');
    expect(shownOf(third.session, 'Waste')).toBe('10%');
    expect(shownOf(other.session, 'Waste')).toBe('12%');
  });

  test('the later one can follow what the other kept', async () => {
    const { one, other } = await two();
    await change(one, 'Thickness', '6 in');
    await expect.poll(() => other.keeping.kind).toBe('behind');
    await other.follow();
    expect(shownOf(other.session, 'Thickness')).toBe('6 in');
    await change(other, 'Waste', '12%');
    await expect.poll(() => one.keeping.kind).toBe('behind');
  });

  test('the later one can keep its own as a copy, and both are there', async () => {
    const { browser, one, other } = await two();
    await change(one, 'Thickness', '6 in');
    await expect.poll(() => other.keeping.kind).toBe('behind');
    other.session.apply((door) => door.setFormula(idOf(other.session, 'Waste'), '12%'));
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

  test('a page that is not alone says so', async () => {
    const browser = browserOf();
    const desk = await browser.page({ alone: () => Promise.resolve(false) });
    expect(desk.session.notice?.text).toMatch(/open in another tab too/);
  });
});
