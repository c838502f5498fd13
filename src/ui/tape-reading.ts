// How the tape reads amounts: through the estimate's own reading, so that a tape never knows units by itself.
import type { GivenRange } from '../engine/ranges.ts';
import type { CellId } from '../language/tree.ts';
import type { Holds } from '../quantity/form.ts';
import { LENGTH, isHard } from '../quantity/dimension.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';
import { remarkText } from '../notebook/remarks.ts';
import { type Limit, readLimits } from '../notebook/sensible.ts';
import type { Cell } from '../notebook/document.ts';
import {
  type TapeAmount,
  type TapeLimits,
  type TapeScale,
  tapeScale,
  writtenAt,
} from './tape-scale.ts';

/** The tape under a given, or null where there is nothing to slide: a `?`, a text, a yes or no. */
export function tapeUnder(door: EstimateDoor, cell: Cell): TapeScale | null {
  const { kind, input, range } = door.state(cell.id);
  if (kind !== 'given' || input.byHand !== null) return null;
  const read = (formula: string): TapeAmount | null => amountIn(door, cell.id, formula);
  if (range) return tapeScale(input.formula, betweenEnds(range), read);
  const sensible = remarkText(cell.remarks, 'sensible');
  const limits =
    sensible === null ? null : readLimits(sensible, (text) => door.draft(cell.id, text));
  const ends = limits && { low: endOf(limits.low), high: endOf(limits.high) };
  return tapeScale(input.formula, ends, read);
}

/** A position as it is written into the notebook: `13 bags` and not `13 bag`. */
export function saidAt(door: EstimateDoor, cell: CellId, at: number, scale: TapeScale): string {
  const written = writtenAt(at, scale);
  const { sentence, problems } = door.draft(cell, written).reading;
  return problems.length === 0 ? sentence : written;
}

function amountIn(door: EstimateDoor, cell: CellId, formula: string): TapeAmount | null {
  const { reading, outcome, shown } = door.draft(cell, formula);
  if (!reading.checked || outcome.kind !== 'value' || typeof outcome.value !== 'object')
    return null;
  if (!shown) return null;
  return amountOf(Number(outcome.value), reading.checked.holds, shown.unit);
}

/** A range slides from one of its ends to the other, whatever is sensible: beyond them would be no value of it. */
function betweenEnds({ best, worst }: GivenRange): TapeLimits | null {
  const [one, other] = [endOf(best), endOf(worst)];
  if (!one || !other) return null;
  return one.base < other.base ? { low: one, high: other } : { low: other, high: one };
}

function endOf(limit: Limit | null): TapeAmount | null {
  return limit && amountOf(Number(limit.value), limit.holds, '');
}

function amountOf(value: number, { measure }: Holds, unit: string): TapeAmount | null {
  if (measure.kind === 'share') {
    return { base: value, measures: 'share', length: false, whole: false, unit };
  }
  if (measure.kind !== 'amount') return null;
  const { dimension, scale } = measure;
  return {
    base: value * Number(scale.valueOf()),
    measures: dimension.key,
    length: dimension === LENGTH,
    whole:
      !isHard(dimension) && Number.isInteger(value) && dimension.nouns.every((n) => n.power > 0),
    unit,
  };
}
