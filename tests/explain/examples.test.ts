// The language's own examples, each followed down: words and lines of every step, top first.
import { describe, expect, it } from 'vitest';
import type { Formula } from '../../src/language/tree.ts';
import { GIVENS, marked, numbersIn, stepsIn, workingFor } from './kestrel.ts';

/** Formula, the answer, and the lines of numbers from the top down. */
const EXAMPLES: readonly (readonly [string, string, ...string[]])[] = [
  [
    'slab length by slab width by thickness',
    '16 cubic feet',
    '12 ft × 4 ft × 4 in ÷ 12 in per ft = 16 cubic feet',
  ],
  [
    'slab length by slab width by thickness, in cubic yards',
    '0.5926 cubic yards',
    '16 cubic feet ÷ 27 cubic feet per cubic yard = 0.5926 cubic yards',
    '12 ft × 4 ft × 4 in ÷ 12 in per ft = 16 cubic feet',
  ],
  [
    'slab length by slab width by thickness plus waste, in bags of 0.45 cubic feet',
    '40 bags',
    '39.11 bags → 40 bags',
    '17.6 cubic feet ÷ 0.45 cubic feet per bag = 39.11 bags',
    '16 cubic feet + 10% (1.6 cubic feet) = 17.6 cubic feet',
    '12 ft × 4 ft × 4 in ÷ 12 in per ft = 16 cubic feet',
  ],
  [
    '(slab length by slab width by thickness) divided by bag yield, rounded up',
    '36 bags',
    '35.56 bags → 36 bags',
    '16 cubic feet ÷ 0.45 cubic feet per bag = 35.56 bags',
    '12 ft × 4 ft × 4 in ÷ 12 in per ft = 16 cubic feet',
  ],
  ['36 bags at bag price', '$233.28', '36 bags × $6.48 per bag = $233.28'],
  ['3 at bag price', '$19.44', '3 bags × $6.48 per bag = $19.44'],
  [
    'slab length by slab width by thickness plus waste, in bags of bag yield',
    '40 bags',
    '39.11 bags → 40 bags',
    '17.6 cubic feet ÷ 0.45 cubic feet per bag = 39.11 bags',
    '16 cubic feet + 10% (1.6 cubic feet) = 17.6 cubic feet',
    '12 ft × 4 ft × 4 in ÷ 12 in per ft = 16 cubic feet',
  ],
  [
    'joists every 16 in along deck width',
    '12 joists',
    '⌈14 ft ÷ 16 in⌉ + 1 = ⌈10.5⌉ + 1 = 12 joists',
  ],
  ['joists every 16 in along 12 ft', '10 joists', '⌈12 ft ÷ 16 in⌉ + 1 = ⌈9⌉ + 1 = 10 joists'],
  [
    'total rise divided by 7 risers',
    '7 1/2 in per riser',
    '52 1/2 in ÷ 7 risers = 7 1/2 in per riser',
  ],
  ['total rise divided by 7 3/4 in, rounded up', '7', '6.77 → 7', '52 1/2 in ÷ 7 3/4 in = 6.77'],
  [
    '1,260 screws in boxes of 350 screws',
    '4 boxes',
    '3.6 boxes → 4 boxes',
    '1,260 screws ÷ 350 screws per box = 3.6 boxes',
  ],
  [
    '640 sq ft at 40 sq ft per hour, at $50 per hour',
    '$800.00',
    '16 hours × $50 per hour = $800.00',
    '640 sq ft ÷ 40 sq ft per hour = 16 hours',
  ],
  [
    'slab length by slab width plus 10% at $5 per sq ft',
    '$264.00',
    '52.8 sq ft × $5 per sq ft = $264.00',
    '48 sq ft + 10% (4.8 sq ft) = 52.8 sq ft',
    '12 ft × 4 ft = 48 sq ft',
  ],
  [
    '$1,000 marked up 20%',
    '$1,200.00',
    '$1,000 + 20% ($200.00) = $1,200.00',
    '$200.00 ÷ $1,000 = 20%',
    '$200.00 ÷ $1,200.00 = 16.67%',
  ],
  [
    '$1,000 for a 20% margin',
    '$1,250.00',
    '$1,000 ÷ (1 − 20%) = $1,250.00',
    '20% × $1,250.00 = $250.00',
    '$1,250.00 − $250.00 = $1,000.00',
  ],
  [
    '$7,500 for 10% overhead and 15% profit',
    '$10,000.00',
    '$7,500 ÷ (1 − 10% − 15%) = $10,000.00',
    '10% × $10,000.00 = $1,000.00',
    '15% × $10,000.00 = $1,500.00',
    '$10,000.00 − $1,000.00 − $1,500.00 = $7,500.00',
  ],
  ['12 ft at 1/4 in per ft', '3 in', '12 ft × 1/4 in per ft = 3 in'],
  [
    'fewest balusters of 1 1/2 in across 72 in with gaps under 4 in',
    '13 balusters',
    '(72 in − 13 × 1 1/2 in) ÷ 14 = 3 3/4 in < 4 in → 13 balusters',
    '(72 in − 12 × 1 1/2 in) ÷ 13 = 4 1/8 in, a hair over',
  ],
  ['$1,000 ÷ (1 − 10% − 15%)', '$1,333.33', '$1,000 ÷ 0.75 = $1,333.33', '1 − 10% − 15% = 0.75'],
  [
    '$1,000 plus 12% overhead plus 10% profit',
    '$1,232.00',
    '$1,120.00 + 10% ($112.00) = $1,232.00',
    '$1,000 + 12% ($120.00) = $1,120.00',
  ],
  ['10.8 ft', '10 ft 9 5/8 in, a hair shy'],
  ['8:30 hours at $50 per hour', '$425.00', '8:30 hours × $50 per hour = $425.00'],
  ['50 boards plus 10%, rounded up', '55 boards', '50 boards + 10% (5 boards) = 55 boards'],
  ['2/3 times 3, rounded up', '2', '2/3 × 3 = 2'],
  ['1 ft divided by 3, times 3', '1 ft', '4 in × 3 = 1 ft', '1 ft ÷ 3 = 4 in'],
  ['10 ft - 7-1/2 in', '9 ft 4 1/2 in', '10 ft − 7 1/2 in = 9 ft 4 1/2 in'],
  [
    'thickness or 5 in, whichever is greater, plus 1 in',
    '6 in',
    '5 in + 1 in = 6 in',
    '4 in or 5 in → 5 in',
  ],
  [
    '5 pieces of 9 ft from 16 ft boards',
    '5 boards',
    '5 pieces ÷ 1 piece per board = 5 boards',
    '16 ft − 1 × 9 ft = 7 ft',
    '16 ft ÷ 9 ft = 1.78 → 1 piece',
  ],
  [
    '3 people times 8 hours at $50 per hour per person',
    '$1,200.00',
    '3 people × 8 hours × $50 per hour per person = $1,200.00',
  ],
  ['diagonal of 3 ft and 4 ft', '5 ft', '√(3 ft × 3 ft + 4 ft × 4 ft) = 5 ft'],
  ['6 in where thickness is less than 4 in, otherwise 4 in', '4 in', '4 in < 4 in → no'],
  [
    '0.6 cubic yards rounded up to the next 1/4 cubic yard',
    '0.75 cubic yards',
    '0.6 cubic yards → 0.75 cubic yards',
  ],
  [
    '22 2x8 x 14 ft at $1.20 per ft',
    '$369.60',
    '308 ft × $1.20 per ft = $369.60',
    '22 pieces × 14 ft = 308 ft',
  ],
  [
    '22 2x8 x 14 ft',
    '410.67 board feet',
    '22 pieces × 2 in × 8 in × 14 ft = 410.67 board feet',
    '2x8 → 2 in',
    '2x8 → 8 in',
  ],
  ['what share $42 is of $60', '70%', '$42 ÷ $60 = 70%'],
  ['what share $42 is of $60, times 2', '140%', '70% × 2 = 140%', '$42 ÷ $60 = 70%'],
  [
    'thickness is at least 4 in and slab width is under 5 ft',
    'yes',
    'yes and yes → yes',
    '4 ft < 5 ft → yes',
    '4 in ≥ 4 in → yes',
  ],
];

