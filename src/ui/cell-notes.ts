// The lines that may stand under a row: what is wrong and how to mend it, what it waits for, what a total left out.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { CellId, CostKind } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import { MONEY } from '../quantity/dimension.ts';
import type { Mend } from '../notebook/mends.ts';
import { inItsRow, isFault, problemCells, problemsBy } from './problems.ts';
import type { Door, Session } from './session.ts';

/** Everything that is wrong with a cell, each with its mends; numbered through where keys reach them. */
export function problemNotes(
  session: Session,
  cell: CellId,
  writing: string | null,
): readonly TemplateResult[] {
  const { door } = session;
  const problems = problemsBy(door).get(cell) ?? [];
  const chosen = session.chosen === cell && writing === null;
  let key = 0;
  const notes = problems.filter(inItsRow).map((problem) => {
    const fault = isFault(door, problem);
    const mends = door.mendsFor(problem).map((mend) => {
      key += 1;
      return mendButton(session, mend, chosen && key < 10 ? `Alt ${key}` : null);
    });
    // While the formula is written, its own problems stand under its line.
    if (fault && writing === 'formula') return html``;
    return html`<div class="note wrong ${fault ? 'fault' : ''}">
      ${fault ? faultSaid(door, cell) : html`<span>${problem.message}</span>`} ${mends}
    </div>`;
  });
  return chosen && problems.length > 0 ? [...notes, whichProblem(session, cell)] : notes;
}

/** The fault of a cell with its mends, where no keys reach them. */
export function faultNote(session: Session, cell: CellId): TemplateResult {
  const mends = session.door.mendsOf(cell).map((mend) => mendButton(session, mend, null));
  return html`<div class="note wrong fault">${faultSaid(session.door, cell)} ${mends}</div>`;
}

function faultSaid(door: Door, cell: CellId): TemplateResult | typeof nothing {
  const { outcome } = door.state(cell);
  if (outcome.kind !== 'fault') return nothing;
  const { headline, explanation } = outcome.report;
  return html`<b>${headline}</b> <span>${explanation}</span>`;
}

export function mendButton(session: Session, mend: Mend, key: string | null): TemplateResult {
  const { does } = mend;
  return html`<button
    class="act"
    title=${'formula' in does && does.formula !== null ? does.formula : ''}
    @click=${() => session.apply((door) => door.mend(mend))}
  >
    ${mend.say}${key === null ? nothing : html`<kbd>${key}</kbd>`}
  </button>`;
}

/** Which of all that are to be mended this is, and the way to the next. */
function whichProblem(session: Session, cell: CellId): TemplateResult {
  const cells = problemCells(session.door);
  if (cells.length < 2) return html``;
  const go = (steps: 1 | -1): void => session.goToProblem(steps);
  return html`<p class="note which">
    <span>${cells.indexOf(cell) + 1} of ${cells.length} cells to mend</span>
    <button class="plain" @click=${() => go(1)}>next<kbd>N</kbd></button>
    <button class="plain" @click=${() => go(-1)}>the one before<kbd>Shift N</kbd></button>
  </p>`;
}

export function waitingNote(
  session: Session,
  outcome: Outcome,
  go: (event: Event, to: CellId) => void,
): TemplateResult | typeof nothing {
  if (outcome.kind !== 'waiting' && outcome.kind !== 'unknown') return nothing;
  const names = outcome.for.slice(0, 6).map((id, place) => {
    const before = place === 0 ? '' : place === outcome.for.length - 1 ? ' and ' : ', ';
    const name = session.cell(id)?.name ?? '';
    return html`${before}<a class="tie" href="#cell-${id}" @click=${(event: Event) => go(event, id)}
        >${name}</a
      >`;
  });
  const more = outcome.for.length > 6 ? ` and ${outcome.for.length - 6} more` : '';
  return html`<p class="note waits">waiting for ${names}${more}</p>`;
}

const KINDS: readonly CostKind[] = ['material', 'labour', 'equipment', 'subcontract', 'fee'];

/** Money that goes into nothing is in no total: a line nobody counted. Says so, and counts it when asked. */
export function notCountedNote(
  session: Session,
  cell: Cell,
  state: CellState,
): TemplateResult | typeof nothing {
  const { outcome, holds, goesInto } = state;
  if (cell.money || goesInto.length > 0 || outcome.kind !== 'value') return nothing;
  if (holds?.measure.kind !== 'amount' || holds.measure.dimension !== MONEY) return nothing;
  return html`<p class="note count">
    <span>In no total yet. Count it as</span>
    ${KINDS.map(
      (kind) =>
        html`<button
          class="plain"
          aria-label="Count ${cell.name} as ${kind}"
          @click=${() => session.apply((door) => door.setRemark(cell.id, 'cost', kind))}
        >
          ${kind}
        </button>`,
    )}
  </p>`;
}
