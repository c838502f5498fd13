// The low wall: units laid one by one, random runs and heights, and each of its checks made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { openedWith, warnsWhere } from './warns.ts';

const FILE = 'low-wall.md';

keepsItsPromises({
  file: FILE,
  tables: { Runs: { rows: [1, 4], columns: { length: '6 in up to 60 ft' } } },
  enough: [
    'built height is at least wall height',
    'built height is less than wall height plus 1 course times unit height or seen courses is 1 course',
    'units laid times unit length is at least run length times courses divided by 1 course',
    'unit order is at least units laid',
    'cuts is at most units laid',
    'corner blocks is at least corners times (courses divided by 1 course), as blocks',
    'cap order times cap length is at least run length',
    'tubes times 10 fl oz is at least wall length times 2 by circle area for bead diameter',
    'base order is at least base volume at stone weight',
    'drain order is at least drain volume at stone weight',
    'pipe pieces times 10 ft is at least pipe length',
    'fabric rolls times 50 ft is at least wall length times fabric strips',
    'fabric strips times 6 ft is at least fabric width',
    'spoil heap is 0 cubic ft or soil to bring is 0 cubic ft',
    'soil to bring is at least bank for fill minus dug in bank',
  ],
  grows: [
    {
      given: 'Wall height',
      never: ['Seen courses', 'Built height', 'Judged height', 'Unit order', 'Corner blocks', 'Lean', 'Drain order', 'Fabric rolls', 'Packed fill', 'Weight to set', 'Face area'],
    },
    {
      given: 'Runs: length',
      never: ['Wall length', 'Unit order', 'Cap order', 'Tubes', 'Base order', 'Drain order', 'Outlets', 'Pipe pieces', 'Fabric rolls', 'Dug in bank', 'Packed fill', 'Lay the base'],
    },
    { given: 'Runs', never: ['Unit order', 'Cap order', 'Tubes', 'Base order', 'Drain order', 'Pipe pieces', 'Dug in bank'] },
    { given: 'Corners', never: ['Corner blocks', 'Cap order', 'Wall length', 'Base order', 'Drain order', 'Pipe pieces'] },
    { given: 'Buried courses', never: ['Unit order', 'Judged height', 'Trench depth', 'Dug in bank', 'Drain order'] },
    { given: 'Base depth', never: ['Base order', 'Judged height', 'Dug in bank'] },
    { given: 'Drain width', never: ['Drain order', 'Fabric rolls', 'Dug in bank'] },
    { given: 'Bank height', never: ['Dug in bank', 'Spoil heap', 'Dig the trench'] },
    { given: 'Unit extra', never: ['Unit order', 'Weight to set'] },
  ],
});

warnsWhere(FILE, {
  'Bury check': { 'Buried courses': '0 courses' },
  'Height check': { 'Wall height': '42 in' },
  'Lean check': { Setback: '1/4 in per course' },
  'Drain check': { 'Drain width': '8 in' },
  'Base check': { 'Base depth': '4 in' },
});

describe('the height that asks for an engineer', () => {
  const judged = (written: Readonly<Record<string, string>>) => openedWith(FILE, written).holds('Height check');

  test('is measured from the bottom of the base and holds on level ground up to 4 ft', () => {
    // Five courses of 6 in and a cap of 3 in seen, one buried, 6 in of base: 45 in. One more: 51 in.
    expect(openedWith(FILE, { 'Wall height': '33 in' }).figure('Judged height')).toEqual(['in', 45]);
    expect(judged({ 'Wall height': '33 in' })).toBe(true);
    expect(judged({ 'Wall height': '33 1/16 in' })).toBe(false);
  });

  test('is lowered by a slope above and leaves nothing where a load stands above', () => {
    expect(judged({ 'Wall height': '9 in', 'Ground above': 'slope' })).toBe(true);
    expect(judged({ 'Wall height': '15 in', 'Ground above': 'slope' })).toBe(false);
    expect(judged({ 'Wall height': '9 in', 'Ground above': 'load' })).toBe(false);
    expect(judged({ 'Wall height': '42 in', 'Level limit': '36 in' })).toBe(false);
  });

  test('holds whatever the height once an engineer has drawn it', () => {
    expect(judged({ 'Wall height': '42 in', 'Ground above': 'load', Engineered: 'yes' })).toBe(true);
  });
});

