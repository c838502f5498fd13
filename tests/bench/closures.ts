// The plans of the engine as hand-written closures: over float64, and over bare decimals without mathjs.
// They know nothing of what isn't known or at fault: this is what the figures alone would cost.
import type { Plan } from '../../src/language/plan.ts';
import type { CellId, Relation } from '../../src/language/tree.ts';
import { Dec, fromFraction, minusDropping, plusDropping, roundedToWhole, snapped } from '../../src/quantity/decimal.ts';

type Bare<T> = () => T | boolean | string;

/** Arithmetic of one kind of number. */
interface Arithmetic<T> {
  readonly of: (plan: Plan & { op: 'constant' }) => T;
  readonly add: (a: T, b: T) => T;
  readonly subtract: (a: T, b: T) => T;
  readonly multiply: (a: T, b: T) => T;
  readonly divide: (a: T, b: T) => T;
  readonly round: (way: 'up' | 'down' | 'nearest', a: T, step: T | null) => T;
  readonly order: (a: T, b: T) => number;
}

const floats: Arithmetic<number> = {
  of: (plan) => plan.value.valueOf(),
  add: (a, b) => a + b,
  subtract: (a, b) => a - b,
  multiply: (a, b) => a * b,
  divide: (a, b) => a / b,
  round: (way, a, step) => {
    const by = step ?? 1;
    const quotient = a / by;
    if (way === 'up') return Math.ceil(quotient) * by;
    return (way === 'down' ? Math.floor(quotient) : Math.round(quotient)) * by;
  },
  order: (a, b) => a - b,
};

const decimals: Arithmetic<Dec> = {
  of: (plan) => fromFraction(plan.value),
  add: plusDropping,
  subtract: minusDropping,
  multiply: (a, b) => a.times(b),
  divide: (a, b) => a.div(b),
  round: (way, a, step) =>
    step === null ? roundedToWhole(a, way) : roundedToWhole(a.div(step), way).times(step),
  order: (a, b) => snapped(a).cmp(snapped(b)),
};

export const floatClosure = (plan: Plan, values: readonly unknown[], slotOf: (id: CellId) => number): Bare<number> =>
  closure(plan, values, slotOf, floats);

export const decimalClosure = (plan: Plan, values: readonly unknown[], slotOf: (id: CellId) => number): Bare<Dec> =>
  closure(plan, values, slotOf, decimals);

function closure<T>(
  plan: Plan,
  values: readonly unknown[],
  slotOf: (id: CellId) => number,
  math: Arithmetic<T>,
): Bare<T> {
  const sub = (of: Plan): (() => T) => closure(of, values, slotOf, math) as () => T;
  switch (plan.op) {
    case 'constant': {
      const value = math.of(plan);
      return () => value;
    }
    case 'cell': {
      const slot = slotOf(plan.cell);
      return () => values[slot] as T;
    }
    case 'add':
    case 'subtract':
    case 'multiply':
    case 'divide': {
      const [left, right, work] = [sub(plan.left), sub(plan.right), math[plan.op]];
      return () => work(left(), right());
    }
    case 'scale': {
      const of = sub(plan.of);
      const top = math.of({ op: 'constant', value: plan.by.mul(plan.by.d) });
      const bottom = math.of({ op: 'constant', value: plan.by.inverse().mul(plan.by.n).abs() });
      if (plan.by.d === 1n) return () => math.multiply(of(), top);
      if (plan.by.n === 1n) return () => math.divide(of(), bottom);
      return () => math.divide(math.multiply(of(), top), bottom);
    }
    case 'round': {
      const [of, step] = [sub(plan.of), plan.step && sub(plan.step)];
      return () => math.round(plan.way, of(), step && step());
    }
    case 'total': {
      const items = plan.items.map(sub);
      return () => items.slice(1).reduce((sum, item) => math.add(sum, item()), (items[0] as () => T)());
    }
    case 'compare': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => isTrue(plan.relation, math.order(left(), right()));
    }
    case 'greatest':
    case 'least': {
      const items = plan.items.map(sub);
      const sign = plan.op === 'greatest' ? 1 : -1;
      return () => items.map((item) => item()).reduce((a, b) => (math.order(b, a) * sign > 0 ? b : a));
    }
    default:
      throw new Error(`the large job is not thought to have a ${plan.op} in it`);
  }
}

function isTrue(relation: Relation, order: number): boolean {
  switch (relation) {
    case 'is':
      return order === 0;
    case 'is-not':
      return order !== 0;
    case 'more':
      return order > 0;
    case 'less':
      return order < 0;
    case 'at-least':
      return order >= 0;
    case 'at-most':
      return order <= 0;
  }
}
