// Amounts as somebody types them: a number and the plain unit that is shown with it.
import { Dec } from '../../src/quantity/decimal.ts';

/** `$6.48 per bag`, `10%`, `16 cubic ft`, `12`. */
export function amountWritten(number: string, unit: string): string {
  if (unit.startsWith('$')) return `$${number}${unit.slice(1)}`;
  return unit === '%' ? `${number}%` : `${number} ${unit}`.trimEnd();
}

/** With so many significant digits, and no more noughts than it takes. */
export function significant(number: number, digits: number): string {
  return new Dec(number).toSignificantDigits(digits).toFixed();
}
