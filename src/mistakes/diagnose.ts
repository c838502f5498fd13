// What went wrong in an answer: right, or every mistake that gives just this answer when the step is worked again with it.
import type { Checked } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import { MONEY } from '../quantity/dimension.ts';
import { Dec, scaled } from '../quantity/decimal.ts';
import { type Measure, withoutRate } from '../quantity/measure.ts';
import { type Holds, NONE_WRITTEN } from '../quantity/form.ts';
import type { Reads } from '../moves-it/putting.ts';
import { type Answered, answerIn, halfAskedFor, inMeasureOf } from './answered.ts';
import { HINTS, type Mistake, type Reworked } from './mistake.ts';
import { reworked } from './reworked.ts';

/** A step of a working: the formula of a cell, or a stretch of it. */
export interface AskedStep {
  readonly cell: CellId;
  readonly node: Checked;
}

export interface FoundMistake {
  readonly mistake: Mistake;
  /** The cells whose amounts may have been mistaken. */
  readonly of: readonly CellId[];
  readonly hint: string;
}

export type Diagnosis =
  | { readonly kind: 'right' }
  /** Every mistake that gives this answer, the likelier first; none: it is wrong and can't be told why. */
  | { readonly kind: 'wrong'; readonly mistakes: readonly FoundMistake[] }
  | { readonly kind: 'unread' }
  /** The step has no number to be asked for. */
  | { readonly kind: 'nothing-to-ask' };

/** The formula of a cell as a step; null where there is none to be worked. */
export function stepOfCell(reads: Reads, cell: CellId): AskedStep | null {
  const { checked } = reads.state(cell).reading;
  return checked && { cell, node: checked };
}

/** `half`: half of the last digit that is asked for, in the unit that the step is shown in. */
export function diagnose(
  reads: Reads,
  { cell, node }: AskedStep,
  text: string,
  half: Dec | null = null,
): Diagnosis {
  const outcome = reads.evaluate(node.plan);
  const isNumber = outcome.kind === 'value' && outcome.value instanceof Dec;
  if (!isNumber) return { kind: 'nothing-to-ask' };
  const right = outcome.value;
  const answer = answerIn(reads, cell, text);
  if (!answer) return { kind: 'unread' };
  const shown = reads.say(right, node.holds);
  const exact = new Dec(shown.exact === '' ? right : shown.exact);
  const factor = factorOf(reads, right, node.holds);
  const measure = node.holds.measure;
  const asked = half ?? halfAskedFor(exact, shown.unit, shown.text, measure);
  const given = inMeasureOf(answer, node.holds, factor);
  if (given && isRight(given.times(factor), exact, asked, answer, given)) return { kind: 'right' };
  const mistakes: { mistake: Mistake; of: Set<CellId> }[] = [];
  for (const each of reworked(reads, node)) {
    if (isTheSame(each, right, measure) || !gives(reads, each, answer, given, factor, measure))
      continue;
    let known = mistakes.find(({ mistake }) => mistake === each.mistake);
    if (!known) mistakes.push((known = { mistake: each.mistake, of: new Set() }));
    if (each.of !== null) known.of.add(each.of);
  }
  const isTheNumber = answer.number.minus(exact.abs()).abs().lte(Dec.max(asked, answer.half));
  if (!given && isTheNumber) mistakes.unshift(...wrongUnit(mistakes));
  const order = Object.keys(HINTS);
  mistakes.sort((a, b) => order.indexOf(a.mistake) - order.indexOf(b.mistake));
  return {
    kind: 'wrong',
    mistakes: mistakes.map(({ mistake, of }) => ({ mistake, of: [...of], hint: HINTS[mistake] })),
  };
}

/** What is shown over what is held. Of nothing it is told by one of it. */
function factorOf(reads: Reads, right: Dec, holds: Holds): Dec {
  const value = right.isZero() ? new Dec(1) : right;
  const { exact } = reads.say(value, holds);
  return exact === '' ? new Dec(1) : new Dec(exact).div(value);
}

/** The right number in a unit that measures something else. */
function wrongUnit(known: readonly { readonly mistake: Mistake }[]) {
  const named = known.some(({ mistake }) => mistake === 'square-for-cubic');
  return named ? [] : [{ mistake: 'square-for-cubic' as const, of: new Set<CellId>() }];
}

/**
 * To half of the last digit asked for. In another unit the digits of that one count, as long as they tell the amount to
 * one part in a hundred.
 */
function isRight(given: Dec, exact: Dec, half: Dec, answer: Answered, held: Dec): boolean {
  const off = given.minus(exact).abs();
  const noise = exact.abs().times('1e-12');
  if (off.lte(half.plus(noise))) return true;
  if (!answer.said || answer.number.isZero() || held.isZero() || half.isZero()) return false;
  const inAnother = given.div(answer.number).abs();
  if (inAnother.minus(1).abs().lt('1e-9')) return false;
  return off.lte(answer.half.times(inAnother)) && off.lte(exact.abs().div(100));
}

/** A mistake that comes to the right answer can't be told from none. */
function isTheSame({ came }: Reworked, right: Dec, measure: Measure): boolean {
  if (came.kind === 'number' || came.measure !== measure) return false;
  return came.value.minus(right).abs().lte(right.abs().times('1e-9'));
}

function gives(
  reads: Reads,
  { came }: Reworked,
  answer: Answered,
  given: Dec | null,
  factor: Dec,
  measure: Measure,
): boolean {
  // What is rounded to the cent has few digits where it is little.
  const isMoney = measure.kind === 'amount' && measure.dimension === MONEY;
  const isNear = (one: Dec, other: Dec, half: Dec): boolean =>
    isNearTo(one, other, half, isMoney ? 10 : 100);
  if (came.kind === 'number') return isNear(answer.number, came.number, answer.half);
  const sameMeasure = came.measure === measure;
  // As an amount, in whatever unit it was typed.
  if (sameMeasure && given)
    return isNear(given.times(factor), came.value.times(factor), halfIn(answer, given, factor));
  if (answer.said && isAlike(answer.said.holds.measure, came.measure)) {
    const [one, other] = [
      inBase(answer.said.value, answer.said.holds.measure),
      inBase(came.value, came.measure),
    ];
    const perNumber = answer.number.isZero() ? new Dec(1) : one.div(answer.number).abs();
    return isNear(one, other, answer.half.times(perNumber));
  }
  // As a number, in the unit that it would be written in, whatever unit was put behind it.
  const holds = { measure: came.measure, showIn: null, written: NONE_WRITTEN };
  const { exact } = reads.say(came.value, sameMeasure ? { ...holds, measure } : holds);
  return exact !== '' && isNear(answer.number, new Dec(exact), answer.half);
}

function halfIn(answer: Answered, given: Dec, factor: Dec): Dec {
  if (answer.number.isZero()) return answer.half;
  return answer.half.times(given.times(factor).div(answer.number).abs());
}

/** Within half of the last digit that was typed, and close enough to be no other number. */
function isNearTo(answer: Dec, wanted: Dec, half: Dec, part: number): boolean {
  const off = answer.minus(wanted).abs();
  return off.lte(half.times('1.000001')) && off.lte(wanted.abs().div(part).plus('1e-12'));
}

function isAlike(a: Measure, b: Measure): boolean {
  if (a.kind !== 'amount' || b.kind !== 'amount') return a.kind === b.kind;
  return withoutRate(a).dimension === withoutRate(b).dimension;
}

function inBase(value: Dec, measure: Measure): Dec {
  return measure.kind === 'amount' ? scaled(value, measure.scale) : value;
}
