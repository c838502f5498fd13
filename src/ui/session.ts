// The one thing on the page that changes over time: it holds the current notebook, what is chosen,
// what is being written, and tells those who listen what happened.
import type { CellId } from '../language/tree.ts';
import type { Working } from '../explain/step.ts';
import type { Applied, Draft, EstimateDoor, MovedValues, TableDoor } from '../notebook/estimate.ts';
import type { Cell, Change, Finding, Notebook, Part } from '../notebook/document.ts';
import type { NotPasted } from '../notebook/paste-edit.ts';
import { type Happening, type Listener, type Notice, type Writing, asDone } from './happening.ts';
import { allCells, cellCalled, cellOf, firstOther, firstOtherPlace } from './reading-order.ts';
import { type RowPlace, placeOf, standingIn } from './row-places.ts';
import { mendsIn, problemFrom, problemsBy, toldOtherwise } from './problems.ts';
import { Hearers } from './hearers.ts';
import { Trial } from './trial.ts';

/** All that can be asked of an estimate and done to it, tables among it. */
export type Door = EstimateDoor & TableDoor;

/** What the page asks about a cell beside the estimate's doorway. */
export interface Asides {
  /** Null while what explains is still on its way. */
  working(cell: CellId): Working | null;
  /** The quantity that a cost line prices, e.g. `40 bags`; null where its formula prices none. */
  quantity(cell: CellId): string | null;
  /** The worked value beside one set by hand, and how far it is from it; null when it can't be told. */
  difference(cell: CellId): string | null;
  /** A length in the notation it was not typed in: 10.8 ft is 10 ft 9 5/8 in, a hair shy. */
  otherwise(draft: Draft): string | null;
}

export class Session {
  #door: Door;
  #asides: Asides;
  #chosen: CellId | null = null;
  /** Where in the table of the chosen cell the keyboard is, if it is there. */
  #within: RowPlace | null = null;
  readonly #notTaken = new Map<CellId, readonly NotPasted[]>();
  /** Where the chosen cell stands in reading order: what stands there next is chosen when it goes. */
  #place = -1;
  #writing: Writing | null = null;
  #trial: Trial | null = null;
  #notice: Notice | null = null;
  /** Why the last change was not made. */
  #refused: Notice | null = null;
  /** Told to whoever would change something, while another page writes in this notebook. */
  #held: Notice | null = null;
  /** What was to be mended when the rows were last drawn. */
  #problems: ReturnType<typeof problemsBy>;
  #besideGuide = false;
  #watched: ReadonlySet<string> = new Set();
  readonly #hearers = new Hearers();

  constructor(door: Door, asides: Asides) {
    this.#door = door;
    this.#asides = asides;
    this.#problems = problemsBy(door);
  }

  /** Nothing is being written and no tape is open. */
  get isAtRest(): boolean {
    return this.#writing === null && this.#trial === null;
  }

  get door(): Door {
    return this.#door;
  }
  get asides(): Asides {
    return this.#asides;
  }
  get chosen(): CellId | null {
    return this.#chosen;
  }
  /** The chosen cell of a row, with its place; null where a cell is chosen and none of its rows. */
  get within(): RowPlace | null {
    return this.#within;
  }
  /** What the working is of: the row's cell where one is chosen, else the chosen cell. */
  get worked(): CellId | null {
    return this.#within?.id ?? this.#chosen;
  }
  get writing(): Writing | null {
    return this.#writing;
  }
  /** The tape that is open, if one is. */
  get trial(): Trial | null {
    return this.#trial;
  }
  get notice(): Notice | null {
    return this.#notice;
  }

  /** The guide has the keyboard: what is being written stays open for the words it may bring. */
  get besideGuide(): boolean {
    return this.#besideGuide;
  }

  /** Returns how to stop listening. */
  listen(listener: Listener): () => void {
    return this.#hearers.listen(listener);
  }

