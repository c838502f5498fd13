// A given being tried out on its tape: every position is a change that replaces the one before,
// so that in the end one change stands in the list of what can be undone, or none.
import type { CellId } from '../language/tree.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';
import type { Costs } from '../notebook/recap.ts';

export class Trial {
  readonly cell: CellId;
  /** The formula and the costs when the tape was opened: where the pencil tick stays. */
  readonly from: string;
  readonly costs: Costs;
  readonly #door: EstimateDoor;
  #moved = false;

  constructor(door: EstimateDoor, cell: CellId) {
    this.#door = door;
    this.cell = cell;
    this.from = door.state(cell).input.formula;
    this.costs = door.costs();
  }

  /** Is there a change that stands in the notebook now? */
  get moved(): boolean {
    return this.#moved;
  }

  /** Returns the cells worked anew. */
  slide(formula: string): readonly CellId[] {
    const back = this.takeBack();
    if (formula === this.from) return back;
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
