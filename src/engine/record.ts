// All that is kept of a cell between changes.
import type { Dec } from '../quantity/decimal.ts';
import type { Holds } from '../quantity/form.ts';
import type { Scan } from '../language/reading.ts';
import type { CellId, RecapScope } from '../language/tree.ts';
import { FAULT_OF_TEXT, Fault, type Held, Waiting, bare, isNoValue } from './held.ts';
import type { Slot } from './graph.ts';
import type { CellInput } from './outcome.ts';
import type { Side } from './sides.ts';
import type { EngineTable, PlaceInTable, TableColumn } from './tables.ts';

export interface LastGood {
  readonly value: Dec | boolean | string;
  readonly holds: Holds;
}

export interface Scans {
  readonly formula: Scan;
  /** Of what is set by hand. */
  readonly hand: Scan | null;
}

export class CellRecord {
  readonly slot: Slot;
  input: CellInput;
  /** Fresh scans that have not been read yet. */
  scans: Scans | null = null;
  given = false;
  recaps: readonly RecapScope[] = NO_RECAPS;
  /** The lines of each recap, as they were last read. */
  lines: readonly (readonly CellId[])[] = [];
  /** Its text, or what a cell that it names holds, has changed since it was read. */
  stale = true;
  /** What readers are told that it holds: nothing while it is in a circle. */
  told: Holds | null = null;
  formula: Side = NOT_YET;
  hand: Side | null = null;
  /** The last value it had, and what that held; null if never. */
  lastGood: LastGood | null = null;
  /** The table it holds, where in a table it stands, or the whole column that it stands for. */
  table: EngineTable | null = null;
  place: PlaceInTable | null = null;
  column: TableColumn | null = null;

  constructor(slot: Slot, input: CellInput) {
    this.slot = slot;
    this.input = input;
  }

  get id(): CellId {
    return this.input.id;
  }

  /** The side whose value is used. */
  get used(): Side {
    return this.hand ?? this.formula;
  }

  /** Messages hold names and values, so what has a problem is read again whenever those may have changed. */
  get hasProblem(): boolean {
    return this.formula.fault !== null || (this.hand !== null && this.hand.fault !== null);
  }

  /** What readers of this cell see: they wait for it when it has no value, but for a `?`. */
  forReaders(): Held {
    const { held } = this.used;
    return held instanceof Fault || held instanceof Waiting ? new Waiting([this.id]) : held;
  }

  keepLastGood(): void {
    const { held, holds } = this.used;
    if (isNoValue(held) || holds === null) return;
    const value = bare(held);
    const { lastGood } = this;
    if (lastGood?.value !== value || lastGood.holds !== holds) this.lastGood = { value, holds };
  }

  /** A value from before, where it has had none of its own. */
  recall(last: LastGood): void {
    this.lastGood ??= last;
  }
}

const NO_RECAPS: readonly RecapScope[] = [];

const NOT_YET: Side = {
  reading: {
    tree: { kind: 'hole', spot: { from: 0, to: 0 } },
    checked: null,
    sentence: '',
    notes: [],
    problems: [],
    waitsFor: [],
  },
  work: null,
  holds: null,
  fault: null,
  held: FAULT_OF_TEXT,
};
