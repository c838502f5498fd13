// A table from nothing to a priced one, by keyboard alone; and a long one, on a phone, in print.
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import {
  PHONE,
  choose,
  focusedOn,
  kept,
  rowOf,
  seenIn,
  shownOf,
  toldOn,
  visits,
  workingOf,
} from './visit.ts';

const visit = visits();

async function goTo(page: Page, typed: string): Promise<void> {
  await page.keyboard.press('Control+g');
  await page.getByRole('combobox', { name: 'Name of a cell, table or part' }).waitFor();
  await page.keyboard.type(typed);
  await page.keyboard.press('Enter');
}

async function focused(page: Page, said: string | RegExp): Promise<void> {
  if (typeof said === 'string') await expect.poll(() => focusedOn(page)).toBe(said);
  else await expect.poll(() => focusedOn(page)).toMatch(said);
}

async function keys(page: Page, ...pressed: readonly string[]): Promise<void> {
  for (const key of pressed) await page.keyboard.press(key);
}

/** The words of a table's header, and of one of its rows. */
async function line(page: Page, table: string, row: number): Promise<readonly string[]> {
  const lines = page.getByRole('grid', { name: table }).getByRole('row');
  const cells = await lines.nth(row).locator('th:not(.number), td').allInnerTexts();
  return cells.map((text) => text.replace(/\s+/g, ' ').trim());
}

/** As from a sheet, onto whatever has the keyboard. */
async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((words) => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', words);
    const event = { clipboardData, bubbles: true, composed: true, cancelable: true };
    at?.dispatchEvent(new ClipboardEvent('paste', event));
  }, text);
}

/** Lays a table out under this cell. */
async function lay(
  page: Page,
  under: string,
  name: string,
  lines: readonly string[],
): Promise<void> {
  await goTo(page, under);
  await focused(page, new RegExp(under, 'i'));
  await page.keyboard.press('l');
  await page.getByLabel('Name of the table').waitFor();
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  for (const [at, words] of lines.entries()) {
    if (at > 0) await page.keyboard.press('Enter');
    await page.keyboard.type(words);
  }
  await page.keyboard.press('Control+Enter');
  await page.getByRole('grid', { name }).waitFor();
}

test('a table is laid out, worked, changed and asked, by keyboard alone', async () => {
  const page = await (await visit()).tab();
  await lay(page, 'form boards', 'Stakes', ['run, length', 'north, 12 ft', 'south, 8 ft']);
  await focused(page, 'north');
  expect(await line(page, 'Stakes', 0)).toEqual(['run', 'length']);

  // A column more, with what it works; then another word for it.
  await keys(page, 'ArrowRight', 'ArrowUp', 'Insert');
  await focused(page, 'Name of the new column');
  await page.keyboard.type('stakes: stakes every 2 ft along length');
  await page.keyboard.press('Enter');
  await focused(page, /^stakes/);
  expect((await line(page, 'Stakes', 1)).slice(0, 2)).toEqual(['north', '12 ft']);
  expect((await line(page, 'Stakes', 1))[2]).toBe('7 stakes');
  await page.keyboard.press('F2');
  await page.keyboard.type('pegs');
  await page.keyboard.press('Enter');
  expect((await line(page, 'Stakes', 0))[2]).toMatch(/^pegs/);

  // A row is written with what is offered; its own working stands beside it.
  await keys(page, 'ArrowDown', 'ArrowDown');
  await expect.poll(() => seenIn(workingOf(page))).toContain('Stakes: south: pegs');
  await page.keyboard.type('stakes every 4 ft along le');
  await keys(page, 'ArrowDown', 'Enter');
  const writing = page.getByRole('combobox', { name: 'pegs, row 2' });
  expect(await writing.inputValue()).toBe('stakes every 4 ft along length');
  await page.keyboard.press('Enter');
  expect((await line(page, 'Stakes', 2))[2]).toBe('3 stakes set in this row; its column: 5 stakes');

  // On through the rows, and a new one at the end.
  await keys(page, 'Home', 'Insert');
  await page.keyboard.type('gate');
  await page.keyboard.press('Tab');
  await page.keyboard.type('4 ft');
  await page.keyboard.press('Enter');
  expect(await line(page, 'Stakes', 3)).toEqual(['gate', '4 ft', '3 stakes']);
  await page.keyboard.press('Alt+ArrowUp');
  expect((await line(page, 'Stakes', 2))[0]).toBe('gate');
  await focused(page, '4 ft');

  // Another cell asks it; the column goes, what asks says so, and undo goes back to it.
  await goTo(page, 'form boards');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('total of pegs in stakes');
  await keys(page, 'Enter', 'Alt+Enter');
  await expect.poll(() => shownOf(page, 'Form boards')).toBe('13 stakes');
  await goTo(page, 'stakes');
  await page.keyboard.press('Enter');
  await focused(page, 'north');
  await page.keyboard.press('Escape');
  await focused(page, 'Stakes');
  await page.keyboard.press('Enter');
  await focused(page, 'north');
  await keys(page, 'End', 'ArrowUp', 'Control+Delete');
  const sheet = page.getByRole('dialog', { name: 'Remove pegs?' });
  await sheet.waitFor();
  expect(await seenIn(sheet)).toContain('Form boards: total of pegs in stakes');
  await page.getByRole('button', { name: 'Remove it' }).press('Enter');
  await expect.poll(() => line(page, 'Stakes', 0)).toEqual(['run', 'length']);
  await focused(page, 'length');
  expect(await seenIn(rowOf(page, 'Form boards'))).toContain('pegs');
  await page.keyboard.press('Control+z');
  await expect.poll(() => shownOf(page, 'Form boards')).toBe('13 stakes');
  await focused(page, /^pegs/);
  await kept(page);
});

