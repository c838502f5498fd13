// Totals and averages of a list, and the greater or lesser of some.
import { OPEN } from '../../quantity/measure.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Limited, ListOf, Pick } from '../tree.ts';
import { agree } from './agreeing.ts';
import { type Checking, refuse } from './checking.ts';
import { ADDING, AVERAGING, COMPARING, notAnAmount } from './clashes.ts';
import { made } from './holding.ts';

/** `total of A, B and C`: what is not yet known is left out of a total, even where nobody knows what it will measure. */
export function checkList(
  formula: ListOf,
  items: readonly Checked[],
  checking: Checking,
): Checked | null {
  if (!areAmounts(items, formula.what === 'total' ? 'added' : 'averaged', checking)) return null;
  const known = items.filter((c) => c.holds.measure !== OPEN);
  const agreed = agree(known, formula.what === 'total' ? ADDING : AVERAGING, checking);
  if (!agreed) return null;
  const place = new Map(known.map((c, i) => [c, i]));
  const plans: Plan[] = [];
  const parts: Checked[] = [];
  for (const item of items) {
    const i = place.get(item);
    plans.push((i === undefined ? undefined : agreed.plans[i]) ?? item.plan);
    parts.push((i === undefined ? undefined : agreed.parts[i]) ?? item);
  }
  const plan: Plan = { op: formula.what, items: plans };
  return made(formula, parts, agreed.measure, plan, { showIn: agreed.showIn });
}

/** `A or B, whichever is greater`, `the lesser of A and B`. */
export function checkPick(
  formula: Pick,
  items: readonly Checked[],
  checking: Checking,
): Checked | null {
  if (!areAmounts(items, 'compared by size', checking)) return null;
  const agreed = agree(items, COMPARING, checking);
  if (!agreed) return null;
  const plan: Plan = {
    op: formula.which === 'greater' ? 'greatest' : 'least',
    items: agreed.plans,
  };
  return made(formula, agreed.parts, agreed.measure, plan, { showIn: agreed.showIn });
}

/** `not less than 5 in`: the greater of both, shown as what is limited. */
export function checkLimited(
  formula: Limited,
  of: Checked,
  limit: Checked,
  checking: Checking,
): Checked | null {
  if (!areAmounts([of, limit], 'limited', checking)) return null;
  const agreed = agree([of, limit], COMPARING, checking);
  if (!agreed) return null;
  const op = formula.side === 'not-less' ? 'greatest' : 'least';
  return made(
    formula,
    agreed.parts,
    agreed.measure,
    { op, items: agreed.plans },
    {
      showIn: of.holds.showIn,
    },
  );
}

function areAmounts(items: readonly Checked[], doing: string, checking: Checking): boolean {
  const odd = items.find(
    (c) => c.holds.measure.kind === 'text' || c.holds.measure.kind === 'yes-no',
  );
  if (odd) refuse(checking, notAnAmount(odd, doing, checking));
  return odd === undefined;
}
