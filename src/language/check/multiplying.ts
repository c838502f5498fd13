// Times, by and over: what the units come to, and what counted things, bare numbers and shares allow.
import { type AmountMeasure, type Measure, NUMBER, SHARE } from '../../quantity/measure.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Binary, Formula } from '../tree.ts';
import { asksAboutYards } from './by-27.ts';
import { asksOverAt } from './over-at.ts';
import { askByHow, isNumberByLength } from './by-lengths.ts';
import { type Checking, mended, refuse, spacedOut, typedAmount, typedAsOne } from './checking.ts';
import { asFix, bothSpots, notAnAmount } from './clashes.ts';
import { countedNoun } from './counted.ts';
import { inScale, made } from './holding.ts';
import { asksWhichYard, asksYardOfRate } from './loose-yards.ts';
import { type Product, productOf, quotientOf } from './products.ts';
import { askWhichDimension } from './which-dimension.ts';
import { called, capital, facts, headline } from './saying.ts';

/** `times`, `by` and `x`. */
export function checkTimes(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  if (!areAmounts(left, right, 'multiplied', checking)) return null;
  if (formula.op === 'by' && isNumberByLength(left, right)) {
    return askByHow(formula, left, right, checking);
  }
  if (asksWhichYard(left, right, checking) || asksWhichYard(right, left, checking)) return null;
  const [a, b] = [left.holds.measure, right.holds.measure];
  const measure =
    a.kind === 'amount' && b.kind === 'amount'
      ? fitting(productOf(a, b), formula, left, right, checking)
      : shareTimes(a, b);
  if (!measure) return null;
  const side = (c: Checked): Plan => (measure === SHARE ? inScale(c, NUMBER) : c.plan);
  const plan: Plan = { op: 'multiply', left: side(left), right: side(right) };
  return made(formula, [left, right], measure, plan, {
    showIn: isFactor(b) ? left.holds.showIn : isFactor(a) ? right.holds.showIn : null,
  });
}

/** A share times a number, or a share of a share, is a share; of anything else it is so much of it. */
function shareTimes(a: Measure, b: Measure): Measure {
  const other = a.kind === 'share' ? b : a;
  return other.kind === 'amount' && !isPlain(other) ? other : SHARE;
}

/** `over`, `divided by`, `÷`, `per`. */
export function checkOver(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  if (!areAmounts(left, right, 'divided', checking)) return null;
  if (asksAboutYards(formula, left, right, checking)) return null;
  if (asksYardOfRate(left, right, checking)) return null;
  if (asksOverAt(formula, left, right, checking)) return null;
  const [a, b] = [left.holds.measure, right.holds.measure];
  const [above, below] = [a.kind === 'amount' ? a : NUMBER, b.kind === 'amount' ? b : NUMBER];
  const fits = fitting(quotientOf(above, below), formula, left, right, checking);
  if (!fits) return null;
  const stays = a.kind === 'share' && b.kind === 'amount' && isPlain(b);
  const plan: Plan = {
    op: 'divide',
    left: left.plan,
    right: stays ? inScale(right, NUMBER) : right.plan,
  };
  return made(formula, [left, right], stays ? SHARE : fits, plan, {
    showIn: isFactor(b) ? left.holds.showIn : null,
  });
}

function isPlain(measure: AmountMeasure): boolean {
  return measure.dimension === NUMBER.dimension && measure.rate === null;
}

/** A plain number or a share: it leaves the form of the other side as it is. */
function isFactor(measure: Measure): boolean {
  return measure.kind === 'share' || measure === NUMBER;
}

function areAmounts(left: Checked, right: Checked, doing: string, checking: Checking): boolean {
  for (const [side, other] of [
    [left, right],
    [right, left],
  ] as const) {
    const { kind } = side.holds.measure;
    if (kind === 'amount' || kind === 'share') continue;
    const asked = askWhichDimension(side, checking, {
      other,
      op: doing === 'divided' ? 'divided' : 'multiplied',
    });
    if (asked) {
      refuse(checking, asked);
      return false;
    }
    const report = notAnAmount(side, doing, checking);
    const [then, when] = [typedAsOne(checking, other.formula), typedAsOne(checking, side.formula)];
    const spot = { from: left.formula.spot.from, to: right.formula.spot.to };
    const asCondition = mended(checking, 'Take it only where that holds', {
      spot,
      by: `(${then} where ${when}, otherwise 0)`,
    });
    const fixes = kind === 'yes-no' && doing === 'multiplied' ? [asCondition] : [];
    refuse(checking, { ...report, fixes });
    return false;
  }
  return true;
}

