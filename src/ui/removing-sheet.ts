// What stands on the sheet before a cell is removed: what it goes into, and that undo brings it back.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellId } from '../language/tree.ts';
import { onlyRecaps } from '../notebook/tree-parts.ts';
import type { Session } from './session.ts';

export function removing(session: Session, id: CellId, away: () => void): TemplateResult {
  const into = session.door.state(id).goesInto;
  const recaps = into.filter((cell) => onlyRecaps(session.door.state(cell).reading.tree, id));
  const named = into.filter((cell) => !recaps.includes(cell));
  const names = (cells: readonly CellId[]) =>
    html`<b>${listed(cells.map((cell) => session.cell(cell)?.name ?? ''))}</b>`;
  return html`<p>
      ${into.length === 0 ? 'It goes into nothing else.' : nothing}
      ${
        named.length === 0
          ? nothing
          : html`It goes into ${names(named)}. ${named.length === 1 ? 'That one' : 'Those'} will say
            that the name is missing until another is written.`
      }
      ${
        recaps.length === 0
          ? nothing
          : html`${names(recaps)} ${recaps.length === 1 ? 'adds' : 'add'} it up with other lines and
            will come out without it.`
      }
      ${into.length === 0 ? nothing : 'Undo brings it back.'}
    </p>
    <div class="acts">
      <button
        class="act first"
        @click=${() => {
          away();
          const next = session.neighbour(id, 1) ?? session.neighbour(id, -1);
          if (session.apply((door) => door.removeCell(id)) && next !== null) session.bring(next);
        }}
      >
        Remove it
      </button>
      <button class="act" @click=${away}>Leave it</button>
    </div>`;
}

function listed(names: readonly string[]): string {
  const some = names.slice(0, 8);
  const more = names.length > 8 ? `${names.length - 8} more` : some.pop();
  return some.length === 0 ? (more ?? '') : `${some.join(', ')} and ${more}`;
}
