// The table that a cell holds, under the cell's row: values as they are shown, written in place, one change at a time;
// its header above them, in which columns are named, given what they work, moved and removed.
// Properties: `session`, `cell` (the id of the cell that holds it). Event, for a person's act: `about` with the sheet
// on which a column is removed.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import type { Report } from '../words/report.ts';
import { isLost } from './page-places.ts';
import { look } from './look.ts';
import { RowWindow } from './row-window.ts';
import type { Happening, Session } from './session.ts';
import './story-line.ts';
import { styled } from './styled.ts';
import {
  addColumn,
  addRow,
  moveColumn,
  moveRow,
  paste,
  removeRow,
  renameColumn,
  rowWith,
  writeText,
} from './table-acts.ts';
import { type BarActs, bar, finding, notTakenSaid } from './table-bar.ts';
import { HEADER, farTo, goesTo, steppedTo } from './table-keys.ts';
import type { KeptText, TableLine } from './table-line.ts';
import './table-line.ts';
import { tableLook } from './table-look.ts';
import { type Place, isOfTexts, ownText, rowCellShown } from './table-words.ts';

/** So many rows are asked whether a column holds words, which stand left. */
const LOOKED_AT = 60;

/** What is being written: a row's text or what a column works, a column's name, a column still to come. */
type Written =
  | (Place & { readonly what: 'text'; readonly typed: string | null })
  | (Place & { readonly what: 'name' })
  | (Place & { readonly what: 'new' });

@customElement('story-table')
export class StoryTable extends LitElement implements BarActs {
  static override styles = [look, tableLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: CellId;

  @state() private at: Place = { row: 0, column: 0 };
  @state() private written: Written | null = null;
  @state() private found = '';

  readonly #window = new RowWindow(this);
  #stop: (() => void) | null = null;
  #drawn = new Set<CellId>();
  #source = '';
  #ids: readonly (readonly CellId[])[] | null = null;
  /** What was said to be wrong in a column. */
  readonly #said = new Set<string>();
  /** The keyboard is to be put where `at` stands once that is drawn. */
  #takesKeyboard: 'no' | 'yes' = 'no';

  override connectedCallback(): void {
    super.connectedCallback();
    this.requestUpdate();
    // There may be many tables: only what shows in this one draws it again.
    this.#stop = this.session.listen((happening) => this.#happened(happening));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
  }

  #happened(happening: Happening): void {
    if (happening.kind === 'bring-row') {
      if (happening.at.cell === this.cell) this.#bring(happening.at, happening.keyboard);
      return;
    }
    if (happening.kind !== 'changed') return;
    this.#ids = null;
    const source = this.#holder()?.table?.source ?? '';
    const reached = happening.ran.some((id) => this.#drawn.has(id));
    if (source !== this.#source || reached) this.requestUpdate();
  }

  /** From elsewhere: an undo, the working, the rod. */
  #bring(at: Place, keyboard: 'goes' | 'stays' | 'writes'): void {
    this.written = null;
    this.#goTo(at);
    this.requestUpdate();
    if (keyboard === 'writes') {
      this.#write(this.at);
      return;
    }
    // On a button one presses many times the keyboard stays; from row to row it goes along.
    const here = this.matches(':focus-within') || this.renderRoot.querySelector(':focus') !== null;
    if (keyboard === 'goes' || here || isLost()) this.#takesKeyboard = 'yes';
    else void this.updateComplete.then(() => this.#place()?.scrollIntoView({ block: 'nearest' }));
  }

  protected override willUpdate(): void {
    const table = this.#holder()?.table;
    if (!table) return;
    const row = Math.max(HEADER, Math.min(this.at.row, table.rows.length - 1));
    const column = Math.max(0, Math.min(this.at.column, table.columns.length - 1));
    if (row !== this.at.row || column !== this.at.column) this.at = { row, column };
    if (this.written && this.written.row >= table.rows.length) this.written = null;
  }

  protected override updated(): void {
    if (this.#takesKeyboard === 'no') return;
    this.#takesKeyboard = 'no';
    if (!this.written) this.#place()?.focus();
  }

  protected override render(): TemplateResult | typeof nothing {
    const cell = this.#holder();
    if (!cell?.table) return nothing;
    const { columns, rows, source } = cell.table;
    this.#said.clear();
    this.#source = source;
    const ids = this.#rowIds();
    const stands = columns.map((_, k) => this.#stands(ids, k));
    const wide = columns.length + (this.written?.what === 'new' ? 2 : 1);
    const stretches = this.#window.stretches(rows.length, this.at.row);
    this.#drawn = new Set(
      stretches.flatMap((one) => (one.kind === 'rows' ? ids.slice(one.from, one.to).flat() : [])),
    );
    return html`
      <div class="scroll" @scroll=${this.#window.scrolled}>
        <table
          role="grid"
          aria-label=${cell.name}
          aria-rowcount=${rows.length + 1}
          aria-colcount=${columns.length + 1}
          @keydown=${this.#key}
          @paste=${this.#paste}
        >
          <thead>
            <tr class=${this.at.row < 0 ? 'at' : ''} aria-rowindex="1">
              <th class="number" scope="col"><span class="heard">Row</span></th>
              ${this.#withNew(
                columns.map((_, k) => this.#head(cell, k, stands[k] ?? '')),
                () => this.#newColumn(cell),
              )}
            </tr>
          </thead>
          <tbody>
            ${stretches.map((one) =>
              one.kind === 'room'
                ? html`<tr class="room" aria-hidden="true">
                    <td colspan=${wide} ${styled({ height: `${one.height}px` })}></td>
                  </tr>`
                : ids
                    .slice(one.from, one.to)
                    .map((row, r) => this.#row(cell, row, one.from + r, stands)),
            )}
          </tbody>
        </table>
      </div>
      ${bar(cell, this.at, this)}
      ${
        this.#window.whole
          ? nothing
          : finding(cell, this.found, (words) => {
              const place = rowWith(this.session, cell, this.at.row, words);
              this.found = place ? '' : `“${words}” stands in no row.`;
              if (place) this.#bring(place, 'goes');
            })
      }
      ${notTakenSaid(columns, this.session.notTaken(cell.id), () => {
        this.session.setNotTaken(cell.id, []);
        this.requestUpdate();
      })}
    `;
  }

  /** Words stand left and figures right. */
  #stands(ids: readonly (readonly CellId[])[], k: number): string {
    const some = ids.slice(0, LOOKED_AT).map((row) => row[k]);
    return isOfTexts(this.session.door, some) ? 'texts' : 'figures';
  }

  /** The cells of a row or header with one more where a column is to come. */
  #withNew(cells: readonly unknown[], make: () => unknown): readonly unknown[] {
    const { written } = this;
    return written?.what === 'new' ? cells.toSpliced(written.column, 0, make()) : cells;
  }

  #newColumn(cell: Cell): TemplateResult {
    return html`<th class="writing" scope="col">
      <story-line
        label="Name of the new column"
        hint="Name, or name: formula"
        @keep=${(event: CustomEvent<string>) => this.#addColumn(cell, event.detail)}
        @leave=${this.#leave}
      ></story-line>
    </th>`;
  }

