// The arithmetic of trials: each function works one operation for many trials at a time, on plain doubles.
// A number is a number, no and yes are 0 and 1, texts are their places in order; NaN is no value, for whatever
// reason. What is written may stand in the place of what is read: each trial is read before it is written.
//
// The engine snaps to 44 of its 64 digits before every rounding and comparison, and drops what plus and minus leave of
// noise. Doubles have some 16 digits; of these 12 are kept, so that sums which come out whole stay whole.
import type { Relation, Way } from '../language/tree.ts';

/** Values of one figure in many trials. */
export type Lane = Float64Array;

/** What two doubles may differ by, against their size, and be the same. */
const NOISE = 1e-12;

/** … and of large ones that are rounded no more than this, lest a part of one is taken for noise. */
const MOST_NOISE = 1e-5;

type Two = (out: Lane, a: Lane, b: Lane, many: number) => void;
type One = (out: Lane, a: Lane, many: number) => void;

export const plus: Two = (out, a, b, many) => {
  for (let i = 0; i < many; i++) out[i] = sum(a[i], b[i]);
};

export const minus: Two = (out, a, b, many) => {
  for (let i = 0; i < many; i++) out[i] = sum(a[i], -b[i]);
};

export const times: Two = (out, a, b, many) => {
  for (let i = 0; i < many; i++) out[i] = a[i] * b[i];
};

export const over: Two = (out, a, b, many) => {
  for (let i = 0; i < many; i++) out[i] = b[i] === 0 ? NaN : a[i] / b[i];
};

export const squared: One = (out, a, many) => {
  for (let i = 0; i < many; i++) out[i] = a[i] * a[i];
};

export const cubed: One = (out, a, many) => {
  for (let i = 0; i < many; i++) out[i] = a[i] * a[i] * a[i];
};

export const root: One = (out, a, many) => {
  for (let i = 0; i < many; i++) out[i] = Math.sqrt(a[i]);
};

export const moreThanNothing: One = (out, a, many) => {
  for (let i = 0; i < many; i++) out[i] = a[i] > 0 ? a[i] : NaN;
};

export const not: One = (out, a, many) => {
  for (let i = 0; i < many; i++) out[i] = 1 - a[i];
};

export function rounded(way: Way): Two {
  return (out, a, step, many) => {
    for (let i = 0; i < many; i++) {
      const size = Math.abs(step[i]);
      out[i] = size === 0 ? NaN : whole(a[i] / size, way) * size;
    }
  };
}

/** `scale`: how many dollars one of the numbers is. */
export function toTheCent(out: Lane, a: Lane, scale: number, many: number): void {
  for (let i = 0; i < many; i++) out[i] = whole(a[i] * scale * 100, 'nearest') / 100;
}

export function compared(relation: Relation): Two {
  return (out, a, b, many) => {
    for (let i = 0; i < many; i++) {
      const [one, other] = [a[i], b[i]];
      if (Number.isNaN(one) || Number.isNaN(other)) out[i] = NaN;
      else out[i] = holds(relation, order(one, other)) ? 1 : 0;
    }
  };
}

/** Both; one that is no settles it. */
export const both: Two = (out, a, b, many) => {
  for (let i = 0; i < many; i++) out[i] = a[i] === 0 || b[i] === 0 ? 0 : a[i] * b[i];
};

/** Either; one that is yes settles it. */
export const either: Two = (out, a, b, many) => {
  for (let i = 0; i < many; i++) out[i] = a[i] === 1 || b[i] === 1 ? 1 : a[i] + b[i];
};

export const greater: Two = (out, a, b, many) => {
  for (let i = 0; i < many; i++) out[i] = Math.max(a[i], b[i]);
};

export const lesser: Two = (out, a, b, many) => {
  for (let i = 0; i < many; i++) out[i] = Math.min(a[i], b[i]);
};

/** One without a value leaves the sum without. */
export function total(out: Lane, items: readonly Lane[], many: number): void {
  for (let i = 0; i < many; i++) {
    let all = 0;
    for (let k = 0; k < items.length; k++) all = sum(all, items[k][i]);
    out[i] = all;
  }
}

export interface Branch {
  readonly when: Lane;
  readonly then: Lane;
}

/** The first branch whose condition holds. */
export function chosen(
  out: Lane,
  branches: readonly Branch[],
  otherwise: Lane,
  many: number,
): void {
  for (let i = 0; i < many; i++) {
    let taken = otherwise;
    let open = false;
    for (const { when, then } of branches) {
      if (when[i] === 0) continue;
      open = when[i] !== 1;
      taken = then;
      break;
    }
    out[i] = open ? NaN : taken[i];
  }
}

export interface LookUpLanes {
  readonly wanted: readonly { readonly relation: Relation; readonly value: Lane }[];
  readonly rows: readonly { readonly cells: readonly Lane[]; readonly answer: Lane }[];
}

/** The answer of the first row that meets all conditions; one of which that can't be told stops the search. */
export function lookedUp(out: Lane, { wanted, rows }: LookUpLanes, many: number): void {
  for (let i = 0; i < many; i++) {
    let answer = NaN;
    for (const row of rows) {
      const met = meets(row.cells, wanted, i);
      if (met === 0) continue;
      if (met === 1) answer = row.answer[i];
      break;
    }
    out[i] = answer;
  }
}

/** 1: all conditions; 0: not one of them; NaN: can't be told. */
function meets(cells: readonly Lane[], wanted: LookUpLanes['wanted'], i: number): number {
  let met = 1;
  for (let k = 0; k < wanted.length; k++) {
    const { relation, value } = wanted[k];
    const [one, other] = [cells[k][i], value[i]];
    if (Number.isNaN(other)) return NaN;
    if (Number.isNaN(one)) met = NaN;
    else if (!holds(relation, order(one, other))) return 0;
  }
  return met;
}

/** a + b, zero where only noise is left. */
function sum(a: number, b: number): number {
  const all = a + b;
  const size = Math.abs(all);
  return size < NOISE * Math.abs(a) && size < NOISE * Math.abs(b) ? 0 : all;
}

/** Below nought, nought or above: the order of two numbers of which the last digits are noise. */
export function order(a: number, b: number): number {
  const apart = a - b;
  return Math.abs(apart) <= NOISE * Math.max(Math.abs(a), Math.abs(b)) ? 0 : apart;
}

/** Half is away from zero. */
function whole(a: number, way: Way): number {
  const noise = Math.min(Math.abs(a) * NOISE, MOST_NOISE);
  switch (way) {
    case 'up':
      return Math.ceil(a - noise);
    case 'down':
      return Math.floor(a + noise);
    case 'nearest':
      return a < 0 ? -Math.floor(0.5 - a + noise) : Math.floor(a + 0.5 + noise);
  }
}

function holds(relation: Relation, by: number): boolean {
  switch (relation) {
    case 'is':
      return by === 0;
    case 'is-not':
      return by !== 0;
    case 'more':
      return by > 0;
    case 'less':
      return by < 0;
    case 'at-least':
      return by >= 0;
    case 'at-most':
      return by <= 0;
  }
}
