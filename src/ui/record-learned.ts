// What the record teaches: the hours a unit took as it was built, written back into the notebook as a given.
// Properties: `book`, `session`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Cell, Part } from '../notebook/document.ts';
import { type Said, hoursText } from '../record/entry.ts';
import {
  type Built,
  type Into,
  type Learning,
  builtAmount,
  learn,
  learnedChange,
} from '../record/learned.ts';
import { look } from './look.ts';
import { allCells } from './reading-order.ts';
import type { RecordBook } from './record-book.ts';
import { recordAgainstLook } from './record-against-look.ts';
import { recordLook } from './record-look.ts';
import type { Session } from './session.ts';

const NEW = 'new';

@customElement('record-learned')
export class RecordLearned extends LitElement {
  static override styles = [look, recordLook, recordAgainstLook];

  @property({ attribute: false }) book!: RecordBook;
  @property({ attribute: false }) session!: Session;
  @state() private chosen = '';
  /** What of the part's hours doesn't count. */
  @state() private without: ReadonlySet<string> = new Set();
  @state() private built = '';
  @state() private into = NEW;
  @state() private name = '';
  @state() private said = '';
  #tried: { readonly of: readonly string[]; readonly built: Built } | null = null;

  protected override render(): TemplateResult {
    const worked = this.#hours();
    const parts = [...new Set(worked.map(({ part }) => part.name))];
    if (parts.length === 0) {
      return html`<p>
        No hours stand in the record yet. Put in hours with what was done, and here they become
        hours per square foot, per post, per riser.
      </p>`;
    }
    const part = parts.includes(this.chosen) ? this.chosen : (parts[0] ?? '');
    const here = worked.filter((one) => one.part.name === part);
    const whats = [...new Set(here.map(({ what }) => what))];
    const counted = here.filter(({ what }) => !this.without.has(what));
    const learning = this.#learned(counted, part);
    return html`<div class="chosen">
        <label class="field"
          >Hours of
          <select id="of" @change=${(event: Event) => this.#turn(valueOf(event))}>
            ${parts.map((one) => html`<option ?selected=${one === part}>${one}</option>`)}
          </select></label
        >
        <label class="field wide"
          >What was built with them
          <input
            id="built"
            list="amounts"
            autocomplete="off"
            placeholder="deck area, or 224 sq ft"
            .value=${this.built}
            @input=${(event: Event) => (this.built = valueOf(event))}
          />
          <datalist id="amounts">
            ${this.#amounts(part).map((name) => html`<option value=${name}></option>`)}
          </datalist>
        </label>
      </div>
      <fieldset>
        <legend>Which of them count</legend>
        ${whats.map(
          (what) =>
            html`<label
              ><input
                type="checkbox"
                ?checked=${!this.without.has(what)}
                @change=${() => this.#count(what)}
              />${what}, ${hoursOf(here.filter((one) => one.what === what))} h</label
            >`,
        )}
      </fieldset>
      ${this.#result(learning, part)}
      <p class="said" role="status">${this.said}</p>`;
  }

  #result(learning: Learning | null, part: string): TemplateResult | typeof nothing {
    if (!learning) return nothing;
    if (learning.kind === 'refused') return html`<p class="trouble">${learning.why}</p>`;
    const { formula, from } = learning.learned;
    const rates = this.#rates();
    return html`<p class="learned"><strong>${formula}</strong><span class="where">${from}</span></p>
      <div class="chosen">
        <label class="field wide"
          >Write it
          <select id="into" @change=${(event: Event) => (this.into = valueOf(event))}>
            <option value=${NEW}>as a new given</option>
            ${rates.map(
              ({ id, name }) =>
                html`<option value=${id} ?selected=${this.into === String(id)}>
                  over ${name}, now ${this.session.door.shown(id)?.text ?? ''}
                </option>`,
            )}
          </select></label
        >
        ${
          this.into === NEW
            ? html`<label class="field wide"
                >Called
                <input
                  id="called"
                  autocomplete="off"
                  placeholder="Hours as built"
                  .value=${this.name}
                  @input=${(event: Event) => (this.name = valueOf(event))}
              /></label>`
            : nothing
        }
        <button class="act first" @click=${() => this.#write(learning, part)}>
          Write it into the notebook
        </button>
      </div>`;
  }

