// The words for what the engine finds: a division by nothing, a circle, a cost that isn't money yet,
// a value by hand of another kind. The one place on this floor where messages are made.
import { describe } from '../quantity/describe.ts';
import type { Measure } from '../quantity/measure.ts';
import type { Fix, Report } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';
import type { LookUp, LookUpCondition } from '../language/tree.ts';
import type { FaultCode } from './held.ts';

/** What can't be worked with the values there are; `what` says it of the formula's own words at `spot`, if they are known. */
export function workingFault(
  code: Exclude<FaultCode, 'text'>,
  what: string | null,
  spot: Spot | null,
): Report {
  const spots = spot ? [spot] : [];
  switch (code) {
    case 'division-by-zero':
      return {
        code,
        headline: 'This divides by nothing.',
        spots,
        explanation:
          `${what ?? 'What it is divided by'} comes to 0 here, and nothing can be shared out among none. ` +
          'Give it another amount, or say when to divide: "… where it is more than 0, otherwise 0".',
        fixes: [],
      };
    case 'root-of-negative':
      return {
        code,
        headline: 'This is the square root of less than nothing.',
        spots,
        explanation:
          `${what ?? 'What the root is taken of'} comes to less than 0 here, ` +
          'and no amount squared is less than 0. Look at what is taken away from what.',
        fixes: [],
      };
    case 'nothing-left':
      return {
        code,
        headline: 'These shares leave nothing of the price.',
        spots,
        explanation: 'Each is a share of the answer. Together they have to stay under 100%.',
        fixes: [],
      };
    case 'piece-too-long':
      return {
        code,
        headline: 'The pieces are longer than the stock.',
        spots,
        explanation:
          'A piece has to be shorter than what it is cut from. If joints are allowed, buy it as one run.',
        fixes: [],
      };
    case 'no-row':
      return {
        code,
        headline: 'No row of the table fits.',
        spots,
        explanation: 'Nothing in the table meets all that is asked. Ask for less, or add a row.',
        fixes: [],
      };
    case 'too-large':
      return {
        code,
        headline: 'This figure has outgrown any job.',
        spots,
        explanation:
          'It has more than three hundred digits, before the point or after it. ' +
          'Look for an amount or a unit that was not meant, or something squared too often.',
        fixes: [],
      };
  }
}

/** No row of a look-up met this condition, of those that met the conditions before it. */
export function noRow(
  formula: LookUp,
  condition: number,
  text: string,
  shown: string | null,
  there: readonly string[],
  /** What to ask for there instead, each with the rest as it is asked. */
  instead: readonly string[],
): Report {
  const missed = formula.conditions[condition];
  if (!missed) throw new Error(`a look-up without its condition ${condition}`);
  const said = (one: LookUpCondition): string =>
    text.slice(one.columnSpot.from, one.value.spot.to).trim();
  const before = formula.conditions.slice(0, condition).map((one) => `"${said(one)}"`);
  const among = before.length === 0 ? '' : ` of those with ${before.join(' and ')}`;
  const value = shown === null || said(missed).includes(shown) ? '' : ` (${shown})`;
  const have = there.length === 0 ? '' : ` There ${missed.columnSay} is ${there.join(', ')}.`;
  const headline = `No row of ${formula.tableSay} fits.`;
  return {
    code: 'no-row',
    headline: headline.length < 60 ? headline : 'No row of the table fits.',
    spots: [{ from: missed.columnSpot.from, to: missed.value.spot.to }],
    explanation: `In "${formula.tableSay}" no row${among} has "${said(missed)}"${value}.${have} Ask for something that stands there.`,
    fixes: instead.map((words) => ({
      say: `Ask for ${words}`,
      formula: text.slice(0, missed.value.spot.from) + words + text.slice(missed.value.spot.to),
    })),
  };
}

