// Where one is in showing how a number came about: the steps that are left, which of them stands there now, what is known,
// and, where steps are asked first, what came of each.
import {
  type ShownStep,
  shownStep,
  stepText,
  stepsBefore,
  stepsLeft,
  stepsUpTo,
} from '../explain/show-how.ts';
import type { CellId } from '../language/tree.ts';
import { type Tried, afterShown, askable, untried } from '../mistakes/asking.ts';
import type { AskedStep } from '../mistakes/diagnose.ts';
import type { Practice } from '../mistakes/practice.ts';
import type { Notebook } from '../notebook/document.ts';
import type { Sitting } from '../store/practice-shapes.ts';
import { allCells } from './reading-order.ts';
import type { Session } from './session.ts';
import { valueSaid } from './value-words.ts';

/** One may begin so many steps before the result, or all the way from the givens. */
const BEGINNINGS = 5;
/** What stands in the place of a source where a number is made up for practice. */
const FRESH = 'a fresh number, for practice';

export class Showing {
  readonly session: Session;
  readonly cell: CellId;
  readonly practice: Practice | null;
  /** The notebook as it stood when this began. */
  readonly of: Notebook;
  readonly #order: readonly CellId[];
  readonly #below: ReadonlySet<CellId>;
  readonly #fresh: ReadonlySet<CellId>;
  readonly #steps = new Map<CellId, ShownStep>();
  readonly #known = new Set<CellId>();
  readonly #layers: readonly (readonly CellId[])[];
  #from: number | null = null;
  #left: readonly CellId[] | null = null;
  readonly #tried = new Map<CellId, Tried>();
  #at = 0;
  #asks = false;

  constructor(session: Session, cell: CellId, practice: Practice | null) {
    const { door } = session;
    this.session = session;
    this.of = door.notebook;
    this.cell = cell;
    this.practice = practice;
    this.#order = stepsUpTo(door, cell);
    this.#layers = stepsBefore(door, this.#order);
    this.#below = new Set(door.reach([cell], 'down').filter((id) => id >= 0));
    const fresh = practice?.fresh.map((each) => each.cell) ?? [];
    const tables = fresh.flatMap((id) => door.state(id).input.inTable ?? []);
    this.#fresh = new Set([...fresh, ...tables]);
    this.#asks = practice !== null;
  }

  get name(): string {
    return this.nameOf(this.cell);
  }

  nameOf(cell: CellId): string {
    return this.session.door.state(cell).input.name;
  }

  get asks(): boolean {
    return this.#asks;
  }

  /** Steps and givens that the group knows. */
  get known(): ReadonlySet<CellId> {
    return this.#known;
  }

  /** The cells that are shown one after the other. */
  get steps(): readonly CellId[] {
    this.#left ??= this.#stepsLeft();
    return this.#left;
  }

  /** How far before the result it begins; null: all the way from the givens. */
  get from(): number | null {
    return this.#from;
  }

  /** From how far before the result one may begin, and how many steps that makes. */
  get beginnings(): readonly { readonly from: number; readonly many: number }[] {
    let many = 0;
    return this.#layers
      .slice(0, -1)
      .slice(0, BEGINNINGS)
      .map((layer, from) => ({ from, many: (many += layer.length) }));
  }

  get many(): number {
    return this.#order.length;
  }

