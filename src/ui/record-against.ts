// The record against an estimate: what is pointed out, a picture, and the table by part and kind, where one tells how
// much is done.
// Properties: `book`. Event, for a person's act: `added`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CostKind } from '../language/tree.ts';
import { COST_KINDS } from '../notebook/recap.ts';
import type { Against, AgainstPart, Figures, Warning } from '../record/against.ts';
import { type Budget, type ByKind, eachKind } from '../record/budget.ts';
import { OUTSIDE, type PartNamed } from '../record/entry.ts';
import { readMoney, readPercent } from '../record/fields.ts';
import { sharesOf } from '../record/shares.ts';
import { moneyText } from '../versions/cents.ts';
import { look } from './look.ts';
import { isNothing, money } from './money-words.ts';
import { bars } from './record-bars.ts';
import type { Fresh, RecordBook } from './record-book.ts';
import { recordAgainstLook } from './record-against-look.ts';
import { recordLook } from './record-look.ts';

@customElement('record-against')
export class RecordAgainst extends LitElement {
  static override styles = [look, recordLook, recordAgainstLook];

  @property({ attribute: false }) book!: RecordBook;
  @state() private trouble = '';

  protected override render(): TemplateResult {
    const { book } = this;
    const { held, warnings } = book.against();
    const { currency } = held.budget;
    return html`${this.#chosen()}
      ${this.trouble === '' ? nothing : html`<p class="trouble" role="alert">${this.trouble}</p>`}
      ${this.#warned(held, warnings)}
      ${
        held.otherCurrency === 0
          ? nothing
          : html`<p class="trouble">
              ${held.otherCurrency === 1 ? '1 line is' : `${held.otherCurrency} lines are`} not in
              ${currency} and in no sum here.
            </p>`
      }
      ${bars(held)}
      <table>
        <caption class="heard">
          Estimate, spent, to go and what it comes to, by part and kind of cost
        </caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Estimate</th>
            <th scope="col">Spent</th>
            <th scope="col">To go</th>
            <th scope="col">In the end</th>
            <th scope="col">Over or under</th>
            <th scope="col">Done, %</th>
          </tr>
        </thead>
        ${held.parts.filter(hasMoney).map((part) => this.#part(part, currency))}
        ${this.#whole(held)}
      </table>
      <p class="small">
        In the end: what was spent ÷ the share done, where a share is told and money was spent; at
        100 % what was spent; else the estimate, or what was spent where that is more. To go is that
        less what was spent. Every kind of cost in a part is worked on its own; sums are sums of
        these. It is direct cost: overhead, markup and tax are not in it. Shares are of spent money,
        those of the estimate in brackets.
      </p>`;
  }

