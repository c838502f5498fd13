// The cells of a notebook and all that they come to. Told what changed, it reads again only formulas
// that the change could have given another meaning, works again only what that reaches, and says what ran.
//
// Edges come from the text of formulas alone: names, and the lines of recaps. A formula is read once all that
// it names has been read and worked, since reading needs to know what names hold; so what cells hold flows
// like their values, and stops where it stays the same.
//
// A fault is an outcome. A cell in a circle is at fault whatever its formula says; what reads it waits.
import { scan } from '../language/scan.ts';
import type { Plan } from '../language/plan.ts';
import type { Mark, PartName, Reading, Scan, Surroundings } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import type { Holds } from '../quantity/form.ts';
import type { Nouns } from '../quantity/nouns.ts';
import { type ShowSettings, show } from '../quantity/show.ts';
import type { Report } from '../words/report.ts';
import { circleReport, feeOfWhole, largeCircleReport } from './circle-report.ts';
import { compile } from './compile.ts';
import { reportAtWork } from './fault-at-work.ts';
import { workingFault } from './faults.ts';
import { Graph, type Slot } from './graph.ts';
import { FAULT_OF_TEXT, Fault, type Held, Waiting, bare, isNoValue, sameHeld } from './held.ts';
import {
  type CellInput,
  type CellState,
  type Glance,
  type Outcome,
  type ReferenceTable,
  outcomeOf,
} from './outcome.ts';
import { missedRow } from './missed-row.ts';
import type { CellRecord, LastGood } from './record.ts';
import { type CellEdit, type Enrolled, Roster } from './roster.ts';
import { type Ground, type Side, formulaSide, handSide, sameHolds, workSide } from './sides.ts';
import { type RowGround, draftSide, readingInRow, rowSide, unreadSide } from './row-sides.ts';
import { neededByTable, toldOf } from './table-needs.ts';
import type { TableColumn, TableRow } from './tables.ts';
import { rangeOf } from './ranges.ts';
import { whereAtFault } from './tracing.ts';
import { type WorkedBy, reach, workedBy } from './reach.ts';

export type { CellEdit } from './roster.ts';

export interface WorkingsSettings {
  readonly nouns: Nouns;
  readonly show: ShowSettings;
  /** Tables of the trade that formulas may read from. */
  readonly reference?: readonly ReferenceTable[];
}

/** A formula that was read and worked without being put anywhere. */
export interface Draft {
  readonly reading: Reading;
  readonly holds: Holds | null;
  readonly outcome: Outcome;
}

/** How many cells are looked at for the way around a circle: every cell in it is told one. */
const LONGEST_WAY = 500;

/** Of so many cells that are gone it is remembered what they last came to. */
const MOST_GONE = 10_000;

export class Workings {
  readonly #settings: WorkingsSettings;
  #graph: Graph;
  #roster: Roster;
  #ground: Ground;
  /** What readers see of each cell, by slot. Compiled formulas read this array. */
  readonly #values: Held[] = [];
  /** Reports of circles, worded when they are asked for. */
  readonly #circles = new Map<CellId, Report>();
  #ran: CellId[] = [];
  /** What cells last came to that are gone: an undo may bring one back that is at fault by then. */
  readonly #gone = new Map<CellId, LastGood>();
  /** The row that is being read: a column stands for its cell there. */
  #row: TableRow | null = null;

  constructor(settings: WorkingsSettings) {
    this.#settings = settings;
    this.#graph = new Graph((slot) => this.#run(slot));
    this.#roster = this.#newRoster();
    this.#ground = this.#newGround();
  }

  /** What can be named in a formula. */
  get vocabulary(): Vocabulary {
    return this.#roster.vocabulary;
  }

  /** The cells that the last change worked, in the order it did. */
  get ran(): readonly CellId[] {
    return this.#ran;
  }

  /** Everything from nothing. */
  load(parts: readonly PartName[], cells: readonly CellInput[]): void {
    this.#graph = new Graph((slot) => this.#run(slot));
    this.#roster = this.#newRoster();
    this.#ground = this.#newGround();
    this.#values.length = 0;
    const puts = cells.map((cell): CellEdit => ({ kind: 'put', cell }));
    this.change([{ kind: 'parts', parts }, ...puts]);
  }

  /** Makes the edits and works what they reach. Returns what ran. */
  change(edits: readonly CellEdit[]): readonly CellId[] {
    this.#ran = [];
    this.#circles.clear();
    this.#take(this.#roster.enrol(edits));
    return this.#ran;
  }

  /** What has no value yet is shown with the one that it last had in other workings of the same cells. */
  recall(before: Workings, cells: Iterable<CellId>): void {
    for (const id of cells) {
      const last = before.#roster.maybe(id)?.lastGood ?? before.#gone.get(id);
      if (last) this.#roster.maybe(id)?.recall(last);
    }
  }

