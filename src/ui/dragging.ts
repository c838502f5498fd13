// Dragging a row or a part by its handle: a line shows where it would come to stand, the page scrolls on at its
// ends, Esc lets go. Everything that can be dragged can be moved by keys and from the sheet of the cell as well.
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { CellId } from '../language/tree.ts';
import { movePartTo, moveTo } from './moving.ts';
import type { Session } from './session.ts';
import type { StoryPart } from './story-part.ts';

/** What a handle belongs to, told by an event `grip` of the row or the heading. */
export type Gripped = { readonly cell: CellId } | { readonly part: string };

interface Page extends ReactiveControllerHost {
  readonly session: Session;
  readonly renderRoot: HTMLElement | DocumentFragment;
}

/** Where the line is drawn, in the window. */
export interface DropLine {
  readonly top: number;
  readonly left: number;
  readonly width: number;
}

interface Drop {
  readonly part: string;
  readonly place: number;
  readonly line: DropLine;
}

/** So near to the page's end it scrolls on, and so far in each frame. */
const EDGE = 48;
const SCROLLED = 14;

export class Dragging implements ReactiveController {
  line: DropLine | null = null;
  readonly #page: Page;
  #gripped: Gripped | null = null;
  #drop: Drop | null = null;
  #y = 0;
  #frame = 0;

  constructor(page: Page) {
    this.#page = page;
    page.addController(this);
  }

  hostDisconnected(): void {
    this.#letGo();
  }

  start(gripped: Gripped, event: PointerEvent): void {
    if (event.button !== 0) return;
    event.preventDefault();
    this.#gripped = gripped;
    this.#y = event.clientY;
    window.addEventListener('pointermove', this.#moved);
    window.addEventListener('pointerup', this.#dropped);
    window.addEventListener('pointercancel', this.#letGo);
    window.addEventListener('keydown', this.#key, true);
    this.#frame = requestAnimationFrame(this.#scrolled);
  }

  #moved = (event: PointerEvent): void => {
    event.preventDefault();
    this.#y = event.clientY;
    this.#look();
  };

  #look(): void {
    this.#drop = this.#gripped && this.#dropAt(this.#gripped);
    this.line = this.#drop?.line ?? null;
    this.#page.requestUpdate();
  }

  #dropAt(gripped: Gripped): Drop | null {
    const parts = [...this.#page.renderRoot.querySelectorAll<StoryPart>('story-part')];
    if ('cell' in gripped) {
      const over =
        parts.find((part) => part.getBoundingClientRect().bottom > this.#y) ?? parts.at(-1);
      const found = over?.dropAt(this.#y, gripped.cell);
      if (!over || !found) return null;
      return { part: over.content.key, place: found.place, line: lineOver(over, found.top) };
    }
    const others = parts.filter(
      ({ content }) => content.key !== '' && content.key !== gripped.part,
    );
    const below = others.findIndex((part) => middleOf(part) > this.#y);
    const place = below < 0 ? others.length : below;
    const next = others[place];
    const last = others.at(-1);
    if (!last) return null;
    const top = next ? next.getBoundingClientRect().top : last.getBoundingClientRect().bottom;
    return { part: gripped.part, place, line: lineOver(last, top) };
  }

  #scrolled = (): void => {
    const page = this.#page.renderRoot.querySelector('.scroll');
    if (!this.#gripped || !page) return;
    const { top, bottom } = page.getBoundingClientRect();
    const by = this.#y < top + EDGE ? -SCROLLED : this.#y > bottom - EDGE ? SCROLLED : 0;
    if (by !== 0 && this.line) {
      page.scrollTop += by;
      this.#look();
    }
    this.#frame = requestAnimationFrame(this.#scrolled);
  };

  #dropped = (): void => {
    const { session } = this.#page;
    const [gripped, drop] = [this.#gripped, this.#drop];
    this.#letGo();
    if (!gripped || !drop) return;
    if ('cell' in gripped) moveTo(session, gripped.cell, drop.part, drop.place);
    else movePartTo(session, gripped.part, drop.place);
  };

  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    event.stopPropagation();
    this.#letGo();
  };

  #letGo = (): void => {
    window.removeEventListener('pointermove', this.#moved);
    window.removeEventListener('pointerup', this.#dropped);
    window.removeEventListener('pointercancel', this.#letGo);
    window.removeEventListener('keydown', this.#key, true);
    cancelAnimationFrame(this.#frame);
    this.#gripped = null;
    this.#drop = null;
    if (this.line === null) return;
    this.line = null;
    this.#page.requestUpdate();
  };
}

function lineOver(part: Element, top: number): DropLine {
  const { left, width } = part.getBoundingClientRect();
  return { top, left, width };
}

function middleOf(element: Element): number {
  const { top, height } = element.getBoundingClientRect();
  return top + height / 2;
}
