// What comes of reading one formula, and what reading needs to be told: the door of this floor.
import type { Report } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';
import type { Holds } from '../quantity/form.ts';
import type { CellId, Formula, RecapScope } from './tree.ts';
import type { Checked } from './plan.ts';

/** A cell as the language knows it: where it stands and how it is called. */
export interface NamedCell {
  readonly id: CellId;
  readonly name: string;
  /** The key of its part: see `PartName`. */
  readonly part: string;
}

/** A part of the job. `key` is stable and unique; `name` is what stands in the heading. */
export interface PartName {
  readonly key: string;
  readonly name: string;
}

/** A formula after its names were found: enough to order the cells, before anything is measured. */
export interface Scan {
  readonly text: string;
  /** The part in which the formula stands and the cell it belongs to. */
  readonly part: string;
  readonly self: CellId | null;
  /** Cells it names, without repeats, in order of mention. */
  readonly mentions: readonly CellId[];
  /** Recap phrases in it, whose lines it also needs. */
  readonly recaps: readonly RecapScope[];
  /** Columns that a phrase asks about, as a whole, without repeats. */
  readonly columns: readonly CellId[];
  /** Words of the formula, lower case, for an index from words to formulas. */
  readonly words: readonly string[];
  /** A single written amount and nothing else: a given. */
  readonly given: boolean;
  /** For this floor only. */
  readonly inner: unknown;
}

/** What reading asks of whoever holds the cells. */
export interface Surroundings {
  /** What a cell holds, or null when it can't be told: at fault, or it waits for something at fault. */
  holdsOf(cell: CellId): Holds | null;
  /** The name of a cell, for messages. */
  nameOf(cell: CellId): string;
  /** The shown value of a cell for messages (`12 ft`), or null. */
  shownOf(cell: CellId): string | null;
  /** The cost lines of a recap, in notebook order. */
  linesOf(scope: RecapScope): readonly CellId[];
}

export interface Reading {
  readonly tree: Formula;
  /** Null where it can't be worked: a problem, or a cell it names has none. */
  readonly checked: Checked | null;
  /** The formula said back in tidy words (`readAs`); as far as it could be read. */
  readonly sentence: string;
  /** What the reader decided on its own, one short sentence each: "40 is read as 40 hours". */
  readonly notes: readonly string[];
  readonly problems: readonly Report[];
  /** Cells at fault that keep this one waiting; empty when there is a problem or a result. */
  readonly waitsFor: readonly CellId[];
}

/** What a spot in the formula is, for highlighting and ties under the words. */
export interface Mark extends Spot {
  readonly kind: 'name' | 'amount' | 'operator' | 'phrase' | 'unread';
  readonly cell: CellId | null;
  /** The column that a phrase about a table names here. */
  readonly column?: CellId;
}
