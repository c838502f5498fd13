// What was most likely meant by a formula that can't be read, said as a formula that can: `materials only, not labour`,
// `rail length, post every 6 ft, one extra for the end`. Patterns of words; whoever offers one first sees that it reads and works.
import type { Fix } from '../words/report.ts';
import { pluralOf } from '../quantity/nouns.ts';
import { type Habit, LENGTH, NUMBER, OUT, PERCENT, UNIT, habit } from './meant-habit.ts';
import { AS_TOLD, toldPlainly } from './meant-as-told.ts';
import { IN_SHORT } from './meant-in-short.ts';
import { BY_MEASURE } from './meant-by-measure.ts';
import { LEAVE_OUT } from './problems.ts';

/** Longer ones are no slip of the tongue, and patterns are slow on them. */
const LONGEST = 300;

/** The least demanding come last; each is tried, and all that work are offered. */
const HABITS: readonly Habit[] = [
  ...BY_MEASURE,
  ...IN_SHORT,
  ...AS_TOLD,
  habit(
    String.raw`(.+?), ([a-z]+?)s? (?:every|at) (.+?)(?: cent(?:re|er)s| apart| o\.?c\.?)?, (?:(?:plus )?(?:one|1) (?:extra|more)(?: for the end)?|plus (?:one|1|the last(?: \w+)?))`,
    'With one at each end',
    (along, thing, every) => `${thing}s every ${every} along ${along}`,
  ),
  habit(
    String.raw`(?:[a-z]+ )?([a-z]+s) (?:every|at) (.+?)(?: cent(?:re|er)s| apart)? (along|around) (.+?), plus (?:one|1|the last)(?: \w+)?`,
    'With one at each end',
    (things, every, along, run) => `${things} every ${every} ${along} ${run}`,
  ),
  habit(
    String.raw`[a-z]+ every (.+?) along (.+?), (?:(?:plus )?one extra, )?each (?:one |is )?(.+?) long`,
    'So many, each so long',
    (every, along, long) => `(bars every ${every} along ${along}) times ${long}`,
  ),
  habit(
    String.raw`(.+?) in (${UNIT}) ?(?:over|/|÷|divided by) ?(${NUMBER})((?:,| plus| minus| less).*)?`,
    'Both of them lengths',
    (of, unit, by, rest) => `${of} over ${by} ${unit}${rest}`,
  ),
  habit(
    String.raw`square root of (${NUMBER}) squared plus (${NUMBER}) squared,? (?:in )?(${UNIT})`,
    'Both of them lengths',
    (a, b, unit) => `square root of (${a} ${unit} squared plus ${b} ${unit} squared)`,
  ),
  habit(
    String.raw`(?:the )?(?:selling |sale |sell )?price (?:for|at|with|to make) (?:a )?(${PERCENT}) (?:gross )?margin on (?:an? |the )?(?:cost of )?(.+)`,
    'The price for that margin',
    (margin, cost) => `${cost} for a ${margin} margin`,
  ),
  ...(['price', 'cost'] as const).map((first) =>
    habit(
      String.raw`(?:the )?(margin|markup|profit)( as an? (?:percent|percentage|share)| as a %| in percent| percent)? (?:on|for|with|at) (?:an? )?${first} of (.+?) and (?:an? )?(?:cost|price) of (.+)`,
      'Worked from price and cost',
      (word, asked, a, b) => {
        const [price, cost] = first === 'price' ? [a, b] : [b, a];
        const made = `${price} minus ${cost}`;
        if (/profit/i.test(word) && asked === '') return made;
        return `what share (${made}) is of ${/markup/i.test(word) ? cost : price}`;
      },
    ),
  ),
  habit(
    String.raw`(.+?),? (?:with|less|minus|after|but with|having) (?:the |an? )?(${PERCENT}(?: [a-z ]+?)?|[a-z][a-z ]*?) ${OUT}`,
    'Without the share that is in it',
    (of, share) => `${of} divided by (1 plus ${share})`,
  ),
  habit(
    String.raw`(?:take|back|strip|pull|work) (?:the )?(${PERCENT}(?: [a-z ]+?)?|[a-z][a-z ]*?) (?:back )?out of (.+)`,
    'Without the share that is in it',
    (share, of) => `${of} divided by (1 plus ${share})`,
  ),
  habit(
    String.raw`(.+?),? (?:excluding|without|net of|before|ex) (?:the |an? )?(${PERCENT}(?: [a-z ]+?)?|[a-z][a-z ]*?)`,
    'Without the share that is in it',
    (of, share) => `${of} divided by (1 plus ${share})`,
  ),
  habit(
    String.raw`(${LENGTH}) (?:deep |thick )?of [a-z]+ (?:under|over|on|across|in|for) (?:an? |the )?(${NUMBER}) ?(?:x|×|by) ?(${NUMBER}) ?(${UNIT})(?: [a-z]+)?(?:, ([a-z ]+? at .+))?`,
    'So long, so wide and so deep',
    (deep, a, b, unit, rest) =>
      `${a} ${unit} by ${b} ${unit} by ${deep}${rest === '' ? '' : `, in ${rest}`}`,
  ),
  habit(
    String.raw`round (?:[a-z]+),? (.+? (?:diameter|radius)) (?:and|by|x) (.+?)(?:, ([a-z ]+?)(?: each)?)?`,
    'Round, and so deep',
    (across, deep, unit) =>
      `circle area for ${across} by ${deep}${unit === '' ? '' : `, in ${unit}`}`,
  ),
  habit(
    String.raw`(.+?), (${NUMBER} [^,]+?) (?:to|in|per) (?:the|an?|each|every) ([a-z]+)(?:, how many \w+)?`,
    'As many as are needed',
    (of, each, thing) => `${of}, in ${pluralOf(thing)} of ${each}`,
  ),
  habit(
    String.raw`(.+?), (?:(?:the|each|a) )?([a-z]+?)s? (?:carry|carries|holds?|takes?|covers?|comes? in|does?) (.+?)(?: each)?, how many \w+`,
    'As many as are needed',
    (of, thing, each) => `${of}, in ${pluralOf(thing)} of ${each}`,
  ),
  habit(
    String.raw`(?:[a-z]+ )*?(${LENGTH}) (?:long|wide) (?:and|by|x) (${LENGTH}) (?:high|tall|wide|long), (${NUMBER}) ?(?:x|×|by) ?(${NUMBER}) ?(${UNIT}) ([a-z]+), how many \w+`,
    'As many as cover it',
    (a, b, wide, high, unit, thing) =>
      `(${a} by ${b}) divided by (${wide} ${unit} by ${high} ${unit}), rounded up to whole ${thing}`,
  ),
  habit(
    String.raw`(.+?) of (${LENGTH} ?(?:x|×|by) ?${LENGTH}) [a-z]+( .+|,.+)?`,
    'As many as cover it',
    (area, one, rest) => `(${area} divided by (${one}))${rest}`,
  ),
  habit(
    String.raw`(.+?) and (.+?)(?: in (${UNIT}))?[:,] ?(?:the )?area`,
    'Multiply them',
    (a, b, unit) => `${a} by ${b}${unit === '' ? '' : `, in square ${unit}`}`,
  ),
  habit(
    String.raw`(tonnes|tons|cubic yards|cubic metres|cubic feet|kg|lb|yards|bags) of [a-z]+ for (.+?), (${NUMBER} .+)`,
    'At that rate',
    (unit, of, rate) => `${of}, at ${rate}, in ${unit}`,
  ),
  habit(
    String.raw`([a-z].*), (?:the )?(area|volume|perimeter|circumference)`,
    'What is asked comes first',
    (of, what) => `${what} of ${of}`,
  ),
  habit(
    String.raw`(?:the )?(perimeter|circumference|diagonal|average|difference)[:,] ?(.+)`,
    'Say what it is of',
    (what, of) => `${what} of ${of}`,
  ),
  habit(
    String.raw`[a-z]+(?: [a-z]+)? (?:is|are|at|costs?|runs?) (.+?), (${NUMBER} [^,]+?)(, (?:whole|full) [a-z]+)?(?: only)?`,
    'So much at that price',
    (rate, much, whole) => (whole === '' ? `${much} at ${rate}` : `(${much}${whole}) at ${rate}`),
  ),
  habit(
    String.raw`(?:[a-z]+ )*?(?:of )?(?:at least|minimum of|minimum|no less than) (.+?), (?:otherwise|else) (.+)`,
    'No less than that',
    (least, of) => `${of}, not less than ${least}`,
  ),
  habit(
    String.raw`(.+? at .+?), (${NUMBER} [^,]+? (?:min|minimum)), (.+)`,
    'No less than that',
    (of, least, rest) => `${of}, ${least}, ${rest}`,
  ),
];

