// What happened, line by line, the latest day first: new lines are written above, each can be corrected where it stands.
// Properties: `book`. Events, for a person's act: `added`, and `left` when a correction was left.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import {
  type Cost,
  OUTSIDE,
  type PartNamed,
  type Said,
  centsFor,
  hoursText,
  hoursTyped,
} from '../record/entry.ts';
import type { Texts } from '../record/read-entry.ts';
import { MOST_BYTES_TOGETHER, type Receipt, bytesOf, inKilobytes } from '../record/receipt.ts';
import type { Standing } from '../record/standing.ts';
import { moneyText } from '../versions/cents.ts';
import { look } from './look.ts';
import { money } from './money-words.ts';
import type { Fresh, RecordBook } from './record-book.ts';
import { type Kept, NO_TEXTS, type RecordLine } from './record-line.ts';
import './record-line.ts';
import { recordEntriesLook } from './record-entries-look.ts';
import { recordLook } from './record-look.ts';

/** So many stand in the document until more are asked for. */
const MOST_SHOWN = 150;

@customElement('record-entries')
export class RecordEntries extends LitElement {
  static override styles = [look, recordLook, recordEntriesLook];

  @property({ attribute: false }) book!: RecordBook;
  @state() private correcting: string | null = null;
  @state() private shown = MOST_SHOWN;
  @state() private said = '';

  protected override render(): TemplateResult {
    const { book } = this;
    const { entries } = book.stands;
    const all = entries.toSorted((a, b) =>
      dayOf(a) === dayOf(b) ? 0 : dayOf(a) < dayOf(b) ? 1 : -1,
    );
    return html`<h3>A new line</h3>
      <record-line
        class="new"
        .parts=${book.parts}
        currency=${book.currency}
        .texts=${{ ...NO_TEXTS, date: book.today }}
        @keep=${({ detail }: CustomEvent<Kept>) => void this.#add(detail)}
      ></record-line>
      <p class="said" role="status">${this.said}</p>
      <h3>What happened</h3>
      ${all.length === 0 ? html`<p class="small">Nothing is in the record yet.</p>` : nothing}
      <ol class="entries">
        ${repeat(
          all.slice(0, this.shown),
          ({ entry }) => entry.id,
          (one) =>
            html`<li>
              ${this.correcting === one.entry.id ? this.#correct(one) : this.#line(one)}
            </li>`,
        )}
      </ol>
      ${
        all.length > this.shown
          ? html`<button class="act" @click=${() => (this.shown = all.length)}>
              Show all ${all.length.toLocaleString('en-US')} lines
            </button>`
          : nothing
      }`;
  }

  #line(one: Standing): TemplateResult {
    const says = one.says ?? lastSaid(one);
    const out = one.says === null;
    const cost = money(moneyText(centsFor(says.cost)), says.currency);
    return html`<div class="entry ${out ? 'out' : ''}">
        <time>${says.date}</time>
        <span class="what"
          >${says.what}<span class="where">${says.part.name}, ${says.kind}</span></span
        >
        <span class="time">${timeSaid(says.cost, says.currency)}</span>
        <strong>${out ? html`<s>${cost}</s>` : cost}</strong>
        <button
          class="plain"
          aria-label="Correct ${says.what}, ${says.date}"
          data-entry=${one.entry.id}
          @click=${() => this.#open(one)}
        >
          Correct
        </button>
      </div>
      ${says.note === '' ? nothing : html`<p class="note">${says.note}</p>`}
      ${says.receipt ? pictured(says.receipt) : nothing} ${this.#history(one)}`;
  }

