// Railings of one run, of stairs, of gaps set by hand, with random runs, and with each check made to say no.
import { describe, expect, test } from 'vitest';
import type { Opened } from '../published/opened.ts';
import { keepsItsPromises } from './random-givens.ts';
import { type Written, openedWith, warnsWhere } from './warns.ts';

const FILE = 'railing.md';

/** What stands in a column of the runs, as it is shown. */
function column(notebook: Opened, name: string): readonly (string | undefined)[] {
  const { id, table } = notebook.cell('Runs');
  const place = table?.columns.findIndex((c) => c.name === name) ?? -1;
  return (notebook.estimate.rows(id) ?? []).map((row) => notebook.estimate.shown(row[place] ?? 0)?.text);
}

/** Only the first of the runs, with these in its cells. */
function oneRun(level: string, rise = '0 in', written: Written = {}): Opened {
  const notebook = openedWith(FILE, written);
  const { estimate } = notebook;
  const { id } = notebook.cell('Runs');
  for (let row = 4; row > 0; row--) expect(estimate.removeRow(id, row)).toHaveProperty('change');
  expect(estimate.setRowCell(id, 0, 1, level)).toHaveProperty('change');
  expect(estimate.setRowCell(id, 0, 2, rise)).toHaveProperty('change');
  return notebook;
}

describe('runs', () => {
  test('a corner has one post, though two runs end there', () => {
    const notebook = openedWith(FILE, {});
    expect(column(notebook, 'posts')).toEqual(['3 posts', '2 posts', '3 posts', '1 post', '1 post']);
    expect(notebook.figure('Post count')).toEqual(['post', 10]);
    expect(notebook.figure('Corner posts')).toEqual(['post', 3]);
    expect(notebook.figure('Anchors')).toEqual(['anchor', 13]);
  });

  test('balusters are added one by one until the gap is small enough', () => {
    for (const [opening, limit, rise] of [[68.5, 4, 0], [40.5, 4.375, 30], [20.5, 4, 0]] as const) {
      let count = 0;
      while ((opening - count * 1.5) / (count + 1) >= limit) count++;
      const notebook = oneRun(`${opening + 3.5} in`, `${rise} in`);
      expect(notebook.figure('Openings')[1]).toBe(1);
      expect(notebook.figure('Baluster count')).toEqual(['baluster', count]);
    }
  });

  test('a stair run has its posts and rails along the slope and its balusters on the level', () => {
    const notebook = oneRun('8 ft', '6 ft');
    expect(column(notebook, 'slope')).toEqual(['10 ft']);
    expect(column(notebook, 'spaces')).toEqual(['2']);
    expect(column(notebook, 'opening')).toEqual(['3 ft 8 1/2 in']);
    // 44 1/2 in on the level is a quarter more along a slope of 3 in 4, and 4 in for the ends.
    expect(notebook.estimate.draft(notebook.cell('Drawn run').id, 'greatest piece in runs, in inches').shown?.exact).toBe('59.625');
  });

  test('a run shorter than a gap has two posts and no baluster', () => {
    const notebook = oneRun('7 in');
    expect(notebook.figure('Post count')).toEqual(['post', 2]);
    expect(notebook.figure('Baluster count')).toEqual(['baluster', 0]);
    expect(notebook.shown('Gap check')).toBe('yes');
  });

  test('a number of balusters set in a row is tried against the ball', () => {
    const notebook = openedWith(FILE, { 'Runs: balusters': '11 balusters' });
    expect(notebook.shown('Gap check')).toBe('no');
  });

  test('panels take the place of rails and balusters', () => {
    const notebook = openedWith(FILE, { Infill: 'panels' });
    expect(notebook.figure('Panels')).toEqual(['panel', 8]);
    for (const name of ['Rails', 'Balusters', 'Set the balusters']) {
      expect([name, notebook.shown(name)]).toEqual([name, '$0.00']);
    }
  });
});

