// What would it take: what a given must be for the result to come to a target that is typed, and what else that would
// change; an answer that gives the target exactly can be put in.
// Properties: `session`, `result`, `shown`. Event, for a person's act: `goes` with the cell that was chosen.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import { givensOf } from '../moves-it/givens.ts';
import {
  type Answer,
  type LookedBetween,
  type Span,
  type Taken,
  whatWouldItTake,
} from '../moves-it/would-take.ts';
import { JOB_PRICE, withTotals } from '../moves-it/whole-job.ts';
import type { Notebook } from '../notebook/document.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { movesLook } from './moves-look.ts';
import { alsoSaid } from './also-said.ts';
import { putIn, writtenIn } from './put-in.ts';
import { NearAmounts } from './near-amounts.ts';
import type { Session } from './session.ts';

/** More answers than this are not told one by one. */
const MOST = 8;

@customElement('moves-take')
export class MovesTake extends LitElement {
  static override styles = [look, movesLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) result: CellId = JOB_PRICE;
  @property({ type: Boolean }) shown = false;
  @state() private given: CellId | null = null;
  @state() private target = '';
  @state() private low = '';
  @state() private high = '';
  @state() private told = '';
  @state() private taken: Taken | null = null;
  /** The notebook as it was left by what was put in. */
  @state() private putIn: Notebook | null = null;
  /** What `taken` is of: another notebook, given or result makes it old. */
  #of: { readonly notebook: Notebook; readonly given: CellId; readonly result: CellId } | null =
    null;

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  protected override render(): TemplateResult {
    if (!this.shown) return html``;
    const job = withTotals(this.session.door);
    const name = this.#resultName();
    const words = new NearAmounts(job, this.result);
    const givens = givensOf(job, this.result);
    if (givens.length === 0) return html`<p>${name} rests on no given that is a number.</p>`;
    const given = this.given !== null && givens.includes(this.given) ? this.given : givens[0];
    const own = new NearAmounts(job, given);
    return html`
      <form class="take" @submit=${(event: Event) => this.#work(event, given)}>
        <label for="given">What must</label>
        <select
          id="given"
          @change=${(event: Event) => {
            this.given = Number((event.currentTarget as HTMLSelectElement).value);
            this.taken = null;
          }}
        >
          ${this.#options(givens, given)}
        </select>
        <span>be (now ${own.shown})</span>
        <label for="target">for ${name} to be</label>
        <input
          id="target"
          class="amount"
          autocomplete="off"
          placeholder=${words.shown}
          .value=${this.target}
          @input=${(event: Event) => (this.target = valueOf(event))}
        />
        <button class="act first">Work it out</button>
        <details class="between">
          <summary>Look between two amounts of your own</summary>
          <div class="asks">
            <label for="low">From</label>
            <input
              id="low"
              class="amount"
              autocomplete="off"
              .value=${this.low}
              @input=${(event: Event) => (this.low = valueOf(event))}
            />
            <label for="high">to</label>
            <input
              id="high"
              class="amount"
              autocomplete="off"
              .value=${this.high}
              @input=${(event: Event) => (this.high = valueOf(event))}
            />
          </div>
        </details>
      </form>
      <div class="found" role="status">
        ${this.told === '' ? nothing : html`<p>${this.told}</p>`} ${this.#undoing()}
        ${this.#isOld(given) || !this.taken ? nothing : this.#found(this.taken, given)}
      </div>
    `;
  }

