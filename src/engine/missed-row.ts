// A look-up without a row: which condition no row met, and what stands there of the rows that met those before it.
import type { Checked, LookUpRow, Plan } from '../language/plan.ts';
import type { CellId, Relation } from '../language/tree.ts';
import type { Report } from '../words/report.ts';
import { noRow } from './faults.ts';
import { Fault, type Held } from './held.ts';

/** What stands in a column, as far as a message tells it. */
const MOST_THERE = 8;

/** Null: it is no look-up that found no row. */
export function missedRow(
  { formula, plan }: Checked,
  text: string,
  work: (plan: Plan) => Held,
  shownOf: (cell: CellId) => string | null,
): Report | null {
  if (formula.kind !== 'look-up' || plan.op !== 'look-up') return null;
  const held = work(plan);
  if (!(held instanceof Fault) || held.code !== 'no-row') return null;
  const { condition } = held;
  const meets = (row: LookUpRow, i: number): boolean => {
    const [left, wanted] = [row.cells[i], plan.wanted[i]];
    if (!left || !wanted) return false;
    return work({ op: 'compare', relation: wanted.relation, left, right: wanted.value }) === true;
  };
  const there = new Set<string>();
  const instead = new Set<string>();
  for (const row of plan.rows) {
    if (there.size > MOST_THERE) break;
    let cell = row.cells[condition];
    while (cell?.op === 'scale') cell = cell.of;
    if (cell?.op !== 'cell') continue;
    let met = true;
    for (let i = 0; i < condition && met; i++) met = meets(row, i);
    const shown = met ? shownOf(cell.cell) : null;
    if (shown === null) continue;
    there.add(shown);
    let all = true;
    for (let i = condition + 1; i < row.cells.length && all; i++) all = meets(row, i);
    if (all) instead.add(shown);
  }
  const value = formula.conditions[condition]?.value;
  const shown = value?.kind === 'name' ? shownOf(value.cell) : null;
  const all = [...there];
  const told = all.length > MOST_THERE ? [...all.slice(0, MOST_THERE - 1), '…'] : all;
  const { relation } = plan.wanted[condition] ?? { relation: 'is-not' };
  return noRow(formula, condition, text, shown, told, asked(relation, [...instead]));
}

/** Of what stands there: the last that "at least" can ask for, or a few. */
function asked(relation: Relation, there: readonly string[]): readonly string[] {
  const written = there.filter((shown) => shown !== '');
  switch (relation) {
    case 'is':
      return written.slice(0, MOST_OFFERED);
    case 'at-least':
    case 'at-most':
      return written.slice(-MOST_OFFERED).toReversed();
    case 'is-not':
    case 'more':
    case 'less':
      return [];
  }
}

const MOST_OFFERED = 3;
