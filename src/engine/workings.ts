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
import type { PartName, Reading, Scan, Surroundings } from '../language/reading.ts';
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
import { type CellInput, type CellState, type Outcome, outcomeOf } from './outcome.ts';
import type { CellRecord } from './record.ts';
import { type CellEdit, Roster } from './roster.ts';
import { type Ground, type Side, formulaSide, handSide, sameHolds, workSide } from './sides.ts';

export type { CellEdit } from './roster.ts';

export interface WorkingsSettings {
  readonly nouns: Nouns;
  readonly show: ShowSettings;
}

/** A formula that was read and worked without being put anywhere. */
export interface Draft {
  readonly reading: Reading;
  readonly holds: Holds | null;
  readonly outcome: Outcome;
}

/** How many cells are looked at for the way around a circle: every cell in it is told one. */
const LONGEST_WAY = 500;

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
    const { added, dropped, read, edges } = this.#roster.enrol(edits);
    for (const { slot, id } of added) this.#values[slot] = new Waiting([id]);
    this.#graph.connect(edges);
    for (const { slot } of dropped) this.#graph.remove(slot);
    for (const record of read) {
      record.stale = true;
      this.#graph.touch(record.slot);
    }
    this.#graph.settle();
    return this.#ran;
  }

  state(id: CellId): CellState {
    const record = this.#roster.record(id);
    const { used, formula, hand, told: holds, lastValue, lastHolds } = record;
    const outcome = this.#outcome(record, used);
    return {
      input: record.input,
      kind: record.given ? 'given' : holds?.measure.kind === 'yes-no' ? 'check' : 'worked',
      reading: formula.reading,
      holds,
      outcome,
      worked: hand ? this.#outcome(record, formula) : outcome,
      workedHolds: hand ? formula.holds : holds,
      lastGood:
        lastValue === null || lastHolds === null ? null : { value: lastValue, holds: lastHolds },
      needs: this.#ids(this.#graph.needsOf(record.slot)),
      goesInto: this.#ids(this.#graph.usersOf(record.slot)),
    };
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
    return new Roster(this.#settings.nouns, this.#settings.show.currency, this.#graph);
  }

  #newGround(): Ground {
    const roster = this.#roster;
    const surroundings: Surroundings = {
      holdsOf: (id) => this.#holdsOf(id),
      nameOf: (id) => roster.maybe(id)?.input.name ?? '',
      shownOf: (id) => this.#shownOf(id),
      linesOf: (scope) => roster.lines.of(scope),
    };
    const cells = { values: this.#values, placeOf: (id: CellId) => roster.record(id).slot };
    return { vocabulary: roster.vocabulary, surroundings, cells };
  }

  #ids(slots: readonly Slot[]): readonly CellId[] {
    return slots.map((slot) => this.#roster.at(slot).id);
  }

  /** Runs a cell; true when readers of it see something else than before. */
  #run(slot: Slot): boolean {
    const record = this.#roster.at(slot);
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

  #read(record: CellRecord): void {
    const scans = record.scans ?? this.#roster.scan(record);
    const { id, input } = record;
    record.scans = null;
    record.stale = false;
    record.formula = formulaSide(scans.formula, id, input.money, this.#ground);
    record.hand = scans.hand && handSide(scans.hand, input, record.formula, this.#ground);
    this.#roster.noteProblem(record);
  }

  #holdsOf(id: CellId): Holds | null {
    const record = this.#roster.maybe(id);
    // Within a circle one may ask before the other was told of it.
    return record && !this.#graph.inCircle(record.slot) ? record.told : null;
  }

  #shownOf(id: CellId): string | null {
    const holds = this.#holdsOf(id);
    if (!holds) return null;
    const { held } = this.#roster.record(id).used;
    return isNoValue(held) ? null : show(bare(held), holds, this.#settings.show).text;
  }

  #outcome(record: CellRecord, side: Side): Outcome {
    if (!this.#graph.inCircle(record.slot)) {
      return this.#sideOutcome(side, side.held, side === record.hand ? null : record.input.formula);
    }
    let report = this.#circles.get(record.id);
    if (!report) {
      const { formula, part, id } = record.input;
      const found = scan(formula, this.vocabulary, part, id);
      const path = this.#graph.pathAround(record.slot, LONGEST_WAY);
      report = path ? this.#circleReport(found, record, path) : this.#largeCircle(found, record);
      this.#circles.set(id, report);
    }
    return { kind: 'fault', report };
  }

  /** `text` null: not the formula, so that spots would point nowhere. */
  #sideOutcome(side: Side, held: Held, text: string | null): Outcome {
    if (!(held instanceof Fault)) return outcomeOf(held);
    if (side.fault) return { kind: 'fault', report: side.fault };
    const { checked } = side.reading;
    if (!checked || held.code === 'text') throw new Error(`at fault without a reason: ${text}`);
    if (text === null) return { kind: 'fault', report: workingFault(held.code, null, null) };
    const { cells, surroundings } = this.#ground;
    const work = (plan: Plan): Held => compile(plan, cells, null)();
    const telling = { text, surroundings, work, ...this.#settings };
    return { kind: 'fault', report: reportAtWork(checked, telling) };
  }

  /** The circle that a formula would make of a cell, or null. */
  #wayAround(found: Scan, record: CellRecord): Report | null {
    const starts = [...found.mentions, ...this.#linesIn(found)];
    const way = this.#graph.pathFrom(
      starts.map((id) => this.#roster.record(id).slot),
      record.slot,
    );
    return way && this.#circleReport(found, record, [record.slot, ...way.slice(0, -1)]);
  }

  /** Of a circle so large that the way around isn't looked for from each of its cells. */
  #largeCircle(found: Scan, { slot, input }: CellRecord): Report {
    const circle = this.#graph.circleOf(slot) ?? [];
    const next = this.#graph.needsOf(slot).find((need) => this.#graph.circleOf(need) === circle);
    return largeCircleReport(found, input, this.#roster.at(next ?? slot).input, circle.length);
  }

  #circleReport(found: Scan, { id, input }: CellRecord, path: readonly Slot[]): Report {
    const cells = path.map((slot) => this.#roster.at(slot).input);
    return circleReport(found, cells, (share) => {
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
