import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Thickness: 4 in',
  'Slab width: 4 ft',
  'Steep: yes',
  'Bags: 40 bags',
  'Cost: $250',
  'Waste: 10%',
);

describe('a condition takes the first branch that holds', () => {
  it.each([
    ['6 in where thickness is less than 4 in, otherwise 4 in', '4 in'],
    ['1 ft where thickness is 4 in, 2 ft where thickness is 5 in, otherwise 3 ft', '1 ft'],
    ['cost where steep, otherwise 0', '$250.00'],
    ['bags where steep, otherwise 20', '40 bags'],
    ['"thick" where thickness is over 3 in, otherwise "thin"', 'thick'],
    ['yes where steep, otherwise no', 'yes'],
    ['1 ft where not steep, otherwise 6 in', '6 in'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('brings its answers to the finer scale', () => {
    const { plan } = nodeOf(at, '100 mm where steep, otherwise slab width');
    expect(plan.op === 'choose' && plan.otherwise.op).toBe('scale');
  });

  it('rests on the units of its answers, not of what was asked', () => {
    expect(nodeOf(at, '6 in where slab width is 4 ft, otherwise 4 in').holds.written).toEqual([
      'in',
    ]);
  });
});

describe('what is refused', () => {
  it('answers that measure different things', () => {
    expect(refused(at, '6 in where steep, otherwise $4')).toMatchObject({
      code: 'unit-clash',
      spots: ['6 in', '$4'],
    });
    expect(refused(at, '6 in where steep, otherwise "thin"').code).toBe('unit-clash');
    expect(refused(at, 'bags where steep, otherwise 3 boards').code).toBe('noun-clash');
  });

  it('a condition that is neither yes nor no', () => {
    expect(refused(at, '6 in where thickness, otherwise 4 in')).toMatchObject({
      code: 'not-yes-or-no',
      spots: ['thickness'],
      fixes: ['6 in where (thickness is more than 0), otherwise 4 in'],
    });
    expect(refused(at, 'not waste').code).toBe('not-yes-or-no');
    expect(refused(at, 'steep and bags').code).toBe('not-yes-or-no');
  });
});
