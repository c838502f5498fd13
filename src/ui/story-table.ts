// The table that a cell holds, under the cell's row: values as they are shown, written in place, one change at a time;
// its header above them, in which columns are named, given what they work, moved and removed.
// Properties: `session`, `cell` (the id of the cell that holds it). Event, for a person's act: `about` with the sheet
// on which a column is removed.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import { isLost } from './page-places.ts';
import { look } from './look.ts';
import { RowWindow } from './row-window.ts';
import type { Happening } from './happening.ts';
import type { Session } from './session.ts';
import { styled } from './styled.ts';
import { addRow, moveColumn, moveRow, paste, removeRow, rowWith } from './table-acts.ts';
import { type BarActs, bar, finding, notTakenSaid } from './table-bar.ts';
import { type CellActs, type Drawing, columnName, headCell, rowCell } from './table-cells.ts';
import { HEADER, askedBy } from './table-keys.ts';
import { tableLook } from './table-look.ts';
import { type Place, isAt, isOfTexts } from './table-words.ts';
import { TableWriting } from './table-writing.ts';

/** So many rows are asked whether a column holds words, which stand left. */
const LOOKED_AT = 60;

@customElement('story-table')
export class StoryTable extends LitElement implements BarActs, CellActs {
  static override styles = [look, tableLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: CellId;

  @state() private at: Place = { row: 0, column: 0 };
  @state() private found = '';

  readonly #window = new RowWindow(this);
  readonly #writing = new TableWriting(this);
  #stop: (() => void) | null = null;
  #drawn = new Set<CellId>();
  #source = '';
  #ids: readonly (readonly CellId[])[] | null = null;
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
    const source = this.holder()?.table?.source ?? '';
    const reached = happening.ran.some((id) => this.#drawn.has(id));
    if (source !== this.#source || reached) this.requestUpdate();
  }

  /** From elsewhere: an undo, the working, the rod. */
  #bring(at: Place, keyboard: 'goes' | 'stays' | 'writes'): void {
    this.#writing.close();
    this.goTo(at);
    if (keyboard === 'writes') {
      this.write(this.at);
      return;
    }
    // On a button one presses many times the keyboard stays; from row to row it goes along.
    const here = this.matches(':focus-within') || this.renderRoot.querySelector(':focus') !== null;
    if (keyboard === 'goes' || here || isLost()) this.#takesKeyboard = 'yes';
    else void this.updateComplete.then(() => this.#here()?.scrollIntoView({ block: 'nearest' }));
  }

  protected override willUpdate(): void {
    const table = this.holder()?.table;
    if (!table) return;
    const row = Math.max(HEADER, Math.min(this.at.row, table.rows.length - 1));
    const column = Math.max(0, Math.min(this.at.column, table.columns.length - 1));
    if (row !== this.at.row || column !== this.at.column) this.at = { row, column };
    if ((this.#writing.written?.row ?? HEADER) >= table.rows.length) this.#writing.close();
  }

  protected override updated(): void {
    if (this.#takesKeyboard === 'no') return;
    this.#takesKeyboard = 'no';
    if (!this.#writing.written) this.#here()?.focus();
  }

  protected override render(): TemplateResult | typeof nothing {
    const cell = this.holder();
    if (!cell?.table) return nothing;
    const { columns, rows, source } = cell.table;
    this.#source = source;
    const ids = this.#rowIds();
    const stands = columns.map((_, k) => this.#stands(ids, k));
    const { session, at } = this;
    const drawing = { session, cell, at, stands, said: new Set<string>(), acts: this };
    const wide = columns.length + (this.#writing.written?.what === 'new' ? 2 : 1);
    const lines = this.#window.lines(rows.length, this.at.row);
    this.#drawn = new Set(lines.flatMap((one) => (one.kind === 'row' ? (ids[one.row] ?? []) : [])));
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
                columns.map((_, k) => this.#head(drawing, k)),
                () => this.#newColumn(cell),
              )}
            </tr>
          </thead>
          <tbody>
            ${repeat(
              lines,
              // The row that has the keyboard stays the same element wherever the others go.
              (one) => (one.kind === 'row' ? one.row : `above ${one.above}`),
              (one) =>
                one.kind === 'row'
                  ? this.#row(drawing, ids[one.row] ?? [], one.row)
                  : html`<tr class="room" aria-hidden="true">
                      <td colspan=${wide} ${styled({ height: `${one.height}px` })}></td>
                    </tr>`,
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
    const { written } = this.#writing;
    return written?.what === 'new' ? cells.toSpliced(written.column, 0, make()) : cells;
  }

  #newColumn(cell: Cell): unknown {
    const { written } = this.#writing;
    return (
      written && html`<th class="writing" scope="col">${this.#writing.nameLine(cell, written)}</th>`
    );
  }

  #head(drawing: Drawing, column: number): TemplateResult {
    const { cell, stands } = drawing;
    const { written } = this.#writing;
    if (!written || written.what === 'new' || !isAt(written, { row: HEADER, column })) {
      return headCell(drawing, column);
    }
    const name = cell.table?.columns[column]?.name ?? '';
    return html`<th class="writing ${stands[column] ?? ''}" scope="col">
      ${
        written.what === 'text'
          ? html`${columnName(name)}${this.#writing.line(cell, written)}`
          : this.#writing.nameLine(cell, written)
      }
    </th>`;
  }

  #row(drawing: Drawing, ids: readonly CellId[], row: number): TemplateResult {
    const { cell } = drawing;
    const { written } = this.#writing;
    return html`<tr
      class=${row === this.at.row ? 'at' : ''}
      data-row=${row}
      aria-rowindex=${row + 2}
    >
      <th class="number" scope="row">${row + 1}</th>
      ${this.#withNew(
        ids.map((id, column) =>
          written?.what === 'text' && isAt(written, { row, column })
            ? html`<td class="writing">${this.#writing.line(cell, written)}</td>`
            : rowCell(drawing, { row, column }, id),
        ),
        () => html`<td></td>`,
      )}
    </tr>`;
  }

  holder(): Cell | null {
    return this.session.cell(this.cell);
  }

  #rowIds(): readonly (readonly CellId[])[] {
    this.#ids ??= this.session.door.rows(this.cell) ?? [];
    return this.#ids;
  }

  #here(): HTMLElement | null {
    return this.renderRoot.querySelector<HTMLElement>('[tabindex="0"]:is(td, th)');
  }

  get place(): Place {
    return this.at;
  }

  takeKeyboard(): void {
    this.#takesKeyboard = 'yes';
    this.requestUpdate();
  }

  goTo(place: Place): void {
    this.at = place;
    if (place.row >= 0) this.#window.show(place.row);
  }

  reached(place: Place): void {
    if (!isAt(this.at, place)) this.at = place;
    if (place.row < 0) this.session.choose(this.cell);
    else this.session.chooseInRow(this.cell, place.row, place.column);
  }

  /** Taken before the click: what is kept on leaving another cell may move the rows under the pointer. */
  pressed(event: MouseEvent, place: Place): void {
    if (event.button !== 0) return;
    event.preventDefault();
    this.write(place);
  }

  write(place: Place): void {
    this.#writing.write(place);
  }

  rename(): void {
    this.#writing.rename(this.at.column);
  }

  formula(): void {
    this.#writing.write({ row: HEADER, column: this.at.column });
  }

  addColumn(after: number): void {
    this.#writing.addColumn(after);
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
    const cell = this.holder();
    const place = cell && this.#writing.keep() ? make(cell) : null;
    if (place) this.goTo(place);
    this.takeKeyboard();
  }

  #key = (event: KeyboardEvent): void => {
    const table = this.holder()?.table;
    if (event.isComposing || this.#writing.written || !table) return;
    const asked = askedBy(event, this.at, table);
    if (!asked) return;
    event.stopPropagation();
    event.preventDefault();
    switch (asked.does) {
      case 'go':
        this.goTo(asked.to);
        this.takeKeyboard();
        break;
      case 'write':
        this.#writing.write(this.at, asked.typed);
        break;
      case 'leave':
        this.session.bring(this.cell);
        break;
      case 'rename':
        this.rename();
        break;
      case 'add-row':
        this.addRow();
        break;
      case 'add-column':
        this.addColumn(asked.after);
        break;
      case 'move-row':
        this.moveRow(asked.by);
        break;
      case 'move-column':
        this.moveColumn(asked.by);
        break;
      case 'remove-row':
        this.removeRow();
        break;
      case 'remove-column':
        this.removeColumn();
        break;
    }
  };

  #paste = (event: ClipboardEvent): void => {
    const cell = this.holder();
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const { written } = this.#writing;
    if (!cell || text.trim() === '' || (written && written.what !== 'text')) return;
    // Into a line that is being written only several cells go past it.
    if (written && (written.row < 0 || !/[\t\r\n]/.test(text.trim()))) return;
    event.preventDefault();
    const place = written ?? this.at;
    this.#writing.close();
    paste(this.session, cell, place, text);
    this.takeKeyboard();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'story-table': StoryTable;
  }
}
