// Concrete steps: their volume step by step, random heights and choices, and each of their checks made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { openedWith, warnsWhere } from './warns.ts';

const FILE = 'concrete-steps.md';

keepsItsPromises({
  file: FILE,
  enough: [
    'bags times (read makes off bag yields for bag bag size) is at least to order',
    'truck order is at least to order',
    'riser boards times 12 ft is at least riser count times stair width',
    'bars times bar stock is at least (slope bars times slope bar plus cross bars times cross bar)',
    'side sheets times 8 ft is at least total run times 2',
    'actual width of riser form is at least unit rise',
    'total of finished in risers is total rise',
  ],
  // A mark is rounded up or down.
  mayBeNegative: ['Risers: off'],
  grows: [
    { given: 'Height', never: ['Riser count', 'Steps volume', 'Side sheets', 'Riser boards', 'Bags', 'Truck order', 'Rail length', 'Faces'] },
    { given: 'Stair width', never: ['Footprint', 'Steps volume', 'Stone', 'Riser boards', 'Bars', 'Bags', 'Isolation foam'] },
    { given: 'Platform', never: ['Total run', 'Steps volume', 'Side sheets', 'Stakes', 'Bars', 'Bags'] },
    { given: 'Tread depth', never: ['Total run', 'Steps volume', 'Bags', 'Tread fall'] },
    { given: 'Footing depth', never: ['Footing volume', 'Bags', 'Soil away'] },
  ],
});

warnsWhere(FILE, {
  'Low check': { Height: '8 in', 'Riser limit': '7 in per riser', 'Finish below': '1/2 in' },
  'Flight check': { Height: '96 in' },
  'Width check': { 'Stair width': '34 in' },
  'Tread check': { 'Tread depth': '9 in' },
  'Comfort check': { 'Tread depth': '16 in' },
  'Platform check': { Platform: '2 ft' },
  'Pitch check': { 'Tread pitch': '3/8 in per ft' },
  'Riser check': { 'Riser limit': '8 in per riser', Height: '16 in' },
  'Even check': { 'Risers: mark': '7 in' },
  'Base check': { 'Base depth': '2 in' },
  'Frost check': { 'Frost depth': '3 ft' },
  'Cover check': { Cover: '2 in' },
  'Handrail check': { Height: '30 in', 'Handrail count': '0 rails' },
  'Guard check': { Height: '31 in' },
});

describe('step by step', () => {
  test('each tread stands on a block as high as its mark, the platform on one of the whole rise', () => {
    const steps = openedWith(FILE, {});
    // Of 7 in each, 11 in deep and 4 ft wide, and 3 ft at 21 in.
    const blocks = 48 * (11 * 7 + 11 * 14 + 36 * 21);
    expect(steps.figure('Steps volume')[1]).toBeCloseTo(blocks / 1728, 9);
    const set = 48 * (22 + 36) * 4;
    const footing = 48 * 24 * 12;
    expect(steps.figure('Concrete volume')[1]).toBeCloseTo((blocks + set + footing) / 1728, 9);
    expect(steps.figure('Bags')).toEqual(['bag', Math.ceil(((blocks + set + footing) * 1.1) / 1728 / 0.6)]);
  });

  test('tile on every tread takes off the first form and changes no other riser', () => {
    const steps = openedWith(FILE, { 'Finish on top': '3/4 in', 'Finish below': '1 in', Height: '22 in' });
    expect(steps.figure('First form')).toEqual(['in', 7.25]);
    expect(steps.figure('Highest riser')).toEqual(['in', 7]);
    expect(steps.figure('Riser spread')).toEqual(['in', 0]);
  });

  test('a form set by hand shows in the spread', () => {
    const steps = openedWith(FILE, {});
    steps.estimate.setRowCell(steps.cell('Risers').id, 0, 1, '7 1/2 in');
    // The one above it is lower by as much.
    expect(steps.figure('Riser spread')).toEqual(['in', 1]);
    expect(steps.holds('Even check')).toBe(false);
  });

  test('a riser of 7 1/2 in is not formed with a 2x8', () => {
    expect(openedWith(FILE, { Height: '22 1/2 in' }).shown('Riser form')).toBe('2x10');
    expect(openedWith(FILE, { Height: '21 in' }).shown('Riser form')).toBe('2x8');
  });

  test('one riser up to a slab that stands needs no steps', () => {
    const steps = openedWith(FILE, { Height: '7 in', Platform: '0 ft', 'At a door': 'no' });
    for (const name of ['Steps volume', 'Footing volume', 'Concrete volume', 'Side sheets']) {
      expect([name, steps.figure(name)[1]]).toEqual([name, 0]);
    }
  });
});
