// A sheet laid over the page until it is put away: a list to choose from, a question to answer.
// Properties: `heading`, `open`, `wide` (for what is read side by side). Slot: what stands on it. Event, for a person's act: `away`.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
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
      :host([wide]) dialog {
        width: min(66rem, calc(100vw - 1.5rem));
        height: calc(100dvh - 2rem);
        max-height: none;
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
      /* Given the keyboard when what stands under it is new; there is nothing to press. */
      h2:focus {
        outline: 0;
      }
      .inside {
        padding: 0.8rem 1.2rem 1.2rem;
      }
      @media screen and (max-width: 480px) {
        :host([wide]) dialog {
          width: 100vw;
          max-width: none;
          height: 100dvh;
          margin: 0;
          border: 0;
        }
        :host([wide]) .inside {
          padding: 0.6rem 0.8rem 1.2rem;
        }
      }
      /* On paper a sheet is the page: as long as it is. */
      @media print {
        dialog,
        :host([wide]) dialog {
          position: absolute;
          inset: 0 0 auto 0;
          width: auto;
          max-width: none;
          height: auto;
          max-height: none;
          margin: 0;
          border: 0;
          box-shadow: none;
          overflow: visible;
        }
        .top button {
          display: none;
        }
        .top {
          position: static;
        }
        .inside,
        .top {
          padding-left: 0;
          padding-right: 0;
        }
      }
    `,
  ];

  @property() heading = '';
  @property({ type: Boolean, reflect: true }) open = false;
  @property({ type: Boolean, reflect: true }) wide = false;
  @query('dialog') private dialog!: HTMLDialogElement;

  /** At once, so that the keyboard is back on the page before it is sent elsewhere. */
  shut(): void {
    if (this.dialog.open) this.dialog.close();
  }

  /** Gives the keyboard to the heading: what stands under it is new. */
  heard(): void {
    const heading = this.renderRoot.querySelector('h2');
    heading?.focus();
    heading?.scrollIntoView({ block: 'nearest' });
    this.dialog.scrollTop = 0;
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
        <h2 tabindex=${this.wide ? -1 : nothing}>${this.heading}</h2>
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