  #head(cell: Cell, column: number, stands: string): TemplateResult {
    const { name = '', formula = null } = cell.table?.columns[column] ?? {};
    const place = { row: HEADER, column };
    const { written } = this;
    const writes = written && written.what !== 'new' && isAt(written, place) ? written : null;
    const shown = name || html`<span class="heard">no name</span>`;
    if (writes?.what === 'name') {
      return html`<th class="writing ${stands}" scope="col">
        <story-line
          label="Name of the column"
          .value=${name}
          @keep=${(event: CustomEvent<string>) => this.#rename(cell, event.detail)}
          @leave=${this.#leave}
        ></story-line>
      </th>`;
    }
    if (writes)
      return html`<th class="writing ${stands}" scope="col">
        ${shown}${this.#line(cell, writes)}
      </th>`;
    return html`<th
      class=${stands}
      scope="col"
      tabindex=${isAt(this.at, place) ? 0 : -1}
      @focus=${() => this.#reached(place)}
      @dblclick=${() => this.rename()}
      @click=${(event: MouseEvent) => (event.detail === 0 ? this.#write(place) : undefined)}
    >
      ${shown}${
        formula === null
          ? nothing
          : html`<span class="formula" @click=${() => this.#write(place)}>${formula}</span>`
      }
    </th>`;
  }

  #row(cell: Cell, ids: readonly CellId[], row: number, stands: readonly string[]): TemplateResult {
    return html`<tr
      class=${row === this.at.row ? 'at' : ''}
      data-row=${row}
      aria-rowindex=${row + 2}
    >
      <th class="number" scope="row">${row + 1}</th>
      ${this.#withNew(
        ids.map((id, column) => this.#rowCell(cell, { row, column }, id, stands[column] ?? '')),
        () => html`<td></td>`,
      )}
    </tr>`;
  }

  #rowCell(cell: Cell, place: Place, id: CellId, stands: string): TemplateResult {
    const { written, at } = this;
    if (written?.what === 'text' && isAt(written, place)) {
      return html`<td class="writing">${this.#line(cell, written)}</td>`;
    }
    const { door } = this.session;
    const shown = rowCellShown(door, cell, place, id);
    const { kind } = door.state(id);
    const marks = { value: kind, fault: 'ringed', blank: 'heard', open: 'open', waits: 'waits' };
    const mark = shown.ofColumn === null || shown.look === 'fault' ? marks[shown.look] : 'set-here';
    return html`<td
      class="${stands} ${kind}"
      tabindex=${isAt(at, place) ? 0 : -1}
      @focus=${() => this.#reached(place)}
      @mousedown=${(event: MouseEvent) => this.#pressed(event, place)}
      @click=${(event: MouseEvent) => (event.detail === 0 ? this.#write(place) : undefined)}
    >
      <span class=${mark}>${shown.look === 'blank' ? 'nothing yet' : shown.text}</span>${
        shown.ofColumn === null
          ? nothing
          : html`<span class="of-column">set in this row; its column: ${shown.ofColumn}</span>`
      }${shown.report ? html`<span class="why">${this.#why(place, shown.report)}</span>` : nothing}
    </td>`;
  }

  /** A column at fault is so in every row; it is said at length in the first that is drawn. */
  #why({ column }: Place, { headline, explanation }: Report): string {
    const key = `${column} ${headline}`;
    if (this.#said.has(key)) return headline;
    this.#said.add(key);
    return `${headline} ${explanation}`;
  }

  #line(cell: Cell, written: Written & { readonly what: 'text' }): TemplateResult {
    const { row, column, typed } = written;
    return html`<table-line
      .session=${this.session}
      .cell=${cell}
      .place=${{ row, column }}
      .text=${typed ?? textAt(cell, written)}
      opened=${typed === null ? 'all' : 'end'}
      @keep=${({ detail }: CustomEvent<KeptText>) => this.#keepAnd(detail)}
      @leave=${this.#leave}
      @focusout=${this.#blurred}
    ></table-line>`;
  }

  #holder(): Cell | null {
    return this.session.cell(this.cell);
  }

  #rowIds(): readonly (readonly CellId[])[] {
    this.#ids ??= this.session.door.rows(this.cell) ?? [];
    return this.#ids;
  }

  #place(): HTMLElement | null {
    return this.renderRoot.querySelector<HTMLElement>('[tabindex="0"]:is(td, th)');
  }

  #goTo(place: Place): void {
    this.at = place;
    if (place.row >= 0) this.#window.show(place.row);
  }

  #reached(place: Place): void {
    if (!isAt(this.at, place)) this.at = place;
    if (place.row < 0) this.session.choose(this.cell);
    else this.session.chooseInRow(this.cell, place.row, place.column);
  }

  /** Taken before the click: what is kept on leaving another cell may move the rows under the pointer. */
  #pressed(event: MouseEvent, place: Place): void {
    if (event.button !== 0) return;
    event.preventDefault();
    this.#write(place);
  }

  #write(place: Place, typed: string | null = null): void {
    if (!this.#opens(place)) return;
    this.written = { ...place, what: 'text', typed };
  }

  /** False where what was open is refused and stays. */
  #opens(place: Place): boolean {
    if (this.written && !this.#keep()) return false;
    if (this.session.writing) this.session.write(null);
    this.#goTo(place);
    this.#reached(place);
    return true;
  }

  rename(): void {
    const { column } = this.at;
    if (this.#opens({ row: HEADER, column })) this.written = { row: HEADER, column, what: 'name' };
  }

  formula(): void {
    this.#write({ row: HEADER, column: this.at.column });
  }

  addColumn(after: number): void {
    if (!this.#opens(this.at)) return;
    this.written = { row: HEADER, column: after + 1, what: 'new' };
  }

  removeColumn(): void {
    const detail = { sheet: 'removing-column', cell: this.cell, column: this.at.column };
    this.dispatchEvent(new CustomEvent('about', { detail, bubbles: true, composed: true }));
  }

  moveColumn(by: -1 | 1): void {
    this.#done((cell) => moveColumn(this.session, cell, this.at, by));
  }

  addRow(): void {
    this.#done((cell) => addRow(this.session, cell, this.at));
  }

  removeRow(): void {
    this.#done((cell) => removeRow(this.session, cell, this.at));
  }

  moveRow(by: -1 | 1): void {
    this.#done((cell) => moveRow(this.session, cell, this.at, by));
  }

  #done(make: (cell: Cell) => Place | null): void {
    const cell = this.#holder();
    const place = cell && (!this.written || this.#keep()) ? make(cell) : null;
    if (place) this.#goTo(place);
    this.#takesKeyboard = 'yes';
    this.requestUpdate();
  }

  #addColumn(cell: Cell, text: string): void {
    const { written } = this;
    if (written?.what !== 'new') return;
    const place =
      text.trim() === '' ? null : addColumn(this.session, cell, written.column - 1, text);
    // Refused, the line stays to be mended.
    if (text.trim() !== '' && !place) return;
    if (place) this.#goTo(place);
    this.#leave();
  }

  #rename(cell: Cell, name: string): void {
    if (renameColumn(this.session, cell, this.at.column, name)) this.#leave();
  }

  /** Keeps what is written in the open line; false where it was refused: it stays to be mended. */
  #keep(text?: string): boolean {
    const { written } = this;
    const cell = this.#holder();
    if (written?.what !== 'text' || !cell) {
      this.written = null;
      return true;
    }
    const line = this.renderRoot.querySelector<TableLine>('table-line');
    const wanted = text ?? line?.written ?? textAt(cell, written);
    // What was open is closed first: taking its line away blurs it.
    this.written = null;
    if (writeText(this.session, cell, written, wanted)) return true;
    this.written = { ...written, typed: wanted };
    return false;
  }

  #keepAnd({ text, goes }: KeptText): void {
    const { written } = this;
    if (!written || !this.#keep(text)) return;
    const table = this.#holder()?.table;
    const next = table ? goesTo(written, goes, table) : null;
    if (next) this.#write(next);
    else if (goes === 'below') {
      this.addRow();
      this.#write({ ...this.at, column: written.column });
    } else this.#leave();
  }

  #leave = (): void => {
    this.written = null;
    this.#takesKeyboard = 'yes';
    this.requestUpdate();
  };

  #blurred = (): void => {
    requestAnimationFrame(() => {
      if (!this.written || !this.isConnected || !document.hasFocus()) return;
      if (this.session.besideGuide) return;
      const { activeElement } = this.renderRoot as ShadowRoot;
      if (activeElement?.closest('.writing')) return;
      this.#keep();
    });
  };

  #key = (event: KeyboardEvent): void => {
    if (event.isComposing || this.written) return;
    if (!this.#keyed(event)) return;
    event.stopPropagation();
    event.preventDefault();
  };

  #keyed(event: KeyboardEvent): boolean {
    const table = this.#holder()?.table;
    if (!table) return false;
    const { key, altKey, shiftKey } = event;
    const ctrl = event.ctrlKey || event.metaKey;
    const onHeader = this.at.row < 0;
    if (altKey && !ctrl) return this.#moves(key);
    const next = ctrl ? farTo(key, table) : steppedTo(this.at, key, table);
    if (next) {
      this.#goTo(next);
      this.#takesKeyboard = 'yes';
      return true;
    }
    if (ctrl && key === 'Delete') {
      if (onHeader) this.removeColumn();
      else if (table.rows.length > 0) this.removeRow();
      return true;
    }
    if (ctrl || altKey) return false;
    if (key === 'Insert' && onHeader) this.addColumn(this.at.column - (shiftKey ? 1 : 0));
    else if (key === 'Insert') this.addRow();
    else if (key === 'F2' && onHeader) this.rename();
    else if (key === 'Enter' || key === 'F2') this.#write(this.at);
    else if (onHeader) return false;
    else if (key === 'Delete' || key === 'Backspace') this.#write(this.at, '');
    else if (key.length === 1 && key !== ' ') this.#write(this.at, key);
    else return false;
    return true;
  }

  #moves(key: string): boolean {
    const onHeader = this.at.row < 0;
    if (!onHeader && (key === 'ArrowUp' || key === 'ArrowDown')) {
      this.moveRow(key === 'ArrowUp' ? -1 : 1);
      return true;
    }
    if (!onHeader || (key !== 'ArrowLeft' && key !== 'ArrowRight')) return false;
    this.moveColumn(key === 'ArrowLeft' ? -1 : 1);
    return true;
  }

  #paste = (event: ClipboardEvent): void => {
    const cell = this.#holder();
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (!cell || text.trim() === '' || (this.written && this.written.what !== 'text')) return;
    // Into a line that is being written only several cells go past it.
    if (this.written && (this.written.row < 0 || !/[\t\r\n]/.test(text.trim()))) return;
    event.preventDefault();
    const place = this.written ?? this.at;
    this.written = null;
    paste(this.session, cell, place, text);
    this.#takesKeyboard = 'yes';
    this.requestUpdate();
  };
}

function isAt(one: Place, other: Place): boolean {
  return one.row === other.row && one.column === other.column;
}

/** What is written at a place: in its row, or as the column's formula. */
function textAt(cell: Cell, { row, column }: Place): string {
  return row < 0 ? (cell.table?.columns[column]?.formula ?? '') : ownText(cell, { row, column });
}

declare global {
  interface HTMLElementTagNameMap {
    'story-table': StoryTable;
  }
}
