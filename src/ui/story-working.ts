// The working of the chosen cell: the answer, what can be done with it, its remarks, and below it the steps
// going down like risers to the givens and their sources; then what it goes into.
// Property: `session`. Events, for a person's act: `about` with a sheet and the cell, `away` to put the sheet away, `watch`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { GoesInto, Step, Word, Working } from '../explain/step.ts';
import type { CellId } from '../language/tree.ts';
import type { Result } from '../moves-it/stood.ts';
import type { Cell } from '../notebook/document.ts';
import { explaining } from './asides.ts';
import { Follows } from './follows.ts';
import type { CellSheet } from './job-sheets.ts';
import { look } from './look.ts';
import { duplicate } from './moving.ts';
import { styled } from './styled.ts';
import './cell-remarks.ts';
import { type RowPlace, firstPlace } from './row-places.ts';
import type { Session } from './session.ts';
import { tapeUnder } from './tape-reading.ts';
import { valueSaid } from './value-words.ts';
import { workingLook } from './working-look.ts';

/** A named cell with the steps of its own formula: one riser of the flight. */
interface Riser {
  readonly cell: CellId | null;
  readonly name: string | null;
  readonly steps: readonly Step[];
}

/** Risers that stand open at once; the rest open when asked. */
const OPEN_AT_ONCE = 4;

/** A sheet about one cell that was asked for. */
export interface About {
  readonly sheet: CellSheet;
  readonly cell: CellId;
  readonly column?: number;
}

@customElement('story-working')
export class StoryWorking extends LitElement {
  static override styles = [look, workingLook];

  @property({ attribute: false }) session!: Session;
  /** Steps that were folded and asked for, and how they are when opened. */
  @state() private opened: ReadonlyMap<Step, Step> = new Map();
  #for: CellId | null = null;

  constructor() {
    super();
    new Follows(this, 'opened', 'changed', 'chosen', 'tape', 'writing', 'watched');
    void explaining.then(() => this.requestUpdate());
  }