/** Formulas that may have been meant, best first; none of them is known to be read. */
export function meantBy(typed: string): readonly Fix[] {
  const text = typed.trim().replace(/[.?]+$/, '');
  if (text.length === 0 || text.length > LONGEST) return [];
  const untitled = text.replace(
    /^(?!perimeter|circumference|diagonal|average|difference)[a-z]+: /i,
    '',
  );
  const fixes: Fix[] = [];
  for (const { typed: pattern, say, formula } of HABITS) {
    const found = pattern.exec(text) ?? (untitled === text ? null : pattern.exec(untitled));
    const meant = found && formula(...found.slice(1).map((part) => part ?? ''));
    if (meant) fixes.push({ say, formula: meant });
  }
  return [
    ...fixes,
    ...toldPlainly(text),
    ...mixed(text),
    ...lengthsAdded(text),
    ...withoutRemarks(text),
    ...commas(text),
  ];
}

/** `18 cubic feet, 1 part cement 2 parts sand 3 parts stone, the sand` */
function mixed(text: string): readonly Fix[] {
  const [, of, asked] = /^(.+?),.*\bparts?\b.*, (?:the |of )?([a-z]+)$/i.exec(text) ?? [];
  if (of === undefined || asked === undefined) return [];
  const parts = [...text.matchAll(/(\d+) parts? ([a-z]+)/gi)];
  const all = parts.reduce((sum, part) => sum + Number(part[1]), 0);
  const own = parts.find((part) => part[2]?.toLowerCase() === asked.toLowerCase());
  if (parts.length < 2 || !own) return [];
  return [{ say: `${own[1]} parts of ${all}`, formula: `${of} times ${own[1]}/${all}` }];
}

