// Published nominal and dressed sizes, asked for by size as a builder does, and board feet by their definition.
import { describe, expect, it } from 'vitest';
import { worked } from '../language/worked.ts';
import sizes from './lumber-sizes.json' with { type: 'json' };

const inches = (words: string): number =>
  words
    .split('/')
    .map(Number)
    .reduce((over, under) => over / under);

describe.each(sizes)('$id, $source: $nominal', ({ nominal, dry }) => {
  const [thin = '', wide = ''] = nominal.split('x');

  it.each([
    ['actual thickness', dry[0]],
    ['actual width', dry[1]],
    ['nominal thickness', inches(thin)],
    ['nominal width', inches(wide)],
  ])('%s is %s in', (figure, expected) => {
    const { message, exact } = worked(`${figure} of ${nominal}, in inches`);
    expect([message, Number(exact)]).toEqual(['', expected]);
  });

  it('has nominal thickness × width ÷ 12 board feet to the foot', () => {
    const { message, exact, unit } = worked(`1 ${nominal} x 12 ft in board feet`);
    expect([message, unit]).toEqual(['', 'board ft']);
    expect(Number(exact)).toBe(inches(thin) * inches(wide));
  });
});
