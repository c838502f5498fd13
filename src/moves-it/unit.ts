// In what a figure is shown, and how many of that one held number is.
import type { CellState } from '../engine/outcome.ts';
import { Dec } from '../quantity/decimal.ts';
import type { Asked } from './web.ts';

export interface ShownUnit {
  /** `ft`, `$ per hour`, `%`; empty for a number. */
  readonly unit: string;
  /** A held number times this is the number in `unit`. */
  readonly factor: number;
  readonly exactFactor: Dec;
}

/** Null of what is no number. */
export function shownUnit(asked: Asked, { outcome, holds }: CellState): ShownUnit | null {
  if (outcome.kind !== 'value' || !(outcome.value instanceof Dec) || !holds) return null;
  const { unit } = asked.say(outcome.value, holds);
  // Of nought, and where a small length is told in inches, another value tells what its unit is made of.
  for (const probe of [outcome.value, new Dec(1), new Dec('1e-3'), new Dec(1000), new Dec(1e6)]) {
    const shown = asked.say(probe, holds);
    if (probe.isZero() || shown.unit !== unit) continue;
    const exactFactor = new Dec(shown.exact).div(probe);
    return { unit, factor: exactFactor.toNumber(), exactFactor };
  }
  return { unit, factor: 1, exactFactor: new Dec(1) };
}
