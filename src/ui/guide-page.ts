// The guide: a notebook of its own beside the reader's, or over it where there is no room, worked by the same engine.
// What is changed in it touches nothing else. Properties: `desk`, `open`. Event, for a person's act: `away`.
import { LitElement, html, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { CellId } from '../language/tree.ts';
import type { Block, Cell, Part } from '../notebook/document.ts';
import { asidesOf } from './asides.ts';
import type { Desk } from './desk.ts';
import type { GuideExample } from './guide-example.ts';
import { laidBesideLook } from './laid-beside-look.ts';
import { guideLook } from './guide-look.ts';
import {
  type AtFirst,
  atFirst,
  exampleText,
  isChanged,
  numberNow,
  putBack,
} from './guide-notebook.ts';
import { proseBlock } from './guide-words.ts';
import { LaidBeside } from './laid-beside.ts';
import { look } from './look.ts';
import { guideKey, undoKey } from './page-keys.ts';
import { allCells } from './reading-order.ts';
import type { Happening } from './happening.ts';
import { Session } from './session.ts';
import './guide-example.ts';

@customElement('guide-page')
export class GuidePage extends LitElement {
  static override styles = [look, laidBesideLook, guideLook];

  @property({ attribute: false }) desk!: Desk;
  @property({ type: Boolean, reflect: true }) open = false;
  @state() private session: Session | null = null;
  @state() private trouble = false;
  @query('dialog') private dialog!: HTMLDialogElement;
  @query('.scroll') private scroller?: HTMLElement;
  #first: AtFirst = { cells: new Map(), numbers: new Map() };
  /** The guide's text as it was fetched. */
  #text = '';
  #scrolled = 0;
  #stops: (() => void)[] = [];
  readonly #beside = new LaidBeside(this, () => {
    if (this.scroller) this.scroller.scrollTop = this.#scrolled;
  });

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#fetch();
    this.#stops = [this.desk.session.listen(({ kind }) => this.#own(kind))];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const stop of this.#stops) stop();
    this.desk.session.guideHas('went');
  }

  async #fetch(): Promise<void> {
    try {
      const door = await this.desk.guide();
      this.#text = door.notebook.text;
      this.#first = atFirst(door);
      const session = new Session(door, asidesOf(door));
      session.choose(allCells(door.notebook)[0]?.id ?? null);
      this.#stops.push(session.listen((happening) => this.#happened(happening)));
      this.session = session;
    } catch {
      this.trouble = true;
    }
  }

  protected override updated(changed: ReadonlyMap<PropertyKey, unknown>): void {
    if (!changed.has('open')) return;
    if (this.open) {
      this.#beside.come();
      this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
    } else if (this.dialog.open) {
      const { session } = this.desk;
      session.guideHas('went');
      this.#beside.go(session.writing === null ? 'goes back' : 'stays');
    }
  }

  protected override render(): TemplateResult {
    const { session } = this;
    return html`<dialog
      aria-label="Guide"
      @cancel=${(event: Event) => {
        event.preventDefault();
        this.#away();
      }}
      @keydown=${this.#key}
      @focusin=${() => this.desk.session.guideHas('came')}
      @focusout=${this.#left}
    >
      <div class="top">
        <h2 tabindex="-1">Guide</h2>
        ${
          session && this.#changed().length > 0
            ? html`<button class="plain" @click=${this.#allBack}>Put everything back</button>`
            : html`<span class="small">your own notebook stays as it is</span>`
        }
        <button class="plain" @click=${this.#away}>Put away<kbd>Esc</kbd></button>
      </div>
      <div class="scroll" @scroll=${() => (this.#scrolled = this.scroller?.scrollTop ?? 0)}>
        ${session ? this.#guide(session) : this.#notHere()}
      </div>
    </dialog>`;
  }

  #notHere(): TemplateResult {
    return this.trouble
      ? html`<p role="status">
          The guide could not be fetched. It is part of this page: reload once there is a
          connection.
        </p>`
      : html`<p role="status">The guide is on its way …</p>`;
  }

  #guide(session: Session): TemplateResult {
    const { parts, title } = session.door.notebook;
    const named = parts.filter(({ key }) => key !== '');
    return html`
      <p class="title">${title}</p>
      ${parts.filter(({ key }) => key === '').map((part) => this.#blocks(session, part))}
      <nav aria-label="In the guide">
        <ol>
          ${named.map(
            ({ key, name }) =>
              html`<li>
                <button class="plain" @click=${() => this.#toPart(key)}>${name}</button>
              </li>`,
          )}
        </ol>
      </nav>
      ${named.map(
        (part) =>
          html`<section aria-label=${part.name} data-part=${part.key}>
            <h3 tabindex="-1">${part.name}</h3>
            ${this.#blocks(session, part)}
          </section>`,
      )}
    `;
  }

  #blocks(session: Session, part: Part): unknown {
    return repeat(
      part.blocks,
      (block, place) => (block.kind === 'cell' ? `cell ${block.cell.id}` : `${place}`),
      (block) => this.#block(session, block, part.key),
    );
  }

  #block(session: Session, block: Block, part: string): unknown {
    switch (block.kind) {
      case 'cell': {
        const { cell } = block;
        return html`<guide-example
          data-cell=${cell.id}
          .session=${session}
          .cell=${cell}
          .first=${this.#first.cells.get(cell.id)}
          into=${session.chosen === cell.id ? (this.desk.session.takesWords?.name ?? '') : ''}
          @put=${() => this.#put(cell)}
          @add=${() => this.#add(cell)}
          @back=${() => this.#back(cell)}
        ></guide-example>`;
      }
      case 'heading':
        return html`<h4>${block.text}</h4>`;
      case 'prose':
        return proseBlock(block.markdown, (written) =>
          numberNow(session.door, this.#first, part, written),
        );
    }
  }

  /** The words of an example, into the formula of the reader's notebook that is written or chosen. */
  #put(cell: Cell): void {
    const { session } = this.desk;
    const into = session.takesWords;
    if (!into) {
      session.tell({ text: 'Choose a line of your notebook first.', lasts: 'plain' });
      return;
    }
    if (this.#beside.over) this.#away();
    session.guideHas('went');
    session.put(cell.formula);
  }

  /** An example with all the lines it stands on, as parts at the end of the reader's notebook. */
  #add(cell: Cell): void {
    if (!this.session) return;
    const { session } = this.desk;
    const before = new Set(session.door.notebook.parts.map(({ key }) => key));
    const text = exampleText(this.session.door, cell.id);
    if (!session.apply((door) => door.insertTemplate(text))) return;
    const added = allCells(session.door.notebook).find(
      ({ part, name }) => !before.has(part) && name === cell.name,
    );
    if (this.#beside.over) this.#away();
    session.guideHas('went');
    if (added) session.bring(added.id);
    const part = added ? (session.part(added.part)?.name ?? '') : '';
    session.tell({
      text: `${cell.name} and what it needs now stand in your notebook, under ${part}. Undo takes them out again.`,
      lasts: 'plain',
    });
  }

  #back(cell: Cell): void {
    const first = this.#first.cells.get(cell.id);
    const now = this.session?.cell(cell.id);
    if (!this.session || !first || !now) return;
    putBack(this.session, now, first, this.#text);
    this.#example(cell.id)?.focus();
  }

  #allBack = (): void => {
    const { session } = this;
    if (!session) return;
    session.apply((door) =>
      door.replaceText({
        say: 'Put everything back',
        splices: [{ from: 0, to: door.notebook.text.length, insert: this.#text }],
      }),
    );
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  };

  #changed(): readonly Cell[] {
    const cells = this.session ? allCells(this.session.door.notebook) : [];
    return cells.filter((cell) => isChanged(cell, this.#first.cells.get(cell.id)));
  }

  #happened(happening: Happening): void {
    if (happening.kind === 'bring') {
      void this.updateComplete.then(() => {
        const example = this.#example(happening.cell);
        example?.scrollIntoView({ block: 'nearest' });
        if (happening.keyboard === 'goes') example?.focus();
      });
    }
    this.requestUpdate();
  }

  /** Of the reader's notebook only where words would go shows here. */
  #own(kind: Happening['kind']): void {
    if (this.open && ['opened', 'chosen', 'writing', 'changed'].includes(kind))
      this.requestUpdate();
  }

  #example(cell: CellId): GuideExample | null {
    return this.renderRoot.querySelector<GuideExample>(`guide-example[data-cell="${cell}"]`);
  }

  #toPart(key: string): void {
    const section = [...this.renderRoot.querySelectorAll<HTMLElement>('section')].find(
      ({ dataset }) => dataset['part'] === key,
    );
    section?.scrollIntoView();
    section?.querySelector('h3')?.focus();
  }

  /** The guide's keys stay in the guide: its undo is its own. */
  #key = (event: KeyboardEvent): void => {
    const { session } = this;
    event.stopPropagation();
    if (event.defaultPrevented || event.isComposing || !session) return;
    if (undoKey(session, event) !== 'nothing') event.preventDefault();
    else if (event.key === 'Escape' || guideKey(session, event)) {
      event.preventDefault();
      this.#away();
    }
  };

  #left = (event: FocusEvent): void => {
    const to = event.relatedTarget;
    if (to instanceof Node && this.renderRoot.contains(to)) return;
    this.desk.session.guideHas('went');
  };

  #away = (): void => {
    if (this.open) this.dispatchEvent(new CustomEvent('away'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'guide-page': GuidePage;
  }
}
