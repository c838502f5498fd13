// The whole page on one notebook: what is in view, keys from row to row, undoing, sheets, two pages.
import { beforeEach, describe, expect, test } from 'vitest';
import { page as browserPage, userEvent } from 'vitest/browser';
// Sheets come later on the page itself; here they are there from the start.
import '../../src/ui/job-sheets.ts';
import '../../src/ui/story-page.ts';
import type { Desk } from '../../src/ui/desk.ts';
import { browserOf } from './desk.ts';
import {
  SMALL_JOB,
  axeFindings,
  button,
  drawn,
  everyElement,
  focusedElement,
  found,
  framesOf,
  idOf,
  settled,
  shownOf,
  wordsOf,
} from './drawn.ts';

let desk: Desk;
let page: HTMLElementTagNameMap['story-page'];

async function open(text = SMALL_JOB): Promise<void> {
  document.body.replaceChildren();
  desk = await browserOf(text).page();
  page = await drawn('story-page', { desk });
  await frames();
}

const frames = (): Promise<void> => framesOf(page);

async function keys(pressed: string): Promise<void> {
  await userEvent.keyboard(pressed);
  await frames();
}

/** Chooses a cell as a person does. */
async function choose(name: string): Promise<void> {
  const row = everyElement(page).find(
    (one) => one.matches('.name') && one.textContent?.trim() === name,
  );
  (row as HTMLElement).click();
  (row as HTMLElement).focus();
  await frames();
}

/** The sheet that lies over the page, when it has come. */
async function openSheet(): Promise<HTMLElement> {
  const open = () => everyElement(page).some((one) => one.matches('paper-sheet[open]'));
  await expect.poll(open, { timeout: 5000 }).toBe(true);
  await settled(page);
  return found(page, 'paper-sheet[open]');
}

const header = (): string => wordsOf(found(page, 'job-header'));
const chosen = (): string => desk.session.cell(desk.session.chosen ?? -1)?.name ?? '';

