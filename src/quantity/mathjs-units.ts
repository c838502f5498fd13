// The numbers in mathjs's own unit table, as texts.
// The table stands inside mathjs's Unit class, an eighth of what the engine weighs. The class is made once
// here, with nothing behind it that could do arithmetic. The build makes it too and puts what this module
// exports in its place (`workedOutInBuild` in vite.config.ts), so the page carries the numbers alone.
import { createUnitClass } from 'mathjs';
import { Fraction } from './measure.ts';

type Values = Readonly<Record<string, { readonly value: unknown }>>;

interface UnitTable {
  readonly UNITS: Values;
  readonly PREFIXES: { readonly SHORT: Values };
}

declare module 'mathjs' {
  export function createUnitClass(scope: Readonly<Record<string, unknown>>): unknown;
}

function unused(): never {
  throw new Error('the unit table does no arithmetic');
}

const table = createUnitClass({
  config: { number: 'number' },
  addScalar: unused,
  subtractScalar: unused,
  multiplyScalar: unused,
  divideScalar: unused,
  pow: unused,
  abs: unused,
  fix: unused,
  round: unused,
  equal: unused,
  isNumeric: unused,
  format: unused,
  number: unused,
  Complex: unused,
  BigNumber: unused,
  Fraction,
}) as UnitTable;

/** What one of each unit is in metres, kilograms and seconds and their powers. */
export const UNIT_TEXTS = texts(table.UNITS);

/** What the short prefixes multiply by: `m`, `c`, `k`. */
export const PREFIX_TEXTS = texts(table.PREFIXES.SHORT);

function texts(values: Values): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(values).map(([name, { value }]) => [name, String(value)]),
  );
}
