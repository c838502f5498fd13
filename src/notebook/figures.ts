// An estimate as plain values for machines: what `figure --json` prints. Its shape is src/figure.schema.json.
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Shown } from '../quantity/show.ts';
import type { Cell, Table } from './document.ts';
import type { Estimate } from './estimate.ts';
import { cellsOf } from './lines.ts';
import { COST_KINDS, type CostRow } from './recap.ts';
import { sourceOf } from './remarks.ts';

export interface CellFigure {
  readonly part: string;
  readonly name: string;
  readonly kind: 'given' | 'worked' | 'check';
  readonly formula: string;
  readonly readAs: string;
  readonly shown: string | null;
  readonly exact: string | null;
  readonly unit: string | null;
  readonly holds: boolean | null;
  readonly range: RangeFigure | null;
  readonly byHand: boolean;
  readonly from: string | null;
  readonly incomplete: boolean;
  readonly error: ErrorFigure | null;
  readonly waitsFor: readonly string[];
}

export interface RangeFigure {
  readonly plain: 'first' | 'middle';
  readonly best: EndFigure;
  readonly worst: EndFigure;
}

export type EndFigure = Pick<CellFigure, 'exact' | 'unit'> & { readonly shown: string };

export interface TableFigure {
  readonly part: string;
  readonly name: string;
  readonly from: string | null;
  readonly columns: readonly { readonly name: string; readonly formula: string | null }[];
  /** Row by row, in the order of the columns. */
  readonly rows: readonly (readonly CellFigure[])[];
}

export interface ErrorFigure {
  readonly code: string;
  readonly message: string;
  readonly spots: readonly { readonly from: number; readonly to: number }[];
  readonly fixes: readonly string[];
}

export type RowFigure = Omit<CostRow, 'incomplete'> & { readonly incomplete: boolean };

export interface Figures {
  readonly title: string;
  readonly cells: readonly CellFigure[];
  readonly tables: readonly TableFigure[];
  readonly costs: {
    readonly parts: readonly (RowFigure & { readonly part: string })[];
    readonly total: RowFigure;
  };
  readonly problems: readonly {
    readonly code: string;
    readonly message: string;
    readonly part: string | null;
    readonly cell: string | null;
  }[];
}

export function figuresOf(estimate: Estimate): Figures {
  const { notebook } = estimate;
  const costs = estimate.costs();
  const partNames = new Map(notebook.parts.map((part) => [part.key, part.name]));
  const nameOf = (id: CellId): string => estimate.state(id).input.name;
  return {
    title: notebook.title,
    cells: notebook.parts.flatMap((part) =>
      cellsOf(part)
        .filter((cell) => cell.table === null)
        .map((cell) => cellFigure(estimate, part.name, cell, nameOf)),
    ),
    tables: notebook.parts.flatMap((part) =>
      cellsOf(part).flatMap((cell) =>
        cell.table ? [tableFigure(estimate, part.name, cell, cell.table, nameOf)] : [],
      ),
    ),
    costs: {
      parts: costs.parts.map((row) => ({ part: row.part, ...rowFigure(row) })),
      total: rowFigure(costs.total),
    },
    problems: estimate.findings().map(({ code, message, part, cell }) => ({
      code,
      message,
      part: part === null ? null : (partNames.get(part) ?? null),
      cell: cell === null ? null : nameOf(cell),
    })),
  };
}

function tableFigure(
  estimate: Estimate,
  part: string,
  cell: Cell,
  table: Table,
  nameOf: (id: CellId) => string,
): TableFigure {
  const rows = estimate.rows(cell.id) ?? [];
  return {
    part,
    name: cell.name,
    from: sourceOf(cell.remarks),
    columns: table.columns.map(({ name, formula }) => ({ name, formula })),
    rows: rows.map((ids) =>
      ids.map((id) => {
        const { name, formula } = estimate.state(id).input;
        return cellFigure(estimate, part, { id, name, formula, remarks: [] }, nameOf);
      }),
    ),
  };
}

function cellFigure(
  estimate: Estimate,
  part: string,
  cell: Pick<Cell, 'id' | 'name' | 'formula' | 'remarks'>,
  nameOf: (id: CellId) => string,
): CellFigure {
  const state = estimate.state(cell.id);
  const { outcome } = state;
  const shown = estimate.shown(cell.id);
  const value = outcome.kind === 'value' ? outcome.value : null;
  return {
    part,
    name: cell.name,
    kind: state.kind,
    formula: cell.formula,
    readAs: state.reading.sentence,
    shown: shown?.text ?? null,
    exact: shown && shown.exact !== '' ? shown.exact : null,
    unit: shown?.unit ?? null,
    holds: typeof value === 'boolean' ? value : null,
    range: rangeFigure(estimate, cell.id),
    byHand: state.input.byHand !== null,
    from: sourceOf(cell.remarks),
    incomplete: outcome.kind === 'value' && outcome.leftOut.length > 0,
    error: errorFigure(state),
    waitsFor: waitedFor(outcome, cell.id).map(nameOf),
  };
}

function rangeFigure(estimate: Estimate, cell: CellId): RangeFigure | null {
  const shown = estimate.shownRange(cell);
  const { range } = estimate.state(cell);
  if (!shown || !range) return null;
  const end = ({ text, exact, unit }: Shown): EndFigure => ({ shown: text, exact, unit });
  return { plain: range.plain, best: end(shown.best), worst: end(shown.worst) };
}

function errorFigure({ outcome }: CellState): ErrorFigure | null {
  if (outcome.kind !== 'fault') return null;
  const { code, headline, explanation, spots, fixes } = outcome.report;
  return {
    code,
    message: `${headline} ${explanation}`,
    spots: spots.map(({ from, to }) => ({ from, to })),
    fixes: fixes.map((fix) => fix.formula),
  };
}

/** A `?` waits for nobody but its owner. */
function waitedFor(outcome: Outcome, self: CellId): readonly CellId[] {
  if (outcome.kind !== 'unknown' && outcome.kind !== 'waiting') return [];
  return outcome.for.filter((id) => id !== self);
}

function rowFigure(row: CostRow): RowFigure {
  const { lines, direct, price, incomplete } = row;
  const kinds = Object.fromEntries(COST_KINDS.map((kind) => [kind, row[kind]])) as Record<
    (typeof COST_KINDS)[number],
    string
  >;
  return { lines, ...kinds, direct, price, incomplete: incomplete.length > 0 };
}
