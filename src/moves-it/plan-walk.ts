// Going through a plan without calling oneself: it may be deeper than the stack is.
import { operandsOf } from '../engine/compile.ts';
import type { Plan } from '../language/plan.ts';

const NONE: readonly Plan[] = [];

/** What a plan is worked from; a figure of a whole column stands as one thing, since many formulas may ask for it. */
export function ownOperands(plan: Plan): readonly Plan[] {
  return plan.op === 'column' ? NONE : operandsOf(plan);
}

/** Every stretch of the plan once, operands before what uses them; `met` are passed over and added to. */
export function operandsFirst(
  plan: Plan,
  operands: (plan: Plan) => readonly Plan[],
  met: Set<Plan> = new Set<Plan>(),
): readonly Plan[] {
  if (met.has(plan)) return NONE;
  met.add(plan);
  const order: Plan[] = [];
  const path = [{ plan, operands: operands(plan), next: 0 }];
  for (let top = path.at(-1); top; top = path.at(-1)) {
    const operand = top.operands[top.next];
    if (operand === undefined) {
      order.push(top.plan);
      path.pop();
      continue;
    }
    top.next += 1;
    if (met.has(operand)) continue;
    met.add(operand);
    path.push({ plan: operand, operands: operands(operand), next: 0 });
  }
  return order;
}
