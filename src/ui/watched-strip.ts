// What is watched, in view above the footing: each result with its value, how far it moved since the tick of the tape
// that is open, and since it was first watched. Folded into one line on narrow screens. A screen reader hears of changes
// once they rest, not at each place of the tape. Properties: `desk`. Event, for a person's act: `alternatives-sheet`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Moved } from '../moves-it/stood.ts';
import { leftOutOf, stoodOf } from '../moves-it/stood.ts';
import type { Desk } from './desk.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { movedHeard, movedSaid, stoodSaid } from './result-words.ts';
import type { Session } from './session.ts';
import { watchedLook } from './watched-look.ts';
import { type Watched, markOf } from './watching.ts';

/** In milliseconds: so long a tape has to rest before what it moved is said. */
const RESTS = 700;

@customElement('watched-strip')
export class WatchedStrip extends LitElement {
  static override styles = [look, watchedLook];

  @property({ attribute: false }) desk!: Desk;
  /** On narrow screens all of them stand only when asked for. */
  @state() private unfolded = false;
  @state() private heard = '';
  #rest: ReturnType<typeof setTimeout> | undefined;
  /** What was said last, or would have been. */
  #said = '';

  get session(): Session {
    return this.desk.session;
  }

  constructor() {
    super();
    new Follows(this, 'opened', 'changed', 'tape', 'watched');
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#rest);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { watching } = this.desk;
    const { entries, told, trouble } = watching;
    this.toggleAttribute('unfolded', this.unfolded && entries.length > 0);
    this.toggleAttribute('empty', entries.length === 0);
    this.toggleAttribute('hidden', entries.length === 0 && told === null && trouble === null);
    return html`<section aria-label="Watched">
        ${entries.length === 0 ? nothing : this.#fold(entries)}
        <ul>
          ${entries.map((one) => this.#entry(one))}
        </ul>
        ${
          entries.length === 0
            ? nothing
            : html`<p class="acts">
                <button
                  class="plain"
                  @click=${() => this.dispatchEvent(new CustomEvent('alternatives-sheet'))}
                >
                  Alternatives<kbd>A</kbd>
                </button>
                <button
                  class="plain"
                  title="Changes are told from what everything comes to now"
                  @click=${() => watching.beginAnew()}
                >
                  Count from now
                </button>
              </p>`
        }
        ${told === null ? nothing : html`<p class="told">${told}</p>`}
        ${trouble === null ? nothing : html`<p class="told trouble">${trouble}</p>`}
      </section>
      <p class="heard" role="status">${told ?? (this.heard || watching.said)}</p>`;
  }

  protected override updated(): void {
    const said = this.session.trial ? this.#allMoved() : '';
    if (said === this.#said) return;
    this.#said = said;
    clearTimeout(this.#rest);
    if (said === '') this.heard = '';
    else this.#rest = setTimeout(() => (this.heard = said), RESTS);
  }

  /** One line for all of them: as many as there is room for. */
  #fold(entries: readonly Watched[]): TemplateResult {
    return html`<button
      class="fold"
      aria-expanded=${this.unfolded ? 'true' : 'false'}
      aria-label="Watched: ${entries.length}"
      @click=${() => (this.unfolded = !this.unfolded)}
    >
      <span class="all">Watched</span>
      <span class="line"
        >${entries.map((one) => {
          const since = this.desk.watching.sinceTick(one);
          return html`<span class="each"
            >${one.name}
            <b>${this.#amount(one)}</b> ${since ? this.#moved(one, since) : nothing}</span
          >`;
        })}</span
      >
    </button>`;
  }

  #entry(one: Watched): TemplateResult {
    const { watching } = this.desk;
    const { result, name } = one;
    const since = watching.sinceTick(one);
    const begun = watching.sinceBegun(one);
    const soFar = leftOutOf(this.session.door, result) > 0;
    return html`<li data-mark=${markOf(result)}>
      <span class="name">${this.#named(one)}</span>
      <button
        class="plain go"
        aria-label="Let go of ${name}"
        title="Watch it no more"
        @click=${() => watching.turn(result)}
      >
        let go
      </button>
      <span class="now"
        ><b>${this.#amount(one)}</b>${soFar ? html` <span class="small">so far</span>` : nothing}
        ${since ? this.#moved(one, since) : nothing}</span
      >
      <span class="begun"
        >${
          begun.moves === 'not'
            ? nothing
            : html`${movedSaid(this.session.door, result, begun, one.kept.began, '')} since watched`
        }</span
      >
    </li>`;
  }

  #named({ result, name }: Watched): TemplateResult {
    const { session } = this;
    switch (result.of) {
      case 'cell':
        return html`<button class="tie" @click=${() => session.bring(result.cell)}>
          ${name}
        </button>`;
      case 'part':
        return html`<button class="tie" @click=${() => session.bringPart(result.part)}>
          ${name}
        </button>`;
      case 'direct':
      case 'price':
        return html`<span>${name}</span>`;
    }
  }

  #amount({ result }: Watched): string {
    const { door } = this.session;
    return stoodSaid(door, result, stoodOf(door, result));
  }

  #moved(one: Watched, moved: Moved): TemplateResult {
    const { door } = this.session;
    const before = this.desk.watching.atTick(one) ?? one.kept.began;
    return html`<span class="by ${moved.moves}"
      >${movedSaid(door, one.result, moved, before, 'as it was')}</span
    >`;
  }

  #allMoved(): string {
    const { watching } = this.desk;
    const { door } = this.session;
    return watching.entries
      .flatMap((one) => {
        const moved = watching.sinceTick(one);
        const before = watching.atTick(one);
        if (!moved || !before || moved.moves === 'not') return [];
        return [`${one.name} ${this.#amount(one)}, ${movedHeard(door, one.result, moved, before)}`];
      })
      .join('. ');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'watched-strip': WatchedStrip;
  }
}
