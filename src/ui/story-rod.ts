// The rod beside the page: one mark a cell, longer for costs, full width for parts; map, scroll bar and
// picture of dependence at once. What the chosen cell was worked from is cut into its left edge, what it
// goes into is cut into its right edge.
// Properties: `session`, `marks`, `view`, `narrow`. Events, for a person's act: `travel` with a height in the page.
import { LitElement, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import { Follows } from './follows.ts';
import { isNothing, money, sumOf } from './money-words.ts';
import { rodLook } from './rod-look.ts';
import { type RodMark, type RodView, foldOf, onPage, onRod, spread } from './rod-scale.ts';
import { styled } from './styled.ts';
import { nameBeside, standingOn } from './row-places.ts';
import type { Session } from './session.ts';
import { valueSaid } from './value-words.ts';

/** A label of two short lines. */
const LABEL = 29;
const CUT = { long: 11, high: 7 };

/** A cell that the chosen one was worked from: where its cut is and where its label fits. */
interface Notch {
  readonly what: CellId;
  readonly at: number;
  readonly shown: number;
}

@customElement('story-rod')
export class StoryRod extends LitElement {
  static override styles = [rodLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) marks: readonly RodMark[] = [];
  @property({ attribute: false }) view: RodView = { height: 0, scroll: 0, total: 0 };
  @property({ type: Boolean, reflect: true }) narrow = false;

  constructor() {
    super();
    new Follows(this, 'chosen', 'changed', 'opened');
    this.addEventListener('pointerdown', this.#grab);
    this.addEventListener('pointermove', this.#drag);
  }

  protected override render(): TemplateResult {
    const { view } = this;
    if (view.height <= 0) return html``;
    const wood = this.narrow ? 18 : 36;
    const right = this.clientWidth - (this.narrow ? 0 : 16);
    const left = right - wood;
    const state = this.#chosenState();
    const notches = this.narrow ? [] : this.#labels(state?.needs ?? [], left);
    const fold = foldOf(view);
    return html`
      <svg width=${this.clientWidth} height=${view.height} aria-hidden="true">
        <defs>
          <pattern id="grain" patternUnits="userSpaceOnUse" width="9" height="160">
            <path class="grain" d="M1.5 0V160M4 0V70M4 96V160M6.5 0V160M8 30V128" />
          </pattern>
        </defs>
        <g transform="translate(${left} 0)">
          <rect class="wood" width=${wood} height=${view.height} />
          <rect fill="url(#grain)" width=${wood} height=${view.height} />
          ${view.scroll > 1 ? svg`<rect class="folded" width=${wood} height=${fold} />` : nothing}
          ${
            this.#endsBelow()
              ? svg`<rect class="folded" y=${view.height - fold} width=${wood} height=${fold} />`
              : nothing
          }
          <path class="marks close" d=${this.#path('cell', 'folded', wood - 9, wood)} />
          <path class="marks close" d=${this.#path('cost', 'folded', wood - 17, wood)} />
          <path class="marks" d=${this.#path('cell', 'level', wood - 9, wood)} />
          <path class="marks" d=${this.#path('cost', 'level', wood - 17, wood)} />
          <path class="marks part" d=${this.#path('part', 'anywhere', 0, wood)} />
          <path class="edge" d="M0.5 0V${view.height}M${wood - 0.5} 0V${view.height}" />
          ${(state?.needs ?? []).map((id) => this.#cut(id, 'left', wood))}
          ${(state?.goesInto ?? []).map((id) => this.#cut(id, 'right', wood))} ${this.#foot(wood)}
        </g>
        ${notches.map(({ at, shown }) =>
          Math.abs(at - shown) < 1
            ? nothing
            : svg`<path class="lead" d="M${left - 1} ${at}L${left - 8} ${shown}" />`,
        )}
      </svg>
      ${this.narrow ? nothing : this.#words(notches, view.total)}
    `;
  }

  /** Cells the chosen one was worked from, with where their labels go. */
  #labels(needs: readonly CellId[], left: number): readonly Notch[] {
    if (left < 60) return [];
    const room = Math.floor(this.view.height / LABEL) - 1;
    const placed = needs.flatMap((id) => {
      const y = this.#yOf(id);
      return y === null ? [] : [{ what: id, at: onRod(y, this.view) }];
    });
    const shown = placed.slice(0, room);
    return spread(shown, LABEL, this.view.height);
  }

  #words(notches: readonly Notch[], total: number): unknown {
    const { door } = this.session;
    const taken = notches.map(({ shown }) => shown);
    const needs = this.#chosenState()?.needs.length ?? 0;
    const labels = notches.map(
      ({ what, shown }) =>
        html`<div
          class="label from"
          ${styled({ top: `${shown - LABEL / 2}px` })}
          @click=${() => this.session.bring(what)}
        >
          <span>${nameBeside(door, what, this.session.within)}</span>
          <span class="value">${valueSaid(door, what) ?? '?'}</span>
        </div>`,
    );
    const parts: unknown[] = [];
    let running = '0.00';
    for (const mark of total > 0 ? this.marks : []) {
      if (mark.kind !== 'part') continue;
      const part = door.notebook.parts[mark.id];
      const row = door.costs().parts.find(({ key }) => key === part?.key);
      running = row ? sumOf(running, row.direct) : running;
      const at = Math.min(
        Math.max(onRod(mark.y, this.view), LABEL / 2),
        this.view.height - LABEL / 2,
      );
      if (!part || taken.some((other) => Math.abs(other - at) < LABEL)) continue;
      taken.push(at);
      parts.push(
        html`<div class="label part" ${styled({ top: `${at - LABEL / 2}px` })}>
          <span>${part.name}</span>
          <span class="value"
            >${
              row && !isNothing(row.direct)
                ? `to here ${money(running, door.notebook.settings.currency)}`
                : nothing
            }</span
          >
        </div>`,
      );
    }
    const left = needs - notches.length;
    return [
      labels,
      parts,
      left > 0 ? html`<div class="label from rest"><span>and ${left} more</span></div>` : nothing,
    ];
  }

  /** Marks that are level with their rows are drawn plainly, those in a folded end finely: there they lie close. */
  #path(
    kind: RodMark['kind'],
    where: 'folded' | 'level' | 'anywhere',
    from: number,
    to: number,
  ): string {
    const { view } = this;
    const seen = new Set<number>();
    for (const mark of this.marks) {
      if (mark.kind !== kind) continue;
      const at = onRod(mark.y, view);
      const level = Math.abs(at - (mark.y - view.scroll)) < 0.5;
      if (where !== 'anywhere' && level !== (where === 'level')) continue;
      seen.add(Math.round(at * 2) / 2);
    }
    return [...seen].map((y) => `M${from} ${y}H${to}`).join('');
  }

  #cut(id: CellId, side: 'left' | 'right', wood: number): unknown {
    const y = this.#yOf(id);
    if (y === null) return nothing;
    const at = onRod(y, this.view);
    const long = this.narrow ? 6 : CUT.long;
    const x = side === 'left' ? -1 : wood - long + 1;
    const [a, b] = [at - CUT.high / 2, at + CUT.high / 2];
    const edge =
      side === 'left' ? `M0 ${a}H${long}V${b}H0` : `M${wood} ${a}H${wood - long}V${b}H${wood}`;
    return svg`<rect class="cut" x=${x} y=${a} width=${long} height=${CUT.high} />
      <path class="saw ${side}" d=${edge} />`;
  }

  /** The crow's-foot of a carpenter: two strokes that meet where the mark is. */
  #foot(wood: number): unknown {
    const { chosen } = this.session;
    const y = chosen === null ? null : this.#yOf(chosen);
    if (y === null) return nothing;
    const at = onRod(y, this.view);
    const reach = this.narrow ? 5 : 13;
    const tip = this.narrow ? wood - 6 : wood + 1;
    return svg`<path class="marks part" d="M0 ${at}H${wood}" />
      <path class="foot" d="M${tip + reach} ${at - 6.5}L${tip} ${at}L${tip + reach} ${at + 6.5}" />`;
  }

  #chosenState() {
    const { worked, door } = this.session;
    return worked === null ? null : door.state(worked);
  }

  /** A row's cell has its mark where its table has it. */
  #yOf(of: CellId): number | null {
    const id = standingOn(this.session.door, of);
    return this.marks.find((mark) => mark.kind !== 'part' && mark.id === id)?.y ?? null;
  }

  #endsBelow(): boolean {
    const { height, scroll, total } = this.view;
    return scroll + height < total - 1;
  }

  #from = { at: 0, scroll: 0, folded: false };

  #grab = (event: PointerEvent): void => {
    if (event.button !== 0 || (event.composedPath()[0] as Element).closest?.('.label')) return;
    const at = this.#at(event);
    const fold = foldOf(this.view);
    this.#from = {
      at,
      scroll: this.view.scroll,
      folded: at < fold || at > this.view.height - fold,
    };
    this.setPointerCapture(event.pointerId);
    if (this.#from.folded) this.#travel(onPage(at, this.view) - this.view.height / 2);
  };

  /** In the middle the rod is moved by hand; from a folded end the whole length is run through. */
  #drag = (event: PointerEvent): void => {
    if (!this.hasPointerCapture(event.pointerId)) return;
    const at = this.#at(event);
    const { height, total } = this.view;
    if (this.#from.folded) this.#travel((at / height) * total - height / 2);
    else this.#travel(this.#from.scroll - (at - this.#from.at));
  };

  #at(event: PointerEvent): number {
    return event.clientY - this.getBoundingClientRect().top;
  }

  #travel(to: number): void {
    this.dispatchEvent(new CustomEvent('travel', { detail: to }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'story-rod': StoryRod;
  }
}
