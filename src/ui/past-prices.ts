// Prices with a date: until when all of them are good, and of those past their date what can be done about each, and
// what the job would come to if they had moved.
// Property: `binder`. Event, for a person's act: `done` with what was done or why not.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Change, Finding } from '../notebook/document.ts';
import { type Moved, ifMoved } from '../versions/moved-prices.ts';
import { askAgain } from '../versions/asked-again.ts';
import { type PastDate, sayPast } from '../versions/past-dates.ts';
import { takenOut } from '../versions/taken-out.ts';
import type { Binder } from './binder.ts';
import { dayShown } from './day-words.ts';
import { Follows } from './follows.ts';
import type { JobTold } from './job-files.ts';
import { look } from './look.ts';
import { money, moreOrLess } from './money-words.ts';
import type { Session } from './session.ts';
import { snapshotsLook } from './snapshots-look.ts';

@customElement('past-prices')
export class PastPrices extends LitElement {
  static override styles = [
    look,
    snapshotsLook,
    css`
      :host {
        display: block;
        margin-top: 1.8rem;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        gap: 0.1rem 0.8rem;
        align-items: baseline;
        padding: 0.25rem 0;
        border-bottom: 1px solid var(--hair);
      }
      li > span {
        flex: 1 1 16rem;
      }
      .percent {
        width: 5rem;
      }
    `,
  ];

  @property({ attribute: false }) binder!: Binder;
  @state() private moved: { readonly percent: string; readonly by: Moved | null } | null = null;
  #of = '';

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  get session(): Session {
    return this.binder.desk.session;
  }

  protected override willUpdate(): void {
    const { text } = this.binder.estimate.notebook;
    if (text !== this.#of) this.moved = null;
    this.#of = text;
  }

  protected override render(): TemplateResult {
    const { past, validity } = this.binder;
    if (past.length === 0 && validity === null) return html``;
    const asked = past.filter(({ way }) => way.kind === 'ask' || way.kind === 'take-out');
    const inside = asked.some(({ way }) => way.kind === 'take-out');
    return html`<h3>${past.length > 0 ? 'Prices past their date' : 'Prices with a date'}</h3>
      ${this.#validity()}
      ${
        past.length === 0
          ? nothing
          : html`<ul>
              ${past.map((each) => this.#one(each))}
            </ul>`
      }
      ${
        asked.length === 0
          ? nothing
          : html`<div class="acts">
                <button class="act" data-ask @click=${this.#ask}>
                  ${asked.length === 1 ? 'Turn it into ? until it is quoted' : `Turn all ${asked.length} into ? until they are quoted`}
                  again
                </button>
                ${
                  inside
                    ? html`<span class="tell"
                        >A price inside a formula gets a cell of its own first.</span
                      >`
                    : nothing
                }
              </div>
              ${this.#trying()}`
      }`;
  }

  #validity(): TemplateResult | typeof nothing {
    const { validity } = this.binder;
    if (!validity) return nothing;
    const { oldest, first } = validity;
    const day = dayShown(first.until);
    const until =
      first.until < this.binder.today
        ? `Until ${day} every price was good: ${first.name} was the first to run out.`
        : `Until ${day} every price is good: ${first.name} is the first to run out.`;
    const since = oldest ? ` The oldest was quoted ${dayShown(oldest.day)}: ${oldest.name}.` : '';
    return html`<p class="tell">${until}${since}</p>`;
  }

  #one(each: PastDate): TemplateResult {
    return html`<li>
      <span
        ><b>${each.name}</b>, ${each.formula}
        <span class="tell">${each.part}: ${sayPast(each)}${todo(each)}</span></span
      >
      ${
        each.way.kind === 'take-out'
          ? html`<button class="act" @click=${() => this.#takeOut(each)}>
              Give ${each.way.prices.join(' and ')}
              ${each.way.prices.length === 1 ? 'a cell of its own' : 'cells of their own'}
            </button>`
          : nothing
      }
    </li>`;
  }

  #trying(): TemplateResult {
    const { moved } = this;
    return html`<form class="fields" @submit=${this.#try}>
      <label
        >If they are dearer by, in % (with a minus: cheaper)
        <input
          class="percent"
          name="percent"
          inputmode="decimal"
          autocomplete="off"
          .defaultValue=${'10'}
        />
      </label>
      <button class="act">What would it come to?</button>
      <p class="tell" role="status">${moved ? this.#said(moved) : ''}</p>
    </form>`;
  }

  #said({ percent, by }: { readonly percent: string; readonly by: Moved | null }): string {
    if (by === null)
      return `"${percent}" is no share these can move by. Write a number such as 12.`;
    const { currency } = this.binder.estimate.notebook.settings;
    const more = moreOrLess(by.after, by.before, currency);
    const which = by.count === 1 ? 'The one that can be moved here' : `The ${by.count} of them`;
    return `${which} by ${percent}%: the price would be ${money(by.after, currency)}, ${more ?? 'the same'}. Nothing was changed.`;
  }

  #try = (event: SubmitEvent): void => {
    event.preventDefault();
    const field = (event.currentTarget as HTMLFormElement).elements.namedItem('percent');
    const percent = field instanceof HTMLInputElement ? field.value.replace(/[\s%+]/g, '') : '';
    const { estimate, past } = this.binder;
    const read = /^-?\d{1,4}(\.\d{1,4})?$/.test(percent);
    this.moved = { percent, by: read ? ifMoved(estimate, past, percent) : null };
  };

  #ask = (): void => {
    const { estimate, past } = this.binder;
    const change = askAgain(estimate, past);
    if (change) this.#make(change);
  };

  #takeOut({ cell, name }: PastDate): void {
    const change = takenOut(this.binder.estimate, cell);
    if (change && 'splices' in change) this.#make(change);
    else this.#refused(change, name);
  }

  #refused(why: Finding | null, name: string): void {
    const said =
      why?.message ?? `${name} would come to something else then. Write the price out by hand.`;
    this.#tell({ kind: 'refused', said, mismatches: [] });
  }

  #make(change: Change): void {
    const { session } = this;
    const done = session.apply((door) => door.replaceText(change));
    const said = done
      ? `${change.say}: done. Undo on the page takes it back.`
      : (session.notice?.text ?? '');
    this.#tell({ kind: done ? 'opened' : 'refused', said, mismatches: [] });
  }

  #tell(detail: JobTold): void {
    this.dispatchEvent(new CustomEvent<JobTold>('done', { detail }));
  }
}

/** What is left to its owner. */
function todo({ way }: PastDate): string {
  switch (way.kind) {
    case 'ask':
    case 'take-out':
      return '';
    case 'formula':
      return '; no price is written out in its formula: write there what it is now, with its new date';
    case 'by-hand':
      return '; it was set by hand: take that back, or write what it is now with its new date';
    case 'table':
      return '; it stands over a table: write the new prices in its rows, and the new date here';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'past-prices': PastPrices;
  }
}
