// A part of the job: its heading with the recap, then prose, deeper headings and cells in their order.
// Properties: `session`, `content` (the part), `limit` (how many blocks to draw now; the rest keep their place).
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Result } from '../moves-it/stood.ts';
import type { Block, Cell, Part } from '../notebook/document.ts';
import { asksForRecap } from '../notebook/recap-table.ts';
import { drawing } from './drawing-fetched.ts';
import { look } from './look.ts';
import { styled } from './styled.ts';
import { witness, witnessLook } from './witness.ts';
import { duplicatePart, movePartBy } from './moving.ts';
import { keyOf, saysOtherwise, stretchesOf } from './part-blocks.ts';
import { partLook } from './part-look.ts';
import { partRecap } from './part-recap.ts';
import type { CellId } from '../language/tree.ts';
import type { Session } from './session.ts';
import './lay-table.ts';
import './story-cell.ts';
import './story-line.ts';
import './story-prose.ts';
import './story-recap.ts';
import './story-table.ts';

/** About how high a block is before it was drawn, in pixels. */
const BLOCK_HEIGHT = 30;

@customElement('story-part')
export class StoryPart extends LitElement {
  static override styles = [look, witnessLook, partLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false, hasChanged: saysOtherwise }) content!: Part;
  @property({ type: Number }) limit = Infinity;
  #shown = '';
  /** In a long notebook stretches out of sight are not laid out. */
  @property({ type: Boolean, reflect: true }) long = false;

  #stop: (() => void) | null = null;

  /** Of what happens on the page only what shows in this part draws it again: there may be many parts. */
  override connectedCallback(): void {
    super.connectedCallback();
    this.#stop = this.session.listen(({ kind }) => {
      if (kind !== 'changed' && kind !== 'writing' && kind !== 'watched') return;
      if (this.#shows() !== this.#shown) this.requestUpdate();
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }

  protected override updated(): void {
    this.#shown = this.#shows();
  }

  get #mark(): string {
    return `part ${this.content.key}`;
  }

  #watch(): void {
    const detail: Result = { of: 'part', part: this.content.key };
    this.dispatchEvent(new CustomEvent('watch', { detail, bubbles: true, composed: true }));
  }

  /** What stands in the heading and what is being written here, as one text to compare. */
  #shows(): string {
    const { writing, door } = this.session;
    const here = writing && 'part' in writing && writing.part === this.content.key;
    const row = door.costs().parts.find(({ key }) => key === this.content.key);
    const watched = this.session.watched.has(this.#mark);
    return JSON.stringify([row, here ? writing : null, watched]);
  }

  /** Where a row would come to stand that is dropped at this height: its place without it, and the line above that. */
  dropAt(y: number, without: CellId): { readonly place: number; readonly top: number } | null {
    const all = [...this.renderRoot.querySelectorAll<HTMLElement>('[data-block]')];
    const others = all.filter((block) => block.dataset['cell'] !== String(without));
    const before = others.filter((block) => {
      const { top, height } = block.getBoundingClientRect();
      return top + height / 2 < y;
    });
    const next = others[before.length];
    const end = this.renderRoot.querySelector('.blocks')?.getBoundingClientRect();
    if (!end) return null;
    const top = next ? next.getBoundingClientRect().top : end.bottom;
    return { place: before.length, top };
  }

  protected override render(): TemplateResult {
    const { content: part, limit } = this;
    const drawn = part.blocks.slice(0, limit);
    const left = part.blocks.length - drawn.length;
    return html`
      <section aria-label=${part.name || 'Above the parts'}>
        ${part.key === '' ? nothing : this.#heading()}
        <div
          class="blocks"
          role="list"
          @contentvisibilityautostatechange=${(event: ContentVisibilityAutoStateChangeEvent) =>
            (event.target as Element).toggleAttribute('skipped', event.skipped)}
        >
          ${stretchesOf(drawn).map(
            ([from, blocks]) =>
              html`<div class="stretch" role="none">
                ${repeat(
                  blocks,
                  (block, place) => keyOf(block, from + place),
                  (block, place) => this.#block(block, from + place),
                )}
              </div>`,
          )}
          ${this.#newCell(null)}${this.#newTable(null)}${this.#newProse(null)}
        </div>
        ${left > 0 ? html`<div ${styled({ height: `${left * BLOCK_HEIGHT}px` })}></div>` : nothing}
        ${
          part.key === ''
            ? nothing
            : html`<p class="add">
                <button
                  class="plain"
                  @click=${() => this.session.write({ kind: 'new-cell', part: part.key, after: null })}
                >
                  Add a cell to ${part.name}
                </button>
                <button
                  class="plain"
                  @click=${() => this.session.write({ kind: 'new-table', part: part.key, after: null })}
                >
                  Lay out a table
                </button>
                <button class="plain" @click=${() => this.#writeProse()}>Write a note</button>
                <span class="whole">
                  <button class="plain" @click=${() => this.#watch()}>
                    ${this.session.watched.has(this.#mark) ? 'Let go of' : 'Watch'} what
                    ${part.name} costs
                  </button>
                  <button class="plain" @click=${() => duplicatePart(this.session, part.key)}>
                    Duplicate ${part.name}
                  </button>
                  <button
                    class="plain"
                    aria-label="${part.name}, move up"
                    @click=${() => movePartBy(this.session, part.key, -1)}
                  >
                    move up
                  </button>
                  <button
                    class="plain"
                    aria-label="${part.name}, move down"
                    @click=${() => movePartBy(this.session, part.key, 1)}
                  >
                    move down
                  </button>
                </span>
              </p>`
        }
      </section>
    `;
  }

  #heading(): TemplateResult {
    const { session, content: part } = this;
    const { writing } = session;
    const row = session.door.costs().parts.find(({ key }) => key === part.key);
    const renames = writing?.kind === 'part-name' && writing.part === part.key;
    return html`<header>
      <span
        class="grip"
        aria-hidden="true"
        title="Drag to move the part"
        @pointerdown=${this.#grip}
      ></span>
      ${
        renames
          ? html`<story-line
              class="title"
              label="Name of the part"
              .value=${part.name}
              @keep=${(event: CustomEvent<string>) => this.#rename(event.detail)}
              @leave=${() => session.write(null)}
            ></story-line>`
          : html`<h2>
              <button
                data-heading=${part.key}
                aria-label="${part.name}, rename this part"
                @click=${() => session.write({ kind: 'part-name', part: part.key })}
              >
                ${part.name}
              </button>
            </h2>`
      }
      ${row ? partRecap(this.session.door, row, this.session.watched.has(this.#mark) ? witness() : nothing) : nothing}
    </header>`;
  }

  #grip = (event: PointerEvent): void => {
    const detail = { gripped: { part: this.content.key }, event };
    this.dispatchEvent(new CustomEvent('grip', { detail, bubbles: true, composed: true }));
  };

  #block(block: Block, place: number): unknown {
    switch (block.kind) {
      case 'cell':
        return html`<story-cell
            role="listitem"
            data-block
            data-cell=${block.cell.id}
            ?money=${block.cell.money !== null}
            .session=${this.session}
            .cell=${block.cell}
          ></story-cell>
          ${block.cell.table ? this.#table(block.cell.id) : nothing}
          ${this.#picture(block.cell)}${this.#recapTable(block.cell)}
          ${this.#newCell(block.cell.id)}${this.#newTable(block.cell.id)}${this.#newProse(block.cell.id)}`;
      case 'heading':
        return html`<div role="listitem" data-block class="deeper">
          <h3 class="level-${Math.min(6, block.level)}">${block.text}</h3>
        </div>`;
      case 'prose':
        return html`<story-prose
          role="listitem"
          data-block
          .session=${this.session}
          in=${this.content.key}
          place=${place}
          markdown=${block.markdown}
        ></story-prose>`;
    }
  }

  #table(cell: CellId): TemplateResult {
    return html`<story-table role="listitem" .session=${this.session} .cell=${cell}></story-table>`;
  }

  /** What draws is fetched with the first picture. */
  #picture(cell: Cell): TemplateResult | typeof nothing {
    if (!cell.remarks.some(({ kind }) => kind === 'picture')) return nothing;
    if (!drawing.here) {
      void drawing.fetched().then(() => this.requestUpdate());
      return nothing;
    }
    return html`<story-picture
      role="listitem"
      .session=${this.session}
      .cell=${cell.id}
    ></story-picture>`;
  }

  #recapTable(cell: Cell): TemplateResult | typeof nothing {
    if (!asksForRecap(cell)) return nothing;
    return html`<story-recap
      role="listitem"
      .session=${this.session}
      .cell=${cell.id}
    ></story-recap>`;
  }

  #newCell(after: number | null): unknown {
    const { writing } = this.session;
    if (writing?.kind !== 'new-cell' || writing.part !== this.content.key) return nothing;
    if (writing.after !== after) return nothing;
    return html`<div class="new" role="listitem">
      <story-line
        label="Name of the new cell"
        hint="Name of the new cell, then Enter"
        @keep=${(event: CustomEvent<string>) => this.#add(event.detail, after)}
        @leave=${() => this.session.write(null)}
      ></story-line>
    </div>`;
  }

  #newTable(after: CellId | null): unknown {
    const { writing } = this.session;
    if (writing?.kind !== 'new-table' || writing.part !== this.content.key) return nothing;
    if (writing.after !== after) return nothing;
    return html`<lay-table
      class="new table"
      role="listitem"
      .session=${this.session}
      in=${this.content.key}
      .below=${after}
    ></lay-table>`;
  }

  /** Prose comes after the chosen cell where that stands in this part, or at its end. */
  #writeProse(): void {
    const { session, content: part } = this;
    const chosen = session.chosen === null ? null : session.cell(session.chosen);
    const after = chosen?.part === part.key ? chosen.id : null;
    session.write({ kind: 'new-prose', part: part.key, after });
  }

  #newProse(after: number | null): unknown {
    const { writing } = this.session;
    if (writing?.kind !== 'new-prose' || writing.part !== this.content.key) return nothing;
    if (writing.after !== after) return nothing;
    return html`<story-prose
      role="listitem"
      .session=${this.session}
      in=${this.content.key}
      place="-1"
      .below=${after}
    ></story-prose>`;
  }

  /** A new cell starts as not yet known; its formula is written next. */
  #add(name: string, after: number | null): void {
    const { session, content: part } = this;
    if (name.trim() === '') {
      session.write(null);
      return;
    }
    const before = new Set(part.blocks.flatMap((b) => (b.kind === 'cell' ? [b.cell.id] : [])));
    if (!session.apply((door) => door.addCell(part.key, after, name.trim(), '?'))) return;
    const added = session
      .part(part.key)
      ?.blocks.flatMap((b) => (b.kind === 'cell' && !before.has(b.cell.id) ? [b.cell.id] : []));
    const [cell] = added ?? [];
    session.write(cell === undefined ? null : { kind: 'formula', cell });
  }

  #rename(name: string): void {
    const { session, content: part } = this;
    const wanted = name.trim();
    if (wanted === '' || wanted === part.name) session.write(null);
    else if (session.apply((door) => door.renamePart(part.key, wanted))) session.write(null);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'story-part': StoryPart;
  }
}
