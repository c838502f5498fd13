// A length in the notation it was not typed in, and every mark of the tape there and back.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formMeasure, formOf, heldAmount } from '../../src/quantity/amount.ts';
import { Dec, fromFraction, toFraction } from '../../src/quantity/decimal.ts';
import { Fraction } from '../../src/quantity/measure.ts';
import { UNITS } from '../../src/quantity/units.ts';
import { show } from '../../src/quantity/show.ts';
import { echo, given, settings, shown } from './held.ts';

describe('the other notation', () => {
  test.each([
    ['10.8', 'ft', [], '10 ft 9 5/8 in, a hair shy'],
    ['112.5', 'in', ['ft'], '9.375 ft'],
    ['128', 'in', ['ft'], '10.6667 ft'],
    ['-112.5', 'in', ['ft'], '−9.375 ft'],
    ['10.5', 'ft', [], '10 ft 6 in'],
    ['52.5', 'in', [], '4 ft 4 1/2 in'],
    ['0.9', 'ft', [], '10 13/16 in, a hair shy'],
  ])('of %s %s (with %j) is %s', (number, words, written, text) => {
    expect(echo(given(number, words, written))).toBe(text);
  });

  test.each([
    ['12', 'ft'],
    ['144', 'in'],
    ['7.5', 'in'],
    ['2.4', 'm'],
    ['3.5', 'sq ft'],
    ['7.5', 'in per riser'],
    ['3', 'bags'],
  ])('is not given for %s %s', (number, words) => {
    expect(echo(given(number, words))).toBeNull();
  });
});

/** Reads a shown length back by the rules of a tape, with none of the code that wrote it. */
function readBack(text: string): Fraction {
  const found =
    /^(?<sign>−)?(?:(?<feet>[\d,]+) ft)? ?(?:(?<inches>(?:[\d,]+)?(?: ?\d+\/\d+)?) in)?$/.exec(
      text,
    );
  if (!found?.groups) throw new Error(`not a length: ${text}`);
  const { sign, feet = '0', inches = '0' } = found.groups;
  const parts = inches.replaceAll(',', '').split(' ');
  const inch = parts.reduce((sum, part) => sum.add(part), new Fraction(0));
  const length = new Fraction(feet.replaceAll(',', '')).mul(12).add(inch);
  return sign ? length.neg() : length;
}

test('every sixteenth from nothing to 40 ft reads back as itself', () => {
  for (let marks = 0; marks <= 40 * 12 * 16; marks++) {
    const inches = new Fraction(marks, 16);
    const inFeet = shown(given(inches.toFraction(), 'in', ['ft']));
    const inInches = shown(given(inches.toFraction(), 'in'));
    expect(readBack(inFeet.text).equals(inches), inFeet.text).toBe(true);
    expect(readBack(inInches.text).equals(inches), inInches.text).toBe(true);
    expect(inFeet.mark).toBe('exact');
    expect(inFeet.text).not.toMatch(
      /\b12 in|\b(\d+)\/\1\b|\b[2468]\/(16|8|4|2)\b|10\/16|12\/16|14\/16/,
    );
  }
});

test('a length beside a mark is shown at the nearest one and says on which side it lies', () => {
  const lengths = fc.tuple(
    fc.integer({ min: 100, max: 10_000_000 }),
    fc.integer({ min: 1, max: 9_999 }),
    fc.constantFrom(2, 4, 8, 16, 32, 64),
  );
  fc.assert(
    fc.property(lengths, ([over, under, fractions]) => {
      const inches = new Fraction(over, under);
      if (inches.mul(fractions).compare(1) < 0) return;
      const { text, mark } = shown(given(inches.toFraction(), 'in', ['ft']), { fractions });
      const [onTape = ''] = text.split(', a hair');
      const off = inches.sub(readBack(onTape));
      expect(
        off
          .abs()
          .mul(fractions * 2)
          .compare(1),
      ).toBeLessThanOrEqual(0);
      const side = { exact: 0, over: 1, shy: -1 }[mark];
      expect(Math.sign(off.compare(0))).toBe(side);
      expect(
        text.endsWith({ exact: 'in', over: 'a hair over', shy: 'a hair shy' }[mark]) ||
          onTape.endsWith('ft'),
      ).toBe(true);
    }),
    { numRuns: 1000 },
  );
});

test('an amount shown in any unit and held again is the same amount, exactly', () => {
  const pairs = fc.record({
    unit: fc.constantFrom(...UNITS),
    number: fc
      .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: 0, max: 4 }))
      .map(([digits, places]) => new Fraction(digits, 10 ** places)),
  });
  fc.assert(
    fc.property(pairs, ({ unit, number }) => {
      const form = formOf([unit]);
      const held = heldAmount(number, form);
      const { exact, unit: key } = show(
        fromFraction(held.value),
        { measure: held.measure, showIn: form, written: [unit.key] },
        settings,
      );
      const back = new Fraction(exact);
      const dollars = unit.key === 'cent' ? number.div(100) : number;
      expect(back.equals(dollars), `${exact} ${key}`).toBe(true);
    }),
    { numRuns: 1000 },
  );
});

test('there and back between two units of one dimension loses nothing', () => {
  const dimensions = [...new Set(UNITS.map((unit) => unit.dimension))];
  const byDimension = dimensions.map((d) => UNITS.filter((unit) => unit.dimension === d));
  const pairs = fc
    .constantFrom(...byDimension)
    .chain((units) => fc.tuple(fc.constantFrom(...units), fc.constantFrom(...units)));
  fc.assert(
    fc.property(pairs, fc.integer({ min: 1, max: 1_000_000 }), ([from, to], number) => {
      const there = formMeasure(formOf([from])).scale.div(formMeasure(formOf([to])).scale);
      const value = fromFraction(new Fraction(number).mul(there));
      const back = value.times(fromFraction(there.inverse()));
      expect(new Dec(back.toSignificantDigits(44)).equals(number)).toBe(true);
      const whole = toFraction(new Dec(number)).mul(there).mul(there.inverse());
      expect(whole.equals(number)).toBe(true);
    }),
    { numRuns: 1000 },
  );
});
