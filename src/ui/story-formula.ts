// The formula of one cell while it is written: a plain input over a copy of itself in which names and
// amounts are tied, what it is read as and comes to, what can't be read with its mends, and names to pick.
// Properties: `session`, `cell`, `what` (the formula, or the amount set by hand), `typed` (what opened it).
// Event: `done` when it was left.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Cell } from '../notebook/document.ts';
import type { Draft } from '../notebook/estimate.ts';
import { isBlank } from '../notebook/new-table.ts';
import type { Dimension } from '../quantity/dimension.ts';
import type { Holds } from '../quantity/form.ts';
import { typedOver } from '../notebook/ranges.ts';
import { Nouns } from '../quantity/nouns.ts';
import { type Completion, type Wanted, namesFor, unitsFor } from './completing.ts';
import { type Written, asksByHand, keptByHand, keptFormula } from './formula-keeping.ts';
import { formulaLook } from './formula-look.ts';
import { mirrored, problemsOf, problemsSaid, said, stay } from './formula-words.ts';
import { look } from './look.ts';
import { Offers } from './offers.ts';
import { senseOf } from './sense-of.ts';
import type { Session } from './session.ts';
import { slotSaid } from './slot-said.ts';
import type { Report } from '../words/report.ts';
import { valueSaid } from './value-words.ts';

