// Plus and minus: two that measure the same, or a share of what stands before it.
import type { Checked } from '../plan.ts';
import type { Binary } from '../tree.ts';
import { agree } from './agreeing.ts';
import { type Checking, refuse } from './checking.ts';
import { ADDING, TAKING_AWAY, notAnAmount } from './clashes.ts';
import { made } from './holding.ts';
import { addShare } from './shares.ts';
import { askWhichDimension } from './which-dimension.ts';

export function checkAdding(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  const odd = [left, right].find(
    (c) => c.holds.measure.kind === 'text' || c.holds.measure.kind === 'yes-no',
  );
  if (odd) {
    const doing = formula.op === 'plus' ? 'added' : 'subtracted';
    const beside = { other: odd === left ? right : left, op: doing } as const;
    const asked = askWhichDimension(odd, checking, beside);
    return refuse(checking, asked ?? notAnAmount(odd, doing, checking));
  }
  if (right.holds.measure.kind === 'share') return addShare(formula, left, right, checking);
  const task = formula.op === 'plus' ? ADDING : TAKING_AWAY;
  const agreed = agree([left, right], task, checking);
  if (!agreed) return null;
  const [a, b] = agreed.plans;
  if (!a || !b) throw new Error('A sum of fewer than two');
  const op = formula.op === 'plus' ? 'add' : 'subtract';
  return made(
    formula,
    agreed.parts,
    agreed.measure,
    { op, left: a, right: b },
    {
      showIn: agreed.showIn,
    },
  );
}