  #take({ added, dropped, read, edges }: Enrolled): void {
    for (const record of added) {
      this.#values[record.slot] = new Waiting([record.id]);
      const last = this.#gone.get(record.id);
      if (last) record.recall(last);
      this.#gone.delete(record.id);
    }
    this.#graph.connect(edges);
    for (const record of dropped) {
      const last = record.lastGood;
      if (last && record.id > 0 && this.#gone.size < MOST_GONE) this.#gone.set(record.id, last);
      this.#graph.remove(record.slot);
    }
    for (const record of read) {
      record.stale = true;
      this.#graph.touch(record.slot);
    }
    this.#graph.settle();
  }

  state(id: CellId): CellState {
    const record = this.#roster.record(id);
    const { used, formula, hand, told: holds, lastGood } = record;
    const outcome = this.#outcome(record, used);
    if (record.place || record.table) return this.#stateInTable(record, outcome);
    return {
      input: record.input,
      kind: record.given ? 'given' : holds?.measure.kind === 'yes-no' ? 'check' : 'worked',
      reading: formula.reading,
      holds,
      outcome,
      worked: hand ? this.#outcome(record, formula) : outcome,
      workedHolds: hand ? formula.holds : holds,
      range: hand || outcome.kind === 'fault' ? null : rangeOf(formula.reading.checked),
      lastGood,
      needs: this.#ids(this.#graph.needsOf(record.slot), record),
      goesInto: this.#ids(this.#graph.usersOf(record.slot), record),
    };
  }

