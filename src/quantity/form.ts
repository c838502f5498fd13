// How a quantity is written: the units and nouns above and below the line.
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
  // One amount in one unit, as most are, needs no sorting.
  const written = lists.length === 1 ? lists : lists.filter((list) => list.length > 0);
  const single = written.length <= 1 ? (written[0] ?? []) : null;
  const keys = single && single.length < 2 ? single : [...new Set(written.flat())].sort();
  const id = keys.length === 1 ? (keys[0] as string) : keys.join('|');
  const found = knownSets.get(id);
  if (found) return found;
  knownSets.set(id, keys);
  return keys;
}
