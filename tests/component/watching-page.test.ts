// Watching on the whole page: by key and by button from a row, a part and the price; and what stands beside the page.
import { describe, expect, test } from 'vitest';
import { page as window, userEvent } from 'vitest/browser';
import '../../src/ui/story-page.ts';
import { browserOf } from './desk.ts';
import {
  axeFindings,
  button,
  drawn,
  everyElement,
  found,
  framesOf,
  idOf,
  settled,
  wordsOf,
} from './drawn.ts';

async function opened() {
  const desk = await browserOf().page();
  const page = await drawn('story-page', { desk });
  await framesOf(page);
  const strip = (): string => wordsOf(found(page, 'watched-strip'));
  return { desk, page, strip };
}

async function pressed(page: Element, keys: string): Promise<void> {
  await userEvent.keyboard(keys);
  await framesOf(page);
}

const open = (page: Element, tag: string): boolean =>
  everyElement(page).some((one) => one.localName === tag && one.hasAttribute('open'));

describe('watching on the page', () => {
  test('is begun and ended with E on a row, which is marked meanwhile', async () => {
    const { desk, page, strip } = await opened();
    desk.session.bring(idOf(desk.session, 'Bags to buy'));
    await framesOf(page);
    await pressed(page, 'e');
    expect(strip()).toContain('Bags to buy');
    const row = found(page, `story-cell[data-cell="${idOf(desk.session, 'Bags to buy')}"]`);
    expect(found(row, '.witness').getAttribute('aria-label')).toBe('watched');
    expect(await axeFindings(page)).toEqual([]);
    await pressed(page, 'e');
    expect(strip()).not.toContain('40 bags');
    expect(() => found(row, '.witness')).toThrow('nothing matches');
  });

  test('of a part is begun on its heading, of the price from anywhere, and a line that is written takes its own letters', async () => {
    const { desk, page } = await opened();
    found(page, '[data-heading]:not([data-heading=""])').focus();
    await pressed(page, 'e');
    await pressed(page, '{Shift>}E{/Shift}');
    expect(desk.watching.entries.map(({ name }) => name)).toEqual(['Cost of Landing', 'Price']);
    desk.session.write({ kind: 'formula', cell: idOf(desk.session, 'Waste') });
    await framesOf(page);
    await pressed(page, 'ea');
    expect(desk.watching.entries).toHaveLength(2);
    expect(open(page, 'alternatives-sheet')).toBe(false);
  });

  test('is begun with buttons in the working, under a part and beside the price', async () => {
    const { desk, page, strip } = await opened();
    desk.session.choose(idOf(desk.session, 'Concrete'));
    await settled(page);
    button(found(page, 'story-working'), 'Watch').click();
    button(page, 'Watch what Landing costs').click();
    button(page, 'Watch the price').click();
    await settled(page);
    expect(desk.watching.entries.map(({ name }) => name)).toEqual([
      'Concrete',
      'Cost of Landing',
      'Price',
    ]);
    button(found(page, 'story-working'), 'Let go').click();
    button(page, 'Let go of what Landing costs').click();
    button(found(page, 'job-footing'), 'Let go of the price').click();
    await settled(page);
    expect(desk.watching.entries).toEqual([]);
    expect(strip()).toBe('Price is watched no more.');
  });

  test('A lays alternatives beside the page and takes them away; the guide takes their place', async () => {
    const { page } = await opened();
    await window.viewport(1400, 800);
    await pressed(page, 'a');
    await expect.poll(() => open(page, 'alternatives-sheet')).toBe(true);
    await framesOf(page);
    expect(await axeFindings(page)).toEqual([]);
    const guide = button(found(page, 'job-header'), 'Guide');
    guide.click();
    await expect.poll(() => open(page, 'guide-page')).toBe(true);
    expect(open(page, 'alternatives-sheet')).toBe(false);
    button(found(page, 'job-header'), 'Alternatives').click();
    await expect.poll(() => open(page, 'alternatives-sheet')).toBe(true);
    expect(open(page, 'guide-page')).toBe(false);
    await framesOf(page);
    await pressed(page, '{Escape}');
    expect(open(page, 'alternatives-sheet')).toBe(false);
  });
});
