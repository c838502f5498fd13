// The whole page: header, rod, parts, working, footing; scrolling, keys, and what is told.
// Property: `desk`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import { repeat } from 'lit/directives/repeat.js';
import type { CellId } from '../language/tree.ts';
import type { Result } from '../moves-it/stood.ts';
import type { Part } from '../notebook/document.ts';
import type { Binder } from './binder.ts';
import type { Desk } from './desk.ts';
import { Dragging, type DropLine, type Gripped } from './dragging.ts';
import type { SheetName } from './job-header.ts';
import { look } from './look.ts';
import { styled } from './styled.ts';
import { pageLook } from './page-look.ts';
import { allCells } from './reading-order.ts';
import { rodKey } from './page-keys.ts';
import { PageKeyboard } from './page-keyboard.ts';
import { PageLeaving } from './page-leaving.ts';
import { PageSheets } from './page-sheets.ts';
import type { CellSheet } from './job-sheets.ts';
import { PagePlaces, isLost } from './page-places.ts';
import { told } from './page-told.ts';
import type { Happening, Writing } from './happening.ts';
import type { Session } from './session.ts';
import type { About } from './story-working.ts';
import { valueSaid } from './value-words.ts';
import './job-footing.ts';
import './job-header.ts';
import './story-part.ts';
import './story-rod.ts';
import './story-working.ts';
import './watched-strip.ts';

/** Blocks drawn in the first go, and in each frame after it until all stand. */
const DRAWN_FIRST = 120;
const DRAWN_EACH = 240;
/** From so many cells on, rows out of sight are not laid out. */
const LONG_NOTEBOOK = 400;

@customElement('story-page')
export class StoryPage extends LitElement {
  static override styles = [look, pageLook];

  @property({ attribute: false }) desk!: Desk;
  @state() bound: Binder | null = null;
  /** On narrow screens the working is a sheet from below. */
  @state() private workingUp = false;
  @state() private drawn = DRAWN_FIRST;
  @state() private narrow = false;

