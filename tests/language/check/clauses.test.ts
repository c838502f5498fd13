import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Slab length: 12 ft',
  'Slab area: 48 sq ft',
  'Slab volume: 16 cubic feet',
  'Unit rise: 52 1/2 in divided by 7 risers',
  'Steps: 52 1/2 in divided by 7 3/4 in, rounded up',
  'Bags: 40 bags',
  'Price: $145 per cubic yard',
  'Hours: 90 min',
  'Species: "hem-fir"',
  'Yards: slab volume in cubic yards',
);

describe('`in` changes the showing and nothing else', () => {
  it.each([
    ['slab volume in cubic yards', '0.5926 cubic yards'],
    ['54 cubic feet in yards', '2 cubic yards'],
    ['slab area in yards', '5.33 sq yd'],
    ['slab length in yards', '4 yd'],
    ['slab length in inches', '144 in'],
    ['hours in hours', '1.5 hours'],
    ['22 boards times 3 ft in inches', '792 in'],
    ['slab length in m', '3.6576 m'],
    ['unit rise in feet', '0.625 ft per riser'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('leaves the plan as it is', () => {
    expect(nodeOf(at, 'slab volume in cubic yards').plan).toEqual(nodeOf(at, 'slab volume').plan);
  });

  it('survives a name, a bracket, a share and a factor', () => {
    for (const formula of ['yards', '(yards)', 'yards plus 10%', 'yards times 2']) {
      expect(nodeOf(at, formula).holds.showIn?.over[0]).toMatchObject({
        unit: { key: 'cubic yd' },
      });
    }
    expect(nodeOf(at, 'yards over 48 sq ft').holds.showIn).toBeNull();
  });
});

describe('a unit of something else is refused', () => {
  it.each([
    ['slab area in feet', ['slab area in sq ft']],
    ['slab length in cubic yards', ['slab length in yd']],
    ['slab volume in hours', ['slab volume in cubic feet']],
    ['(5) in feet', ['5 ft in feet']],
  ])('%s', (formula, fixes) => {
    expect(refused(at, formula)).toMatchObject({ code: 'wrong-unit-asked', fixes });
  });

  it('a text has no unit', () => {
    expect(refused(at, 'species in feet').code).toBe('not-an-amount');
  });
});

describe('`as` counts a thing as another on purpose', () => {
  it.each([
    ['bags, as boards', '40 boards'],
    ['steps, as risers', '7 risers'],
    ['(12 ft divided by 1 m, as boards) rounded up', '4 boards'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('what is no count is refused', () => {
    expect(refused(at, 'slab length, as boards')).toMatchObject({
      code: 'not-a-count',
      spots: ['slab length', 'boards'],
      fixes: ['slab length, in boards of 1 ft'],
    });
    expect(refused(at, 'price, as boards').code).toBe('not-a-count');
  });
});
