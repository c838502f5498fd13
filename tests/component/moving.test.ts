// Moving, duplicating and finding things on the whole page: by keys, by hand, from the sheets, and taken back.
import { beforeEach, describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/ui/job-sheets.ts';
import '../../src/ui/story-page.ts';
import type { Desk } from '../../src/ui/desk.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { browserOf } from './desk.ts';
import {
  SMALL_JOB,
  axeFindings,
  button,
  drawn,
  everyElement,
  focusedElement,
  found,
  settled,
  shownOf,
  wordsOf,
} from './drawn.ts';

const JOB = `${SMALL_JOB}
## Steps

- Rise: 21 in
- Run: slab length times 2

## Summary

- Landing cost: total cost of Landing
`;

let desk: Desk;
let page: HTMLElementTagNameMap['story-page'];

async function frames(): Promise<void> {
  await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  await settled(page);
}

async function keys(pressed: string): Promise<void> {
  await userEvent.keyboard(pressed);
  await frames();
}

async function choose(name: string): Promise<void> {
  const row = nameOf(name);
  row.click();
  row.focus();
  await frames();
}

function nameOf(name: string): HTMLElement {
  const row = everyElement(page).find(
    (one) => one.matches('.name') && one.textContent?.trim() === name,
  );
  if (!row) throw new Error(`no row is called ${name}`);
  return row as HTMLElement;
}

async function openSheet(): Promise<HTMLElement> {
  const open = () => everyElement(page).some((one) => one.matches('paper-sheet[open]'));
  await expect.poll(open, { timeout: 5000 }).toBe(true);
  await settled(page);
  return found(page, 'paper-sheet[open]');
}

const text = (): string => desk.session.door.notebook.text;
const order = (): string[] => allCells(desk.session.door.notebook).map(({ name }) => name);
const parts = (): string[] =>
  desk.session.door.notebook.parts.map(({ name }) => name).filter(Boolean);
const on = (): string => focusedElement()?.textContent?.trim() ?? '';
const told = (): string => wordsOf(found(page, '.told'));

beforeEach(async () => {
  document.body.replaceChildren();
  desk = await browserOf(JOB).page();
  page = await drawn('story-page', { desk });
  await frames();
});

describe('moving a cell', () => {
  test('Alt and an arrow move it one place and the keyboard stays on it', async () => {
    await choose('Slab width');
    await keys('{Alt>}{ArrowUp}{/Alt}');
    expect(order().slice(0, 2)).toEqual(['Slab width', 'Slab length']);
    expect(on()).toBe('Slab width');
    expect(told()).toContain('Moved Slab width');
    await keys('{Alt>}{ArrowDown}{ArrowDown}{/Alt}');
    expect(order().slice(0, 3)).toEqual(['Slab length', 'Thickness', 'Slab width']);
    await keys('{Control>}zzz{/Control}');
    expect(text()).toBe(JOB);
    expect(on()).toBe('Slab width');
  });

  test('at the end of its part it goes on into the next one, and what was rewritten is told', async () => {
    await choose('Thickness check');
    await keys('{Alt>}{ArrowDown}{/Alt}');
    expect(desk.session.part(desk.session.cell(desk.session.chosen ?? -1)?.part ?? '')?.name).toBe(
      'Steps',
    );
    expect(on()).toBe('Thickness check');
    expect(shownOf(desk.session, 'Thickness check')).toBe('yes');
    await choose('Run');
    await keys('m');
    const sheet = await openSheet();
    expect(wordsOf(sheet)).toMatch(/Move Run .* Landing Summary/);
    expect(await axeFindings(page)).toEqual([]);
    button(sheet, 'Summary').click();
    await frames();
    expect(order().at(-1)).toBe('Run');
    expect(on()).toBe('Run');
  });

  test('where a sum would change that is said first, and it is moved when it is meant', async () => {
    await choose('Concrete');
    await keys('m');
    button(await openSheet(), 'Steps').click();
    await frames();
    expect(told()).toContain(
      'Moving Concrete there would change a value: Landing cost $259.20 → $0.00.',
    );
    expect(text()).toBe(JOB);
    button(page, 'Move Concrete all the same').click();
    await frames();
    expect(shownOf(desk.session, 'Landing cost')).toBe('$0.00');
  });

  test('it is dragged by its handle, and let go with Esc', async () => {
    const grip = (name: string): HTMLElement =>
      nameOf(name).parentElement?.querySelector('.grip') as HTMLElement;
    const at = (name: string): number => {
      const { top, height } = nameOf(name).getBoundingClientRect();
      return top + height - 2;
    };
    const drag = async (name: string, to: string): Promise<void> => {
      const down = { bubbles: true, composed: true, button: 0 };
      grip(name).dispatchEvent(new PointerEvent('pointerdown', { ...down, clientY: at(name) }));
      window.dispatchEvent(new PointerEvent('pointermove', { clientY: at(to) }));
      await settled(page);
    };
    await drag('Slab length', 'Thickness');
    expect(page.shadowRoot?.querySelector('.drop')).not.toBeNull();
    window.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape' }));
    window.dispatchEvent(new PointerEvent('pointerup'));
    await frames();
    expect(text()).toBe(JOB);
    expect(page.shadowRoot?.querySelector('.drop')).toBeNull();
    await drag('Slab length', 'Thickness');
    window.dispatchEvent(new PointerEvent('pointerup'));
    await frames();
    expect(order().slice(0, 3)).toEqual(['Slab width', 'Thickness', 'Slab length']);
    expect(on()).toBe('Slab length');
  });
});

describe('a part', () => {
  const heading = (name: string): HTMLElement =>
    everyElement(page).find(
      (one) => one.matches('[data-heading]') && one.textContent?.trim() === name,
    ) as HTMLElement;

  test('is moved by its heading, and the keyboard stays on it', async () => {
    heading('Steps').focus();
    await keys('{Alt>}{ArrowUp}{/Alt}');
    expect(parts()).toEqual(['Steps', 'Landing', 'Summary']);
    expect(on()).toBe('Steps');
    await keys('{Control>}z{/Control}');
    expect(text()).toBe(JOB);
  });

  test('is duplicated under a name of its own, and undone in one step', async () => {
    heading('Landing').focus();
    await keys('d');
    expect(parts()).toEqual(['Landing', 'Landing 2', 'Steps', 'Summary']);
    expect(on()).toBe('Landing 2');
    expect(told()).toContain(
      'Duplicated Landing as Landing 2; now written "Landing slab length" in Run',
    );
    await keys('{Control>}z{/Control}');
    expect(text()).toBe(JOB);
  });

  test('says at its foot how it is moved and duplicated without keys', async () => {
    button(page, 'Steps, move down').click();
    await frames();
    expect(parts()).toEqual(['Landing', 'Summary', 'Steps']);
    button(page, 'Duplicate Summary').click();
    await frames();
    expect(parts()).toEqual(['Landing', 'Summary', 'Summary 2', 'Steps']);
  });
});

test('D duplicates a cell below it and goes there', async () => {
  await choose('Waste');
  await keys('d');
  expect(on()).toBe('Waste 2');
  expect(text()).toContain('- Waste 2: 10%\n  - from: rule of thumb\n');
  await keys('{Control>}z{/Control}');
  expect(text()).toBe(JOB);
});

test('I lists what a cell goes into, near and further, and goes there', async () => {
  await choose('Slab volume');
  await keys('i');
  const sheet = await openSheet();
  expect(wordsOf(sheet)).toMatch(/Bags to buy .* and by way of it Concrete .* Landing cost/);
  expect(await axeFindings(page)).toEqual([]);
  button(sheet, 'Landing cost').click();
  await frames();
  expect(on()).toBe('Landing cost');
});

test('Ctrl G goes to a place from anywhere, also from a formula that is being written', async () => {
  await choose('Slab length');
  await keys('{Enter}');
  await keys('{Control>}a{/Control}11 ft');
  await keys('{Control>}g{/Control}');
  await openSheet();
  expect(await axeFindings(page)).toEqual([]);
  await keys('landing c{Enter}');
  await expect.poll(on).toBe('Landing cost');
  expect(shownOf(desk.session, 'Slab length')).toBe('11 ft');
  await keys('g');
  await openSheet();
  await keys('steps{Enter}');
  await expect.poll(on).toBe('Steps');
});

describe('removing', () => {
  test('tells what names a cell from what only adds it up', async () => {
    await choose('Concrete');
    await keys('{Delete}');
    const sheet = await openSheet();
    expect(wordsOf(sheet)).toContain(
      'Landing cost adds it up with other lines and will come out without it. Undo brings it back.',
    );
    expect(wordsOf(sheet)).not.toContain('the name is missing');
    await keys('{Escape}');
    await choose('Slab length');
    await keys('{Delete}');
    expect(wordsOf(await openSheet())).toContain(
      'It goes into Slab volume and Run . Those will say that the name is missing until another is written.',
    );
  });
});

test('notebooks of one title are told apart by what they were made from', async () => {
  const binder = await desk.binder();
  const bid = await binder.freeze('Bid 1', '');
  if (!bid) throw new Error('nothing was frozen');
  await binder.copy(bid, 'restored');
  await frames();
  button(page, 'Notebooks').click();
  const sheet = await openSheet();
  await expect.poll(() => wordsOf(sheet)).toMatch(/Taken up again from "Bid 1" \(/);
  expect(wordsOf(sheet).match(/Back step/g)).toHaveLength(2);
});
