// Texts as plain numbers: the place of each among all that may be met, so that they compare as they did.
import type { Plan } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import { operandsOf } from '../engine/compile.ts';
import { operandsFirst, ownOperands } from './plan-walk.ts';
import type { Asked, Web } from './web.ts';

export function textsIn(asked: Asked, { steps }: Web): ReadonlyMap<string, number> {
  const texts = new Set<string>();
  const columns = new Set<Plan>();
  const meet = (each: Plan, meant: (cell: CellId) => CellId): void => {
    if (each.op === 'text') texts.add(each.value);
    if (each.op !== 'cell') return;
    const { outcome } = asked.state(meant(each.cell));
    if (outcome.kind === 'value' && typeof outcome.value === 'string') texts.add(outcome.value);
  };
  for (const { plan, meant } of steps) {
    for (const each of operandsFirst(plan, ownOperands)) {
      meet(each, meant);
      // What a whole column is asked is the same in every row.
      if (each.op !== 'column') continue;
      for (const inside of operandsFirst(each.of, operandsOf, columns)) meet(inside, (id) => id);
    }
  }
  // In the order in which the engine compares them.
  const inOrder = [...texts].sort((a, b) => (a === b ? 0 : a < b ? -1 : 1));
  return new Map(inOrder.map((text, place) => [text, place]));
}
