// A stretch of prose, read as written and edited in place. It is shown as text and never as markup; the
// notebook's settings stand as one quiet line. Properties: `session`, `in` (the key of its part), `place`
// (which block of the part; -1 for one still to be written), `below` (the cell a new one comes after), `markdown`.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import type { Splice } from '../notebook/document.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { isLost } from './page-places.ts';
import type { Session } from './session.ts';
import { settingsIn, settingsText, settingsToWrite } from './settings-line.ts';

@customElement('story-prose')
export class StoryProse extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: block;
        max-width: 86ch;
        margin: 0.25rem 0 0.55rem;
        font-size: 0.875rem;
        padding: 0 0.5rem;
        color: var(--pencil);
      }
      .read {
        display: block;
        width: 100%;
        min-height: 24px;
        overflow-wrap: anywhere;
        cursor: text;
        user-select: text;
      }
      .read > span {
        white-space: pre-line;
      }
      .read > .settings {
        white-space: normal;
        display: flex;
        flex-wrap: wrap;
        gap: 0 1.5rem;
        font-size: var(--small);
        min-height: 24px;
        align-items: baseline;
      }
      .settings b {
        font-weight: 500;
        color: var(--graphite);
      }
      textarea {
        display: block;
        width: calc(100% + 1rem);
        margin: -0.25rem -0.5rem;
        padding: 0.2rem 0.45rem;
        border: 1px solid var(--graphite);
        border-radius: 2px;
        background: var(--lifted);
        field-sizing: content;
        min-height: 4.5rem;
        resize: vertical;
      }
      textarea:focus-visible {
        outline: 1.5px solid var(--graphite);
        outline-offset: 0;
      }
      .acts {
        display: flex;
        gap: 0.4rem;
        margin-top: 0.6rem;
      }
    `,
  ];

  @property({ attribute: false }) session!: Session;
  @property() in = '';
  @property({ type: Number }) place = 0;
  @property({ attribute: false }) below: CellId | null = null;
  @property() markdown = '';
  @query('textarea') private area?: HTMLTextAreaElement;
  #focused = false;

  constructor() {
    super();
    new Follows(this, 'writing');
  }

  protected override updated(): void {
    const { area } = this;
    const writes = area !== null && area !== undefined;
    if (writes && !this.#focused) area.focus();
    if (!writes && this.#focused && isLost()) {
      this.renderRoot.querySelector<HTMLElement>('.read')?.focus();
    }
    this.#focused = writes;
  }

  protected override render(): TemplateResult | typeof nothing {
    const settings = settingsIn(this.markdown);
    if (this.#writing()) return this.#area(settings ? settingsToWrite(settings) : this.markdown);
    if (this.place < 0) return nothing;
    const inner = settings
      ? html`<span class="settings"
          >${settings.map(({ name, value }) => html`<span>${name} <b>${value}</b></span>`)}</span
        >`
      : html`<span .textContent=${readable(this.markdown)}></span>`;
    return html`<div
      class="read"
      role="button"
      tabindex="0"
      aria-description="${settings ? 'Settings' : 'Prose'}. Press Enter to edit."
      @click=${this.#open}
      @keydown=${(event: KeyboardEvent) => {
        if (event.key !== 'Enter') return;
        event.preventDefault();
        this.#open();
      }}
    >
      ${inner}
    </div>`;
  }

  #area(text: string): TemplateResult {
    return html`<textarea
        aria-label="Prose"
        placeholder=${this.place < 0 ? 'What the next one to read this should know' : ''}
        .value=${text}
        @keydown=${this.#key}
      ></textarea>
      <div class="acts">
        <button class="act first" @click=${this.#keep}>Keep<kbd>Ctrl Enter</kbd></button>
        <button class="act" @click=${this.#leave}>Leave<kbd>Esc</kbd></button>
      </div>`;
  }

  #writing(): boolean {
    const { writing } = this.session;
    if (this.place < 0) return writing?.kind === 'new-prose' && writing.part === this.in;
    return writing?.kind === 'prose' && writing.part === this.in && writing.place === this.place;
  }

  #open = (): void => {
    if (window.getSelection()?.type === 'Range') return;
    this.session.write({ kind: 'prose', part: this.in, place: this.place });
  };

  #key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.isComposing) return;
    if (event.key === 'Escape') this.#leave();
    else if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) this.#keep();
    else return;
    event.preventDefault();
  };

  #leave = (): void => {
    this.session.write(null);
  };

  #keep = (): void => {
    const { session } = this;
    const text = this.area?.value ?? this.markdown;
    const splice = this.place < 0 ? this.#added(text) : this.#changed(text);
    if (!splice) this.#leave();
    else if (session.apply((door) => door.replaceText({ say: 'Prose', splices: [splice] })))
      this.#leave();
  };

  #changed(text: string): Splice | null {
    const block = this.session.part(this.in)?.blocks[this.place];
    const insert = settingsIn(this.markdown) ? settingsText(text) : text;
    if (!block || block.kind !== 'prose' || insert === this.markdown) return null;
    const { from, to } = block.spot;
    return { from, to, insert };
  }

  /** After its cell, or at the end of its part: a paragraph of its own, with a blank line on either side. */
  #added(text: string): Splice | null {
    const part = this.session.part(this.in);
    if (!part || text.trim() === '') return null;
    const all = this.session.door.notebook.text;
    const end = (this.below === null ? null : this.session.cell(this.below))?.spot.to;
    const { length } = all.slice(0, end ?? part.spot.to).trimEnd();
    return {
      from: length,
      to: length,
      insert: `\n\n${text.trim()}${end === undefined ? '' : '\n'}`,
    };
  }
}

/** Lines that were only broken to fit a file flow together again; lists and quotes keep their lines. */
function readable(markdown: string): string {
  return markdown.replace(/([^\n])\n(?!\s*(?:[-*+>|#]|\d+[.)]|$))[ \t]*/gm, '$1 ');
}

declare global {
  interface HTMLElementTagNameMap {
    'story-prose': StoryProse;
  }
}
