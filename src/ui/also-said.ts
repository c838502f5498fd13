// What else an amount would change, in words beside the button that puts it in.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellId } from '../language/tree.ts';
import { type Also, alsoChanged } from '../moves-it/also.ts';
import { withTotals } from '../moves-it/whole-job.ts';
import type { Dec } from '../quantity/decimal.ts';
import type { Session } from './session.ts';

/** Told one by one; how many more there are is told at the end. */
const MOST = 6;

export function alsoSaid(
  session: Session,
  given: CellId,
  value: Dec,
  range: 'range goes' | 'range stays',
): TemplateResult {
  const all = alsoChanged(withTotals(session.door), given, value);
  if (all.length === 0 && range === 'range stays')
    return html`<span class="small">Every check says what it says now.</span>`;
  return html`<ul class="also">
    ${range === 'range goes' ? html`<li>It lies beyond its range, which goes with it.</li>` : nothing}
    ${all.slice(0, MOST).map((each) => said(session, each))}
    ${all.length > MOST ? html`<li>and ${all.length - MOST} more.</li>` : nothing}
  </ul>`;
}

function said(session: Session, also: Also): TemplateResult {
  const { name } = session.door.state(also.cell).input;
  switch (also.kind) {
    case 'says-no':
      return html`<li class="trouble">
        ${name} would not hold.${also.caution === null ? nothing : ` ${also.caution}`}
      </li>`;
    case 'holds-then':
      return html`<li>${name} would hold.</li>`;
    case 'not-sensible':
      return html`<li class="trouble">
        ${name} would be ${also.shown}, ${also.side} what is sensible: ${also.limits}.
      </li>`;
    case 'without-value':
      return html`<li class="trouble">${name} would have no value.</li>`;
  }
}
