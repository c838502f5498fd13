// Rows of a table by what stands in them, for look-ups that ask for the same again and again. It leaves out only
// rows of which it is certain that they fail: a row with a cell without a value, or with a total that leaves lines
// out, is always among those to be tried, since the search may have to stop there.
import type { Relation } from '../language/tree.ts';
import { Dec, snapped } from '../quantity/decimal.ts';
import type { Held } from './held.ts';

interface Condition {
  readonly relation: Relation;
  readonly turn: () => object | null;
}

export interface AlikeRows {
  /** Rows to be tried, in the table's order. */
  readonly rows: readonly number[];
  /** The first condition fails in all rows that are left out; or they may meet some of the conditions before one fails. */
  readonly leaves: 'rows that meet nothing' | 'rows to be asked';
}

/** With fewer rows than this they are tried one after the other. */
const WORTH_IT = 16;

export class RowIndex {
  readonly #conditions: readonly Condition[];
  readonly #many: number;
  /** The conditions for the same; these make the key of a row. */
  readonly #same: readonly number[];
  /** The turns of the columns when the rows were last put in order, or were first asked for. */
  #turns: readonly object[] | null = null;
  #byKey: Map<string, number[]> | null = null;
  /** Rows of which it can't be told. */
  #open: readonly number[] = [];
  /** What stands in the first condition's column, where that asks for the same and every row can be told. */
  #first: ReadonlySet<string> | null = null;

  constructor(conditions: readonly Condition[], many: number) {
    this.#conditions = conditions;
    this.#many = many;
    this.#same = conditions.flatMap(({ relation }, i) => (relation === 'is' ? [i] : []));
  }

  /** Null: every row has to be tried. It is made when it is asked a second time with the columns as they were. */
  rowsFor(sides: readonly Held[], cell: (row: number, i: number) => Held): AlikeRows | null {
    if (this.#many < WORTH_IT || this.#same.length === 0) return null;
    const key = keyOf(this.#same, (i) => sides[i]);
    if (key === null) return null;
    if (!this.#isOfNow()) return null;
    const byKey = (this.#byKey ??= this.#made(cell));
    const alike = byKey.get(key) ?? [];
    const rows = this.#open.length === 0 ? alike : inOrder(alike, this.#open);
    const first = keyOf([0], (i) => sides[i]);
    const nothing =
      this.#first !== null && first !== null
        ? !this.#first.has(first) || this.#conditions.length === 1
        : false;
    return { rows, leaves: nothing ? 'rows that meet nothing' : 'rows to be asked' };
  }

  /** Have the columns stayed as they were when it was last asked? */
  #isOfNow(): boolean {
    const now = this.#same.map((i) => this.#conditions[i]?.turn() ?? null);
    const turns = this.#turns;
    if (turns !== null && now.every((turn, i) => turn === turns[i])) return true;
    this.#turns = now.every((turn) => turn !== null) ? now : null;
    this.#byKey = null;
    return false;
  }

  #made(cell: (row: number, i: number) => Held): Map<string, number[]> {
    const byKey = new Map<string, number[]>();
    const open: number[] = [];
    const first = this.#same[0] === 0 ? new Set<string>() : null;
    for (let row = 0; row < this.#many; row++) {
      const key = keyOf(this.#same, (i) => cell(row, i));
      if (first) {
        const one = keyOf([0], (i) => cell(row, i));
        if (one !== null) first.add(one);
      }
      if (key === null) open.push(row);
      else {
        const rows = byKey.get(key);
        if (rows) rows.push(row);
        else byKey.set(key, [row]);
      }
    }
    this.#open = open;
    this.#first = first;
    return byKey;
  }
}

/** Two values are the same when their keys are; null where one of them is no plain value. */
function keyOf(which: readonly number[], held: (i: number) => Held | undefined): string | null {
  let key = '';
  for (const i of which) {
    const one = held(i);
    if (one instanceof Dec) key += `${snapped(one).toString()}\0`;
    else if (typeof one === 'string') key += `"${one}\0`;
    else if (typeof one === 'boolean') key += `${String(one)}\0`;
    else return null;
  }
  return key;
}

/** Both lists as one, in order; no row stands in both. */
function inOrder(a: readonly number[], b: readonly number[]): readonly number[] {
  return [...a, ...b].toSorted((x, y) => x - y);
}
