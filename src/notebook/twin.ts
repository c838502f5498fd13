// A notebook once more, to try several steps on before they are made as one change. A text that is read anew gives ids and
// keys of its own, so whatever is meant in the first is found in the twin by the place where it stands.
import type { CellId } from '../language/tree.ts';
import { difference } from './change.ts';
import type { Cell, Change, Notebook } from './document.ts';
import { Estimate } from './estimate.ts';
import { cellsOf } from './lines.ts';

export class Twin {
  readonly estimate: Estimate;
  readonly #first: Notebook;
  readonly #known: ReadonlySet<CellId>;

  constructor(first: Notebook) {
    this.#first = first;
    this.estimate = new Estimate(first.text);
    this.#known = new Set(this.#cells.map(({ id }) => id));
  }

  /** The cell here that stands where this one stands there. */
  cell(there: CellId): Cell {
    const place = allOf(this.#first).findIndex(({ id }) => id === there);
    const found = this.#cells[place];
    if (!found) throw new Error(`no cell ${there} in the first notebook`);
    return found;
  }

  /** The key here of the part with this key there. */
  part(there: string): string {
    const place = this.#first.parts.findIndex(({ key }) => key === there);
    const found = this.estimate.notebook.parts[place];
    if (!found) throw new Error(`no part "${there}" in the first notebook`);
    return found.key;
  }

  /** The cell that was added here last. */
  get added(): CellId | null {
    return this.#cells.findLast(({ id }) => !this.#known.has(id))?.id ?? null;
  }

  /** All steps as one change of the first. */
  change(say: string): Change {
    return { say, splices: [difference(this.#first.text, this.estimate.notebook.text)] };
  }

  get #cells(): readonly Cell[] {
    return allOf(this.estimate.notebook);
  }
}

function allOf({ parts }: Notebook): readonly Cell[] {
  return parts.flatMap(cellsOf);
}
