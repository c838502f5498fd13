// The small reckonings of the page that need no screen.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { LENGTH } from '../../src/quantity/dimension.ts';
import { Nouns } from '../../src/quantity/nouns.ts';
import { type Wanted, completionsAt, namesFor, unitsFor } from '../../src/ui/completing.ts';
import { centsBetween, money, moreOrLess, percentOf, sumOf } from '../../src/ui/money-words.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { foldOf, onPage, onRod, spread } from '../../src/ui/rod-scale.ts';
import { settingsIn, settingsText, settingsToWrite } from '../../src/ui/settings-line.ts';
import { stretches } from '../../src/ui/spots-in.ts';

describe('money in words', () => {
  test.each([
    ['1412.60', '$1,412.60'],
    ['0.05', '$0.05'],
    ['-50.00', '−$50.00'],
    ['1234567890.12', '$1,234,567,890.12'],
  ])('%s is %s', (amount, words) => {
    expect(money(amount, '$')).toBe(words);
  });

  test('differences and sums are exact to the cent', () => {
    expect(moreOrLess('0.30', '0.10', '$')).toBe('$0.20 more');
    expect(moreOrLess('100.00', '2100.05', '$')).toBe('$2,000.05 less');
    expect(moreOrLess('7.00', '7.00', '$')).toBeNull();
    expect(centsBetween('-1.00', '1.00')).toBe(-200n);
    expect(sumOf('-0.05', '0.03')).toBe('-0.02');
    expect(sumOf('9007199254740993.01', '0.01')).toBe('9007199254740993.02');
  });

  test('shares are whole percents, halves up', () => {
    expect(percentOf('0.50', '100.00')).toBe(1);
    expect(percentOf('0.49', '100.00')).toBe(0);
    expect(percentOf('1.00', '0.00')).toBeNull();
  });
});

describe('the scale of the rod', () => {
  const views = [
    { height: 700, scroll: 0, total: 5000 },
    { height: 700, scroll: 2000, total: 5000 },
    { height: 700, scroll: 4300, total: 5000 },
    { height: 700, scroll: 0, total: 400 },
  ];

  test('is level with the page in the middle and folds the rest into its ends', () => {
    for (const view of views) {
      const fold = foldOf(view);
      for (let at = fold; at <= view.height - fold; at += 50) {
        expect(onRod(view.scroll + at, view)).toBeCloseTo(at);
      }
      expect(onRod(0, view)).toBeGreaterThanOrEqual(0);
      expect(onRod(view.total, view)).toBeLessThanOrEqual(view.height + 1e-9);
    }
  });

  test('never puts a mark above one that comes before it', () => {
    for (const view of views) {
      let last = -1;
      for (let y = 0; y <= view.total; y += 13) {
        expect(onRod(y, view)).toBeGreaterThan(last);
        last = onRod(y, view);
      }
    }
  });

  test('is read back from any height', () => {
    for (const view of views) {
      for (let at = 0; at < view.height; at += 37)
        expect(onRod(onPage(at, view), view)).toBeCloseTo(at);
    }
  });

  test('is true to the page where nothing is out of sight', () => {
    const [, , , short] = views;
    if (!short) throw new Error('no short view');
    expect(onRod(12, short)).toBeCloseTo(12);
    expect(onRod(390, short)).toBeCloseTo(390);
  });

  test('labels stand apart and inside', () => {
    const placed = spread(
      [100, 105, 101, 590, 599].map((at) => ({ what: at, at })),
      30,
      600,
    );
    const heights = placed.map(({ shown }) => shown);
    for (let i = 1; i < heights.length; i++) {
      expect((heights[i] ?? 0) - (heights[i - 1] ?? 0)).toBeGreaterThanOrEqual(30);
    }
    expect(heights[0]).toBeGreaterThanOrEqual(15);
    expect(heights.at(-1)).toBeLessThanOrEqual(585);
    expect(placed.map(({ what }) => what)).toEqual([100, 101, 105, 590, 599]);
  });
});

const JOB = `## Deck

- Width: 14 ft
- Board count: 32 boards
- Board price: $9 per board

## Landing

- Width: 4 ft
- Slab length: 12 ft
- Thickness: 4 in
`;

