// A given being tried out on its tape: every position is a change that replaces the one before,
// so that in the end one change stands in the list of what can be undone, or none.
import type { CellId } from '../language/tree.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';
import { withPlainValue } from '../notebook/ranges.ts';
import type { Reading } from '../language/reading.ts';
import type { Costs } from '../notebook/recap.ts';

export class Trial {
  readonly cell: CellId;
  /** The formula and the costs when the tape was opened: where the pencil tick stays. */
  readonly from: string;
  readonly costs: Costs;
  /** The amount it began at, as the tape says it: of a range the plain value. */
  readonly began: string;
  readonly #reading: Reading;
  readonly #door: EstimateDoor;
  #moved = false;

  constructor(door: EstimateDoor, cell: CellId) {
    this.#door = door;
    this.cell = cell;
    const { input, reading, range } = door.state(cell);
    this.from = input.formula;
    this.began = (range && door.shown(cell)?.text) || this.from;
    this.#reading = reading;
    this.costs = door.costs();
  }

  /** Is there a change that stands in the notebook now? */
  get moved(): boolean {
    return this.#moved;
  }

  /** Moves the plain value to this amount; the ends of a range stay. Returns the cells worked anew. */
  slide(amount: string): readonly CellId[] {
    const back = this.takeBack();
    if (amount === this.began) return back;
    const formula = withPlainValue(this.#reading, amount);
    const done = this.#door.setFormula(this.cell, formula);
    if (!('change' in done)) return back;
    this.#moved = true;
    return [...new Set([...back, ...done.ran])];
  }

  /** Returns the cells worked anew. */
  takeBack(): readonly CellId[] {
    if (!this.#moved) return [];
    this.#moved = false;
    return this.#door.takeBack()?.ran ?? [];
  }
}
