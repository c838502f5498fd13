// What the language is handed of sizes that have dimensions of their own, such as 2x8 or #4: it knows none by itself.
import type { TableShape } from './table-shape.ts';

/** How a table of sizes answers what is asked of one of its rows. */
export interface SizesTold {
  /** The column that the sizes stand in. */
  readonly column: string;
  /** A thing that is always of such a size (`10 #4 bars`); null where any thing may be. */
  readonly noun: string | null;
  /** What may be asked of a size. */
  readonly figures: readonly FigureTold[];
  /** Figures that are offered where a size stands in place of a length. */
  readonly lengths: readonly string[];
  /** What so many of one size and length are sold by: these columns times the length; in this unit (its key). */
  readonly sold: { readonly columns: readonly string[]; readonly unit: string };
  /** What `22 2x8 x 14 ft` comes to where nothing around it says: what it is sold by, or its length. */
  readonly usual: 'sold' | 'run';
}

/** `actual width of …` reads the column `width`. */
export interface FigureTold {
  readonly say: string;
  /** Other words for it. */
  readonly also: readonly string[];
  readonly column: string;
  /** Words that a size has to follow at once: `weight of #4`, since a weight may be of anything. */
  readonly beforeSize: boolean;
}

/** A table of sizes that every notebook can read from. */
export interface SizeTable {
  readonly name: string;
  readonly told: SizesTold;
  /** By size; each row by its columns, as the table has them. */
  readonly rows: ReadonlyMap<string, ReadonlyMap<string, string>>;
  /** Its shape, once a formula needs its cells. */
  shape(): TableShape | null;
}

/** The size that this text is, however it is typed, and its table. */
export function sizeOf(
  tables: readonly SizeTable[],
  text: string,
): { readonly table: SizeTable; readonly size: string } | null {
  const size = text.replace(/\s+/g, '').replace('×', 'x').toLowerCase();
  const table = tables.find(({ rows }) => rows.has(size));
  return table ? { table, size } : null;
}

/** What the table says of a size under the words of a figure: `7 1/4 in`. */
export function figureOfSize(table: SizeTable, size: string, say: string): string | null {
  const column = table.told.figures.find((figure) => figure.say === say)?.column;
  return column === undefined ? null : (table.rows.get(size)?.get(column) ?? null);
}
