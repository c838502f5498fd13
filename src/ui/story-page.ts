// The whole page: header, rod, parts, working, footing; scrolling, keys, and what is told.
// Property: `desk`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import { repeat } from 'lit/directives/repeat.js';
import type { CellId } from '../language/tree.ts';
import type { Part } from '../notebook/document.ts';
import type { Binder } from './binder.ts';
import type { Desk } from './desk.ts';
import { Dragging, type DropLine, type Gripped } from './dragging.ts';
import type { SheetName } from './job-header.ts';
import { look } from './look.ts';
import { styled } from './styled.ts';
import { pageLook } from './page-look.ts';
import { allCells } from './reading-order.ts';
import {
  type Asked,
  goToKey,
  guideKey,
  moveKey,
  movesKey,
  problemKey,
  rodKey,
  rowKey,
  snapshotsKey,
  undoKey,
} from './page-keys.ts';
import type { CellSheet } from './job-sheets.ts';
import { duplicatePart } from './moving.ts';
import { PagePlaces, isLost } from './page-places.ts';
import { told } from './page-told.ts';
import type { Happening, Session, Writing } from './session.ts';
import type { StoryCell } from './story-cell.ts';
import type { About } from './story-working.ts';
import { valueSaid } from './value-words.ts';
import './job-footing.ts';
import './job-header.ts';
import './story-part.ts';
import './story-rod.ts';
import './story-working.ts';

/** Blocks drawn in the first go, and in each frame after it until all stand. */
const DRAWN_FIRST = 120;
const DRAWN_EACH = 240;
/** From so many cells on, rows out of sight are not laid out. */
const LONG_NOTEBOOK = 400;

@customElement('story-page')
export class StoryPage extends LitElement {
  static override styles = [look, pageLook];

  @property({ attribute: false }) desk!: Desk;
  @state() private sheet: SheetName | CellSheet | '' = '';
  @state() private sheetsHere = false;
  @state() private snapshotsHere = false;
  @state() private binder: Binder | null = null;
  /** The cell that the sheet is about, and of a table the column. */
  @state() private about: CellId | null = null;
  #column = 0;
  @state() private recordHere = false;
  @state() private movesHere = false;
  @state() private guide: 'away' | 'open' = 'away';
  @state() private guideHere = false;
  /** On narrow screens the working is a sheet from below. */
  @state() private workingUp = false;
  @state() private drawn = DRAWN_FIRST;
  @state() private narrow = false;

  #stops: (() => void)[] = [];
  readonly #places = new PagePlaces(this);
  readonly #dragging = new Dragging(this);
  #narrow = window.matchMedia('(max-width: 760px)');
  /** How many notebooks were opened: ids mean something else in each, so nothing drawn is used again. */
  #opened = 0;

