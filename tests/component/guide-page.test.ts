// The guide as it stands beside a notebook: its numbers can be changed and put back, its words go where one writes.
import { beforeEach, describe, expect, test } from 'vitest';
import { page as browserPage, userEvent } from 'vitest/browser';
// On the page itself the guide comes when it is asked for; here it is there from the start.
import '../../src/ui/guide-page.ts';
import '../../src/ui/story-page.ts';
import guideText from '../../templates/guide.md?raw';
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
  idOf,
  settled,
  shownOf,
  wordsOf,
} from './drawn.ts';

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

const guide = () => found<HTMLElementTagNameMap['guide-page']>(page, 'guide-page');

/** The guide's line of this name. */
function example(name: string): HTMLElement {
  const line = everyElement(guide()).find(
    (one) => one.localName === 'guide-example' && found(one, '.name').textContent?.trim() === name,
  );
  if (!line) throw new Error(`the guide has no line ${name}`);
  return line as HTMLElement;
}

const valueOf = (name: string): string => wordsOf(found(example(name), '.value'));

async function onto(name: string): Promise<void> {
  found(example(name), '.name').click();
  found(example(name), '.name').focus();
  await frames();
}

async function open(width = 1440, height = 900): Promise<void> {
  document.body.replaceChildren();
  await browserPage.viewport(width, height);
  desk = await browserOf(SMALL_JOB, guideText).page();
  page = await drawn('story-page', { desk });
  await keys('{F1}');
  await expect
    .poll(() => everyElement(page).some((one) => one.localName === 'guide-example'))
    .toBe(true);
  await frames();
}

describe('the guide', () => {
  beforeEach(() => open());

  test.each([
    [1440, 900],
    [390, 844],
  ])('is accessible at %i × %i', async (width, height) => {
    await open(width, height);
    await onto('Bags to buy');
    expect(await axeFindings(page)).toEqual([]);
  });

  test('stands beside the notebook where there is room and over it where there is none', async () => {
    const dialog = (): HTMLElement => found(guide(), 'dialog');
    const { left } = dialog().getBoundingClientRect();
    expect(left).toBeGreaterThan(700);
    expect(dialog().matches(':modal')).toBe(false);
    await open(390, 844);
    expect(dialog().matches(':modal')).toBe(true);
    expect(dialog().getBoundingClientRect()).toMatchObject({ left: 0, width: 390, height: 844 });
  });

  test('opens by a key without losing one’s place, and closes by the same or by Escape', async () => {
    expect(focusedElement()?.textContent).toBe('Guide');
    await keys('{Escape}');
    expect(guide().open).toBe(false);
    found(page, 'story-cell .name, .name').focus();
    const before = focusedElement();
    await keys('h');
    expect(guide().open).toBe(true);
    await keys('h');
    expect(guide().open).toBe(false);
    expect(focusedElement()).toBe(before);
  });

  test('a number changed in it is followed in it, in its prose too, and nowhere else', async () => {
    const { text } = desk.session.door.notebook;
    expect(wordsOf(guide())).toContain('You have priced a slab: 20 bags , $129.60');
    await onto('Thickness');
    await keys('8 in{Enter}');
    expect(valueOf('Bags to buy')).toBe('40 bags');
    expect(wordsOf(guide())).toContain('You have priced a slab: 40 bags , $259.20');
    expect(desk.session.door.notebook.text).toBe(text);
    expect(shownOf(desk.session, 'Thickness')).toBe('4 in');
    button(example('Thickness'), 'Put it back').click();
    await frames();
    expect(valueOf('Bags to buy')).toBe('20 bags');
    expect(
      everyElement(guide()).some((one) => one.textContent?.trim() === 'Put everything back'),
    ).toBe(false);
  });

  test('its undo is its own', async () => {
    await onto('Waste');
    await keys('20%{Enter}');
    expect(valueOf('Waste')).toBe('20%');
    await keys('{Control>}z{/Control}');
    expect(valueOf('Waste')).toBe('10%');
    expect(desk.session.door.canUndo()).toBe(null);
    await keys('15%{Enter}');
    await onto('Slab width');
    await keys('5 ft{Enter}');
    button(guide(), 'Put everything back').click();
    await frames();
    expect([valueOf('Waste'), valueOf('Slab width')]).toEqual(['10%', '4 ft']);
  });

  test('what is asked about is asked in it, with the same offers', async () => {
    await onto('Your turn');
    await keys('{Enter}');
    await userEvent.fill(found(example('Your turn'), 'input.line'), '12 by 4 ft');
    await frames();
    const offers = everyElement(example('Your turn')).filter((one) => one.matches('.problem .act'));
    expect(offers.map((one) => one.getAttribute('title'))).toEqual([
      '12 ft by 4 ft',
      '12 in by 4 ft',
      '12 times 4 ft',
    ]);
    await keys('{Alt>}1{/Alt}{Enter}');
    expect(valueOf('Your turn')).toBe('48 sq ft');
  });

  test('P puts its words into the chosen formula, which is kept by Enter and left by Escape', async () => {
    desk.session.choose(idOf(desk.session, 'Waste'));
    await onto('Both ends');
    await keys('p');
    const line = found<HTMLInputElement>(found(page, 'main'), 'input.line');
    expect(line.value).toBe('joists every 16 in along 12 ft');
    expect(focusedElement()).toBe(line);
    expect(guide().open).toBe(true);
    await keys('{Escape}');
    expect(shownOf(desk.session, 'Waste')).toBe('10%');
  });

  test('its words go where the caret stands in a formula that is being written', async () => {
    const id = idOf(desk.session, 'Slab volume');
    desk.session.write({ kind: 'formula', cell: id, typed: '2 times' });
    await frames();
    await onto('Rectangle');
    expect(desk.session.writing).toMatchObject({ kind: 'formula', cell: id });
    button(example('Rectangle'), 'Put into my Slab volume').click();
    await frames();
    const line = found<HTMLInputElement>(found(page, 'main'), 'input.line');
    expect(line.value).toBe('2 times 12 ft by 4 ft');
    await keys('{Enter}');
    expect(shownOf(desk.session, 'Slab volume')).toBe('96 sq ft');
  });

  test('A adds an example with the lines it stands on, once undone', async () => {
    const { text } = desk.session.door.notebook;
    await onto('Concrete');
    await keys('a');
    const { notebook } = desk.session.door;
    expect(notebook.parts.at(-1)?.name).toBe('A slab in three minutes');
    const names = notebook.parts
      .at(-1)
      ?.blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell.name] : []));
    expect(names).toEqual([
      'Slab length',
      'Slab width',
      'Thickness',
      'Slab volume',
      'Waste',
      'Bag yield',
      'Bags to buy',
      'Bag price',
      'Concrete',
    ]);
    expect(desk.session.cell(desk.session.chosen ?? -1)?.name).toBe('Concrete');
    expect(desk.session.door.shown(desk.session.chosen ?? -1)?.text).toBe('$129.60');
    desk.session.undo();
    expect(desk.session.door.notebook.text).toBe(text);
  });
});
