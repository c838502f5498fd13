// Up to three alternatives beside the notebook, each a few cells with other amounts, and what the watched
// results and the totals come to in each. Nothing in the notebook changes until one is put in. Beside the page where
// there is room, over it where not. Properties: `desk`, `open`. Event, for a person's act: `away`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import type { AlternativeKept } from '../store/alongside-shapes.ts';
import type { Desk } from './desk.ts';
import { LaidBeside } from './laid-beside.ts';
import { look } from './look.ts';
import {
  MOST_WAYS,
  anotherWay,
  broughtBack,
  calledWay,
  putWay,
  varying,
  varyingNoMore,
  withoutWay,
} from './other-ways.ts';
import { movedSaid, stoodSaid } from './result-words.ts';
import type { Happening } from './happening.ts';
import type { Session } from './session.ts';
import { valueSaid } from './value-words.ts';
import type { Varied } from './vary-line.ts';
import './vary-line.ts';
import { type WayActs, variedLine, wayEnds, wayHead } from './ways-columns.ts';
import { type Compared, type ComparedRow, WaysCompared } from './ways-compared.ts';
import { betterSaid, checksRow, resultRow } from './ways-rows.ts';
import { laidBesideLook } from './laid-beside-look.ts';
import { alternativesLook } from './alternatives-look.ts';

@customElement('alternatives-sheet')
export class AlternativesSheet extends LitElement {
  static override styles = [look, laidBesideLook, alternativesLook];

  @property({ attribute: false }) desk!: Desk;
  @property({ type: Boolean, reflect: true }) open = false;
  @state() private gone: { readonly place: number; readonly way: AlternativeKept } | null = null;
  @state() private heard = '';
  @query('dialog') private dialog!: HTMLDialogElement;
  #compared: WaysCompared | null = null;
  #stop: (() => void) | null = null;
  readonly #beside = new LaidBeside(this);

