// Nodes of our own among those of mathjs: reading a cell, and everything that must not work all its operands.
import { ZERO } from '../quantity/decimal.ts';
import type { CellId } from '../language/tree.ts';
import {
  Fault,
  type Held,
  SoFar,
  Unknown,
  Waiting,
  isNoValue,
  soFar,
  union,
  withoutValue,
} from './held.ts';
import { type Compiled, type MathNode, Node, plus } from './math.ts';

/** Reads a place in an array of values, there and then: a cell's, or a step's that was worked before. */
export class PlaceNode extends Node {
  readonly values: readonly Held[];
  readonly place: number;

  constructor(values: readonly Held[], place: number) {
    super();
    this.values = values;
    this.place = place;
  }

  override get type(): string {
    return 'PlaceNode';
  }

  override _compile(): Compiled {
    const { values, place } = this;
    return () => values[place];
  }
}

/** Something held that is no plain value: a `?`. */
export class HeldNode extends Node {
  readonly held: Held;

  constructor(held: Held) {
    super();
    this.held = held;
  }

  override get type(): string {
    return 'HeldNode';
  }

  override _compile(): Compiled {
    const { held } = this;
    return () => held;
  }
}

/** The items of a list, in an array. */
export class ListNode extends Node {
  readonly items: readonly MathNode[];

  constructor(items: readonly MathNode[]) {
    super();
    this.items = items;
  }

  override get type(): string {
    return 'ListNode';
  }

  override _compile(math: object, names: object): Compiled {
    const works = this.items.map((item) => item._compile(math, names));
    const list = (...context: Parameters<Compiled>): readonly Held[] =>
      works.map((work) => work(...context));
    // Only functions that take a list get to see it.
    return list as unknown as Compiled;
  }
}

/** One item of a total; `cell` where it is a cell's value as it stands. */
export interface Item {
  readonly node: MathNode;
  readonly cell: CellId | null;
}

/** The sum of what is known, with the lines that are not. */
export class TotalNode extends Node {
  readonly items: readonly Item[];

  constructor(items: readonly Item[]) {
    super();
    this.items = items;
  }

  override get type(): string {
    return 'TotalNode';
  }

  override _compile(math: object, names: object): Compiled {
    const works = this.items.map((item) => item.node._compile(math, names));
    const cells = this.items.map((item) => item.cell);
    return (scope, args, context) => {
      let sum: Held | null = null;
      let leftOut: Set<CellId> | null = null;
      let missing: Unknown | null = null;
      for (let i = 0; i < works.length; i++) {
        const item = works[i](scope, args, context);
        if (item instanceof Fault) return item;
        if (item instanceof Unknown || item instanceof Waiting) {
          const cell = cells[i] ?? null;
          leftOut = leave(leftOut, cell === null ? item.for : [cell]);
          const unknown = new Unknown(item.for);
          missing = missing === null ? unknown : new Unknown(union(missing.for, unknown.for));
        } else if (item instanceof SoFar) {
          leftOut = leave(leftOut, item.leftOut);
          sum = sum === null ? item.value : plus(sum, item.value);
        } else sum = sum === null ? item : plus(sum, item);
      }
      if (sum === null) return missing ?? ZERO;
      return leftOut === null || isNoValue(sum) || sum instanceof SoFar
        ? sum
        : soFar(sum, [...leftOut]);
    };
  }
}

function leave(leftOut: Set<CellId> | null, cells: readonly CellId[]): Set<CellId> {
  const all = leftOut ?? new Set<CellId>();
  for (const cell of cells) all.add(cell);
  return all;
}

/** The first branch whose condition holds; the others are not worked. */
export class ChooseNode extends Node {
  readonly branches: readonly { readonly when: MathNode; readonly then: MathNode }[];
  readonly otherwise: MathNode;

  constructor(branches: ChooseNode['branches'], otherwise: MathNode) {
    super();
    this.branches = branches;
    this.otherwise = otherwise;
  }

  override get type(): string {
    return 'ChooseNode';
  }

  override _compile(math: object, names: object): Compiled {
    const whens = this.branches.map((branch) => branch.when._compile(math, names));
    const thens = this.branches.map((branch) => branch.then._compile(math, names));
    const otherwise = this.otherwise._compile(math, names);
    return (scope, args, context) => {
      for (let i = 0; i < whens.length; i++) {
        const when = whens[i](scope, args, context);
        if (when === true) return thens[i](scope, args, context);
        if (when !== false) return unanswered(when);
      }
      return otherwise(scope, args, context);
    };
  }
}

/** `and` and `or`: the second is worked only where the first doesn't settle it; an unknown one settles nothing. */
export class JoinNode extends Node {
  readonly settles: boolean;
  readonly left: MathNode;
  readonly right: MathNode;

  /** `by`: the answer that one side alone settles: no for `and`, yes for `or`. */
  constructor(by: boolean, left: MathNode, right: MathNode) {
    super();
    this.settles = by;
    this.left = left;
    this.right = right;
  }

  override get type(): string {
    return 'JoinNode';
  }

  override _compile(math: object, names: object): Compiled {
    const { settles } = this;
    const left = this.left._compile(math, names);
    const right = this.right._compile(math, names);
    return (scope, args, context) => {
      const first = left(scope, args, context);
      if (first === settles) return first;
      const second = right(scope, args, context);
      if (typeof first === 'boolean') {
        return typeof second === 'boolean' ? second : unanswered(second);
      }
      if (first instanceof Unknown && second === settles) return second;
      return withoutValue(unanswered(first), second);
    };
  }
}

/** Where a yes or no is needed: what there is instead of one. */
export function unanswered(held: Held): Fault | Unknown | Waiting {
  if (isNoValue(held)) return held;
  if (held instanceof SoFar) return new Unknown(held.leftOut);
  throw new TypeError(`a yes or no is needed, not ${String(held)}`);
}
