// Tables as the engine keeps them: every row's cell is a cell of its own, so that an edit works one row and what
// asks about its columns. What a column says is read once and shared by all rows in which what it names holds the
// same. A column as a whole is a cell too, without a value: figures of a column and look-ups need it, and not
// thousands of rows each.
import type { Holds } from '../quantity/form.ts';
import { OPEN, TEXT } from '../quantity/measure.ts';
import type { Reading, Scan } from '../language/reading.ts';
import type { RowVocabulary } from '../language/row-vocabulary.ts';
import type { ColumnShape, TableShape } from '../language/table-shape.ts';
import type { CellId } from '../language/tree.ts';
import type { Work } from './compile.ts';
import { FAULT_OF_TEXT, type Held, Unknown } from './held.ts';
import type { CellInput, TableInput } from './outcome.ts';
import type { CellRecord } from './record.ts';
import type { Side } from './sides.ts';

/** What several rows share: a text read with the same things known about all that it names. */
export interface SharedSide {
  readonly knew: readonly (Holds | null)[];
  readonly kinds: readonly object[];
  readonly side: Side;
  readonly work: Work;
}

export class TableColumn {
  readonly id: CellId;
  readonly record: CellRecord;
  readonly vocabulary: RowVocabulary;
  readonly table: EngineTable;
  name: string;
  formula: string | null;
  /** Words and no amounts stand in it: they are texts. */
  isText: boolean;
  /** Another object whenever a cell of it has changed. */
  turn: object = {};
  /** Another object whenever what a cell of it holds has changed. */
  kind: object = {};
  /** By what is written. */
  readonly scans = new Map<string, Scan>();
  readonly sides = new Map<string, SharedSide[]>();
  /** Which of the scans hold what a table was when they were made: its rows and their cells. */
  readonly aboutTables = new Set<string>();
  /** All words of its texts, for names that come and go. */
  readonly words = new Set<string>();
  /** The shape's texts, kept while they stay the same. */
  texts: readonly string[] | null = null;

  constructor(id: CellId, table: EngineTable, record: CellRecord, vocabulary: RowVocabulary) {
    this.id = id;
    this.table = table;
    this.record = record;
    this.vocabulary = vocabulary;
    this.name = '';
    this.formula = null;
    this.isText = false;
  }

  /** Its cells from the first row to the last. */
  cells(): readonly CellRecord[] {
    const k = this.table.columns.indexOf(this);
    return this.table.rows.flatMap((row) => row.cells[k] ?? []);
  }

  forget(): void {
    this.scans.clear();
    this.sides.clear();
    this.aboutTables.clear();
  }

  /** A table is another than it was. What a row says now is scanned again anyhow; what one said once is kept here. */
  forgetTables(): void {
    for (const text of this.aboutTables) {
      this.scans.delete(text);
      this.sides.delete(text);
    }
    this.aboutTables.clear();
  }
}

export class TableRow {
  readonly table: EngineTable;
  index: number;
  texts: readonly string[];
  /** In the order of the columns. */
  cells: readonly CellRecord[];

  constructor(table: EngineTable, index: number, texts: readonly string[]) {
    this.table = table;
    this.index = index;
    this.texts = texts;
    this.cells = [];
  }

  /** The row's cell in this column; null where it is no column of its table. */
  cellOf(column: CellId): CellRecord | null {
    const k = this.table.placeOf.get(column);
    return k === undefined ? null : (this.cells[k] ?? null);
  }
}

/** Where in a table a cell stands. */
export interface PlaceInTable {
  readonly row: TableRow;
  readonly column: TableColumn;
}

export class EngineTable {
  readonly id: CellId;
  input: TableInput = NO_TABLE;
  columns: readonly TableColumn[] = [];
  rows: readonly TableRow[] = [];
  placeOf: ReadonlyMap<CellId, number> = new Map();
  /** The columns of the row that is being worked: shared formulas read here. */
  readonly values: Held[] = [];

  constructor(id: CellId) {
    this.id = id;
  }

  /** How a row is called: by its first text where that tells it from the others, else by its number. */
  rowName(row: TableRow): string {
    const [first] = this.columns;
    const text = row.texts[0] ?? '';
    const tells = first?.isText && text !== '' && first.texts?.length === this.rows.length;
    return tells ? text : `row ${row.index + 1}`;
  }

