// A stretch of prose, read as written and edited in place. It is shown as text and never as markup.
// Properties: `session`, `in` (the key of its part), `place` (which block of the part), `markdown`.
import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';

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
        white-space: pre-line;
        overflow-wrap: anywhere;
        cursor: text;
        user-select: text;
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
  @property() markdown = '';
  @query('textarea') private area?: HTMLTextAreaElement;
  #focused = false;

  constructor() {
    super();
    new Follows(this, 'writing');
  }

  protected override updated(): void {
    if (this.area && !this.#focused) this.area.focus();
    this.#focused = this.area !== null && this.area !== undefined;
  }

  protected override render(): TemplateResult {
    const { writing } = this.session;
    const here =
      writing?.kind === 'prose' && writing.part === this.in && writing.place === this.place;
    if (!here) {
      return html`<div
        class="read"
        role="button"
        tabindex="0"
        aria-description="Prose. Press Enter to edit it."
        @click=${this.#open}
        @keydown=${(event: KeyboardEvent) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          this.#open();
        }}
        .textContent=${readable(this.markdown)}
      ></div>`;
    }
    return html`<textarea
        aria-label="Prose"
        .value=${this.markdown}
        @keydown=${this.#key}
      ></textarea>
      <div class="acts">
        <button class="act first" @click=${this.#keep}>Keep</button>
        <button class="act" @click=${this.#leave}>Leave</button>
      </div>`;
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
    const block = session.part(this.in)?.blocks[this.place];
    if (!block || block.kind !== 'prose' || text === this.markdown) {
      this.#leave();
      return;
    }
    const { from, to } = block.spot;
    const change = { say: 'Prose', splices: [{ from, to, insert: text }] };
    if (session.apply((door) => door.replaceText(change))) this.#leave();
  };
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