  #history({ entry, corrections, says, twice }: Standing): TemplateResult | typeof nothing {
    if (corrections.length === 0) return nothing;
    const before = [entry.says, ...corrections.map((each) => each.says)].slice(0, -1);
    return html`<details>
      <summary>
        ${says === null ? 'taken out' : 'corrected'}${twice ? ', in two places at once; the later stands' : ''}
      </summary>
      <ul>
        ${before.map(
          (said, i) =>
            html`<li>
              ${said === null ? 'taken out' : `was ${said.date}, ${said.part.name}, ${said.kind}, ${said.what}, ${money(moneyText(centsFor(said.cost)), said.currency)}`};
              ${corrections[i]?.why === '' ? 'no reason told' : corrections[i]?.why},
              ${corrections[i]?.entered.slice(0, 10)}
            </li>`,
        )}
      </ul>
    </details>`;
  }

  #correct(one: Standing): TemplateResult {
    const { book } = this;
    const says = one.says ?? lastSaid(one);
    return html`<record-line
        correcting
        .parts=${withOwn(book.parts, says.part)}
        currency=${book.currency}
        .texts=${textsOf(says, book)}
        .receipt=${says.receipt}
        @keep=${({ detail }: CustomEvent<Kept>) => void this.#keep(one, detail)}
        @leave=${() => void this.#shut(one)}
      ></record-line>
      ${
        one.says === null
          ? nothing
          : html`<button class="plain" @click=${() => void this.#keep(one, null)}>
              Take it out of the record; it stays readable
            </button>`
      }`;
  }

  #open(one: Standing): void {
    this.correcting = one.entry.id;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<RecordLine>('record-line[correcting]')?.goTo('what'),
    );
  }

  async #shut(one: Standing): Promise<void> {
    this.correcting = null;
    this.dispatchEvent(new CustomEvent('left'));
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(`[data-entry="${one.entry.id}"]`)?.focus();
  }

  async #add({ says }: Kept): Promise<void> {
    const line = this.renderRoot.querySelector<RecordLine>('record-line.new');
    const full = this.#tooMuch(says.receipt);
    const why = full ?? (await this.book.add([{ record: 'entry', says }]));
    if (why !== null) {
      line?.say(why);
      return;
    }
    this.said = `${says.what} is in the record, ${money(moneyText(centsFor(says.cost)), says.currency)}.`;
    this.#changed();
    await line?.next();
  }

  async #keep(one: Standing, kept: Kept | null): Promise<void> {
    const line = this.renderRoot.querySelector<RecordLine>('record-line[correcting]');
    const before = one.says ?? lastSaid(one);
    const same = kept?.says.receipt === before.receipt;
    const full = same ? null : this.#tooMuch(kept?.says.receipt ?? null);
    const says: Extract<Fresh, { readonly record: 'correction' }>['says'] = kept && {
      ...kept.says,
      // A picture that stays is not kept twice.
      receipt: same && before.receipt ? 'same' : kept.says.receipt,
    };
    const why =
      full ??
      (await this.book.add([
        { record: 'correction', corrects: one.last, why: kept?.why ?? '', says },
      ]));
    if (why !== null) {
      line?.say(why);
      return;
    }
    this.said = kept
      ? 'The correction is kept; what stood there stays readable.'
      : 'It is taken out; it stays readable.';
    this.#changed();
    await this.#shut(one);
  }

  /** Why another picture can't be kept, or null. */
  #tooMuch(receipt: Receipt | null): string | null {
    if (!receipt) return null;
    const { entries } = this.book.stands;
    const urls = entries.flatMap(({ entry, corrections }) => [
      entry.says.receipt,
      ...corrections.map(({ says }) => says?.receipt ?? null),
    ]);
    const together = urls.reduce(
      (sum, one) => (one && one !== 'same' ? sum + bytesOf(one.url) : sum),
      bytesOf(receipt.url),
    );
    if (together <= MOST_BYTES_TOGETHER) return null;
    return `The pictures of one job may have ${inKilobytes(MOST_BYTES_TOGETHER)} together. Put this line in without one.`;
  }

  #changed(): void {
    this.requestUpdate();
    this.dispatchEvent(new CustomEvent('added'));
  }
}

function dayOf({ says, entry }: Standing): string {
  return (says ?? entry.says).date;
}

/** What stood before it was taken out. */
function lastSaid({ entry, corrections }: Standing): Said {
  const last = corrections.findLast(({ says }) => says !== null)?.says;
  return last ? { ...last, receipt: entry.says.receipt } : entry.says;
}

/** What stands in a part that is gone may stay there. */
function withOwn(parts: readonly PartNamed[], own: PartNamed): readonly PartNamed[] {
  const known = parts.some(
    ({ key, name }) => (key !== null && key === own.key) || name === own.name,
  );
  return known || own.name === OUTSIDE.name ? parts : [...parts, own];
}

function textsOf(says: Said, { parts }: RecordBook): Texts {
  const { date, kind, what, note, cost, part } = says;
  // A part that was renamed since is offered as it is called now.
  const name = parts.find(({ key }) => key !== null && key === part.key)?.name ?? part.name;
  const texts = { ...NO_TEXTS, date, kind, what, note, part: name };
  return cost.by === 'amount'
    ? { ...texts, amount: cost.amount }
    : { ...texts, hours: hoursTyped(cost.minutes), rate: cost.rate };
}

function timeSaid(cost: Cost, currency: string): string {
  return cost.by === 'time' ? `${hoursText(cost.minutes)} h at ${currency}${cost.rate}` : '';
}

function pictured({ name, url }: Receipt): TemplateResult {
  return html`<details class="receipt">
    <summary>receipt</summary>
    <img src=${url} alt="Receipt: ${name}" loading="lazy" />
  </details>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'record-entries': RecordEntries;
  }
}
