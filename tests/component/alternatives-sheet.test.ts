// Alternatives: alternatives beside the notebook, compared with it as they are written, put in as one change.
import { describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { Desk } from '../../src/ui/desk.ts';
import type { AlternativesSheet } from '../../src/ui/alternatives-sheet.ts';
import '../../src/ui/alternatives-sheet.ts';
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

async function laid(text = SMALL_JOB) {
  const desk = await browserOf(text).page();
  const element = await drawn('alternatives-sheet', { desk, open: true });
  return { desk, element };
}

/** The line whose label this is. */
function line(element: AlternativesSheet, label: string): HTMLInputElement {
  return found<HTMLInputElement>(element, `input[aria-label="${label}"]`);
}

async function write(element: AlternativesSheet, label: string, words: string): Promise<void> {
  const input = line(element, label);
  input.focus();
  input.value = words;
  input.dispatchEvent(new Event('change'));
  await settled(element);
}

async function vary(element: AlternativesSheet, name: string): Promise<void> {
  const input = found<HTMLInputElement>(element, '#name');
  input.value = name;
  button(element, 'Vary it').click();
  await settled(element);
}

/** A row of the table, cell by cell. */
function row(element: AlternativesSheet, name: string): readonly string[] {
  const match = everyElement(element).find(
    (one) => one.localName === 'tr' && wordsOf(one.querySelector('th') ?? one).startsWith(name),
  );
  if (!match) throw new Error(`no row ${name} in: ${wordsOf(element)}`);
  return [...match.querySelectorAll('td')].map(wordsOf);
}

async function thicker(desk: Desk, element: AlternativesSheet): Promise<void> {
  desk.watching.turn({ of: 'cell', cell: idOf(desk.session, 'Bags to buy') });
  await vary(element, 'Thickness');
  await write(element, 'Thickness, Way 1', '6 in');
  await write(element, 'Thickness, Way 2', '3 in');
}

describe('alternatives beside the notebook', () => {
  test('is accessible, empty and with alternatives', async () => {
    const { desk, element } = await laid();
    expect(await axeFindings(element)).toEqual([]);
    await thicker(desk, element);
    await write(element, 'Thickness, Way 1', '6');
    expect(await axeFindings(element)).toEqual([]);
  });

  test('opens with the keyboard in the line that names a cell, and in the amounts once there are some', async () => {
    const { desk, element } = await laid();
    await expect.poll(() => focusedElement()?.id).toBe('name');
    await thicker(desk, element);
    element.open = false;
    await settled(element);
    element.open = true;
    await settled(element);
    expect(focusedElement()?.getAttribute('aria-label')).toBe('Thickness, Way 1');
  });

  test('shows totals and what is watched in each, with the difference and which is best in words', async () => {
    const { desk, element } = await laid();
    await thicker(desk, element);
    expect(row(element, 'Price')).toEqual([
      '$259.20',
      '$382.32 +$123.12 worst',
      '$194.40 −$64.80 best',
    ]);
    expect(row(element, 'Bags to buy')).toEqual([
      '40 bags',
      '59 bags +19 bags',
      '30 bags −10 bags',
    ]);
    button(element, 'which is better? Bags to buy').click();
    await settled(element);
    button(element, 'less is better Bags to buy').click();
    await settled(element);
    expect(row(element, 'Bags to buy')).toEqual([
      '40 bags',
      '59 bags +19 bags best',
      '30 bags −10 bags worst',
    ]);
  });

  test('tells the checks that fail in an alternative though nobody watches them, with their caution', async () => {
    const { desk, element } = await laid();
    await thicker(desk, element);
    const [now, thick, thin] = row(element, 'Checks');
    expect([now, thick]).toEqual(['all hold', 'all hold']);
    expect(thin).toBe(
      'Thickness check does not hold. Too thin for a slab on the ground; ask the local building department.',
    );
  });

  test('changes nothing until one is put in, which is one change that undo takes back', async () => {
    const { desk, element } = await laid();
    const { session } = desk;
    await thicker(desk, element);
    await vary(element, 'Bag price');
    await write(element, 'Bag price, Way 1', '$7 per bag');
    expect(session.door.notebook.text).toBe(SMALL_JOB);
    expect(session.door.canUndo()).toBeNull();
    button(element, 'Put in Way 1').click();
    await settled(element);
    expect([shownOf(session, 'Thickness'), shownOf(session, 'Bag price')]).toEqual([
      '6 in',
      '$7.00 per bag',
    ]);
    expect(shownOf(session, 'Concrete')).toBe('$413.00');
    expect(row(element, 'Price')[1]).toBe('$413.00 the same worst');
    const put = button(element, 'Put in Way 1');
    expect(put.getAttribute('aria-disabled')).toBe('true');
    put.click();
    expect(session.door.canUndo()).toBe('Put in Way 1');
    expect(session.door.canUndo()).toBe('Put in Way 1');
    button(element, 'Take it out again').click();
    await settled(element);
    expect(() => button(element, 'Take it out again')).toThrow('no button');
    expect(session.door.notebook.text).toBe(SMALL_JOB);
    expect(row(element, 'Price')[1]).toBe('$413.00 +$153.80 worst');
  });

  test('says why an amount can’t stand there, and one press mends it', async () => {
    const { element } = await laid();
    await vary(element, 'thickness');
    await write(element, 'Thickness, Way 1', '6');
    const input = line(element, 'Thickness, Way 1');
    const why = found(element, `#${input.getAttribute('aria-describedby')}`);
    expect(wordsOf(why)).toBe(
      'Thickness holds a length, and this is a plain number. Left as it is. 6 in 6 ft',
    );
    expect(row(element, 'Price')[1]).toBe('$259.20 the same');
    button(element, '6 in').click();
    await settled(element);
    expect(row(element, 'Price')[1]).toBe('$382.32 +$123.12 worst');
    expect(focusedElement()).toBe(line(element, 'Thickness, Way 1'));
  });

  test('varies a formula as well as a given, and the cell that is chosen with one press', async () => {
    const { desk, element } = await laid();
    desk.session.choose(idOf(desk.session, 'Bags to buy'));
    await settled(element);
    button(element, 'Vary Bags to buy').click();
    await settled(element);
    await write(element, 'Bags to buy, Way 2', 'slab volume divided by bag yield, rounded up');
    expect(row(element, 'Price')[2]).toBe('$233.28 −$25.92 best');
  });

  test('asks which cell is meant where a name is another’s too, and finds a name with a slip', async () => {
    const { element } = await laid(
      `${SMALL_JOB}\n## Ramp\n\n- Thickness: 5 in\n  - from: chosen\n`,
    );
    const asked = (): string => wordsOf(found(element, 'p[role=status]'));
    await vary(element, 'Thickness');
    expect(asked()).toBe(
      '"Thickness" could be any of these. Thickness, in Landing Thickness, in Ramp',
    );
    button(element, 'Thickness, in Ramp').click();
    await settled(element);
    expect(row(element, 'Thickness')[0]).toBe('5 in');
    await vary(element, 'Bag prise');
    expect(asked()).toBe(
      'No cell here is called "Bag prise". Did you mean one of these? Bag price',
    );
    button(element, 'Bag price').click();
    await settled(element);
    expect(row(element, 'Bag price')[0]).toBe('$6.48 per bag');
  });

  test('is named, copied, taken away and brought back, and no more than three stand there', async () => {
    const { desk, element } = await laid();
    await thicker(desk, element);
    await write(element, 'Name of way 1', 'Thick');
    await write(element, 'Name of way 2', ' ');
    button(element, 'Copy Thick').click();
    await settled(element);
    const names = (): readonly string[] =>
      everyElement(element)
        .filter((one) => one.classList.contains('called'))
        .map((one) => (one as HTMLInputElement).value);
    expect(names()).toEqual(['Thick', 'Way 2', 'Thick, too']);
    expect(line(element, 'Thickness, Thick, too').value).toBe('6 in');
    expect(() => button(element, 'Another way')).toThrow('no button');
    button(element, 'Take away Thick').click();
    await settled(element);
    expect(names()).toEqual(['Way 2', 'Thick, too']);
    button(element, 'Bring it back').click();
    await settled(element);
    expect(names()).toEqual(['Thick', 'Way 2', 'Thick, too']);
    button(element, 'leave it: Thickness').click();
    await settled(element);
    expect(row(element, 'Price')).toEqual([
      '$259.20',
      '$259.20 the same',
      '$259.20 the same',
      '$259.20 the same',
    ]);
  });

  test('follows the notebook as it changes beside it', async () => {
    const { desk, element } = await laid();
    const { session } = desk;
    await thicker(desk, element);
    session.apply((door) => door.setFormula(idOf(session, 'Bag price'), '$10 per bag'));
    session.apply((door) => door.rename(idOf(session, 'Thickness'), 'Depth'));
    await settled(element);
    expect(row(element, 'Price')).toEqual([
      '$400.00',
      '$590.00 +$190.00 worst',
      '$300.00 −$100.00 best',
    ]);
    expect(line(element, 'Depth, Way 1').value).toBe('6 in');
    session.apply((door) => door.removeCell(idOf(session, 'Depth')));
    await settled(element);
    expect(() => line(element, 'Depth, Way 1')).toThrow('nothing matches');
    session.undo();
    await settled(element);
    expect(line(element, 'Depth, Way 1').value).toBe('6 in');
  });

  test('compares once a tape rests, and puts in what was compared without it', async () => {
    const { desk, element } = await laid();
    const { session } = desk;
    await thicker(desk, element);
    session.openTape(idOf(session, 'Bag price'));
    session.slideTape('$10 per bag');
    await settled(element);
    expect(row(element, 'Price').map((said) => said.split(' ')[0])).toEqual([
      '$259.20',
      '$382.32',
      '$194.40',
    ]);
    await expect
      .poll(() => row(element, 'Price'), { timeout: 5000 })
      .toEqual(['$400.00', '$590.00 +$190.00 worst', '$300.00 −$100.00 best']);
    button(element, 'Put in Way 1').click();
    await settled(element);
    expect(session.trial).toBeNull();
    expect(session.door.notebook.text).toBe(
      SMALL_JOB.replace('Thickness: 4 in', 'Thickness: 6 in'),
    );
  });

  test('leaves out of the order what leaves lines out of its sum', async () => {
    const { desk, element } = await laid();
    await thicker(desk, element);
    await vary(element, 'Bag price');
    await write(element, 'Bag price, Way 2', '?');
    expect(row(element, 'Price')).toEqual([
      '$259.20',
      '$382.32 +$123.12',
      '$0.00 so far; 1 line not yet known',
    ]);
  });

  test('is kept beside the notebook', async () => {
    const browser = browserOf();
    const desk = await browser.page();
    const element = await drawn('alternatives-sheet', { desk, open: true });
    await thicker(desk, element);
    await desk.watching.settled();
    const again = await browser.page();
    await again.watching.settled();
    const later = await drawn('alternatives-sheet', { desk: again, open: true });
    expect(line(later, 'Thickness, Way 1').value).toBe('6 in');
    expect(row(later, 'Price')[2]).toBe('$194.40 −$64.80 best');
  });

  test('is left with Escape, the first of which leaves a line that was written in as it was', async () => {
    const { desk, element } = await laid();
    await thicker(desk, element);
    let away = 0;
    element.addEventListener('away', () => away++);
    const input = line(element, 'Thickness, Way 1');
    input.focus();
    await userEvent.keyboard('{Control>}a{/Control}9 in{Escape}');
    expect([input.value, away]).toEqual(['6 in', 0]);
    await userEvent.keyboard('{Escape}');
    expect(away).toBe(1);
  });
});
