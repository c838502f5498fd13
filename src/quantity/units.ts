// The units of the trade and every way they are written: the door to the table of units.
import type { Dimension } from './dimension.ts';
import type { Fraction } from './measure.ts';
import { type Entry, ENTRIES } from './unit-table.ts';

export interface Unit {
  /** Plain name, used in JSON and as key: `ft`, `in`, `sq ft`, `cubic yd`, `lb`, `hour`, `$`, `cent`, `board ft`. */
  readonly key: string;
  /** After 1, as shown: `cubic yard`; short units are the same in both: `ft`. */
  readonly one: string;
  /** After anything else: `cubic yards`. */
  readonly many: string;
  readonly dimension: Dimension;
  /** 1 of it in in, lb, min, $ and their powers. */
  readonly scale: Fraction;
  readonly measures: 'us' | 'metric' | 'both';
  /** Where the factor comes from. */
  readonly source: string;
}

export const UNITS: readonly Unit[] = ENTRIES;

const byKey = new Map<string, Unit>(UNITS.map((unit) => [unit.key, unit]));

/** The unit of this key; there has to be one. */
export function unitByKey(key: string): Unit {
  const unit = byKey.get(key);
  if (!unit) throw new Error(`there is no unit "${key}"`);
  return unit;
}

/** Every way a unit is written, in lower case with one space between words, and the unit. */
export const unitPhrases: ReadonlyMap<string, Unit> = phrasesOf(ENTRIES);

/** A unit of exactly this dimension and scale, or null: finds the words for one side of a rate. */
export function unitOf(dimension: Dimension, scale: Fraction): Unit | null {
  return UNITS.find((u) => u.dimension === dimension && u.scale.equals(scale)) ?? null;
}

function phrasesOf(all: readonly Entry[]): ReadonlyMap<string, Unit> {
  const phrases = new Map<string, Unit>();
  for (const unit of all) {
    // A roofing square is never called a square alone: `square` opens `square feet`.
    const key = unit.key === 'square' ? [] : [unit.key];
    for (const spelling of [...key, unit.one, unit.many, ...unit.spellings]) {
      const phrase = spelling.toLowerCase();
      const taken = phrases.get(phrase);
      if (taken && taken !== unit) {
        throw new Error(`"${phrase}" would be both ${taken.key} and ${unit.key}`);
      }
      phrases.set(phrase, unit);
    }
  }
  return phrases;
}
