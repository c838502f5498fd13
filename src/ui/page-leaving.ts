// Leaving the page and being in the middle of a line: what is not kept yet is kept, and the browser asks where it can't be.
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Binder } from './binder.ts';
import type { Desk } from './desk.ts';
import type { RecordLine } from './record-line.ts';

type Page = ReactiveControllerHost &
  HTMLElement & {
    readonly desk: Desk;
    readonly scrolled: number;
    readonly bound: Binder | null;
  };

export class PageLeaving implements ReactiveController {
  readonly #page: Page;

  constructor(page: Page) {
    this.#page = page;
    page.addController(this);
  }

  hostConnected(): void {
    this.#page.addEventListener('input', this.#typed);
    this.#page.addEventListener('focusout', this.#lineLeft);
    window.addEventListener('pagehide', this.#leaving);
    window.addEventListener('beforeunload', this.#unloading);
    document.addEventListener('visibilitychange', this.#hidden);
  }

  hostDisconnected(): void {
    this.#page.removeEventListener('input', this.#typed);
    this.#page.removeEventListener('focusout', this.#lineLeft);
    window.removeEventListener('pagehide', this.#leaving);
    window.removeEventListener('beforeunload', this.#unloading);
    document.removeEventListener('visibilitychange', this.#hidden);
  }

  #leaving = (): void => {
    void this.#page.desk.leave(this.#page.scrolled);
  };

  /** What is not kept yet would go with the page: the browser asks, and meanwhile it is kept. */
  #unloading = (event: BeforeUnloadEvent): void => {
    if (this.#page.desk.keeping.kind === 'kept' && !this.#page.bound?.waits) return;
    event.preventDefault();
    this.#leaving();
  };

  #hidden = (): void => {
    if (document.visibilityState === 'hidden') this.#leaving();
    else {
      void this.#page.desk.catchUp();
      void this.#page.bound?.catchUp();
    }
  };

  /** In a line that is being written; what is looked for in a table is nobody's work. */
  #typed = (event: Event): void => {
    const { desk } = this.#page;
    const path = event.composedPath();
    const [line] = path;
    const within = (tag: string): boolean =>
      path.some((at) => at instanceof HTMLElement && at.tagName === tag);
    const record = recordLineIn(event);
    if (record) {
      desk.half.typedInRecord(record.words);
      return;
    }
    // The guide has a notebook of its own, in which nothing is kept.
    if (within('GUIDE-PAGE') || (desk.session.writing === null && !within('TABLE-LINE'))) return;
    if (line instanceof HTMLInputElement || line instanceof HTMLTextAreaElement)
      desk.half.typed(line.value);
  };

  /** A row's line is gone with the keyboard, unless the person only went to another window. */
  #lineLeft = (event: Event): void => {
    if (recordLineIn(event)) return;
    const { desk } = this.#page;
    if (desk.session.writing === null && document.hasFocus()) desk.half.done();
  };
}

/** What is half written in the job record stays when one goes from field to field, or puts the record away. */
function recordLineIn(event: Event): RecordLine | null {
  const isOne = (at: EventTarget): at is RecordLine =>
    at instanceof HTMLElement && at.tagName === 'RECORD-LINE';
  return event.composedPath().find(isOne) ?? null;
}
