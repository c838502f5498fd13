// Rows that were pasted for the job record and are not put in yet: kept as they stand, and there again at the next visit.
import type { Shelf } from '../store/shelf.ts';

export class RowsLeft {
  readonly #shelf: Shelf;
  /** What still has to be written, for each notebook; a later text takes the place of one that waits. */
  readonly #waiting = new Map<string, string>();
  #working: Promise<void> | null = null;

  constructor(shelf: Shelf) {
    this.#shelf = shelf;
  }

  /** Empty where none were left. */
  async of(notebook: string): Promise<string> {
    return this.#waiting.get(notebook) ?? (await this.#shelf.rows(notebook).catch(() => ''));
  }

  /** These stand in the field by now; resolves when they are kept, or can't be. */
  keep(notebook: string, text: string): Promise<void> {
    this.#waiting.set(notebook, text);
    this.#working ??= this.#write().finally(() => (this.#working = null));
    return this.#working;
  }

  async #write(): Promise<void> {
    for (;;) {
      const [next] = this.#waiting;
      if (!next) return;
      const [notebook, text] = next;
      await this.#shelf.keepRows(notebook, text).catch(() => undefined);
      if (this.#waiting.get(notebook) === text) this.#waiting.delete(notebook);
    }
  }
}
