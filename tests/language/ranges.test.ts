// Ranges of givens as people write them: the plain value with its two ends, or the refusal with its fix.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { sentence } from '../../src/language/sentence.ts';
import { ranges } from './grammar.ts';
import { bare, nouns, parsed } from './parsed.ts';
import { GIVENS, worked } from './worked.ts';

/** For a long run: SENTENCE_RUNS=200000, as for the sentences of all formulas. */
const RUNS = Number(process.env['SENTENCE_RUNS'] ?? 500);

/** What is written, what it comes to, and how it is said back. */
const READ: readonly (readonly [string, string, string])[] = [
  // With a first value: the ends carry their own units or take those of the first.
  [
    '13 hours, 12 at best, 16 at worst',
    '13 hours',
    '13 hours, 12 hours at best, 16 hours at worst',
  ],
  [
    '13 hours, 16 at worst, 12 at best',
    '13 hours',
    '13 hours, 12 hours at best, 16 hours at worst',
  ],
  [
    '13, 12 at best, 16 hours at worst',
    '13 hours',
    '13 hours, 12 hours at best, 16 hours at worst',
  ],
  [
    '12 at best, 13 hours, 16 at worst',
    '13 hours',
    '13 hours, 12 hours at best, 16 hours at worst',
  ],
  [
    '13 hours, at best 12, at worst 16',
    '13 hours',
    '13 hours, 12 hours at best, 16 hours at worst',
  ],
  ['13 hours, best 12, worst case 16', '13 hours', '13 hours, 12 hours at best, 16 hours at worst'],
  ['13 hours (12 to 16)', '13 hours', '13 hours, 12 hours at best, 16 hours at worst'],
  ['13 hours, between 12 and 16', '13 hours', '13 hours, 12 hours at best, 16 hours at worst'],
  ['$450, $400 at best, $520 at worst', '$450.00', '$450, $400 at best, $520 at worst'],
  [
    '$6.48 per bag, $6 at best, 7 at worst',
    '$6.48 per bag',
    '$6.48 per bag, $6 per bag at best, $7 per bag at worst',
  ],
  [
    '40 sq ft per hour, 50 at best, 30 at worst',
    '40 sq ft per hour',
    '40 sq ft per hour, 50 sq ft per hour at best, 30 sq ft per hour at worst',
  ],
  ['10% waste, 8 at best, 15 at worst', '10%', '10% waste, 8% at best, 15% at worst'],
  ['1.4, 1.2 at best, 2 at worst', '1.4', '1.4, 1.2 at best, 2 at worst'],
  ['85 cents, 80 at best, 90 at worst', '$0.85', '85 cents, 80 cents at best, 90 cents at worst'],
  ['4 ft, 47 in at best, 4 ft 2 in at worst', '4 ft', '4 ft, 47 in at best, 4 ft 2 in at worst'],
  ['12 bags, 12 at best, 12 at worst', '12 bags', '12 bags, 12 bags at best, 12 bags at worst'],
  // Without: the plain value is the middle of the two, and the lesser is best.
  ['12 to 16 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['12 hours to 16 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['16 to 12 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['from 12 to 16 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['between 12 and 16 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['12 up to 16 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['12–16 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['12—16 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['12-16 hours', '14 hours', '12 hours at best, 16 hours at worst'],
  ['12-16', '14', '12 at best, 16 at worst'],
  ['16 hours at worst and 12 at best', '14 hours', '12 hours at best, 16 hours at worst'],
  ['$400 to $520', '$460.00', '$400 at best, $520 at worst'],
  ['$400-520', '$460.00', '$400 at best, $520 at worst'],
  ['8-10%', '9%', '8% at best, 10% at worst'],
  ["8'-10'", '9 ft', '8 ft at best, 10 ft at worst'],
  ['1/2-3/4 in', '5/8 in', '1/2 in at best, 3/4 in at worst'],
  ['2 to 3 bags', '2.5 bags', '2 bags at best, 3 bags at worst'],
  ['1 yd to 4 ft', '3 ft 6 in', '1 yd at best, 4 ft at worst'],
  ['-$50 to $150', '$50.00', '−$50 at best, $150 at worst'],
  ['6 to 8 in 12', '7 in per 12 in', '6 in 12 at best, 8 in 12 at worst'],
  // More work in a time is better; more money for it is not.
  [
    '30 to 50 sq ft per hour',
    '40 sq ft per hour',
    '50 sq ft per hour at best, 30 sq ft per hour at worst',
  ],
  ['3 to 5 posts per day', '4 posts per day', '5 posts per day at best, 3 posts per day at worst'],
  ['$50 to $60 per hour', '$55.00 per hour', '$50 per hour at best, $60 per hour at worst'],
  [
    '2 to 3 hours per post',
    '2.5 hours per post',
    '2 hours per post at best, 3 hours per post at worst',
  ],
  // A minus and a mixed number stay what they are.
  ['7-1/2 in', '7 1/2 in', '7 1/2 in'],
  ['16 hours - 12 hours', '4 hours', '16 hours minus 12 hours'],
  ['12 hours − 16 hours', '−4 hours', '12 hours minus 16 hours'],
  ['$50-10%', '$45.00', '$50 minus 10%'],
  ['slab length-2 ft', '10 ft', 'slab length minus 2 ft'],
  ['slab length rounded up to the next 5 ft', '15 ft', 'slab length rounded up to the next 5 ft'],
];

/** What is written, the code of the problem, and what its first fix comes to. */
const REFUSED: readonly (readonly [string, string, string, string])[] = [
  [
    '17 hours, 12 at best, 16 at worst',
    'range-outside',
    '17 hours, 12 hours at best, 17 hours at worst',
    '17 hours',
  ],
  [
    '11 hours, 12 at best, 16 at worst',
    'range-outside',
    '11 hours, 11 hours at best, 16 hours at worst',
    '11 hours',
  ],
  [
    '55 sq ft per hour, 50 at best, 30 at worst',
    'range-outside',
    '55 sq ft per hour, 55 sq ft per hour at best, 30 sq ft per hour at worst',
    '55 sq ft per hour',
  ],
  ['13 hours, 12 ft at best, 16 hours at worst', 'range-unlike', '13 hours', '13 hours'],
  ['12 hours to 16 ft', 'range-unlike', '12 hours', '12 hours'],
  ['10 bags, 8 boards at best, 12 at worst', 'range-unlike', '10 bags', '10 bags'],
  ['13 hours, 12 at best, ? at worst', 'range-end-open', '13 hours', '13 hours'],
  ['13 hours, 12 at best', 'half-a-range', '13 hours', '13 hours'],
  ['13 hours, 16 at worst', 'half-a-range', '13 hours', '13 hours'],
  ['12 – 16 hours', 'two-readings', '12 hours at best, 16 hours at worst', '14 hours'],
  ['16-12 hours', 'two-readings', '12 hours at best, 16 hours at worst', '14 hours'],
  ['8 to 10 ft 6 in', 'two-readings', '8 ft to 10 ft 6 in', '9 ft 3 in'],
  [
    '$50 per hour times 12 to 16 hours',
    'range-in-formula',
    '$50 per hour times 14 hours',
    '$700.00',
  ],
  [
    '$50 per hour times 13 hours, 12 at best, 16 at worst',
    'range-in-formula',
    '$50 per hour times 13 hours',
    '$650.00',
  ],
  ['(12 to 16 hours) at $50 per hour', 'range-in-formula', '(14 hours) at $50 per hour', '$700.00'],
  ['12 to 16 hours at $50 per hour', 'range-in-formula', '14 hours at $50 per hour', '$700.00'],
  ['slab length times 12-16', 'range-in-formula', 'slab length times 14', '168 ft'],
  ['slab length plus 1–2 ft', 'range-in-formula', 'slab length plus 1.5 ft', '13 ft 6 in'],
  [
    'slab length plus 1/3 to 1/2 ft',
    'range-in-formula',
    'slab length plus (average of 1/3 ft and 1/2 ft)',
    '12 ft 5 in',
  ],
  [
    'total of 3 ft, 4-5 ft and 6 ft',
    'range-in-formula',
    'total of 3 ft, 4.5 ft and 6 ft',
    '13 ft 6 in',
  ],
];

describe('a range of a given', () => {
  it.each(READ)('"%s" is %s', (formula, shown, readAs) => {
    const got = worked(formula);
    expect(got.message).toBe('');
    expect([got.shown, got.readAs]).toEqual([shown, readAs]);
  });

  it.each(READ)('"%s" is read the same when it is said back', (formula, shown, readAs) => {
    const again = worked(readAs);
    expect([again.shown, again.readAs]).toEqual([shown, readAs]);
    const first = parsed(formula);
    expect(bare(parsed(sentence(first.tree, nouns)).tree)).toEqual(bare(first.tree));
  });

  it.each(REFUSED)('"%s" is refused: %s', (formula, code, fix, shown) => {
    const got = worked(formula);
    expect(got.code).toBe(code);
    expect(got.spots.join('')).not.toBe('');
    expect(got.fixes[0]).toBe(fix);
    const mended = worked(fix);
    expect(mended.message).toBe('');
    expect(mended.shown).toBe(shown);
  });

  it.each(REFUSED)('every fix of "%s" gives a formula without that problem', (formula, code) => {
    const { fixes } = worked(formula);
    expect(fixes.length).toBeGreaterThan(0);
    for (const fix of fixes) expect(worked(fix).code, fix).not.toBe(code);
  });

  test('may be not yet known between ends that are', () => {
    const got = worked('? hours, 12 at best, 16 at worst');
    expect([got.shown, got.code]).toEqual([null, null]);
    expect(got.readAs).toBe('? hours, 12 hours at best, 16 hours at worst');
  });

  test('says which end it took as best where nobody said', () => {
    expect(worked('12 to 16 hours').notes).toEqual(['The lesser is taken as best: 12 hours.']);
    expect(worked('3 to 5 posts per day').notes).toEqual([
      'More in the time is taken as best: 5 posts per day.',
    ]);
    expect(worked('12 hours at best, 16 hours at worst').notes).toEqual([]);
  });

  test('points out ends that are the same', () => {
    expect(worked('12 bags, 12 at best, 12 at worst').notes).toEqual([
      'All three are 12 bags: nothing is left open.',
    ]);
    expect(worked('12 bags to 12 bags').notes).toEqual([
      'Best and worst are 12 bags: nothing is left open.',
    ]);
  });

  test('gives way to a cell named Best', () => {
    const givens = [...GIVENS, 'Best: $50 per hour'];
    expect(worked('13 hours at best', givens).shown).toBe('$650.00');
    expect(worked('13 hours, 12 at best, 16 at worst', givens).shown).toBe('13 hours');
  });

  test('leaves sizes and other words after "to" to their own messages', () => {
    expect(worked('2x8 to 2x10').code).not.toBe('range-in-formula');
    expect(worked('slab lenght times 12 to 16 hours').code).toBe('unknown-name');
  });

  it('said back is read as the same tree, whatever its amounts', () => {
    let read = 0;
    fc.assert(
      fc.property(ranges, (text) => {
        const first = parsed(text);
        if (first.problem) return;
        read++;
        expect(first.tree.kind, text).toBe('range');
        const words = sentence(first.tree, nouns);
        const second = parsed(words);
        expect(second.problem, words).toBeNull();
        expect(bare(second.tree), words).toEqual(bare(first.tree));
      }),
      { numRuns: RUNS },
    );
    expect(read).toBeGreaterThan(RUNS * 0.7);
  }, 1_800_000);
});
