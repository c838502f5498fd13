// What if: up to three alternatives beside the notebook, each a few cells with other amounts, and what the watched
// results and the totals come to in each. Nothing in the notebook changes until one is put in. Alongside the page where
// there is room, over it where not. Properties: `desk`, `open`. Event, for a person's act: `away`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import { Alternatives, type ComparedAlternative } from '../moves-it/compared.ts';
import { type Result, leftOutOf, stoodOf } from '../moves-it/stood.ts';
import type { NotPut } from '../moves-it/written-in.ts';
import type { Cell } from '../notebook/document.ts';
import type { AlternativeKept, Alongside, WatchedKept } from '../store/alongside-shapes.ts';
import { bestAndWorst, isMoney } from './best-way.ts';
import type { Desk } from './desk.ts';
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
import { allCells } from './reading-order.ts';
import { movedSaid, stoodSaid } from './result-words.ts';
import type { Happening } from './happening.ts';
import type { Session } from './session.ts';
import { valueSaid } from './value-words.ts';
import type { Varied } from './vary-line.ts';
import './vary-line.ts';
import { type Watched, markOf } from './watching.ts';
import { whatIfLook } from './what-if-look.ts';

/** Narrower than this it lies over the notebook; on paper it flows, and what lies over a page is cut off. */
const ROOM_BESIDE = 'print, (min-width: 1281px)';

const TOTALS: readonly Result[] = [{ of: 'price' }, { of: 'direct' }];

/** A result in a row of its own. */
interface Row {
  readonly result: Result;
  readonly name: string;
  /** Null: of the totals, which are always here. */
  readonly watched: Watched | null;
  readonly better: WatchedKept['better'];
}

@customElement('what-if')
export class WhatIf extends LitElement {
  static override styles = [look, whatIfLook];

  @property({ attribute: false }) desk!: Desk;
  @property({ type: Boolean, reflect: true }) open = false;
  @state() private gone: { readonly place: number; readonly way: AlternativeKept } | null = null;
  @state() private heard = '';
  @query('dialog') private dialog!: HTMLDialogElement;
  #beside: Alternatives | null = null;
  /** What was compared last, and of what: while a tape is open that stands. */
  #compared: readonly ComparedAlternative[] = [];
  #of: unknown[] = [];
  #stop: (() => void) | null = null;
  #before: HTMLElement | null = null;
  readonly #room = window.matchMedia(ROOM_BESIDE);

