import { describe, expect, test } from 'vitest';
import { Fault, type Held, SoFar, Unknown, Waiting } from '../../src/engine/held.ts';
import type { Plan } from '../../src/language/plan.ts';
import type { Dec } from '../../src/quantity/decimal.ts';
import {
  add,
  and,
  average,
  cell,
  choose,
  compare,
  dec,
  divide,
  greatest,
  least,
  multiply,
  no,
  not,
  number,
  or,
  power,
  root,
  round,
  said,
  scale,
  subtract,
  text,
  total,
  unknown,
  worked,
  yes,
} from './plans.ts';

const third = divide(number(1), number(3));

describe('plain arithmetic', () => {
  test.each<[string, Plan, string]>([
    ['adds', add(number('0.1'), number('0.2')), '0.3'],
    ['takes away', subtract(number(5), number('7.5')), '-2.5'],
    ['multiplies', multiply(number('1.1'), number('1.1')), '1.21'],
    ['divides', divide(number(1), number(8)), '0.125'],
    ['scales by a fraction', scale('1/12', number(30)), '2.5'],
    ['scales by a negative fraction', scale('-7/2', number(3)), '-10.5'],
    ['squares', power(number('1.5'), 2), '2.25'],
    ['cubes', power(number(3), 3), '27'],
    ['takes roots', root(number('6.25')), '2.5'],
    ['knows π', { op: 'pi' }, '3.141592653589793238462643383279502884197'],
    ['takes the greatest', greatest(number(2), number(7), number(3)), '7'],
    ['takes the least', least(number(2), number(-7), number(3)), '-7'],
    ['averages', average(number(1), number(2), number(6)), '3'],
    ['totals', total(number(1), number('2.5'), number(3)), '6.5'],
    ['totals nothing to nought', total(), '0'],
  ])('%s', (_, plan, result) => {
    expect(said(worked(plan))).toBe(result);
  });

  test('what noise is left of a difference is zero', () => {
    const plan = subtract(
      number(5),
      multiply(divide(number(5), number('3412.4')), number('3412.4')),
    );
    expect(said(worked(plan))).toBe('0');
  });

  test('every digit of π is right to the sixty-fourth', () => {
    expect((worked({ op: 'pi' }) as Dec).toFixed()).toBe(
      '3.141592653589793238462643383279502884197169399375105820974944592',
    );
  });
});

describe('rounding', () => {
  test.each<[string, Plan, string]>([
    ['up', round('up', number('2.1')), '3'],
    ['down', round('down', number('2.9')), '2'],
    ['to the nearest, half away from zero', round('nearest', number('-2.5')), '-3'],
    ['a whole stays whole after ÷ 3 × 3', round('up', multiply(third, number(3))), '1'],
    [
      '99,985 ÷ 32,332 × 32,332 stays',
      round('up', multiply(divide(number(99985), number(32332)), number(32332))),
      '99985',
    ],
    ['up to a step', round('up', number('0.6'), number('0.25')), '0.75'],
    ['down to a step', round('down', number('0.6'), number('0.25')), '0.5'],
    ['nearest step', round('nearest', number('31.3'), number('1/16')), '31.3125'],
    [
      'a whole number of thirds stays',
      round('up', multiply(third, number(7)), third),
      '2.333333333333333333333333333333333333333',
    ],
    ['a negative step is a step', round('up', number(5), number(-2)), '6'],
    ['to a step of nothing', round('up', number(5), number(0)), 'division-by-zero'],
  ])('%s', (_, plan, result) => {
    expect(said(worked(plan))).toBe(result);
  });
});

describe('comparing', () => {
  const nearlyOne = multiply(third, number(3));
  test.each<[string, Plan, string]>([
    [
      'on snapped values: 1 ÷ 3 × 3 is at least 1',
      compare('at-least', nearlyOne, number(1)),
      'yes',
    ],
    ['and is 1', compare('is', nearlyOne, number(1)), 'yes'],
    ['and is not less than 1', compare('less', nearlyOne, number(1)), 'no'],
    ['more', compare('more', number(2), number(1)), 'yes'],
    ['at most', compare('at-most', number(2), number(1)), 'no'],
    ['is not', compare('is-not', number(2), number(1)), 'yes'],
    ['text with text', compare('is', text('hem-fir'), text('hem-fir')), 'yes'],
    ['yes with no', compare('is', yes, no), 'no'],
    ['not', not(no), 'yes'],
    ['and', and(yes, no), 'no'],
    ['or', or(no, yes), 'yes'],
  ])('%s', (_, plan, result) => {
    expect(said(worked(plan))).toBe(result);
  });
});

