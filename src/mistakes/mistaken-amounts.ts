// One amount taken for another: what it would be with the unit, the tenths, the minutes, the size or the digits mistaken.
import { AREA, type Dimension, LENGTH, TIME, VOLUME } from '../quantity/dimension.ts';
import { Dec, scaled, snapped } from '../quantity/decimal.ts';
import { Fraction, type Measure } from '../quantity/measure.ts';
import { REFERENCE_TABLES } from '../reference/tables.ts';
import type { Mistake } from './mistake.ts';

export interface Mistaken {
  readonly mistake: Mistake;
  /** In the same measure. */
  readonly value: Dec;
}

/**
 * `digits`: the number as it is shown, in its unit; `factor`: that number over the held one. `unit`: in what it is
 * read, so that the other could be taken for it; null of an answer, which may have been worked in either.
 */
export function mistakenAmounts(
  value: Dec,
  measure: Measure,
  digits: string,
  factor: Dec,
  unit: string | null,
): readonly Mistaken[] {
  const found: Mistaken[] = swapped(digits).map((number) => ({
    mistake: 'digits-swapped',
    value: number.div(factor),
  }));
  if (measure.kind !== 'amount') return found;
  const held = (amount: Dec): Dec => scaled(amount, new Fraction(1).div(measure.scale));
  const amount = scaled(value, measure.scale);
  if (measure.dimension === LENGTH) {
    if (unit !== 'ft') found.push({ mistake: 'inches-for-feet', value: value.times(12) });
    if (unit !== 'in') found.push({ mistake: 'inches-for-feet', value: value.div(12) });
    for (const inches of tenthsOf(amount)) {
      found.push({ mistake: 'tenths-for-inches', value: held(inches) });
    }
    for (const [actual, nominal] of sizes()) {
      if (snapped(amount).eq(actual)) {
        found.push({ mistake: 'nominal-for-actual', value: held(nominal) });
      }
    }
  }
  if (measure.dimension === TIME) {
    for (const minutes of decimalsOf(amount)) {
      found.push({ mistake: 'minutes-as-decimals', value: held(minutes) });
    }
  }
  return found;
}

/** The unit of a square, a cube or a time taken for another: by how much it is off, either way. */
const UNITS_OFF: readonly (readonly [Dimension, Mistake, readonly number[]])[] = [
  [VOLUME, 'cubic-feet-for-yards', [27]],
  [VOLUME, 'square-for-cubic', [3, 12]],
  [VOLUME, 'inches-for-feet', [1728]],
  [AREA, 'square-for-cubic', [3, 12]],
  [AREA, 'inches-for-feet', [144]],
  [TIME, 'minutes-for-hours', [60]],
];

export interface Off {
  readonly mistake: Mistake;
  readonly by: Fraction;
}

/** An area, a volume or a time in the wrong unit, or turned into another by a length where it takes a square or a cube. */
export function unitsOff(measure: Measure): readonly Off[] {
  if (measure.kind !== 'amount') return [];
  return UNITS_OFF.flatMap(([dimension, mistake, off]) =>
    dimension !== measure.dimension
      ? []
      : off.flatMap((by) =>
          [new Fraction(by), new Fraction(1, by)].map((each) => ({ mistake, by: each })),
        ),
  );
}

/** 12 ft 6 in taken for 12.6 ft, and 10.5 ft for 10 ft 5 in; all in inches. */
function tenthsOf(inches: Dec): readonly Dec[] {
  const feet = snapped(inches.abs()).div(12).floor();
  const rest = snapped(inches.abs().minus(feet.times(12)));
  if (rest.isZero()) return [];
  const found: Dec[] = [];
  if (rest.isInteger()) found.push(new Dec(`${feet.toFixed()}.${rest.toFixed()}`).times(12));
  const tenths = snapped(rest.div(12).times(10));
  if (tenths.isInteger()) found.push(feet.times(12).plus(tenths));
  return found;
}

/** 1 h 30 min taken for 1.30 h, and 1.5 h for 1 h 50 min; all in minutes. */
function decimalsOf(minutes: Dec): readonly Dec[] {
  const hours = snapped(minutes.abs()).div(60).floor();
  const rest = snapped(minutes.abs().minus(hours.times(60)));
  if (rest.isZero()) return [];
  const found: Dec[] = [];
  if (rest.isInteger()) {
    const two = rest.toFixed().padStart(2, '0');
    found.push(new Dec(`${hours.toFixed()}.${two}`).times(60));
    if (rest.lt(10)) found.push(new Dec(`${hours.toFixed()}.${rest.toFixed()}`).times(60));
  }
  // 1.5 h may be read as 1 h 50 min or as 1 h 5 min.
  for (const parts of [100, 10]) {
    const read = snapped(rest.div(60).times(parts));
    if (read.isInteger()) found.push(hours.times(60).plus(read));
  }
  return found;
}

/** The same digits with two neighbours changed. */
export function swapped(digits: string): readonly Dec[] {
  const found = new Set<string>();
  for (let i = 0; i < digits.length; i++) {
    // Over a decimal point digits are neighbours too.
    const next = digits[i + 1] === '.' ? i + 2 : i + 1;
    const [a, b] = [digits[i] ?? '', digits[next] ?? ''];
    if (!/^\d$/.test(a) || !/^\d$/.test(b) || a === b) continue;
    found.add(digits.slice(0, i) + b + digits.slice(i + 1, next) + a + digits.slice(next + 1));
  }
  return [...found].map((text) => new Dec(text));
}

let knownSizes: readonly (readonly [Dec, Dec])[] | null = null;

/** Actual and nominal sides of lumber, in inches, out of the table of the trade. */
function sizes(): readonly (readonly [Dec, Dec])[] {
  if (knownSizes) return knownSizes;
  const lumber = REFERENCE_TABLES.find(({ name }) => name === 'Lumber sizes')?.table;
  if (!lumber) throw new Error('no table of lumber sizes');
  const at = (name: string): number => lumber.columns.findIndex((c) => c.name === name);
  const pairs = new Map<string, readonly [Dec, Dec]>();
  for (const row of lumber.rows) {
    for (const side of ['thickness', 'width']) {
      const [actual, nominal] = [side, `nominal ${side}`].map((n) => inchesIn(row[at(n)] ?? ''));
      if (actual && nominal)
        pairs.set(`${actual.toFixed()} ${nominal.toFixed()}`, [actual, nominal]);
    }
  }
  knownSizes = [...pairs.values()];
  return knownSizes;
}

/** `11 1/4 in`. */
function inchesIn(text: string): Dec | null {
  const found = /^(?:(\d+)\s+)?(\d+)(?:\/(\d+))?\s*in$/.exec(text.trim());
  if (!found) return null;
  const [, whole = '0', over = '0', under = '1'] = found;
  return new Dec(whole).plus(new Dec(over).div(under));
}