/** Units and cuts of one course, laid from the left: a whole or a half first, the last one cut where it is too long. */
function laid(length: number, unit: number, startsWithHalf: boolean): { units: number; cuts: number } {
  let [units, cuts, at] = [0, 0, 0];
  if (startsWithHalf) {
    at = unit / 2;
    units++;
    cuts++;
  }
  while (at < length) {
    units++;
    if (at + unit > length) cuts++;
    at += unit;
  }
  return { units, cuts };
}

describe('as it is laid', () => {
  test.each([240, 248, 100, 16, 12, 8, 6, 721, 333.5])('%s in of wall, course by course', (length) => {
    for (const courses of [1, 2, 5, 6]) {
      const wall = openedWith(FILE, {
        'Runs: length': `${length} in`,
        'Buried courses': '0 courses',
        'Wall height': `${courses * 6 + 3} in`,
      });
      let [units, cuts] = [0, 0];
      for (let course = 0; course < courses; course++) {
        const one = laid(length, 16, course % 2 === 1);
        units += one.units;
        cuts += one.cuts;
      }
      // A second course no longer than its half is that half, cut to length: no second unit.
      expect([length, courses, wall.figure('Units laid')[1]]).toEqual([length, courses, units]);
      if (length > 8) expect([length, courses, wall.figure('Cuts')[1]]).toEqual([length, courses, cuts]);
    }
  });

  test('a wall of one course has one course, one cap row and no lean', () => {
    const wall = openedWith(FILE, { 'Wall height': '6 in', 'Buried courses': '0 courses' });
    expect(wall.figure('Courses')).toEqual(['course', 1]);
    expect(wall.figure('Built height')).toEqual(['in', 9]);
    expect(wall.figure('Units laid')).toEqual(['unit', 15]);
    expect(wall.figure('Lean')).toEqual(['in', 0]);
  });

  test('each corner adds a block a course and two caps, and its faces to the trench', () => {
    const straight = openedWith(FILE, {});
    const turned = openedWith(FILE, { Corners: '2 corners' });
    expect(turned.figure('Corner blocks')).toEqual(['block', 10]);
    expect(turned.figure('Units laid')).toEqual(straight.figure('Units laid'));
    expect(turned.figure('Wall length')[1] - straight.figure('Wall length')[1]).toBe(4);
    // 15 caps and 4 mitred ones, with 3%: 19.57.
    expect(turned.figure('Cap order')).toEqual(['cap', 20]);
  });

  test('sizes in metres come to the same as in feet', () => {
    const metric = openedWith(FILE, { 'Runs: length': '6.096 m', 'Wall height': '609.6 mm', 'Drain width': '304.8 mm' });
    const feet = openedWith(FILE, {});
    for (const name of ['Unit order', 'Cap order', 'Base order', 'Drain order', 'Pipe pieces', 'Wall cost']) {
      expect([name, metric.shown(name)]).toEqual([name, feet.shown(name)]);
    }
  });
});

describe('the soil', () => {
  test('is dug, packed back and hauled as three volumes', () => {
    const wall = openedWith(FILE, {});
    // A trench of 21 ft by 28 in by 12 in, and 20 ft by 28 in by 18 in of bank.
    const dug = 21 * (28 / 12) * 1 + 20 * (28 / 12) * 1.5;
    // 6 in behind the drain up to the cap, 6 in over the drain, 6 in by 6 in before the buried course.
    const packed = 20 * 0.5 * (24 / 12) + 20 * 1 * 0.5 + 20 * 0.5 * 0.5;
    expect(wall.figure('Dug in bank')[1]).toBeCloseTo(dug, 9);
    expect(wall.figure('Packed fill')[1]).toBeCloseTo(packed, 9);
    expect(wall.figure('Spoil heap')[1]).toBeCloseTo(((dug - packed / 0.9) * 1.25) / 27, 9);
    expect(wall.figure('Soil to bring')[1]).toBe(0);
  });

  test('is brought where more is filled than was dug', () => {
    const wall = openedWith(FILE, { 'Bank height': '0 in', 'Room behind': '36 in', 'Wall height': '33 in' });
    expect(wall.figure('Spoil heap')[1]).toBe(0);
    const [, brought] = wall.figure('Soil to bring');
    expect(brought).toBeGreaterThan(0);
    expect(brought * 2).toBe(Math.round(brought * 2));
  });
});
