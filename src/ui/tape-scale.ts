// What a tape under a given's number shows: from where to where it slides, in what steps, and how a
// position is written as a formula. Positions are whole steps, so plain numbers are exact enough;
// the value that counts is always read anew from the formula that is written.

/** An amount as reading it gave it. */
export interface TapeAmount {
  /** In inches, pounds, minutes, dollars and their rates. */
  readonly base: number;
  /** What it measures; equal keys can be compared. */
  readonly measures: string;
  /** Is it a plain length, written in feet and inches? */
  readonly length: boolean;
  /** Does it count whole things? */
  readonly whole: boolean;
  /** The unit it shows in: `ft`, `$ per bag`, `%`, empty for a number. */
  readonly unit: string;
}

export interface TapeScale {
  readonly unit: string;
  /** One of `unit` in base. */
  readonly factor: number;
  /** In steps. */
  readonly low: number;
  readonly high: number;
  /** Size of one step in `unit`. */
  readonly step: number;
  readonly from: number;
  /** Do the ends come from the cell's own limits? */
  readonly limited: boolean;
  readonly feet: boolean;
}

/** The cell's own limits; either end may be open. */
export interface TapeLimits {
  readonly low: TapeAmount | null;
  readonly high: TapeAmount | null;
}

/** How the page reads an amount: null when it is none. */
export type ReadAmount = (formula: string) => TapeAmount | null;

/** Null where there is nothing to slide. */
export function tapeScale(
  formula: string,
  limits: TapeLimits | null,
  read: ReadAmount,
): TapeScale | null {
  const now = read(formula);
  if (!now) return null;
  const unit = now.length && now.unit === 'ft' ? 'in' : now.unit;
  const one = read(written(1, unit));
  if (!one || one.measures !== now.measures || one.base === 0) return null;
  const at = (amount: TapeAmount): number => amount.base / one.base;
  const value = at(now);
  const [under, over] = around(value);
  const low = limits?.low
    ? at(limits.low)
    : Math.min(under, limits?.high ? at(limits.high) : under);
  const high = limits?.high ? at(limits.high) : Math.max(over, low + (over - under));
  const step = stepFor(Math.min(low, value), Math.max(high, value), now);
  return {
    unit,
    factor: one.base,
    low: Math.ceil(tidy(Math.min(low, value) / step)),
    high: Math.floor(tidy(Math.max(high, value) / step)),
    step,
    from: tidy(value / step),
    limited: limits !== null,
    feet: now.length && now.unit === 'ft',
  };
}

/** A position, in steps, as a formula: `3 ft 6 1/2 in`, `$6.48 per bag`, `10%`. */
export function writtenAt(position: number, scale: TapeScale): string {
  const value = tidy(position * scale.step);
  if (scale.unit !== 'in') return written(value, scale.unit);
  const feet = scale.feet ? Math.floor(Math.abs(value) / 12) : 0;
  const inches = tidy(Math.abs(value) - feet * 12);
  const sign = value < 0 ? '-' : '';
  if (feet === 0) return `${sign}${inFractions(inches)} in`;
  return inches === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${inFractions(inches)} in`;
}

/** `$6.48 per bag` out of `$ per bag`: the sign of money stands before the number, the rest after it. */
function written(value: number, unit: string): string {
  const number = decimal(value);
  const coin = /^([$€£])(.*)$/.exec(unit);
  if (coin) {
    const sign = value < 0 ? '-' : '';
    return `${sign}${coin[1]}${cents(Math.abs(value))}${coin[2]}`;
  }
  if (unit === '%') return `${number}%`;
  return unit === '' ? number : `${number} ${unit}`;
}

/** Without limits: half of the value to half as much again; round nothing: up to ten. */
function around(value: number): readonly [number, number] {
  if (value === 0) return [0, 10];
  return value > 0 ? [value / 2, value * 1.5] : [value * 1.5, value / 2];
}

/** The finest step that still makes fewer than 200 of them. */
function stepFor(low: number, high: number, now: TapeAmount): number {
  const span = Math.max(high - low, 1e-9);
  if (now.length && (now.unit === 'in' || now.unit === 'ft')) {
    return [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 3, 6, 12].find((s) => span / s < 200) ?? 24;
  }
  const power = 10 ** Math.floor(Math.log10(span / 200));
  const step = [1, 2, 5, 10].map((n) => n * power).find((s) => span / s < 200) ?? power * 10;
  if (now.whole) return Math.max(1, Math.round(step));
  return /^[$€£]/.test(now.unit) ? Math.max(step, 0.01) : step;
}

/** 6.5 → `6 1/2`. */
function inFractions(inches: number): string {
  const sixteenths = Math.round(inches * 16);
  const whole = Math.floor(sixteenths / 16);
  let over = sixteenths % 16;
  let under = 16;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  if (over === 0) return String(whole);
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
}

function decimal(value: number): string {
  return Number(value.toPrecision(10)).toLocaleString('en', {
    useGrouping: false,
    maximumFractionDigits: 10,
  });
}

function cents(value: number): string {
  return Number.isInteger(tidy(value))
    ? decimal(value)
    : value.toFixed(tidy(value * 100) % 1 === 0 ? 2 : 4);
}

/** Away with the last digits of doubles. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
