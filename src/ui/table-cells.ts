// How the cells of a table are drawn while nothing is written in them: what a row shows, and a column's header.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import type { Report } from '../words/report.ts';
import type { Session } from './session.ts';
import { HEADER } from './table-keys.ts';
import { type Place, isAt, rowCellShown } from './table-words.ts';

/** What a person does to a cell with the mouse, or by coming to it. */
export interface CellActs {
  reached(place: Place): void;
  pressed(event: MouseEvent, place: Place): void;
  write(place: Place): void;
  rename(): void;
}

/** One drawing of a table. */
export interface Drawing {
  readonly session: Session;
  readonly cell: Cell;
  readonly at: Place;
  /** Where words stand left (`texts`) and figures right (`figures`), column by column. */
  readonly stands: readonly string[];
  /** What was said to be wrong in a column so far. */
  readonly said: Set<string>;
  readonly acts: CellActs;
}

export function headCell(drawing: Drawing, column: number): TemplateResult {
  const { cell, at, stands, acts } = drawing;
  const { name = '', formula = null } = cell.table?.columns[column] ?? {};
  const place = { row: HEADER, column };
  return html`<th
    class=${stands[column] ?? ''}
    scope="col"
    tabindex=${isAt(at, place) ? 0 : -1}
    @focus=${() => acts.reached(place)}
    @dblclick=${() => acts.rename()}
    @click=${(event: MouseEvent) => (event.detail === 0 ? acts.write(place) : undefined)}
  >
    ${columnName(name)}${
      formula === null
        ? nothing
        : html`<span class="formula" title=${formula} @click=${() => acts.write(place)}
            >${formula}</span
          >`
    }
  </th>`;
}

export function columnName(name: string): unknown {
  return name || html`<span class="heard">no name</span>`;
}

export function rowCell(drawing: Drawing, place: Place, id: CellId): TemplateResult {
  const { session, cell, at, stands, acts } = drawing;
  const { door } = session;
  const shown = rowCellShown(door, cell, place, id);
  const { kind } = door.state(id);
  const ends = door.shownRange(id);
  const marks = { value: kind, fault: 'ringed', blank: 'heard', open: 'open', waits: 'waits' };
  const mark = shown.ofColumn === null || shown.look === 'fault' ? marks[shown.look] : 'set-here';
  return html`<td
    class="${stands[place.column] ?? ''} ${kind}"
    tabindex=${isAt(at, place) ? 0 : -1}
    @focus=${() => acts.reached(place)}
    @mousedown=${(event: MouseEvent) => acts.pressed(event, place)}
    @click=${(event: MouseEvent) => (event.detail === 0 ? acts.write(place) : undefined)}
  >
    <span class=${mark}>${shown.look === 'blank' ? 'nothing yet' : shown.text}</span>${
      shown.ofColumn === null
        ? nothing
        : html`<span class="of-column">set in this row; its column: ${shown.ofColumn}</span>`
    }${ends ? html`<span class="of-column">${ends.text}</span>` : nothing}${
      shown.report
        ? html`<span class="why">${why(drawing.said, place, shown.report)}</span>`
        : nothing
    }
  </td>`;
}

/** A column at fault is so in every row; it is said at length in the first that is drawn. */
function why(said: Set<string>, { column }: Place, { headline, explanation }: Report): string {
  const key = `${column} ${headline}`;
  if (said.has(key)) return headline;
  said.add(key);
  return `${headline} ${explanation}`;
}
