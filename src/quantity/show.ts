// How a value is shown, to a person and to a machine. Showing never changes the value.
import { formKey, formText, formOf, underText } from './amount.ts';
import { type Dec, scaled, snapped } from './decimal.ts';
import { LENGTH, isHard } from './dimension.ts';
import type { Form, Holds } from './form.ts';
import type { AmountMeasure } from './measure.ts';
import { MINUS, exactText, fourPlaces, numberText, priceText, sumText } from './number-text.ts';
import { type ShownForm, inForm, shownForm } from './shown-form.ts';
import { BESIDE_MARK, feetText, inchesText, isUnderAFoot, onTape } from './tape.ts';
import { unitByKey } from './units.ts';

export interface Shown {
  /** As a person reads it: `9 ft 4 1/2 in`, `40 bags`, `$233.28`, `10 ft 9 5/8 in, a hair shy`, `yes`. */
  readonly text: string;
  /** Plain unit for machines: `ft`, `in`, `cubic ft`, `bag`, `$`, `$ per bag`, `%`, empty for a number, yes/no and text. */
  readonly unit: string;
  /** Decimal text in `unit`, up to 40 significant digits, snapped; empty for yes/no and text. */
  readonly exact: string;
  /** The mark against the true length. */
  readonly mark: 'exact' | 'shy' | 'over';
}

export interface ShowSettings {
  /** The sign of the notebook's currency: `$`. */
  readonly currency: string;
  /** Marks in an inch: 16 for sixteenths. */
  readonly fractions: number;
  /** Used where the givens are written in both or in neither. */
  readonly measures: 'us' | 'metric';
  /** Plural of a noun's singular. */
  many(noun: string): string;
}

export function show(value: Dec | boolean | string, holds: Holds, settings: ShowSettings): Shown {
  if (typeof value === 'string') return plainly(value, '', '');
  if (typeof value === 'boolean') return plainly(value ? 'yes' : 'no', '', '');
  const { measure } = holds;
  switch (measure.kind) {
    case 'amount':
      return showAmount(value, measure, shownForm(measure, holds, settings.measures), settings);
    case 'share': {
      const percent = value.times(100);
      return plainly(`${signed(percent, numberText)}%`, '%', exactText(percent));
    }
    case 'open':
    case 'yes-no':
    case 'text':
      return plainly(signed(value, numberText), '', exactText(value));
  }
}

/**
 * A length in the notation it was not written in, for whoever types it: 10.8 ft is 10 ft 9 5/8 in, a hair shy;
 * 9 ft 4 1/2 in is 9.375 ft. Null where there is nothing to tell apart: whole feet, inches under a foot, metric.
 */
export function otherNotation(
  value: Dec | boolean | string,
  holds: Holds,
  settings: ShowSettings,
): string | null {
  const { measure, written } = holds;
  if (typeof value !== 'object' || measure.kind !== 'amount' || measure.dimension !== LENGTH) {
    return null;
  }
  const feet = snapped(scaled(value, measure.scale.div(12)));
  const units = written.map(unitByKey).filter((unit) => unit.dimension === LENGTH);
  if (feet.isInteger() || units.some((unit) => unit.measures === 'metric')) return null;
  const inInches = units.some((unit) => unit.key === 'in');
  if (inInches && units.length > 1) return `${signed(feet, fourPlaces)} ft`;
  if (inInches && feet.abs().lessThan(1)) return null;
  return showAmount(value, measure, inForm(measure, FEET, 'tape'), settings).text;
}

const FEET = formOf([unitByKey('ft')]);
const INCH = unitByKey('in');

function showAmount(
  value: Dec,
  measure: AmountMeasure,
  { form, manner, scale }: ShownForm,
  settings: ShowSettings,
): Shown {
  // With all its guard digits: whoever rounds it snaps it.
  const number = scaled(value, scale);
  const size = number.abs();
  const { currency } = settings;
  const inCurrency = (text: string) =>
    currency === '$' ? text : text.replaceAll('$', () => currency);
  const shown = (over: string, mark: Shown['mark'] = 'exact'): Shown => {
    const sign = number.isNegative() && /[1-9]/.test(over) ? MINUS : '';
    const text = inCurrency(`${sign}${over}${underText(form, settings)}${BESIDE_MARK[mark]}`);
    return { text, unit: inCurrency(formKey(form)), exact: exactText(number), mark };
  };
  switch (manner) {
    case 'money':
      return shown(`$${form.under.length === 0 ? sumText(size) : priceText(size)}`);
    case 'clock':
      return shown(clockText(size) ?? decimalText(size, form, settings));
    case 'inches': {
      const tape = onTape(size, settings.fractions);
      return tape.mark === 'exact' || fitsTape(tape.marks, form)
        ? shown(inchesText(tape), tape.mark)
        : shown(decimalText(size, form, settings));
    }
    case 'tape': {
      const tape = onTape(size.times(12), settings.fractions);
      if (!isUnderAFoot(tape)) return shown(feetText(tape), tape.mark);
      // Under a foot it is inches all through, for machines as well.
      const inches: Form = { over: formOf([INCH]).over, under: form.under };
      return showAmount(value, measure, inForm(measure, inches, 'inches'), settings);
    }
    case 'decimal':
      return shown(decimalText(size, form, settings));
  }
}

/** A slope such as 0.3 in per ft is no length on a tape, and neither is what is thinner than half a mark. */
function fitsTape(marks: bigint, form: Form): boolean {
  return marks !== 0n && !form.under.some((t) => t.kind === 'unit' && isHard(t.unit.dimension));
}

function decimalText(size: Dec, form: Form, settings: ShowSettings): string {
  const digits = numberText(size);
  const over = formText({ over: form.over, under: [] }, digits !== '1', settings);
  return over === '' ? digits : `${digits} ${over}`;
}

/** `5 h 20 min` where the minutes are whole and the hours have no tidy decimal; else null. */
function clockText(hours: Dec): string | null {
  if (snapped(hours).decimalPlaces() <= 2) return null;
  const minutes = snapped(hours.times(60));
  if (!minutes.isInteger()) return null;
  const whole = minutes.div(60).floor();
  const rest = minutes.minus(whole.times(60)).toFixed();
  return whole.isZero() ? `${rest} min` : `${numberText(whole)} h ${rest} min`;
}

function signed(d: Dec, text: (size: Dec) => string): string {
  const exact = snapped(d);
  return (exact.isNegative() && !exact.isZero() ? MINUS : '') + text(exact.abs());
}

function plainly(text: string, unit: string, exact: string): Shown {
  return { text, unit, exact, mark: 'exact' };
}
