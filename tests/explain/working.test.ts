// What a working holds beyond its lines: sources, cautions, decisions, what is left out, set by hand or
// missing, and that it stays within bounds however much there is to tell.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { Step } from '../../src/explain/step.ts';
import { LEVELS_AT_ONCE, PARTS_AT_ONCE, STEPS_AT_ONCE } from '../../src/explain/working.ts';
import { formula } from '../language/grammar.ts';
import { landing, notebook, numbersIn, stepsIn, workingFor } from './kestrel.ts';

// Many random formulas and every cell of long templates: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 60_000 });

const FOLLOWED = [
  'kestrel-court',
  'slab',
  'landing',
  'steps',
  'low-wall',
  'path-and-planting',
  'labour-rates',
  'general',
  'summary',
];

/** Bags for the landing at Kestrel Court; prices are invented. */
const BAGS = [
  'Slab length: 12 ft\n  - from: measured on site, 2026-03-03',
  'Slab width: 4 ft',
  'Thickness: 4 in\n  - from: plan\n  - caution: Thinner than 3 1/2 in cracks.',
  'Waste: 10%\n  - from: rule of thumb',
  'Bag yield: 0.45 cubic feet per bag\n  - from: bag label, 60 lb mix',
  'Bag price: $6.48 per bag\n  - from: invented price',
  'Slab volume: slab length by slab width by thickness',
  'Bags to buy: slab volume plus waste, divided by bag yield, rounded up',
  'Concrete: bags to buy at bag price\n  - cost: material',
  'Mix and place: bags to buy at 8 min per bag, at $50 per hour\n  - cost: labour',
] as const;

function named(steps: readonly Step[], name: string): readonly Step[] {
  return stepsIn(steps).filter((step) => step.name === name);
}

