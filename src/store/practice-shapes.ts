// The saved shape of what came of being asked: one sitting with a number, step by step. As every saved shape it is never
// edited once shipped.
import * as v from 'valibot';
import { type Taken, taken } from './shapes.ts';

const SITTING_1 = v.looseObject({
  v: v.literal(1),
  id: v.string(),
  /** Milliseconds since 1970, when it began. */
  at: v.number(),
  /** The title of the notebook and the name of the result, as they were. */
  notebook: v.string(),
  result: v.string(),
  /** Of the fresh numbers; null: the notebook's own. */
  seed: v.nullable(v.number()),
  steps: v.array(
    v.looseObject({
      name: v.string(),
      cameOut: v.picklist(['first', 'after-hint', 'shown']),
      /** What was recognised on the way; a later version may know more of them. */
      mistakes: v.array(v.string()),
    }),
  ),
});

export interface Sitting {
  readonly id: string;
  readonly at: number;
  readonly notebook: string;
  readonly result: string;
  readonly seed: number | null;
  readonly steps: readonly {
    readonly name: string;
    readonly cameOut: 'first' | 'after-hint' | 'shown';
    readonly mistakes: readonly string[];
  }[];
}

export const takenSitting = (raw: unknown): Taken<Sitting> => taken(SITTING_1, 1, raw);

/** As it is kept. */
export function keptSitting(sitting: Sitting): { readonly v: 1 } & Sitting {
  return { v: 1, ...sitting };
}
