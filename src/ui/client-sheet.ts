// The client's sheet, as large as the screen so that a client can sit beside: the price as it is handed in, and above it a
// quiet line to choose how much is told, for whom it is and until when it is good. Printed, it is the paper alone.
// Properties: `desk`, `open`. Event, for a person's act: `away`.
import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { CLIENT_LEVELS, type ClientLevel } from '../client/client-copy.ts';
import { type Handing, clientSheet } from '../client/client-sheet.ts';
import type { HandedLast } from '../store/client-shapes.ts';
import { clientPaper } from './client-paper.ts';
import { clientLook } from './client-look.ts';
import { dayOf } from './day-words.ts';
import type { Desk } from './desk.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';

const VIEWS: Readonly<Record<ClientLevel, string>> = {
  price: 'The price alone',
  parts: 'Part by part',
  described: 'With the work described',
  work: 'Work and material',
};

const UNTOLD: HandedLast = { level: 'parts', from: '', whom: '', until: '' };

@customElement('client-sheet')
export class ClientSheetPage extends LitElement {
  static override styles = [look, clientLook];

  @property({ attribute: false }) desk!: Desk;
  @property({ type: Boolean, reflect: true }) open = false;
  @state() private handed: HandedLast = UNTOLD;
  /** On narrow screens what is seldom wanted is folded away. */
  @state() private spread = false;
  @query('dialog') private dialog!: HTMLDialogElement;
  /** Something was chosen already: what was kept comes too late. */
  #chose = false;

  get session(): Session {
    return this.desk.session;
  }

  constructor() {
    super();
    new Follows(this, 'opened', 'changed');
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('open') || !this.open) return;
    this.handed = UNTOLD;
    this.#chose = false;
    void this.desk.handed().then((handed) => {
      if (handed && !this.#chose) this.handed = handed;
    });
  }

  protected override updated(): void {
    if (this.open && !this.dialog.open) {
      this.dialog.showModal();
      this.renderRoot.querySelector<HTMLElement>('h1, .not-yet')?.focus();
    } else if (!this.open && this.dialog.open) this.dialog.close();
  }

  protected override render(): TemplateResult {
    return html`<dialog aria-label="Client sheet" @close=${this.#away}>
      ${this.open ? this.#inside() : nothing}
    </dialog>`;
  }

  #inside(): TemplateResult {
    const today = dayOf(this.desk.now());
    const handing = clientSheet(this.session.door, this.#level, today);
    return html`<div class="bar">${this.#views()} ${this.#fields(handing)} ${leftOff(handing)}</div>
      <div class="desk">
        ${
          handing.kind === 'not-yet'
            ? html`<p class="not-yet" tabindex="-1">${handing.message}</p>`
            : clientPaper(handing.sheet, {
                from: this.handed.from,
                whom: this.handed.whom,
                until: this.handed.until || (handing.sheet.until ?? ''),
                today,
              })
        }
      </div>`;
  }

  get #level(): ClientLevel {
    return CLIENT_LEVELS.find((level) => level === this.handed.level) ?? 'parts';
  }

  #views(): TemplateResult {
    return html`<fieldset>
        <legend class="heard">How much is told</legend>
        ${CLIENT_LEVELS.map(
          (level) =>
            html`<label
              ><input
                type="radio"
                name="level"
                value=${level}
                .checked=${level === this.#level}
                @change=${() => this.#choose({ level })}
              /><span>${VIEWS[level]}</span></label
            >`,
        )}
      </fieldset>
      <div class="acts">
        <button class="act first" @click=${() => window.print()}>Print</button>
        <button class="plain" @click=${this.#away}>Put away</button>
      </div>
      <button
        class="plain more"
        aria-expanded=${this.spread ? 'true' : 'false'}
        @click=${() => (this.spread = !this.spread)}
      >
        ${this.spread ? 'Less' : 'For whom, until when'}
      </button>`;
  }

  #fields(handing: Handing): TemplateResult {
    const { from, whom, until } = this.handed;
    const shown = until || (handing.kind === 'sheet' ? (handing.sheet.until ?? '') : '');
    const typed = (event: Event): string => (event.target as HTMLInputElement).value;
    return html`<div class="fields" ?data-spread=${this.spread}>
      <label
        >From
        <input
          .value=${from}
          autocomplete="off"
          @input=${(event: Event) => this.#choose({ from: typed(event) })}
      /></label>
      <label
        >For
        <input
          .value=${whom}
          autocomplete="off"
          @input=${(event: Event) => this.#choose({ whom: typed(event) })}
      /></label>
      <label
        >Valid until
        <input
          type="date"
          .value=${shown}
          @change=${(event: Event) => this.#choose({ until: typed(event) })}
      /></label>
    </div>`;
  }

  #choose(what: Partial<HandedLast>): void {
    this.#chose = true;
    this.handed = { ...this.handed, ...what };
    void this.desk.keepHanded(this.handed);
  }

  #away = (): void => {
    if (this.open) this.dispatchEvent(new CustomEvent('away'));
  };
}

/** For the owner, above the paper and never on it. */
function leftOff(handing: Handing): TemplateResult | typeof nothing {
  if (handing.kind === 'not-yet' || handing.leftOff.length === 0) return nothing;
  return html`<div class="left-off">${handing.leftOff.map((one) => html`<p>${one}</p>`)}</div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'client-sheet': ClientSheetPage;
  }
}