describe('a working', () => {
  it('goes down from the answer, through the cells it rests on', () => {
    const { shown, steps } = landing(...BAGS).working('Concrete');
    expect(shown).toBe('$259.20');
    expect(steps.map((step) => [step.name, step.words, step.numbers])).toEqual([
      ['Concrete', 'bags to buy at bag price', '40 bags × $6.48 per bag = $259.20'],
      ['Bags to buy', 'rounded up to whole bags', '39.11 bags → 40 bags'],
      [null, 'divided by bag yield', '17.6 cubic feet ÷ 0.45 cubic feet per bag = 39.11 bags'],
      [
        null,
        'plus waste, 10% of slab volume',
        '16 cubic feet + 10% (1.6 cubic feet) = 17.6 cubic feet',
      ],
      [
        'Slab volume',
        'slab length by slab width by thickness',
        '12 ft × 4 ft × 4 in ÷ 12 in per ft = 16 cubic feet',
      ],
    ]);
  });

  it('has the result of each step in the line above it, digit for digit', () => {
    const { steps } = landing(...BAGS).working('Concrete');
    for (const [place, step] of steps.slice(1).entries()) {
      expect(steps[place]?.numbers).toContain(step.result);
    }
  });

  it('marks the names in its words with their cells', () => {
    const book = landing(...BAGS);
    const [top] = book.working('Concrete').steps;
    expect(top?.said).toEqual([
      { text: 'bags to buy', cell: book.idOf('Bags to buy') },
      { text: ' at ', cell: null },
      { text: 'bag price', cell: book.idOf('Bag price') },
    ]);
  });

  it('ends in the givens, each with where it comes from and its caution', () => {
    const volume = landing(...BAGS).working('Slab volume').steps[0];
    expect(volume?.parts.map((p) => [p.name, p.words, p.result, p.source, p.caution])).toEqual([
      ['Slab length', 'given', '12 ft', 'measured on site, 2026-03-03', null],
      ['Slab width', 'given', '4 ft', null, null],
      ['Thickness', 'given', '4 in', 'plan', 'Thinner than 3 1/2 in cracks.'],
    ]);
  });

  it('carries the source and caution of a check on its first step', () => {
    const { shown, steps } = landing(
      'Unit rise: 7 1/2 in',
      'Riser check: unit rise is at most 7 3/4 in\n  - caution: Too steep.\n  - from: Residential code, R311.7.5.1',
    ).working('Riser check');
    expect(shown).toBe('yes');
    expect(steps[0]).toMatchObject({
      numbers: '7 1/2 in ≤ 7 3/4 in → yes',
      source: 'Residential code, R311.7.5.1',
      caution: 'Too steep.',
      note: '1/4 in to spare.',
    });
  });

  it.each([
    ['thickness is at most 3 in', '1 in too much.'],
    ['thickness is at least 5 in', '1 in too little.'],
    ['thickness is more than 4 in', 'Exactly at the limit.'],
    ['thickness is less than 1 ft', '8 in to spare.'],
  ])('says by how much %s holds or misses: %s', (formula, note) => {
    expect(workingFor(formula).steps[0]?.note).toBe(note);
  });

  it('says what was decided in reading the formula', () => {
    expect(workingFor('3 at bag price').steps[0]?.note).toBe('3 is read as 3 bags.');
    expect(workingFor('8 hours plus 2 plus 1').steps[0]?.note).toContain('2 is read as 2 hours.');
  });

  it('says how a given was written where it is shown otherwise', () => {
    const long = landing('Run: 10.8 ft', 'Deposit: $7,500');
    expect(long.working('Run').steps[0]?.note).toBe('Written as 10.8 ft.');
    expect(long.working('Deposit').steps[0]?.note).toBeNull();
  });

  it('says of a range its plain value, where it comes from, and both of its ends', () => {
    const book = landing(
      'Digging: 13 hours, 12 at best, 16 at worst\n  - from: own hours',
      'Hauling: 3 to 5 hours',
      'Labour: digging plus hauling, at $50 per hour',
    );
    const { shown, steps } = book.working('Labour');
    expect([shown, steps[1]?.numbers]).toEqual(['$850.00', '13 hours + 4 hours = 17 hours']);
    expect(steps[1]?.parts.map((p) => [p.name, p.result, p.source, p.note])).toEqual([
      ['Digging', '13 hours', 'own hours', '12 hours at best, 16 hours at worst.'],
      [
        'Hauling',
        '4 hours',
        null,
        'The lesser is taken as best: 3 hours. The middle of 3 hours at best and 5 hours at worst.',
      ],
    ]);
    expect(book.text('Labour')).toContain(
      '  Digging, 13 hours: own hours\n    12 hours at best, 16 hours at worst.\n',
    );
  });

  it('says nothing of the ends of a range that is set by hand', () => {
    const { steps } = landing(
      'Digging: 12 to 16 hours\n  - by hand: 20 hours\n  - from: the ground is frozen',
    ).working('Digging');
    expect(steps[0]).toMatchObject({ result: '20 hours', source: 'the ground is frozen' });
    expect(JSON.stringify(steps)).not.toContain('16 hours at worst.');
  });

  it('lists what the number goes into, in the order of the notebook', () => {
    const book = landing('B: rod plus 2 ft', 'Rod: 1 ft', 'C: rod plus 1 ft');
    expect(book.working('Rod').goesInto.map((into) => into.name)).toEqual(['B', 'C']);
    const parts = notebook('# K\n\n## One\n- Z: b times 2\n\n## Two\n- B: 1 ft\n- Y: b times 3\n');
    expect(parts.working('B').goesInto.map((into) => into.name)).toEqual(['Z', 'Y']);
  });
});

