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

const ELSEWHERE = {
  row: {
    headline: 'A range stands in a cell of its own.',
    explanation:
      'A table works with one value in each of its cells. Take the plain value, or give the range a cell of its own and write the name of that cell here.',
  },
  'by hand': {
    headline: 'A value set by hand is one amount.',
    explanation: 'It stands in for the worked one everywhere. Take the plain value of the range.',
  },
} as const;

/** The reading where a range may not stand: refused, with its plain value offered. */
export function refusingRange(
  reading: Reading,
  text: string,
  place: keyof typeof ELSEWHERE,
): Reading {
  const { tree } = reading;
  if (tree.kind !== 'range') return reading;
  const { from, to } = tree.spot;
  const problem: Report = {
    code: 'range-not-here',
    ...ELSEWHERE[place],
    spots: [{ from, to }],
    fixes: [
      {
        say: 'Take the plain value',
        formula: text.slice(0, from) + tree.plain + text.slice(to),
      },
    ],
  };
  return { ...reading, checked: null, notes: [], problems: [problem] };
}
