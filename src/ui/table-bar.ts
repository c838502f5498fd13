// What stands under a table: what can be done with the row or the column that has the keyboard, finding in the rows of
// a long one, and what was pasted and not taken.
import { html, nothing, type TemplateResult } from 'lit';
import type { Cell, TableColumn } from '../notebook/document.ts';
import type { NotPasted } from '../notebook/paste-edit.ts';
import { type Place, notPastedSaid } from './table-words.ts';

/** What can be asked for under a table. */
export interface BarActs {
  addRow(): void;
  removeRow(): void;
  moveRow(by: -1 | 1): void;
  rename(): void;
  formula(): void;
  addColumn(after: number): void;
  removeColumn(): void;
  moveColumn(by: -1 | 1): void;
}

export function bar({ name, table }: Cell, at: Place, acts: BarActs): TemplateResult {
  const many = table?.rows.length ?? 0;
  const columns = table?.columns ?? [];
  return at.row < 0 && columns.length > 0
    ? html`<div class="under" role="group" aria-label="Columns of ${name}">
        ${ofColumn(columns, at.column, acts)}
      </div>`
    : html`<div class="under" role="group" aria-label="Rows of ${name}">
        ${ofRow(at.row, many, acts)}
      </div>`;
}

function ofRow(row: number, many: number, acts: BarActs): readonly TemplateResult[] {
  const named = `row ${row + 1}`;
  return [
    act(many === 0 ? 'Add a row' : `Add a row below ${named}`, 'Insert', true, () => acts.addRow()),
    act(`Remove ${named}`, 'Ctrl Delete', many > 0, () => acts.removeRow()),
    act(`Move ${named} up`, 'Alt Up', row > 0, () => acts.moveRow(-1)),
    act(`Move ${named} down`, 'Alt Down', row + 1 < many, () => acts.moveRow(1)),
  ];
}

function ofColumn(
  columns: readonly TableColumn[],
  k: number,
  acts: BarActs,
): readonly TemplateResult[] {
  const column = columns[k];
  const named = column?.name || `column ${k + 1}`;
  const worked =
    (column?.formula ?? null) === null ? `Give ${named} a formula` : `Change what ${named} works`;
  return [
    act(worked, 'Enter', true, () => acts.formula()),
    act(`Rename ${named}`, 'F2', true, () => acts.rename()),
    act('Add a column after it', 'Insert', true, () => acts.addColumn(k)),
    act('Add one before it', 'Shift Insert', true, () => acts.addColumn(k - 1)),
    act('Move it left', 'Alt Left', k > 0, () => acts.moveColumn(-1)),
    act('Move it right', 'Alt Right', k + 1 < columns.length, () => acts.moveColumn(1)),
    act(`Remove ${named}`, 'Ctrl Delete', columns.length > 1, () => acts.removeColumn()),
  ];
}

function act(words: string, keys: string, can: boolean, make: () => void): TemplateResult {
  return html`<button
    class="plain"
    title=${keys}
    ?disabled=${!can}
    @mousedown=${(event: Event) => event.preventDefault()}
    @click=${make}
  >
    ${words}
  </button>`;
}

/** Of a long table the browser's own search sees only the rows in sight. */
export function finding(
  { name }: Cell,
  told: string,
  find: (words: string) => void,
): TemplateResult {
  return html`<div class="finding">
    <label
      >Find in all rows
      <input
        type="search"
        aria-label="Find in all rows of ${name}"
        enterkeyhint="search"
        @keydown=${(event: KeyboardEvent) => {
          event.stopPropagation();
          if (event.key !== 'Enter' || event.isComposing) return;
          event.preventDefault();
          find((event.target as HTMLInputElement).value);
        }}
    /></label>
    <span class="small"
      >Enter goes to the next one. The browser’s own search sees only the rows in sight.</span
    >
    <span class="small" role="status">${told}</span>
  </div>`;
}

export function notTakenSaid(
  columns: readonly TableColumn[],
  told: readonly NotPasted[],
  away: () => void,
): TemplateResult {
  const many = told.length;
  return html`<div role="status">
    ${
      many === 0
        ? nothing
        : html`<div class="refused">
            <p>${many === 1 ? '1 cell was' : `${many} cells were`} not taken</p>
            <ul tabindex="0" aria-label="Not taken">
              ${told.map((one) => html`<li>${notPastedSaid(columns, one)}</li>`)}
            </ul>
            <button class="plain" @click=${away}>Put this away</button>
          </div>`
    }
  </div>`;
}
