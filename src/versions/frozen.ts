// All that an estimate comes to, as it is frozen in a snapshot: exact values, where they come from, and totals.
import type { Estimate } from '../notebook/estimate.ts';
import { type CellFigure, type RowFigure, figuresOf } from '../notebook/figures.ts';

export interface FrozenCell {
  readonly part: string;
  readonly name: string;
  /** As written. */
  readonly formula: string;
  readonly shown: string | null;
  /** Exact decimal text in `unit`. */
  readonly exact: string | null;
  readonly unit: string | null;
  /** Of a check. */
  readonly holds: boolean | null;
  readonly byHand: boolean;
  readonly from: string | null;
  /** A total that leaves lines out. */
  readonly incomplete: boolean;
  /** The code of what is wrong with it. */
  readonly error: string | null;
}

export interface FrozenTable {
  readonly part: string;
  readonly name: string;
  readonly from: string | null;
  readonly columns: readonly string[];
  /** Row by row, in the order of the columns. */
  readonly rows: readonly (readonly FrozenCell[])[];
}

/** Money is decimal text with two places. */
export type FrozenRow = Readonly<RowFigure>;

export interface Frozen {
  readonly cells: readonly FrozenCell[];
  readonly tables: readonly FrozenTable[];
  readonly parts: readonly (FrozenRow & { readonly part: string })[];
  readonly total: FrozenRow;
  readonly currency: string;
}

export function frozenOf(estimate: Estimate): Frozen {
  const { cells, tables, costs } = figuresOf(estimate);
  return {
    cells: cells.map(frozenCell),
    tables: tables.map(({ part, name, from, columns, rows }) => ({
      part,
      name,
      from,
      columns: columns.map((column) => column.name),
      rows: rows.map((row) => row.map(frozenCell)),
    })),
    parts: costs.parts,
    total: costs.total,
    currency: estimate.notebook.settings.currency,
  };
}

function frozenCell(cell: CellFigure): FrozenCell {
  const { part, name, formula, shown, exact, unit, holds, byHand, from, incomplete } = cell;
  const error = cell.error?.code ?? null;
  return { part, name, formula, shown, exact, unit, holds, byHand, from, incomplete, error };
}
