// What is jotted down in a hurry: units said once for two numbers, prices without their sign, dashes and bare spacings.
// Each is offered as a formula that says it in full.
import { pluralOf } from '../quantity/nouns.ts';
import { type Habit, LENGTH, NUMBER, PERCENT, UNIT, habit } from './meant-habit.ts';

const NUMBERS = new Map(
  'one two three four five six seven eight nine ten eleven twelve'
    .split(' ')
    .map((word, i) => [word, String(i + 1)] as const),
);
const COUNT = `(?:${NUMBER}|${[...NUMBERS.keys()].join('|')})`;

function digits(word: string): string {
  return NUMBERS.get(word.toLowerCase()) ?? word;
}

const TIME = '(?:hours?|hrs?|hr|h|days?|day|weeks?|months?)';
const MANY =
  '(?:sq ?ft|sf|sqft|sq ?m|sq ?yds?|cu ?yds?|cy|lf|ft|feet|m|yards?|boards?|blocks?|bricks?)';

export const IN_SHORT: readonly Habit[] = [
  habit(
    String.raw`(${COUNT}) ([a-z]+?s?)(?:,? ${LENGTH}(?: ${NUMBER} ?(?:in|"))? (?:long|wide|each))?, ?(${COUNT}) (?:from|out of|to|per|on|in) (?:each|every|an?|one) (?:${LENGTH} )?([a-z]+?)s?`,
    'So many from each',
    (count, things, each, stock) => `${count} ${things}, in ${pluralOf(stock)} of ${digits(each)}`,
  ),
  habit(
    String.raw`(${NUMBER}) ?(${UNIT}) ?/ ?(${NUMBER}) ?(${UNIT}) ?(?:\+|plus) ?(${NUMBER}) ([a-z]+?)s?`,
    'Divided, and so many more',
    (of, unit, by, other, more, thing) =>
      `(${of} ${unit} ÷ ${by} ${other}, as ${pluralOf(thing)}) plus ${more} ${thing}`,
  ),
  habit(
    String.raw`(${NUMBER}) ?(${UNIT}) ?/ ?(${NUMBER}) ?(${UNIT})((?: ?[-+,]| plus| minus| less| round| rnd).*)?`,
    'Divided',
    (of, unit, by, other, rest) => `${of} ${unit} ÷ ${by} ${other}${rest}`,
  ),
  habit(
    String.raw`(${NUMBER}) ?(${UNIT}) ?(?:/|÷|divided by|over) ?(${NUMBER})((?:,| plus| minus| less| \+| -| rounded| round| rnd| rd).*)?`,
    'Both of them lengths',
    (of, unit, by, rest) => `${of} ${unit} ÷ ${by} ${unit}${rest}`,
  ),
  habit(
    String.raw`(.+?)(?: ?@| at) ?(\d+(?:\.\d+)?) ?(ea|each|apiece|per [a-z]+|/ ?[a-z]+)(.*)`,
    'A price',
    (of, price, per, rest) => `${of} at $${price} ${/^ea$/i.test(per) ? 'each' : per}${rest}`,
  ),
  habit(
    String.raw`(${NUMBER}) ?[-–—] ?(${NUMBER} ?(?:"|'|in|ft|mm|cm|m)) ?(?:dia\.?|diameter|diam\.?) ([a-z]+)(.*)`,
    'So many of that size',
    (many, across, things, rest) =>
      `(${many} ${things} ${across} dia${rest.replace(/,.*$/, '')})${/,.*$/.exec(rest)?.[0] ?? ''}`,
  ),
  habit(
    String.raw`(${NUMBER}) ?(?:x|×|by) ?(${NUMBER}) ?(${UNIT}),? ?(${NUMBER}) ?(${UNIT}) (?:deep|thick|high|tall)( .*)?`,
    'So long, so wide and so deep',
    (a, b, unit, deep, of, rest) => {
      const shown = /\b(?:in|to) ([a-z ]+)$/i.exec(rest)?.[1];
      return `${a} ${unit} by ${b} ${unit} by ${deep} ${of}${shown ? `, in ${shown}` : ''}`;
    },
  ),
  habit(
    String.raw`(.+?) (?:plus|\+) (${PERCENT}(?: [a-z]+)?),? (?:plus|\+|and) (${PERCENT}(?: [a-z]+)?),? (?:both|each|all)(?: taken)? (?:on|of) (?:the )?.+`,
    'Added up first',
    (of, one, other) => `${of} plus (${one} plus ${other})`,
  ),
  habit(
    String.raw`(.*?)(${NUMBER}) ?(x|×|by) ?(${NUMBER}) ?(${UNIT})\b(.*)`,
    'Both of them lengths',
    (before, a, x, b, unit, rest) =>
      /\d$|(?:[x×*/]|\bby)$/i.test(before.trim()) || (before === '' && rest === '')
        ? null
        : `${before}(${a} ${unit} ${x} ${b} ${unit})${perHour(rest)}`,
  ),
  habit(
    String.raw`(.*\d ?${MANY}) (${TIME})(\b.*)?`,
    'So much an hour',
    (of, time, rest) => `${of} per ${time.replace(/s$/i, '')}${rest}`,
  ),
];

/** `40sqft hr`: so much in an hour. */
function perHour(rest: string): string {
  return rest.replace(
    new RegExp(String.raw`(\d ?${MANY}) (hours?|hrs?|hr|day)\b`, 'i'),
    '$1 per $2',
  );
}