  get session(): Session {
    return this.desk.session;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stop = this.session.listen((happening) => this.#happened(happening));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }

  protected override updated(changed: ReadonlyMap<PropertyKey, unknown>): void {
    if (!changed.has('open')) return;
    if (this.open) {
      this.#beside.come();
      const first = this.renderRoot.querySelector<HTMLElement>('.amount input');
      if (first) first.focus();
      else void this.#vary()?.updateComplete.then(() => this.#vary()?.focus());
    } else if (this.dialog.open) {
      this.#beside.go(this.session.writing === null ? 'goes back' : 'stays');
      this.gone = null;
    }
  }

  protected override render(): TemplateResult {
    return html`<dialog
      aria-label="Alternatives"
      @cancel=${(event: Event) => {
        event.preventDefault();
        this.#away();
      }}
      @keydown=${this.#key}
    >
      <div class="top">
        <h2 tabindex="-1">Alternatives</h2>
        <span class="small">
          <span class="screen">your notebook stays as it is until you put one in</span>
          <span class="printed">
            to ${this.session.door.notebook.title || 'this estimate'}: only the first column is the
            estimate, the others are tried and not offered
          </span>
        </span>
        <button class="plain" @click=${this.#away}>Put away<kbd>Esc</kbd></button>
      </div>
      <div class="inside">${this.open ? this.#inside() : nothing}</div>
      <p class="heard" role="status">${this.heard}</p>
    </dialog>`;
  }

  #inside(): TemplateResult {
    const ways = this.#kept;
    const { door } = this.session;
    const compared = this.#look();
    const varied = this.#ways.varied();
    const room = ways.length < MOST_WAYS ? 'for more' : 'for no more';
    return html`
      <vary-line
        .session=${this.session}
        .varied=${new Set(varied.map(([, cell]) => cell))}
        @varied=${({ detail }: CustomEvent<Varied>) => this.#varyToo(detail.cell)}
      ></vary-line>
      <div class="across" tabindex="0" role="region" aria-label="Side by side">
        <table>
          <caption class="heard">
            Alternatives side by side with the notebook as it is
          </caption>
          <thead>
            <tr>
              <td></td>
              <th scope="col" class="is">As it is</th>
              ${ways.map((way, place) => wayHead(way, place, this.#acts))}
            </tr>
          </thead>
          <tbody class="varied">
            ${varied.map(([key, cell]) => {
              const shown = valueSaid(door, cell) ?? '?';
              const line = { key, cell, name: this.#name(cell), shown };
              return variedLine(line, ways, compared.ways, this.#acts);
            })}
          </tbody>
          <tbody class="results">
            ${compared.rows.map((row, at) =>
              resultRow(door, compared, row, at, this.#preference(compared, row, at)),
            )}
            ${checksRow(compared)}
          </tbody>
          <tbody class="ends">
            <tr>
              <td colspan="2">
                ${
                  room === 'for more'
                    ? html`<button class="act" @click=${() => this.#add(null)}>Another way</button>`
                    : nothing
                }
              </td>
              ${ways.map((way, place) =>
                wayEnds(way, place, compared.ways[place], room, this.#acts),
              )}
            </tr>
          </tbody>
        </table>
      </div>
      ${this.#done()}
      ${
        this.gone
          ? html`<p class="small">
              ${this.gone.way.name} is taken away.
              <button class="act" @click=${this.#bringBack}>Bring it back</button>
            </p>`
          : nothing
      }
      ${
        varied.length === 0
          ? html`<p class="small first">
              Name a cell that could be otherwise, such as a size or a price, and write what it
              would be in each way. Results that you watch (E on a row) stand here beside the
              totals.
            </p>`
          : nothing
      }
    `;
  }

  /** The one that was put in last, as long as that is what undo takes back. */
  #done(): TemplateResult | typeof nothing {
    const { session } = this;
    const name = /^Put in (.*)$/.exec(session.door.canUndo() ?? '')?.[1];
    if (name === undefined) return nothing;
    return html`<p class="small">
      ${name} is put in.
      <button
        class="act"
        @click=${() => {
          session.undo();
          this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
        }}
      >
        Take it out again
      </button>
    </p>`;
  }

  /** Of a watched result its owner may say which way is the better one. */
  #preference(compared: Compared, row: ComparedRow, at: number): TemplateResult | typeof nothing {
    const { watched, name } = row;
    if (!watched || compared.is.results[at].stood.amount === null) return nothing;
    const better = betterSaid(compared, row, at);
    const next = better === null ? 'less' : better === 'less' ? 'more' : null;
    return html`<button
      class="plain go"
      aria-label="${better === null ? 'which is better?' : `${better} is better`} ${name}"
      @click=${() => this.desk.watching.prefer(watched, next)}
    >
      ${better === null ? 'which is better?' : `${better} is better`}
    </button>`;
  }

  readonly #acts: WayActs = {
    call: (place, line) => this.#call(place, line),
    put: (place, key, line) => this.#put(place, key, line),
    mend: (place, key, formula) => this.#mend(place, key, formula),
    leaveIt: (key) => this.#drop(key),
    go: (cell) => {
      if (this.#beside.over) this.#away();
      this.session.bring(cell);
    },
    putIn: (place) => this.#putIn(place),
    copy: (place) => this.#add(place),
    takeAway: (place) => this.#remove(place),
  };

  get #ways(): WaysCompared {
    this.#compared ??= new WaysCompared(this.desk, () => this.requestUpdate());
    return this.#compared;
  }

  #look(): Compared {
    return this.#ways.look();
  }

  get #kept(): readonly AlternativeKept[] {
    return this.desk.watching.beside.alternatives;
  }

  #name(cell: CellId): string {
    return this.session.cell(cell)?.name ?? '';
  }

  #vary() {
    return this.renderRoot.querySelector('vary-line');
  }

  #varyToo(cell: CellId): void {
    const { watching } = this.desk;
    const key = watching.keyOf(cell);
    if (key === null) return;
    watching.lay((beside) => {
      const more = varying(key)(beside);
      return more.alternatives.length > 0 ? more : anotherWay(null)(anotherWay(null)(more));
    });
    const name = this.#name(cell);
    void this.updateComplete.then(() => {
      const inputs = [...this.renderRoot.querySelectorAll<HTMLInputElement>('.amount input')];
      inputs.find((input) => input.getAttribute('aria-label')?.startsWith(`${name}, `))?.focus();
    });
  }

  #drop(key: string): void {
    this.desk.watching.lay(varyingNoMore(key));
    this.#vary()?.focus();
  }

  #add(like: number | null): void {
    this.desk.watching.lay((beside) => {
      const more = anotherWay(like)(beside);
      return like === null && beside.alternatives.length === 0 ? anotherWay(null)(more) : more;
    });
    this.#toHead(this.#kept.length - 1);
  }

  #toHead(place: number): void {
    void this.updateComplete.then(() => {
      this.renderRoot.querySelectorAll<HTMLInputElement>('.called')[place]?.focus();
    });
  }

  #remove(place: number): void {
    const way = this.#kept[place];
    if (!way) return;
    this.gone = { place, way };
    this.desk.watching.lay(withoutWay(place));
    this.heard = `${way.name} is taken away.`;
    this.#vary()?.focus();
  }

  #bringBack = (): void => {
    if (!this.gone) return;
    const { place, way } = this.gone;
    this.gone = null;
    this.desk.watching.lay(broughtBack(place, way));
    this.#toHead(place);
  };

  #call(place: number, line: HTMLInputElement): void {
    const way = this.#kept[place];
    const name = line.value.trim();
    if (!way || name === '') line.value = way?.name ?? '';
    else this.desk.watching.lay(calledWay(place, name));
  }

  #put(place: number, key: string, line: HTMLInputElement): void {
    const formula = line.value.trim();
    line.value = formula;
    this.desk.watching.lay(putWay(place, key, formula));
    void this.updateComplete.then(() => this.#say(place));
  }

  #mend(place: number, key: string, formula: string): void {
    const at = this.#ways.varied().findIndex(([one]) => one === key);
    this.desk.watching.lay(putWay(place, key, formula));
    void this.updateComplete.then(() => {
      const row = this.renderRoot.querySelectorAll('.varied tr')[at];
      row?.querySelectorAll<HTMLInputElement>('.amount input')[place]?.focus();
      this.#say(place);
    });
  }

  /** What became of the price, once, after it was written. */
  #say(place: number): void {
    const { rows, is, ways } = this.#look();
    const [way, compared, [price]] = [this.#kept[place], ways[place], rows];
    if (!way || !compared || !price) return;
    const { door } = this.session;
    const [{ stood, moved }] = compared.results;
    const amount = stoodSaid(door, price.result, stood);
    const by = movedSaid(door, price.result, moved, is.results[0].stood, 'the same');
    this.heard = `${way.name}: price ${amount}, ${by}.`;
  }

  /** In one change, which undo takes back; of the notebook as it is without the tape that may be open. */
  #putIn(place: number): void {
    const { session } = this;
    session.leaveTape();
    const change = this.#look().ways[place]?.change;
    const way = this.#kept[place];
    if (!change || !way || !session.apply((door) => door.replaceText(change))) return;
    const text = `${way.name} is put in. Undo takes it out again.`;
    session.tell({ text, lasts: 'plain' });
    this.heard = text;
  }

  /** The page's own keys are for its rows; undoing goes through. */
  #key = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.defaultPrevented || event.isComposing) return;
    const [on] = event.composedPath();
    const plain = event.key.toLowerCase() === 'a' && !(on instanceof HTMLInputElement);
    if (event.key === 'Escape' || (plain && !event.altKey && !event.shiftKey)) {
      event.preventDefault();
      event.stopPropagation();
      this.#away();
    } else if (event.key !== 'F1') event.stopPropagation();
  };

  #happened({ kind }: Happening): void {
    if (kind === 'opened') this.#compared?.forget();
    if (this.open && ['opened', 'changed', 'tape', 'watched'].includes(kind)) {
      this.requestUpdate();
    }
  }

  #away = (): void => {
    if (this.open) this.dispatchEvent(new CustomEvent('away'));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'alternatives-sheet': AlternativesSheet;
  }
}
