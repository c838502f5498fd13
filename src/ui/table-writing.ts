// What is being written in a table, if anything is: a row's text or what a column works, a column's name, or a column
// still to come. One line at a time; going on to something else keeps it, only Esc leaves it.
import {
  html,
  type ReactiveController,
  type ReactiveControllerHost,
  type TemplateResult,
} from 'lit';
import type { Cell } from '../notebook/document.ts';
import type { Session } from './session.ts';
import './story-line.ts';
import { addColumn, renameColumn, writeText } from './table-acts.ts';
import { HEADER, goesTo } from './table-keys.ts';
import type { KeptText, TableLine } from './table-line.ts';
import './table-line.ts';
import { type Place, ownText } from './table-words.ts';

type Written =
  | (Place & { readonly what: 'text'; readonly typed: string | null })
  | (Place & { readonly what: 'name' })
  | (Place & { readonly what: 'new' });

/** The table, as far as writing in it goes. */
interface Host extends ReactiveControllerHost {
  readonly session: Session;
  readonly renderRoot: HTMLElement | DocumentFragment;
  readonly isConnected: boolean;
  /** The cell that holds it. */
  holder(): Cell | null;
  goTo(place: Place): void;
  reached(place: Place): void;
  /** The keyboard goes back to the cells. */
  takeKeyboard(): void;
  /** A row more below this one; the keyboard is in it then. */
  addRow(): void;
  readonly place: Place;
}

export class TableWriting implements ReactiveController {
  readonly #host: Host;
  #written: Written | null = null;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.#written = null;
  }

  get written(): Written | null {
    return this.#written;
  }

  /** `typed` in place of what stands there. */
  write(place: Place, typed: string | null = null): void {
    if (this.#opens(place)) this.#set({ ...place, what: 'text', typed });
  }

  rename(column: number): void {
    const place = { row: HEADER, column };
    if (this.#opens(place)) this.#set({ ...place, what: 'name' });
  }

  addColumn(after: number): void {
    if (this.#opens(this.#host.place)) this.#set({ row: HEADER, column: after + 1, what: 'new' });
  }

  /** Nothing is written any more, and nothing of it kept. */
  close(): void {
    this.#set(null);
  }

  /** Keeps what is written in the open line; false where it was refused: it stays to be mended. */
  keep(text?: string): boolean {
    const written = this.#written;
    const cell = this.#host.holder();
    if (!written || !cell) return true;
    const { renderRoot, session } = this.#host;
    if (written.what !== 'text') {
      // Its own line keeps it when the keyboard goes.
      renderRoot.querySelector('story-line')?.renderRoot.querySelector('input')?.blur();
      return this.#written === null;
    }
    const line = renderRoot.querySelector<TableLine>('table-line');
    const wanted = text ?? line?.written ?? textAt(cell, written);
    // What was open is closed first: taking its line away blurs it.
    this.#set(null);
    if (writeText(session, cell, written, wanted)) return true;
    this.#set({ ...written, typed: wanted });
    return false;
  }

  /** The line in which a row's cell or what a column works is written. */
  line(cell: Cell, written: Written & { readonly what: 'text' }): TemplateResult {
    const { row, column, typed } = written;
    return html`<table-line
      .session=${this.#host.session}
      .cell=${cell}
      .place=${{ row, column }}
      .text=${typed ?? textAt(cell, written)}
      opened=${typed === null ? 'all' : 'end'}
      @keep=${({ detail }: CustomEvent<KeptText>) => this.#keepAnd(detail)}
      @leave=${this.#leave}
      @focusout=${this.#blurred}
    ></table-line>`;
  }

  /** The line in which a column is named, or a new one with what it works. */
  nameLine(cell: Cell, written: Written): TemplateResult {
    const isNew = written.what === 'new';
    return html`<story-line
      label=${isNew ? 'Name of the new column' : 'Name of the column'}
      hint=${isNew ? 'Name, or name: formula' : ''}
      .value=${isNew ? '' : (cell.table?.columns[written.column]?.name ?? '')}
      @keep=${(event: CustomEvent<string>) => this.#named(cell, written, event.detail)}
      @leave=${this.#leave}
    ></story-line>`;
  }

  /** False where what was open is refused and stays. */
  #opens(place: Place): boolean {
    const { session } = this.#host;
    if (!this.keep()) return false;
    if (session.writing) session.write(null);
    this.#host.goTo(place);
    this.#host.reached(place);
    return true;
  }

  #named(cell: Cell, written: Written, text: string): void {
    const { session } = this.#host;
    if (written.what === 'new' && text.trim() !== '') {
      const place = addColumn(session, cell, written.column - 1, text);
      // Refused, the line stays to be mended.
      if (!place) return;
      this.#host.goTo(place);
    } else if (written.what === 'name' && !renameColumn(session, cell, written.column, text))
      return;
    this.#leave();
  }

  #keepAnd({ text, goes }: KeptText): void {
    const written = this.#written;
    if (!written || !this.keep(text)) return;
    const table = this.#host.holder()?.table;
    const next = table ? goesTo(written, goes, table) : null;
    if (next) this.write(next);
    else if (goes === 'below' && written.row >= 0) {
      this.#host.addRow();
      this.write({ ...this.#host.place, column: written.column });
    } else this.#leave();
  }

  #leave = (): void => {
    this.#set(null);
    this.#host.takeKeyboard();
  };

  #blurred = (): void => {
    requestAnimationFrame(() => {
      const { isConnected, renderRoot, session } = this.#host;
      if (!this.#written || !isConnected || !document.hasFocus() || session.besideGuide) return;
      const { activeElement } = renderRoot as ShadowRoot;
      if (!activeElement?.closest('.writing')) this.keep();
    });
  };

  #set(written: Written | null): void {
    this.#written = written;
    this.#host.requestUpdate();
  }
}

/** What is written at a place: in its row, or as the column's formula. */
function textAt(cell: Cell, { row, column }: Place): string {
  return row < 0 ? (cell.table?.columns[column]?.formula ?? '') : ownText(cell, { row, column });
}
