// The footing under the whole page: a strip hatched as drawings hatch materials, direct cost by kind, the price.
// Property: `session`.
import { LitElement, css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { CostKind } from '../language/tree.ts';
import { linesNotKnown } from './cell-notes.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { isNothing, money, moreOrLess } from './money-words.ts';
import type { Session } from './session.ts';

const KINDS: readonly CostKind[] = ['material', 'labour', 'equipment', 'subcontract', 'fee'];

@customElement('job-footing')
export class JobFooting extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: flex;
        align-items: center;
        gap: 1.75rem;
        min-height: var(--foot);
        padding: 0.4rem 1.5rem;
        border-top: 2px solid var(--graphite);
        background: var(--paper);
      }
      .strip {
        flex: 0 0 20rem;
        height: 1.4rem;
        overflow: visible;
        color: var(--graphite);
      }
      .frame {
        fill: none;
        stroke: currentcolor;
        stroke-width: 1;
      }
      dl {
        display: flex;
        gap: 1.6rem;
        margin: 0;
        flex: 1 1 auto;
        min-width: 0;
      }
      dt {
        display: flex;
        align-items: center;
        gap: 0.35rem;
        font-size: var(--tiny);
        color: var(--pencil);
        white-space: nowrap;
      }
      dt svg {
        width: 0.95rem;
        height: 0.7rem;
        color: var(--graphite);
        flex: none;
      }
      dd {
        margin: 0;
        font-weight: 600;
        white-space: nowrap;
      }
      .none dd {
        color: var(--pencil);
        font-weight: 400;
      }
      .direct {
        padding-left: 1.6rem;
        border-left: 1px solid var(--rule);
      }
      .price {
        margin-left: auto;
        text-align: right;
        white-space: nowrap;
      }
      .price p {
        margin: 0;
        font-size: var(--small);
        color: var(--pencil);
      }
      .price strong {
        display: block;
        font-size: 1.6rem;
        line-height: 1.1;
        font-weight: 750;
        letter-spacing: -0.01em;
      }
      .by {
        color: var(--keel);
        font-weight: 600;
      }
      @media (max-width: 1180px) {
        .strip {
          flex-basis: 10rem;
        }
        :host {
          gap: 1.1rem;
        }
        dl {
          gap: 1.1rem;
        }
        .none {
          display: none;
        }
      }
      @media (max-width: 760px) {
        :host {
          flex-wrap: wrap;
          gap: 0.15rem 1rem;
          padding: 0.35rem 0.75rem 0.45rem;
        }
        .strip {
          flex: 1 1 100%;
          height: 0.6rem;
        }
        dl {
          gap: 0.9rem;
          overflow: hidden;
        }
        dt svg,
        .direct {
          display: none;
        }
        dt,
        dd {
          font-size: 0.71875rem;
          line-height: 1.3;
        }
        .price {
          display: flex;
          gap: 0.5rem;
          align-items: baseline;
          white-space: normal;
        }
        .price strong {
          font-size: 1.25rem;
        }
      }
      @media print {
        :host {
          border-top: 2px solid #000;
          padding: 0.5rem 0;
          break-inside: avoid;
        }
      }
    `,
  ];

  @property({ attribute: false }) session!: Session;

  constructor() {
    super();
    new Follows(this, 'opened', 'changed', 'tape');
  }

  protected override render(): TemplateResult {
    const { door, trial } = this.session;
    const { currency } = door.notebook.settings;
    const { total, shares } = door.costs();
    const missing = total.incomplete.length;
    const by = trial ? moreOrLess(total.price, trial.costs.total.price, currency) : null;
    return html`
      ${this.#strip(shares)}
      <dl>
        ${KINDS.map(
          (kind) =>
            html`<div class=${isNothing(total[kind]) ? 'none' : ''}>
              <dt>${swatch(kind)}${kind}</dt>
              <dd>${money(total[kind], currency)}</dd>
            </div>`,
        )}
        <div class="direct">
          <dt>direct cost</dt>
          <dd>${money(total.direct, currency)}</dd>
        </div>
      </dl>
      <div class="price">
        <p>
          ${by ? html`<span class="by">${by}</span> than at the tick` : 'price'}${missing > 0
            ? html` so far; ${linesNotKnown(missing)}`
            : nothing}
        </p>
        <strong>${money(total.price, currency)}</strong>
      </div>
    `;
  }

  #strip(shares: Readonly<Record<CostKind, number>>): TemplateResult {
    let from = 0;
    const pieces = KINDS.filter((kind) => shares[kind] > 0).map((kind) => {
      const [x, wide] = [`${from * 100}%`, `${shares[kind] * 100}%`];
      from += shares[kind];
      return svg`<rect x=${x} y="0" width=${wide} height="100%" fill="url(#hatch-${kind})" />
        <rect class="frame" x=${x} y="0" width=${wide} height="100%" />`;
    });
    return html`<svg class="strip" aria-hidden="true">
      <defs>${KINDS.map((kind) => hatch(kind, `hatch-${kind}`))}</defs>
      ${pieces}
      <rect class="frame" x="0" y="0" width="100%" height="100%" />
    </svg>`;
  }
}

/** Each kind has a hatch of its own, as each material has on a drawing. */
function hatch(kind: CostKind, id: string): unknown {
  return svg`<pattern id=${id} patternUnits="userSpaceOnUse" width="8" height="8">
    ${strokes(kind)}
  </pattern>`;
}

function strokes(kind: CostKind): unknown {
  const line = (d: string, wide = 0.9) =>
    svg`<path d=${d} fill="none" stroke="currentColor" stroke-width=${wide} />`;
  switch (kind) {
    case 'material':
      return line('M-2 2 L2 -2 M0 8 L8 0 M6 10 L10 6');
    case 'labour':
      return line('M0 2 H8 M0 6 H8', 0.8);
    case 'equipment':
      return line('M0 8 L8 0 M-2 2 L2 -2 M6 10 L10 6 M0 0 L8 8 M-2 6 L2 10 M6 -2 L10 2', 0.7);
    case 'subcontract':
      return svg`<circle cx="2" cy="2" r="0.9" fill="currentColor" /><circle cx="6" cy="6" r="0.9" fill="currentColor" />`;
    case 'fee':
      return line('M2 0 V8 M6 0 V8', 0.8);
  }
}

function swatch(kind: CostKind): TemplateResult {
  return html`<svg viewBox="0 0 19 14" aria-hidden="true">
    <defs>${hatch(kind, `swatch-${kind}`)}</defs>
    <rect
      x="0.5"
      y="0.5"
      width="18"
      height="13"
      fill="url(#swatch-${kind})"
      stroke="currentColor"
    />
  </svg>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'job-footing': JobFooting;
  }
}
