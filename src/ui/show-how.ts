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
import { showHowLook } from './show-how-look.ts';
import { showHowPaper } from './show-how-paper.ts';
import { showHowStageLook } from './show-how-stage-look.ts';
import { type StageActs, barOf, stageOf } from './show-how-stage.ts';
import { type Tools, toolsOf } from './show-how-tools.ts';
import { type Move, moveOf, swiped } from './show-how-keys.ts';
import { Showing } from './showing.ts';
import { valueSaid } from './value-words.ts';
import { workingPaper } from './working-paper.ts';
import './practice-results.ts';

/** In pixels, below the end of a step that was scrolled to; and how much of the screen is read at once. */
const END_IN_SIGHT = 24;
const READ_AT_ONCE = 0.8;
/** Short enough to be read out and typed again. */
const GREATEST_SHOWN_SEED = 9999;

@customElement('show-how')
export class ShowHow extends LitElement {
  static override styles = [look, showHowLook, showHowStageLook, showHowPaper];

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
        <button
          class="plain more"
          aria-expanded=${this.spread ? 'true' : 'false'}
          @click=${() => (this.spread = !this.spread)}
        >
          ${this.spread ? 'Less' : 'More'}
        </button>
        <div class="tools" ?data-spread=${this.spread}>${toolsOf(this.#tools())}</div>
      </div>
      ${
        leaf === 'results'
          ? html`<div class="stage results">
              <h3 tabindex="-1">What came of being asked</h3>
              <practice-results .desk=${this.desk}></practice-results>
              <button class="act" @click=${() => this.#turn('steps')}>Back to the steps</button>
            </div>`
          : showing
            ? html`${stageOf(showing, this.#acts)} ${barOf(showing, this.#acts)}`
            : html`<div class="stage"><p class="sentence">Choose a result above.</p></div>`
      }
      <p class="heard" role="status">${showing && leaf === 'steps' ? showing.heard() : ''}</p>
      ${guard([showing], () => (showing ? this.#paper(showing) : nothing))}
      ${this.text === '' ? nothing : this.#toCopy(this.text)}`;
  }

  #tools(): Tools {
    return {
      door: this.session.door,
      chosen: this.chosen,
      showing: this.showing,
      said: this.said,
      choose: (cell) => this.#show(cell),
      ask: (asks) => {
        this.showing?.ask(asks);
        this.requestUpdate();
      },
      begin: (from) => {
        this.showing?.begin(from);
        this.#moved('stay');
      },
      practise: (seed) => this.#practise(seed),
      copy: () => void this.#copy(),
      results: () => this.#turn('results'),
    };
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

  /** The same number again asks for another set. */
  #practise(seed: string): void {
    if (seed === String(this.showing?.practice?.seed ?? '')) this.#fresh(this.chance());
    else if (/^\d{1,9}$/.test(seed)) this.#fresh(Number(seed));
    else this.said = 'A practice set is a whole number of up to nine digits; or leave it empty.';
  }

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

  #tried(tried: Tried): void {
    this.showing?.answer(tried);
    this.#keep();
    if (tried.cameOut === null) this.requestUpdate();
    else this.#moved('on');
  }

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

  readonly #acts: StageActs = {
    move: (move) => this.#move(move),
    goTo: (cell) => {
      this.showing?.goTo(cell);
      this.#moved();
    },
    know: (cell) => {
      this.showing?.know(cell);
      this.#moved();
    },
    knowNothing: () => {
      this.showing?.knowNothing();
      this.#moved();
    },
    tried: (tried) => this.#tried(tried),
    again: (numbers) => {
      if (numbers === 'fresh') {
        this.#fresh(this.chance());
        return;
      }
      this.showing?.forgetAnswers();
      this.#begin(this.showing);
      this.#moved();
    },
  };

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

function anySeed(): number {
  const [number = 0] = crypto.getRandomValues(new Uint32Array(1));
  return (number % GREATEST_SHOWN_SEED) + 1;
}

declare global {
  interface HTMLElementTagNameMap {
    'show-how': ShowHow;
  }
}
