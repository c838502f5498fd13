// `L at R`: a quantity at a rate. It multiplies where the rate is per what L measures, and divides where
// L measures what the rate is of.
import {
  LENGTH,
  MONEY,
  PLAIN,
  TIME,
  hardPart,
  isHard,
  withoutNounsAbove,
} from '../../quantity/dimension.ts';
import {
  type AmountMeasure,
  amountMeasure,
  overMeasure,
  timesMeasure,
} from '../../quantity/measure.ts';
import type { Checked } from '../plan.ts';
import type { Binary } from '../tree.ts';
import {
  askPerWhat,
  askUnitBefore,
  askWhichWay,
  refuseNeither,
  refuseShareAt,
  timeUnit,
} from './at-asks.ts';
import { productOf } from './products.ts';
import { bareNumber, inForm } from './bare-numbers.ts';
import { type Checking, refuse } from './checking.ts';
import { notAnAmount } from './clashes.ts';
import { EACH, countedNoun } from './counted.ts';
import { nounForm, unitForm } from './forms.ts';
import { made } from './holding.ts';
import { sizedAsCount, sizedFor } from './sized.ts';
import { askWhichDimension } from './which-dimension.ts';
import { type Sides, sidesOf, tidied, wayOf } from './rate-sides.ts';

export function checkAt(
  formula: Binary,
  pieces: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  const b = right.holds.measure;
  const under = b.kind === 'amount' ? sidesOf(b)?.under : undefined;
  const left = under ? sizedFor(pieces, under, checking) : sizedAsCount(pieces, checking);
  const a = left.holds.measure;
  const odd = [left, right].find(
    (c) => c.holds.measure.kind === 'text' || c.holds.measure.kind === 'yes-no',
  );
  if (odd) {
    const asked = askWhichDimension(odd, checking, { other: right, op: 'priced' });
    return refuse(checking, asked ?? notAnAmount(odd, 'priced', checking));
  }
  if (a.kind !== 'amount' || b.kind !== 'amount')
    return refuseShareAt(formula, left, right, checking);
  const sides = sidesOf(b);
  if (!sides) {
    if (withoutNounsAbove(b.dimension) === MONEY)
      return atPlainMoney(formula, left, right, checking);
    if (isCountAtSize(a, b)) return countAtSize(formula, left, right);
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
    return made(formula, [left, right], tidied(measure, used.dimension, PLAIN), plan, {
      manner: way.manner,
    });
  }
  const measure = tidied(timesMeasure(used, b), used.dimension, b.dimension);
  const plan = { op: 'multiply', left: left.plan, right: right.plan } as const;
  return made(formula, [left, right], measure, plan, { manner: way.manner });
}

/** `13 balusters at 1 1/2 in`, `12 bags at 60 lb`: so many of that size. */
function isCountAtSize(a: AmountMeasure, b: AmountMeasure): boolean {
  const noun = countedNoun(a.dimension);
  if (noun === null || noun === EACH || a.rate || b.dimension.nouns.length > 0) return false;
  if (!isHard(b.dimension) || productOf(a, b).kind !== 'fits') return false;
  // `10 joists at 16 in` may tell how far apart they are.
  return !(SET_OUT.has(noun) && b.dimension === LENGTH);
}

/** What is set out at so much from one to the next. */
const SET_OUT: ReadonlySet<string> = new Set(
  'joist stud rafter truss purlin batten lath bar post screw nail bolt stake plant'.split(' '),
);

function countAtSize(formula: Binary, left: Checked, right: Checked): Checked {
  const [a, b] = [left.holds.measure, right.holds.measure];
  if (a.kind !== 'amount' || b.kind !== 'amount') throw new Error('A count at no amount');
  const plan = { op: 'multiply', left: left.plan, right: right.plan } as const;
  const measure = timesMeasure(a, b);
  return made(formula, [left, right], measure, plan, { manner: 'at-multiplied' });
}

/** A bare number before `at` takes what the rate is per, when that is a thing or a time; else it is asked. */
function countTaken(
  left: Checked,
  rate: Checked,
  sides: Sides,
  checking: Checking,
): Checked | null {
  const noun = countedNoun(sides.under);
  if (noun === EACH)
    return { ...left, holds: { ...left.holds, measure: amountMeasure(sides.under) } };
  if (noun !== null) return inForm(left, nounForm(noun), checking);
  if (sides.under === TIME) return inForm(left, unitForm(timeUnit(rate)), checking);
  return askUnitBefore(left, rate, sides, checking);
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
  return askPerWhat(formula, left, right, hardPart(a.dimension), checking);
}
