import { describe, expect, it } from 'vitest';
import { NOUNS, bench, check, nodeOf, refused } from './bench.ts';

const at = bench(
  'Slab length: 12 ft',
  'Path: 100 mm',
  'Slab area: 48 sq ft',
  'Slab volume: 16 cubic feet',
  'Sand: 60 lb',
  'Bag price: $6.48 per bag',
  'Board count: 12 boards',
  'Extra: 5',
  'Hours: 40 hours',
  'Cost: $250',
  'Unit rise: 52 1/2 in divided by 7 risers',
  'Yards: 27 cubic feet, in cubic yards',
  'Fall: 1/4 in per ft',
  'Species: "hem-fir"',
  'Steep: yes',
);

describe('two that measure the same add up, in the finer scale', () => {
  it.each([
    ['10 ft - 7-1/2 in', '9 ft 4 1/2 in'],
    ['slab length plus 6 in', '12 ft 6 in'],
    ['1 cubic yard plus 27 cubic feet, in cubic yards', '2 cubic yards'],
    ['1 ton plus 500 lb, in lb', '2,500 lb'],
    ['$2 plus 85 cents', '$2.85'],
    ['90 min plus 1 hour, in hours', '2.5 hours'],
    ['12 boards plus 8 boards', '20 boards'],
    ['$50 per hour plus $0.50 per min', '$80.00 per hour'],
    ['25.4 mm plus 1 in, in inches', '2 in'],
    ['3 plus 4', '7'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('holds a sum of inches and millimetres in the finer of them', () => {
    const sum = nodeOf(at, 'slab length plus path').holds.measure;
    expect(sum.kind === 'amount' && sum.scale.toFraction()).toBe('5/127');
  });

  it('keeps a rate a rate among rates with the same two sides', () => {
    const sum = nodeOf(at, '$50 per hour plus $6 per hour').holds.measure;
    expect(sum.kind === 'amount' && sum.rate).not.toBeNull();
  });

  it('a form that all were asked for in is kept, and counts as written after that', () => {
    expect(at.shown('yards plus yards')).toBe('2 cubic yards');
    expect(at.shown('yards plus 27 cubic feet')).toBe('54 cubic feet');
    expect(nodeOf(at, 'yards by 3').holds.written).toContain('cubic yd');
  });
});

describe('counted things in a sum', () => {
  it.each([
    ['unit rise plus 1/2 in', '8 in'],
    ['unit rise plus (14 in divided by 2 treads)', '14 1/2 in'],
    ['unit rise plus unit rise', '15 in per riser'],
    ['12 joists times 10 ft plus 5 ft', '125 ft'],
    ['3 people times 8 hours plus 2 hours', '26 hours'],
    ['$6 each plus $1 per bag', '$7.00 per bag'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('two different nouns are refused, with both ways to count one as the other', () => {
    expect(refused(at, 'board count plus 40 bags')).toMatchObject({
      code: 'noun-clash',
      spots: ['board count', '40 bags'],
      fixes: ['board count plus (40 bags, as boards)', '(board count, as bags) plus 40 bags'],
    });
  });

  it('a number that was worked out or named takes no noun by itself', () => {
    expect(refused(at, 'board count plus extra')).toMatchObject({
      code: 'unit-clash',
      fixes: ['board count plus (extra, as boards)'],
    });
    expect(refused(at, '(2 times 3) plus 40 bags').code).toBe('unit-clash');
  });

  it('a price per something never adds to money', () => {
    expect(refused(at, 'cost plus bag price')).toMatchObject({
      code: 'price-per-wrong-thing',
      fixes: ['cost plus (1 bag at bag price)'],
    });
  });
});

describe('what measures something else is refused before anything is worked', () => {
  it('names both, with what they are', () => {
    const found = refused(at, 'slab length plus bag price');
    expect(found.code).toBe('unit-clash');
    expect(found.spots).toEqual(['slab length', 'bag price']);
    expect(found.message).toContain("A length and a price per bag can't be added.");
    expect(found.message).toContain('Slab length is 12 ft; bag price is $6.48 per bag.');
  });

  it.each([
    'slab length plus cost',
    'slab area minus slab length',
    'hours plus 2 sq ft',
    'cost - 3 ft',
  ])('%s', (formula) => {
    expect(refused(at, formula).code).toBe('unit-clash');
  });

  it.each(['species plus 1', '3 ft minus steep'])('%s is no arithmetic', (formula) => {
    expect(refused(at, formula).code).toBe('not-an-amount');
  });

  it('says one thing about one mistake in a long sum', () => {
    expect(refused(at, 'slab length plus cost plus 3 ft plus hours').code).toBe('unit-clash');
  });
});

describe('a very long sum', () => {
  it('of ten thousand plus signs is checked without running out of stack', () => {
    const text = '1 ft';
    const spot = { from: 0, to: 4 };
    const foot = at.read(text).tree;
    let tree = foot;
    for (let i = 0; i < 10_000; i++) {
      tree = { kind: 'binary', op: 'plus', opSpot: spot, left: tree, right: foot, spot };
    }
    const nobody = {
      holdsOf: () => null,
      nameOf: () => '',
      shownOf: () => null,
      linesOf: () => [],
    };
    const { checked, problems } = check(tree, nobody, NOUNS, text);
    expect(problems).toEqual([]);
    expect(checked?.holds.measure.kind).toBe('amount');
  });
});
