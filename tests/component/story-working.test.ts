// The working of the chosen cell, from the answer to the givens, and its remarks.
import { describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/ui/story-working.ts';
import {
  SMALL_JOB,
  axeFindings,
  button,
  cellOf,
  drawn,
  focusedElement,
  found,
  idOf,
  sessionOn,
  settled,
  shownOf,
  wordsOf,
} from './drawn.ts';

async function working(name: string | null) {
  const session = sessionOn(SMALL_JOB);
  if (name !== null) session.choose(idOf(session, name));
  const element = await drawn('story-working', { session });
  return { session, element };
}

describe('the working', () => {
  test.each(['Bags to buy', 'Thickness', 'Concrete'])('of %s is accessible', async (name) => {
    const { element } = await working(name);
    expect(await axeFindings(element)).toEqual([]);
  });

  test('says what it is for while nothing is chosen', async () => {
    const { element } = await working(null);
    expect(wordsOf(element)).toMatch(/^Choose a cell/);
    expect(await axeFindings(element)).toEqual([]);
  });

  test('goes from the answer down to the givens and where they come from', async () => {
    const { element } = await working('Bags to buy');
    const words = wordsOf(element);
    expect(words).toMatch(/^Working of Bags to buy 40 bags/);
    expect(words).toContain('rounded up to whole bags');
    expect(words).toContain('bag label');
    expect(words).toContain('Slab volume');
    expect(words).toContain('measured on site, 2026-03-03');
  });

  test('strikes units that cancel', async () => {
    const { element } = await working('Bags to buy');
    expect(found(element, 's').textContent).toBe('cubic feet');
  });

  test('opens a name in place', async () => {
    const { element } = await working('Concrete');
    const volume = found<HTMLDetailsElement>(
      element,
      `details[data-cell="${element.session.chosen === null ? '' : idOf(element.session, 'Slab volume')}"]`,
    );
    volume.open = false;
    const link = [...(element.shadowRoot?.querySelectorAll('a') ?? [])].find(
      (one) => one.textContent === 'slab volume',
    );
    link?.click();
    expect(volume.open).toBe(true);
  });

  test('says what it goes into and goes there', async () => {
    const { session, element } = await working('Bags to buy');
    const into = found(element, '.into');
    expect(wordsOf(into)).toBe('Goes into Concrete .');
    found<HTMLAnchorElement>(into, 'a').click();
    expect(session.chosen).toBe(idOf(session, 'Concrete'));
  });

  test('follows when a given changes', async () => {
    const { session, element } = await working('Bags to buy');
    session.apply((door) => door.setFormula(idOf(session, 'Thickness'), '5 in'));
    await settled(element);
    expect(found(element, '.answer').textContent).toBe('49 bags');
  });

  test('adds, changes and removes a remark in place', async () => {
    const { session, element } = await working('Slab width');
    button(element, 'Add sensible').click();
    await settled(element);
    await userEvent.keyboard('2 ft up to 6 ft{Enter}');
    expect(
      cellOf(session, 'Slab width').remarks.map(({ word, text }) => `${word}: ${text}`),
    ).toEqual(['from: measured on site, 2026-03-03', 'sensible: 2 ft up to 6 ft']);
    await settled(element);
    button(element, 'Remove sensible').click();
    expect(cellOf(session, 'Slab width').remarks).toHaveLength(1);
  });

  test('makes a cost line of a cell by its remark', async () => {
    const { session, element } = await working('Bags to buy');
    session.apply((door) => door.setFormula(idOf(session, 'Bags to buy'), '$12'));
    await settled(element);
    button(element, 'Add cost').click();
    await settled(element);
    await userEvent.keyboard('{Tab}{Enter}');
    expect(session.door.costs().total.labour).toBe('12.00');
    expect(shownOf(session, 'Bags to buy')).toBe('$12.00');
    // The button went with the choice; the keyboard is on what was chosen.
    await expect
      .poll(() => focusedElement()?.getAttribute('aria-label'))
      .toBe('cost: labour. Change');
  });

  test('asks before a cell is removed', async () => {
    const { session, element } = await working('Waste');
    const asked: unknown[] = [];
    element.addEventListener('about', (event) => asked.push((event as CustomEvent).detail));
    button(element, 'Remove').click();
    expect(asked).toEqual([{ sheet: 'removing', cell: idOf(session, 'Waste') }]);
  });

  test('of a cell in a row goes down to its row and outside it, and leads to its table', async () => {
    const session = sessionOn(`# Kestrel Court

## Landing

- Thickness: 4 in
  - from: chosen
- Slab bays:

  | bay   | length | width | volume: length by width by thickness |
  |-------|--------|-------|--------------------------------------|
  | north | 6 ft   | 4 ft  |                                      |
  | south | 6 ft   | 3 ft  | 7 cubic feet                         |

  - from: drawing 2, invented
- Total: total of volume in slab bays
`);
    const bays = idOf(session, 'Slab bays');
    session.chooseInRow(bays, 0, 3);
    const element = await drawn('story-working', { session });
    expect(wordsOf(found(element, 'header'))).toContain('Slab bays: north: volume 8 cubic feet');
    expect(wordsOf(element)).toContain('6 ft × 4 ft × 4 in ÷ 12 in per ft = 8 cubic feet');
    expect(wordsOf(found(element, '.into'))).toContain('Goes into Total .');
    expect(await axeFindings(element)).toEqual([]);
    session.chooseInRow(bays, 1, 3);
    await settled(element);
    button(element, 'Leave it to its column').click();
    await settled(element);
    expect(wordsOf(found(element, '.answer'))).toBe('6 cubic feet');
    expect(cellOf(session, 'Slab bays').table?.rows[1]?.texts[3]).toBe('');
    button(element, 'All of Slab bays').click();
    await settled(element);
    expect(wordsOf(found(element, 'h2'))).toBe('Slab bays');
    expect(session.within).toBeNull();
  });
});
