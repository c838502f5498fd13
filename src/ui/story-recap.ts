// What every part costs, kind by kind with its shares, under the cell whose `recap` remark asks for it.
// Properties: `session`, `cell` (the id of the cell).
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import { COST_KINDS } from '../notebook/recap.ts';
import type { RecapLine } from '../notebook/recap-table.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { isNothing, money } from './money-words.ts';
import type { Session } from './session.ts';

@customElement('story-recap')
export class StoryRecap extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: block;
        margin: 0.1rem 0.5rem 0.9rem calc(var(--value) + 0.9rem);
      }
      .scroll {
        overflow-x: auto;
        max-width: 100%;
        width: fit-content;
      }
      table {
        border-collapse: separate;
        border-spacing: 0;
        font-variant-numeric: tabular-nums lining-nums;
      }
      th,
      td {
        padding: 0.25rem 0.6rem;
        text-align: right;
        vertical-align: baseline;
        border-bottom: 1px solid var(--hair);
        font-weight: 400;
        white-space: nowrap;
      }
      th:first-child {
        position: sticky;
        left: 0;
        background: var(--paper);
        text-align: left;
        white-space: normal;
        min-width: 6rem;
        padding-left: 0.1rem;
      }
      thead th {
        font-weight: 600;
        border-bottom: 1px solid var(--graphite);
        vertical-align: bottom;
      }
      .share {
        display: block;
        font-size: var(--tiny);
        color: var(--pencil);
      }
      .cost,
      tfoot th,
      tfoot td {
        font-weight: 600;
      }
      tfoot th,
      tfoot td {
        border-top: 1px solid var(--graphite);
        border-bottom: 0;
      }
      p {
        margin: 0.35rem 0 0;
        max-width: 62ch;
        font-size: var(--small);
        color: var(--pencil);
      }
      p.open {
        color: var(--keel);
      }
      @media (max-width: 40rem) {
        :host {
          margin-left: 0.5rem;
        }
      }
      @media print {
        .scroll {
          overflow: visible;
        }
        th,
        td {
          padding: 0.2rem 0.35rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: CellId;

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  protected override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session.cell(this.cell)) return nothing;
    const { rows, total, unpriced, open } = session.door.recap();
    return html`
      ${
        rows.length === 0
          ? html`<p>No part has a cost line yet.</p>`
          : html`<div class="scroll" role="region" aria-label="What every part costs" tabindex="0">
              <table>
                <thead>
                  <tr>
                    <th scope="col">part</th>
                    <th scope="col">cost</th>
                    <th scope="col">of the job</th>
                    ${COST_KINDS.map((kind) => html`<th scope="col">${kind}</th>`)}
                  </tr>
                </thead>
                <tbody>
                  ${rows.map(
                    (row) =>
                      html`<tr>
                        ${this.#cells(row)}
                      </tr>`,
                  )}
                </tbody>
                <tfoot>
                  <tr>
                    ${this.#cells(total)}
                  </tr>
                </tfoot>
              </table>
            </div>`
      }
      ${
        unpriced.length > 0
          ? html`<p class="open">Named here and not priced: ${unpriced.join(', ')}.</p>`
          : nothing
      }
      ${
        open.count > 0
          ? html`<p class="open">
              Not in these sums, for want of a value:
              ${open.names.join(', ')}${open.count > open.names.length ? ', and more' : ''}.
            </p>`
          : nothing
      }
    `;
  }

  #cells({ name, kinds, direct, share }: RecapLine): TemplateResult {
    const { currency } = this.session.door.notebook.settings;
    return html`
      <th scope="row">${name}</th>
      <td class="cost">${money(direct, currency)}</td>
      <td>${share === null ? '–' : percent(share)}</td>
      ${kinds.map(
        ({ amount, share: of }) =>
          html`<td>
            ${isNothing(amount) ? '–' : money(amount, currency)}
            ${of === null || isNothing(amount) ? nothing : html`<span class="share">${percent(of)}</span>`}
          </td>`,
      )}
    `;
  }
}

/** `7.5%` of 75 tenths. */
function percent(tenths: number): string {
  return `${Math.floor(tenths / 10)}.${tenths % 10}%`;
}

declare global {
  interface HTMLElementTagNameMap {
    'story-recap': StoryRecap;
  }
}
