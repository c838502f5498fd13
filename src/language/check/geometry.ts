// Geometry: powers and roots, diagonals, circles and triangles.
import {
  AREA,
  type Dimension,
  LENGTH,
  dimension,
  powerDimension,
  withoutNounsAbove,
} from '../../quantity/dimension.ts';
import {
  type AmountMeasure,
  Fraction,
  NUMBER,
  SHARE,
  amountMeasure,
} from '../../quantity/measure.ts';
import type { Fix, Report } from '../../words/report.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Circle, Diagonal, Formula, Power, SquareRoot, Triangle } from '../tree.ts';
import { agree } from './agreeing.ts';
import { bareNumber } from './bare-numbers.ts';
import { type Checking, mended, refuse, typedAsOne } from './checking.ts';
import { COMPARING, notAnAmount } from './clashes.ts';
import { EACH, countedNoun } from './counted.ts';
import { amountOf, inScale, made, scaled } from './holding.ts';
import { areLengths } from './lengths.ts';
import { refuseTooHigh } from './multiplying.ts';
import { tooHigh } from './products.ts';
import { capital, fact, headline, whatItIs } from './saying.ts';

/** `X squared`, `X cubed`. */
export function checkPower(formula: Power, of: Checked, checking: Checking): Checked | null {
  const { measure } = of.holds;
  const plan: Plan = { op: 'power', of: of.plan, power: formula.power };
  if (measure.kind === 'share') return made(formula, [of], SHARE, plan);
  if (measure.kind !== 'amount') return refuse(checking, notAnAmount(of, 'multiplied', checking));
  const kept = withoutNounsAbove(measure.dimension);
  if (kept.nouns.some((n) => n.power > 0)) {
    return refuse(checking, {
      code: 'noun-by-noun',
      headline: headline(
        `${whatItIs(of)} can't be ${powerWord(formula)}.`,
        `A count can't be ${powerWord(formula)}.`,
      ),
      spots: [of.formula.spot],
      explanation: `${capital(fact(checking, of))}. Things times things count nothing; square a number or a length.`,
      fixes: withoutItsNoun(of, checking),
    });
  }
  const whole = powerDimension(kept, formula.power);
  const high = tooHigh(whole);
  if (high?.kind === 'too-high') return refuseTooHigh(high.what, formula, of, of, checking);
  return made(formula, [of], amountMeasure(whole, measure.scale.pow(formula.power)), plan);
}

/** The number alone: a count divided by one of what it counts. */
function withoutItsNoun(of: Checked, checking: Checking): readonly Fix[] {
  const { measure } = of.holds;
  const noun = measure.kind === 'amount' ? countedNoun(measure.dimension) : null;
  if (noun === null || noun === EACH) return [];
  const by = `(${typedAsOne(checking, of.formula)} divided by 1 ${noun})`;
  return [mended(checking, 'Take the number alone', { spot: of.formula.spot, by })];
}

function powerWord(formula: Power): string {
  return formula.power === 2 ? 'squared' : 'cubed';
}

/** Only what is a square has a root: an area, a plain number. Taken in the scale of an inch, so that it stays exact. */
export function checkSquareRoot(
  formula: SquareRoot,
  of: Checked,
  checking: Checking,
): Checked | null {
  const { measure } = of.holds;
  if (measure.kind !== 'amount' && measure.kind !== 'share') {
    return refuse(checking, notAnAmount(of, 'taken the square root of', checking));
  }
  const whole = measure.kind === 'share' ? NUMBER : measure;
  const half = halved(withoutNounsAbove(whole.dimension));
  if (!half) {
    return refuse(checking, {
      code: 'no-square-root',
      headline: headline(`${whatItIs(of)} has no square root.`, 'This has no square root.'),
      spots: [of.formula.spot],
      explanation: `${capital(fact(checking, of))}. A square root is taken of an area, which gives a length, or of a plain number.`,
      fixes: [
        mended(checking, 'Leave the root out', {
          spot: formula.spot,
          by: typedAsOne(checking, of.formula),
        }),
      ],
    });
  }
  const inInches = inScale(of, amountMeasure(whole.dimension));
  return made(formula, [of], amountMeasure(half), { op: 'root', of: inInches });
}

function halved(a: Dimension): Dimension | null {
  const powers = [a.length, a.mass, a.time, a.money, ...a.nouns.map((n) => n.power)];
  if (powers.some((p) => p % 2 !== 0)) return null;
  return dimension({
    length: a.length / 2,
    mass: a.mass / 2,
    time: a.time / 2,
    money: a.money / 2,
    nouns: a.nouns.map((n) => ({ noun: n.noun, power: n.power / 2 })),
  });
}