describe('what has no value', () => {
  const cells: readonly Held[] = [
    dec(10),
    new Unknown([1]),
    new Waiting([2]),
    new SoFar(dec(20), [1]),
    new Unknown([4]),
    new Waiting([5]),
    new SoFar(dec(30), [4]),
  ];
  const [ten, open, broken, partly, open2, broken2, partly2] = cells.map((_, id) => cell(id)) as [
    Plan,
    Plan,
    Plan,
    Plan,
    Plan,
    Plan,
    Plan,
  ];
  const zero = divide(number(1), number(0));

  test.each<[string, Plan, string]>([
    ['a ? stands for its own cell', add(unknown, number(1)), 'unknown for 99'],
    ['what needs an unknown is unknown', multiply(ten, open), 'unknown for 1'],
    ['two unknowns are both named', add(open, open2), 'unknown for 1, 4'],
    ['waiting comes before unknown', add(open, broken), 'waiting for 2'],
    ['and names all it waits for', add(broken, multiply(broken2, broken)), 'waiting for 2, 5'],
    ['rounding an unknown is unknown', round('up', open), 'unknown for 1'],
    ['the root of waiting waits', root(broken), 'waiting for 2'],
    ['a comparison with an unknown is unknown', compare('more', ten, open), 'unknown for 1'],
    ['dividing by nought is a fault', add(zero, ten), 'division-by-zero'],
    ['nought by nought too', divide(number(0), number(0)), 'division-by-zero'],
    ['a fault comes before waiting', add(broken, zero), 'division-by-zero'],
    ['no root of less than nought', root(number(-4)), 'root-of-negative'],
    [
      'the root of noise below nought is nought or less than noise',
      compare('is', root(subtract(number(1), multiply(third, number(3)))), number(0)),
      'yes',
    ],

    ['a total leaves out the unknown', total(ten, open, ten), '20 so far without 1'],
    ['and what waits', total(ten, broken, open), '10 so far without 2, 1'],
    ['a line in other units too', total(ten, scale('1/12', broken)), '10 so far without 2'],
    [
      'and what a line leaves out itself',
      total(ten, partly, partly2, open),
      '60 so far without 1, 4',
    ],
    [
      'of an unknown that is no cell it leaves out the givens',
      total(ten, multiply(open, open2)),
      '10 so far without 1, 4',
    ],
    ['a fault in the formula itself is not left out', total(ten, zero), 'division-by-zero'],
    ['with nothing left a total is unknown', total(open, open2), 'unknown for 1, 4'],
    ['an average of what is not all known is unknown', average(ten, open), 'unknown for 1'],

    [
      'arithmetic carries along what is left out',
      multiply(add(partly, ten), number(2)),
      '60 so far without 1',
    ],
    ['from both sides', add(partly, partly2), '50 so far without 1, 4'],
    ['rounding too', round('up', partly, number(15)), '30 so far without 1'],
    ['a limit too', greatest(partly, number(25)), '25 so far without 1'],
    ['roots too', root(multiply(partly, number(5))), '10 so far without 1'],
    ['a fault leaves nothing out', divide(partly, number(0)), 'division-by-zero'],
    [
      'comparing what leaves lines out is unknown',
      compare('less', partly, number(1000)),
      'unknown for 1',
    ],
    ['whichever side', compare('less', number(1000), partly), 'unknown for 1'],
    ['comparing it with an unknown names both', compare('is', partly2, open), 'unknown for 1, 4'],

    ['only the branch taken has to have a value', choose([[yes, ten]], open), '10'],
    ['or be possible', choose([[no, zero]], ten), '10'],
    [
      'the first that holds',
      choose(
        [
          [no, open],
          [yes, partly],
          [open, zero],
        ],
        zero,
      ),
      '20 so far without 1',
    ],
    [
      'a condition that is unknown waits',
      choose([[compare('is', open, ten), ten]], ten),
      'unknown for 1',
    ],
    ['no and unknown is no', and(no, compare('is', open, ten)), 'no'],
    ['unknown and no is no', and(compare('is', open, ten), no), 'no'],
    ['unknown and yes is unknown', and(compare('is', open, ten), yes), 'unknown for 1'],
    ['unknown or yes is yes', or(compare('is', open, ten), yes), 'yes'],
    ['yes and unknown is unknown', and(yes, compare('is', open2, ten)), 'unknown for 4'],
    ['no and a fault is no', and(no, compare('is', zero, ten)), 'no'],
    ['waiting and no waits', and(compare('is', broken, ten), no), 'waiting for 2'],
    ['not unknown is unknown', not(compare('is', open, ten)), 'unknown for 1'],
  ])('%s', (_, plan, result) => {
    expect(said(worked(plan, cells))).toBe(result);
  });

  test('for a total what it names for lines that wait is the lines, when nothing is left', () => {
    expect(said(worked(total(broken, broken2), cells))).toBe('unknown for 2, 5');
  });
});

describe('size and depth', () => {
  test('a figure of more than three hundred digits is a fault, not a crash', () => {
    let plan = number(12);
    for (let i = 0; i < 60; i++) plan = power(plan, 2);
    expect(said(worked(plan))).toBe('too-large');
    expect(worked(plan)).toBeInstanceOf(Fault);
  });

  test('a hundred thousand operators deep works, on either side', () => {
    let left = number(0);
    let right = number(0);
    for (let i = 0; i < 100_000; i++) {
      left = add(left, number(1));
      right = add(number(1), right);
    }
    expect(said(worked(left))).toBe('100000');
    expect(said(worked(right))).toBe('100000');
  });

  test('a total of a hundred thousand lines works', () => {
    const items = Array.from({ length: 100_000 }, () => number('0.01'));
    expect(said(worked(total(...items.slice(0, 1000))))).toBe('10');
    expect(said(worked({ op: 'total', items }))).toBe('1000');
    expect(said(worked({ op: 'greatest', items }))).toBe('0.01');
  });

  test('what stands in a plan twice is worked once, however often that is nested', () => {
    let plan = number(1);
    for (let i = 0; i < 200; i++) plan = add(plan, plan);
    expect(said(worked(plan))).toBe((2n ** 200n).toString().slice(0, 40) + '0'.repeat(21));
  });

  test('a branch that is not taken may be deep or shared and at fault', () => {
    let bad = divide(number(1), number(0));
    for (let i = 0; i < 1000; i++) bad = add(bad, number(1));
    expect(said(worked(choose([[no, add(bad, bad)]], number(7))))).toBe('7');
  });
});
