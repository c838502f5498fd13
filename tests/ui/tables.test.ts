// Tables on the page without the page: where undo goes back to, what a key asks for, where a cell of a row stands.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { asidesOf } from '../../src/ui/asides.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { nameBeside, placeOf, standingOn } from '../../src/ui/row-places.ts';
import type { Happening } from '../../src/ui/happening.ts';
import { Session } from '../../src/ui/session.ts';
import { askedBy, goesTo } from '../../src/ui/table-keys.ts';

const JOB = `# Kestrel Court

## Landing

- Asks first: total of volume in slab bays
- Thickness: 4 in
- Slab bays:

  | bay   | length | width | volume: length by width by thickness |
  |-------|--------|-------|--------------------------------------|
  | north | 6 ft   | 4 ft  |                                      |
  | south | 6 ft   | 3 ft  |                                      |
  | steps | 3 ft   | 3 ft  |                                      |
`;

function opened() {
  const door = new Estimate(JOB);
  const session = new Session(door, asidesOf(door));
  const happened: Happening[] = [];
  session.listen((one) => happened.push(one));
  const id = (name: string): number =>
    allCells(door.notebook).find((c) => c.name === name)?.id ?? 0;
  /** Where the last undo went: row and column, with row -1 for the header. */
  const wentTo = (): readonly (number | undefined)[] => {
    const [at] = happened.flatMap((one) => (one.kind === 'bring-row' ? [one.at] : [])).slice(-1);
    return [at?.row, at?.column];
  };
  return { door, session, bays: id('Slab bays'), id, wentTo };
}

describe('undo in a table goes to the place that it changed', () => {
  const CASES: readonly (readonly [
    string,
    (door: Estimate, bays: number) => unknown,
    readonly [number, number],
  ])[] = [
    ['a cell', (door, bays) => door.setRowCell(bays, 1, 2, '5 ft'), [1, 2]],
    ['a row that was added', (door, bays) => door.addRow(bays, 0, ['ramp']), [1, 0]],
    ['a row that was removed', (door, bays) => door.removeRow(bays, 1), [1, 0]],
    ['the last row, removed', (door, bays) => door.removeRow(bays, 2), [2, 0]],
    ['a column’s name', (door, bays) => door.renameColumn(bays, 3, 'room'), [-1, 3]],
    ['what a column works', (door, bays) => door.setColumnFormula(bays, 3, null), [-1, 3]],
    ['a column that was removed', (door, bays) => door.removeColumn(bays, 1), [-1, 1]],
    ['a column that moved', (door, bays) => door.moveColumn(bays, 0, 2), [-1, 0]],
  ];
  test.each(CASES)('%s', (_, change, place) => {
    const { door, session, bays, wentTo } = opened();
    change(door, bays);
    session.undo();
    expect(session.chosen).toBe(bays);
    expect(wentTo()).toEqual(place);
    expect(session.within?.row ?? -1).toBe(place[0]);
    expect(door.notebook.text).toBe(JOB);
  });
});

describe('a cell of a row', () => {
  test('is told by its table and its place, wherever its row goes', () => {
    const { door, session, bays, id } = opened();
    const volume = door.rows(bays)?.[0]?.[3] ?? 0;
    expect(placeOf(door, volume)).toEqual({ cell: bays, row: 0, column: 3, id: volume });
    expect(standingOn(door, volume)).toBe(bays);
    session.bring(volume);
    expect(session.worked).toBe(volume);
    expect(session.chosen).toBe(bays);
    session.apply((d) => d.moveRow(bays, 0, 2));
    expect(session.within).toEqual({ cell: bays, row: 2, column: 3, id: volume });
    session.apply((d) => d.removeRow(bays, 2));
    expect(session.within).toBeNull();
    expect(standingOn(door, volume)).toBeNull();
    session.bring(volume);
    expect(session.chosen).toBe(bays);
    session.choose(id('Thickness'));
    expect(session.worked).toBe(id('Thickness'));
  });

  test('is called by its column alone beside another of its row', () => {
    const { door, bays } = opened();
    const [first = [], second = []] = door.rows(bays) ?? [];
    const within = placeOf(door, first[3] ?? 0);
    expect(nameBeside(door, first[1] ?? 0, within)).toBe('length');
    expect(nameBeside(door, second[1] ?? 0, within)).toBe('Slab bays: south: length');
    expect(nameBeside(door, first[1] ?? 0, null)).toBe('Slab bays: north: length');
  });

  test('has a working that goes down to the row’s own figures', () => {
    const { door, session, bays } = opened();
    const volume = door.rows(bays)?.[1]?.[3] ?? 0;
    expect(door.state(volume).needs.map((one) => door.state(one).input.name)).toEqual(
      expect.arrayContaining(['Slab bays: south: length', 'Slab bays: south: width', 'Thickness']),
    );
    expect(door.state(volume).goesInto.map((one) => door.state(one).input.name)).toEqual([
      'Asks first',
    ]);
    session.bring(volume);
    expect(session.within?.row).toBe(1);
  });
});

