import { describe, expect, it } from 'vitest';
import { bench, refused } from './bench.ts';

const at = bench(
  'Hole diameter: 12 in',
  'Slab area: 144 sq ft',
  'Side: 3 ft',
  'Bags: 4 bags',
  'Plot: 4 sq m',
);

describe('powers, roots, diagonals, circles and triangles', () => {
  it.each([
    ['side squared', '9 sq ft'],
    ['side cubed', '27 cubic feet'],
    ['4 squared', '16'],
    ['10% squared', '1%'],
    ['square root of slab area', '12 ft'],
    ['square root of plot, in m', '2 m'],
    ['square root of 16', '4'],
    ['diagonal of 3 ft and 4 ft', '5 ft'],
    ['diagonal of 3 and 4', '5'],
    ['diagonal of 36 in and 4 ft', '5 ft'],
    ['triangle area for sides 3 ft, 4 ft and 5 ft', '6 sq ft'],
    ['circle area for 12 in radius over circle area for 12 in diameter', '4'],
    ['circumference for 1 in radius over circumference for 1 in diameter', '2'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it("π is the engine's: a circle of 12 in across is π × 36 sq in", () => {
    const checked = at.read('circle area for hole diameter').checked;
    const value = checked && at.value(checked);
    expect(Number(value?.valueOf())).toBeCloseTo(Math.PI * 36, 9);
  });
});

describe('what has no such shape is refused', () => {
  it.each([
    ['slab area squared', 'too-many-lengths'],
    ['bags squared', 'noun-by-noun'],
    ['square root of side', 'no-square-root'],
    ['diagonal of 3 ft and $4', 'not-a-length'],
    ['diagonal of 3 ft and 4', 'bare-number'],
    ['circle area for slab area diameter', 'not-a-length'],
    ['triangle area for sides 3 ft, 4 ft and 8 ft', 'no-triangle'],
  ])('%s: %s', (formula, code) => {
    expect(refused(at, formula).code).toBe(code);
  });
});
