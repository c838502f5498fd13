// The two ends of a given's range beside its plain value: said in small words after a stroke of the pencil that runs
// from best to worst, with a tick where the plain value lies.
import { type TemplateResult, html, nothing, svg } from 'lit';
import type { RangeEnd } from '../engine/ranges.ts';
import type { CellId } from '../language/tree.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';

/** The drawing is this wide, the stroke stands in from its edges. */
const WIDE = 46;
const INSET = 3;

export function rangeEnds(door: EstimateDoor, cell: CellId): TemplateResult | typeof nothing {
  const shown = door.shownRange(cell);
  if (!shown) return nothing;
  return html`<span class="ends">${stroke(door, cell)}${shown.text}</span> `;
}

function stroke(door: EstimateDoor, cell: CellId): TemplateResult {
  const plain = plainAt(door, cell);
  const end = WIDE - INSET;
  const tick = plain === null ? null : INSET + plain * (end - INSET);
  return html`<svg width=${WIDE} height="10" viewBox="0 0 ${WIDE} 10" aria-hidden="true">
    <path d="M${INSET} 6.5H${end}M${INSET} 4v5M${end} 4v5" />
    ${tick === null ? nothing : svg`<path class="plain" d="M${tick} 1v8" />`}
  </svg>`;
}

/** How far the plain value lies from best (0) to worst (1); null where it is not known, or nothing is left open. */
function plainAt(door: EstimateDoor, cell: CellId): number | null {
  const { outcome, holds, range } = door.state(cell);
  if (outcome.kind !== 'value' || typeof outcome.value !== 'object' || !holds || !range) {
    return null;
  }
  const [best, worst] = [inBase(range.best), inBase(range.worst)];
  if (best === worst) return null;
  const far = (inBase({ value: outcome.value, holds }) - best) / (worst - best);
  return Math.min(1, Math.max(0, far));
}

/** As a plain number: a drawing needs no more. */
function inBase({ value, holds: { measure } }: RangeEnd): number {
  return Number(value) * (measure.kind === 'amount' ? Number(measure.scale.valueOf()) : 1);
}
