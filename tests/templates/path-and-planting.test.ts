// Path, planting and turf: pavers, plants and rolls laid one by one, random sizes and choices, and each check made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { openedWith, warnsWhere } from './warns.ts';

const FILE = 'path-and-planting.md';

keepsItsPromises({
  file: FILE,
  tables: {
    Plants: {
      rows: [1, 4],
      columns: {
        'patch length': '6 in up to 40 ft',
        'patch width': '6 in up to 10 ft',
        spacing: '6 in up to 8 ft',
      },
    },
  },
  enough: [
    'Path path soil loose is at least path dig',
    'Path path base loose is at least path base packed',
    'Path path base order is at least path base loose at stone weight',
    'Path gravel order is at least path area by surface depth at stone weight',
    'Path path fabric times 50 ft is at least path length',
    'Path edging pieces times 8 ft is at least edging length',
    'Path pavers laid times paver length by paver width is at least path area',
    'Path paver order is at least pavers laid',
    'Path bedding sand is at least path area by bedding depth',
    'roll order times roll width by roll length is at least turf area',
    'bed soil is at least bed area by bed soil depth',
    'turf soil is at least turf area by turf soil depth',
    'mulch times 2 cubic ft is at least bed area by mulch depth',
    'plant count is at least total of count in plants',
    'bed soil out is at least bed dig',
  ],
  grows: [
    {
      given: 'Path length',
      never: ['Path area', 'Path dig', 'Path soil loose', 'Path base order', 'Gravel order', 'Paver order', 'Bedding sand', 'Joint sand', 'Path fabric', 'Edging pieces', 'Edging stakes', 'Path cost'],
    },
    { given: 'Path width', never: ['Path area', 'Path fall', 'Path base order', 'Gravel order', 'Paver order', 'Joint sand', 'Path fabric', 'Path cost'] },
    { given: 'Path base depth', never: ['Path dig', 'Path base order', 'Path soil loose', 'Path cost'] },
    { given: 'Path allowance', never: ['Path subcontract', 'Path cost'] },
    { given: 'Bed length', never: ['Bed area', 'Bed soil', 'Mulch', 'Bed soil out', 'Planting cost'] },
    { given: 'Mulch depth', never: ['Mulch'] },
    { given: 'Plants', never: ['Plant count', 'Plant material', 'Set the plants'] },
    { given: 'Plants: patch length', never: ['Plant count', 'Plant material'] },
    { given: 'Turf length', never: ['Turf area', 'Rolls laid', 'Roll order', 'Turf soil', 'Starter', 'Planting cost'] },
    { given: 'Turf width', never: ['Turf area', 'Turf rows', 'Roll order', 'Turf soil'] },
  ],
});

warnsWhere(FILE, {
  'Width check': { 'Path width': '30 in' },
  'Bedding check': { 'Bedding depth': '2 in' },
  'Mulch check': { 'Mulch depth': '6 in' },
});

describe('who builds the path', () => {
  const lines = ['Path stone', 'Path gravel', 'Path pavers', 'Path sand', 'Fabric', 'Edging', 'Path soil away', 'Dig the path', 'Pack the base', 'Rake the gravel', 'Lay the pavers', 'Compactor'];
  const paid = (written: Readonly<Record<string, string>>) => {
    const path = openedWith(FILE, written);
    return { path, some: lines.filter((name) => path.figure(name)[1] > 0) };
  };

  test('by own work a gravel path pays for gravel and no paver, a paved one the other way', () => {
    const gravel = paid({ 'Path surface': 'gravel' });
    expect(gravel.some).toEqual(lines.filter((name) => !/paver|sand/.test(name)));
    const paved = paid({ 'Path surface': 'pavers' });
    expect(paved.some).toEqual(lines.filter((name) => !/gravel/.test(name)));
    expect(gravel.path.figure('Path subcontract')[1]).toBe(0);
  });

  test('by a subcontract only the allowance is paid, and by nobody nothing', () => {
    const others = paid({ 'Path by': 'subcontract', 'Path allowance': '$2,345' });
    expect(others.some).toEqual([]);
    expect(others.path.shown('Path cost')).toBe('$2,345.00');
    expect(paid({ 'Path by': 'nobody' }).path.shown('Path cost')).toBe('$0.00');
  });

  test('beds and turf are each own work, an allowance or nothing', () => {
    const cost = (beds: string, turf: string) =>
      openedWith(FILE, { 'Planting by': beds, 'Turf by': turf, 'Planting allowance': '$800', 'Turf allowance': '$70' }).shown('Planting cost');
    expect(cost('subcontract', 'subcontract')).toBe('$870.00');
    expect(cost('nobody', 'subcontract')).toBe('$70.00');
    expect(cost('nobody', 'nobody')).toBe('$0.00');
  });
});

