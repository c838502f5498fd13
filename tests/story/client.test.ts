// The price handed in, by keyboard alone, with the client beside: nothing of the notebook in the document or on paper but
// what the sheet shows.
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { CLIENT_LEVELS } from '../../src/client/client-copy.ts';
import { clientSheet } from '../../src/client/client-sheet.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import { money } from '../../src/ui/money-words.ts';
import { findings } from './axe-findings.ts';
import { Demo } from './demo.ts';
import { pdfText } from './pdf-text.ts';
import { PHONE, focusedOn, rewrite, seenIn, tabTo, until, visits } from './visit.ts';

const visit = visits();
const demo = new Demo();
const estimate = new Estimate(demo.text);

/** Every sum, rate and wage that the notebook shows, the sums of its parts too, but those that the sheet itself shows. */
function inside(): readonly string[] {
  const shownToClient = new Set(
    CLIENT_LEVELS.flatMap((level) => {
      const handing = clientSheet(estimate, level, null);
      if (handing.kind !== 'sheet') throw new Error(handing.message);
      const { copy, payments } = handing.sheet;
      return [...copy.lines, ...payments, { amount: copy.price }].map(({ amount }) =>
        money(amount, '$'),
      );
    }),
  );
  const { total, parts } = estimate.costs();
  const sums = [total, ...parts].flatMap(
    ({ direct, material, labour, equipment, subcontract, fee }) =>
      [direct, material, labour, equipment, subcontract, fee].map((sum) => money(sum, '$')),
  );
  const cells = estimate.notebook.parts.flatMap(cellsOf).flatMap(({ id }) => {
    const said = /^-?\$[\d,.]*\d/.exec(estimate.shown(id)?.text ?? '')?.[0];
    return said === undefined ? [] : [said];
  });
  return [...new Set([...sums, ...cells])].filter(
    (sum) => sum !== '$0.00' && !shownToClient.has(sum),
  );
}

const WORDS = ['markup', 'overhead', 'wage', 'profit', 'margin', 'invented', 'quoted', 'per hour'];

/** All words and all that is said to a screen reader, seen or not, wherever in the document. */
function everything(page: Page): Promise<string> {
  return page.evaluate(() => {
    const words: string[] = [];
    const visit_ = (node: Node): void => {
      if (node instanceof Text) words.push(node.data);
      if (node instanceof Element) {
        if (['style', 'script'].includes(node.localName)) return;
        for (const { value } of node.attributes) words.push(value);
        node.shadowRoot?.childNodes.forEach(visit_);
      }
      node.childNodes.forEach(visit_);
    };
    visit_(document.documentElement);
    return words.join(' ').replace(/\s+/g, ' ');
  });
}

test('the sheet is laid open, filled in, printed and put away by keyboard, and hides all costs', async () => {
  const { context, tab } = await visit();
  await context.clock.setFixedTime(new Date('2026-03-12T10:00:00'));
  await context.addInitScript({ content: axe.source });
  const page = await tab();
  const hidden = inside();
  expect(hidden.length).toBeGreaterThan(60);
  // What is looked for is there to be found before.
  const before = await everything(page);
  expect(hidden.filter((sum) => before.includes(sum)).length).toBeGreaterThan(40);

  await until(page, 'Tab', 'Deck area', 40);
  await until(page, 'ArrowDown', 'Screw price', 80);
  const scrolled = await page.locator('main').evaluate((main) => main.scrollTop);
  expect(scrolled).toBeGreaterThan(300);
  await page.keyboard.press('c');
  const sheet = page.locator('client-sheet');
  await page.getByRole('dialog', { name: 'Client sheet' }).waitFor();
  await expect.poll(() => focusedOn(page)).toBe('Kestrel Court garden');
  for (const scheme of ['light', 'dark'] as const) expect(await findings(page, scheme)).toEqual([]);

  await tabTo(page, sheet.getByLabel('For', { exact: true }));
  await page.keyboard.type('The house at the end');
  await tabTo(page, sheet.getByRole('radio', { name: 'Part by part' }));
  for (const view of [
    'Part by part',
    'With the work described',
    'Work and material',
    'The price alone',
  ]) {
    await expect.poll(() => sheet.getByRole('radio', { name: view }).isChecked()).toBe(true);
    const all = await everything(page);
    expect(hidden.filter((sum) => all.includes(sum))).toEqual([]);
    expect(WORDS.filter((word) => all.toLowerCase().includes(word))).toEqual([]);
    const seen = await seenIn(sheet);
    expect(seen).toContain(`Price ${demo.price}`);
    const paper = pdfText(await page.pdf({ format: 'A4' }));
    expect(paper).toHaveLength(1);
    const text = squeezed(paper.join(' '));
    expect(hidden.filter((sum) => text.includes(squeezed(sum)))).toEqual([]);
    expect(WORDS.filter((word) => text.toLowerCase().includes(squeezed(word)))).toEqual([]);
    for (const words of [
      'Kestrel Court garden',
      'The house at the end',
      'Mar 12, 2026',
      'Apr 15, 2026',
      `Price${demo.price}`,
      'Water, power',
      'The permit is in this price.',
      `Deposit – with the signature${demo.shown('Deposit')}`,
      'for the builder',
    ])
      expect(text).toContain(squeezed(words));
    for (const words of ['Put away', 'Part by part', 'Undo', 'Look here'])
      expect(text).not.toContain(squeezed(words));
    expect(text.includes('Lowwall')).toBe(/part|described/i.test(view));
    expect(text.includes('Twocoatsofoil') || text.includes('twocoatsofoil')).toBe(
      view === 'With the work described',
    );
    await page.keyboard.press('ArrowDown');
  }

  await page.keyboard.press('Escape');
  await expect.poll(() => focusedOn(page)).toBe('Screw price');
  await expect.poll(() => everything(page)).toContain(demo.direct);
  await expect
    .poll(() => page.locator('main').evaluate((main) => main.scrollTop))
    .toBeCloseTo(scrolled, -1);
});

test('nothing is handed in while a line has no price: it is named, and nothing can be read but that', async () => {
  const page = await (await visit({ viewport: PHONE })).tab();
  await rewrite(page, 'Lawn', '$?');
  await page.keyboard.press('c');
  const sheet = page.locator('client-sheet');
  await expect
    .poll(() => seenIn(sheet))
    .toContain(
      'This price is not complete: "Lawn" without a value. Nothing goes to a client before.',
    );
  const all = await everything(page);
  expect(all).not.toContain('$');
  expect(pdfText(await page.pdf({ format: 'A4' })).join(' ')).not.toContain('$');
});

/** Where a line was broken or a word spaced on paper does not matter. */
function squeezed(text: string): string {
  return text.replace(/\s+/g, '');
}
