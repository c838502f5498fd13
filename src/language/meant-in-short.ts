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
    String.raw`(.+?) in (${LENGTH}|${NUMBER} ?(?:-|–)? ?(?:ft|foot|feet)) lengths?\b(.*)`,
    'In pieces of that length',
    (of, each, rest) =>
      `${of} in ${each} pieces${rest.replaceAll(/\b(per|an?|each|every) length\b/gi, '$1 piece')}`,
  ),
  habit(
    String.raw`(.*?)(${NUMBER} ?(?:hours?|hrs?|hr|h)),? (?:of )?(?:OT|overtime)(?: time)?,? ?(?:@|at) ?(${NUMBER}) ?(?:x|×|times) ?([$£€][\d.,]*\d(?: ?(?:per|an?|/) ?(?:hours?|hrs?|hr|h))?|[a-z]+(?: rate)?)`,
    'At so many times the rate',
    (before, hours, times, rate) =>
      `${anHour(before)}${hours} at (${times} times ${/^[$£€].*\d$/.test(rate) ? `${rate} per hour` : rate})`,
  ),
  habit(
    String.raw`(.+?) (?:x|×|by) (.+?), (?:and )?(${LENGTH}|${NUMBER} [a-z]+) (?:deep|thick|high|tall)\b(.*)`,
    'So long, so wide and so deep',
    (a, b, deep, rest) => `${a} by ${b} by ${deep}${rest}`,
  ),
  habit(
    String.raw`(.+?(?<!\b(?:no|not|never|is|are|be))),? (less|more|greater|smaller|larger|bigger|higher|lower|longer|shorter|fewer) than (.+?)\??`,
    'Is it so?',
    (of, than, limit) =>
      /\b(?:is|are|where|if|when)\b/i.test(of) ? null : `${of} is ${than} than ${limit}`,
  ),
  habit(
    String.raw`(.+?),? (?:plus|\+|and) (an?|${COUNT})(?: more)? (?:spares?|extras?)`,
    'So many more',
    (of, more) => `${of} plus ${/^an?$/i.test(more) ? '1' : digits(more)}`,
  ),
  habit(
    String.raw`(${NUMBER})[- ]?(?:ply|plies) (?:\d+ ?x ?\d+ ?)?(?:x|×|@|at|,)? ?(${LENGTH})(?: [a-z]+)?,?(?: (?:in )?(?:LF|lineal f(?:ee|oo)t|linear f(?:ee|oo)t|feet|ft))?`,
    'So many, each so long',
    (plies, long) => `${plies} times ${long}`,
  ),
  habit(
    String.raw`(${COUNT}) ?(?:-|–)? ?(?:\d+x\d+s?|[a-z]+s) (?:@|at|of) (.+?),? (?:outta|out of|from|cut from) (?:an? )?(${LENGTH})(?: ?(stock|sticks?|boards?|lengths?|posts?|pieces?|lumber))?`,
    'So many pieces from each',
    (many, long, stock) => `${digits(many)} pieces of ${long} from ${stock} boards`,
  ),
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

/** `38 hrs @ $50`: an hour. */
function anHour(text: string): string {
  const hours = String.raw`\b(?:hours?|hrs?|hr|h) ?(?:@|at) ?[$£€][\d.,]+(?![\d.,]| ?(?:\/|per\b|an?\b))`;
  return text.replaceAll(new RegExp(hours, 'gi'), '$& per hour');
}

/** `40sqft hr`: so much in an hour. */
function perHour(rest: string): string {
  return rest.replace(
    new RegExp(String.raw`(\d ?${MANY}) (hours?|hrs?|hr|day)\b`, 'i'),
    '$1 per $2',
  );
}
