// Sizes such as 2x8: what a formula comes to in a small notebook, how it is read, or what it is told.
// Board feet are nominal thickness in × nominal width in × length ft ÷ 12 × pieces.
import { describe, expect, it } from 'vitest';
import { worked } from './worked.ts';

const GIVENS = [
  'Stringer stock: 2x12',
  'Joist stock: 2x8',
  'Finish: "broom"',
  'Joists: 22 joists',
  'Joist length: 14 ft',
  'Tread: 1 in',
  '2x8 joists: 12 joists',
  'Price of 2x8: $12.40 each',
];

function at(formula: string): ReturnType<typeof worked> {
  return worked(formula, GIVENS);
}

describe('a size is a text with dimensions of its own', () => {
  it.each([
    ['2x8', '2x8', '2x8'],
    ['2X8', '2x8', '2x8'],
    ['2×8', '2x8', '2x8'],
    ['5/4x6', '5/4x6', '5/4x6'],
    ['4x4 posts', '4x4', '4x4'],
    ['2x8s', '2x8', '2x8'],
    ['#4 bar', '#4', '#4'],
    ['joist stock', '2x8', 'joist stock'],
    ['joist stock is 2x8', 'yes', 'joist stock is 2x8'],
    ['joist stock is 2×8', 'yes', 'joist stock is 2x8'],
    ['joist stock is not 2x10', 'yes', 'joist stock is not 2x10'],
    ['2x8 is stringer stock', 'no', '2x8 is stringer stock'],
    [
      '1 in where joist stock is 2x8, otherwise 2 in',
      '1 in',
      '1 in where joist stock is 2x8, otherwise 2 in',
    ],
    [
      'read span off joist spans for species southern pine, spacing 16 in, size 2x8',
      '11 ft 10 in',
      'read span off joist spans for species southern pine, spacing 16 in, size 2x8',
    ],
    [
      'read span off joist spans for species southern pine, spacing 16 in, size 2×8',
      '11 ft 10 in',
      'read span off joist spans for species southern pine, spacing 16 in, size 2x8',
    ],
    [
      'read span off joist spans for species southern pine, spacing 16 in, size joist stock',
      '11 ft 10 in',
      'read span off joist spans for species southern pine, spacing 16 in, size joist stock',
    ],
  ])('%s is %s', (formula, shown, readAs) => {
    expect(at(formula)).toMatchObject({ message: '', shown, readAs });
  });
});

describe('its dimensions are asked for by name, nominal or actual', () => {
  it.each([
    ['actual width of 2x8', '7 1/4 in', 'actual width of 2x8'],
    ['actual depth of a 2x12', '11 1/4 in', 'actual width of 2x12'],
    ['the actual height of the 2x8 joist', '7 1/4 in', 'actual width of 2x8'],
    ['dressed width of 1x6', '5 1/2 in', 'actual width of 1x6'],
    ['actual thickness of 2x4', '1 1/2 in', 'actual thickness of 2x4'],
    ['actual thickness of 5/4x6', '1 in', 'actual thickness of 5/4x6'],
    ['nominal thickness of 5/4x6', '1 1/4 in', 'nominal thickness of 5/4x6'],
    ['nominal width of 2x8', '8 in', 'nominal width of 2x8'],
    ['nominal depth of 2 x 10', '10 in', 'nominal width of 2x10'],
    ['actual width of stringer stock', '11 1/4 in', 'actual width of stringer stock'],
    [
      'actual width of joist stock plus tread',
      '8 1/4 in',
      '(actual width of joist stock) plus tread',
    ],
    ['actual width of 2x8 + 1 1/2 in', '8 3/4 in', '(actual width of 2x8) plus 1 1/2 in'],
    ['3 times actual thickness of 2x8', '4 1/2 in', '3 times (actual thickness of 2x8)'],
    ['actual width of 2x8 in mm', '184.15 mm', 'actual width of 2x8, in mm'],
    ['diameter of #4 bar', '1/2 in', 'diameter of #4'],
    ['weight of a #5 bar', '1.043 lb per ft', 'weight of #5'],
    ['weight of #4 times 20 ft', '13.36 lb', '(weight of #4) times 20 ft'],
  ])('%s is %s', (formula, shown, readAs) => {
    expect(at(formula)).toMatchObject({ message: '', shown, readAs });
  });
});

