// How a limit and a whole are said after a value. Words only, so that every other list can lean on them.
import type { Reader } from './reader.ts';

export const LIMITS: readonly (readonly [readonly string[], 'not-less' | 'not-more'])[] = [
  [['not', 'less', 'than'], 'not-less'],
  [['no', 'less', 'than'], 'not-less'],
  [['not', 'below'], 'not-less'],
  [['not', 'under'], 'not-less'],
  [['not', 'more', 'than'], 'not-more'],
  [['no', 'more', 'than'], 'not-more'],
  [['not', 'above'], 'not-more'],
  [['not', 'over'], 'not-more'],
  [['capped', 'at'], 'not-more'],
  [['limited', 'to'], 'not-more'],
  [['not', 'to', 'exceed'], 'not-more'],
  [['not', 'exceeding'], 'not-more'],
  [['never', 'more', 'than'], 'not-more'],
  [['never', 'less', 'than'], 'not-less'],
  [['never', 'over'], 'not-more'],
  [['never', 'under'], 'not-less'],
  [['never', 'below'], 'not-less'],
  [['never', 'above'], 'not-more'],
  [['not', 'lower', 'than'], 'not-less'],
  [['not', 'higher', 'than'], 'not-more'],
  [['with', 'a', 'cap', 'of'], 'not-more'],
  [['with', 'a', 'floor', 'of'], 'not-less'],
  [['up', 'to', 'a', 'maximum', 'of'], 'not-more'],
  [['with', 'a', 'minimum', 'of'], 'not-less'],
  [['with', 'a', 'maximum', 'of'], 'not-more'],
];

/** After a comma these can only be limits; without one they could compare. */
const LIMITS_AFTER_COMMA: typeof LIMITS = [
  [['minimum', 'charge'], 'not-less'],
  [['minimum', 'of'], 'not-less'],

  [['at', 'least'], 'not-less'],
  [['maximum', 'of'], 'not-more'],
  [['max', 'of'], 'not-more'],
  [['min', 'of'], 'not-less'],
  [['a', 'maximum', 'of'], 'not-more'],
  [['a', 'minimum', 'of'], 'not-less'],
  [['cap', 'of'], 'not-more'],
  [['cap', 'at'], 'not-more'],
  [['maximum'], 'not-more'],
  [['at', 'most'], 'not-more'],
  [['minimum'], 'not-less'],
  [['min'], 'not-less'],
  [['max'], 'not-more'],
];

/** Does a limit stand there that begins as a sum does: `with a minimum of`? */
export function limitsAt(r: Reader, ahead: number): boolean {
  return LIMITS.some(([words]) => words[0] === 'with' && r.seesAll(ahead, words));
}

export const SHARE_OF: readonly (readonly string[])[] = [
  ['as', 'a', 'share', 'of'],
  ['as', 'a', 'percent', 'of'],
  ['as', 'a', 'percentage', 'of'],
  ['as', 'a', '%', 'of'],
  ['as', '%', 'of'],
  ['as', 'percent', 'of'],
];

export const ALL_LIMITS: typeof LIMITS = [...LIMITS, ...LIMITS_AFTER_COMMA];
