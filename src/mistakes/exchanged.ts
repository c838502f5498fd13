// A plan with one stretch of it exchanged for another: how a step is worked again with a mistake in it.
import { operandsOf } from '../engine/compile.ts';
import type { Plan } from '../language/plan.ts';
import { type Dec, toFraction } from '../quantity/decimal.ts';
import { Fraction } from '../quantity/measure.ts';

export const ONE: Plan = { op: 'constant', value: new Fraction(1) };

/** With so many digits that what comes out whole is whole. */
export function constant(value: Dec): Plan {
  return { op: 'constant', value: toFraction(value.toSignificantDigits(30)) };
}

export function everyPlan(plan: Plan): readonly Plan[] {
  const all = new Set<Plan>([plan]);
  for (const each of all) for (const operand of operandsOf(each)) all.add(operand);
  return [...all];
}

/** The plan with one stretch of it exchanged, wherever that stands. What does not hold it stays the same object. */
export function replaced(plan: Plan, old: Plan, fresh: Plan): Plan {
  const done = new Map<object, unknown>([[old, fresh]]);
  const walk = (thing: unknown): unknown => {
    if (typeof thing !== 'object' || thing === null || thing instanceof Fraction) return thing;
    if (done.has(thing)) return done.get(thing);
    const entries = Object.entries(thing).map(([key, was]) => [key, was, walk(was)] as const);
    const made = entries.every(([, was, is]) => was === is)
      ? thing
      : Array.isArray(thing)
        ? entries.map(([, , is]) => is)
        : Object.fromEntries(entries.map(([key, , is]) => [key, is]));
    done.set(thing, made);
    return made;
  };
  return walk(plan) as Plan;
}
