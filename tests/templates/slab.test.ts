// The slab: bays as they are laid, random ones, and each of its checks made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { openedWith, warnsWhere } from './warns.ts';

const FILE = 'slab.md';

const BAYS = {
  rows: [1, 6],
  columns: {
    length: '3 ft up to 40 ft',
    width: '3 ft up to 40 ft',
    shared: '0 ft up to 3 ft',
    wall: '0 ft up to 3 ft',
  },
} as const;

keepsItsPromises({
  file: FILE,
  tables: {
    Bays: BAYS,
    Posts: {
      rows: [1, 3],
      columns: {
        post: ['4x4', '4x6', '6x6'],
        count: '0 posts up to 8 posts',
        hole: '8 in up to 18 in',
        deep: '0 in up to 48 in',
      },
    },
  },
  enough: [
    'bags times bag yield is at least to order',
    'truck order is at least to order',
    'stone is at least loose stone at stone weight',
    'form boards times 12 ft is at least form length',
    'loose stone is at least packed stone',
    'to order is at least concrete volume',
    '(mesh sheets times sheet length by sheet width) is at least (slab area times 0.5) or steel is not mesh',
    'actual width of form size is at least thickness',
  ],
  grows: [
    {
      given: 'Bays: length',
      never: ['Slab area', 'Soil to dig', 'Stone', 'Form boards', 'Stakes', 'Mesh sheets', 'Bars', 'Chairs', 'Bags', 'Truck order', 'Slab weight', 'Set forms'],
    },
    {
      given: 'Bays: width',
      never: ['Slab area', 'Soil to dig', 'Stone', 'Form boards', 'Stakes', 'Mesh sheets', 'Bars', 'Chairs', 'Bags', 'Truck order', 'Fall'],
    },
    { given: 'Bays', never: ['Slab area', 'Stone', 'Mesh sheets', 'Bars', 'Chairs', 'Bags', 'Truck order', 'Isolation joint', 'Joint length'] },
    { given: 'Thickness', never: ['Bags', 'Truck order', 'Joint limit', 'Joint depth', 'Soil to haul'] },
    { given: 'Base depth', never: ['Stone', 'Soil away', 'Stone layers', 'Dig'] },
    { given: 'Waste', never: ['Bags', 'Truck order', 'Mixing water'] },
    { given: 'Posts: deep', never: ['Holes', 'Bags'] },
  ],
});

warnsWhere(FILE, {
  'Thickness check': { Thickness: '3 in' },
  'Fall check': { Slope: '1/16 in per ft' },
  'Outline check': { 'Bays: wall': '40 ft' },
  'Base check': { 'Base depth': '2 in' },
  'Bay check': { 'Bays: length': '16 ft', 'Bays: width': '9 ft' },
  'Post check': { 'Posts: hole': '6 in' },
});

