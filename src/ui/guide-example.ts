// One example of the guide: what it comes to, its name, the words as they are written, and what can be done with it.
// Properties: `session` (the guide's own), `cell`, `first` (the line as it was at first), `into` (whose formula of the
// reader's notebook would take the words). Events, for a person's act: `put`, `add`, `back`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { CellState } from '../engine/outcome.ts';
import type { Cell, Remark } from '../notebook/document.ts';
import { amountLook } from './amount-look.ts';
import { pressAmount, writeAmount } from './amount-pressed.ts';
import { faultNote, waitingNote } from './cell-notes.ts';
import { formulaShown } from './formula-shown.ts';
import { exampleLook } from './guide-look.ts';
import { isChanged } from './guide-notebook.ts';
import { proseLine } from './guide-words.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';
import { cellSaysOtherwise } from './story-cell.ts';
import { tapeUnder } from './tape-reading.ts';
import { DOES_NOT_HOLD, isOpen, spoken, valueSaid } from './value-words.ts';
import './story-formula.ts';
import './story-table.ts';
import './story-tape.ts';

/** Remarks that are drawn as they are written: the reader will write them so. */
const WRITTEN: ReadonlySet<Remark['kind']> = new Set([
  'sensible',
  'choices',
  'cost',
  'price',
  'buy',
]);

