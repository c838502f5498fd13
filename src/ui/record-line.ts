// One line of the record being written: a new one, or a correction of one that stands.
// Properties: `parts`, `currency`, `texts` (what stands in it at first), `correcting`, `receipt`.
// Events, for a person's act: `keep` with what it says, `leave`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { COST_KINDS } from '../notebook/recap.ts';
import { OUTSIDE, type PartNamed, type Said, centsFor } from '../record/entry.ts';
import {
  type Field,
  FIELDS,
  type FieldFault,
  type Texts,
  readEntry,
} from '../record/read-entry.ts';
import { MOST_BYTES, type Receipt, inKilobytes } from '../record/receipt.ts';
import { moneyText } from '../versions/cents.ts';
import { look } from './look.ts';
import { money } from './money-words.ts';
import { receiptOf } from './receipt-picture.ts';
import { recordLook } from './record-look.ts';

export interface Kept {
  readonly says: Said;
  readonly why: string;
}

export const NO_TEXTS = Object.fromEntries(FIELDS.map((field) => [field, ''])) as Record<
  Field,
  string
>;

const LABELS: Readonly<Record<Field, string>> = {
  date: 'Day',
  part: 'Part',
  kind: 'Cost of',
  what: 'What',
  amount: 'Amount',
  hours: 'or hours',
  rate: 'at, an hour',
  note: 'Note',
};

@customElement('record-line')
export class RecordLine extends LitElement {
  static override styles = [look, recordLook];

  @property({ attribute: false }) parts: readonly PartNamed[] = [];
  @property() currency = '$';
  @property({ attribute: false }) texts: Texts = NO_TEXTS;
  @property({ type: Boolean }) correcting = false;
  @property({ attribute: false }) receipt: Receipt | null = null;
  @state() private typed: Readonly<Partial<Record<Field, string>>> = {};
  @state() private why = '';
  /** Null: the one that the line came with. */
  @state() private taken: { readonly receipt: Receipt | null } | null = null;
  @state() private faults: readonly FieldFault[] = [];
  @state() private trouble = '';
  /** The rate that went on from the line before; empty once another was typed. */
  #carried = '';

