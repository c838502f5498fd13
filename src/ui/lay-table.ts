// Laying out a table: its name, and its columns and rows as lines of text, written or pasted; below it how they are read.
// Properties: `session`, and where it comes to stand: `in` and `below` (a new cell of that part), or `here` (a cell in which nothing
// stands yet); `typed` (what was pasted to begin with).
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import type { Finding } from '../notebook/document.ts';
import { type Lines, type TablePlace, readLines } from '../notebook/laid-out.ts';
import { look } from './look.ts';
import { allCells } from './reading-order.ts';
import { firstPlace } from './row-places.ts';
import type { Session } from './session.ts';

/** Rows that are shown of what is to be laid out. */
const SHOWN = 4;

@customElement('lay-table')
export class LayTable extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: block;
      }
      .sheet {
        display: grid;
        gap: 0.5rem;
        max-width: 44rem;
        padding: 0.6rem 0.75rem 0.75rem;
        border: 1px solid var(--graphite);
        border-radius: 2px;
        background: var(--lifted);
      }
      label {
        display: grid;
        gap: 0.15rem;
        font-size: var(--small);
        color: var(--pencil);
      }
      input,
      textarea {
        width: 100%;
        padding: 0.2rem 0.45rem;
        border: 1px solid var(--rule);
        border-radius: 2px;
        background: var(--paper);
        color: var(--graphite);
        font-size: 1rem;
      }
      textarea {
        min-height: 5.5rem;
        max-height: 18rem;
        field-sizing: content;
        resize: vertical;
        white-space: pre;
        overflow: auto;
        tab-size: 12;
      }
      p {
        margin: 0;
      }
      .scroll {
        overflow-x: auto;
        font-size: var(--small);
      }
      caption {
        text-align: left;
        white-space: nowrap;
      }
      table {
        border-collapse: collapse;
      }
      th,
      td {
        padding: 0.1rem 0.9rem 0.1rem 0;
        text-align: left;
        vertical-align: bottom;
        border-bottom: 1px solid var(--hair);
        font-weight: 400;
      }
      th {
        font-weight: 600;
        border-bottom-color: var(--graphite);
      }
      .formula {
        display: block;
        font-size: var(--tiny);
        font-weight: 400;
        color: var(--pencil);
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 0.4rem;
      }
    `,
  ];

  @property({ attribute: false }) session!: Session;
  @property() in = '';
  @property({ attribute: false }) below: CellId | null = null;
  @property({ attribute: false }) here: CellId | null = null;
  @property({ attribute: false }) typed = '';
  @state() private name = '';
  @state() private text = '';
  @query('input') private nameLine!: HTMLInputElement | null;
  @query('textarea') private lines!: HTMLTextAreaElement;

  override connectedCallback(): void {
    super.connectedCallback();
    this.text = this.typed;
  }

  protected override firstUpdated(): void {
    (this.nameLine ?? this.lines).focus();
  }

  protected override render(): TemplateResult {
    const held = this.here === null ? null : this.session.cell(this.here);
    const read = readLines(this.text, this.session.door.notebook.settings.currency);
    return html`<form
      class="sheet"
      aria-label=${held ? `Lay out ${held.name} as a table` : 'Lay out a table'}
      @submit=${(event: Event) => event.preventDefault()}
      @keydown=${this.#key}
    >
      ${
        held
          ? html`<p><b>${held.name}</b></p>`
          : html`<label
              >Name of the table
              <input
                .value=${this.name}
                autocomplete="off"
                enterkeyhint="next"
                @input=${(event: Event) => (this.name = (event.target as HTMLInputElement).value)}
            /></label>`
      }
      <label
        >Columns in the first line, then a line for each row
        <textarea
          rows="4"
          placeholder=${'bay, length, width, area: length by width\nnorth, 6 ft, 4 ft'}
          .value=${this.text}
          autocapitalize="off"
          autocomplete="off"
          spellcheck="false"
          aria-describedby="how"
          @input=${(event: Event) => (this.text = (event.target as HTMLTextAreaElement).value)}
        ></textarea>
      </label>
      <div class="acts">
        <button type="button" class="act first" @click=${this.#lay}>
          Lay it out<kbd>Ctrl Enter</kbd>
        </button>
        <button type="button" class="act" @click=${this.#leave}>Leave<kbd>Esc</kbd></button>
      </div>
      <p class="small" id="how">
        Between cells a comma, or a tab as in rows that were copied from a sheet. After a column’s
        name and a colon stands what it works in every row.
      </p>
      <div aria-live="polite">${this.text.trim() === '' ? nothing : this.#preview(read)}</div>
    </form>`;
  }

  /** As it will stand, so that a comma in the wrong place is seen before it is kept. */
  #preview(read: Lines | Finding): TemplateResult {
    if ('code' in read) return html`<p class="small">${read.message}</p>`;
    const { columns, rows } = read.wish;
    const many = rows.length === 1 ? '1 row' : `${rows.length.toLocaleString('en-US')} rows`;
    const wide = columns.length === 1 ? '1 column' : `${columns.length} columns`;
    const shape = `${wide}, ${rows.length === 0 ? 'a blank row to begin with' : many}`;
    return html`<div class="scroll" tabindex="0" role="group" aria-label="How it is read">
      <table>
        <caption class="small">
          ${shape}
        </caption>
        <thead>
          <tr>
            ${columns.map(
              ({ name, formula }) =>
                html`<th scope="col">
                  ${name || '?'}${
                    formula === null ? nothing : html`<span class="formula">${formula}</span>`
                  }
                </th>`,
            )}
          </tr>
        </thead>
        <tbody>
          ${rows.slice(0, SHOWN).map(
            (row) =>
              html`<tr>
                ${row.map((text) => html`<td>${text}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  #key = (event: KeyboardEvent): void => {
    if (event.key === 'F1') return;
    event.stopPropagation();
    if (event.isComposing) return;
    const inName = event.composedPath()[0] === this.nameLine;
    if (event.key === 'Escape') this.#leave();
    else if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) this.#lay();
    else if (event.key === 'Enter' && inName) this.lines.focus();
    else return;
    event.preventDefault();
  };

  #leave = (): void => {
    const { session, here } = this;
    session.write(null);
    const back = here ?? session.chosen;
    if (back !== null) session.bring(back);
  };

  #lay = (): void => {
    const { session, here, in: part, below: after, name, text } = this;
    const where: TablePlace =
      here === null ? { kind: 'new', part, after, name } : { kind: 'here', cell: here };
    const before = new Set(allCells(session.door.notebook).map(({ id }) => id));
    let told: Parameters<Session['setNotTaken']>[1] = [];
    const laid = session.apply((door) => {
      const done = door.layOutTable(where, text);
      if ('refused' in done) told = done.refused;
      return done;
    });
    if (!laid) {
      if (name.trim() === '' && here === null) this.nameLine?.focus();
      else this.lines.focus();
      return;
    }
    const cell =
      here ?? allCells(session.door.notebook).find(({ id }) => !before.has(id))?.id ?? null;
    session.write(null);
    if (cell === null) return;
    session.setNotTaken(cell, told);
    // When the table is drawn.
    requestAnimationFrame(() => session.bringRow(firstPlace(session.door, cell), 'goes'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'lay-table': LayTable;
  }
}
