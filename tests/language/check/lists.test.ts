import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Thickness: 4 in',
  'Concrete: $250',
  'Gravel: $120.50',
  'Later: ?',
  'Fee: $?',
  'Waste: 10%',
  'Yards: 27 cubic feet, in cubic yards',
);

describe('totals and averages', () => {
  it.each([
    ['total of concrete, gravel and $10', '$380.50'],
    ['average of 10 ft and 12 ft', '11 ft'],
    ['total of 1 m and 1 in, in mm', '1,025.4 mm'],
    ['total of concrete, later and gravel', '$370.50'],
    ['total of concrete and fee', '$250.00'],
    ['total of waste and 5%', '15%'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it.each([
    ['total of concrete and thickness', 'unit-clash'],
    ['average of 3 bags and 4 boards', 'noun-clash'],
    ['total of concrete and waste', 'share-of-what'],
  ])('%s: %s', (formula, code) => {
    expect(refused(at, formula).code).toBe(code);
  });
});

describe('the greater or lesser, and limits', () => {
  it.each([
    ['thickness or 5 in, whichever is greater, plus 1 in', '6 in'],
    ['the lesser of thickness and 100 mm, in mm', '100 mm'],
    ['thickness not less than 5 in', '5 in'],
    ['thickness not more than 3 in', '3 in'],
    ['yards not less than 30 cubic feet', '1.11 cubic yards'],
    ['waste not less than 0.15', '15%'],
    ['concrete not less than 300', '$300.00'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('is held in the finer scale', () => {
    const { measure } = nodeOf(at, 'the lesser of thickness and 100 mm').holds;
    expect(measure.kind === 'amount' && measure.scale.toFraction()).toBe('5/127');
  });

  it.each([
    ['thickness or $5, whichever is greater', 'unit-clash'],
    ['thickness not less than 5', 'bare-number'],
  ])('%s: %s', (formula, code) => {
    expect(refused(at, formula).code).toBe(code);
  });
});
