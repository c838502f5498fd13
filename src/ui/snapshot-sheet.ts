// The sheet of snapshots: the list of them, and from it a comparison, a change order, copies, and the file of the whole job.
// Properties: `desk`, `binder`, `open`. Event, for a person's act: `away`.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sayOrigin } from '../versions/working-copy.ts';
import type { Binder } from './binder.ts';
import { binderState } from './binder-state.ts';
import type { Desk } from './desk.ts';
import { comparingTwo } from './comparing-two.ts';
import type { JobTold } from './job-files.ts';
import { look } from './look.ts';
import './order-paper.ts';
import { ordersMade } from './orders-made.ts';
import './past-prices.ts';
import { wholeJob } from './whole-job.ts';
import './paper-sheet.ts';
import type { PaperSheet } from './paper-sheet.ts';
import type { Compared } from './snapshot-list.ts';
import './snapshot-list.ts';
import { snapshotsLook } from './snapshots-look.ts';
import './version-comparison.ts';

type Shown =
  | { readonly kind: 'list' }
  | ({ readonly kind: 'compare' } & Compared)
  | { readonly kind: 'order'; readonly number: number };

@customElement('snapshot-sheet')
export class SnapshotSheet extends LitElement {
  static override styles = [
    look,
    snapshotsLook,
    css`
      .back {
        margin-bottom: 0.4rem;
      }
      h3 {
        margin-top: 1.8rem;
      }
    `,
  ];

  @property({ attribute: false }) desk!: Desk;
  @property({ type: Boolean }) open = false;
  @state() private binder: Binder | null = null;
  @state() private shown: Shown = { kind: 'list' };
  @state() private told: JobTold | null = null;
  /** What had the keyboard in the list before another view was opened from it. */
  #from: string | null = null;
  #stop: (() => void) | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.desk.binder().then((binder) => {
      this.binder = binder;
      this.#stop ??= binder.listen(() => this.requestUpdate());
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    if (!changed.has('open') || !this.open) return;
    this.shown = { kind: 'list' };
    this.told = null;
    void this.binder?.catchUp();
  }

  protected override render(): TemplateResult {
    const { binder, shown, open } = this;
    return html`<paper-sheet
      wide
      heading=${this.#heading()}
      ?open=${open}
      @away=${this.#away}
      @keydown=${this.#key}
    >
      ${
        !open
          ? nothing
          : binder === null || binder.state.kind === 'reading'
            ? html`<p>Reading what is kept here …</p>`
            : html`${shown.kind === 'list' ? nothing : this.#back()} ${this.#view(binder)}`
      }
    </paper-sheet>`;
  }

  #heading(): string {
    switch (this.shown.kind) {
      case 'list':
        return 'Snapshots';
      case 'compare':
        return 'What changed';
      case 'order':
        return 'Change order';
    }
  }

  #view(binder: Binder): TemplateResult {
    const { shown } = this;
    switch (shown.kind) {
      case 'list':
        return this.#list(binder);
      case 'compare':
        return html`<version-comparison
          .binder=${binder}
          .from=${shown.from}
          .to=${shown.to}
          @compare=${({ detail }: CustomEvent<Compared>) => {
            this.shown = { kind: 'compare', ...detail };
          }}
          @ordered=${({ detail }: CustomEvent<number>) => void this.#show({ kind: 'order', number: detail })}
        ></version-comparison>`;
      case 'order':
        return html`<order-paper .binder=${binder} number=${shown.number}></order-paper>`;
    }
  }

  #back(): TemplateResult {
    return html`<button class="plain back screen" @click=${this.#toList}>All snapshots</button>`;
  }

  #list(binder: Binder): TemplateResult {
    const { origin, snapshots } = binder.versions;
    return html`
      ${binderState(binder)} ${this.#toldHere()}
      ${origin ? html`<p class="tell">${sayOrigin(origin)}</p>` : nothing}
      <snapshot-list
        .binder=${binder}
        @compare=${({ detail }: CustomEvent<Compared>) => void this.#show({ kind: 'compare', ...detail })}
        @gone=${this.#copied}
      ></snapshot-list>
      ${snapshots.length > 1 ? comparingTwo(binder, (two) => void this.#show({ kind: 'compare', ...two })) : nothing}
      <past-prices .binder=${binder} @done=${this.#pricesDone}></past-prices>
      ${ordersMade(binder, (number) => void this.#show({ kind: 'order', number }))}
      ${wholeJob(this.desk, binder, { told: this.#tell, copied: this.#copied })}
    `;
  }

  #toldHere(): TemplateResult | typeof nothing {
    const { told } = this;
    if (!told || told.said === '') return nothing;
    const { said, mismatches, kind } = told;
    return html`<div role="status" class="opened">
      <p class=${kind === 'refused' || mismatches.length > 0 ? 'trouble' : 'tell'}>${said}</p>
      <ul>
        ${mismatches.map((message) => html`<li class="trouble">${message}</li>`)}
      </ul>
    </div>`;
  }

  #tell = (told: JobTold): void => {
    this.told = told;
    if (told.kind !== 'left')
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('.opened')?.scrollIntoView({ block: 'nearest' }),
      );
  };

  /** What was done with old prices is told above, where the keyboard goes. */
  #pricesDone = async ({ detail }: CustomEvent<JobTold>): Promise<void> => {
    this.#tell(detail);
    await this.updateComplete;
    this.renderRoot.querySelector<PaperSheet>('paper-sheet')?.heard();
  };

  #copied = (): void => {
    this.#away();
    const { notebook } = this.desk.session.door;
    this.desk.session.tell({
      text: `${notebook.title || 'The copy'} is a notebook of its own now. The one it was made from is among the notebooks kept here, as it was.`,
      lasts: 'plain',
    });
  };

  async #show(shown: Shown): Promise<void> {
    if (this.shown.kind === 'list') this.#from = this.#focusedKey();
    this.shown = shown;
    await this.updateComplete;
    this.renderRoot.querySelector<PaperSheet>('paper-sheet')?.heard();
  }

  /** Back to the list, and to what was pressed there. */
  #toList = async (): Promise<void> => {
    this.shown = { kind: 'list' };
    await this.updateComplete;
    const list = this.renderRoot.querySelector('snapshot-list');
    await list?.updateComplete;
    const key = this.#from;
    const found =
      key === null
        ? null
        : (list?.renderRoot.querySelector<HTMLElement>(key) ??
          this.renderRoot.querySelector<HTMLElement>(key));
    if (found) found.focus();
    else this.renderRoot.querySelector<PaperSheet>('paper-sheet')?.heard();
  };

  /** How to find again what has the keyboard. */
  #focusedKey(): string | null {
    const list = this.renderRoot.querySelector('snapshot-list');
    const at = list?.shadowRoot?.activeElement ?? this.shadowRoot?.activeElement;
    if (!(at instanceof HTMLElement)) return null;
    const { compare, order } = at.dataset;
    if (compare !== undefined) return `[data-compare="${compare}"]`;
    return order === undefined ? null : `[data-order="${order}"]`;
  }

  /** Esc goes back one view before it puts the sheet away. */
  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || this.shown.kind === 'list') return;
    event.preventDefault();
    event.stopPropagation();
    void this.#toList();
  };

  #away = (): void => {
    this.renderRoot.querySelector<PaperSheet>('paper-sheet')?.shut();
    this.dispatchEvent(new CustomEvent('away'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'snapshot-sheet': SnapshotSheet;
  }
}
