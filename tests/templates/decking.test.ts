// Deck boards at odd sizes, against a saw that cuts them one by one, with random givens, and with each check made to say no.
import { describe, expect, test } from 'vitest';
import type { Opened } from '../published/opened.ts';
import { keepsItsPromises } from './random-givens.ts';
import { type Written, openedWith, warnsWhere } from './warns.ts';

const FILE = 'decking.md';
const inches = (notebook: Opened, name: string): number => {
  const [unit, number] = notebook.figure(name);
  return unit === 'ft' ? number * 12 : number;
};
const figure = (written: Written, name: string) => openedWith(FILE, written).figure(name);

/** Rows of `run` from boards of `stock` with every joint on a joist, in inches: from the left, as far as a board goes. */
function sawn(run: number, stock: number, first: number, spacing: number): readonly number[] {
  const pieces: number[] = [];
  let at = 0;
  while (run - at > stock) {
    let joint = first;
    while (joint + spacing - at <= stock) joint += spacing;
    pieces.push(joint - at);
    at = joint;
  }
  return [...pieces, run - at];
}

describe('the layout', () => {
  test('rows laid one by one cover the field, and the last is ripped to what is left', () => {
    const notebook = openedWith(FILE, {});
    const field = 144 + 1 - 5.625;
    let rows = 0;
    let laid = 0;
    for (; laid < field; laid += 5.625) rows++;
    expect(notebook.figure('Rows')).toEqual(['row', rows]);
    expect(notebook.figure('Last row')).toEqual(['in', field - (rows - 1) * 5.625]);
    expect(notebook.figure('Shared rip')[1]).toBe((field - (rows - 1) * 5.625 + 5.5) / 2);
  });

  test.each([
    ['20 ft', 192],
    ['31 ft 4 in', 192],
    ['39 ft', 192],
    ['33 ft 9 in', 120],
    ['9 ft', 96],
  ])('a frame of %s in boards of %i in breaks where a saw and a level would', (length, stock) => {
    const written = {
      'Frame length': length,
      'Border rows': '0 rows',
      'Field stock': `${stock} in`,
    };
    const notebook = openedWith(FILE, written);
    const run = inches(notebook, 'Deck length');
    const pieces = sawn(run, stock, 1.75, 16);
    expect(pieces.length).toBeGreaterThan(1);
    expect(notebook.figure('Pieces in a row')[1]).toBe(pieces.length);
    expect(notebook.figure('Joints')[1]).toBe((pieces.length - 1) * notebook.figure('Rows')[1]);
    expect(inches(notebook, 'Short at the end')).toBeCloseTo(pieces.at(-1) ?? 0, 9);
    // Turned around, the first joint is the first joist from which whole boards reach the end.
    const start = inches(notebook, 'Short at the start');
    expect((start - 1.75) % 16).toBeCloseTo(0, 9);
    expect(inches(notebook, 'Short piece')).toBeCloseTo(Math.max(start, pieces.at(-1) ?? 0), 9);
  });

  test('short pieces are cut from one board as long as it gives', () => {
    const notebook = openedWith(FILE, {
      'Frame length': '20 ft',
      'Frame width': '12 ft',
      'Border rows': '0 rows',
      'Field stock': '16 ft',
      'Spare share': '0%',
    });
    const rows = notebook.figure('Rows')[1];
    const fromOne = Math.floor(192 / inches(notebook, 'Short piece'));
    expect(notebook.figure('Field boards')[1]).toBe(rows + Math.ceil(rows / fromOne));
  });

  test('boards that run away from the house change places with the joists', () => {
    const notebook = openedWith(FILE, { 'Boards run': 'away from the house' });
    const across = 170 - 2 * 5.625;
    expect(notebook.figure('Rows')).toEqual(['row', Math.ceil(across / 5.625)]);
    expect(inches(notebook, 'Panel run')).toBe(145 - 5.625);
  });

  test('a border at the house and a second row of it take their room from the field', () => {
    const notebook = openedWith(FILE, { 'Border at house': 'yes', 'Border rows': '2 rows' });
    expect(inches(notebook, 'Field width')).toBe(145 - 4 * 5.625);
    // Four rows of 14 ft 2 in and four of 12 ft 1 in, each from a board of its own.
    expect(notebook.figure('Border boards')).toEqual(['board', 8]);
  });

  test('a breaker leaves two shorter panels and no joint', () => {
    const written = { 'Frame length': '24 ft', 'Field stock': '12 ft' };
    expect(figure(written, 'Joints')[1]).toBeGreaterThan(0);
    const broken = openedWith(FILE, { ...written, Breakers: '1 row' });
    expect(broken.figure('Joints')).toEqual(['joint', 0]);
    const field = 290 - 2 * 5.625;
    expect(inches(broken, 'Panel run')).toBeCloseTo((field - 5.75) / 2, 9);
    expect(broken.figure('Lengths to lay')).toEqual(['row', broken.figure('Rows')[1] * 2]);
  });
});

