// A volume ÷ 27: the trade's way from cubic feet to cubic yards, which units would make wrong by 27. It is asked.
import { MASS, VOLUME, hardPart } from '../../quantity/dimension.ts';
import type { Checked } from '../plan.ts';
import type { Binary } from '../tree.ts';
import { bareNumber } from './bare-numbers.ts';
import { type Checking, mended, refuse, typed, typedAsOne } from './checking.ts';

/** Reports a division of a volume by a written bare 27. */
export function asksAboutYards(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): boolean {
  if (asksAboutTons(formula, left, right, checking)) return true;
  const { measure } = left.holds;
  const isVolume = measure.kind === 'amount' && hardPart(measure.dimension) === VOLUME;
  if (!isVolume || !bareNumber(right)?.equals(27)) return false;
  // `volume times 42 divided by 27` is a proportion.
  if (left.parts.some((part) => bareNumber(part) !== null)) return false;
  const volume = typedAsOne(checking, left.formula);
  refuse(checking, {
    code: 'two-readings',
    headline: 'Cubic yards, or a 27th of it?',
    spots: [{ from: formula.opSpot.from, to: right.formula.spot.to }],
    explanation: `"${typed(checking, left.formula)}" has its units already: to see it in cubic yards, ask for cubic yards. Divided by 27 it would be a 27th of that volume.`,
    fixes: [
      mended(checking, 'In cubic yards', {
        spot: formula.spot,
        by: `(${typed(checking, left.formula)}, in cubic yards)`,
      }),
      mended(checking, 'A 27th of it', { spot: formula.spot, by: `1/27 of ${volume}` }),
    ],
  });
  return true;
}

/** `3,200 lb / 2000`, `1,500 kg / 1000`: the same with weights. */
function asksAboutTons(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): boolean {
  const { measure, written } = left.holds;
  if (measure.kind !== 'amount' || hardPart(measure.dimension) !== MASS) return false;
  const by = bareNumber(right);
  const unit = by?.equals(2000)
    ? 'tons'
    : by?.equals(1000) && written.includes('kg')
      ? 'tonnes'
      : null;
  if (unit === null) return false;
  const weight = typedAsOne(checking, left.formula);
  const share = unit === 'tons' ? '1/2000' : '1/1000';
  refuse(checking, {
    code: 'two-readings',
    headline: `In ${unit}, or that small a part of it?`,
    spots: [{ from: formula.opSpot.from, to: right.formula.spot.to }],
    explanation: `"${typed(checking, left.formula)}" has its units already: to see it in ${unit}, ask for ${unit}.`,
    fixes: [
      mended(checking, `In ${unit}`, {
        spot: formula.spot,
        by: `(${typed(checking, left.formula)}, in ${unit})`,
      }),
      mended(checking, 'That part of it', { spot: formula.spot, by: `${share} of ${weight}` }),
    ],
  });
  return true;
}
