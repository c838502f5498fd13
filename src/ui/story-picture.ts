// The pictures that a cell's `picture` remarks ask for, redrawn as its numbers change. One that waits keeps its last
// drawing, greyed, and says what it waits for; what is wrong with a remark is told in the cell's row.
// Properties: `session`, `cell` (the id of the cell), `only` (the place of one picture among several), `marked` (dimensions to
// be ringed, as they are written), `enlarged` (how many times). Fetched with the first cell that has a picture.
import { LitElement, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import type { PictureState } from '../notebook/pictures.ts';
import { FONT, draw, hatchOf, sheetOf, wideOf } from '../picture/draw.ts';
import type { Drawing, Fill, KeyItem, Line, Point } from '../picture/drawing.ts';
import type { Placed, Sheet } from '../picture/sheet.ts';
import type { Lettering } from '../picture/strokes.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { pictureLook } from './picture-look.ts';
import type { Session } from './session.ts';

/** No picture is laid out wider than this, in pixels, nor for a narrower sheet than that. */
const WIDEST = 620;
const NARROWEST = 260;

interface Drawn {
  readonly drawing: Drawing;
  readonly measures: 'us' | 'metric';
}

@customElement('story-picture')
export class StoryPicture extends LitElement {
  static override styles = [look, pictureLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: CellId;

  @property({ attribute: false }) only: number | null = null;
  @property({ attribute: false }) marked: readonly string[] = [];
  /** Of its letters and lines, where a group looks at it. */
  @property({ type: Number }) enlarged = 1;

  @state() private wide = WIDEST;

  /** By the place of their remark: what was drawn last. */
  readonly #last = new Map<number, Drawn>();
  #sizes: ResizeObserver | null = null;

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // In the next frame: what is laid out anew changes the size that was just told.
    this.#sizes = new ResizeObserver(() => requestAnimationFrame(() => this.#measure()));
    this.#sizes.observe(this);
    this.#measure();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sizes?.disconnect();
    this.#sizes = null;
  }

  /** On paper the sheet stays as it was laid out and only its size follows: lines and letters are drawn, not dots. */
  #measure(): void {
    if (!this.isConnected || window.matchMedia('print').matches) return;
    const style = getComputedStyle(this);
    const inside =
      this.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
    if (inside > 0)
      this.wide = Math.min(WIDEST, Math.max(NARROWEST, Math.floor(inside / this.enlarged)));
  }

  protected override render(): TemplateResult | typeof nothing {
    if (!this.session.cell(this.cell)) return nothing;
    const pictures = this.session.door.picturesOf(this.cell);
    return html`${pictures.map((one, i) =>
      this.only === null || this.only === i ? this.#picture(one, i) : nothing,
    )}`;
  }

  #picture(picture: PictureState, place: number): unknown {
    switch (picture.kind) {
      case 'drawn': {
        const drawn = {
          drawing: draw(picture.name, picture.given),
          measures: picture.given.measures,
        };
        this.#last.set(place, drawn);
        return this.#figure(drawn, 'now');
      }
      case 'waits': {
        const last = this.#last.get(place);
        return html`${last ? this.#figure(last, 'last') : nothing}
          <p class="waits">
            ${last ? 'As it last was: the' : 'The'} ${picture.name} waits for
            ${picture.for.length === 0 ? 'what its values come to' : this.#names(picture.for)}.
          </p>`;
      }
      case 'nothing':
        return html`<p class="waits">
          Nothing to draw in the ${picture.name}: ${picture.slot}, none.
        </p>`;
      case 'wrong': {
        const last = this.#last.get(place);
        return last ? this.#figure(last, 'last') : nothing;
      }
    }
  }

  #names(cells: readonly CellId[]): unknown {
    const named = cells.flatMap((id) => {
      const input = this.session.door.state(id).input;
      // A cell in a row is found at its table.
      const at = input.inTable ?? id;
      const cell = this.session.cell(at);
      const name = at === id ? cell?.name : `${input.name} in ${cell?.name ?? ''}`;
      return cell && name ? [{ at, name }] : [];
    });
    return named.slice(0, 6).map(({ at, name }, i) => {
      const between = i === 0 ? '' : i === named.length - 1 ? ' and ' : ', ';
      return html`${between}<a
          class="tie"
          href="#cell-${at}"
          @click=${(event: Event) => this.#go(event, at)}
          >${name}</a
        >`;
    });
  }

  #go(event: Event, to: CellId): void {
    event.preventDefault();
    this.session.bring(to);
  }

  #figure({ drawing, measures }: Drawn, when: 'now' | 'last'): TemplateResult {
    const sheet = sheetOf(drawing, { width: this.wide, measures });
    return html`<figure class=${when}>
      <svg
        class="sheet"
        role="img"
        aria-label=${drawing.alt}
        viewBox="0 0 ${sheet.width} ${sheet.height}"
        width=${sheet.width}
        height=${sheet.height}
      >
        ${onSheet(sheet, this.marked)}
      </svg>
      <figcaption>
        <b>${drawing.name}</b>
        <ul>
          ${drawing.key.map(keyItem)}
        </ul>
      </figcaption>
      ${drawing.wrong.map((each) => html`<p class="wrong">${each}</p>`)}
    </figure>`;
  }
}

