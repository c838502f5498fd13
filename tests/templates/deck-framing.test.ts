// Deck frames at odd sizes, every row of the span tables through the template, random givens, and each check made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { type Written, openedWith, warnsWhere } from './warns.ts';

const FILE = 'deck-framing.md';
const inches = (written: Written, name: string): number => {
  const [unit, number] = openedWith(FILE, written).figure(name);
  return unit.startsWith('ft') ? number * 12 : number;
};

describe('spans', () => {
  test('a joist span between two rows takes the beam span of the longer one', () => {
    const of = (overhang: string) => inches({ 'Joist overhang': overhang }, 'Beam limit');
    // 10 ft of joist stands in the table, a sixteenth more counts as 12 ft.
    expect(of('2 ft')).toBe(90);
    expect(of('23 15/16 in')).toBe(82);
  });

  test.each(['southern pine', 'douglas fir-larch', 'hem-fir', 'spruce-pine-fir'])(
    'every beam to choose has its spans in %s, down to the longest joists',
    (species) => {
      const notebook = openedWith(FILE, { Species: species, 'Joist span': '18 ft' });
      const { id, table } = notebook.cell('Built-up beams');
      const beams = (notebook.estimate.rows(id) ?? []).map((_, row) => table?.rows[row]?.texts[0]);
      expect(beams).toHaveLength(6);
      for (const beam of beams) {
        notebook.estimate.setFormula(notebook.cell('Beam').id, beam ?? '');
        expect([beam, notebook.figure('Beam limit')[1] > 3]).toEqual([beam, true]);
      }
    },
  );

  test('a beam that carries farther saves a post, and every post is within its span', () => {
    for (const beam of ['2-2x8', '2-2x10', '2-2x12', '3-2x8', '3-2x10', '3-2x12']) {
      const notebook = openedWith(FILE, { Beam: beam, 'Deck length': '32 ft' });
      const limit = notebook.figure('Beam limit')[1];
      const spaces = notebook.figure('Posts each')[1] - 1;
      expect([beam, 30 / spaces <= limit && 30 / (spaces - 1) > limit]).toEqual([beam, true]);
    }
  });

  test('where no joist reaches, it says that no row fits, and the check says no', () => {
    const notebook = openedWith(FILE, { 'Deck depth': '20 ft' });
    expect(notebook.shown('Joist check')).toBe('no');
    expect(notebook.state('Smallest that reaches').outcome).toMatchObject({
      kind: 'fault',
      report: { code: 'no-row' },
    });
    expect(notebook.state('Beam limit').outcome.kind).toBe('fault');
    expect(notebook.state('Framing cost').outcome.kind).not.toBe('fault');
  });

  test('the smallest joist that reaches has both span and overhang', () => {
    expect(openedWith(FILE, {}).shown('Smallest that reaches')).toBe('2x8');
    expect(openedWith(FILE, { 'Deck depth': '9 ft' }).shown('Smallest that reaches')).toBe('2x8');
    const short = { 'Deck depth': '9 ft', 'Joist overhang': '12 in' };
    expect(openedWith(FILE, short).shown('Smallest that reaches')).toBe('2x6');
  });
});

describe('footings', () => {
  test('the largest of load on soil, spans and area is taken', () => {
    const notebook = openedWith(FILE, {});
    // 6 ft by half of 10 ft 6 in and 18 in of overhang.
    expect(notebook.figure('Post area')).toEqual(['sq ft', 6 * (5.25 + 1.5)]);
    expect(notebook.figure('Post load')).toEqual(['lb', 6 * 6.75 * 50]);
    expect(inches({}, 'Diameter by soil')).toBe(Math.ceil(Math.sqrt((40.5 * 50 * 4) / 1500 / Math.PI) * 12));
    expect(inches({}, 'Diameter by spans')).toBe(21);
    expect(inches({}, 'Diameter by area')).toBe(19);
    expect(notebook.figure('Footing diameter')).toEqual(['in', 21]);
  });

  test('heavier loads and softer ground make them larger than the tables do', () => {
    expect(inches({ 'Soil capacity': '1,000 psf', 'Live load': '100 psf' }, 'Footing diameter')).toBe(29);
  });

  test('bags fill every hole with its pad and its pier', () => {
    const notebook = openedWith(FILE, {});
    const pad = (Math.PI / 4) * 21 ** 2 * 8;
    const pier = (Math.PI / 4) * 12 ** 2 * (36 - 8 + 2);
    const bags = Math.ceil((3 * (pad + pier) * 1.1) / 1728 / 0.6);
    expect(notebook.figure('Bags')).toEqual(['bag', bags]);
    const [dug, back, left] = ['Soil dug', 'Soil filled back', 'Soil left over'].map((name) =>
      notebook.figure(name)[1],
    );
    expect(((dug ?? 0) - (back ?? 0)) * 1.25).toBeCloseTo(left ?? 0, 9);
  });
});

