// How sure: 20,000 trials over the ranges of the givens, in plain words, as a curve and as figures; a budget and a certainty
// can be typed; the seed is shown.
// Properties: `session`, `asked`, `result`, `shown`. Event, for a person's act: `goes` with the cell that was chosen.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import {
  type Sample,
  chancePassing,
  chanceWithin,
  contingencyFor,
  deviationOf,
  meanOf,
  quantile,
} from '../moves-it/curve.ts';
import { GREATEST_SEED } from '../moves-it/draws.ts';
import { readFor } from '../moves-it/putting.ts';
import { placeIn } from '../moves-it/questions.ts';
import { rangedAmong } from '../moves-it/trials.ts';
import { JOB_PRICE, withTotals } from '../moves-it/whole-job.ts';
import type { Notebook } from '../notebook/document.ts';
import { Dec } from '../quantity/decimal.ts';
import { percentSaid, timesIn } from './chance-words.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { MeasuredWidth } from './measured-width.ts';
import type { MovesAsked } from './moves-asked.ts';
import { movesLook } from './moves-look.ts';
import { NearAmounts } from './near-amounts.ts';
import type { Session } from './session.ts';
import { CURVE_HEIGHT, sureCurve } from './sure-curve.ts';
import './moves-ties.ts';

export const TRIALS = 20_000;

const SHARES = [0.05, 0.1, 0.25, 0.5, 0.75, 0.8, 0.9, 0.95];

@customElement('moves-sure')
export class MovesSure extends LitElement {
  static override styles = [look, movesLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) asked!: MovesAsked;
  @property({ attribute: false }) result: CellId = JOB_PRICE;
  @property({ type: Boolean }) shown = false;
  @state() private sample: Sample | null = null;
  @state() private seed = '1';
  @state() private budget = '';
  @state() private certainty = '80';
  #of: { readonly notebook: Notebook; readonly result: CellId; readonly seed: number } | null =
    null;
  readonly #curve = new MeasuredWidth(this, '.curve-paper', 560);

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  protected override willUpdate(): void {
    const { notebook } = this.session.door;
    const seed = seedOf(this.seed);
    const was = this.#of;
    const known = was?.notebook === notebook && was.result === this.result && was.seed === seed;
    if (!this.shown || known || seed === null) return;
    if (was?.result !== this.result) {
      this.sample = null;
      this.budget = '';
    }
    this.#of = { notebook, result: this.result, seed };
    void this.#ask(seed);
  }

  async #ask(seed: number): Promise<void> {
    const job = withTotals(this.session.door);
    const of = this.#of;
    const answer = await this.asked.ask(
      job,
      { kind: 'trials', result: placeIn(job, this.result), trials: TRIALS, seed },
      () => {},
    );
    if (answer?.kind !== 'trials' || this.#of !== of) return;
    this.sample = { sorted: answer.sorted, none: answer.none };
  }

  protected override render(): TemplateResult {
    const { sample } = this;
    const job = withTotals(this.session.door);
    const words = new NearAmounts(job, this.result);
    const ranged = rangedAmong(job, [this.result, ...job.reach([this.result], 'down')]);
    if (ranged.length === 0) return this.#withoutRanges();
    if (!sample || words.now === null)
      return html`<p class="soon" role="status">
        Drawing ${TRIALS.toLocaleString('en-US')} trials …
      </p>`;
    if (sample.sorted.length === 0)
      return html`<p>In none of the trials does it have a value: look at the ranges below.</p>
        ${this.#ties()}`;
    return html`${this.#told(sample, words, words.now)} ${this.#ties()}`;
  }