  #stops: (() => void)[] = [];
  readonly #places = new PagePlaces(this);
  readonly #dragging = new Dragging(this);
  readonly sheets = new PageSheets(this, (sheet) => this.#sheetGone(sheet));
  #narrow = window.matchMedia('(max-width: 760px)');
  /** How far the page was scrolled when a client came to look on. */
  #leftAt = 0;
  #wasAlone = false;
  /** How many notebooks were opened: ids mean something else in each, so nothing drawn is used again. */
  #opened = 0;

  constructor() {
    super();
    new PageKeyboard(this);
    new PageLeaving(this);
    this.addEventListener('watch', (event) =>
      this.desk.watching.turn((event as CustomEvent<Result>).detail),
    );
  }

  get session(): Session {
    return this.desk.session;
  }

  get scrolled(): number {
    return this.#wasAlone ? this.#leftAt : this.#places.scroll;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stops = [
      this.session.listen((happening) => this.#happened(happening)),
      this.desk.listen(() => this.requestUpdate()),
    ];
    this.narrow = this.#narrow.matches;
    this.#narrow.addEventListener('change', this.#turned);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const stop of this.#stops) stop();
    this.#narrow.removeEventListener('change', this.#turned);
  }

  protected override firstUpdated(): void {
    this.#places.watch();
    // After the page stands: an accepted snapshot shows beside the price.
    setTimeout(() => void this.desk.binder().then((binder) => this.#bind(binder)));
    this.#comeBack();
  }

  protected override willUpdate(): void {
    const { alone } = this.sheets;
    // Before the rows go and nothing is left to be scrolled.
    if (alone && !this.#wasAlone) this.#leftAt = this.#places.scroll;
    this.#wasAlone = alone;
  }

  protected override updated(): void {
    const blocks = this.session.door.notebook.parts.reduce((n, part) => n + part.blocks.length, 0);
    const going = this.drawn < blocks;
    if (going) {
      requestAnimationFrame(() => {
        this.drawn += DRAWN_EACH;
      });
    }
    this.#places.drawn(going ? 'some' : 'all');
  }

  protected override render(): TemplateResult {
    const { session, desk } = this;
    const { view, marks } = this.#places;
    const { notebook } = session.door;
    const long = allCells(notebook).length > LONG_NOTEBOOK;
    // While a client looks on the document holds nothing of the notebook; what measures and scrolls stays.
    const { alone } = this.sheets;
    document.title = notebook.title ? `${notebook.title} · Storyrod` : 'Storyrod';
    return html`
      ${alone ? nothing : this.#header()} ${alone ? nothing : told(desk)}
      <main class="scroll" id="page" aria-label="Estimate" @scroll=${this.#places.scrolled}>
        <story-rod
          role="scrollbar"
          tabindex="0"
          aria-label="The rod: the whole job"
          aria-controls="page"
          aria-orientation="vertical"
          aria-valuemin="0"
          aria-valuemax=${Math.max(0, Math.round(view.total - view.height))}
          aria-valuenow=${Math.round(view.scroll)}
          ${styled({ height: `${view.height}px` })}
          .session=${session}
          .marks=${alone ? [] : marks}
          .view=${view}
          ?narrow=${this.narrow}
          @travel=${(event: CustomEvent<number>) => this.#places.scrollTo(event.detail)}
          @keydown=${this.#rodKey}
        ></story-rod>
        <div
          class="parts"
          @about=${({ detail }: CustomEvent<About>) => this.lay(detail.sheet, detail.cell, detail.column)}
          @grip=${({ detail }: CustomEvent<{ gripped: Gripped; event: PointerEvent }>) =>
            this.#dragging.start(detail.gripped, detail.event)}
        >
          ${keyed(
            this.#opened,
            repeat(
              this.#limited(alone ? [] : notebook.parts),
              ([part]) => part.key,
              ([part, limit]) =>
                part.key === '' && part.blocks.length === 0
                  ? nothing
                  : html`<story-part
                      .session=${session}
                      .content=${part}
                      limit=${limit}
                      ?long=${long}
                    ></story-part>`,
            ),
          )}
        </div>
      </main>
      ${this.#dragging.line ? dropLine(this.#dragging.line) : nothing}
      ${alone ? nothing : this.#working()} ${this.sheets.beside()}
      ${alone ? nothing : this.#below()} ${this.sheets.render()}
    `;
  }

  #header(): TemplateResult {
    return html`<job-header
      role="banner"
      .desk=${this.desk}
      @sheet=${(event: CustomEvent<SheetName>) => this.sheets.show(event.detail)}
      @guide=${this.sheets.turnGuide}
      @alternatives-sheet=${this.sheets.turnAlternatives}
    ></job-header>`;
  }

  #working(): TemplateResult {
    return html`<aside ?up=${this.workingUp} aria-label="Working">
      <button
        class="pull"
        aria-expanded=${this.workingUp ? 'true' : 'false'}
        @click=${() => (this.workingUp = !this.workingUp)}
      >
        ${this.#pulled()}
      </button>
      <div class="inside">
        <story-working
          .session=${this.session}
          @about=${({ detail }: CustomEvent<About>) => this.lay(detail.sheet, detail.cell)}
          @away=${() => (this.workingUp = false)}
        ></story-working>
      </div>
    </aside>`;
  }

  #below(): TemplateResult {
    return html`<watched-strip
        .desk=${this.desk}
        @alternatives-sheet=${this.sheets.turnAlternatives}
      ></watched-strip>
      <job-footing
        role="contentinfo"
        .session=${this.session}
        .against=${this.bound?.against ?? null}
      ></job-footing>`;
  }

  /** How many blocks of each part are drawn so far. */
  #limited(parts: readonly Part[]): readonly (readonly [Part, number])[] {
    let left = this.drawn;
    return parts.map((part) => {
      const limit = Math.max(0, Math.min(left, part.blocks.length));
      left -= part.blocks.length;
      return [part, limit] as const;
    });
  }

