// A short length of tape under a given's number: it slides between the number's sensible limits, a pencil
// tick stays where it began, and everything on the page follows. Drag, or arrow keys; Enter keeps, Esc goes back,
// a typed amount goes on in the line.
// Properties: `session`, `cell`.
import { LitElement, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Cell } from '../notebook/document.ts';
import { look } from './look.ts';
import { styled } from './styled.ts';
import { money, moreOrLess } from './money-words.ts';
import type { Session } from './session.ts';
import { tapeLook } from './tape-look.ts';
import { saidAt, tapeUnder } from './tape-reading.ts';
import type { TapeScale } from './tape-scale.ts';

/** The drawing is this wide in its own measure; the ends stand in from its edges. */
const WIDE = 1000;
const INSET = 20;

@customElement('story-tape')
export class StoryTape extends LitElement {
  static override styles = [look, tapeLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: Cell;
  @state() private at = 0;
  @query('.tape') private tape!: HTMLElement;

  #scale: TapeScale | null = null;
  /** Only the last of many moves within one frame is worked. */
  #frame = 0;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#scale ??= tapeUnder(this.session.door, this.cell);
    this.at = this.#scale?.from ?? 0;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    cancelAnimationFrame(this.#frame);
  }

  protected override firstUpdated(): void {
    this.tape?.focus();
  }

  protected override render(): TemplateResult {
    const scale = this.#scale;
    if (!scale) {
      return html`<p class="none">
        There is nothing to slide here yet: give it an amount first.
        <button class="plain" @click=${() => this.session.leaveTape()}>Put the tape away</button>
      </p>`;
    }
    const text = this.#text(this.at);
    return html`
      <div
        class="tape"
        role="slider"
        tabindex="0"
        aria-label="Tape for ${this.cell.name}"
        aria-valuemin=${scale.low}
        aria-valuemax=${scale.high}
        aria-valuenow=${this.at}
        aria-valuetext="${text}. ${this.#difference()}"
        @keydown=${this.#key}
        @pointerdown=${this.#grab}
        @pointermove=${this.#drag}
        @pointerup=${this.#settle}
      >
        <svg viewBox="0 0 ${WIDE} 64" preserveAspectRatio="none" aria-hidden="true">
          <rect class="blade" x="0" y="8" width=${WIDE} height="46" />
          ${this.#ticks(scale)}
          <line class="began" x1=${this.#x(scale.from)} x2=${this.#x(scale.from)} y1="2" y2="62" />
          <line class="now" x1=${this.#x(this.at)} x2=${this.#x(this.at)} y1="0" y2="64" />
        </svg>
        <span class="end low">${this.#text(scale.low)}</span>
        <span class="end high">${this.#text(scale.high)}</span>
        <span class="began-at" ${styled({ left: `${this.#x(scale.from) / 10}%` })}
          >${this.at === scale.from ? nothing : this.#text(scale.from)}</span
        >
      </div>
      <div class="beside">
        <b>${text}</b> <span>${this.#difference()}</span>
        <span class="acts">
          <button class="act first" @click=${this.#keep}>Keep</button>
          <button class="act" @click=${() => this.#write()}>Type it</button>
          <button class="act" @click=${this.#leave}>Back to ${this.#text(scale.from)}</button>
        </span>
        ${this.#whatItLiesBetween(scale)}
      </div>
    `;
  }

  #whatItLiesBetween({ limited }: TapeScale): unknown {
    const range = this.session.door.shownRange(this.cell.id);
    if (range) {
      return html`<span class="small"
        >between ${range.best.text} at best and ${range.worst.text} at worst, which stay</span
      >`;
    }
    return limited ? nothing : html`<span class="small">no sensible limits said</span>`;
  }

  #ticks(scale: TapeScale): unknown {
    const span = scale.high - scale.low;
    const every = [1, 2, 4, 5, 8, 10, 16, 20, 25, 50, 100].find((n) => span / n <= 80) ?? 200;
    const ticks = [];
    const first = Math.ceil(scale.low / every) * every;
    for (let at = first; at <= scale.high; at += every) {
      const long =
        Math.round(at / every) % (every % 5 === 0 || every === 1 || every === 2 ? 5 : 4) === 0;
      ticks.push(
        svg`<line class="tick" x1=${this.#x(at)} x2=${this.#x(at)} y1="8" y2=${long ? 26 : 17} />`,
      );
    }
    return ticks;
  }

  #difference(): string {
    const { trial, door } = this.session;
    if (!trial) return '';
    const { currency } = door.notebook.settings;
    const now = door.costs().total.price;
    const by = moreOrLess(now, trial.costs.total.price, currency);
    return by ? `price ${money(now, currency)}, ${by}` : `price ${money(now, currency)}, as it was`;
  }

  #text(at: number): string {
    const { trial } = this.session;
    const scale = this.#scale;
    if (!scale) return '';
    if (at === scale.from && trial) return trial.began;
    return saidAt(this.session.door, this.cell.id, at, scale);
  }

  #x(at: number): number {
    const scale = this.#scale;
    if (!scale || scale.high === scale.low) return WIDE / 2;
    return INSET + ((at - scale.low) / (scale.high - scale.low)) * (WIDE - 2 * INSET);
  }

  #key = (event: KeyboardEvent): void => {
    const scale = this.#scale;
    if (!scale) return;
    const to = keyTo(event, this.at, scale);
    event.stopPropagation();
    if (to !== null) this.#slide(to);
    else if (event.key === 'Enter') this.#keep();
    else if (event.key === 'Escape') this.#leave();
    else if (isTyped(event)) this.#write(event.key);
    else return;
    event.preventDefault();
  };

  #grab = (event: PointerEvent): void => {
    this.tape.setPointerCapture(event.pointerId);
    this.#toPointer(event);
  };

  #drag = (event: PointerEvent): void => {
    if (this.tape.hasPointerCapture(event.pointerId)) this.#toPointer(event);
  };

