// The words of the sentence between what it says: operators, comparisons, columns and ways of rounding.
import type { Binary, Relation } from './tree.ts';

export const OPERATOR: Readonly<Record<Binary['op'], string>> = {
  plus: 'plus',
  minus: 'minus',
  times: 'times',
  by: 'by',
  at: 'at',
  over: 'divided by',
};

export const COLUMN = {
  total: 'total of',
  average: 'average of',
  greatest: 'greatest',
  least: 'least',
} as const;

/** Between a column and its value in a look-up. */
export const LOOK_UP: Readonly<Record<Relation, string>> = {
  is: '',
  'is-not': 'is not ',
  more: 'over ',
  less: 'under ',
  'at-least': 'at least ',
  'at-most': 'at most ',
};

export const RELATION: Readonly<Record<Relation, string>> = {
  is: 'is',
  'is-not': 'is not',
  more: 'is more than',
  less: 'is less than',
  'at-least': 'is at least',
  'at-most': 'is at most',
};

export const WAY = { up: ' up', down: ' down', nearest: '' } as const;
