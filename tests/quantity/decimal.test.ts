// Whole numbers stay whole: snapping, dropping of noise, rounding, and the way to and from exact fractions.
import Decimal from 'decimal.js';
import fc from 'fast-check';
import { isBigNumber } from 'mathjs';
import { describe, expect, test } from 'vitest';
import {
  Dec,
  fromFraction,
  minusDropping,
  plusDropping,
  roundedToWhole,
  scaled,
  snapped,
  toFraction,
} from '../../src/quantity/decimal.ts';
import { Fraction } from '../../src/quantity/measure.ts';

describe('the number class', () => {
  test('is what mathjs takes for a BigNumber, also after arithmetic', () => {
    const third = new Dec(1).div(3);
    expect(isBigNumber(third)).toBe(true);
    expect(third).toBeInstanceOf(Dec);
    expect(third.toFixed().length).toBe('0.'.length + 64);
    expect(JSON.parse(JSON.stringify(new Dec('0.2')))).toEqual({
      mathjs: 'BigNumber',
      value: '0.2',
    });
  });

  test('leaves decimal.js itself as it is', () => {
    expect('isBigNumber' in new Decimal(1)).toBe(false);
    expect('isBigNumber' in new Dec(1)).toBe(true);
    expect(new Decimal(1).div(3).toFixed().length).toBe('0.'.length + 20);
  });
});

describe('rounding to a whole number', () => {
  test.each([
    ['2.1', 'up', '3'],
    ['2', 'up', '2'],
    ['-2.1', 'up', '-2'],
    ['2.9', 'down', '2'],
    ['-2.1', 'down', '-3'],
    ['2.5', 'nearest', '3'],
    ['-2.5', 'nearest', '-3'],
    ['2.4999', 'nearest', '2'],
    ['1000000000000.05', 'up', '1000000000001'],
  ] as const)('%s %s is %s', (number, way, whole) => {
    expect(roundedToWhole(new Dec(number), way).toFixed()).toBe(whole);
  });

  test('never counts the noise of a division', () => {
    expect(roundedToWhole(new Dec(99_985).div(32_332).times(32_332), 'up').toFixed()).toBe('99985');
    expect(roundedToWhole(new Dec(2).div(3).times(3), 'up').toFixed()).toBe('2');
    const third = new Dec(67_331).div(3);
    const sum = plusDropping(plusDropping(third, third), third);
    expect(roundedToWhole(sum, 'up').toFixed()).toBe('67331');
    const part = new Dec(35).div(new Dec(5).div(22).times('0.2'));
    expect(roundedToWhole(part, 'down').toFixed()).toBe('770');
  });
});

describe('adding and taking away', () => {
  test('what is left of noise is nothing', () => {
    const noise = new Dec(5).div('3412.4').times('3412.4');
    expect(minusDropping(new Dec(5), noise).isZero()).toBe(true);
    expect(plusDropping(new Dec(5).negated(), noise).isZero()).toBe(true);
  });

  test('a small number beside zero is no noise', () => {
    const small = new Dec('1e-60');
    expect(plusDropping(new Dec(0), small).equals(small)).toBe(true);
    expect(minusDropping(new Dec(0), small).equals(small.negated())).toBe(true);
  });

  test('what is left of great numbers and can be told from noise stays', () => {
    const great = new Dec('1e15');
    expect(minusDropping(great.plus('0.000001'), great).toFixed()).toBe('0.000001');
  });
});

const wholes = fc.integer({ min: 1, max: 99_999 });

test('n divided and multiplied back is n for every rounding', () => {
  fc.assert(
    fc.property(wholes, fc.array(wholes, { minLength: 1, maxLength: 4 }), (n, by) => {
      const there = by.reduce((d, k) => d.div(k), new Dec(n));
      const back = by.reduce((d, k) => d.times(k), there);
      for (const way of ['up', 'down', 'nearest'] as const) {
        expect(roundedToWhole(back, way).toNumber()).toBe(n);
      }
    }),
    { numRuns: 2000 },
  );
});

test('n less k parts of a k-th of it is nothing', () => {
  fc.assert(
    fc.property(wholes, wholes, (n, k) => {
      const whole = new Dec(n).div(k).times(k);
      expect(minusDropping(new Dec(n), whole).isZero()).toBe(true);
    }),
    { numRuns: 2000 },
  );
});

const decimals = fc
  .tuple(fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }), fc.integer({ min: 0, max: 25 }))
  .map(([digits, places]) => new Dec(digits.toString()).times(new Dec(10).pow(-places)));

test('a decimal is the same after it was a fraction', () => {
  fc.assert(
    fc.property(decimals, (d) => {
      expect(fromFraction(toFraction(d)).equals(d)).toBe(true);
    }),
  );
});

test('a decimal scaled by a fraction and back is the same, snapped', () => {
  fc.assert(
    fc.property(decimals, wholes, wholes, (d, over, under) => {
      const by = new Fraction(over, under);
      const back = scaled(scaled(d, by), by.inverse());
      expect(snapped(back).equals(snapped(d))).toBe(true);
    }),
  );
});

test('snapping keeps 44 digits and leaves shorter numbers alone', () => {
  const short = new Dec('12.75');
  expect(snapped(short)).toBe(short);
  expect(snapped(new Dec(2).div(3)).toFixed()).toBe(`0.${'6'.repeat(43)}7`);
  expect(snapped(new Dec('1').plus('1e-50')).toFixed()).toBe('1');
});
