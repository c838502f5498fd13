// The cells of a notebook and all that they come to. Told what changed, it reads again only formulas
// that the change could have given another meaning, works again only what that reaches, and says what ran.
//
// Edges come from the text of formulas alone: names, and the lines of recaps. A formula is read once all that
// it names has been read and worked, since reading needs to know what names hold; so what cells hold flows
// like their values, and stops where it stays the same.
//
// A fault is an outcome. A cell in a circle is at fault whatever its formula says; what reads it waits.
import type { Nouns } from '../quantity/nouns.ts';
import { type ShowSettings, show } from '../quantity/show.ts';
import type { Holds } from '../quantity/form.ts';
import type { Plan } from '../language/plan.ts';
import { marks } from '../language/marks.ts';
import { read } from '../language/read.ts';
import type { PartName, Reading, Scan, Surroundings } from '../language/reading.ts';
import { readsAsBefore, scan } from '../language/scan.ts';
import type { CellId } from '../language/tree.ts';
import { Vocabulary } from '../language/vocabulary.ts';
import { sameForm } from '../language/check/holding.ts';
import type { Fix, Report } from '../words/report.ts';
import { handHolds } from './by-hand.ts';
import { compile } from './compile.ts';
import { costHolds, toTheCent } from './cost-line.ts';
import {
  circle,
  handNotRead,
  handOfAnotherKind,
  notYetACost,
  ownTotal,
  workingFault,
} from './faults.ts';
import { Graph, type Slot } from './graph.ts';
import {
  FAULT_OF_TEXT,
  Fault,
  type Held,
  Unknown,
  Waiting,
  bare,
  isNoValue,
  leftOutOf,
  sameHeld,
} from './held.ts';
import type { CellInput, CellState, Outcome } from './outcome.ts';
import { RecapLines } from './recap-lines.ts';
import { CellRecord, type Side } from './record.ts';
import { spotOfFault } from './tracing.ts';
import { WordIndex } from './word-index.ts';

export type CellEdit =
  /** A new cell, at the end, or a cell as it is from now on. */
  | { readonly kind: 'put'; readonly cell: CellInput }
  | { readonly kind: 'drop'; readonly id: CellId }
  | { readonly kind: 'parts'; readonly parts: readonly PartName[] }
  /** All cells in the order of the notebook. */
  | { readonly kind: 'order'; readonly ids: readonly CellId[] };

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

export class Workings {
  readonly #settings: WorkingsSettings;
  #vocabulary: Vocabulary;
  #graph = new Graph((slot) => this.#run(slot));
  #words = new WordIndex();
  readonly #lines = new RecapLines();
  readonly #cells = new Map<CellId, CellRecord>();
  readonly #bySlot: CellRecord[] = [];
  /** What readers see of each cell, by slot. Compiled formulas read this array. */
  readonly #values: Held[] = [];
  #order: CellId[] = [];
  /** Cells with a recap in them. */
  readonly #recaps = new Set<CellRecord>();
  /** Cells whose text has a problem. */
  readonly #problems = new Set<CellRecord>();
  /** Reports of circles, worded when they are asked for. */
  readonly #circles = new Map<CellId, Report>();
  #ran: CellId[] = [];

  readonly #places = { values: this.#values, placeOf: (id: CellId): number => this.#record(id).slot };

