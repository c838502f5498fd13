// How formulas are read: names, amounts, levels, and what is refused. §§1 to 3 of the language.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_FORMULA } from '../../src/language/lexer.ts';
import { cellName, parsed, problemOf, said } from './parsed.ts';
import { worked } from './worked.ts';

describe('amounts', () => {
  it.each([
    ['12', '12'],
    ['1,250', '1,250'],
    ['1250', '1,250'],
    ['7-1/2', '7 1/2'],
    ['7½', '7 1/2'],
    ['7 - 1/2', '7 minus 1/2'],
    ['12\' 6-1/2"', '12 ft 6 1/2 in'],
    ['12\'-6 1/2"', '12 ft 6 1/2 in'],
    ['12’6”', '12 ft 6 in'],
    ['2.3 cubic yards', '2.3 cubic yards'],
    ['85 cents', '85 cents'],
    ['−$50', '−$50'],
    ['$145/cy', '$145 per cubic yard'],
    ['$100/4 hours', '$100 per 4 hours'],
    ['$320 per 1000 sq ft', '$320 per 1000 sq ft'],
    ['8h30', '8 h 30 min'],
    ['10 percent', '10%'],
    ['6 in 12', '6 in 12'],
    ['40 bags', '40 bags'],
    ['1 bag', '1 bag'],
    ['3 man', '3 people'],
  ])('%s reads as %s', (typed, words) => {
    expect(said(typed)).toBe(words);
  });

  it.each([
    ['4,5 ft', 'odd-number'],
    ['1,25 ft', 'odd-number'],
    ['8:75 hours', 'odd-number'],
    ['12\' - 6"', 'two-readings'],
    ['12 ft-6 in', 'two-readings'],
    ['16 1/2 in boards', 'two-readings'],
    ['6 in 12 ft boards', 'two-readings'],
    ['12 foos', 'unknown-unit'],
    ['$', 'missing-value'],
    ['9'.repeat(60), 'odd-number'],
  ])('%s is refused: %s', (typed, code) => {
    const problem = problemOf(typed);
    expect(problem?.code).toBe(code);
    for (const fix of problem?.fixes ?? [])
      expect(problemOf(fix.formula)?.code, fix.formula).not.toBe(code);
  });
});

describe('names', () => {
  const mentioned = (text: string): readonly string[] => parsed(text).mentions.map(cellName);

  it.each([
    ['slab length by slab width', ['Slab length', 'Slab width']],
    ['the slab length', ['Slab length']],
    ['SLAB  Length', ['Slab length']],
    ['length of run times 2', ['Length of run']],
    ['# of posts times 2', ['# of posts']],
    ['total rise', ['Total rise']],
    // The own part's name wins over another part's of equal length.
    ['thickness', ['Thickness']],
    ['Deck surface stringers', ['Stringers']],
  ])('%s mentions %j', (text, cells) => {
    expect(problemOf(text)).toBeNull();
    expect(mentioned(text)).toEqual(cells);
  });

  it('lets a unit or noun win right after a number', () => {
    expect(said('40 bags')).toBe('40 bags');
    expect(mentioned('40 bags')).toEqual([]);
    expect(mentioned('10% waste')).toEqual([]);
    expect(mentioned('bags')).toEqual(['Bags']);
  });

  it('lets a phrase win only when its opening words are more', () => {
    expect(said('total of 1 ft and 2 ft')).toBe('total of 1 ft and 2 ft');
    expect(mentioned('total plus 1 ft')).toEqual(['Total']);
  });

  it("reads another part's name with an operator word only with that part before it", () => {
    expect(problemOf('run by step')?.code).toBe('unknown-name');
    expect(mentioned('Steps run by step')).toEqual(['Run by step']);
  });

  it('lists both cells when two other parts share a name', () => {
    const problem = problemOf('stringers times 2');
    expect(problem?.code).toBe('ambiguous-name');
    expect(problem?.fixes.map((f) => f.formula)).toEqual([
      'Steps stringers times 2',
      'Deck surface stringers times 2',
    ]);
  });

  it('offers the nearest name and takes none', () => {
    const problem = problemOf('slab lenght by 2');
    expect(problem?.code).toBe('unknown-name');
    expect(problem?.fixes[0]?.formula).toBe('slab length by 2');
  });
});

