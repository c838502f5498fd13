// The sheets that are laid over the page: where to look, parts to insert, notebooks kept here, keys, going to a
// place; and of one cell: removing it, moving it, what it goes into.
// Properties: `desk`, `open` (which one), `about` (which cell). Event, for a person's act: `away`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import { templateParts } from '../notebook/templates.ts';
import type { KeptEntry } from '../store/shapes.ts';
import type { Binder } from './binder.ts';
import type { Desk } from './desk.ts';
import type { Template } from './desk-settings.ts';
import { Follows } from './follows.ts';
import { howKept } from './how-kept.ts';
import type { SheetName } from './job-header.ts';
import { keys } from './keys-list.ts';
import { look } from './look.ts';
import { lookHere } from './look-here.ts';
import type { Session } from './session.ts';
import { isOfRow, placeOf } from './row-places.ts';
import { columnNamed, removingColumn } from './column-sheet.ts';
import { goesInto, movingTo } from './moving-sheet.ts';
import { type Origin, sayOrigin } from '../versions/working-copy.ts';
import { removing } from './removing-sheet.ts';
import './go-to.ts';
import type { PaperSheet } from './paper-sheet.ts';
import './paper-sheet.ts';
import { sheetsLook } from './sheets-look.ts';

/** Sheets about one cell. */
export type CellSheet = 'removing' | 'removing-column' | 'moving' | 'goes-into' | 'show-how';
interface Offered {
  readonly template: Template;
  readonly names: readonly string[];
}

@customElement('job-sheets')
export class JobSheets extends LitElement {
  static override styles = [look, sheetsLook];

  @property({ attribute: false }) desk!: Desk;
  @property() open: SheetName | CellSheet | '' = '';
  @property({ attribute: false }) about: CellId | null = null;
  /** Of a table: which column it is about. */
  @property({ type: Number }) column = 0;
  @state() private kept: readonly KeptEntry[] = [];
  @state() private origins: ReadonlyMap<string, Origin | null> = new Map();
  /** The notebook that was asked once to be removed. */
  @state() private leaving: string | null = null;
  @state() private binder: Binder | null = null;
  @state() private offered: readonly Offered[] = [];
  #drawn = '';

