// Who is there: the cells by name, part and order, and which formulas an edit of those could matter to.
// A name that comes or goes matters to formulas that hold its words, and to those that can't be read, since
// their messages offer the nearest names; a cost line matters to the recaps that add it.
import type { PartName } from '../language/reading.ts';
import { readsAsBefore, scan, turnsOn } from '../language/scan.ts';
import type { CellId } from '../language/tree.ts';
import { Vocabulary } from '../language/vocabulary.ts';
import type { Nouns } from '../quantity/nouns.ts';
import type { Graph, Slot } from './graph.ts';
import type { CellInput, ReferenceTable } from './outcome.ts';
import { RecapLines } from './recap-lines.ts';
import { CellRecord, type Scans } from './record.ts';
import { Change } from './roster-change.ts';
import { TableRoster } from './table-roster.ts';
import { type PlaceInTable, textOf } from './tables.ts';
import { WordIndex } from './word-index.ts';

export type CellEdit =
  /** A new cell, at the end, or a cell as it is from now on. */
  | { readonly kind: 'put'; readonly cell: CellInput }
  | { readonly kind: 'drop'; readonly id: CellId }
  | { readonly kind: 'parts'; readonly parts: readonly PartName[] }
  /** All cells in the order of the notebook. */
  | { readonly kind: 'order'; readonly ids: readonly CellId[] };

/** What a set of edits comes to. */
export interface Enrolled {
  readonly added: readonly CellRecord[];
  readonly dropped: Iterable<CellRecord>;
  /** Cells whose formulas have to be read anew. */
  readonly read: Iterable<CellRecord>;
  /** What cells need from now on, where that is something else than before. */
  readonly edges: readonly (readonly [Slot, readonly Slot[]])[];
}

export class Roster {
  readonly vocabulary: Vocabulary;
  readonly lines = new RecapLines();
  readonly tables: TableRoster;
  readonly #graph: Graph;
  readonly #cells = new Map<CellId, CellRecord>();
  readonly #bySlot: CellRecord[] = [];
  readonly #words = new WordIndex();
  #order: CellId[] = [];
  /** Cells with a recap in them. */
  readonly #recaps = new Set<CellRecord>();
  /** Cells whose text has a problem. */
  readonly #problems = new Set<CellRecord>();

  /** `bring` works what a table of the trade came to that was named outside a change. */
  constructor(
    nouns: Nouns,
    currency: string,
    graph: Graph,
    reference: readonly ReferenceTable[] = NONE,
    bring: (enrolled: Enrolled) => void = () => {},
  ) {
    this.vocabulary = new Vocabulary(nouns, currency);
    this.#graph = graph;
    const rolls = {
      vocabulary: this.vocabulary,
      graph,
      at: (slot: Slot) => this.at(slot),
      enter: (record: CellRecord, change: Change) => this.#enter(record, change),
      leave: (record: CellRecord, change: Change) => this.#leave(record, change),
      bring: (make: (change: Change) => void) => {
        const change = new Change();
        make(change);
        bring(this.#enrolled(change));
      },
    };
    this.tables = new TableRoster(rolls, reference);
  }

  maybe(id: CellId): CellRecord | undefined {
    return this.#cells.get(id) ?? this.tables.cell(id);
  }

  record(id: CellId): CellRecord {
    const record = this.#cells.get(id) ?? this.tables.cell(id);
    if (!record) throw new Error(`there is no cell ${id}`);
    return record;
  }

  at(slot: Slot): CellRecord {
    const record = this.#bySlot[slot];
    if (!record) throw new Error(`there is no cell at ${slot}`);
    return record;
  }

  /** Told after a cell was read. */
  noteProblem(record: CellRecord): void {
    if (record.hasProblem) this.#problems.add(record);
    else this.#problems.delete(record);
  }

  /** Makes the edits; formulas that they could give another meaning are scanned. */
  enrol(edits: readonly CellEdit[]): Enrolled {
    const change = new Change();
    return this.tables.during(change, () => {
      for (const edit of edits) this.#edit(edit, change);
      return this.#enrolled(change);
    });
  }

  #enrolled(change: Change): Enrolled {
    if (change.order) this.#putInOrder();
    this.#findNames(change);
    this.tables.findChoices(change);
    for (const record of change.dropped) {
      change.scan.delete(record);
      change.read.delete(record);
    }
    this.tables.forgetShared(change);
    for (const record of change.scan) this.scan(record);
    if (change.lines) this.#findLines(change);
    const edges = this.#edgesOf(change);
    const { added, dropped, read } = change;
    return { added, dropped, read, edges };
  }

