// Counted things, built in and the owner's own.
import { expect, test } from 'vitest';
import { nameWords } from '../../src/language/lexer.ts';
import { Nouns, pluralOf, singularOf } from '../../src/quantity/nouns.ts';
import { TRADE_NOUNS } from '../../src/quantity/trade-nouns.ts';
import { unitPhrases } from '../../src/quantity/units.ts';

test.each([
  ['bag', 'bags'],
  ['box', 'boxes'],
  ['batch', 'batches'],
  ['truss', 'trusses'],
  ['bush', 'bushes'],
  ['bay', 'bays'],
  ['delivery', 'deliveries'],
  ['person', 'people'],
  ['deck board', 'deck boards'],
  ['shelf', 'shelves'],
])('one %s, two %s', (one, many) => {
  expect(pluralOf(one)).toBe(many);
  expect(singularOf(many)).toBe(one);
  expect(singularOf(one)).toBe(one);
});

test('people are one noun however they are said', () => {
  const { phrases } = new Nouns();
  for (const said of ['person', 'people', 'persons', 'man', 'men', 'workers']) {
    expect(phrases.get(said), said).toBe('person');
  }
});

test('every built-in noun is found in the singular and the plural', () => {
  const nouns = new Nouns();
  for (const noun of TRADE_NOUNS) {
    expect(nouns.phrases.get(noun), noun).toBe(noun);
    expect(nouns.phrases.get(nouns.many(noun)), noun).toBe(noun);
  }
  expect(new Set(TRADE_NOUNS).size).toBe(TRADE_NOUNS.length);
});

test('a day is counted', () => {
  expect(new Nouns().phrases.get('days')).toBe('day');
});

test("the owner's nouns are taken in either number and any case", () => {
  const { phrases } = new Nouns(['Gabion', 'sleeve anchors', '  wall  tie ', 'bags', '']);
  expect(phrases.get('gabions')).toBe('gabion');
  expect(phrases.get('sleeve anchor')).toBe('sleeve anchor');
  expect(phrases.get('wall ties')).toBe('wall tie');
  expect(phrases.get('bags')).toBe('bag');
  expect(phrases.has('')).toBe(false);
});

test('no noun is written like a unit', () => {
  const units = new Set([...unitPhrases.keys()].map((phrase) => nameWords(phrase).join(' ')));
  for (const phrase of new Nouns().phrases.keys()) {
    expect(units.has(nameWords(phrase).join(' ')), phrase).toBe(false);
  }
});
