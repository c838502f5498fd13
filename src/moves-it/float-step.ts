// One operation of a plan as a step over lanes.
import type { Plan } from '../language/plan.ts';
import {
  type Lane,
  both,
  chosen,
  compared,
  cubed,
  either,
  greater,
  lesser,
  lookedUp,
  minus,
  moreThanNothing,
  not,
  over,
  plus,
  root,
  rounded,
  squared,
  times,
  total,
} from './lanes.ts';

/** Works the first so many trials of a block. */
export type FloatStep = (many: number) => void;

/** Where the operands of a plan stand. */
export interface Operands {
  lane(operand: Plan): Lane;
  number(value: number): Lane;
  /** It has no value as the notebook stands, and none in a trial. */
  isLeftOut(operand: Plan): boolean;
}

export function stepOf(plan: Plan, out: Lane, on: Operands): FloatStep {
  switch (plan.op) {
    case 'constant':
    case 'pi':
    case 'unknown':
    case 'text':
    case 'yes-no':
    case 'cell':
    case 'column':
      throw new Error(`${plan.op} is read, not worked`);
    case 'add':
      return two(plus, out, on.lane(plan.left), on.lane(plan.right));
    case 'subtract':
      return two(minus, out, on.lane(plan.left), on.lane(plan.right));
    case 'multiply':
      return two(times, out, on.lane(plan.left), on.lane(plan.right));
    case 'divide':
      return two(over, out, on.lane(plan.left), on.lane(plan.right));
    case 'scale':
      return two(times, out, on.lane(plan.of), on.number(plan.by.valueOf()));
    case 'power':
      return one(plan.power === 2 ? squared : cubed, out, on.lane(plan.of));
    case 'root':
      return one(root, out, on.lane(plan.of));
    case 'some':
      return one(moreThanNothing, out, on.lane(plan.of));
    case 'not':
      return one(not, out, on.lane(plan.of));
    case 'round': {
      const step = plan.step ? on.lane(plan.step) : on.number(1);
      return two(rounded(plan.way), out, on.lane(plan.of), step);
    }
    case 'compare':
      return two(compared(plan.relation), out, on.lane(plan.left), on.lane(plan.right));
    case 'and':
      return two(both, out, on.lane(plan.left), on.lane(plan.right));
    case 'or':
      return two(either, out, on.lane(plan.left), on.lane(plan.right));
    case 'choose': {
      const branches = plan.branches.map((b) => ({ when: on.lane(b.when), then: on.lane(b.then) }));
      const otherwise = on.lane(plan.otherwise);
      return (many) => chosen(out, branches, otherwise, many);
    }
    case 'greatest':
      return folded(
        greater,
        out,
        plan.items.map((item) => on.lane(item)),
      );
    case 'least':
      return folded(
        lesser,
        out,
        plan.items.map((item) => on.lane(item)),
      );
    case 'total': {
      const items = plan.items.filter((i) => !on.isLeftOut(i)).map((item) => on.lane(item));
      return (many) => total(out, items, many);
    }
    case 'average': {
      const items = plan.items.map((item) => on.lane(item));
      const count = on.number(items.length);
      return (many) => {
        total(out, items, many);
        over(out, out, count, many);
      };
    }
    case 'look-up': {
      const lanes = {
        wanted: plan.wanted.map((w) => ({ relation: w.relation, value: on.lane(w.value) })),
        rows: plan.rows.map((row) => ({
          cells: row.cells.map((cell) => on.lane(cell)),
          answer: on.lane(row.answer),
        })),
      };
      return (many) => lookedUp(out, lanes, many);
    }
  }
}

function one(does: (out: Lane, a: Lane, many: number) => void, out: Lane, a: Lane): FloatStep {
  return (many) => does(out, a, many);
}

type Two = (out: Lane, a: Lane, b: Lane, many: number) => void;

function two(does: Two, out: Lane, a: Lane, b: Lane): FloatStep {
  return (many) => does(out, a, b, many);
}

/** One after the other; `out` may stand in the place of one of the items, so that it is not written before all are read. */
function folded(does: Two, out: Lane, items: readonly Lane[]): FloatStep {
  const [first, ...others] = items;
  if (!first) throw new Error('the greatest of nothing');
  const held = new Float64Array(first.length);
  return (many) => {
    held.set(first);
    for (const item of others) does(held, held, item, many);
    out.set(held);
  };
}
