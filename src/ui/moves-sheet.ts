// The sheet "What moves it", laid over the page: what matters to a result, how sure it is, and what it would take. It is
// about the price of the job until another cell is chosen. Nothing on it is the answer of the estimate.
// Properties: `desk`, `open`, `makesWorker` (handed in by tests). Event, for a person's act: `away`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import { numberOf } from '../moves-it/givens.ts';
import { DIRECT_COST, JOB_PRICE, withTotals } from '../moves-it/whole-job.ts';
import type { Desk } from './desk.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { MovesAsked } from './moves-asked.ts';
import './moves-matters.ts';
import { movesSheetLook } from './moves-sheet-look.ts';
import './moves-sure.ts';
import './moves-take.ts';
import { allCells } from './reading-order.ts';
import { recordSheetLook } from './record-sheet-look.ts';
import { NearAmounts } from './near-amounts.ts';
import type { Session } from './session.ts';

const LEAVES = ['What matters', 'How sure', 'What would it take'] as const;
type Leaf = (typeof LEAVES)[number];

@customElement('moves-sheet')
export class MovesSheet extends LitElement {
  static override styles = [look, recordSheetLook, movesSheetLook];

  @property({ attribute: false }) desk!: Desk;
  @property({ type: Boolean, reflect: true }) open = false;
  @property({ attribute: false }) makesWorker: () => Worker | null = makesWorker;
  @state() private leaf: Leaf = 'What matters';
  @state() private chosen: CellId | null = null;
  @query('dialog') private dialog!: HTMLDialogElement;
  readonly #asked = new MovesAsked(() => this.makesWorker());

  get session(): Session {
    return this.desk.session;
  }

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#asked.stop();
  }

  protected override updated(): void {
    if (this.open && !this.dialog.open) this.dialog.showModal();
    else if (!this.open && this.dialog.open) this.dialog.close();
  }

  protected override render(): TemplateResult {
    const { title } = this.session.door.notebook;
    return html`<dialog aria-label="What moves it" @close=${this.#away}>
      <div class="top">
        <h2>What moves it<span class="of">${title}</span></h2>
        <nav aria-label="What moves it">
          ${LEAVES.map(
            (leaf) =>
              html`<button
                aria-current=${leaf === this.leaf ? 'page' : 'false'}
                @click=${() => (this.leaf = leaf)}
              >
                ${leaf}
              </button>`,
          )}
        </nav>
        <button class="plain" @click=${() => window.print()}>Print</button>
        <button class="plain" @click=${this.#away}>Put away</button>
      </div>
      <div class="inside">${this.open ? this.#inside() : nothing}</div>
    </dialog>`;
  }

  #inside(): TemplateResult {
    const { session, leaf } = this;
    const results = this.#results();
    const result = results.find((cell) => cell === this.chosen) ?? results[0];
    if (result === undefined)
      return html`<p>Nothing in this notebook is worked yet: there is no number to ask about.</p>`;
    const words = new NearAmounts(withTotals(session.door), result);
    const goes = ({ detail }: CustomEvent<CellId>): void => this.#goes(detail);
    // All of them stay, so that what is typed is still there when one comes back.
    return html`
      <div class="result">
        <label for="result">What moves</label>
        <select
          id="result"
          @change=${(event: Event) => {
            this.chosen = Number((event.currentTarget as HTMLSelectElement).value);
          }}
        >
          ${this.#options(results, result)}
        </select>
        <strong>${words.shown}</strong>
      </div>
      <moves-matters
        ?hidden=${leaf !== 'What matters'}
        .session=${session}
        .asked=${this.#asked}
        .result=${result}
        ?shown=${leaf === 'What matters'}
        @goes=${goes}
      ></moves-matters>
      <moves-sure
        ?hidden=${leaf !== 'How sure'}
        .session=${session}
        .asked=${this.#asked}
        .result=${result}
        ?shown=${leaf === 'How sure'}
        @goes=${goes}
      ></moves-sure>
      <moves-take
        ?hidden=${leaf !== 'What would it take'}
        .session=${session}
        .result=${result}
        ?shown=${leaf === 'What would it take'}
        @goes=${goes}
      ></moves-take>
      <p class="caution">
        All of this is only as good as the ranges that were typed and the formulas it goes through.
        It looks ahead; the answer of the estimate is the one on the page.
      </p>
    `;
  }

  /** The totals of the job first, then everything that is worked to a number. */
  #results(): readonly CellId[] {
    const { door } = this.session;
    const { notebook } = door;
    const cells = allCells(notebook);
    const totals = [
      ...(cells.some(({ money }) => money !== null) ? [JOB_PRICE] : []),
      ...(cells.some(({ money }) => money?.line === 'cost') ? [DIRECT_COST] : []),
    ];
    const job = withTotals(door);
    const worked = cells
      .filter(({ id, table }) => !table && door.state(id).kind === 'worked')
      .map(({ id }) => id);
    return [...totals, ...worked].filter((cell) => numberOf(job.state(cell)) !== null);
  }

  #options(results: readonly CellId[], chosen: CellId): TemplateResult {
    const { session } = this;
    const job = withTotals(session.door);
    const option = (cell: CellId): TemplateResult =>
      html`<option value=${cell} ?selected=${cell === chosen}>
        ${job.state(cell).input.name}
      </option>`;
    const byPart = session.door.notebook.parts.map((part) => ({
      part,
      cells: results.filter((cell) => cell >= 0 && session.cell(cell)?.part === part.key),
    }));
    return html`${results.filter((cell) => cell < 0).map(option)}
    ${byPart.map(({ part, cells }) =>
      cells.length === 0
        ? nothing
        : html`<optgroup label=${part.name || 'Before the first part'}>
            ${cells.map(option)}
          </optgroup>`,
    )}`;
  }

  #goes(cell: CellId): void {
    // Shut at once, so that the keyboard is back on the page before it is sent to the cell.
    this.dialog.close();
    this.session.bring(cell);
  }

  #away = (): void => {
    this.#asked.stop();
    if (this.open) this.dispatchEvent(new CustomEvent('away'));
  };
}

function makesWorker(): Worker | null {
  if (typeof Worker === 'undefined') return null;
  return new Worker(new URL('./moves-worker.ts', import.meta.url), { type: 'module' });
}

declare global {
  interface HTMLElementTagNameMap {
    'moves-sheet': MovesSheet;
  }
}
