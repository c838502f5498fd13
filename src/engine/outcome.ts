// What a cell comes to: a value, or why there is none yet. Errors are values here; nothing throws.
import type Decimal from 'decimal.js';
import type { Report } from '../words/report.ts';
import type { Holds } from '../quantity/form.ts';
import type { SizesTold } from '../language/size-table.ts';
import type { CellId } from '../language/tree.ts';
import type { Reading } from '../language/reading.ts';
import type { GivenRange } from './ranges.ts';
import { type Fault, type Held, Unknown, Waiting, bare, leftOutOf } from './held.ts';

export type Value = Decimal | boolean | string;

export type Outcome =
  | {
      readonly kind: 'value';
      readonly value: Value;
      /** Lines that a total under this left out because they are not yet known or at fault; no repeats. */
      readonly leftOut: readonly CellId[];
    }
  /** Needs a `?`: `for` are the givens still to come (itself for a `?`). */
  | { readonly kind: 'unknown'; readonly for: readonly CellId[] }
  /** A cell it needs is at fault; `for` are the nearest cells it names that have no value. */
  | { readonly kind: 'waiting'; readonly for: readonly CellId[] }
  /** This cell itself is at fault: can't be read, circle, division by zero. */
  | { readonly kind: 'fault'; readonly report: Report };

/** A table as the engine is told it: texts as written, `''` where nothing stands. */
export interface TableInput {
  readonly columns: readonly { readonly name: string; readonly formula: string | null }[];
  readonly rows: readonly (readonly string[])[];
}

/** A table of the trade: every formula can read from it by name, unless the notebook has a table of that name. */
export interface ReferenceTable {
  readonly name: string;
  /** Where it comes from, with its edition. */
  readonly source: string;
  /** What to heed where the work can hurt someone. */
  readonly caution: string | null;
  readonly table: TableInput;
  /** Where its rows are sizes with dimensions of their own, such as 2x8. */
  readonly sizes?: SizesTold;
}

/** A cell as the engine is told it. */
export interface CellInput {
  readonly id: CellId;
  readonly part: string;
  readonly name: string;
  /** The formula as typed; the text after `Name: `. */
  readonly formula: string;
  /** The text of `by hand`, or null. */
  readonly byHand: string | null;
  /** A cost line or a price line: its amount is rounded to the cent everywhere. Null: neither. */
  readonly money:
    | { readonly line: 'cost'; readonly kind: import('../language/tree.ts').CostKind }
    | { readonly line: 'price'; readonly kind: string }
    | null;
  /** The table it holds in place of a formula. */
  readonly table?: TableInput | null;
  /** What may be chosen for it: `pine, hem-fir`, or `species of joist spans`. */
  readonly choices?: string | null;
  /** Of a cell in a row: the cell that holds the table. */
  readonly inTable?: CellId;
  /** Of a table of the trade and the cells in it: where the figures come from, and what to heed. */
  readonly source?: string | null;
  readonly caution?: string | null;
}

/** All that the engine knows of a cell. */
export interface CellState {
  readonly input: CellInput;
  readonly kind: 'given' | 'worked' | 'check';
  readonly reading: Reading;
  /** What the used value holds; null when at fault. */
  readonly holds: Holds | null;
  /** The value used: by hand where set by hand. */
  readonly outcome: Outcome;
  /** What the formula itself comes to, beside a value set by hand; equal to `outcome` otherwise. */
  readonly worked: Outcome;
  /** What the formula itself holds; equal to `holds` where nothing is set by hand. */
  readonly workedHolds: Holds | null;
  /** What a given is at best and at worst, where it says so and is not set by hand; null elsewhere. */
  readonly range: GivenRange | null;
  /** The last good value and what it held, for greyed display while at fault or waiting; null if never. */
  readonly lastGood: { readonly value: Value; readonly holds: Holds } | null;
  /** Cells its formula names and recap lines it adds (edges of the graph). */
  readonly needs: readonly CellId[];
  /** Cells whose formulas need it. */
  readonly goesInto: readonly CellId[];
}

/** What there is to see of a cell without asking how it reads or what it goes into. */
export type Glance = Pick<CellState, 'input' | 'kind' | 'holds' | 'outcome'>;

/** The outcome of what is no fault; a fault needs words first. */
export function outcomeOf(held: Exclude<Held, Fault>): Outcome {
  if (held instanceof Unknown) return { kind: 'unknown', for: held.for };
  if (held instanceof Waiting) return { kind: 'waiting', for: held.for };
  return { kind: 'value', value: bare(held), leftOut: leftOutOf(held) };
}