  #pulled(): TemplateResult {
    const { session } = this;
    const cell = session.chosen === null ? null : session.cell(session.chosen);
    if (!cell) return html`<span>Working</span>`;
    const id = session.worked ?? cell.id;
    const { name } = session.door.state(id).input;
    const shown = valueSaid(session.door, id) ?? '';
    return html`<span class="heard">Working of </span><b>${name}</b> <span>${shown}</span>`;
  }

  #happened(happening: Happening): void {
    switch (happening.kind) {
      case 'opened':
        this.drawn = DRAWN_FIRST;
        this.#opened++;
        this.#comeBack();
        break;
      case 'changed':
      case 'told':
      case 'put':
      case 'guide-left':
      case 'watched':
        break;
      case 'tape':
        if (this.session.trial) this.#opens(this.session.trial.cell);
        break;
      case 'chosen':
        void this.desk.keepPlace(this.#places.scroll);
        break;
      case 'writing':
        this.#writes(this.session.writing);
        break;
      case 'bring':
        this.workingUp = false;
        this.#places.bring(happening.cell, happening.keyboard);
        break;
      case 'bring-row':
        this.workingUp = false;
        break;
      case 'bring-part':
        this.workingUp = false;
        this.#places.bringPart(happening.part);
        break;
    }
    this.requestUpdate();
  }

  #writes(writing: Writing | null): void {
    switch (writing?.kind) {
      case 'formula':
      case 'by-hand':
      case 'table-here':
      case 'name':
        this.#opens(writing.cell);
        break;
      case 'remark':
        this.workingUp = true;
        break;
      case 'new-cell':
      case 'new-table':
      case 'new-prose':
        this.workingUp = false;
        break;
      case 'prose':
      case 'part-name':
      case 'title':
      case undefined:
        break;
    }
  }

  /** On a phone the working would lie over what opens in the row. */
  #opens(cell: CellId): void {
    this.workingUp = false;
    this.#places.keepInSight(cell);
  }

  #bind(binder: Binder): void {
    this.bound = binder;
    if (this.isConnected) this.#stops.push(binder.listen(() => this.requestUpdate()));
  }

  #comeBack(): void {
    this.#places.comeBack(this.desk.place?.scroll ?? 0);
  }

  /** Lays a sheet about one cell over the page. */
  lay(sheet: CellSheet, cell: CellId, column = 0): void {
    this.workingUp = false;
    this.sheets.lay(sheet, cell, column);
  }

  #turned = (): void => {
    this.narrow = this.#narrow.matches;
  };

  #rodKey = (event: KeyboardEvent): void => {
    const by = rodKey(event.key, this.#places.view);
    if (by === null) return;
    event.preventDefault();
    event.stopPropagation();
    this.#places.scrollTo(this.#places.scroll + by);
  };

  /** What had the keyboard before the sheet came may be gone, as a line that was being written is. */
  #sheetGone(sheet: SheetName | CellSheet | ''): void {
    const { chosen } = this.session;
    // After the client's sheet all that stood on the page stands there anew.
    if (sheet === 'client') this.#places.comeBack(this.#leftAt);
    if (chosen !== null && (sheet === 'client' || isLost())) this.#places.bring(chosen, 'stays');
  }

  fromWorking(): void {
    this.workingUp = false;
  }

  toWorking(): void {
    this.workingUp = true;
    void this.updateComplete.then(() => {
      const working = this.renderRoot.querySelector('story-working');
      working?.renderRoot.querySelector('h2')?.focus();
    });
  }
}

function dropLine({ top, left, width }: DropLine): TemplateResult {
  return html`<div
    class="drop"
    ${styled({ top: `${top}px`, left: `${left}px`, width: `${width}px` })}
  ></div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'story-page': StoryPage;
  }
}
