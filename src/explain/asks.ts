// Questions to the engine: plans put together out of the plans of a formula. Nothing is worked here.
import { type AmountMeasure, Fraction, conversion } from '../quantity/measure.ts';
import type { Value } from '../engine/outcome.ts';
import type { Plan } from '../language/plan.ts';
import type { Relation } from '../language/tree.ts';

/** The plan that stands for a value as it is. */
export function constantOf(value: Value): Plan {
  if (typeof value === 'boolean') return { op: 'yes-no', value };
  if (typeof value === 'string') return { op: 'text', value };
  return numberOf(value.toFixed());
}

/** A written decimal. */
export function numberOf(text: string): Plan {
  return { op: 'constant', value: new Fraction(text) };
}

export function sumOf(left: Plan, right: Plan): Plan {
  return { op: 'add', left, right };
}
export function differenceOf(left: Plan, right: Plan): Plan {
  return { op: 'subtract', left, right };
}
export function productOf(left: Plan, right: Plan): Plan {
  return { op: 'multiply', left, right };
}
export function quotientOf(left: Plan, right: Plan): Plan {
  return { op: 'divide', left, right };
}
export function comparisonOf(relation: Relation, left: Plan, right: Plan): Plan {
  return { op: 'compare', relation, left, right };
}

/** The same amount as a number held in another scale. */
export function heldIn(plan: Plan, from: AmountMeasure, to: AmountMeasure): Plan {
  const by = conversion(from, to);
  return by.equals(1) ? plan : { op: 'scale', by, of: plan };
}

/**
 * What stands for `plan` wherever it is found: the plan itself, or what it scales, since the checker
 * folds one scaling into the next.
 */
export function standingFor(plan: Plan, stands: Plan): readonly (readonly [Plan, Plan])[] {
  if (plan.op !== 'scale') return [[plan, stands]];
  return [
    [plan, stands],
    [plan.of, quotientOf(stands, { op: 'constant', value: plan.by })],
  ];
}

/** As deep as the checker ever wraps the operands of one step; deeper plans are left as they are. */
const WRAPPED_AT_MOST = 80;

/** The plan with some of the plans in it (the same objects) replaced by others. */
export function swapped(plan: Plan, swaps: ReadonlyMap<Plan, Plan>, level = WRAPPED_AT_MOST): Plan {
  const found = swaps.get(plan);
  if (found) return found;
  if (level === 0) return plan;
  const within = (inner: Plan): Plan => swapped(inner, swaps, level - 1);
  switch (plan.op) {
    case 'constant':
    case 'pi':
    case 'unknown':
    case 'text':
    case 'yes-no':
    case 'cell':
      return plan;
    case 'add':
    case 'subtract':
    case 'multiply':
    case 'divide':
      return { op: plan.op, left: within(plan.left), right: within(plan.right) };
    case 'and':
    case 'or':
      return { op: plan.op, left: within(plan.left), right: within(plan.right) };
    case 'compare':
      return { ...plan, left: within(plan.left), right: within(plan.right) };
    case 'scale':
    case 'power':
    case 'root':
    case 'some':
    case 'not':
      return { ...plan, of: within(plan.of) };
    case 'round':
      return { ...plan, of: within(plan.of), step: plan.step && within(plan.step) };
    case 'choose':
      return {
        op: 'choose',
        branches: plan.branches.map((b) => ({ when: within(b.when), then: within(b.then) })),
        otherwise: within(plan.otherwise),
      };
    case 'greatest':
    case 'least':
    case 'total':
    case 'average':
      return { op: plan.op, items: plan.items.map(within) };
    case 'column':
      return { ...plan, of: within(plan.of) };
    case 'look-up':
      return {
        ...plan,
        wanted: plan.wanted.map((w) => ({ ...w, value: within(w.value) })),
      };
  }
}
