// The estimator by keyboard alone: watches the price and the bags while a thickness moves on its tape, holds two
// alternatives against the notebook, puts one in and takes it back.
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { Demo } from './demo.ts';
import { findings } from './axe-findings.ts';
import { PHONE, focusedOn, priceOf, rowOf, seenIn, shownOf, until, visits } from './visit.ts';

const visit = visits();
const demo = new Demo();

const strip = (page: Page) => page.getByRole('region', { name: 'Watched' });

/** What the strip says of one result. */
async function watched(page: Page, name: string): Promise<string> {
  return seenIn(strip(page).getByRole('listitem').filter({ hasText: name }));
}

/** A row of the alternatives, cell by cell. */
async function compared(page: Page, name: string): Promise<readonly string[]> {
  const row = page
    .getByRole('dialog', { name: 'Alternatives' })
    .locator('tr')
    .filter({ has: page.getByRole('rowheader', { name }) });
  const cells = await row.getByRole('cell').all();
  return Promise.all(cells.map(seenIn));
}

async function toRow(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Control+g');
  await expect.poll(() => focusedOn(page)).toBe('Name of a cell, table or part');
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toContain(name);
}

test('the price and the bags are watched while the thickness moves, two ways are compared, one is put in and undone', async () => {
  const profile = await visit();
  await profile.context.addInitScript({ content: axe.source });
  const page = await profile.tab();
  await toRow(page, 'Bags to buy');
  await page.keyboard.press('e');
  await page.keyboard.press('Shift+E');
  await expect.poll(() => watched(page, 'Bags to buy')).toContain(demo.shown('Bags to buy'));
  expect(await watched(page, 'Price')).toContain(demo.price);

  // While the tape moves each tells how far it is from the tick.
  await toRow(page, 'Thickness');
  await page.keyboard.press('t');
  for (let sixteenth = 0; sixteenth < 16; sixteenth++) await page.keyboard.press('ArrowRight');
  const thicker = new Demo({ Thickness: '5 in' });
  await expect.poll(() => watched(page, 'Price')).toContain(thicker.price);
  const bags = (of: Demo): number => Number(of.shown('Bags to buy').split(' ')[0]);
  expect(await watched(page, 'Bags to buy')).toContain(`+${bags(thicker) - bags(demo)} bags`);
  await page.keyboard.press('Escape');
  await expect.poll(() => watched(page, 'Price')).toContain(demo.price);
  expect(await watched(page, 'Price')).not.toContain('+');

  // Two ways side by side.
  await page.keyboard.press('a');
  await expect.poll(() => focusedOn(page)).toBe('');
  await page.keyboard.type('thickness');
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toBe('Thickness, Way 1');
  await page.keyboard.type('5 in');
  await page.keyboard.press('Tab');
  await page.keyboard.type('6 in');
  await page.keyboard.press('Enter');
  const thickest = new Demo({ Thickness: '6 in' });
  await expect.poll(async () => (await compared(page, 'Price'))[2]).toContain(thickest.price);
  const [is, one, two] = await compared(page, 'Price');
  expect([is, one, two].map((said) => said.match(/best|worst/)?.[0] ?? '')).toEqual([
    'best',
    '',
    'worst',
  ]);
  expect(one).toContain(thicker.price);
  expect((await compared(page, 'Bags to buy'))[1]).toContain(`+${bags(thicker) - bags(demo)} bags`);
  expect(await findings(page, 'light')).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await findings(page, 'dark')).toEqual([]);
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await shownOf(page, 'Thickness')).toBe(demo.shown('Thickness'));
  expect(await priceOf(page)).toBe(demo.price);

  // On paper it is all of the page, and says that it is tried and not offered.
  await page.emulateMedia({ media: 'print' });
  const paper = await seenIn(page.locator('story-page'));
  expect(paper).toContain(
    'only the first column is the estimate, the others are tried and not offered',
  );
  expect(paper).toContain('5 in');
  expect(paper).not.toContain('Put in');
  expect(paper).not.toContain('leave it');
  await page.emulateMedia({ media: 'screen' });

  // One is put in, in one change.
  await until(page, 'Tab', 'Put in Way 1', 40);
  await page.keyboard.press('Enter');
  await expect.poll(() => priceOf(page)).toBe(thicker.price);
  expect(await shownOf(page, 'Thickness')).toBe('5 in');
  await page.keyboard.press('Control+z');
  await expect.poll(() => priceOf(page)).toBe(demo.price);
  await page.keyboard.press('Escape');
  await page.getByRole('dialog', { name: 'Alternatives' }).waitFor({ state: 'hidden' });

  // It is there again at the next visit.
  await page.close();
  const later = await profile.tab();
  await expect.poll(() => watched(later, 'Price')).toContain(demo.price);
  await toRow(later, 'Thickness');
  await later.keyboard.press('a');
  await expect.poll(() => focusedOn(later)).toBe('Thickness, Way 1');
  expect((await compared(later, 'Price'))[2]).toContain(thickest.price);
});

test('on a phone what is watched is one line that opens, and the alternatives scroll inside their sheet', async () => {
  const { context, tab } = await visit({ viewport: PHONE });
  await context.addInitScript({ content: axe.source });
  const page = await tab();
  await rowOf(page, 'Deck area').getByRole('button', { name: 'Deck area', exact: true }).click();
  await page.keyboard.press('e');
  await page.keyboard.press('Shift+E');
  const fold = strip(page).getByRole('button', { name: /^Watched/ });
  await fold.waitFor();
  expect((await fold.boundingBox())?.height).toBeLessThan(45);
  expect(await strip(page).getByRole('listitem').count()).toBe(0);
  await fold.click();
  await expect.poll(() => strip(page).getByRole('listitem').count()).toBe(2);
  expect(await findings(page, 'light')).toEqual([]);
  await strip(page).getByRole('button', { name: 'Alternatives' }).click();
  const sheet = page.getByRole('dialog', { name: 'Alternatives' });
  await sheet.getByRole('button', { name: 'Vary Deck area' }).click();
  await sheet.getByRole('button', { name: 'Another way' }).click();
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBe(PHONE.width);
  expect(await findings(page, 'light')).toEqual([]);
});