  #edit(edit: CellEdit, change: Change): void {
    switch (edit.kind) {
      case 'put':
        this.#put(edit.cell, change);
        return;
      case 'drop':
        this.#drop(this.record(edit.id), change);
        return;
      case 'parts':
        this.#putParts(edit.parts, change);
        return;
      case 'order':
        if (sameList(edit.ids, this.#order)) return;
        this.#order = [...edit.ids];
        change.order = true;
        change.lines = true;
    }
  }

  /** Each cell once, where it was put last; one that no order was told of stands at the end. */
  #putInOrder(): void {
    const fromTheEnd = new Set(this.#order.filter((id) => this.#cells.has(id)).reverse());
    const order = [...fromTheEnd].reverse();
    for (const id of this.#cells.keys()) if (!fromTheEnd.has(id)) order.push(id);
    this.#order = order;
  }

  #put(cell: CellInput, change: Change): void {
    const record = this.#cells.get(cell.id);
    if (!record) {
      this.#add(cell, change);
      return;
    }
    const was = record.input;
    record.input = cell;
    const moved = was.part !== cell.part;
    if (moved || was.name !== cell.name) {
      this.vocabulary.remove(cell.id);
      this.vocabulary.add(cell);
      change.names.push(was.name, cell.name);
      for (const user of this.#graph.usersOf(record.slot)) change.scan.add(this.at(user));
    }
    if (moved || was.formula !== cell.formula || was.byHand !== cell.byHand)
      change.scan.add(record);
    if (!sameMoney(was.money, cell.money)) {
      change.lines = true;
      change.read.add(record);
    } else if (moved && cell.money) change.lines = true;
    this.tables.putChoices(record, was.choices ?? null, change);
    this.tables.put(record, moved || was.name !== cell.name ? 'renamed' : 'same', change);
  }

  #add(cell: CellInput, change: Change): void {
    const record = new CellRecord(this.#graph.add(), cell);
    this.#cells.set(cell.id, record);
    this.#enter(record, change);
    this.#order.push(cell.id);
    this.vocabulary.add(cell);
    change.names.push(cell.name);
    change.scan.add(record);
    if (cell.money) change.lines = true;
    this.tables.putChoices(record, null, change);
    this.tables.put(record, 'same', change);
  }

  #enter(record: CellRecord, change: Change): void {
    this.#bySlot[record.slot] = record;
    change.added.push(record);
  }

  #leave(record: CellRecord, change: Change): void {
    this.#words.drop(record.slot);
    this.#recaps.delete(record);
    this.#problems.delete(record);
    change.dropped.add(record);
  }

  #drop(record: CellRecord, change: Change): void {
    this.tables.drop(record, change);
    this.tables.dropChoices(record);
    this.vocabulary.remove(record.id);
    this.#cells.delete(record.id);
    change.order = true;
    change.names.push(record.input.name);
    for (const user of this.#graph.usersOf(record.slot)) change.scan.add(this.at(user));
    this.#leave(record, change);
    if (record.input.money) change.lines = true;
  }

