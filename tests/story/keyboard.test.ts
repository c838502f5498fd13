// The whole of it by keyboard alone, with the keys that the page's own Keys sheet names.
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { Demo } from './demo.ts';
import {
  focusedOn,
  kept,
  priceOf,
  rowOf,
  seenIn,
  shownOf,
  until,
  visits,
  workingOf,
} from './visit.ts';

const visit = visits();
const demo = new Demo();

async function onRow(page: Page, name: string): Promise<void> {
  await expect.poll(() => focusedOn(page)).toBe(name);
}

/** From the top of the page onto its chosen row. */
async function toTheRows(page: Page): Promise<void> {
  await until(page, 'Tab', 'Deck area', 40);
}

/** Empties the line being written and types in its place. */
async function typeOver(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}

test('the Keys sheet is reached, read and left, and the keyboard comes back to where it was', async () => {
  const page = await (await visit()).tab();
  await until(page, 'Tab', 'Keys', 20);
  await page.keyboard.press('Enter');
  const sheet = page.getByRole('dialog', { name: 'Keys' });
  await sheet.waitFor();
  const keys = await seenIn(sheet);
  for (const key of ['Enter', 'Esc', 'T', 'F2', 'Insert', 'Delete', 'W', 'Ctrl Z', 'Alt 1']) {
    expect(keys).toContain(key);
  }
  await page.keyboard.press('Escape');
  await sheet.waitFor({ state: 'hidden' });
  await expect.poll(() => focusedOn(page)).toBe('Keys');
});

test('a given is found, changed, undone and done again', async () => {
  const page = await (await visit()).tab();
  await toTheRows(page);
  await until(page, 'ArrowDown', 'Thickness', 120);
  await page.keyboard.press('Enter');
  await typeOver(page, '5 in');
  await page.keyboard.press('Enter');
  await onRow(page, 'Thickness');
  const thicker = new Demo({ Thickness: '5 in' });
  expect(await priceOf(page)).toBe(thicker.price);
  await page.keyboard.press('Control+z');
  await expect.poll(() => priceOf(page)).toBe(demo.price);
  await onRow(page, 'Thickness');
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(() => priceOf(page)).toBe(thicker.price);
  await kept(page);
});

test('a formula is written with names picked from the list, mended with one key, and left with Escape', async () => {
  const page = await (await visit()).tab();
  await toTheRows(page);
  await until(page, 'ArrowDown', 'Bags to buy', 160);
  const line = page.getByRole('combobox', { name: 'Formula of Bags to buy' });
  const list = page.getByRole('listbox', { name: 'What could go on from here' });

  // Picked from the list: the name is finished, the list is gone.
  await page.keyboard.press('Enter');
  await typeOver(page, 'slab vo');
  await list.waitFor();
  await page.keyboard.press('ArrowDown');
  expect(await line.getAttribute('aria-activedescendant')).toBe('option-0');
  await page.keyboard.press('Enter');
  await list.waitFor({ state: 'hidden' });
  expect(await line.inputValue()).toBe('slab volume');
  await page.keyboard.type(' plus waste, in bags of bag yield ');
  const said = page.locator('story-formula .said');
  await expect.poll(() => seenIn(said)).toContain('read as');
  expect(await seenIn(said)).toContain(demo.shown('Bags to buy'));

  // Two ways to read it: both are offered, and one key takes the one that was meant.
  await typeOver(page, 'slab volume plus waste divided by bag yield, rounded up ');
  const problem = page.locator('story-formula .problem');
  await problem.waitFor();
  expect(await seenIn(problem)).toMatch(/two ways to read this.*Alt 1.*Alt 2/);
  await page.keyboard.press('Alt+1');
  await problem.waitFor({ state: 'hidden' });
  await expect.poll(() => seenIn(said)).toContain(demo.shown('Bags to buy'));
  await page.keyboard.press('Enter');
  await onRow(page, 'Bags to buy');
  expect(await shownOf(page, 'Bags to buy')).toBe(demo.shown('Bags to buy'));
  expect(await priceOf(page)).toBe(demo.price);

  // A name written wrong is mended the same way.
  await page.keyboard.press('Enter');
  await typeOver(page, 'slab volume plus waste, in bags of bag yeild ');
  await problem.waitFor();
  await page.keyboard.press('Alt+1');
  await expect.poll(() => line.inputValue()).toContain('bag yield');

  // Left with Escape: what stood there stands there still.
  const words = rowOf(page, 'Truck instead').locator('.words');
  const before = await words.innerText();
  await page.keyboard.press('Escape');
  await onRow(page, 'Bags to buy');
  await until(page, 'ArrowDown', 'Truck instead', 5);
  await page.keyboard.press('Enter');
  await typeOver(page, '1 ft ');
  await page.keyboard.press('Escape');
  await onRow(page, 'Truck instead');
  expect(await words.innerText()).toBe(before);
});

test('the tape is opened, moved, left and kept', async () => {
  const page = await (await visit()).tab();
  await toTheRows(page);
  await until(page, 'ArrowDown', 'Board gap', 40);
  await page.keyboard.press('t');
  await expect.poll(() => focusedOn(page)).toBe('Tape for Board gap');
  await page.keyboard.press('End');
  const wide = new Demo({ 'Board gap': '3/8 in' });
  await expect.poll(() => priceOf(page)).toBe(wide.price);
  expect(wide.price).not.toBe(demo.price);
  await page.keyboard.press('Escape');
  await onRow(page, 'Board gap');
  expect(await priceOf(page)).toBe(demo.price);
  await page.keyboard.press('t');
  await expect.poll(() => focusedOn(page)).toBe('Tape for Board gap');
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await onRow(page, 'Board gap');
  expect(await priceOf(page)).toBe(wide.price);
  await kept(page);
});

test('the working is gone to and come back from, a cell is renamed, added and removed', async () => {
  const page = await (await visit()).tab();
  await toTheRows(page);
  await page.keyboard.press('w');
  await expect.poll(() => focusedOn(page)).toBe('Deck area');
  expect(await workingOf(page).locator('h2:focus').count()).toBe(1);
  await until(page, 'Tab', 'deck length', 10);
  await page.keyboard.press('Escape');
  await onRow(page, 'Deck area');

  await page.keyboard.press('F2');
  await typeOver(page, 'Walking area');
  await page.keyboard.press('Enter');
  await onRow(page, 'Walking area');
  expect(await seenIn(rowOf(page, 'Oiling'))).toContain('walking area at $1.15 per sq ft');

  await page.keyboard.press('Insert');
  await expect.poll(() => focusedOn(page)).toBe('Name of the new cell');
  await page.keyboard.type('Edge');
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toBe('Formula of Edge');
  await typeOver(page, 'deck length plus deck width ');
  await page.keyboard.press('Enter');
  await onRow(page, 'Edge');
  expect(await shownOf(page, 'Edge')).toBe('30 ft');

  await page.keyboard.press('Delete');
  const question = page.getByRole('dialog', { name: 'Remove Edge?' });
  await question.waitFor();
  await until(page, 'Tab', 'Remove it', 6);
  await page.keyboard.press('Enter');
  await question.waitFor({ state: 'hidden' });
  expect(await rowOf(page, 'Edge').count()).toBe(0);
  await onRow(page, 'Frame height');
  expect(await priceOf(page)).toBe(demo.price);
});
