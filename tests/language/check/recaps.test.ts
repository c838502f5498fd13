import { describe, expect, it } from 'vitest';
import type { Surroundings } from '../../../src/language/reading.ts';
import type { Recap } from '../../../src/language/tree.ts';
import { MONEY } from '../../../src/quantity/dimension.ts';
import { Fraction, amountMeasure } from '../../../src/quantity/measure.ts';
import { NOUNS, check } from './bench.ts';

const dollars = { measure: amountMeasure(MONEY), showIn: null, written: [] };
const cents = { ...dollars, measure: amountMeasure(MONEY, new Fraction(1, 100)) };
const surroundings: Surroundings = {
  holdsOf: (cell) => (cell === 1 ? dollars : cell === 2 ? cents : null),
  nameOf: () => '',
  shownOf: () => null,
  linesOf: () => [],
};

const recap = (lines: readonly number[]): Recap => ({
  kind: 'recap',
  spot: { from: 0, to: 5 },
  scope: { costKind: 'all', part: null },
  say: 'total cost of every part',
  lines,
});

describe('a recap', () => {
  it('adds its lines in dollars and leaves out what has no value, waiting for none', () => {
    const { checked, problems, waitsFor } = check(recap([1, 2, 3]), surroundings, NOUNS, 'total');
    expect([problems, waitsFor]).toEqual([[], []]);
    expect(checked?.holds.measure).toBe(dollars.measure);
    expect(checked?.plan).toEqual({
      op: 'total',
      items: [
        { op: 'cell', cell: 1 },
        { op: 'scale', by: new Fraction(1, 100), of: { op: 'cell', cell: 2 } },
        { op: 'cell', cell: 3 },
      ],
    });
  });

  it('of no lines is nothing', () => {
    expect(check(recap([]), surroundings, NOUNS, '').checked?.plan).toEqual({
      op: 'total',
      items: [],
    });
  });
});
