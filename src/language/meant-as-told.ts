// What one tells somebody across the yard, said plainly: `make sure X ain't more than Y`, `that's your trim`,
// `materials less 5% if they run over $4,000`. Each is offered where the plain words read and work.
import type { Fix } from '../words/report.ts';
import { pluralOf } from '../quantity/nouns.ts';
import { type Habit, LENGTH, NUMBER, PERCENT, UNIT, habit } from './meant-habit.ts';

const RATE = String.raw`${NUMBER} (?:[a-z]+ )?[a-z]+ (?:per|an?|each|to the) (?:${NUMBER} )?(?:sq |square |cubic |cu )?[a-z]+`;

export const AS_TOLD: readonly Habit[] = [
  habit(
    String.raw`(.+?) (?:\/|÷|divided by|over) 27(?: cf)?,?(?: for| to get| in| into| gives)? (?:cubic |cu )?(?:yards|yds|yd|cy)`,
    'In cubic yards',
    (of) => `${of}, in cubic yards`,
  ),
  habit(
    String.raw`([$£€]${NUMBER}) per ([a-z][a-z ]*?) of (.+)`,
    'Spread over all of it',
    (much, unit, of) => `${much} divided by ${of}, in $ per ${unit}`,
  ),
  habit(
    String.raw`(.+?)(?:'s|’s)? share of (.+?)(?:,? (?:as an? )?(?:%|percent|percentage))?`,
    'What share one is of the other',
    (of, whole) => `what share (${of}) is of (${whole})`,
  ),
  habit(
    String.raw`(.+?),? (?:if|when|where) (?:it|they|that|this)(?: is|['’]s| are|['’]re| runs?| goes?| comes?| come| gets?| go)? (?:to )?(over|above|more than|under|below|less than|at least|at most) (.+?)`,
    'Where that is so',
    (of, relation, limit) => {
      const subject = /^(.+?)(?: (?:less|plus|minus|with|times|at)\b.*)?$/.exec(of)?.[1] ?? of;
      return `(${of}) where ${subject} is ${relation} ${limit}, otherwise ${subject}`;
    },
  ),
  habit(
    String.raw`(?:[a-z]+ )*?(${RATE}),? (?:on|over|across|along|for) (?:an? |the )?(.+?)`,
    'All of it at that rate',
    (rate, of) => `(${of}) at ${rate}`,
  ),
  habit(
    String.raw`(.+?),? (?:both|two|each) (?:sides|ends|faces|side|end|face)`,
    'Twice that',
    (of) => `2 times (${of})`,
  ),
  habit(
    String.raw`(?:an? )?round [a-z]+ (${LENGTH}) (?:across|wide|in diameter|dia\w*),?(?: and| with| by)? (${LENGTH})(?: of [a-z]+| deep| thick)*`,
    'Round, and so deep',
    (across, deep) => `circle area for ${across} diameter by ${deep}`,
  ),
  habit(
    String.raw`(?:[a-z]+ )?(${LENGTH}) (?:deep|thick) (?:of [a-z]+ )?(?:under|over|on|across|in|for) (?:an? |the )?(.+?(?: by | x ).+?)(?: [a-z]+)?(?:, (.+))?`,
    'So long, so wide and so deep',
    (deep, area, rest) => `${area} by ${deep}${rest === '' ? '' : `, ${rest}`}`,
  ),
  habit(
    String.raw`(?:an? )?(third|half|quarter) (?:down|up ?front|now|deposit)(?: on| of)? (.+)`,
    'That part of it',
    (part, of) => `${part === 'half' ? 'half' : `a ${part}`} of ${of}`,
  ),
  habit(
    String.raw`(${PERCENT}) (?:down|up ?front|now)(?: on| of) (.+)`,
    'That share of it',
    (share, of) => `${share} of ${of}`,
  ),
  habit(
    String.raw`(.+?),? (?:at|on|upon|due at|due on|payable at) (?:the )?(?:framing|completion|signing|start|handover|finish|closing|rough[- ]in|substantial completion|delivery)(,.*)?`,
    'Without when it is due',
    (of, rest) => `${of}${rest}`,
  ),
  habit(
    String.raw`(${NUMBER} ?(?:${UNIT}|'|").*?|[a-z][a-z ]*?) (max|min|tops)\.? (.+)`,
    'Is it so?',
    (of, side, limit) => `${of} is at ${side === 'min' ? 'least' : 'most'} ${limit}`,
  ),
  ...(['Is it so?', 'Hold it to that'] as const).map((say) =>
    habit(
      String.raw`(.+?),? (?:and )?no (higher|wider|longer|taller|deeper|thicker|bigger|larger|lower|shorter|narrower|smaller|thinner) than (.+?)(?: all told| in all| overall)?`,
      say,
      (of, than, limit) => {
        const least = /lower|shorter|narrower|smaller|thinner/i.test(than);
        if (say === 'Is it so?') return `${of} is at ${least ? 'least' : 'most'} ${limit}`;
        return `${of}, not ${least ? 'less' : 'more'} than ${limit}`;
      },
    ),
  ),
  habit(
    String.raw`(.+?), (\d+) ?(?:x|×|by) ?(\d+) (sheets|panels|boards)(.*)`,
    'Sheets of so many feet',
    (of, a, b, things, rest) => `${of}, in ${things} of ${Number(a) * Number(b)} sq ft${rest}`,
  ),
  habit(
    String.raw`(${NUMBER}) ?(?:x|×|by) ?(${NUMBER}) ?(in|mm|cm|") ([a-z]+s) (?:over|on|for|to cover|across|in) (.+?)((?:,| plus| and).*)?`,
    'As many as cover it',
    (a, b, unit, things, of, rest) =>
      `(${of} divided by (${a} ${unit} by ${b} ${unit}))${rest}${/round|whole/.test(rest) ? '' : `, rounded up to whole ${things}`}`,
  ),
  habit(
    String.raw`(.+?),? (?:they|it|which|that) (?:comes?|are|is|run|runs) (?:packed |sold )?(${NUMBER}) (?:to|in|per) (?:an?|the|each|every) ([a-z]+?)(?:,.*)?`,
    'As many as are needed',
    (of, each, thing) => `${of}, in ${pluralOf(thing)} of ${each}`,
  ),
  habit(
    String.raw`([a-z]+ .*?(?:@|at|every) .+? in (?:an? )?.+?), (${NUMBER}) (?:per|each|apiece)(?: [a-z]+)?`,
    'So many of each',
    (of, each) => `(${of}) times ${each}`,
  ),
];

