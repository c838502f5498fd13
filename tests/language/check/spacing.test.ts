import { describe, expect, it } from 'vitest';
import { bench, refused } from './bench.ts';

const at = bench('Deck width: 14 ft', 'Spacing: 400 mm', 'Balusters: 13 balusters', 'None: 0 ft');

describe('spaces along a run, and one more or fewer at the ends', () => {
  it.each([
    ['joists every 16 in along deck width', '12 joists'],
    ['joists every 16 in along 12 ft', '10 joists'],
    ['joists every 16 in along 12 ft, one end', '9 joists'],
    ['joists every 16 in along 12 ft, neither end', '8 joists'],
    ['posts every 8 ft around 64 ft', '8 posts'],
    ['joists every spacing along 4 m', '11 joists'],
    ['joists every 16 in along none, neither end', '0 joists'],
    ['joists every 16 in along none', '1 joist'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('asks for the unit of a bare spacing', () => {
    expect(refused(at, 'joists every 16 along deck width')).toMatchObject({
      code: 'bare-number',
      fixes: ['joists every 16 ft along deck width', 'joists every 16 in along deck width'],
    });
    expect(refused(at, 'joists every $16 along deck width').code).toBe('not-a-length');
  });
});

describe('balusters and their gaps', () => {
  it.each([
    ['fewest balusters of 1 1/2 in across 72 in with gaps under 4 in', '13 balusters'],
    ['fewest balusters of 1 1/2 in across 70 in with gaps at most 4 in', '12 balusters'],
    ['fewest balusters of 1 1/2 in across 70 in with gaps under 4 in', '13 balusters'],
    ['fewest balusters of 1 1/2 in across 2 in with gaps under 4 in', '0 balusters'],
    ['even gap for 13 balusters of 1 1/2 in across 72 in', '3 3/4 in'],
    ['even gap for balusters of 1 1/2 in across 72 in', '3 3/4 in'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  // The rule of the phrase itself, tried for every n: the least n whose gap is small enough.
  it.each([
    [72, 4],
    [70, 4],
    [100, 3.875],
    [36, 4],
    [4, 4],
  ])('the fewest across %s in with gaps under %s in is the least that will do', (across, gap) => {
    let n = 0;
    while ((across - n * 1.5) / (n + 1) >= gap) n++;
    const shown = at.shown(
      `fewest balusters of 1 1/2 in across ${across} in with gaps under ${gap} in`,
    );
    expect(shown).toBe(n === 1 ? '1 baluster' : `${n} balusters`);
  });
});
