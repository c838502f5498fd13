// A number as it stands in a line of the working: as it is shown, or with more digits where the
// line would not come out with the digits that are shown. The engine does the rounding.
import type { Outcome, Value } from '../engine/outcome.ts';
import type { Checked, Plan } from '../language/plan.ts';
import type { Holds } from '../quantity/form.ts';
import { Fraction, NUMBER } from '../quantity/measure.ts';
import { MINUS, grouped, mixedNumber } from '../quantity/number-text.ts';
import { type Shown, show } from '../quantity/show.ts';
import { constantOf, numberOf, productOf, quotientOf } from './asks.ts';
import type { Book } from './book.ts';

export interface Known {
  readonly kind: 'known';
  readonly value: Value;
  readonly holds: Holds;
  readonly shown: Shown;
  /** What is shown is known to be all there is of it. */
  readonly inFull?: true;
}

/** There is no value yet. */
export interface Lacking {
  readonly kind: 'lacking';
  readonly outcome: Exclude<Outcome, { kind: 'value' }>;
}

export type Figure = Known | Lacking;

/** As shown, as a whole number and a fraction, or a decimal to a whole multiple of this step, in the unit shown. */
export type Digits = 'shown' | 'fraction' | (typeof STEPS)[number];

/** What is written where no number of digits would do. */
export const ENOUGH = '0.0001';

/** Far below any digit that is shown, and above the noise of those that are cut. */
const FINE = `0.${'0'.repeat(29)}1`;

/** What the digits of a line are tried with, one after another. */
export const STEPS = [
  '0.01',
  '0.001',
  '0.0001',
  '0.00001',
  '0.000001',
  '0.00000001',
  '0.0000000001',
  '0.000000000001',
  '0.00000000000001',
] as const;

/** A figure as it is written, and the plan that stands for exactly what is written. */
export interface Written {
  readonly text: string;
  readonly digits: Digits;
  readonly stands: Plan;
}

export function figureOf(book: Book, checked: Pick<Checked, 'plan' | 'holds'>): Figure {
  return figureFrom(book, book.evaluate(checked.plan), checked.holds);
}

export function figureFrom(book: Book, outcome: Outcome, holds: Holds): Figure {
  if (outcome.kind !== 'value') {
    return { kind: 'lacking', outcome };
  }
  const { value } = outcome;
  return { kind: 'known', value, holds, shown: show(value, holds, book.show) };
}

/** What something holds that is a plain number. */
export const PLAIN_NUMBER: Holds = { measure: NUMBER, showIn: null, written: [] };

/** Is what is shown all there is of it? A length beside its mark and a decimal cut short are not. */
export function isShownInFull(figure: Known): boolean {
  const { shown } = figure;
  if (figure.inFull) return true;
  if (shown.exact === '' || shown.mark !== 'exact') return shown.exact === '';
  const number = soleNumber(shown.text);
  if (number === null) return true;
  return new Fraction(number.digits.replaceAll(',', '')).equals(new Fraction(shown.exact).abs());
}

/** The figure with these digits. */
export function written(book: Book, figure: Known, digits: Digits): Written {
  if (digits === 'shown') {
    return { text: figure.shown.text, digits, stands: constantOf(figure.value) };
  }
  if (digits === 'fraction') return writtenInFull(book, figure);
  const exact = numberOf(figure.shown.exact);
  const rounded = book.evaluate({ op: 'round', way: 'nearest', of: exact, step: numberOf(digits) });
  if (rounded.kind !== 'value' || typeof rounded.value !== 'object') {
    throw new Error(`rounding ${figure.shown.exact} to ${digits} gave no number`);
  }
  const decimal = rounded.value.toFixed();
  const text = inPlaceOf(figure.shown, decimal, book.show.currency);
  return { text, digits, stands: standingFor(figure, decimal) };
}

/**
 * `2,633 59/60 boards`, where digits that never end leave the line just beside the half of its last digit.
 * A figure that is no such fraction is written with digits that are cut.
 */
function writtenInFull(book: Book, figure: Known): Written {
  const mixed = mixedNumber(figure.shown.exact);
  if (mixed === null) return written(book, figure, ENOUGH);
  const text = inPlaceOf(figure.shown, mixed, book.show.currency);
  return { text, digits: 'fraction', stands: constantOf(figure.value) };
}

/** As shown, standing for no more than what is read there; a length beside its mark is read as a decimal. */
export function readFromShown(book: Book, figure: Known): Written {
  const number = figure.shown.mark === 'exact' ? soleNumber(figure.shown.text) : null;
  if (number === null) return written(book, figure, STEPS[0]);
  const sign = figure.shown.exact.startsWith('-') ? '-' : '';
  const stands = standingFor(figure, `${sign}${number.digits.replaceAll(',', '')}`);
  return { text: figure.shown.text, digits: 'shown', stands };
}

/** The plan of a figure whose shown number is read as this one. */
function standingFor(figure: Known, decimal: string): Plan {
  const whole = constantOf(figure.value);
  if (isZero(figure.shown.exact)) return whole;
  // What is shown is cut after so many digits, which leaves a half just beside itself: what one of the unit is held as has
  // none of that noise.
  const one = quotientOf(whole, numberOf(figure.shown.exact));
  return productOf(numberOf(decimal), {
    op: 'round',
    way: 'nearest',
    of: one,
    step: numberOf(FINE),
  });
}

function isZero(decimal: string): boolean {
  return new Fraction(decimal).equals(0);
}

/** The one number in a shown text, and what stands around it; null for `9 ft 4 1/2 in` and the like. */
function soleNumber(text: string): { before: string; digits: string; after: string } | null {
  const found = /^([^\d.]*)(\d[\d,]*(?:\.\d+)?|\.\d+)(.*)$/s.exec(text);
  if (!found) return null;
  const [, before = '', digits = '', after = ''] = found;
  const [firstSide = ''] = after.split(' per ');
  return /[\d,½¼¾⅛⅜⅝⅞]/.test(firstSide) ? null : { before, digits, after };
}

function inPlaceOf(shown: Shown, amount: string, currency: string): string {
  const size = amount.replace('-', '');
  const number = soleNumber(shown.text);
  if (number === null) {
    const sign = size === amount ? '' : MINUS;
    return `${sign}${inThousands(size)} ${shown.unit}`;
  }
  const isMoney = number.before.includes(currency) && !size.includes('/');
  return `${number.before}${inThousands(isMoney ? withCents(size) : size)}${number.after}`;
}

function inThousands(size: string): string {
  return size.includes('/') ? size : grouped(size);
}

function withCents(decimal: string): string {
  const [whole = '', places = ''] = decimal.split('.');
  return `${whole}.${places.padEnd(2, '0')}`;
}