describe('the language’s examples are worked line by line', () => {
  it.each(EXAMPLES)('%s is %s', (formula, shown, ...lines) => {
    const working = workingFor(formula);
    expect(working.shown).toBe(shown);
    expect(numbersIn(working)).toEqual(lines);
  });

  it.each([
    '36 boards at bag price',
    'slab length plus bag price',
    'total of $100, $100 and $100 plus 10%',
    '12 ft rounded up',
    'slab lenght by 2',
    'direct cost plus $50 where slab width is more than 100 ft, otherwise $0',
    '16 1/2 in boards',
    '12 by 4 ft',
  ])('%s has one step, which says what is wrong and how to mend it', (formula) => {
    const { shown, steps } = workingFor(formula);
    expect(shown).toBe('no value yet');
    expect(steps).toHaveLength(1);
    expect(steps[0]?.words).not.toBe('');
    expect(steps[0]?.note).toMatch(/\w/);
    expect(steps[0]?.result).toBe('no value yet');
  });
});

/** Invented. */
const SPANS = 'Spans:\n  | size | span |\n  |---|---|\n  | 2x6 | 3 ft |\n  | 2x8 | 9 ft |';

/** For every form of the tree a formula that is one, and what its step says. */
const FORMS: Readonly<Record<Exclude<Formula['kind'], 'hole'>, readonly [string, string]>> = {
  amount: ['4 in', 'given'],
  range: ['13 hours, 12 at best, 16 at worst', 'given'],
  words: ['"hem-fir"', 'given'],
  size: ['2x8', 'given'],
  sized: ['22 2x8 x 14 ft', '22 pieces of 2x8 by 14 ft, by its nominal size'],
  'yes-no': ['yes', 'given'],
  pi: ['pi times 2', 'pi times 2'],
  name: ['slab length', 'the same as slab length'],
  binary: ['slab length less 6 in', 'slab length less 6 in'],
  negative: ['-(slab length)', 'taken away: slab length'],
  comparison: ['thickness is not 4 in', 'thickness is not 4 in'],
  between: ['thickness is between 3 in and 5 in', 'thickness is between 3 in and 5 in'],
  and: [
    'thickness is 4 in and slab width is 4 ft',
    'both have to hold: thickness is 4 in and slab width is 4 ft',
  ],
  or: [
    'thickness is 5 in or slab width is 4 ft',
    'one of them has to hold: thickness is 5 in or slab width is 4 ft',
  ],
  not: ['not thickness is 4 in', 'it holds where this does not: thickness is 4 in'],
  condition: ['$6 where thickness is 4 in, otherwise $4', '$6, because thickness is 4 in'],
  'in-units': ['slab length, in inches', 'slab length in inches'],
  'in-packs': ['slab length in 5 ft boards', 'rounded up to whole boards'],
  'as-noun': ['55 boards, as pieces', '55 boards counted as pieces'],
  rounded: [
    'slab length rounded down to the next 5 ft',
    'slab length rounded down to a whole step of 5 ft',
  ],
  'marked-up': [
    'direct cost marked up 20%',
    'direct cost marked up 20%, taken of the cost, not of the answer',
  ],
  'for-shares': [
    'direct cost for a 20% margin',
    'direct cost for a 20% margin, taken of the answer, not of the cost',
  ],
  limited: ['slab length not less than 15 ft', 'slab length not less than 15 ft, so raised to it'],
  pick: [
    'the lesser of slab length and slab width',
    'the lesser of slab length and slab width: slab width',
  ],
  list: ['average of $10, $20 and $45', 'average of $10, $20 and $45'],
  'part-of': ['10% of direct cost', '10% of direct cost'],
  'what-share': ['what share $42 is of direct cost', 'what share $42 is of direct cost'],
  power: ['slab length squared', 'slab length squared'],
  'square-root': ['square root of 2', 'square root of 2'],
  diagonal: [
    'diagonal of slab length and slab width',
    'diagonal of slab length and slab width: the root of both squares together',
  ],
  circle: ['circle area for 12 in diameter', 'circle area for 12 in diameter'],
  triangle: [
    'triangle area for sides 3 ft, 4 ft and 5 ft',
    'triangle area: half the way round, times how much more it is than each side; then the square root',
  ],
  pieces: [
    '5 pieces of 9 ft from 16 ft boards',
    '5 pieces, 1 piece from each board, which comes out whole',
  ],
  spaced: [
    'joists every 16 in along deck width, neither end',
    'joists every 16 in along deck width: one fewer than the spaces, rounded up, with both ends left open',
  ],
  fewest: [
    'fewest balusters of 1 1/2 in across 72 in with gaps of at most 4 in',
    'fewest balusters of 1 1/2 in across 72 in that leave gaps of at most 4 in',
  ],
  'even-gap': [
    'even gap for 13 balusters of 1 1/2 in across 72 in',
    'even gap for 13 balusters of 1 1/2 in across 72 in: what they leave, split over one gap more than there are of them',
  ],
  column: ['total of span in spans', 'total of span in spans, 2 rows'],
  'row-count': ['how many spans', 'the rows of spans'],
  'look-up': [
    'read size off spans for span at least slab width',
    'read size off spans for span at least slab width',
  ],
  recap: ['total of material in Landing', 'total of material in Landing, 0 lines'],
  bracket: ['(slab length plus 1 ft)', 'slab length plus 1 ft'],
};

