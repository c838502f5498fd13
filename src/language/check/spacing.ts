// Spacing: posts every 8 ft, the fewest balusters under a gap, the even gap between them.
import { LENGTH, PLAIN, countOf } from '../../quantity/dimension.ts';
import { type AmountMeasure, NUMBER, amountMeasure } from '../../quantity/measure.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Ends, EvenGap, Fewest, Spaced } from '../tree.ts';
import { agree, countsOrNumber } from './agreeing.ts';
import { type Checking, refuse } from './checking.ts';
import { asHowMany } from './bare-numbers.ts';
import { COMPARING } from './clashes.ts';
import { countedNoun } from './counted.ts';
import { constant, inScale, made, restsOn } from './holding.ts';
import { areLengths } from './lengths.ts';
import { capital, fact } from './saying.ts';

/** One more than the spaces at both ends, as many at one end or in a loop, one fewer at neither. */
const BEYOND_SPACES: Readonly<Record<Ends, number>> = { both: 1, one: 0, loop: 0, neither: -1 };

/** `joists every 16 in along 12 ft`. */
export function checkSpaced(
  formula: Spaced,
  spacing: Checked,
  along: Checked,
  checking: Checking,
): Checked | null {
  const agreed = lengthsOf([spacing, along], 'A spacing and its run', checking);
  const [step, run] = agreed?.plans ?? [];
  if (!agreed || !step || !run) return null;
  const spaces: Plan = { op: 'round', way: 'up', of: over(run, step), step: null };
  const beyond = BEYOND_SPACES[formula.ends];
  const count = beyond === 0 ? spaces : plus(spaces, constant(beyond));
  return made(formula, agreed.parts, amountMeasure(countOf(formula.noun)), neverBelowNone(count));
}

/**
 * The smallest n with (across − n × width) ÷ (n + 1) < gap, that is n > (across − gap) ÷ (width + gap);
 * with `at most` n may be equal to that.
 */
export function checkFewest(
  formula: Fewest,
  width: Checked,
  across: Checked,
  gap: Checked,
  checking: Checking,
): Checked | null {
  const agreed = lengthsOf([width, across, gap], 'A width, a run and a gap', checking);
  const [each, run, most] = agreed?.plans ?? [];
  if (!agreed || !each || !run || !most) return null;
  const bound = over(minus(run, most), plus(each, most));
  const count: Plan =
    formula.gapRelation === 'under'
      ? plus({ op: 'round', way: 'down', of: bound, step: null }, constant(1))
      : { op: 'round', way: 'up', of: bound, step: null };
  return made(formula, agreed.parts, amountMeasure(countOf(formula.noun)), neverBelowNone(count));
}

/** (across − n × width) ÷ (n + 1). */
export function checkEvenGap(
  formula: EvenGap,
  count: Checked,
  width: Checked,
  across: Checked,
  checking: Checking,
): Checked | null {
  const { measure } = count.holds;
  const counts =
    measure.kind === 'amount' &&
    countsOrNumber(measure) &&
    (measure.dimension === PLAIN || countedNoun(measure.dimension) !== null);
  if (!counts) {
    return refuse(checking, {
      code: 'not-a-count',
      headline: 'An even gap for how many?',
      spots: [count.formula.spot],
      explanation: `${capital(fact(checking, count))}. After "for" say how many stand in the run.`,
      fixes: asHowMany(count, checking),
    });
  }
  const agreed = lengthsOf([width, across], 'A width and a run', checking);
  const [each, run] = agreed?.plans ?? [];
  if (!agreed || !each || !run) return null;
  const many = inScale(count, NUMBER);
  const left = minus(run, { op: 'multiply', left: many, right: each });
  const plan = over(left, plus(many, constant(1)));
  return made(formula, [count, ...agreed.parts], agreed.measure, plan, {
    written: restsOn(agreed.parts),
  });
}

interface Lengths {
  readonly measure: AmountMeasure;
  readonly parts: readonly Checked[];
  readonly plans: readonly Plan[];
}

function lengthsOf(items: readonly Checked[], what: string, checking: Checking): Lengths | null {
  if (!areLengths(items, what, checking)) return null;
  const agreed = agree(items, COMPARING, checking);
  if (!agreed || agreed.measure.kind !== 'amount') return null;
  return { ...agreed, measure: amountMeasure(LENGTH, agreed.measure.scale) };
}

function neverBelowNone(count: Plan): Plan {
  return { op: 'greatest', items: [constant(0), count] };
}

function plus(left: Plan, right: Plan): Plan {
  return { op: 'add', left, right };
}

function minus(left: Plan, right: Plan): Plan {
  return { op: 'subtract', left, right };
}

function over(left: Plan, right: Plan): Plan {
  return { op: 'divide', left, right };
}
