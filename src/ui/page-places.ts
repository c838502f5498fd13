// Where things stand on the page: how far it is scrolled, where each row is for the rod, going back to where
// one left off, and bringing a row into view. Measured all at once, in a frame in which nothing was written.
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { CellId } from '../language/tree.ts';
import { RodMeasure, sameMarks } from './rod-measure.ts';
import type { RodMark, RodView } from './rod-scale.ts';
import type { Session } from './session.ts';
import type { StoryCell } from './story-cell.ts';
import type { StoryPart } from './story-part.ts';

/** The page, as far as places need it. */
interface Page extends ReactiveControllerHost {
  readonly session: Session;
  readonly renderRoot: HTMLElement | DocumentFragment;
  readonly isConnected: boolean;
}

/** Whether the row that is brought into view is given the keyboard. */
export type Keyboard = 'goes' | 'stays';

export class PagePlaces implements ReactiveController {
  marks: readonly RodMark[] = [];
  view: RodView = { height: 0, scroll: 0, total: 0 };
  readonly #page: Page;
  readonly #rod = new RodMeasure();
  #sizes: ResizeObserver | null = null;
  #measuring = 0;
  #rowsMoved = true;
  #leftAt: number | null = null;
  /** Where one came back to, until something is done there: pictures come in late and push the rows down. */
  #backAt: number | null = null;
  #doings: AbortController | null = null;
  /** Which cell to bring into view when it has been drawn. */
  #wanted: { readonly cell: CellId; readonly keyboard: Keyboard } | null = null;

  /** Which part's heading to bring into view when it has been drawn. */
  #wantedPart: string | null = null;

  constructor(page: Page) {
    this.#page = page;
    page.addController(this);
  }

  hostDisconnected(): void {
    this.#sizes?.disconnect();
    this.#sizes = null;
    this.#doings?.abort();
    this.#doings = null;
  }