describe('the bolts of a post', () => {
  test('the pull is the push by its lever over the distance of the bolts', () => {
    const notebook = openedWith(FILE, {});
    expect(notebook.figure('Bolt pull')[1]).toBeCloseTo((200 * (36 + 1 + 7.25)) / (7.25 - 2), 9);
  });

  test('on a rim of 2×8 they are too close together', () => {
    expect(openedWith(FILE, { 'Lower bolt': '5 1/4 in' }).shown('Pull check')).toBe('no');
  });

  test('on a rim of 2×8 the bolt of a 2×10 would stand in its very edge, and two inches higher it does not', () => {
    expect(openedWith(FILE, {}).shown('Bolt check')).toBe('yes');
    const lower = openedWith(FILE, { Rim: '2x8' });
    expect(lower.figure('Rim depth')).toEqual(['in', 7.25]);
    expect(lower.shown('Bolt check')).toBe('no');
    expect(openedWith(FILE, { Rim: '2x8', 'Lower bolt': '5 1/4 in' }).shown('Bolt check')).toBe('yes');
  });
});

test('a low deck asks for no height, and any height will do', () => {
  const notebook = openedWith(FILE, { Drop: '27 in', 'Rail height': '34 in' });
  expect(notebook.figure('Height asked for')).toEqual(['in', 0]);
  expect(notebook.shown('Height check')).toBe('yes');
});

test('written in metres it comes to the same railing', () => {
  const metric = { 'Runs: level': '3.6576 m', 'Post spacing': '1.8288 m', 'Baluster width': '38.1 mm' };
  const inches = { 'Runs: level': '12 ft' };
  for (const name of ['Post count', 'Baluster count', 'Rail boards', 'Railing cost']) {
    expect([name, openedWith(FILE, metric).figure(name)]).toEqual([
      name,
      openedWith(FILE, inches).figure(name),
    ]);
  }
});

keepsItsPromises({
  file: FILE,
  tables: {
    Runs: {
      rows: [1, 6],
      columns: { level: '6 in up to 24 ft', rise: '0 in up to 6 ft', shared: '0 posts up to 1 post' },
    },
  },
  limits: { 'Drawn run': ['left side'], 'Rail stock': '10 ft up to 16 ft' },
  enough: [
    'least room in runs is more than 0 in or infill is panels',
    'rail boards times rail stock is at least total of opening in runs or infill is panels',
    'cap boards times cap stock is at least run length',
    'post timbers times post stock is at least post count times post cut',
    'baluster order is at least baluster count',
    'screw boxes times 350 screws per box is at least screw count',
    'greatest slope in runs is at most run length',
  ],
  mayBeNegative: ['Runs: room'],
  grows: [
    { given: 'Runs', never: ['Run length', 'Openings', 'Cap boards', 'Rail boards', 'Railing cost'] },
    { given: 'Runs: level', never: ['Run length', 'Openings', 'Post count', 'Cap boards'] },
    { given: 'Drop', never: ['Height asked for'] },
    { given: 'Rail height', never: ['Bolt pull', 'Post cut', 'Baluster length', 'Post timbers'] },
  ],
});

warnsWhere(FILE, {
  'Height check': { 'Rail height': '34 in' },
  'Stair height check': { 'Stair rail height': '39 in' },
  'Bottom check': { 'Bottom gap': '4 in' },
  'Triangle check': { 'Stair triangle': '6 in' },
  'Spacing check': { 'Post spacing': '8 ft' },
  'Room check': { 'Runs: level': '3 1/2 in' },
  'Gap check': { 'Runs: balusters': '9 balusters' },
  'Push check': { 'Push at the top': '150 lb' },
  'Bolt check': { Rim: '2x8' },
  'Pull check': { 'Lower bolt': '5 in' },
  'Baluster check': { 'Rail height': '42 in' },
  'Panel check': { Infill: 'panels', 'Panel length': '4 ft' },
});
