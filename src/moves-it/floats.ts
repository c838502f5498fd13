// The cells that move, compiled once to plain doubles: for trials and for looking along a given, never for a figure
// that is shown as the answer. Worked for a block of trials at a time: each operation is one loop over a lane.
//
// What does not move is worked exactly, once, and put in as a number. A lane is used again as soon as nothing
// reads it any more, so that a long formula needs no more of them than it is deep.
import { inRow } from '../engine/tables.ts';
import type { Outcome } from '../engine/outcome.ts';
import type { Plan } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import { type Lane, times, toTheCent } from './lanes.ts';
import { type FloatStep, type Operands, stepOf } from './float-step.ts';
import { operandsFirst, ownOperands } from './plan-walk.ts';
import { textsIn } from './texts.ts';
import type { Asked, Web, WebStep } from './web.ts';

/** How many trials are worked at a time: a few lanes of them stay in the nearest cache. */
export const BLOCK = 500;

/** `kept`: cost and price lines are whole cents, as they are shown; `left`: a line that moves smoothly stays smooth. */
export type Cents = 'kept' | 'left';

export class FloatWork {
  readonly #steps: readonly FloatStep[];
  readonly #lanes: ReadonlyMap<CellId, Lane>;

  constructor(asked: Asked, web: Web, cents: Cents) {
    const making = new Making(asked, web, cents);
    this.#steps = making.steps;
    this.#lanes = making.cells;
  }

  /** Of a moved cell: where its values are put; of one that moves with it: where they are found. */
  lane(cell: CellId): Lane {
    const lane = this.#lanes.get(cell);
    if (!lane) throw new Error(`cell ${cell} does not move`);
    return lane;
  }

  /** Works the first `many` trials of the block from what stands in the lanes of the moved cells. */
  run(many: number): void {
    const steps = this.#steps;
    for (let i = 0; i < steps.length; i++) steps[i](many);
  }
}

class Making {
  readonly steps: FloatStep[] = [];
  readonly cells = new Map<CellId, Lane>();
  readonly #asked: Asked;
  readonly #cents: Cents;
  readonly #texts: ReadonlyMap<string, number>;
  readonly #numbers = new Map<number, Lane>();
  readonly #numberLanes = new Set<Lane>();
  /** Figures of whole columns, each worked once for all that ask for it; null: it does not move. */
  readonly #columns = new Map<Plan, Lane | null>();
  readonly #free: Lane[] = [];

  constructor(asked: Asked, web: Web, cents: Cents) {
    this.#asked = asked;
    this.#cents = cents;
    this.#texts = textsIn(asked, web);
    for (const cell of web.moved) this.#movedCell(cell);
    for (const step of web.steps) this.cells.set(step.cell, this.#cell(step));
  }

  #movedCell(cell: CellId): void {
    const lane = new Float64Array(BLOCK);
    this.cells.set(cell, lane);
    if (this.#cents === 'left' || !this.#asked.workedBy(cell)?.cents) return;
    // What is put in is held as the cell is: a line of money in dollars.
    this.steps.push((many) => toTheCent(lane, lane, 1, many));
  }

  #cell({ plan, meant, cents }: WebStep): Lane {
    const lane = this.#figure(plan, meant) ?? this.#still(plan, meant);
    const own = isOwn(plan) && !this.#isNumber(lane) ? lane : new Float64Array(BLOCK);
    const scale = cents?.scale.valueOf() ?? 1;
    if (cents && this.#cents === 'kept') {
      this.steps.push((many) => toTheCent(own, lane, scale, many));
    } else if (own !== lane || scale !== 1) {
      const by = this.#number(scale);
      this.steps.push((many) => times(own, lane, by, many));
    }
    return own;
  }

  /** Where the values of a plan stand, which nothing else is put into; null where it does not move. */
  #figure(plan: Plan, meant: WebStep['meant']): Lane | null {
    const done = new Map<Plan, Lane>();
    const order: Plan[] = [];
    const uses = new Map<Plan, number>();
    for (const each of operandsFirst(plan, ownOperands)) {
      const there = this.#alreadyThere(each, meant);
      if (there) done.set(each, there);
      const moves = ownOperands(each).filter((operand) => done.has(operand) || uses.has(operand));
      if (moves.length === 0) continue;
      order.push(each);
      uses.set(each, 0);
      for (const operand of moves) uses.set(operand, (uses.get(operand) ?? 0) + 1);
    }
    for (const each of order) done.set(each, this.#operation(each, meant, done, uses));
    return done.get(plan) ?? null;
  }

  #operation(
    plan: Plan,
    meant: WebStep['meant'],
    done: ReadonlyMap<Plan, Lane>,
    uses: Map<Plan, number>,
  ): Lane {
    const read = new Map<Plan, Lane>();
    const operands: Operands = {
      lane: (operand) => read.get(operand) ?? this.#still(operand, meant),
      number: (value) => this.#number(value),
      isLeftOut: (operand) => !read.has(operand) && this.#outcome(operand, meant).kind !== 'value',
    };
    for (const operand of ownOperands(plan)) {
      const lane = done.get(operand);
      if (!lane) continue;
      read.set(operand, lane);
      const left = (uses.get(operand) ?? 0) - 1;
      uses.set(operand, left);
      if (left === 0 && isOwn(operand)) this.#free.push(lane);
    }
    const out = this.#free.pop() ?? new Float64Array(BLOCK);
    this.steps.push(stepOf(plan, out, operands));
    return out;
  }

  /** A cell that moves, or a figure of a column that does. */
  #alreadyThere(plan: Plan, meant: WebStep['meant']): Lane | null {
    if (plan.op === 'cell') return this.cells.get(meant(plan.cell)) ?? null;
    return plan.op === 'column' ? this.#column(plan.of) : null;
  }

  #column(of: Plan): Lane | null {
    const known = this.#columns.get(of);
    if (known !== undefined) return known;
    const lane = this.#figure(of, (id) => id);
    this.#columns.set(of, lane);
    return lane;
  }

  #still(plan: Plan, meant: WebStep['meant']): Lane {
    const outcome = this.#outcome(plan, meant);
    return this.#number(outcome.kind === 'value' ? this.#asNumber(outcome.value) : NaN);
  }

  /** Of what does not move, worked exactly. */
  #outcome(plan: Plan, meant: WebStep['meant']): Outcome {
    return plan.op === 'cell'
      ? this.#asked.state(meant(plan.cell)).outcome
      : this.#asked.evaluate(inRow(plan, meant));
  }

  #asNumber(value: Extract<Outcome, { kind: 'value' }>['value']): number {
    if (typeof value === 'boolean') return value ? 1 : 0;
    return typeof value === 'string' ? (this.#texts.get(value) ?? NaN) : value.toNumber();
  }

  #isNumber(lane: Lane): boolean {
    return this.#numberLanes.has(lane);
  }

  #number(value: number): Lane {
    let lane = this.#numbers.get(value);
    if (!lane) {
      this.#numbers.set(value, (lane = new Float64Array(BLOCK).fill(value)));
      this.#numberLanes.add(lane);
    }
    return lane;
  }
}

/** Is its lane there for this one figure alone? */
function isOwn(plan: Plan): boolean {
  return plan.op !== 'cell' && plan.op !== 'column';
}
