// What moves it, on the built page: by keyboard from a range that is typed to an answer that is put in and undone; the same
// figures as the headless run for the same seed, with workers and without.
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import axe from 'axe-core';
import type { Locator, Page } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { quantile } from '../../src/moves-it/curve.ts';
import type { TrialFigures } from '../../src/moves-it/figures.ts';
import { inOneGo } from '../../src/moves-it/goes.ts';
import { answerTo } from '../../src/moves-it/questions.ts';
import { JOB_PRICE, withTotals } from '../../src/moves-it/whole-job.ts';
import { NearAmounts } from '../../src/ui/near-amounts.ts';
import { headless } from '../figure/headless.ts';
import { findings } from './axe-findings.ts';
import { Demo } from './demo.ts';
import {
  DESK,
  PHONE,
  choose,
  focusedOn,
  kept,
  priceOf,
  rewrite,
  rowOf,
  seenIn,
  shownOf,
  tabTo,
  tidy,
  until,
  visits,
} from './visit.ts';

const visit = visits();
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'moves-'));
afterAll(() => fs.rmSync(folder, { recursive: true }));

const RANGED = '$26.98 per board, $24 per board at best, $33 per board at worst';

const sheetOf = (page: Page): Locator => page.getByRole('dialog', { name: 'What moves it' });

const leaf = (page: Page, name: string): Locator =>
  sheetOf(page).getByRole('button', { name, exact: true });

/** What four times in five the price stays under, worked in node on the same text. */
function sureOf(text: string): string {
  const job = withTotals(new Estimate(text));
  const answer = inOneGo(answerTo(job, { kind: 'trials', result: -1, trials: 20_000, seed: 1 }));
  if (answer.kind !== 'trials') throw new Error(answer.kind);
  return new NearAmounts(job, JOB_PRICE).say(quantile(answer, 0.8));
}

const mainOf = async (page: Page): Promise<string> =>
  tidy(await sheetOf(page).locator('moves-sure .main').innerText());

test('a range is typed, how sure it is read, a tie made, an answer put in and undone, all by keyboard', async () => {
  const page = await (await visit()).tab();
  await until(page, 'Tab', 'Deck area', 40);
  await until(page, 'ArrowDown', 'Board price', 160);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+a');
  await page.keyboard.type(RANGED);
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toBe('Board price');
  await page.keyboard.press('v');
  await sheetOf(page).waitFor();

  // How sure.
  await until(page, 'Tab', 'How sure', 10);
  await page.keyboard.press('Enter');
  const ranged = new Demo({ 'Board price': RANGED });
  await expect
    .poll(() => mainOf(page))
    .toBe(`Four times in five the price of the job stays under ${sureOf(ranged.text)}.`);

  // What is tied goes together, and the figures with it.
  await until(page, 'Tab', 'Tie Mending hours', 40);
  await page.keyboard.press('Space');
  await until(page, 'Tab', 'Tie Board price', 10);
  await page.keyboard.press('Space');
  await tabTo(page, sheetOf(page).getByLabel('Tie the ticked ones'), 20);
  await page.keyboard.type('one crew');
  await page.keyboard.press('Enter');
  await expect.poll(() => seenIn(sheetOf(page))).toContain('moves with one crew');
  const tied = tiedText(ranged.text);
  expect(sureOf(tied)).not.toBe(sureOf(ranged.text));
  await expect
    .poll(() => mainOf(page))
    .toBe(`Four times in five the price of the job stays under ${sureOf(tied)}.`);

  // What would it take; the tie and the range stay where they are.
  await until(page, 'Shift+Tab', 'What would it take', 60);
  await page.keyboard.press('Enter');
  await tabTo(page, sheetOf(page).getByLabel('What must'), 10);
  await page.keyboard.type('Board price');
  await tabTo(page, sheetOf(page).getByLabel('for the price of the job to be'), 4);
  await page.keyboard.type('$17,000');
  await page.keyboard.press('Enter');
  await expect.poll(() => seenIn(sheetOf(page))).toContain('Board price has to be $');
  await until(page, 'Tab', /^Put in \$[\d.]+ per board$/, 8);
  await page.keyboard.press('Enter');
  await expect.poll(() => priceOf(page)).toBe('$17,000.00');
  await expect.poll(() => focusedOn(page)).toBe('Undo');
  await page.keyboard.press('Control+z');
  await expect.poll(() => priceOf(page)).toBe(ranged.price);

  // Undone to the very beginning, and the keyboard is where it was.
  await page.keyboard.press('Escape');
  await sheetOf(page).waitFor({ state: 'hidden' });
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => seenIn(rowOf(page, 'Board price'))).not.toContain('at best');
  expect(await shownOf(page, 'Board price')).toBe(new Demo().shown('Board price'));
  await kept(page);
});

