// Lengths as a tape measure shows them: feet, inches and fractions of an inch.
// The whole length is rounded first and only then split, so that nothing ever shows 12 in or 16/16.
import { Dec, roundedToWhole, snapped } from './decimal.ts';
import { grouped } from './number-text.ts';

/** A length rounded to a mark of the tape, and where the true length lies from it. */
export interface OnTape {
  /** Whole marks from the start of the tape. */
  readonly marks: bigint;
  /** Marks in an inch. */
  readonly perInch: bigint;
  readonly mark: 'exact' | 'shy' | 'over';
}

/** Nobody can see less than a billionth of an inch beside a mark: 0.9583333333333334 ft is 11 1/2 in. */
const UNSEEN = new Dec('1e-9');

/** `inches` is not negative. */
export function onTape(inches: Dec, fractions: number): OnTape {
  const length = snapped(inches.times(fractions));
  const nearest = roundedToWhole(length, 'nearest');
  const off = length.minus(nearest).div(fractions);
  return {
    marks: BigInt(nearest.toFixed()),
    perInch: BigInt(fractions),
    mark: off.abs().lessThan(UNSEEN) ? 'exact' : off.isNegative() ? 'shy' : 'over',
  };
}

/** `7 1/2 in`, `5/8 in`, `52 in`. */
export function inchesText({ marks, perInch }: OnTape): string {
  const whole = marks / perInch;
  const over = marks % perInch;
  const digits = grouped(whole.toString());
  if (over === 0n) return `${digits} in`;
  const shared = sharedFactor(over, perInch);
  const fraction = `${over / shared}/${perInch / shared}`;
  return whole === 0n ? `${fraction} in` : `${digits} ${fraction} in`;
}

export function isUnderAFoot({ marks, perInch }: OnTape): boolean {
  return marks < perInch * 12n;
}

/** `9 ft 4 1/2 in`, `9 ft`; for a foot and over. */
export function feetText(tape: OnTape): string {
  const perFoot = tape.perInch * 12n;
  const feet = tape.marks / perFoot;
  const rest = { ...tape, marks: tape.marks % perFoot };
  const text = `${grouped(feet.toString())} ft`;
  return rest.marks === 0n ? text : `${text} ${inchesText(rest)}`;
}

/** Said after a length that lies beside its mark. */
export const BESIDE_MARK = { exact: '', shy: ', a hair shy', over: ', a hair over' } as const;

function sharedFactor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : sharedFactor(b, a % b);
}