/** `16' ledger plus two 14' rims plus 13 joists 13'9" each`: lengths of lumber. */
function lengthsAdded(text: string): readonly Fix[] {
  if (!/\d'/.test(text) || !/\bplus\b|\+/.test(text)) return [];
  const long = String.raw`\d+'(?:[ -]?\d+(?: \d+/\d+)?")?`;
  const formula = text
    .replaceAll(new RegExp(String.raw`\b(\w+) [a-z]+ (${long}) each\b`, 'gi'), '$1 times $2')
    .replaceAll(
      new RegExp(String.raw`\b(\w+) (${long}) [a-z]+\b(?<!plus)`, 'gi'),
      (all, many, one) =>
        /^(plus|times|minus|less|by)$/i.test(many) ? `${many} ${one}` : `${many} times ${one}`,
    )
    .replaceAll(
      new RegExp(String.raw`(^|plus )(${long}) (?!plus|times|and|by|each)[a-z]+`, 'gi'),
      '$1$2',
    );
  return formula === text ? [] : [{ say: 'Lengths added up', formula }];
}

/** Remarks that change no number: `only`, `, not labour`, `for paying in 10 days`, whose it is. */
function withoutRemarks(text: string): readonly Fix[] {
  const formula = text
    .replace(/,? (?:but )?not (?!less|more|under|over|below|above)[a-z][a-z ]*$/i, '')
    .replace(/(%) for [a-z][^,]*$/i, '$1')
    .replace(
      /, (?!.*\b(?:both|each|every|twice|two|half|double|sides?|ends?|all|per|in|at|is|not|plus|minus|less|times|rounded|whole|full|area|volume|if|otherwise|as|to|for|with|by|of|where|when|and|or|over|under|off|then)\b)[a-z][a-z ]*$/i,
      '',
    )
    .replaceAll(/ (?:only|exactly|just|roughly|approximately)\b/gi, '')
    .replaceAll(/\b(?:our|my|your|their|his|her) (?=[a-z])/gi, '')
    .trim();
  return formula === text || formula === '' ? [] : [{ say: LEAVE_OUT, formula }];
}

/** `crew, 8 hrs a day, 3 days, at labour rate`: one times the other, and then at what rate. */
function commas(text: string): readonly Fix[] {
  if (/\b(?:where|if|when|otherwise|total|sum|average|of)\b|[?()%]/i.test(text)) return [];
  const parts = text.split(/, +/);
  if (parts.length < 2 || parts.length > 5) return [];
  const joined = parts.reduce((all, part) => {
    if (/^(?:at|in|plus|minus|less|times|by|over|rounded)\b/i.test(part)) return `${all}, ${part}`;
    return /\d .*\b(?:per|an?)\b|\/[a-z]/i.test(part) && /^[$£€]/.test(part)
      ? `${all}, at ${part}`
      : `${all} times ${part}`;
  });
  return joined === text ? [] : [{ say: 'Multiply them', formula: joined }];
}
