// The same plan worked by the engine and by exact rational numbers: every whole count has to agree.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/language/plan.ts';
import { Dec, snapped, toFraction } from '../../src/quantity/decimal.ts';
import { Fraction } from '../../src/quantity/measure.ts';
import {
  add,
  choose,
  compare,
  divide,
  greatest,
  least,
  multiply,
  number,
  power,
  round,
  scale,
  subtract,
  total,
  worked,
} from './plans.ts';

type Exact = Fraction | boolean | null;

/** What no job reaches: there more than the guard digits may be lost when like amounts cancel. */
const HUGE = new Fraction(10n ** 15n);
const TINY = HUGE.inverse();

/** Exactly, or null where something is divided by nothing or outgrows any job on the way. */
function exactly(plan: Plan): Exact {
  const exact = exactlyWorked(plan);
  if (exact === null || typeof exact === 'boolean' || exact.n === 0n) return exact;
  const size = exact.abs();
  return size.compare(HUGE) > 0 || size.compare(TINY) < 0 ? null : exact;
}

function exactlyWorked(plan: Plan): Exact {
  const amount = (of: Plan): Fraction | null => exactly(of) as Fraction | null;
  const both = (
    { left, right }: { left: Plan; right: Plan },
    work: (a: Fraction, b: Fraction) => Exact,
  ): Exact => {
    const [a, b] = [amount(left), amount(right)];
    return a && b && work(a, b);
  };
  switch (plan.op) {
    case 'constant':
      return plan.value;
    case 'add':
      return both(plan, (a, b) => a.add(b));
    case 'subtract':
      return both(plan, (a, b) => a.sub(b));
    case 'multiply':
      return both(plan, (a, b) => a.mul(b));
    case 'divide':
      return both(plan, (a, b) => (b.n === 0n ? null : a.div(b)));
    case 'scale':
      return amount(plan.of)?.mul(plan.by) ?? null;
    case 'power': {
      const of = amount(plan.of);
      return of && (plan.power === 2 ? of.mul(of) : of.mul(of).mul(of));
    }
    case 'round': {
      const step = plan.step ? amount(plan.step) : new Fraction(1);
      const of = amount(plan.of);
      if (!of || !step || step.n === 0n) return null;
      const size = step.abs();
      return whole(of.div(size), plan.way).mul(size);
    }
    case 'compare':
      return both(plan, (a, b) =>
        plan.relation === 'at-least' ? a.compare(b) >= 0 : a.compare(b) < 0,
      );
    case 'choose': {
      const [branch] = plan.branches;
      const when = branch ? exactly(branch.when) : null;
      if (!branch || when === null) return null;
      return exactly(when === true ? branch.then : plan.otherwise);
    }
    case 'greatest':
    case 'least':
    case 'total': {
      const items = plan.items.map(amount);
      const [first, ...rest] = items.filter((item) => item !== null);
      if (!first || rest.length + 1 < items.length) return null;
      if (plan.op === 'total') return rest.reduce((a, b) => a.add(b), first);
      const better = plan.op === 'greatest' ? 1 : -1;
      return rest.reduce((a, b) => (b.compare(a) === better ? b : a), first);
    }
    default:
      throw new Error(`no exact ${plan.op}`);
  }
}

/** A whole number, half away from zero; by integers alone. */
function whole(value: Fraction, way: 'up' | 'down' | 'nearest'): Fraction {
  const [n, d] = [value.s * value.n, value.d];
  const floor = (a: bigint): bigint => a / d - (a % d < 0n ? 1n : 0n);
  if (way === 'down') return new Fraction(floor(n));
  if (way === 'up') return new Fraction(-floor(-n));
  const away = (2n * value.n + d) / (2n * d);
  return new Fraction(value.s * away);
}

const typed = fc.oneof(
  fc.integer({ min: 1, max: 5000 }).map((n) => number(n)),
  fc.tuple(fc.nat(20_000), fc.constantFrom(10, 100, 1000)).map(([n, d]) => number(`${n / d}`)),
  fc
    .tuple(fc.nat(400), fc.constantFrom(2, 3, 4, 7, 8, 12, 16))
    .map(([n, d]) => number(`${n}/${d}`)),
);

const way = fc.constantFrom('up' as const, 'down' as const, 'nearest' as const);

const tree = fc.letrec<{ plan: Plan }>((tie) => {
  const plan = tie('plan');
  const pair = fc.tuple(plan, plan);
  return {
    plan: fc.oneof(
      { depthSize: 'medium', maxDepth: 5, withCrossShrink: true },
      typed,
      fc
        .tuple(fc.constantFrom(add, subtract, multiply, divide), plan, plan)
        .map(([op, a, b]) => op(a, b)),
      pair.map(([a, b]) => multiply(divide(a, b), b)),
      pair.map(([a, b]) => subtract(a, multiply(divide(a, b), b))),
      fc
        .tuple(plan, fc.constantFrom('1/12', '12', '46656', '1/1728', '7/3'))
        .map(([a, by]) => scale(by, a)),
      plan.map((a) => power(a, 2)),
      fc.tuple(way, plan, plan).map(([w, a, step]) => round(w, a, step)),
      fc.tuple(way, plan).map(([w, a]) => round(w, a)),
      fc.tuple(plan, plan, plan).map((items) => total(...items)),
      pair.map(([a, b]) => greatest(a, b)),
      pair.map(([a, b]) => least(a, b)),
      fc
        .tuple(plan, plan, plan, plan)
        .map(([a, b, c, d]) => choose([[compare('at-least', a, b), c]], d)),
    ),
  };
});

const RUNS = Number(process.env['RUNS'] ?? 1500);

describe('against exact numbers', () => {
  test('every rounded count is the exact one', () => {
    let tried = 0;
    fc.assert(
      fc.property(tree.plan, way, (plan, w) => {
        const exact = exactly(round(w, plan));
        const held = worked(round(w, plan));
        if (exact === null) return;
        tried += 1;
        expect(held).toBeInstanceOf(Dec);
        expect(toFraction(held as Dec).equals(exact as Fraction)).toBe(true);
      }),
      { numRuns: RUNS },
    );
    expect(tried).toBeGreaterThan(RUNS / 2);
  });

  test('every value is the exact one, to forty digits', () => {
    fc.assert(
      fc.property(tree.plan, (plan) => {
        const exact = exactly(plan);
        const held = worked(plan);
        if (exact === null || typeof exact === 'boolean') return;
        const off = toFraction(snapped(held as Dec))
          .sub(exact)
          .abs();
        expect(off.mul(10n ** 40n).compare(exact.abs().add(1))).toBeLessThanOrEqual(0);
      }),
      { numRuns: RUNS },
    );
  });

  test('a chain that comes back to where it began does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.array(fc.integer({ min: 2, max: 99_999 }), { minLength: 1, maxLength: 6 }),
        (n, by) => {
          const there = by.reduce((plan, k) => divide(plan, number(k)), number(n));
          const back = by.reduce((plan, k) => multiply(plan, number(k)), there);
          for (const w of ['up', 'down', 'nearest'] as const) {
            expect((worked(round(w, back)) as Dec).toFixed()).toBe(String(n));
          }
          expect(worked(compare('is', back, number(n)))).toBe(true);
        },
      ),
      { numRuns: RUNS },
    );
  });
});
