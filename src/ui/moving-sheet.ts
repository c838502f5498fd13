// What stands on the sheets of one cell: where it can be moved to, and what it goes into.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellId } from '../language/tree.ts';
import { moveBy, moveToPart } from './moving.ts';
import { standingOn } from './row-places.ts';
import type { Session } from './session.ts';
import { valueSaid } from './value-words.ts';

export function movingTo(session: Session, id: CellId, away: () => void): TemplateResult {
  const own = session.cell(id)?.part;
  const parts = session.door.notebook.parts.filter(({ key, name }) => key !== own && name !== '');
  return html`<div class="acts first">
      <button class="act" @click=${() => moveBy(session, id, -1)}>
        One place up<kbd>Alt ↑</kbd>
      </button>
      <button class="act" @click=${() => moveBy(session, id, 1)}>
        One place down<kbd>Alt ↓</kbd>
      </button>
    </div>
    ${
      parts.length === 0
        ? nothing
        : html`<p class="small">Or to the end of another part. What names it names it still.</p>
            <ul>
              ${parts.map(
                ({ key, name }) =>
                  html`<li>
                    <button
                      @click=${() => {
                        away();
                        moveToPart(session, id, key);
                      }}
                    >
                      ${name}
                    </button>
                  </li>`,
              )}
            </ul>`
    }`;
}

/** Everything that names it, and below it what those go into. */
export function goesInto(session: Session, id: CellId, away: () => void): TemplateResult {
  const direct = session.door.state(id).goesInto.filter((one) => isOnPage(session, one));
  if (direct.length === 0) return html`<p>It goes into nothing else yet.</p>`;
  const further = furtherInto(session, id, direct);
  return html`<ul>
      ${direct.map((one) => line(session, one, away))}
    </ul>
    ${
      further.length === 0
        ? nothing
        : html`<p class="small then">and by way of ${direct.length === 1 ? 'it' : 'them'}</p>
            <ul>
              ${further.slice(0, MOST_FURTHER).map((one) => line(session, one, away))}
            </ul>
            ${
              further.length > MOST_FURTHER
                ? html`<p class="small">and ${further.length - MOST_FURTHER} more</p>`
                : nothing
            }`
    }`;
}

const MOST_FURTHER = 60;

function line(session: Session, id: CellId, away: () => void): TemplateResult {
  const { input } = session.door.state(id);
  const where = session.part(input.part)?.name ?? '';
  return html`<li>
    <button
      @click=${() => {
        away();
        session.bring(id);
      }}
    >
      ${input.name}
      <span class="where">${[where, input.formula].filter(Boolean).join(' · ')}</span>
    </button>
    <span>${valueSaid(session.door, id) ?? ''}</span>
  </li>`;
}

/** In the order of the notebook, each once. */
function furtherInto(session: Session, id: CellId, direct: readonly CellId[]): readonly CellId[] {
  const found = new Set<CellId>([id, ...direct]);
  const left = [...direct];
  const further: CellId[] = [];
  for (let at = 0; at < left.length; at++) {
    for (const next of session.door.state(left[at] ?? id).goesInto) {
      if (found.has(next)) continue;
      found.add(next);
      left.push(next);
      if (isOnPage(session, next)) further.push(next);
    }
  }
  return further;
}

function isOnPage(session: Session, id: CellId): boolean {
  const cell = standingOn(session.door, id);
  return cell !== null && session.cell(cell) !== null;
}