describe('fastening', () => {
  test('clips take over the field, and only edges and outer rows are screwed', () => {
    const notebook = openedWith(FILE, { Method: 'hidden clips' });
    expect(notebook.figure('Clips')).toEqual(['clip', 11 * 24]);
    expect(notebook.figure('Screws')).toEqual(['screw', 24 + 44 + 2 * 11]);
    expect(notebook.figure('Plugs')).toEqual(['plug', 0]);
  });

  test('every screw from above gets its plug', () => {
    const notebook = openedWith(FILE, { Method: 'screws with plugs' });
    expect(notebook.figure('Plugs')).toEqual(['plug', 2 * 11 * 25 + 24 + 44]);
    expect(notebook.figure('Plug bags')).toEqual(['bag', 7]);
  });
});

describe('odd sizes', () => {
  test('a deck narrower than a board is one ripped row', () => {
    const notebook = openedWith(FILE, {
      'Frame width': '4 in',
      Overhang: '0 in',
      'Border rows': '0 rows',
    });
    expect(notebook.figure('Rows')).toEqual(['row', 1]);
    expect(notebook.figure('Last row')).toEqual(['in', 4]);
    expect(notebook.figure('Field boards')).toEqual(['board', 1]);
  });

  test('a deck that is all border has no field, buys none, and says so', () => {
    const notebook = openedWith(FILE, { 'Frame width': '4 in' });
    expect(notebook.figure('Rows')).toEqual(['row', 0]);
    expect(notebook.figure('Field order')).toEqual(['board', 0]);
    expect(notebook.shown('Field check')).toBe('no');
  });

  test('a row as long as the board has no joint, and a sixteenth more has one', () => {
    const written = { 'Border rows': '0 rows', Overhang: '0 in', 'Field stock': '14 ft' };
    expect(figure(written, 'Pieces in a row')[1]).toBe(1);
    expect(figure({ ...written, 'Frame length': '14 ft 1/16 in' }, 'Pieces in a row')[1]).toBe(2);
  });

  test('written in metres it comes to the same boards', () => {
    const metric = {
      'Frame length': '4.2672 m',
      'Frame width': '3.6576 m',
      Overhang: '25.4 mm',
      'Board width': '139.7 mm',
      'Board gap': '3.175 mm',
    };
    for (const name of ['Rows', 'Field order', 'Edge order', 'Screws']) {
      expect([name, figure(metric, name)]).toEqual([name, figure({}, name)]);
    }
  });
});

keepsItsPromises({
  file: FILE,
  enough: [
    'field order times field stock is at least field laid',
    'edge order times edge stock is at least edge laid',
    'screw boxes times 350 screws per box is at least screws',
    'clip boxes times 90 clips per box is at least clips',
    'plug bags times 100 plugs per bag is at least plugs',
    'last row is at most board width',
    'rows is 0 or last row is more than 0 in',
    'panel run is 0 in or short piece is at most field stock',
  ],
  mayBeNegative: ['Edge joist', 'Short at the end'],
  grows: [
    { given: 'Frame length', never: ['Deck area', 'Edge laid', 'Field laid', 'Joists'] },
    { given: 'Frame width', never: ['Deck area', 'Edge laid', 'Field laid'] },
    { given: 'Spare share', never: ['Field order', 'Edge order', 'Waste'] },
    { given: 'Fastener spares', never: ['Screw boxes', 'Clip boxes', 'Plug bags'] },
    { given: 'Board rate', never: ['Decking cost'] },
  ],
});

warnsWhere(FILE, {
  'Overhang check': { Overhang: '2 in' },
  'Spacing check': { 'Joist spacing': '19 3/16 in' },
  'Gap check': { 'Board gap': '1/2 in' },
  'Field check': { 'Frame width': '4 in' },
  'Rip check': { 'Frame width': '11 ft 9 in' },
  'Stagger check': { 'Frame length': '30 ft 7 in', 'Border rows': '0 rows', 'Field stock': '16 ft' },
  'Breaker check': { Breakers: '1 row', 'Field stock': '8 ft', 'Frame length': '24 ft' },
});