/** As the sheet writes it: under each of them, below its other remarks. */
function tiedText(text: string): string {
  const estimate = new Estimate(text);
  const ids = estimate.notebook.parts.flatMap((part) =>
    part.blocks.flatMap((block) =>
      block.kind === 'cell' && ['Mending hours', 'Board price'].includes(block.cell.name)
        ? [block.cell.id]
        : [],
    ),
  );
  expect(ids).toHaveLength(2);
  expect(estimate.tie(ids, 'one crew')).toHaveProperty('change');
  return estimate.notebook.text;
}

describe('the same seed gives the same figures as the headless run', () => {
  test.for([
    ['from a worker', ''],
    ['on the page, where there are no workers', 'delete globalThis.Worker'],
  ] as const)('%s', async ([, script]) => {
    const { context, tab } = await visit();
    if (script) await context.addInitScript({ content: script });
    const page = await tab();
    await rewrite(page, 'Board price', RANGED);
    await page.keyboard.press('v');
    await leaf(page, 'How sure').click();
    await sheetOf(page).getByLabel('What moves', { exact: true }).selectOption({ label: 'Price' });
    await sheetOf(page).getByText('Figures', { exact: true }).click();
    await sheetOf(page).getByLabel('Seed').fill('7');
    const demo = new Demo({ 'Board price': RANGED });
    fs.writeFileSync(path.join(folder, 'demo.md'), demo.text);
    const { out } = headless(folder, 'demo.md', '--trials', '20000', '--seed', '7', '--json');
    const { trials } = JSON.parse(out) as { readonly trials: TrialFigures };
    const wanted = trials.cells.find(({ name }) => name === 'Price');
    if (!wanted) throw new Error('the demo has no Price that depends on a range');
    const dollars = (value: number): string => `$${Math.round(value).toLocaleString('en-US')}`;
    const { p5, p10, p50, p80, p90, p95, mean } = wanted;
    const figures = sheetOf(page).locator('.figures');
    const told = async (): Promise<string> => tidy(await figures.innerText());
    for (const figure of [p5, p10, p50, p80, p90, p95, mean])
      await expect.poll(told).toContain(dollars(figure));
    expect(page.workers()).toHaveLength(script === '' ? 1 : 0);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.workers().length).toBe(0);
  });
});

test('a given is chosen from its bar, and the page is at its cell', async () => {
  const page = await (await visit()).tab();
  await page.getByRole('button', { name: 'What moves it' }).click();
  const row = sheetOf(page).getByRole('row', { name: /^Deck length/ });
  await row.waitFor();
  expect(tidy(await row.innerText())).toMatch(/in \d+ jumps/);
  await row.locator('.bar').click();
  await sheetOf(page).waitFor({ state: 'hidden' });
  await expect.poll(() => focusedOn(page)).toBe('Deck length');
});

test('on paper the sheet is the page', async () => {
  const page = await (await visit()).tab();
  await choose(page, 'Deck length');
  await page.keyboard.press('v');
  await leaf(page, 'How sure').click();
  await sheetOf(page).locator('.curve-paper').waitFor();
  await page.emulateMedia({ media: 'print' });
  const seen = await seenIn(page.locator('body'));
  expect(seen).toContain('Four times in five');
  for (const other of ['Put away', 'Insert a part', 'Riser check', 'kept here'])
    expect(seen).not.toContain(other);
  await page.emulateMedia({ media: 'screen' });
  await leaf(page, 'What matters').click();
  await sheetOf(page)
    .getByRole('row', { name: /^Deck length/ })
    .waitFor();
  await page.emulateMedia({ media: 'print' });
  // What is not drawn is said, so that nobody takes the list for all of it.
  expect(await seenIn(page.locator('body'))).toMatch(/\d+ more, each by \$\d+ at most ?\./);
});

describe.each(['light', 'dark'] as const)('axe finds nothing in the %s', (scheme) => {
  test.for([
    ['on a desk', DESK],
    ['on a phone', PHONE],
  ] as const)('%s', async ([, viewport]) => {
    const { context, tab } = await visit({ viewport, colorScheme: scheme });
    await context.addInitScript({ content: axe.source });
    const page = await tab();
    await choose(page, 'Deck length');
    await page.keyboard.press('v');
    await sheetOf(page)
      .getByRole('row', { name: /^Deck length/ })
      .waitFor();
    expect(await findings(page, scheme)).toEqual([]);
    await leaf(page, 'How sure').click();
    await sheetOf(page).locator('.curve-paper').waitFor();
    await sheetOf(page).getByLabel('Budget').fill('$17,700');
    await sheetOf(page).getByText('Figures', { exact: true }).click();
    expect(await findings(page, scheme)).toEqual([]);
    await leaf(page, 'What would it take').click();
    await sheetOf(page).getByLabel('for the price of the job to be').fill('$17,000');
    await page.keyboard.press('Enter');
    await sheetOf(page).locator('.found .main').first().waitFor();
    expect(await findings(page, scheme)).toEqual([]);
    const wide = await sheetOf(page).evaluate((one) => one.scrollWidth - one.clientWidth);
    expect(wide).toBe(0);
  });
});
