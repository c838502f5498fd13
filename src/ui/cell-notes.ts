// The lines that may stand under a row: what is wrong and how to mend it, what it waits for, what a total left out.
import { html, nothing, type TemplateResult } from 'lit';
import type { Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
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

export function linesNotKnown(count: number): string {
  return count === 1 ? '1 line not yet known' : `${count} lines not yet known`;
}
