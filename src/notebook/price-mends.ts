// Mends of prices that are not yet money: by which cells they may be multiplied.
import { abovePart } from '../language/check/counted.ts';
import {
  type Dimension,
  MONEY,
  PLAIN,
  timesDimension,
  withoutNounsAbove,
} from '../quantity/dimension.ts';
import type { Report } from '../words/report.ts';
import type { Cell } from './document.ts';
import type { Mend, Mendable } from './mends.ts';
import { formulaMend, nearCells, works } from './mends-tried.ts';

/** As many cells as are offered to multiply by. */
const MOST_OFFERED = 3;

/** A price per bag beside money: at the cells that count bags. */
export function priced(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  for (const { from, to } of report.spots) {
    const rate = cell.formula.slice(from, to);
    const measure = estimate.draft(cell.part, cell.id, rate).holds?.measure;
    if (measure?.kind !== 'amount' || measure.dimension === MONEY) continue;
    if (abovePart(measure.dimension) !== MONEY) continue;
    const offered = multipliers(estimate, cell, measure.dimension).flatMap((say): Mend[] => {
      const by = `(${say} at ${rate})`;
      const formula = cell.formula.slice(0, from) + by + cell.formula.slice(to);
      if (!works(estimate, cell, formula)) return [];
      return [formulaMend(cell.id, `${say} at ${rate}`, formula)];
    });
    if (offered.length > 0) return offered.slice(0, MOST_OFFERED);
  }
  return [];
}

/** A cost line that is a price for one, or no money: by what makes money of it; or it is no cost line. */
export function toCost(estimate: Mendable, cell: Cell): readonly Mend[] {
  const { formula } = cell;
  const { measure } = estimate.draft(cell.part, null, formula).holds ?? {};
  const line = estimate.state(cell.id).input.money?.line ?? 'cost';
  const away: Mend = {
    say: `Leave "${line}" out: it is no ${line} line`,
    does: { kind: 'no-remark', cell: cell.id, word: line },
  };
  if (measure?.kind !== 'amount') return [away];
  const { kind } = estimate.draft(cell.part, null, formula).reading.tree;
  const isOne = kind === 'name' || kind === 'amount' || kind === 'bracket';
  const asOne = isOne ? formula : `(${formula})`;
  const isPrice = abovePart(measure.dimension) === MONEY;
  const offered = multipliers(estimate, cell, measure.dimension)
    .map((say) => (isPrice ? `${say} at ${asOne}` : `${asOne} at ${say}`))
    .filter((made) => works(estimate, cell, made))
    .slice(0, MOST_OFFERED)
    .map((made) => formulaMend(cell.id, made, made));
  return [...offered, away];
}

/** Cells that make money of this when they are multiplied with it, as they are called here. */
function multipliers(estimate: Mendable, cell: Cell, by: Dimension): readonly string[] {
  const found: string[] = [];
  const isPlain = withoutNounsAbove(by) === PLAIN && by === PLAIN;
  if (isPlain) return found;
  for (const other of nearCells(estimate, cell)) {
    if (other.id === cell.id || found.length >= MOST_OFFERED) continue;
    const measure = estimate.state(other.id).holds?.measure;
    if (measure?.kind !== 'amount' || measure.dimension === PLAIN) continue;
    if (timesDimension(measure.dimension, by) !== MONEY) continue;
    found.push(estimate.say(other.id, cell.id));
  }
  return found;
}
