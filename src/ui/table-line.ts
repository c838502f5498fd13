// The line in which a cell of a table's row is written, or what a column works: as a formula's line, in a cell's width.
// Properties: `session`, `cell` (which holds the table), `place` (row -1: the column's own formula), `text` (what
// stands there, or what opened the line), `opened` (whether all of it is marked).
// Events, for a person's act: `keep` with the text and where to go then, `leave`.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Cell } from '../notebook/document.ts';
import type { Draft } from '../notebook/estimate.ts';
import type { Report } from '../words/report.ts';
import type { Completion, Wanted } from './completing.ts';
import { formulaLook } from './formula-look.ts';
import { mirrored, problemsOf, problemsSaid, said } from './formula-words.ts';
import { look } from './look.ts';
import { Offers } from './offers.ts';
import { isWords, rowOffers, textsLike, workedIn } from './row-names.ts';
import type { Session } from './session.ts';
import { slotSaid } from './slot-said.ts';
import type { Place } from './table-words.ts';
import { valueSaid } from './value-words.ts';

/** Where the keyboard goes once a cell is kept: it stays, to the next cell or the one before, to the row below. */
export type Goes = 'stays' | 'on' | 'back' | 'below';

export interface KeptText {
  readonly text: string;
  readonly goes: Goes;
}