  readonly #surroundings: Surroundings = {
    holdsOf: (id) => this.#holdsOf(id),
    nameOf: (id) => this.#cells.get(id)?.input.name ?? '',
    shownOf: (id) => this.#shownOf(id),
    linesOf: (scope) => this.#lines.of(scope),
  };

  constructor(settings: WorkingsSettings) {
    this.#settings = settings;
    this.#vocabulary = new Vocabulary(settings.nouns, settings.show.currency);
  }

  /** What can be named in a formula. */
  get vocabulary(): Vocabulary {
    return this.#vocabulary;
  }

  /** The cells that the last change worked, in the order it did. */
  get ran(): readonly CellId[] {
    return this.#ran;
  }

  /** Everything from nothing. */
  load(parts: readonly PartName[], cells: readonly CellInput[]): void {
    this.#vocabulary = new Vocabulary(this.#settings.nouns, this.#settings.show.currency);
    this.#graph = new Graph((slot) => this.#run(slot));
    this.#words = new WordIndex();
    this.#cells.clear();
    this.#bySlot.length = 0;
    this.#values.length = 0;
    this.#order = [];
    this.#recaps.clear();
    this.#problems.clear();
    this.change([{ kind: 'parts', parts }, ...cells.map((cell) => ({ kind: 'put', cell }) as const)]);
  }

  /** Makes the edits and works what they reach. Returns what ran. */
  change(edits: readonly CellEdit[]): readonly CellId[] {
    this.#ran = [];
    const change = new Change();
    for (const edit of edits) this.#edit(edit, change);
    if (change.order) this.#putInOrder();
    this.#findNames(change);
    for (const record of change.dropped) {
      change.scan.delete(record);
      change.read.delete(record);
    }
    for (const record of change.scan) this.#scan(record);
    if (change.lines) this.#findLines(change);
    if (change.scan.size + change.dropped.size > 0) this.#connect(change);
    for (const record of change.dropped) this.#graph.remove(record.slot);
    for (const record of change.read) {
      record.stale = true;
      this.#graph.touch(record.slot);
    }
    this.#graph.settle();
    return this.#ran;
  }

  has(id: CellId): boolean {
    return this.#cells.has(id);
  }

  state(id: CellId): CellState {
    const record = this.#record(id);
    const { used, formula, hand } = record;
    const outcome = this.#outcome(record, used);
    const holds = record.told;
    return {
      input: record.input,
      kind: record.given ? 'given' : holds?.measure.kind === 'yes-no' ? 'check' : 'worked',
      reading: formula.reading,
      holds,
      outcome,
      worked: hand ? this.#outcome(record, formula) : outcome,
      workedHolds: hand ? formula.holds : holds,
      lastGood:
        record.lastValue === null || record.lastHolds === null
          ? null
          : { value: record.lastValue, holds: record.lastHolds },
      needs: this.#ids(this.#graph.needsOf(record.slot)),
      goesInto: this.#ids(this.#graph.usersOf(record.slot)),
    };
  }

  /** Works any stretch of a checked formula with what the cells hold now; `self` is whose `?` it may have in it. */
  evaluate(plan: Plan, self: CellId | null = null): Outcome {
    const held = compile(plan, this.#places, self)();
    if (!(held instanceof Fault)) return outcomeOf(held);
    if (held.code === 'text') throw new Error('a plan has no text to be at fault');
    return { kind: 'fault', report: workingFault(held.code, null, null) };
  }

  /** Reads and works a formula as if it stood in this part and cell, and changes nothing. */
  draft(part: string, self: CellId | null, text: string): Draft {
    const found = scan(text, this.#vocabulary, part, self);
    const record = self === null ? null : this.#record(self);
    const side = this.#side(found, self, record?.input.money ?? null);
    const { reading, holds } = side;
    const around = record && this.#wayAround(found, record);
    if (around) return { reading, holds: null, outcome: { kind: 'fault', report: around } };
    return { reading, holds, outcome: this.#sideOutcome(side, text, this.#work(side)) };
  }

  #record(id: CellId): CellRecord {
    const record = this.#cells.get(id);
    if (!record) throw new Error(`there is no cell ${id}`);
    return record;
  }

  #ids(slots: readonly Slot[]): readonly CellId[] {
    return slots.map((slot) => this.#at(slot).id);
  }

  #at(slot: Slot): CellRecord {
    const record = this.#bySlot[slot];
    if (!record) throw new Error(`there is no cell at ${slot}`);
    return record;
  }

  // What an edit touches.

  #edit(edit: CellEdit, change: Change): void {
    switch (edit.kind) {
      case 'put':
        this.#put(edit.cell, change);
        return;
      case 'drop':
        this.#drop(this.#record(edit.id), change);
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
      this.#vocabulary.remove(cell.id);
      this.#vocabulary.add(cell);
      change.names.push(was.name, cell.name);
      for (const user of this.#graph.usersOf(record.slot)) change.scan.add(this.#at(user));
    }
    if (moved || was.formula !== cell.formula || was.byHand !== cell.byHand) change.scan.add(record);
    if (!sameMoney(was.money, cell.money)) {
      change.lines = true;
      change.read.add(record);
    } else if (moved && cell.money) change.lines = true;
  }

  #add(cell: CellInput, change: Change): void {
    const record = new CellRecord(this.#graph.add(), cell);
    this.#cells.set(cell.id, record);
    this.#bySlot[record.slot] = record;
    this.#values[record.slot] = new Waiting([cell.id]);
    this.#order.push(cell.id);
    this.#vocabulary.add(cell);
    change.names.push(cell.name);
    change.scan.add(record);
    if (cell.money) change.lines = true;
  }

  #drop(record: CellRecord, change: Change): void {
    this.#vocabulary.remove(record.id);
    this.#words.drop(record.slot);
    this.#cells.delete(record.id);
    this.#recaps.delete(record);
    this.#problems.delete(record);
    change.order = true;
    change.names.push(record.input.name);
    for (const user of this.#graph.usersOf(record.slot)) change.scan.add(this.#at(user));
    change.dropped.add(record);
    if (record.input.money) change.lines = true;
  }

  #putParts(parts: readonly PartName[], change: Change): void {
    const before = new Map(this.#vocabulary.parts.map((part) => [part.key, part.name]));
    this.#vocabulary.setParts(parts);
    for (const { key, name } of parts) {
      if (before.get(key) !== name) change.names.push(before.get(key) ?? name, name);
      before.delete(key);
    }
    change.names.push(...before.values());
  }

  /** Formulas that hold the words of a name which came or went, and all that have a problem, are read again. */
  #findNames(change: Change): void {
    if (change.names.length === 0) return;
    for (const name of new Set(change.names)) {
      const words = this.#vocabulary.wordsOf(name);
      const holding = words.length === 0 ? [] : this.#words.holding(words);
      if (holding) for (const slot of holding) change.scan.add(this.#at(slot));
      else for (const record of this.#cells.values()) change.scan.add(record);
    }
    for (const record of this.#problems) change.scan.add(record);
  }

  #scan(record: CellRecord): void {
    const { id, part, formula, byHand } = record.input;
    const scans = {
      formula: scan(formula, this.#vocabulary, part, id),
      hand: byHand === null ? null : scan(byHand, this.#vocabulary, part, id),
    };
    record.scans = scans;
    record.given = scans.formula.given;
    record.recaps = joined(scans.formula.recaps, scans.hand?.recaps);
    if (record.recaps.length > 0) this.#recaps.add(record);
    else this.#recaps.delete(record);
    record.lines = this.#linesOf(record);
    this.#words.put(record.slot, joined(scans.formula.words, scans.hand?.words));
  }

  #linesOf({ recaps }: CellRecord): readonly (readonly CellId[])[] {
    return recaps.length === 0 ? NONE : recaps.map((scope) => this.#lines.of(scope));
  }

  /** Cost lines came, went or moved: recaps that now add others are read again. */
  #findLines(change: Change): void {
    this.#lines.renew(this.#order.map((id) => this.#record(id).input));
    for (const record of this.#recaps) {
      const lines = this.#linesOf(record);
      if (sameLines(lines, record.lines)) continue;
      record.lines = lines;
      change.scan.add(record);
      if (!record.scans) this.#scan(record);
    }
  }

  #connect(change: Change): void {
    this.#circles.clear();
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
    for (const record of change.dropped) edges.push([record.slot, []]);
    this.#graph.connect(edges);
  }

  #needsOf(record: CellRecord): readonly Slot[] {
    const { scans, lines } = record;
    const mentions = joined(scans?.formula.mentions ?? NONE, scans?.hand?.mentions);
    const ids = lines.length === 0 && !scans?.hand ? mentions : [...new Set([...mentions, ...lines.flat()])];
    // `map` makes a list no longer than it has to be: there is one a cell.
    return ids.length === 0 ? NONE : ids.map((id) => this.#record(id).slot);
  }

  // Reading and working one cell.

  /** Runs a cell; true when readers of it see something else than before. */
  #run(slot: Slot): boolean {
    const record = this.#at(slot);
    this.#ran.push(record.id);
    const heldBefore = this.#values[slot] as Held;
    const toldBefore = record.told;
    const inCircle = this.#graph.inCircle(slot);
    if (record.stale || record.hasProblem || inCircle) this.#read(record);
    this.#workCell(record);
    const held = record.forReaders();
    this.#values[slot] = held;
    record.told = inCircle ? null : record.used.holds;
    const sameKind = sameHolds(toldBefore, record.told);
    if (!sameKind) {
      for (const user of this.#graph.usersOf(slot)) this.#at(user).stale = true;
    }
    return !sameKind || !sameHeld(heldBefore, held);
  }

  #read(record: CellRecord): void {
    if (!record.scans) this.#scan(record);
    const { scans, input } = record;
    if (!scans) throw new Error(`cell ${record.id} was not scanned`);
    record.scans = null;
    record.stale = false;
    record.formula = this.#side(scans.formula, record.id, input.money);
    record.hand = scans.hand ? this.#handSide(scans.hand, record) : null;
    if (record.hasProblem) this.#problems.add(record);
    else this.#problems.delete(record);
  }

  #side(found: Scan, self: CellId | null, money: CellInput['money']): Side {
    const side = this.#plainSide(found, self);
    return money ? this.#costSide(side, money, found.text) : side;
  }

  #plainSide(found: Scan, self: CellId | null): Side {
    const reading = read(found, this.#vocabulary, this.#surroundings);
    const { checked } = reading;
    const [fault = null] = reading.problems;
    if (fault || !checked) return { reading, work: null, holds: null, fault, held: FAULT_OF_TEXT };
    const work = compile(checked.plan, this.#places, self);
    return { reading, work, holds: checked.holds, fault: null, held: FAULT_OF_TEXT };
  }

  /** The same as the amount of a cost or price line. */
  #costSide(side: Side, money: NonNullable<CellInput['money']>, text: string): Side {
    const { work, holds: own, reading } = side;
    if (!work || !own || !reading.checked) return side;
    const holds = costHolds(own, reading.checked.plan);
    if (!holds) {
      return { ...side, work: null, holds, fault: notYetACost(money.line, own.measure, text) };
    }
    const { measure } = own;
    if (measure.kind !== 'amount') return { ...side, holds };
    return { ...side, holds, work: () => toTheCent(work(), measure) };
  }

  #handSide(found: Scan, { id, input, formula }: CellRecord): Side {
    const hand = this.#plainSide(found, id);
    if (hand.fault) return { ...hand, fault: handNotRead(hand.fault) };
    if (!hand.holds) return hand;
    const worked = formula.holds ?? hand.holds;
    const holds = handHolds(hand.holds, worked);
    if (!holds) {
      const fault = handOfAnotherKind(input.name, hand.holds.measure, worked.measure);
      return { ...hand, work: null, holds, fault };
    }
    const side = { ...hand, holds };
    return input.money ? this.#costSide(side, input.money, found.text) : side;
  }

  /** In a circle nothing is worked: the values it would be worked with are those of before. */
  #workCell(record: CellRecord): void {
    const inCircle = this.#graph.inCircle(record.slot);
    record.formula.held = inCircle ? FAULT_OF_TEXT : this.#work(record.formula);
    if (record.hand) record.hand.held = inCircle ? FAULT_OF_TEXT : this.#work(record.hand);
    record.keepLastGood();
  }

  #work(side: Side): Held {
    if (side.work) return side.work();
    return side.fault ? FAULT_OF_TEXT : new Waiting(side.reading.waitsFor);
  }

  // What is told of a cell.

  #holdsOf(id: CellId): Holds | null {
    const record = this.#cells.get(id);
    // Within a circle one may ask before the other was told of it.
    return record && !this.#graph.inCircle(record.slot) ? record.told : null;
  }

  #shownOf(id: CellId): string | null {
    const record = this.#cells.get(id);
    const holds = this.#holdsOf(id);
    const held = record?.used.held;
    if (held === undefined || holds === null || isNoValue(held)) return null;
    return show(bare(held), holds, this.#settings.show).text;
  }

  #outcome(record: CellRecord, side: Side): Outcome {
    if (!this.#graph.inCircle(record.slot)) {
      const text = side === record.hand ? (record.input.byHand ?? '') : record.input.formula;
      return this.#sideOutcome(side, text, side.held);
    }
    let report = this.#circles.get(record.id);
    if (!report) {
      report = this.#circleOf(record);
      this.#circles.set(record.id, report);
    }
    return { kind: 'fault', report };
  }

  #sideOutcome(side: Side, text: string, held: Held): Outcome {
    if (!(held instanceof Fault)) return outcomeOf(held);
    if (side.fault) return { kind: 'fault', report: side.fault };
    const { checked } = side.reading;
    if (!checked || held.code === 'text') throw new Error(`"${text}" is at fault without a reason`);
    const spot = spotOfFault(checked, (plan) => compile(plan, this.#places, null)() instanceof Fault);
    const by = text.slice(spot.from, spot.to);
    return { kind: 'fault', report: workingFault(held.code, by, spot) };
  }

  #circleOf(record: CellRecord): Report {
    const path = this.#graph.pathAround(record.slot) ?? [record.slot];
    const { formula, part } = record.input;
    return this.#circleReport(scan(formula, this.#vocabulary, part, record.id), record, path);
  }

  /** The circle that a formula would make of a cell, or null. */
  #wayAround(found: Scan, record: CellRecord): Report | null {
    const lines = found.recaps.flatMap((scope) => this.#lines.of(scope));
    const starts = [...found.mentions, ...lines].map((id) => this.#record(id).slot);
    const way = this.#graph.pathFrom(starts, record.slot);
    return way && this.#circleReport(found, record, [record.slot, ...way.slice(0, -1)]);
  }

  #circleReport(found: Scan, record: CellRecord, path: readonly Slot[]): Report {
    const cells = path.map((slot) => this.#at(slot));
    const next = (cells[1] ?? record).id;
    const spots = marks(found).filter((mark) => mark.cell === next);
    const names = cells.map((cell) => cell.input.name);
    if (spots.length > 0) return circle(names, spots.map(({ from, to }) => ({ from, to })));
    const whole = { from: 0, to: found.text.length };
    if (cells.length > 1 || record.input.money?.line !== 'cost') return circle(names, [whole]);
    const share = /\d+(?:\.\d+)?\s*%/.exec(found.text)?.[0] ?? null;
    const fix = share === null ? null : this.#feeOfWhole(found, record, share);
    return ownTotal(record.input.name, share ?? '10%', [whole], fix === null ? [] : [fix]);
  }

  /** `11% of total cost of this part` in a line of that part: the same fee without the circle. */
  #feeOfWhole(found: Scan, record: CellRecord, share: string): Fix | null {
    const { id, input } = record;
    const others = [...new Set(found.recaps.flatMap((scope) => this.#lines.of(scope)))]
      .filter((line) => line !== id)
      .map((line) => this.#vocabulary.wayToSay(line, input.part, id));
    const last = others.pop();
    if (last === undefined || others.length >= MOST_LINES) return null;
    const whole = others.length === 0 ? last : `total of ${others.join(', ')} and ${last},`;
    const formula = `${share} of (${whole} for ${share} fee)`;
    const { outcome } = this.draft(input.part, id, formula);
    return outcome.kind === 'value' || outcome.kind === 'unknown'
      ? { say: `Take ${share} of the whole`, formula }
      : null;
  }
}

/** A list of more lines than this is no formula to offer. */
const MOST_LINES = 8;

/** What a set of edits touches. */
class Change {
  /** Names and part names that came or went. */
  readonly names: string[] = [];
  /** Cells whose names have to be found anew. */
  readonly scan = new Set<CellRecord>();
  /** Cells whose formulas have to be read anew. */
  readonly read = new Set<CellRecord>();
  readonly dropped = new Set<CellRecord>();
  /** Cost lines may have come, gone or moved. */
  lines = false;
  /** The order of the cells may have gaps or lack some. */
  order = false;
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

/** For what is no fault. */
function outcomeOf(held: Exclude<Held, Fault>): Outcome {
  if (held instanceof Unknown) return { kind: 'unknown', for: held.for };
  if (held instanceof Waiting) return { kind: 'waiting', for: held.for };
  return { kind: 'value', value: bare(held), leftOut: leftOutOf(held) };
}

function sameMoney(a: CellInput['money'], b: CellInput['money']): boolean {
  return a?.line === b?.line && a?.kind === b?.kind;
}

function sameHolds(a: Holds | null, b: Holds | null): boolean {
  if (a === b) return true;
  return (
    a !== null &&
    b !== null &&
    a.measure === b.measure &&
    a.written === b.written &&
    sameForm(a.showIn, b.showIn)
  );
}

function sameList(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((each, i) => each === b[i]);
}

function sameLines(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): boolean {
  return a.length === b.length && a.every((list, i) => sameList(list, b[i] ?? []));
}