  #options(givens: readonly CellId[], chosen: CellId): TemplateResult[] {
    const { session } = this;
    const parts = new Map<string, CellId[]>();
    for (const cell of givens) {
      const { part } = session.door.state(cell).input;
      parts.set(part, [...(parts.get(part) ?? []), cell]);
    }
    // In the order of the page.
    const inOrder = session.door.notebook.parts.filter(({ key }) => parts.has(key));
    return inOrder.map(
      ({ key, name }) =>
        html`<optgroup label=${name || 'Before the first part'}>
          ${(parts.get(key) ?? []).map(
            (cell) =>
              html`<option value=${cell} ?selected=${cell === chosen}>
                ${session.door.state(cell).input.name}
              </option>`,
          )}
        </optgroup>`,
    );
  }

  #work(event: Event, given: CellId): void {
    event.preventDefault();
    const { result, target } = this;
    this.told = '';
    if (target.trim() === '') {
      this.taken = null;
      this.told = `Say what ${this.#resultName()} is to come to.`;
      return;
    }
    const [low, high] = [this.low.trim(), this.high.trim()];
    const job = withTotals(this.session.door);
    const between = low !== '' && high !== '' ? { between: [low, high] as const } : {};
    if ((low === '') !== (high === '')) this.told = 'One end alone was left aside: give both.';
    this.taken = whatWouldItTake(job, { given, result, target, ...between });
    this.#of = { notebook: job.notebook, given, result };
  }

  #isOld(given: CellId): boolean {
    const { notebook } = this.session.door;
    const of = this.#of;
    return of?.notebook !== notebook || of.given !== given || of.result !== this.result;
  }

  #found(taken: Taken, given: CellId): TemplateResult {
    switch (taken.kind) {
      case 'refused':
        return html`<p class="trouble">${taken.why}</p>`;
      case 'none':
        return this.#none(taken, given);
      case 'met':
        return this.#met(taken, given);
    }
  }

  #none(
    { target, under, over, looked }: Extract<Taken, { readonly kind: 'none' }>,
    given: CellId,
  ): TemplateResult {
    const name = this.#givenName(given);
    return html`<p class="main">No amount of ${name} gives exactly ${target}.</p>
      <p>${lookedSaid(looked)} The nearest:</p>
      <ul class="plain-list">
        ${under ? this.#nearest(under, given, 'less') : nothing}
        ${over ? this.#nearest(over, given, 'more') : nothing}
        ${under || over ? nothing : html`<li>there is none that has a value.</li>`}
      </ul>`;
  }

  /** What it comes to is said before it is put in. */
  #nearest(answer: Answer, given: CellId, side: 'less' | 'more'): TemplateResult {
    return html`<li>
      ${answer.shown} comes to ${answer.comesTo}, ${side}. ${this.#end(answer, given, 'put in')}
    </li>`;
  }

  #met(
    { answers, looked }: Extract<Taken, { readonly kind: 'met' }>,
    given: CellId,
  ): TemplateResult {
    const name = this.#givenName(given);
    const told = answers.slice(0, MOST);
    const many =
      answers.length === 1
        ? nothing
        : html`<p>
            There are ${answers.length}
            answers${answers.length > MOST ? `; the first ${MOST}` : ''}:
          </p>`;
    return html`${many}
      <ul class="answers">
        ${told.map((span) => this.#answer(span, given, name))}
      </ul>
      <p class="small">${lookedSaid(looked)}</p>`;
  }

  #answer(span: Span, given: CellId, name: string): TemplateResult {
    const { from, to, beside, meets } = span;
    const one = from.value.eq(to.value);
    const ends = one ? [from] : [from, to];
    return html`<li>
      <p class="main">
        ${
          one
            ? `${name} has to be ${from.shown}.`
            : `${name} may be anything from ${from.shown} to ${to.shown}.`
        }
      </p>
      ${
        meets === 'exactly'
          ? nothing
          : html`<p>
              Shown it is ${from.comesTo}, but no amount that can be written gives it to the last
              digit, so it is not put
              in${beside.length === 0 ? '' : '; what stands beside it can be'}.
            </p>`
      }
      ${
        beside.length === 0
          ? nothing
          : html`<p class="small">
              On a mark beside it:
              ${beside.map(({ shown, comesTo }) => `${shown} comes to ${comesTo}`).join('; ')}.
            </p>`
      }
      ${ends.map((end) => this.#end(end, given, meets === 'exactly' ? 'put in' : 'only told'))}
      ${meets === 'exactly' ? nothing : beside.map((mark) => this.#end(mark, given, 'put in'))}
    </li>`;
  }

  #end(answer: Answer, given: CellId, way: 'put in' | 'only told'): TemplateResult {
    const { session } = this;
    const written = way === 'put in' ? writtenIn(session.door, given, answer) : null;
    return html`<div class="end">
      ${
        written
          ? html`<button class="act" @click=${() => void this.#put(given, written.formula, answer)}>
              Put in ${answer.formula}
            </button>`
          : nothing
      }
      ${alsoSaid(session, given, answer.value, written?.losesRange ? 'range goes' : 'range stays')}
    </div>`;
  }

  /** As long as what was put in is what undo would take back. */
  #undoing(): TemplateResult | typeof nothing {
    const { session } = this;
    if (this.putIn === null || session.door.notebook !== this.putIn) return nothing;
    return html`<button
      class="act undo"
      @click=${() => {
        this.told = '';
        this.putIn = null;
        session.undo();
        this.renderRoot.querySelector<HTMLElement>('#target')?.focus();
      }}
    >
      Undo
    </button>`;
  }

  async #put(given: CellId, formula: string, answer: Answer): Promise<void> {
    const { session } = this;
    const name = this.#givenName(given);
    if (!putIn(session, given, formula)) {
      this.told = session.notice?.text ?? '';
      return;
    }
    this.told = `Put in: ${name} is ${answer.shown}, and ${this.#resultName()} ${answer.comesTo}.`;
    this.putIn = session.door.notebook;
    // The button that was pressed is gone.
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.undo')?.focus();
  }

  #givenName(given: CellId): string {
    return this.session.door.state(given).input.name;
  }

  #resultName(): string {
    const { name } = withTotals(this.session.door).state(this.result).input;
    return this.result < 0 ? `the ${name.charAt(0).toLowerCase()}${name.slice(1)}` : name;
  }
}

function lookedSaid({ low, high, because }: LookedBetween): string {
  const between = `It was looked for from ${low} to ${high}`;
  switch (because) {
    case 'asked':
      return `${between}, as you asked.`;
    case 'sensible':
      return `${between}, what is sensible for it.`;
    case 'range':
      return `${between}, its range.`;
    case 'around':
      return `${between}, around what it is now.`;
  }
}

function valueOf(event: Event): string {
  return (event.currentTarget as HTMLInputElement).value;
}

declare global {
  interface HTMLElementTagNameMap {
    'moves-take': MovesTake;
  }
}
