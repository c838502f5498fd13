// Comparisons: two that measure the same, in the finer scale; texts and yes/no only for being the same.
import { YES_NO } from '../../quantity/measure.ts';
import type { Fix } from '../../words/report.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Between, Comparison } from '../tree.ts';
import { agree } from './agreeing.ts';
import { type Checking, mended, refuse, spacedOut, typedAsOne } from './checking.ts';
import { COMPARING } from './clashes.ts';
import { made } from './holding.ts';
import { capital, fact, headline, whatItIs } from './saying.ts';

export function checkComparison(
  formula: Comparison,
  left: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  const agreed = agree([left, right], COMPARING, checking);
  const [a, b] = agreed?.plans ?? [];
  if (!agreed || !a || !b) return null;
  const sizes = agreed.measure.kind === 'amount' || agreed.measure.kind === 'share';
  const { relation } = formula;
  if (!sizes && relation !== 'is' && relation !== 'is-not') {
    return refuse(checking, {
      code: 'no-order',
      headline: headline(`${whatItIs(left)} is neither more nor less.`, 'These have no order.'),
      spots: [formula.opSpot],
      explanation: `${capital(fact(checking, left))}. It can be the same or not: write "is" or "is not".`,
      fixes: ['is', 'is not'].map((by) =>
        mended(checking, `Write "${by}"`, {
          spot: formula.opSpot,
          by: spacedOut(checking, formula.opSpot, by),
        }),
      ),
    });
  }
  const plan: Plan = { op: 'compare', relation, left: a, right: b };
  return made(formula, agreed.parts, YES_NO, plan);
}

/** `is between A and B`: both ends count in. */
export function checkBetween(
  formula: Between,
  parts: readonly Checked[],
  checking: Checking,
): Checked | null {
  const odd = parts.find(
    (c) => c.holds.measure.kind === 'text' || c.holds.measure.kind === 'yes-no',
  );
  if (odd) {
    return refuse(checking, {
      code: 'no-order',
      headline: headline(`${whatItIs(odd)} is not between anything.`, 'These have no order.'),
      spots: [odd.formula.spot],
      explanation: `${capital(fact(checking, odd))}. Only amounts and shares can lie between two others.`,
      fixes: oneOfBoth(formula, parts, checking),
    });
  }
  const agreed = agree(parts, COMPARING, checking);
  const [of, low, high] = agreed?.plans ?? [];
  if (!agreed || !of || !low || !high) return null;
  const plan: Plan = {
    op: 'and',
    left: { op: 'compare', relation: 'at-least', left: of, right: low },
    right: { op: 'compare', relation: 'at-most', left: of, right: high },
  };
  return made(formula, agreed.parts, YES_NO, plan);
}

/** One of two texts or the other, where "between" was said of them. */
function oneOfBoth(
  formula: Between,
  parts: readonly Checked[],
  checking: Checking,
): readonly Fix[] {
  if (parts.some((part) => part.holds.measure.kind === 'amount')) return [];
  const [of, low, high] = parts.map((part) => typedAsOne(checking, part.formula));
  const by = `(${of} is ${low} or ${of} is ${high})`;
  return [mended(checking, 'One of the two', { spot: formula.spot, by })];
}
