// What is done to a notebook: an edit is tried, made and kept so that it can be undone; a move only where every value is kept or may change.
import { changed, inverse } from './change.ts';
import type { Change, Finding } from './document.ts';
import { type Edits, isRefused, refused } from './edits.ts';
import type { Applied, MovedValues } from './estimate-door.ts';
import { History } from './history.ts';
import type { NotebookText } from './notebook-text.ts';
import { readNotebook, refusal } from './read-notebook.ts';
import { tried } from './trying.ts';
import { otherwiseThan, sayOtherwise, valuesOf } from './values-kept.ts';
import type { WorkedNotebook } from './worked-notebook.ts';

export class Changes {
  readonly #history = new History();
  readonly #now: WorkedNotebook;

  constructor(now: WorkedNotebook) {
    this.#now = now;
  }

  canUndo(): string | null {
    return this.#history.undoes;
  }

  canRedo(): string | null {
    return this.#history.redoes;
  }

  undo(): Applied | null {
    const step = this.#history.back();
    return step && this.#move(step.back);
  }

  takeBack(): Applied | null {
    const step = this.#history.drop();
    return step && this.#move(step.back);
  }

  redo(): Applied | null {
    const step = this.#history.forward();
    return step && this.#move(step.done);
  }

  replaceText(change: Change): Applied | Finding {
    const text = changed(this.#now.notebook.text, change);
    const tooMuch = refusal(text, this.#now.longest);
    if (tooMuch) return refused(tooMuch.code, tooMuch.message, null, null);
    return this.#record(
      change,
      readNotebook(text, this.#now.notebook, this.#now.longest) as NotebookText,
    );
  }

  edit(edits: Edits): Applied | Finding {
    const result = tried(this.#now.notebook, edits, this.#now.longest);
    return isRefused(result) ? result : this.#record(result.change, result.notebook);
  }

  /** A move is only made where every cell comes to what it came to, or where that was agreed to. */
  moved(edits: Edits, name: string, values: MovedValues): Applied | Finding {
    const result = tried(this.#now.notebook, edits, this.#now.longest);
    if (isRefused(result)) return result;
    if (values === 'may-change') return this.#record(result.change, result.notebook);
    const before = this.#now.notebook;
    const were = valuesOf(this.#now.asked());
    this.#now.take(result.notebook);
    const others = otherwiseThan(were, this.#now.asked());
    this.#now.take(before);
    const [first] = others;
    if (!first) return this.#record(result.change, result.notebook);
    return refused('values-change', sayOtherwise(name, others), null, first.cell);
  }

  /** A change that already stands, made to the notebook as it was. */
  made(before: NotebookText, change: Change): void {
    this.#history.record({ done: change, back: inverse(before.text, change) });
  }

  #record(change: Change, notebook: NotebookText): Applied {
    this.made(this.#now.notebook, change);
    return { change, ran: this.#now.take(notebook) };
  }

  #move(change: Change): Applied {
    const text = changed(this.#now.notebook.text, change);
    const notebook = readNotebook(text, this.#now.notebook, this.#now.longest) as NotebookText;
    return { change, ran: this.#now.take(notebook) };
  }
}
