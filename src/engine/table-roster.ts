// Who is there in tables: their columns and rows, and which cells an edit of a table could matter to.
// A row keeps its cells while its texts stand somewhere in the table, so that an edit works one row.
import { ARTICLES, nameWords } from '../language/lexer.ts';
import { RowVocabulary } from '../language/row-vocabulary.ts';
import type { SizeTable } from '../language/size-table.ts';
import type { TableShape } from '../language/table-shape.ts';
import type { CellId } from '../language/tree.ts';
import { Trie } from '../language/trie.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import type { Graph, Slot } from './graph.ts';
import type { CellInput, ReferenceTable, TableInput } from './outcome.ts';
import { CellRecord } from './record.ts';
import type { Change } from './roster-change.ts';
import {
  EngineTable,
  RowCellInput,
  TableColumn,
  TableRow,
  isTextColumn,
  matchedRows,
} from './tables.ts';

/** What tables ask of the roster. */
interface Rolls {
  readonly vocabulary: Vocabulary;
  readonly graph: Graph;
  at(slot: Slot): CellRecord;
  /** A record that was just made. */
  enter(record: CellRecord, change: Change): void;
  /** A change of its own, made at once. */
  bring(make: (change: Change) => void): void;
  /** A record of a table that is no more. */
  leave(record: CellRecord, change: Change): void;
}

export class TableRoster {
  readonly #rolls: Rolls;
  /** Cells of rows; their ids are below nought. */
  readonly #cells = new Map<CellId, CellRecord>();
  readonly #columns = new Map<CellId, CellRecord>();
  /** Cells with choices. */
  readonly #choosers = new Set<CellRecord>();
  #last = 0;
  /** The change that is being found out. */
  #open: Change | null = null;

