// `$4,200, give or take 5%`, `12 hours plus or minus 2`: a range said from its middle. It is offered as one.
import { Fraction } from '../quantity/measure.ts';
import { grouped } from '../quantity/number-text.ts';
import type { Fix } from '../words/report.ts';

const SAID =
  /^(.+?),? (?:give or take|plus or minus|\+ ?\/ ?-|±) ?(\d+(?:\.\d+)?) ?(%|percent)?(?: [a-z ]+)?$/i;
const AMOUNT = /^(\D?)(\d[\d,]*(?:\.\d+)?)((?: ?[a-z/]+)*)$/i;

/** The range; `valueOf` tells what the words before it show, where they name a cell. */
export function giveOrTake(typed: string, valueOf: (words: string) => string | null): Fix | null {
  const [, words, much, percent] = SAID.exec(typed.trim()) ?? [];
  if (words === undefined || much === undefined || words.length > 80) return null;
  const amount = AMOUNT.test(words) ? words : valueOf(words);
  const [, sign = '', number, unit = ''] = AMOUNT.exec(amount ?? '') ?? [];
  if (number === undefined) return null;
  const middle = new Fraction(number.replaceAll(',', ''));
  const by = percent === undefined ? new Fraction(much) : middle.mul(much).div(100);
  const say = (value: Fraction): string => `${sign}${grouped(value.toString())}${unit}`;
  const formula = `${say(middle)}, ${say(middle.sub(by))} to ${say(middle.add(by))}`;
  return { say: `A range about ${say(middle)}`, formula };
}