  #putParts(parts: readonly PartName[], change: Change): void {
    const before = new Map(this.vocabulary.parts.map((part) => [part.key, part.name]));
    this.vocabulary.setParts(parts);
    for (const { key, name } of parts) {
      if (before.get(key) !== name) change.partNames.push(before.get(key) ?? name, name);
      before.delete(key);
    }
    change.partNames.push(...before.values());
  }

  /** Formulas that a name which came or went could matter to, and all that have a problem, are read again. */
  #findNames(change: Change): void {
    if (change.names.length === 0 && change.partNames.length === 0) return;
    for (const record of this.#problems) change.scan.add(record);
    for (const name of new Set(change.partNames)) {
      for (const record of this.#holding(this.vocabulary.wordsOf(name))) change.scan.add(record);
    }
    for (const name of new Set(change.names)) {
      const words = this.vocabulary.wordsOf(name);
      for (const record of this.#holding(words)) {
        if (!change.scan.has(record) && this.#turnsOn(words, record)) change.scan.add(record);
      }
    }
  }

  /** Cells whose formulas hold all these words. */
  #holding(words: readonly string[]): Iterable<CellRecord> {
    if (words.length === 0) return NONE;
    return this.#words.holding(words)?.map((slot) => this.at(slot)) ?? this.#cells.values();
  }

  #turnsOn(words: readonly string[], { input, column, place }: CellRecord): boolean {
    // What rows say is told for their column as a whole.
    if (column || place) return true;
    const { formula, byHand, part, id } = input;
    const texts = byHand === null ? [formula] : [formula, byHand];
    return texts.some((text) => turnsOn(words, text, this.vocabulary, part, id));
  }

  /** Finds the names in a cell's texts. Null: there is nothing in it to be read. */
  scan(record: CellRecord): Scans | null {
    const { place } = record;
    if (record.column) return null;
    if (place && textOf(place) !== '' && !place.column.isText) return this.#scanRow(record, place);
    if (place || record.table) {
      this.#words.drop(record.slot);
      return this.#scanned(record, null, true);
    }
    const { id, part, formula, byHand } = record.input;
    const scans = {
      formula: scan(formula, this.vocabulary, part, id),
      hand: byHand === null ? null : scan(byHand, this.vocabulary, part, id),
    };
    this.#words.put(record.slot, joined(scans.formula.words, scans.hand?.words));
    return this.#scanned(record, scans, scans.formula.given);
  }

  #scanned<S extends Scans | null>(record: CellRecord, scans: S, given: boolean): S {
    record.scans = scans;
    record.given = given;
    record.recaps = joined(scans?.formula.recaps ?? NONE, scans?.hand?.recaps);
    if (record.recaps.length > 0) this.#recaps.add(record);
    else this.#recaps.delete(record);
    record.lines = this.#linesOf(record);
    return scans;
  }

  /** What rows say alike is scanned once; its words are kept for the column. */
  #scanRow(record: CellRecord, place: PlaceInTable): Scans | null {
    const { column } = place;
    const text = textOf(place);
    let found = column.scans.get(text);
    if (!found) {
      found = scan(text, column.vocabulary, record.input.part, null);
      column.scans.set(text, found);
      const { columns, mentions } = found;
      if (columns.length > 0 || mentions.some((id) => this.vocabulary.table(id))) {
        column.aboutTables.add(text);
      }
      const before = column.words.size;
      for (const word of found.words) column.words.add(word);
      if (column.words.size > before) this.#words.put(column.record.slot, column.words);
    }
    return this.#scanned(record, { formula: found, hand: null }, found.given);
  }

  #linesOf({ recaps }: CellRecord): readonly (readonly CellId[])[] {
    return recaps.length === 0 ? NONE : recaps.map((scope) => this.lines.of(scope));
  }

  /** Cost lines came, went or moved: recaps that now add others are read again. */
  #findLines(change: Change): void {
    this.lines.renew(this.#order.map((id) => this.record(id).input));
    for (const record of this.#recaps) {
      const lines = this.#linesOf(record);
      if (sameLines(lines, record.lines)) continue;
      record.lines = lines;
      change.scan.add(record);
      if (!record.scans) this.scan(record);
    }
  }

  #edgesOf(change: Change): Enrolled['edges'] {
    const edges: (readonly [Slot, readonly Slot[]])[] = [];
    for (const record of change.scan) {
      const needs = this.#needsOf(record);
      const sameNeeds = sameList(needs, this.#graph.needsOf(record.slot));
      if (!sameNeeds) edges.push([record.slot, needs]);
      else if (readsTheSame(record)) {
        record.scans = null;
        continue;
      }
      change.read.add(record);
    }
    for (const record of change.columns) {
      edges.push([record.slot, this.#needsOf(record)]);
      change.read.add(record);
    }
    for (const record of change.dropped) edges.push([record.slot, []]);
    return edges;
  }

  #needsOf(record: CellRecord): readonly Slot[] {
    const { scans, lines, column } = record;
    if (column) return column.cells().map((cell) => cell.slot);
    if (record.place || hasColumns(scans)) return this.#needsAround(record);
    const mentions = joined(scans?.formula.mentions ?? NONE, scans?.hand?.mentions);
    const ids =
      lines.length === 0 && !scans?.hand ? mentions : [...new Set([...mentions, ...lines.flat()])];
    // `map` makes a list no longer than it has to be: there is one a cell.
    return ids.length === 0 ? NONE : ids.map((id) => this.record(id).slot);
  }

  /** Of a formula in a row, or one that asks about columns: cells of its own row, and columns as a whole. */
  #needsAround({ scans, lines, place }: CellRecord): readonly Slot[] {
    if (!scans) return NONE;
    const slots = new Set<Slot>();
    for (const id of joined(scans.formula.mentions, scans.hand?.mentions)) {
      slots.add((place?.row.cellOf(id) ?? this.record(id)).slot);
    }
    for (const id of joined(scans.formula.columns, scans.hand?.columns)) {
      slots.add(this.tables.column(id).slot);
    }
    for (const line of lines.flat()) slots.add(this.record(line).slot);
    return slots.size === 0 ? NONE : [...slots];
  }
}

function hasColumns(scans: Scans | null): boolean {
  return scans !== null && joined(scans.formula.columns, scans.hand?.columns).length > 0;
}

/** A name came or went that makes no difference to it, though it has its words. */
function readsTheSame({ scans, hand, stale, hasProblem, formula }: CellRecord): boolean {
  if (!scans || scans.hand || hand || stale || hasProblem) return false;
  return readsAsBefore(scans.formula, formula.reading);
}

const NONE: readonly never[] = [];

/** Both lists; one that is empty is shared, since most are. */
function joined<T>(a: readonly T[], b: readonly T[] = NONE): readonly T[] {
  if (b.length === 0) return a.length === 0 ? NONE : a;
  return [...a, ...b];
}

function sameMoney(a: CellInput['money'], b: CellInput['money']): boolean {
  return a?.line === b?.line && a?.kind === b?.kind;
}

function sameList(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((each, i) => each === b[i]);
}

function sameLines(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): boolean {
  return a.length === b.length && a.every((list, i) => sameList(list, b[i] ?? []));
}
