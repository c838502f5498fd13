// The job record laid over the page: what happened, the estimate against it, lines of a sheet, and what it teaches.
// Properties: `desk`, `open`. Event, for a person's act: `away`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Desk } from './desk.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { RecordBook } from './record-book.ts';
import './record-against.ts';
import './record-entries.ts';
import './record-learned.ts';
import './record-paste.ts';
import { recordSheetLook } from './record-sheet-look.ts';
import type { Session } from './session.ts';

const LEAVES = ['What happened', 'Against the estimate', 'From a sheet', 'Learned'] as const;
type Leaf = (typeof LEAVES)[number];

@customElement('record-sheet')
export class RecordSheet extends LitElement {
  static override styles = [look, recordSheetLook];

  @property({ attribute: false }) desk!: Desk;
  @property({ type: Boolean, reflect: true }) open = false;
  @state() private leaf: Leaf = 'What happened';
  @state() private book: RecordBook | null = null;
  @state() private unreadable = false;
  @query('dialog') private dialog!: HTMLDialogElement;
  #wasOpen = false;
  #stop: (() => void) | null = null;

  get session(): Session {
    return this.desk.session;
  }

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.desk.binder().then((binder) => {
      if (this.isConnected) this.#stop ??= binder.listen(() => void this.#catchUp());
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
  }

  protected override willUpdate(): void {
    // Anew each time it is laid out: another page may have added to it.
    if (this.open && !this.#wasOpen) void this.#read();
    this.#wasOpen = this.open;
  }

  protected override updated(): void {
    if (this.open && !this.dialog.open) this.dialog.showModal();
    else if (!this.open && this.dialog.open) this.dialog.close();
  }

  protected override render(): TemplateResult {
    const { title } = this.session.door.notebook;
    return html`<dialog aria-label="Job record" @close=${this.#away}>
      <div class="top">
        <h2>Job record<span class="of">${title}</span></h2>
        <nav aria-label="Job record">
          ${LEAVES.map(
            (leaf) =>
              html`<button
                aria-current=${leaf === this.leaf ? 'page' : 'false'}
                @click=${() => (this.leaf = leaf)}
              >
                ${leaf}
              </button>`,
          )}
        </nav>
        <button class="plain" @click=${() => window.print()}>Print</button>
        <button class="plain" @click=${this.#away}>Put away</button>
      </div>
      <div class="inside">${this.#inside()}</div>
    </dialog>`;
  }

  #inside(): TemplateResult | typeof nothing {
    const { book, leaf } = this;
    if (this.unreadable)
      return html`<p>
        What is kept of this record can’t be read here. It is left as it is; a later version of this
        page may have written it.
      </p>`;
    if (!book) return nothing;
    const added = this.#added;
    // All of them stay, so that what is half written is still there when one comes back.
    return html`${this.#notCounted(book)}
      <record-entries
        ?hidden=${leaf !== 'What happened'}
        .book=${book}
        @added=${added}
        @left=${() => this.desk.half.done()}
      ></record-entries>
      ${
        leaf === 'Against the estimate'
          ? html`<record-against .book=${book} @added=${added}></record-against>`
          : nothing
      }
      <record-paste ?hidden=${leaf !== 'From a sheet'} .book=${book} @added=${added}></record-paste>
      ${
        leaf === 'Learned'
          ? html`<record-learned .book=${book} .session=${this.session}></record-learned>`
          : nothing
      }`;
  }

  #notCounted(book: RecordBook): TemplateResult | typeof nothing {
    const { newer, unreadable } = book.notCounted;
    const strays = book.stands.strays.length;
    const all = newer + unreadable + strays;
    if (all === 0) return nothing;
    return html`<p class="trouble">
      ${all === 1 ? '1 line' : `${all} lines`} of this record ${all === 1 ? 'is' : 'are'} kept and
      in no sum: ${newer} from a later version of this page, ${unreadable} that can’t be read,
      ${strays} that point at nothing here.
    </p>`;
  }

  async #read(): Promise<void> {
    // Nothing goes into the record of the notebook that was open before.
    if (this.book?.id !== this.desk.openId) this.book = null;
    const book = await RecordBook.opened(this.desk).catch(() => null);
    this.unreadable = book === null;
    this.book = book;
  }

  /** The book is the same, what stands in it is not: everything that shows it is drawn again. */
  #added = (): void => {
    this.desk.half.done();
    this.#drawAgain();
  };

  /** Another page added to it while it lies here. */
  async #catchUp(): Promise<void> {
    const { book } = this;
    if (this.open && book?.id === this.desk.openId && (await book.catchUp())) this.#drawAgain();
  }

  #drawAgain(): void {
    this.requestUpdate();
    for (const leaf of this.renderRoot.querySelectorAll<LitElement>('.inside > *'))
      if ('requestUpdate' in leaf) leaf.requestUpdate();
  }

  #away = (): void => {
    if (this.open) this.dispatchEvent(new CustomEvent('away'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'record-sheet': RecordSheet;
  }
}
