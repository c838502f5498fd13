// What the engine is told of the notebook: each cell, and after an edit only those that changed.
import type { CellInput, TableInput } from '../engine/outcome.ts';
import { type CellEdit, Workings } from '../engine/workings.ts';
import type { CellId } from '../language/tree.ts';
import { REFERENCE_TABLES } from '../reference/tables.ts';
import { Nouns } from '../quantity/nouns.ts';
import type { ShowSettings } from '../quantity/show.ts';
import type { Cell, Table } from './document.ts';
import type { Section } from './identified.ts';
import type { NotebookText } from './notebook-text.ts';
import { remarkText } from './remarks.ts';

/** A cell as the engine is told it. */
export function inputOf(cell: Cell): CellInput {
  const { id, part, name, formula, money } = cell;
  const choices = remarkText(cell.remarks, 'choices');
  const table = cell.table && tableInput(cell.table);
  const byHand = table ? null : remarkText(cell.remarks, 'by hand');
  return { id, part, name, formula, byHand, money, choices, table };
}

/** Tables with the same source are one and the same to the engine. */
function tableInput(table: Table): TableInput {
  let input = inputs.get(table);
  if (!input) {
    const columns = table.columns.map(({ name, formula }) => ({ name, formula }));
    input = { columns, rows: table.rows.map((row) => row.texts) };
    inputs.set(table, input);
  }
  return input;
}

const inputs = new WeakMap<Table, TableInput>();

/** Counted things and manner of showing, from the notebook's settings and further counted things. */
export function settingsOf(
  notebook: NotebookText,
  further: readonly string[] = [],
): { readonly nouns: Nouns; readonly show: ShowSettings } {
  const { counted, currency, fractions, measures } = notebook.settings;
  const nouns = new Nouns([...counted, ...further]);
  return { nouns, show: { currency, fractions, measures, many: (noun) => nouns.many(noun) } };
}

/** All of the notebook, worked from nothing. */
export function worked(notebook: NotebookText, settings: ReturnType<typeof settingsOf>): Workings {
  const workings = new Workings({ ...settings, reference: REFERENCE_TABLES });
  workings.load(
    notebook.sections.map(({ key, name }) => ({ key, name })),
    notebook.sections.flatMap((s) => s.cells.map(inputOf)),
  );
  return workings;
}

/** The edits that bring the engine from one notebook to the next. */
export function cellEdits(before: NotebookText, now: NotebookText): readonly CellEdit[] {
  const edits: CellEdit[] = [];
  const shared = new Set<Section>(before.sections);
  const old = new Map<CellId, Cell>();
  const kept = new Set(now.sections);
  for (const section of before.sections) {
    if (!kept.has(section)) for (const cell of section.cells) old.set(cell.id, cell);
  }
  const put: CellEdit[] = [];
  for (const section of now.sections) {
    if (shared.has(section)) continue;
    for (const cell of section.cells) {
      const was = old.get(cell.id);
      old.delete(cell.id);
      if (!was || !isSameCell(was, cell)) put.push({ kind: 'put', cell: inputOf(cell) });
    }
  }
  if (partsDiffer(before.sections, now.sections)) {
    edits.push({ kind: 'parts', parts: now.sections.map(({ key, name }) => ({ key, name })) });
  }
  for (const id of old.keys()) edits.push({ kind: 'drop', id });
  edits.push(...put);
  if (orderDiffers(before.sections, now.sections)) {
    edits.push({ kind: 'order', ids: now.sections.flatMap((s) => s.cells.map((c) => c.id)) });
  }
  return edits;
}

/** A table is compared by its source: its rows may be thousands. */
function isSameCell(a: Cell, b: Cell): boolean {
  const sameTable =
    a.table === b.table || (a.table && b.table ? a.table.source === b.table.source : false);
  return sameTable && isSameInput(inputOf(a), inputOf(b));
}

function isSameInput(a: CellInput, b: CellInput): boolean {
  return (
    a.part === b.part &&
    a.name === b.name &&
    a.formula === b.formula &&
    a.byHand === b.byHand &&
    a.choices === b.choices &&
    a.money?.line === b.money?.line &&
    a.money?.kind === b.money?.kind
  );
}

function partsDiffer(a: readonly Section[], b: readonly Section[]): boolean {
  return a.length !== b.length || a.some((s, i) => s.key !== b[i].key || s.name !== b[i].name);
}

function orderDiffers(a: readonly Section[], b: readonly Section[]): boolean {
  if (a.length !== b.length) return true;
  return a.some(
    (s, i) =>
      s !== b[i] &&
      (s.cells.length !== b[i].cells.length || s.cells.some((c, j) => c.id !== b[i].cells[j].id)),
  );
}
