// What is asked where a quantity `at` a rate can't be worked: per what, of what, which way.
import { type Dimension, MONEY, PLAIN, TIME } from '../../quantity/dimension.ts';
import { amountMeasure } from '../../quantity/measure.ts';
import { type Unit, unitByKey } from '../../quantity/units.ts';
import type { Fix } from '../../words/report.ts';
import type { Checked } from '../plan.ts';
import type { Binary } from '../tree.ts';
import { bareNumber, bareWords, formsToAsk, usualUnit } from './bare-numbers.ts';
import { type Checking, mended, refuse, spacedOut, typedAmount, typedAsOne } from './checking.ts';
import { asFix, bothSpots } from './clashes.ts';
import { countedNoun } from './counted.ts';
import { unitForm, writtenIn } from './forms.ts';
import { asksWhichYard } from './loose-yards.ts';
import { refusePerAnother } from './multiplying.ts';
import { productOf, quotientOf } from './products.ts';
import type { Sides } from './rate-sides.ts';
import { capital, fact, facts, headline } from './saying.ts';

/** A bare number before a rate per sq ft: the unit of what? */
export function askUnitBefore(
  left: Checked,
  rate: Checked,
  sides: Sides,
  checking: Checking,
): null {
  const number = bareWords(left, checking);
  const per: Checked = {
    ...rate,
    holds: { ...rate.holds, showIn: null, measure: amountMeasure(sides.under) },
  };
  const choices = unitsPer(rate, per).map((form) => writtenIn(number, form, checking.nouns));
  return refuse(checking, {
    code: 'bare-number',
    headline: headline(
      choices.length > 0 ? `Is that ${choices.join(' or ')}?` : `${number} of what?`,
      'This number needs its unit.',
    ),
    spots: [left.formula.spot],
    explanation: `${capital(fact(checking, rate))}. Before it the number ${number} needs its unit.`,
    fixes: choices.map((by) => mended(checking, `Write ${by}`, { spot: left.formula.spot, by })),
  });
}

export function timeUnit(rate: Checked): Unit {
  const term = rate.holds.showIn?.under[0];
  return term?.kind === 'unit' && term.unit.dimension === TIME ? term.unit : unitByKey('hour');
}

/** The unit the rate was written per, or what one would say. */
function unitsPer(rate: Checked, per: Checked): ReturnType<typeof formsToAsk> {
  const under = rate.holds.showIn?.under ?? [];
  const only = under[0];
  if (under.length === 1 && only?.kind === 'unit') return [unitForm(only.unit)];
  return formsToAsk(per);
}

/** Plain money after what is no count: per what? */
export function askPerWhat(
  formula: Binary,
  left: Checked,
  right: Checked,
  hard: Dimension,
  checking: Checking,
): null {
  if (hard === MONEY) return askWhichWay(formula, left, right, checking);
  const price = typedAmount(checking, right.formula);
  const unit = usualUnit(left);
  const written = right.formula.kind === 'amount';
  const fixes: Fix[] = [];
  const asked = hard === PLAIN ? 'each' : unit ? `per ${unit.one}` : null;
  if (written && asked) {
    fixes.push(
      mended(checking, `Write ${price} ${asked}`, {
        spot: right.formula.spot,
        by: `${price} ${asked}`,
      }),
    );
  } else if (unit && hard !== PLAIN) {
    const by = `(${typedAsOne(checking, right.formula)} divided by 1 ${unit.one})`;
    fixes.push(mended(checking, `Take it per ${unit.one}`, { spot: right.formula.spot, by }));
  } else if (hard === PLAIN) {
    const by = spacedOut(checking, formula.opSpot, 'times');
    fixes.push(mended(checking, 'Multiply them', { spot: formula.opSpot, by }));
  }
  if (bareNumber(left) !== null && written) {
    const number = bareWords(left, checking);
    const hours = `${number} hours at ${price} per hour`;
    fixes.push(
      mended(
        checking,
        `Write ${hours}`,
        { spot: left.formula.spot, by: `${number} hours` },
        { spot: right.formula.spot, by: `${price} per hour` },
      ),
    );
  }
  return refuse(checking, {
    code: 'price-per-what',
    headline: headline(`${price} ${asked ?? 'per what'}?`, 'A price per what?'),
    spots: [right.formula.spot],
    explanation: `${facts(checking, left, right)} After "at" say what the price is for: each, per hour, per sq ft.`,
    fixes,
  });
}

