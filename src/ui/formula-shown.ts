// A formula as it stands in its row: its names as links to where they come from, what is at fault ringed.
import { html } from 'lit';
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import { type Stretch, byRing, stretches } from './spots-in.ts';

type Go = (event: Event, to: CellId) => void;

/** Its links are stops for the Tab key only in the chosen row. */
export function formulaShown(state: CellState, chosen: boolean, go: Go): unknown {
  const { outcome, reading, input } = state;
  const rings = reading.problems.flatMap((problem) => problem.spots);
  const spots = outcome.kind === 'fault' && rings.length === 0 ? outcome.report.spots : rings;
  return byRing(stretches(input.formula, reading.tree, spots)).map((group) => {
    const said = group.map((stretch) => shown(stretch, chosen ? 0 : -1, go));
    return group[0]?.ringed ? html`<span class="ringed">${said}</span>` : said;
  });
}

function shown(stretch: Stretch, stop: number, go: Go): unknown {
  if (stretch.kind !== 'name') return stretch.text;
  return html`<a
    class="tie"
    href="#cell-${stretch.cell}"
    tabindex=${stop}
    @click=${(event: Event) => go(event, stretch.cell)}
    >${stretch.text}</a
  >`;
}
