// A volume ÷ 27: the trade's way from cubic feet to cubic yards, which units would make wrong by 27. It is asked.
import { VOLUME, hardPart } from '../../quantity/dimension.ts';
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
