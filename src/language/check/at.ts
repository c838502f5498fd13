// `L at R`: a quantity at a rate. It multiplies where the rate is per what L measures, and divides where
// L measures what the rate is of.
import {
  type Dimension,
  MONEY,
  PLAIN,
  TIME,
  VOLUME,
  AREA,
  hardPart,
  withoutNounsAbove,
} from '../../quantity/dimension.ts';
import { type AmountMeasure, amountMeasure, overMeasure, timesMeasure } from '../../quantity/measure.ts';
import { type Unit, unitByKey } from '../../quantity/units.ts';
import type { Fix } from '../../words/report.ts';
import type { Checked } from '../plan.ts';
import type { Binary } from '../tree.ts';
import { bareNumber, bareWords, formsToAsk, inForm, usualUnit } from './bare-numbers.ts';
import { type Checking, mended, refuse, spacedOut, typedAmount, typedAsOne } from './checking.ts';
import { asFix, bothSpots, notAnAmount } from './clashes.ts';
import {
  EACH,
  abovePart,
  belowPart,
  cancelEach,
  countedNoun,
  powerOf,
  withNouns,
  withoutCounts,
} from './counted.ts';
import { nounForm, unitForm, writtenIn } from './forms.ts';
import { made } from './holding.ts';
import { refusePerAnother } from './multiplying.ts';
import { capital, fact, facts, headline } from './saying.ts';

export function checkAt(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  const [a, b] = [left.holds.measure, right.holds.measure];
  const odd = [left, right].find((c) => c.holds.measure.kind === 'text' || c.holds.measure.kind === 'yes-no');
  if (odd) return refuse(checking, notAnAmount(odd, 'priced', checking));
  if (a.kind !== 'amount' || b.kind !== 'amount') return refuseShareAt(formula, left, right, checking);
  const sides = sidesOf(b);
  if (!sides) {
    if (withoutNounsAbove(b.dimension) === MONEY) return atPlainMoney(formula, left, right, checking);
    return askWhichWay(formula, left, right, checking);
  }
  if (bareNumber(left) !== null) {
    const taken = countTaken(left, right, sides, checking);
    return taken && checkAt(formula, taken, right, checking);
  }
  const way = wayOf(a, sides);
  if (!way) return refuseNeither(formula, left, right, sides, checking);
  const used = amountMeasure(way.left, a.scale);
  if (way.manner === 'at-divided') {
    const measure = overMeasure(used, b);
    const plan = { op: 'divide', left: left.plan, right: right.plan } as const;
    return made(formula, [left, right], tidied(measure, used.dimension, PLAIN), plan, { manner: way.manner });
  }
  const measure = tidied(timesMeasure(used, b), used.dimension, b.dimension);
  const plan = { op: 'multiply', left: left.plan, right: right.plan } as const;
  return made(formula, [left, right], measure, plan, { manner: way.manner });
}

interface Sides {
  readonly over: Dimension;
  readonly under: Dimension;
}

/** What a rate is of and per: as written, or for one that was worked out what stands above and below the line. */
function sidesOf(rate: AmountMeasure): Sides | null {
  if (rate.rate) return { over: rate.rate.over.dimension, under: rate.rate.under.dimension };
  const under = belowPart(rate.dimension);
  return under === PLAIN ? null : { over: abovePart(rate.dimension), under };
}

interface WayAt {
  readonly manner: 'at-multiplied' | 'at-divided';
  /** The left side with the counts dropped that had to be dropped. */
  readonly left: Dimension;
}

/**
 * L is compared with its counts first, then without those beside a hard unit, and then by what stands
 * above its own line (8 hours per post at $50 per hour).
 */
function wayOf(left: AmountMeasure, sides: Sides): WayAt | null {
  const full = left.dimension;
  const dropped = withoutNounsAbove(full);
  const tries: readonly (readonly [Dimension, Dimension])[] = [
    [full, full],
    [dropped, dropped],
    [abovePart(full), full],
    [withoutCounts(abovePart(full)), withoutCounts(full)],
  ];
  for (const [compared, used] of tries) {
    if (fits(compared, sides.under)) return { manner: 'at-multiplied', left: used };
    if (compared === sides.over && compared !== PLAIN) return { manner: 'at-divided', left: used };
  }
  return null;
}

/** The same thing; `each` is per whatever is counted, or a plain number of them. */
function fits(left: Dimension, under: Dimension): boolean {
  if (left === under) return left !== PLAIN;
  if (countedNoun(under) === EACH) return left === PLAIN || countedNoun(left) !== null;
  return powerOf(under, EACH) === 1 && left === hardPart(under) && left !== PLAIN;
}

