// Questions about what moves a result, put to a worker; where there is none, or it does not come, they are worked on the
// page in goes so short that nobody waits for it.
import type { Job } from '../moves-it/figures.ts';
import { type Answer, type Question, answerTo } from '../moves-it/questions.ts';

export interface ToWorker {
  readonly id: number;
  readonly text: string;
  readonly question: Question;
}

export type FromWorker =
  | { readonly id: number; readonly kind: 'going'; readonly done: number }
  | { readonly id: number; readonly kind: 'answer'; readonly answer: Answer };

/** As long as the page may be busy at a time, in milliseconds. */
const SHORT = 12;

interface Pending extends ToWorker {
  readonly job: Job;
  readonly going: (done: number) => void;
  /** Null: a later question of the same kind took its place. */
  readonly answered: (answer: Answer | null) => void;
  readonly failed: (cause: unknown) => void;
}

export class MovesAsked {
  readonly #make: () => Worker | null;
  #worker: Worker | null = null;
  /** Some browsers have no workers, or not here. */
  #without = false;
  /** What the worker is at. */
  #at: Pending | null = null;
  readonly #waiting = new Map<Question['kind'], Pending>();
  readonly #latest = new Map<Question['kind'], number>();
  #ids = 0;

  /** `make` may give none, and may throw. */
  constructor(make: () => Worker | null) {
    this.#make = make;
  }

  /** `job` has the totals among its cells; `going` hears how much is done, 0 to 1. Null: it was overtaken. */
  ask(job: Job, question: Question, going: (done: number) => void): Promise<Answer | null> {
    const id = ++this.#ids;
    const { text } = job.notebook;
    this.#latest.set(question.kind, id);
    return new Promise((answered, failed) => {
      const pending = { id, text, question, job, going, answered, failed };
      const worker = this.#here();
      if (!worker) {
        void this.#onPage(pending);
        return;
      }
      this.#waiting.get(question.kind)?.answered(null);
      this.#waiting.set(question.kind, pending);
      this.#next(worker);
    });
  }

  /** The worker goes; it comes again with the next question. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    const left = this.#outstanding();
    for (const { answered } of left) answered(null);
    this.#latest.clear();
  }

  #here(): Worker | null {
    if (this.#without || this.#worker) return this.#worker;
    try {
      this.#worker = this.#make();
    } catch {
      this.#worker = null;
    }
    this.#without = this.#worker === null;
    this.#worker?.addEventListener('message', this.#heard);
    this.#worker?.addEventListener('error', this.#lost);
    return this.#worker;
  }

  #next(worker: Worker): void {
    if (this.#at) return;
    const [next] = this.#waiting.values();
    if (!next) return;
    this.#at = next;
    const { id, text, question } = next;
    this.#waiting.delete(question.kind);
    const message: ToWorker = { id, text, question };
    worker.postMessage(message);
  }

  #heard = ({ data }: MessageEvent<FromWorker>): void => {
    const at = this.#at;
    if (!at || at.id !== data.id) return;
    const isLatest = this.#latest.get(at.question.kind) === at.id;
    if (data.kind === 'going') {
      if (isLatest) at.going(data.done);
      return;
    }
    this.#at = null;
    at.answered(isLatest ? data.answer : null);
    if (this.#worker) this.#next(this.#worker);
  };

  /** What it was asked is worked here instead. */
  #lost = (event: Event): void => {
    event.preventDefault();
    this.#worker?.terminate();
    this.#worker = null;
    this.#without = true;
    for (const pending of this.#outstanding()) void this.#onPage(pending);
  };

  #outstanding(): readonly Pending[] {
    const all = [...(this.#at ? [this.#at] : []), ...this.#waiting.values()];
    this.#at = null;
    this.#waiting.clear();
    return all;
  }

  async #onPage({ id, job, question, going, answered, failed }: Pending): Promise<void> {
    const { notebook } = job;
    try {
      const goes = answerTo(job, question);
      for (;;) {
        await breath();
        // A notebook that changed in the middle would be worked half as it was.
        if (this.#latest.get(question.kind) !== id || job.notebook !== notebook) {
          answered(null);
          return;
        }
        const until = performance.now() + SHORT;
        let went = goes.next();
        while (!went.done && performance.now() < until) went = goes.next();
        if (went.done) {
          answered(went.value);
          return;
        }
        going(went.value);
      }
    } catch (cause) {
      failed(cause);
    }
  }
}

/** Until the browser has drawn and heard what there was. */
function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
