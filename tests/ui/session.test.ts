// The session: changes are made or told, those who watch a cell are called, a tape leaves one change or none.
import { beforeEach, describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { asidesOf } from '../../src/ui/asides.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { Session } from '../../src/ui/session.ts';

const TEXT = `## Slab

- Length: 12 ft
- Width: 4 ft
- Area: length by width
- Price: $5 per sq ft
- Cost: area at price
  - cost: material
`;

let session: Session;

const id = (name: string): number =>
  allCells(session.door.notebook).find((cell) => cell.name === name)?.id ?? -1;
const shown = (name: string) => session.door.shown(id(name))?.text;

beforeEach(() => {
  const door = new Estimate(TEXT);
  session = new Session(door, asidesOf(door));
});

describe('a session', () => {
  test('tells why a change was not made until one is', () => {
    session.apply((door) => door.rename(id('Width'), 'Wide: 4 ft'));
    expect(session.notice?.text).toContain('has a colon in it');
    session.apply((door) => door.rename(id('Width'), 'Wide'));
    expect(session.notice).toBeNull();
    session.tell({ text: 'Another page wrote here.', lasts: 'stays' });
    session.apply((door) => door.rename(id('Wide'), 'Width'));
    expect(session.notice?.text).toBe('Another page wrote here.');
  });

  test('calls those who watch the cells that a change reached, once each, and nobody else', () => {
    const called: string[] = [];
    for (const { id: cell, name } of allCells(session.door.notebook)) {
      session.watch(cell, () => called.push(name));
    }
    session.apply((door) => door.setFormula(id('Width'), '5 ft'));
    expect(called).toEqual(['Width', 'Area', 'Cost']);
  });

  test('no longer calls whoever stopped watching or listening', () => {
    let calls = 0;
    const stops = [session.watch(id('Area'), () => calls++), session.listen(() => calls++)];
    for (const stop of stops) stop();
    session.apply((door) => door.setFormula(id('Width'), '5 ft'));
    expect(calls).toBe(0);
  });

  test('tells why a change was not made, and nothing has changed', () => {
    expect(session.apply((door) => door.rename(id('Width'), '4 in'))).toBe(false);
    expect(session.notice?.text).toContain('starts with an amount');
    expect(session.door.notebook.text).toBe(TEXT);
  });

  test('undo and redo say what they did', () => {
    session.apply((door) => door.setFormula(id('Width'), '5 ft'));
    session.undo();
    expect(shown('Area')).toBe('48 sq ft');
    expect(session.notice?.text).toBe('Undone: Width: 5 ft');
    session.redo();
    expect(shown('Area')).toBe('60 sq ft');
  });

  test('chooses what stands in the place of a cell that is no longer there', () => {
    session.choose(id('Price'));
    const after = session.neighbour(id('Price'), 1);
    session.apply((door) => door.removeCell(id('Price')));
    expect(session.chosen).toBe(after);
  });

  test('undo chooses the cell that it changed back', () => {
    session.apply((door) => door.setFormula(id('Width'), '5 ft'));
    session.choose(id('Cost'));
    session.undo();
    expect(session.chosen).toBe(id('Width'));
  });

  test('what was told of one notebook is not told of the next', () => {
    session.apply((door) => door.setFormula(id('Width'), '5 ft'));
    session.undo();
    const door = new Estimate('## Other\n\n- Size: 1 ft\n');
    session.open(door, asidesOf(door));
    expect(session.notice).toBeNull();
  });

  test('opens another notebook with nothing chosen or being written', () => {
    session.write({ kind: 'formula', cell: id('Width') });
    const door = new Estimate('## Other\n\n- Size: 1 ft\n');
    session.open(door, asidesOf(door));
    expect([session.chosen, session.writing, session.trial]).toEqual([null, null, null]);
  });

  test('goes from cell to cell in reading order and stops at both ends', () => {
    expect(session.neighbour(id('Length'), 1)).toBe(id('Width'));
    expect(session.neighbour(id('Length'), -1)).toBeNull();
    expect(session.neighbour(id('Cost'), 1)).toBeNull();
  });
});

describe('a tape in the session', () => {
  test('moves everything and leaves the list of changes as it was when it goes back', () => {
    session.apply((door) => door.setFormula(id('Length'), '10 ft'));
    session.openTape(id('Width'));
    session.slideTape('5 ft');
    session.slideTape('6 ft');
    expect(shown('Cost')).toBe('$300.00');
    session.leaveTape();
    expect(shown('Cost')).toBe('$200.00');
    expect(session.door.canUndo()).toBe('Length: 10 ft');
    expect(session.door.canRedo()).toBeNull();
  });

  test('is left when something else is chosen, written, changed or undone', () => {
    const ways = [
      () => session.choose(id('Area')),
      () => session.write({ kind: 'title' }),
      () => session.apply((door) => door.setFormula(id('Length'), '12 ft 6 in')),
      () => session.undo(),
    ];
    for (const way of ways) {
      session.openTape(id('Width'));
      session.slideTape('9 ft');
      way();
      expect(session.trial).toBeNull();
      expect(shown('Width')).toBe('4 ft');
    }
  });

  test('slid back to where it began leaves no change', () => {
    session.openTape(id('Width'));
    session.slideTape('9 ft');
    session.slideTape('4 ft');
    session.keepTape();
    expect(session.door.canUndo()).toBeNull();
    expect(session.door.notebook.text).toBe(TEXT);
  });
});

describe('beside a cell', () => {
  test.each([
    ['area at price', '48 sq ft'],
    ['(area at price) rounded to the nearest $1', '48 sq ft'],
    ['$5', null],
    ['area at price plus $5', null],
    ['6 hours at $50 per hour', '6 hours'],
    ['area at 12 sq ft per hour, at $50 per hour', '4 hours'],
  ])('the quantity that %s prices is %s', (formula, quantity) => {
    session.apply((door) => door.setFormula(id('Cost'), formula));
    expect(session.asides.quantity(id('Cost'))).toBe(quantity);
  });
});

describe('moving', () => {
  const parts = (): string[] => session.door.notebook.parts.map(({ name }) => name);
  const SUMS = `${TEXT}
## Shed

- Width: 3 ft
- Roof: 2 ft by Slab length

## Summary

- Slab cost: total cost of Slab
`;

  beforeEach(() => {
    const door = new Estimate(SUMS);
    session = new Session(door, asidesOf(door));
  });

  const keyOf = (name: string): string =>
    session.door.notebook.parts.find((part) => part.name === name)?.key ?? '';
  const moveLast = (name: string, part: string): boolean =>
    session.move(name, (door, values) =>
      door.moveCell(id(name), { part: keyOf(part), place: 9 }, values),
    );

  test('tells what had to be written anew', () => {
    expect(moveLast('Length', 'Shed')).toBe(true);
    expect(session.notice?.text).toBe('Moved Length to Shed');
    expect(session.door.state(id('Roof')).input.formula).toBe('2 ft by Shed length');
    session.undo();
    expect(moveLast('Area', 'Shed')).toBe(true);
    expect(session.notice?.text).toBe('Moved Area to Shed; now written "Slab width" in Area');
    session.undo();
    expect(session.chosen).toBe(id('Area'));
    expect(session.door.notebook.text).toBe(SUMS);
  });

  test('tells first where a value would change, and offers to move all the same', () => {
    expect(moveLast('Cost', 'Shed')).toBe(false);
    expect(session.notice?.text).toContain('Slab cost $240.00 → $0.00');
    expect(session.door.notebook.text).toBe(SUMS);
    session.notice?.act?.go();
    expect(shown('Slab cost')).toBe('$0.00');
    session.undo();
    expect(shown('Slab cost')).toBe('$240.00');
  });

  test('undoing brings what was moved back into view, a part by its first cell', () => {
    session.move('Shed', (door, values) => door.movePart(keyOf('Shed'), 0, values));
    expect(parts()).toEqual(['', 'Shed', 'Slab', 'Summary']);
    session.choose(id('Slab cost'));
    session.undo();
    expect(parts()).toEqual(['', 'Slab', 'Shed', 'Summary']);
    expect(session.cell(session.chosen ?? -1)?.part).toBe(keyOf('Shed'));
  });

  test('a name that would change a reading is not given, and that is told', () => {
    session.apply((door) => door.addCell(keyOf('Shed'), null, 'Slab length', '1 ft'));
    expect(session.notice?.text).toContain('With this name the formula of "Roof" would read');
    expect(session.door.notebook.text).toBe(SUMS);
  });
});
