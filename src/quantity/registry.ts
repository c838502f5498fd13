// The factors of mathjs's own unit table as exact rationals.
// The table stands inside mathjs's Unit class. The class is made once here, with nothing behind it that
// could do arithmetic: the numbers are all that is wanted, which takes 3 ms where a working class takes 16.
import { createUnitClass } from 'mathjs';
import { Fraction } from './measure.ts';

interface UnitTable {
  readonly UNITS: Readonly<Record<string, { readonly value: unknown }>>;
  readonly PREFIXES: Readonly<
    Record<'SHORT', Readonly<Record<string, { readonly value: unknown }>>>
  >;
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

/** One of this unit in metres, kilograms and seconds and their powers, by its name in mathjs. */
export function factorOf(name: string, prefix: '' | 'm' | 'c' | 'k' = ''): Fraction {
  const unit = table.UNITS[name];
  const multiple = table.PREFIXES.SHORT[prefix];
  if (!unit || !multiple) throw new Error(`mathjs has no unit "${prefix}${name}"`);
  return exactly(unit.value, name).mul(exactly(multiple.value, prefix));
}

/** The decimal that is written in the table. A double gives it back in its shortest text. */
function exactly(value: unknown, name: string): Fraction {
  const text = String(value);
  if (!/^\d+(\.\d+)?$/.test(text))
    throw new Error(`mathjs's "${name}" is ${text}, no plain decimal`);
  return new Fraction(text);
}
