// One cell as a row: value, name, how it came about, and money where it is a cost line.
// Properties: `session`, `cell`. It draws itself again only when its own cell is touched.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { CellState } from '../engine/outcome.ts';
import type { Cell } from '../notebook/document.ts';
import { amountLook } from './amount-look.ts';
import { pressAmount } from './amount-pressed.ts';
import { cellLook } from './cell-look.ts';
import { look } from './look.ts';
import { notCountedNote, problemNotes, waitingNote } from './cell-notes.ts';
import { rangeEnds } from './range-ends.ts';
import type { Session } from './session.ts';
import { formulaShown } from './formula-shown.ts';
import { DOES_NOT_HOLD, isOpen, spoken, valueSaid } from './value-words.ts';
import { witness, witnessLook } from './witness.ts';
import './lay-table.ts';
import './story-formula.ts';
import './story-line.ts';
import './story-tape.ts';

@customElement('story-cell')
export class StoryCell extends LitElement {
  static override styles = [look, amountLook, witnessLook, cellLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false, hasChanged: cellSaysOtherwise }) cell!: Cell;

  #watching = -1;
  #stop: (() => void) | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    // A row that was moved watches its cell again.
    this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
    this.#watching = -1;
  }

  protected override willUpdate(): void {
    if (this.#watching === this.cell.id) return;
    this.#stop?.();
    this.#watching = this.cell.id;
    this.#stop = this.session.watch(this.cell.id, () => this.requestUpdate());
  }

  /** Puts the keyboard on the row. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('.name')?.focus();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { session, cell } = this;
    // Removed in this very moment: the part takes the row away in its own turn.
    if (!session.cell(cell.id)) return nothing;
    const state = session.door.state(cell.id);
    const chosen = session.chosen === cell.id;
    const writing = session.writingOf(cell.id);
    const kind = writing?.kind ?? null;
    this.toggleAttribute('chosen', chosen);
    this.toggleAttribute('open', kind !== null || session.trial?.cell === cell.id);
    return html`
      <div class="row" @click=${this.#choose}>
        <span
          class="grip"
          aria-hidden="true"
          title="Drag to move"
          @pointerdown=${this.#grip}
        ></span>
        ${this.#value(state, chosen)}
        ${
          kind === 'name'
            ? html`<story-line
                class="name"
                label="Name"
                .value=${cell.name}
                @keep=${(event: CustomEvent<string>) => this.#rename(event.detail)}
                @leave=${this.#leave}
              ></story-line>`
            : html`<button
                class="name"
                tabindex=${chosen ? 0 : -1}
                aria-current=${chosen ? 'true' : nothing}
                @dblclick=${() => session.write({ kind: 'name', cell: cell.id })}
              >
                ${cell.name}${session.watched.has(`cell ${cell.id}`) ? witness() : nothing}
              </button>`
        }
        ${
          kind === 'formula' || kind === 'by-hand'
            ? html`<story-formula
                class="how writing"
                .session=${session}
                .cell=${cell}
                what=${kind}
                .typed=${(writing?.kind === kind && writing.typed) || null}
                @done=${() => this.focusSoon()}
              ></story-formula>`
            : html`<div class="how ${cell.money ? '' : 'wide'}">${this.#how(state, chosen)}</div>
                ${cell.money ? this.#money(state, chosen, cell.money.line) : nothing}`
        }
      </div>
      ${
        session.trial?.cell === cell.id
          ? html`<story-tape .session=${session} .cell=${cell}></story-tape>`
          : nothing
      }
      ${
        writing?.kind === 'table-here'
          ? html`<lay-table
              class="lay"
              .session=${session}
              .here=${cell.id}
              .typed=${writing.typed ?? ''}
            ></lay-table>`
          : nothing
      }
      ${this.#notes(state, kind, chosen)}
    `;
  }

  focusSoon(): void {
    void this.updateComplete.then(() => this.focus());
  }

  /** At the left: the value; of a cost line the quantity it prices, or nothing where it prices none. */
  #value(state: CellState, chosen: boolean): TemplateResult {
    const { session, cell } = this;
    const quantity = cell.money ? session.asides.quantity(cell.id) : null;
    if (cell.money) {
      const shown = state.outcome.kind === 'value' ? quantity : null;
      return html`<div class="value">${shown ? this.#change(state, chosen, shown) : nothing}</div>`;
    }
    return html`<div class="value">${this.#change(state, chosen, this.#amount(state))}</div>`;
  }

  /** What the cell comes to, or last came to, in the words of its row. */
  #amount(state: CellState): string {
    const { door } = this.session;
    const { id } = this.cell;
    const [amount] = soFar(valueSaid(door, id));
    if (amount !== null) return amount;
    if (isOpen(state)) return state.input.formula.trim() || '?';
    return door.lastShown(id)?.text ?? '?';
  }

  #change(state: CellState, chosen: boolean, text: string): TemplateResult {
    const { outcome, input, kind } = state;
    const { session, cell } = this;
    const classes = [
      'amount',
      kind,
      outcome.kind !== 'value' && !isOpen(state) ? 'last' : '',
      isOpen(state) ? 'open' : '',
      input.byHand === null ? '' : 'by-hand',
      text === DOES_NOT_HOLD ? 'fails' : '',
    ];
    return html`<button
      class=${classes.filter((one) => one !== '').join(' ')}
      tabindex=${chosen ? 0 : -1}
      aria-label="${spoken(text)}. Change ${cell.name}"
      @click=${() => pressAmount(session, cell)}
    >
      ${text}
    </button>`;
  }

  #how(state: CellState, chosen: boolean): unknown {
    const { session, cell } = this;
    if (state.kind === 'given' && state.outcome.kind !== 'fault') {
      const from = cell.remarks.find((remark) => remark.kind === 'from')?.text;
      const ends = rangeEnds(session.door, cell.id);
      if (from) return html`${ends}<span class="source">${from}</span>`;
      return html`${ends}<span class="source none">no source said</span> ${
          chosen
            ? html`<button
                class="plain"
                @click=${() => session.write({ kind: 'remark', cell: cell.id, word: 'from' })}
              >
                Say where it comes from
              </button>`
            : nothing
        }`;
    }
    const from = cell.remarks.find((remark) => remark.kind === 'from')?.text;
    return html`<span class="words" @click=${() => this.#pressWords(chosen)}
        >${formulaShown(state, chosen, this.#go)}</span
      >${state.kind === 'check' && from ? html` <span class="source beside">${from}</span>` : nothing}`;
  }

  /** Words between the names of a chosen row: pressed, they are written. The first press only chooses. */
  #pressWords(chosen: boolean): void {
    if (!chosen || this.cell.table || window.getSelection()?.type === 'Range') return;
    this.session.write({ kind: 'formula', cell: this.cell.id });
  }

  /** At the right, where only cost and price lines reach; what prices no quantity is changed here. */
  #money(state: CellState, chosen: boolean, line: 'cost' | 'price'): TemplateResult {
    const text = this.#amount(state);
    const priced = state.outcome.kind === 'value' && this.session.asides.quantity(this.cell.id);
    const worth = state.outcome.kind === 'value' || isOpen(state) ? '' : 'last';
    return html`<div class="money ${worth} ${line}">
      ${priced ? text : this.#change(state, chosen, text)}
    </div>`;
  }

  #notes(state: CellState, writing: string | null, chosen: boolean): unknown {
    const { session, cell } = this;
    const caution = cell.remarks.find((remark) => remark.kind === 'caution')?.text;
    const fails = state.outcome.kind === 'value' && state.outcome.value === false;
    const [, missing] = soFar(session.door.shown(cell.id)?.text ?? null);
    return [
      missing ? html`<p class="note">so far; ${missing}</p>` : nothing,
      fails && caution ? html`<p class="note caution"><b>Caution.</b> ${caution}</p>` : nothing,
      state.input.byHand === null ? nothing : this.#byHandNote(),
      ...problemNotes(session, cell.id, writing),
      state.kind === 'given' ? nothing : waitingNote(session, state.outcome, this.#go),
      chosen && writing === null ? notCountedNote(session, cell, state) : nothing,
    ];
  }

  #byHandNote(): TemplateResult {
    const { session, cell } = this;
    const worked = session.asides.difference(cell.id);
    const from = cell.remarks.find((remark) => remark.kind === 'from')?.text;
    return html`<p class="note hand">
      <span><b>set by hand</b>${from ? html`, ${from}` : nothing}</span>
      ${worked ? html`<span>${worked}</span>` : nothing}
      ${
        from
          ? nothing
          : html`<button
              class="plain"
              @click=${() => session.write({ kind: 'remark', cell: cell.id, word: 'from' })}
            >
              Say why
            </button>`
      }
      <button
        class="plain"
        @click=${() => session.apply((door) => door.setByHand(cell.id, null, null))}
      >
        Take it back
      </button>
    </p>`;
  }

  #grip = (event: PointerEvent): void => {
    const detail = { gripped: { cell: this.cell.id }, event };
    this.dispatchEvent(new CustomEvent('grip', { detail, bubbles: true, composed: true }));
  };

  #choose = (): void => {
    this.session.choose(this.cell.id);
  };

  #go = (event: Event, to: number): void => {
    event.preventDefault();
    event.stopPropagation();
    this.session.bring(to);
  };

  #leave = (): void => {
    this.session.write(null);
    this.focusSoon();
  };

  #rename(name: string): void {
    const { session, cell } = this;
    if (name.trim() === cell.name || session.apply((door) => door.rename(cell.id, name.trim()))) {
      this.#leave();
    }
  }
}

/** Has anything changed that the row shows? Where the cell stands in the text is not shown. */
export function cellSaysOtherwise(now: Cell, before: Cell | undefined): boolean {
  if (!before || now.id !== before.id || now.name !== before.name) return true;
  if (now.formula !== before.formula || now.remarks.length !== before.remarks.length) return true;
  if (now.money?.kind !== before.money?.kind) return true;
  if ((now.table === null) !== (before.table === null)) return true;
  return now.remarks.some((remark, place) => {
    const was = before.remarks[place];
    return remark.text !== was?.text || remark.word !== was.word;
  });
}

/** `$3,155 so far; 2 lines not yet known` in its two pieces: only the amount stands in its column. */
function soFar(text: string | null): readonly [string | null, string | null] {
  const [amount = null, missing = null] = text?.split(' so far; ') ?? [];
  return [amount, missing];
}

declare global {
  interface HTMLElementTagNameMap {
    'story-cell': StoryCell;
  }
}
