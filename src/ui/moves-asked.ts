// Questions about what moves a result, put to a worker; where there is none, or it does not come, they are worked on the
// page in goes so short that nobody waits for it. Of one kind only the latest is answered.
import type { Job } from '../moves-it/figures.ts';
import { type Answer, type Question, answerTo } from '../moves-it/questions.ts';
import { inShortGoes } from './short-goes.ts';

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
  readonly #pending = new Map<Question['kind'], Pending>();
  #ids = 0;

  /** `make` may give none, and may throw. */
  constructor(make: () => Worker | null) {
    this.#make = make;
  }

  /** `job` has the totals among its cells; `going` hears how much is done, 0 to 1. Null: it was overtaken. */
  ask(job: Job, question: Question, going: (done: number) => void): Promise<Answer | null> {
    const id = ++this.#ids;
    const { text } = job.notebook;
    this.#pending.get(question.kind)?.answered(null);
    return new Promise((answered, failed) => {
      const pending = { id, text, question, job, going, answered, failed };
      this.#pending.set(question.kind, pending);
      const worker = this.#here();
      const message: ToWorker = { id, text, question };
      if (worker) worker.postMessage(message);
      else void this.#onPage(pending);
    });
  }

  /** The worker goes; it comes again with the next question. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    for (const { answered } of this.#pending.values()) answered(null);
    this.#pending.clear();
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

  #heard = ({ data }: MessageEvent<FromWorker>): void => {
    const pending = [...this.#pending.values()].find(({ id }) => id === data.id);
    if (!pending) return;
    if (data.kind === 'going') {
      pending.going(data.done);
      return;
    }
    this.#pending.delete(pending.question.kind);
    pending.answered(data.answer);
  };

  /** What it was asked is worked here instead. */
  #lost = (event: Event): void => {
    event.preventDefault();
    this.#worker?.terminate();
    this.#worker = null;
    this.#without = true;
    for (const pending of this.#pending.values()) void this.#onPage(pending);
  };

  async #onPage(pending: Pending): Promise<void> {
    const { job, question, going, answered, failed } = pending;
    const { notebook } = job;
    const isLatest = (): boolean => this.#pending.get(question.kind) === pending;
    try {
      const answer = await inShortGoes(answerTo(job, question), {
        short: SHORT,
        // A notebook that changed in the middle would be worked half as it was.
        goesOn: () => isLatest() && job.notebook === notebook,
        going,
      });
      if (isLatest()) this.#pending.delete(question.kind);
      answered(answer);
    } catch (cause) {
      failed(cause);
    }
  }
}
