// Going to any cell, table or part by typing some of its name: a line with a list below it, the first already marked.
// Property: `session`. Event, for a person's act: `gone` when a place was chosen.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { type CalledPlace, placesCalled } from './called-places.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';
import { valueSaid } from './value-words.ts';

@customElement('go-to')
export class GoTo extends LitElement {
  static override styles = [
    look,
    css`
      :host {
        display: block;
      }
      input {
        width: 100%;
        min-height: 2.25rem;
        padding: 0.3rem 0.6rem;
        border: 1px solid var(--graphite);
        border-radius: 2px;
        background: var(--lifted);
        font-size: 1rem;
      }
      ul {
        list-style: none;
        margin: 0.6rem 0 0;
        padding: 0;
        height: 22rem;
        max-height: 55dvh;
        overflow: auto;
        scrollbar-width: thin;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 1rem;
        align-items: baseline;
        padding: 0.3rem 0.6rem;
        cursor: pointer;
      }
      li.part b {
        font-weight: 700;
      }
      b {
        font-weight: 500;
      }
      li[aria-selected='true'] {
        background: var(--graphite);
        color: var(--paper);
      }
      li[aria-selected='true'] .small {
        color: inherit;
      }
      .small {
        text-align: right;
      }
      @media (forced-colors: active) {
        li[aria-selected='true'] {
          outline: 2px solid Highlight;
          outline-offset: -2px;
        }
      }
    `,
  ];

  @property({ attribute: false }) session!: Session;
  @state() private typed = '';
  @state() private marked = 0;
  @query('input') private input!: HTMLInputElement;

  protected override firstUpdated(): void {
    this.input.focus();
  }

  protected override updated(): void {
    this.renderRoot.querySelector('[aria-selected=true]')?.scrollIntoView({ block: 'nearest' });
  }

  protected override render(): TemplateResult {
    const found = this.#found();
    return html`
      <input
        role="combobox"
        aria-label="Name of a cell, table or part"
        placeholder="Some of its name"
        aria-expanded=${found.length > 0 ? 'true' : 'false'}
        aria-controls="places"
        aria-autocomplete="list"
        aria-activedescendant=${found.length > 0 ? `place-${this.marked}` : nothing}
        autocapitalize="off"
        autocomplete="off"
        spellcheck="false"
        enterkeyhint="go"
        .value=${this.typed}
        @input=${() => {
          this.typed = this.input.value;
          this.marked = 0;
        }}
        @keydown=${this.#key}
      />
      <ul role="listbox" id="places" aria-label="Places">
        ${found.map((place, i) => this.#option(place, i))}
      </ul>
      ${found.length === 0 ? html`<p class="small" role="status">Nothing here is called so.</p>` : nothing}
    `;
  }

  #option(place: CalledPlace, i: number): TemplateResult {
    const { cell, name, where } = place;
    const shown = cell === null ? null : valueSaid(this.session.door, cell);
    return html`<li
      role="option"
      id="place-${i}"
      class=${cell === null ? 'part' : ''}
      aria-selected=${i === this.marked ? 'true' : 'false'}
      @click=${() => this.#go(place)}
    >
      <b>${name}</b>
      <span class="small">${[shown, where].filter(Boolean).join(' · ')}</span>
    </li>`;
  }

  #found(): readonly CalledPlace[] {
    return placesCalled(this.session.door.notebook, this.typed);
  }

  #key = (event: KeyboardEvent): void => {
    if (event.isComposing) return;
    const found = this.#found();
    const last = Math.max(0, found.length - 1);
    const stepped: Readonly<Record<string, number>> = {
      ArrowDown: this.marked === last ? 0 : this.marked + 1,
      ArrowUp: this.marked === 0 ? last : this.marked - 1,
      PageDown: Math.min(last, this.marked + 8),
      PageUp: Math.max(0, this.marked - 8),
    };
    const next = stepped[event.key];
    const place = found[this.marked];
    if (next !== undefined) this.marked = next;
    else if (event.key === 'Enter' && place) this.#go(place);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  #go({ cell, part }: CalledPlace): void {
    this.dispatchEvent(new CustomEvent('gone'));
    if (cell === null) this.session.bringPart(part);
    else this.session.bring(cell);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'go-to': GoTo;
  }
}
