// Plans into mathjs nodes, and nodes into one function that works the formula.
//
// mathjs compiles and works nodes by calling itself, one level a node. A plan may be deeper than the stack
// is, and one stretch of it may stand in several places. So a plan is cut into steps: what has grown too high,
// or is used twice, is worked first and kept, and read from there. Our own walk keeps its own stack.
// (A step is worked even where the branch it stands in isn't taken: nothing comes of it, faults are values.)
import { Dec, fromFraction } from '../quantity/decimal.ts';
import type { Plan } from '../language/plan.ts';
import type { CellId, Relation, Way } from '../language/tree.ts';
import { type Held, Unknown } from './held.ts';
import {
  type Compiled,
  ConstantNode,
  FunctionNode,
  type MathNode,
  OperatorNode,
  PI,
  functions,
} from './math.ts';
import { ChooseNode, HeldNode, JoinNode, ListNode, PlaceNode, TotalNode } from './nodes.ts';
import { ColumnNode, LookUpNode } from './table-nodes.ts';

/** A formula ready to be worked with whatever the cells hold now. */
export type Work = () => Held;

/** Where the cells are. */
export interface Cells {
  /** By place; entries change, the array stays. */
  readonly values: readonly Held[];
  placeOf(cell: CellId): number;
  /** Changes whenever a cell of the column does: until then a figure of the column stays what it is. */
  turnOf?(column: CellId): object;
  /** Within a row of a table: where the columns of the row that is being worked stand. */
  readonly row?: RowCells;
}

interface RowCells {
  readonly values: readonly Held[];
  /** Null: not a column of this table. */
  placeOf(column: CellId): number | null;
}

/** How many nodes may stand above one another before they are cut into steps. */
const HIGHEST = 100;

const NO_SCOPE: ReadonlyMap<string, never> = new Map<string, never>();
const NO_NAMES = {};

/** `self` is the cell that a `?` in the plan stands for. */
export function compile(plan: Plan, cells: Cells, self: CellId | null): Work {
  return new Compilation(cells, self).work(plan);
}

interface Built {
  readonly node: MathNode;
  readonly height: number;
}

class Compilation {
  readonly #cells: Cells;
  readonly #self: CellId | null;
  /** What a large plan is made of so far; null for a small one. */
  #built: Map<Plan, Built> | null = null;
  readonly #steps: Compiled[] = [];
  readonly #kept: Held[] = [];

  constructor(cells: Cells, self: CellId | null) {
    this.#cells = cells;
    this.#self = self;
  }