  /** Called when this cell has to be drawn again. Returns how to stop. */
  watch(cell: CellId, draw: () => void): () => void {
    return this.#hearers.watch(cell, draw);
  }

  /** Another notebook takes the place of this one. */
  open(door: Door, asides: Asides): void {
    this.#door = door;
    this.#asides = asides;
    this.#problems = problemsBy(door);
    this.#chosen = null;
    this.#within = null;
    this.#notTaken.clear();
    this.#writing = null;
    this.#trial = null;
    this.#quiet();
    this.#happen({ kind: 'opened' });
  }

  choose(cell: CellId | null): void {
    if (cell === this.#chosen && !this.#within) return;
    this.#within = null;
    const before = this.#chosen;
    if (this.#trial && this.#trial.cell !== cell) this.leaveTape();
    this.#chosen = cell;
    this.#place = allCells(this.#door.notebook).findIndex(({ id }) => id === cell);
    this.#redraw([before, cell]);
    this.#happen({ kind: 'chosen' });
  }

  /** Chooses a cell of a row of the table that this cell holds. */
  chooseInRow(cell: CellId, row: number, column: number): void {
    const id = this.#door.rows(cell)?.[row]?.[column];
    if (id === undefined || this.#within?.id === id) return;
    if (this.#chosen !== cell) this.choose(cell);
    this.#within = { cell, row, column, id };
    this.#happen({ kind: 'chosen' });
  }

  /** Chooses a cell, or a cell of a row, and brings it into view. What is not on the page stays where it is. */
  bring(cell: CellId): void {
    const at = placeOf(this.#door, cell);
    if (at) {
      this.bringRow(at, 'goes');
      return;
    }
    if (!this.cell(cell)) return;
    this.choose(cell);
    this.#happen({ kind: 'bring', cell, keyboard: 'goes' });
  }

  bringRow(at: RowPlace, keyboard: 'goes' | 'stays' | 'writes'): void {
    this.choose(at.cell);
    this.chooseInRow(at.cell, at.row, at.column);
    this.#happen({ kind: 'bring-row', at, keyboard });
  }

  /** What was pasted into a table and not taken, until it is put away. */
  notTaken(cell: CellId): readonly NotPasted[] {
    return this.#notTaken.get(cell) ?? [];
  }

  setNotTaken(cell: CellId, told: readonly NotPasted[]): void {
    this.#notTaken.set(cell, told);
  }

  /** Brings the heading of a part into view and gives it the keyboard. */
  bringPart(part: string): void {
    this.#happen({ kind: 'bring-part', part });
  }

  write(writing: Writing | null): void {
    if (writing && this.#holds()) return;
    const before = this.#writing;
    this.#writing = writing;
    if (writing && this.#trial) this.leaveTape();
    if (writing && 'cell' in writing) this.choose(writing.cell);
    this.#redraw([before, writing].map((w) => (w && 'cell' in w ? w.cell : null)));
    this.#happen({ kind: 'writing' });
  }

  /** What is being written of this cell; null where nothing is. */
  writingOf(cell: CellId): Extract<Writing, { readonly cell: CellId }> | null {
    const writing = this.#writing;
    return writing && 'cell' in writing && writing.cell === cell ? writing : null;
  }

  /** Makes a change and tells everyone, or tells why it was not made. True when it was made. */
  apply(make: (door: Door) => Applied | Finding): boolean {
    if (this.#holds()) return false;
    if (this.#trial) this.leaveTape();
    const done = make(this.#door);
    if (!('change' in done)) {
      this.#refused = { text: done.message, lasts: 'stays' };
      this.tell(this.#refused);
      return false;
    }
    this.#quiet();
    this.#changed(done.ran);
    // Formulas that had to be written anew, so that they read as they did, are never changed in silence.
    if (done.change.say.includes('; now written ')) this.tellDone();
    return true;
  }

  /** From now on nothing is changed here by hand, and whoever tries is told this; null: everything is as before. */
  hold(told: Notice | null): void {
    if (told) this.leaveTape();
    this.#held = told;
  }

  /** Shows what another page wrote. What is being written here stays open. */
  follow(change: Change): boolean {
    const done = this.#door.replaceText(change);
    if (!('change' in done)) return false;
    this.#changed(done.ran);
    return true;
  }

  /**
   * Moves something. What had to be written anew is told; where a value would change that is told first, and the
   * move is made when it is meant all the same. True when it was made.
   */
  move(name: string, make: (door: Door, values: MovedValues) => Applied | Finding): boolean {
    if (this.#holds()) return false;
    if (this.#trial) this.leaveTape();
    const done = make(this.#door, 'kept');
    if ('change' in done) {
      this.#changed(done.ran);
      this.tell({ text: asDone(done.change.say), lasts: 'plain' });
      return true;
    }
    if (done.code === 'values-change') {
      const go = (): void => {
        this.apply((door) => make(door, 'may-change'));
        if (done.cell !== null) this.#happen({ kind: 'changed', ran: [] });
      };
      this.tell({
        text: done.message,
        lasts: 'stays',
        act: { say: `Move ${name} all the same`, go },
      });
    } else if (done.code !== 'stays') this.tell({ text: done.message, lasts: 'stays' });
    return false;
  }

  undo(): void {
    if (this.#holds()) return;
    const { notebook } = this.#door;
    this.#back(notebook, this.#door.undo(), 'Undone');
  }

  redo(): void {
    if (this.#holds()) return;
    const { notebook } = this.#door;
    this.#back(notebook, this.#door.redo(), 'Done again');
  }

  /** Where words of the guide would go: the line being written, or the chosen cell; null where neither takes any. */
  get takesWords(): Cell | null {
    const id = this.#writing?.kind === 'formula' ? this.#writing.cell : this.#chosen;
    const cell = id === null ? null : this.cell(id);
    return cell?.table ? null : cell;
  }

  /** Puts words into the formula that is being written, or writes them in the chosen cell's; Enter keeps them there. */
  put(words: string): void {
    const cell = this.takesWords;
    if (!cell) return;
    if (this.#writing?.kind === 'formula') this.#happen({ kind: 'put', words });
    else this.write({ kind: 'formula', cell: cell.id, typed: words });
  }

  /** Told by the guide when the keyboard comes to it and when it goes. */
  guideHas(keyboard: 'came' | 'went'): void {
    this.#besideGuide = keyboard === 'came';
    if (keyboard === 'went') this.#happen({ kind: 'guide-left' });
  }

  openTape(cell: CellId): void {
    if (this.#holds()) return;
    this.write(null);
    this.choose(cell);
    this.#trial = new Trial(this.#door, cell);
    this.#redraw([cell]);
    this.#happen({ kind: 'tape' });
  }

  /** Slides the open tape to this amount: everything follows, nothing is settled yet. */
  slideTape(formula: string): void {
    if (!this.#trial) return;
    const ran = this.#trial.slide(formula);
    this.#changed(ran);
  }

  /** Settles what the tape was slid to, as one change. */
  keepTape(): void {
    const trial = this.#trial;
    this.#trial = null;
    this.#redraw([trial?.cell ?? null]);
    this.#happen({ kind: 'tape' });
    if (trial?.moved) this.#changed([]);
  }

  /** Back to where the tape was opened. */
  leaveTape(): void {
    const trial = this.#trial;
    if (!trial) return;
    this.#trial = null;
    const ran = trial.takeBack();
    this.#redraw([trial.cell]);
    this.#happen({ kind: 'tape' });
    if (ran.length > 0) this.#changed(ran);
  }

  /** The marks of the results that are watched. */
  get watched(): ReadonlySet<string> {
    return this.#watched;
  }

  setWatched(marks: ReadonlySet<string>): void {
    const otherwise = [...this.#watched, ...marks].filter(
      (mark) => this.#watched.has(mark) !== marks.has(mark),
    );
    this.#watched = marks;
    this.#redraw(
      otherwise.flatMap((mark) => (mark.startsWith('cell ') ? [Number(mark.slice(5))] : [])),
    );
    this.#happen({ kind: 'watched' });
  }

  tell(notice: Notice | null): void {
    this.#notice = notice;
    this.#happen({ kind: 'told' });
  }

  cell(id: CellId): Cell | null {
    return cellOf(this.#door.notebook, id);
  }

  part(key: string): Part | null {
    return this.#door.notebook.parts.find((part) => part.key === key) ?? null;
  }

  /** The cell before or after this one in reading order. */
  neighbour(id: CellId, steps: number): CellId | null {
    const cells = allCells(this.#door.notebook);
    const place = cells.findIndex((cell) => cell.id === id);
    return cells[place + steps]?.id ?? null;
  }

  /** The next cell with something to mend, or the one before; says so where there is none. */
  goToProblem(steps: 1 | -1): void {
    const next = problemFrom(this.#door, this.#chosen, steps);
    if (next === null) this.tell({ text: 'There is nothing to mend.', lasts: 'plain' });
    else this.bring(next);
  }

  /** Makes the mend of the chosen cell that stands at this place; false where there is none. */
  mendChosen(place: number): boolean {
    const mend = this.#chosen === null ? undefined : mendsIn(this.#door, this.#chosen)[place];
    return mend !== undefined && this.apply((door) => door.mend(mend));
  }

  /** A cell by where it stands and how it is called, for coming back to it. */
  called(part: string, name: string): CellId | null {
    return cellCalled(this.#door.notebook, part, name)?.id ?? null;
  }

  /** Tells what was done last, as done. */
  tellDone(): void {
    this.tell({ text: asDone(this.#door.canUndo() ?? ''), lasts: 'plain' });
  }

  #back(before: Notebook, done: Applied | null, word: string): void {
    if (this.#trial) this.#trial = null;
    if (!done) return;
    const chosen = this.#chosen;
    this.#writing = null;
    this.#changed(done.ran);
    this.tell({ text: `${word}: ${done.change.say}`, lasts: 'plain' });
    const now = this.#door.notebook;
    const cell = firstOther(before, now) ?? (this.#chosen === chosen ? null : this.#chosen);
    if (cell === null) return;
    const place = firstOtherPlace(before, now, cell);
    if (place) {
      const id = this.#door.rows(cell)?.[place.row]?.[place.column] ?? null;
      this.bringRow({ cell, ...place, id }, 'stays');
      return;
    }
    this.choose(cell);
    this.#happen({ kind: 'bring', cell, keyboard: 'stays' });
  }

  #changed(ran: readonly CellId[]): void {
    const gone = this.#chosen !== null && !this.cell(this.#chosen);
    if (gone) this.#chosen = null;
    // Rows come, go and move: the cell is the same one wherever it stands now.
    this.#within = this.#within && standingIn(this.#door, this.#within);
    const problems = problemsBy(this.#door);
    this.#redraw([...ran, ...toldOtherwise(this.#problems, problems)]);
    this.#problems = problems;
    this.#happen({ kind: 'changed', ran });
    // Some row is always chosen, so that the keyboard can come back to the page.
    if (!gone) return;
    const cells = allCells(this.#door.notebook);
    this.choose((cells[this.#place] ?? cells.at(-1))?.id ?? null);
  }

  #holds(): boolean {
    if (this.#held) this.tell(this.#held);
    return this.#held !== null;
  }

  #quiet(): void {
    // Why something was not done is over once it was done otherwise.
    const over = this.#notice?.lasts === 'plain' || this.#notice === this.#refused;
    if (this.#notice && over) this.tell(null);
    this.#refused = null;
  }

  #redraw(cells: readonly (CellId | null)[]): void {
    this.#hearers.redraw(cells);
  }

  #happen(happening: Happening): void {
    this.#hearers.tell(happening);
  }
}
