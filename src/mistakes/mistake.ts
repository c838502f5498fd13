// The mistakes that a wrong answer is tried against, and the hint that each is told with.
import type { CellId } from '../language/tree.ts';
import type { Dec } from '../quantity/decimal.ts';
import type { Measure } from '../quantity/measure.ts';

export type Mistake =
  | 'inches-for-feet'
  | 'square-for-cubic'
  | 'cubic-feet-for-yards'
  | 'tenths-for-inches'
  | 'share-forgotten'
  | 'share-twice'
  | 'rounded-down'
  | 'fence-post'
  | 'nominal-for-actual'
  | 'markup-for-margin'
  | 'minutes-as-decimals'
  | 'minutes-for-hours'
  | 'rate-upside-down'
  | 'factor-missing'
  | 'digits-swapped';

/** A step worked again with one mistake made in it. */
export interface Reworked {
  readonly mistake: Mistake;
  /** The cell whose amount was mistaken; null where it was in the working itself. */
  readonly of: CellId | null;
  readonly came: Came;
}

/** `amount`: held in a measure, perhaps another than the step's; `number`: what is written down, without a unit. */
export type Came =
  | { readonly kind: 'amount'; readonly value: Dec; readonly measure: Measure }
  | { readonly kind: 'number'; readonly number: Dec };

/** A question that points to it without giving the answer away. */
export const HINTS: Readonly<Record<Mistake, string>> = {
  'inches-for-feet': 'Are all lengths in one unit? There are 12 inches in a foot.',
  'square-for-cubic':
    'Is this an area or a volume? A cube is 12 by 12 by 12 inches, 3 by 3 by 3 feet.',
  'cubic-feet-for-yards': 'In cubic feet or in cubic yards? There are 27 of the one in the other.',
  'tenths-for-inches': 'Half a foot is 6 inches, and 0.5 ft: tenths of a foot are not inches.',
  'share-forgotten': 'Is there something to be added or taken off at the end, such as waste?',
  'share-twice': 'Was the same share added or taken off twice?',
  'rounded-down': 'Can part of one be bought? If not, which way is it rounded?',
  'fence-post': 'Count the ends: there is one post more than there are gaps between them.',
  'nominal-for-actual': 'Is that the size it is called by, or the size it has?',
  'markup-for-margin': 'Is the share one of the cost, or one of the price?',
  'minutes-as-decimals': 'Half an hour is 30 minutes, and 0.5 h: minutes are not decimals.',
  'minutes-for-hours': 'Are all times in one unit? There are 60 minutes in an hour.',
  'rate-upside-down':
    'Which is it: so many in one, or one for so many? Look at the units of the rate.',
  'factor-missing': 'Was everything multiplied that has to be? Look at the units of the answer.',
  'digits-swapped': 'Look at the digits once more: two of them may have changed places.',
};