  get session(): Session {
    return this.desk.session;
  }

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  protected override willUpdate(): void {
    if (this.open === this.#drawn) return;
    this.#drawn = this.open;
    this.leaving = null;
    if (this.open === 'look') void this.desk.binder().then((binder) => (this.binder = binder));
    if (this.open === 'notebooks') void this.#list();
    if (this.open === 'parts' && this.offered.length === 0) void this.#offer();
  }

  protected override render(): TemplateResult {
    const { open } = this;
    return html`
      <paper-sheet heading="Look here" ?open=${open === 'look'} @away=${this.#away}>
        ${open === 'look' ? lookHere(this.session, this.binder?.past ?? [], this.#away) : nothing}
      </paper-sheet>
      <paper-sheet heading="Insert a part" ?open=${open === 'parts'} @away=${this.#away}>
        ${open === 'parts' ? this.#parts() : nothing}
      </paper-sheet>
      <paper-sheet heading="Notebooks kept here" ?open=${open === 'notebooks'} @away=${this.#away}>
        ${open === 'notebooks' ? this.#notebooks() : nothing}
      </paper-sheet>
      <paper-sheet heading="Keys" ?open=${open === 'keys'} @away=${this.#away}>
        ${open === 'keys' ? keys() : nothing}
      </paper-sheet>
      <paper-sheet heading="Go to" ?open=${open === 'go-to'} @away=${this.#away}>
        ${
          open === 'go-to'
            ? html`<go-to .session=${this.session} @gone=${this.#away}></go-to>`
            : nothing
        }
      </paper-sheet>
      ${this.#aboutCell('removing', `Remove ${this.#name()}?`, (id) =>
        removing(this.session, id, this.#away),
      )}
      ${this.#aboutCell(
        'removing-column',
        `Remove ${columnNamed(this.session, this.about, this.column)}?`,
        (id) => removingColumn(this.session, id, this.column, this.#away),
      )}
      ${this.#aboutCell('moving', `Move ${this.#name()}`, (id) =>
        movingTo(this.session, id, this.#away),
      )}
      ${this.#aboutCell('goes-into', `${this.#name()} goes into`, (id) =>
        goesInto(this.session, id, this.#away),
      )}
    `;
  }

  #parts(): TemplateResult {
    return html`<p class="small">
        Each comes worked through with its sources, at the end of the notebook. Then write your own
        sizes: Tab goes from one to the next.
      </p>
      <ul>
        ${this.offered.map(
          ({ template, names }) =>
            html`<li>
              <button
                @click=${() => {
                  this.#away();
                  void this.desk.insert(template);
                }}
              >
                ${names.join(', ')}
              </button>
            </li>`,
        )}
      </ul>
      <div class="acts">
        <button class="act" @click=${this.#emptyPart}>Add an empty part</button>
      </div>`;
  }

  #madeFrom(id: string): string {
    const origin = this.origins.get(id);
    return origin ? `. ${sayOrigin(origin)}` : '';
  }

  #notebooks(): TemplateResult {
    const { openId } = this.desk;
    return html`<ul>
        ${this.kept.map(
          ({ id, title, keptAt }) =>
            html`<li>
              <button
                ?disabled=${id === openId}
                @click=${() => {
                  this.#away();
                  void this.desk.openKept(id);
                }}
              >
                ${title}
                <span class="where"
                  >${id === openId ? 'open now, ' : ''}kept
                  ${new Date(keptAt).toLocaleString([], {
                    dateStyle: 'medium',
                    timeStyle: 'short',
                  })}${this.#madeFrom(id)}</span
                >
              </button>
              ${id === openId ? nothing : this.#forgetting(id, title)}
            </li>`,
        )}
      </ul>
      ${howKept(this.desk)}
      ${
        this.kept.length === 0
          ? html`<p>Nothing is kept yet. A notebook is kept here as soon as it is changed.</p>`
          : nothing
      }
      <div class="acts">
        <button
          class="act"
          @click=${() => {
            this.#away();
            void this.desk.openEmpty();
          }}
        >
          Start an empty notebook
        </button>
        <button
          class="act"
          @click=${() => {
            this.#away();
            void this.desk.openDemo();
          }}
        >
          Open the demo afresh
        </button>
      </div>`;
  }

  /** Taken away for good only when asked twice: no undo reaches into what is kept. */
  #forgetting(id: string, title: string): TemplateResult {
    if (this.leaving !== id) {
      return html`<button
        class="plain"
        aria-label="Remove ${title}"
        @click=${() => (this.leaving = id)}
      >
        Remove
      </button>`;
    }
    return html`<button
      class="act"
      @click=${() => {
        this.leaving = null;
        void this.desk.forget(id).then(() => this.#list());
      }}
    >
      Remove for good
    </button>`;
  }

  #aboutCell(
    sheet: CellSheet,
    heading: string,
    inside: (id: CellId) => TemplateResult,
  ): TemplateResult {
    const { open, about } = this;
    const here = open === sheet && about !== null && this.#stands(about);
    return html`<paper-sheet heading=${heading} ?open=${open === sheet} @away=${this.#away}>
      ${here ? inside(about) : nothing}
    </paper-sheet>`;
  }

  #name(): string {
    const { about, session } = this;
    return about === null || !this.#stands(about) ? '' : session.door.state(about).input.name;
  }

  /** On the page, by itself or in a row of its table. */
  #stands(id: CellId): boolean {
    const { door } = this.session;
    return isOfRow(id) ? placeOf(door, id) !== null : this.session.cell(id) !== null;
  }

  #emptyPart = (): void => {
    const { session } = this;
    this.#away();
    const names = new Set(session.door.notebook.parts.map(({ name }) => name));
    let name = 'New part';
    for (let n = 2; names.has(name); n++) name = `New part ${n}`;
    if (!session.apply((door) => door.addPart(name, null))) return;
    const added = session.door.notebook.parts.at(-1);
    if (added) session.write({ kind: 'part-name', part: added.key });
  };

  async #list(): Promise<void> {
    const kept = await this.desk.list();
    this.kept = kept;
    // Copies often keep their title: what they were made from tells them apart.
    const alike = kept.filter(({ id, title }) =>
      kept.some((other) => other.id !== id && other.title === title),
    );
    const shelf = await this.desk.versions();
    this.origins = new Map(
      await Promise.all(
        alike.map(async ({ id }) => [id, await shelf.origin(id).catch(() => null)] as const),
      ),
    );
  }

  async #offer(): Promise<void> {
    this.offered = await Promise.all(
      this.desk.templates.map(async (template) => {
        const parts = templateParts(await template.read());
        return {
          template,
          names: 'code' in parts ? [template.file] : parts.map(({ name }) => name),
        };
      }),
    );
  }

  #away = (): void => {
    this.renderRoot.querySelector<PaperSheet>('paper-sheet[open]')?.shut();
    this.dispatchEvent(new CustomEvent('away'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'job-sheets': JobSheets;
  }
}
