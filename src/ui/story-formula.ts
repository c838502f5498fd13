// The formula of one cell while it is written: a plain input over a copy of itself in which names and
// amounts are tied, what it is read as and comes to, what can't be read with its mends, and names to pick.
// Properties: `session`, `cell`, `what` (the formula, or the amount set by hand). Event: `done` when it was left.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Cell } from '../notebook/document.ts';
import type { Draft } from '../notebook/estimate.ts';
import { Nouns } from '../quantity/nouns.ts';
import { unitPhrases } from '../quantity/units.ts';
import {
  type Candidate,
  type Completion,
  completionsAt,
  namesFor,
  unitsFor,
} from './completing.ts';
import { formulaLook } from './formula-look.ts';
import { mirrored, problemsSaid, said, stay } from './formula-words.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';
import { isPlainAmount } from './spots-in.ts';
import { valueSaid } from './value-words.ts';

@customElement('story-formula')
export class StoryFormula extends LitElement {
  static override styles = [look, formulaLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: Cell;
  @property() what: 'formula' | 'by-hand' = 'formula';

  @state() private text = '';
  @state() private draft: Draft | null = null;
  @state() private list: readonly Completion[] = [];
  /** Which of the list is marked; -1 is none. */
  @state() private marked = -1;
  @query('input.line') private input!: HTMLInputElement;
  @query('.mirror') private mirror!: HTMLElement;
  @query('.list') private listbox!: HTMLElement;
  @query('.said') private said!: HTMLElement;

  #names: readonly Candidate[] = [];
  #units: readonly Candidate[] = [];
  #left = false;

  override connectedCallback(): void {
    super.connectedCallback();
    const { notebook } = this.session.door;
    const { input } = this.session.door.state(this.cell.id);
    this.text = this.what === 'by-hand' ? (input.byHand ?? '') : input.formula;
    this.#names = namesFor(notebook, this.cell.part, this.cell.id);
    const nouns = new Nouns(notebook.settings.counted);
    this.#units = unitsFor(
      [...unitPhrases.keys(), ...nouns.phrases.keys()].filter((p) => p.length > 1),
    );
    this.#read();
  }

  protected override firstUpdated(): void {
    this.input.focus();
    this.input.select();
  }

  protected override updated(): void {
    this.mirror.scrollLeft = this.input.scrollLeft;
    this.#place();
  }

  protected override render(): TemplateResult {
    const blank = this.text.trim() === '';
    const problems = blank ? [] : (this.draft?.reading.problems ?? []);
    const open = this.list.length > 0;
    return html`
      <div class="sheet">
        <div class="field">
          <div class="mirror" aria-hidden="true">${mirrored(this.text, this.draft, problems)}</div>
          <input
            class="line"
            role="combobox"
            aria-label=${
              this.what === 'by-hand'
                ? `Amount set by hand for ${this.cell.name}`
                : `Formula of ${this.cell.name}`
            }
            aria-autocomplete="list"
            aria-haspopup="listbox"
            aria-expanded=${open ? 'true' : 'false'}
            aria-controls="list"
            aria-activedescendant=${open && this.marked >= 0 ? `option-${this.marked}` : nothing}
            aria-describedby="said"
            aria-invalid=${problems.length > 0 ? 'true' : 'false'}
            .value=${this.text}
            autocapitalize="off"
            autocomplete="off"
            spellcheck="false"
            enterkeyhint="done"
            @input=${this.#typed}
            @keydown=${this.#key}
            @compositionend=${() => this.#complete()}
            @scroll=${() => (this.mirror.scrollLeft = this.input.scrollLeft)}
            @click=${this.#closeList}
            @blur=${this.#blurred}
          />
        </div>
        <ul
          class="list"
          id="list"
          role="listbox"
          aria-label="Names and units"
          popover="manual"
          ?hidden=${!open}
        >
          ${this.list.map((one, place) => this.#option(one, place))}
        </ul>
        <div class="said" id="said" aria-live="polite">
          ${said(this.session, this.text, this.draft, problems)}
        </div>
        ${open ? nothing : problemsSaid(problems, (formula) => this.#write(formula))}
        <div class="acts">${this.#acts()}</div>
      </div>
    `;
  }

