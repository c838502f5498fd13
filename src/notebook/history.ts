// What was done and can be undone. Each step keeps the change and the one that takes it back.
import type { Change } from './document.ts';

export interface Step {
  readonly done: Change;
  readonly back: Change;
}

/** How many steps are kept. */
const KEPT = 500;

export class History {
  #past: Step[] = [];
  #future: Step[] = [];

  /** A new step; what had been undone can't be redone any more. */
  record(step: Step): void {
    this.#past.push(step);
    if (this.#past.length > KEPT) this.#past.shift();
    this.#future = [];
  }

  /** What would be undone, or redone. */
  get undoes(): string | null {
    return this.#past.at(-1)?.done.say ?? null;
  }

  get redoes(): string | null {
    return this.#future.at(-1)?.done.say ?? null;
  }

  /** The step to take back, or null. */
  back(): Step | null {
    const step = this.#past.pop();
    if (!step) return null;
    this.#future.push(step);
    return step;
  }

  /** The step to take back for good, or null: it was only tried. */
  drop(): Step | null {
    return this.#past.pop() ?? null;
  }

  /** The step to make again, or null. */
  forward(): Step | null {
    const step = this.#future.pop();
    if (!step) return null;
    this.#past.push(step);
    return step;
  }
}
