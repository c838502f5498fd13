// What cells need and go into where tables stand between: a column by what asks about it, a row by its table.
import type { CellId } from '../language/tree.ts';
import type { Graph, Slot } from './graph.ts';
import type { CellRecord } from './record.ts';
import type { Roster } from './roster.ts';
import type { EngineTable } from './tables.ts';

/** Cells as they are told of to `of`. */
export function toldOf(
  slots: readonly Slot[],
  of: CellRecord,
  graph: Graph,
  roster: Roster,
): readonly CellId[] {
  const records = slots.map((slot) => roster.at(slot));
  if (!records.some((record) => record.column ?? record.place)) return records.map((r) => r.id);
  const own = of.place?.row.table ?? of.table;
  const ids = new Set<CellId>();
  for (const record of records) {
    const { column, place } = record;
    if (column) {
      // What asks about the column goes on from a row's cell; what a formula needs of it is its table.
      if (of.place?.column !== column) continue;
      for (const id of toldOf(graph.usersOf(record.slot), of, graph, roster)) ids.add(id);
    } else ids.add(place && place.row.table !== own ? place.row.table.id : record.id);
  }
  return [...ids];
}

/** What the rows of a table need from outside it. */
export function neededByTable(table: EngineTable, graph: Graph, roster: Roster): readonly CellId[] {
  const slots = new Set<Slot>();
  for (const row of table.rows) {
    for (const cell of row.cells) for (const need of graph.needsOf(cell.slot)) slots.add(need);
  }
  const outside = [...slots].map((slot) => roster.at(slot));
  return outside.filter((r) => !r.column && r.place?.row.table !== table).map((r) => r.id);
}