  get session(): Session {
    return this.desk.session;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#room.addEventListener('change', this.#lay);
    window.addEventListener('beforeprint', this.#lay);
    window.addEventListener('afterprint', this.#lay);
    this.#stop = this.session.listen((happening) => this.#happened(happening));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#room.removeEventListener('change', this.#lay);
    window.removeEventListener('beforeprint', this.#lay);
    window.removeEventListener('afterprint', this.#lay);
    this.#stop?.();
  }

  protected override willUpdate(): void {
    const { watching } = this.desk;
    if (this.open) this.#compare(watching.beside);
  }

  protected override updated(changed: ReadonlyMap<PropertyKey, unknown>): void {
    if (!changed.has('open')) return;
    if (this.open) {
      this.#before = focusedDeep();
      this.#lay();
      const first = this.renderRoot.querySelector<HTMLElement>('.amount input');
      if (first) first.focus();
      else void this.#vary()?.updateComplete.then(() => this.#vary()?.focus());
    } else if (this.dialog.open) {
      this.dialog.close();
      this.gone = null;
      if (this.session.writing === null) this.#before?.focus();
    }
  }

  protected override render(): TemplateResult {
    return html`<dialog
      aria-label="What if"
      @cancel=${(event: Event) => {
        event.preventDefault();
        this.#away();
      }}
      @keydown=${this.#key}
    >
      <div class="top">
        <h2 tabindex="-1">What if</h2>
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
    const ways = this.#ways();
    const varied = this.#varied();
    const rows = this.#rows();
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
              ${ways.map((way, place) => this.#head(way, place))}
            </tr>
          </thead>
          <tbody class="varied">
            ${varied.map(([key, cell]) => this.#line(key, cell, ways))}
          </tbody>
          <tbody class="results">
            ${rows.map((row, at) => this.#result(row, at))} ${this.#checks(rows.length)}
          </tbody>
          <tbody class="ends">
            <tr>
              <td colspan="2">
                ${
                  ways.length < MOST_WAYS
                    ? html`<button class="act" @click=${() => this.#add(null)}>Another way</button>`
                    : nothing
                }
              </td>
              ${ways.map((way, place) => this.#ends(way, place, ways.length))}
            </tr>
          </tbody>
        </table>
      </div>
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

  #head(way: AlternativeKept, place: number): TemplateResult {
    return html`<th scope="col" class="way">
      <span class="printed">${way.name}</span>
      <input
        class="called"
        aria-label="Name of way ${place + 1}"
        title=${way.name}
        .value=${way.name}
        autocomplete="off"
        spellcheck="false"
        @change=${(event: Event) => this.#call(place, event.target as HTMLInputElement)}
        @keydown=${(event: KeyboardEvent) => this.#leaveLine(event, way.name)}
      />
    </th>`;
  }

  #line(key: string, cell: CellId, ways: readonly AlternativeKept[]): TemplateResult {
    const { session } = this;
    const name = this.#name(cell);
    return html`<tr>
      <th scope="row">
        <button class="tie" @click=${() => session.bring(cell)}>${name}</button>
        <button class="plain go" aria-label="leave it: ${name}" @click=${() => this.#drop(key)}>
          leave it
        </button>
      </th>
      <td class="is">${valueSaid(session.door, cell) ?? '?'}</td>
      ${ways.map((way, place) => {
        const written = way.puts.find((put) => put.key === key)?.formula ?? '';
        const not = this.#compared[place]?.refused.find((one) => one.cell === cell);
        const id = `why-${place}-${cell}`;
        return html`<td class="way amount">
          <span class="printed">${written || 'as it is'}</span>
          <input
            aria-label="${name}, ${way.name}"
            aria-invalid=${not ? 'true' : 'false'}
            aria-describedby=${not ? id : nothing}
            placeholder="as it is"
            autocapitalize="off"
            autocomplete="off"
            spellcheck="false"
            .value=${written}
            @change=${(event: Event) => this.#put(place, key, event.target as HTMLInputElement)}
            @keydown=${(event: KeyboardEvent) => this.#leaveLine(event, written)}
          />
          ${not ? this.#why(not, id, place, key) : nothing}
        </td>`;
      })}
    </tr>`;
  }

  #why({ why, fixes }: NotPut, id: string, place: number, key: string): TemplateResult {
    return html`<div class="why" id=${id}>
      <span>${why} Left as it is.</span>
      ${fixes.map(
        (fix) =>
          html`<button
            class="act"
            title=${fix.formula}
            @click=${() => this.#mend(place, key, fix.formula)}
          >
            ${fix.say}
          </button>`,
      )}
    </div>`;
  }

  #result(row: Row, at: number): TemplateResult {
    const { door } = this.session;
    const { result } = row;
    const now = stoodOf(door, result);
    const leftOut = leftOutOf(door, result);
    const others = this.#compared.map(({ results }) => results[at]);
    // A sum that leaves out more than the notebook's own is in no order with it.
    const whole = others.map((one) =>
      one.leftOut === leftOut ? one.stood : { ...one.stood, amount: null },
    );
    const marks = bestAndWorst(door, result, [now, ...whole], row.better);
    return html`<tr data-mark=${markOf(result)}>
      <th scope="row">${row.name}${this.#preference(row)}</th>
      <td class="is ${marks[0] ?? ''}">
        <b>${stoodSaid(door, result, now)}</b>${soFar(leftOut)} ${marked(marks[0])}
      </td>
      ${others.map(({ stood, moved, leftOut: out }, place) => {
        const mark = marks[place + 1];
        return html`<td class="way ${mark ?? ''}">
          <b>${stoodSaid(door, result, stood)}</b>
          <span class="by ${moved.moves}"
            >${
              out === leftOut
                ? movedSaid(door, result, moved, now, 'the same')
                : `so far; ${out === 1 ? '1 line' : `${out} lines`} not yet known`
            }</span
          >
          ${marked(mark)}
        </td>`;
      })}
    </tr>`;
  }

  /** What does not hold in each of them, watched or not: the cheaper way may be the one that can't be built. */
  #checks(from: number): TemplateResult | typeof nothing {
    const { session } = this;
    const checks = this.#checked();
    if (checks.length === 0) return nothing;
    const fails = (texts: readonly (string | null)[]): readonly Cell[] =>
      checks.filter((_, i) => texts[i] !== 'yes');
    const now = fails(checks.map(({ id }) => session.door.shown(id)?.text ?? null));
    return html`<tr class="checks">
      <th scope="row">Checks</th>
      <td class="is">${failing(now, [])}</td>
      ${this.#compared.map(({ results }) => {
        const there = fails(results.slice(from).map(({ stood }) => stood.text));
        return html`<td class="way">${failing(there, now)}</td>`;
      })}
    </tr>`;
  }

  #checked(): readonly Cell[] {
    const { door } = this.session;
    return allCells(door.notebook).filter(({ id }) => door.state(id).kind === 'check');
  }

  /** Of a watched result only its owner knows which way is the better one, unless it is money or a check. */
  #preference({ watched, name, result }: Row): TemplateResult | typeof nothing {
    const { door } = this.session;
    if (!watched || stoodOf(door, result).amount === null) return nothing;
    const better = watched.kept.better ?? (isMoney(stoodOf(door, result)) ? 'less' : null);
    const next = better === null ? 'less' : better === 'less' ? 'more' : null;
    return html`<button
      class="plain go"
      aria-label="${better === null ? 'which is better?' : `${better} is better`} ${name}"
      @click=${() => this.desk.watching.prefer(watched, next)}
    >
      ${better === null ? 'which is better?' : `${better} is better`}
    </button>`;
  }

  #ends(way: AlternativeKept, place: number, many: number): TemplateResult {
    const nothingElse = (this.#compared[place]?.change ?? null) === null;
    return html`<td class="way">
      <button
        class="act first"
        aria-label="Put in ${way.name}"
        aria-disabled=${nothingElse ? 'true' : 'false'}
        title=${nothingElse ? 'Nothing in it is otherwise than in the notebook' : ''}
        @click=${() => this.#putIn(place)}
      >
        Put in
      </button>
      ${
        many < MOST_WAYS
          ? html`<button
              class="plain"
              aria-label="Copy ${way.name}"
              @click=${() => this.#add(place)}
            >
              Copy
            </button>`
          : nothing
      }
      <button class="plain" aria-label="Take away ${way.name}" @click=${() => this.#remove(place)}>
        Take away
      </button>
    </td>`;
  }

  #rows(): readonly Row[] {
    const { watching } = this.desk;
    const entries = watching.entries;
    const totals = TOTALS.map((result): Row => {
      const watched = entries.find((one) => markOf(one.result) === markOf(result)) ?? null;
      return {
        result,
        name: watching.nameOf(result),
        watched,
        better: watched?.kept.better ?? null,
      };
    });
    const known = new Set(TOTALS.map(markOf));
    const others = entries
      .filter(({ result }) => !known.has(markOf(result)))
      .map((watched): Row => ({ ...watched, watched, better: watched.kept.better }));
    return [...totals, ...others];
  }

  #ways(): readonly AlternativeKept[] {
    return this.desk.watching.beside.alternatives;
  }

  /** The cells that are varied and stand in the notebook, by their keys. */
  #varied(): readonly (readonly [string, CellId])[] {
    const { watching } = this.desk;
    const { varied } = watching.beside;
    const cells = watching.cellsOf(varied);
    return varied.flatMap((key) => {
      const cell = cells.get(key);
      return cell === undefined ? [] : [[key, cell] as const];
    });
  }

  #compare({ alternatives, varied }: Alongside): void {
    const { desk, session } = this;
    // What a tape passes over is not meant yet.
    if (session.trial && this.#compared.length === alternatives.length) return;
    const rows = this.#rows();
    const results = [
      ...rows.map(({ result }) => result),
      ...this.#checked().map(({ id }): Result => ({ of: 'cell', cell: id })),
    ];
    const of = [session.door.notebook, alternatives, varied, results.map(markOf).join()];
    if (of.every((each, i) => each === this.#of[i])) return;
    this.#of = of;
    this.#beside ??= new Alternatives((text) => desk.openBeside(text));
    const cells = desk.watching.cellsOf(varied);
    const meant = alternatives.map(({ name, puts }) => ({
      name,
      puts: puts.flatMap(({ key, formula }) => {
        const cell = cells.get(key);
        return cell === undefined ? [] : [{ cell, formula }];
      }),
    }));
    this.#compared = this.#beside.compare(session.door, meant, results);
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
    this.#toHead(this.#ways().length - 1);
  }

  #toHead(place: number): void {
    void this.updateComplete.then(() => {
      this.renderRoot.querySelectorAll<HTMLInputElement>('.called')[place]?.focus();
    });
  }

  #remove(place: number): void {
    const way = this.#ways()[place];
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
    const way = this.#ways()[place];
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
    const at = this.#varied().findIndex(([one]) => one === key);
    this.desk.watching.lay(putWay(place, key, formula));
    void this.updateComplete.then(() => {
      const row = this.renderRoot.querySelectorAll('.varied tr')[at];
      row?.querySelectorAll<HTMLInputElement>('.amount input')[place]?.focus();
      this.#say(place);
    });
  }

  /** What became of the totals, once, after it was written. */
  #say(place: number): void {
    const compared = this.#compared[place];
    const way = this.#ways()[place];
    if (!compared || !way) return;
    const { door } = this.session;
    const [price] = this.#rows();
    const [{ stood, moved }] = compared.results;
    const amount = stoodSaid(door, price.result, stood);
    const by = movedSaid(door, price.result, moved, stoodOf(door, price.result), 'the same');
    this.heard = `${way.name}: price ${amount}, ${by}.`;
  }

  /** In one change, which undo takes back. */
  #putIn(place: number): void {
    const change = this.#compared[place]?.change;
    const way = this.#ways()[place];
    if (!change || !way || !this.session.apply((door) => door.replaceText(change))) return;
    const text = `${way.name} is put in. Undo takes it out again.`;
    this.session.tell({ text, lasts: 'plain' });
    this.heard = text;
  }