  constructor(rolls: Rolls, reference: readonly ReferenceTable[]) {
    this.#rolls = rolls;
    if (reference.length === 0) return;
    const { vocabulary } = rolls;
    const names = new Trie<ReferenceTable>();
    for (const table of reference) names.add(nameWords(table.name), table);
    const brought = new Map<ReferenceTable, CellId>();
    const shapeOf = (wanted: ReferenceTable): TableShape | null => {
      let id = brought.get(wanted);
      // In the middle of working nothing new may come in for a mend that is only tried.
      if (id === undefined && vocabulary.tries) return null;
      if (id === undefined) brought.set(wanted, (id = this.#bring(wanted)));
      return vocabulary.table(id) ?? null;
    };
    vocabulary.setReference({
      names: reference.map((table) => table.name),
      sizes: reference.flatMap((table) => sizesIn(table, () => shapeOf(table))),
      at: (tokens, at) => {
        const skip = ARTICLES.has(tokens[at]?.text ?? '') ? 1 : 0;
        const found = names.longest(tokens, at + skip);
        const [wanted] = found?.values ?? [];
        if (!found || !wanted) return null;
        const table = shapeOf(wanted);
        return table ? { length: found.length + skip, table } : null;
      },
    });
  }

  /** While the change is being found out, a table of the trade that a formula names becomes part of it. */
  during<T>(change: Change, work: () => T): T {
    this.#open = change;
    try {
      return work();
    } finally {
      this.#open = null;
    }
  }

  /** A table of the trade has no cells before a formula names it. */
  #bring({ name, source, caution, table }: ReferenceTable): CellId {
    const id = --this.#last;
    const input = { id, part: '', name, formula: '', byHand: null, money: null };
    const record = new CellRecord(this.#rolls.graph.add(), { ...input, table, source, caution });
    this.#cells.set(id, record);
    const enter = (change: Change): void => {
      this.#rolls.enter(record, change);
      change.scan.add(record);
      this.put(record, 'same', change);
    };
    if (this.#open) enter(this.#open);
    else this.#rolls.bring(enter);
    return id;
  }

  cell(id: CellId): CellRecord | undefined {
    return this.#cells.get(id);
  }

  column(id: CellId): CellRecord {
    const record = this.#columns.get(id);
    if (!record) throw new Error(`there is no column ${id}`);
    return record;
  }

  maybeColumn(id: CellId): TableColumn | null {
    return this.#columns.get(id)?.column ?? null;
  }

  putChoices(record: CellRecord, before: string | null, change: Change): void {
    const now = record.input.choices ?? null;
    this.#rolls.vocabulary.setChoices(record.id, now);
    if (now === null) this.#choosers.delete(record);
    else this.#choosers.add(record);
    if (now === before) return;
    change.scan.add(record);
    this.#scanUsers(record, change);
  }

  dropChoices(record: CellRecord): void {
    this.#rolls.vocabulary.setChoices(record.id, null);
    this.#choosers.delete(record);
  }

  /** Texts of a column came or went: cells that choose among them are read again, and what asks about those cells. */
  findChoices(change: Change): void {
    if (!change.choices) return;
    for (const record of this.#choosers) {
      change.scan.add(record);
      this.#scanUsers(record, change);
    }
  }

  /** `renamed`: the cell that holds it has another name or stands in another part. */
  put(record: CellRecord, renamed: 'renamed' | 'same', change: Change): void {
    const input = record.input.table ?? null;
    if (input === null) {
      if (record.table === null) return;
      this.drop(record, change);
      change.scan.add(record);
      return;
    }
    if (record.table === null) this.#scanUsers(record, change);
    const table = (record.table ??= new EngineTable(record.id));
    if (table.input === input && renamed === 'same') return;
    const before = table.rows.length;
    const reshaped = this.#putColumns(table, record, input, change);
    const moved = this.#putRows(table, record, input, change);
    if (moved || table.rows.length !== before) change.read.add(record);
    table.input = input;
    const { vocabulary } = this.#rolls;
    const old = vocabulary.table(record.id);
    const shape = table.shape(record.input);
    const same =
      old !== undefined &&
      !reshaped &&
      !moved &&
      shape.columns.every((column, k) => {
        const was = old.columns[k];
        return was?.texts === column.texts && sameList(was.blanks, column.blanks);
      });
    if (same && renamed === 'same') return;
    change.choices = true;
    vocabulary.putTable(shape);
    this.#forgetTables();
    this.#scanUsers(record, change);
    for (const column of table.columns) {
      change.columns.add(column.record);
      this.#scanUsers(column.record, change);
    }
  }

  drop(record: CellRecord, change: Change): void {
    const { table } = record;
    if (!table) return;
    this.#scanUsers(record, change);
    for (const column of table.columns) this.#dropColumn(table, column, change);
    this.#rolls.vocabulary.dropTable(record.id);
    this.#forgetTables();
    record.table = null;
    change.choices = true;
  }

  /** Rows that are read again for another reason than their own text: all that their column shares is read again. */
  forgetShared(change: Change): void {
    const columns = new Set<TableColumn>();
    for (const record of change.scan) {
      if (record.column) columns.add(record.column);
      else if (record.place && !change.ownText.has(record)) columns.add(record.place.column);
    }
    for (const column of columns) {
      column.forget();
      change.scan.delete(column.record);
      for (const cell of column.cells()) change.scan.add(cell);
    }
  }

  #forgetTables(): void {
    for (const { column } of this.#columns.values()) column?.forgetTables();
  }

  #scanUsers({ slot }: CellRecord, change: Change): void {
    for (const user of this.#rolls.graph.usersOf(slot)) change.scan.add(this.#rolls.at(user));
  }

  /** True where columns came, went, moved or were renamed. */
  #putColumns(table: EngineTable, record: CellRecord, input: TableInput, change: Change): boolean {
    const old = new Map(table.columns.map((column) => [keyOf(column.name), column]));
    const found = input.columns.map(({ name }) => {
      const column = old.get(keyOf(name)) ?? null;
      if (column) old.delete(keyOf(name));
      return column;
    });
    const gone = new Set(old.values());
    const columns = input.columns.map(({ name, formula }, k): TableColumn => {
      // One that stands where another stood was renamed.
      const there = table.columns[k];
      const renamed = !found[k] && there && gone.has(there) ? there : null;
      if (renamed) gone.delete(renamed);
      const column = found[k] ?? renamed ?? this.#newColumn(table, record.input, change);
      const texts = input.rows.map((row) => row[k] ?? '');
      const isText = isTextColumn({ name, formula }, texts);
      if (column.formula !== formula || column.isText !== isText) {
        for (const cell of column.cells()) change.scan.add(cell);
      }
      column.formula = formula;
      column.isText = isText;
      return column;
    });
    const before = table.columns;
    const same =
      columns.length === before.length &&
      columns.every((c, k) => c === before[k] && c.name === input.columns[k]?.name);
    columns.forEach((column, k) => (column.name = input.columns[k]?.name ?? ''));
    if (same) return false;
    for (const column of gone) this.#dropColumn(table, column, change);
    table.columns = columns;
    table.placeOf = new Map(columns.map((column, k) => [column.id, k]));
    table.values.length = 0;
    const shifted = columns.some((c, k) => c !== before[k] && before.includes(c));
    for (const row of table.rows) {
      row.texts = columns.map((column) => row.texts[before.indexOf(column)] ?? '');
      row.cells = columns.map((column) => {
        const cell = row.cells[before.indexOf(column)];
        return cell ?? this.#newCell(record, row, column, change);
      });
      for (const cell of row.cells) {
        // What was worked from the row's places reads other places now, though it reads the same in words.
        if (shifted) cell.stale = true;
        change.scan.add(cell);
      }
    }
    return true;
  }

  /** True where rows came, went or moved. */
  #putRows(table: EngineTable, record: CellRecord, input: TableInput, change: Change): boolean {
    const before = table.rows;
    const found = matchedRows(before, input.rows);
    const rows = input.rows.map((texts, index): TableRow => {
      const row = found[index] ?? new TableRow(table, index, texts);
      row.index = index;
      if (!found[index]) {
        row.cells = table.columns.map((column) => this.#newCell(record, row, column, change));
        return row;
      }
      const was = row.texts;
      row.texts = texts;
      texts.forEach((text, k) => {
        const cell = row.cells[k];
        if (text === was[k] || !cell) return;
        if (!change.scan.has(cell)) change.ownText.add(cell);
        change.scan.add(cell);
      });
      return row;
    });
    table.rows = rows;
    const kept = new Set(found);
    for (const row of before) {
      if (kept.has(row)) continue;
      for (const cell of row.cells) this.#dropCell(cell, change);
    }
    return rows.length !== before.length || rows.some((row, i) => row !== before[i]);
  }

  #newColumn(table: EngineTable, { part }: CellInput, change: Change): TableColumn {
    const id = --this.#last;
    const input = { id, part, name: '', formula: '', byHand: null, money: null };
    const { graph, vocabulary } = this.#rolls;
    const record = new CellRecord(graph.add(), input);
    const names = new RowVocabulary(vocabulary, table.id, id);
    const column = new TableColumn(id, table, record, names);
    record.column = column;
    this.#columns.set(id, record);
    this.#rolls.enter(record, change);
    return column;
  }

  #newCell(of: CellRecord, row: TableRow, column: TableColumn, change: Change): CellRecord {
    const id = --this.#last;
    const place = { row, column };
    const input = new RowCellInput(id, place, () => of.input);
    const record = new CellRecord(this.#rolls.graph.add(), input);
    record.place = place;
    this.#cells.set(id, record);
    change.scan.add(record);
    change.ownText.add(record);
    this.#rolls.enter(record, change);
    return record;
  }

  #dropCell(cell: CellRecord, change: Change): void {
    this.#cells.delete(cell.id);
    this.#rolls.leave(cell, change);
  }

  #dropColumn(table: EngineTable, column: TableColumn, change: Change): void {
    const k = table.columns.indexOf(column);
    for (const row of table.rows) {
      const cell = row.cells[k];
      if (cell) this.#dropCell(cell, change);
    }
    this.#scanUsers(column.record, change);
    this.#columns.delete(column.id);
    change.columns.delete(column.record);
    this.#rolls.leave(column.record, change);
  }
}

/** The rows of a table of sizes, by size. */
function sizesIn(
  { name, table, sizes }: ReferenceTable,
  shape: () => TableShape | null,
): readonly SizeTable[] {
  if (!sizes) return [];
  const names = table.columns.map((column) => column.name);
  const key = names.indexOf(sizes.column);
  const rows = new Map(
    table.rows.map((row) => [
      row[key] ?? '',
      new Map(names.map((each, k) => [each, row[k] ?? ''])),
    ]),
  );
  return [{ name, told: sizes, rows, shape }];
}

function keyOf(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

function sameList(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((each, i) => each === b[i]);
}