  /** The page stands for the first time, or again: keep measuring what changes its height. */
  watch(): void {
    this.#sizes = new ResizeObserver(() => {
      if (this.#backAt !== null) this.scrollTo(this.#backAt);
      this.measureSoon('all');
    });
    this.#sizes.observe(this.#scroller);
    this.#sizes.observe(this.#found('.parts'));
    this.#doings?.abort();
    this.#doings = new AbortController();
    const listening = { capture: true, passive: true, signal: this.#doings.signal };
    for (const doing of ['wheel', 'pointerdown', 'touchmove', 'keydown']) {
      window.addEventListener(doing, () => (this.#backAt = null), listening);
    }
  }

  get scroll(): number {
    return this.#scroller?.scrollTop ?? 0;
  }

  scrollTo(to: number): void {
    this.#scroller.scrollTop = to;
  }

  scrolled = (): void => this.measureSoon('view');

  /** To where one left off: at once, and again when all rows stand and heights are true. */
  comeBack(to: number): void {
    this.#leftAt = to;
    void this.#page.updateComplete.then(() => {
      this.scrollTo(this.#leftAt ?? 0);
      this.measureSoon('all');
    });
  }

  /** After the page was drawn; `all` tells that no rows are still to come. */
  drawn(all: 'all' | 'some'): void {
    if (all === 'all' && this.#leftAt !== null) {
      const to = this.#leftAt;
      this.#leftAt = null;
      this.#backAt = to;
      requestAnimationFrame(() => this.scrollTo(to));
    }
    if (this.#wanted !== null || this.#wantedPart !== null) void this.#showWanted();
    this.measureSoon(all === 'some' && this.marks.length > 0 ? 'view' : 'all');
  }

  bring(cell: CellId, keyboard: Keyboard): void {
    this.#backAt = null;
    this.#wanted = { cell, keyboard };
  }

  bringPart(part: string): void {
    this.#backAt = null;
    this.#wantedPart = part;
  }

  /** What has opened in a row, a line to write in or a tape, is wholly in sight. */
  keepInSight(cell: CellId): void {
    const row = this.#row(cell);
    void row?.updateComplete.then(() =>
      requestAnimationFrame(() => row.scrollIntoView({ block: 'nearest' })),
    );
  }

  measureSoon(what: 'all' | 'view'): void {
    if (what === 'all') this.#rowsMoved = true;
    if (this.#measuring) return;
    this.#measuring = requestAnimationFrame(() => {
      this.#measuring = 0;
      if (this.#page.isConnected) this.#measure();
    });
  }

  /** When the parts stand too: a row that was moved is another one in them, or stands elsewhere. */
  async #showWanted(): Promise<void> {
    const parts = [...this.#page.renderRoot.querySelectorAll<StoryPart>('story-part')];
    await Promise.all(parts.map((part) => part.updateComplete));
    if (!this.#page.isConnected) return;
    if (this.#wanted !== null) this.#show(this.#wanted.cell, this.#wanted.keyboard);
    if (this.#wantedPart !== null) this.#showPart(this.#wantedPart);
  }

  get #scroller(): HTMLElement {
    return this.#found('.scroll');
  }

  #found(selector: string): HTMLElement {
    return this.#page.renderRoot?.querySelector(selector) as HTMLElement;
  }

  /** Brings a row into view and gives it the keyboard, unless something is being written in it. */
  #show(cell: CellId, keyboard: Keyboard): void {
    const row = this.#row(cell);
    if (!row) return;
    this.#wanted = null;
    const page = this.#scroller.getBoundingClientRect();
    const box = row.getBoundingClientRect();
    const margin = Math.min(110, page.height / 5);
    const away = box.top < page.top + margin || box.bottom > page.bottom - margin;
    if (away) row.scrollIntoView({ block: 'center' });
    // On a button one presses many times it stays; from row to row it goes along.
    if (keyboard === 'stays' && !isLost() && !isOnRow()) return;
    const { session } = this.#page;
    void row.updateComplete.then(() => {
      if (session.writing === null && session.trial === null) row.focus();
    });
  }

  /** Its heading has the keyboard, from which the part is moved and duplicated. */
  #showPart(key: string): void {
    const parts = [...this.#page.renderRoot.querySelectorAll<StoryPart>('story-part')];
    const part = parts.find(({ content }) => content.key === key);
    if (!part) return;
    this.#wantedPart = null;
    void part.updateComplete.then(() => {
      part.scrollIntoView({ block: 'start' });
      part.renderRoot.querySelector<HTMLElement>('[data-heading]')?.focus({ preventScroll: true });
    });
  }

  #row(cell: CellId): StoryCell | null {
    const parts = [...this.#page.renderRoot.querySelectorAll<StoryPart>('story-part')];
    const rows = parts.flatMap((part) => [
      ...part.renderRoot.querySelectorAll<StoryCell>('story-cell'),
    ]);
    return rows.find((row) => row.cell.id === cell) ?? null;
  }

  #measure(): void {
    const { scrollTop, clientHeight, scrollHeight } = this.#scroller;
    const { height, scroll, total } = this.view;
    if (clientHeight !== height || scrollTop !== scroll || scrollHeight !== total) {
      this.view = { height: clientHeight, scroll: scrollTop, total: scrollHeight };
      this.#page.requestUpdate();
    }
    if (!this.#rowsMoved && scrollHeight === total) return;
    this.#rowsMoved = false;
    const { parts } = this.#page.session.door.notebook;
    const places = new Map(parts.map(({ key }, place) => [key, place]));
    const marks = this.#rod.marks(
      this.#page.renderRoot.querySelectorAll<StoryPart>('story-part'),
      this.#scroller.getBoundingClientRect().top - scrollTop,
      (key) => places.get(key) ?? 0,
    );
    if (sameMarks(marks, this.marks)) return;
    this.marks = marks;
    this.#page.requestUpdate();
  }
}

/** Some row, or the heading of a part, has the keyboard. */
function isOnRow(): boolean {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement && at.tagName !== 'STORY-PART') {
    at = at.shadowRoot.activeElement;
  }
  return at?.tagName === 'STORY-PART';
}

/** Nothing on the page has the keyboard, as when what had it is no longer there. */
export function isLost(): boolean {
  return document.activeElement === null || document.activeElement === document.body;
}
