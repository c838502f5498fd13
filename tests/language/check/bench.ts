// A small notebook for the checking rules: cells in, one formula in, what it holds and comes to out.
// Plans are worked here with exact fractions, so that a wrong scaling can't hide behind the engine.
import { expect } from 'vitest';
import { check } from '../../../src/language/check/index.ts';
import type { Checked, Plan } from '../../../src/language/plan.ts';
import { read } from '../../../src/language/read.ts';
import type { Reading, Surroundings } from '../../../src/language/reading.ts';
import { scan } from '../../../src/language/scan.ts';
import { Vocabulary } from '../../../src/language/vocabulary.ts';
import type { Holds } from '../../../src/quantity/form.ts';
import { fromFraction } from '../../../src/quantity/decimal.ts';
import { Fraction } from '../../../src/quantity/measure.ts';
import { Nouns } from '../../../src/quantity/nouns.ts';
import { show } from '../../../src/quantity/show.ts';

const NOUNS = new Nouns([]);
export const SETTINGS = {
  currency: '$',
  fractions: 16,
  measures: 'us',
  many: (noun: string) => NOUNS.many(noun),
} as const;

type Value = Fraction | boolean | string;

export interface Bench {
  read(formula: string): Reading;
  holdsOf(name: string): Holds | null;
  /** The value as shown, after making sure that there is no problem. */
  shown(formula: string): string;
  /** The number as held, exact. */
  value(checked: Checked): Value | null;
}

/** A notebook of one part, its cells `Name: formula` in an order in which each can be worked. */
export function bench(...cells: readonly string[]): Bench {
  const vocabulary = new Vocabulary(NOUNS);
  vocabulary.setParts([{ key: 'landing', name: 'Landing' }]);
  const readings = new Map<number, Reading>();
  const values = new Map<number, Value | null>();
  const names = new Map<string, number>();
  const surroundings: Surroundings = {
    holdsOf: (cell) => readings.get(cell)?.checked?.holds ?? null,
    nameOf: (cell) => [...names].find(([, id]) => id === cell)?.[0] ?? '',
    shownOf: (cell) => {
      const value = values.get(cell);
      const holds = readings.get(cell)?.checked?.holds;
      return holds && value !== null && value !== undefined ? text(value, holds) : null;
    },
    linesOf: () => [],
  };
  const valueOf = (checked: Checked): Value | null =>
    worked(checked.plan, (cell) => values.get(cell) ?? null);
  const readOne = (formula: string): Reading =>
    read(scan(formula, vocabulary, 'landing', null), vocabulary, surroundings);

  cells.forEach((line, i) => {
    const [name = '', formula = ''] = line.split(/: (.*)/s);
    const reading = readOne(formula);
    vocabulary.add({ id: i + 1, name, part: 'landing' });
    names.set(name, i + 1);
    readings.set(i + 1, reading);
    values.set(i + 1, reading.checked ? valueOf(reading.checked) : null);
  });

  return {
    read: readOne,
    holdsOf: (name) => surroundings.holdsOf(names.get(name) ?? 0),
    value: valueOf,
    shown(formula) {
      const reading = readOne(formula);
      expect(reading.problems.map((p) => `${p.headline} ${p.explanation}`)).toEqual([]);
      if (!reading.checked) throw new Error(`nothing came of: ${formula}`);
      const value = valueOf(reading.checked);
      return value === null ? 'not yet known' : text(value, reading.checked.holds);
    },
  };
}

