// Cost and price lines: money with nothing left over, and to the cent wherever they are used,
// so that every total of them adds up as it is shown.
import { MONEY, PLAIN, withoutNounsAbove } from '../quantity/dimension.ts';
import { Dec, scaled, snapped } from '../quantity/decimal.ts';
import type { Holds } from '../quantity/form.ts';
import { type AmountMeasure, amountMeasure } from '../quantity/measure.ts';
import type { Plan } from '../language/plan.ts';
import { type Held, SoFar, isNoValue } from './held.ts';

const DOLLARS = amountMeasure(MONEY);

/** What a cost line holds that is worked like this; null where that isn't money alone. */
export function costHolds(holds: Holds, plan: Plan): Holds | null {
  const { measure } = holds;
  if (measure.kind === 'open') return { ...holds, measure: DOLLARS };
  if (measure.kind !== 'amount') return null;
  // Nought needs no unit.
  const nought = plan.op === 'constant' && plan.value.n === 0n;
  if (measure.dimension === PLAIN && nought) return { ...holds, measure: DOLLARS };
  return withoutNounsAbove(measure.dimension) === MONEY ? { ...holds, measure: DOLLARS } : null;
}

/** The value in dollars, to the cent, half a cent away from zero; what has no value is left as it is. */
export function toTheCent(held: Held, measure: AmountMeasure): Held {
  if (isNoValue(held)) return held;
  if (held instanceof SoFar) return new SoFar(cents(held.value as Dec, measure), held.leftOut);
  return cents(held as Dec, measure);
}

function cents(value: Dec, measure: AmountMeasure): Dec {
  return snapped(scaled(value, measure.scale)).toDecimalPlaces(2, Dec.ROUND_HALF_UP);
}
