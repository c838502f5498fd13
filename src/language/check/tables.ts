// Figures of a column and look-ups: every row has to measure the same, and what is looked up by has to fit its column.
import { countOf } from '../../quantity/dimension.ts';
import { describe } from '../../quantity/describe.ts';
import { type Form, type Holds, writtenUnits } from '../../quantity/form.ts';
import { type Measure, NUMBER, OPEN, amountMeasure } from '../../quantity/measure.ts';
import type { Spot } from '../../words/spot.ts';
import type { Checked, LookUpRow, Plan, Wanted } from '../plan.ts';
import type { CellId, ColumnOf, Formula, LookUp, LookUpCondition, RowCount } from '../tree.ts';
import { agree } from './agreeing.ts';
import { type Checking, mended, noted, refuse } from './checking.ts';
import { ADDING, AVERAGING, COMPARING, type Task } from './clashes.ts';
import { constant, inScale, made, madeLeaf, sameForm } from './holding.ts';
import { capital, headline } from './saying.ts';
import { isSizeAsked } from './sized.ts';

/** `total of volume in slab bays`. A row without a value is left out of a total, and the total says so. */
export function checkColumn(formula: ColumnOf, checking: Checking): Checked | null {
  const { cells, what, columnSay, tableSay, spot } = formula;
  if (cells.length === 0) return refuse(checking, noRows(tableSay, spot));
  const task = what === 'average' ? AVERAGING : what === 'total' ? ADDING : COMPARING;
  const column = measured(cells, columnSay, tableSay, spot, task, checking);
  if (!column) return null;
  const { measure, lacking } = column;
  if (measure.kind === 'text' || measure.kind === 'yes-no') {
    return refuse(checking, {
      code: 'column-not-amounts',
      headline: headline(
        `${capital(columnSay)} has no amounts in it.`,
        'This column has no amounts in it.',
      ),
      spots: [spot],
      explanation: `The rows of "${columnSay}" in "${tableSay}" hold ${describe(measure)}; only amounts have a ${what}.`,
      fixes: [mended(checking, 'Count the rows instead', { spot, by: `(how many ${tableSay})` })],
    });
  }
  if (lacking.length > 0 && what !== 'total') {
    checking.waitsFor.push(...lacking.filter((id) => !checking.waitsFor.includes(id)));
    return null;
  }
  const items = cells.map((cell) => inColumn(cell, column, checking));
  const of: Plan = { op: what, items };
  const holds: Holds = { measure, showIn: column.showIn, written: column.written };
  return madeLeaf(formula, holds, { op: 'column', column: formula.column, of });
}

/** `how many slab bays`. */
export function checkRowCount(formula: RowCount): Checked {
  const measure = formula.noun === null ? NUMBER : amountMeasure(countOf(formula.noun));
  return madeLeaf(formula, { measure, showIn: null, written: [] }, constant(formula.rows));
}

/** `read size off joist spans for …`; `values` are the right sides of its conditions. */
export function checkLookUp(
  formula: LookUp,
  values: readonly Checked[],
  checking: Checking,
): Checked | null {
  const { cells, columnSay, tableSay, spot, conditions } = formula;
  if (cells.length === 0) return refuse(checking, noRows(tableSay, spot));
  if (!isSizeAsked(formula, values, checking)) return null;
  const answers = measured(cells, columnSay, tableSay, formula.columnSpot, CHOICE, checking);
  if (!answers) return null;
  const wanted: Wanted[] = [];
  const sides: (readonly Plan[])[] = [];
  const parts: Checked[] = [];
  for (const [i, condition] of conditions.entries()) {
    const value = values[i];
    if (!value) throw new Error('A condition without its value');
    const settled = checkCondition(condition, value, tableSay, checking);
    if (!settled) return null;
    wanted.push(settled.wanted);
    sides.push(settled.cells);
    parts.push(settled.value);
  }
  const blanks = conditions.map((c) => new Set(c.blanks));
  const rows: LookUpRow[] = [];
  for (const [row, cell] of cells.entries()) {
    // Where nothing stands, nothing fits.
    if (conditions.some((c, i) => blanks[i]?.has(c.cells[row] ?? 0))) continue;
    const side = sides.map((plans) => plans[row] ?? constant(0));
    rows.push({ cells: side, answer: inColumn(cell, answers, checking) });
  }
  if (formula.caution !== null) noted(checking, formula.caution);
  const plan: Plan = { op: 'look-up', wanted, rows };
  const besides = { showIn: answers.showIn, written: answers.written };
  return made(formula, parts, answers.measure, plan, besides);
}