describe('every form of the language has words of its own', () => {
  it.each(Object.entries(FORMS))('%s', (_, [formula, words]) => {
    expect(workingFor(formula, [...GIVENS, SPANS]).steps[0]?.words).toBe(words);
  });
});

describe('of what a share was taken is said', () => {
  const said = (formula: string): readonly string[] =>
    stepsIn(workingFor(formula).steps).map((step) => step.words);

  it('by name where what stands before it has one', () => {
    expect(said('slab length plus waste')).toContain('plus waste, 10% of slab length');
    expect(said('slab length less 5% discount')).toContain('less 5% discount, of slab length');
  });

  it('by its amount where it has none, so that shares one after another are told apart', () => {
    expect(said('$1,000 plus 12% overhead plus 10% profit')).toEqual([
      'plus 10% profit, of $1,120.00',
      'plus 12% overhead, of $1,000',
    ]);
  });

  it('for shares that are added to one another', () => {
    expect(said('waste plus 5%')[0]).toBe('waste plus 5%, shares of the same whole');
  });

  it('for shares taken from a whole', () => {
    expect(said('$1,000 ÷ (1 − 10% − 15%)')).toContain(
      'what is left of the whole after 10% and 15%',
    );
  });

  it('with a proof that a markup is of the cost and a margin of the answer', () => {
    expect(said('$1,000 marked up 20%').slice(1)).toEqual([
      'check: the share of the cost, as asked',
      'of the answer it is less: a markup, not a margin',
    ]);
    expect(said('$7,500 for 10% overhead and 15% profit').slice(1)).toEqual([
      'check: 10% overhead of the answer',
      'check: 15% profit of the answer',
      'check: the rest is $7,500',
    ]);
  });

  it('for shares that cells hold', () => {
    const words = said('direct cost for a margin of waste');
    expect(words[0]).toContain('waste, 10%');
    expect(words).toContain('check: the rest is direct cost');
  });
});