describe('a term used twice', () => {
  it('is worked once and referred to afterwards', () => {
    const { steps } = landing(...BAGS, 'Twice: slab volume plus slab volume times 2').working(
      'Twice',
    );
    const volumes = named(steps, 'Slab volume');
    expect(volumes.map((step) => step.referredTo)).toEqual([false, true]);
    expect(volumes[0]?.parts).toHaveLength(3);
    expect(volumes[1]).toMatchObject({
      result: '16 cubic feet',
      parts: [],
      words: 'as worked above',
    });
  });

  it('without a name of its own is referred to in the same way, in the same formula or in another', () => {
    const { steps } = landing(
      ...BAGS,
      'Edge: (slab length plus slab width) times 2 by thickness',
      'Faces: (slab length plus slab width) by thickness plus edge',
    ).working('Faces');
    const sums = stepsIn(steps).filter(({ words }) =>
      words.startsWith('slab length plus slab width'),
    );
    expect(
      sums.map(({ words, numbers, result, referredTo }) => [words, numbers, result, referredTo]),
    ).toEqual(
      [
        ['slab length plus slab width, as worked above', '', '16 ft', true],
        ['slab length plus slab width', '12 ft + 4 ft = 16 ft', '16 ft', false],
      ].toReversed(),
    );
  });

  it('in two rows of a table is worked in both: each has amounts of its own', () => {
    const rows =
      '\n  | length | half: length divided by 2 |\n  |---|---|\n  | 4 ft | |\n  | 6 ft | |';
    const { steps } = landing(`Bays:${rows}`, 'All: total of half in bays').working('All');
    const halves = steps[0]?.parts.map((part) => (part.open?.() ?? part).numbers);
    expect(halves).toEqual(['4 ft ÷ 2 = 2 ft', '6 ft ÷ 2 = 3 ft']);
  });

  it('is worked at its first mention from the top, wherever that is', () => {
    const { steps } = landing(...BAGS, 'All: total cost of Landing').working('All');
    const bags = named(steps[0]?.parts.flatMap((p) => [p.open?.() ?? p]) ?? [], 'Bags to buy');
    expect(bags.map((step) => step.referredTo)).toEqual([false, true]);
  });
});

describe('set by hand', () => {
  const cells = [
    'Run: 10.8 ft',
    'Delivery: run at $1.23 per ft\n  - cost: equipment\n  - by hand: $15\n  - from: agreed on the phone',
  ] as const;

  it('the value by hand stands on top, with why, what the formula comes to and the difference', () => {
    const { shown, steps } = landing(...cells).working('Delivery');
    expect(shown).toBe('$15.00');
    expect(steps[0]).toMatchObject({
      name: 'Delivery',
      words: 'set by hand',
      result: '$15.00',
      source: 'agreed on the phone',
      note: 'The formula comes to $13.28; by hand it is $1.72 more.',
    });
    expect(steps.slice(1).map((step) => step.numbers)).toEqual([
      '$13.284 → $13.28',
      '10.8 ft × $1.23 per ft = $13.284',
    ]);
  });

  it.each([
    ['2 ft', 'The formula comes to 10 ft; by hand it is 8 ft less.'],
    ['120 in', 'The formula comes to 10 ft as well.'],
  ])('%s beside 10 ft: %s', (hand, note) => {
    const { steps } = landing('Rod: 5 ft', `B: rod times 2\n  - by hand: ${hand}`).working('B');
    expect(steps[0]?.note).toBe(note);
  });

  it('beside a formula at fault says that there is none', () => {
    const { steps } = landing('B: 1 ft plus $1\n  - by hand: 2 ft').working('B');
    expect(steps.map((step) => step.words)).toEqual([
      'set by hand',
      "A length and money can't be added.",
    ]);
  });
});

describe('what is missing', () => {
  const cells = [
    'Path area: ? sq ft',
    'Path price: $4 per sq ft',
    'Path: path area at path price\n  - cost: subcontract',
    'Stone: $100\n  - cost: material',
    'Turf: $?\n  - cost: subcontract',
    'Odd: 1 ft plus $1\n  - cost: fee',
    'After: odd plus $5',
    'All: total cost of Landing',
    'Price: all marked up 10%',
  ] as const;
  const book = landing(...cells);

  it('stands as ? in a line without a result, and is named', () => {
    const { shown, steps } = book.working('Path');
    expect(shown).toBe('not yet known: needs Path area');
    expect(steps[0]).toMatchObject({
      numbers: '? × $4.00 per sq ft',
      result: 'not yet known: needs Path area',
    });
    expect(steps[0]?.parts[0]).toMatchObject({ name: 'Path area', result: 'not yet known' });
  });

  it('is left out of a total, which says so, however far it is carried', () => {
    const left = 'So far: leaves out Path, Turf and Odd, which have no value yet.';
    expect(book.working('All')).toMatchObject({ shown: '$100.00 so far' });
    expect(book.working('All').steps[0]).toMatchObject({
      words: 'total cost of Landing, 1 line',
      numbers: '',
      note: left,
    });
    expect(book.working('Price').steps[0]?.note).toBe(left);
    expect(book.working('All').steps[0]?.parts.map((p) => [p.name, p.result])).toEqual([
      ['Path', 'not yet known: needs Path area'],
      ['Stone', '$100.00'],
      ['Turf', 'not yet known'],
      ['Odd', 'no value yet'],
    ]);
  });

  it('because of a fault is waited for, and the fault stands below', () => {
    const { shown, steps } = book.working('After');
    expect(shown).toBe('waiting for Odd');
    expect(steps[0]?.words).toBe('waiting for Odd');
    expect(steps[0]?.parts[0]).toMatchObject({ name: 'Odd', result: 'no value yet' });
  });

  it('because of a division by nothing is followed to the nothing', () => {
    const { steps } = landing('Rod: 4 ft', 'B: rod minus 4 ft', 'C: 12 ft ÷ b').working('C');
    expect(steps.map((step) => step.numbers)).toEqual(['', '12 ft ÷ 0 in', '4 ft − 4 ft = 0 in']);
  });

  it('because of a circle names the way round and ends', () => {
    const { steps } = landing('Rod: pole plus 1 ft', 'Pole: rod plus 1 ft').working('Rod');
    expect(steps).toHaveLength(1);
    expect(steps[0]?.note).toMatch(/Rod needs Pole needs Rod/);
  });
});

