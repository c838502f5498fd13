// The cells that move, worked exactly with other values beside the notebook, which stays as it is: the same nodes, the
// same decimals and the same cents as in the notebook itself.
import { type Work, compile } from '../engine/compile.ts';
import { toTheCent } from '../engine/cost-line.ts';
import { Fault, type Held, Unknown, Waiting, soFar } from '../engine/held.ts';
import type { Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import { Dec } from '../quantity/decimal.ts';
import { amountMeasure } from '../quantity/measure.ts';
import { MONEY } from '../quantity/dimension.ts';
import type { Asked, Web } from './web.ts';

const DOLLARS = amountMeasure(MONEY);

/** What a moved cell is given: a value as the cell holds it. */
export type Put = Dec | boolean | string;

export class ExactWork {
  readonly #asked: Asked;
  readonly #values: Held[] = [];
  readonly #places = new Map<CellId, number>();
  readonly #steps: { readonly place: number; readonly cell: CellId; readonly work: Work }[] = [];
  readonly #moved: ReadonlySet<CellId>;

  constructor(asked: Asked, web: Web) {
    this.#asked = asked;
    this.#moved = new Set(web.moved);
    for (const { cell, plan, meant, cents } of web.steps) {
      const cells = { values: this.#values, placeOf: (id: CellId) => this.#placeOf(meant(id)) };
      const work = compile(plan, cells, cell);
      this.#steps.push({
        place: this.#placeOf(cell),
        cell,
        work: cents ? () => toTheCent(work(), cents) : work,
      });
    }
  }

  /** Works all that moves with these values in place of those of the notebook; the others stay as they stand there. */
  run(puts: ReadonlyMap<CellId, Put>): void {
    for (const cell of this.#moved) {
      const put = puts.get(cell);
      this.#values[this.#placeOf(cell)] =
        put === undefined ? this.#asIs(cell) : this.#held(cell, put);
    }
    for (const { place, cell, work } of this.#steps) {
      const held = work();
      this.#values[place] =
        held instanceof Fault || held instanceof Waiting ? new Waiting([cell]) : held;
    }
  }

  /** What a cell came to in the last run, or has in the notebook where it does not move; null: no value. */
  value(cell: CellId): Put | null {
    const held = this.#values[this.#placeOf(cell)];
    if (held instanceof Dec || typeof held !== 'object') return held ?? null;
    return 'value' in held ? held.value : null;
  }

  #placeOf(cell: CellId): number {
    let place = this.#places.get(cell);
    if (place === undefined) {
      place = this.#values.length;
      this.#places.set(cell, place);
      this.#values.push(this.#asIs(cell));
    }
    return place;
  }

  #asIs(cell: CellId): Held {
    return heldOf(this.#asked.state(cell).outcome, cell);
  }

  #held(cell: CellId, put: Put): Held {
    if (!(put instanceof Dec) || !this.#asked.workedBy(cell)?.cents) return put;
    return toTheCent(put, DOLLARS);
  }
}

/** As readers of the cell see it. */
function heldOf(outcome: Outcome, cell: CellId): Held {
  switch (outcome.kind) {
    case 'value':
      return soFar(outcome.value, outcome.leftOut);
    case 'unknown':
      return new Unknown(outcome.for);
    case 'waiting':
    case 'fault':
      return new Waiting([cell]);
  }
}
