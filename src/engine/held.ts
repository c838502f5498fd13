// What flows through a formula while it is worked: plain values, and the ways of not having one.
// Arithmetic looks first whether all is plain; only then does it come here to carry the rest along.
import type { Dec } from '../quantity/decimal.ts';
import type { CellId } from '../language/tree.ts';

export type Plain = Dec | boolean | string;

/** A value that leaves out some lines: "so far". Carried through all arithmetic. */
export class SoFar {
  readonly value: Plain;
  readonly leftOut: readonly CellId[];
  constructor(value: Plain, leftOut: readonly CellId[]) {
    this.value = value;
    this.leftOut = leftOut;
  }
}

/** Needs a `?`: the givens still to come. */
export class Unknown {
  readonly for: readonly CellId[];
  constructor(cells: readonly CellId[]) {
    this.for = cells;
  }
}

/** A cell it names has no value because something is at fault. */
export class Waiting {
  readonly for: readonly CellId[];
  constructor(cells: readonly CellId[]) {
    this.for = cells;
  }
}

/** Why a formula can't be worked: its text is at fault, or it can't be with the values it has. */
export type FaultCode =
  | 'text'
  | 'division-by-zero'
  | 'root-of-negative'
  | 'nothing-left'
  | 'piece-too-long'
  | 'too-large'
  | 'no-row';

/** This formula itself can't be worked. */
export class Fault {
  readonly code: FaultCode;
  /** Of a look-up: which of its conditions no row met that met those before it. */
  readonly condition: number;
  constructor(code: FaultCode, condition = 0) {
    this.code = code;
    this.condition = condition;
  }
}

export type Held = Plain | SoFar | Unknown | Waiting | Fault;

export const FAULT_OF_TEXT = new Fault('text');
export const DIVISION_BY_ZERO = new Fault('division-by-zero');
export const ROOT_OF_NEGATIVE = new Fault('root-of-negative');
export const NOTHING_LEFT = new Fault('nothing-left');
export const PIECE_TOO_LONG = new Fault('piece-too-long');
export const TOO_LARGE = new Fault('too-large');

export type NoValue = Unknown | Waiting | Fault;

/** Has it no value at all? */
export function isNoValue(held: Held): held is NoValue {
  return held instanceof Unknown || held instanceof Waiting || held instanceof Fault;
}

/** The value itself, of a plain one or one so far. */
export function bare(held: Plain | SoFar): Plain {
  return held instanceof SoFar ? held.value : held;
}

export function leftOutOf(held: Held): readonly CellId[] {
  return held instanceof SoFar ? held.leftOut : NONE;
}

/** The value with the lines it leaves out; plain where there are none. */
export function soFar(value: Plain, leftOut: readonly CellId[]): Plain | SoFar {
  return leftOut.length === 0 ? value : new SoFar(value, leftOut);
}

/** Of several that have no value, what their result is: a fault before waiting before unknown. */
export function withoutValue(first: NoValue, second: Held): NoValue {
  if (!isNoValue(second) || first instanceof Fault) return first;
  if (second instanceof Fault) return second;
  if (first instanceof Waiting) {
    return second instanceof Waiting ? new Waiting(union(first.for, second.for)) : first;
  }
  return second instanceof Waiting ? second : new Unknown(union(first.for, second.for));
}

/** Both lists, no repeats, in order of first mention. */
export function union(a: readonly CellId[], b: readonly CellId[]): readonly CellId[] {
  if (a.length === 0) return b;
  if (b.length === 0 || a === b) return a;
  const all = new Set(a);
  for (const id of b) all.add(id);
  return all.size === a.length ? a : [...all];
}

/** Would whoever reads it see the same? Values are compared as they are, to the last digit. */
export function sameHeld(a: Held, b: Held): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object') return false;
  if (a instanceof SoFar) {
    return b instanceof SoFar && sameHeld(a.value, b.value) && sameCells(a.leftOut, b.leftOut);
  }
  if (a instanceof Unknown) return b instanceof Unknown && sameCells(a.for, b.for);
  if (a instanceof Waiting) return b instanceof Waiting && sameCells(a.for, b.for);
  if (a instanceof Fault)
    return b instanceof Fault && a.code === b.code && a.condition === b.condition;
  if (b instanceof SoFar || isNoValue(b)) return false;
  return a.e === b.e && a.s === b.s && a.eq(b);
}

function sameCells(a: readonly CellId[], b: readonly CellId[]): boolean {
  if (a === b) return true;
  return a.length === b.length && a.every((id, i) => id === b[i]);
}

const NONE: readonly CellId[] = [];
