// The whole page as axe-core sees it: light and dark, on a desk and on a phone, in each state a person meets.
import axe from 'axe-core';
import { describe, expect, test } from 'vitest';
import { findings } from './axe-findings.ts';
import { DESK, PHONE, choose, rewrite, rowOf, visits } from './visit.ts';

const visit = visits();

describe.each(['light', 'dark'] as const)('axe finds nothing in the %s', (scheme) => {
  test.for([
    ['on a desk', DESK],
    ['on a phone', PHONE],
  ] as const)('%s', async ([, viewport]) => {
    const { context, tab } = await visit({ viewport, colorScheme: scheme });
    await context.addInitScript({ content: axe.source });
    const page = await tab();

    // A fault under its row, what waits for it, totals that leave something out; and a tape.
    await rewrite(page, 'Bag price', '?');
    await rewrite(page, 'Base depth', 'thicknes plus 1 in');
    await rowOf(page, 'Base depth').locator('.fault').waitFor();
    await choose(page, 'Thickness');
    await page.keyboard.press('t');
    await page.getByRole('slider').waitFor();
    expect(await findings(page, scheme)).toEqual([]);
    await page.keyboard.press('Escape');

    // The editor with two readings, then with its list of names.
    await choose(page, 'Bags to buy');
    await page.keyboard.press('Enter');
    await page.keyboard.insertText('slab volume plus waste divided by bag yield, rounded up ');
    await page.locator('story-formula .problem').waitFor();
    expect(await findings(page, scheme)).toEqual([]);
    await page.keyboard.insertText('plus sla');
    await page.getByRole('listbox', { name: 'What could go on from here' }).waitFor();
    await page.keyboard.press('ArrowDown');
    expect(await findings(page, scheme)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');

    // A long working, on a phone as a sheet from below; then a sheet over the page.
    await choose(page, 'Mix and place');
    await page.keyboard.press('w');
    await page.locator('story-working h2:focus').waitFor();
    expect(await findings(page, scheme)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /^Look here/ }).click();
    await page.getByRole('dialog', { name: 'Look here' }).waitFor();
    expect(await findings(page, scheme)).toEqual([]);
    await page.keyboard.press('Escape');

    // Showing how, as large as the screen; a step that is asked and was answered wrong.
    await choose(page, 'Slab volume');
    await page.keyboard.press('k');
    const how = page.getByRole('dialog', { name: 'Show how' });
    await how.getByRole('article').waitFor();
    expect(await findings(page, scheme)).toEqual([]);
    const more = how.getByRole('button', { name: 'More' });
    if (await more.isVisible()) await more.click();
    await how.getByRole('checkbox', { name: 'Ask first' }).check();
    await how.getByRole('textbox', { name: /come to\?$/ }).fill('1');
    await page.keyboard.press('Enter');
    await how.getByText('Not yet.').waitFor();
    expect(await findings(page, scheme)).toEqual([]);
  });
});