  /** What a cell comes to and no more: for whoever looks at thousands of rows at once. */
  glance(id: CellId): Glance {
    const record = this.#roster.record(id);
    const { input, given, told: holds, used } = record;
    const kind = given ? 'given' : holds?.measure.kind === 'yes-no' ? 'check' : 'worked';
    return { input, kind, holds, outcome: this.#outcome(record, used) };
  }

  /** Of a table or a cell in it, of which there may be thousands: what takes longer is found when it is asked for. */
  #stateInTable(record: CellRecord, outcome: Outcome): CellState {
    const { formula, place, table, slot, told: holds, lastGood } = record;
    const reading = (): Reading =>
      place ? readingInRow(formula.reading, place.row) : formula.reading;
    const needs = (): readonly CellId[] =>
      table
        ? neededByTable(table, this.#graph, this.#roster)
        : this.#ids(this.#graph.needsOf(slot), record);
    const goesInto = (): readonly CellId[] => this.#ids(this.#graph.usersOf(slot), record);
    return {
      input: record.input,
      kind: record.given ? 'given' : holds?.measure.kind === 'yes-no' ? 'check' : 'worked',
      get reading() {
        return reading();
      },
      holds,
      outcome,
      worked: outcome,
      workedHolds: holds,
      range: place && outcome.kind !== 'fault' ? rangeOf(formula.reading.checked) : null,
      lastGood,
      get needs() {
        return needs();
      },
      get goesInto() {
        return goesInto();
      },
    };
  }

  /** Is there a cell of this id, in the notebook or in a row? */
  has(id: CellId): boolean {
    return this.#roster.maybe(id) !== undefined;
  }

  /** The cells of a table row by row, or null where the cell holds none. */
  rowsOf(id: CellId): readonly (readonly CellId[])[] | null {
    const { table } = this.#roster.record(id);
    return table && table.rows.map((row) => row.cells.map((cell) => cell.id));
  }

  /** Is this column one of texts? */
  isText(id: CellId, column: number): boolean {
    return this.#roster.record(id).table?.columns[column]?.isText ?? false;
  }

  /** Reads and works a text as if it stood in this row and column; for a row that is not there yet, in the last one. */
  draftInRow(id: CellId, row: number, column: number, text: string): Draft {
    const record = this.#roster.record(id);
    const place = record.table?.columns[column];
    if (!record.table || !place) throw new Error(`cell ${id} has no column ${column}`);
    const there = record.table.rows[row] ?? record.table.rows.at(-1) ?? null;
    const found = scan(text, place.vocabulary, record.input.part, null);
    const side = draftSide(found, place, there, this.#rowGround);
    const outcome = this.#sideOutcome(side, workSide(side), text, there);
    return { reading: side.reading, holds: side.holds, outcome };
  }

  get #rowGround(): RowGround {
    return {
      ground: this.#ground,
      values: this.#values,
      holdsOf: (id) => this.#holdsOf(id),
      kindOf: (id) => this.#roster.tables.column(id).column?.kind ?? {},
      within: (row, done) => {
        const before = this.#row;
        this.#row = row;
        try {
          return done();
        } finally {
          this.#row = before;
        }
      },
    };
  }

  /** `up`: all that needs one of the cells; `down`: all that they need; in an order in which it can be worked. */
  reach(cells: readonly CellId[], way: 'up' | 'down'): readonly CellId[] {
    return reach(cells, way, this.#graph, this.#roster);
  }

  /** How the value that is used of a cell is worked, or null where nothing is. */
  workedBy(cell: CellId): WorkedBy | null {
    return workedBy(this.#roster.record(cell), this.#graph);
  }

  /** Works any stretch of a checked formula with what the cells hold now; `self` is whose `?` it may have in it. */
  evaluate(plan: Plan, self: CellId | null = null): Outcome {
    const held = compile(plan, this.#ground.cells, self)();
    if (!(held instanceof Fault)) return outcomeOf(held);
    if (held.code === 'text') throw new Error('a plan has no text to be at fault');
    return { kind: 'fault', report: workingFault(held.code, null, null) };
  }

  /** Reads and works a formula as if it stood in this part and cell, and changes nothing. */
  draft(part: string, self: CellId | null, text: string): Draft {
    const found = scan(text, this.vocabulary, part, self);
    const record = self === null ? null : this.#roster.record(self);
    const side = formulaSide(found, self, record?.input.money ?? null, this.#ground);
    const { reading, holds } = side;
    const around = record && this.#wayAround(found, record);
    if (around) return { reading, holds: null, outcome: { kind: 'fault', report: around } };
    return { reading, holds, outcome: this.#sideOutcome(side, workSide(side), text) };
  }

  #newRoster(): Roster {
    const { nouns, show: showing, reference } = this.#settings;
    return new Roster(nouns, showing.currency, this.#graph, reference, (enrolled) => {
      // Named by a draft: the notebook's own cells are as they were.
      const ran = this.#ran;
      this.#ran = [];
      this.#take(enrolled);
      this.#ran = ran;
    });
  }

  #newGround(): Ground {
    const roster = this.#roster;
    const surroundings: Surroundings = {
      holdsOf: (id) => this.#holdsOf(id),
      nameOf: (id) => roster.tables.maybeColumn(id)?.name ?? roster.maybe(id)?.input.name ?? '',
      shownOf: (id) => this.#shownOf(id),
      linesOf: (scope) => roster.lines.of(scope),
    };
    const cells = {
      values: this.#values,
      placeOf: (id: CellId) => roster.record(id).slot,
      turnOf: (id: CellId) => roster.tables.maybeColumn(id)?.turn ?? {},
    };
    return { vocabulary: roster.vocabulary, surroundings, cells };
  }

  #ids(slots: readonly Slot[], of: CellRecord): readonly CellId[] {
    return toldOf(slots, of, this.#graph, this.#roster);
  }

  /** Runs a cell; true when readers of it see something else than before. */
  #run(slot: Slot): boolean {
    const record = this.#roster.at(slot);
    if (record.column) return this.#runColumn(record, record.column);
    this.#ran.push(record.id);
    const heldBefore = this.#values[slot];
    const toldBefore = record.told;
    const inCircle = this.#graph.inCircle(slot);
    if (record.stale || record.hasProblem || inCircle) this.#read(record);
    // In a circle nothing is worked: the values it would be worked with are those of before.
    record.formula.held = inCircle ? FAULT_OF_TEXT : workSide(record.formula);
    if (record.hand) record.hand.held = inCircle ? FAULT_OF_TEXT : workSide(record.hand);
    record.keepLastGood();
    const held = record.forReaders();
    this.#values[slot] = held;
    record.told = inCircle ? null : record.used.holds;
    const sameKind = sameHolds(toldBefore, record.told);
    if (!sameKind) {
      for (const user of this.#graph.usersOf(slot)) this.#roster.at(user).stale = true;
    }
    return !sameKind || !sameHeld(heldBefore, held);
  }

  /** A cell of the column has changed: all that asks about the column looks again. */
  #runColumn(record: CellRecord, column: TableColumn): boolean {
    column.turn = {};
    if (!record.stale) return true;
    record.stale = false;
    column.kind = {};
    for (const user of this.#graph.usersOf(record.slot)) this.#roster.at(user).stale = true;
    return true;
  }

  #read(record: CellRecord): void {
    const scans = record.scans ?? this.#roster.scan(record);
    const { id, input } = record;
    record.scans = null;
    record.stale = false;
    if (!scans) record.formula = unreadSide(record);
    else if (record.place) record.formula = rowSide(record, scans.formula, this.#rowGround);
    else record.formula = formulaSide(scans.formula, id, input.money, this.#ground);
    record.hand = scans?.hand ? handSide(scans.hand, input, record.formula, this.#ground) : null;
    this.#roster.noteProblem(record);
  }

  /** The cell meant by an id: of a column, the one in the row that is being read. */
  #meant(id: CellId): CellRecord | undefined {
    return this.#row?.cellOf(id) ?? this.#roster.maybe(id);
  }

  #holdsOf(id: CellId): Holds | null {
    const record = this.#meant(id);
    // Within a circle one may ask before the other was told of it.
    return record && !this.#graph.inCircle(record.slot) ? record.told : null;
  }

  #shownOf(id: CellId): string | null {
    const holds = this.#holdsOf(id);
    if (!holds) return null;
    const held = this.#meant(id)?.used.held;
    return held === undefined || isNoValue(held)
      ? null
      : show(bare(held), holds, this.#settings.show).text;
  }

  #outcome(record: CellRecord, side: Side): Outcome {
    if (!this.#graph.inCircle(record.slot)) {
      const text = side === record.hand ? null : record.input.formula;
      return this.#sideOutcome(side, side.held, text, record.place?.row ?? null);
    }
    let report = this.#circles.get(record.id);
    if (!report) {
      const { formula, part, id } = record.input;
      const found = record.place
        ? scan(formula, record.place.column.vocabulary, part, null)
        : scan(formula, this.vocabulary, part, id);
      const path = this.#graph.pathAround(record.slot, LONGEST_WAY);
      report = path ? this.#circleReport(found, record, path) : this.#largeCircle(found, record);
      this.#circles.set(id, report);
    }
    return { kind: 'fault', report };
  }

  /** `text` null: not the formula, so that spots would point nowhere. */
  #sideOutcome(side: Side, held: Held, text: string | null, row: TableRow | null = null): Outcome {
    if (!(held instanceof Fault)) return outcomeOf(held);
    if (side.fault) return { kind: 'fault', report: side.fault };
    const { checked } = row && !side.fault ? readingInRow(side.reading, row) : side.reading;
    if (!checked || held.code === 'text') throw new Error(`at fault without a reason: ${text}`);
    if (text === null) return { kind: 'fault', report: workingFault(held.code, null, null) };
    const { cells, surroundings } = this.#ground;
    const work = (plan: Plan): Held => compile(plan, cells, null)();
    if (held.code === 'no-row') {
      const node = whereAtFault(checked, work);
      const missed = missedRow(node, text, work, (id) => this.#shownOf(id));
      if (missed) return { kind: 'fault', report: missed };
    }
    const telling = { text, surroundings, work, ...this.#settings };
    return { kind: 'fault', report: reportAtWork(checked, telling) };
  }

  /** The circle that a formula would make of a cell, or null. */
  #wayAround(found: Scan, record: CellRecord): Report | null {
    const starts = [...found.mentions, ...this.#linesIn(found)];
    const slots = starts.map((id) => this.#roster.record(id).slot);
    for (const id of found.columns) slots.push(this.#roster.tables.column(id).slot);
    const way = this.#graph.pathFrom(slots, record.slot);
    return way && this.#circleReport(found, record, [record.slot, ...way.slice(0, -1)]);
  }

  /** Of a circle so large that the way around isn't looked for from each of its cells. */
  #largeCircle(found: Scan, record: CellRecord): Report {
    const { slot, input } = record;
    const circle = this.#graph.circleOf(slot) ?? [];
    const next = this.#graph.needsOf(slot).find((need) => this.#graph.circleOf(need) === circle);
    const there = this.#roster.at(next ?? slot);
    const others = circle.map((member) => this.#roster.at(member)).filter((r) => !r.column);
    const named = there.column ? (others.find((r) => r !== record) ?? record) : there;
    return largeCircleReport(found, input, named.input, this.#names(record, there), others.length);
  }

  /** Does a mark in the formula of a cell name this other one? */
  #names({ place }: CellRecord, other: CellRecord): (mark: Mark) => boolean {
    return ({ cell, column }) =>
      other.column
        ? column === other.id
        : cell !== null && (place?.row.cellOf(cell)?.id ?? cell) === other.id;
  }

  #circleReport(found: Scan, record: CellRecord, path: readonly Slot[]): Report {
    const { id, input } = record;
    const around = path.map((slot) => this.#roster.at(slot));
    const isNext = this.#names(record, around[1] ?? record);
    const cells = around.filter((each) => !each.column).map((each) => each.input);
    return circleReport(found, cells, isNext, (share) => {
      const others = this.#linesIn(found).filter((line) => line !== id);
      const says = others.map((line) => this.vocabulary.wayToSay(line, input.part, id));
      const formula = feeOfWhole(share, says);
      const works =
        formula !== null && this.draft(input.part, id, formula).outcome.kind !== 'fault';
      return works ? formula : null;
    });
  }

  #linesIn(found: Scan): readonly CellId[] {
    return [...new Set(found.recaps.flatMap((scope) => this.#roster.lines.of(scope)))];
  }
}
