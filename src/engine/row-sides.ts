// Reading the cells of rows. What a column says is read once for all rows in which what it names holds the same;
// such a formula is worked from where the row's columns are put before it is.
import type { Holds } from '../quantity/form.ts';
import type { Reading, Scan } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import type { Held } from './held.ts';
import type { CellRecord } from './record.ts';
import { type Ground, type Side, formulaSide, refusedSide, sameHolds } from './sides.ts';
import {
  type EngineTable,
  type SharedSide,
  type TableColumn,
  type TableRow,
  blankSide,
  inRow,
  tableSide,
  textOf,
  textSide,
  unquoted,
} from './tables.ts';

/** A text of a column is kept as read for so many ways in which what it names may differ from row to row. */
const MOST_SHARED = 8;

/** What reading rows asks of whoever holds the cells. */
export interface RowGround {
  readonly ground: Ground;
  readonly values: readonly Held[];
  holdsOf(cell: CellId): Holds | null;
  kindOf(column: CellId): object;
  /** From here to `done`, a column stands for its cell in this row. */
  within<T>(row: TableRow, done: () => T): T;
}

/** What a text, a blank or a whole table comes to: nothing has to be read. */
export function unreadSide({ place, table, id }: CellRecord): Side {
  if (table) return tableSide(table.rows.length);
  const text = place ? textOf(place) : '';
  return text === '' ? blankSide(id) : textSide(unquoted(text));
}

/** The side of a row's cell: read anew only where no other row was read with the same things known. */
export function rowSide(record: CellRecord, found: Scan, on: RowGround): Side {
  const { place } = record;
  if (!place) throw new Error(`cell ${record.id} stands in no table`);
  const { row, column } = place;
  return on.within(row, () => {
    const shares = found.recaps.length === 0 && !found.text.includes('?');
    const shared = (shares ? known(column, found, on) : null) ?? readIn(record, found, on);
    if ('reading' in shared) return shared;
    if (shares) keep(column, found, shared);
    const { side, work } = shared;
    const { table } = row;
    return {
      ...side,
      work: () => {
        fill(table, row, on.values);
        return work();
      },
    };
  });
}

/** A text as it would be in this row, for whoever tries it; `row` null: there is none yet. */
export function draftSide(
  found: Scan,
  column: TableColumn,
  row: TableRow | null,
  on: RowGround,
): Side {
  const { table } = column;
  if (!row) return sideInTable(found, null, table, column, on.ground);
  return on.within(row, () => {
    const side = sideInTable(found, null, table, column, on.ground);
    if (side.work) fill(table, row, on.values);
    return side;
  });
}

/** The reading as it stands in a row: what it names of its columns are that row's cells. */
export function readingInRow(reading: Reading, row: TableRow): Reading {
  return inRow(reading, (id) => row.cellOf(id)?.id ?? id);
}

function known(column: TableColumn, found: Scan, on: RowGround): SharedSide | null {
  const all = column.sides.get(found.text);
  if (!all) return null;
  const knew = found.mentions.map((id) => on.holdsOf(id));
  const kinds = found.columns.map((id) => on.kindOf(id));
  const fits = all.find(
    (each) =>
      each.knew.every((holds, i) => sameHolds(holds, knew[i] ?? null)) &&
      each.kinds.every((kind, i) => kind === kinds[i]),
  );
  return fits ?? null;
}

function keep(column: TableColumn, found: Scan, shared: SharedSide): void {
  const all = column.sides.get(found.text) ?? [];
  if (!all.includes(shared)) column.sides.set(found.text, [shared, ...all].slice(0, MOST_SHARED));
}

/** Read in this row; a side that can't be worked is this row's alone. */
function readIn(record: CellRecord, found: Scan, on: RowGround): SharedSide | Side {
  const { place } = record;
  if (!place) throw new Error(`cell ${record.id} stands in no table`);
  const { row, column } = place;
  const side = sideInTable(found, record.id, row.table, column, on.ground);
  const { work, reading } = side;
  if (!work) {
    // What it waits for are cells of its row.
    const waitsFor = reading.waitsFor.map((id) => row.cellOf(id)?.id ?? id);
    return { ...side, reading: { ...reading, waitsFor } };
  }
  const knew = found.mentions.map((id) => on.holdsOf(id));
  const kinds = found.columns.map((id) => on.kindOf(id));
  return { knew, kinds, side, work };
}

function sideInTable(
  found: Scan,
  self: CellId | null,
  table: EngineTable,
  column: TableColumn,
  ground: Ground,
): Side {
  const side = formulaSide(found, self, null, inTable(table, column, ground));
  return refusedSide(side, found.text, found.text === column.formula ? 'column' : 'row');
}

function inTable({ values, placeOf }: EngineTable, column: TableColumn, ground: Ground): Ground {
  const row = { values, placeOf: (id: CellId) => placeOf.get(id) ?? null };
  return { ...ground, vocabulary: column.vocabulary, cells: { ...ground.cells, row } };
}

/** Puts what the row's columns hold where shared formulas read it. */
function fill(table: EngineTable, row: TableRow, values: readonly Held[]): void {
  for (let k = 0; k < row.cells.length; k++) {
    table.values[k] = values[row.cells[k]?.slot ?? 0];
  }
}