/** √(a² + b²). */
export function checkDiagonal(
  formula: Diagonal,
  a: Checked,
  b: Checked,
  checking: Checking,
): Checked | null {
  const sides = sidesOf([a, b], 'The two sides of a diagonal', checking);
  const [one, other] = sides?.plans ?? [];
  if (!sides || !one || !other) return null;
  const plan: Plan = {
    op: 'root',
    of: {
      op: 'add',
      left: { op: 'power', of: one, power: 2 },
      right: { op: 'power', of: other, power: 2 },
    },
  };
  return made(formula, sides.parts, sides.measure, plan);
}

/** π r² or 2 π r, from the radius or the diameter. */
export function checkCircle(formula: Circle, size: Checked, checking: Checking): Checked | null {
  const sides = sidesOf([size], 'Circles', checking);
  const across = sides?.plans[0];
  if (!sides || !across) return null;
  const radius = formula.across === 'radius';
  const { measure } = sides;
  if (formula.what === 'circumference') {
    const round: Plan = { op: 'multiply', left: { op: 'pi' }, right: across };
    return made(formula, sides.parts, measure, scaled(round, new Fraction(radius ? 2 : 1)));
  }
  const square: Plan = { op: 'power', of: across, power: 2 };
  const plan = scaled(
    { op: 'multiply', left: { op: 'pi' }, right: square },
    new Fraction(1, radius ? 1 : 4),
  );
  return made(formula, sides.parts, squareOf(measure), plan);
}

/**
 * The area from three sides: ¼ √((a+b+c)(−a+b+c)(a−b+c)(a+b−c)).
 * Sides that do not meet leave a negative number under the root.
 */
export function checkTriangle(
  formula: Triangle,
  items: readonly Checked[],
  checking: Checking,
): Checked | null {
  const sides = sidesOf(items, 'The sides of a triangle', checking);
  const [a, b, c] = sides?.plans ?? [];
  if (!sides || !a || !b || !c) return null;
  if (neverMeets([a, b, c])) return refuse(checking, noTriangle(formula));
  const all: Plan = {
    op: 'multiply',
    left: { op: 'multiply', left: plus(plus(a, b), c), right: minus(plus(b, c), a) },
    right: { op: 'multiply', left: minus(plus(a, c), b), right: minus(plus(a, b), c) },
  };
  const plan = scaled({ op: 'root', of: all }, new Fraction(1, 4));
  return made(formula, sides.parts, squareOf(sides.measure), plan);
}

/** Written sides of which one is longer than both others together. */
function neverMeets(sides: readonly Plan[]): boolean {
  const lengths = sides.flatMap((side) => (side.op === 'constant' ? [side.value] : []));
  if (lengths.length < 3) return false;
  const round = lengths.reduce((sum, side) => sum.add(side), new Fraction(0));
  return lengths.some((side) => side.mul(2).compare(round) > 0);
}

/** Seen in what is written, or when it is worked. */
export function noTriangle(formula: Formula): Report {
  return {
    code: 'no-triangle',
    headline: 'These three sides never meet.',
    spots: [formula.spot],
    explanation:
      'One side is longer than the other two together, so they close no triangle. Measure the longest again.',
    fixes: [],
  };
}

interface SidesOf {
  readonly measure: AmountMeasure;
  readonly parts: readonly Checked[];
  readonly plans: readonly Plan[];
}

/** Lengths in one scale; plain numbers where all of them are. */
function sidesOf(items: readonly Checked[], what: string, checking: Checking): SidesOf | null {
  const numbers = items.every((c) => c.holds.measure === NUMBER || bareNumber(c) !== null);
  if (!numbers && !areLengths(items, what, checking)) return null;
  const agreed = agree(items, COMPARING, checking);
  if (!agreed) return null;
  const [first] = agreed.parts;
  if (!first || agreed.measure.kind !== 'amount') return null;
  const measure = numbers ? amountOf(first) : amountMeasure(LENGTH, agreed.measure.scale);
  return { ...agreed, measure };
}

function squareOf(measure: AmountMeasure): AmountMeasure {
  const square = measure.dimension === LENGTH ? AREA : measure.dimension;
  return amountMeasure(square, measure.scale.pow(2));
}

function plus(left: Plan, right: Plan): Plan {
  return { op: 'add', left, right };
}

function minus(left: Plan, right: Plan): Plan {
  return { op: 'subtract', left, right };
}
