// A newcomer opens the page: the demo is there, a number changes, it is found again, and followed to its source.
import { expect, test } from 'vitest';
import { Demo } from './demo.ts';
import {
  changing,
  choose,
  kept,
  priceOf,
  rewrite,
  rowOf,
  seenIn,
  shownOf,
  stands,
  tidy,
  visits,
  workingOf,
} from './visit.ts';

const visit = visits();
const demo = new Demo();
const thicker = new Demo({ Thickness: '5 in' });

test('Kestrel Court stands worked on the page, part by part, with its totals', async () => {
  const page = await (await visit()).tab();
  const title = page.getByRole('heading', { level: 1 });
  expect(await title.innerText()).toBe('Kestrel Court garden');
  const parts = await page.getByRole('heading', { level: 2 }).allInnerTexts();
  expect(parts.slice(0, demo.parts.length)).toEqual(demo.parts);
  expect(await priceOf(page)).toBe(demo.price);
  expect(await seenIn(rowOf(page, 'Concrete'))).toContain(demo.shown('Concrete'));
  expect(await page.locator('story-cell .fault').count()).toBe(0);
  await page.getByText('Every size, date, pace and price in this estimate was made up').waitFor();
});

test('a changed given changes total and working, undo takes it back, a reload finds it again', async () => {
  const page = await (await visit()).tab();
  const answer = workingOf(page).locator('.answer');
  await rewrite(page, 'Thickness', '5 in');
  await expect.poll(() => priceOf(page)).toBe(thicker.price);
  expect(thicker.price).not.toBe(demo.price);

  await choose(page, 'Bags to buy');
  await expect.poll(() => answer.innerText()).toBe(thicker.shown('Bags to buy'));
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(() => priceOf(page)).toBe(demo.price);
  expect(await shownOf(page, 'Thickness')).toBe('4 in');
  await choose(page, 'Bags to buy');
  await expect.poll(() => answer.innerText()).toBe(demo.shown('Bags to buy'));

  await rewrite(page, 'Thickness', '5 in');
  await choose(page, 'Bags to buy');
  await kept(page);
  await page.reload();
  await stands(page);
  await expect.poll(() => shownOf(page, 'Thickness')).toBe('5 in');
  expect(await priceOf(page)).toBe(thicker.price);
  expect(await answer.innerText()).toBe(thicker.shown('Bags to buy'));
  const chosen = page.locator('[aria-current="true"]');
  expect(await chosen.allInnerTexts()).toEqual(['Bags to buy']);
  await expect.poll(() => isInView(page, 'Bags to buy')).toBe(true);
});

test('the working opens in place, from money down to the sources of the givens it stands on', async () => {
  const page = await (await visit()).tab();
  const working = workingOf(page);
  await choose(page, 'Mix and place');
  for (const given of ['Thickness', 'Wage']) {
    const stated = working
      .locator('.given')
      .filter({ hasText: demo.sourceOf(given) })
      .first();
    for (let opened = 0; !(await stated.isVisible()); opened++) {
      expect(opened).toBeLessThan(30);
      await openOne(working);
    }
    expect(tidy(await stated.innerText())).toContain(`${given} ${demo.shown(given)}`);
  }
});

test('every name in a row leads to its cell, and back through what it goes into', async () => {
  const page = await (await visit()).tab();
  await rowOf(page, 'Concrete').getByRole('link', { name: 'bags to buy' }).click();
  const heading = workingOf(page).getByRole('heading', { level: 2 });
  await expect.poll(() => heading.innerText()).toBe('Bags to buy');
  await workingOf(page).getByRole('link', { name: 'Concrete', exact: true }).click();
  await expect.poll(() => heading.innerText()).toBe('Concrete');
  await expect.poll(() => isInView(page, 'Concrete')).toBe(true);
});

test('the tape slides a given and puts it back, and the totals follow with the difference', async () => {
  const page = await (await visit()).tab();
  await changing(page, 'Thickness').click();
  const tape = page.getByRole('slider', { name: 'Tape for Thickness' });
  const box = await tape.boundingBox();
  if (!box) throw new Error('the tape is not drawn');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width - 2, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  const far = new Demo({ Thickness: '8 in' });
  await expect.poll(() => priceOf(page)).toBe(far.price);
  expect(await seenIn(page.getByRole('contentinfo'))).toContain('more than at the tick');
  await page.getByRole('button', { name: 'Back to 4 in' }).click();
  await expect.poll(() => priceOf(page)).toBe(demo.price);
  expect(await changing(page, 'Thickness').innerText()).toBe('4 in');
});

/** Opens the first step of the working that is still folded. */
async function openOne(working: ReturnType<typeof workingOf>): Promise<void> {
  const further = working.getByRole('button', { name: 'Go on down' }).filter({ visible: true });
  const folded = working.locator('details:not([open]) > summary').filter({ visible: true });
  if ((await further.count()) > 0) await further.first().click();
  else await folded.first().click();
}

function isInView(page: Parameters<typeof rowOf>[0], name: string): Promise<boolean> {
  return rowOf(page, name).evaluate((row) => {
    const { top, bottom } = row.getBoundingClientRect();
    return top >= 0 && bottom <= window.innerHeight;
  });
}
