// An answer as it was typed: its number, its unit if it has one, and to how many digits it is given.
import { handHolds } from '../engine/by-hand.ts';
import type { CellId } from '../language/tree.ts';
import { LENGTH, MONEY, TIME, isHard } from '../quantity/dimension.ts';
import { Dec, scaled } from '../quantity/decimal.ts';
import type { Holds } from '../quantity/form.ts';
import { type Measure, NUMBER } from '../quantity/measure.ts';
import { heldIn } from '../moves-it/spread.ts';
import type { Reads } from '../moves-it/putting.ts';

export interface Answered {
  /** As typed, in the unit it was typed in, or in that of the step. */
  readonly number: Dec;
  /** Half of the last digit that was typed, in the same. */
  readonly half: Dec;
  /** What was said with it; null for a bare number. */
  readonly said: { readonly value: Dec; readonly holds: Holds } | null;
}

/** Null where it is no number that can be read. */
export function answerIn(reads: Reads, cell: CellId, text: string): Answered | null {
  const { checked } = reads.draft(cell, text).reading;
  if (!checked) return null;
  const outcome = reads.evaluate(checked.plan);
  if (outcome.kind !== 'value' || !(outcome.value instanceof Dec)) return null;
  const { value } = outcome;
  if (checked.holds.measure === NUMBER) {
    return { number: value, half: halfOfLast(text), said: null };
  }
  const { exact } = reads.say(value, checked.holds);
  const shown = exact === '' ? value : new Dec(exact);
  return {
    number: soleNumber(text) ?? inItsLastUnit(text, value, checked.holds) ?? shown,
    half: halfOfLast(text),
    said: { value, holds: checked.holds },
  };
}

/** The one number of `0.46 ft`, which would be shown in inches; null where there are more of them. */
function soleNumber(text: string): Dec | null {
  const [, digits] = /^[^\d.]*(\d[\d,]*(?:\.\d+)?|\.\d+)[^\d½¼¾⅛⅜⅝⅞⅓⅔]*$/u.exec(text) ?? [];
  return digits === undefined ? null : new Dec(digits.replaceAll(',', ''));
}

/** `9 ft 4 1/2 in` in inches, `3 h 20 min` in minutes: of what its last digit is one. */
function inItsLastUnit(text: string, value: Dec, { measure }: Holds): Dec | null {
  if (measure.kind !== 'amount' || !/(?:f(?:oo|ee)?t|'|h(?:ours?)?)[\s,]*\d/i.test(text))
    return null;
  const isLong = measure.dimension === LENGTH || measure.dimension === TIME;
  return isLong ? scaled(value, measure.scale).abs() : null;
}

/** Of a fraction, or inches in fractions, half a sixteenth. */
function halfOfLast(text: string): Dec {
  if (/[/½¼¾⅛⅜⅝⅞⅓⅔]/u.test(text)) return new Dec(1).div(32);
  const places = /\d\.(\d+)(?!.*\d)/.exec(text)?.[1]?.length ?? 0;
  return new Dec(10).pow(-places).div(2);
}

/** The answer in the measure of the step; null where it measures something else. A bare number is in the step's shown unit. */
export function inMeasureOf(answer: Answered, step: Holds, factor: Dec): Dec | null {
  if (!answer.said) return answer.number.div(factor);
  const as = handHolds(answer.said.holds, step);
  return as && heldIn(answer.said.value, as.measure, step.measure);
}

/**
 * Half of the last digit that is asked for, in the shown unit: whole things are whole, money is to the cent, a length to
 * a sixteenth of an inch; others as they are shown, and never less than to three digits.
 */
export function halfAskedFor(exact: Dec, unit: string, text: string, measure: Measure): Dec {
  if (measure.kind === 'amount') {
    const { dimension } = measure;
    if (dimension === MONEY) return new Dec('0.005');
    if (dimension === LENGTH && unit === 'ft') return new Dec(1).div(384);
    if (dimension === LENGTH && unit === 'in') return new Dec(1).div(32);
    if (!isHard(dimension) && exact.isInteger()) return new Dec(0);
  }
  const shown = /\d\.(\d+)/.exec(text)?.[1]?.length ?? 0;
  const forThree = exact.isZero() ? 2 : 2 - exact.e;
  return new Dec(10).pow(-Math.max(shown, forThree)).div(2);
}
