// A sheet laid over the page until it is put away: a list to choose from, a question to answer.
// Properties: `heading`, `open`. Slot: what stands on it. Event, for a person's act: `away`.
import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { look } from './look.ts';

@customElement('paper-sheet')
export class PaperSheet extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: contents;
      }
      dialog {
        width: min(38rem, calc(100vw - 1.5rem));
        max-height: min(40rem, calc(100dvh - 2rem));
        padding: 0;
        border: 1px solid var(--graphite);
        border-radius: 3px;
        background: var(--paper);
        color: var(--graphite);
        box-shadow: 0 14px 44px var(--shade);
      }
      dialog::backdrop {
        background: var(--shade);
      }
      .top {
        position: sticky;
        top: 0;
        display: flex;
        justify-content: space-between;
        align-items: baseline;
        gap: 1rem;
        padding: 0.9rem 1.2rem 0.6rem;
        background: var(--paper);
        border-bottom: 1.5px solid var(--graphite);
      }
      h2 {
        margin: 0;
        font-size: 1.1rem;
      }
      .inside {
        padding: 0.8rem 1.2rem 1.2rem;
      }
    `,
  ];

  @property() heading = '';
  @property({ type: Boolean, reflect: true }) open = false;
  @query('dialog') private dialog!: HTMLDialogElement;

  /** At once, so that the keyboard is back on the page before it is sent elsewhere. */
  shut(): void {
    if (this.dialog.open) this.dialog.close();
  }

  protected override updated(): void {
    if (this.open && !this.dialog.open) this.dialog.showModal();
    else if (!this.open && this.dialog.open) this.dialog.close();
  }

  protected override render(): TemplateResult {
    return html`<dialog
      aria-label=${this.heading}
      @close=${this.#away}
      @click=${(event: Event) => {
        if (event.target === this.dialog) this.#away();
      }}
    >
      <div class="top">
        <h2>${this.heading}</h2>
        <button class="plain" @click=${this.#away}>Put away</button>
      </div>
      <div class="inside"><slot></slot></div>
    </dialog>`;
  }

  #away = (): void => {
    if (this.open) this.dispatchEvent(new CustomEvent('away'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'paper-sheet': PaperSheet;
  }
}
