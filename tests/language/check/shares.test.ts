import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Slab volume: 16 cubic feet',
  'Waste: 10%',
  'Overhead: 15%',
  'Cost: $1,000',
  'Materials: $400',
  'Sales tax: 8%',
  'Factor: 0.2',
  'Slab length: 12 ft',
  'Yards: 27 cubic feet, in cubic yards',
  'Bag price: $6 per bag',
);

describe('a share after plus or minus is of what stands before it', () => {
  it.each([
    ['slab volume plus waste', '17.6 cubic feet'],
    ['slab volume with 10% waste', '17.6 cubic feet'],
    ['$1,000 less 5% discount', '$950.00'],
    ['$1,000 plus 12% overhead plus 10% profit', '$1,232.00'],
    ['50 boards plus 10%, rounded up', '55 boards'],
    ['50 plus 10%', '55'],
    ['yards plus waste', '1.1 cubic yards'],
    ['bag price plus waste', '$6.60 per bag'],
    ['10% plus 5%', '15%'],
    ['waste minus 4%', '6%'],
    ['cost ÷ (1 − waste − overhead)', '$1,333.33'],
    ['$1,000 ÷ (1 − 10% − 15%)', '$1,333.33'],
    ['$1,000 ÷ (100% − 10% − 15%)', '$1,333.33'],
    ['1 plus waste', '1.1'],
    ['100% minus waste', '90%'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('says how it was taken', () => {
    expect(nodeOf(at, 'cost plus waste').manner).toBe('share-of');
    expect(nodeOf(at, 'waste plus 5%').manner).toBe('share-added');
    expect(nodeOf(at, '1 − 10% − 15%').manner).toBe('from-whole');
    expect(nodeOf(at, '100% − 10%').manner).toBe('from-whole');
  });

  it('keeps a rate a rate', () => {
    const { measure } = nodeOf(at, 'bag price plus waste').holds;
    expect(measure.kind === 'amount' && measure.rate).not.toBeNull();
  });

  it('before an amount it is asked of what', () => {
    expect(refused(at, 'waste plus cost')).toMatchObject({
      code: 'share-of-what',
      fixes: ['(waste of cost) plus cost'],
    });
    expect(refused(at, 'waste plus 5')).toMatchObject({
      code: 'not-a-share',
      fixes: ['waste plus 5%'],
    });
  });
});

describe('percent of what', () => {
  it.each([
    ['$1,000 marked up 20%', '$1,200.00'],
    ['$1,000 for a 20% margin', '$1,250.00'],
    ['$7,500 for 10% overhead and 15% profit', '$10,000.00'],
    ['cost for a margin of overhead', '$1,176.47'],
    ['cost marked up by overhead', '$1,150.00'],
    ['10% of cost', '$100.00'],
    ['half of cost', '$500.00'],
    ['3/4 of slab length', '9 ft'],
    ['sales tax on materials', '$32.00'],
    ['sales tax of materials', '$32.00'],
    ['10% of 50%', '5%'],
    ['10% of 200', '20'],
    ['what share $42 is of $60', '70%'],
    ['what share $42 is of $60, times 2', '140%'],
    ['what share 6 in is of slab length', '4.17%'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('a plain number is not taken for a share', () => {
    expect(refused(at, 'cost marked up by factor').code).toBe('not-a-share');
    expect(refused(at, 'cost marked up 0.2').fixes).toEqual([
      'cost marked up 0.2%',
      'cost marked up 20%',
    ]);
  });

  it('shares that leave nothing are refused', () => {
    expect(refused(at, '$100 for 60% overhead and 40% profit').code).toBe('nothing-left');
  });

  it('a share of another measure is refused', () => {
    expect(refused(at, 'what share $42 is of slab length').code).toBe('unit-clash');
  });
});