/** 10% at $50, $1,000 at 10%. */
export function refuseShareAt(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): null {
  const [a, b] = [typedAsOne(checking, left.formula), typedAsOne(checking, right.formula)];
  const share = right.holds.measure.kind === 'share' ? b : a;
  const whole = share === b ? a : b;
  return refuse(checking, {
    code: 'two-readings',
    headline: headline(
      `Is that ${share} of it, or ${share} more?`,
      'A share of it, or that much more?',
    ),
    spots: bothSpots(left, right),
    explanation: `${facts(checking, left, right)} "At" goes with a rate such as a price per bag. With a share, say which is meant.`,
    fixes: [
      mended(checking, `${share} of ${whole}`, {
        spot: formula.spot,
        by: `(${share} times ${whole})`,
      }),
      mended(checking, `${whole} plus ${share}`, {
        spot: formula.spot,
        by: `(${whole} plus ${share})`,
      }),
    ],
  });
}

export function refuseNeither(
  formula: Binary,
  left: Checked,
  right: Checked,
  sides: Sides,
  checking: Checking,
): null {
  const a = left.holds.measure;
  if (a.kind !== 'amount') throw new Error('At with no amount');
  const counted = countedNoun(a.dimension);
  const per = countedNoun(sides.under);
  if (counted !== null && per !== null)
    return refusePerAnother(counted, per, left, right, checking);
  if (a.dimension === PLAIN) return askHowManyAt(left, right, sides, checking);
  if (asksWhichYard(right, left, checking)) return null;
  return askWhichWay(formula, left, right, checking);
}

/** A number that was worked out, before a rate: it takes no unit by itself. */
function askHowManyAt(left: Checked, right: Checked, sides: Sides, checking: Checking): null {
  const noun = countedNoun(sides.under);
  const unit = sides.under === TIME ? timeUnit(right) : null;
  const fixes = noun
    ? [asFix(left, noun, checking)]
    : unit
      ? [
          mended(checking, `Count it in ${unit.many}`, {
            spot: left.formula.spot,
            by: `(${typedAsOne(checking, left.formula)} times 1 ${unit.one})`,
          }),
        ]
      : [];
  return refuse(checking, {
    code: 'bare-number',
    headline: headline(
      noun ? `How many ${checking.nouns.many(noun)} is that?` : 'A plain number of what?',
    ),
    spots: [left.formula.spot],
    explanation: `${facts(checking, left, right)} A number that was worked out takes no unit by itself: say what it counts.`,
    fixes,
  });
}

/** Neither multiplies nor divides by the rule: both readings, each with its own word. */
export function askWhichWay(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): null {
  const [a, b] = [left.holds.measure, right.holds.measure];
  const amounts = a.kind === 'amount' && b.kind === 'amount';
  const ways: string[] = [];
  if (amounts && productOf(a, b).kind === 'fits') ways.push('times');
  if (amounts && quotientOf(a, b).kind === 'fits') ways.push('divided by');
  return refuse(checking, {
    code: 'two-readings',
    headline: headline('"At" needs a rate per what stands before it.'),
    spots: bothSpots(left, right),
    explanation: `${facts(checking, left, right)} "At" multiplies when the rate is per what is measured before it, and divides when it is a rate of that. Here it is neither; say which is meant.`,
    fixes: ways.map((word) =>
      mended(checking, `Write "${word}"`, {
        spot: formula.opSpot,
        by: spacedOut(checking, formula.opSpot, word),
      }),
    ),
  });
}
