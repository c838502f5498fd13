// What a value measures, in words.
import { expect, test } from 'vitest';
import { formMeasure } from '../../src/quantity/amount.ts';
import { describe } from '../../src/quantity/describe.ts';
import { amountMeasure, OPEN, SHARE, TEXT, YES_NO } from '../../src/quantity/measure.ts';
import { form } from './held.ts';

test.each([
  ['', 'a plain number'],
  ['ft', 'a length'],
  ['sq m', 'an area'],
  ['cubic yards', 'a volume'],
  ['lb', 'a weight'],
  ['$', 'money'],
  ['cents', 'money'],
  ['hours', 'hours'],
  ['boards', 'a count of boards'],
  ['people', 'a count of people'],
  ['person-hours', 'person-hours'],
  ['$ per bag', 'a price per bag'],
  ['$ per each', 'a price each'],
  ['$ per hour', 'a price per hour'],
  ['$ per sq ft', 'a price per sq ft'],
  ['$ per 1000 screws', 'a price per 1000 screws'],
  ['$ per cubic yard', 'a price per cubic yard'],
  ['$ per hour per person', 'a price per person-hour'],
  ['cubic feet per bag', 'a volume per bag'],
  ['screws per board', 'a count of screws per board'],
  ['sq ft per hour', 'an area per hour'],
  ['hours per board', 'hours per board'],
  ['in per riser', 'a length per riser'],
  ['psf', 'a weight per area'],
])('1 %s is %s', (words, said) => {
  expect(describe(formMeasure(form(words)))).toBe(said);
});

test('a price that came out of arithmetic is still a price', () => {
  const { dimension } = formMeasure(form('$ per sq ft'));
  expect(describe(amountMeasure(dimension))).toBe('a price per area');
});

test.each([
  [SHARE, 'a share'],
  [YES_NO, 'yes or no'],
  [TEXT, 'a text'],
  [OPEN, 'not yet known'],
])('what is no amount has words too: %o', (measure, said) => {
  expect(describe(measure)).toBe(said);
});
