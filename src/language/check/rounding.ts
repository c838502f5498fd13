// Rounding: to whole things, or to a step; without a step only what is counted can be rounded.
import { formMeasure } from '../../quantity/amount.ts';
import {
  AREA,
  LENGTH,
  MASS,
  MONEY,
  PLAIN,
  TIME,
  VOLUME,
  countOf,
  hardPart,
  overDimension,
  withoutNounsAbove,
} from '../../quantity/dimension.ts';
import type { Form } from '../../quantity/form.ts';
import { type AmountMeasure, NUMBER, SHARE, amountMeasure } from '../../quantity/measure.ts';
import { unitByKey } from '../../quantity/units.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Rounded } from '../tree.ts';
import { countsOrNumber } from './agreeing.ts';
import { bareNumber, formsToAsk, takeUnit } from './bare-numbers.ts';
import { type Checking, mended, noted, refuse, typedAmount } from './checking.ts';
import { bothSpots, notAnAmount } from './clashes.ts';
import { labelsAreFree } from './counted.ts';
import { unitForm, writtenIn } from './forms.ts';
import { amountOf, finest, inScale, made, scaled } from './holding.ts';
import { capital, called, fact, facts, headline, whatItIs } from './saying.ts';

export function checkRounded(
  formula: Rounded,
  of: Checked,
  step: Checked | null,
  checking: Checking,
): Checked | null {
  const { measure } = of.holds;
  if (measure.kind !== 'amount' && measure.kind !== 'share') {
    return refuse(checking, notAnAmount(of, 'rounded', checking));
  }
  if (!step) {
    if (measure.kind === 'share' || !countsOrNumber(measure))
      return askForStep(formula, of, checking);
    return roundedToWhole(formula, of, measure);
  }
  if (measure.kind === 'share') return roundedShare(formula, of, step, checking);
  const things = countedStep(step);
  if (measure.dimension === PLAIN && things) {
    // `rounded up to whole boards`: a plain number becomes that count, and the reading says so.
    noted(checking, `The answer counts ${checking.nouns.many(things.noun)}.`);
    const plan: Plan = {
      op: 'round',
      way: formula.way,
      of: inScale(of, things.count),
      step: step.plan,
    };
    return made(formula, [of, step], things.count, plan);
  }
  return roundedToStep(formula, of, measure, step, checking);
}

/** Whole things: counted one by one, so in the scale of one. */
function roundedToWhole(formula: Rounded, of: Checked, measure: AmountMeasure): Checked {
  const whole = amountMeasure(measure.dimension);
  const plan: Plan = { op: 'round', way: formula.way, of: inScale(of, whole), step: null };
  return made(formula, [of], whole, plan, { showIn: of.holds.showIn, written: of.holds.written });
}

/** A step that counts one kind of thing: `1 board`. */
function countedStep(step: Checked): { noun: string; count: AmountMeasure } | null {
  const { measure } = step.holds;
  const noun = measure.kind === 'amount' ? measure.dimension.nouns[0]?.noun : undefined;
  if (measure.kind !== 'amount' || noun === undefined || noun === 'each') return null;
  return measure.dimension === countOf(noun) ? { noun, count: amountMeasure(countOf(noun)) } : null;
}

function roundedShare(
  formula: Rounded,
  of: Checked,
  step: Checked,
  checking: Checking,
): Checked | null {
  if (step.holds.measure.kind !== 'share') return refuseStep(of, step, checking);
  const plan: Plan = { op: 'round', way: formula.way, of: of.plan, step: step.plan };
  return made(formula, [of, step], SHARE, plan);
}

function roundedToStep(
  formula: Rounded,
  of: Checked,
  measure: AmountMeasure,
  step: Checked,
  checking: Checking,
): Checked | null {
  const settled = settledStep(of, measure, step, checking);
  if (!settled) return null;
  const fine = finest([measure, amountOf(settled)]);
  const rate = fine === measure ? measure.rate : null;
  const result = amountMeasure(withoutNounsAbove(measure.dimension), fine.scale, rate);
  const plan: Plan = {
    op: 'round',
    way: formula.way,
    of: inScale(of, result),
    step: inScale(settled, result),
  };
  return made(formula, [of, settled], result, plan, {
    showIn: keptForm(of, settled) ?? stepForm(settled) ?? of.holds.showIn,
  });
}

/** The step as a step of what is rounded, or null after saying why it is none. */
function settledStep(
  of: Checked,
  measure: AmountMeasure,
  step: Checked,
  checking: Checking,
): Checked | null {
  const kept = withoutNounsAbove(measure.dimension);
  if (bareNumber(step) !== null && kept !== PLAIN) return takeUnit(step, of, checking);
  const to = step.holds.measure;
  if (to.kind !== 'amount') return refuseStep(of, step, checking);
  const steps = withoutNounsAbove(to.dimension);
  if (steps === kept) return step;
  if (labelsAreFree(kept) && hardPart(kept) === hardPart(steps)) return step;
  return (
    yardStep(kept, step, to, checking) ??
    stepOfRate(measure, step, to) ??
    refuseStep(of, step, checking)
  );
}

/** `rounded down to the next 1/4 yd` on a volume: a cubic yard. */
function yardStep(
  kept: AmountMeasure['dimension'],
  step: Checked,
  to: AmountMeasure,
  checking: Checking,
): Checked | null {
  const hard = hardPart(kept);
  const key = hard === VOLUME ? 'cubic yd' : hard === AREA ? 'sq yd' : null;
  const yard = unitByKey('yd');
  const loose =
    to.dimension === LENGTH &&
    step.holds.written.length === 1 &&
    step.holds.written[0] === yard.key;
  if (key === null || !loose || step.formula.kind !== 'amount') return null;
  const words = typedAmount(checking, step.formula);
  const unit = unitByKey(key);
  const form = unitForm(unit);
  const number = words.replace(/\s*\b(yards?|yds?)\b\.?$/i, '');
  const note = noted(checking, `${words} is read as ${writtenIn(number, form, checking.nouns)}.`);
  return {
    ...step,
    holds: { measure: formMeasure(form), showIn: form, written: [key] },
    plan: scaled(step.plan, to.scale.div(yard.scale)),
    note,
  };
}

