import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Slab length: 12 ft',
  'Slab volume: 16 cubic feet',
  'Truck step: 1/4 cubic yard',
  'Cost: $12.345',
  'Price: $4.236 per sq ft',
  'Waste: 12.4%',
  'Fall: 1/4 in per ft',
  'Unit rise: 52 in divided by 7 risers',
  'Species: "hem-fir"',
);

describe('counts and plain numbers are rounded to whole ones', () => {
  it.each([
    ['2.3 bags rounded up', '3 bags'],
    ['2.5 rounded', '3'],
    ['2.7 rounded down', '2'],
    ['12 ft divided by 1 m, rounded down', '3'],
    ['7 bags divided by 2 posts, rounded up', '4 bags per post'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });
});

describe('everything is rounded to a step that measures the same', () => {
  it.each([
    ['0.6 cubic yards rounded up to the next 1/4 cubic yard', '0.75 cubic yards'],
    ['slab volume rounded up to the next 1/4 yd', '0.75 cubic yards'],
    ['slab volume rounded up to the next truck step', '0.75 cubic yards'],
    ['slab volume in cubic yards, rounded down to the next 1/4 yd', '0.5 cubic yards'],
    ['cost rounded to the nearest cent', '$12.35'],
    ['cost rounded up to the next $5', '$15.00'],
    ['price rounded to the nearest cent', '$4.24 per sq ft'],
    ['waste rounded to the nearest 1%', '12%'],
    ['unit rise rounded to the nearest 1/16 in', '7 7/16 in per riser'],
    ['2.3 rounded up to the next 0.5', '2.5'],
    ['47 boards rounded up to the next 5', '50 boards'],
    ['2.1 hours rounded up to the next 1/4 hour', '2.25 hours'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('a loose yard is read as the yard that fits, with a note', () => {
    expect(at.read('slab volume rounded up to the next 1/4 yd').notes).toEqual([
      '1/4 yd is read as 1/4 cubic yard.',
    ]);
  });

  it('works in the finer scale', () => {
    const { plan } = nodeOf(at, 'slab volume rounded up to the next 1/4 cubic yard');
    expect(plan.op === 'round' && plan.step?.op).toBe('constant');
  });
});

describe('without a step that fits', () => {
  it.each([
    ['12 ft rounded up', 'rounded up', '12 ft rounded up to the next 1 ft'],
    ['slab length rounded', 'rounded', 'slab length rounded to the nearest 1/16 in'],
    [
      'slab volume rounded down',
      'rounded down',
      'slab volume rounded down to the next 1 cubic foot',
    ],
    ['cost rounded up', 'rounded up', 'cost rounded up to the next $1'],
    ['cost rounded', 'rounded', 'cost rounded to the nearest cent'],
    ['2.1 hours rounded up', 'rounded up', '2.1 hours rounded up to the next 1/4 hour'],
    ['waste rounded up', 'rounded up', 'waste rounded up to the next 1%'],
    ['price rounded', 'rounded', 'price rounded to the nearest cent'],
  ])('%s asks for one', (formula, spot, fix) => {
    expect(refused(at, formula)).toMatchObject({
      code: 'no-rounding-step',
      spots: [spot],
      fixes: [fix],
    });
  });

  it.each(['slab length rounded up to the next $1', 'slab volume rounded up to the next 1 ft'])(
    'a step of something else is refused: %s',
    (formula) => {
      expect(refused(at, formula).code).toBe('wrong-rounding-step');
    },
  );

  it('a bare step beside a length asks', () => {
    expect(refused(at, 'slab length rounded up to the next 2')).toMatchObject({
      code: 'bare-number',
      fixes: ['slab length rounded up to the next 2 ft', 'slab length rounded up to the next 2 in'],
    });
    expect(at.shown('cost rounded to the nearest 5')).toBe('$10.00');
  });

  it('a text is not rounded', () => {
    expect(refused(at, 'species rounded up').code).toBe('not-an-amount');
  });
});
