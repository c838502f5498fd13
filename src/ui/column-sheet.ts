// What stands on the sheet on which a column is removed: everything that names it, and what that reads without it.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellId } from '../language/tree.ts';
import type { ColumnUse } from '../notebook/column-uses.ts';
import { HEADER } from './table-keys.ts';
import type { Session } from './session.ts';

/** So many uses are listed; thousands of rows may name a column. */
const MOST_TOLD = 12;

export function columnNamed(session: Session, cell: CellId | null, column: number): string {
  const held = cell === null ? null : session.cell(cell);
  return held?.table?.columns[column]?.name || `column ${column + 1}`;
}

export function removingColumn(
  session: Session,
  cell: CellId,
  column: number,
  away: () => void,
): TemplateResult {
  const held = session.cell(cell);
  if (!held?.table?.columns[column]) return html``;
  const uses = session.door.columnUses(cell, column);
  const filled = held.table.rows.filter(({ texts }) => (texts[column] ?? '') !== '').length;
  const missing = uses.filter(({ then }) => then === null);
  const others = uses.filter(({ then }) => then !== null);
  return html`<p>${filledSaid(filled)} ${uses.length === 0 ? 'Nothing else names it.' : nothing}</p>
    ${listed(
      session,
      missing,
      missing.length === 1
        ? 'This names it, and will say that the name is missing:'
        : 'These name it, and will say that the name is missing:',
    )}
    ${listed(session, others, 'With it gone, something else of its name would be read here:')}
    <p class="small">Undo brings it back.</p>
    <div class="acts">
      <button
        class="act first"
        @click=${() => {
          away();
          if (!session.apply((door) => door.removeColumn(cell, column))) return;
          const wide = session.cell(cell)?.table?.columns.length ?? 1;
          const at = { cell, row: HEADER, column: Math.min(column, wide - 1), id: null };
          session.bringRow(at, 'goes');
        }}
      >
        Remove it
      </button>
      <button class="act" @click=${away}>Leave it</button>
    </div>`;
}

function filledSaid(filled: number): string {
  if (filled === 0) return 'Nothing is written in its rows.';
  const many = filled.toLocaleString('en-US');
  return `What is written in ${filled === 1 ? '1 row' : `${many} rows`} goes with it.`;
}

function listed(session: Session, uses: readonly ColumnUse[], heading: string): unknown {
  if (uses.length === 0) return nothing;
  const rest = uses.length - MOST_TOLD;
  return html`<p>${heading}</p>
    <ul>
      ${uses.slice(0, MOST_TOLD).map(
        (use) =>
          html`<li class="found">
            <span
              ><b>${named(session, use)}</b> ${use.text}${
                use.then === null ? nothing : html`<span class="where">reads ${use.then}</span>`
              }</span
            >
          </li>`,
      )}
    </ul>
    ${rest > 0 ? html`<p class="small">and ${rest.toLocaleString('en-US')} more</p>` : nothing}`;
}

function named(session: Session, { cell, where, column }: ColumnUse): string {
  const name = session.cell(cell)?.name ?? '';
  switch (where) {
    case 'column':
      return `${name}, ${column ?? ''}:`;
    case 'row':
      return `${name}, a row of ${column ?? ''}:`;
    case 'choices':
      return `Choices for ${name}:`;
    case 'by hand':
      return `${name}, set by hand:`;
    case 'picture':
      return `The picture under ${name}:`;
    case 'formula':
      return `${name}:`;
  }
}