/** `names`: of the cells from this one around to the one that needs it again, each needing the next. */
export function circle(names: readonly string[], spots: readonly Spot[]): Report {
  const [first = ''] = names;
  if (names.length === 1) {
    return {
      code: 'circle',
      headline: 'This cell needs itself.',
      spots,
      explanation:
        `${first} can't be worked before ${first} is. ` +
        'Give it a plain amount, or a formula without itself.',
      fixes: [],
    };
  }
  const others = names.length === 2 ? 'the other' : `the other ${counted(names.length - 1)}`;
  return {
    code: 'circle',
    headline: `These ${counted(names.length)} cells wait for one another.`,
    spots,
    explanation:
      `${shortened(names).join(' needs ')} needs ${first}. ` +
      `Give one of them a plain amount, or a formula without ${others}.`,
    fixes: [],
  };
}

/** `next`: the first cell on the way around; `many`: all that wait for one another. */
export function largeCircle(
  name: string,
  next: string,
  many: number,
  spots: readonly Spot[],
): Report {
  return {
    code: 'circle',
    headline: `These ${counted(many)} cells wait for one another.`,
    spots,
    explanation:
      `${name} needs ${next}, and ${next} in turn, over others, needs ${name}. ` +
      'Give one of them a plain amount, or a formula without the others.',
    fixes: [],
  };
}

/** A recap that adds the very line it stands in; `share` is the percent in it as typed, if there is one. */
export function ownTotal(
  name: string,
  share: string,
  spots: readonly Spot[],
  fixes: readonly Fix[],
): Report {
  return {
    code: 'circle',
    headline: 'This line is one of the lines that it adds up.',
    spots,
    explanation:
      `${name} can't be a share of a total that ${name} is in, as it stands. ` +
      `Take the other lines and write "for ${share} fee": that makes the fee its share of the whole.`,
    fixes,
  };
}

/** `text` is the whole formula. */
export function notYetACost(line: 'cost' | 'price', measure: Measure, text: string): Report {
  const isPrice = measure.kind === 'amount' && measure.dimension.money === 1;
  const what = describe(measure);
  const headline = `This is ${what}, not yet a ${line}.`;
  return {
    code: 'not-yet-a-cost',
    headline: headline.length < 60 ? headline : `This is not yet a ${line}.`,
    spots: [{ from: 0, to: text.length }],
    explanation:
      `A ${line} line ends in money alone; this one ends in ${what}. ` +
      (isPrice
        ? `Say how many: "… at ${text.length > 40 ? 'this price' : text}".`
        : 'Say what one of it costs, for example "… at $5 each".'),
    fixes: [],
  };
}

export function handOfAnotherKind(name: string, hand: Measure, worked: Measure): Report {
  const headline = `By hand this is ${describe(hand)}, by its formula ${describe(worked)}.`;
  return {
    code: 'by-hand-measure',
    headline: headline.length < 60 ? headline : 'The value by hand is of another kind.',
    spots: [],
    explanation:
      `By its formula ${name} is ${describe(worked)}. ` +
      `A value by hand stands in for it everywhere, so it has to be ${describe(worked)} too.`,
    fixes: [],
  };
}

/** The text by hand has a fault of its own; its spots lie in that text, not in the formula. */
export function handNotRead(fault: Report): Report {
  return {
    code: 'by-hand-unread',
    headline: "The value by hand can't be read.",
    spots: [],
    explanation: `${fault.headline} ${fault.explanation}`,
    fixes: [],
  };
}

const NUMBERS = [
  'none',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
];

function counted(many: number): string {
  return NUMBERS[many] ?? many.toLocaleString('en-US');
}

/** The most names that are said of a long way around. */
const MOST = 6;

function shortened(names: readonly string[]): readonly string[] {
  if (names.length <= MOST) return names;
  const between = names.length - MOST + 1;
  return [
    ...names.slice(0, 3),
    `something that, over ${counted(between)} more cells,`,
    ...names.slice(-2),
  ];
}
