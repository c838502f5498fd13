// The sentence that is said back: read again it gives the same tree.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sentence } from '../../src/language/sentence.ts';
import { formula } from './grammar.ts';
import { bare, nouns, parsed, said } from './parsed.ts';

/** For a long run: SENTENCE_RUNS=200000 npx vitest run --project unit tests/language/sentence.test.ts */
const RUNS = Number(process.env['SENTENCE_RUNS'] ?? 400);

describe('the sentence', () => {
  it('reads as the same tree, for every formula of the grammar', () => {
    let read = 0;
    fc.assert(
      fc.property(formula, (text) => {
        const first = parsed(text);
        // A share that takes a multiplication, and the like, is refused: nothing to say back.
        if (first.problem) return;
        read++;
        const words = sentence(first.tree, nouns);
        const second = parsed(words);
        expect(second.problem, words).toBeNull();
        expect(bare(second.tree), words).toEqual(bare(first.tree));
      }),
      { numRuns: RUNS },
    );
    expect(read).toBeGreaterThan(RUNS * 0.6);
  }, 1_800_000);

  it.each([
    [
      'slab length by slab width by thickness plus waste',
      '(slab length by slab width by thickness) plus waste',
    ],
    ['deck area plus slab length, times 3', '(deck area plus slab length) times 3'],
    ['10% of slab length plus thickness', '(10% of slab length) plus thickness'],
    ['diagonal of (2x8) and 12', 'diagonal of 2x8 and 12'],
    ["24' x 20'", '24 ft by 20 ft'],
    ['slab length or 5 ft, whichever is greater', 'the greater of slab length and 5 ft'],
    [
      'if thickness < 4" then 6" otherwise 4"',
      '6 in where thickness is less than 4 in, otherwise 4 in',
    ],
    ['slab length with 10% waste', 'slab length plus 10% waste'],
    ['slab length / 3', 'slab length divided by 3'],
    [
      'total of (total of clear span in slab bays at (2 times 3)), 12 and 3',
      'total of (total of clear span in slab bays at (2 times 3)), 12 and 3',
    ],
    ['waste on slab length', 'waste of slab length'],
    ['10% of (2x8) plus 12 ft', '(10% of (2x8)) plus 12 ft'],
    ['10% of (2x8) squared', '10% of (2x8) squared'],
    ['-(2x8) by 12 ft', '−(2x8) by 12 ft'],
    ['1 bar of #4 by (12 lb)', '1 bar of #4 by (12 lb)'],
  ])('says "%s" as "%s"', (typed, words) => {
    expect(said(typed)).toBe(words);
  });
});