  shape({ name, part, caution = null }: CellInput): TableShape {
    const columns = this.columns.map((column, k): ColumnShape => {
      const cells: CellId[] = [];
      const blanks: CellId[] = [];
      for (const row of this.rows) {
        const id = row.cells[k]?.id ?? 0;
        cells.push(id);
        if ((row.texts[k] ?? '') === '' && column.formula === null) blanks.push(id);
      }
      column.texts = column.isText ? kept(column.texts, distinct(this.rows, k)) : null;
      return { id: column.id, name: column.name, cells, blanks, texts: column.texts };
    });
    return { id: this.id, name, part, caution, columns, rows: this.rows.length };
  }
}

const NO_TABLE: TableInput = { columns: [], rows: [] };

function distinct(rows: readonly TableRow[], k: number): readonly string[] {
  const texts = new Set<string>();
  for (const row of rows) {
    const text = unquoted(row.texts[k] ?? '');
    if (text !== '') texts.add(text);
  }
  return [...texts];
}

function kept(before: readonly string[] | null, now: readonly string[]): readonly string[] {
  const same = before?.length === now.length && now.every((text, i) => text === before[i]);
  return same && before ? before : now;
}

/** A cell of a row, as the rest of the engine is told it; its name is made when somebody asks. */
export class RowCellInput implements CellInput {
  readonly id: CellId;
  readonly place: PlaceInTable;
  readonly of: () => CellInput;
  readonly byHand = null;
  readonly money = null;

  constructor(id: CellId, place: PlaceInTable, of: () => CellInput) {
    this.id = id;
    this.place = place;
    this.of = of;
  }

  get inTable(): CellId {
    return this.place.row.table.id;
  }

  get part(): string {
    return this.of().part;
  }

  get name(): string {
    const { row, column } = this.place;
    return `${this.of().name}: ${row.table.rowName(row)}: ${column.name}`;
  }

  /** The table's, with what the row itself says of it. */
  get source(): string | null {
    const { source } = this.of();
    if (source === undefined || source === null) return null;
    const { row } = this.place;
    const own = row.texts[row.table.columns.findIndex((c) => /^source$/i.test(c.name))] ?? '';
    return own === '' ? source : `${source}, ${own}`;
  }

  get caution(): string | null {
    return this.of().caution ?? null;
  }

  /** What stands in the row, or else what the column says. */
  get formula(): string {
    return textOf(this.place);
  }
}

export function textOf({ row, column }: PlaceInTable): string {
  const own = row.texts[row.table.columns.indexOf(column)] ?? '';
  return own === '' ? (column.formula ?? '') : own;
}

/** A column without a formula in which words stand and no amount: a column of text. */
export function isTextColumn(
  { name, formula }: { readonly name: string; readonly formula: string | null },
  texts: Iterable<string>,
): boolean {
  if (formula !== null) return false;
  // What is said about a row is never worked.
  if (/^(source|notes?)$/i.test(name)) return true;
  let words = 0;
  for (const text of texts) {
    if (text === '') continue;
    if (!isText(text)) return false;
    words++;
  }
  return words > 0;
}

