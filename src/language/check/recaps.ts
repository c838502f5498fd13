// Recaps: the total of cost lines, in money.
import { MONEY } from '../../quantity/dimension.ts';
import { amountMeasure } from '../../quantity/measure.ts';
import type { Checked, Plan } from '../plan.ts';
import type { CellId, Recap } from '../tree.ts';
import type { Checking } from './checking.ts';
import { madeLeaf, scaled } from './holding.ts';

const DOLLARS = amountMeasure(MONEY);

/** A line that is at fault or not yet known is left out of the total, and the total says so. */
export function checkRecap(formula: Recap, checking: Checking): Checked {
  const items = formula.lines.map((line) => lineInDollars(line, checking));
  return madeLeaf(formula, { measure: DOLLARS, showIn: null, written: [] }, { op: 'total', items });
}

function lineInDollars(line: CellId, checking: Checking): Plan {
  const cell: Plan = { op: 'cell', cell: line };
  const measure = checking.surroundings.holdsOf(line)?.measure;
  return measure?.kind === 'amount' ? scaled(cell, measure.scale) : cell;
}
