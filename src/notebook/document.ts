// The notebook as a value: one CommonMark text and what stands where in it.
// The text is the truth; everything here is read from it and points back into it.
import type { Spot } from '../words/spot.ts';
import type { CellId, CostKind } from '../language/tree.ts';

/** Offsets here are into the notebook's text. */
export interface Remark {
  /** `from`, `sensible`, `choices`, `cost`, `price`, `buy`, `caution`, `picture`, `client`, `note`, `moves with`, `by hand`; null: not known (pointed out, never dropped). */
  readonly kind: RemarkKind | null;
  /** As written before the colon. */
  readonly word: string;
  readonly text: string;
  readonly spot: Spot;
  readonly textSpot: Spot;
}

export type RemarkKind =
  | 'from'
  | 'sensible'
  | 'choices'
  | 'cost'
  | 'price'
  | 'buy'
  | 'caution'
  | 'picture'
  | 'recap'
  | 'client'
  | 'note'
  | 'moves with'
  | 'by hand';

export type MoneyLine =
  | { readonly line: 'cost'; readonly kind: CostKind }
  | { readonly line: 'price'; readonly kind: PriceKind };

/** What stands between direct cost and price. */
export type PriceKind = 'overhead' | 'contingency' | 'markup' | 'discount' | 'tax';

/** Places in a table are told from the start of its cell (`cell.spot.from`): an edit above leaves them as they are. */
export interface Table {
  /** From the first bar of its header to the end of its last row, with the line break. */
  readonly spot: Spot;
  /** These lines as written: two tables with the same source say the same. */
  readonly source: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
}

/** A header of a table: `name`, or `name: formula` for every row that says nothing else. */
export interface TableColumn {
  readonly name: string;
  readonly formula: string | null;
  readonly nameSpot: Spot;
  readonly formulaSpot: Spot;
  /** Both of them. */
  readonly spot: Spot;
}

export interface TableRow {
  /** One a column, as written; `''` where nothing stands. */
  readonly texts: readonly string[];
  /** Its line without the blanks around it. */
  readonly spot: Spot;
}

export interface Cell {
  readonly id: CellId;
  /** Key of its part. */
  readonly part: string;
  readonly name: string;
  readonly nameSpot: Spot;
  readonly formula: string;
  readonly formulaSpot: Spot;
  /** The whole list item with its remarks, up to and including its last line break. */
  readonly spot: Spot;
  readonly remarks: readonly Remark[];
  /** From its `cost` or `price` remark. */
  readonly money: MoneyLine | null;
  /** The table in its list item; such a cell has no formula. Null: none. */
  readonly table: Table | null;
}

/** What stands in a part, in order: cells, deeper headings and prose. */
export type Block =
  | { readonly kind: 'cell'; readonly cell: Cell }
  | { readonly kind: 'heading'; readonly level: number; readonly text: string; readonly spot: Spot }
  /** `markdown` is the source of a paragraph, list of plain items, quote …; shown as text, never as HTML. */
  | { readonly kind: 'prose'; readonly markdown: string; readonly spot: Spot };

export interface Part {
  /** Stable through edits and renames; `''` is what stands before the first part heading. */
  readonly key: string;
  readonly name: string;
  readonly nameSpot: Spot;
  /** From its heading to the next part. */
  readonly spot: Spot;
  readonly blocks: readonly Block[];
}

export interface Settings {
  /** One currency a notebook; `$` unless set. */
  readonly currency: string;
  /** Extra counted things, singular. */
  readonly counted: readonly string[];
  /** Fractions of an inch: 16 for 1/16 in. */
  readonly fractions: number;
  readonly measures: 'us' | 'metric';
}

export interface Notebook {
  readonly text: string;
  readonly title: string;
  readonly titleSpot: Spot | null;
  readonly settings: Settings;
  readonly parts: readonly Part[];
  /** Things about the text itself: two cells with one name, a remark not known, a cell without a formula … */
  readonly findings: readonly Finding[];
}

/** Something to point out, on a cell or on the notebook. */
export interface Finding {
  readonly code: string;
  readonly message: string;
  readonly part: string | null;
  readonly cell: CellId | null;
  /** In the notebook's text. */
  readonly spot: Spot | null;
  /** Of a cell in a table's row: where in it. */
  readonly place?: { readonly row: number; readonly column: number };
  /** The other cell that it is about. */
  readonly about?: CellId;
}

/** One replaced stretch of the text. */
export interface Splice {
  readonly from: number;
  readonly to: number;
  readonly insert: string;
}

/** A described change: what it replaces and what to call it when it is undone. Splices don't overlap and stand in order. */
export interface Change {
  readonly say: string;
  readonly splices: readonly Splice[];
}