  /** Gives the keyboard to a field. */
  async goTo(field: Field): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(`#${field}`)?.focus();
  }

  /** It is kept: what goes on to the next line stays. */
  async next(): Promise<void> {
    const { date, part, kind, rate } = this.#texts;
    this.typed = { date, part, kind, rate };
    this.#carried = rate;
    this.taken = null;
    this.faults = [];
    this.trouble = '';
    await this.goTo('what');
  }

  /** It was not kept, and why. */
  say(trouble: string): void {
    this.trouble = trouble;
  }

  /** What was written in it so far, as one line; empty where nothing was. */
  get words(): string {
    const { what, amount, hours, note } = this.typed;
    if (![what, amount, hours, note, this.why].some((text) => text)) return '';
    const texts = this.#texts;
    return [...FIELDS.map((field) => texts[field]), this.why]
      .filter((text) => text !== '')
      .join(', ');
  }

  get #texts(): Texts {
    return { ...this.texts, ...this.typed };
  }

  get #receipt(): Receipt | null {
    return this.taken ? this.taken.receipt : this.receipt;
  }

  protected override render(): TemplateResult {
    return html`<form class="line" novalidate @submit=${this.#keep} @keydown=${this.#key}>
      ${this.#text('date', 'short')}
      ${this.#choice(
        'part',
        [...this.parts, OUTSIDE].map(({ name }) => name),
      )}
      ${this.#choice('kind', COST_KINDS)} ${this.#text('what', 'wide')}
      ${this.#text('amount', 'money')} ${this.#text('hours', 'few')} ${this.#text('rate', 'money')}
      ${this.#text('note', 'wide')}
      ${
        this.correcting
          ? html`<label class="field wide"
              >Why
              <input
                id="why"
                autocomplete="off"
                .value=${this.why}
                @input=${(event: InputEvent) => (this.why = inputOf(event).value)}
            /></label>`
          : nothing
      }
      <div class="acts">
        ${this.#picture()}
        <span class="comes">${this.#comes()}</span>
        ${
          this.correcting
            ? html`<button type="button" class="act" @click=${this.#leave}>Leave it</button>`
            : nothing
        }
        <button class="act first">
          ${this.correcting ? 'Keep the correction' : 'Put it in'}<kbd>Enter</kbd>
        </button>
      </div>
      ${this.trouble === '' ? nothing : html`<p class="trouble" role="alert">${this.trouble}</p>`}
    </form>`;
  }

  #text(field: Field, size: string): TemplateResult {
    const fault = this.#fault(field);
    return html`<label class="field ${size}"
      >${LABELS[field]}
      <input
        id=${field}
        autocomplete="off"
        inputmode=${['amount', 'hours', 'rate'].includes(field) ? 'decimal' : 'text'}
        aria-invalid=${fault === '' ? 'false' : 'true'}
        aria-describedby=${fault === '' ? nothing : `${field}-fault`}
        .value=${this.#texts[field]}
        @input=${(event: InputEvent) => this.#type(field, inputOf(event).value)}
      />
      ${this.#told(field, fault)}</label
    >`;
  }

  #choice(field: 'part' | 'kind', all: readonly string[]): TemplateResult {
    const fault = this.#fault(field);
    const now = this.#texts[field];
    const asked = field === 'kind' && this.#texts.hours !== '' ? 'labour' : 'choose';
    const known = now === '' || all.includes(now) ? all : [now, ...all];
    return html`<label class="field"
      >${LABELS[field]}
      <select
        id=${field}
        aria-invalid=${fault === '' ? 'false' : 'true'}
        aria-describedby=${fault === '' ? nothing : `${field}-fault`}
        @change=${(event: Event) => this.#type(field, (event.currentTarget as HTMLSelectElement).value)}
      >
        <option value="" ?selected=${now === ''}>${asked}</option>
        ${known.map((one) => html`<option value=${one} ?selected=${one === now}>${one}</option>`)}
      </select>
      ${this.#told(field, fault)}</label
    >`;
  }

  #told(field: Field, fault: string): TemplateResult | typeof nothing {
    return fault === '' ? nothing : html`<span class="fault" id="${field}-fault">${fault}</span>`;
  }

  #fault(field: Field): string {
    return this.faults.find((one) => one.field === field)?.why ?? '';
  }

  #picture(): TemplateResult {
    const receipt = this.#receipt;
    return html`<label class="act pick"
        >${receipt ? 'Another picture' : 'Picture of the receipt'}
        <input
          class="heard"
          type="file"
          accept="image/*"
          aria-label="Picture of the receipt"
          @change=${(event: Event) => void this.#pick(event.currentTarget as HTMLInputElement)}
      /></label>
      ${
        receipt
          ? html`<span class="small">${receipt.name}</span>
              <button type="button" class="plain" @click=${() => (this.taken = { receipt: null })}>
                Without it
              </button>`
          : html`<span class="small">made smaller to at most ${inKilobytes(MOST_BYTES)}</span>`
      }`;
  }

  /** What the line comes to, while it is written. */
  #comes(): string {
    const { hours, rate } = this.#texts;
    if (hours === '' || rate === '') return '';
    const { parts, currency } = this;
    const sound = { date: '2026-01-01', part: OUTSIDE.name, kind: 'labour', what: 'x', amount: '' };
    const read = readEntry({ ...sound, hours, rate, note: '' }, { parts, currency, order: null });
    if (read.kind === 'refused') return '';
    return `comes to ${money(moneyText(centsFor(read.says.cost)), currency)}`;
  }

  #type(field: Field, text: string): void {
    this.typed = { ...this.typed, [field]: text };
    // A rate that went on from the line before belongs to hours: a receipt does without it.
    const { rate, hours } = this.#texts;
    const receipt = field === 'amount' && text !== '' && hours === '';
    if (receipt && rate !== '' && rate === this.#carried) this.typed = { ...this.typed, rate: '' };
    if (field === 'rate') this.#carried = '';
    this.faults = this.faults.filter((one) => one.field !== field);
  }

  async #pick(input: HTMLInputElement): Promise<void> {
    const [file] = input.files ?? [];
    if (!file) return;
    const read = await receiptOf(file);
    input.value = '';
    if (read.kind === 'taken') this.taken = { receipt: read.receipt };
    this.trouble = read.kind === 'taken' ? '' : read.why;
  }

  #keep = (event: Event): void => {
    event.preventDefault();
    const { parts, currency } = this;
    const texts = Object.fromEntries(
      FIELDS.map((field) => [field, this.#texts[field].trim()]),
    ) as Texts;
    const read = readEntry(texts, { parts, currency, order: null });
    this.faults = read.kind === 'refused' ? read.faults : [];
    if (read.kind === 'refused') {
      const [first] = read.faults;
      void this.goTo(first.field);
      return;
    }
    const detail: Kept = { says: { ...read.says, receipt: this.#receipt }, why: this.why.trim() };
    this.dispatchEvent(new CustomEvent('keep', { detail }));
  };

  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.correcting) return;
    event.preventDefault();
    event.stopPropagation();
    this.#leave();
  };

  #leave = (): void => {
    this.dispatchEvent(new CustomEvent('leave'));
  };
}

function inputOf(event: InputEvent): HTMLInputElement {
  return event.currentTarget as HTMLInputElement;
}

declare global {
  interface HTMLElementTagNameMap {
    'record-line': RecordLine;
  }
}