/** The one problem of a formula; every problem keeps the house's rules, and every fix mends it. */
export function refused(
  at: Bench,
  formula: string,
): { code: string; spots: readonly string[]; fixes: readonly string[]; message: string } {
  const { problems, checked, waitsFor } = at.read(formula);
  expect(checked).toBeNull();
  expect(waitsFor).toEqual([]);
  expect(problems).toHaveLength(1);
  const problem = problems[0];
  if (!problem) throw new Error(`no problem with: ${formula}`);
  expect(problem.headline.length).toBeLessThan(60);
  expect(problem.headline).not.toMatch(/undefined|null|NaN|operand|token|dimension|!/);
  expect(problem.explanation).toMatch(/^[A-Z"$\d(].*\.$/);
  expect(problem.spots.length).toBeGreaterThan(0);
  for (const { from, to } of problem.spots) {
    expect(from).toBeGreaterThanOrEqual(0);
    expect(to).toBeGreaterThan(from);
    expect(to).toBeLessThanOrEqual(formula.length);
  }
  for (const fix of problem.fixes) {
    const again = at.read(fix.formula).problems;
    expect([fix.formula, again.map((p) => p.headline)]).toEqual([fix.formula, []]);
  }
  return {
    code: problem.code,
    spots: problem.spots.map((s) => formula.slice(s.from, s.to)),
    fixes: problem.fixes.map((f) => f.formula),
    message: `${problem.headline} ${problem.explanation}`,
  };
}

export function nodeOf(at: Bench, formula: string): Checked {
  const { checked, problems } = at.read(formula);
  if (!checked) throw new Error(`${formula}: ${problems[0]?.headline ?? 'nothing'}`);
  return checked;
}

export { check, NOUNS };

function text(value: Value, holds: Holds): string {
  return show(value instanceof Fraction ? fromFraction(value) : value, holds, SETTINGS).text;
}

function worked(plan: Plan, cellOf: (cell: number) => Value | null): Value | null {
  const go = (p: Plan): Value | null => worked(p, cellOf);
  const number = (p: Plan): Fraction | null => {
    const value = go(p);
    if (value !== null && !(value instanceof Fraction)) throw new Error('no number');
    return value;
  };
  const all = (plans: readonly Plan[]): Fraction[] | null => {
    const found = plans.map(number);
    return found.includes(null) ? null : (found as Fraction[]);
  };
  const two = (
    p: { left: Plan; right: Plan },
    f: (a: Fraction, b: Fraction) => Value,
  ): Value | null => {
    const [a, b] = [number(p.left), number(p.right)];
    return a && b && f(a, b);
  };
  switch (plan.op) {
    case 'constant':
      return plan.value;
    case 'pi':
      return new Fraction(Math.PI);
    case 'unknown':
      return null;
    case 'text':
    case 'yes-no':
      return plan.value;
    case 'cell':
      return cellOf(plan.cell);
    case 'add':
      return two(plan, (a, b) => a.add(b));
    case 'subtract':
      return two(plan, (a, b) => a.sub(b));
    case 'multiply':
      return two(plan, (a, b) => a.mul(b));
    case 'divide':
      return two(plan, (a, b) => a.div(b));
    case 'scale':
      return number(plan.of)?.mul(plan.by) ?? null;
    case 'power':
      return number(plan.of)?.pow(plan.power) ?? null;
    case 'root': {
      const of = number(plan.of);
      if (of && of.s < 0n) throw new Error('root of a negative number');
      return of && (of.pow(0.5) ?? new Fraction(Math.sqrt(of.valueOf())));
    }
    case 'some': {
      const of = number(plan.of);
      if (of && of.compare(0) <= 0) throw new Error(plan.code);
      return of;
    }
    case 'round': {
      const [of, step] = [number(plan.of), plan.step ? number(plan.step) : new Fraction(1)];
      if (!of || !step) return null;
      const steps = of.div(step);
      const whole = { up: steps.ceil(), down: steps.floor(), nearest: steps.round() }[plan.way];
      return whole.mul(step);
    }
    case 'compare': {
      const [a, b] = [go(plan.left), go(plan.right)];
      if (a === null || b === null) return null;
      const order = a instanceof Fraction && b instanceof Fraction ? a.compare(b) : a === b ? 0 : 1;
      return {
        is: order === 0,
        'is-not': order !== 0,
        more: order > 0,
        less: order < 0,
        'at-least': order >= 0,
        'at-most': order <= 0,
      }[plan.relation];
    }
    case 'and':
      return go(plan.left) === true && go(plan.right) === true;
    case 'or':
      return go(plan.left) === true || go(plan.right) === true;
    case 'not':
      return go(plan.of) !== true;
    case 'choose':
      return go(plan.branches.find((b) => go(b.when) === true)?.then ?? plan.otherwise);
    case 'greatest':
      return all(plan.items)?.reduce((a, b) => (b.compare(a) > 0 ? b : a)) ?? null;
    case 'least':
      return all(plan.items)?.reduce((a, b) => (b.compare(a) < 0 ? b : a)) ?? null;
    case 'total': {
      const known = plan.items.map(number).filter((n) => n !== null);
      return known.reduce((a, b) => a.add(b), new Fraction(0));
    }
    case 'column':
      return go(plan.of);
    case 'look-up': {
      const row = plan.rows.find(({ cells }) =>
        cells.every((left, i) => {
          const wanted = plan.wanted[i];
          return (
            wanted &&
            go({ op: 'compare', relation: wanted.relation, left, right: wanted.value }) === true
          );
        }),
      );
      return row ? go(row.answer) : null;
    }
    case 'average': {
      const found = all(plan.items);
      return found && found.reduce((a, b) => a.add(b)).div(found.length);
    }
  }
}
