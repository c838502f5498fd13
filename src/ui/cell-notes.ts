// The lines that may stand under a row: what is wrong and how to mend it, what it waits for, what a total left out.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { CellId, CostKind } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import { MONEY } from '../quantity/dimension.ts';
import type { Report } from '../words/report.ts';
import type { Session } from './session.ts';

export function faultNote(session: Session, cell: CellId, report: Report): TemplateResult {
  return html`<div class="note fault">
    <b>${report.headline}</b>
    <span>${report.explanation}</span>
    ${report.fixes.map(
      (fix) =>
        html`<button
          class="act"
          title=${fix.formula}
          @click=${() => session.apply((door) => door.setFormula(cell, fix.formula))}
        >
          ${fix.say}
        </button>`,
    )}
  </div>`;
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

export function linesNotKnown(count: number): string {
  return count === 1 ? '1 line not yet known' : `${count} lines not yet known`;
}