describe('the page', () => {
  beforeEach(() => open());

  test.each([
    [1440, 900],
    [390, 844],
  ])('is accessible at %i × %i', async (width, height) => {
    await browserPage.viewport(width, height);
    await frames();
    expect(await axeFindings(page)).toEqual([]);
    await choose('Bags to buy');
    found(page, '.pull').click();
    await frames();
    expect(await axeFindings(page)).toEqual([]);
  });

  test('shows title, parts, money and price', () => {
    expect(header()).toMatch(/^Storyrod Back step /);
    expect(wordsOf(found(page, 'main'))).toContain('Landing 1 line · material 100% $259.20');
    expect(wordsOf(found(page, 'job-footing'))).toContain('price $259.20');
  });

  test('has a cell chosen from the start, with its working beside it', () => {
    expect(chosen()).toBe('Slab volume');
    expect(wordsOf(found(page, 'story-working'))).toContain('Working of Slab volume 16 cubic feet');
  });

  test('a number is changed by keyboard alone, and total and working follow', async () => {
    await choose('Thickness');
    await keys('{Enter}');
    await keys('5 in{Enter}');
    expect(wordsOf(found(page, 'job-footing'))).toContain('price $317.52');
    expect(focusedElement()?.textContent?.trim()).toBe('Thickness');
    await keys('{ArrowDown}');
    expect(wordsOf(found(page, 'story-working'))).toContain('Slab volume 20 cubic feet');
  });

  test('a number is changed by typing it on the row, or on its tape', async () => {
    await choose('Thickness');
    await keys('5 in{Enter}');
    expect(shownOf(desk.session, 'Thickness')).toBe('5 in');
    await choose('Thickness');
    await keys('t{ArrowRight}6 in{Enter}');
    expect(shownOf(desk.session, 'Thickness')).toBe('6 in');
    expect(desk.session.door.canUndo()).toBe('Thickness: 6 in');
  });

  test('arrows go from row to row and the keyboard goes with them', async () => {
    await choose('Slab length');
    await keys('{ArrowDown}{ArrowDown}');
    expect(chosen()).toBe('Thickness');
    expect(focusedElement()?.textContent?.trim()).toBe('Thickness');
    await keys('{ArrowUp}');
    expect(chosen()).toBe('Slab width');
  });

  test('only the chosen row is a stop for the Tab key', async () => {
    await choose('Bags to buy');
    const stops = everyElement(found(page, 'main')).filter(
      (one) => one.closest('story-cell') === null && one.matches('.name[tabindex="0"]'),
    );
    expect(stops.map((one) => one.textContent?.trim())).toEqual(['Bags to buy']);
  });

  test('undo names the change, takes it back, and redo does it again', async () => {
    await choose('Thickness');
    await keys('{Enter}');
    await keys('5 in{Enter}');
    expect(button(page, 'Undo: Thickness: 5 in').disabled).toBe(false);
    await keys('{Control>}z{/Control}');
    expect(shownOf(desk.session, 'Thickness')).toBe('4 in');
    expect(button(page, 'Redo: Thickness: 5 in').disabled).toBe(false);
    await keys('{Control>}{Shift>}z{/Shift}{/Control}');
    expect(shownOf(desk.session, 'Thickness')).toBe('5 in');
  });

  test('undo by key goes on when the row that had the keyboard is gone', async () => {
    const before = desk.session.door.notebook.text;
    await choose('Thickness');
    await keys('5 in{Enter}');
    await keys('{Insert}');
    await keys('Rail hire{Enter}');
    await keys('$20{Enter}');
    expect(chosen()).toBe('Rail hire');
    for (let times = 0; times < 3; times++) await keys('{Control>}z{/Control}');
    expect(desk.session.door.notebook.text).toBe(before);
    expect(chosen()).toBe('Thickness');
    expect(focusedElement()?.textContent?.trim()).toBe('Thickness');
  });

  test('T opens the tape under the number and gives it the keyboard', async () => {
    await choose('Thickness');
    await keys('t');
    expect(focusedElement()?.getAttribute('role')).toBe('slider');
    await keys('{ArrowRight}{Escape}');
    expect(shownOf(desk.session, 'Thickness')).toBe('4 in');
    expect(focusedElement()?.textContent?.trim()).toBe('Thickness');
  });

  test('W goes to the working and Esc comes back to the row', async () => {
    await choose('Waste');
    await keys('w');
    expect(focusedElement()?.tagName).toBe('H2');
    await keys('{Escape}');
    expect(focusedElement()?.textContent?.trim()).toBe('Waste');
  });

  test('Delete says first what the cell goes into', async () => {
    await choose('Waste');
    await keys('{Delete}');
    const sheet = await openSheet();
    expect(wordsOf(sheet)).toContain('It goes into Bags to buy');
    expect(await axeFindings(page)).toEqual([]);
    button(sheet, 'Remove it').click();
    await frames();
    expect(() => idOf(desk.session, 'Waste')).toThrow('no cell called Waste');
    expect(wordsOf(found(page, 'main'))).toContain('No cell is called "waste"');
    await keys('{Control>}z{/Control}');
    expect(shownOf(desk.session, 'Bags to buy')).toBe('40 bags');
  });

  test('Look here counts and lists what there is to look at, and goes there', async () => {
    expect(header()).toMatch(/Look here 1 /);
    desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Bag price'), '?'));
    await frames();
    expect(header()).toMatch(/Look here 2 /);
    button(page, 'Look here').click();
    await frames();
    const sheet = await openSheet();
    expect(await axeFindings(page)).toEqual([]);
    button(sheet, '"Bag price" is not yet known').click();
    await frames();
    expect(chosen()).toBe('Bag price');
  });

  test('the title is changed in place', async () => {
    button(page, 'Back step, change the title').click();
    await frames();
    await keys('Front step{Enter}');
    expect(desk.session.door.notebook.text).toMatch(/^# Front step\n/);
    expect(document.title).toBe('Front step · Storyrod');
  });

  test('a part is inserted from a template and its first given asked for', async () => {
    button(page, 'Insert a part').click();
    await frames();
    const sheet = await openSheet();
    await expect.poll(() => wordsOf(sheet)).toContain('Fence');
    button(await openSheet(), 'Fence').click();
    await expect
      .poll(() => focusedElement()?.getAttribute('aria-label'))
      .toBe('Formula of Fence length');
    await keys('50 ft{Tab}');
    expect(shownOf(desk.session, 'Rails')).toBe('100 ft');
  });

  test('says when it was kept', async () => {
    desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Thickness'), '5 in'));
    await expect.poll(() => header()).toMatch(/kept here, \d{1,2}:25/);
  });

  test('notebooks kept here are listed, opened, and removed only when asked twice', async () => {
    desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Thickness'), '5 in'));
    await expect.poll(() => desk.keeping.kind).toBe('kept');
    await desk.openText('# Fence\n\n## Fence\n\n- Length: 40 ft\n');
    await expect.poll(() => desk.keeping.kind).toBe('kept');
    await frames();
    expect(header()).toContain('Fence');
    button(page, 'Notebooks').click();
    await frames();
    const sheet = await openSheet();
    await expect.poll(() => wordsOf(sheet)).toContain('Back step');
    expect(await axeFindings(page)).toEqual([]);
    button(sheet, 'Remove Back step').click();
    await frames();
    expect(await desk.list()).toHaveLength(2);
    button(sheet, 'Remove for good').click();
    await expect.poll(() => desk.list()).toHaveLength(1);
  });

  test('another page on the same notebook follows, changes nothing and takes over', async () => {
    const browser = browserOf();
    const first = await browser.page();
    first.session.apply((door) => door.setFormula(idOf(first.session, 'Thickness'), '5 in'));
    await expect.poll(() => first.keeping.kind).toBe('kept');
    document.body.replaceChildren();
    desk = await browser.page();
    page = await drawn('story-page', { desk });
    first.session.apply((door) => door.setFormula(idOf(first.session, 'Thickness'), '6 in'));
    await expect.poll(() => wordsOf(found(page, 'main'))).toContain('6 in Thickness');
    expect(wordsOf(found(page, '.told'))).toContain('This tab follows it');
    expect(await axeFindings(page)).toEqual([]);
    desk.session.write({ kind: 'formula', cell: idOf(desk.session, 'Thickness') });
    await frames();
    expect(desk.session.writing).toBeNull();
    expect(wordsOf(found(page, '.told'))).toContain('Nothing was changed');
    button(page, 'Write here instead').click();
    await expect.poll(() => wordsOf(found(page, '.told')).trim()).toBe('');
    expect(first.role).toBe('follows');
  });

  test('another page that knew nothing of it is told and offered both ways out', async () => {
    const browser = browserOf();
    const deaf = { channel: () => null };
    const first = await browser.page(deaf);
    first.session.apply((door) => door.setFormula(idOf(first.session, 'Thickness'), '5 in'));
    await expect.poll(() => first.keeping.kind).toBe('kept');
    document.body.replaceChildren();
    desk = await browser.page(deaf);
    page = await drawn('story-page', { desk });
    first.session.apply((door) => door.setFormula(idOf(first.session, 'Thickness'), '6 in'));
    await expect.poll(() => first.keeping.kind).toBe('kept');
    desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Waste'), '12%'));
    await expect.poll(() => header()).toContain('not kept: changed in another tab');
    await frames();
    expect(wordsOf(found(page, '.told'))).toContain('Another tab kept this notebook');
    expect(await axeFindings(page)).toEqual([]);
    button(page, 'Follow what the other kept').click();
    await expect.poll(() => shownOf(desk.session, 'Thickness')).toBe('6 in');
    await frames();
    expect(wordsOf(found(page, 'main'))).toContain('6 in Thickness');
  });

  test('shows hostile text as text', async () => {
    await open(
      '# <img src=x onerror="document.title=1">\n\n<script>document.title = "run"</script>\n\n## __proto__\n\n- constructor: 3 ft\n  - from: <b>bold</b> [link](javascript:document.title=2)\n- __proto__: constructor times 2\n',
    );
    expect(everyElement(page).filter((one) => one.matches('img, script, b[onclick]'))).toEqual([]);
    expect(everyElement(page).filter((one) => one.matches('a[href^="javascript"]'))).toEqual([]);
    expect(shownOf(desk.session, '__proto__')).toBe('6 ft');
    await expect.poll(() => document.title).toContain('<img src=x');
  });

  test.each([
    ['a formula of 100,000 characters', `${'size plus '.repeat(9_999)}size`],
    ['5,000 brackets', `${'('.repeat(5000)}size${')'.repeat(5000)}`],
  ])('shows %s, and it can be edited', async (_, formula) => {
    await open(`## P\n\n- Size: 3 ft\n- Long: ${formula}\n`);
    const row = everyElement(page).find((one) => one.matches('.words'));
    expect(row?.textContent?.trim()).toBe(formula);
    await choose('Long');
    await keys('{Enter}');
    await keys('size{Enter}');
    expect(shownOf(desk.session, 'Long')).toBe('3 ft');
  });

  test('a notebook of 2,000 cells is soon there and stays quick', async () => {
    const cells = Array.from({ length: 2000 }, (_, n) => `- Size ${n}: ${n + 1} in\n`).join('');
    await open(`# Long\n\n## Sizes\n\n${cells}\n## Sum\n\n- All: size 0 plus size 1999\n`);
    const rows = (): number => everyElement(page).filter((one) => one.matches('story-cell')).length;
    await expect.poll(rows, { timeout: 10_000 }).toBe(2001);
    desk.session.bring(idOf(desk.session, 'All'));
    await frames();
    expect(focusedElement()?.textContent?.trim()).toBe('All');
  });

  test('an empty notebook is a page to start on', async () => {
    await open('');
    expect(await axeFindings(page)).toEqual([]);
    expect(header()).toContain('No title yet');
    button(page, 'Insert a part').click();
    await frames();
    button(await openSheet(), 'Add an empty part').click();
    await frames();
    await keys('Fence{Enter}');
    expect(desk.session.door.notebook.parts.at(-1)?.name).toBe('Fence');
  });
});
