// The sheet of what is to look at: what is to mend with its mends, the rest, and prices past their date.
import { html, nothing, type TemplateResult } from 'lit';
import type { Finding } from '../notebook/document.ts';
import { isToMend } from '../notebook/mends.ts';
import { type PastDate, sayPast } from '../versions/past-dates.ts';
import { mendButton } from './cell-notes.ts';
import type { Session } from './session.ts';

/** Mends are looked for when the sheet is drawn; further down one goes there for them. */
const MOST_WITH_MENDS = 40;

interface Page {
  readonly session: Session;
  readonly away: () => void;
}

export function lookHere(
  session: Session,
  pastDates: readonly PastDate[],
  away: () => void,
): TemplateResult {
  const findings = session.door.findings();
  const page = { session, away };
  const past = pastTheirDate(session, pastDates, away);
  if (findings.length === 0) {
    return html`${past}
      <p>
        Nothing to look at: every cell has a value, every check holds, every given says where it
        comes from.
      </p>`;
  }
  const toMend = findings.filter(isToMend);
  const others = findings.filter((finding) => !isToMend(finding));
  return html`${found(page, 'To mend', toMend, 'with mends')}
  ${found(page, toMend.length > 0 ? 'To look at' : '', others, 'alone')}${past}`;
}

/** Today's clock is asked for these, so that they are no findings of the notebook itself. */
function pastTheirDate(
  session: Session,
  past: readonly PastDate[],
  away: () => void,
): TemplateResult | typeof nothing {
  if (past.length === 0) return nothing;
  return html`<h3>Prices past their date</h3>
    <ul>
      ${past.map(
        (each) =>
          html`<li>
            <button
              @click=${() => {
                away();
                session.bring(each.cell);
              }}
            >
              ${each.name}: ${sayPast(each)}<span class="where">${each.part}</span>
            </button>
          </li>`,
      )}
    </ul>
    <p class="small">Under Snapshots they can be turned into ? in one go.</p>`;
}

function found(
  page: Page,
  heading: string,
  findings: readonly Finding[],
  how: 'with mends' | 'alone',
): TemplateResult | typeof nothing {
  if (findings.length === 0) return nothing;
  const { door } = page.session;
  return html`${heading === '' ? nothing : html`<h3>${heading}</h3>`}
    <ul>
      ${findings.map(
        (finding, place) =>
          html`<li class="found">
            ${goTo(page, finding)}
            ${
              how === 'alone' || place >= MOST_WITH_MENDS
                ? nothing
                : door.mendsFor(finding).map((mend) => mendButton(page.session, mend, null))
            }
          </li>`,
      )}
    </ul>`;
}

function goTo(
  { session, away }: Page,
  { message, cell, part, place: at }: Finding,
): TemplateResult {
  const found = cell === null ? null : session.cell(cell);
  const place = [found?.name, session.part(found?.part ?? part ?? '')?.name]
    .filter((name) => name !== undefined && name !== '')
    .join(', ');
  if (cell === null) return html`<span>${message}<span class="where">${place}</span></span>`;
  return html`<button
    @click=${() => {
      away();
      const id = at && session.door.rows(cell)?.[at.row]?.[at.column];
      session.bring(id ?? cell);
    }}
  >
    ${message}<span class="where">${place}</span>
  </button>`;
}
