// The remarks of a cell, each edited in place: where it comes from, sensible limits, what it costs, cautions, notes.
// Properties: `session`, `cell`.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Cell, Remark } from '../notebook/document.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';
import './story-line.ts';

/** Remarks that say one of a few words are picked and not typed. */
const PICKED: Readonly<Record<string, readonly string[]>> = {
  cost: ['material', 'labour', 'equipment', 'subcontract', 'fee'],
  price: ['overhead', 'contingency', 'markup', 'discount', 'tax'],
};

/** Remarks that can be added here, with what each is for. Amounts by hand are set where the number is. */
const OFFERED: readonly { readonly word: string; readonly hint: string }[] = [
  { word: 'from', hint: 'measured on site, quoted and by when, looked up, assumed' },
  { word: 'sensible', hint: '3 1/2 in up to 8 in' },
  { word: 'cost', hint: '' },
  { word: 'price', hint: '' },
  { word: 'buy', hint: 'what to ask for at the counter' },
  { word: 'picture', hint: 'slab plan for lengths 6 ft and 6 ft, widths 4 ft' },
  { word: 'recap', hint: 'every part' },
  { word: 'caution', hint: 'what can go wrong, and whom to ask' },
  { word: 'client', hint: 'what the client reads: the work, or what there is to know' },
  { word: 'moves with', hint: 'the lumber yard: the same words under all that move together' },
  { word: 'note', hint: 'anything else' },
];

@customElement('cell-remarks')
export class CellRemarks extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: block;
        margin-top: 1rem;
        padding-top: 0.6rem;
        border-top: 1px solid var(--rule);
      }
      dl {
        margin: 0;
        display: grid;
        grid-template-columns: 4.5rem minmax(0, 1fr);
        gap: 0.3rem 0.6rem;
        font-size: var(--small);
        align-items: baseline;
      }
      dt {
        color: var(--pencil);
      }
      dd {
        margin: 0;
        display: flex;
        gap: 0.5rem;
        align-items: baseline;
        justify-content: space-between;
      }
      dd story-line {
        flex: 1;
      }
      .text {
        overflow-wrap: anywhere;
        cursor: text;
        min-height: 1.5rem;
      }
      .picks {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem;
        align-items: center;
      }
      .offers {
        display: flex;
        flex-wrap: wrap;
        gap: 0.1rem 0.75rem;
        margin-top: 0.6rem;
        align-items: baseline;
      }
    `,
  ];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: Cell;

  constructor() {
    super();
    new Follows(this, 'writing', 'changed');
  }

  protected override updated(): void {
    const picks = this.renderRoot.querySelector('.picks');
    if (picks && !picks.contains(this.shadowRoot?.activeElement ?? null)) {
      picks.querySelector('button')?.focus();
    }
  }

  protected override render(): TemplateResult {
    const { cell } = this;
    const writing = this.#writing();
    const hasRange = this.session.door.state(cell.id).range !== null;
    const offered = OFFERED.filter(
      ({ word }) => word === 'note' || (!this.#has(word) && (word !== 'moves with' || hasRange)),
    );
    const adding = writing !== null && !this.#has(writing) ? writing : null;
    return html`
      <dl>
        ${cell.remarks.filter(({ kind }) => kind !== 'by hand').map((remark) => this.#remark(remark))}
        ${
          adding === null
            ? nothing
            : html`<dt>${adding}</dt>
                <dd>${this.#line(adding, '')}</dd>`
        }
      </dl>
      <div class="offers">
        <span class="small">Add</span>
        ${offered
          .filter(({ word }) => !this.#has(word))
          .map(
            ({ word }) =>
              html`<button
                class="plain"
                aria-label="Add ${word}"
                @click=${() => this.session.write({ kind: 'remark', cell: cell.id, word })}
              >
                ${word}
              </button>`,
          )}
      </div>
    `;
  }

  #remark(remark: Remark): TemplateResult {
    const { word, text } = remark;
    // Of several with one word only the first is written here; the others are where they stand in the text.
    const first = this.cell.remarks.find((one) => one.word === word) === remark;
    return html`<dt>${word || 'note'}</dt>
      <dd>
        ${
          this.#writing() === word && word !== '' && first
            ? this.#line(word, text)
            : html`<button
                  class="text"
                  aria-label="${word}: ${text}. Change"
                  ?disabled=${word === '' || !first}
                  @click=${() => this.session.write({ kind: 'remark', cell: this.cell.id, word })}
                >
                  ${text}
                </button>
                <button
                  class="plain"
                  aria-label="Remove ${word}"
                  ?hidden=${word === '' || !first}
                  @click=${() => this.session.apply((door) => door.removeRemark(this.cell.id, word))}
                >
                  remove
                </button>`
        }
      </dd>`;
  }

  #line(word: string, text: string): TemplateResult {
    const picked = PICKED[word];
    if (picked) return this.#picks(word, text, picked);
    return html`<story-line
      label=${word}
      hint=${OFFERED.find((offered) => offered.word === word)?.hint ?? ''}
      .value=${text}
      @keep=${(event: CustomEvent<string>) => this.#keep(word, text, event.detail.trim())}
      @leave=${() => this.session.write(null)}
    ></story-line>`;
  }

  #picks(word: string, text: string, picked: readonly string[]): TemplateResult {
    return html`<div
      class="picks"
      role="group"
      aria-label=${word}
      @keydown=${(event: KeyboardEvent) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        this.session.write(null);
      }}
    >
      ${picked.map(
        (one) =>
          html`<button
            class="act ${one === text ? 'first' : ''}"
            aria-pressed=${one === text ? 'true' : 'false'}
            @click=${() => this.#keep(word, text, one)}
          >
            ${one}
          </button>`,
      )}
      <button class="plain" @click=${() => this.session.write(null)}>leave</button>
    </div>`;
  }

  #keep(word: string, before: string, now: string): void {
    const { session, cell } = this;
    const done =
      now === before ||
      session.apply((door) =>
        now === '' ? door.removeRemark(cell.id, word) : door.setRemark(cell.id, word, now),
      );
    if (!done) return;
    session.write(null);
    // The button that was pressed is gone: the keyboard goes on from what it wrote.
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`button.text[aria-label^="${word}: "]`)?.focus(),
    );
  }

  #writing(): string | null {
    const { writing } = this.session;
    return writing?.kind === 'remark' && writing.cell === this.cell.id ? writing.word : null;
  }

  #has(word: string): boolean {
    return this.cell.remarks.some((remark) => remark.word.trim().toLowerCase() === word);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'cell-remarks': CellRemarks;
  }
}
