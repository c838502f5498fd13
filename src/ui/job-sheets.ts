// The sheets that are laid over the page: where to look, parts to insert, notebooks kept here, keys, going to a
// place; and of one cell: removing it, moving it, what it goes into.
// Properties: `desk`, `open` (which one), `about` (which cell). Event, for a person's act: `away`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import type { Finding } from '../notebook/document.ts';
import { isToMend } from '../notebook/mends.ts';
import { templateParts } from '../notebook/templates.ts';
import type { KeptEntry } from '../store/shapes.ts';
import { sayPast } from '../versions/past-dates.ts';
import type { Binder } from './binder.ts';
import { mendButton } from './cell-notes.ts';
import type { Desk, Template } from './desk.ts';
import { Follows } from './follows.ts';
import { howKept } from './how-kept.ts';
import type { SheetName } from './job-header.ts';
import { keys } from './keys-list.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';
import { isOfRow, placeOf } from './row-places.ts';
import { columnNamed, removingColumn } from './column-sheet.ts';
import { goesInto, movingTo } from './moving-sheet.ts';
import './go-to.ts';
import type { PaperSheet } from './paper-sheet.ts';
import './paper-sheet.ts';
import { sheetsLook } from './sheets-look.ts';

/** Sheets about one cell. */
export type CellSheet = 'removing' | 'removing-column' | 'moving' | 'goes-into' | 'show-how';
/** Mends are looked for when the sheet is drawn; further down one goes there for them. */
const MOST_WITH_MENDS = 40;

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
        ${open === 'look' ? this.#look() : nothing}
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
      ${this.#aboutCell('removing', `Remove ${this.#name()}?`, (id) => this.#remove(id))}
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

  #look(): TemplateResult {
    const { session } = this;
    const findings = session.door.findings();
    const past = this.#pastTheirDate();
    if (findings.length === 0) {
      return html`${past}
        <p>
          Nothing to look at: every cell has a value, every check holds, every given says where it
          comes from.
        </p>`;
    }
    const toMend = findings.filter(isToMend);
    const others = findings.filter((finding) => !isToMend(finding));
    return html`${this.#found('To mend', toMend, 'with mends')}
    ${this.#found(toMend.length > 0 ? 'To look at' : '', others, 'alone')}${past}`;
  }

  /** Today's clock is asked for these, so that they are no findings of the notebook itself. */
  #pastTheirDate(): TemplateResult | typeof nothing {
    const past = this.binder?.past ?? [];
    if (past.length === 0) return nothing;
    return html`<h3>Prices past their date</h3>
      <ul>
        ${past.map(
          (each) =>
            html`<li>
              <button
                @click=${() => {
                  this.#away();
                  this.session.bring(each.cell);
                }}
              >
                ${each.name}: ${sayPast(each)}<span class="where">${each.part}</span>
              </button>
            </li>`,
        )}
      </ul>
      <p class="small">Under Snapshots they can be turned into ? in one go.</p>`;
  }

  #found(
    heading: string,
    findings: readonly Finding[],
    how: 'with mends' | 'alone',
  ): TemplateResult | typeof nothing {
    if (findings.length === 0) return nothing;
    const { door } = this.session;
    return html`${heading === '' ? nothing : html`<h3>${heading}</h3>`}
      <ul>
        ${findings.map(
          (finding, place) =>
            html`<li class="found">
              ${this.#goTo(finding)}
              ${
                how === 'alone' || place >= MOST_WITH_MENDS
                  ? nothing
                  : door.mendsFor(finding).map((mend) => mendButton(this.session, mend, null))
              }
            </li>`,
        )}
      </ul>`;
  }

  #goTo({ message, cell, part, place: at }: Finding): TemplateResult {
    const { session } = this;
    const found = cell === null ? null : session.cell(cell);
    const place = [found?.name, session.part(found?.part ?? part ?? '')?.name]
      .filter((name) => name !== undefined && name !== '')
      .join(', ');
    if (cell === null) return html`<span>${message}<span class="where">${place}</span></span>`;
    return html`<button
      @click=${() => {
        this.#away();
        const id = at && session.door.rows(cell)?.[at.row]?.[at.column];
        session.bring(id ?? cell);
      }}
    >
      ${message}<span class="where">${place}</span>
    </button>`;
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
                  })}</span
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

  #remove(id: CellId): TemplateResult {
    const { session } = this;
    const into = session.door.state(id).goesInto.map((cell) => session.cell(cell)?.name ?? '');
    return html`<p>
        ${
          into.length === 0
            ? 'It goes into nothing else.'
            : html`It goes into <b>${listed(into)}</b>. ${into.length === 1 ? 'That one' : 'Those'}
                will say that the name is missing until another is written. Undo brings it back.`
        }
      </p>
      <div class="acts">
        <button
          class="act first"
          @click=${() => {
            this.#away();
            const next = session.neighbour(id, 1) ?? session.neighbour(id, -1);
            if (session.apply((door) => door.removeCell(id)) && next !== null) session.bring(next);
          }}
        >
          Remove it
        </button>
        <button class="act" @click=${this.#away}>Leave it</button>
      </div>`;
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
    this.kept = await this.desk.list();
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

function listed(names: readonly string[]): string {
  const some = names.slice(0, 8);
  const more = names.length > 8 ? `${names.length - 8} more` : some.pop();
  return some.length === 0 ? (more ?? '') : `${some.join(', ')} and ${more}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'job-sheets': JobSheets;
  }
}
