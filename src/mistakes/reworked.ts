// A step worked again with each mistake that can be made in it: the formula's own plan with one stretch of it changed, worked
// by the engine. Nothing is looked up in a list of answers.
import type { Outcome } from '../engine/outcome.ts';
import type { Checked, Plan } from '../language/plan.ts';
import type { Formula } from '../language/tree.ts';
import { LENGTH, isHard } from '../quantity/dimension.ts';
import { Dec, scaled } from '../quantity/decimal.ts';
import {
  Fraction,
  type Measure,
  overMeasure,
  timesMeasure,
  withoutRate,
} from '../quantity/measure.ts';
import type { Asked } from '../moves-it/web.ts';
import type { Mistake, Reworked } from './mistake.ts';
import { ONE, constant, everyPlan, replaced } from './exchanged.ts';
import { mistakenAmounts, unitsOff } from './mistaken-amounts.ts';

/** All that a step could have come to with one mistake; some may be what it comes to without. */
export function reworked(asked: Asked, step: Checked): readonly Reworked[] {
  return new Reworking(asked, step).all();
}

class Reworking {
  readonly #asked: Asked;
  readonly #root: Checked;
  readonly #plans: readonly Plan[];
  readonly #found: Reworked[] = [];

  constructor(asked: Asked, root: Checked) {
    this.#asked = asked;
    this.#root = root;
    this.#plans = everyPlan(root.plan);
  }

  all(): readonly Reworked[] {
    this.#ofTheAnswer();
    this.#node(this.#root, true);
    this.#rounding();
    return this.#found;
  }

  /** Right until the answer was written down. */
  #ofTheAnswer(): void {
    const { plan, holds } = this.#root;
    const value = numberIn(this.#asked.evaluate(plan));
    if (!value) return;
    const { measure } = holds;
    for (const { mistake, value: other } of this.#mistakenAmounts(value, this.#root)) {
      this.#amount(mistake, other, measure);
    }
    for (const { mistake, by } of unitsOff(measure)) {
      this.#amount(mistake, scaled(value, by), measure);
    }
  }

