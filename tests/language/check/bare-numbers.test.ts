import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Hours: 42 hours',
  'Slab length: 12 ft',
  'Deck area: 224 sq ft',
  'Bags: 40 bags',
  'Cost: $250',
  'Fall: 1/4 in per ft',
  'Bag price: $6.48 per bag',
  'Runs: 2 m',
);

describe('a bare number written beside counts, hours or money takes their unit and says so', () => {
  it.each([
    ['hours - 40', '2 hours', '40 is read as 40 hours.'],
    ['bags plus 2', '42 bags', '2 is read as 2 bags.'],
    ['1 plus bags', '41 bags', '1 is read as 1 bag.'],
    ['cost plus 50', '$300.00', '50 is read as $50.'],
    ['0.5 cubic yards plus 2', '2.5 cubic yards', '2 is read as 2 cubic yards.'],
    ['60 lb plus 5', '65 lb', '5 is read as 5 lb.'],
    ['(90 min) plus 30, in hours', '2 hours', '30 is read as 30 min.'],
    ['$50 per hour plus 5', '$55.00 per hour', '5 is read as $5 per hour.'],
    ['bags is at least 40', 'yes', '40 is read as 40 bags.'],
  ])('%s → %s', (formula, shown, note) => {
    expect(at.shown(formula)).toBe(shown);
    expect(at.read(formula).notes).toEqual([note]);
  });

  it('the note stands on the number itself', () => {
    expect(nodeOf(at, 'hours - 40').parts[1]?.note).toBe('40 is read as 40 hours.');
  });
});

describe('elsewhere it asks', () => {
  it.each([
    ['slab length plus 2', ['slab length plus 2 ft', 'slab length plus 2 in']],
    ['12 ft minus 3', ['12 ft minus 3 ft', '12 ft minus 3 in']],
    ['slab length is under 14', ['slab length is under 14 ft', 'slab length is under 14 in']],
    ['runs plus 3', ['runs plus 3 m', 'runs plus 3 mm']],
    ['deck area is under 200', ['deck area is under 200 sq ft']],
    ['bag price plus 1', ['bag price plus $1 per bag']],
    ['fall is at least 2', ['fall is at least 2 in per ft']],
  ])('%s', (formula, fixes) => {
    expect(refused(at, formula)).toMatchObject({ code: 'bare-number', fixes });
  });
});

describe('zero needs no unit', () => {
  it.each([
    ['slab length minus 0', '12 ft'],
    ['deck area not less than 0', '224 sq ft'],
    ['slab length is more than 0', 'yes'],
    ['0 plus cost', '$250.00'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
    expect(at.read(formula).notes).toEqual([]);
  });
});