describe('a cost line', () => {
  it('is rounded to the cent in a step of its own where there is more to it', () => {
    const { steps } = landing(
      'Gravel: 0.5333 cubic yards at $137.77 per cubic yard\n  - cost: material',
    ).working('Gravel');
    expect(steps.map((step) => [step.words, step.numbers])).toEqual([
      ['rounded to the cent, as every cost line is', '$73.473 → $73.47'],
      [
        '0.5333 cubic yards at $137.77 per cubic yard',
        '0.5333 cubic yards × $137.77 per cubic yard = $73.473',
      ],
    ]);
  });

  it('in whole cents has no such step', () => {
    expect(landing(...BAGS).working('Concrete').steps[0]?.words).toBe('bags to buy at bag price');
  });
});

describe('a recap', () => {
  it('adds its lines with their amounts, each to be opened in place', () => {
    const [top] = landing(...BAGS, 'All: total cost of Landing').working('All').steps;
    expect(top?.numbers).toBe('$259.20 + $266.67 = $525.87');
    expect(top?.parts.map((p) => [p.name, p.result, p.open !== null])).toEqual([
      ['Concrete', '$259.20', true],
      ['Mix and place', '$266.67', true],
    ]);
    const opened = top?.parts[0]?.open?.();
    expect(opened).toMatchObject({
      name: 'Concrete',
      numbers: '40 bags × $6.48 per bag = $259.20',
    });
    expect(opened?.parts.map((p) => p.name)).toEqual([
      'Bag price',
      'Bags to buy',
      null,
      null,
      'Slab volume',
    ]);
  });

  it('of very many lines says how many, and opens them by the stretch', () => {
    const lines = Array.from({ length: 100 }, (_, i) => `L${i}: $${i + 1}.01\n  - cost: material`);
    const [top] = landing(...lines, 'All: total cost of Landing').working('All').steps;
    expect(top).toMatchObject({
      words: 'total cost of Landing, 100 lines',
      numbers: '100 lines added = $5,051.00',
    });
    expect(top?.parts).toHaveLength(PARTS_AT_ONCE + 1);
    const more = top?.parts.at(-1);
    expect(more?.words).toBe('60 more');
    expect(
      more
        ?.open?.()
        .parts.map((p) => p.result)
        .slice(0, 2),
    ).toEqual(['$41.01', '$42.01']);
  });
});

