// The saved shape of what is laid beside a notebook on this machine: the results that are watched, and the alternatives
// it is compared with. None of it is part of the notebook's text. Cells and parts go by the keys that last.
import * as v from 'valibot';
import { type Taken, taken } from './shapes.ts';

const TEXT_OR_NONE = v.nullable(v.string());

/** What a result came to when it was first watched. */
const STOOD_1 = v.looseObject({
  text: TEXT_OR_NONE,
  /** Of a number: decimal text. */
  amount: v.nullable(v.pipe(v.string(), v.regex(/^-?\d+(\.\d+)?(e[+-]\d+)?$/, 'no number'))),
  dimension: v.string(),
});

const WATCHED_1 = v.looseObject({
  of: v.picklist(['cell', 'part', 'direct', 'price']),
  /** Of a cell or part; empty for the job as a whole. */
  key: v.string(),
  /** As it was called last. */
  name: v.string(),
  began: STOOD_1,
  /** Which way is the better one, where somebody said so. */
  better: v.nullable(v.picklist(['less', 'more'])),
});

const ALONGSIDE_1 = v.looseObject({
  v: v.literal(1),
  /** Goes up by one with every keeping. */
  revision: v.pipe(v.number(), v.integer(), v.minValue(1)),
  watched: v.array(WATCHED_1),
  /** The cells that are varied, in the order in which they stand. */
  varied: v.array(v.string()),
  alternatives: v.array(
    v.looseObject({
      name: v.string(),
      puts: v.array(v.looseObject({ key: v.string(), formula: v.string() })),
    }),
  ),
});

export interface WatchedKept {
  readonly of: 'cell' | 'part' | 'direct' | 'price';
  readonly key: string;
  readonly name: string;
  readonly began: {
    readonly text: string | null;
    readonly amount: string | null;
    readonly dimension: string;
  };
  readonly better: 'less' | 'more' | null;
}

export interface AlternativeKept {
  readonly name: string;
  readonly puts: readonly { readonly key: string; readonly formula: string }[];
}

/** What is laid beside a notebook. */
export interface Alongside {
  readonly watched: readonly WatchedKept[];
  readonly varied: readonly string[];
  readonly alternatives: readonly AlternativeKept[];
}

export interface KeptAlongside extends Alongside {
  readonly v: 1;
  readonly revision: number;
}

export const takenAlongside = (raw: unknown): Taken<KeptAlongside> => taken(ALONGSIDE_1, 1, raw);
