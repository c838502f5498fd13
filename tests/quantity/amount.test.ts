// What is held of a written amount, and forms in words.
import { describe, expect, test } from 'vitest';
import { formKey, formMeasure, formText, heldAmount } from '../../src/quantity/amount.ts';
import { MONEY, countOf, dimension, overDimension } from '../../src/quantity/dimension.ts';
import { Fraction, conversion } from '../../src/quantity/measure.ts';
import { form, nouns } from './held.ts';

describe('a plain amount is folded to the finest unit of its family', () => {
  test.each([
    ['12', 'ft', '144', 'in'],
    ['7 1/2', 'in', '15/2', 'in'],
    ['3', 'sq yd', '3888', 'sq in'],
    ['1', 'acre', '6272640', 'sq in'],
    ['2', 'cubic yd', '93312', 'cubic in'],
    ['1', 'fl oz', '231/128', 'cubic in'],
    ['2', 'lb', '32', 'oz'],
    ['1', 'ton', '32000', 'oz'],
    ['1.5', 'hours', '90', 'min'],
    ['20', 'seconds', '20', 'seconds'],
    ['2.4', 'm', '2400', 'mm'],
    ['1', 'hectare', '10000000000', 'sq mm'],
    ['1', 'litre', '1000000', 'cubic mm'],
    ['3', 'kg', '3000', 'g'],
    ['85', 'cents', '17/20', '$'],
    ['40', 'bags', '40', 'bag'],
  ])('%s %s is held as %s %s', (number, words, value, held) => {
    const [whole = '', rest] = number.split(' ');
    const typed = new Fraction(whole).add(rest ?? 0);
    const found = heldAmount(typed, form(words));
    expect(found.value.toFraction()).toBe(value);
    expect(found.measure).toBe(formMeasure(form(held)));
  });

  test('so that feet and inches are one measure', () => {
    const feet = heldAmount(new Fraction(12), form('ft'));
    expect(heldAmount(new Fraction(3), form('in')).measure).toBe(feet.measure);
    expect(heldAmount(new Fraction(3), form('yd')).measure).toBe(feet.measure);
  });
});

describe('a rate is held as it was written', () => {
  test('with its number, both sides and an exact scale', () => {
    const { value, measure } = heldAmount(new Fraction('6.48'), form('$ per bag'));
    expect(value.toFraction()).toBe('162/25');
    expect(measure.dimension).toBe(overDimension(MONEY, countOf('bag')));
    expect(measure.rate?.over).toBe(formMeasure(form('$')));
    expect(measure.rate?.under).toBe(formMeasure(form('bag')));
  });

  test('with counts below the line in the scale', () => {
    const measure = formMeasure(form('cubic yards per 1000 sq ft per in'));
    expect(measure.dimension).toBe(dimension({}));
    expect(measure.scale.toFraction()).toBe(new Fraction(46_656, 144_000).toFraction());
    const per = conversion(formMeasure(form('$ per 1000 sq ft')), formMeasure(form('$ per sq ft')));
    expect(per.toFraction()).toBe('1/1000');
  });

  test('cents in it are hundredths of the currency', () => {
    const cents = formMeasure(form('cents per lb'));
    expect(conversion(cents, formMeasure(form('$ per lb'))).toFraction()).toBe('1/100');
  });
});

test.each([
  ['cubic yards', 'cubic yards', 'cubic yd'],
  ['$ per bag', '$ per bag', '$ per bag'],
  ['$ per each', '$ each', '$ each'],
  ['in per riser', 'in per riser', 'in per riser'],
  ['hours per person', 'hours per person', 'hour per person'],
  ['screws per board', 'screws per board', 'screw per board'],
  ['$ per 1000 sq ft', '$ per 1000 sq ft', '$ per 1000 sq ft'],
  ['$ per 100 screws', '$ per 100 screws', '$ per 100 screw'],
  [
    'cubic yards per 1000 sq ft per in',
    'cubic yards per 1000 sq ft per in',
    'cubic yd per 1000 sq ft per in',
  ],
])('the form %s is said "%s", and "%s" to machines', (words, said, key) => {
  expect(formText(form(words), true, nouns)).toBe(said);
  expect(formKey(form(words))).toBe(key);
});

test('one of a thing is said in the singular', () => {
  expect(formText(form('cubic yards'), false, nouns)).toBe('cubic yard');
  expect(formText(form('people'), false, nouns)).toBe('person');
});
