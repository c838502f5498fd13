// The plans of the engine as closures without mathjs: over float64, and over bare decimals.
// They know nothing of what isn't known or at fault: this is what the figures alone would cost.
import type { Plan } from '../../src/language/plan.ts';
import type { CellId } from '../../src/language/tree.ts';
import {
  Dec,
  fromFraction,
  minusDropping,
  plusDropping,
  roundedToWhole,
} from '../../src/quantity/decimal.ts';

type SlotOf = (id: CellId) => number;

/** As one would write it by hand, on an array of plain numbers. */
export function floatClosure(plan: Plan, values: Float64Array, slotOf: SlotOf): () => number {
  const sub = (of: Plan): (() => number) => floatClosure(of, values, slotOf);
  switch (plan.op) {
    case 'constant': {
      const value = plan.value.valueOf();
      return () => value;
    }
    case 'cell': {
      const slot = slotOf(plan.cell);
      return () => values[slot];
    }
    case 'add': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => left() + right();
    }
    case 'subtract': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => left() - right();
    }
    case 'multiply': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => left() * right();
    }
    case 'divide': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => left() / right();
    }
    case 'scale': {
      const [of, by] = [sub(plan.of), plan.by.valueOf()];
      return () => of() * by;
    }
    case 'round': {
      if (plan.way !== 'up' || plan.step) return unthought(plan);
      const of = sub(plan.of);
      // Without a little leeway float64 would round many whole counts up to the next.
      return () => Math.ceil(of() - 1e-9);
    }
    case 'total': {
      const items = plan.items.map(sub);
      return () => {
        let sum = 0;
        for (let i = 0; i < items.length; i++) sum += items[i]();
        return sum;
      };
    }
    default:
      return unthought(plan);
  }
}

/** The same on decimals, with the two rules that keep whole numbers whole. */
export function decimalClosure(plan: Plan, values: readonly Dec[], slotOf: SlotOf): () => Dec {
  const sub = (of: Plan): (() => Dec) => decimalClosure(of, values, slotOf);
  switch (plan.op) {
    case 'constant': {
      const value = fromFraction(plan.value);
      return () => value;
    }
    case 'cell': {
      const slot = slotOf(plan.cell);
      return () => values[slot];
    }
    case 'add': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => plusDropping(left(), right());
    }
    case 'subtract': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => minusDropping(left(), right());
    }
    case 'multiply': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => left().times(right());
    }
    case 'divide': {
      const [left, right] = [sub(plan.left), sub(plan.right)];
      return () => left().div(right());
    }
    case 'scale': {
      const of = sub(plan.of);
      const top = new Dec((plan.by.s * plan.by.n).toString());
      const bottom = new Dec(plan.by.d.toString());
      if (bottom.eq(1)) return () => of().times(top);
      return top.eq(1) ? () => of().div(bottom) : () => of().times(top).div(bottom);
    }
    case 'round': {
      if (plan.way !== 'up' || plan.step) return unthought(plan);
      const of = sub(plan.of);
      return () => roundedToWhole(of(), 'up');
    }
    case 'total': {
      const items = plan.items.map(sub);
      return () => {
        let sum = items[0]();
        for (let i = 1; i < items.length; i++) sum = plusDropping(sum, items[i]());
        return sum;
      };
    }
    default:
      return unthought(plan);
  }
}

function unthought(plan: Plan): never {
  throw new Error(`the large job was not thought to have such a ${plan.op} in it`);
}
