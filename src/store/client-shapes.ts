// The saved shape of how a notebook was handed to a client last: which view, between whom, until when. It stands on this
// machine only, beside the notebook. As every saved shape it is never edited once shipped.
import * as v from 'valibot';
import { type Taken, taken } from './shapes.ts';

const HANDED_1 = v.looseObject({
  v: v.literal(1),
  /** A later version may know more views. */
  level: v.string(),
  from: v.string(),
  whom: v.string(),
  /** `2026-04-15`; empty: as the prices say. */
  until: v.string(),
});

export interface HandedLast {
  readonly level: string;
  readonly from: string;
  readonly whom: string;
  readonly until: string;
}

export const takenHanded = (raw: unknown): Taken<HandedLast> => taken(HANDED_1, 1, raw);

/** As it is kept. */
export function keptHanded({ level, from, whom, until }: HandedLast): { v: 1 } & HandedLast {
  return { v: 1, level, from, whom, until };
}
