// One step that is asked before it is shown: a line for the answer, and what was wrong with it.
// Properties: `session` (whose estimate is asked), `step`, `tried`. Event, for a person's act: `tried` with what came of it.
import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { type Tried, afterAnswer, howAsked } from '../mistakes/asking.ts';
import {
  type AskedStep,
  type Diagnosis,
  type FoundMistake,
  diagnose,
} from '../mistakes/diagnose.ts';
import { MISTAKES_SAID } from '../mistakes/named.ts';
import { askLook } from './ask-look.ts';
import { look } from './look.ts';
import type { Session } from './session.ts';

/** Cells that are named as where it may have gone wrong; more would tell nothing. */
const NAMED_AT_MOST = 3;

@customElement('ask-step')
export class AskStep extends LitElement {
  static override styles = [look, askLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) step!: AskedStep;
  @property({ attribute: false }) tried!: Tried;
  /** Of the answer given last: as it was typed, and what is to be said of it. */
  @state() private last: { readonly text: string; readonly diagnosis: Diagnosis } | null = null;
  @query('input') private input!: HTMLInputElement;

  override focus(): void {
    this.input.focus();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('step');
    if (changed.has('step') && before?.cell !== this.step.cell) this.last = null;
  }

  protected override updated(changed: PropertyValues<this>): void {
    const before = changed.get('step');
    if (before && before.cell !== this.step.cell) this.input.value = '';
  }

  protected override render(): TemplateResult {
    const { session, step, last } = this;
    const { name } = session.door.state(step.cell).input;
    const { exact, bare } = howAsked(session.door, step);
    const wrong = last !== null;
    return html`<form @submit=${this.#answered}>
      <label for="answer">What does <b>${name}</b> come to?</label>
      <div class="line">
        <input
          id="answer"
          name="answer"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          enterkeyhint="done"
          aria-describedby="how said"
          aria-invalid=${wrong ? 'true' : 'false'}
        />
        <button class="act first">Answer</button>
      </div>
      <p id="how" class="how">
        ${capital(exact)}, in any unit that
        fits${bare === null ? '.' : `; a number alone is read as ${unitSaid(bare)}.`}
      </p>
      <div id="said" role="alert">${last ? this.#told(last.text, last.diagnosis) : nothing}</div>
    </form>`;
  }

  #told(text: string, diagnosis: Diagnosis): unknown {
    switch (diagnosis.kind) {
      case 'right':
      case 'nothing-to-ask':
        return nothing;
      case 'unread':
        return html`<p>
          “${text}” can’t be read as an amount. Write a number, with a unit if you like: 12, 3 ft 4
          in, $48.50.
        </p>`;
      case 'wrong':
        return this.#wrong(text, diagnosis.mistakes);
    }
  }

  #wrong(text: string, mistakes: readonly FoundMistake[]): TemplateResult {
    const again = this.tried.answers.length > 1;
    const onwards = again
      ? html`<p class="how">Try once more, or let it be shown.</p>`
      : html`<p class="how">Try once more.</p>`;
    if (mistakes.length === 0) {
      return html`<p>
          <b>Not yet.</b> No usual mistake comes to “${text}”. Look at what goes in, and at its
          units.
        </p>
        ${onwards}`;
    }
    const [only, more] = mistakes;
    if (only && !more) {
      return html`<p><b>Not yet.</b> “${text}” looks like ${this.#named(only)}. ${only.hint}</p>
        ${onwards}`;
    }
    return html`<p>
        <b>Not yet.</b> ${mistakes.length === 2 ? 'Two' : capital(String(mistakes.length))} mistakes
        come to “${text}”:
      </p>
      <ul>
        ${mistakes.map((each) => html`<li>${capital(this.#named(each))}. ${each.hint}</li>`)}
      </ul>
      ${onwards}`;
  }

  #named({ mistake, of }: FoundMistake): string {
    const { door } = this.session;
    const names = [...new Set(of.map((cell) => door.state(cell).input.name))];
    const said = MISTAKES_SAID[mistake];
    if (names.length === 0 || names.length > NAMED_AT_MOST) return said;
    return `${said} (${names.join(' or ')})`;
  }

  #answered = (event: SubmitEvent): void => {
    event.preventDefault();
    const text = this.input.value.trim();
    if (text === '') return;
    const diagnosis = diagnose(
      this.session.door,
      this.step,
      text,
      howAsked(this.session.door, this.step).half,
    );
    this.last = { text, diagnosis };
    if (diagnosis.kind !== 'right') this.input.select();
    const detail = afterAnswer(this.tried, text, diagnosis);
    this.dispatchEvent(new CustomEvent('tried', { detail }));
  };
}

/** `$` is a number of dollars; other units are their own names. */
function unitSaid(unit: string): string {
  return unit === '$' ? 'dollars' : unit;
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'ask-step': AskStep;
  }
}