@customElement('guide-example')
export class GuideExample extends LitElement {
  static override styles = [look, amountLook, exampleLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false, hasChanged: cellSaysOtherwise }) cell!: Cell;
  @property({ attribute: false }) first: Cell | undefined;
  @property() into = '';
  #stop: (() => void) | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stop = this.session.watch(this.cell.id, () => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
  }

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('.name')?.focus();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { session, cell } = this;
    if (!session.cell(cell.id)) return nothing;
    const state = session.door.state(cell.id);
    const chosen = session.chosen === cell.id;
    const writing = session.writingOf(cell.id);
    const kind = writing?.kind ?? null;
    this.toggleAttribute('chosen', chosen);
    return html`
      <div class="row" @click=${() => session.choose(cell.id)} @keydown=${this.#key}>
        ${this.#value(state, chosen)}
        <button class="name" tabindex=${chosen ? 0 : -1} aria-current=${chosen ? 'true' : nothing}>
          ${cell.name}
        </button>
        ${
          kind === 'formula' || kind === 'by-hand'
            ? html`<story-formula
                class="writes"
                .session=${session}
                .cell=${cell}
                what=${kind}
                .typed=${(writing?.kind === kind && writing.typed) || null}
                @done=${() => void this.updateComplete.then(() => this.focus())}
              ></story-formula>`
            : this.#words(state, chosen)
        }
      </div>
      ${
        session.trial?.cell === cell.id
          ? html`<story-tape .session=${session} .cell=${cell}></story-tape>`
          : nothing
      }
      ${
        cell.table
          ? html`<story-table .session=${session} .cell=${cell.id}></story-table>`
          : nothing
      }
      <div class="below">
        ${this.#notes(state, kind)} ${cell.remarks.map((remark) => this.#remark(remark, state))}
        ${chosen && kind === null ? this.#acts() : nothing}
      </div>
    `;
  }

  /** The formula as it is written; an amount that is shown as it was written stands at the left already. */
  #words(state: CellState, chosen: boolean): unknown {
    const shown = this.session.door.shown(this.cell.id)?.text;
    if (state.kind === 'given' && shown === this.cell.formula) return nothing;
    return html`<div class="words">${formulaShown(state, chosen, this.#go)}</div>`;
  }

  #value(state: CellState, chosen: boolean): TemplateResult {
    const { session, cell } = this;
    const now = valueSaid(session.door, cell.id);
    const open = isOpen(state);
    const last = session.door.lastShown(cell.id)?.text ?? '?';
    const text = now ?? (open ? cell.formula : last);
    const looks = ['amount', state.kind, now === null && !open ? 'last' : ''];
    if (text === DOES_NOT_HOLD) looks.push('fails');
    if (state.input.byHand !== null) looks.push('by-hand');
    return html`<div class="value">
      <button
        class=${looks.join(' ')}
        tabindex=${chosen ? 0 : -1}
        aria-label="${spoken(text)}. Change ${cell.name}"
        @click=${() => pressAmount(session, cell)}
      >
        ${text}
      </button>
    </div>`;
  }

  #notes(state: CellState, writing: string | null): unknown {
    const { session, cell } = this;
    const { outcome, input } = state;
    const difference = input.byHand === null ? null : session.asides.difference(cell.id);
    return [
      input.byHand === null
        ? nothing
        : html`<p class="note">
            <b>set by hand</b>${difference ? html`, ${difference}` : nothing}
            <button
              class="plain"
              @click=${() => session.apply((door) => door.setByHand(cell.id, null, null))}
            >
              Take it back
            </button>
          </p>`,
      outcome.kind === 'fault' && writing !== 'formula' ? faultNote(session, cell.id) : nothing,
      state.kind === 'given' ? nothing : waitingNote(session, outcome, this.#go),
    ];
  }

  #remark({ kind, word, text }: Remark, state: CellState): unknown {
    switch (kind) {
      case 'caution': {
        const fails = state.outcome.kind === 'value' && state.outcome.value === false;
        return html`<p class="note caution ${fails ? 'fails' : ''}"><b>Caution.</b> ${text}</p>`;
      }
      case 'note':
        return html`<p class="note said">${proseLine(text)}</p>`;
      case 'from':
        return html`<p class="note">from: ${text}</p>`;
      default:
        return WRITTEN.has(kind)
          ? html`<p class="note"><span class="word">${word}:</span> ${text}</p>`
          : nothing;
    }
  }

  #acts(): TemplateResult {
    const { cell, first, into } = this;
    return html`<div class="acts">
      ${
        cell.table || into === ''
          ? nothing
          : html`<button
              class="act"
              @mousedown=${(event: Event) => event.preventDefault()}
              @click=${() => this.#act('put')}
            >
              Put into my ${into}<kbd>P</kbd>
            </button>`
      }
      <button class="act" @click=${() => this.#act('add')}>Add to my notebook<kbd>A</kbd></button>
      ${
        isChanged(cell, first)
          ? html`<button class="act first" @click=${() => this.#act('back')}>
              Put it back<kbd>B</kbd>
            </button>`
          : nothing
      }
    </div>`;
  }

  #act(name: 'put' | 'add' | 'back'): void {
    this.dispatchEvent(new CustomEvent(name));
  }

  /** Keys on the row; while something is written its editor takes them first. */
  #key = (event: KeyboardEvent): void => {
    const { session, cell } = this;
    if (session.writing !== null || session.trial !== null) return;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const onName = event.composedPath().some((at) => (at as Element).className === 'name');
    switch (event.key.toLowerCase()) {
      case 'arrowdown':
      case 'arrowup': {
        const next = session.neighbour(cell.id, event.key === 'ArrowDown' ? 1 : -1);
        if (next !== null) session.bring(next);
        break;
      }
      case 'enter':
        if (!onName) return;
        if (!cell.table) writeAmount(session, cell);
        break;
      case 't':
        if (!tapeUnder(session.door, cell)) return;
        session.openTape(cell.id);
        break;
      case 'p':
        if (!cell.table) this.#act('put');
        break;
      case 'a':
        this.#act('add');
        break;
      case 'b':
        if (isChanged(cell, this.first)) this.#act('back');
        break;
      default:
        if (!onName || !/^[\d$?.½¼¾]$/.test(event.key)) return;
        if (!cell.table) writeAmount(session, cell, event.key);
    }
    event.preventDefault();
  };

  #go = (event: Event, to: number): void => {
    event.preventDefault();
    event.stopPropagation();
    this.session.bring(to);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'guide-example': GuideExample;
  }
}
