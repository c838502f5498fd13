// The cost lines of the notebook in its order, and which of them a recap adds.
import type { CellId, RecapScope } from '../language/tree.ts';
import type { CellInput } from './outcome.ts';

export class RecapLines {
  readonly #byPart = new Map<string, CellInput[]>();
  #all: readonly CellInput[] = [];

  /** Takes the cost lines from all cells, in notebook order. */
  renew(cells: Iterable<CellInput>): void {
    this.#byPart.clear();
    const all: CellInput[] = [];
    for (const cell of cells) {
      if (cell.money?.line !== 'cost') continue;
      all.push(cell);
      const part = this.#byPart.get(cell.part);
      if (part) part.push(cell);
      else this.#byPart.set(cell.part, [cell]);
    }
    this.#all = all;
  }

  of(scope: RecapScope): readonly CellId[] {
    const lines = scope.part === null ? this.#all : (this.#byPart.get(scope.part) ?? []);
    return lines
      .filter((cell) => scope.costKind === 'all' || cell.money?.kind === scope.costKind)
      .map((cell) => cell.id);
  }
}
