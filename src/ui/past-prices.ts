// Prices past their date, and the button that asks for all of them again.
import { html, nothing, type TemplateResult } from 'lit';
import { sayPast } from '../versions/past-dates.ts';
import type { Binder } from './binder.ts';

export function pastPrices({ past }: Binder, ask: () => void): TemplateResult | typeof nothing {
  if (past.length === 0) return nothing;
  const asked = past.filter(({ canAsk }) => canAsk).length;
  return html`<h3>Prices past their date</h3>
    <ul class="past">
      ${past.map(
        (each) =>
          html`<li>
            <b>${each.name}</b>, ${each.formula}
            <span class="tell"
              >${each.part}:
              ${sayPast(each)}${
                each.canAsk
                  ? nothing
                  : '; it stands in a formula or was set by hand: yours to change there'
              }</span
            >
          </li>`,
      )}
    </ul>
    ${
      asked === 0
        ? nothing
        : html`<div class="acts">
            <button class="act" data-ask @click=${ask}>
              ${asked === 1 ? 'Turn it' : `Turn all ${asked}`} into ? until it is quoted again
            </button>
          </div>`
    }`;
}
