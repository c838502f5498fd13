// `1/4 in per ft over 14 ft`: over divides, but beside a rate per that very thing the trade means "at". It is asked.
import type { Checked } from '../plan.ts';
import type { Binary } from '../tree.ts';
import { type Checking, inOrder, mended, refuse, typed, typedAsOne } from './checking.ts';

/** Reports a rate written `over` what it is per. `divided by` and `÷` say what they mean. */
export function asksOverAt(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): boolean {
  const word = checking.text.slice(formula.opSpot.from, formula.opSpot.to).toLowerCase();
  const [rate, length] = [left.holds.measure, right.holds.measure];
  if (word !== 'over' || rate.kind !== 'amount' || !rate.rate || length.kind !== 'amount')
    return false;
  if (rate.rate.under.dimension !== length.dimension || length.rate) return false;
  const [a, b] = [typed(checking, left.formula), typed(checking, right.formula)];
  refuse(checking, {
    code: 'two-readings',
    headline: 'Along all of it, or divided by it?',
    spots: inOrder(formula.opSpot),
    explanation: `"${a} over ${b}" could be ${b} at that rate, or the rate divided by ${b}. Write the one that is meant.`,
    fixes: [
      mended(checking, `${b} at that rate`, {
        spot: formula.spot,
        by: `${typedAsOne(checking, right.formula)} at ${typedAsOne(checking, left.formula)}`,
      }),
      mended(checking, 'Divided by it', { spot: formula.opSpot, by: 'divided by' }),
    ],
  });
  return true;
}