describe('as it is laid', () => {
  const one = { 'Bays: shared': '0 ft', 'Bays: wall': '0 ft' };
  const alone = (written: Readonly<Record<string, string>>) => {
    const notebook = openedWith(FILE, { ...one, ...written });
    notebook.estimate.removeRow(notebook.cell('Bays').id, 1);
    return notebook;
  };

  test('a slab of one bay is a slab', () => {
    const slab = alone({ 'Bays: length': '12 ft', 'Bays: width': '10 ft' });
    expect(slab.figure('Slab area')).toEqual(['sq ft', 120]);
    expect(slab.figure('Outline')).toEqual(['ft', 44]);
    // 13 ft by 11 ft of stone, 7 in deep: 83.42 cubic feet in the ground.
    expect(slab.figure('Base area')).toEqual(['sq ft', 143]);
    expect(slab.figure('Soil to dig')[1]).toBeCloseTo((143 * 7) / 12 / 27, 9);
    expect(slab.figure('Soil to haul')[1]).toBeCloseTo(((143 * 7) / 12 / 27) * 1.25, 9);
    expect(slab.figure('Bags')).toEqual(['bag', 74]);
  });

  test('two bays that touch have the outline and the stone of one', () => {
    const whole = alone({ 'Bays: length': '20 ft', 'Bays: width': '8 ft' });
    const halves = openedWith(FILE, { ...one, 'Bays: length': '10 ft', 'Bays: width': '8 ft' });
    halves.estimate.setRowCell(halves.cell('Bays').id, 1, 3, '8 ft');
    for (const name of ['Slab area', 'Outline', 'Base area', 'Stone', 'Bags']) {
      expect(halves.figure(name)).toEqual(whole.figure(name));
    }
    // The side they share is formed once where one is poured after the other.
    expect(halves.figure('Form length')[1] - whole.figure('Form length')[1]).toBe(8);
    halves.estimate.setFormula(halves.cell('One pour').id, 'yes');
    expect(halves.figure('Form length')).toEqual(whole.figure('Form length'));
  });

  test('mesh sheets are counted as laid with their laps, turned where that takes fewer', () => {
    // 12 ft less 2 in at each edge is 11 ft 8 in: 10 ft and 9 ft 4 in more; 10 ft across is 9 ft 8 in: 5 ft, 4 ft 4 in, 4 in.
    const slab = alone({ 'Bays: length': '12 ft', 'Bays: width': '10 ft' });
    // Turned: 11 ft 8 in is three of 5 ft, 9 ft 8 in is one of 10 ft.
    expect(slab.figure('Mesh sheets')[1]).toBe(3);
    const narrow = alone({ 'Bays: length': '3 ft', 'Bays: width': '3 ft' });
    expect(narrow.figure('Mesh sheets')[1]).toBe(1);
  });

  test('bars longer than the stock are lapped, shorter ones are cut from it', () => {
    const steel = { Steel: 'bars', 'Bar spacing': '18 in' };
    // 9 ft 8 in long: two from a bar; along 11 ft 8 in: 9 of them; the others 11 ft 8 in, 8 of them, one from a bar.
    const short = alone({ ...steel, 'Bays: length': '12 ft', 'Bays: width': '10 ft' });
    expect(short.figure('Bars')[1]).toBe(5 + 8);
    // 39 ft 8 in with laps of 20 in: 20 ft, 18 ft 4 in, and a third for the last 16 in.
    const long = alone({ ...steel, 'Bays: length': '40 ft', 'Bays: width': '10 ft' });
    expect(long.figure('Bars')[1]).toBe(3 * 8 + 14);
    expect(long.figure('Bar weight')).toEqual(['lb', (3 * 8 + 14) * 20 * 0.668]);
  });

  test('the cheaper of truck and bags is shown and ordered, and either may be chosen', () => {
    const small = alone({ 'Bays: length': '3 ft', 'Bays: width': '3 ft' });
    expect(small.shown('Cheaper')).toBe('bags');
    expect(small.shown('Comes by')).toBe('bags');
    expect(small.figure('Mixing water')[1]).toBe(small.figure('Bags')[1] * 0.75);
    const large = alone({ 'Bays: length': '20 ft', 'Bays: width': '20 ft' });
    expect(large.shown('Comes by')).toBe('truck');
    // 5.43 yards and no short load: 5.5 yards at $172.
    expect(large.shown('Concrete')).toBe('$946.00');
    large.estimate.setFormula(large.cell('Ordered by').id, 'bags');
    expect(large.shown('Comes by')).toBe('bags');
    expect(large.shown('Concrete')).toBe(large.shown('Bag concrete'));
    expect(large.figure('Mixer')).toEqual(['$', 68]);
  });

  test('a post in its hole takes its own room off the concrete', () => {
    const slab = openedWith(FILE, { 'Posts: post': '6x6', 'Posts: count': '26 posts', 'Posts: hole': '8 in', 'Posts: deep': '24 in' });
    const holes = (26 * Math.PI * 16 * 24) / 1728;
    const posts = (26 * 5.5 * 5.5 * (24 + 4)) / 1728;
    expect(slab.figure('Holes')[1]).toBeCloseTo(holes, 9);
    expect(slab.figure('Concrete volume')[1]).toBeCloseTo(56 + holes - posts, 9);
  });
});
