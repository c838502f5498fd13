// The footing under the whole page: a strip hatched as drawings hatch materials, direct cost by kind, the price,
// and what the last change moved it by, which is said once to a screen reader when the change is meant.
// Properties: `session`, `against` (a snapshot that the price stands beside; the accepted one stands out).
// Event, for a person's act: `watch`.
import { LitElement, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { CostKind } from '../language/tree.ts';
import type { Result } from '../moves-it/stood.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';
import { sayLeftOut } from '../notebook/left-out.ts';
import type { Costs } from '../notebook/recap.ts';
import type { Against } from './binder.ts';
import { Follows } from './follows.ts';
import { footingLook } from './footing-look.ts';
import { look } from './look.ts';
import { isNothing, money, moreOrLess } from './money-words.ts';
import type { Session } from './session.ts';
import { witness, witnessLook } from './witness.ts';

const KINDS: readonly CostKind[] = ['material', 'labour', 'equipment', 'subcontract', 'fee'];

@customElement('job-footing')
export class JobFooting extends LitElement {
  static override styles = [look, witnessLook, footingLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) against: Against | null = null;

  /** The costs before and after the last change that moved the price; what a tape passes over is not yet meant. */
  #before: Costs | null = null;
  #costs: Costs | null = null;
  #of: EstimateDoor | null = null;

  constructor() {
    super();
    new Follows(this, 'opened', 'changed', 'tape', 'watched');
  }

  protected override willUpdate(): void {
    const { door, trial } = this.session;
    const costs = door.costs();
    if (this.#of !== door) [this.#of, this.#before, this.#costs] = [door, null, costs];
    if (trial || costs.total.price === this.#costs?.total.price) return;
    [this.#before, this.#costs] = [this.#costs, costs];
  }

  /** `$31.84 more`; nothing where more or fewer lines are in the sum than before. */
  #moved(currency: string): string | null {
    const [now, before] = [this.#costs?.total, this.#before?.total];
    if (!now || !before || now.incomplete.length !== before.incomplete.length) return null;
    return moreOrLess(now.price, before.price, currency);
  }

  protected override render(): TemplateResult {
    const { session } = this;
    const { door, trial } = session;
    const { currency } = door.notebook.settings;
    const { total, shares } = door.costs();
    const missing = total.incomplete;
    const by = trial ? moreOrLess(total.price, trial.costs.total.price, currency) : null;
    const last = trial ? null : this.#moved(currency);
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
          ${by ? html`<span class="by">${by}</span> than at the tick` : 'price'}${
            missing.length > 0
              ? html` so far; ${sayLeftOut(missing, (id) => door.state(id))}`
              : nothing
          }
        </p>
        <strong
          >${session.watched.has('price') ? witness() : nothing}${money(total.price, currency)}</strong
        >
        ${
          last
            ? html`<span class="moved" aria-hidden="true"
                ><span class="by">${last}</span> than before</span
              >`
            : nothing
        }
      </div>
      <button
        class="plain watch"
        aria-label=${session.watched.has('price') ? 'Let go of the price' : 'Watch the price'}
        @click=${this.#watch}
      >
        ${session.watched.has('price') ? 'let go' : 'watch'}
      </button>
      ${this.#beside(total, currency)}
      <p class="heard" role="status">
        ${last ? `Price ${money(total.price, currency)}, ${last}.` : ''}
      </p>
    `;
  }

  #watch = (): void => {
    const detail: Result = { of: 'price' };
    this.dispatchEvent(new CustomEvent('watch', { detail, bubbles: true, composed: true }));
  };

  /** `$412.60 more than Bid 1`, and that it was accepted. */
  #beside(
    { price, incomplete }: Costs['total'],
    currency: string,
  ): TemplateResult | typeof nothing {
    const { against } = this;
    if (!against || against.snapshot.values.currency !== currency) return nothing;
    const { name, values } = against.snapshot;
    const { total } = values;
    const by = moreOrLess(price, total.price, currency);
    const soFar = incomplete.length > 0 || total.incomplete ? ' so far' : '';
    return html`<p class="beside ${against.accepted ? 'accepted' : ''}">
      <span class="snapshot"
        ><span class="called">${name}</span>
        <span
          >${against.accepted ? 'accepted ' : ''}at <b>${money(total.price, currency)}</b></span
        ></span
      >
      <span
        >${by === null ? `the same price${soFar}` : html`now <b class="by">${by}</b>${soFar}`}</span
      >
    </p>`;
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