  protected override willUpdate(): void {
    if (this.#for === this.session.worked) return;
    this.#for = this.session.worked;
    this.opened = new Map();
  }

  protected override render(): TemplateResult {
    const { session } = this;
    const cell = session.chosen === null ? null : session.cell(session.chosen);
    if (!cell) {
      return html`<p class="empty">
        Choose a cell to see how its number came about, down to what was measured, quoted, looked up
        or assumed.
      </p>`;
    }
    if (session.within?.id) return this.#ofRow(session.within, session.within.id, cell);
    const working = session.asides.working(cell.id);
    return html`
      <section aria-label="Working of ${cell.name}">
        <header>
          <p class="small">Working of</p>
          <h2 tabindex="-1">${cell.name}</h2>
          <p class="answer">${valueSaid(session.door, cell.id) ?? working?.shown ?? ''}</p>
          ${this.#tools(cell)}
        </header>
        ${
          working
            ? html`${this.#flight(working)}
                <cell-remarks .session=${session} .cell=${cell}></cell-remarks>`
            : nothing
        }
      </section>
    `;
  }

  /** Of a cell in a row: its own working, with the way to it and to its table. */
  #ofRow(at: RowPlace, id: CellId, held: Cell): TemplateResult {
    const { session } = this;
    const { door } = session;
    const working = session.asides.working(id);
    const { name } = door.state(id).input;
    const own = held.table?.rows[at.row]?.texts[at.column] ?? '';
    const isSetHere = own !== '' && held.table?.columns[at.column]?.formula !== null;
    return html`<section aria-label="Working of ${name}">
      <header>
        <p class="small">Working of</p>
        <h2 tabindex="-1">${name}</h2>
        <p class="answer">${valueSaid(door, id) ?? working?.shown ?? ''}</p>
        <div class="tools">
          <button
            class="act"
            @click=${() => {
              this.#say('away');
              session.bringRow(at, 'writes');
            }}
          >
            Change
          </button>
          ${
            isSetHere
              ? html`<button
                  class="act"
                  @click=${() => session.apply((d) => d.setRowCell(at.cell, at.row, at.column, ''))}
                >
                  Leave it to its column
                </button>`
              : nothing
          }
          <button class="act" @click=${() => this.#about('show-how', id)}>Show how</button>
          <button class="plain" @click=${() => session.bring(at.cell)}>All of ${held.name}</button>
        </div>
      </header>
      ${working ? this.#flight(working) : nothing}
    </section>`;
  }

  #flight(working: Working): TemplateResult {
    const risers = isOnlyGiven(working) ? [] : risersOf(working.steps);
    return html`${
      risers.length === 0
        ? nothing
        : html`<ol class="flight">
            ${risers.map((riser, place) => this.#riser(riser, place))}
          </ol>`
    }
    ${this.#goesInto(working.goesInto)}`;
  }

  #tools(cell: Cell): TemplateResult {
    const { session } = this;
    const { input } = session.door.state(cell.id);
    const what = input.byHand === null ? 'formula' : 'by-hand';
    return html`<div class="tools">
      <button class="act" @click=${() => this.#write(what, cell)}>Change</button>
      ${
        tapeUnder(session.door, cell)
          ? html`<button class="act" @click=${() => session.openTape(cell.id)}>
              Open the tape
            </button>`
          : nothing
      }
      <button class="act" @click=${() => this.#about('show-how', cell.id)}>Show how</button>
      ${
        cell.table
          ? nothing
          : html`<button class="act" @click=${() => this.#watch(cell)}>
              ${session.watched.has(`cell ${cell.id}`) ? 'Let go' : 'Watch'}
            </button>`
      }
      <span class="lesser">
        <button class="plain" @click=${() => this.#write('name', cell)}>Rename</button>
        <button
          class="plain"
          @click=${() => session.write({ kind: 'new-cell', part: cell.part, after: cell.id })}
        >
          Add a cell below
        </button>
        <button
          class="plain"
          @click=${() => {
            this.#say('away');
            duplicate(session, cell.id);
          }}
        >
          Duplicate
        </button>
        <button class="plain" @click=${() => this.#about('moving', cell.id)}>Move</button>
        <button class="plain" @click=${() => this.#about('removing', cell.id)}>Remove</button>
      </span>
    </div>`;
  }

  #riser(riser: Riser, place: number): TemplateResult {
    const [first] = riser.steps;
    const steps = riser.steps.map((step) => this.#step(step, 0));
    const inset = Math.min(place, 5) * 0.7;
    if (place === 0 || riser.name === null || !first) {
      return html`<li
        ${styled({ 'margin-left': `${inset}rem` })}
        data-cell=${riser.cell ?? nothing}
      >
        ${steps}
      </li>`;
    }
    return html`<li ${styled({ 'margin-left': `${inset}rem` })}>
      <details ?open=${place < OPEN_AT_ONCE} data-cell=${riser.cell ?? nothing}>
        <summary><b>${riser.name}</b> <span>${first.result}</span></summary>
        ${steps}
      </details>
    </li>`;
  }

  #step(folded: Step, depth: number): TemplateResult {
    const step = this.opened.get(folded) ?? folded;
    const { parts } = step;
    return html`<div class="step">
      <p class="words">${this.#said(step.said)}</p>
      ${
        step.pieces.length > 0
          ? html`<p class="numbers">
              ${step.pieces.map(({ text, struck }) => (struck ? html`<s>${text}</s>` : text))}
            </p>`
          : nothing
      }
      ${step.note ? html`<p class="beside">${step.note}</p>` : nothing}
      ${step.source ? html`<p class="beside">${step.source}</p>` : nothing}
      ${step.caution ? html`<p class="beside"><b class="caution">Caution.</b> ${step.caution}</p>` : nothing}
      ${
        parts.length > 0
          ? html`<div class="parts">${parts.map((part) => this.#part(part, depth + 1))}</div>`
          : nothing
      }
      ${
        step.open
          ? html`<button class="plain" @click=${() => this.#open(step)}>Go on down</button>`
          : nothing
      }
    </div>`;
  }

  #part(part: Step, depth: number): TemplateResult {
    if (part.name === null) return this.#step(part, depth);
    if (part.parts.length === 0 && part.open === null && part.numbers === '') {
      return html`<p class="given" data-cell=${part.cell ?? nothing}>
        ${this.#link(part.cell, part.name)} <b>${part.result}</b>
        <span class="beside">${part.referredTo ? 'as above' : (part.source ?? '')}</span>
        ${part.caution ? html`<span class="beside"><b class="caution">Caution.</b> ${part.caution}</span>` : nothing}
      </p>`;
    }
    return html`<details ?open=${depth < 2} data-cell=${part.cell ?? nothing}>
      <summary><b>${part.name}</b> <span>${part.result}</span></summary>
      ${this.#step(part, depth)}
    </details>`;
  }

  #said(said: readonly Word[]): unknown {
    return said.map(({ text, cell }) => (cell === null ? text : this.#link(cell, text)));
  }

  #link(cell: CellId | null, text: string): unknown {
    if (cell === null) return html`<span>${text}</span>`;
    return html`<a
      class="tie"
      href="#cell-${cell}"
      @click=${(event: Event) => {
        event.preventDefault();
        this.#unfold(cell);
      }}
      >${text}</a
    >`;
  }

  /** Opens the riser of this cell in place; a cell without one is gone to on the page. */
  #unfold(cell: CellId): void {
    const found = this.renderRoot.querySelector<HTMLElement>(`details[data-cell="${cell}"]`);
    if (!(found instanceof HTMLDetailsElement)) {
      this.session.bring(cell);
      return;
    }
    for (let up: Element | null = found; up; up = up.parentElement) {
      if (up instanceof HTMLDetailsElement) up.open = true;
    }
    found.scrollIntoView({ block: 'nearest' });
    found.querySelector('summary')?.focus();
  }

  #goesInto(into: readonly GoesInto[]): TemplateResult {
    if (into.length === 0) return html`<p class="into">Goes into nothing else yet.</p>`;
    return html`<p class="into">
      Goes into
      ${into.map(
        ({ cell, name }, place) =>
          html`${place === 0 ? '' : place === into.length - 1 ? ' and ' : ', '}<a
              class="tie"
              href="#cell-${cell}"
              @click=${(event: Event) => {
                event.preventDefault();
                this.session.bring(cell);
              }}
              >${name}</a
            >`,
      )}.
      ${this.#further(into)}
    </p>`;
  }

  /** Where what it goes into goes into more in its turn. */
  #further(into: readonly GoesInto[]): TemplateResult | typeof nothing {
    const { worked: chosen, door } = this.session;
    const more = into.some(({ cell }) => door.state(cell).goesInto.length > 0);
    if (chosen === null || !more) return nothing;
    return html`<button class="plain" @click=${() => this.#about('goes-into', chosen)}>
      Follow it further
    </button>`;
  }

  #open(step: Step): void {
    if (step.open) this.opened = new Map([...this.opened, [step, step.open()]]);
  }

  #write(kind: 'formula' | 'by-hand' | 'name', cell: Cell): void {
    this.#say('away');
    // A table has no formula: its rows are written where they stand.
    if (cell.table && kind !== 'name') {
      this.session.bringRow(firstPlace(this.session.door, cell.id), 'goes');
      return;
    }
    this.session.bring(cell.id);
    this.session.write({ kind, cell: cell.id });
  }

  #watch(cell: Cell): void {
    const detail: Result = { of: 'cell', cell: cell.id };
    this.dispatchEvent(new CustomEvent('watch', { detail, bubbles: true, composed: true }));
  }

  #about(sheet: CellSheet, cell: CellId): void {
    this.#say('about', { sheet, cell } satisfies About);
  }

  #say(what: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(what, { detail }));
  }
}

/** Steps without a name go with the named cell above them. */
function risersOf(steps: readonly Step[]): readonly Riser[] {
  const risers: { cell: CellId | null; name: string | null; steps: Step[] }[] = [];
  for (const step of steps) {
    const last = risers.at(-1);
    if (last && step.cell === null) last.steps.push(step);
    else risers.push({ cell: step.cell, name: step.name, steps: [step] });
  }
  return risers;
}

/** A given is its own answer: its source stands among the remarks. */
function isOnlyGiven({ steps }: Working): boolean {
  const [only, second] = steps;
  return !second && only !== undefined && only.parts.length === 0 && only.numbers === '';
}

declare global {
  interface HTMLElementTagNameMap {
    'story-working': StoryWorking;
  }
}
