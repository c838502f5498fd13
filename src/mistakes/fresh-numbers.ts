// A fresh number for a given, as a builder would write it: inside its sensible limits, or a third more or less where it
// has none; lengths to a fraction of an inch, whole things whole, prices to the cent. One of its choices where it has some.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import { splitLimits } from '../notebook/sensible.ts';
import { Dec } from '../quantity/decimal.ts';
import { isHard } from '../quantity/dimension.ts';
import type { Draws } from '../moves-it/draws.ts';
import { isWholeCount, numberOf } from '../moves-it/givens.ts';
import { type Reads, formulaFor, readFor } from '../moves-it/putting.ts';
import { type ShownUnit, shownUnit } from '../moves-it/unit.ts';

/** What a given may be written as. */
export type Fresh =
  | { readonly kind: 'choices'; readonly texts: readonly string[] }
  /** Whole steps from `low` to `high`, each so many of the shown unit. */
  | {
      readonly kind: 'steps';
      readonly low: number;
      readonly high: number;
      readonly step: number;
      /** A held number times this is one of the unit that `step` counts. */
      readonly factor: Dec;
    };

/** How far from what stands there, where nothing says how far; within limits no further than half or as much again. */
const EITHER_WAY = [0.7, 1.3] as const;
const WITHIN_LIMITS = [0.5, 1.6] as const;
/** Nearer than this two steps are the same. */
const NOISE = 1e-9;

/** Null where the given stays as it is: a text, nothing known yet, or no other number between its limits. */
export function freshOf(
  reads: Reads,
  cell: CellId,
  remarks: { readonly sensible: string | null; readonly choices: readonly string[] | null },
): Fresh | null {
  const state = reads.state(cell);
  if (remarks.choices) {
    const texts = remarks.choices.filter((text) => isRead(reads, cell, text));
    return texts.length > 1 ? { kind: 'choices', texts } : null;
  }
  const { outcome } = state;
  if (outcome.kind === 'value' && typeof outcome.value === 'boolean') {
    return { kind: 'choices', texts: ['yes', 'no'] };
  }
  const value = numberOf(state);
  const unit = shownUnit(reads, state);
  if (!value || !unit || value.isNegative()) return null;
  return stepsOf(reads, state, value, unit, remarks.sensible);
}

/** Its text for this draw, from 0 up to 1; null where it can't be written so that it reads back. */
export function drawn(reads: Reads, cell: CellId, fresh: Fresh, draws: Draws): string | null {
  const draw = draws.next();
  if (fresh.kind === 'choices') {
    return fresh.texts[Math.floor(draw * fresh.texts.length)] ?? null;
  }
  const { low, high, step, factor } = fresh;
  const at = low + Math.floor(draw * (high - low + 1));
  return formulaFor(reads, cell, new Dec(String(step)).times(at).div(factor));
}

function stepsOf(
  reads: Reads,
  state: CellState,
  value: Dec,
  { unit, exactFactor }: ShownUnit,
  sensible: string | null,
): Fresh | null {
  const cell = state.input.id;
  // Feet are written with inches, and counted in them.
  const factor = unit === 'ft' ? exactFactor.times(12) : exactFactor;
  const now = value.times(factor).toNumber();
  const sides = sensible === null ? null : splitLimits(sensible);
  const [least, most] = [sides?.low, sides?.high].map((text) => {
    const read = text ? readFor(reads, cell, text) : null;
    if (read?.kind !== 'value' || !(read.value instanceof Dec)) return null;
    return read.value.times(factor).toNumber();
  });
  const [less, more] = sides ? WITHIN_LIMITS : EITHER_WAY;
  // Of nothing there is no half: what is none now may be anything that is sensible.
  const low = Math.max(least ?? 0, now === 0 ? 0 : now * less);
  const high = Math.min(most ?? Infinity, now === 0 ? (most ?? 0) : now * more);
  const step = isCounted(state, value) ? 1 : stepFor(high, unit);
  const first = Math.ceil(low / step - NOISE);
  const last = Math.floor(high / step + NOISE);
  // Something stays something.
  const from = now > 0 ? Math.max(first, 1) : first;
  return last > from ? { kind: 'steps', low: from, high: last, step, factor } : null;
}

/** Whole things, and so many things for one of others where it is a whole number now: 2 screws per joist. */
function isCounted(state: CellState, value: Dec): boolean {
  if (isWholeCount(state)) return true;
  const measure = state.holds?.measure;
  if (measure?.kind !== 'amount' || isHard(measure.dimension) || !value.isInteger()) return false;
  return measure.dimension.nouns.some(({ power }) => power > 0);
}

/** What a builder would round to, in the unit (inches where it is feet), for numbers of this size. */
function stepFor(size: number, unit: string): number {
  if (unit === 'ft') return size <= 240 ? 1 : size <= 1200 ? 6 : 12;
  if (unit === 'in') return size <= 2 ? 1 / 16 : size <= 16 ? 1 / 4 : size <= 48 ? 1 / 2 : 1;
  if (unit.startsWith('in per ')) return size <= 2 ? 1 / 16 : 1 / 4;
  if (unit === 'mm') return size <= 20 ? 1 : 5;
  if (unit === '%') return size <= 4 ? 0.5 : 1;
  if (/^[$€£]/.test(unit)) return size <= 20 ? 0.01 : size <= 200 ? 0.25 : size <= 2000 ? 1 : 10;
  return niceStep(size / 40);
}

/** 1, 2 or 5 of a power of ten, at least as large. */
function niceStep(size: number): number {
  if (!(size > 0)) return 1;
  const power = Math.floor(Math.log10(size));
  const found = [1, 2, 5, 10].find((by) => by * 10 ** power >= size - NOISE) ?? 10;
  return Number(`${found}e${power}`);
}

function isRead(reads: Reads, cell: CellId, text: string): boolean {
  const { reading, outcome } = reads.draft(cell, text);
  return reading.problems.length === 0 && outcome.kind === 'value';
}