describe('pieces of a size come to board feet from the nominal dimensions', () => {
  it.each([
    [
      '22 2x8 x 14 ft in board feet',
      '410.67 board feet',
      '22 pieces of 2x8 by 14 ft in board feet',
    ],
    ['22 2x8x14 ft', '410.67 board feet', '22 pieces of 2x8 by 14 ft'],
    ['22 2x8 14 ft long', '410.67 board feet', '22 pieces of 2x8 by 14 ft'],
    ['22 2x8, 14 ft long', '410.67 board feet', '22 pieces of 2x8 by 14 ft'],
    ["22 - 2x8 x 14'", '410.67 board feet', '22 pieces of 2x8 by 14 ft'],
    ["22 2x8 @ 14'", '410.67 board feet', '22 pieces of 2x8 by 14 ft'],
    ["22 x 2x8 x 14'", '410.67 board feet', '22 pieces of 2x8 by 14 ft'],
    ['22 2x8s x 14 ft', '410.67 board feet', '22 pieces of 2x8 by 14 ft'],
    ['22 2 x 8 x 14 ft', '410.67 board feet', '22 pieces of 2x8 by 14 ft'],
    [
      '22 pieces of 2x8 x 14 ft in board feet',
      '410.67 board feet',
      '22 pieces of 2x8 by 14 ft in board feet',
    ],
    ['22 joists 2x8 x joist length', '410.67 board feet', '22 joists of 2x8 by joist length'],
    ['22 pieces of joist stock by 14 ft', '410.67 board feet', '22 pieces of joist stock by 14 ft'],
    ['joists of 2x8 x 14 ft in bf', '410.67 board feet', 'joists of 2x8 by 14 ft in board feet'],
    ['2x8 x 14 ft in board feet', '18.67 board feet', '1 piece of 2x8 by 14 ft in board feet'],
    ['308 ft of 2x8 in board feet', '410.67 board feet', '308 ft of 2x8, in board feet'],
    ['22 5/4x6 x 12 ft', '165 board feet', '22 pieces of 5/4x6 by 12 ft'],
    [
      '22 2x8 x 14 ft plus 10% waste',
      '451.73 board feet',
      '(22 pieces of 2x8 by 14 ft) plus 10% waste',
    ],
    ['22 2x8 x 14 ft at $900 per MBF', '$369.60', '(22 pieces of 2x8 by 14 ft) at $900 per MBF'],
  ])('%s is %s', (formula, shown, readAs) => {
    expect(at(formula)).toMatchObject({ message: '', shown, readAs });
  });

  it('says that the nominal size was taken, where it was', () => {
    const note = 'Board feet are counted from the nominal size.';
    expect(at('22 2x8 x 14 ft').notes).toContain(note);
    expect(at('22 2x8 x 14 ft at $1.20 per ft').notes).not.toContain(note);
  });
});

describe('what stands beside the pieces says whether they are counted or measured along', () => {
  it.each([
    ['12 2x6 boards', '12 boards', '12 boards of 2x6'],
    ['6 4x4 posts at $22 each', '$132.00', '(6 posts of 4x4) at $22 each'],
    ['12 2x8s at $9.50', '$114.00', '(12 pieces of 2x8) at $9.50'],
    ['22 2x8 x 14 ft at $18.40 each', '$404.80', '(22 pieces of 2x8 by 14 ft) at $18.40 each'],
    ['22 2x8 x 14 ft at $18.40', '$404.80', '(22 pieces of 2x8 by 14 ft) at $18.40'],
    ['22 2x8 x 14 ft at $1.20 per ft', '$369.60', '(22 pieces of 2x8 by 14 ft) at $1.20 per ft'],
    ['22 2x8 x 14 ft in feet', '308 ft', '22 pieces of 2x8 by 14 ft in ft'],
    ['308 ft of 2x8 at $1.20 per ft', '$369.60', '(308 ft of 2x8) at $1.20 per ft'],
    ['4x4 posts every 6 ft along 30 ft', '6 posts', 'posts every 6 ft along 30 ft'],
    ['40 #4 bars x 20 ft', '800 ft', '40 bars of #4 by 20 ft'],
    ['40 #4 bars x 20 ft in lb', '534.4 lb', '40 bars of #4 by 20 ft in lb'],
  ])('%s is %s', (formula, shown, readAs) => {
    expect(at(formula)).toMatchObject({ message: '', shown, readAs });
  });
});

