// A trainer before a group, by keyboard alone: a number shown step by step, and the same asked first.
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { Demo } from './demo.ts';
import { pdfText } from './pdf-text.ts';
import { focusedOn, seenIn, tabTo, tidy, visits } from './visit.ts';

const visit = visits();
const demo = new Demo();

async function showsHow(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Control+g');
  await page.getByRole('dialog', { name: 'Go to' }).waitFor();
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedOn(page)).toBe(name);
  await page.keyboard.press('k');
  await page.getByRole('dialog', { name: 'Show how' }).getByRole('article').waitFor();
}

const progress = async (page: Page): Promise<string> =>
  tidy(await page.locator('show-how .progress').innerText());
const now = (page: Page): Promise<string> => seenIn(page.locator('show-how li.now'));

/** As a clicker sends it, until the next step stands there. */
async function goOn(page: Page, to: string): Promise<void> {
  for (let pressed = 0; pressed < 6 && (await progress(page)) !== to; pressed++) {
    await page.keyboard.press('PageDown');
  }
  expect(await progress(page)).toBe(to);
}

test('a number is shown from its givens to its result, and the keyboard comes back to its row', async () => {
  const page = await (await visit()).tab();
  await showsHow(page, 'Unit rise');
  expect(await progress(page)).toBe('Step 1 of 5');
  const shown: string[] = [];
  for (const step of [1, 2, 3, 4, 5]) {
    await goOn(page, `Step ${step} of 5`);
    shown.push(await now(page));
  }
  for (const [step, name] of [
    'Deck height',
    'Landing finish',
    'Total rise',
    'Riser count',
    'Unit rise',
  ].entries()) {
    expect(shown[step]).toContain(name);
    expect(shown[step]).toContain(demo.shown(name));
  }
  expect(shown[0]).toContain(demo.sourceOf('Frame height'));
  // The picture of the part, with the measure ringed.
  await page.locator('show-how ellipse.ring').first().waitFor();
  await page.keyboard.press('Home');
  expect(await progress(page)).toBe('Step 1 of 5');
  await page.keyboard.press('Escape');
  await page.getByRole('dialog', { name: 'Show how' }).waitFor({ state: 'hidden' });
  await expect.poll(() => focusedOn(page)).toBe('Unit rise');
});

test('asked first: inches taken for feet are found out, another unit is right, and it is kept', async () => {
  const page = await (await visit()).tab();
  await showsHow(page, 'Slab volume');
  const box = page.getByRole('checkbox', { name: 'Ask first' });
  await tabTo(page, box);
  await page.keyboard.press('Space');
  await expect.poll(() => box.isChecked()).toBe(true);
  const answer = page.getByRole('textbox', { name: /^What does .* come to\?$/ });
  // Landing area: shown, as a clicker would.
  await page.keyboard.press('PageDown');
  expect(await now(page)).toContain(demo.shown('Landing area'));
  await goOn(page, 'Step 2 of 3');
  // Edge volume, 4 ft by 12 in by 8 in, with the 8 in taken for 8 ft.
  await expect.poll(() => answer.evaluate((one) => one.matches(':focus'))).toBe(true);
  await page.keyboard.type('32');
  await page.keyboard.press('Enter');
  const alert = page.locator('show-how ask-step').getByRole('alert');
  await expect.poll(() => seenIn(alert)).toMatch(/Not yet\. .*inches taken for feet/i);
  expect(await now(page)).not.toContain(demo.shown('Edge volume'));
  // The line is chosen whole: what is typed next takes its place.
  await page.keyboard.type('0.0988 cubic yards');
  await page.keyboard.press('Enter');
  await expect.poll(() => now(page)).toContain('Right now.');
  expect(await now(page)).toContain(demo.shown('Edge volume'));
  await page.keyboard.press('Enter');
  await expect.poll(() => progress(page)).toBe('Step 3 of 3');
  await page.keyboard.type('16.5');
  await page.keyboard.press('Enter');
  await expect.poll(() => now(page)).toContain('Right.');
  await page.keyboard.press('Enter');
  await expect
    .poll(() => now(page))
    .toMatch(
      /Right at first: 1 .*Slab volume .*Right after a hint: 1 .*Edge volume .*Shown: 1 .*Landing area/,
    );
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await showsHow(page, 'Slab volume');
  await page.getByRole('button', { name: 'Results' }).press('Enter');
  await expect
    .poll(() => seenIn(page.locator('show-how practice-results')))
    .toContain('1 at first, 1 after a hint, 1 shown');
});

test('on paper it is the whole working, and nothing of the screen', async () => {
  const page = await (await visit()).tab();
  await showsHow(page, 'Bags to buy');
  const text = pdfText(await page.pdf({ format: 'A4' }))
    .join(' ')
    .replace(/\s+/g, '');
  for (const said of [
    'Kestrel Court garden, Landing',
    `Working of Bags to buy: ${demo.shown('Bags to buy')}`,
    'As the notebook stood on',
    demo.sourceOf('Waste'),
    'Each bag weighs 60 lb',
    'Bags to buy goes into',
  ]) {
    expect(text).toContain(said.replace(/\s+/g, ''));
  }
  for (const button of ['Goon', 'Putaway', 'Askfirst']) expect(text).not.toContain(button);
});