  #told(sample: Sample, words: NearAmounts, now: number): TemplateResult {
    const name = this.#name();
    const say = (share: number): string => words.say(quantile(sample, share));
    const certainty = certaintyOf(this.certainty);
    return html`
      <div class="sure">
        <div class="said" aria-live="polite">
          <p class="main">${timesIn(0.8)} ${name} stays under ${say(0.8)}.</p>
          <ul class="plain-list">
            <li>Half the time it stays under ${say(0.5)}, the median.</li>
            <li>Eight times in ten it lies between ${say(0.1)} and ${say(0.9)}.</li>
            <li>Nine times in ten it lies between ${say(0.05)} and ${say(0.95)}.</li>
            <li>
              As it stands, ${words.shown}, it is enough in
              ${percentSaid(chanceWithin(sample, now))} of the trials.
            </li>
            ${
              sample.none === 0
                ? nothing
                : html`<li class="trouble">
                    In ${sample.none.toLocaleString('en-US')} trials it has no value; the figures
                    leave these out.
                  </li>`
            }
          </ul>
          ${this.#budget(sample, words)} ${this.#contingency(sample, words, now, certainty)}
        </div>
        <figure class="curve-paper">
          <svg
            role="img"
            aria-label=${this.#curveSaid(sample, words)}
            viewBox="0 0 ${this.#curve.width} ${CURVE_HEIGHT}"
            width="100%"
          >
            ${sureCurve(sample, this.#curve.width, {
              now,
              enough: quantile(sample, certainty ?? 0.8),
              budget: this.#budgetIn(words),
              say: (value) => words.say(value),
            })}
          </svg>
          <figcaption class="small">
            How often each amount came out. Hatched: what ${Math.round((certainty ?? 0.8) * 100)}
            trials in 100 stay under.
          </figcaption>
        </figure>
      </div>
      ${this.#figures(sample, words)}
    `;
  }

  #budget(sample: Sample, words: NearAmounts): TemplateResult {
    const read = this.#budgetRead();
    const amount = this.#budgetIn(words);
    return html`<div class="asks">
      <label for="budget">Budget</label>
      <input
        id="budget"
        class="amount"
        autocomplete="off"
        placeholder=${words.shown}
        aria-invalid=${read?.kind === 'refused' ? 'true' : 'false'}
        aria-describedby="budget-said"
        .value=${this.budget}
        @input=${(event: Event) => (this.budget = valueOf(event))}
      />
      <span id="budget-said"
        >${
          read?.kind === 'refused'
            ? html`<span class="trouble">${read.why}</span>`
            : amount === null
              ? 'Type one to see how often it is passed.'
              : html`is passed in <strong>${percentSaid(chancePassing(sample, amount))}</strong> of
                  the trials.`
        }</span
      >
    </div>`;
  }

  #contingency(
    sample: Sample,
    words: NearAmounts,
    now: number,
    certainty: number | null,
  ): TemplateResult {
    const found = certainty === null ? null : contingencyFor(sample, now, certainty);
    const share =
      found && found.share !== null ? html` (${Math.round(found.share * 1000) / 10}%)` : nothing;
    return html`<div class="asks">
      <label for="certainty">To be this certain, %</label>
      <input
        id="certainty"
        class="few"
        inputmode="decimal"
        autocomplete="off"
        aria-invalid=${certainty === null ? 'true' : 'false'}
        aria-describedby="certainty-said"
        .value=${this.certainty}
        @input=${(event: Event) => (this.certainty = valueOf(event))}
      />
      <span id="certainty-said"
        >${
          !found
            ? html`<span class="trouble">A number from 1 to 99.</span>`
            : found.amount === 0
              ? 'nothing has to be set aside: as it stands is enough.'
              : html`set <strong>${words.say(found.amount)}</strong>${share} aside beside what
                  stands now.`
        }</span
      >
    </div>`;
  }

  #figures(sample: Sample, words: NearAmounts): TemplateResult {
    return html`<details class="figures">
      <summary>Figures</summary>
      <table aria-label="What trials stay under">
        <thead>
          <tr>
            <th scope="col">of the trials</th>
            ${SHARES.map((share) => html`<th scope="col">${share * 100}%</th>`)}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">stay under</th>
            ${SHARES.map(
              (share) =>
                html`<td data-label="${share * 100}%">${words.say(quantile(sample, share))}</td>`,
            )}
          </tr>
        </tbody>
      </table>
      <p>
        Mean ${words.say(meanOf(sample))}, standard deviation ${words.say(deviationOf(sample))},
        from ${words.say(sample.sorted[0])} to
        ${words.say(sample.sorted[sample.sorted.length - 1])}.
      </p>
      <div class="asks">
        <label for="seed">Seed</label>
        <input
          id="seed"
          class="amount"
          inputmode="numeric"
          autocomplete="off"
          aria-invalid=${seedOf(this.seed) === null ? 'true' : 'false'}
          aria-describedby="seed-said"
          .value=${this.seed}
          @input=${(event: Event) => (this.seed = valueOf(event))}
        />
        <span id="seed-said"
          >${
            seedOf(this.seed) === null
              ? html`<span class="trouble">A whole number from 0 on.</span>`
              : `${TRIALS.toLocaleString('en-US')} trials; the same seed gives the same figures, here and anywhere. With another seed you see how much of them is chance.`
          }</span
        >
      </div>
    </details>`;
  }

  #withoutRanges(): TemplateResult {
    return html`<p class="main">No given that ${this.#name()} rests on has a range.</p>
      <p>
        So there is nothing to be unsure of, on paper. Give the ones you would not bet on a best and
        a worst beside what you expect:
      </p>
      <dl class="ways">
        <dt>12 hours, 10 at best, 16 at worst</dt>
        <dd>most likely what you expect, never beyond the ends</dd>
        <dt>10 to 16 hours</dt>
        <dd>anything between, each as likely</dd>
      </dl>
      <p>What matters tells which of them are worth the thought.</p>`;
  }

  #ties(): TemplateResult {
    return html`<moves-ties
      .session=${this.session}
      .result=${this.result}
      @goes=${(event: CustomEvent<CellId>) =>
        this.dispatchEvent(new CustomEvent('goes', { detail: event.detail }))}
    ></moves-ties>`;
  }

  #budgetRead() {
    if (this.budget.trim() === '') return null;
    return readFor(withTotals(this.session.door), this.result, this.budget);
  }

  /** In the unit that the result is shown in; null where none can be read. */
  #budgetIn(words: NearAmounts): number | null {
    const read = this.#budgetRead();
    if (read?.kind !== 'value' || !(read.value instanceof Dec)) return null;
    return read.value.toNumber() * (words.unit?.factor ?? 1);
  }

  #name(): string {
    const { name } = withTotals(this.session.door).state(this.result).input;
    return this.result < 0 ? `the ${name.charAt(0).toLowerCase()}${name.slice(1)}` : name;
  }

  #curveSaid(sample: Sample, words: NearAmounts): string {
    const { sorted } = sample;
    const say = (share: number): string => words.say(quantile(sample, share));
    return `Curve of ${TRIALS.toLocaleString('en-US')} trials from ${words.say(sorted[0])} to ${words.say(sorted[sorted.length - 1])}: one in ten under ${say(0.1)}, half under ${say(0.5)}, four in five under ${say(0.8)}, nine in ten under ${say(0.9)}.`;
  }
}

/** Null where it is none. */
function seedOf(text: string): number | null {
  const seed = /^\d{1,16}$/.test(text.trim()) ? Number(text) : NaN;
  return seed <= GREATEST_SEED ? seed : null;
}

/** 0.01 to 0.99; null where it is none. */
function certaintyOf(text: string): number | null {
  const percent = /^\d{1,2}(\.\d+)?\s*%?$/.test(text.trim()) ? parseFloat(text) : NaN;
  return percent >= 1 && percent <= 99 ? percent / 100 : null;
}

function valueOf(event: Event): string {
  return (event.currentTarget as HTMLInputElement).value;
}

declare global {
  interface HTMLElementTagNameMap {
    'moves-sure': MovesSure;
  }
}
