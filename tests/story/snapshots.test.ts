// What an owner answers for, by keyboard alone: freeze, change, compare, a change order on paper, the whole job in a
// file and out of it elsewhere.
import fs from 'node:fs';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { findings } from './axe-findings.ts';
import { Demo } from './demo.ts';
import { pdfText } from './pdf-text.ts';
import {
  DESK,
  PHONE,
  focusedOn,
  kept,
  priceOf,
  rewrite,
  seenIn,
  tabTo,
  until,
  visits,
} from './visit.ts';

const visit = visits();
const demo = new Demo();
const thicker = new Demo({ Thickness: '5 in' });

/** Files come and go as uploads and downloads; printing is only noted. */
async function openedPage(): Promise<Page> {
  const { context, tab } = await visit();
  await context.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(window, 'showSaveFilePicker');
    window.print = () => document.documentElement.toggleAttribute('printed', true);
  });
  return tab();
}

const sheetOf = (page: Page) => page.locator('snapshot-sheet');
const press = async (page: Page, name: string): Promise<void> => {
  await tabTo(page, sheetOf(page).getByRole('button', { name, exact: true }));
  await page.keyboard.press('Enter');
};

test('a bid is frozen and accepted, the notebook changed, compared, ordered, printed, and taken elsewhere in a file', async () => {
  const page = await openedPage();
  const sheet = sheetOf(page);
  const footing = page.getByRole('contentinfo');
  await until(page, 'Tab', 'Deck area', 40);

  // Freeze.
  await page.keyboard.press('s');
  await page.getByRole('dialog', { name: 'Snapshots' }).waitFor();
  await tabTo(page, sheet.getByLabel('Note, if one is wanted'));
  await page.keyboard.type('as it was sent');
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toBe('Compare with now: Bid 1');
  await press(page, 'More of Bid 1');
  await press(page, 'It was accepted');
  await expect.poll(() => seenIn(sheet)).toContain('accepted');
  await page.keyboard.press('Escape');
  await expect.poll(() => focusedOn(page)).toBe('Deck area');
  await expect.poll(() => seenIn(footing)).toContain(`Bid 1 accepted at ${demo.price}`);

  // Change.
  await until(page, 'ArrowDown', 'Thickness', 80);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('5 in');
  await page.keyboard.press('Enter');
  await expect.poll(() => priceOf(page)).toBe(thicker.price);
  await expect.poll(() => seenIn(footing)).toMatch(/now \$[\d.]+ more/);
  await kept(page);

  // Compare.
  await page.keyboard.press('s');
  await press(page, 'Compare with now: Bid 1');
  await page.getByRole('dialog', { name: 'What changed' }).waitFor();
  await expect.poll(() => seenIn(sheet)).toMatch(/Why the price is \$[\d.]+ more/);
  await expect.poll(() => seenIn(sheet)).toContain('Thickness grew 4 in 5 in');

  // A change order, printed.
  await tabTo(page, sheet.getByLabel('Reason, as whoever signs will read it'));
  await page.keyboard.type('A thicker slab');
  await press(page, 'It is priced so');
  await expect.poll(() => seenIn(sheet)).toContain('Change order 1');
  await press(page, 'Print it');
  expect(await page.locator('html[printed]').count()).toBe(1);
  const paper = pdfText(await page.pdf({ format: 'A4' }));
  expect(paper).toHaveLength(1);
  const text = squeezed(paper.join(' '));
  for (const words of ['Change order 1', 'A thicker slab', 'Concrete', 'for the client'])
    expect(text).toContain(squeezed(words));
  expect(text).toContain(squeezed(`New total ${thicker.price}`));
  for (const words of [
    'Undo',
    'Print it',
    'line by line',
    'All snapshots',
    'Working of',
    'Riser check',
    'Put away',
  ])
    expect(text).not.toContain(squeezed(words));
  await press(page, 'approved');
  await expect.poll(() => seenIn(sheet)).toContain(`it comes to ${thicker.price}`);
  await page.keyboard.press('Escape');
  await expect.poll(() => seenIn(sheet)).toContain('Contract sum');

  // The file out.
  const coming = page.waitForEvent('download');
  await press(page, 'Save the whole job');
  const download = await coming;
  expect(download.suggestedFilename()).toBe('kestrel-court-garden.storyrod');
  const file = fs.readFileSync(await download.path());

  // And in, elsewhere.
  const other = await openedPage();
  await until(other, 'Tab', 'Deck area', 40);
  await other.keyboard.press('s');
  const asked = other.waitForEvent('filechooser');
  await press(other, 'Open a job');
  await (
    await asked
  ).setFiles({ name: 'job.storyrod', mimeType: 'application/json', buffer: file });
  await expect.poll(() => seenIn(sheetOf(other))).toContain('Every hash matches.');
  expect(await seenIn(sheetOf(other))).toContain('Change order 1');
  await other.keyboard.press('Escape');
  await expect.poll(() => priceOf(other)).toBe(thicker.price);
  await expect
    .poll(() => seenIn(other.getByRole('contentinfo')))
    .toContain(`Bid 1 accepted at ${demo.price}`);

  // There it is again at the next visit.
  await kept(other);
  await other.reload();
  await expect
    .poll(() => seenIn(other.getByRole('contentinfo')))
    .toContain(`Bid 1 accepted at ${demo.price}`);
});

describe.each(['light', 'dark'] as const)('axe finds nothing in the %s', (scheme) => {
  test.for([
    ['on a desk', DESK],
    ['on a phone', PHONE],
  ] as const)('%s', async ([, viewport]) => {
    const { context, tab } = await visit({ viewport, colorScheme: scheme });
    await context.addInitScript({ content: axe.source });
    const page = await tab();
    const sheet = sheetOf(page);
    await page.keyboard.press('s');
    await sheet.getByRole('button', { name: 'Freeze it now' }).click();
    await sheet.getByRole('button', { name: 'More of Bid 1' }).click();
    await sheet.getByRole('button', { name: 'It was accepted' }).click();
    await expect.poll(() => seenIn(sheet)).toContain('accepted');
    expect(await findings(page, scheme)).toEqual([]);
    expect(await wider(page)).toBe(false);
    await page.keyboard.press('Escape');
    await rewrite(page, 'Thickness', '5 in');
    await rewrite(page, 'Bag price', '$6.92 per bag');
    await expect.poll(() => priceOf(page)).not.toBe(demo.price);
    expect(await findings(page, scheme)).toEqual([]);
    await page.keyboard.press('s');
    await sheet.getByRole('button', { name: 'Compare with now: Bid 1' }).click();
    await sheet.locator('table.why').waitFor();
    expect(await findings(page, scheme)).toEqual([]);
    expect(await wider(page)).toBe(false);
    await sheet.getByLabel('Reason, as whoever signs will read it').fill('A thicker slab');
    await sheet.getByRole('button', { name: 'It is priced so' }).click();
    await expect.poll(() => seenIn(sheet)).toContain('Change order 1');
    expect(await findings(page, scheme)).toEqual([]);
    expect(await wider(page)).toBe(false);
  });
});

/** Does the page, or the sheet, run out at the side? */
function wider(page: Page): Promise<boolean> {
  return sheetOf(page)
    .locator('dialog')
    .evaluate(
      (dialog) =>
        document.documentElement.scrollWidth > window.innerWidth ||
        dialog.scrollWidth > dialog.clientWidth,
    );
}

function squeezed(text: string): string {
  return text.replace(/\s+/g, '');
}
