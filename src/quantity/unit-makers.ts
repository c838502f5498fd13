// How an entry of the table of units is made: its scale in inches, pounds and minutes, and where its factor comes from.
import { AREA, type Dimension, LENGTH, MASS, TIME, VOLUME } from './dimension.ts';
import { Fraction } from './measure.ts';
import { factorOf } from './registry.ts';
import type { Unit } from './units.ts';

/** A unit and every way it is written, besides its key and how it is shown. */
export interface Entry extends Unit {
  readonly spellings: readonly string[];
}

export const NIST_44 = 'NIST Handbook 44, Appendix C';
const NIST_811 = 'NIST Special Publication 811';

export const INCH = factorOf('inch');
const POUND = factorOf('poundmass');
const MINUTE = factorOf('minute');

type Names = readonly [one: string, many: string];

/** Shorter ways to write a square or a cube. */
const SHORT_POWERS: Readonly<Record<string, readonly string[]>> = {
  'sq in': ['sqin'],
  'sq ft': ['sf', 'sqft', 'sft'],
  'sq yd': ['sy', 'sqyd', 'sqyds'],
  'sq m': ['sqm'],
  'cubic in': ['cuin'],
  'cubic ft': ['cf', 'cuft', 'cft'],
  'cubic yd': ['cy', 'cuyd', 'cuyds'],
  'cubic m': ['cum', 'cbm'],
  'cubic cm': ['cc'],
};

/** Cubes are read out in whole words: `16 cubic feet`. */
const WHOLE_WORDS: Readonly<Record<string, readonly [string, string]>> = {
  in: ['inch', 'inches'],
  ft: ['foot', 'feet'],
  yd: ['yard', 'yards'],
  mi: ['mile', 'miles'],
};

export function length(
  key: string,
  measures: Unit['measures'],
  metres: Fraction,
  definition: string,
  spellings: readonly string[],
): Entry {
  const source = `${definition}; ${measures === 'us' ? NIST_44 : NIST_811}`;
  return {
    key,
    one: key,
    many: key,
    dimension: LENGTH,
    scale: metres.div(INCH),
    measures,
    source,
    spellings,
  };
}

export function powerOf(unit: Entry, power: 2 | 3): Entry {
  const words = power === 2 ? ['sq', 'square'] : ['cu', 'cubic'];
  const key = `${power === 2 ? 'sq' : 'cubic'} ${unit.key}`;
  const whole = power === 3 && unit.measures === 'us' ? WHOLE_WORDS[unit.key] : undefined;
  return {
    key,
    one: whole ? `cubic ${whole[0]}` : key,
    many: whole ? `cubic ${whole[1]}` : key,
    dimension: power === 2 ? AREA : VOLUME,
    scale: unit.scale.pow(power) ?? unit.scale,
    measures: unit.measures,
    source: `the ${power === 2 ? 'square' : 'cube'} of: ${unit.source}`,
    spellings: [
      ...words.flatMap((word) => [unit.key, ...unit.spellings].map((name) => `${word} ${name}`)),
      `${unit.key}${power}`,
      `${unit.key}${power === 2 ? '²' : '³'}`,
      ...(SHORT_POWERS[key] ?? []),
    ],
  };
}

export function area(
  key: string,
  measures: Unit['measures'],
  scale: Fraction,
  definition: string,
  names: Names,
  spellings: readonly string[],
): Entry {
  return defined(key, AREA, measures, scale, `${definition}; ${NIST_44}`, names, spellings);
}

export function volume(
  key: string,
  measures: Unit['measures'],
  cubicMetres: Fraction,
  definition: string,
  names: Names,
  spellings: readonly string[],
): Entry {
  const source = `${definition}; ${measures === 'us' ? NIST_44 : NIST_811}`;
  const scale = cubicMetres.div(INCH).div(INCH).div(INCH);
  return defined(key, VOLUME, measures, scale, source, names, spellings);
}

export function mass(
  key: string,
  measures: Unit['measures'],
  kilograms: Fraction,
  definition: string,
  names: Names,
  spellings: readonly string[],
): Entry {
  const source = `${definition}; ${measures === 'us' ? NIST_44 : NIST_811}`;
  return defined(key, MASS, measures, kilograms.div(POUND), source, names, spellings);
}

export function time(
  key: string,
  seconds: Fraction,
  definition: string,
  names: Names,
  spellings: readonly string[],
): Entry {
  return defined(
    key,
    TIME,
    'both',
    seconds.div(MINUTE),
    `${definition}; ${NIST_811}`,
    names,
    spellings,
  );
}

export function defined(
  key: string,
  measured: Dimension,
  measures: Unit['measures'],
  scale: Fraction,
  source: string,
  [one, many]: Names,
  spellings: readonly string[],
): Entry {
  return { key, one, many, dimension: measured, scale, measures, source, spellings };
}

export function squareFeet(count: number): Fraction {
  return new Fraction(count).mul(144);
}

/** British and American, one and many: `metre metres meter meters`. */
export function metric(stem: string): readonly string[] {
  return [`${stem}re`, `${stem}res`, `${stem}er`, `${stem}ers`];
}

export function along(names: readonly string[]): readonly string[] {
  return ['linear', 'lineal', 'running'].flatMap((word) => names.map((name) => `${word} ${name}`));
}
