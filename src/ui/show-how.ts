// Showing how a number came about, on a sheet as large as the screen so that a group can see it: one step at a time from
// the givens up to the result, like marks down a story rod; asked first where one wants that, with fresh numbers to practise.
// Properties: `desk`, `open`, `cell` (of what), `chance` (a seed for fresh numbers). Event, for a person's act: `away`.
import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { proofText } from '../explain/proof.ts';
import type { Working } from '../explain/step.ts';
import { workingOf } from '../explain/working.ts';
import type { CellId } from '../language/tree.ts';
import type { Tried } from '../mistakes/asking.ts';
import { practiceOf } from '../mistakes/practice.ts';
import { asidesOf } from './asides.ts';
import { dayOf, dayShown } from './day-words.ts';
import type { Desk } from './desk.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { Session } from './session.ts';
import { resultsToShow } from './results-to-show.ts';
import { showHowLook } from './show-how-look.ts';
import { showHowPaper } from './show-how-paper.ts';
import { type Move, moveOf, swiped } from './show-how-keys.ts';
import { Showing } from './showing.ts';
import { howItWent, stepShown } from './shown-step.ts';
import { valueSaid } from './value-words.ts';
import { workingPaper } from './working-paper.ts';
import './practice-results.ts';

/** So many marks stand above the step, and so many names of what is still to come below it. */
const MARKS_ABOVE = 4;
const NAMES_BELOW = 3;
/** In pixels, below the end of a step that was scrolled to; and how much of the screen is read at once. */
const END_IN_SIGHT = 24;
const READ_AT_ONCE = 0.8;
/** Short enough to be read out and typed again. */
const GREATEST_SHOWN_SEED = 9999;

@customElement('show-how')
export class ShowHow extends LitElement {
  static override styles = [look, showHowLook, showHowPaper];

  @property({ attribute: false }) desk!: Desk;
  @property({ type: Boolean, reflect: true }) open = false;
  @property({ attribute: false }) cell: CellId | null = null;
  @property({ attribute: false }) chance: () => number = anySeed;
  /** Which result was chosen on the sheet; at first the one that it was opened for. */
  @state() private chosen: CellId | null = null;
  @state() private showing: Showing | null = null;
  @state() private said = '';
  @state() private text = '';
  @state() private leaf: 'steps' | 'results' = 'steps';
  /** On narrow screens what is seldom wanted is folded away. */
  @state() private spread = false;
  @query('dialog') private dialog!: HTMLDialogElement;
  #sitting = '';
  #began = 0;
  #touch: { readonly x: number; readonly y: number } | null = null;

  get session(): Session {
    return this.desk.session;
  }

