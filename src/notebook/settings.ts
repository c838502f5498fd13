// The notebook's settings: plain list items right under the title.
import type { Settings } from './document.ts';
import { nameKey } from './names.ts';

export const USUAL: Settings = { currency: '$', counted: [], fractions: 16, measures: 'us' };

const CURRENCIES: ReadonlyMap<string, string> = new Map([
  ['us dollars', '$'],
  ['us dollar', '$'],
  ['dollars', '$'],
  ['canadian dollars', '$'],
  ['australian dollars', '$'],
  ['$', '$'],
  ['euros', '€'],
  ['euro', '€'],
  ['€', '€'],
  ['pounds sterling', '£'],
  ['british pounds', '£'],
  ['£', '£'],
]);

const MEASURES: ReadonlyMap<string, Settings['measures']> = new Map([
  ['us customary', 'us'],
  ['us', 'us'],
  ['feet and inches', 'us'],
  ['metric', 'metric'],
]);

const FRACTIONS: readonly number[] = [1, 2, 4, 8, 16, 32, 64];

export function isSetting(name: string): boolean {
  return ['currency', 'counted things', 'fractions', 'measures'].includes(nameKey(name));
}

/** The settings with this one set, or what can't be read in it. */
export function withSetting(settings: Settings, name: string, text: string): Settings | string {
  const value = text.trim();
  switch (nameKey(name)) {
    case 'currency': {
      const currency = CURRENCIES.get(nameKey(value));
      return currency
        ? { ...settings, currency }
        : `"${value}" is no currency known here. Try: US dollars, euros or pounds sterling.`;
    }
    case 'counted things': {
      const counted = value
        .split(',')
        .map(nameKey)
        .filter((word) => word !== '');
      return { ...settings, counted };
    }
    case 'fractions': {
      const found = /^1\s*\/\s*(\d+)\s*(in|inch|inches|")?$/.exec(value);
      const fractions = found ? Number(found[1]) : nameKey(value) === '1 in' ? 1 : 0;
      return FRACTIONS.includes(fractions)
        ? { ...settings, fractions }
        : `Lengths can show halves down to sixty-fourths of an inch, as in "1/16 in"; "${value}" is none of them.`;
    }
    case 'measures': {
      const measures = MEASURES.get(nameKey(value));
      return measures
        ? { ...settings, measures }
        : `"${value}" is not known as measures. Try: US customary, or metric.`;
    }
    default:
      throw new Error(`not a setting: ${name}`);
  }
}