  #chosen(): TemplateResult {
    const { book } = this;
    const now = book.budget;
    return html`<div class="chosen">
      <label class="field"
        >Held against
        <select
          @change=${(event: Event) => void this.#watch(book.budgets[(event.currentTarget as HTMLSelectElement).selectedIndex], null)}
        >
          ${book.budgets.map(
            (one) => html`<option ?selected=${one.seal === now.seal}>${one.name}</option>`,
          )}
        </select></label
      >
      <label class="field money"
        >Point it out when over by more than
        <input
          id="limit"
          inputmode="decimal"
          autocomplete="off"
          .value=${book.limit}
          @change=${(event: Event) => void this.#watch(now, event.currentTarget as HTMLInputElement)}
      /></label>
    </div>`;
  }

  #warned({ whole, budget }: Against, found: readonly Warning[]): TemplateResult {
    const of = (cents: bigint): string => money(moneyText(cents), budget.currency);
    const by =
      whole.estimate > 0n && whole.over !== 0n ? `, ${percent(whole)} of the estimate` : '';
    const said =
      whole.over === 0n
        ? 'as estimated'
        : `${of(whole.over < 0n ? -whole.over : whole.over)} ${whole.over < 0n ? 'under' : 'over'}${by}`;
    return html`<div class=${found.length > 0 ? 'warned' : 'calm'} role="status">
      <p>
        The job comes to <strong>${of(whole.forecast)}</strong>, ${said}: ${of(whole.actual)} spent,
        ${of(whole.toGo)} to go; held against ${budget.name}.
      </p>
      ${
        found.length === 0
          ? nothing
          : html`<p>
              <span class="ringed"
                >${
                  isNothing(this.book.limit)
                    ? 'Over the estimate'
                    : `Over by more than ${money(this.book.limit, budget.currency)}`
                }</span
              >:
              ${found.map(({ part, over }, i) => `${i === 0 ? '' : ', '}${part ?? 'the whole job'} ${of(over)}`)}.
            </p>`
      }
    </div>`;
  }

  #part(
    { part, inEstimate, kinds, whole, done, incomplete }: AgainstPart,
    currency: string,
  ): TemplateResult {
    const told = COST_KINDS.filter((kind) => isThere(kinds[kind]));
    const shares = shared(kinds);
    const common = told.every((kind) => done[kind] === done[told[0]])
      ? done[told[0] ?? 'material']
      : '';
    return html`<tbody>
      <tr class="part">
        <th scope="rowgroup">
          ${part.name}${
            inEstimate || part.name === OUTSIDE.name
              ? nothing
              : html`<span class="where">not in the estimate</span>`
          }${incomplete ? html`<span class="where">so far; lines without a value are left out</span>` : nothing}
        </th>
        ${figures(whole, currency)}
        <td data-label="Done, %">${this.#done(part, null, common, part.name)}</td>
      </tr>
      ${told.map(
        (kind) =>
          html`<tr>
            <th scope="row">${kind}${share(shares, kind)}</th>
            ${figures(kinds[kind], currency)}
            <td data-label="Done, %">
              ${this.#done(part, kind, done[kind], `${part.name}, ${kind}`)}
            </td>
          </tr>`,
      )}
    </tbody>`;
  }

  #whole({ kinds, whole, budget }: Against): TemplateResult {
    const shares = shared(kinds);
    return html`<tbody class="all">
      <tr class="part">
        <th scope="rowgroup">The whole job</th>
        ${figures(whole, budget.currency)}
        <td></td>
      </tr>
      ${COST_KINDS.filter((kind) => isThere(kinds[kind])).map(
        (kind) =>
          html`<tr>
            <th scope="row">${kind}${share(shares, kind)}</th>
            ${figures(kinds[kind], budget.currency)}
            <td></td>
          </tr>`,
      )}
    </tbody>`;
  }

  #done(part: PartNamed, kind: CostKind | null, now: string | null, of: string): TemplateResult {
    return html`<input
      class="done"
      inputmode="decimal"
      autocomplete="off"
      aria-label="Percent done of ${of}"
      .value=${now ?? ''}
      @change=${(event: Event) => void this.#tell(part, kind, event.currentTarget as HTMLInputElement)}
    />`;
  }

  async #tell(part: PartNamed, kind: CostKind | null, input: HTMLInputElement): Promise<void> {
    const text = input.value.trim();
    const read = readPercent(text === '' ? '0' : text);
    if (read.kind === 'refused') {
      this.trouble = read.why;
      return;
    }
    await this.#add({ record: 'progress', date: this.book.today, part, kind, done: read.value });
  }

  async #watch(budget: Budget | undefined, input: HTMLInputElement | null): Promise<void> {
    const read = input ? readMoney(input.value.trim(), this.book.currency, 2) : null;
    const over = read?.kind === 'read' ? read.value : this.book.limit;
    if (read?.kind === 'refused' || over.startsWith('-')) {
      this.trouble = read?.kind === 'refused' ? read.why : 'Write how much over: nothing or more.';
      return;
    }
    await this.#add({ record: 'watch', budget: budget?.seal ?? null, over });
  }

  async #add(fresh: Fresh): Promise<void> {
    this.trouble = (await this.book.add([fresh])) ?? '';
    this.requestUpdate();
    this.dispatchEvent(new CustomEvent('added'));
  }
}

function figures(
  { estimate, actual, toGo, forecast, over }: Figures,
  currency: string,
): TemplateResult {
  const of = (cents: bigint): string => money(moneyText(cents), currency);
  const past = over > 0n ? `${of(over)} over` : over < 0n ? `${of(-over)} under` : '';
  return html`<td data-label="Estimate">${of(estimate)}</td>
    <td data-label="Spent">${of(actual)}</td>
    <td data-label="To go">${of(toGo)}</td>
    <td data-label="In the end">${of(forecast)}</td>
    <td data-label="Over or under" class=${over > 0n ? 'past' : ''}>${past}</td>`;
}

interface Shares {
  readonly spent: ByKind<number> | null;
  readonly estimate: ByKind<number> | null;
}

function shared(kinds: ByKind<Figures>): Shares {
  return {
    spent: sharesOf(eachKind((kind) => kinds[kind].actual)),
    estimate: sharesOf(eachKind((kind) => kinds[kind].estimate)),
  };
}

/** `41.2 % (38 %)` */
function share({ spent, estimate }: Shares, kind: CostKind): TemplateResult | typeof nothing {
  if (!spent && !estimate) return nothing;
  const before = estimate ? `(${estimate[kind]} %)` : '';
  return html`<span class="where">${spent ? `${spent[kind]} %` : ''} ${before}</span>`;
}

/** A part that costs nothing, as one of rates and sums does, says nothing here. */
function hasMoney({ kinds, incomplete }: AgainstPart): boolean {
  return incomplete || COST_KINDS.some((kind) => isThere(kinds[kind]));
}

function isThere({ estimate, actual, forecast }: Figures): boolean {
  return estimate !== 0n || actual !== 0n || forecast !== 0n;
}

/** To a tenth of a percent, half up. */
function percent({ over, estimate }: Figures): string {
  const size = over < 0n ? -over : over;
  const tenths = (size * 2000n + estimate) / (estimate * 2n);
  return `${Number(tenths) / 10} %`;
}

declare global {
  interface HTMLElementTagNameMap {
    'record-against': RecordAgainst;
  }
}
