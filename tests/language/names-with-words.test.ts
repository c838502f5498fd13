// Cells whose names begin with words of the language, or are such a word: they are found before those words are read.
import { describe, expect, it } from 'vitest';
import { worked } from './worked.ts';

const GIVENS = [
  'Over all: $60',
  'By the yard: 20%',
  'The yard: 50%',
  'And so on: 5 ft',
  'Total: 10%',
  'Sum: 20%',
  'Waste: 15%',
  'Thickness: 4 in',
];

describe('a name that begins with a word of the language', () => {
  it.each([
    ['$50 is over all', 'no', '$50 is over all'],
    ['$60 is not over all', 'no', '$60 is not over all'],
    ['$61 is not over over all', 'no', '$61 is at most over all'],
    ['$61 is over $60', 'yes', '$61 is more than $60'],
    ['$100 marked up by the yard', '$120.00', '$100, marked up by by the yard'],
    ['$100 marked up by by the yard', '$120.00', '$100, marked up by by the yard'],
    ['$100 marked up by waste', '$115.00', '$100, marked up by waste'],
    ['total of 3 ft, and so on and 2 ft', '10 ft', 'total of 3 ft, and so on and 2 ft'],
    ['total of 3 ft, 2 ft, and and so on', '10 ft', 'total of 3 ft, 2 ft and and so on'],
    ['total of 3 ft, 2 ft, and 4 ft', '9 ft', 'total of 3 ft, 2 ft and 4 ft'],
    [
      '3 ft where thickness is 5 in, and so on where thickness is 4 in, otherwise 2 ft',
      '5 ft',
      '3 ft where thickness is 5 in, and so on where thickness is 4 in, otherwise 2 ft',
    ],
    [
      '3 ft where thickness is 4 in, and thickness is over 3 in, otherwise 2 ft',
      '3 ft',
      '3 ft where thickness is 4 in and thickness is more than 3 in, otherwise 2 ft',
    ],
    ['3 ft, and so on and 2 ft together', '10 ft', 'total of 3 ft, and so on and 2 ft'],
  ])('"%s" comes to %s', (formula, shown, readAs) => {
    const got = worked(formula, GIVENS);
    expect([got.message, got.shown, got.readAs]).toEqual(['', shown, readAs]);
    expect(worked(readAs, GIVENS).shown).toBe(shown);
  });
});

describe('a share whose name opens a phrase', () => {
  it.each([
    ['total on $100', '$10.00', 'total on $100'],
    ['the sum on $100', '$20.00', 'sum on $100'],
    ['waste on $100', '$15.00', 'waste of $100'],
    // With `of` it is the list that it always is.
    ['total of $100', '$100.00', 'total of $100'],
  ])('"%s" comes to %s, and is said back so', (formula, shown, readAs) => {
    const got = worked(formula, GIVENS);
    expect([got.message, got.shown, got.readAs]).toEqual(['', shown, readAs]);
    expect(worked(readAs, GIVENS).shown).toBe(shown);
  });
});