describe('a key in a table', () => {
  const { table } = allCells(new Estimate(JOB).notebook)[2] ?? {};
  const pressed = (key: string, at: readonly [number, number], held = '') => {
    if (!table) throw new Error('no table');
    const event = {
      key,
      altKey: held === 'Alt',
      ctrlKey: held === 'Ctrl',
      metaKey: false,
      shiftKey: held === 'Shift',
    };
    return askedBy(event as KeyboardEvent, { row: at[0], column: at[1] }, table);
  };

  test.each([
    ['ArrowUp', [0, 1], '', { does: 'go', to: { row: -1, column: 1 } }],
    ['ArrowUp', [-1, 1], '', { does: 'go', to: { row: -1, column: 1 } }],
    ['ArrowDown', [-1, 2], '', { does: 'go', to: { row: 0, column: 2 } }],
    ['PageUp', [0, 2], '', { does: 'go', to: { row: -1, column: 2 } }],
    ['End', [1, 0], 'Ctrl', { does: 'go', to: { row: 2, column: 3 } }],
    ['7', [1, 1], '', { does: 'write', typed: '7' }],
    ['Enter', [-1, 1], '', { does: 'write', typed: null }],
    ['7', [-1, 1], '', null],
    ['Delete', [-1, 1], '', null],
    ['F2', [-1, 1], '', { does: 'rename' }],
    ['Insert', [-1, 1], '', { does: 'add-column', after: 1 }],
    ['Insert', [-1, 1], 'Shift', { does: 'add-column', after: 0 }],
    ['Insert', [1, 1], '', { does: 'add-row' }],
    ['Delete', [1, 1], 'Ctrl', { does: 'remove-row' }],
    ['Delete', [-1, 1], 'Ctrl', { does: 'remove-column' }],
    ['ArrowLeft', [-1, 1], 'Alt', { does: 'move-column', by: -1 }],
    ['ArrowLeft', [1, 1], 'Alt', null],
    ['ArrowDown', [1, 1], 'Alt', { does: 'move-row', by: 1 }],
    ['z', [1, 1], 'Ctrl', null],
    [' ', [1, 1], '', null],
    ['Escape', [1, 1], '', { does: 'leave' }],
  ] as const)('%s at %j with %j asks for %j', (key, at, held, asked) => {
    expect(pressed(key, at, held)).toEqual(asked);
  });

  test.each([
    [[0, 3], 'on', { row: 1, column: 0 }],
    [[1, 0], 'back', { row: 0, column: 3 }],
    [[2, 3], 'on', null],
    [[0, 0], 'back', null],
    [[-1, 0], 'on', { row: -1, column: 1 }],
    [[-1, 3], 'on', null],
    [[-1, 0], 'back', null],
    [[1, 1], 'below', { row: 2, column: 1 }],
    [[2, 1], 'below', null],
    [[1, 1], 'stays', null],
  ] as const)('a cell kept at %j goes %s to %j', ([row, column], goes, to) => {
    expect(table && goesTo({ row, column }, goes, table)).toEqual(to);
  });
});
