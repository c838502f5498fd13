// Plans by hand, for tests of the arithmetic alone: short names for the shapes of language/plan.ts.
import { compile } from '../../src/engine/compile.ts';
import { Fault, type Held, SoFar, Unknown, Waiting } from '../../src/engine/held.ts';
import type { Plan } from '../../src/language/plan.ts';
import type { CellId, Relation, Way } from '../../src/language/tree.ts';
import { Dec } from '../../src/quantity/decimal.ts';
import { Fraction } from '../../src/quantity/measure.ts';

export const number = (value: string | number): Plan => ({
  op: 'constant',
  value: new Fraction(String(value)),
});
export const cell = (id: CellId): Plan => ({ op: 'cell', cell: id });
export const unknown: Plan = { op: 'unknown' };
export const yes: Plan = { op: 'yes-no', value: true };
export const no: Plan = { op: 'yes-no', value: false };
export const text = (value: string): Plan => ({ op: 'text', value });

const two =
  <T extends 'add' | 'subtract' | 'multiply' | 'divide' | 'and' | 'or'>(op: T) =>
  (left: Plan, right: Plan): Plan => ({ op, left, right });
export const add = two('add');
export const subtract = two('subtract');
export const multiply = two('multiply');
export const divide = two('divide');
export const and = two('and');
export const or = two('or');

export const not = (of: Plan): Plan => ({ op: 'not', of });
export const root = (of: Plan): Plan => ({ op: 'root', of });
export const power = (of: Plan, by: 2 | 3): Plan => ({ op: 'power', of, power: by });
export const scale = (by: string, of: Plan): Plan => ({ op: 'scale', by: new Fraction(by), of });
export const round = (way: Way, of: Plan, step: Plan | null = null): Plan => ({
  op: 'round',
  way,
  of,
  step,
});
export const compare = (relation: Relation, left: Plan, right: Plan): Plan => ({
  op: 'compare',
  relation,
  left,
  right,
});
export const choose = (branches: readonly (readonly [Plan, Plan])[], otherwise: Plan): Plan => ({
  op: 'choose',
  branches: branches.map(([when, then]) => ({ when, then })),
  otherwise,
});
export const total = (...items: readonly Plan[]): Plan => ({ op: 'total', items });
export const average = (...items: readonly Plan[]): Plan => ({ op: 'average', items });
export const greatest = (...items: readonly Plan[]): Plan => ({ op: 'greatest', items });
export const least = (...items: readonly Plan[]): Plan => ({ op: 'least', items });

/** Works a plan whose cells 0, 1, 2 … hold these; `?` in it stands for cell 99. */
export function worked(plan: Plan, values: readonly Held[] = []): Held {
  return compile(plan, { values, placeOf: (id) => id }, 99)();
}

/** As text: `12.5`, `yes`, `12 so far without 1, 2`, `unknown for 3`, `waiting for 4`, `division-by-zero`. */
export function said(held: Held): string {
  if (held instanceof SoFar) return `${said(held.value)} so far without ${held.leftOut.join(', ')}`;
  if (held instanceof Unknown) return `unknown for ${held.for.join(', ')}`;
  if (held instanceof Waiting) return `waiting for ${held.for.join(', ')}`;
  if (held instanceof Fault) return held.code;
  if (typeof held === 'boolean') return held ? 'yes' : 'no';
  return typeof held === 'string' ? `"${held}"` : held.toSignificantDigits(40).toFixed();
}

export const dec = (value: string | number): Dec => new Dec(value);
