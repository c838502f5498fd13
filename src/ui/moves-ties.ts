// The givens with a range that a result rests on, and which of them move together: tied and untied here, kept as `moves
// with` under each of them.
// Properties: `session`, `result`. Event, for a person's act: `goes` with the cell that was chosen.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import { rangedAmong } from '../moves-it/trials.ts';
import { JOB_PRICE, withTotals } from '../moves-it/whole-job.ts';
import type { Cell } from '../notebook/document.ts';
import { nameKey } from '../notebook/names.ts';
import { tieOf, tiesAmong } from '../notebook/ties.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { movesLook } from './moves-look.ts';
import { allCells } from './reading-order.ts';
import { standingOn } from './row-places.ts';
import type { Session } from './session.ts';

/** What carries a tie: a given, or a table for all givens with a range in its rows. */
interface Carrier {
  readonly cell: Cell;
  readonly givens: readonly CellId[];
}

@customElement('moves-ties')
export class MovesTies extends LitElement {
  static override styles = [look, movesLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) result: CellId = JOB_PRICE;
  @state() private ticked: ReadonlySet<CellId> = new Set();
  @state() private words = '';
  @state() private told = '';

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  protected override render(): TemplateResult {
    const carriers = this.#carriers();
    return html`<h3>The ranges behind it</h3>
      <p class="small">
        Each goes its own way, unless it is tied: prices of one supplier, hours of one crew. What is
        tied is at its best together and at its worst together.
      </p>
      <form @submit=${this.#tie}>
        <ul class="ranges">
          ${carriers.map((each) => this.#carrier(each))}
        </ul>
        ${
          carriers.length < 2
            ? nothing
            : html`<div class="asks">
                <label for="with">Tie the ticked ones: what moves them?</label>
                <input
                  id="with"
                  class="amount"
                  autocomplete="off"
                  placeholder="the lumber yard"
                  list="ties-there"
                  aria-describedby="tie-told"
                  .value=${this.words}
                  @input=${(event: Event) => {
                    this.words = (event.currentTarget as HTMLInputElement).value;
                  }}
                />
                <datalist id="ties-there">
                  ${this.#there().map(({ words }) => html`<option value=${words}></option>`)}
                </datalist>
                <button class="act">Tie</button>
              </div>`
        }
        <p id="tie-told" class="trouble told" role="status">${this.told}</p>
      </form>`;
  }

  #carrier({ cell, givens }: Carrier): TemplateResult {
    const { door } = this.session;
    const tie = tieOf(cell);
    const range =
      cell.table === null
        ? (door.shownRange(cell.id)?.text ?? '')
        : givens.length === 1
          ? 'one range in its rows'
          : `${givens.length} ranges in its rows`;
    const part = this.session.part(cell.part)?.name ?? '';
    return html`<li>
      <label class="tick">
        <input
          type="checkbox"
          aria-label="Tie ${cell.name}"
          .checked=${this.ticked.has(cell.id)}
          @change=${() => this.#tick(cell.id)}
        />
      </label>
      <button
        type="button"
        class="name"
        title="Go to it"
        @click=${() => this.dispatchEvent(new CustomEvent('goes', { detail: cell.id }))}
      >
        ${cell.name}
      </button>
      <span class="where">${part === '' ? nothing : `${part}, `}${range}</span>
      ${
        tie && tie.text !== ''
          ? html`<span class="tied"
              >moves with ${tie.text}
              <button
                type="button"
                class="plain"
                aria-label="Untie ${cell.name}"
                @click=${() => this.#untie(cell)}
              >
                untie
              </button></span
            >`
          : nothing
      }
    </li>`;
  }

  #carriers(): readonly Carrier[] {
    const { door } = this.session;
    const job = withTotals(door);
    const found = new Map<CellId, CellId[]>();
    for (const { cell } of rangedAmong(job, [this.result, ...job.reach([this.result], 'down')])) {
      const on = standingOn(door, cell);
      if (on !== null) found.set(on, [...(found.get(on) ?? []), cell]);
    }
    return allCells(door.notebook).flatMap((cell) => {
      const givens = found.get(cell.id);
      return givens ? [{ cell, givens }] : [];
    });
  }

  #there() {
    return tiesAmong(allCells(this.session.door.notebook));
  }

  #tick(id: CellId): void {
    const ticked = new Set(this.ticked);
    if (!ticked.delete(id)) ticked.add(id);
    this.ticked = ticked;
    this.told = '';
  }

  #tie = (event: Event): void => {
    event.preventDefault();
    const cells = this.#carriers()
      .map(({ cell }) => cell.id)
      .filter((id) => this.ticked.has(id));
    const words = this.words.trim();
    const others = this.#there().some((tie) => nameKey(tie.words) === nameKey(words));
    if (words === '') this.told = 'Say what moves them, as in "the lumber yard".';
    else if (cells.length === 0 || (cells.length === 1 && !others))
      this.told = 'Tick the ones that move together, two of them or more.';
    else if (this.session.apply((door) => door.tie(cells, words))) this.#done();
    else this.told = this.session.notice?.text ?? '';
  };

  #untie({ id }: Cell): void {
    const tie = this.#there().find(({ cells }) => cells.some((cell) => cell.id === id));
    // One alone is tied to nothing.
    const goes = tie?.cells.length === 2 ? tie.cells.map((cell) => cell.id) : [id];
    if (this.session.apply((door) => door.tie(goes, null))) this.#done();
    else this.told = this.session.notice?.text ?? '';
  }

  #done(): void {
    this.ticked = new Set();
    this.words = '';
    this.told = '';
    this.renderRoot.querySelector<HTMLElement>('input[type=checkbox]')?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'moves-ties': MovesTies;
  }
}
