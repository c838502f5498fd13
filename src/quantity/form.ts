// How a quantity is written: the units and nouns above and below the line.
import { onceAPair, onceEach } from './once.ts';
import type { Unit } from './units.ts';

/** One unit, noun or money sign in a form; `count` is the number before it below the line (per 1000 sq ft). */
export type Term =
  | { readonly kind: 'unit'; readonly unit: Unit; readonly count: string | null }
  | { readonly kind: 'noun'; readonly noun: string; readonly count: string | null };

/** `cubic yards`, `$ per bag`, `cubic yards per 1000 sq ft per inch`. Money is the unit `$`. */
export interface Form {
  readonly over: readonly Term[];
  readonly under: readonly Term[];
}

/** Everything about a value but the value: what it measures, in what it shows, and the units it rests on. */
export interface Holds {
  readonly measure: import('./measure.ts').Measure;
  /** The form of the last `in` clause or rounding step, or of a rate still as written; null: by the rules of showing. */
  readonly showIn: Form | null;
  /** Keys of every unit that was written among the amounts this rests on, through the cells it names. Sorted, interned: see `writtenUnits`. */
  readonly written: readonly string[];
}

const knownSets = new Map<string, readonly string[]>();

/** The one list of these unit keys. */
export function writtenUnits(...lists: readonly (readonly string[])[]): readonly string[] {
  const keys = [...new Set(lists.flat())].sort();
  const id = keys.join('|');
  const found = knownSets.get(id);
  if (found) return found;
  knownSets.set(id, keys);
  return keys;
}

/** The one list that has no unit in it. */
export const NONE_WRITTEN = writtenUnits();

/** The one list of the keys in two such lists. */
export function bothWritten(a: readonly string[], b: readonly string[]): readonly string[] {
  if (a === b || b.length === 0) return a;
  return a.length === 0 ? b : union(a, b);
}

const union = onceAPair((a: readonly string[], b: readonly string[]) => writtenUnits(a, b));

const alone = onceEach((key: string) => writtenUnits([key]));

/** These and one more. Money is no unit that a choice of units could go by. */
export function withUnit(written: readonly string[], unit: Unit): readonly string[] {
  if (unit.key === '$' || unit.key === 'cent') return written;
  return bothWritten(written, alone(unit.key));
}
