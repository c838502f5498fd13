// A step worked again with each mistake that can be made in it: the formula's own plan with one stretch of it changed, worked
// by the engine. Nothing is looked up in a list of answers.
import type { Outcome } from '../engine/outcome.ts';
import { operandsOf } from '../engine/compile.ts';
import type { Checked, Plan } from '../language/plan.ts';
import type { Formula } from '../language/tree.ts';
import { AREA, VOLUME, isHard } from '../quantity/dimension.ts';
import { Dec, toFraction } from '../quantity/decimal.ts';
import {
  Fraction,
  type Measure,
  overMeasure,
  timesMeasure,
  withoutRate,
} from '../quantity/measure.ts';
import type { Asked } from '../moves-it/web.ts';
import type { Mistake, Reworked } from './mistake.ts';
import { mistakenAmounts } from './mistaken-amounts.ts';

/** All that a step could have come to with one mistake; some may be what it comes to without. */
export function reworked(asked: Asked, step: Checked): readonly Reworked[] {
  return new Reworking(asked, step).all();
}

class Reworking {
  readonly #asked: Asked;
  readonly #root: Checked;
  readonly #found: Reworked[] = [];

  constructor(asked: Asked, root: Checked) {
    this.#asked = asked;
    this.#root = root;
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
    if (measure.kind !== 'amount') return;
    const times = (mistake: Mistake, ...by: readonly number[]): void => {
      for (const each of by) {
        this.#amount(mistake, value.times(each), measure);
        this.#amount(mistake, value.div(each), measure);
      }
    };
    if (measure.dimension === VOLUME) {
      times('cubic-feet-for-yards', 27);
      times('square-for-cubic', 3, 12);
    }
    if (measure.dimension === AREA) times('square-for-cubic', 3, 12);
  }

  /** `inProduct`: what it comes to is only multiplied on the way to the answer, so that a missing unit shows there. */
  #node(node: Checked, inProduct: boolean): void {
    const { formula, parts } = node;
    if (isLeaf(formula)) this.#leaf(node);
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
      const plan: Plan = { op: 'constant', value: toFraction(other.toSignificantDigits(40)) };
      this.#instead(mistake, node, plan, of);
    }
  }

  #mistakenAmounts(value: Dec, node: Checked): ReturnType<typeof mistakenAmounts> {
    const { holds } = node;
    const { exact, unit } = this.#asked.say(value, holds);
    if (exact === '' || value.isZero()) return [];
    const factor = new Dec(exact).div(value);
    return mistakenAmounts(
      value,
      holds.measure,
      exact.replace('-', ''),
      factor.abs(),
      node === this.#root ? null : unit,
    );
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
    if (formula.kind === 'for-shares') {
      this.#instead('share-forgotten', node, of.plan);
      const added = shares.reduce<Plan>(
        (all, share) => ({ op: 'add', left: all, right: share.plan }),
        ONE,
      );
      this.#instead('markup-for-margin', node, { op: 'multiply', left: of.plan, right: added });
    }
  }

  #factors(node: Checked, inProduct: boolean): void {
    const { formula, parts } = node;
    if (formula.kind !== 'binary' || node.manner === 'share-of') return;
    const { op } = formula;
    if (op === 'plus' || op === 'minus') return;
    const [left, right] = parts;
    if (!left || !right) return;
    // Of a longer product each factor is left out in its turn, further down.
    if (!isProduct(right.formula)) this.#only(node, left, inProduct);
    if (op !== 'over' && !isProduct(left.formula)) this.#only(node, right, inProduct);
    if (inProduct && (isRate(right) || isRate(left))) this.#upsideDown(left, right, node);
  }

  /** The other factor forgotten: what is left is in a unit of its own where nothing but factors follow. */
  #only(node: Checked, kept: Checked, inProduct: boolean): void {
    const value = numberIn(this.#asked.evaluate(this.#with(node, kept.plan)));
    if (!value) return;
    const measure = inProduct ? measureWith(this.#root, node, kept) : null;
    this.#amount('factor-missing', value, measure ?? this.#root.holds.measure);
  }

  /** As it would be written down: the numbers as they are shown, multiplied where they should be divided. */
  #upsideDown(left: Checked, right: Checked, node: Checked): void {
    if (node !== this.#root) return;
    const [a, b] = [left, right].map((each) => this.#shownNumber(each));
    if (!a || !b || a.isZero() || b.isZero()) return;
    for (const number of [a.times(b), a.div(b), b.div(a)]) {
      this.#found.push({ mistake: 'rate-upside-down', of: null, came: { kind: 'number', number } });
    }
  }

  #shownNumber({ plan, holds }: Checked): Dec | null {
    const value = numberIn(this.#asked.evaluate(plan));
    const exact = value ? this.#asked.say(value, holds).exact : '';
    return exact === '' ? null : new Dec(exact);
  }

  #rounding(): void {
    for (const each of everyPlan(this.#root.plan)) {
      if (each.op !== 'round' || each.way !== 'up') continue;
      this.#plan('rounded-down', replaced(this.#root.plan, each, { ...each, way: 'down' }));
    }
  }

  #instead(mistake: Mistake, node: Checked, plan: Plan, of: Reworked['of'] = null): void {
    this.#plan(mistake, this.#with(node, plan), of);
  }

  #with(node: Checked, plan: Plan): Plan {
    return node === this.#root ? plan : replaced(this.#root.plan, node.plan, plan);
  }

  #plan(mistake: Mistake, plan: Plan, of: Reworked['of'] = null): void {
    const value = numberIn(this.#asked.evaluate(plan));
    if (value) this.#amount(mistake, value, this.#root.holds.measure, of);
  }

  #amount(mistake: Mistake, value: Dec, measure: Measure, of: Reworked['of'] = null): void {
    this.#found.push({ mistake, of, came: { kind: 'amount', value, measure } });
  }
}

const ONE: Plan = { op: 'constant', value: new Fraction(1) };

/** What the root would measure with `kept` in the place of a stretch that is a factor of it. */
function measureWith(root: Checked, node: Checked, kept: Checked): Measure | null {
  const [whole, was, now] = [root, node, kept].map(({ holds }) => holds.measure);
  if (whole?.kind !== 'amount' || was?.kind !== 'amount') return null;
  const rest = overMeasure(withoutRate(whole), withoutRate(was));
  if (now?.kind === 'share') return rest;
  return now?.kind === 'amount' ? timesMeasure(rest, withoutRate(now)) : null;
}

function isLeaf({ kind }: Formula): boolean {
  return kind === 'name' || kind === 'amount' || kind === 'look-up' || kind === 'size';
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

function everyPlan(plan: Plan): readonly Plan[] {
  const all = new Set<Plan>([plan]);
  for (const each of all) for (const operand of operandsOf(each)) all.add(operand);
  return [...all];
}

/** The plan with one stretch of it exchanged, wherever that stands. */
function replaced(plan: Plan, old: Plan, fresh: Plan): Plan {
  const done = new Map<object, unknown>([[old, fresh]]);
  const walk = (thing: unknown): unknown => {
    if (typeof thing !== 'object' || thing === null || thing instanceof Fraction) return thing;
    if (done.has(thing)) return done.get(thing);
    const made = Array.isArray(thing)
      ? thing.map(walk)
      : Object.fromEntries(Object.entries(thing).map(([key, value]) => [key, walk(value)]));
    done.set(thing, made);
    return made;
  };
  return walk(plan) as Plan;
}
