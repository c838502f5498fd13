// The guide beside a notebook: opened, read, changed, put back; its words and its lines put into the notebook; printed.
import fs from 'node:fs';
import axe from 'axe-core';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { valueSaid } from '../../src/ui/value-words.ts';
import { Demo } from './demo.ts';
import { pdfText } from './pdf-text.ts';
import { DESK, PHONE, choose, focusedOn, priceOf, rowOf, seenIn, tidy, visits } from './visit.ts';

const visit = visits();
const demo = new Demo();

const guideOf = (page: Page): Locator => page.getByRole('dialog', { name: 'Guide' });

function exampleOf(page: Page, name: string): Locator {
  return guideOf(page)
    .locator('guide-example')
    .filter({ has: page.getByRole('button', { name, exact: true }) });
}

async function valueOf(page: Page, name: string): Promise<string> {
  return tidy(await exampleOf(page, name).locator('.value').innerText());
}

async function opened(page: Page): Promise<void> {
  await page.keyboard.press('F1');
  await exampleOf(page, 'Bags to buy').waitFor();
}

test('a newcomer opens it, changes a number, and puts an example into his notebook', async () => {
  const page = await (await visit()).tab();
  await page.getByRole('button', { name: 'Guide', exact: true }).click();
  await exampleOf(page, 'Thickness').waitFor();
  expect(await seenIn(guideOf(page))).toContain('You have priced a slab: 20 bags , $129.60');

  await exampleOf(page, 'Thickness')
    .getByRole('button', { name: 'Thickness', exact: true })
    .click();
  await page.keyboard.type('8 in');
  await page.keyboard.press('Enter');
  await expect.poll(() => valueOf(page, 'Bags to buy')).toBe('40 bags');
  expect(await seenIn(guideOf(page))).toContain('You have priced a slab: 40 bags , $259.20');
  expect(await priceOf(page)).toBe(demo.price);
  await guideOf(page).getByRole('button', { name: 'Put it back' }).click();
  await expect.poll(() => valueOf(page, 'Bags to buy')).toBe('20 bags');

  await choose(page, 'Joists');
  await exampleOf(page, 'Both ends')
    .getByRole('button', { name: 'Both ends', exact: true })
    .click();
  await guideOf(page).getByRole('button', { name: 'Put into my Joists' }).click();
  const line = page.getByRole('combobox', { name: 'Formula of Joists' });
  expect(await line.inputValue()).toBe('joists every 16 in along 12 ft');
  await page.keyboard.press('Enter');
  const fewer = new Demo({ Joists: 'joists every 16 in along 12 ft' });
  await expect.poll(() => priceOf(page)).toBe(fewer.price);
  await page.keyboard.press('Control+z');
  await expect.poll(() => priceOf(page)).toBe(demo.price);
});

test('by the keyboard alone: in, from line to line, an example added, undone, and out', async () => {
  const page = await (await visit()).tab();
  await choose(page, 'Rows');
  await page.keyboard.press('h');
  await exampleOf(page, 'Slab length').waitFor();
  await expect.poll(() => focusedOn(page)).toBe('Guide');
  for (let most = 0; (await focusedOn(page)) !== 'Slab length'; most++) {
    expect(most).toBeLessThan(20);
    await page.keyboard.press('Tab');
  }
  for (let down = 0; down < 8; down++) await page.keyboard.press('ArrowDown');
  await expect.poll(() => focusedOn(page)).toBe('Concrete');
  await page.keyboard.press('a');
  await expect.poll(() => focusedOn(page)).toBe('Concrete');
  const concrete = rowOf(page, 'Concrete');
  await expect.poll(() => concrete.count()).toBe(2);
  await page.keyboard.press('Control+z');
  await expect.poll(() => concrete.count()).toBe(1);
  expect(await priceOf(page)).toBe(demo.price);
  await page.keyboard.press('F1');
  await guideOf(page).waitFor({ state: 'hidden' });
});

test('it is not fetched before it is asked for', async () => {
  const { context, tab } = await visit();
  const asked: string[] = [];
  context.on('request', (request) => asked.push(request.url()));
  const page = await tab();
  await choose(page, 'Rows');
  expect(asked.filter((url) => /guide/.test(url))).toEqual([]);
  await opened(page);
  expect(asked.filter((url) => /guide/.test(url)).length).toBeGreaterThan(1);
});

test('it is printed whole, without the notebook', async () => {
  const page = await (await visit()).tab();
  await opened(page);
  const sheets = pdfText(await page.pdf({ format: 'A4' }));
  expect(sheets.length).toBeGreaterThan(5);
  const text = tidy(sheets.join(' '));
  for (const words of ['A slab in three minutes', 'Everything you can say', 'Usual length']) {
    expect(text).toContain(words);
  }
  expect(text).not.toContain('Deck surface');
});

describe.each(['light', 'dark'] as const)('axe finds nothing in it in the %s', (colorScheme) => {
  test.for([
    ['on a desk', DESK],
    ['on a phone', PHONE],
  ] as const)('%s', async ([, viewport]) => {
    const { context, tab } = await visit({ viewport, colorScheme });
    await context.addInitScript({ content: axe.source });
    const page = await tab();
    await opened(page);
    await exampleOf(page, 'Your turn')
      .getByRole('button', { name: 'Your turn', exact: true })
      .click();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+a');
    await page.keyboard.insertText('12 by 4 ft');
    await guideOf(page).locator('.problem').waitFor();
    const found = await page.evaluate(async () => {
      const { axe: inPage } = globalThis as unknown as { axe: typeof import('axe-core') };
      const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
      const { violations } = await inPage.run(document, { runOnly: tags });
      return violations.map(
        ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`,
      );
    });
    expect(found).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(viewport.width);
  });
});

test('every line of the text stands on the page with the number it comes to', async () => {
  const page = await (await visit()).tab();
  await opened(page);
  const text = fs.readFileSync(new URL('../../templates/guide.md', import.meta.url), 'utf8');
  const estimate = new Estimate(text);
  const expected = allCells(estimate.notebook).map(({ id, name, formula }) => {
    const shown = valueSaid(estimate, id);
    return [name, shown ?? (estimate.state(id).kind === 'given' ? formula : '?')];
  });
  expect(expected.length).toBeGreaterThan(100);
  const drawn = await guideOf(page)
    .locator('guide-example')
    .evaluateAll((lines) =>
      lines.map((line) =>
        ['.name', '.value'].map(
          (part) => line.shadowRoot?.querySelector(part)?.textContent?.trim() ?? '',
        ),
      ),
    );
  expect(drawn).toEqual(expected);
});
