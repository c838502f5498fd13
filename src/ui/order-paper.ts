// A change order as it is printed and signed: number, date, state, reason, what is added, dropped and changed with its
// amounts, the net, the new total, and lines to sign on.
// Properties: `binder`, `number`.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ChangeOrder, OrderLine, VersionNamed } from '../versions/change-order.ts';
import { ORDER_STATES, orderState } from '../versions/contract.ts';
import { fingerprint } from '../versions/hash.ts';
import type { Binder } from './binder.ts';
import { contractHere, sayTwice } from './contract-here.ts';
import { dayShown } from './day-words.ts';
import { look } from './look.ts';
import { isNothing, money, signedMoney, sumOf } from './money-words.ts';
import { snapshotsLook } from './snapshots-look.ts';

/** What an owner puts on top of his costs, and tells a client line by line only where he means to. */
const HIS_OWN = new Set(['overhead', 'contingency', 'markup']);

const KINDS: readonly (readonly [OrderLine['kind'], string])[] = [
  ['added', 'Added'],
  ['dropped', 'Taken out'],
  ['changed', 'Changed'],
];

@customElement('order-paper')
export class OrderPaper extends LitElement {
  static override styles = [
    look,
    snapshotsLook,
    css`
      .paper {
        max-width: 48rem;
      }
      dl {
        display: grid;
        grid-template-columns: max-content minmax(0, 1fr);
        gap: 0.2rem 1.2rem;
        margin: 0.4rem 0 1rem;
      }
      dt {
        color: var(--pencil);
      }
      dd {
        margin: 0;
      }
      tbody.group th[scope='rowgroup'] {
        padding-top: 0.8rem;
        font-weight: 650;
        border-bottom: 1.5px solid var(--graphite);
      }
      tbody td:first-child {
        overflow-wrap: anywhere;
      }
      tfoot tr + tr > * {
        border-top: 0;
      }
      tfoot .new > * {
        font-size: 1.1rem;
        border-top: 1px solid var(--rule);
      }
      .sign {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 2.6rem 2rem;
        margin-top: 3.4rem;
        break-inside: avoid;
      }
      .sign div {
        border-top: 1px solid var(--graphite);
        padding-top: 0.2rem;
        font-size: var(--tiny);
        color: var(--pencil);
      }
      @media (max-width: 480px) {
        table .part {
          display: block;
        }
        th,
        td {
          padding-right: 0.4rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) binder!: Binder;
  @property({ type: Number }) number = 0;
  @state() private ownLines: 'together' | 'each' = 'together';
  #stop: (() => void) | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stop = this.binder.listen(() => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }

  protected override render(): TemplateResult {
    const { orders, orderLog } = this.binder.versions;
    const order = orders.find(({ number }) => number === this.number);
    if (!order) return html`<p>That change order is not here.</p>`;
    const state = orderState(orderLog, order.number);
    const { title } = this.binder.estimate.notebook;
    return html`
      <div class="acts">
        <button class="act first" @click=${() => window.print()}>Print it</button>
        <span class="tell">It is</span>
        ${ORDER_STATES.map(
          (next) =>
            html`<button
              class="act"
              aria-pressed=${next === state ? 'true' : 'false'}
              @click=${() => {
                if (next !== state) void this.binder.logOrder(order.number, next, '');
              }}
            >
              ${next}
            </button>`,
        )}
      </div>
      ${this.#ownTold(order)}
      <article class="paper" aria-label="Change order ${order.number}">
        <h3 tabindex="-1">Change order ${order.number}</h3>
        <dl>
          ${
            title
              ? html`<dt>job</dt>
                  <dd>${title}</dd>`
              : nothing
          }
          <dt>date</dt>
          <dd>${dayShown(order.date)}</dd>
          <dt>state</dt>
          <dd>${state}${this.#since(order.number)}</dd>
          <dt>reason</dt>
          <dd>${order.reason}</dd>
          <dt>from</dt>
          <dd>${versionNamed(order.from)}</dd>
          <dt>to</dt>
          <dd>${versionNamed(order.to)}</dd>
        </dl>
        ${this.#lines(order)} ${this.#contract(order)}
        <div class="sign" aria-label="To sign">
          <div>for the client</div>
          <div>date</div>
          <div>for the builder</div>
          <div>date</div>
        </div>
      </article>
    `;
  }

  #ownTold({ lines }: ChangeOrder): TemplateResult | typeof nothing {
    if (!lines.some(isHisOwn)) return nothing;
    const each = this.ownLines === 'each';
    return html`<div class="acts">
      <button
        class="act"
        aria-pressed=${each ? 'true' : 'false'}
        @click=${() => (this.ownLines = each ? 'together' : 'each')}
      >
        Tell overhead, contingency and profit line by line
      </button>
    </div>`;
  }

  #since(number: number): string {
    const last = this.binder.versions.orderLog.findLast((entry) => entry.order === number);
    return last ? ` since ${dayShown(last.date)}` : '';
  }

  #lines(order: ChangeOrder): TemplateResult {
    const { lines, currency, before, net, after, rest, incomplete } = order;
    const together = this.ownLines === 'together' ? lines.filter(isHisOwn) : [];
    const told = lines.filter((line) => !together.includes(line));
    const onTop = together.reduce((sum, { difference }) => sumOf(sum, difference), '0.00');
    return html`<div class="sideways">
        <table>
          <thead>
            <tr>
              <th scope="col">line</th>
              <th scope="col" class="n">was</th>
              <th scope="col" class="n">is</th>
              <th scope="col" class="n">difference</th>
            </tr>
          </thead>
          ${KINDS.map(([kind, say]) => {
            const own = told.filter((line) => line.kind === kind);
            return own.length === 0
              ? nothing
              : html`<tbody class="group">
                  <tr>
                    <th scope="rowgroup" colspan="4">${say}</th>
                  </tr>
                  ${own.map((line) => orderRow(line, currency))}
                </tbody>`;
          })}
          ${
            together.length === 0
              ? nothing
              : html`<tbody>
                  <tr>
                    <td colspan="3">Overhead and profit on these</td>
                    <td class="n">${signedMoney(onTop, currency)}</td>
                  </tr>
                </tbody>`
          }
          ${
            isNothing(rest)
              ? nothing
              : html`<tbody>
                  <tr>
                    <td colspan="3">Worked otherwise since it was frozen</td>
                    <td class="n">${signedMoney(rest, currency)}</td>
                  </tr>
                </tbody>`
          }
          <tfoot>
            <tr>
              <th scope="row" colspan="3">Price before</th>
              <td class="n">${money(before, currency)}</td>
            </tr>
            <tr>
              <th scope="row" colspan="3">Net of this change order</th>
              <td class="n">${signedMoney(net, currency)}</td>
            </tr>
            <tr class="new">
              <th scope="row" colspan="3">New total</th>
              <td class="n">${money(after, currency)}</td>
            </tr>
          </tfoot>
        </table>
      </div>
      ${
        incomplete
          ? html`<p class="tell">Lines that have no value yet are not in these totals.</p>`
          : nothing
      }`;
  }

  #contract({ currency }: ChangeOrder): TemplateResult | typeof nothing {
    const contract = contractHere(this.binder.versions);
    if (!contract || contract.of.values.currency !== currency) return nothing;
    const { sum, rows } = contract;
    const counted = rows.filter((row) => row.sum !== null).length;
    return html`<p>
      Contract: ${contract.of.name},
      ${money(contract.signed, currency)}${
        counted === 0
          ? '; no change order is approved yet.'
          : html`; with
              ${counted === 1 ? '1 approved change order' : `${counted} approved change orders`} it
              comes to <b>${money(sum, currency)}</b>.`
      }
      ${contract.twice.length === 0 ? nothing : html`<span class="trouble screen">${sayTwice(contract)}</span>`}
    </p>`;
  }
}

function isHisOwn({ line, of }: OrderLine): boolean {
  return line === 'price' && HIS_OWN.has(of);
}

function orderRow({ part, name, before, after, difference }: OrderLine, currency: string) {
  const amount = (money_: string | null) => (money_ === null ? '–' : money(money_, currency));
  return html`<tr>
    <td>${name} ${part ? html`<span class="tell part">${part}</span>` : nothing}</td>
    <td class="n">${amount(before)}</td>
    <td class="n">${amount(after)}</td>
    <td class="n">${signedMoney(difference, currency)}</td>
  </tr>`;
}

function versionNamed({ name, seal }: VersionNamed): TemplateResult {
  return html`${name}${
    seal === null
      ? ', the notebook as it stood on that day'
      : html` <span class="mark">${fingerprint(seal)}</span>`
  }`;
}

declare global {
  interface HTMLElementTagNameMap {
    'order-paper': OrderPaper;
  }
}