/** The measure of a product, or null after saying what stands in the way. */
function fitting(
  product: Product,
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): AmountMeasure | null {
  switch (product.kind) {
    case 'fits':
      return product.measure;
    case 'per-another':
      return refusePerAnother(product.counted, product.per, left, right, checking);
    case 'over-per':
      return refuseOverPer(product.counted, product.per, formula, left, right, checking);
    case 'thing-by-thing':
      return askHowMany(product.left, product.right, left, right, checking);
    case 'too-high':
      return refuseTooHigh(product.what, formula, left, right, checking);
  }
}

/** 36 boards times a price per bag. */
export function refusePerAnother(
  counted: string,
  per: string,
  left: Checked,
  right: Checked,
  checking: Checking,
): null {
  const things = checking.nouns.many(counted);
  const count = [left, right].find(
    ({ holds: { measure } }) =>
      measure.kind === 'amount' && countedNoun(measure.dimension) === counted,
  );
  const rate = count === left ? right : left;
  const money = rate.holds.measure.kind === 'amount' && rate.holds.measure.dimension.money > 0;
  const subject = money ? 'price' : 'rate';
  return refuse(checking, {
    code: 'noun-clash',
    headline: headline(
      `The ${subject} is per ${per}, the quantity counts ${things}.`,
      `The ${subject} is per something else than is counted.`,
    ),
    spots: bothSpots(left, right),
    explanation: `${facts(checking, left, right)} If ${things} are meant to count as ${checking.nouns.many(per)}, say so.`,
    fixes: count ? [asFix(count, per, checking)] : [],
  });
}

/** 3 bags divided by a price per bag: most likely they are to be priced. */
function refuseOverPer(
  counted: string,
  per: string,
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): null {
  const things = checking.nouns.many(counted);
  const at = { spot: formula.opSpot, by: spacedOut(checking, formula.opSpot, 'at') };
  return refuse(checking, {
    code: 'count-over-rate',
    headline: headline(
      `${things} can't be divided by what is per ${per}.`,
      "A count can't be divided by a rate like this.",
    ),
    spots: bothSpots(left, right),
    explanation: `${facts(checking, left, right)} ${counted === per ? 'To take so much for each, write "at".' : 'Dividing works when the rate is of what is counted.'}`,
    fixes: counted === per ? [mended(checking, 'Write "at"', at)] : [],
  });
}

/** 4 posts times 2 bags: is it 2 bags per post? */
function askHowMany(
  one: string,
  other: string,
  left: Checked,
  right: Checked,
  checking: Checking,
): null {
  const rate = `${typedAmount(checking, right.formula)} per ${one}`;
  const written = right.formula.kind === 'amount';
  const by = written ? rate : `(${typedAsOne(checking, right.formula)} divided by 1 ${one})`;
  const many = (noun: string): string => checking.nouns.many(noun);
  return refuse(checking, {
    code: 'noun-by-noun',
    headline: headline(
      written ? `${rate}?` : `${many(other)} per ${one}?`,
      'How many of one for each of the other?',
    ),
    spots: bothSpots(left, right),
    explanation: `${facts(checking, left, right)} ${capital(many(one))} times ${many(other)} count nothing by themselves; say how many ${many(other)} go with each ${one}.`,
    fixes: [
      mended(checking, `Each ${one} takes that many`, { spot: right.formula.spot, by }),
      ...(left.formula.kind === 'amount' && written
        ? [
            mended(checking, `Each ${other} takes ${typedAmount(checking, left.formula)}`, {
              spot: left.formula.spot,
              by: `${typedAmount(checking, left.formula)} per ${other}`,
            }),
          ]
        : []),
    ],
  });
}

export function refuseTooHigh(
  what: 'length' | 'money' | 'time' | 'weight',
  formula: Formula,
  left: Checked,
  right: Checked,
  checking: Checking,
): null {
  const headlines = {
    length: 'That is more than three lengths multiplied.',
    money: "Money can't be multiplied by money.",
    time: "Hours can't be multiplied by hours.",
    weight: "A weight can't be multiplied by a weight.",
  } as const;
  const spot = formula.kind === 'binary' ? [formula.opSpot] : [formula.spot];
  const about = left === right ? '' : `${facts(checking, left, right)} `;
  return refuse(checking, {
    code: 'too-many-lengths',
    headline: headlines[what],
    spots: left === right ? spot : bothSpots(left, right),
    explanation: `${about}${what === 'length' ? 'Two lengths make an area and three a volume; nothing is measured in more.' : 'Multiply it by a number, a count or a share, or divide one by the other.'}`,
    fixes:
      formula.kind !== 'binary' || left === right
        ? []
        : [
            mended(checking, `Leave ${called(checking, right)} out`, {
              spot: { from: left.formula.spot.to, to: right.formula.spot.to },
              by: '',
            }),
          ],
  });
}