describe('units that cancel are struck', () => {
  const top = (formula: string, step = 0): string =>
    marked(stepsIn(workingFor(formula, GIVENS).steps)[step]);

  it.each([
    ['36 bags at bag price', '36 ~bags~ × $6.48 per ~bag~ = $233.28'],
    ['640 sq ft at 40 sq ft per hour', '640 ~sq ft~ ÷ 40 ~sq ft~ per hour = 16 hours'],
    [
      'slab length by slab width by thickness divided by bag yield',
      '16 ~cubic feet~ ÷ 0.45 ~cubic feet~ per bag = 35.56 bags',
    ],
    ['deck width divided by 16 in', '14 ~ft~ ÷ 16 ~in~ = 10.5'],
    ['what share $42 is of $60', '~$~42 ÷ ~$~60 = 70%'],
    [
      '3 people times 8 hours at $50 per hour per person',
      '3 ~people~ × 8 ~hours~ × $50 per ~hour~ per ~person~ = $1,200.00',
    ],
    ['12 ft at 1/4 in per ft', '12 ~ft~ × 1/4 in per ~ft~ = 3 in'],
    ['12 ft 6 in divided by 5 ft', '12 ~ft~ 6 ~in~ ÷ 5 ~ft~ = 2.5'],
    [
      'slab length by slab width by thickness, in cubic yards',
      '16 ~cubic feet~ ÷ 27 ~cubic feet~ per cubic yard = 0.5926 cubic yards',
    ],
  ])('%s: %s', (formula, line) => {
    expect(top(formula)).toBe(line);
  });

  it('in a product only where they come out even: feet times feet against square feet', () => {
    expect(top('12 ft times 4 ft times (1 ÷ 8 sq ft)')).toContain('~ft~ × 4 ~ft~');
  });

  it.each([
    ['total rise divided by 7 risers', '52 1/2 in ÷ 7 risers = 7 1/2 in per riser'],
    ['12 joists times 10 ft', '12 joists × 10 ft = 120 ft'],
    ['slab length by slab width', '12 ft × 4 ft = 48 sq ft'],
    ['$10 plus $20', '$10 + $20 = $30.00'],
    ['slab length plus waste', '12 ft + 10% (1.2 ft) = 13 ft 2 3/8 in, a hair over'],
  ])('and nothing else is: %s', (formula, line) => {
    expect(top(formula)).not.toContain('~');
    expect(top(formula)).toBe(line);
  });
});