function offered(text: string, caret = text.length, wanted: Wanted = 'unasked'): readonly string[] {
  const { notebook } = new Estimate(JOB);
  const own = allCells(notebook).find((cell) => cell.name === 'Thickness');
  if (!own) throw new Error('no thickness');
  const names = namesFor(notebook, own.part, own.id);
  const units = unitsFor(new Nouns([]), LENGTH);
  return completionsAt(text, caret, names, units, wanted).map(({ candidate }) => candidate.text);
}

describe('completion', () => {
  test.each([
    ['sl', ['slab length']],
    ['slab length by wid', ['width', 'Deck width']],
    ['board', ['board count', 'board price']],
    ['12 fe', ['ft', 'fences', 'sq ft', 'cubic feet', 'board feet', 'MBF']],
    ['12 square f', ['sq ft']],
    ['12 feet', []],
    ['5 in', []],
    ['3 boa', ['board feet', 'boards', 'MBF', 'deck boards']],
    ['3 boards', []],
    ['slab length by', []],
    ['price', ['board price']],
    ['slab length', []],
    ['thick', []],
    ['', []],
    ['1', []],
    ['slab length plus 2', []],
  ])('after "%s" come %j', (text, names) => {
    expect(offered(text)).toEqual(names);
  });

  test('offers what goes on from a whole word only when asked', () => {
    expect(offered('board')).toEqual(['board count', 'board price']);
    expect(offered('5 in')).toEqual([]);
    expect(offered('5 in', 4, 'asked')).toEqual(['sq in', 'cubic inches', 'inspections']);
    expect(offered('slab length by ', 15, 'asked')).toEqual([
      'slab length',
      'width',
      'board count',
      'board price',
      'Deck width',
    ]);
  });

  test('offers nothing in the middle of a word', () => {
    expect(offered('slab length', 2)).toEqual([]);
  });

  test('replaces just the words it goes on from', () => {
    const { notebook } = new Estimate(JOB);
    const [first] = completionsAt('2 ft by slab le', 15, namesFor(notebook, '', null), []);
    expect(first).toMatchObject({ from: 8, to: 15, candidate: { text: 'slab length' } });
  });
});

describe('stretches of a formula', () => {
  test.each([
    'slab length by width plus 10% waste, rounded up to the next 1/4 cubic yard',
    'total of slab length, width and 3 ft',
    '(slab length where width is more than 3 ft, otherwise width) times 2',
    'slab length plus nobody knows',
    '((((',
    '',
  ])('joined again are the formula: %s', (formula) => {
    const estimate = new Estimate(JOB);
    const own = allCells(estimate.notebook).find((cell) => cell.name === 'Thickness');
    const { reading } = estimate.draft(own?.id ?? -1, formula);
    const rings = reading.problems.flatMap((problem) => problem.spots);
    const pieces = stretches(formula, reading.tree, rings);
    expect(pieces.map(({ text }) => text).join('')).toBe(formula);
    const names = pieces.filter(({ kind }) => kind === 'name').map(({ text }) => text);
    for (const name of names) expect(['slab length', 'width']).toContain(name);
  });
});

describe('settings in the text', () => {
  test('are told from prose', () => {
    expect(settingsIn('- Currency: euros\n- Counted things: row, handrail')).toEqual([
      { name: 'Currency', value: 'euros' },
      { name: 'Counted things', value: 'row, handrail' },
    ]);
    expect(settingsIn('- Currency: euros\nand a word on it')).toBeNull();
    expect(settingsIn('Two lines\nof prose')).toBeNull();
    expect(settingsIn('')).toBeNull();
  });

  test('go back into it as list items, however they were written in place', () => {
    const written = settingsToWrite(settingsIn('* Currency: euros\n+ Measures: metric') ?? []);
    expect(written).toBe('Currency: euros\nMeasures: metric');
    expect(settingsText(`${written}\n\n- Fractions: 1/8 in\n`)).toBe(
      '- Currency: euros\n- Measures: metric\n- Fractions: 1/8 in',
    );
  });
});