/** Its column's cells and its value in one scale. */
function checkCondition(
  condition: LookUpCondition,
  value: Checked,
  tableSay: string,
  checking: Checking,
): { wanted: Wanted; cells: readonly Plan[]; value: Checked } | null {
  const { cells, columnSay, columnSpot, relation } = condition;
  const settled = (value: Plan): Wanted => ({ column: condition.column, relation, value });
  const column = measured(cells, columnSay, tableSay, columnSpot, COMPARING, checking);
  if (!column) return null;
  const isText = column.measure.kind === 'text' || column.measure.kind === 'yes-no';
  if (isText && relation !== 'is' && relation !== 'is-not') {
    return refuse(checking, {
      code: 'no-order',
      headline: headline(`${capital(columnSay)} has no more and no less.`, 'These have no order.'),
      spots: [columnSpot],
      explanation: `The rows of "${columnSay}" hold ${describe(column.measure)}: they are the same or not. Leave "at least" and the like out.`,
      fixes: [
        mended(checking, 'Ask for that one', {
          spot: { from: columnSpot.to, to: condition.value.spot.from },
          by: ' ',
        }),
      ],
    });
  }
  if (column.measure === OPEN || value.holds.measure === OPEN) {
    const plans = cells.map((cell): Plan => ({ op: 'cell', cell }));
    return { wanted: settled(value.plan), cells: plans, value };
  }
  const leaf = madeLeaf(
    { kind: 'name', cell: column.first, say: columnSay, spot: columnSpot },
    { measure: column.measure, showIn: column.showIn, written: column.written },
    { op: 'cell', cell: column.first },
  );
  const agreed = agree([leaf, value], COMPARING, checking);
  const plan = agreed?.plans[1];
  if (!agreed || !plan) return null;
  const common = { ...column, measure: agreed.measure };
  return {
    wanted: settled(plan),
    cells: cells.map((cell) => inColumn(cell, common, checking)),
    value: agreed.parts[1] ?? value,
  };
}

const CHOICE: Task = {
  cannot: "can't both be the answer",
  works: 'A look-up works',
  sharesBesideNumbers: 'no',
};

interface ColumnHolds {
  readonly measure: Measure;
  readonly showIn: Form | null;
  readonly written: readonly string[];
  /** A cell that holds this. */
  readonly first: CellId;
  /** Cells that hold nothing: they are at fault, or wait for one that is. */
  readonly lacking: readonly CellId[];
}

/** What all rows of a column hold, or null after saying which row measures something else. */
function measured(
  cells: readonly CellId[],
  columnSay: string,
  tableSay: string,
  spot: Spot,
  task: Task,
  checking: Checking,
): ColumnHolds | null {
  const distinct: [Holds, number][] = [];
  const isNew = (holds: Holds): boolean =>
    !distinct.some(
      ([each]) =>
        each.measure === holds.measure &&
        each.written === holds.written &&
        sameForm(each.showIn, holds.showIn),
    );
  const lacking: CellId[] = [];
  let open: CellId | null = null;
  let last: Holds | null = null;
  for (const [row, cell] of cells.entries()) {
    const holds = checking.surroundings.holdsOf(cell);
    if (!holds) lacking.push(cell);
    else if (holds.measure === OPEN) open ??= cell;
    else if (holds !== last) {
      last = holds;
      if (isNew(holds)) distinct.push([holds, row]);
    }
  }
  const [leader, ...others] = distinct;
  if (!leader) {
    if (open !== null) return { measure: OPEN, showIn: null, written: [], first: open, lacking };
    checking.waitsFor.push(...lacking.filter((id) => !checking.waitsFor.includes(id)));
    return null;
  }
  const [holds, row] = leader;
  const first = cells[row] ?? 0;
  const written = writtenUnits(...distinct.map(([each]) => each.written));
  const showIn = distinct.every(([each]) => sameForm(each.showIn, holds.showIn))
    ? holds.showIn
    : null;
  if (others.every(([other]) => other.measure === holds.measure)) {
    return { measure: holds.measure, showIn, written, first, lacking };
  }
  const leaves = distinct.map(([each, at]) =>
    madeLeaf({ kind: 'name', cell: cells[at] ?? 0, say: columnSay, spot } satisfies Formula, each, {
      op: 'cell',
      cell: cells[at] ?? 0,
    }),
  );
  const agreed = agree(leaves, task, { ...checking, problems: [], notes: [] });
  if (agreed) return { measure: agreed.measure, showIn: agreed.showIn, written, first, lacking };
  const odd = leaves.find(
    (leaf) => !agree([leaves[0] ?? leaf, leaf], task, { ...checking, problems: [], notes: [] }),
  );
  const oddRow = distinct.find(([each]) => each === odd?.holds)?.[1] ?? row;
  return refuse(checking, {
    code: 'column-clash',
    headline: headline(
      `The rows of ${columnSay} don't all measure the same.`,
      "The rows of this column don't all measure the same.",
    ),
    spots: [spot],
    explanation:
      `In "${tableSay}", row ${row + 1} holds ${describe(holds.measure)} and row ${oddRow + 1} ` +
      `${odd ? describe(odd.holds.measure) : 'something else'}: ${rowFacts(cells, row, oddRow, checking)}. Mend one of them.`,
    fixes: [],
  });
}

function rowFacts(cells: readonly CellId[], a: number, b: number, checking: Checking): string {
  const shown = (row: number): string => checking.surroundings.shownOf(cells[row] ?? 0) ?? '?';
  return `${shown(a)}, and ${shown(b)}`;
}

/** A cell of the column in the column's scale; one that holds nothing as it stands. */
function inColumn(cell: CellId, column: ColumnHolds, checking: Checking): Plan {
  const plan: Plan = { op: 'cell', cell };
  const holds = checking.surroundings.holdsOf(cell);
  const { measure } = column;
  if (!holds || holds.measure === measure) return plan;
  if (measure.kind !== 'amount' || holds.measure.kind !== 'amount') return plan;
  return inScale(madeLeaf({ kind: 'hole', spot: NOWHERE }, holds, plan), measure);
}

const NOWHERE: Spot = { from: 0, to: 0 };

function noRows(table: string, spot: Spot) {
  return {
    code: 'no-rows',
    headline: headline(`${capital(table)} has no rows yet.`, 'This table has no rows yet.'),
    spots: [spot],
    explanation: 'There is nothing in it to add up or to look up. Put a row in first.',
    fixes: [],
  };
}