/** Every `each` done with. */
function tidied(measure: AmountMeasure, left: Dimension, right: Dimension): AmountMeasure {
  const cancelled = cancelEach(measure.dimension, left, right);
  if (powerOf(cancelled, EACH) === 0) return amountMeasure(cancelled, measure.scale);
  const nouns = cancelled.nouns.filter((n) => n.noun !== EACH);
  return amountMeasure(withNouns(cancelled, nouns), measure.scale);
}

/** A bare number before `at` takes what the rate is per, when that is a thing or a time; else it is asked. */
function countTaken(
  left: Checked,
  rate: Checked,
  sides: Sides,
  checking: Checking,
): Checked | null {
  const noun = countedNoun(sides.under);
  if (noun === EACH) return { ...left, holds: { ...left.holds, measure: amountMeasure(sides.under) } };
  if (noun !== null) return inForm(left, nounForm(noun), checking);
  if (sides.under === TIME) return inForm(left, unitForm(timeUnit(rate)), checking);
  const number = bareWords(left, checking);
  const per: Checked = { ...rate, holds: { ...rate.holds, showIn: null, measure: amountMeasure(sides.under) } };
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

function timeUnit(rate: Checked): Unit {
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

/** Plain money after `at` means each after a count; else per what? */
function atPlainMoney(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  const [a, b] = [left.holds.measure, right.holds.measure];
  if (a.kind !== 'amount' || b.kind !== 'amount') throw new Error('Money at no amount');
  const noun = countedNoun(a.dimension);
  if (noun !== null) {
    const plan = { op: 'multiply', left: left.plan, right: right.plan } as const;
    return made(formula, [left, right], amountMeasure(MONEY, a.scale.mul(b.scale)), plan, {
      manner: 'at-multiplied',
    });
  }
  const price = typedAmount(checking, right.formula);
  const unit = usualUnit(left);
  const hard = hardPart(a.dimension);
  const written = right.formula.kind === 'amount';
  const fixes: Fix[] = [];
  const asked = hard === PLAIN ? 'each' : unit ? `per ${unit.one}` : null;
  if (written && asked) {
    fixes.push(mended(checking, `Write ${price} ${asked}`, { spot: right.formula.spot, by: `${price} ${asked}` }));
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
function refuseShareAt(formula: Binary, left: Checked, right: Checked, checking: Checking): null {
  const [a, b] = [typedAsOne(checking, left.formula), typedAsOne(checking, right.formula)];
  const share = right.holds.measure.kind === 'share' ? b : a;
  const whole = share === b ? a : b;
  return refuse(checking, {
    code: 'two-readings',
    headline: headline(`Is that ${share} of it, or ${share} more?`, 'A share of it, or that much more?'),
    spots: bothSpots(left, right),
    explanation: `${facts(checking, left, right)} "At" goes with a rate such as a price per bag. With a share, say which is meant.`,
    fixes: [
      mended(checking, `${share} of ${whole}`, { spot: formula.spot, by: `(${share} times ${whole})` }),
      mended(checking, `${whole} plus ${share}`, { spot: formula.spot, by: `(${whole} plus ${share})` }),
    ],
  });
}

function refuseNeither(
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
  if (counted !== null && per !== null) return refusePerAnother(counted, per, left, right, checking);
  if (a.dimension === PLAIN) return askHowManyAt(left, right, sides, checking);
  if (isPerLooseYard(left, right, checking)) return null;
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

/** `volume at $145 per yard`: per cubic yard? Reports it if so. */
function isPerLooseYard(left: Checked, right: Checked, checking: Checking): boolean {
  const a = left.holds.measure;
  const hard = a.kind === 'amount' ? hardPart(a.dimension) : PLAIN;
  const word = hard === VOLUME ? 'cubic yard' : hard === AREA ? 'square yard' : null;
  if (word === null || right.formula.kind !== 'amount') return false;
  const price = typedAmount(checking, right.formula);
  const by = price.replace(/\b(yards?|yds?)\b\.?/i, word);
  if (by === price) return false;
  refuse(checking, {
    code: 'per-which-yard',
    headline: `Per ${word}?`,
    spots: [right.formula.spot],
    explanation: `${facts(checking, left, right)} A yard is a length.`,
    fixes: [mended(checking, `Write ${by}`, { spot: right.formula.spot, by })],
  });
  return true;
}

/** Neither multiplies nor divides by the rule: both readings, each with its own word. */
function askWhichWay(formula: Binary, left: Checked, right: Checked, checking: Checking): null {
  const ways = ['times', 'divided by'] as const;
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
