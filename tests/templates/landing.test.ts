// The landing: its heights, its bays and its boards on top; random ones, and each of its checks made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { openedWith, warnsWhere } from './warns.ts';

const FILE = 'landing.md';

keepsItsPromises({
  file: FILE,
  tables: {
    Bays: {
      rows: [1, 5],
      columns: {
        length: '3 ft up to 16 ft',
        width: '3 ft up to 16 ft',
        shared: '0 ft up to 3 ft',
        wall: '0 ft up to 3 ft',
        edge: '0 ft up to 6 ft',
      },
    },
  },
  enough: [
    'bags times bag yield is at least to order',
    'truck order is at least to order',
    'stone is at least loose stone at stone weight',
    'form boards times 12 ft is at least form length',
    'edge bars times 20 ft is at least total of edge in bays times 2',
    'anchor boxes times (75 anchors per box) is at least anchor count',
    'actual width of form size is at least thickness',
    'boarded is 0 or board order times board stock is at least total of board run in bays',
  ],
  grows: [
    { given: 'Climb', never: ['Riser count', 'Slab below the head'] },
    { given: 'Bays: length', never: ['Landing area', 'Stone', 'Form boards', 'Bags', 'Sleeper count', 'Sleeper lumber', 'Masonry screws', 'Bars', 'Board screws', 'Lay the boards'] },
    { given: 'Bays: width', never: ['Landing area', 'Fall', 'Bags', 'Masonry screws', 'Sleeper lumber', 'Mesh sheets'] },
    { given: 'Bays: edge', never: ['Edge volume', 'Edge steel', 'Bags', 'Truck order', 'Soil to dig'] },
    { given: 'Bays', never: ['Landing area', 'Sleeper count', 'Bags', 'Truck order', 'Bag way'] },
    { given: 'Edge depth', never: ['Edge volume', 'Bags', 'Dig'] },
  ],
});

warnsWhere(FILE, {
  'Door check': { 'Drop at a door': '8 in' },
  'Thickness check': { Thickness: '3 in' },
  'Room check': { 'Stair width': '7 ft' },
  'Slope check': { Slope: '3/8 in per ft' },
  'Fall check': { Slope: '1/16 in per ft' },
  'Frost check': { 'Frost depth': '3 ft' },
  'Outline check': { 'Bays: wall': '40 ft' },
  'Base check': { 'Base depth': '2 in' },
  'Bay check': { 'Bays: length': '16 ft', 'Bays: width': '9 ft' },
  'Post check': { 'Posts: hole': '6 in' },
});

describe('heights', () => {
  test('a drop of 15 in is two steps of 7 1/2 in', () => {
    const landing = openedWith(FILE, { Climb: '15 in' });
    expect(landing.figure('Riser count')).toEqual(['riser', 2]);
    expect(landing.figure('Unit rise')).toEqual(['in per riser', 7.5]);
  });

  test('the boards on top set the finished height, and the slab is poured lower by them', () => {
    const boards = openedWith(FILE, { Climb: '15 in' });
    expect(boards.figure('Build up')).toEqual(['in', 2.5]);
    expect(boards.figure('Slab below the head')).toEqual(['in', 17.5]);
    const bare = openedWith(FILE, { Climb: '15 in', 'Boards on top': 'no' });
    expect(bare.figure('Slab below the head')).toEqual(['in', 15]);
    for (const name of ['Sleeper lumber', 'Masonry screws', 'Sleeper tape', 'Lay sleepers', 'Landing boards', 'Board screws', 'Lay the boards']) {
      expect(bare.figure(name)).toEqual(['$', 0]);
    }
  });
});

describe('the boards on top', () => {
  test('are counted row by row, and a row that is longer than a board takes two', () => {
    const landing = openedWith(FILE, {});
    // Nine rows of 5 5/8 in on 4 ft, two of 6 ft off each board of 12 ft: five a bay, and 4% more.
    expect(landing.figure('Board order')).toEqual(['board', 11]);
    expect(landing.figure('Landing boards')).toEqual(['$', 11 * 23.4]);
    // Two screws at each of six sleepers in nine rows of two bays: 216 and 5%.
    expect(landing.figure('Board screws')).toEqual(['$', 38.5]);
    expect(openedWith(FILE, { 'Bays: length': '13 ft' }).figure('Board order')).toEqual(['board', 38]);
  });

  test('are left to the part that holds them, where one does', () => {
    const elsewhere = openedWith(FILE, { 'Boards counted': 'in another part' });
    for (const name of ['Landing boards', 'Board screws', 'Lay the boards']) {
      expect(elsewhere.figure(name)).toEqual(['$', 0]);
    }
    expect(elsewhere.figure('Sleeper lumber')[1]).toBeGreaterThan(0);
  });
});

describe('sleepers', () => {
  test('a sleeper of 4 ft has four screws, and none has less than three', () => {
    const landing = openedWith(FILE, {});
    // Six across 6 ft at 16 in, in each of two bays; three of 4 ft come off a 12 ft board.
    expect(landing.figure('Sleeper count')).toEqual(['sleeper', 12]);
    expect(landing.figure('Anchor boxes')).toEqual(['box', 1]);
    expect(landing.figure('Sleeper lumber')).toEqual(['$', 4 * 9.8]);
    const wide = openedWith(FILE, { 'Anchor spacing': '24 in', 'Bays: width': '3 ft' });
    const { id, table } = wide.cell('Bays');
    const [first] = wide.estimate.rows(id) ?? [];
    const place = table?.columns.findIndex(({ name }) => name === 'anchors') ?? -1;
    expect(wide.estimate.shown(first?.[place] ?? 0)?.text).toBe('18 anchors');
  });

  test('sleepers are butted where a board ends', () => {
    const landing = openedWith(FILE, { 'Bays: width': '14 ft' });
    // Twelve of 14 ft are 168 ft.
    expect(landing.figure('Sleeper lumber')).toEqual(['$', 137.2]);
  });
});

test('bays poured on days of their own have loads of their own, one pour has one', () => {
  const apart = openedWith(FILE, {});
  // Half a yard each, with the edge; half a yard is the least that holds 8 and 10 cubic feet with a tenth more.
  expect(apart.figure('Truck order')).toEqual(['cubic yd', 1]);
  expect(apart.figure('Load fees')).toEqual(['$', 270]);
  const at = openedWith(FILE, { 'One pour': 'yes' });
  expect(at.figure('Truck order')).toEqual(['cubic yd', 0.75]);
  expect(at.figure('Load fees')).toEqual(['$', 135]);
});