  /** Every line that stands and has hours of labour. */
  #hours(): readonly Said[] {
    return this.book.stands.entries.flatMap(({ says }) =>
      says && says.cost.by === 'time' && says.kind === 'labour' ? [says] : [],
    );
  }

  #learned(entries: readonly Said[], part: string): Learning | null {
    const { door } = this.session;
    if (this.built.trim() === '') return null;
    const built = this.#amount(part);
    if (built.kind === 'refused') return built;
    return learn(entries, built.shown, door.notebook.title || 'this job');
  }

  /** Worked anew only where it would come out otherwise: it takes a whole notebook. */
  #amount(part: string): Built {
    const { notebook } = this.session.door;
    const of = [notebook.text, part, this.built];
    if (!this.#tried || this.#tried.of.some((one, i) => one !== of[i])) {
      const key = this.#place(part)?.key ?? '';
      this.#tried = { of, built: builtAmount(notebook, key, this.built) };
    }
    return this.#tried.built;
  }

  /** The part of the notebook, or its last where the hours are not of one. */
  #place(name: string): Part | undefined {
    const { parts } = this.session.door.notebook;
    return parts.find((part) => part.name === name) ?? parts.at(-1);
  }

  /** What can be built with hours: amounts of the part, no money and no rates. */
  #amounts(name: string): readonly string[] {
    const { door } = this.session;
    const key = door.notebook.parts.find((part) => part.name === name)?.key;
    return allCells(door.notebook)
      .filter(({ part, id, table }) => {
        const unit = part === key && table === null ? (door.shown(id)?.unit ?? '') : '';
        return unit !== '' && !/[$€£%]| per | each/.test(unit);
      })
      .map(({ name: one }) => one);
  }

  /** Givens that are hours per something. */
  #rates(): readonly Cell[] {
    const { door } = this.session;
    return allCells(door.notebook).filter(
      ({ id, table }) =>
        table === null &&
        door.state(id).kind === 'given' &&
        /^hours? per /.test(door.shown(id)?.unit ?? ''),
    );
  }

  #write(learning: Extract<Learning, { readonly kind: 'learned' }>, part: string): void {
    const { door } = this.session;
    const { notebook } = door;
    const place = this.#place(part);
    const into: Into =
      this.into === NEW
        ? { kind: 'new', part: place?.key ?? '', name: this.name.trim() || 'Hours as built' }
        : { kind: 'given', cell: Number(this.into) };
    const change = learnedChange(notebook, into, learning.learned);
    if ('code' in change) {
      this.said = change.message;
      return;
    }
    if (this.session.apply((one) => one.replaceText(change)))
      this.said = `Written: ${change.say}. Undo takes it back.`;
    else this.said = this.session.notice?.text ?? '';
    this.requestUpdate();
  }

  #turn(part: string): void {
    this.chosen = part;
    this.without = new Set();
    this.built = '';
    this.said = '';
  }

  #count(what: string): void {
    const without = new Set(this.without);
    if (!without.delete(what)) without.add(what);
    this.without = without;
  }
}

function hoursOf(entries: readonly Said[]): string {
  const minutes = entries.reduce(
    (sum, { cost }) => (cost.by === 'time' ? sum + Number(cost.minutes) : sum),
    0,
  );
  return hoursText(String(minutes));
}

function valueOf(event: Event): string {
  return (event.currentTarget as HTMLInputElement | HTMLSelectElement).value;
}

declare global {
  interface HTMLElementTagNameMap {
    'record-learned': RecordLearned;
  }
}