  /** Esc in a line that was written in leaves it as it was; else it goes on and puts the sheet away. */
  #leaveLine(event: KeyboardEvent, was: string): void {
    const line = event.target as HTMLInputElement;
    if (event.key !== 'Escape' || line.value === was) return;
    event.preventDefault();
    event.stopPropagation();
    line.value = was;
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
    if (kind === 'opened') this.#of = [];
    if (this.open && ['opened', 'changed', 'tape', 'watched'].includes(kind)) {
      this.requestUpdate();
    }
  }

  /** Alongside the notebook, or over it; on paper neither: it flows from page to page. */
  #lay = (event?: Event): void => {
    if (!this.open) return;
    const over = !this.#room.matches && event?.type !== 'beforeprint';
    if (this.dialog.open && this.dialog.classList.contains('over') === over) return;
    this.dialog.close();
    this.dialog.classList.toggle('over', over);
    if (over) this.dialog.showModal();
    else this.dialog.show();
  };

  #away = (): void => {
    if (this.open) this.dispatchEvent(new CustomEvent('away'));
  };
}

function soFar(leftOut: number): TemplateResult | typeof nothing {
  return leftOut > 0 ? html` <span class="small">so far</span>` : nothing;
}

/** Those that fail though they did not before stand out, each with its caution. */
function failing(cells: readonly Cell[], before: readonly Cell[]): TemplateResult {
  if (cells.length === 0) return html`<span class="by">all hold</span>`;
  return html`${cells.map((cell) => {
    const caution = cell.remarks.find(({ kind }) => kind === 'caution')?.text;
    const fresh = !before.includes(cell);
    return html`<div class="fails ${fresh ? 'fresh' : ''}">
      <b>${cell.name}</b> ${fresh && caution ? `does not hold. ${caution}` : 'does not hold'}
    </div>`;
  })}`;
}

function marked(mark: 'best' | 'worst' | null | undefined): TemplateResult | typeof nothing {
  return mark ? html`<span class="mark">${mark}</span>` : nothing;
}

function focusedDeep(): HTMLElement | null {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at instanceof HTMLElement ? at : null;
}

declare global {
  interface HTMLElementTagNameMap {
    'what-if': WhatIf;
  }
}