describe('units that do not meet stand with what one makes of the other', () => {
  it.each([
    [
      '12 bags at 10 min per bag, at $45 per hour',
      '120 min ÷ 60 min per hour × $45 per hour = $90.00',
    ],
    [
      'slab length by slab width by thickness, at 1.5 tons per cubic yard',
      '16 cubic feet ÷ 27 cubic feet per cubic yard × 1.5 tons per cubic yard = 0.8889 tons',
    ],
    [
      'slab length by slab width by thickness, at 0.5 cubic yards per hour',
      '16 cubic feet ÷ 27 cubic feet per cubic yard ÷ 0.5 cubic yards per hour = 1.19 hours',
    ],
    ['9 in at 1/4 in per ft', '9 in ÷ 12 in per ft × 1/4 in per ft = 3/16 in'],
    [
      '17 cubic feet rounded up to the next 1/4 cubic yard',
      '17 cubic feet ÷ 27 cubic feet per cubic yard = 0.6296 cubic yards → 0.75 cubic yards',
    ],
  ])('%s', (formula, line) => {
    expect(numbersIn(workingFor(formula))[0]).toBe(line);
  });

  it('and where they do meet nothing is put between', () => {
    expect(numbersIn(workingFor('2 hours at $45 per hour'))).toEqual([
      '2 hours × $45 per hour = $90.00',
    ]);
    expect(numbersIn(workingFor('12 ft 6 in at $2 per ft'))).toEqual([
      '12 ft 6 in × $2 per ft = $25.00',
    ]);
  });

  it('each of them struck', () => {
    const [top] = workingFor('12 bags at 10 min per bag, at $45 per hour').steps;
    expect(marked(top)).toBe('120 ~min~ ÷ 60 ~min~ per ~hour~ × $45 per ~hour~ = $90.00');
  });
});

