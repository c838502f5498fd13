// The line above the page: the notebook's title, how it is kept, undoing, files, parts, where to look.
// Properties: `desk`. Event, for a person's act: `sheet` with the name of a sheet to open.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { KeeperState } from '../store/keeper.ts';
import type { Desk } from './desk.ts';
import { openTextFile, saveTextFile } from './files.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';
import './story-line.ts';

export type SheetName = 'look' | 'parts' | 'notebooks' | 'keys';

@customElement('job-header')
export class JobHeader extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: flex;
        align-items: center;
        gap: 0.4rem 1.1rem;
        min-height: 3.1rem;
        padding: 0.35rem 1.5rem;
        border-bottom: 1px solid var(--rule);
        background: var(--bench);
      }
      .mark {
        font-size: 1.05rem;
        font-weight: 750;
        letter-spacing: -0.01em;
        margin: 0;
      }
      .title {
        min-width: 6rem;
        max-width: 22rem;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      h1 {
        font: inherit;
        margin: 0;
      }
      .title button:hover {
        text-decoration: underline;
        text-decoration-color: var(--faint);
        text-underline-offset: 0.2em;
      }
      nav {
        display: flex;
        flex: 1;
        gap: 0.2rem 1rem;
        align-items: center;
        justify-content: flex-end;
        min-width: 0;
      }
      nav button {
        white-space: nowrap;
        font-size: var(--small);
        min-height: 1.75rem;
        color: var(--graphite);
      }
      nav button:disabled {
        color: var(--faint);
      }
      nav button:hover:not(:disabled) {
        text-decoration: underline;
        text-underline-offset: 0.25em;
      }
      .step {
        max-width: 15rem;
        overflow: hidden;
        text-overflow: ellipsis;
      }
      .say {
        color: var(--pencil);
      }
      .look {
        font-weight: 650;
      }
      .look .count {
        display: inline-block;
        min-width: 1.35em;
        margin-left: 0.3em;
        padding: 0 0.3em;
        text-align: center;
        color: var(--keel);
        border: 1.5px solid var(--keel);
        border-radius: 48% 52% 50% 50% / 55% 52% 48% 45%;
      }
      .kept {
        white-space: nowrap;
        font-size: var(--small);
        color: var(--pencil);
      }
      .kept.trouble {
        color: var(--keel);
        font-weight: 600;
      }
      .more {
        display: none;
      }
      .between {
        width: 1px;
        height: 1.1rem;
        background: var(--rule);
        flex: none;
      }
      @media (max-width: 1120px) {
        .say {
          display: none;
        }
      }
      @media (max-width: 900px) {
        :host {
          flex-wrap: wrap;
          padding: 0.35rem 0.75rem;
          gap: 0.1rem 0.8rem;
        }
        .title {
          flex: 1;
        }
        .more {
          display: block;
          font-size: var(--small);
        }
        nav {
          display: none;
          flex: 1 1 100%;
          flex-wrap: wrap;
          justify-content: flex-start;
        }
        :host([spread]) nav {
          display: flex;
        }
        nav button {
          min-height: 2.25rem;
        }
        .between {
          display: none;
        }
      }
      @media (max-width: 480px) {
        .mark {
          display: none;
        }
      }
      @media print {
        :host {
          background: none;
          padding: 0 0 0.5rem;
          border: 0;
        }
        nav,
        .mark,
        .look,
        .more,
        .kept {
          display: none;
        }
        .title {
          font-size: 1.4rem;
          font-weight: 700;
          max-width: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) desk!: Desk;
  @state() private spread = false;
  #stop: (() => void) | null = null;

  get session(): Session {
    return this.desk.session;
  }

  constructor() {
    super();
    new Follows(this, 'opened', 'changed', 'writing', 'tape');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stop = this.desk.listen(() => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }

  protected override render(): TemplateResult {
    const { session } = this;
    const { door } = session;
    const [back, again] = [door.canUndo(), door.canRedo()];
    const look = door.findings().length;
    this.toggleAttribute('spread', this.spread);
    return html`
      <p class="mark">Storyrod</p>
      <div class="title">${this.#title()}</div>
      <button
        class="more plain"
        aria-expanded=${this.spread ? 'true' : 'false'}
        @click=${() => (this.spread = !this.spread)}
      >
        ${this.spread ? 'Less' : 'More'}
      </button>
      <nav aria-label="Notebook">
        <button class="step" ?disabled=${back === null} title=${back ?? ''} @click=${() => session.undo()}>
          Undo${back === null ? nothing : html`<span class="say">: ${back}</span>`}
        </button>
        <button class="step" ?disabled=${again === null} title=${again ?? ''} @click=${() => session.redo()}>
          Redo${again === null ? nothing : html`<span class="say">: ${again}</span>`}
        </button>
        <span class="between"></span>
        <button @click=${() => this.#sheet('parts')}>Insert a part</button>
        <button @click=${() => this.#sheet('notebooks')}>Notebooks</button>
        <button @click=${() => void openTextFile(this.desk)}>Open a text file</button>
        <button @click=${() => void saveTextFile(this.desk)}>Save a text file</button>
        <span class="between"></span>
        <button @click=${() => this.#sheet('keys')}>Keys</button>
      </nav>
      <button class="look plain" @click=${() => this.#sheet('look')}>
        Look here${look > 0 ? html`<span class="count">${look}</span>` : nothing}
      </button>
      ${this.#kept(this.desk.keeping)}
    `;
  }

  #title(): TemplateResult {
    const { session } = this;
    const { title } = session.door.notebook;
    if (session.writing?.kind === 'title') {
      return html`<story-line
        label="Title of the notebook"
        .value=${title}
        @keep=${(event: CustomEvent<string>) => this.#rename(event.detail.trim())}
        @leave=${() => session.write(null)}
      ></story-line>`;
    }
    return html`<h1>
      <button
        aria-label="${title || 'No title yet'}, change the title"
        @click=${() => session.write({ kind: 'title' })}
      >
        ${title || 'No title yet'}
      </button>
    </h1>`;
  }

  #kept(state: KeeperState): TemplateResult {
    switch (state.kind) {
      case 'kept':
        return html`<span class="kept" role="status"
          >${state.at === null ? 'not changed yet' : `kept here, ${timeOf(state.at)}`}</span
        >`;
      case 'keeping':
        return html`<span class="kept" role="status">keeping …</span>`;
      case 'not-kept':
        return html`<span class="kept trouble" role="status"
          >${state.why === 'full'
            ? 'not kept: this browser has no room left'
            : 'not kept: this browser keeps nothing here'}</span
        >`;
      case 'behind':
        return html`<span class="kept trouble" role="status">not kept: changed in another tab</span>`;
    }
  }

  #rename(title: string): void {
    const { session } = this;
    const { notebook } = session.door;
    const at = notebook.titleSpot;
    const splice = at ? { ...at, insert: title } : { from: 0, to: 0, insert: `# ${title}\n\n` };
    const unchanged = title === '' || title === notebook.title;
    if (unchanged || session.apply((door) => door.replaceText({ say: 'the title', splices: [splice] }))) {
      session.write(null);
    }
  }

  #sheet(name: SheetName): void {
    this.dispatchEvent(new CustomEvent('sheet', { detail: name }));
  }
}

/** As a clock on the wall says it. */
function timeOf(at: number): string {
  return new Date(at).toLocaleTimeString([], { hour: 'numeric', minute: '2-digit' });
}

declare global {
  interface HTMLElementTagNameMap {
    'job-header': JobHeader;
  }
}
