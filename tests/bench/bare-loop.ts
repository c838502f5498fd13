// The demo's formulas as one would write them by hand for trials: a closure each on plain doubles, one trial at a time,
// with no thought for the last digits, for what has no value, or for whoever asks about the results.
import type { Plan } from '../../src/language/plan.ts';
import type { CellId, Relation, Way } from '../../src/language/tree.ts';
import type { Estimate } from '../../src/notebook/estimate.ts';

type Work = () => number;

/** What moves with `moved`, as a loop over `values`, in which each cell has a slot. */
export function bareLoop(
  estimate: Estimate,
  moved: readonly CellId[],
): {
  readonly values: Float64Array;
  readonly slotOf: (cell: CellId) => number;
  readonly run: () => void;
} {
  const slots = new Map<CellId, number>();
  const slotOf = (cell: CellId): number => {
    const slot = slots.get(cell) ?? slots.size;
    slots.set(cell, slot);
    return slot;
  };
  const values = new Float64Array(10_000);
  const put = (cell: CellId): void => {
    const { outcome } = estimate.state(cell);
    values[slotOf(cell)] = outcome.kind === 'value' ? Number(outcome.value) : 0;
  };
  for (const cell of [...moved, ...estimate.reach(moved, 'up')]) {
    put(cell);
    for (const need of estimate.reach([cell], 'down')) put(need);
  }
  const slotsOut: number[] = [];
  const works: Work[] = [];
  for (const cell of estimate.reach(moved, 'up')) {
    const by = estimate.workedBy(cell);
    if (!by || estimate.state(cell).outcome.kind !== 'value') continue;
    const work = closure(by.plan, values, (id) => slotOf(by.meant(id)));
    const cents = by.cents ? by.cents.scale.valueOf() * 100 : null;
    slotsOut.push(slotOf(cell));
    works.push(cents === null ? work : () => Math.round(work() * cents) / 100);
  }
  return {
    values,
    slotOf,
    run: () => {
      for (let i = 0; i < works.length; i++) values[slotsOut[i]] = works[i]();
    },
  };
}

function closure(plan: Plan, values: Float64Array, slotOf: (cell: CellId) => number): Work {
  const sub = (of: Plan): Work => closure(of, values, slotOf);
  const two = (p: { readonly left: Plan; readonly right: Plan }): readonly [Work, Work] => [
    sub(p.left),
    sub(p.right),
  ];
  switch (plan.op) {
    case 'constant': {
      const value = plan.value.valueOf();
      return () => value;
    }
    case 'pi':
      return () => Math.PI;
    case 'unknown':
      return () => NaN;
    case 'text':
      return () => 0;
    case 'yes-no':
      return plan.value ? () => 1 : () => 0;
    case 'cell': {
      const slot = slotOf(plan.cell);
      return () => values[slot];
    }
    case 'add': {
      const [a, b] = two(plan);
      return () => a() + b();
    }
    case 'subtract': {
      const [a, b] = two(plan);
      return () => a() - b();
    }
    case 'multiply': {
      const [a, b] = two(plan);
      return () => a() * b();
    }
    case 'divide': {
      const [a, b] = two(plan);
      return () => a() / b();
    }
    case 'scale': {
      const [of, by] = [sub(plan.of), plan.by.valueOf()];
      return () => of() * by;
    }
    case 'power': {
      const [of, power] = [sub(plan.of), plan.power];
      return () => of() ** power;
    }
    case 'root': {
      const of = sub(plan.of);
      return () => Math.sqrt(of());
    }
    case 'some':
    case 'column':
      return sub(plan.of);
    case 'round': {
      const [of, step, to] = [sub(plan.of), plan.step ? sub(plan.step) : () => 1, WHOLE[plan.way]];
      return () => {
        const size = step();
        return to(of() / size) * size;
      };
    }
    case 'compare': {
      const [[a, b], holds] = [two(plan), HOLDS[plan.relation]];
      return () => (holds(a(), b()) ? 1 : 0);
    }
    case 'and': {
      const [a, b] = two(plan);
      return () => a() && b();
    }
    case 'or': {
      const [a, b] = two(plan);
      return () => a() || b();
    }
    case 'not': {
      const of = sub(plan.of);
      return () => 1 - of();
    }
    case 'choose': {
      const branches = plan.branches.map((b) => ({ when: sub(b.when), then: sub(b.then) }));
      const otherwise = sub(plan.otherwise);
      return () => {
        for (const { when, then } of branches) if (when() === 1) return then();
        return otherwise();
      };
    }
    case 'greatest': {
      const items = plan.items.map(sub);
      return () => items.reduce((most, item) => Math.max(most, item()), -Infinity);
    }
    case 'least': {
      const items = plan.items.map(sub);
      return () => items.reduce((least, item) => Math.min(least, item()), Infinity);
    }
    case 'total':
    case 'average': {
      const items = plan.items.map(sub);
      const many = plan.op === 'average' ? items.length : 1;
      return () => {
        let sum = 0;
        for (let i = 0; i < items.length; i++) sum += items[i]();
        return sum / many;
      };
    }
    case 'look-up': {
      const wanted = plan.wanted.map((w) => ({ value: sub(w.value), holds: HOLDS[w.relation] }));
      const rows = plan.rows.map((r) => ({ cells: r.cells.map(sub), answer: sub(r.answer) }));
      return () => {
        for (const { cells, answer } of rows) {
          if (wanted.every(({ value, holds }, i) => holds(cells[i](), value()))) return answer();
        }
        return NaN;
      };
    }
  }
}

const WHOLE: Readonly<Record<Way, (value: number) => number>> = {
  up: Math.ceil,
  down: Math.floor,
  nearest: Math.round,
};

const HOLDS: Readonly<Record<Relation, (a: number, b: number) => boolean>> = {
  is: (a, b) => a === b,
  'is-not': (a, b) => a !== b,
  more: (a, b) => a > b,
  less: (a, b) => a < b,
  'at-least': (a, b) => a >= b,
  'at-most': (a, b) => a <= b,
};