/** Words of the yard for words of the language, in turn. */
const PLAINLY: readonly (readonly [RegExp, string])[] = [
  [/^(?:make sure|check|check that|see if|see that|verify|be sure|confirm)(?: that)? /i, ''],
  [/^(?:drop|fall|slope|pitch|run|go|take) it (?:down |out )?/i, ''],
  [/\b(?:isn['’]t|ain['’]t|aren['’]t|is n't)\b/gi, 'is not'],
  [/\b(?:must be|should be|has to be|have to be|needs to be|can be|may be)\b/gi, 'is'],
  [
    /\b(?:must not|can ?not|may not|should not|doesn['’]t|does not|won['’]t|don['’]t) (?:be |go )?(?:exceed|over|above|more than)\b/gi,
    'is at most',
  ],
  [/\bis not (?:to be )?more than\b/gi, 'is at most'],
  [/,? (?:and|plus|but)? ?(?:don['’]t|do not) forget (?:to add )?(?:the )?/gi, ' plus '],
  [
    /,? and (?:put|throw|stick|tack|slap) (?:the |on )?(?:the )?(.+?) on(?: it| that| top)?$/i,
    ', plus $1',
  ],
  [/,? (?:that['’]s|that is|which is|this is) (?:your|my|our|the) [a-z ]+$/i, ''],
  [/,? (?:all told|all in|to be safe|just in case|don['’]t come up short|give or take)$/i, ''],
  [/^(?:deck|slab|the)? ?(?:job )?(?:total|sum) is /i, ''],
  [/\boutta\b/gi, 'out of'],
];

/** The formula in plain words, and with `plus` for each `and` between names; nothing where no such word stands in it. */
export function toldPlainly(text: string): readonly Fix[] {
  let plain = text;
  for (const [told, words] of PLAINLY) plain = plain.replace(told, words);
  plain = plain.replaceAll(/\s+/g, ' ').trim();
  const fixes: Fix[] = [];
  const add = (formula: string): void => {
    if (formula !== text && formula !== '') fixes.push({ say: 'In plain words', formula });
  };
  add(plain);
  const sum = plain.replaceAll(/ and /g, ' plus ');
  if (sum !== plain && !/\b(?:is|are|where|if|when|between|of)\b|[<>=≤≥]/i.test(sum)) add(sum);
  return fixes;
}