  constructor() {
    super();
    new Follows(this, 'opened', 'changed');
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!this.open) this.showing = null;
    else if (changed.has('open') || changed.has('cell')) this.#show(this.cell);
    else this.#follow();
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (this.open && !this.dialog.open) this.dialog.showModal();
    else if (!this.open && this.dialog.open) this.dialog.close();
    if (this.open && changed.has('open')) this.#settle();
  }

  protected override render(): TemplateResult {
    return html`<dialog
      aria-label="Show how"
      @close=${this.#away}
      @keydown=${this.#key}
      @touchstart=${this.#touched}
      @touchend=${this.#lifted}
    >
      ${this.open ? this.#inside() : nothing}
    </dialog>`;
  }

  #inside(): TemplateResult {
    const { showing, leaf } = this;
    const { title } = this.session.door.notebook;
    return html`<div class="top">
        <h2>
          ${showing ? html`How ${showing.name} comes about` : 'Show how'}<span class="of"
            >${title}</span
          >
        </h2>
        <button class="plain away" @click=${this.#away}>Put away</button>
        ${this.#tools()}
      </div>
      ${
        leaf === 'results'
          ? html`<div class="stage results">
              <h3 tabindex="-1">What came of being asked</h3>
              <practice-results .desk=${this.desk}></practice-results>
              <button class="act" @click=${() => this.#turn('steps')}>Back to the steps</button>
            </div>`
          : showing
            ? html`${this.#stage(showing)} ${this.#bar(showing)}`
            : html`<div class="stage"><p class="sentence">Choose a result above.</p></div>`
      }
      <p class="heard" role="status">${showing && leaf === 'steps' ? showing.heard() : ''}</p>
      ${guard([showing], () => (showing ? this.#paper(showing) : nothing))}
      ${this.text === '' ? nothing : this.#toCopy(this.text)}`;
  }

  /** What is shown, and how. */
  #tools(): TemplateResult {
    const { showing, spread } = this;
    return html`<button
        class="plain more"
        aria-expanded=${spread ? 'true' : 'false'}
        @click=${() => (this.spread = !spread)}
      >
        ${spread ? 'Less' : 'More'}
      </button>
      <div class="tools" ?data-spread=${spread}>
        <label>Result ${this.#choice()}</label>
        ${
          showing
            ? html`<label class="ask"
                  ><input
                    type="checkbox"
                    .checked=${showing.asks}
                    @change=${({ target }: Event) =>
                      this.#ask((target as HTMLInputElement).checked ? 'first' : 'not')}
                  />
                  Ask first</label
                >
                ${this.#beginning(showing)}
                <form class="fresh" @submit=${this.#freshFrom}>
                  <label
                    >Practice set
                    <input
                      placeholder="any"
                      name="seed"
                      inputmode="numeric"
                      autocomplete="off"
                      aria-describedby="seed-said"
                      .value=${showing.practice ? String(showing.practice.seed) : ''}
                  /></label>
                  <button class="act">${showing.practice ? 'Another' : 'Practise'}</button>
                  <span id="seed-said" class="heard"
                    >Fresh numbers inside the limits of the givens. The same set has the same
                    numbers; empty: any.</span
                  >
                </form>
                ${
                  showing.practice
                    ? html`<button class="plain" @click=${() => this.#show(this.chosen)}>
                        Back to the notebook’s own
                      </button>`
                    : nothing
                }
                <button class="plain" @click=${this.#copy}>Copy the working</button>
                <button class="plain" @click=${() => window.print()}>Print the working</button>`
            : nothing
        }
        <button class="plain" @click=${() => this.#turn('results')}>Results</button>
        ${this.said === '' ? nothing : html`<span class="said" role="status">${this.said}</span>`}
      </div>`;
  }

  #choice(): TemplateResult {
    const { door } = this.session;
    const { chosen } = this;
    return html`<select
      @change=${({ target }: Event) => {
        this.#show(Number((target as HTMLSelectElement).value));
      }}
    >
      ${chosen === null ? html`<option selected disabled>choose one</option>` : nothing}
      ${resultsToShow(door, chosen).map(
        ({ part, cells }) =>
          html`<optgroup label=${part}>
            ${cells.map(
              ({ id, name }) =>
                html`<option value=${id} .selected=${id === chosen}>${name}</option>`,
            )}
          </optgroup>`,
      )}
    </select>`;
  }

  /** A price rests on a hundred steps: one may show the last few alone. */
  #beginning(showing: Showing): TemplateResult | typeof nothing {
    const { beginnings, from, many } = showing;
    if (beginnings.length < 2) return nothing;
    return html`<label
      >Begin
      <select
        @change=${({ target }: Event) => {
          const { value } = target as HTMLSelectElement;
          showing.begin(value === '' ? null : Number(value));
          this.#moved('stay');
        }}
      >
        <option value="" .selected=${from === null}>from the givens, ${many} steps</option>
        ${beginnings.map(
          (each) =>
            html`<option value=${each.from} .selected=${from === each.from}>
              ${sayBeginning(each)}
            </option>`,
        )}
      </select></label
    >`;
  }

  #stage(showing: Showing): TemplateResult {
    const { here, steps, at } = showing;
    const above = steps.slice(Math.max(0, at - MARKS_ABOVE), at);
    const more = at - above.length;
    const below = steps.slice(at + 1, at + 1 + NAMES_BELOW);
    return html`<div class="stage">
      <ol class="rod">
        ${
          more > 0
            ? html`<li class="mark far">
                <button class="plain" @click=${() => this.#move('start')}>
                  ${more} more above
                </button>
              </li>`
            : nothing
        }
        ${above.map(
          (cell) =>
            html`<li class="mark">
              <button @click=${() => this.#goTo(cell)}>
                <span class="value">${showing.asked(cell) ? '?' : showing.result(cell)}</span>
                <span class="name">${this.#nameOf(showing, cell)}</span>
              </button>
            </li>`,
        )}
        <li class="now">
          <article tabindex="-1" aria-labelledby="what">
            ${here === null ? this.#end(showing) : this.#step(showing, here)}
          </article>
        </li>
        ${below.map(
          (cell) =>
            html`<li class="mark to-come">
              <span class="name">${this.#nameOf(showing, cell)}</span>
            </li>`,
        )}
      </ol>
    </div>`;
  }

  #step(showing: Showing, cell: CellId): TemplateResult {
    const acts = { know: this.#know, tried: this.#tried };
    return html`<h3 id="what">
        <span class="heard">${showing.progress}: </span>${this.#nameOf(showing, cell)}
      </h3>
      ${stepShown(showing, cell, acts)}`;
  }

  #end(showing: Showing): TemplateResult {
    return html`<h3 id="what">How it went</h3>
      ${howItWent(showing)}
      <p class="acts">
        <button class="act first" @click=${() => this.#fresh(this.chance())}>
          Again with fresh numbers
        </button>
        <button class="act" @click=${this.#again}>Again with the same</button>
      </p>`;
  }

  #bar(showing: Showing): TemplateResult {
    const { at, last, here, known } = showing;
    const asked = here !== null && showing.asked(here) !== null;
    return html`<div class="bar">
      <button class="act" ?disabled=${at === 0} @click=${() => this.#move('back')}>Back</button>
      <button
        class="act on ${asked ? '' : 'first'}"
        ?disabled=${at === last && !asked}
        @click=${() => this.#move('forward')}
      >
        ${asked ? 'Show it' : 'Go on'}
      </button>
      <span class="progress">${capital(showing.progress)}</span>
      <button class="plain ends" ?disabled=${at === 0} @click=${() => this.#move('start')}>
        Start
      </button>
      <button class="plain ends" ?disabled=${at === last} @click=${() => this.#move('end')}>
        End
      </button>
      ${
        here === null || at >= showing.steps.length - 1
          ? nothing
          : html`<button class="plain" @click=${() => this.#know(here)}>We know this one</button>`
      }
      ${
        known.size === 0
          ? nothing
          : html`<button class="plain" @click=${this.#knowNothing}>
              ${known.size} left out; bring ${known.size === 1 ? 'it' : 'them'} back
            </button>`
      }
    </div>`;
  }

  /** Where the browser lets nothing be copied by a button, the text stands there to be copied by hand. */
  #toCopy(text: string): TemplateResult {
    return html`<form
      class="to-copy"
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        this.text = '';
      }}
    >
      <label>The working as text <textarea readonly rows="8" .value=${text}></textarea></label>
      <button class="act">Done</button>
    </form>`;
  }

  #paper(showing: Showing): TemplateResult {
    const { session, cell } = showing;
    const working = workingOf(session.door, cell);
    const shown = valueSaid(session.door, cell) ?? working.shown;
    return html`<div class="paper">${workingPaper(working, this.#head(showing), shown)}</div>`;
  }

  #head({ session, cell, practice }: Showing) {
    const { title } = session.door.notebook;
    const standing = session.door.state(cell).input.inTable ?? cell;
    const part = session.part(session.cell(standing)?.part ?? '')?.name ?? '';
    const day = dayShown(dayOf(this.desk.now()));
    if (!practice) return { title, part, day };
    return { title: `${title}, practice set ${practice.seed}, fresh numbers`, part, day };
  }

  #nameOf({ session }: Showing, cell: CellId): string {
    return session.door.state(cell).input.name;
  }

  /** The notebook's own numbers, from the first step on. */
  #show(cell: CellId | null): void {
    const { door } = this.session;
    this.chosen = cell;
    this.leaf = 'steps';
    this.said = '';
    this.text = '';
    const stands = cell !== null && door.has(cell);
    const asks = this.showing?.asks === true ? 'first' : 'not';
    this.#begin(stands ? new Showing(this.session, cell, null) : null);
    this.showing?.ask(asks);
  }

  /** Another page wrote in the notebook: what is shown is what stands there now, at the same step. */
  #follow(): void {
    const { showing } = this;
    if (!showing || showing.practice || showing.of === this.session.door.notebook) return;
    const { at } = showing;
    this.#show(this.chosen);
    this.showing?.go(at);
  }

  #begin(showing: Showing | null): void {
    this.showing = showing;
    this.#sitting = this.desk.newId();
    this.#began = this.desk.now();
  }

  #freshFrom = (event: SubmitEvent): void => {
    event.preventDefault();
    const field = (event.currentTarget as HTMLFormElement).elements.namedItem('seed');
    const text = field instanceof HTMLInputElement ? field.value.trim() : '';
    const isOwn = text === String(this.showing?.practice?.seed ?? '');
    if (isOwn) this.#fresh(this.chance());
    else if (/^\d{1,9}$/.test(text)) this.#fresh(Number(text));
    else this.said = 'A practice set is a whole number of up to nine digits; or leave it empty.';
  };

  #fresh(seed: number): void {
    const cell = this.chosen;
    const practice = cell === null ? null : practiceOf(this.session.door.notebook, cell, seed);
    if (!practice) {
      this.said = 'Nothing under this result can be given fresh numbers.';
      return;
    }
    const { estimate } = practice;
    this.said = '';
    const fresh = new Showing(new Session(estimate, asidesOf(estimate)), practice.cell, practice);
    if (this.showing) fresh.knowAsIn(this.showing);
    this.#begin(fresh);
    this.#moved();
  }

  #again = (): void => {
    this.showing?.forgetAnswers();
    this.#begin(this.showing);
    this.#moved();
  };

  #ask(asks: 'first' | 'not'): void {
    this.showing?.ask(asks);
    this.requestUpdate();
  }

  #tried = (tried: Tried): void => {
    this.showing?.answer(tried);
    this.#keep();
    if (tried.cameOut === null) this.requestUpdate();
    else this.#moved('on');
  };

  /** Results are worth little: where they can't be kept nobody is held up. */
  #keep(): void {
    const { title } = this.session.door.notebook;
    const sitting = this.showing?.sitting(this.#sitting, this.#began, title);
    if (!sitting) return;
    void this.desk.practice().then(
      (shelf) => shelf.keep(sitting).catch(() => this.#notKept()),
      () => this.#notKept(),
    );
  }

  #notKept(): void {
    this.said = 'This browser keeps nothing here: the results go with the page.';
  }

  #know = (cell: CellId): void => {
    this.showing?.know(cell);
    this.#moved();
  };

  #knowNothing = (): void => {
    this.showing?.knowNothing();
    this.#moved();
  };

  #goTo(cell: CellId): void {
    this.showing?.goTo(cell);
    this.#moved();
  }

  #move(move: Move): void {
    const { showing } = this;
    if (!showing) return;
    switch (move) {
      case 'forward':
        showing.forward();
        this.#keep();
        break;
      case 'back':
        showing.back();
        break;
      case 'start':
        showing.go(0);
        break;
      case 'end':
        showing.go(showing.last);
        break;
    }
    this.#moved();
  }

  #turn(leaf: 'steps' | 'results'): void {
    this.leaf = leaf;
    void this.updateComplete.then(() => {
      if (leaf === 'results') this.renderRoot.querySelector<HTMLElement>('h3')?.focus();
      else this.#settle();
    });
  }

  #moved(then: 'step' | 'on' | 'stay' = 'step'): void {
    this.requestUpdate();
    void this.updateComplete.then(() => this.#settle(then));
  }

  /**
   * The keyboard goes to the line where something is asked, to what goes on after an answer, else to the step; the step
   * is in sight.
   */
  #settle(then: 'step' | 'on' | 'stay' = 'step'): void {
    const now = this.renderRoot.querySelector<HTMLElement>('.now');
    const asked = this.renderRoot.querySelector('ask-step');
    if (then === 'stay') {
      // What was changed keeps the keyboard.
    } else if (asked && !window.matchMedia('(pointer: coarse)').matches) {
      void asked.updateComplete.then(() => asked.focus());
    } else {
      const to = then === 'on' ? '.on:enabled' : 'article';
      this.renderRoot.querySelector<HTMLElement>(to)?.focus({ preventScroll: true });
    }
    const stage = this.renderRoot.querySelector('.stage');
    if (now && stage) {
      const fits = now.offsetTop + now.offsetHeight <= stage.clientHeight;
      stage.scrollTop = fits ? 0 : now.offsetTop;
    }
  }

  #key = (event: KeyboardEvent): void => {
    const move = this.leaf === 'steps' ? moveOf(event) : null;
    if (!move) return;
    event.preventDefault();
    if (move === 'forward' && this.#readOn()) return;
    this.#move(move);
  };

  /** A step that is longer than the screen is read to its end first: a clicker has no other key for it. */
  #readOn(): boolean {
    const stage = this.renderRoot.querySelector('.stage');
    const end = this.renderRoot.querySelector('.comes, ask-step');
    if (!stage || !end) return false;
    const below = end.getBoundingClientRect().bottom - stage.getBoundingClientRect().bottom;
    if (below <= 1) return false;
    stage.scrollTop += Math.min(below + END_IN_SIGHT, stage.clientHeight * READ_AT_ONCE);
    return true;
  }

  #touched = ({ touches }: TouchEvent): void => {
    const [one, more] = touches;
    this.#touch = one && !more ? { x: one.clientX, y: one.clientY } : null;
  };

  #lifted = ({ changedTouches: [one] }: TouchEvent): void => {
    const from = this.#touch;
    this.#touch = null;
    const move = from && one ? swiped(from, { x: one.clientX, y: one.clientY }) : null;
    if (move && this.leaf === 'steps') this.#move(move);
  };

  #copy = async (): Promise<void> => {
    const { showing } = this;
    if (!showing) return;
    const working: Working = workingOf(showing.session.door, showing.cell);
    const text = proofText(working, this.#head(showing));
    try {
      await navigator.clipboard.writeText(text);
      this.said = 'The working is copied as text.';
    } catch {
      this.said = 'Copy the working from here.';
      this.text = text;
      await this.updateComplete;
      this.renderRoot.querySelector('textarea')?.select();
    }
  };

  #away = (): void => {
    if (this.open) this.dispatchEvent(new CustomEvent('away'));
  };
}

function sayBeginning({ from, many }: { readonly from: number; readonly many: number }): string {
  const steps = many === 1 ? '1 step' : `${many} steps`;
  return from === 0 ? 'with the last step' : `${from} before the last, ${steps}`;
}

function anySeed(): number {
  const [number = 0] = crypto.getRandomValues(new Uint32Array(1));
  return (number % GREATEST_SHOWN_SEED) + 1;
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'show-how': ShowHow;
  }
}