describe('however much there is to tell', () => {
  const CHAIN = 10_000;
  const chain = landing(
    'C0: 1 ft',
    ...Array.from({ length: CHAIN }, (_, i) => `C${i + 1}: C${i} plus 1 ft`),
  );

  it('a chain of 10,000 cells is told by the stretch, and goes on where it was left', () => {
    const { shown, steps } = chain.working(`C${CHAIN}`);
    expect(shown).toBe('10,001 ft');
    expect(steps).toHaveLength(STEPS_AT_ONCE);
    expect(steps.at(-1)?.name).toBe(`C${CHAIN - STEPS_AT_ONCE + 1}`);
    const opened = steps.at(-1)?.open?.();
    expect(opened?.numbers).toBe(steps.at(-1)?.numbers);
    expect(opened?.parts).toHaveLength(STEPS_AT_ONCE);
    expect(opened?.parts[0]?.name).toBe(`C${CHAIN - STEPS_AT_ONCE}`);
  });

  it('opening twice gives the same steps', () => {
    const last = chain.working(`C${CHAIN}`).steps.at(-1);
    expect(last?.open?.()).toBe(last?.open?.());
  });

  it('thousands of plus signs in a row are twelve to a line', () => {
    const { shown, steps } = landing(`A: 1${'+1'.repeat(2000)}`).working('A');
    expect(shown).toBe('2,001');
    expect(steps[0]?.numbers).toBe('1,989 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1 = 2,001');
    expect(steps).toHaveLength(STEPS_AT_ONCE);
  });

  it('brackets within brackets fold after so many levels', () => {
    const deep = `${'1 ft plus ('.repeat(150)}2 ft times 2${')'.repeat(150)}`;
    const { steps } = landing(`A: ${deep}`).working('A');
    expect(levels(steps)).toBeLessThanOrEqual(LEVELS_AT_ONCE + 2);
    expect(stepsIn(steps).some((step) => step.open !== null)).toBe(true);
  });

  it('cells that double at every step are still worked once each', () => {
    const cells = Array.from(
      { length: 60 },
      (_, i) => `D${i + 1}: (D${i} times 1) plus (D${i} times 2)`,
    );
    const { steps } = landing('D0: 1 ft', ...cells).working('D60');
    expect(stepsIn(steps).length).toBeLessThan(STEPS_AT_ONCE * 4);
  });
});

function levels(steps: readonly Step[]): number {
  return steps.length === 0 ? 0 : 1 + Math.max(...steps.map((step) => levels(step.parts)));
}

/** For a long run: WORKING_RUNS=20000 npx vitest run --project unit tests/explain/working.test.ts */
const LINES = Number(process.env['WORKING_RUNS'] ?? 150);

