// The factors of mathjs's own unit table as exact rationals.
import { PREFIX_TEXTS, UNIT_TEXTS } from './mathjs-units.ts';
import { Fraction } from './measure.ts';

/** One of this unit in metres, kilograms and seconds and their powers, by its name in mathjs. */
export function factorOf(name: string, prefix: '' | 'm' | 'c' | 'k' = ''): Fraction {
  return exactly(UNIT_TEXTS[name], name).mul(exactly(PREFIX_TEXTS[prefix], prefix));
}

/** The decimal that is written in the table. A double gives it back in its shortest text. */
function exactly(text: string | undefined, name: string): Fraction {
  if (text === undefined) throw new Error(`mathjs has no "${name}"`);
  if (!/^\d+(\.\d+)?$/.test(text))
    throw new Error(`mathjs's "${name}" is ${text}, no plain decimal`);
  return new Fraction(text);
}