@customElement('story-formula')
export class StoryFormula extends LitElement {
  static override styles = [look, formulaLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: Cell;
  @property() what: 'formula' | 'by-hand' = 'formula';
  /** What was typed to open it, in place of what stands there. */
  @property({ attribute: false }) typed: string | null = null;

  @state() private text = '';
  @state() private draft: Draft | null = null;
  /** Where the caret stands, for the hint of the slot it is in. */
  @state() private caret = 0;
  @query('input.line') private input!: HTMLInputElement;
  @query('.mirror') private mirror!: HTMLElement;
  @query('.list') private listbox!: HTMLElement;
  @query('.sheet') private sheet!: HTMLElement;

  readonly #offers = new Offers(this);
  #left = false;
  /** What is wrong with what is written, each with all that would mend it. */
  #problems: readonly Report[] = [];
  #height = 0;
  #stop: (() => void) | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    const { notebook } = this.session.door;
    const { input, holds, reading } = this.session.door.state(this.cell.id);
    const byHand = this.what === 'by-hand';
    if (this.typed === null) this.text = byHand ? (input.byHand ?? '') : input.formula;
    else this.text = byHand ? this.typed : typedOver(reading, this.typed);
    const nouns = new Nouns(notebook.settings.counted);
    this.#offers.from(
      namesFor(notebook, this.cell.part, this.cell.id),
      unitsFor(nouns, measured(holds)),
      senseOf(this.session.door, this.cell, nouns),
    );
    this.#read();
    this.#stop = this.session.listen((happening) => {
      if (happening.kind === 'put') this.#put(happening.words);
      if (happening.kind === 'guide-left') this.#blurred();
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
  }

  protected override firstUpdated(): void {
    this.input.focus();
    if (this.typed === null) this.input.select();
    else this.input.setSelectionRange(this.typed.length, this.typed.length);
  }

  protected override updated(): void {
    this.mirror.scrollLeft = this.input.scrollLeft;
    const { bottom, height } = this.sheet.getBoundingClientRect();
    // What is said about the line may grow out of sight.
    if (height > this.#height) this.sheet.scrollIntoView({ block: 'nearest' });
    this.#height = height;
    this.#offers.place(this.listbox, this.input.getBoundingClientRect(), bottom);
  }

  /** Another notebook may be opened while this is written: its row goes in its own turn. */
  protected override shouldUpdate(): boolean {
    return this.session.cell(this.cell.id) !== null;
  }

  protected override render(): TemplateResult {
    const blank = this.text.trim() === '';
    const problems = blank ? [] : this.#problems;
    const { open, active } = this.#offers;
    const told = open ? problems.filter((problem) => !this.#isBeingTyped(problem)) : problems;
    return html`
      <div class="sheet">
        <div class="field">
          <div class="mirror" aria-hidden="true">${mirrored(this.text, this.draft, told)}</div>
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
            aria-activedescendant=${active ?? nothing}
            aria-describedby="said"
            aria-invalid=${problems.length > 0 ? 'true' : 'false'}
            .value=${this.text}
            autocapitalize="off"
            autocomplete="off"
            spellcheck="false"
            enterkeyhint="done"
            @input=${this.#typed}
            @keydown=${this.#key}
            @keyup=${this.#moved}
            @pointerup=${this.#moved}
            @focus=${this.#moved}
            @paste=${this.#pasted}
            @compositionend=${() => this.#offer('unasked')}
            @scroll=${() => (this.mirror.scrollLeft = this.input.scrollLeft)}
            @click=${this.#closeList}
            @blur=${this.#blurred}
          />
        </div>
        ${this.#offers.render(
          (cell) => valueSaid(this.session.door, cell),
          (one) => this.#take(one),
        )}
        <p class="slot" aria-live="polite">${slotSaid(this.text, this.caret)}</p>
        <div class="said" id="said" aria-live="polite">
          ${said(this.session, this.text, this.draft, problems)}
        </div>
        ${problemsSaid(told, (formula) => this.#write(formula))}
        <div class="acts">${this.#acts()}</div>
      </div>
    `;
  }

  /** A word that is not yet whole is no mistake. */
  #isBeingTyped({ spots }: Report): boolean {
    const caret = this.input.selectionStart ?? this.text.length;
    const behind = (to: number): boolean => this.text.slice(to, caret).trim() === '';
    return spots.some(({ from, to }) => from <= caret && (caret <= to || behind(to)));
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
      ${
        this.#mayBeTable()
          ? html`<button class="act" @mousedown=${stay} @click=${() => this.#layOut()}>
              Lay out a table here<kbd>Alt L</kbd>
            </button>`
          : nothing
      }
    `;
  }

  /** Nothing stands in the cell and nothing is written yet. */
  #mayBeTable(): boolean {
    return this.what === 'formula' && isBlank(this.cell) && /^\??$/.test(this.text.trim());
  }

  #layOut(typed = ''): void {
    this.#left = true;
    this.session.write({ kind: 'table-here', cell: this.cell.id, typed });
  }

  /** Rows of a sheet, pasted where nothing stands yet, are a table. */
  #pasted = (event: ClipboardEvent): void => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (!this.#mayBeTable() || !/\t/.test(text) || !/\S[\r\n]+\S/.test(text)) return;
    event.preventDefault();
    this.#layOut(text);
  };

  #moved = (): void => {
    this.caret = this.input.selectionStart ?? this.text.length;
  };

  #typed = (event: InputEvent): void => {
    this.text = this.input.value;
    this.#moved();
    this.#read();
    if (!event.isComposing) this.#offer('unasked');
  };

  #key = (event: KeyboardEvent): void => {
    // The guide can be asked for in the middle of a formula.
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
      const fixes = this.#problems.flatMap((problem) => problem.fixes);
      const fix = fixes[Number(digit) - 1];
      if (fix) this.#write(fix.formula);
      return fix !== undefined;
    }
    if (event.altKey && event.code === 'KeyL' && this.#mayBeTable()) {
      this.#layOut();
      return true;
    }
    switch (event.key) {
      case ' ':
        if (event.ctrlKey) this.#offer('asked');
        return event.ctrlKey;
      case 'ArrowDown':
        this.#offer('asked');
        return true;
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

  #asksByHand(): boolean {
    return this.draft !== null && asksByHand(this.session, this.#written(), this.draft);
  }

  #written(): Written {
    return { cell: this.cell.id, what: this.what, text: this.text };
  }

  #keep(steps: number): void {
    if (this.what === 'by-hand' || this.#asksByHand()) this.#keepByHand(steps);
    else this.#keepFormula(steps);
  }

  #keepByHand(steps = 0): void {
    if (keptByHand(this.session, this.#written())) this.#leave(steps);
  }

  #keepFormula(steps: number): void {
    if (keptFormula(this.session, this.#written())) this.#leave(steps);
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

  #write(text: string, caret = text.length, goesOn = false): void {
    this.text = text;
    this.#offers.close();
    this.#read();
    void this.updateComplete.then(() => {
      this.input.focus();
      this.input.setSelectionRange(caret, caret);
      this.#moved();
      if (goesOn) this.#offer('unasked');
    });
  }

  /** Words of the guide, in place of what is marked or where the caret stands. */
  #put(words: string): void {
    const from = this.input.selectionStart ?? this.text.length;
    const to = this.input.selectionEnd ?? from;
    const gap = from > 0 && !/[\s(]$/.test(this.text.slice(0, from)) ? ' ' : '';
    this.#replace(from, to, gap + words);
  }

  #replace(from: number, to: number, words: string, goesOn = false): void {
    const text = this.text.slice(0, from) + words + this.text.slice(to);
    this.#write(text, from + words.length, goesOn);
  }

  #take({ candidate, from, to }: Completion): void {
    // A phrase that was begun goes on with what its first slot needs.
    this.#replace(from, to, candidate.text, candidate.text.endsWith(' '));
  }

  #read(): void {
    const { door } = this.session;
    const as = this.what === 'by-hand' ? 'by hand' : 'formula';
    this.draft = door.draft(this.cell.id, this.text, as);
    const [first, ...others] = problemsOf(this.draft);
    const offersMore = first && this.what === 'formula';
    const mended = offersMore && { ...first, fixes: door.mendsOfDraft(this.cell.id, this.text) };
    this.#problems = mended ? [mended, ...others] : first ? [first, ...others] : [];
  }

  #offer(wanted: Wanted): void {
    const caret = this.input.selectionStart ?? this.text.length;
    this.#offers.look(this.text, caret, wanted);
  }

  #closeList = (): void => {
    this.#offers.close();
  };

  /** Going on to something else on the page keeps what was written; only Esc leaves it. */
  #blurred = (): void => {
    this.#closeList();
    requestAnimationFrame(() => {
      const here = this.session.writingOf(this.cell.id);
      if (this.#left || !this.isConnected || !document.hasFocus() || !here) return;
      if (this.session.besideGuide) return;
      if (this.shadowRoot?.activeElement) return;
      this.#keepQuietly();
    });
  };

  #keepQuietly(): void {
    const { session } = this;
    const written = this.#written();
    const byHand = this.what === 'by-hand' || this.#asksByHand();
    const nothing = byHand && written.text.trim() === '';
    if (!nothing && !(byHand ? keptByHand : keptFormula)(session, written)) return;
    this.#left = true;
    session.write(null);
  }
}

/** What the cell measures now, so that units of it are offered first. */
function measured(holds: Holds | null): Dimension | null {
  return holds?.measure.kind === 'amount' ? holds.measure.dimension : null;
}

declare global {
  interface HTMLElementTagNameMap {
    'story-formula': StoryFormula;
  }
}