describe('a name with a size in it is a name', () => {
  it.each([
    ['2x8 joists', '12 joists'],
    ['2x8 joists at price of 2x8', '$148.80'],
    ['2x8 joists times 2', '24 joists'],
    ['price of 2x8 times 3', '$37.20 each'],
  ])('%s is %s', (formula, shown) => {
    expect(at(formula)).toMatchObject({ message: '', shown });
  });
});

describe('numbers and lengths with an x stay what they were', () => {
  it.each([
    ["24' x 20'", '480 sq ft'],
    ['24x20', '480'],
    ['2*8', '16'],
    ['2 times 8', '16'],
  ])('%s is %s', (formula, shown) => {
    expect(at(formula)).toMatchObject({ message: '', shown });
  });

  it.each([
    ['12x4 ft', ['12 ft x 4 ft', '12 in x 4 ft', '12 times 4 ft']],
    ['4x4 ft', ['4 ft x 4 ft', '4 in x 4 ft', '4 times 4 ft']],
    ["2x8'", ["2 ft x 8'", "2 in x 8'", "2 times 8'"]],
  ])('%s asks as before', (formula, fixes) => {
    expect(at(formula)).toMatchObject({ code: 'two-readings', fixes });
  });
});

describe('what is no size, or could be something else, is told so with a fix', () => {
  const NEAR_3X7 = ['2x6', '2x8', '4x6'];
  it.each([
    ['3x7', 'unknown-size', '3x7', [...NEAR_3X7, '3 times 7']],
    ['22 3x7 x 14 ft', 'unknown-size', '3x7', NEAR_3X7.map((s) => `22 ${s} x 14 ft`)],
    ['actual width of 3x7', 'unknown-size', '3x7', NEAR_3X7.map((s) => `actual width of ${s}`)],
    ['#9 bar', 'unknown-size', '#9', ['#8 bar', '#7 bar', '#6 bar']],
    ['2 x 8', 'two-readings', '2 x 8', ['2x8', '2 times 8']],
    [
      '2x8 + 1 in',
      'which-dimension',
      '2x8',
      ['nominal width', 'actual width', 'actual thickness'].map((d) => `(${d} of 2x8) + 1 in`),
    ],
    [
      'joist stock plus 1 in',
      'which-dimension',
      'joist stock',
      ['nominal width', 'actual width', 'actual thickness'].map(
        (d) => `(${d} of joist stock) plus 1 in`,
      ),
    ],
    [
      'joists every 2x8 along 12 ft',
      'which-dimension',
      '2x8',
      ['nominal width', 'actual width', 'actual thickness'].map(
        (d) => `joists every (${d} of 2x8) along 12 ft`,
      ),
    ],
    [
      'joist stock is 8 in',
      'which-dimension',
      'joist stock',
      ['nominal width', 'actual width', 'actual thickness'].map(
        (d) => `(${d} of joist stock) is 8 in`,
      ),
    ],
    ['#4 + 1 in', 'which-dimension', '#4', ['(diameter of #4) + 1 in']],
    [
      'width of 2x8',
      'two-readings',
      'width of 2x8',
      ['nominal width of 2x8', 'actual width of 2x8'],
    ],
    [
      'thickness of joist stock',
      'two-readings',
      'thickness of joist stock',
      ['nominal thickness of joist stock', 'actual thickness of joist stock'],
    ],
    [
      '2x8 x 14 ft',
      'two-readings',
      '2x8 x 14 ft',
      ['1 piece of 2x8 by 14 ft', '2 ft x 8 ft x 14 ft'],
    ],
    ['2x8x14 ft', 'two-readings', '2x8x14 ft', ['1 piece of 2x8 by 14 ft', '2 ft x 8 ft x 14 ft']],
    [
      '2x4x8',
      'two-readings',
      '8',
      ['1 piece of 2x4 by 8 ft', '1 piece of 2x4 by 8 in', '2 times 4 times 8'],
    ],
    ['22 2x8 x 14', 'two-readings', '14', ['22 2x8 x 14 ft', '22 2x8 x 14 in']],
    // Brackets make it no more of a length.
    ['22 2x8 x (14)', 'two-readings', '(14)', ['22 2x8 x 14 ft', '22 2x8 x 14 in']],
    [
      '22 2x8 by ((7 1/2))',
      'two-readings',
      '((7 1/2))',
      ['22 2x8 by 7 1/2 ft', '22 2x8 by 7 1/2 in'],
    ],
    ['22 - 2x8', 'how-many', '2x8', ['22 pieces of 2x8']],
    ['2x8 at $5 each', 'how-many', '2x8', ['1 piece of 2x8 at $5 each']],
    [
      '22 2x8 x 14 ft in cubic feet',
      'two-readings',
      '22 2x8 x 14 ft',
      ['actual', 'nominal'].map(
        (b) =>
          `22 times (${b} thickness of 2x8) times (${b} width of 2x8) times 14 ft in cubic feet`,
      ),
    ],
    ['14 ft 2x8', 'missing-operator', '14 ft', ['1 piece of 2x8 by 14 ft']],
    [
      'total of 22 2x8 x 14 ft and (6 2x4 x 8 ft)',
      'missing-operator',
      '22',
      ['total of (22 2x8 x 14 ft) and (6 2x4 x 8 ft)'],
    ],
    [
      'joist stock x 14 ft',
      'which-dimension',
      'joist stock',
      [
        '(1 piece of joist stock by 14 ft)',
        '(nominal width of joist stock) x 14 ft',
        '(actual width of joist stock) x 14 ft',
        '(actual thickness of joist stock) x 14 ft',
      ],
    ],
    ['22 2x8 in board feet', 'length-of-each', '22 2x8', []],
    ['joist stock in board feet', 'length-of-each', 'joist stock', []],
    ['actual width of joist length', 'not-a-size', 'joist length', []],
    ['22 pieces of joist length by 14 ft', 'not-a-size', 'joist length', []],
    ['(2 ft) of 2x8 x 14 ft', 'not-a-count', '(2 ft)', []],
    ['22 2x8 x joists', 'not-a-length', 'joists', []],
    ['2x8 is more than 2x6', 'no-order', 'is more than', ['2x8 is 2x6', '2x8 is not 2x6']],
    [
      'actual width of',
      'phrase-slot',
      'of',
      ['1x2', '1x4', '1x6'].map((s) => `actual width of ${s}`),
    ],
  ])('%s is told %s at "%s"', (formula, code, spot, fixes) => {
    expect(at(formula)).toMatchObject({ shown: null, code, fixes });
    expect(at(formula).spots[0]).toBe(spot);
    // A fix that is taken leaves a formula that is not told the same again.
    for (const fix of fixes) expect([fix, at(fix).code]).not.toEqual([fix, code]);
  });

  it('tells both dimensions of the size, so that one can choose', () => {
    expect(at('2x8 + 1 in').message).toContain('nominal width 8 in or actual width 7 1/4 in?');
  });

  it('says of a cell which holds another text what no row met', () => {
    const told = worked('actual width of finish', ['Finish: broom\n  - choices: broom, trowel']);
    expect(told).toMatchObject({ shown: null, code: 'no-row' });
  });
});