describe('as it is laid', () => {
  test('pavers lie in rows, the last of each row cut', () => {
    const path = openedWith(FILE, { 'Path surface': 'pavers', 'Path length': '30 ft', 'Path width': '45 in' });
    let pavers = 0;
    for (let row = 0; row < 360; row += 4) for (let at = 0; at < 45; at += 8) pavers++;
    expect(path.figure('Pavers laid')).toEqual(['paver', pavers]);
    expect(path.figure('Paver order')).toEqual(['paver', Math.ceil((pavers * 105) / 100)]);
  });

  test('a path narrower than a paver has one in every row', () => {
    const path = openedWith(FILE, { 'Path surface': 'pavers', 'Path width': '18 in', 'Paver length': '24 in' });
    expect(path.figure('Row pavers')).toEqual(['', 1]);
    expect(path.figure('Pavers laid')).toEqual(['paver', 90]);
  });

  test('turf goes on from row to row', () => {
    const turf = openedWith(FILE, { 'Turf length': '23 ft', 'Turf width': '7 ft' });
    // Four rows of 23 ft are 92 ft, and a roll is 5 ft.
    expect(turf.figure('Rolls laid')).toEqual(['roll', 19]);
  });

  test('plants stand at their spacing, one at least in the narrowest patch', () => {
    const beds = openedWith(FILE, { 'Plants: patch length': '6 in', 'Plants: patch width': '6 in', 'Plants: spacing': '4 ft', 'Plant losses': '0%' });
    expect(beds.figure('Plant count')).toEqual(['plant', 3]);
  });
});

describe('three volumes of the same ground', () => {
  test.each([
    ['sand', 1.11],
    ['loam', 1.25],
    ['clay', 1.43],
    ['blasted rock', 1.5],
  ])('%s swells to %s when it is dug', (ground, loose) => {
    const path = openedWith(FILE, { Ground: ground, 'Bed ground': ground });
    // 30 ft by 4 ft by 6 in.
    expect(path.figure('Path dig')[1]).toBeCloseTo(60 / 27, 9);
    expect(path.figure('Path soil loose')[1]).toBeCloseTo((60 * loose) / 27, 9);
    expect(path.figure('Bed soil out')[1]).toBeCloseTo((24 * loose) / 27, 9);
  });

  test('packed stone is bought loose and by weight', () => {
    const path = openedWith(FILE, {});
    expect(path.figure('Path base packed')[1]).toBeCloseTo(40 / 27, 9);
    expect(path.figure('Path base loose')[1]).toBeCloseTo(48 / 27, 9);
    // 1.78 cubic yards at 1.4 tons are 2.49 tons.
    expect(path.figure('Path base order')).toEqual(['ton', 2.5]);
  });

  test('sizes in metres come to the same', () => {
    const metric = openedWith(FILE, { 'Path length': '9.144 m', 'Path width': '1219.2 mm' });
    for (const name of ['Path base order', 'Gravel order', 'Pavers laid', 'Path cost']) {
      expect([name, metric.shown(name)]).toEqual([name, openedWith(FILE, {}).shown(name)]);
    }
  });
});

test('the edging has a stake at either end of both sides', () => {
  for (const [length, stakes] of [[30, 32], [24, 26], [31, 34]] as const) {
    const path = openedWith(FILE, { 'Path length': `${length} ft` });
    expect(path.figure('Edging stakes')).toEqual(['stake', stakes]);
  }
});
