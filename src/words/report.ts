// What a person is told when something can't be read or worked.
import type { Spot } from './spot.ts';

/** One way to mend a formula: the whole formula as it would then stand, and what that would mean. */
export interface Fix {
  /** A short label for a button, e.g. `Use "slab length"`. */
  readonly say: string;
  /** The formula after the fix, complete. */
  readonly formula: string;
}

/** A worded problem: calm, in the trade's words, with the spots marked and the mend offered. */
export interface Report {
  /** Stable and machine-readable, e.g. `unknown-name`. */
  readonly code: string;
  /** Under 60 characters, about their formula. */
  readonly headline: string;
  /** Where in the formula, smallest spots first to last; never outside the text. */
  readonly spots: readonly Spot[];
  /** One to three sentences: what was seen, why it can't be, one thing to try. */
  readonly explanation: string;
  readonly fixes: readonly Fix[];
}
