// The table that a cell holds, under the cell's row: values as they are shown, written in place, one change at a time.
// Properties: `session`, `cell` (the id of the cell that holds it).
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import type { Cell, Finding, TableColumn } from '../notebook/document.ts';
import type { Applied, Draft } from '../notebook/estimate.ts';
import type { NotPasted } from '../notebook/paste-edit.ts';
import type { Report } from '../words/report.ts';
import { problemsSaid, said } from './formula-words.ts';
import { look } from './look.ts';
import type { Door, Session } from './session.ts';
import { steppedTo, tabbedTo } from './table-keys.ts';
import { tableLook } from './table-look.ts';
import {
  type Place,
  isOfTexts,
  isOneCell,
  notPastedSaid,
  ownText,
  rowCellShown,
} from './table-words.ts';

/** So many rows are drawn until the others are asked for. */
const ROWS_DRAWN = 200;

interface Written extends Place {
  readonly text: string;
  readonly draft: Draft | null;
}

@customElement('story-table')
export class StoryTable extends LitElement {
  static override styles = [look, tableLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) cell!: CellId;

  @state() private at: Place = { row: 0, column: 0 };
  @state() private written: Written | null = null;
  @state() private refused: readonly NotPasted[] = [];
  @state() private most = ROWS_DRAWN;

