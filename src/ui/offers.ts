// The list of names, units and phrases that could go on from what is typed: what stands in it, which one is marked,
// its keys, and where it is laid so that what was read stays in sight.
import {
  html,
  type ReactiveController,
  type ReactiveControllerHost,
  type TemplateResult,
} from 'lit';
import type { CellId } from '../language/tree.ts';
import {
  type Candidate,
  type Completion,
  type Sense,
  completionsAt,
  type Wanted,
} from './completing.ts';

/** What a key did to the list: took one of it, or only moved in it. */
export type Pressed = 'nothing' | 'moved' | Completion;

export class Offers implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  #names: readonly Candidate[] = [];
  #units: readonly Candidate[] = [];
  #sense: ((text: string) => Sense) | null = null;
  #list: readonly Completion[] = [];
  /** What is said beside each, worked out once when the list is made. */
  #hints: readonly (string | null)[] = [];
  /** -1 is none. */
  #marked = -1;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.close();
  }

  get open(): boolean {
    return this.#list.length > 0;
  }

  /** The id of the marked option, for a screen reader. */
  get active(): string | null {
    return this.open && this.#marked >= 0 ? `option-${this.#marked}` : null;
  }

  from(
    names: readonly Candidate[],
    units: readonly Candidate[],
    sense: (text: string) => Sense,
  ): void {
    this.#names = names;
    this.#units = units;
    this.#sense = sense;
  }

  look(text: string, caret: number, wanted: Wanted): void {
    const sense = this.#sense?.(text);
    this.#set(completionsAt(text, caret, this.#names, this.#units, wanted, sense));
  }

  /** These in place of all of what is typed: the words that stand in a column already. */
  put(candidates: readonly Candidate[], typed: string): void {
    this.#set(candidates.map((candidate) => ({ candidate, from: 0, to: typed.length })));
  }

  close(): void {
    this.#set([]);
  }

  /** Keys that move in the list while it is open. */
  press(event: KeyboardEvent): Pressed {
    const count = this.#list.length;
    if (count === 0) return 'nothing';
    switch (event.key) {
      case 'ArrowDown':
        return this.#mark((this.#marked + 1) % count);
      case 'ArrowUp':
        return this.#mark((this.#marked - 1 + count + (this.#marked < 0 ? 1 : 0)) % count);
      case 'Escape':
        this.close();
        return 'moved';
      case 'Enter':
      case 'Tab':
        return event.shiftKey ? 'nothing' : (this.#list[this.#marked] ?? 'nothing');
      default:
        return 'nothing';
    }
  }

  render(shown: (cell: CellId) => string | null, take: (one: Completion) => void): TemplateResult {
    return html`<ul
      class="list"
      id="list"
      role="listbox"
      aria-label="What could go on from here"
      popover="manual"
      ?hidden=${!this.open}
    >
      ${this.#list.map((one, place) => this.#option(one, place, shown, take))}
    </ul>`;
  }

  /**
   * The list stands in the top layer: under all that is said about the line, or over the line where there is
   * no room below, as on a phone with its keyboard up.
   */
  place(listbox: HTMLElement, line: DOMRect, bottom: number): void {
    if (!this.open) {
      if (listbox.matches(':popover-open')) listbox.hidePopover();
      return;
    }
    if (!listbox.matches(':popover-open')) listbox.showPopover();
    const seen = window.visualViewport;
    const floor = seen ? seen.offsetTop + seen.height : window.innerHeight;
    const ceiling = seen?.offsetTop ?? 0;
    const { offsetHeight: height, offsetWidth: width } = listbox;
    const below = bottom + height < floor || line.top - ceiling < height;
    const left = Math.max(4, Math.min(line.left, window.innerWidth - width - 4));
    listbox.style.left = `${left}px`;
    listbox.style.top = `${below ? bottom : line.top - height - 4}px`;
  }

  #option(
    one: Completion,
    place: number,
    shown: (cell: CellId) => string | null,
    take: (one: Completion) => void,
  ): TemplateResult {
    const { text, label, cell, place: where } = one.candidate;
    const hint = this.#hints[place] ?? null;
    const beside = [cell === null ? null : shown(cell), where, hint].filter(Boolean).join(' · ');
    return html`<li
      role="option"
      id="option-${place}"
      class=${hint === null ? '' : 'phrase'}
      aria-selected=${place === this.#marked ? 'true' : 'false'}
      @mousedown=${(event: Event) => {
        event.preventDefault();
        take(one);
      }}
    >
      <span>${label ?? text}</span>
      <span class="small">${beside}</span>
    </li>`;
  }

  #set(list: readonly Completion[]): void {
    this.#list = list;
    this.#hints = list.map(({ candidate }) => candidate.hint?.() ?? null);
    this.#mark(-1);
  }

  #mark(place: number): 'moved' {
    this.#marked = place;
    this.#host.requestUpdate();
    return 'moved';
  }
}
