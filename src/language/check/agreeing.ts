// Bringing values that are added, compared or chosen between to one measure: what they have in common,
// the finest scale among them, and bare numbers with the unit they take.
import {
  type Dimension,
  PLAIN,
  hardPart,
  isHard,
  withoutNounsAbove,
} from '../../quantity/dimension.ts';
import type { Form } from '../../quantity/form.ts';
import {
  type AmountMeasure,
  type Measure,
  NUMBER,
  type RateSides,
  SHARE,
  amountMeasure,
} from '../../quantity/measure.ts';
import type { Checked, Plan } from '../plan.ts';
import { bareNumber, isBareZero, takeUnit } from './bare-numbers.ts';
import { type Checking, refuse } from './checking.ts';
import { type Task, clash } from './clashes.ts';
import { fitEach, isCounting, labelsAreFree } from './counted.ts';
import { constant, finest, inScale, sameForm } from './holding.ts';

interface Agreement {
  readonly measure: Measure;
  /** The values, bare numbers with the unit they took. */
  readonly parts: readonly Checked[];
  /** Their plans, all in the scale of the measure. */
  readonly plans: readonly Plan[];
  /** The form they were all asked for in, if it is the same. */
  readonly showIn: Form | null;
}

/** One measure for all of them, or null after saying which two do not go together. */
export function agree(items: readonly Checked[], task: Task, checking: Checking): Agreement | null {
  const first = items[0];
  if (!first) throw new Error('Nothing to agree on');
  const settled = alreadyAgreed(items, first.holds.measure);
  if (settled) return settled;
  const odd = items.find(
    (c) => c.holds.measure.kind === 'text' || c.holds.measure.kind === 'yes-no',
  );
  if (odd) return agreeOnWords(items, odd, task, checking);
  const share = items.find((c) => c.holds.measure.kind === 'share');
  if (share) return agreeOnShares(items, share, task, checking);
  return agreeOnAmounts(items, task, checking);
}

/** The usual case, without another look: everything measures the very same and nothing is to be dropped. */
function alreadyAgreed(items: readonly Checked[], measure: Measure): Agreement | null {
  if (items.some((c) => c.holds.measure !== measure)) return null;
  if (measure.kind === 'amount' && withoutNounsAbove(measure.dimension) !== measure.dimension) {
    return null;
  }
  return { measure, parts: items, plans: items.map((c) => c.plan), showIn: commonForm(items) };
}

function agreeOnWords(
  items: readonly Checked[],
  odd: Checked,
  task: Task,
  checking: Checking,
): Agreement | null {
  const { measure } = odd.holds;
  const other = items.find((c) => c.holds.measure !== measure);
  if (other) return refuse(checking, clash(...inPlace(items, odd, other), task, checking));
  return { measure, parts: items, plans: items.map((c) => c.plan), showIn: null };
}

function agreeOnShares(
  items: readonly Checked[],
  share: Checked,
  task: Task,
  checking: Checking,
): Agreement | null {
  const other = items.find((c) => {
    const { measure } = c.holds;
    if (measure.kind === 'share' || isBareZero(c)) return false;
    const number = measure.kind === 'amount' && measure.dimension === PLAIN;
    return !(number && task.sharesBesideNumbers === 'yes');
  });
  if (other) return refuse(checking, clash(...inPlace(items, share, other), task, checking));
  return {
    measure: SHARE,
    parts: items,
    plans: items.map((c) => inScale(c, NUMBER)),
    showIn: null,
  };
}

function agreeOnAmounts(
  items: readonly Checked[],
  task: Task,
  checking: Checking,
): Agreement | null {
  const firm = items.filter((c) => bareNumber(c) === null);
  const leader = firm.find((c) => !isNumber(c)) ?? firm[0];
  if (!leader || isNumber(leader)) return together(items, PLAIN);
  let common = withoutNounsAbove(measured(leader).dimension);
  for (const item of firm) {
    const merged = merge(common, withoutNounsAbove(measured(item).dimension));
    if (!merged) return refuse(checking, clash(...inPlace(items, leader, item), task, checking));
    common = merged;
  }
  const parts: Checked[] = [];
  for (const item of items) {
    const bare = bareNumber(item);
    const taken = bare === null || bare.n === 0n ? item : takeUnit(item, leader, checking);
    if (!taken) return null;
    parts.push(taken);
  }
  return together(parts, common);
}

/** All in the finest scale. */
function together(parts: readonly Checked[], common: Dimension): Agreement {
  const firm = parts.filter((c) => !isBareZero(c));
  const measures = (firm.length > 0 ? firm : parts).map(measured);
  const fine = finest(measures);
  const measure = amountMeasure(common, fine.scale, commonRate(measures, fine, common));
  const plans = parts.map((c) => (isBareZero(c) ? constant(0) : inScale(c, measure)));
  return { measure, parts, plans, showIn: commonForm(firm) };
}

/** What two amounts have in common, or null. */
function merge(a: Dimension, b: Dimension): Dimension | null {
  if (a === b) return a;
  const fitted = fitEach(a, b);
  if (fitted === fitEach(b, a)) return fitted;
  if (isHard(a) && labelsAreFree(a) && hardPart(a) === hardPart(b)) return hardPart(a);
  return null;
}

/** A rate stays one among rates with the same two sides. */
function commonRate(
  measures: readonly AmountMeasure[],
  fine: AmountMeasure,
  common: Dimension,
): RateSides | null {
  const { rate } = fine;
  if (!rate || fine.dimension !== common) return null;
  const same = measures.every(
    (m) =>
      m.rate?.over.dimension === rate.over.dimension &&
      m.rate.under.dimension === rate.under.dimension,
  );
  return same ? rate : null;
}

function commonForm(items: readonly Checked[]): Form | null {
  const form = items[0]?.holds.showIn ?? null;
  return form && items.every((c) => sameForm(c.holds.showIn, form)) ? form : null;
}

/** A plain number; a slope is none, though nothing is left of its units. */
function isNumber(checked: Checked): boolean {
  const m = measured(checked);
  return m.dimension === PLAIN && m.rate === null;
}

function measured(checked: Checked): AmountMeasure {
  const { measure } = checked.holds;
  if (measure.kind !== 'amount') throw new Error(`${measure.kind} among amounts`);
  return measure;
}

/** Two of the items in the order they stand. */
function inPlace(items: readonly Checked[], a: Checked, b: Checked): [Checked, Checked] {
  return items.indexOf(a) < items.indexOf(b) ? [a, b] : [b, a];
}

/** Is it a count, things per thing, or a plain number, so that whole ones make sense? */
export function countsOrNumber(measure: AmountMeasure): boolean {
  return (measure.dimension === PLAIN && measure.rate === null) || isCounting(measure.dimension);
}