  #acts(): TemplateResult {
    if (this.#asksByHand()) {
      return html`
        <span class="small">${this.cell.name} is worked by a formula.</span>
        <button class="act first" @mousedown=${stay} @click=${() => this.#keepByHand()}>
          Set by hand, keep the formula<kbd>Enter</kbd>
        </button>
        <button class="act" @mousedown=${stay} @click=${() => this.#keepFormula(0)}>
          Replace the formula<kbd>Alt Enter</kbd>
        </button>
        <button class="act" @mousedown=${stay} @click=${() => this.#leave(0)}>
          Leave<kbd>Esc</kbd>
        </button>
      `;
    }
    return html`
      <button class="act first" @mousedown=${stay} @click=${() => this.#keep(0)}>
        Keep<kbd>Enter</kbd>
      </button>
      <button class="act" @mousedown=${stay} @click=${() => this.#leave(0)}>
        Leave<kbd>Esc</kbd>
      </button>
    `;
  }

  #option(one: Completion, place: number): TemplateResult {
    const { candidate } = one;
    const shown = candidate.cell === null ? null : valueSaid(this.session.door, candidate.cell);
    return html`<li
      role="option"
      id="option-${place}"
      aria-selected=${place === this.marked ? 'true' : 'false'}
      @mousedown=${(event: Event) => {
        event.preventDefault();
        this.#take(one);
      }}
    >
      <span>${candidate.text}</span>
      <span class="small">${shown ?? ''}${candidate.place ? ` · ${candidate.place}` : ''}</span>
    </li>`;
  }

  #typed = (event: InputEvent): void => {
    this.text = this.input.value;
    this.#read();
    if (!event.isComposing) this.#complete();
  };

  #key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.isComposing) return;
    if (this.#listKey(event) || this.#ownKey(event)) event.preventDefault();
  };

  /** Keys that move in the list of names while it is open. */
  #listKey(event: KeyboardEvent): boolean {
    const count = this.list.length;
    if (event.key === ' ' && event.ctrlKey) {
      this.#complete();
      return true;
    }
    if (count === 0) return false;
    switch (event.key) {
      case 'ArrowDown':
        this.marked = (this.marked + 1) % count;
        return true;
      case 'ArrowUp':
        this.marked = (this.marked - 1 + count + (this.marked < 0 ? 1 : 0)) % count;
        return true;
      case 'Escape':
        this.#closeList();
        return true;
      case 'Enter':
      case 'Tab': {
        const one = this.list[this.marked];
        if (!one || event.shiftKey) return false;
        this.#take(one);
        return true;
      }
      default:
        return false;
    }
  }

  #ownKey(event: KeyboardEvent): boolean {
    const digit = /^Digit([1-9])$/.exec(event.code)?.[1];
    if (event.altKey && digit) {
      const fixes = (this.draft?.reading.problems ?? []).flatMap((problem) => problem.fixes);
      const fix = fixes[Number(digit) - 1];
      if (fix) this.#write(fix.formula);
      return fix !== undefined;
    }
    switch (event.key) {
      case 'Enter':
        if (event.altKey) this.#keepFormula(0);
        else this.#keep(0);
        return true;
      case 'Escape':
        this.#leave(0);
        return true;
      case 'Tab':
        this.#keep(event.shiftKey ? -1 : 1);
        return true;
      default:
        return false;
    }
  }

  /** A plain amount over a worked formula: nobody loses a formula by typing a number. */
  #asksByHand(): boolean {
    if (this.what === 'by-hand' || !this.draft || this.text.trim() === '') return false;
    const { kind, input } = this.session.door.state(this.cell.id);
    if (kind === 'given' || this.text.trim() === input.formula.trim()) return false;
    return this.draft.reading.problems.length === 0 && isPlainAmount(this.draft.reading.tree);
  }

  #keep(steps: number): void {
    if (this.what === 'by-hand' || this.#asksByHand()) this.#keepByHand(steps);
    else this.#keepFormula(steps);
  }

  #keepByHand(steps = 0): void {
    const { session, cell, text } = this;
    const amount = text.trim() === '' ? null : text.trim();
    if (amount === session.door.state(cell.id).input.byHand) this.#leave(steps);
    else if (session.apply((door) => door.setByHand(cell.id, amount, null))) this.#leave(steps);
  }

  #keepFormula(steps: number): void {
    const { session, cell, text } = this;
    const { formula } = session.door.state(cell.id).input;
    const unchanged = text.trim() === formula.trim() || text.trim() === '';
    if (unchanged || session.apply((door) => door.setFormula(cell.id, text.trim())))
      this.#leave(steps);
  }

  #leave(steps: number): void {
    if (this.#left) return;
    this.#left = true;
    const next = steps === 0 ? null : this.session.neighbour(this.cell.id, steps);
    if (next === null) {
      this.session.write(null);
      this.dispatchEvent(new CustomEvent('done'));
    } else {
      this.session.bring(next);
      this.session.write({ kind: this.#whatIn(next), cell: next });
    }
  }

  #whatIn(cell: number): 'formula' | 'by-hand' {
    return this.session.door.state(cell).input.byHand === null ? 'formula' : 'by-hand';
  }

  #write(text: string, caret = text.length): void {
    this.text = text;
    this.#closeList();
    this.#read();
    void this.updateComplete.then(() => {
      this.input.focus();
      this.input.setSelectionRange(caret, caret);
    });
  }

  #take({ candidate, from, to }: Completion): void {
    this.#write(
      this.text.slice(0, from) + candidate.text + this.text.slice(to),
      from + candidate.text.length,
    );
  }

  #read(): void {
    this.draft = this.session.door.draft(this.cell.id, this.text);
  }

  #complete(): void {
    const caret = this.input.selectionStart ?? this.text.length;
    this.list = completionsAt(this.text, caret, this.#names, this.#units);
    this.marked = -1;
  }

  #closeList = (): void => {
    this.list = [];
    this.marked = -1;
  };

  /** Going on to something else on the page keeps what was written; only Esc leaves it. */
  #blurred = (): void => {
    this.#closeList();
    requestAnimationFrame(() => {
      const { writing } = this.session;
      const here = writing && 'cell' in writing && writing.cell === this.cell.id;
      if (this.#left || !this.isConnected || !document.hasFocus() || !here) return;
      if (this.shadowRoot?.activeElement) return;
      this.#keepQuietly();
    });
  };

  #keepQuietly(): void {
    const { session, cell } = this;
    const { input } = session.door.state(cell.id);
    const text = this.text.trim();
    const before = this.what === 'by-hand' ? input.byHand : input.formula;
    const byHand = this.what === 'by-hand' || this.#asksByHand();
    const kept =
      text === before ||
      text === '' ||
      session.apply((door) =>
        byHand ? door.setByHand(cell.id, text, null) : door.setFormula(cell.id, text),
      );
    if (!kept) return;
    this.#left = true;
    session.write(null);
  }

  /** The list stands in the top layer, under the line or over it where there is more room. */
  #place(): void {
    if (this.list.length === 0) {
      if (this.listbox.matches(':popover-open')) this.listbox.hidePopover();
      return;
    }
    if (!this.listbox.matches(':popover-open')) this.listbox.showPopover();
    const line = this.input.getBoundingClientRect();
    const said = this.said.getBoundingClientRect();
    const height = this.listbox.offsetHeight;
    const below = said.bottom + height < window.innerHeight;
    const left = Math.max(4, Math.min(line.left, window.innerWidth - this.listbox.offsetWidth - 4));
    this.listbox.style.left = `${left}px`;
    this.listbox.style.top = `${below ? said.bottom + 2 : Math.max(4, line.top - height - 2)}px`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'story-formula': StoryFormula;
  }
}
