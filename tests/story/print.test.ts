// The page on paper: the estimate with its money, without anything that is only for the screen.
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { Demo } from './demo.ts';
import { pdfText } from './pdf-text.ts';
import { choose, seenIn, visits } from './visit.ts';

const visit = visits();
const demo = new Demo();

test('paper has every part and cell, the money and the price, on as many sheets as it takes', async () => {
  const page = await (await visit()).tab();
  const sheets = pdfText(await page.pdf({ format: 'A4' }));
  expect(sheets.length).toBeGreaterThan(2);
  const text = squeezed(sheets.join(' '));
  for (const part of demo.parts) expect(text).toContain(squeezed(part));
  for (const name of ['Deck length', 'Riser check', 'Bags to buy', 'Square foot price']) {
    expect(text).toContain(squeezed(name));
  }
  for (const name of ['Concrete', 'Decking', 'Price']) {
    expect(text).toContain(squeezed(demo.shown(name)));
  }
  for (const button of onlyOnScreen) expect(text).not.toContain(squeezed(button));
});

test('nothing of the screen is printed: no toolbar, working, rod, tape or chosen row', async () => {
  const page = await (await visit()).tab();
  await choose(page, 'Thickness');
  await page.keyboard.press('t');
  await page.getByRole('slider').waitFor();
  await page.emulateMedia({ media: 'print' });
  const seen = await seenIn(page.locator('body'));
  expect(seen).toContain('Kestrel Court garden');
  expect(seen).toContain(demo.price);
  for (const button of onlyOnScreen) expect(seen).not.toContain(button);
  for (const part of ['story-rod', 'aside', 'nav', 'story-tape']) {
    expect(await page.locator(part).filter({ visible: true }).count()).toBe(0);
  }
  expect(await wider(page)).toBe(false);
});

const onlyOnScreen = [
  'Undo',
  'Insert a part',
  'Save a text file',
  'Look here',
  'Working of',
  'Add a cell to',
  'not changed yet',
];

/** Paper has no scroll bars. */
function wider(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
}

/** Where a line was broken or a word spaced on paper does not matter. */
function squeezed(text: string): string {
  return text.replace(/\s+/g, '');
}
