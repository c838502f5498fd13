// One line to write in: a name, a source, a title. Enter or leaving it keeps, Esc leaves it as it was.
// Properties: `label`, `value`, `hint`. Events, for a person's act: `keep` with the text, `leave`.
import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { look } from './look.ts';

@customElement('story-line')
export class StoryLine extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: block;
      }
      input {
        width: 100%;
        padding: 0.05rem 0.3rem;
        margin: -0.1rem 0 -0.1rem -0.35rem;
        border: 1px solid var(--graphite);
        border-radius: 2px;
        background: var(--lifted);
      }
    `,
  ];

  @property() label = '';
  @property() value = '';
  @property() hint = '';
  @query('input') private input!: HTMLInputElement;
  #done = false;

  protected override firstUpdated(): void {
    this.input.focus();
    this.input.select();
  }

  protected override render(): TemplateResult {
    return html`<input
      aria-label=${this.label}
      placeholder=${this.hint}
      .value=${this.value}
      autocomplete="off"
      enterkeyhint="done"
      @keydown=${this.#key}
      @blur=${this.#blurred}
    />`;
  }

  #key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.isComposing) return;
    if (event.key === 'Enter') this.#say('keep');
    else if (event.key === 'Escape') this.#say('leave');
    else return;
    event.preventDefault();
  };

  #blurred = (): void => {
    if (!this.isConnected) return;
    this.#say(this.input.value === this.value ? 'leave' : 'keep');
  };

  /** Only once: taking the line away blurs it again. */
  #say(what: 'keep' | 'leave'): void {
    if (this.#done) return;
    this.#done = true;
    this.dispatchEvent(new CustomEvent(what, { detail: this.input.value }));
    // Should the text have been refused, the line is still here and can be tried again.
    queueMicrotask(() => {
      this.#done = false;
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'story-line': StoryLine;
  }
}
