// What happened on a job, by keyboard alone: lines typed and pasted, one corrected, held against the estimate that went
// out, and the hours that it took written back for the next job.
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { Demo } from './demo.ts';
import { pdfText } from './pdf-text.ts';
import {
  focusedOn,
  kept,
  priceOf,
  seenIn,
  shownOf,
  stands,
  tabTo,
  until,
  visits,
  workingOf,
} from './visit.ts';

const visit = visits();
const demo = new Demo();
const thicker = new Demo({ Thickness: '5 in' });

const sheetOf = (page: Page): Locator => page.locator('record-sheet');

async function press(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target, 200);
  await page.keyboard.press('Enter');
}

const button = (page: Page, name: string | RegExp): Locator =>
  sheetOf(page).getByRole('button', { name, exact: typeof name === 'string' });

/** Tabs on to a field and writes in it, or picks what begins so. */
async function write(page: Page, field: Locator, words: string): Promise<void> {
  await tabTo(page, field, 200);
  const list = await field.evaluate((one) => one.localName === 'select');
  if (!list) await page.keyboard.press('Control+a');
  await page.keyboard.type(words);
}

const SHEET = `Date\tPart\tKind\tWhat\tAmount\tHours\tRate
2026-03-20\tDeck surface\tmaterial\tScrews, invented\t$96.40\t\t
2026-03-21\tDeck surface\tlabour\tLay boards\t\t9:30\t60.00
2026-03-22\tNo such part\tmaterial\tSand\t$12\t\t
`;