test('what a paste could not take is told under the table, and rows go in on a phone as well', async () => {
  const profile = await visit({ viewport: PHONE, hasTouch: true });
  const page = await profile.tab();
  await choose(page, 'Thickness');
  await page.keyboard.press('l');
  await page.getByLabel('Name of the table').fill('Pours');
  await page
    .getByLabel(/^Columns in the first line/)
    .fill('pour\tdepth (in)\nfirst\t4\nsecond\t5 kg');
  await page.getByRole('button', { name: 'Lay it out' }).tap();
  await page.getByRole('grid', { name: 'Pours' }).waitFor();
  expect(await seenIn(page.locator('.refused'))).toContain(
    'Row 2, depth: “5 kg”. This column holds a length, and this is a weight.',
  );
  expect(await line(page, 'Pours', 1)).toEqual(['first', '4 in']);
  await page.getByRole('grid', { name: 'Pours' }).getByText('4 in').tap();
  const writing = page.getByRole('combobox', { name: 'depth, row 1' });
  await writing.fill('6 in');
  await writing.press('Enter');
  expect(await line(page, 'Pours', 1)).toEqual(['first', '6 in']);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(await toldOn(page)).toBe('');
});

test('of five thousand rows those in sight stand on the page, all of them are found, and all are printed', async () => {
  const page = await (await visit()).tab();
  await choose(page, 'Thickness');
  await page.keyboard.press('Insert');
  await page.keyboard.type('Boards');
  await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: 'Formula of Boards' }).waitFor();
  const rows = Array.from({ length: 5000 }, (_, n) => `board ${n + 1}\t${(n % 16) + 1} ft`);
  await paste(page, ['board\trun\ttwice: run times 2', ...rows].join('\n'));
  await page.getByRole('form', { name: 'Lay out Boards as a table' }).waitFor();
  await page.keyboard.press('Control+Enter');
  const grid = page.getByRole('grid', { name: 'Boards' });
  await grid.waitFor();
  const drawn = (): Promise<number> => grid.locator('tr[data-row]').count();
  await focused(page, 'board 1');
  expect(await drawn()).toBeLessThan(90);

  await page.getByRole('searchbox', { name: 'Find in all rows of Boards' }).fill('board 4321');
  await page.keyboard.press('Enter');
  await focused(page, 'board 4321');
  await keys(page, 'ArrowRight', 'ArrowRight');
  await focused(page, '2 ft');
  await expect.poll(() => seenIn(workingOf(page))).toContain('Boards: board 4321: twice');
  await page.keyboard.press('Control+End');
  await focused(page, '16 ft');
  await grid.evaluate((table) => (table.parentElement as HTMLElement).scrollTo(0, 0));
  // The cell with the keyboard stays, wherever it is scrolled to.
  await focused(page, '16 ft');
  await expect.poll(() => grid.locator('tr[data-row="0"]').count()).toBe(1);
  expect(await drawn()).toBeLessThan(90);

  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await expect.poll(drawn).toBe(5000);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await expect.poll(drawn).toBeLessThan(90);
});
