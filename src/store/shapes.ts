// The saved shapes. Each saved value carries the number of its shape; a shape, once shipped, is never edited:
// a later one gets the next number and a step that makes the new out of the old.
import * as v from 'valibot';
import type { KeptIdentities } from '../versions/identities.ts';
import { IDENTITIES_1 } from './identities-shape.ts';

/** A notebook as it was kept at first: the text is all there is to it. */
const NOTEBOOK_1 = v.looseObject({
  v: v.literal(1),
  id: v.string(),
  title: v.string(),
  text: v.string(),
  /** Goes up by one with every keeping; two pages on one notebook tell by it who came later. */
  revision: v.pipe(v.number(), v.integer(), v.minValue(1)),
  /** Milliseconds since 1970. */
  keptAt: v.number(),
});

/** The text with who is who in it. */
const NOTEBOOK_2 = v.looseObject({
  v: v.literal(2),
  id: v.string(),
  title: v.string(),
  text: v.string(),
  /** Null: nobody gave any yet. */
  identities: v.nullable(IDENTITIES_1),
  revision: v.pipe(v.number(), v.integer(), v.minValue(1)),
  keptAt: v.number(),
});

/** What the list of notebooks shows, without the text. */
const ENTRY_1 = v.looseObject({
  v: v.literal(1),
  id: v.string(),
  title: v.string(),
  revision: v.pipe(v.number(), v.integer(), v.minValue(1)),
  keptAt: v.number(),
});

/** Where one left off: names and not ids, because ids are given anew at every reading. */
const PLACE_1 = v.looseObject({
  v: v.literal(1),
  part: v.string(),
  cell: v.nullable(v.string()),
  scroll: v.number(),
});

/** Which notebook was open last. */
const LAST_1 = v.looseObject({ v: v.literal(1), id: v.string() });

/** Which revision of a notebook is in a file, too. */
const SAVED_1 = v.looseObject({ v: v.literal(1), revision: v.number(), at: v.number() });

/** The same, and which revision of what is kept beside it. */
const SAVED_2 = v.looseObject({
  v: v.literal(2),
  revision: v.number(),
  beside: v.number(),
  at: v.number(),
});

/** A line that somebody was in the middle of. */
const HALF_1 = v.looseObject({
  v: v.literal(1),
  part: v.string(),
  cell: v.nullable(v.string()),
  /** What was being written of the cell: a formula, a name, … */
  what: v.string(),
  words: v.string(),
});

/** Rows for the job record that are not put in yet. */
const ROWS_1 = v.looseObject({ v: v.literal(1), text: v.string() });

/** Which snapshot the price stands beside; null: whichever was accepted. */
const AGAINST_1 = v.looseObject({ v: v.literal(1), seal: v.nullable(v.string()) });

export interface KeptNotebook extends Omit<v.InferOutput<typeof NOTEBOOK_2>, 'identities'> {
  readonly v: 2;
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly identities: KeptIdentities | null;
  readonly revision: number;
  readonly keptAt: number;
}
export type KeptEntry = v.InferOutput<typeof ENTRY_1>;
export type KeptPlace = v.InferOutput<typeof PLACE_1>;
export type KeptHalf = v.InferOutput<typeof HALF_1>;
type KeptRows = v.InferOutput<typeof ROWS_1>;
type KeptAgainst = v.InferOutput<typeof AGAINST_1>;
type KeptSaved = v.InferOutput<typeof SAVED_2>;
type KeptLast = v.InferOutput<typeof LAST_1>;

export type Taken<T> =
  | { readonly kind: 'taken'; readonly value: T }
  | { readonly kind: 'absent' }
  /** Kept by a later version of this page: left alone. */
  | { readonly kind: 'newer' }
  | { readonly kind: 'unreadable'; readonly why: string };

export const takenEntry = (raw: unknown): Taken<KeptEntry> => taken(ENTRY_1, 1, raw);
export const takenPlace = (raw: unknown): Taken<KeptPlace> => taken(PLACE_1, 1, raw);
export const takenHalf = (raw: unknown): Taken<KeptHalf> => taken(HALF_1, 1, raw);
export const takenRows = (raw: unknown): Taken<KeptRows> => taken(ROWS_1, 1, raw);
export const takenAgainst = (raw: unknown): Taken<KeptAgainst> => taken(AGAINST_1, 1, raw);
export const takenLast = (raw: unknown): Taken<KeptLast> => taken(LAST_1, 1, raw);

/** Of either shape: at first only texts were saved, and nothing of what is beside them. */
export function takenSaved(raw: unknown): Taken<KeptSaved> {
  if (numberOf(raw) !== 1) return taken(SAVED_2, 2, raw);
  const first = taken(SAVED_1, 1, raw);
  if (first.kind !== 'taken') return first;
  return { kind: 'taken', value: { ...first.value, v: 2, beside: 0 } };
}

/** Of either shape, as one of the later. */
export function takenNotebook(raw: unknown): Taken<KeptNotebook> {
  if (numberOf(raw) !== 1) return taken(NOTEBOOK_2, 2, raw);
  const first = taken(NOTEBOOK_1, 1, raw);
  if (first.kind !== 'taken') return first;
  return { kind: 'taken', value: { ...first.value, v: 2, identities: null } };
}

/** A raw value in the one shape there is of it up to `newest`. */
export function taken<T>(
  shape: v.GenericSchema<unknown, T>,
  newest: number,
  raw: unknown,
): Taken<T> {
  if (raw === undefined || raw === null) return { kind: 'absent' };
  if (numberOf(raw) > newest) return { kind: 'newer' };
  const read = v.safeParse(shape, raw);
  if (read.success) return { kind: 'taken', value: read.output };
  const [first] = read.issues;
  return { kind: 'unreadable', why: `${v.getDotPath(first) ?? 'value'}: ${first.message}` };
}

/** The number of its shape; 0 where it has none. */
function numberOf(raw: unknown): number {
  const number = typeof raw === 'object' && raw !== null && 'v' in raw ? raw.v : null;
  return typeof number === 'number' ? number : 0;
}