describe('what is worked reads as a builder would say it', () => {
  const top = (formula: string): readonly [string, string, string | null] => {
    const [step] = workingFor(formula, [
      ...GIVENS,
      SPANS,
      'Wish: 15%',
      'Posts: 3 posts',
      'Off: 0 ft minus 2 in',
    ]).steps;
    if (!step) throw new Error(`${formula} has no step`);
    return [step.words, step.numbers, step.note];
  };

  it.each([
    [
      'posts is at least 5 posts',
      'posts is at least 5 posts',
      '3 posts ≥ 5 posts → no',
      '2 posts too few.',
    ],
    [
      'posts is at most 1 post',
      'posts is at most 1 post',
      '3 posts ≤ 1 post → no',
      '2 posts too many.',
    ],
    ['thickness minus off', 'thickness less off', '4 in − (−2 in) = 6 in', null],
    [
      'total rise plus 1/3 in, rounded up to the next 1 in',
      'rounded up to the next inch',
      '52.83 in → 53 in',
      null,
    ],
    ['slab length by slab width in sq ft', 'in sq ft, which it is already', '', null],
    ['12 boards, as boards', '12 boards counted as boards, which they are already', '', null],
    [
      '$68 where slab width is 4 ft, otherwise $0',
      '$68, because slab width is 4 ft',
      '',
      'Not taken: $0.',
    ],
    [
      'thickness where slab width is 5 ft, otherwise (thickness plus 1 in)',
      'otherwise thickness plus 1 in: “slab width is 5 ft” does not hold',
      '',
      'Not taken: thickness.',
    ],
    [
      'direct cost for a margin of wish',
      'direct cost for a margin of wish, 15%, taken of the answer, not of the cost',
      '$7,500.00 ÷ (1 − 15%) = $8,823.53',
      null,
    ],
    [
      'direct cost for a 18% margin',
      'direct cost for an 18% margin, taken of the answer, not of the cost',
      '$7,500.00 ÷ (1 − 18%) = $9,146.34',
      null,
    ],
    ['posts of 2 ft from 8 ft boards', 'rounded up to whole boards', '0.75 boards → 1 board', null],
    [
      'read size off spans for span at least slab width',
      'read size off spans for span at least slab width',
      'span at least 4 ft → 2x8',
      '2x8 is the first that fits.',
    ],
    [
      'read span off spans for size 2x6',
      'read span off spans for size 2x6',
      'size 2x6 → 3 ft',
      '2x6 is the first that fits.',
    ],
  ] as const)('%s', (formula, ...said) => {
    expect(top(formula)).toEqual(said);
  });

  it('pieces by their name alone, and what is left of a board off a tape', () => {
    const steps = stepsIn(
      workingFor('posts of 30 1/2 in from stock boards', [
        'Posts: 3 posts',
        'Stock: 7.5 ft rounded up to the next 2 ft',
      ]).steps,
    );
    expect(steps.map(({ words }) => words)).toContain(
      'posts, 3 pieces from each board, which comes out whole',
    );
    expect(steps.find(({ words }) => words === 'left of each one')?.result).toBe('4 1/2 in');
  });

  it('a condition that can not be told yet has no answer in its place', () => {
    const [step] = workingFor('1 where finish is "broom", otherwise 0', ['Finish: ?']).steps;
    expect(step?.parts[0]?.result ?? step?.result).not.toMatch(/[()]/);
  });
});
