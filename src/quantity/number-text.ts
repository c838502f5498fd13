// Decimals as a person reads them: thousands apart, as many places as tell something.
// All of these take what is not negative; the sign is the caller's.
import { Dec, snapped } from './decimal.ts';
import { Fraction } from './measure.ts';

export const MINUS = '−';

/** A number with no more places than these is shown in full. */
const IN_FULL = 4;

/** How far a number that is not whole is followed, so that it does not look whole or like nothing. */
const MOST_PLACES = 12;

/** `1,250`, `0.45`, `39.11`, `0.5926`. */
export function numberText(d: Dec): string {
  return grouped(trimmed(legible(snapped(d), fourDigits)));
}

/** Money that is there to be paid: `1,234.50`. */
export function sumText(d: Dec): string {
  const exact = snapped(d);
  const cents = rounded(exact, 2);
  return grouped(
    Number(cents) === 0 && !exact.isZero() ? padded(trimmed(legible(exact, partsOfACent))) : cents,
  );
}

/** The money in a price per something, which may need more places than cents have: `6.48`, `0.085`. */
export function priceText(d: Dec): string {
  return grouped(padded(trimmed(legible(snapped(d), partsOfACent))));
}

/** `10.6667`: to four places. */
export function fourPlaces(d: Dec): string {
  return grouped(trimmed(rounded(snapped(d), IN_FULL)));
}

/** Plain digits, up to 40 of them, for machines and for whoever wants to know. */
export function exactText(d: Dec): string {
  const exact = snapped(d).toSignificantDigits(40, Dec.ROUND_HALF_UP);
  return exact.isZero() ? '0' : exact.toFixed();
}

/** Thousands apart. */
export function grouped(digits: string): string {
  if (digits.length < 4) return digits;
  const [whole = '', places] = digits.split('.');
  const apart = whole.replaceAll(/\B(?=(?:\d{3})+$)/g, ',');
  return places === undefined ? apart : `${apart}.${places}`;
}

/** In full up to four places, else as many as `places` says, and more where it would look whole. */
function legible(d: Dec, places: (d: Dec) => number): string {
  const exactly = d.decimalPlaces();
  if (exactly <= IN_FULL) return d.toFixed();
  let shown = d.e >= 0 ? 2 : Math.min(places(d), MOST_PLACES);
  while (shown < MOST_PLACES && d.toDecimalPlaces(shown, Dec.ROUND_HALF_UP).isInteger()) shown++;
  return rounded(d, shown);
}

/** Four digits that tell something: `0.5926`, `0.0001235`. */
function fourDigits(d: Dec): number {
  return IN_FULL - 1 - d.e;
}

/** Hundredths of a cent; for less than that two digits. */
function partsOfACent(d: Dec): number {
  return Math.max(IN_FULL, 1 - d.e);
}

function rounded(d: Dec, places: number): string {
  return d.toFixed(places, Dec.ROUND_HALF_UP);
}

function trimmed(digits: string): string {
  return digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits;
}

/** At least two places. */
function padded(digits: string): string {
  const [whole = '', places = ''] = digits.split('.');
  return `${whole}.${places.padEnd(2, '0')}`;
}

/** What a decimal of many digits may be a fraction of. */
const LARGEST_UNDER = 999_999n;
/** A decimal of 40 digits that lies this near to a short fraction is that fraction. */
const SAME = 1e-28;

/** `2633.98333…` as `2,633 59/60`, `-0.333…` as `-1/3`; null where no short fraction is that number. */
export function mixedNumber(decimal: string): string | null {
  const short = new Fraction(decimal).simplify(SAME);
  if (short.d === 1n || short.d > LARGEST_UNDER) return null;
  return short
    .toFraction(true)
    .replace(/^(-?)(\d+)(?= )/, (_, sign, whole) => sign + grouped(whole));
}
