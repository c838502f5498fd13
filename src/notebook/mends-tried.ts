// What mends of formulas lean on: whether one works, which cells lie near, which words a report is about.
import type { CellId } from '../language/tree.ts';
import type { Report } from '../words/report.ts';
import type { Cell } from './document.ts';
import type { Mend, Mendable } from './mends.ts';

/** What a given still to come is written as. */
export const OPEN = '?';

export function formulaMend(cell: CellId, say: string, formula: string): Mend {
  return { say, does: { kind: 'formula', cell, formula } };
}

/** Reads without a problem and comes to something, if perhaps to nothing known yet. */
export function works(estimate: Mendable, cell: Cell, formula: string): boolean {
  const { reading, outcome } = estimate.draft(cell.part, cell.id, formula);
  return reading.problems.length === 0 && outcome.kind !== 'fault';
}

/** The cells of the same part first, then all others. */
export function* nearCells(estimate: Mendable, cell: Cell): Iterable<Cell> {
  const { sections } = estimate.notebook;
  for (const own of [true, false]) {
    for (const section of sections) {
      if ((section.key === cell.part) === own) yield* section.cells;
    }
  }
}

/** The words under the report's first spot. */
export function words(cell: Cell, { spots }: Report): string {
  const [spot] = spots;
  return spot ? cell.formula.slice(spot.from, spot.to).trim() : '';
}
