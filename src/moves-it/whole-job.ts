// The job as a whole among the cells: its direct cost and its price as the footing has them, which no cell need hold.
// They are asked about as cells are, by ids of their own that no notebook gives.
import type { CellInput, CellState } from '../engine/outcome.ts';
import type { WorkedBy } from '../engine/reach.ts';
import type { Plan } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import { cellsOf } from '../notebook/lines.ts';
import type { Cell } from '../notebook/document.ts';
import { MONEY } from '../quantity/dimension.ts';
import { NONE_WRITTEN } from '../quantity/form.ts';
import { Fraction, amountMeasure } from '../quantity/measure.ts';
import type { Job } from './figures.ts';
import type { Solves } from './would-take.ts';

export const DIRECT_COST: CellId = Number.MIN_SAFE_INTEGER;
export const JOB_PRICE: CellId = Number.MIN_SAFE_INTEGER + 1;

const NAMES: ReadonlyMap<CellId, string> = new Map([
  [DIRECT_COST, 'Direct cost of the job'],
  [JOB_PRICE, 'Price of the job'],
]);

const DOLLARS = { measure: amountMeasure(MONEY), showIn: null, written: NONE_WRITTEN };
const NOUGHT: Plan = { op: 'constant', value: new Fraction(0) };

/** The job with `DIRECT_COST` and `JOB_PRICE` among what can be asked; without a line of money there is nothing to ask. */
export function withTotals(job: Job & Solves): Job & Solves {
  const lines = job.notebook.parts.flatMap(cellsOf).filter(({ money }) => money !== null);
  const isTotal = (cell: CellId): boolean => NAMES.has(cell);
  const linesOf = (total: CellId): readonly Cell[] =>
    total === JOB_PRICE ? lines : lines.filter(({ money }) => money?.line === 'cost');
  const totals = [DIRECT_COST, JOB_PRICE].filter((total) => linesOf(total).length > 0);
  const planOf = (total: CellId): Plan => ({ op: 'total', items: linesOf(total).map(itemOf) });

  const reach = (cells: readonly CellId[], way: 'up' | 'down'): readonly CellId[] => {
    if (way === 'up') {
      const own = cells.filter((cell) => !isTotal(cell));
      const found = job.reach(own, 'up');
      const met = new Set([...own, ...found]);
      return [...found, ...totals.filter((total) => linesOf(total).some(({ id }) => met.has(id)))];
    }
    const from = cells.flatMap((cell) =>
      isTotal(cell) ? linesOf(cell).map(({ id }) => id) : [cell],
    );
    const asked = new Set(cells);
    return [...new Set([...job.reach(from, 'down'), ...from])].filter((cell) => !asked.has(cell));
  };

  const stateOf = (total: CellId): CellState => {
    const [first] = linesOf(total);
    if (!first) throw new Error('no line of money to add up');
    const state = job.state(first.id);
    const name = NAMES.get(total) ?? '';
    // No line of money itself: what is written for it need not be what a line may say.
    const input: CellInput = {
      ...state.input,
      id: total,
      name,
      formula: '',
      byHand: null,
      money: null,
    };
    const outcome = job.evaluate(planOf(total));
    return {
      ...state,
      input,
      kind: 'worked',
      outcome,
      worked: outcome,
      holds: DOLLARS,
      workedHolds: DOLLARS,
      range: null,
      lastGood: null,
      needs: linesOf(total).map(({ id }) => id),
      goesInto: [],
    };
  };

  const workedBy = (total: CellId): WorkedBy => ({
    plan: planOf(total),
    cents: null,
    meant: (cell) => cell,
  });

  /** Where anything may be written: a line of money asks for money, in words about lines. */
  const asAnyAmount = (total: CellId): CellId => {
    const cells = job.notebook.parts.flatMap(cellsOf);
    const free = cells.find(({ money, table }) => money === null && table === null);
    return (free ?? linesOf(total)[0])?.id ?? total;
  };

  return {
    notebook: job.notebook,
    rows: (cell) => job.rows(cell),
    state: (cell) => (isTotal(cell) ? stateOf(cell) : job.state(cell)),
    evaluate: (plan) => job.evaluate(plan),
    reach,
    workedBy: (cell) => (isTotal(cell) ? workedBy(cell) : job.workedBy(cell)),
    say: (value, holds) => job.say(value, holds),
    draft: (cell, formula) => job.draft(isTotal(cell) ? asAnyAmount(cell) : cell, formula),
  };
}

/** A line as it counts: of a discount, what is taken off, whichever sign it is written with. */
function itemOf({ id, money }: Cell): Plan {
  const cell: Plan = { op: 'cell', cell: id };
  if (money?.line !== 'price' || money.kind !== 'discount') return cell;
  const less: Plan = { op: 'subtract', left: NOUGHT, right: cell };
  return { op: 'least', items: [cell, less] };
}