describe('free-standing', () => {
  const notebook = openedWith(FILE, { Attached: 'no', 'Frame height': '72 in' });
  test('there are two beams and nothing at the house', () => {
    expect(notebook.figure('Beams')[1]).toBe(2);
    expect(notebook.figure('Joist span')).toEqual(['ft', 9]);
    for (const name of ['Hangers', 'Ledger fasteners needed', 'Flashing pieces', 'Lateral ties']) {
      expect([name, notebook.figure(name)[1]]).toEqual([name, 0]);
    }
    expect(notebook.shown('Hang the ledger')).toBe('$0.00');
  });

  test('it is braced both ways, a deck on a ledger along the beam alone', () => {
    expect(notebook.figure('Braces')).toEqual(['brace', 8]);
    expect(openedWith(FILE, { 'Frame height': '72 in' }).figure('Braces')).toEqual(['brace', 2]);
    expect(openedWith(FILE, {}).figure('Braces')).toEqual(['brace', 0]);
  });
});

describe('odd sizes', () => {
  test('a frame hardly longer than its joists are apart stands on two posts', () => {
    const notebook = openedWith(FILE, { 'Deck length': '30 in', 'Post inset': '3 in' });
    expect(notebook.figure('Joists')).toEqual(['joist', 3]);
    expect(notebook.figure('Posts')).toEqual(['post', 2]);
  });

  test('a long beam is joined over posts', () => {
    const notebook = openedWith(FILE, { 'Deck length': '32 ft' });
    // Six feet between posts: two spans to a 16 ft board, five spans in a ply.
    expect(notebook.figure('Posts each')).toEqual(['post', 6]);
    expect(notebook.figure('Beam boards')).toEqual(['board', 3 * 2]);
  });

  test('written in metres it comes to the same frame', () => {
    const metric = { 'Deck length': '4.2672 m', 'Deck depth': '3.6576 m', 'Joist overhang': '457.2 mm' };
    for (const name of ['Joists', 'Posts', 'Bags', 'Joist boards', 'Framing cost']) {
      expect([name, openedWith(FILE, metric).figure(name)]).toEqual([
        name,
        openedWith(FILE, {}).figure(name),
      ]);
    }
  });
});

keepsItsPromises({
  file: FILE,
  limits: {
    Species: ['southern pine', 'douglas fir-larch', 'hem-fir', 'spruce-pine-fir'],
    'Joist spacing': ['12 in', '16 in', '24 in'],
    'Joist size': ['2x6', '2x8', '2x10', '2x12'],
    Fastener: ['lag screws', 'through-bolts', 'through-bolts with stacked washers'],
    Bag: ['40 lb', '50 lb', '60 lb', '80 lb', '90 lb'],
  },
  enough: [
    'joist boards times joist stock is at least joists times joist length',
    'rim boards times rim stock is at least deck length times 2',
    'beam boards times rim stock is at least deck length times plies times beams or not beam stock check',
    'bags times bag yield is at least concrete volume',
    'beam span is at most beam limit',
    'footing diameter is at least diameter by spans',
    'circle area for footing diameter is at least bearing area',
    'footing depth is at least frost depth',
    'screw boxes times 50 screws per box is at least ply screws',
    'nail boxes times 150 nails per box is at least nails for hardware',
    'post boards times post stock is at least posts times post height',
  ],
  mayBeNegative: ['Post room'],
  mayFindNoRow: [
    'Smallest that reaches',
    'Beam limit',
    'Diameter by spans',
    'Diameter by area',
    'Footing thickness',
    'Fastener spacing',
  ],
  grows: [
    { given: 'Deck length', never: ['Joists', 'Joist wood', 'Ledger fasteners needed', 'Posts', 'Deck area'] },
    { given: 'Deck depth', never: ['Joist span', 'Joist stock', 'Posts', 'Ledger fasteners needed'] },
    { given: 'Live load', never: ['Post load', 'Footing diameter', 'Bags'] },
    { given: 'Frost depth', never: ['Footing depth', 'Bags', 'Soil dug', 'Form tubes'] },
    { given: 'Frame height', never: ['Post height', 'Post stock', 'Braces'] },
    { given: 'Concrete waste', never: ['Bags', 'Concrete'] },
  ],
});

warnsWhere(FILE, {
  'Load check': { 'Snow load': '50 psf' },
  'Soil check': { 'Soil capacity': '1,200 psf' },
  'Joist check': { 'Deck depth': '14 ft' },
  'Overhang check': { 'Joist overhang': '24 in' },
  'Rim check': { 'Joist size': '2x6' },
  'Beam end check': { 'Post inset': '24 in' },
  'Seat check': { Beam: '3-2x10', 'Post size': '4x4' },
  'Room check': { 'Frame height': '20 in' },
  'Post check': { 'Frame height': '12 ft', 'Post size': '4x4' },
  'Band check': { 'Band is sound': 'no' },
  'Tie check': { 'Tie load': '750 lb per tie' },
  'Beam stock check': { Beam: '3-2x12', 'Deck depth': '6 ft', 'Deck length': '28 ft', 'Rim stock': '12 ft', Species: 'southern pine' },
});

test('the soil that the holes leave over is paid for, unless it stays', () => {
  const [, yards] = openedWith(FILE, {}).figure('Soil left over');
  expect(yards).toBeGreaterThan(0);
  expect(openedWith(FILE, {}).figure('Soil away')[1]).toBeCloseTo(yards * 38, 2);
  expect(openedWith(FILE, { 'Soil spread on site': 'yes' }).shown('Soil away')).toBe('$0.00');
});
