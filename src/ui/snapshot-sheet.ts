// The sheet of snapshots: the list of them, and from it a comparison, a change order, copies, and the file of the whole job.
// Properties: `desk`, `binder`, `open`. Event, for a person's act: `away`.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { askAgain, sayPast } from '../versions/past-dates.ts';
import { sayOrigin } from '../versions/working-copy.ts';
import type { Binder } from './binder.ts';
import { contractHere } from './contract-here.ts';
import { dayShown } from './day-words.ts';
import type { Desk } from './desk.ts';
import { type JobTold, openJob, saveJob } from './job-files.ts';
import { look } from './look.ts';
import { money, signedMoney } from './money-words.ts';
import { orderState } from '../versions/contract.ts';
import './order-paper.ts';
import './paper-sheet.ts';
import type { PaperSheet } from './paper-sheet.ts';
import { type Compared, written } from './snapshot-list.ts';
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
      .past li,
      .orders li {
        padding: 0.25rem 0;
        border-bottom: 1px solid var(--hair);
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
      ${this.#state(binder)} ${this.#toldHere()}
      ${origin ? html`<p class="tell">${sayOrigin(origin)}</p>` : nothing}
      <snapshot-list
        .binder=${binder}
        @compare=${({ detail }: CustomEvent<Compared>) => void this.#show({ kind: 'compare', ...detail })}
        @gone=${this.#copied}
      ></snapshot-list>
      ${snapshots.length > 1 ? this.#comparing(binder) : nothing} ${this.#past(binder)}
      ${this.#orders(binder)} ${this.#files(binder)}
    `;
  }

  #state({ state }: Binder): TemplateResult | typeof nothing {
    switch (state.kind) {
      case 'here':
      case 'reading':
        return nothing;
      case 'not-kept':
        return html`<p class="trouble" role="alert">
          ${
            state.why === 'full'
              ? 'This browser has no room left: what stands here is not kept.'
              : 'This browser keeps nothing here: what stands here goes with the page.'
          }
          Save the whole job as a file.
        </p>`;
      case 'closed':
        return html`<p class="trouble" role="alert">
          ${
            state.why === 'newer'
              ? 'Snapshots of this notebook were kept by a later version of this page. They are left as they are; reload to get the later version.'
              : 'What was kept of the snapshots of this notebook can’t be read here. It is left as it is.'
          }
        </p>`;
    }
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

  #comparing({ versions: { snapshots } }: Binder): TemplateResult {
    const choice = (name: string, label: string, first: number) =>
      html`<label
        >${label}
        <select name=${name}>
          ${snapshots.map(
            ({ seal, name: called }, i) =>
              html`<option value=${seal} .selected=${i === first}>${called}</option>`,
          )}
          <option value="">the notebook as it stands now</option>
        </select>
      </label>`;
    const last = snapshots.length - 1;
    return html`<h3>Compare any two</h3>
      <form
        class="fields"
        @submit=${(event: SubmitEvent) => {
          event.preventDefault();
          const { elements } = event.currentTarget as HTMLFormElement;
          const chosen = (name: string): string | null => {
            const field = elements.namedItem(name);
            return field instanceof HTMLSelectElement && field.value !== '' ? field.value : null;
          };
          void this.#show({ kind: 'compare', from: chosen('from'), to: chosen('to') });
        }}
      >
        ${choice('from', 'From', last - 1)} ${choice('to', 'to', last)}
        <button class="act" data-compare="two">Compare the two</button>
      </form>`;
  }

  #past(binder: Binder): TemplateResult | typeof nothing {
    const { past } = binder;
    if (past.length === 0) return nothing;
    const asked = past.filter(({ canAsk }) => canAsk).length;
    return html`<h3>Prices past their date</h3>
      <ul class="past">
        ${past.map(
          (each) =>
            html`<li>
              <b>${each.name}</b>, ${each.formula}
              <span class="tell"
                >${each.part}:
                ${sayPast(each)}${
                  each.canAsk
                    ? nothing
                    : '; it stands in a formula or was set by hand: yours to change there'
                }</span
              >
            </li>`,
        )}
      </ul>
      ${
        asked === 0
          ? nothing
          : html`<div class="acts">
              <button class="act" data-ask @click=${() => void this.#askAgain(binder)}>
                ${asked === 1 ? 'Turn it' : `Turn all ${asked}`} into ? until it is quoted again
              </button>
            </div>`
      }`;
  }

  #orders(binder: Binder): TemplateResult | typeof nothing {
    const { orders, orderLog } = binder.versions;
    if (orders.length === 0) return nothing;
    const contract = contractHere(binder.versions);
    const currency = orders[0]?.currency ?? '';
    const sumAfter = new Map(contract?.rows.map(({ order, sum }) => [order.number, sum]));
    return html`<h3>Change orders</h3>
      <div class="sideways">
        <table>
          <thead>
            <tr>
              <th scope="col">number</th>
              <th scope="col">reason</th>
              <th scope="col">state</th>
              <th scope="col" class="n">net</th>
              <th scope="col" class="n">contract after it</th>
            </tr>
          </thead>
          <tbody>
            ${
              contract
                ? html`<tr>
                    <td></td>
                    <td colspan="3">${contract.of.name}, accepted</td>
                    <td class="n">${money(contract.signed, contract.of.values.currency)}</td>
                  </tr>`
                : nothing
            }
            ${orders.map(({ number, reason, date, net }) => {
              const sum = sumAfter.get(number);
              return html`<tr>
                <td>
                  <button
                    class="tie"
                    data-order=${number}
                    @click=${() => void this.#show({ kind: 'order', number })}
                  >
                    Change order ${number}
                  </button>
                </td>
                <td>${reason} <span class="tell">${dayShown(date)}</span></td>
                <td>${orderState(orderLog, number)}</td>
                <td class="n">${signedMoney(net, currency)}</td>
                <td class="n">${sum ? money(sum, currency) : 'not yet'}</td>
              </tr>`;
            })}
          </tbody>
          ${
            contract
              ? html`<tfoot>
                  <tr>
                    <th scope="row" colspan="4">
                      Contract sum<span class="tell"
                        >; asked and priced ${signedMoney(contract.open, currency)}, billed
                        ${signedMoney(contract.billed, currency)}</span
                      >
                    </th>
                    <td class="n">${money(contract.sum, currency)}</td>
                  </tr>
                </tfoot>`
              : nothing
          }
        </table>
      </div>
      ${
        contract
          ? nothing
          : html`<p class="tell">
              No snapshot was accepted yet: there is no contract that these could be added to.
            </p>`
      }`;
  }

  #files(binder: Binder): TemplateResult {
    const { title } = binder.estimate.notebook;
    return html`<h3>The whole job in one file</h3>
      <p class="tell">
        The notebook with all its snapshots, change orders and logs. Opening it, here or elsewhere,
        looks at every hash and makes a notebook of its own of it.
      </p>
      <div class="acts">
        <button class="act" @click=${() => void saveJob(this.desk).then(this.#tell)}>
          Save the whole job
        </button>
        <button class="act" @click=${() => void openJob(this.desk).then(this.#tell)}>
          Open a job
        </button>
      </div>
      <h3>For the next client</h3>
      <form
        class="fields"
        @submit=${(event: SubmitEvent) => {
          event.preventDefault();
          const named = written(event.currentTarget as HTMLFormElement, 'title');
          void binder.duplicate(named).then(this.#copied);
        }}
      >
        <label class="wide"
          >Title of the copy
          <input
            name="title"
            required
            autocomplete="off"
            .defaultValue=${`${title || 'Estimate'}, for the next client`}
          />
        </label>
        <button class="act">Duplicate the notebook</button>
      </form>`;
  }

  #tell = (told: JobTold): void => {
    this.told = told;
    if (told.kind !== 'left')
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('.opened')?.scrollIntoView({ block: 'nearest' }),
      );
  };

  async #askAgain(binder: Binder): Promise<void> {
    const change = askAgain(binder.estimate, binder.past);
    if (!change) return;
    const done = this.desk.session.apply((door) => door.replaceText(change));
    const said = done
      ? `${change.say}: done. Undo on the page takes it back.`
      : (this.desk.session.notice?.text ?? '');
    this.#tell({ kind: done ? 'opened' : 'refused', said, mismatches: [] });
    await this.updateComplete;
    this.renderRoot.querySelector<PaperSheet>('paper-sheet')?.heard();
  }

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
