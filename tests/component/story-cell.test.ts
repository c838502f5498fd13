// One row: what it shows for each way a cell can stand, and what can be done in it.
import { describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/ui/story-cell.ts';
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

async function row(name: string, text = SMALL_JOB) {
  const session = sessionOn(text);
  const list = document.createElement('div');
  list.setAttribute('role', 'list');
  document.body.append(list);
  const cell = await drawn('story-cell', { session, cell: cellOf(session, name) });
  cell.setAttribute('role', 'listitem');
  list.append(cell);
  await settled(cell);
  return { session, cell, list };
}

describe('a row', () => {
  test.each(['Slab length', 'Slab volume', 'Concrete', 'Thickness check'])(
    'of %s is accessible, chosen or not',
    async (name) => {
      const { session, cell, list } = await row(name);
      expect(await axeFindings(list)).toEqual([]);
      session.choose(cell.cell.id);
      await settled(cell);
      expect(await axeFindings(list)).toEqual([]);
    },
  );

  test('at fault or waiting is accessible', async () => {
    const { session, cell, list } = await row('Bags to buy');
    session.apply((door) => door.setFormula(cell.cell.id, 'slab volume plus bag price'));
    cell.cell = cellOf(session, 'Bags to buy');
    await settled(cell);
    expect(await axeFindings(list)).toEqual([]);
  });

  test('of a given shows where it comes from', async () => {
    const { cell } = await row('Slab length');
    expect(wordsOf(cell)).toBe('12 ft Slab length measured on site, 2026-03-03');
  });

  test('of a ranged given shows its plain value, and after it its two ends with a stroke between them', async () => {
    const job =
      '# K\n\n## Ground\n\n- Digging: 13 hours, 12 at best, 16 at worst\n  - from: own hours\n';
    const { cell, list, session } = await row('Digging', job);
    expect(wordsOf(cell)).toBe('13 hours Digging 12 hours at best, 16 hours at worst own hours');
    expect(found(cell, '.ends .plain').getAttribute('d')).toBe('M13 1v8');
    expect(await axeFindings(list)).toEqual([]);
    session.apply((door) => door.setFormula(cell.cell.id, '? hours, 12 at best, 16 at worst'));
    cell.cell = cellOf(session, 'Digging');
    await settled(cell);
    expect(wordsOf(cell)).toContain('12 hours at best, 16 hours at worst');
    expect(cell.shadowRoot?.querySelector('.ends .plain')).toBeNull();
    session.apply((door) => door.setByHand(cell.cell.id, '20 hours', null));
    cell.cell = cellOf(session, 'Digging');
    await settled(cell);
    expect(cell.shadowRoot?.querySelector('.ends')).toBeNull();
  });

  test('of a worked cell shows its formula with its names as links', async () => {
    const { session, cell } = await row('Slab volume');
    expect(wordsOf(cell)).toBe('16 cubic feet Slab volume slab length by slab width by thickness');
    found<HTMLAnchorElement>(cell, 'a').click();
    expect(session.chosen).toBe(idOf(session, 'Slab length'));
  });

  test('of a cost line shows the quantity it prices and its money', async () => {
    const { cell } = await row('Concrete');
    expect(wordsOf(cell)).toBe('40 bags Concrete bags to buy at bag price $259.20');
  });

  test('of a cost line that prices no quantity is changed at its money', async () => {
    const { session, cell } = await row(
      'Permit',
      '## Fees\n\n- Permit: $140\n  - cost: fee\n  - from: office\n',
    );
    expect(wordsOf(cell)).toBe('Permit office $140.00');
    button(cell, '$140.00. Change Permit').click();
    expect(session.trial?.cell).toBe(cell.cell.id);
    await settled(cell);
    button(cell, '$140.00. Change Permit').click();
    expect(session.writing).toEqual({ kind: 'formula', cell: cell.cell.id });
  });

  test('opens the tape when a given’s number is pressed, and the line for a worked one', async () => {
    const given = await row('Thickness');
    button(given.cell, '4 in. Change Thickness').click();
    expect(given.session.trial?.cell).toBe(given.cell.cell.id);
    const worked = await row('Slab volume');
    button(worked.cell, 'Change Slab volume').click();
    expect(worked.session.writing).toEqual({ kind: 'formula', cell: worked.cell.cell.id });
  });

  test('of a worked cell is written when its words are pressed, once it is chosen', async () => {
    const { session, cell } = await row('Slab volume');
    found(cell, '.words').click();
    expect([session.chosen, session.writing]).toEqual([cell.cell.id, null]);
    await settled(cell);
    found(cell, '.words').click();
    expect(session.writing).toEqual({ kind: 'formula', cell: cell.cell.id });
  });

  test('of money that no total counts says so when it is chosen, and counts it when asked', async () => {
    const { session, cell } = await row('Rail hire', '## Fees\n\n- Rail hire: 3 h at $20 per h\n');
    expect(wordsOf(cell)).not.toContain('In no total yet');
    session.choose(cell.cell.id);
    await settled(cell);
    expect(wordsOf(cell)).toContain('In no total yet');
    button(cell, 'Count Rail hire as equipment').click();
    expect(session.door.costs().total.equipment).toBe('60.00');
  });

  test('of a given without a source asks for one when it is chosen', async () => {
    const { session, cell } = await row('Size', '## P\n\n- Size: 4 ft\n');
    session.choose(cell.cell.id);
    await settled(cell);
    button(cell, 'Say where it comes from').click();
    expect(session.writing).toEqual({ kind: 'remark', cell: cell.cell.id, word: 'from' });
  });

  test('of a check says holds, or does not hold and the caution', async () => {
    const { session, cell } = await row('Thickness check');
    expect(wordsOf(cell)).toMatch(/^holds Thickness check/);
    session.apply((door) => door.setFormula(idOf(session, 'Thickness'), '3 in'));
    await settled(cell);
    expect(wordsOf(cell)).toMatch(
      /^does not hold Thickness check .* Caution\. Too thin for a slab/,
    );
  });

  test('at fault keeps the last value, rings the words and offers the mend', async () => {
    const { session, cell } = await row('Bags to buy');
    session.apply((door) => door.setFormula(cell.cell.id, 'slab volum plus waste'));
    cell.cell = cellOf(session, 'Bags to buy');
    await settled(cell);
    expect(found(cell, '.amount').textContent?.trim()).toBe('40 bags');
    expect(found(cell, '.ringed').textContent).toBe('slab volum');
    button(cell, 'slab volume').click();
    expect(cellOf(session, 'Bags to buy').formula).toBe('slab volume plus waste');
  });

  test('that waits names what it waits for and keeps its last value', async () => {
    const { session, cell } = await row('Concrete');
    session.apply((door) => door.setFormula(idOf(session, 'Bag yield'), '0.45 nothings per bag'));
    await settled(cell);
    expect(wordsOf(cell)).toMatch(/\$259\.20 waiting for Bags to buy/);
  });

  test('of a given not yet known shows the question mark', async () => {
    const { session, cell } = await row('Slab width');
    session.apply((door) => door.setFormula(cell.cell.id, '?'));
    cell.cell = cellOf(session, 'Slab width');
    await settled(cell);
    expect(found(cell, '.amount').textContent?.trim()).toBe('?');
    expect(button(cell, 'Change').getAttribute('aria-label')).toBe(
      'not yet known. Change Slab width',
    );
  });

  test('set by hand shows both values, the difference, and takes it back in one action', async () => {
    const { session, cell } = await row('Bags to buy');
    session.apply((door) => door.setByHand(cell.cell.id, '45 bags', null));
    cell.cell = cellOf(session, 'Bags to buy');
    await settled(cell);
    expect(wordsOf(cell)).toMatch(
      /^45 bags Bags to buy .* set by hand worked: 40 bags; by hand it is 5 bags more/,
    );
    button(cell, 'Take it back').click();
    expect(shownOf(session, 'Bags to buy')).toBe('40 bags');
  });

  test('is renamed in place, formulas with it', async () => {
    const { session, cell } = await row('Waste');
    session.write({ kind: 'name', cell: cell.cell.id });
    await settled(cell);
    await userEvent.keyboard('Extra{Enter}');
    expect(cellOf(session, 'Bags to buy').formula).toBe(
      'slab volume plus extra, divided by bag yield, rounded up',
    );
  });

  test('shows markup in a name or a source as text', async () => {
    const { cell } = await row(
      'A <img src=x onerror=alert(1)>',
      '## P\n\n- A <img src=x onerror=alert(1)>: 3 ft\n  - from: <script>alert(1)</script>\n',
    );
    expect(wordsOf(cell)).toBe('3 ft A <img src=x onerror=alert(1)> <script>alert(1)</script>');
    expect(focusedElement()?.tagName).toBe('BODY');
  });
});
