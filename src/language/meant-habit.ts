// What a habit of speech that is only offered is made of: a pattern of words, and the formula it comes to.

export const NUMBER = String.raw`(?:\d+(?:,\d{3})*(?:\.\d+)?(?:[ -]\d+/\d+)?|\d+/\d+|\.\d+)`;
export const PERCENT = String.raw`${NUMBER} ?(?:%|percent)`;
export const LENGTH = String.raw`${NUMBER} ?(?:ft|feet|foot|in|inch|inches|mm|cm|m|metres|meters|yards?|yds?|'|")`;
export const UNIT = 'inches|inch|in|feet|foot|ft|yards|yd|metres|meters|m|cm|mm';
export const OUT = '(?:taken|backed|pulled|stripped|worked) (?:back )?out';

export interface Habit {
  readonly typed: RegExp;
  readonly say: string;
  /** From what the pattern found, in order; null where it does not fit after all. */
  readonly formula: (...found: readonly string[]) => string | null;
}

export function habit(typed: string, say: string, formula: Habit['formula']): Habit {
  return { typed: new RegExp(`^${typed}$`, 'i'), say, formula };
}
