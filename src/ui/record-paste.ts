// Lines for the record out of a spreadsheet or a CSV file: pasted or opened, looked through, and put in when it is meant.
// What can't be read stays in the field with its reasons, so that it can be mended there.
// Properties: `book`. Event, for a person's act: `added`.
import { fileOpen } from 'browser-fs-access';
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { type Said, centsFor } from '../record/entry.ts';
import { type NotTaken, type ReadRows, readRows } from '../record/read-rows.ts';
import { moneyText } from '../versions/cents.ts';
import { textOf } from './files.ts';
import { look } from './look.ts';
import { money } from './money-words.ts';
import type { RecordBook } from './record-book.ts';
import { recordEntriesLook } from './record-entries-look.ts';
import { recordLook } from './record-look.ts';

const SHEET = {
  description: 'Lines of a sheet',
  mimeTypes: ['text/csv', 'text/tab-separated-values', 'text/plain'],
  extensions: ['.csv', '.tsv', '.txt'],
};
/** So many reasons are listed; the others come when these are mended. */
const MOST_TOLD = 30;

@customElement('record-paste')
export class RecordPaste extends LitElement {
  static override styles = [look, recordLook, recordEntriesLook];

  @property({ attribute: false }) book!: RecordBook;
  @state() private text = '';
  @state() private said = '';
  #read: ReadRows | null = null;
  #of = '';

  protected override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('book')) void this.#find(this.book);
    if (this.text === this.#of) return;
    this.#of = this.text;
    const { parts, currency } = this.book;
    this.#read = this.text.trim() === '' ? null : readRows(this.text, { parts, currency });
  }

  protected override render(): TemplateResult {
    return html`<p>
        Copy rows out of a spreadsheet and paste them here, or open a CSV file. Headings may be
        Date, Part, Kind, What, Amount, Hours, Rate and Note, in any order; without headings the
        columns stand in this order.
      </p>
      <label class="field whole"
        >Rows
        <textarea
          rows="7"
          spellcheck="false"
          .value=${this.text}
          @input=${(event: InputEvent) => this.#write((event.currentTarget as HTMLTextAreaElement).value)}
        ></textarea>
      </label>
      <div class="acts">
        <button class="act" @click=${() => void this.#open()}>Open a CSV file</button>
        ${this.#offers()}
      </div>
      <p class="said" role="status">${this.said}</p>
      ${this.#told()}`;
  }

  /** Kept as it stands: what is not put in yet is there again at the next visit. */
  #write(text: string): void {
    this.text = text;
    this.book.keepRows(text);
  }

  async #find(book: RecordBook): Promise<void> {
    const left = await book.rowsLeft;
    if (book === this.book && this.text === '') this.text = left;
  }

  #offers(): TemplateResult | typeof nothing {
    const taken = this.#read?.taken ?? [];
    if (taken.length === 0) return nothing;
    const fresh = this.#fresh(taken);
    return html`<button
        class="act first"
        @click=${() => void this.#put(fresh.length === 0 ? taken : fresh)}
      >
        ${fresh.length === 0 ? `Put in ${lines(taken.length)} once more` : `Put in ${lines(fresh.length)}, ${this.#sum(fresh)}`}
      </button>
      ${
        fresh.length === 0 || fresh.length === taken.length
          ? nothing
          : html`<button class="act" @click=${() => void this.#put(taken)}>
              Put in all ${taken.length.toLocaleString('en-US')}
            </button>`
      }
      ${
        fresh.length === taken.length
          ? nothing
          : html`<span class="small"
              >${lines(taken.length - fresh.length)} with the same day, part, words and money
              ${taken.length - fresh.length === 1 ? 'is' : 'are'} in the record already.</span
            >`
      }`;
  }

  #told(): TemplateResult | typeof nothing {
    const read = this.#read;
    if (!read) return nothing;
    if (read.refused !== null) return html`<p class="trouble" role="alert">${read.refused}</p>`;
    const { notTaken } = read;
    if (notTaken.length === 0) return nothing;
    const rest = notTaken.length - MOST_TOLD;
    return html`<h3>Not read</h3>
      <ul class="not-taken">
        ${notTaken.slice(0, MOST_TOLD).map(
          ({ row, column, text, why }: NotTaken) =>
            html`<li>
              <span class="where">row ${row}, ${column}</span>
              ${text === '' || why.includes(text) ? nothing : html`<b>${text.slice(0, 80)}</b>`}
              ${why}
            </li>`,
        )}
      </ul>
      ${rest > 0 ? html`<p class="small">and ${rest.toLocaleString('en-US')} more</p>` : nothing}
      ${
        read.left === ''
          ? nothing
          : html`<p class="small">
              A row is put in as a whole or not at all. Those that are left stay in the field above.
            </p>`
      }`;
  }

  /** Without those that stand in the record word for word. */
  #fresh(taken: readonly Said[]): readonly Said[] {
    const there = new Set(this.book.stands.entries.map(({ says }) => (says ? same(says) : '')));
    return taken.filter((one) => !there.has(same(one)));
  }

  #sum(taken: readonly Said[]): string {
    const cents = taken.reduce((sum, { cost }) => sum + centsFor(cost), 0n);
    return money(moneyText(cents), this.book.currency);
  }

  async #put(taken: readonly Said[]): Promise<void> {
    const left = this.#read?.left ?? '';
    const why = await this.book.add(taken.map((says) => ({ record: 'entry', says })));
    this.said = why ?? `${lines(taken.length)} put in, ${this.#sum(taken)}.`;
    if (why !== null) return;
    this.#write(left);
    this.requestUpdate();
    // What was pressed is gone.
    this.renderRoot.querySelector('textarea')?.focus();
    this.dispatchEvent(new CustomEvent('added'));
  }

  async #open(): Promise<void> {
    try {
      const file = await fileOpen(SHEET);
      this.#write(textOf(await file.arrayBuffer()));
    } catch (cause) {
      if (!(cause instanceof Error && cause.name === 'AbortError'))
        this.said = 'That file could not be read.';
    }
  }
}

function same({ date, part, kind, what, cost }: Said): string {
  return JSON.stringify([date, part.name, kind, what, String(centsFor(cost))]);
}

function lines(many: number): string {
  return many === 1 ? '1 line' : `${many.toLocaleString('en-US')} lines`;
}

declare global {
  interface HTMLElementTagNameMap {
    'record-paste': RecordPaste;
  }
}
