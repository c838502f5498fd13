// What a value measures, in the words of a message: `a length`, `a price per bag`, `a count of boards`.
import { type Dimension, MONEY, PLAIN, TIME, countOf, dimension } from './dimension.ts';
import type { AmountMeasure, Fraction, Measure } from './measure.ts';
import { pluralOf } from './nouns.ts';
import { unitByKey, unitOf } from './units.ts';

export function describe(measure: Measure): string {
  switch (measure.kind) {
    case 'amount':
      return describeAmount(measure);
    case 'share':
      return 'a share';
    case 'yes-no':
      return 'yes or no';
    case 'text':
      return 'a text';
    case 'open':
      return 'not yet known';
  }
}

function describeAmount({ dimension: measured, rate }: AmountMeasure): string {
  if (rate)
    return overWords(rate.over.dimension) + underWords(rate.under.dimension, rate.under.scale);
  const over = side(measured, 1);
  const under = side(measured, -1);
  if (under === PLAIN) return over === MONEY ? 'money' : overWords(over);
  return overWords(over) + underWords(under, null);
}

/** The powers on one side of the line, made positive. */
function side(measured: Dimension, sign: 1 | -1): Dimension {
  const part = (power: number) => Math.max(0, power * sign);
  return dimension({
    length: part(measured.length),
    mass: part(measured.mass),
    time: part(measured.time),
    money: part(measured.money),
    nouns: measured.nouns.map((n) => ({ noun: n.noun, power: part(n.power) })),
  });
}

/** Money over something is a price; by itself it is money. */
function overWords(measured: Dimension): string {
  if (measured === PLAIN) return 'a plain number';
  if (measured === MONEY) return 'a price';
  if (measured === TIME) return 'hours';
  const personHours = unitByKey('person-hour');
  if (measured === personHours.dimension) return personHours.many;
  const counted = measured.nouns.flatMap((n) => repeated(pluralOf(n.noun), n.power));
  const [first, ...more] = [...hardWords(measured), ...counted];
  if (first === undefined) return 'a plain number';
  return [withArticle(first, counted), ...more].join(' times ');
}

function withArticle(first: string, counted: readonly string[]): string {
  if (counted.includes(first)) return `a count of ${first}`;
  if (first === 'money' || first === 'hours') return first;
  return /^[aeiou]/.test(first) ? `an ${first}` : `a ${first}`;
}

/** With ` per ` before it; `scale` is known of a rate as it was written. */
function underWords(measured: Dimension, scale: Fraction | null): string {
  const [noun] = measured.nouns;
  if (noun && measured === countOf(noun.noun)) {
    if (noun.noun === 'each') return ' each';
    const one = scale === null || scale.equals(1);
    return one ? ` per ${noun.noun}` : ` per ${scale.toString()} ${pluralOf(noun.noun)}`;
  }
  const unit = scale && unitOf(measured, scale);
  if (unit) return ` per ${unit.one}`;
  if (measured === TIME) return ' per hour';
  const counted = measured.nouns.flatMap((n) => repeated(n.noun, n.power));
  return [...hardWords(measured), ...counted].map((word) => ` per ${word}`).join('');
}

function hardWords(measured: Dimension): readonly string[] {
  return [
    ...repeated('money', measured.money),
    ...repeated('weight', measured.mass),
    ...lengthWords(measured.length),
    ...repeated('hours', measured.time),
  ];
}

function lengthWords(power: number): readonly string[] {
  if (power > 3) return ['volume', ...lengthWords(power - 3)];
  const word = ['length', 'area', 'volume'][power - 1];
  return word === undefined ? [] : [word];
}

function repeated(word: string, times: number): readonly string[] {
  return Array.from({ length: Math.max(0, times) }, () => word);
}
