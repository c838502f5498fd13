// Measures that bound a sum, too loose to be read: one price up to so much and another beyond it, steps that are no higher
// than so much, as many as fit. Each is offered as a formula that says it in full.
import { type Habit, habit } from './meant-habit.ts';

const BEYOND = String.raw`(?:after|beyond|above|over|past|from there|thereafter)(?: that| this| it)?`;
const REST = String.raw`(?:(?:for |on )?(?:the |any |all )?(?:rest|remainder|balance|others?|extra|anything (?:over|above|more)|what is (?:over|left))(?: of it| that)?)`;
const FIRST = String.raw`(?:for|on) the first (.+?)`;
const RATE = String.raw`([$£€] ?[\d,.]+(?: ?(?:per|an?|each|/) ?[a-z ]+?)?)`;

/** A price with what it is per, taken from the other where it is not said again. */
function perAs(rate: string, other: string): string {
  if (/\b(?:per|an?|each)\b|\//i.test(rate)) return rate;
  const per = /(?:\bper\b|\/).*$/i.exec(other);
  return per ? `${rate} ${per[0]}` : rate;
}

function inTiers(much: string, first: string, low: string, high: string): string {
  const [one, other] = [perAs(low, high), perAs(high, low)];
  const upTo = withUnitOf(first, much, one);
  const all = /[-+×x*/]| (?:by|times|plus|minus|less|over|divided|at) /i.test(much)
    ? `(${much})`
    : much;
  return `(${all} or ${upTo}, whichever is less) at ${one}, plus (${all} minus ${upTo}, not less than 0) at ${other}`;
}

/** `first 200` of so many sq ft: in what the whole is written, or the price is per. */
function withUnitOf(first: string, much: string, rate: string): string {
  if (!/^[\d,.]+$/.test(first)) return first;
  const per = /(?:\bper |\/)([a-z ]+)$/i.exec(rate);
  const unit = /^[\d,.]+ ([a-z ]+)$/i.exec(much)?.[1] ?? per?.[1] ?? '';
  return `${first} ${unit}`.trim();
}

const TIERED: readonly Habit[] = [
  habit(
    String.raw`(.+?),? at ${RATE} ${FIRST},?(?: and| then|,)* ${RATE}(?: for)? (?:${BEYOND}|${REST})`,
    'So much up to there, then the other price',
    (much, low, first, high) => inTiers(much, first, low, high),
  ),
  habit(
    String.raw`${RATE} ${FIRST},?(?: and| then|,)* ${RATE}(?: for)? (?:${BEYOND}|${REST}),? (?:for|on|of|with) (.+?)(?: in all| in total)?`,
    'So much up to there, then the other price',
    (low, first, high, much) => inTiers(much, first, low, high),
  ),
  habit(
    String.raw`(.+?),? (?:with |where )?(?:the )?first (.+?) at ${RATE},?(?: and| then|,)* ${REST} at ${RATE}`,
    'So much up to there, then the other price',
    (much, first, low, high) => inTiers(much, first, low, high),
  ),
  habit(
    String.raw`${RATE} (?:up to|for up to) (.+?),?(?: and| then|,)* ${RATE}(?: for)? (?:${BEYOND}|${REST}),? (?:for|on|of|with) (.+)`,
    'So much up to there, then the other price',
    (low, first, high, much) => inTiers(much, first, low, high),
  ),
  habit(
    String.raw`${RATE} ${FIRST},?(?: and| then|,)* ${RATE} (?:for|on) the (?:other|next|remaining|last|following) (.+)`,
    'Each at its price',
    (low, first, high, rest) => {
      const [one, other] = [perAs(low, high), perAs(high, low)];
      return `${withUnitOf(first, rest, one)} at ${one} plus ${withUnitOf(rest, first, other)} at ${other}`;
    },
  ),
  habit(
    String.raw`(?:the )?first (.+?) at ${RATE},?(?: and| then|,)* (?:the )?(?:other|next|remaining|last|following) (.+?) at ${RATE}`,
    'Each at its price',
    (first, low, rest, high) => {
      const [one, other] = [perAs(low, high), perAs(high, low)];
      return `${withUnitOf(first, rest, one)} at ${one} plus ${withUnitOf(rest, first, other)} at ${other}`;
    },
  ),
];

const PARTS =
  '(?:steps?|risers?|rises|treads?|parts|bays|spaces|panels|pieces|sections|lengths|lifts|layers|courses|gaps|spans)';
const NO_MORE = String.raw`(?:(?:no|not) (?:more|higher|taller|longer|wider|deeper|bigger|thicker|larger|greater) than|at most|up to|under|max(?:imum)?(?: of)?)`;

/** `1.2 m rise`: the measure without what it is called, where it reads so; else as it stands. */
function measureOf(said: string): string {
  return said.replace(
    /^(\D*\d.*?) (?:total )?(?:rise|run|length|height|fall|drop|width|depth|high|tall|long|wide|deep)$/i,
    '$1',
  );
}

const IN_PARTS: readonly Habit[] = [
  ...(['How many', 'How much each'] as const).map((say) =>
    habit(
      String.raw`(?:split |divide |break )?(?:up )?(?:an? |the )?(.+?),? (?:(?:split |divided |broken )?(?:up )?(?:in|into|by)) (?:equal |even |whole )?${PARTS},? (?:of |that are |each )?${NO_MORE} (.+?)(?: each| high| long| wide| tall)?`,
      say,
      (all, most) => {
        const many = `${measureOf(all)} divided by ${most}, rounded up`;
        return say === 'How many' ? many : `${measureOf(all)} divided by (${many})`;
      },
    ),
  ),
  habit(
    String.raw`(?:the )?(?:number of|how many|fewest) ${PARTS} (?:for|in|to climb|to cover|over) (?:an? |the )?(.+?),? (?:with |at |if |where )?(?:each (?:one |is )?|none |no \w+ )?(?:of |is |being |over )?${NO_MORE} (.+?)(?: each| high| long| wide| tall)?`,
    'How many',
    (all, most) => `${measureOf(all)} divided by ${most}, rounded up`,
  ),
];

const EACH_TAKES = String.raw`(?:when|if|with|where|at)? ?(?:each(?: one)?|every one|they|one|(?:each|every) [a-z]+)(?: of them)? (?:takes up|takes|take up|take|is|are|measures|covers|cover|needs|need|being)`;

const FITTING: readonly Habit[] = (['up', 'down'] as const).map((way) =>
  habit(
    String.raw`(?:the )?(?:number of|how many) ([a-z]+)(?: that)? (?:will |can |would |do )?(?:fit|fits|go|goes|it takes to cover|are needed) (?:in|into|across|along|on|to|for|over)? ?(?:the )?(.+?),? ${EACH_TAKES} (.+?)(?: wide| long| each)?(?:, (rounded .+))?`,
    way === 'up' ? 'As many as are needed' : 'Whole ones that go in',
    (_things, all, each, rounding) => {
      if (rounding !== '' && !rounding.includes(way)) return null;
      return `${all} divided by ${each}, ${rounding === '' ? `rounded ${way}` : rounding}`;
    },
  ),
);

export const BY_MEASURE: readonly Habit[] = [...TIERED, ...IN_PARTS, ...FITTING];