  get session(): Session {
    return this.desk.session;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stops = [
      this.session.listen((happening) => this.#happened(happening)),
      this.desk.listen(() => this.requestUpdate()),
    ];
    this.narrow = this.#narrow.matches;
    this.#narrow.addEventListener('change', this.#turned);
    // Also where nothing has the keyboard: undoing always works.
    document.addEventListener('keydown', this.#key);
    // Before whatever is being written takes its keys: one goes on from anywhere.
    document.addEventListener('keydown', this.#goToKey, true);
    this.addEventListener('input', this.#typed);
    this.addEventListener('focusout', this.#lineLeft);
    window.addEventListener('pagehide', this.#leaving);
    window.addEventListener('beforeunload', this.#unloading);
    document.addEventListener('visibilitychange', this.#hidden);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const stop of this.#stops) stop();
    this.#narrow.removeEventListener('change', this.#turned);
    document.removeEventListener('keydown', this.#key);
    document.removeEventListener('keydown', this.#goToKey, true);
    this.removeEventListener('input', this.#typed);
    this.removeEventListener('focusout', this.#lineLeft);
    window.removeEventListener('pagehide', this.#leaving);
    window.removeEventListener('beforeunload', this.#unloading);
    document.removeEventListener('visibilitychange', this.#hidden);
  }

  protected override firstUpdated(): void {
    this.#places.watch();
    // After the page stands: an accepted snapshot shows beside the price.
    setTimeout(() => void this.desk.binder().then((binder) => this.#bind(binder)));
    this.#comeBack();
  }

  protected override willUpdate(): void {
    this.toggleAttribute('guide', this.guide === 'open' && this.guideHere);
    // Sheets and the guide come when they are first asked for.
    if (this.guide === 'open' && !this.guideHere) {
      void import('./guide-page.ts').then(() => (this.guideHere = true));
    }
    this.toggleAttribute('snapshots', this.sheet === 'snapshots' && this.snapshotsHere);
    this.toggleAttribute('record', this.sheet === 'record');
    this.toggleAttribute('moves', this.sheet === 'moves');
    if (this.sheet === 'snapshots') {
      if (this.snapshotsHere) return;
      void import('./snapshot-sheet.ts').then(() => (this.snapshotsHere = true));
      return;
    }
    if (this.sheet === 'record') {
      if (this.recordHere) return;
      void import('./record-sheet.ts').then(() => (this.recordHere = true));
      return;
    }
    if (this.sheet === 'moves') {
      if (this.movesHere) return;
      void import('./moves-sheet.ts').then(() => (this.movesHere = true));
      return;
    }
    if (this.sheet === '' || this.sheetsHere) return;
    void import('./job-sheets.ts').then(() => (this.sheetsHere = true));
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
    document.title = notebook.title ? `${notebook.title} · Storyrod` : 'Storyrod';
    return html`
      <job-header
        role="banner"
        .desk=${desk}
        @sheet=${(event: CustomEvent<SheetName>) => (this.sheet = event.detail)}
        @guide=${this.#turnGuide}
      ></job-header>
      ${told(desk)}
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
          .marks=${marks}
          .view=${view}
          ?narrow=${this.narrow}
          @travel=${(event: CustomEvent<number>) => this.#places.scrollTo(event.detail)}
          @keydown=${this.#rodKey}
        ></story-rod>
        <div
          class="parts"
          @about=${({ detail }: CustomEvent<About>) => this.#lay(detail.sheet, detail.cell, detail.column)}
          @grip=${({ detail }: CustomEvent<{ gripped: Gripped; event: PointerEvent }>) =>
            this.#dragging.start(detail.gripped, detail.event)}
        >
          ${keyed(
            this.#opened,
            repeat(
              this.#limited(notebook.parts),
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
      <aside ?up=${this.workingUp} aria-label="Working">
        <button
          class="pull"
          aria-expanded=${this.workingUp ? 'true' : 'false'}
          @click=${() => (this.workingUp = !this.workingUp)}
        >
          ${this.#pulled()}
        </button>
        <div class="inside">
          <story-working
            .session=${session}
            @about=${({ detail }: CustomEvent<About>) => this.#lay(detail.sheet, detail.cell)}
            @away=${() => (this.workingUp = false)}
          ></story-working>
        </div>
      </aside>
      ${
        this.guideHere
          ? html`<guide-page
              .desk=${desk}
              ?open=${this.guide === 'open'}
              @away=${this.#turnGuide}
            ></guide-page>`
          : nothing
      }
      <job-footing
        role="contentinfo"
        .session=${session}
        .against=${this.binder?.against ?? null}
      ></job-footing>
      ${
        this.recordHere
          ? html`<record-sheet
              .desk=${desk}
              ?open=${this.sheet === 'record'}
              @away=${this.#sheetAway}
            ></record-sheet>`
          : nothing
      }
      ${
        this.movesHere
          ? html`<moves-sheet
              .desk=${desk}
              ?open=${this.sheet === 'moves'}
              @away=${this.#sheetAway}
            ></moves-sheet>`
          : nothing
      }
      ${
        this.sheetsHere
          ? html`<job-sheets
              .desk=${desk}
              open=${this.sheet === 'snapshots' ? '' : this.sheet}
              .about=${this.about}
              column=${this.#column}
              @away=${this.#sheetAway}
            ></job-sheets>`
          : nothing
      }
      ${
        this.snapshotsHere
          ? html`<snapshot-sheet
              .desk=${desk}
              ?open=${this.sheet === 'snapshots'}
              @away=${this.#sheetAway}
            ></snapshot-sheet>`
          : nothing
      }
    `;
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
    this.binder = binder;
    if (this.isConnected) this.#stops.push(binder.listen(() => this.requestUpdate()));
  }

  #turnGuide = (): void => {
    this.guide = this.guide === 'open' ? 'away' : 'open';
  };

  #comeBack(): void {
    this.#places.comeBack(this.desk.place?.scroll ?? 0);
  }

  /** Lays a sheet about one cell over the page. */
  #lay(sheet: CellSheet, cell: CellId, column = 0): void {
    this.workingUp = false;
    this.#column = column;
    this.about = cell;
    this.sheet = sheet;
  }

  #turned = (): void => {
    this.narrow = this.#narrow.matches;
  };

  #leaving = (): void => {
    void this.desk.leave(this.#places.scroll);
  };

  /** What is not kept yet would go with the page: the browser asks, and meanwhile it is kept. */
  #unloading = (event: BeforeUnloadEvent): void => {
    if (this.desk.keeping.kind === 'kept' && !this.binder?.waits) return;
    event.preventDefault();
    this.#leaving();
  };

  /** In a line that is being written; what is looked for in a table is nobody's work. */
  #typed = (event: Event): void => {
    const path = event.composedPath();
    const [line] = path;
    const within = (tag: string): boolean =>
      path.some((at) => at instanceof HTMLElement && at.tagName === tag);
    // The guide has a notebook of its own, in which nothing is kept.
    if (within('GUIDE-PAGE') || (this.session.writing === null && !within('TABLE-LINE'))) return;
    if (line instanceof HTMLInputElement || line instanceof HTMLTextAreaElement)
      this.desk.half.typed(line.value);
  };

  /** A row's line is gone with the keyboard, unless the person only went to another window. */
  #lineLeft = (): void => {
    if (this.session.writing === null && document.hasFocus()) this.desk.half.done();
  };

  #hidden = (): void => {
    if (document.visibilityState === 'hidden') this.#leaving();
    else void this.desk.catchUp();
  };

  #rodKey = (event: KeyboardEvent): void => {
    const by = rodKey(event.key, this.#places.view);
    if (by === null) return;
    event.preventDefault();
    event.stopPropagation();
    this.#places.scrollTo(this.#places.scroll + by);
  };

  #goToKey = (event: KeyboardEvent): void => {
    if (goToKey(event) === 'nothing' || event.isComposing) return;
    event.preventDefault();
    event.stopPropagation();
    if (this.sheet === '') this.sheet = 'go-to';
  };

  #key = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.isComposing) return;
    if (this.#keyed(event) !== 'nothing') event.preventDefault();
  };

  #keyed(event: KeyboardEvent): Asked {
    const { session } = this;
    const undone = undoKey(session, event);
    if (undone !== 'nothing') return undone;
    if (guideKey(session, event)) {
      this.#turnGuide();
      return 'done';
    }
    const path = event.composedPath().filter((at) => at instanceof HTMLElement);
    if (this.sheet === '' && snapshotsKey(session, event)) {
      this.sheet = 'snapshots';
      return 'done';
    }
    if (this.sheet === '' && movesKey(session, event)) {
      this.sheet = 'moves';
      return 'done';
    }
    if (event.key === 'Escape' && path.some((at) => at.tagName === 'ASIDE')) {
      this.workingUp = false;
      if (session.chosen !== null) session.bring(session.chosen);
      return 'done';
    }
    // A sheet that is laid over the page has keys of its own.
    if (!path.some((at) => at.tagName === 'DIALOG')) {
      const mended = problemKey(session, event);
      if (mended !== 'nothing') return mended;
    }
    const row = path.find((at): at is StoryCell => at.tagName === 'STORY-CELL');
    const heading = path.find((at) => at.dataset['heading'] !== undefined);
    const on = row
      ? { cell: row.cell.id }
      : heading
        ? { part: heading.dataset['heading'] ?? '' }
        : null;
    if (on && session.writing === null) {
      const moved = moveKey(session, on, event);
      if (moved !== 'nothing') return moved;
    }
    if (heading && /^d$/i.test(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey) {
      duplicatePart(session, heading.dataset['heading'] ?? '');
      return 'done';
    }
    if (!row || session.writing !== null || event.ctrlKey || event.metaKey || event.altKey) {
      return 'nothing';
    }
    const onName = path.some((at) => at.classList.contains('name'));
    const asked = rowKey(session, row.cell.id, event.key, onName ? 'name' : 'other');
    if (asked === 'working') this.#toWorking();
    if (asked === 'remove') this.#lay('removing', row.cell.id);
    if (asked === 'move') this.#lay('moving', row.cell.id);
    if (asked === 'goes-into') this.#lay('goes-into', row.cell.id);
    if (asked === 'go-to') this.sheet = 'go-to';
    return asked;
  }

  /** What had the keyboard before the sheet came may be gone, as a line that was being written is. */
  #sheetAway = (): void => {
    this.sheet = '';
    const { chosen } = this.session;
    if (chosen !== null && isLost()) this.#places.bring(chosen, 'stays');
  };

  #toWorking(): void {
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