  /** `inProduct`: what it comes to is only multiplied on the way to the answer, so that a missing unit shows there. */
  #node(node: Checked, inProduct: boolean): void {
    const { formula, parts } = node;
    if (isLeaf(formula)) this.#leaf(node);
    if (node !== this.#root && formula.kind !== 'bracket') this.#inOtherUnits(node);
    this.#shares(node);
    this.#factors(node, inProduct);
    if (countsThings(node)) {
      for (const more of [1, -1]) {
        this.#instead('fence-post', node, {
          op: 'add',
          left: node.plan,
          right: { op: 'constant', value: new Fraction(more) },
        });
      }
    }
    for (const part of parts) this.#node(part, inProduct && isProduct(formula));
  }

  #leaf(node: Checked): void {
    const value = numberIn(this.#asked.evaluate(node.plan));
    if (!value || node === this.#root) return;
    const of = node.formula.kind === 'name' ? node.formula.cell : null;
    for (const { mistake, value: other } of this.#mistakenAmounts(value, node)) {
      this.#instead(mistake, node, constant(other), of);
    }
  }

  /** On the way to the answer: cubic feet that are priced as cubic yards, minutes at a rate by the hour. */
  #inOtherUnits(node: Checked): void {
    const of = node.formula.kind === 'name' ? node.formula.cell : null;
    for (const { mistake, by } of unitsOff(node.holds.measure)) {
      this.#instead(mistake, node, { op: 'scale', by, of: node.plan }, of);
    }
  }

  #mistakenAmounts(value: Dec, node: Checked): ReturnType<typeof mistakenAmounts> {
    const { holds } = node;
    const { exact, unit } = this.#asked.say(value, holds);
    if (exact === '' || value.isZero()) return [];
    const factor = new Dec(exact).div(value);
    const all = mistakenAmounts(
      value.abs(),
      holds.measure,
      exact.replace('-', ''),
      factor.abs(),
      node === this.#root ? null : unit,
    );
    return value.isNegative() ? all.map((one) => ({ ...one, value: one.value.neg() })) : all;
  }

  #shares(node: Checked): void {
    const { formula, manner, plan, parts } = node;
    const [of, ...shares] = parts;
    if (!of) return;
    if (manner === 'share-of') {
      this.#instead('share-forgotten', node, of.plan);
      if (plan.op === 'multiply') {
        this.#instead('share-twice', node, { op: 'multiply', left: plan, right: plan.right });
        const adds = plan.right;
        const [share] = shares;
        if (share) this.#shareMisread(node, of, share);
        const isAdded =
          formula.kind === 'marked-up' || (formula.kind === 'binary' && formula.op === 'plus');
        if (share && isAdded && adds) {
          this.#instead('markup-for-margin', node, {
            op: 'divide',
            left: of.plan,
            right: { op: 'subtract', left: ONE, right: share.plan },
          });
        }
      }
    }
    if (formula.kind === 'part-of') {
      const [share, whole] = parts;
      if (share && whole) this.#instead('factor-missing', node, whole.plan);
    }
    if (formula.kind === 'for-shares') {
      this.#instead('share-forgotten', node, of.plan);
      const grown: Plan = { op: 'divide', left: plan, right: of.plan };
      this.#instead('share-twice', node, { op: 'multiply', left: plan, right: grown });
      const added = shares.reduce<Plan>(
        (all, share) => ({ op: 'add', left: all, right: share.plan }),
        ONE,
      );
      this.#instead('markup-for-margin', node, { op: 'multiply', left: of.plan, right: added });
    }
  }

  /** A written share stands in the plan with the whole that it is added to: 120%, so that the share alone is not found there. */
  #shareMisread(node: Checked, of: Checked, share: Checked): void {
    const value = numberIn(this.#asked.evaluate(share.plan));
    if (!value || isNamed(share.formula)) return;
    const adds = node.formula.kind !== 'binary' || node.formula.op === 'plus';
    for (const { mistake, value: other } of this.#mistakenAmounts(value, share)) {
      const whole: Plan = { op: adds ? 'add' : 'subtract', left: ONE, right: constant(other) };
      this.#instead(mistake, node, { op: 'multiply', left: of.plan, right: whole });
    }
  }

  #factors(node: Checked, inProduct: boolean): void {
    const { formula, parts } = node;
    if (formula.kind !== 'binary' || node.manner === 'share-of') return;
    const { op } = formula;
    if (op === 'plus' || op === 'minus') return;
    const [left, right] = parts;
    if (!left || !right) return;
    this.#only(node, left, inProduct);
    // Of a longer product each factor is left out in its turn, further down.
    const isLonger = left.formula.kind === 'binary' && isProduct(left.formula);
    if (op !== 'over' && !isLonger) this.#only(node, right, inProduct);
    if (isRate(right) || isRate(left)) this.#upsideDown(left, right, node);
  }

  /**
   * The other factor forgotten: what is left is in a unit of its own where nothing but factors follow. Or its number goes
   * on as if it were what it should have been multiplied to.
   */
  #only(node: Checked, kept: Checked, inProduct: boolean): void {
    const measure = inProduct ? measureWith(this.#root, node, kept) : null;
    const value = measure && numberIn(this.#asked.evaluate(this.#with(node, kept.plan)));
    if (measure && value) this.#amount('factor-missing', value, measure);
    for (const number of this.#numbersOf(kept)) this.#asNumber('factor-missing', node, number);
  }

  /** As it would be written down: the numbers as they are shown, multiplied where they should be divided. */
  #upsideDown(left: Checked, right: Checked, node: Checked): void {
    const [a, b] = [left, right].map((each) => this.#shownNumber(each));
    if (!a || !b || a.isZero() || b.isZero()) return;
    for (const number of [a.times(b), a.div(b), b.div(a)]) {
      if (node === this.#root) {
        this.#found.push({
          mistake: 'rate-upside-down',
          of: null,
          came: { kind: 'number', number },
        });
      } else this.#asNumber('rate-upside-down', node, number);
    }
  }

  /** A number in the place of a stretch, in the unit in which that is shown. */
  #asNumber(mistake: Mistake, node: Checked, number: Dec): void {
    const right = this.#shownNumber(node);
    const value = numberIn(this.#asked.evaluate(node.plan));
    if (!right || !value || right.isZero()) return;
    this.#instead(mistake, node, constant(number.times(value).div(right)));
  }

  /** As it is shown; a length in inches in feet, too. */
  #numbersOf(node: Checked): readonly Dec[] {
    const number = this.#shownNumber(node);
    if (!number) return [];
    const { measure } = node.holds;
    const value = numberIn(this.#asked.evaluate(node.plan));
    const isLength = value && measure.kind === 'amount' && measure.dimension === LENGTH;
    return isLength ? [number, scaled(value, measure.scale).div(12)] : [number];
  }

  #shownNumber({ plan, holds }: Checked): Dec | null {
    const value = numberIn(this.#asked.evaluate(plan));
    const exact = value ? this.#asked.say(value, holds).exact : '';
    return exact === '' ? null : new Dec(exact);
  }

  #rounding(): void {
    for (const each of this.#plans) {
      if (each.op !== 'round') continue;
      const ways = WAYS_ROUND.filter((way) => way !== each.way);
      for (const way of each.way === 'nearest' ? [] : ways) {
        this.#plan('rounded-down', replaced(this.#root.plan, each, { ...each, way }));
      }
      // Not at all.
      this.#plan('rounded-down', replaced(this.#root.plan, each, each.of));
    }
  }

  #instead(mistake: Mistake, node: Checked, plan: Plan, of: Reworked['of'] = null): void {
    this.#plan(mistake, this.#with(node, plan), of);
  }

  #with(node: Checked, plan: Plan): Plan {
    if (node === this.#root) return plan;
    // A stretch that is held in another scale than it is shown in may stand in the whole without it.
    if (node.plan.op !== 'scale' || this.#plans.includes(node.plan)) {
      return replaced(this.#root.plan, ...this.#standingFor(node, plan));
    }
    const by = new Fraction(1).div(node.plan.by);
    return replaced(this.#root.plan, node.plan.of, { op: 'scale', by, of: plan });
  }

  /** A written amount may stand in the whole in another scale or below nought: then it is the one constant there that is no node's. */
  #standingFor(node: Checked, fresh: Plan): readonly [old: Plan, fresh: Plan] {
    const { plan } = node;
    if (plan.op !== 'constant' || plan.value.equals(0) || this.#plans.includes(plan))
      return [plan, fresh];
    const leaves = everyNode(this.#root).filter(({ formula }) => isLeaf(formula));
    const own = new Set(leaves.map((each) => each.plan));
    const others = this.#plans.filter((each) => each.op === 'constant' && !own.has(each));
    const [only, ...more] = others.filter(
      (each) => each.op === 'constant' && !each.value.equals(1),
    );
    if (only?.op !== 'constant' || more.length > 0) return [plan, fresh];
    return [only, { op: 'scale', by: only.value.div(plan.value), of: fresh }];
  }

  #plan(mistake: Mistake, plan: Plan, of: Reworked['of'] = null): void {
    const value = numberIn(this.#asked.evaluate(plan));
    if (value) this.#amount(mistake, value, this.#root.holds.measure, of);
  }

  #amount(mistake: Mistake, value: Dec, measure: Measure, of: Reworked['of'] = null): void {
    this.#found.push({ mistake, of, came: { kind: 'amount', value, measure } });
  }
}

const WAYS_ROUND = ['up', 'down', 'nearest'] as const;

/** What the root would measure with `kept` in the place of a stretch that is a factor of it. */
function measureWith(root: Checked, node: Checked, kept: Checked): Measure | null {
  const [whole, was, now] = [root, node, kept].map(({ holds }) => holds.measure);
  if (whole?.kind !== 'amount' || was?.kind !== 'amount') return null;
  const rest = overMeasure(withoutRate(whole), withoutRate(was));
  if (now?.kind === 'share') return rest;
  return now?.kind === 'amount' ? timesMeasure(rest, withoutRate(now)) : null;
}

function everyNode(root: Checked): readonly Checked[] {
  return [root, ...root.parts.flatMap(everyNode)];
}

function isLeaf({ kind }: Formula): boolean {
  return ['name', 'amount', 'look-up', 'size', 'column', 'recap'].includes(kind);
}

function isNamed(formula: Formula): boolean {
  return formula.kind === 'bracket' ? isNamed(formula.of) : formula.kind === 'name';
}

function isProduct(formula: Formula): boolean {
  if (formula.kind === 'bracket' || formula.kind === 'in-units') return isProduct(formula.of);
  return formula.kind === 'binary' && ['times', 'by', 'at', 'over'].includes(formula.op);
}

function isRate({ holds }: Checked): boolean {
  return holds.measure.kind === 'amount' && holds.measure.rate !== null;
}

/** Where ends are counted, or a length is cut into whole things. */
function countsThings({ formula, holds, plan }: Checked): boolean {
  const { measure } = holds;
  const counts = measure.kind === 'amount' && !isHard(measure.dimension);
  const isCounted = ['spaced', 'fewest', 'rounded', 'as-noun', 'pieces'].includes(formula.kind);
  return counts && (formula.kind === 'spaced' || (isCounted && everyPlan(plan).some(isRounding)));
}

function isRounding(plan: Plan): boolean {
  return plan.op === 'round';
}

function numberIn(outcome: Outcome): Dec | null {
  return outcome.kind === 'value' && outcome.value instanceof Dec ? outcome.value : null;
}