describe('what can be read in two ways is refused with both', () => {
  it.each([
    [
      'total of 1 ft, 2 ft and 3 ft plus 10%',
      ['total of 1 ft, 2 ft and (3 ft plus 10%)', 'total of 1 ft, 2 ft and 3 ft, plus 10%'],
    ],
    [
      'slab length plus waste times 2',
      ['(slab length plus waste) times 2', 'slab length plus (waste times 2)'],
    ],
    ['slab length plus 25% margin', ['slab length for a 25% margin', 'slab length marked up 25%']],
    [
      'slab length plus 1 ft where thickness is 4 in, otherwise 2 ft',
      [
        '(slab length plus 1 ft) where thickness is 4 in, otherwise 2 ft',
        'slab length plus (1 ft where thickness is 4 in, otherwise 2 ft)',
      ],
    ],
    [
      '1 ft where thickness is 4 in, otherwise 2 ft, rounded up to the next 1 ft',
      [
        '(1 ft where thickness is 4 in, otherwise 2 ft), rounded up to the next 1 ft',
        '1 ft where thickness is 4 in, otherwise (2 ft, rounded up to the next 1 ft)',
      ],
    ],
  ])('%s', (text, fixes) => {
    const problem = problemOf(text);
    expect(problem?.fixes.map((f) => f.formula)).toEqual(fixes);
    for (const fix of fixes) expect(problemOf(fix), fix).toBeNull();
  });

  it('asks what a per without an amount divides by', () => {
    expect(problemOf('slab length per sq ft')?.code).toBe('per-what');
    expect(problemOf('slab length per thickness')).toBeNull();
  });

  it('takes words after for as a note only when none of them could be meant', () => {
    expect(said('slab length for good measure')).toBe('slab length');
    expect(problemOf('slab length for the 3 beds')?.code).toBe('two-readings');
  });
});

describe('bad input', () => {
  it('refuses a formula of 100,000 characters by its length', () => {
    const problem = problemOf('1 + '.repeat(25_000));
    expect(problem?.code).toBe('too-long');
    expect(problem?.explanation).toContain('10,000');
  });

  it('refuses 5,000 nested brackets and reads 100', () => {
    expect(problemOf(`${'('.repeat(4000)}1${')'.repeat(4000)}`)?.code).toBe('too-deep');
    expect(problemOf(`${'('.repeat(100)}1${')'.repeat(100)}`)).toBeNull();
  });

  it('reads a chain of three thousand plus signs', () => {
    const chain = Array.from({ length: 3000 }, () => '1').join('+');
    expect(chain.length).toBeLessThan(LONGEST_FORMULA);
    expect(said(chain).startsWith('1 plus 1 plus 1')).toBe(true);
  });

  it.each([
    ['10% of (', '1', ')'],
    ['5 of (', '9 ft', ') from 16 ft boards'],
    ['(', '1 ft and 2 ft together', ' plus 1 ft together)'],
    ['1 ft where thickness is (', '4 in', '), otherwise (2 ft)'],
    ['total of (', '1 ft', ') and 2 ft'],
    ['(1 ft or ', '2 ft', ', whichever is greater)'],
  ])('does work that grows with the length alone: %s … %s', (open, middle, close) => {
    const nested = (depth: number): string => open.repeat(depth) + middle + close.repeat(depth);
    const steps = (depth: number): number => parsed(nested(depth)).steps;
    // Twice the depth is twice the work, not its square or worse.
    expect(steps(40)).toBeLessThanOrEqual(2 * steps(20) + 4);
  });

  it('never throws, and every spot lies inside the text', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        ...'slab length|waste|of|total|total of|(|)|,|12|ft|in|%|$|?|per|/|-|where|otherwise|if|then|or|whichever|is|not|and|plus|times|at|for|margin|rounded|up|to|the|next|joists|every|along|fewest|with|gaps|as|boards|squared|"|\'|½|{|<script>|__proto__|constructor|🙂|\u00a0'.split(
          '|',
        ),
      ),
      fc.string({ maxLength: 4 }),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), (pieces) => {
        const text = pieces.join(' ');
        const problem = problemOf(text);
        for (const spot of problem?.spots ?? []) {
          expect(spot.from).toBeGreaterThanOrEqual(0);
          expect(spot.to).toBeLessThanOrEqual(text.length);
          expect(spot.from).toBeLessThanOrEqual(spot.to);
        }
        for (const fix of problem?.fixes ?? []) expect(fix.formula).not.toBe(text);
        if (problem) expect(problem.headline.length).toBeLessThan(60);
      }),
      { numRuns: 5000 },
    );
  });
});

it.each([
  ['$?/4 hours', null],
  ['$?/16 in', null],
  ['$/16 in', 'missing-value'],
  ['12 ft rounded to the nearest $/in', 'missing-value'],
])('a price still to come, per something, never throws: %s', (formula, code) => {
  expect(worked(formula).code).toBe(code);
});
