// The line above the page: the notebook's title, how it is kept, undoing, files, parts, where to look.
// Properties: `desk`. Events, for a person's act: `sheet` with the name of a sheet to open, `guide`, `alternatives-sheet`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sayStanding } from '../store/ground.ts';
import type { KeeperState } from '../store/keeper.ts';
import type { Desk } from './desk.ts';
import { openTextFile, saveTextFile } from './files.ts';
import { Follows } from './follows.ts';
import { headerLook } from './header-look.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';
import './story-line.ts';

export type SheetName =
  | 'go-to'
  | 'look'
  | 'parts'
  | 'notebooks'
  | 'snapshots'
  | 'record'
  | 'moves'
  | 'client'
  | 'keys';

@customElement('job-header')
export class JobHeader extends LitElement {
  static override styles = [look, headerLook];

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
      <button class="quick plain" ?disabled=${back === null} @click=${() => session.undo()}>
        Undo
      </button>
      <button
        class="more plain"
        aria-expanded=${this.spread ? 'true' : 'false'}
        @click=${() => (this.spread = !this.spread)}
      >
        ${this.spread ? 'Less' : 'More'}
      </button>
      <nav aria-label="Notebook">
        ${this.#step('Undo', back, () => session.undo())}
        ${this.#step('Redo', again, () => session.redo())}
        <span class="say" aria-hidden="true">${back ?? ''}</span>
        <span class="between"></span>
        <button @click=${() => this.#sheet('go-to')}>Go to</button>
        <button @click=${() => this.#sheet('parts')}>Insert a part</button>
        <button @click=${() => this.#sheet('notebooks')}>Notebooks</button>
        <button @click=${() => this.dispatchEvent(new CustomEvent('alternatives-sheet'))}>
          Alternatives
        </button>
        <button @click=${() => this.#sheet('snapshots')}>Snapshots</button>
        <button
          data-sheet="client"
          ?disabled=${!session.isAtRest}
          title=${session.isAtRest ? nothing : 'Keep or leave what is being written first'}
          @click=${() => this.#sheet('client')}
        >
          Client sheet
        </button>
        <button @click=${() => this.#sheet('record')}>Job record</button>
        <button @click=${() => this.#sheet('moves')}>What moves it</button>
        <button @click=${() => void openTextFile(this.desk)}>Open a text file</button>
        <button @click=${() => void saveTextFile(this.desk)}>Save a text file</button>
        <span class="between"></span>
        <button @click=${() => this.dispatchEvent(new CustomEvent('guide'))}>Guide</button>
        <button @click=${() => this.#sheet('keys')}>Keys</button>
      </nav>
      <button class="look plain" @click=${() => this.#sheet('look')}>
        Look here${look > 0 ? html`<span class="count">${look}</span>` : nothing}
      </button>
      ${this.#kept(this.desk.keeping)}
    `;
  }

  /** The button stays where it is, whatever it would take back: one presses it many times in a row. */
  #step(word: 'Undo' | 'Redo', what: string | null, go: () => void): TemplateResult {
    return html`<button
      class="step ${word.toLowerCase()}"
      ?disabled=${what === null}
      aria-label=${what === null ? word : `${word}: ${what}`}
      title=${what ?? ''}
      @click=${go}
    >
      ${word}
    </button>`;
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
        return html`<span class="kept" role="status" title=${sayStanding(this.desk.standing)}
          >${state.at === null ? 'not changed yet' : `kept here, ${timeOf(state.at)}`}
          ${this.#reminder()}</span
        >`;
      case 'keeping':
        return html`<span class="kept" role="status">keeping …</span>`;
      case 'not-kept':
        return html`<span class="kept trouble" role="status"
          >${
            state.why === 'full'
              ? 'not kept: this browser has no room left'
              : 'not kept: this browser keeps nothing here'
          }</span
        >`;
      case 'behind':
        return html`<span class="kept trouble" role="status"
          >not kept: changed in another tab</span
        >`;
    }
  }

  /** Quiet at first; it weighs more the more there is that no file has. */
  #reminder(): TemplateResult | typeof nothing {
    const { unsaved, standing } = this.desk;
    if (unsaved) return html`<span class="beside ${unsaved.weight}">${unsaved.say}</span>`;
    if (standing !== 'may-clear') return nothing;
    return html`<span class="beside">the browser may clear it</span>`;
  }

  #rename(title: string): void {
    const { session } = this;
    const { notebook } = session.door;
    const at = notebook.titleSpot;
    const splice = at ? { ...at, insert: title } : { from: 0, to: 0, insert: `# ${title}\n\n` };
    const unchanged = title === '' || title === notebook.title;
    if (
      unchanged ||
      session.apply((door) => door.replaceText({ say: `Title: ${title}`, splices: [splice] }))
    ) {
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
