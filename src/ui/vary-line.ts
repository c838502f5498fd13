// The line in which a cell is named that could be otherwise: by its name, or the one that is chosen on the page.
// Properties: `session`, `varied` (cells that are there already). Event, for a person's act: `varied` with the cell.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import { nameKey } from '../notebook/names.ts';
import { nearNames } from '../words/near.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { allCells } from './reading-order.ts';
import type { Session } from './session.ts';

export interface Varied {
  readonly cell: CellId;
}

/** So many names are offered while one types; all others are found when they are written out. */
const MOST_OFFERED = 300;

@customElement('vary-line')
export class VaryLine extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: block;
        margin: 0 0 0.7rem;
      }
      form {
        display: flex;
        flex-wrap: wrap;
        gap: 0.4rem;
        align-items: center;
      }
      label {
        font-size: var(--small);
        color: var(--pencil);
      }
      input {
        flex: 1 1 11rem;
        min-width: 0;
        max-width: 17rem;
        min-height: 1.9rem;
        padding: 0.15rem 0.45rem;
        border: 1px solid var(--faint);
        border-radius: 2px;
        background: var(--lifted);
        font-size: 0.9375rem;
      }
      p {
        display: flex;
        flex-wrap: wrap;
        gap: 0.4rem;
        align-items: center;
        margin: 0.4rem 0 0;
        font-size: var(--small);
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) varied: ReadonlySet<CellId> = new Set();
  /** What was written and names no one cell, and which could be meant. */
  @state() private unclear: { readonly say: string; readonly near: readonly Cell[] } | null = null;
  @query('input') private line?: HTMLInputElement;

  constructor() {
    super();
    new Follows(this, 'opened', 'changed', 'chosen');
  }

  override focus(): void {
    this.line?.focus();
  }

  protected override render(): TemplateResult {
    const { session, unclear } = this;
    const chosen = session.chosen === null ? null : session.cell(session.chosen);
    const offered = chosen && this.#may(chosen) ? chosen : null;
    return html`<form @submit=${this.#named}>
        <label for="name">Vary</label>
        <input
          id="name"
          list="names"
          placeholder="name of a cell"
          autocapitalize="off"
          autocomplete="off"
          spellcheck="false"
        />
        <datalist id="names">
          ${this.#offered().map((cell) => html`<option value=${this.#called(cell)}></option>`)}
        </datalist>
        <button class="act">Vary it</button>
        ${
          offered
            ? html`<button type="button" class="act" @click=${() => this.#take(offered)}>
                Vary ${offered.name}
              </button>`
            : nothing
        }
      </form>
      ${
        unclear
          ? html`<p role="status">
              <span>${unclear.say}</span>
              ${unclear.near.map(
                (cell) =>
                  html`<button class="act" @click=${() => this.#take(cell)}>
                    ${this.#called(cell)}
                  </button>`,
              )}
            </p>`
          : nothing
      }`;
  }

  #named = (event: Event): void => {
    event.preventDefault();
    const written = this.line?.value ?? '';
    if (written.trim() === '') return;
    const key = nameKey(written);
    const cells = this.#cells();
    const full = cells.filter((cell) => nameKey(this.#called(cell)) === key);
    const found = full.length > 0 ? full : cells.filter(({ name }) => nameKey(name) === key);
    if (found.length === 1) {
      this.#take(found[0]);
      return;
    }
    if (found.length > 1) {
      this.unclear = { say: `"${written.trim()}" could be any of these.`, near: found.slice(0, 5) };
      return;
    }
    const names = new Set(
      nearNames(
        written,
        cells.map(({ name }) => name),
      ),
    );
    const near = cells.filter(({ name }) => names.has(name)).slice(0, 5);
    const say = `No cell here is called "${written.trim()}".${near.length > 0 ? ' Did you mean one of these?' : ''}`;
    this.unclear = { say, near };
  };

  #take(cell: Cell): void {
    this.unclear = null;
    if (this.line) this.line.value = '';
    const detail: Varied = { cell: cell.id };
    this.dispatchEvent(new CustomEvent('varied', { detail }));
  }

  /** Givens first: they are what one varies. */
  #offered(): readonly Cell[] {
    const { door } = this.session;
    const all = this.#cells().filter((cell) => this.#may(cell));
    const givens = all.filter(({ id }) => door.state(id).kind === 'given');
    return [...givens, ...all.filter((cell) => !givens.includes(cell))].slice(0, MOST_OFFERED);
  }

  #cells(): readonly Cell[] {
    return allCells(this.session.door.notebook).filter(({ table }) => table === null);
  }

  #may(cell: Cell): boolean {
    return cell.table === null && !this.varied.has(cell.id);
  }

  /** With its part where another cell is called the same. */
  #called(cell: Cell): string {
    const twins = this.#cells().filter(({ name }) => nameKey(name) === nameKey(cell.name));
    return twins.length === 1
      ? cell.name
      : `${cell.name}, in ${this.session.part(cell.part)?.name || 'no part'}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vary-line': VaryLine;
  }
}
