// What each mistake is called when it is named to whoever made it.
import type { Mistake } from './mistake.ts';

export const MISTAKES_SAID: Readonly<Record<Mistake, string>> = {
  'inches-for-feet': 'inches taken for feet, or feet for inches',
  'square-for-cubic': 'square taken for cubic, or the unit of something else',
  'cubic-feet-for-yards': 'cubic feet taken for cubic yards, or the other way around',
  'tenths-for-inches': 'tenths of a foot taken for inches',
  'share-forgotten': 'a share left out, such as the waste',
  'share-twice': 'a share taken twice, such as the waste',
  'rounded-down': 'rounded the other way, or not at all',
  'fence-post': 'one end too many or too few',
  'nominal-for-actual': 'the size it is called by, not the one it has',
  'markup-for-margin': 'a share of the cost where it is one of the price, or the other way around',
  'minutes-as-decimals': 'minutes read as decimals of an hour',
  'minutes-for-hours': 'minutes taken for hours, or hours for minutes',
  'rate-upside-down': 'a rate upside down',
  'factor-missing': 'something left out of a product',
  'digits-swapped': 'two digits that changed places',
};