  work(plan: Plan): Work {
    if (isSmall(plan)) {
      const work = made(this.#node(plan));
      return () => work(NO_SCOPE, NO_NAMES, null);
    }
    const last = made(this.#inSteps(plan));
    const steps = this.#steps;
    if (steps.length === 0) return () => last(NO_SCOPE, NO_NAMES, null);
    const kept = this.#kept;
    return () => {
      for (let i = 0; i < steps.length; i++) kept[i] = steps[i](NO_SCOPE, NO_NAMES, null);
      return last(NO_SCOPE, NO_NAMES, null);
    };
  }

  #inSteps(plan: Plan): MathNode {
    const { order, shared } = inOrder(plan);
    const all = (this.#built = new Map<Plan, Built>());
    for (const each of order) {
      const built = this.#build(each);
      const cut = built.height >= HIGHEST || (built.height > 0 && shared.has(each));
      all.set(each, cut ? this.#step(built.node) : built);
    }
    return this.#nodeOf(plan);
  }

  #step(node: MathNode): Built {
    this.#steps.push(made(node));
    return { node: new PlaceNode(this.#kept, this.#steps.length - 1), height: 0 };
  }

  #build(plan: Plan): Built {
    const operands = operandsOf(plan);
    let height = 0;
    for (const operand of operands) height = Math.max(height, this.#get(operand).height + 1);
    return { node: this.#node(plan), height };
  }

  #get(plan: Plan): Built {
    const built = this.#built?.get(plan);
    if (!built) throw new Error(`operand ${plan.op} was not built before what uses it`);
    return built;
  }

  /** The node of an operand: in a large plan it is there already, in a small one it is made now. */
  #nodeOf(plan: Plan): MathNode {
    return this.#built ? this.#get(plan).node : this.#node(plan);
  }

  #node(plan: Plan): MathNode {
    switch (plan.op) {
      case 'constant':
        return new ConstantNode(fromFraction(plan.value));
      case 'pi':
        return new ConstantNode(PI);
      case 'unknown':
        return new HeldNode(new Unknown(this.#self === null ? [] : [this.#self]));
      case 'text':
      case 'yes-no':
        return new ConstantNode(plan.value);
      case 'cell':
        return this.#cell(plan.cell);
      case 'add':
        return this.#two('+', 'plus', plan.left, plan.right);
      case 'subtract':
        return this.#two('-', 'minus', plan.left, plan.right);
      case 'multiply':
        return this.#two('*', 'times', plan.left, plan.right);
      case 'divide':
        return this.#two('/', 'over', plan.left, plan.right);
      case 'scale':
        return this.#scaled(plan);
      case 'power':
        return this.#power(plan);
      case 'root':
        return new FunctionNode('root', [this.#nodeOf(plan.of)]);
      case 'some':
        return new FunctionNode(SOME[plan.code], [this.#nodeOf(plan.of)]);
      case 'round': {
        const step = plan.step ? this.#nodeOf(plan.step) : new ConstantNode(ONE);
        return new OperatorNode('', ROUND[plan.way], [this.#nodeOf(plan.of), step]);
      }
      case 'compare':
        return this.#two('', COMPARE[plan.relation], plan.left, plan.right);
      case 'and':
      case 'or':
        return new JoinNode(plan.op === 'or', this.#nodeOf(plan.left), this.#nodeOf(plan.right));
      case 'not':
        return new FunctionNode('not', [this.#nodeOf(plan.of)]);
      case 'choose':
        return new ChooseNode(
          plan.branches.map((b) => ({ when: this.#nodeOf(b.when), then: this.#nodeOf(b.then) })),
          this.#nodeOf(plan.otherwise),
        );
      case 'greatest':
      case 'least':
      case 'average':
        return new FunctionNode(plan.op, [new ListNode(plan.items.map((i) => this.#nodeOf(i)))]);
      case 'total':
        return new TotalNode(plan.items.map((i) => ({ node: this.#nodeOf(i), cell: cellOf(i) })));
      case 'column': {
        const { column } = plan;
        return new ColumnNode(this.#nodeOf(plan.of), () => this.#cells.turnOf?.(column) ?? null);
      }
      case 'look-up':
        return new LookUpNode(
          plan.wanted.map((w) => ({
            relation: w.relation,
            compare: COMPARE[w.relation],
            value: this.#nodeOf(w.value),
            turn: () => this.#cells.turnOf?.(w.column) ?? null,
          })),
          plan.rows.map((row) => ({
            cells: row.cells.map((cell) => this.#nodeOf(cell)),
            answer: this.#nodeOf(row.answer),
          })),
        );
    }
  }

  #cell(cell: CellId): MathNode {
    const { row, values } = this.#cells;
    const inRow = row?.placeOf(cell) ?? null;
    if (row && inRow !== null) return new PlaceNode(row.values, inRow);
    return new PlaceNode(values, this.#cells.placeOf(cell));
  }

  #two(sign: string, name: string, left: Plan, right: Plan): MathNode {
    return new OperatorNode(sign, name, [this.#nodeOf(left), this.#nodeOf(right)]);
  }

  /** Times first, then divided: a division that comes out even stays exact. */
  #scaled(plan: Plan & { op: 'scale' }): MathNode {
    const top = fromFraction(plan.by.mul(plan.by.d));
    const bottom = new Dec(plan.by.d.toString());
    const node = this.#nodeOf(plan.of);
    const scaled = top.eq(1) ? node : new OperatorNode('*', 'times', [node, new ConstantNode(top)]);
    return bottom.eq(1)
      ? scaled
      : new OperatorNode('/', 'over', [scaled, new ConstantNode(bottom)]);
  }

  #power(plan: Plan & { op: 'power' }): MathNode {
    return new OperatorNode('^', plan.power === 2 ? 'squared' : 'cubed', [this.#nodeOf(plan.of)]);
  }
}

const ONE = new Dec(1);

const ROUND: Readonly<Record<Way, string>> = {
  up: 'roundUp',
  down: 'roundDown',
  nearest: 'roundNearest',
};

const SOME = { 'nothing-left': 'someLeft', 'piece-too-long': 'somePieces' } as const;

const COMPARE: Readonly<Record<Relation, string>> = {
  is: 'isSame',
  'is-not': 'isOther',
  more: 'isMore',
  less: 'isLess',
  'at-least': 'isAtLeast',
  'at-most': 'isAtMost',
};

function made(node: MathNode): Compiled {
  return node._compile(functions, NO_NAMES);
}

/** The cell whose value an item of a total is, be it in another unit. */
function cellOf(plan: Plan): CellId | null {
  let item = plan;
  while (item.op === 'scale') item = item.of;
  return item.op === 'cell' ? item.cell : null;
}

const NO_OPERANDS: readonly Plan[] = [];

export function operandsOf(plan: Plan): readonly Plan[] {
  switch (plan.op) {
    case 'constant':
    case 'pi':
    case 'unknown':
    case 'text':
    case 'yes-no':
    case 'cell':
      return NO_OPERANDS;
    case 'add':
    case 'subtract':
    case 'multiply':
    case 'divide':
    case 'compare':
    case 'and':
    case 'or':
      return [plan.left, plan.right];
    case 'scale':
    case 'power':
    case 'root':
    case 'some':
    case 'not':
      return [plan.of];
    case 'round':
      return plan.step ? [plan.of, plan.step] : [plan.of];
    case 'choose':
      return [...plan.branches.flatMap((b) => [b.when, b.then]), plan.otherwise];
    case 'greatest':
    case 'least':
    case 'total':
    case 'average':
      return plan.items;
    case 'column':
      return [plan.of];
    case 'look-up':
      return [
        ...plan.wanted.map((w) => w.value),
        ...plan.rows.flatMap((row) => [...row.cells, row.answer]),
      ];
  }
}

/** How many operations a plan may have, counted as often as they stand in it, to be made in one go. */
const SMALL = 100;

function isSmall(plan: Plan): boolean {
  return counted(plan, 0) <= SMALL;
}

/** Never deeper than it counts, so that this may call itself. */
function counted(plan: Plan, before: number): number {
  let count = before + 1;
  switch (plan.op) {
    case 'constant':
    case 'pi':
    case 'unknown':
    case 'text':
    case 'yes-no':
    case 'cell':
      return count;
    default:
      for (const operand of operandsOf(plan)) {
        if (count > SMALL) break;
        count = counted(operand, count);
      }
      return count;
  }
}

/** Every stretch of a plan once, operands before what uses them, and those that are used more than once. */
function inOrder(plan: Plan): { order: readonly Plan[]; shared: ReadonlySet<Plan> } {
  const order: Plan[] = [];
  const shared = new Set<Plan>();
  const met = new Set<Plan>([plan]);
  const path: { readonly plan: Plan; readonly operands: readonly Plan[]; next: number }[] = [];
  path.push({ plan, operands: operandsOf(plan), next: 0 });
  for (let top = path.at(-1); top; top = path.at(-1)) {
    const operand = top.operands[top.next];
    if (operand === undefined) {
      order.push(top.plan);
      path.pop();
      continue;
    }
    top.next += 1;
    if (met.has(operand)) shared.add(operand);
    else {
      met.add(operand);
      path.push({ plan: operand, operands: operandsOf(operand), next: 0 });
    }
  }
  return { order, shared };
}
