// Mending on the page: what is wrong stands in its row with its mends, one key makes the first of them, and keys
// lead from one cell that wants mending to the next; what waits keeps its last value, greyed.
import { beforeEach, describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
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
  found,
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

async function frames(): Promise<void> {
  await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  await settled(page);
}

async function keys(pressed: string): Promise<void> {
  await userEvent.keyboard(pressed);
  await frames();
}

const ALT_1 = '{Alt>}{1}{/Alt}';

async function write(name: string, formula: string): Promise<void> {
  desk.session.apply((door) => door.setFormula(idOf(desk.session, name), formula));
  await frames();
}

function row(name: string): HTMLElementTagNameMap['story-cell'] {
  const rows = everyElement(page).filter(
    (one): one is HTMLElementTagNameMap['story-cell'] => one.tagName === 'STORY-CELL',
  );
  const here = rows.find((one) => one.cell.name === name);
  if (!here) throw new Error(`no row of ${name}`);
  return here;
}

async function choose(name: string): Promise<void> {
  const { id } = row(name).cell;
  desk.session.bring(id);
  await frames();
}

const chosen = (): string | undefined => {
  const id = desk.session.chosen;
  return id === null ? undefined : desk.session.cell(id)?.name;
};

const text = (): string => desk.session.door.notebook.text;

beforeEach(() => open());

describe('a fault in its row', () => {
  test('is mended by Alt 1 where the cell is chosen, as its button says, and taken back in one step', async () => {
    await write('Bags to buy', 'slab volum plus waste');
    await choose('Bags to buy');
    expect(button(row('Bags to buy'), 'Use "slab volume"').textContent).toMatch(/Alt 1\s*$/);
    const before = text();
    await keys(ALT_1);
    expect(text()).toContain('- Bags to buy: slab volume plus waste\n');
    await keys('{Control>}z{/Control}');
    expect(text()).toBe(before);
  });

  test('is mended by Alt 1 while the formula is written', async () => {
    await choose('Slab volume');
    await keys('{Enter}');
    await userEvent.keyboard('slab lenght plus 3 ft');
    await frames();
    await keys('{Escape}');
    await choose('Slab volume');
    await keys('{Enter}');
    await keys('slab lngth by slab width ');
    await keys(ALT_1);
    await keys('{Enter}');
    expect(text()).toContain('- Slab volume: slab length by slab width');
  });

  test('shows its key only in the chosen row', async () => {
    await write('Bags to buy', 'slab volum plus waste');
    await choose('Slab length');
    expect(button(row('Bags to buy'), 'Use "slab volume"').textContent).not.toContain('Alt');
  });

  test('that needs something else in the notebook has that as a button', async () => {
    await write('Bags to buy', 'gravel depth');
    await choose('Bags to buy');
    button(row('Bags to buy'), 'Add "Gravel depth"').click();
    await frames();
    expect(text()).toContain('- Gravel depth: ?\n- Bags to buy: gravel depth\n');
  });

  test('by its values is told while it is written, not only after', async () => {
    await choose('Bags to buy');
    await keys('{Enter}');
    await keys('slab volume divided by (waste minus waste)');
    const writing = found(page, 'story-formula');
    expect(wordsOf(writing)).toContain('This divides by nothing.');
    await keys('{Escape}');
  });
});

describe('what is wrong beside a fault', () => {
  test('two cells of one name: the second says so and takes a name of its own', async () => {
    const twice = SMALL_JOB.replace('- Bag price:', '- Waste: 12%\n  - from: rule\n- Bag price:');
    await open(twice);
    const [, second] = everyElement(page).filter(
      (one) => one.tagName === 'STORY-CELL' && wordsOf(one as HTMLElement).includes('Waste rule'),
    );
    const other = (second ?? row('Waste')) as HTMLElement;
    expect(wordsOf(other)).toContain('has two cells called "Waste"');
    expect(await axeFindings(other)).toEqual([]);
    button(other, 'Call this one "Waste 2"').click();
    await frames();
    expect(text()).toContain('- Waste 2: 12%\n');
    expect(wordsOf(page)).not.toContain('has two cells called');
  });

  test('a line counted twice goes as soon as the other is no cost line, though nothing in it changed', async () => {
    await open(
      SMALL_JOB.replace(
        '- Thickness check',
        '- Delivered: concrete plus $65\n  - cost: material\n- Thickness check',
      ),
    );
    expect(wordsOf(row('Delivered'))).toContain('it is counted twice');
    button(row('Delivered'), 'Count Concrete only in here').click();
    await frames();
    expect(wordsOf(row('Delivered'))).not.toContain('it is counted twice');
    expect(desk.session.door.costs().total.direct).toBe('324.20');
  });
});

describe('what waits', () => {
  test('says for what, and keeps its last value, greyed, through a chain', async () => {
    await write('Bag yield', '0.45 nothings per bag');
    const { amount, words } = {
      amount: found(row('Bag yield'), '.amount'),
      words: wordsOf(row('Bag yield')),
    };
    expect(amount.classList.contains('last')).toBe(true);
    expect(words).toMatch(/^0\.45 cubic feet per bag Bag yield/);
    expect(found(row('Bags to buy'), '.amount').classList.contains('last')).toBe(true);
    expect(wordsOf(row('Bags to buy'))).toMatch(/^40 bags .*waiting for Bag yield/);
    expect(found(row('Concrete'), '.money').classList.contains('last')).toBe(true);
    expect(wordsOf(row('Concrete'))).toMatch(/\$259\.20 waiting for Bags to buy/);
    expect(wordsOf(found(page, 'job-footing'))).toContain('1 line without a value');
    await write('Slab length', '10 ft');
    await keys('{Control>}z{/Control}');
    expect(wordsOf(row('Concrete'))).toMatch(/\$259\.20 waiting for Bags to buy/);
  });

  test('has no last value after the notebook was opened anew', async () => {
    await write('Bag yield', '0.45 nothings per bag');
    await open(text());
    expect(found(row('Bags to buy'), '.amount').textContent?.trim()).toBe('?');
    expect(wordsOf(row('Bags to buy'))).toContain('waiting for Bag yield');
  });
});

describe('from one that wants mending to the next', () => {
  beforeEach(async () => {
    await write('Slab volume', 'slab lenght');
    await write('Bag price', '$6.48 per bgas');
    await choose('Slab length');
  });

  test('leads N, and Shift N back, round the end', async () => {
    await keys('n');
    expect(chosen()).toBe('Slab volume');
    await keys('n');
    expect(chosen()).toBe('Bag price');
    await keys('n');
    expect(chosen()).toBe('Slab volume');
    await keys('{Shift>}n{/Shift}');
    expect(chosen()).toBe('Bag price');
    expect(wordsOf(row('Bag price'))).toContain('2 of 2 cells to mend');
    button(row('Bag price'), 'next').click();
    await frames();
    expect(chosen()).toBe('Slab volume');
  });

  test('nothing is typed away from a line that is being written', async () => {
    await keys('{Enter}');
    await keys('n');
    expect(desk.session.writing).not.toBe(null);
    expect(chosen()).toBe('Slab length');
    await keys('{Escape}');
  });

  test('says so when there is none', async () => {
    await open();
    await choose('Slab length');
    await keys('n');
    expect(wordsOf(page)).toContain('There is nothing to mend.');
  });

  test('lists them all with their mends, apart from what is only to be looked at', async () => {
    button(page, 'Look here').click();
    await frames();
    await expect
      .poll(() => everyElement(page).some((one) => one.matches('paper-sheet[open]')))
      .toBe(true);
    await settled(page);
    const sheet = found(page, 'paper-sheet[open]');
    const headings = [...sheet.querySelectorAll('h3')].map((one) => one.textContent);
    expect(headings).toEqual(['To mend', 'To look at']);
    expect(await axeFindings(page)).toEqual([]);
    button(sheet, 'Use "slab length"').click();
    await frames();
    expect(text()).toContain('- Slab volume: slab length\n');
    button(sheet, 'No cell is called "bgas"').click();
    await frames();
    expect(chosen()).toBe('Bag price');
    expect(shownOf(desk.session, 'Slab volume')).toBe('12 ft');
  });
});
