// Editing as a builder does it: writing with what is offered, finding one's way, moving and duplicating, taking back.
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import {
  PHONE,
  choose,
  focusedOn,
  priceOf,
  rewrite,
  rowOf,
  seenIn,
  shownOf,
  toldOn,
  visits,
} from './visit.ts';

const visit = visits();

const options = (page: Page): Promise<string[]> =>
  page.locator('[role=option] span:first-child').allInnerTexts();

async function goTo(page: Page, typed: string): Promise<void> {
  await page.keyboard.press('Control+g');
  await page.getByRole('combobox', { name: 'Name of a cell, table or part' }).waitFor();
  await page.keyboard.type(typed);
  await page.keyboard.press('Enter');
}

test('a formula is written with what fits, by keys alone, and each slot says what it needs', async () => {
  const page = await (await visit()).tab();
  await goTo(page, 'form boards');
  await expect.poll(() => focusedOn(page)).toBe('Form boards');
  await page.keyboard.press('Enter');
  await page.keyboard.type('posts every ');
  const line = page.getByRole('combobox', { name: 'Formula of Form boards' });
  expect(await options(page)).toContain('form length');
  expect(await seenIn(page.locator('.slot'))).toContain('the spacing from one to the next');
  await page.keyboard.type('4 ft along form l');
  expect(await seenIn(page.locator('.slot'))).toContain('the run along which they stand');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  expect(await line.inputValue()).toBe('posts every 4 ft along form length');
  await page.keyboard.press('Escape');
});

test('what goes on from a volume says what it gives', async () => {
  const page = await (await visit()).tab();
  await choose(page, 'Bags to buy');
  await page.keyboard.press('Enter');
  await page.keyboard.type('slab volume ');
  await page.keyboard.press('Control+Space');
  const list = await seenIn(page.locator('[role=listbox]'));
  expect(list).toMatch(/in bags of … .*36 bags in cubic yards gives .* cubic yards/);
});

test('where a number goes is followed to the price, and the way back is found by name', async () => {
  const page = await (await visit()).tab();
  await choose(page, 'Slab volume');
  await page.keyboard.press('i');
  await page.getByRole('dialog', { name: 'Slab volume goes into' }).waitFor();
  await page
    .locator('paper-sheet[open]')
    .getByRole('button', { name: /^Direct cost/ })
    .click();
  await expect.poll(() => focusedOn(page)).toBe('Direct cost');
  await goTo(page, 'slab v');
  await expect.poll(() => focusedOn(page)).toBe('Slab volume');
});

test('a cell is moved to another part by its sheet and back by undo, and the price stands still', async () => {
  const page = await (await visit()).tab();
  const price = await priceOf(page);
  await choose(page, 'Slab volume');
  await page.keyboard.press('m');
  await page
    .locator('paper-sheet[open]')
    .getByRole('button', { name: 'Steps', exact: true })
    .click();
  expect(await toldOn(page)).toContain('Moved Slab volume to Steps');
  await expect.poll(() => focusedOn(page)).toBe('Slab volume');
  expect(await shownOf(page, 'Slab volume')).toBe('16.5 cubic feet');
  expect(await priceOf(page)).toBe(price);
  await page.keyboard.press('Control+z');
  await expect.poll(() => focusedOn(page)).toBe('Slab volume');
  expect(await toldOn(page)).toContain('Undone: Move Slab volume to Steps');
});

test('a cell is dragged by its handle with the mouse', async () => {
  const page = await (await visit()).tab();
  await choose(page, 'Bags to buy');
  const row = rowOf(page, 'Bags to buy');
  await row.hover();
  const from = await row.locator('.grip').boundingBox();
  const to = await rowOf(page, 'Slab volume').boundingBox();
  if (!from || !to) throw new Error('the rows are not in sight');
  await page.mouse.move(from.x + 6, from.y + 12);
  await page.mouse.down();
  await page.mouse.move(from.x + 6, to.y + 4, { steps: 5 });
  await page.mouse.up();
  await expect.poll(() => toldOn(page)).toContain('Moved Bags to buy');
  const names = await page.locator('story-cell .name').allInnerTexts();
  expect(names.indexOf('Bags to buy')).toBe(names.indexOf('Slab volume') - 1);
});

test('a part is duplicated and the copy stands on its own, on a phone', async () => {
  const page = await (await visit({ viewport: PHONE })).tab();
  await page.getByRole('button', { name: 'Duplicate Landing', exact: true }).click();
  await expect.poll(() => toldOn(page)).toContain('Duplicated Landing as Landing 2');
  const copies = page
    .locator('story-part')
    .filter({ has: page.getByRole('heading', { name: /Landing 2/ }) });
  expect(await copies.locator('story-cell').count()).toBeGreaterThan(10);
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect.poll(() => copies.count()).toBe(0);
});

test('many changes of all sorts are taken back one by one', async () => {
  const page = await (await visit()).tab();
  const price = await priceOf(page);
  await rewrite(page, 'Thickness', '5 in');
  await choose(page, 'Waste');
  await page.keyboard.press('d');
  await expect.poll(() => focusedOn(page)).toBe('Waste 2');
  await page.keyboard.press('Alt+ArrowUp');
  await expect.poll(() => toldOn(page)).toContain('Moved Waste 2');
  await page.keyboard.press('F2');
  await page.keyboard.type('Spill');
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toBe('Spill');
  expect(await priceOf(page)).not.toBe(price);
  for (const said of [
    'Rename Waste 2 to Spill',
    'Move Waste 2',
    'Duplicate Waste',
    'Thickness: 5 in',
  ]) {
    await page.keyboard.press('Control+z');
    await expect.poll(() => toldOn(page)).toContain(`Undone: ${said}`);
  }
  expect(await priceOf(page)).toBe(price);
  await expect.poll(() => focusedOn(page)).toBe('Thickness');
});
