// What is offered for a fault is tried before it is shown: a few formulas for each fault, however long and however many.
import { describe, expect, it } from 'vitest';
import { read } from '../../src/language/read.ts';
import { scan } from '../../src/language/scan.ts';
import { tokensOf } from '../../src/language/lexer.ts';
import { parsed, surroundings, vocabulary } from './parsed.ts';

/** All that may be tried for what one formula is told: the limit, and what the last fix within it goes on to. */
const MOST = 24 + 6;

const FAULTY = [
  'slab lenght by slab widht by thicknes',
  "(14' + 14' + 11'6\") in 8' lengths at $12.75 per length",
  'round hole, hole diameter and hole depth, cubic feet each',
  "What's the price with the sales tax included, if it's $8,820 before tax?",
  '30 in wall plus 8 in buried, no higher than 4 ft all told',
  'twice the slab length and twice the slab width, that is your trim',
  '24 frobs at $38 per yard plus 3 fobs, thicknes at $12 per yard',
  '2 x (slab length + slab width) x thicknes per yard plus oops',
];

function triedFor(formula: string): number {
  const before = vocabulary.tried;
  const found = scan(formula, vocabulary, 'landing', null);
  const { problems } = read(found, vocabulary, surroundings);
  expect(problems, formula).not.toEqual([]);
  return vocabulary.tried - before;
}

describe('what is offered', () => {
  it.each(FAULTY)('is tried a few times for %s', (formula) => {
    expect(triedFor(formula)).toBeLessThanOrEqual(MOST);
  });

  it('is tried no more often the longer the formula is', () => {
    for (const formula of FAULTY) {
      const long = Array.from({ length: 8 }, () => formula).join(' plus ');
      expect(triedFor(long), formula).toBeLessThanOrEqual(MOST);
    }
  });

  it('comes to something for many: a formula of several slips is mended in one', () => {
    expect(FAULTY.reduce((all, formula) => all + triedFor(formula), 0)).toBeGreaterThan(10);
  });
});

describe('tight dashes', () => {
  it.each(['281-7%-', '281-7%-5 ft-', '281(281-281-7%'])(
    'are read twice at most, however many: %s',
    (text) => {
      for (const times of [1, 2, 4, 8, 16, 32]) {
        const all = text.repeat(times);
        expect(parsed(all).steps).toBeLessThanOrEqual(2 * tokensOf(all).length);
      }
    },
  );
});
