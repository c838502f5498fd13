// What only the values show: told as if it had been written out, at the smallest thing that is at fault.
import { describe, expect, it, test } from 'vitest';
import { worked } from '../language/worked.ts';

describe('dividing by nothing', () => {
  test.for([
    ['joists every 0 in along 12 ft', [], '0 in'],
    ['joists every spacing along 12 ft', ['Spacing: 0 in'], 'spacing'],
    ['7 ft rounded up to the next 0 ft', [], '0 ft'],
    ['10% rounded to the nearest 0%', [], '0%'],
    ['5 boards in boxes of 0 boards', [], '0 boards'],
    ['8 cubic feet in bags of bag yield', ['Bag yield: 0 cubic feet per bag'], 'bag yield'],
    ['640 sq ft at 0 sq ft per hour', [], '0 sq ft per hour'],
    ['what share $4 is of $0', [], '$0'],
    ['5 ft divided by 0 ft', [], '0 ft'],
    ['5 pieces of cut from 8 ft boards', ['Cut: 0 ft'], 'cut'],
    ['fewest balusters of 0 in across 72 in with gaps under 0 in', [], '0 in'],
    ['2 times (5 ft divided by (run minus 3 ft)), rounded up', ['Run: 3 ft'], '(run minus 3 ft)'],
    ['10 ÷ a where a is 1, 12 ÷ b where b is 0, otherwise 4', ['A: 0', 'B: 0'], 'b'],
    ['10 ÷ a where a is 1, otherwise (12 ÷ b)', ['A: 0', 'B: 0'], 'b'],
  ] as const)('%s marks and quotes what is 0', ([formula, givens, words]) => {
    const { code, spots, message } = worked(formula, givens);
    expect([code, spots]).toEqual(['division-by-zero', [words]]);
    expect(message).toContain(`"${words}" comes to 0 here`);
  });

  it('says of a gap what it is that comes to 0', () => {
    const { spots, message } = worked('even gap for less one of 1 in across 72 in', [
      'Less one: −1 post',
    ]);
    expect(spots).toEqual(['less one']);
    expect(message).toContain('One more than "less one" comes to 0 here');
  });
});

describe('shares of a price that leave nothing', () => {
  test.for([
    ['$100 for a margin of all', ['All: 120%'], ['all'], '120%'],
    ['$100 for a margin of all', ['All: 100%'], ['all'], '100%'],
    [
      '$100 for 60% overhead and half profit',
      ['Half profit: 45.5%'],
      ['60% overhead', 'half profit'],
      '105.5%',
    ],
    ['$100 for a 120% margin', [], ['120%'], '120%'],
  ] as const)('%s with %s', ([formula, givens, spots, together]) => {
    const answer = worked(formula, givens);
    expect([answer.code, answer.spots]).toEqual(['nothing-left', spots]);
    expect(answer.message).toBe(
      `These shares leave nothing of the price. Each is a share of the answer, and together they come to ${together}. They have to stay under 100%.`,
    );
  });

  it('leave a little where they stay under 100%', () => {
    expect(worked('$100 for a margin of all', ['All: 99%']).shown).toBe('$10,000.00');
  });
});

describe('pieces longer than their stock', () => {
  test.for([
    ['5 pieces of run from 8 ft boards', ['Run: 12 ft'], ['run', '8 ft']],
    ['5 pieces of (4 ft + 5 ft) from 8 ft boards', [], ['(4 ft + 5 ft)', '8 ft']],
    ['5 pieces of 9 ft from 8 ft boards', [], ['9 ft', '8 ft']],
  ] as const)('%s offers one run', ([formula, givens, spots]) => {
    const { code, spots: marked, fixes } = worked(formula, givens);
    expect([code, marked]).toEqual(['piece-too-long', spots]);
    expect(fixes.map((fix) => worked(fix, givens).code)).toEqual([null]);
  });

  it('of the same length are cut, one from each', () => {
    expect(worked('5 pieces of run from 8 ft boards', ['Run: 8 ft']).shown).toBe('5 boards');
  });
});

it('three sides that never meet are told so by name as well', () => {
  const formula = 'triangle area for sides run, 4 ft and 5 ft';
  const { code, spots } = worked(formula, ['Run: 10 ft']);
  expect([code, spots]).toEqual(['no-triangle', [formula]]);
  expect(worked(formula, ['Run: 3 ft']).shown).toBe('6 sq ft');
});
