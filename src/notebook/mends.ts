// Ways to mend what is pointed out: each a described change with a short label, made in one step that undo takes back.
// A report's own fixes rewrite its formula; the others rename, take a remark away, put a given or a row in.
import type { Outcome } from '../engine/outcome.ts';
import type { Reading } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import type { Holds } from '../quantity/form.ts';
import type { ShowSettings } from '../quantity/show.ts';
import type { Fix } from '../words/report.ts';
import type { CellState } from '../engine/outcome.ts';
import type { Finding, Splice } from './document.ts';
import { cellMends, draftMends } from './cell-mends.ts';
import { rowMends } from './row-mends.ts';
import { findingMends } from './finding-mends.ts';
import type { NotebookText } from './notebook-text.ts';

/** What a mend does. */
export type Mending =
  | { readonly kind: 'formula'; readonly cell: CellId; readonly formula: string }
  | { readonly kind: 'by-hand'; readonly cell: CellId; readonly formula: string | null }
  | { readonly kind: 'name'; readonly cell: CellId; readonly name: string }
  | { readonly kind: 'part-name'; readonly part: string; readonly name: string }
  | {
      readonly kind: 'new-cell';
      readonly part: string;
      readonly after: CellId | null;
      readonly name: string;
      readonly formula: string;
    }
  | { readonly kind: 'remark'; readonly cell: CellId; readonly word: string; readonly text: string }
  | { readonly kind: 'no-remark'; readonly cell: CellId; readonly word: string }
  | {
      readonly kind: 'row-cell';
      readonly cell: CellId;
      readonly row: number;
      readonly column: number;
      readonly text: string;
    }
  | { readonly kind: 'new-row'; readonly cell: CellId; readonly texts: readonly string[] }
  | {
      readonly kind: 'column-formula';
      readonly cell: CellId;
      readonly column: number;
      readonly formula: string;
    }
  | {
      readonly kind: 'column-name';
      readonly cell: CellId;
      readonly column: number;
      readonly name: string;
    }
  /** Stretches of the notebook's text. */
  | { readonly kind: 'text'; readonly splices: readonly Splice[] };

export interface Mend {
  /** A short label for a button, e.g. `Call it "Width 2"`. */
  readonly say: string;
  readonly does: Mending;
}

/** What mends ask of an estimate. */
export interface Mendable {
  readonly notebook: NotebookText;
  state(cell: CellId): CellState;
  /** The cells of a table, row by row. */
  rows(cell: CellId): readonly (readonly CellId[])[] | null;
  /** How a cell is called in a formula of this cell. */
  say(cell: CellId, within: CellId): string;
  /** The last good value as it was shown. */
  last(cell: CellId): string | null;
  shown(cell: CellId): string | null;
  draft(
    part: string,
    cell: CellId | null,
    text: string,
  ): { readonly reading: Reading; readonly outcome: Outcome; readonly holds: Holds | null };
  /** How values are shown here. */
  readonly show: ShowSettings;
  /** The names of all tables that can be read from. */
  tableNames(): readonly string[];
}

/** Is it something wrong, to be mended? Otherwise the owner looks at it and decides. */
export function isToMend({ code }: Pick<Finding, 'code'>): boolean {
  return !TO_LOOK_AT.has(code);
}

const TO_LOOK_AT: ReadonlySet<string> = new Set([
  'not-yet-known',
  'set-by-hand',
  'check-fails',
  'given-without-source',
  'assumed-amount',
  'outside-limits',
  'other-share',
  'set-in-row',
  'text-or-name',
  'blank-in-table',
]);

/** Of a cell that is at fault; none where it is not, or where nobody but its owner knows. */
export function mendsOfCell(estimate: Mendable, cell: CellId): readonly Mend[] {
  return cellMends(estimate, cell);
}

/** Of a formula that is being written for a cell. */
export function mendsOfDraft(estimate: Mendable, cell: CellId, formula: string): readonly Fix[] {
  return draftMends(estimate, cell, formula);
}

/** Of anything that is pointed out. */
export function mendsOfFinding(estimate: Mendable, finding: Finding): readonly Mend[] {
  const { cell, place } = finding;
  if (cell === null) return findingMends(estimate, finding);
  if (place) return rowMends(estimate, cell, place, finding.code);
  const { outcome } = estimate.state(cell);
  if (outcome.kind === 'fault' && outcome.report.code === finding.code) {
    return cellMends(estimate, cell);
  }
  return findingMends(estimate, finding);
}
