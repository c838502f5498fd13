// Pictures on the built page: under the rows of a template, at every size, on paper as letters and lines.
import fs from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { pdfText } from './pdf-text.ts';
import { PHONE, rewrite, visits } from './visit.ts';

const visit = visits();
const STEPS = fs.readFileSync(new URL('../../templates/steps.md', import.meta.url), 'utf8');

async function steps(): Promise<Page> {
  const { context, tab } = await visit();
  await context.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker'));
  const page = await tab();
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a text file' }).click();
  const file = { name: 'steps.md', mimeType: 'text/markdown', buffer: Buffer.from(STEPS) };
  await (await asked).setFiles(file);
  await page.getByRole('img', { name: /^Wood flight from the side: / }).waitFor();
  return page;
}

const flight = (page: Page) => page.getByRole('img', { name: /^Wood flight from the side: / });

test('the stair is drawn under its row, and redrawn when the height is measured anew', async () => {
  const page = await steps();
  expect(await flight(page).getAttribute('aria-label')).toContain('4 risers of 7 5/16 in');
  await rewrite(page, 'Frame height', '36 1/4 in');
  await expect
    .poll(() => flight(page).getAttribute('aria-label'))
    // As it is pencilled: one of the five is a sixteenth less.
    .toContain('5 risers from 7 1/4 in to 7 5/16 in');
});

test('on a phone it keeps within the page, its words as large as on a desk', async () => {
  const page = await steps();
  await page.setViewportSize(PHONE);
  await expect.poll(async () => (await flight(page).boundingBox())?.width).toBeLessThan(390);
  const box = await flight(page).boundingBox();
  expect(box?.width).toBeLessThanOrEqual(390);
  expect(box?.width).toBeGreaterThan(300);
  const letters = await flight(page)
    .locator('text')
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
  expect(Math.min(...letters)).toBeGreaterThan(11);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
});

test('on paper it is lines and letters, no picture of dots, with every dimension', async () => {
  const page = await steps();
  const pdf = await page.pdf({ format: 'A4' });
  await page.evaluate(() => {
    const all = (root: ParentNode): Element[] =>
      [...root.querySelectorAll('*')].flatMap((one) => [
        one,
        ...(one.shadowRoot ? all(one.shadowRoot) : []),
      ]);
    for (const one of all(document)) if (one.localName === 'story-picture') one.remove();
  });
  const without = await page.pdf({ format: 'A4' });
  const text = pdfText(pdf).join(' ').replace(/\s+/g, '');
  expect(text).toContain('handrail,top36inabovethenosings');
  expect(text.split('75/16in').length - 1).toBeGreaterThanOrEqual(4);
  expect(dotted(without).length).toBeGreaterThan(0);
  expect(dotted(pdf)).toEqual(dotted(without));
});

/**
 * How wide the pictures of dots in a file for printing are, each once: the edge of a sheet cuts what it likes off their
 * height. The small tiles of hatches are left out, and a strip of a dot or two.
 */
function dotted(pdf: Buffer): readonly number[] {
  const found = [...pdf.toString('latin1').matchAll(/\/Width (\d+)\s*\/Height (\d+)/g)];
  return [...new Set(found.map(([, width]) => Number(width)))]
    .filter((width) => width > 16)
    .toSorted((a, b) => a - b);
}