  #stop: (() => void) | null = null;
  #drawn = new Set<CellId>();
  #source = '';
  /** What was said to be wrong in a column. */
  readonly #said = new Set<string>();
  /** The keyboard is to be put where `at` or `written` stands once that is drawn. */
  #takesKeyboard: 'all' | 'end' | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.requestUpdate();
    // There may be many tables: only what shows in this one draws it again.
    this.#stop = this.session.listen((happening) => {
      if (happening.kind !== 'changed') return;
      const source = this.#holder()?.table?.source ?? '';
      const reached = happening.ran.some((id) => this.#drawn.has(id));
      if (source !== this.#source || reached) this.requestUpdate();
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
  }

  protected override willUpdate(): void {
    const table = this.#holder()?.table;
    if (!table) return;
    const row = Math.max(0, Math.min(this.at.row, table.rows.length - 1));
    const column = Math.max(0, Math.min(this.at.column, table.columns.length - 1));
    if (row !== this.at.row || column !== this.at.column) this.at = { row, column };
    if (row >= this.most) this.most = Infinity;
    if (this.written && this.written.row >= table.rows.length) this.written = null;
  }

  protected override updated(): void {
    const takes = this.#takesKeyboard;
    this.#takesKeyboard = null;
    if (!takes) return;
    const input = this.renderRoot.querySelector('input');
    if (!input) {
      this.renderRoot.querySelector<HTMLElement>('td[tabindex="0"]')?.focus();
      return;
    }
    input.focus();
    if (takes === 'all') input.select();
    else input.setSelectionRange(input.value.length, input.value.length);
  }

  protected override render(): TemplateResult | typeof nothing {
    const cell = this.#holder();
    if (!cell?.table) return nothing;
    const { columns, rows, source } = cell.table;
    const { door } = this.session;
    const ids = door.rows(cell.id) ?? [];
    const drawn = ids.slice(0, this.most);
    this.#said.clear();
    this.#drawn = new Set(drawn.flat());
    this.#source = source;
    const texts = columns.map((_, k) =>
      isOfTexts(
        door,
        drawn.map((row) => row[k]),
      ),
    );
    const left = rows.length - drawn.length;
    return html`
      <div class="scroll">
        <table
          role="grid"
          aria-label=${cell.name}
          aria-rowcount=${rows.length + 1}
          @keydown=${this.#key}
          @paste=${this.#paste}
        >
          <thead>
            <tr aria-rowindex="1">
              <th class="number" scope="col"><span class="heard">Row</span></th>
              ${columns.map((column, k) => this.#head(column, texts[k] ? 'texts' : 'figures'))}
            </tr>
          </thead>
          <tbody>
            ${drawn.map(
              (row, r) =>
                html`<tr class=${r === this.at.row ? 'at' : ''} aria-rowindex=${r + 2}>
                  <th class="number" scope="row">${r + 1}</th>
                  ${row.map((id, k) =>
                    this.#rowCell(cell, { row: r, column: k }, id, texts[k] ? 'texts' : 'figures'),
                  )}
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${this.#under(cell, rows.length, left)} ${this.#refusedSaid(columns)}
    `;
  }

  #head({ name, formula }: TableColumn, stands: string): TemplateResult {
    return html`<th class=${stands} scope="col">
      ${name || html`<span class="heard">no name</span>`}${
        formula === null ? nothing : html`<span class="formula">${formula}</span>`
      }
    </th>`;
  }

  #rowCell(cell: Cell, place: Place, id: CellId, stands: string): TemplateResult {
    const { written, at } = this;
    if (written && isAt(written, place)) return this.#writing(cell, written);
    const { door } = this.session;
    const shown = rowCellShown(door, cell, place, id);
    const { kind } = door.state(id);
    const ends = door.shownRange(id);
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
      }${ends ? html`<span class="of-column">${ends.text}</span>` : nothing}${shown.report ? html`<span class="why">${this.#why(place, shown.report)}</span>` : nothing}
    </td>`;
  }

  /** A column at fault is so in every row; it is said at length in the first. */
  #why({ column }: Place, { headline, explanation }: Report): string {
    const key = `${column} ${headline}`;
    if (this.#said.has(key)) return headline;
    this.#said.add(key);
    return `${headline} ${explanation}`;
  }

  #writing(cell: Cell, written: Written): TemplateResult {
    const { text, draft, row, column } = written;
    const problems = text.trim() === '' ? [] : (draft?.reading.problems ?? []);
    const head = cell.table?.columns[column];
    return html`<td class="writing">
      <input
        aria-label="${head?.name ?? ''}, row ${row + 1}"
        aria-describedby="said"
        aria-invalid=${problems.length > 0 ? 'true' : 'false'}
        .value=${text}
        autocapitalize="off"
        autocomplete="off"
        spellcheck="false"
        enterkeyhint="done"
        @input=${(event: InputEvent) => this.#read((event.target as HTMLInputElement).value)}
        @blur=${this.#blurred}
      />
      <div class="said" id="said" aria-live="polite">
        ${
          text.trim() === '' && head?.formula
            ? html`<span class="small">Left to its column: ${draft?.shown?.text ?? '?'}</span>`
            : said(this.session, text, draft, problems)
        }
      </div>
      ${problemsSaid(problems, (formula) => {
        this.#read(formula);
        this.#takesKeyboard = 'end';
      })}
    </td>`;
  }

  #under(cell: Cell, many: number, left: number): TemplateResult {
    const { row } = this.at;
    const named = `row ${row + 1}`;
    const act = (words: string, keys: string, can: boolean, make: () => void): TemplateResult =>
      html`<button class="plain" title=${keys} ?disabled=${!can} @click=${make}>${words}</button>`;
    return html`<div class="under" role="group" aria-label="Rows of ${cell.name}">
      ${
        left > 0
          ? html`<button class="act" @click=${() => (this.most = Infinity)}>
              Show the other ${left.toLocaleString('en-US')}
            </button>`
          : nothing
      }
      ${act(many === 0 ? 'Add a row' : `Add a row below ${named}`, 'Insert', true, () => this.#add())}
      ${act(`Remove ${named}`, 'Ctrl Delete', many > 0, () => this.#remove())}
      ${act(`Move ${named} up`, 'Alt Up', row > 0, () => this.#move(-1))}
      ${act(`Move ${named} down`, 'Alt Down', row + 1 < many, () => this.#move(1))}
    </div>`;
  }

  #refusedSaid(columns: readonly TableColumn[]): TemplateResult {
    const many = this.refused.length;
    return html`<div role="status">
      ${
        many === 0
          ? nothing
          : html`<div class="refused">
              <p>${many === 1 ? '1 pasted cell was' : `${many} pasted cells were`} not taken</p>
              <ul tabindex="0" aria-label="Not taken">
                ${this.refused.map((one) => html`<li>${notPastedSaid(columns, one)}</li>`)}
              </ul>
              <button class="plain" @click=${() => (this.refused = [])}>Put this away</button>
            </div>`
      }
    </div>`;
  }

  #holder(): Cell | null {
    return this.session.cell(this.cell);
  }

  #reached(place: Place): void {
    if (!isAt(this.at, place)) this.at = place;
    this.session.choose(this.cell);
  }

  /** Taken before the click: what is kept on leaving another cell may move the rows under the pointer. */
  #pressed(event: MouseEvent, place: Place): void {
    if (event.button !== 0) return;
    event.preventDefault();
    this.#write(place);
  }

  #write(place: Place, typed?: string): void {
    const cell = this.#holder();
    if (!cell || (this.written && !this.#keep())) return;
    if (this.session.writing) this.session.write(null);
    this.#reached(place);
    this.written = { ...place, text: '', draft: null };
    this.#read(typed ?? ownText(cell, place));
    this.#takesKeyboard = typed === undefined ? 'all' : 'end';
  }

  #read(text: string): void {
    const { written } = this;
    const cell = this.#holder();
    if (!written || !cell) return;
    const { row, column } = written;
    const asked = text.trim() === '' ? (cell.table?.columns[column]?.formula ?? '') : text;
    const draft = asked === '' ? null : this.session.door.draftInRow(cell.id, row, column, asked);
    this.written = { row, column, text, draft };
  }

  /** False where it was refused: it stays to be mended. */
  #keep(): boolean {
    const { written } = this;
    const cell = this.#holder();
    if (!written || !cell) return true;
    const { row, column } = written;
    const text = written.text.trim();
    // What was open is closed first: taking its line away blurs it.
    this.written = null;
    if (text === ownText(cell, written)) return true;
    if (this.#apply((door) => door.setRowCell(cell.id, row, column, text))) return true;
    this.written = written;
    this.#takesKeyboard = 'end';
    return false;
  }

  #leave(): void {
    this.written = null;
    this.#takesKeyboard = 'all';
  }

  #blurred = (): void => {
    requestAnimationFrame(() => {
      if (!this.written || !this.isConnected || !document.hasFocus()) return;
      if (
        this.renderRoot instanceof ShadowRoot &&
        this.renderRoot.activeElement?.closest('td.writing')
      )
        return;
      this.#keep();
    });
  };

  #key = (event: KeyboardEvent): void => {
    if (event.isComposing) return;
    const done = this.written ? this.#keyWriting(event) : this.#keyOnCell(event);
    if (this.written || done) event.stopPropagation();
    if (done) event.preventDefault();
  };

  #keyWriting(event: KeyboardEvent): boolean {
    const { written } = this;
    const table = this.#holder()?.table;
    if (!written || !table || !(event.composedPath()[0] instanceof HTMLInputElement)) return false;
    switch (event.key) {
      case 'Enter':
        if (this.#keep()) this.#leave();
        return true;
      case 'Escape':
        this.#leave();
        return true;
      case 'Tab': {
        if (!this.#keep()) return true;
        const next = tabbedTo(written, event.shiftKey ? -1 : 1, table);
        if (next) this.#write(next);
        else this.#leave();
        return true;
      }
      default:
        return false;
    }
  }

  #keyOnCell(event: KeyboardEvent): boolean {
    const table = this.#holder()?.table;
    if (!table || table.rows.length === 0) return false;
    const { key } = event;
    if (event.altKey && (key === 'ArrowUp' || key === 'ArrowDown')) {
      this.#move(key === 'ArrowUp' ? -1 : 1);
      this.#takesKeyboard = 'all';
      return true;
    }
    if (key === 'Delete' && event.ctrlKey) {
      this.#remove();
      this.#takesKeyboard = 'all';
      return true;
    }
    if (event.altKey || event.ctrlKey || event.metaKey) return false;
    const next = steppedTo(this.at, key, table);
    if (next) {
      this.at = next;
      this.#takesKeyboard = 'all';
      return true;
    }
    if (key === 'Insert') this.#add();
    else if (key === 'Enter' || key === 'F2') this.#write(this.at);
    else if (key === 'Delete' || key === 'Backspace') this.#write(this.at, '');
    else if (key.length === 1 && key !== ' ') this.#write(this.at, key);
    else return false;
    return true;
  }

  #paste = (event: ClipboardEvent): void => {
    const cell = this.#holder();
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (!cell || text.trim() === '') return;
    // Into a line that is being written only several cells go past it.
    if (this.written && !/[\t\r\n]/.test(text.trim())) return;
    event.preventDefault();
    const { row, column } = this.written ?? this.at;
    this.written = null;
    this.refused = [];
    this.#takesKeyboard = 'all';
    this.#apply((door) => {
      if (isOneCell(text.trim())) return door.setRowCell(cell.id, row, column, text.trim());
      const pasted = door.pasteRows(cell.id, row, column, text);
      if ('refused' in pasted) this.refused = pasted.refused;
      return pasted;
    });
  };

  #add(): void {
    const many = this.#holder()?.table?.rows.length ?? 0;
    const after = many === 0 ? null : this.at.row;
    if (!this.#apply((door) => door.addRow(this.cell, after, []))) return;
    this.at = { row: after === null ? 0 : after + 1, column: 0 };
    this.#takesKeyboard = 'all';
  }

  #remove(): void {
    this.#apply((door) => door.removeRow(this.cell, this.at.row));
  }

  #move(by: -1 | 1): void {
    const { row, column } = this.at;
    const to = row + by;
    if (to < 0 || to >= (this.#holder()?.table?.rows.length ?? 0)) return;
    if (this.#apply((door) => door.moveRow(this.cell, row, to))) this.at = { row: to, column };
  }

  #apply(make: (door: Door) => Applied | Finding): boolean {
    return this.session.apply(make);
  }
}

function isAt(one: Place, other: Place): boolean {
  return one.row === other.row && one.column === other.column;
}

declare global {
  interface HTMLElementTagNameMap {
    'story-table': StoryTable;
  }
}
