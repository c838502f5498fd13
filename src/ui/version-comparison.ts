// Two versions side by side: what the totals did and why, as a stair and as a table whose pieces add up to the cent, then
// what changed part by part, and the change order that can be made of it.
// Properties: `binder`, `from`, `to` (seals; null is the notebook as it stands).
// Events, for a person's act: `compare` with two other seals, `ordered` with the number of the change order made.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { type Comparison, compare } from '../versions/compare.ts';
import { sayMethod, stepsOf } from '../versions/say-change.ts';
import { holdingToo } from '../versions/held-twice.ts';
import type { TotalOf } from '../versions/world.ts';
import { weighing } from '../versions/why-moved.ts';
import type { Binder } from './binder.ts';
import { comparisonLook } from './comparison-look.ts';
import { comparedParts } from './compared-parts.ts';
import { look } from './look.ts';
import { money, moreOrLess, signedMoney } from './money-words.ts';
import { type Compared, written } from './snapshot-list.ts';
import { snapshotsLook } from './snapshots-look.ts';
import { stairLook } from './stair-look.ts';
import { kindSums } from './why-kinds.ts';
import { type Weighed, whyWeighed } from './why-weighed.ts';

/** Weighed so long in one go; the page draws in between. */
const MILLISECONDS = 24;

@customElement('version-comparison')
export class VersionComparison extends LitElement {
  static override styles = [look, snapshotsLook, stairLook, comparisonLook];