test('a job is recorded, corrected, held against the bid that went out, and what it taught is written back', async () => {
  const { context, tab } = await visit();
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const page = await tab();
  const sheet = sheetOf(page);

  // A bid goes out, and the notebook goes on.
  await until(page, 'Tab', 'Deck area', 40);
  await page.keyboard.press('s');
  await page.getByRole('dialog', { name: 'Snapshots' }).waitFor();
  await tabTo(page, page.locator('snapshot-sheet').getByLabel('Note, if one is wanted'));
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toBe('Compare with now: Bid 1');
  await page.keyboard.press('Escape');
  await expect.poll(() => focusedOn(page)).toBe('Deck area');
  await until(page, 'ArrowDown', 'Thickness', 80);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('5 in');
  await page.keyboard.press('Enter');
  await expect.poll(() => priceOf(page)).toBe(thicker.price);

  // Lines are typed: a receipt, then hours; day, part and kind stay for the next one.
  await until(page, 'Shift+Tab', 'Job record', 40);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog', { name: 'Job record' }).waitFor();
  const line = sheet.locator('record-line.new');
  const field = (name: string): Locator => line.locator(`#${name}`);
  await write(page, field('part'), 'Deck surface');
  await write(page, field('kind'), 'material');
  await write(page, field('what'), 'Boards, invented receipt');
  await write(page, field('amount'), '$1,204.60');
  await page.keyboard.press('Enter');
  await expect
    .poll(() => seenIn(sheet))
    .toContain('Boards, invented receipt is in the record, $1,204.60.');
  const goesOn = () => field('what').evaluate((one) => one.matches(':focus'));
  await expect.poll(goesOn).toBe(true);
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.type('labour');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Lay boards');
  await write(page, field('hours'), '8.5');
  await write(page, field('rate'), '60');
  await page.keyboard.press('Enter');
  await expect.poll(() => seenIn(sheet)).toContain('Lay boards is in the record, $510.00.');

  // Rows of a sheet are pasted: what can't be read stays with its reason.
  await press(page, button(page, 'From a sheet'));
  await tabTo(page, sheet.getByLabel('Rows'));
  await page.evaluate((rows) => navigator.clipboard.writeText(rows), SHEET);
  await page.keyboard.press('Control+v');
  await expect.poll(() => seenIn(sheet)).toContain('Put in 2 lines, $666.40');
  expect(await seenIn(sheet)).toContain('"No such part" is no part of this notebook');
  await press(page, button(page, /^Put in 2 lines/));
  await expect.poll(() => seenIn(sheet)).toContain('2 lines put in, $666.40.');

  // One was wrong: it is corrected, and what stood there stays readable.
  await press(page, button(page, 'What happened'));
  await press(page, button(page, 'Correct Screws, invented, 2026-03-20'));
  const mended = sheet.locator('record-line[correcting]');
  await write(page, mended.locator('#amount'), '86.40');
  await write(page, mended.locator('#why'), 'read wrongly');
  await page.keyboard.press('Enter');
  await expect.poll(() => seenIn(sheet)).toContain('The correction is kept');
  await expect.poll(() => focusedOn(page)).toBe('Correct Screws, invented, 2026-03-20');
  await press(page, sheet.locator('summary', { hasText: 'corrected' }));
  expect(await seenIn(sheet)).toContain(
    'was 2026-03-20, Deck surface, material, Screws, invented, $96.40 ; read wrongly',
  );

  // Against the bid, not against the notebook as it stands: 1,204.60 + 510.00 + 86.40 + 570.00 spent.
  await press(page, button(page, 'Against the estimate'));
  const against = sheet.getByRole('combobox', { name: 'Held against' });
  await expect.poll(() => seenIn(sheet)).toContain('$2,371.00 spent');
  await write(page, against, 'Bid 1');
  await expect.poll(() => seenIn(sheet)).toContain('held against Bid 1');
  const whole = sheet.getByRole('row', { name: /^The whole job/ });
  await expect.poll(() => seenIn(whole)).toContain(`The whole job ${demo.direct} $2,371.00`);
  expect(demo.direct).not.toBe(thicker.direct);
  // Half done for all that was spent: as much again is to come, and the oiling, at $257.60, which nobody began.
  await write(page, sheet.getByLabel('Percent done of Deck surface', { exact: true }), '50');
  await page.keyboard.press('Tab');
  const part = sheet.getByRole('row', { name: /^Deck surface/ });
  await expect.poll(() => seenIn(part)).toContain('$2,371.00 $2,628.60 $4,999.60');

  // 8 hours 30 and 9 hours 30 for 224 sq ft of deck: written back where the next job finds it.
  await press(page, button(page, 'Learned'));
  await write(page, sheet.getByLabel('What was built with them'), 'deck area');
  await expect.poll(() => seenIn(sheet)).toContain('0.08036 hours per sq ft');
  await write(page, sheet.getByLabel('Called'), 'Laying hours, as built');
  await press(page, button(page, 'Write it into the notebook'));
  await expect.poll(() => seenIn(sheet)).toContain('Undo takes it back.');
  await page.keyboard.press('Escape');
  await sheet.getByRole('dialog').waitFor({ state: 'hidden' });
  const learned = 'Laying hours, as built';
  await expect.poll(() => shownOf(page, learned)).toBe('0.08036 hours per sq ft');
  await kept(page);

  // It is all there at the next visit.
  await page.reload();
  await stands(page);
  await page.keyboard.press('Control+g');
  await page.getByRole('dialog', { name: 'Go to' }).waitFor();
  await page.keyboard.type(learned);
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toBe(learned);
  await expect
    .poll(() => seenIn(workingOf(page)))
    .toContain('18 hours for 224 sq ft by its job record, up to');
  await until(page, 'Shift+Tab', 'Job record', 300);
  await page.keyboard.press('Enter');
  await press(page, button(page, 'Against the estimate'));
  await expect.poll(() => seenIn(sheet)).toContain('$2,371.00 spent');
  expect(await seenIn(sheet)).toContain('held against Bid 1');

  // On paper it is a table with the job over it, and none of the fields; a sheet is not a narrow screen.
  const paper = pdfText(await page.pdf({ format: 'Letter' }));
  expect(paper.length).toBeLessThanOrEqual(2);
  const words = paper.join(' ').replace(/\s+/g, '');
  expect(words).toContain('KestrelCourtgarden');
  expect(words).toContain('PartEstimateSpentTogoIntheendOverorunder');
  expect(words).not.toContain('Heldagainst');
});
