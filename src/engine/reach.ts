// What a few cells reach, or rest on, and how each of those is worked: for whoever works them again with other
// values beside the notebook. Whole columns that stand between rows and what asks about them are passed through.
import type { Plan } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import type { AmountMeasure } from '../quantity/measure.ts';
import type { Graph, Slot } from './graph.ts';
import type { CellRecord } from './record.ts';
import type { Roster } from './roster.ts';

/** How the value that is used of a cell is worked: what is set by hand where it is. */
export interface WorkedBy {
  readonly plan: Plan;
  /** Of a cost or price line: the measure of the sum that is rounded to the cent. */
  readonly cents: AmountMeasure | null;
  /** The cell that a cell in the plan stands for: within a row, a column stands for that row's cell. */
  readonly meant: (cell: CellId) => CellId;
}

/** Null where nothing is worked: a text, a blank, a table, what is at fault, what is in a circle. */
export function workedBy(record: CellRecord, graph: Graph): WorkedBy | null {
  const { used, place, slot } = record;
  const { checked } = used.reading;
  if (!used.work || !checked || graph.inCircle(slot)) return null;
  const row = place?.row;
  return {
    plan: checked.plan,
    cents: used.cents ?? null,
    meant: (cell) => row?.cellOf(cell)?.id ?? cell,
  };
}

/** `up`: all that need one of them, on and on; `down`: all that they need. In an order in which they can be worked. */
export function reach(
  from: readonly CellId[],
  way: 'up' | 'down',
  graph: Graph,
  roster: Roster,
): readonly CellId[] {
  const met = new Set<Slot>(from.map((id) => roster.record(id).slot));
  const starts = met.size;
  for (const slot of met) {
    const next = way === 'up' ? graph.usersOf(slot) : graph.needsOf(slot);
    for (const each of next) met.add(each);
  }
  return [...met]
    .slice(starts)
    .sort((a, b) => graph.heightOf(a) - graph.heightOf(b))
    .map((slot) => roster.at(slot))
    .filter((record) => !record.column)
    .map((record) => record.id);
}