/** Begins with no amount and no bracket, or is a size such as 2x8; yes and no are no texts. */
function isText(text: string): boolean {
  if (/^(\d+-)?\d+(\/\d+)?x\d+(\/\d+)?(x\d+)?$/i.test(text)) return true;
  if (/^(yes|no)$/i.test(text)) return false;
  return !/^[-−+=(["“]?\s?[$€£]?\s?(\d|\.\d|[¼½¾⅐-⅞]|\?)/u.test(text) && !/^[([]/.test(text);
}

/** Quotes around a text say that it is one; they are not part of it. */
export function unquoted(text: string): string {
  return /^["“][^"”“]*["”]$/.test(text) ? text.slice(1, -1) : text;
}

const HOLDS_TEXT: Holds = { measure: TEXT, showIn: null, written: [] };
const HOLDS_OPEN: Holds = { measure: OPEN, showIn: null, written: [] };

/** A text of a column of text. */
export function textSide(text: string): Side {
  const tree = { kind: 'words', text, spot: { from: 0, to: text.length } } as const;
  return leafSide(tree, HOLDS_TEXT, { op: 'text', value: text }, text, () => text);
}

/** Nothing stands there and nothing is worked: not yet known, as a `?` is. */
export function blankSide(id: CellId): Side {
  const tree = { kind: 'hole', spot: { from: 0, to: 0 } } as const;
  const held = new Unknown([id]);
  return leafSide(tree, HOLDS_OPEN, { op: 'unknown' }, '', () => held);
}

/** What the cell that holds a table comes to: how many rows there are. */
export function tableSide(rows: number): Side {
  const text = rows === 1 ? '1 row' : `${rows.toLocaleString('en-US')} rows`;
  const tree = { kind: 'words', text, spot: { from: 0, to: 0 } } as const;
  return leafSide(tree, HOLDS_TEXT, { op: 'text', value: text }, '', () => text);
}

function leafSide(
  formula: Reading['tree'],
  holds: Holds,
  plan: NonNullable<Reading['checked']>['plan'],
  sentence: string,
  work: Work,
): Side {
  const checked = { formula, holds, plan, parts: [], note: null, manner: null } as const;
  const reading: Reading = {
    tree: formula,
    checked,
    sentence,
    notes: [],
    problems: [],
    waitsFor: [],
  };
  return { reading, work, holds, fault: null, held: FAULT_OF_TEXT };
}

/**
 * Which old row each new one is: alike at both ends, then alike elsewhere (moved), then one for one what is left
 * between (edited); null where it is new.
 */
export function matchedRows(
  before: readonly TableRow[],
  now: readonly (readonly string[])[],
): readonly (TableRow | null)[] {
  const found: (TableRow | null)[] = now.map(() => null);
  const most = Math.min(before.length, now.length);
  let first = 0;
  while (first < most && alike(before[first]?.texts, now[first])) {
    found[first] = before[first] ?? null;
    first++;
  }
  let tail = 0;
  while (
    tail < most - first &&
    alike(before[before.length - 1 - tail]?.texts, now[now.length - 1 - tail])
  ) {
    found[now.length - 1 - tail] = before[before.length - 1 - tail] ?? null;
    tail++;
  }
  const left = before.slice(first, before.length - tail);
  const wanted: number[] = [];
  const bySource = new Map<string, TableRow[]>();
  for (const row of left) {
    const key = row.texts.join('\0');
    const list = bySource.get(key);
    if (list) list.push(row);
    else bySource.set(key, [row]);
  }
  const taken = new Set<TableRow>();
  for (let i = first; i < now.length - tail; i++) {
    const row = bySource.get((now[i] ?? []).join('\0'))?.shift() ?? null;
    found[i] = row;
    if (row) taken.add(row);
    else wanted.push(i);
  }
  const rest = left.filter((row) => !taken.has(row));
  // As many as before: edited where they stand. Otherwise those that are new are new.
  if (rest.length === wanted.length) wanted.forEach((i, k) => (found[i] = rest[k] ?? null));
  return found;
}

function alike(a: readonly string[] | undefined, b: readonly string[] | undefined): boolean {
  if (!a || !b || a.length !== b.length) return false;
  return a.every((text, i) => text === b[i]);
}

/**
 * The reading as it stands in one row: what it names of its columns are that row's cells.
 * What is shared within it stays shared.
 */
export function inRow<T extends object>(thing: T, cellOf: (column: CellId) => CellId): T {
  const done = new Map<object, object>();
  const walk = (node: unknown): unknown => {
    if (typeof node !== 'object' || node === null) return node;
    const found = done.get(node);
    if (found) return found;
    if (Array.isArray(node)) {
      const list = node.map(walk);
      const made = list.every((each, i) => each === node[i]) ? node : list;
      done.set(node, made);
      return made;
    }
    if (Object.getPrototypeOf(node) !== Object.prototype) return node;
    const old = node as Readonly<Record<string, unknown>>;
    const fresh: Record<string, unknown> = {};
    let changed = false;
    for (const [key, value] of Object.entries(old)) {
      const isCell = key === 'cell' && typeof value === 'number';
      const next = isCell ? cellOf(value) : KEPT.has(key) ? value : walk(value);
      if (next !== value) changed = true;
      fresh[key] = next;
    }
    const made = changed ? fresh : node;
    done.set(node, made);
    return made;
  };
  return walk(thing) as T;
}

/** No cell stands in these. */
const KEPT: ReadonlySet<string> = new Set([
  'holds',
  'spot',
  'opSpot',
  'cells',
  'blanks',
  'rows',
  'form',
]);
