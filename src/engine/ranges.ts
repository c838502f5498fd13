// Ranges of givens: what is kept of one for whoever asks how sure a value is, and where none may stand.
import type { Checked } from '../language/plan.ts';
import type { Reading } from '../language/reading.ts';
import { type Dec, fromFraction } from '../quantity/decimal.ts';
import type { Holds } from '../quantity/form.ts';
import type { Report } from '../words/report.ts';

/** An end of a range: its exact amount, and in what it was written. */
export interface RangeEnd {
  readonly value: Dec;
  readonly holds: Holds;
}

/** A given's range. What reads the given sees its plain value and nothing of this. */
export interface GivenRange {
  readonly best: RangeEnd;
  readonly worst: RangeEnd;
  /** The plain value was written first, or is the middle of two ends: then it is no likelier than what lies beside it. */
  readonly plain: 'first' | 'middle';
}

/** The range that a checked formula is, or null. */
export function rangeOf(checked: Checked | null): GivenRange | null {
  if (checked?.formula.kind !== 'range') return null;
  const [best, worst] = checked.parts.slice(-2).map(endOf);
  if (!best || !worst) throw new Error('A range without its ends');
  return { best, worst, plain: checked.formula.first ? 'first' : 'middle' };
}

function endOf({ plan, holds }: Checked): RangeEnd {
  if (plan.op !== 'constant') throw new Error('An end of a range that has to be worked');
  return { value: fromFraction(plan.value), holds };
}

/** Places in which a text stands that is no given of its own. */
export type RangePlace = 'row' | 'column' | 'by hand';

const ELSEWHERE = {
  row: {
    code: 'range-in-row',
    headline: 'A range in a row says which end is best.',
    explanation:
      'Two numbers with a dash or "to" between them may be a size, a date or a part as well. Write what it is at best and at worst, or take the plain value.',
  },
  column: {
    code: 'range-not-here',
    headline: 'A column works one value in every row.',
    explanation:
      'Write the range in the rows that have one, or give it a cell of its own and write the name of that cell here. Or take the plain value.',
  },
  'by hand': {
    code: 'range-not-here',
    headline: 'A value set by hand is one amount.',
    explanation: 'It stands in for the worked one everywhere. Take the plain value of the range.',
  },
} as const;

/** The reading where a range may not stand as it is: refused, with its plain value offered. */
export function refusingRange(reading: Reading, text: string, place: RangePlace): Reading {
  const { tree } = reading;
  if (tree.kind !== 'range') return reading;
  const inWords = saysWhichEnd(text);
  if (place === 'row' && inWords) return reading;
  const { from, to } = tree.spot;
  const mended = (say: string, by: string): Report['fixes'][number] => ({
    say,
    formula: text.slice(0, from) + by + text.slice(to),
  });
  const asRange = place === 'row' && reading.checked ? reading.sentence : null;
  const problem: Report = {
    ...ELSEWHERE[place],
    spots: [{ from, to }],
    fixes: [
      ...(asRange === null ? [] : [mended('From the one to the other', asRange)]),
      mended('Take the plain value', tree.plain),
    ],
  };
  return { ...reading, checked: null, notes: [], problems: [problem] };
}

/** Is it said in words which end is best, or taken from which is less? */
export function saysWhichEnd(text: string): boolean {
  return /\b(?:best|worst)\b/i.test(text);
}
