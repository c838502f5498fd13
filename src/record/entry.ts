// What happened on a job, as it is kept: entries, corrections of them, how much is done, and what is watched. All of it
// is only ever added to. An entry is never written over: a correction stands beside it and points at what it corrects.
import type { CostKind } from '../language/tree.ts';
import { Dec } from '../quantity/decimal.ts';
import { centsOf } from '../versions/cents.ts';
import type { Receipt } from './receipt.ts';

/** A part of the notebook: the key that lasts, and how it was called on that day. */
export interface PartNamed {
  /** Null: it is no part of the notebook. */
  readonly key: string | null;
  readonly name: string;
}

/** Work that nobody estimated. */
export const OUTSIDE: PartNamed = { key: null, name: 'Not in the estimate' };

export type Cost =
  /** Money with two places; less than nothing where something came back. */
  | { readonly by: 'amount'; readonly amount: string }
  /** Minutes and money an hour, both exact decimal text. */
  | { readonly by: 'time'; readonly minutes: string; readonly rate: string };

export interface Said {
  /** `2026-03-03` */
  readonly date: string;
  readonly part: PartNamed;
  readonly kind: CostKind;
  readonly what: string;
  readonly cost: Cost;
  readonly note: string;
  readonly currency: string;
  readonly receipt: Receipt | null;
}

interface Kept {
  /** Of its saved shape. */
  readonly v: 1;
  readonly id: string;
  /** When it was put in, as it was handed over: `2026-03-03T14:05:00Z`. */
  readonly entered: string;
}

export interface Entry extends Kept {
  readonly record: 'entry';
  readonly says: Said;
}

export interface Correction extends Kept {
  readonly record: 'correction';
  /** The entry, or the correction of it that stood until now. */
  readonly corrects: string;
  readonly why: string;
  /** Null: it never happened, or stands elsewhere. A picture that stays is not kept twice. */
  readonly says: (Omit<Said, 'receipt'> & { readonly receipt: Receipt | 'same' | null }) | null;
}

/** How much of a part, or of one kind of cost in it, was done on a day. */
export interface Progress extends Kept {
  readonly record: 'progress';
  readonly date: string;
  readonly part: PartNamed;
  /** Null: of every kind. */
  readonly kind: CostKind | null;
  /** Percent from 0 to 100 with up to two decimals. */
  readonly done: string;
}

/** What the record is held against, and how far over it the forecast may come before it is pointed out. */
export interface Watch extends Kept {
  readonly record: 'watch';
  /** The seal of a snapshot; null: the notebook as it stands. */
  readonly budget: string | null;
  readonly over: string;
}

export type Recorded = Entry | Correction | Progress | Watch;

/** In whole cents; hours at a rate are rounded once, half a cent away from nothing. */
export function centsFor(cost: Cost): bigint {
  switch (cost.by) {
    case 'amount':
      return centsOf(cost.amount);
    case 'time': {
      const exact = new Dec(cost.minutes).times(cost.rate).times(100).div(60);
      return BigInt(exact.toDecimalPlaces(0, Dec.ROUND_HALF_UP).toFixed());
    }
  }
}

/** `7.5`, to two places where the minutes make no end. */
export function hoursText(minutes: string): string {
  return new Dec(minutes).div(60).toDecimalPlaces(2, Dec.ROUND_HALF_UP).toFixed();
}

/** As it can be typed and is read as the same minutes: `7:20`, `7.3333`. */
export function hoursTyped(minutes: string): string {
  const exact = new Dec(minutes);
  if (!exact.isInteger()) return exact.div(60).toFixed();
  return `${exact.div(60).floor().toFixed()}:${exact.mod(60).toFixed().padStart(2, '0')}`;
}
