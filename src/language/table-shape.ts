// What the language knows of a table: its columns by name, the cells in them, and the texts of a column of text.
import type { CellId } from './tree.ts';

export interface TableShape {
  readonly id: CellId;
  readonly name: string;
  /** The key of its part. */
  readonly part: string;
  readonly columns: readonly ColumnShape[];
  /** What to heed where its figures are used. */
  readonly caution: string | null;
  /** How many rows. */
  readonly rows: number;
}

export interface ColumnShape {
  /** Stands for the cell of this column in whatever row a formula is worked. */
  readonly id: CellId;
  readonly name: string;
  /** Its cells from the first row to the last. */
  readonly cells: readonly CellId[];
  /** Cells in which nothing stands and nothing is worked. */
  readonly blanks: readonly CellId[];
  /** What stands in a column of text, without repeats; null for any other column. */
  readonly texts: readonly string[] | null;
}