@customElement('table-line')
export class TableLine extends LitElement {
  static override styles = [
    look,
    formulaLook,
    css`
      :host {
        font-weight: 400;
      }
      .sheet {
        margin: 0;
        padding: 0 0 0.2rem;
        width: max-content;
        min-width: 100%;
      }
      .field {
        min-width: 9rem;
      }
      .mirror,
      .line {
        font-size: inherit;
        padding: 0.1rem 0.35rem;
      }
      .mirror {
        min-height: 1.6rem;
      }
      .said,
      .slot,
      .problem {
        width: 0;
        min-width: min(26ch, 70vw);
        font-size: var(--small);
        white-space: normal;
        text-align: left;
        font-weight: 400;
      }
      @media (pointer: coarse) {
        .mirror,
        .line {
          font-size: 1rem;
          min-height: 2.5rem;
          padding-top: 0.4rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: Cell;
  @property({ attribute: false }) place: Place = { row: 0, column: 0 };
  @property({ attribute: false }) text = '';
  @property() opened: 'all' | 'end' = 'all';

  @state() private typed = '';
  @state() private draft: Draft | null = null;
  @state() private caret = 0;
  @query('input') private input!: HTMLInputElement;
  @query('.mirror') private mirror!: HTMLElement;
  @query('.list') private listbox!: HTMLElement;
  @query('.sheet') private sheet!: HTMLElement;
  readonly #offers = new Offers(this);
  #problems: readonly Report[] = [];
  #done = false;

  override connectedCallback(): void {
    super.connectedCallback();
    this.typed = this.text;
    const { names, units, sense } = rowOffers(this.session.door, this.cell, this.place);
    this.#offers.from(names, units, sense);
    this.#read();
  }

  protected override firstUpdated(): void {
    this.input.focus();
    if (this.opened === 'all') this.input.select();
    else this.input.setSelectionRange(this.typed.length, this.typed.length);
  }

  protected override updated(): void {
    this.mirror.scrollLeft = this.input.scrollLeft;
    const { bottom } = this.sheet.getBoundingClientRect();
    this.#offers.place(this.listbox, this.input.getBoundingClientRect(), bottom);
  }

  /** What is written now: for whoever keeps it when something else takes the keyboard. */
  get written(): string {
    return this.typed;
  }

  protected override render(): TemplateResult {
    const { open, active } = this.#offers;
    const told = open ? this.#problems.filter((one) => !this.#isBeingTyped(one)) : this.#problems;
    return html`<div class="sheet">
      <div class="field">
        <div class="mirror" aria-hidden="true">${mirrored(this.typed, this.draft, told)}</div>
        <input
          class="line"
          role="combobox"
          aria-label=${this.#label()}
          aria-autocomplete="list"
          aria-haspopup="listbox"
          aria-expanded=${open ? 'true' : 'false'}
          aria-controls="list"
          aria-activedescendant=${active ?? nothing}
          aria-describedby="said"
          aria-invalid=${this.#problems.length > 0 ? 'true' : 'false'}
          .value=${this.typed}
          autocapitalize="off"
          autocomplete="off"
          spellcheck="false"
          enterkeyhint="done"
          @input=${this.#input}
          @keydown=${this.#key}
          @keyup=${this.#moved}
          @pointerup=${this.#moved}
          @focus=${this.#moved}
          @compositionend=${() => this.#offer('unasked')}
          @scroll=${() => (this.mirror.scrollLeft = this.input.scrollLeft)}
          @click=${() => this.#offers.close()}
          @blur=${() => this.#offers.close()}
        />
      </div>
      ${this.#offers.render(
        (id) => valueSaid(this.session.door, id),
        (one) => this.#take(one),
      )}
      <p class="slot" aria-live="polite">${slotSaid(this.typed, this.caret)}</p>
      <div class="said" id="said" aria-live="polite">${this.#said()}</div>
      ${problemsSaid(told, (formula) => this.#write(formula))}
    </div>`;
  }

  #label(): string {
    const name = this.cell.table?.columns[this.place.column]?.name ?? '';
    if (this.place.row < 0) return `What ${name || 'this column'} works in every row`;
    return `${name}, row ${this.place.row + 1}`;
  }

  #said(): unknown {
    const { place, typed, draft } = this;
    const blank = typed.trim() === '';
    if (blank && place.row < 0) {
      return html`<span class="small">Nothing: each row says its own.</span>`;
    }
    if (blank && this.#formula() !== null) {
      return html`<span class="small">Left to its column: ${draft?.shown?.text ?? '?'}</span>`;
    }
    // Words in a column of words are what they are.
    if (!blank && !draft) return nothing;
    return html`${said(this.session, typed, draft, this.#problems)}
    ${place.row < 0 && draft?.shown ? html`<span class="small">in the first row</span>` : nothing}`;
  }

  #formula(): string | null {
    return this.cell.table?.columns[this.place.column]?.formula ?? null;
  }

  #read(): void {
    const { typed, cell, place, session } = this;
    const left = place.row < 0 ? '' : (this.#formula() ?? '');
    const asked = typed.trim() === '' ? left : typed;
    const words = asked === '' || isWords(cell, place, typed.trim());
    const { row, column } = workedIn(place);
    this.draft = words ? null : session.door.draftInRow(cell.id, row, column, asked);
    this.#problems = this.draft && typed.trim() !== '' ? problemsOf(this.draft) : [];
  }

  /** A word that is not yet whole is no mistake. */
  #isBeingTyped({ spots }: Report): boolean {
    const caret = this.input.selectionStart ?? this.typed.length;
    const behind = (to: number): boolean => this.typed.slice(to, caret).trim() === '';
    return spots.some(({ from, to }) => from <= caret && (caret <= to || behind(to)));
  }

  #moved = (): void => {
    this.caret = this.input.selectionStart ?? this.typed.length;
  };

  #input = (event: InputEvent): void => {
    this.typed = this.input.value;
    this.#moved();
    this.#read();
    if (!event.isComposing) this.#offer('unasked');
  };

  #offer(wanted: Wanted): void {
    const { cell, place, typed } = this;
    // Its other rows hold words: this one may be one of them.
    if (typed.trim() !== '' && ['', typed.trim()].some((text) => isWords(cell, place, text))) {
      this.#offers.put(textsLike(cell, place, typed), typed);
      return;
    }
    const caret = this.input.selectionStart ?? typed.length;
    this.#offers.look(typed, caret, wanted);
  }

  #take({ candidate, from, to }: Completion): void {
    const text = this.typed.slice(0, from) + candidate.text + this.typed.slice(to);
    this.#write(text, from + candidate.text.length, candidate.text.endsWith(' ') ? 'more' : 'done');
  }

  #write(text: string, caret = text.length, then: 'more' | 'done' = 'done'): void {
    this.typed = text;
    this.#offers.close();
    this.#read();
    void this.updateComplete.then(() => {
      this.input.focus();
      this.input.setSelectionRange(caret, caret);
      this.#moved();
      if (then === 'more') this.#offer('unasked');
    });
  }

  #key = (event: KeyboardEvent): void => {
    // The guide can be asked for in the middle of a row.
    if (event.key === 'F1') return;
    event.stopPropagation();
    if (event.isComposing) return;
    const pressed = this.#offers.press(event);
    if (typeof pressed === 'object') this.#take(pressed);
    else if (pressed === 'nothing' && !this.#ownKey(event)) return;
    event.preventDefault();
  };

  #ownKey(event: KeyboardEvent): boolean {
    const digit = /^Digit([1-9])$/.exec(event.code)?.[1];
    if (event.altKey && digit) {
      const fix = this.#problems.flatMap(({ fixes }) => fixes)[Number(digit) - 1];
      if (fix) this.#write(fix.formula);
      return fix !== undefined;
    }
    switch (event.key) {
      case ' ':
        if (event.ctrlKey) this.#offer('asked');
        return event.ctrlKey;
      case 'ArrowDown':
        this.#offer('asked');
        return true;
      case 'Enter':
        this.#keep(event.ctrlKey || event.metaKey ? 'below' : 'stays');
        return true;
      case 'Escape':
        this.#say('leave');
        return true;
      case 'Tab':
        this.#keep(event.shiftKey ? 'back' : 'on');
        return true;
      default:
        return false;
    }
  }

  #keep(goes: Goes): void {
    this.#say('keep', { text: this.typed, goes } satisfies KeptText);
  }

  /** Only once: taking the line away blurs it. Refused, it is still here and can be tried again. */
  #say(what: 'keep' | 'leave', detail?: KeptText): void {
    if (this.#done) return;
    this.#done = true;
    this.dispatchEvent(new CustomEvent(what, { detail }));
    queueMicrotask(() => {
      this.#done = false;
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'table-line': TableLine;
  }
}