function onSheet({ shapes, strokes, letters }: Sheet, marked: readonly string[]): TemplateResult {
  const ringed = letters.filter(({ text }) => marked.includes(text));
  return svg`<g aria-hidden="true">${shapes.map(placed)}${strokes.map(
    ({ from, to, line, wrong }) =>
      svg`<line class="${line} ${wrong ? 'wrong' : ''}" x1=${tidy(from.x)} y1=${tidy(from.y)} x2=${tidy(to.x)} y2=${tidy(to.y)}></line>`,
  )}${letters.map(behind)}${letters.map(lettered)}${ringed.map(ring)}</g>`;
}

/** Paper behind words: a line that runs on behind them is not read as part of them. */
function behind({ x, y, text, anchor }: Lettering): TemplateResult {
  const wide = wideOf(text);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
  return svg`<rect class="behind" x=${tidy(left - 1)} y=${tidy(y - FONT * 0.86)} width=${tidy(wide + 2)} height=${tidy(FONT * 1.08)}></rect>`;
}

/** Around a dimension that is asked about, as with a crayon. */
function ring(letters: Lettering): TemplateResult {
  const { x, y, text, anchor } = letters;
  const wide = wideOf(text);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
  return svg`<ellipse class="ring" cx=${tidy(left + wide / 2)} cy=${tidy(y - FONT * 0.33)} rx=${tidy(wide / 2 + 6)} ry=${tidy(FONT * 0.85)}></ellipse>`;
}

function lettered({ x, y, text, anchor, wrong }: Lettering): TemplateResult {
  return svg`<text class=${wrong ? 'wrong' : ''} x=${tidy(x)} y=${tidy(y)} text-anchor=${anchor}>${text}</text>`;
}

/** A hatch lies on paper of its own, so that nothing below shows through it. */
function placed(shape: Placed): TemplateResult {
  const { line, fill } = shape;
  const classes = `line-${line} fill-${fill}`;
  if (shape.kind === 'round') {
    const { centre, radius } = shape;
    return svg`<circle class=${classes} cx=${tidy(centre.x)} cy=${tidy(centre.y)} r=${tidy(radius)}></circle>`;
  }
  const path = pathOf(shape.points, shape.closed ? 'Z' : '');
  const strokes = hatchOf(fill, shape.points);
  if (strokes.length === 0) return svg`<path class=${classes} d=${path}></path>`;
  const hatch = strokes.map((points) => pathOf(points, '')).join('');
  return svg`<path class="ground" d=${path}></path><path class="hatch" d=${hatch}></path><path class="line-${line}" d=${path}></path>`;
}

function pathOf(points: readonly Point[], end: 'Z' | ''): string {
  return `M${points.map(({ x, y }) => `${tidy(x)} ${tidy(y)}`).join('L')}${end}`;
}

function tidy(pixels: number): string {
  return String(Math.round(pixels * 100) / 100);
}

/** How it is drawn, beside what it is. */
function keyItem({ line, fill, text }: KeyItem): TemplateResult {
  return html`<li>${isPlain(line, fill) ? nothing : swatch(line, fill)}<span>${text}</span></li>`;
}

function isPlain(line: Line, fill: Fill): boolean {
  return line === 'none' && fill === 'none';
}

function swatch(line: Line, fill: Fill): TemplateResult {
  const box = fill !== 'none';
  return html`<svg width="26" height="14" viewBox="0 0 26 14" aria-hidden="true">
    ${
      box
        ? placed({
            kind: 'path',
            points: [
              { x: 1, y: 1 },
              { x: 25, y: 1 },
              { x: 25, y: 13 },
              { x: 1, y: 13 },
            ],
            closed: true,
            line,
            fill,
          })
        : svg`<line class="line-${line}" x1="1" y1="7" x2="25" y2="7"></line>`
    }
  </svg>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'story-picture': StoryPicture;
  }
}