  #settle = (event: PointerEvent): void => {
    this.tape.releasePointerCapture(event.pointerId);
  };

  #toPointer(event: PointerEvent): void {
    const scale = this.#scale;
    if (!scale) return;
    const box = this.tape.getBoundingClientRect();
    const along = (((event.clientX - box.left) / box.width) * WIDE - INSET) / (WIDE - 2 * INSET);
    const to = scale.low + along * (scale.high - scale.low);
    // The tick where it began is easy to come back to.
    const near = Math.abs(this.#x(to) - this.#x(scale.from)) < 8;
    this.#slide(near ? scale.from : Math.round(to));
  }

  #slide(to: number): void {
    const scale = this.#scale;
    if (!scale) return;
    const at = Math.min(scale.high, Math.max(scale.low, to));
    if (at === this.at) return;
    this.at = at;
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(() => {
      this.session.slideTape(this.#text(this.at));
      this.requestUpdate();
    });
  }

  /** What the tape shows is what is kept, even in the frame before it was worked. */
  #keep = (): void => {
    cancelAnimationFrame(this.#frame);
    this.session.slideTape(this.#text(this.at));
    this.session.keepTape();
    this.session.bring(this.cell.id);
  };

  /** Typing says the amount outright: the tape goes back and the line under the number opens. */
  #write(typed?: string): void {
    cancelAnimationFrame(this.#frame);
    const { cell, session } = this;
    session.write({ kind: 'formula', cell: cell.id, ...(typed === undefined ? {} : { typed }) });
  }

  #leave = (): void => {
    cancelAnimationFrame(this.#frame);
    this.session.leaveTape();
    this.session.bring(this.cell.id);
  };
}

/** The start of an amount: it is written instead of slid. */
function isTyped({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
  return !ctrlKey && !metaKey && !altKey && key.length === 1 && key !== ' ';
}

function keyTo(event: KeyboardEvent, at: number, scale: TapeScale): number | null {
  const far = Math.max(1, Math.round((scale.high - scale.low) / 10));
  switch (event.key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return Math.floor(at) + 1;
    case 'ArrowLeft':
    case 'ArrowDown':
      return Math.ceil(at) - 1;
    case 'PageUp':
      return Math.floor(at) + far;
    case 'PageDown':
      return Math.ceil(at) - far;
    case 'Home':
      return scale.low;
    case 'End':
      return scale.high;
    default:
      return null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'story-tape': StoryTape;
  }
}
