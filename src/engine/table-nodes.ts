// Nodes that work a whole column or look a row up.
import type { Relation } from '../language/tree.ts';
import { ZERO } from '../quantity/decimal.ts';
import { Fault, type Held, isNoValue } from './held.ts';
import { RowIndex } from './row-index.ts';
import { type Compiled, type MathNode, Node } from './math.ts';
import { unanswered } from './nodes.ts';

/** A figure of a whole column, worked again only when a cell of the column has changed. */
export class ColumnNode extends Node {
  readonly of: MathNode;
  readonly turn: () => object | null;

  constructor(of: MathNode, turn: () => object | null) {
    super();
    this.of = of;
    this.turn = turn;
  }

  override get type(): string {
    return 'ColumnNode';
  }

  override _compile(math: object, names: object): Compiled {
    const work = this.of._compile(math, names);
    const { turn } = this;
    let last: object | null = null;
    let held: Held = ZERO;
    return (scope, args, context) => {
      const now = turn();
      if (now !== null && now === last) return held;
      last = now;
      held = work(scope, args, context);
      return held;
    };
  }
}

interface LookUpRowNodes {
  readonly cells: readonly MathNode[];
  readonly answer: MathNode;
}

interface WantedNode {
  readonly relation: Relation;
  /** The function that compares so. */
  readonly compare: string;
  readonly value: MathNode;
  /** Another object whenever a cell of the column has changed; null where that can't be told. */
  readonly turn: () => object | null;
}

/**
 * The answer of the first row that meets all conditions. A row of which that can't be told yet stops the search:
 * it could be the one. Where no row is left, the condition that took the last ones is at fault.
 *
 * A look-up that is worked for row after row finds its own rows by what has to be the same in them.
 */
export class LookUpNode extends Node {
  readonly wanted: readonly WantedNode[];
  readonly rows: readonly LookUpRowNodes[];

  constructor(wanted: LookUpNode['wanted'], rows: readonly LookUpRowNodes[]) {
    super();
    this.wanted = wanted;
    this.rows = rows;
  }

  override get type(): string {
    return 'LookUpNode';
  }

  override _compile(math: object, names: object): Compiled {
    const values = this.wanted.map(({ value }) => value._compile(math, names));
    const compares = this.wanted.map(
      ({ compare }) => (math as Readonly<Record<string, (a: Held, b: Held) => Held>>)[compare],
    );
    const cells = this.rows.map((row) => row.cells.map((cell) => cell._compile(math, names)));
    const answers = this.rows.map((row) => row.answer._compile(math, names));
    const index = new RowIndex(
      this.wanted.map(({ relation, turn }) => ({ relation, turn })),
      cells.length,
    );
    return (scope, args, context) => {
      const sides: Held[] = [];
      for (const value of values) {
        const held = value(scope, args, context);
        if (isNoValue(held)) return held;
        sides.push(held);
      }
      // How many of the conditions, in their order, some row has met.
      let furthest = 0;
      /** What the row comes to; null where it does not fit. */
      const tried = (row: number): Held | null => {
        const own = cells[row] ?? [];
        let met = 0;
        let open: Held | null = null;
        let fails = false;
        for (let i = 0; i < sides.length && !fails; i++) {
          const cell = own[i](scope, args, context);
          const answer = compares[i]?.(cell, sides[i]) ?? false;
          if (answer === true) {
            if (open === null) met = i + 1;
          } else if (answer === false) fails = true;
          else open ??= answer;
        }
        if (!fails) return open === null ? answers[row](scope, args, context) : unanswered(open);
        furthest = Math.max(furthest, met);
        return null;
      };
      const alike = index.rowsFor(sides, (row, i) => cells[row][i](scope, args, context));
      for (const row of alike?.rows ?? []) {
        const held = tried(row);
        if (held !== null) return held;
      }
      // Rows that were left out meet no more than what is known of them already, or have to be asked.
      if (alike?.leaves !== 'rows that meet nothing') {
        for (let row = 0; row < cells.length; row++) {
          const held = tried(row);
          if (held !== null) return held;
        }
      }
      return new Fault('no-row', Math.min(furthest, sides.length - 1));
    };
  }
}