describe('the numbers of a line', () => {
  const amount = fc.integer({ min: 1, max: 99_999 }).map((n) => n / 100);

  /** Works a line of plain decimals and whole numbers with fractions, with the units taken out, to what stands after its sign. */
  function workedByHand(line: string): { readonly left: number; readonly right: string } {
    const [left = '', right = ''] = line.split(/ [=→] /);
    const plain = left
      .replaceAll(/\d[\d,.]*% \(([^)]*)\)/g, '$1')
      .replaceAll(/[$,]|[a-z]+/g, '')
      .trim();
    const tokens = plain.replaceAll(/(\d) (?=\d+\/)/g, '$1_').split(/\s+/);
    let total = read(tokens[0]);
    for (let i = 1; i < tokens.length; i += 2) {
      const next = read(tokens[i + 1]);
      const sign = tokens[i];
      total =
        sign === '×'
          ? total * next
          : sign === '÷'
            ? total / next
            : sign === '−'
              ? total - next
              : total + next;
    }
    return { left: total, right: right.replaceAll(/[$,]|[a-z]+/g, '').trim() };
  }

  /** `2633_59/60` or `12.5`. */
  function read(number = ''): number {
    const [, whole = '0', over = '0', under = '1'] = /^(?:(\d+)_)?(\d+)\/(\d+)$/.exec(number) ?? [];
    return number.includes('/') ? Number(whole) + Number(over) / Number(under) : Number(number);
  }

  function expectToComeOut(lines: readonly string[]): void {
    for (const line of lines) {
      if (line.includes('→')) continue;
      const { left, right } = workedByHand(line);
      const places = right.includes('/') ? 9 : (right.split('.')[1]?.length ?? 0);
      const off = Math.abs(left - read(right.replace(' ', '_')));
      expect(off, line).toBeLessThanOrEqual(0.5 * 10 ** -places * (1 + 1e-9) + 1e-12 * left);
    }
  }

  it('come out as the line says, as far as its result is shown', () => {
    fc.assert(
      fc.property(amount, amount, amount, fc.integer({ min: 1, max: 60 }), (a, b, price, share) => {
        const { steps } = landing(
          `Boards: ${a} boards ÷ ${b}`,
          `More: boards plus ${share}%`,
          `Cost: more at $${price} per board\n  - cost: material`,
        ).working('Cost');
        expectToComeOut(steps.map((step) => step.numbers));
      }),
      { numRuns: LINES },
    );
  }, 1_800_000);

  it('are written as fractions where digits that are cut would come out on the other side of a half', () => {
    // 2,633.98333… × 0.15 is 395.0975, a half that is rounded up; with digits cut it is less, however many there are.
    const book = landing(
      'Boards: 158039 boards ÷ 60',
      'Cost: boards at $0.15 per board\n  - cost: material',
    );
    expect(numbersIn(book.working('Cost'))).toEqual([
      '$395.098 → $395.10',
      '2,633 59/60 boards × $0.15 per board = $395.098',
      '158,039 boards ÷ 60 = 2,633 59/60 boards',
    ]);
  });

  it('come out on every half, in all its thirds, sevenths and elevenths', () => {
    const parts = fc.constantFrom(3, 6, 7, 9, 11, 12, 13, 21, 33, 60, 99);
    const many = fc.integer({ min: 1, max: 9999 });
    let fractions = 0;
    fc.assert(
      fc.property(many, parts, fc.integer({ min: 1, max: 999 }), (n, under, times) => {
        // The parts come to a whole number of half a thousandth of a dollar.
        const price = ((under * times) / 2000).toFixed(4);
        const { steps } = landing(
          `Boards: ${n} boards ÷ ${under}`,
          `Cost: boards at $${price} per board\n  - cost: material`,
        ).working('Cost');
        const lines = steps.map((step) => step.numbers);
        if (lines.some((line) => line.includes('/'))) fractions++;
        expectToComeOut(lines);
      }),
      // Decimals come out for most; these need their fraction.
      {
        numRuns: LINES,
        examples: [
          [3245, 6, 999],
          [505, 9, 281],
          [1121, 6, 401],
        ],
      },
    );
    expect(fractions).toBeGreaterThanOrEqual(3);
  }, 1_800_000);

  it('have no more digits than it takes', () => {
    const lines = numbersIn(workingFor('16 cubic feet in cubic yards, at $140 per cubic yard'));
    expect(lines).toEqual([
      '0.5926 cubic yards × $140 per cubic yard = $82.96',
      '16 cubic feet ÷ 27 cubic feet per cubic yard = 0.5926 cubic yards',
    ]);
    expect(
      numbersIn(workingFor('16 cubic feet in cubic yards, at $14,000 per cubic yard'))[0],
    ).toBe('0.592593 cubic yards × $14,000 per cubic yard = $8,296.30');
  });
});

describe('whatever is written', () => {
  const cells = [
    'Slab length: 12 ft',
    'Slab width: 3 ft 7 in',
    'Thickness: 4 in',
    'Bags: 40 bags',
    'Waste: 10%',
    'Markup: 15%',
    'Length of run: 10.8 ft',
    'Total rise: 52 1/2 in',
    '# of posts: 7 posts',
  ] as const;

  it('there is a working, and a text of it, with an answer or the reason why there is none', () => {
    fc.assert(
      fc.property(formula, (typed) => {
        const book = landing(...cells, `Answer: ${typed}`);
        const { shown, steps } = book.working('Answer');
        expect(shown).not.toBe('');
        expect(steps[0]?.words).not.toBe('');
        expect(book.text('Answer')).toContain(`Working of Answer: ${shown}\n`);
      }),
      { numRuns: 120 },
    );
  }, 60_000);

  it('every cell of the templates can be followed down, each cell worked once', () => {
    for (const file of FOLLOWED) {
      const path = join(import.meta.dirname, `../../templates/${file}.md`);
      const book = notebook(readFileSync(path, 'utf8'));
      for (const name of book.names) {
        const { steps } = book.working(name);
        const worked = stepsIn(steps).filter(
          (step) => step.cell !== null && !step.referredTo && step.open === null,
        );
        const cells = worked.map((step) => step.cell);
        expect(new Set(cells).size, name).toBe(cells.length);
      }
    }
  });
});
