// Who is told what happens on the page, and who draws one cell of it.
import type { CellId } from '../language/tree.ts';
import type { Happening, Listener } from './happening.ts';

export class Hearers {
  readonly #listeners = new Set<Listener>();
  readonly #watchers = new Map<CellId, Set<() => void>>();

  /** Returns how to stop listening. */
  listen(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Called when this cell has to be drawn again. Returns how to stop. */
  watch(cell: CellId, draw: () => void): () => void {
    const watchers = this.#watchers.get(cell) ?? new Set();
    this.#watchers.set(cell, watchers.add(draw));
    return () => {
      watchers.delete(draw);
      if (watchers.size === 0) this.#watchers.delete(cell);
    };
  }

  tell(happening: Happening): void {
    for (const listener of this.#listeners) listener(happening);
  }

  redraw(cells: readonly (CellId | null)[]): void {
    for (const cell of new Set(cells)) {
      if (cell !== null) for (const draw of this.#watchers.get(cell) ?? []) draw();
    }
  }
}