  get at(): number {
    return Math.min(this.#at, this.last);
  }

  /** The last place there is: past the last step where steps are asked, for what came of it. */
  get last(): number {
    return this.steps.length - 1 + (this.#asks ? 1 : 0);
  }

  /** The cell that stands there now; null at the end, past the last step. */
  get here(): CellId | null {
    return this.steps[this.at] ?? null;
  }

  /** `step 3 of 9`. */
  get progress(): string {
    const many = this.steps.length;
    return this.here === null ? 'the end' : `step ${this.at + 1} of ${many}`;
  }

  step(cell: CellId): ShownStep {
    const known = this.#steps.get(cell);
    if (known) return known;
    const { door } = this.session;
    const step = shownStep(door, cell, this.#below);
    const result = valueSaid(door, cell) ?? step.result;
    const putIn = step.putIn.map((each) =>
      this.#isFresh(each.cell) ? { ...each, source: FRESH } : each,
    );
    const source = this.#isFresh(cell) ? FRESH : step.source;
    const told = { ...step, result, putIn, source };
    this.#steps.set(cell, told);
    return told;
  }

  /** A given that was made up, or a row of a table in which some were. */
  #isFresh(cell: CellId): boolean {
    const { inTable } = this.session.door.state(cell).input;
    return this.#fresh.has(cell) || (inTable !== undefined && this.#fresh.has(inTable));
  }

  result(cell: CellId): string {
    const { door } = this.session;
    return valueSaid(door, cell) ?? this.step(cell).result;
  }

  tried(cell: CellId): Tried {
    return this.#tried.get(cell) ?? untried(cell);
  }

  /** What is told of a step that is asked: no row of a table that is the answer itself, and nothing that is worked. */
  question(cell: CellId): ShownStep {
    const step = this.step(cell);
    const putIn = step.putIn.filter(({ kind, result }) => kind !== 'row' || result !== step.result);
    return { ...step, putIn, lines: [], result: '', source: null, note: null };
  }

  /** What is to be asked of this step; null where it is shown. */
  asked(cell: CellId): AskedStep | null {
    if (!this.#asks || this.tried(cell).cameOut !== null) return null;
    return askable(this.session.door, cell);
  }

  /** As it is heard: a step that is asked tells no result. */
  heard(): string {
    const { here } = this;
    if (here === null) return 'The end: how it went.';
    const place = `${this.progress.slice(0, 1).toUpperCase()}${this.progress.slice(1)}.`;
    const step = this.step(here);
    if (!this.asked(here)) return `${place} ${stepText(step)}`;
    const told = stepText(this.question(here)).replace(`${step.name} is .`, '').trim();
    return `${place} ${told} What does ${step.name} come to?`;
  }

  ask(asks: 'first' | 'not'): void {
    this.#asks = asks === 'first';
  }

  answer(tried: Tried): void {
    this.#tried.set(tried.cell, tried);
  }

  /** Begins to ask anew. */
  forgetAnswers(): void {
    this.#tried.clear();
    this.#at = 0;
  }

  /** On by one; a step that is asked is shown first. */
  forward(): void {
    const { here } = this;
    if (here !== null && this.asked(here)) this.answer(afterShown(this.tried(here)));
    else this.go(this.at + 1);
  }

  back(): void {
    this.go(this.at - 1);
  }

  go(to: number): void {
    this.#at = Math.max(0, Math.min(to, this.last));
  }

  goTo(cell: CellId): void {
    const place = this.steps.indexOf(cell);
    if (place >= 0) this.go(place);
  }

  /** What is further before the result than this is left out; null: nothing is. */
  begin(from: number | null): void {
    this.#from = from;
    this.#left = null;
    this.#at = 0;
  }

  /** Left out from here on; a step that is known gives its place to the next. */
  know(cell: CellId): void {
    const { steps, at } = this;
    const next = steps[at] === cell ? steps[at + 1] : steps[at];
    this.#known.add(cell);
    this.#left = null;
    if (next !== undefined) this.goTo(next);
  }

  /** What the group knew in another showing of the same notebook, whose cells stand in the same places. */
  knowAsIn(other: Showing): void {
    const places = allCells(other.of).map(({ id }) => id);
    const own = allCells(this.of).map(({ id }) => id);
    for (const cell of other.known) {
      const here = own[places.indexOf(cell)];
      if (here !== undefined) this.#known.add(here);
    }
    this.begin(other.from);
  }

  knowNothing(): void {
    const { here } = this;
    this.#known.clear();
    this.#left = null;
    if (here !== null) this.goTo(here);
  }

  #stepsLeft(): readonly CellId[] {
    const left = stepsLeft(this.session.door, this.#order, this.#known);
    if (this.#from === null) return left;
    const near = new Set(this.#layers.slice(0, this.#from + 1).flat());
    return left.filter((cell) => near.has(cell));
  }

  /** As it is kept; null while nothing came of it. */
  sitting(id: string, at: number, notebook: string): Sitting | null {
    const steps = this.#order.flatMap((cell) => {
      const { cameOut, mistakes } = this.tried(cell);
      const { name } = this.session.door.state(cell).input;
      return cameOut === null ? [] : [{ name, cameOut, mistakes }];
    });
    const seed = this.practice?.seed ?? null;
    return steps.length === 0 ? null : { id, at, notebook, result: this.name, seed, steps };
  }
}
