import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Thickness: 4 in',
  'Slab width: 4 ft',
  'Unit rise: 52 1/2 in divided by 7 risers',
  'Waste: 10%',
  'Species: "hem-fir"',
  'Steep: yes',
  'Boards: 12 boards',
  'Fall: 1/4 in per ft',
);

describe('two that measure the same are compared', () => {
  it.each([
    ['thickness is at least 4 in and slab width is under 5 ft', 'yes'],
    ['unit rise is at most 7 3/4 in', 'yes'],
    ['101.6 mm is thickness', 'yes'],
    ['1 in ÷ 3 × 3 is at least 1 in', 'yes'],
    ['waste is more than 0.05', 'yes'],
    ['waste is 10%', 'yes'],
    ['fall is at least 2%', 'yes'],
    ['boards is 12', 'yes'],
    ['12 joists times 10 ft is 120 ft', 'yes'],
    ['slab width is between 3 ft and 48 in', 'yes'],
    ['species is "hem-fir"', 'yes'],
    ['species is not "pine"', 'yes'],
    ['steep is yes', 'yes'],
    ['not steep or thickness is 4 in', 'yes'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('in the finer scale of the two', () => {
    const { plan } = nodeOf(at, '100 mm is under thickness');
    expect(plan.op === 'compare' && plan.right.op).toBe('scale');
  });
});

describe('others are refused', () => {
  it.each([
    ['thickness is more than $4', 'unit-clash'],
    ['boards is more than 12 bags', 'noun-clash'],
    ['species is 4', 'unit-clash'],
    ['steep is 1', 'unit-clash'],
    ['species is more than "pine"', 'no-order'],
    ['waste is over 3 ft', 'share-of-what'],
    ['slab width is between 3 ft and $4', 'unit-clash'],
    ['steep is between 1 and 2', 'no-order'],
  ])('%s: %s', (formula, code) => {
    expect(refused(at, formula).code).toBe(code);
  });
});
