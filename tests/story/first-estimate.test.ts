// The five minutes of README, followed word by word; the formulas are read out of README itself.
import fs from 'node:fs';
import { expect, test } from 'vitest';
import { Demo } from './demo.ts';
import {
  changing,
  choose,
  focusedOn,
  kept,
  priceOf,
  rewrite,
  rowOf,
  seenIn,
  shownOf,
  stands,
  visits,
  workingOf,
} from './visit.ts';

const visit = visits();
const demo = new Demo();

const readme = fs.readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const lesson = /## Your first estimate[\s\S]*?(?=\n## )/.exec(readme)?.[0] ?? '';
const formulas = [...lesson.matchAll(/^ {7}(\S.*)$/gm)].map(([, formula = '']) => formula);

test('the steps of README do on the page what README says', async () => {
  expect(formulas).toHaveLength(2);
  const page = await (await visit()).tab();

  // 2. A tape under the thickness; the totals follow with the difference; kept, put back, undone.
  await changing(page, 'Thickness').click();
  const tape = page.getByRole('slider', { name: 'Tape for Thickness' });
  for (let step = 0; step < 3; step++) await tape.press('ArrowRight');
  const footing = page.getByRole('contentinfo');
  await expect.poll(() => seenIn(footing)).toContain('more than at the tick');
  await page.keyboard.press('Escape');
  await expect.poll(() => priceOf(page)).toBe(demo.price);
  await changing(page, 'Thickness').click();
  await tape.press('End');
  await tape.press('Enter');
  await expect.poll(() => shownOf(page, 'Thickness')).toBe('8 in');
  await page.keyboard.press('Control+z');
  await expect.poll(() => shownOf(page, 'Thickness')).toBe('4 in');
  await choose(page, 'Thickness');
  await page.keyboard.type('5 in ');
  await page.keyboard.press('Enter');
  await expect.poll(() => shownOf(page, 'Thickness')).toBe('5 in');
  await page.keyboard.press('Control+z');
  await expect.poll(() => priceOf(page)).toBe(demo.price);

  // 3. The working, down to sources; the rod names what the number was worked from.
  await choose(page, 'Bags to buy');
  const working = workingOf(page);
  await expect.poll(() => seenIn(working)).toContain(`Bags to buy ${demo.shown('Bags to buy')}`);
  expect(await seenIn(working)).toContain(demo.sourceOf('Waste').slice(0, 30));
  expect(await seenIn(page.locator('story-rod'))).toContain('Slab volume');

  // 4. A formula as one would say it; then one that can be read in two ways.
  const [plain = '', doubtful = ''] = formulas;
  await changing(page, 'Bags to buy').click();
  await page.keyboard.type(`${plain} `);
  const said = page.locator('story-formula .said');
  await expect.poll(() => seenIn(said)).toContain(`read as ${plain}`);
  expect(await seenIn(said)).toContain(demo.shown('Bags to buy'));
  await page.keyboard.press('Control+a');
  await page.keyboard.type(`${doubtful} `);
  const problem = page.locator('story-formula .problem');
  await expect.poll(() => seenIn(problem)).toContain('two ways to read this');
  await page.keyboard.press('Alt+1');
  await problem.waitFor({ state: 'hidden' });
  await page.keyboard.press('Enter');
  await expect.poll(() => shownOf(page, 'Bags to buy')).toBe(demo.shown('Bags to buy'));
  await kept(page);

  // 5. An empty notebook, each template in turn, a price still to come.
  await page.getByRole('button', { name: 'Notebooks' }).click();
  await page.getByRole('button', { name: 'Start an empty notebook' }).click();
  await page.getByRole('heading', { level: 1, name: 'New estimate' }).waitFor();
  for (const part of ['Slab', 'Landing', 'Steps']) {
    await page.getByRole('button', { name: 'Insert a part' }).click();
    await page.locator('job-sheets').getByRole('button', { name: part, exact: true }).click();
    await page.getByRole('heading', { level: 2, name: `${part}, rename` }).waitFor();
    await expect.poll(() => focusedOn(page)).toMatch(/^Formula of /);
    const first = await focusedOn(page);
    await page.keyboard.press('Tab');
    await expect.poll(() => focusedOn(page)).not.toBe(first);
    expect(await focusedOn(page)).toMatch(/^Formula of /);
    await page.keyboard.press('Escape');
    if (part !== 'Slab') continue;
    await rewrite(page, 'Bag price', '?');
    await expect.poll(() => seenIn(footing)).toContain('not yet known');
    expect(await seenIn(rowOf(page, 'Concrete'))).toContain('waiting for Bag price');
  }
  expect(await page.locator('story-cell .fault').count()).toBe(0);
  expect(await seenIn(footing)).toContain('not yet known');

  // And everything is there again where one left off.
  await kept(page);
  await page.reload();
  await stands(page);
  await page.getByRole('heading', { level: 1, name: 'New estimate' }).waitFor();
  const parts = await page.locator('main').getByRole('heading', { level: 2 }).allInnerTexts();
  expect(parts).toEqual(['First part', 'Slab', 'Landing', 'Steps']);
});