  @property({ attribute: false }) binder!: Binder;
  @property({ attribute: false }) from: string | null = null;
  @property({ attribute: false }) to: string | null = null;
  @state() private told: Weighed | null = null;
  @state() private of: TotalOf = 'price';
  @state() private trouble = '';
  #comparison: Comparison | null = null;
  /** Which weighing is under way: an older one stops. */
  #turn = 0;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#turn++;
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('from') || changed.has('to') || changed.has('binder')) {
      this.#comparison = compare(this.binder.version(this.from), this.binder.version(this.to));
    } else if (!changed.has('of')) return;
    this.told = null;
    if (this.#comparison) void this.#weigh(this.#comparison, this.of);
  }

  protected override render(): TemplateResult {
    const comparison = this.#comparison;
    if (!comparison) return html``;
    const { before, after, currencies, incomplete } = comparison;
    return html`
      ${this.#picking()}
      <p class="print-only">From ${before.name} to ${after.name}</p>
      ${
        currencies
          ? html`<p class="trouble">
              ${before.name} is in ${currencies[0]}, ${after.name} in ${currencies[1]}: their totals
              can’t be taken from one another.
            </p>`
          : this.#totals(comparison)
      }
      ${
        incomplete
          ? html`<p class="tell">
              Lines without a value are left out of one of the totals, or of both.
            </p>`
          : nothing
      }
      ${currencies ? nothing : this.#why(comparison)}
      <h3>What changed, part by part</h3>
      ${comparedParts(comparison)} ${currencies ? nothing : this.#ordering()}
    `;
  }

  #picking(): TemplateResult {
    const { snapshots } = this.binder.versions;
    const choice = (label: string, now: string | null, pick: (seal: string | null) => Compared) =>
      html`<label
        >${label}
        <select
          @change=${(event: Event) => {
            const { value } = event.currentTarget as HTMLSelectElement;
            this.#compare(pick(value === '' ? null : value));
          }}
        >
          ${snapshots.map(
            ({ seal, name }) =>
              html`<option value=${seal} .selected=${seal === now}>${name}</option>`,
          )}
          <option value="" .selected=${now === null}>the notebook as it stands now</option>
        </select>
      </label>`;
    const { from, to } = this;
    return html`<div class="fields">
      ${choice('From', from, (seal) => ({ from: seal, to }))}
      ${choice('to', to, (seal) => ({ from, to: seal }))}
      <button class="act" @click=${() => this.#compare({ from: to, to: from })}>Swap them</button>
    </div>`;
  }

  #totals({ before, after, price, direct }: Comparison): TemplateResult {
    const { currency } = after.estimate.notebook.settings;
    const line = (name: string, of: typeof price) =>
      html`<tr>
        <th scope="row">${name}</th>
        <td class="n">${money(of.before, currency)}</td>
        <td class="n">${money(of.after, currency)}</td>
        <td class="n by">${signedMoney(of.difference, currency)}</td>
      </tr>`;
    return html`<div class="sideways">
      <table class="totals">
        <thead>
          <tr>
            <th scope="col"><span class="heard">Which total</span></th>
            <th scope="col" class="n">${before.name}</th>
            <th scope="col" class="n">${after.name}</th>
            <th scope="col" class="n">difference</th>
          </tr>
        </thead>
        <tbody>
          ${line('price', price)} ${line('direct cost', direct)}
        </tbody>
      </table>
    </div>`;
  }

  #why(comparison: Comparison): TemplateResult {
    const { told } = this;
    const { before, after } = comparison;
    const { currency } = after.estimate.notebook.settings;
    const amounts = comparison[this.of];
    const by = moreOrLess(amounts.after, amounts.before, currency);
    const name = this.of === 'price' ? 'price' : 'direct cost';
    return html`<h3>
        ${by === null ? `Why the ${name} did not move` : `Why the ${name} is ${by}`}
      </h3>
      <div class="acts">
        ${(['price', 'direct'] as const).map(
          (of) =>
            html`<button
              class="act"
              aria-pressed=${this.of === of ? 'true' : 'false'}
              @click=${() => (this.of = of)}
            >
              ${of === 'price' ? 'of the price' : 'of the direct cost'}
            </button>`,
        )}
      </div>
      <p class="tell" role="status">
        ${told ? sayMethod(told.why) : 'Weighing each change against the others …'}
      </p>
      ${told ? whyWeighed(told, [before.name, after.name], amounts, currency) : nothing}`;
  }

  #ordering(): TemplateResult {
    return html`<form class="ordering" @submit=${this.#order}>
      <h3>Make a change order of it</h3>
      ${this.#heldAlready()}
      <div class="fields">
        <label class="wide"
          >Reason, as whoever signs will read it
          <input name="reason" required autocomplete="off" />
        </label>
        <button class="act" value="asked">It was asked for</button>
        <button class="act first" value="priced">It is priced so</button>
      </div>
      ${this.trouble ? html`<p class="trouble" role="alert">${this.trouble}</p>` : nothing}
    </form>`;
  }

  /** Orders that would count some of this as well, and where the last of them ended. */
  #heldAlready(): TemplateResult | typeof nothing {
    const { snapshots, orders } = this.binder.versions;
    const ends = { from: { seal: this.from }, to: { seal: this.to } };
    const seals = snapshots.map(({ seal }) => seal);
    const last = holdingToo(ends, orders, seals).at(-1);
    if (!last) return nothing;
    const { number, to } = last;
    const next = this.binder.snapshot(to.seal);
    return html`<p class="trouble">
        Change order ${number} holds changes from here already. Where both are approved, the
        contract counts them twice.
      </p>
      ${
        next === null || next.seal === this.to
          ? nothing
          : html`<button
              type="button"
              class="act"
              @click=${() => this.#compare({ from: next.seal, to: this.to })}
            >
              Start from ${next.name} instead, where it ended
            </button>`
      }`;
  }

  #order = (event: SubmitEvent): void => {
    event.preventDefault();
    const comparison = this.#comparison;
    if (!comparison) return;
    const form = event.currentTarget as HTMLFormElement;
    const pressed = event.submitter instanceof HTMLButtonElement ? event.submitter.value : '';
    const state = pressed === 'asked' ? 'asked' : 'priced';
    const reason = written(form, 'reason');
    void this.binder
      .order(comparison, { from: this.from, to: this.to }, { reason, state })
      .then((order) => {
        if (order) this.dispatchEvent(new CustomEvent('ordered', { detail: order.number }));
        else this.trouble = 'No change order can be kept here.';
      });
  };

  /** In short goes, so that a large job leaves the page alive. */
  async #weigh(comparison: Comparison, of: TotalOf): Promise<void> {
    const turn = ++this.#turn;
    const work = weighing(comparison, of);
    for (;;) {
      const until = performance.now() + MILLISECONDS;
      let step = work.next();
      while (!step.done && performance.now() < until) step = work.next();
      if (step.done) {
        const why = step.value;
        if (why && turn === this.#turn)
          this.told = { why, steps: stepsOf(why, comparison), sums: kindSums(why.pieces) };
        return;
      }
      await new Promise((resolve) => setTimeout(resolve));
      if (turn !== this.#turn) return;
    }
  }

  #compare(detail: Compared): void {
    this.dispatchEvent(new CustomEvent<Compared>('compare', { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'version-comparison': VersionComparison;
  }
}