/** `$4.236 per sq ft rounded to the nearest cent`: a step of what the rate is of. */
function stepOfRate(measure: AmountMeasure, step: Checked, to: AmountMeasure): Checked | null {
  const { rate } = measure;
  if (!rate || rate.over.dimension !== to.dimension) return null;
  const stepped = amountMeasure(measure.dimension, to.scale.div(rate.under.scale));
  return { ...step, holds: { ...step.holds, measure: stepped, showIn: null, written: [] } };
}

/** `in metres, to the nearest centimetre` is still asked for in metres: a metric step is a decimal of them. */
function keptForm(of: Checked, step: Checked): Form | null {
  if (of.formula.kind !== 'in-units') return null;
  const { showIn } = of.holds;
  const [asked, stepped] = [showIn, stepForm(step)].map((form) => {
    const [term, ...more] = form?.over ?? [];
    return term?.kind === 'unit' && more.length === 0 ? term.unit : null;
  });
  return asked?.measures === 'metric' && stepped?.measures === 'metric' ? showIn : null;
}

/** The form to show the result in: that of the step, where its unit is plain to see. Money stays money. */
function stepForm(step: Checked): Form | null {
  const { measure, showIn, written } = step.holds;
  if (measure.kind !== 'amount' || measure.dimension === MONEY) return null;
  if (showIn) return showIn;
  const unit = written.length === 1 && written[0] !== undefined ? unitByKey(written[0]) : null;
  return unit && unit.dimension === hardPart(measure.dimension) ? unitForm(unit) : null;
}

function refuseStep(of: Checked, step: Checked, checking: Checking): null {
  const words = typedAmount(checking, step.formula);
  const percent = of.holds.measure.kind === 'share' && bareNumber(step) !== null;
  const example = usualStep(of, 'nearest', checking);
  const by = percent ? `${words}%` : (example ?? perSame(of, step, words, checking));
  return refuse(checking, {
    code: 'wrong-rounding-step',
    headline: headline(
      `${whatItIs(of)} can't be rounded to ${whatItIs(step)}.`,
      `It can't be rounded to ${words}.`,
      "It can't be rounded to that step.",
    ),
    spots: bothSpots(of, step),
    explanation: `${facts(checking, of, step)} The step has to measure the same as what is rounded.`,
    fixes: by ? [mended(checking, `Write ${by}`, { spot: step.formula.spot, by })] : [],
  });
}

/** `$3,950 / 144 ft, to the nearest 5 cents`: so much for each of what it is divided by. */
function perSame(of: Checked, step: Checked, words: string, checking: Checking): string | null {
  const { measure, written } = of.holds;
  if (measure.kind !== 'amount' || step.holds.measure.kind !== 'amount') return null;
  if (step.holds.measure.dimension !== MONEY || step.formula.kind !== 'amount') return null;
  const under = overDimension(MONEY, measure.dimension);
  const unit = written.map(unitByKey).find(({ dimension }) => dimension === under);
  if (unit) return `${words} per ${unit.one}`;
  const below = of.formula.kind === 'binary' && of.formula.op === 'over' ? of.parts[1] : undefined;
  const [form] = below ? formsToAsk(below) : [];
  return form ? `${words} per ${writtenIn('1', form, checking.nouns).replace(/^1 /, '')}` : null;
}

function askForStep(formula: Rounded, of: Checked, checking: Checking): null {
  const step = usualStep(of, formula.way, checking);
  const phrase = { up: 'rounded up', down: 'rounded down', nearest: 'rounded' }[formula.way];
  const to = formula.way === 'nearest' ? 'to the nearest' : 'to the next';
  const by = `${phrase} ${to} ${step}`;
  return refuse(checking, {
    code: 'no-rounding-step',
    headline: `${capital(phrase)} to what?`,
    spots: [formula.opSpot],
    explanation: `${capital(fact(checking, of))}, and ${of.formula.kind === 'name' ? called(checking, of) : 'it'} can be rounded to many steps. ${step ? `Say one, for example "${to} ${step}".` : 'Say which.'}`,
    fixes: step ? [mended(checking, capital(by), { spot: formula.opSpot, by })] : [],
  });
}

/** A step that one might want. */
function usualStep(of: Checked, way: Rounded['way'], checking: Checking): string | null {
  const { measure } = of.holds;
  if (measure.kind === 'share') return '1%';
  if (measure.kind !== 'amount') return null;
  const kept = withoutNounsAbove(measure.dimension);
  const hard = hardPart(kept);
  if (kept === MONEY || measure.rate?.over.dimension === MONEY) {
    return way === 'nearest' ? 'cent' : kept === MONEY ? '$1' : '$0.01';
  }
  const asked = formsToAsk(of)[0];
  if (hard !== LENGTH && hard !== AREA && hard !== VOLUME && hard !== MASS && hard !== TIME) {
    return asked ? writtenIn('1', asked, checking.nouns) : measure === NUMBER ? '1' : null;
  }
  if (hard === LENGTH && way === 'nearest' && asked?.over[0]?.kind === 'unit') {
    return asked.over[0].unit.measures === 'metric' ? '1 cm' : '1/16 in';
  }
  if (kept === TIME) return '1/4 hour';
  return asked ? writtenIn('1', asked, checking.nouns) : null;
}
