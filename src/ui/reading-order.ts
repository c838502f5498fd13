// The cells of a notebook in the order in which they are read, found once for each notebook.
import type { CellId } from '../language/tree.ts';
import type { Cell, Notebook } from '../notebook/document.ts';

/** A notebook is a value, so what was found in it holds for as long as it is kept. */
const found = new WeakMap<Notebook, readonly Cell[]>();
const byId = new WeakMap<Notebook, ReadonlyMap<CellId, Cell>>();

export function allCells(notebook: Notebook): readonly Cell[] {
  const known = found.get(notebook);
  if (known) return known;
  const cells = notebook.parts.flatMap((part) =>
    part.blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell] : [])),
  );
  found.set(notebook, cells);
  return cells;
}

export function cellOf(notebook: Notebook, id: CellId): Cell | null {
  const known = byId.get(notebook) ?? new Map(allCells(notebook).map((cell) => [cell.id, cell]));
  byId.set(notebook, known);
  return known.get(id) ?? null;
}

/** The first cell of this name in the part of this name, whatever the case. */
export function cellCalled(notebook: Notebook, part: string, name: string): Cell | null {
  const wanted = name.toLowerCase();
  const keys = new Set(notebook.parts.filter((p) => p.name === part).map((p) => p.key));
  return (
    allCells(notebook).find((cell) => keys.has(cell.part) && cell.name.toLowerCase() === wanted) ??
    null
  );
}

/**
 * The cell that was moved; else the first that has another name or was not there, or whose table has other columns;
 * else the first that reads otherwise. What was written anew because of a name is not where it changed.
 */
export function firstOther(before: Notebook, now: Notebook): CellId | null {
  const moved = movedCell(before, now);
  if (moved !== null) return moved;
  const all = allCells(now).map((cell) => [cell, cellOf(before, cell.id)] as const);
  const first =
    all.find(([cell, was]) => !was || was.name !== cell.name) ??
    all.find(([cell, was]) => headsOf(was) !== headsOf(cell)) ??
    all.find(([cell, was]) => !was || says(was) !== says(cell));
  return first?.[0].id ?? null;
}

/** Where in a table that stood before and stands now something is other than it was; row -1 is its header. */
export function firstOtherPlace(
  before: Notebook,
  now: Notebook,
  id: CellId,
): { readonly row: number; readonly column: number } | null {
  const cell = cellOf(now, id);
  const was = cellOf(before, id);
  if (!cell?.table || !was?.table || cell.name !== was.name) return null;
  const [old, fresh] = [was.table, cell.table];
  if (old.source === fresh.source) return null;
  const lastColumn = fresh.columns.length - 1;
  const column = fresh.columns.findIndex((c, k) => {
    const other = old.columns[k];
    return other?.name !== c.name || other.formula !== c.formula;
  });
  if (column >= 0 || old.columns.length !== fresh.columns.length) {
    return { row: -1, column: column < 0 ? lastColumn : column };
  }
  const row = fresh.rows.findIndex((r, i) => r.texts.join('\0') !== old.rows[i]?.texts.join('\0'));
  // The last row came or went.
  if (row < 0) return { row: fresh.rows.length - 1, column: 0 };
  const texts = old.rows[row]?.texts ?? [];
  const sameMany = old.rows.length === fresh.rows.length;
  const other = fresh.rows[row]?.texts.findIndex((text, k) => text !== texts[k]) ?? 0;
  return { row, column: sameMany ? Math.max(0, other) : 0 };
}

function headsOf(cell: Cell | null): string {
  return cell?.table?.columns.map(({ name }) => name).join('\0') ?? '';
}

/** Where the same cells stand otherwise: the one that left its place, or the first of the part that did. */
function movedCell(before: Notebook, now: Notebook): CellId | null {
  const part = movedOf(
    before.parts.map(({ key }) => key),
    now.parts.map(({ key }) => key),
  );
  const inPart = part === null ? undefined : allCells(now).find((cell) => cell.part === part);
  if (inPart) return inPart.id;
  const [old, fresh] = [allCells(before), allCells(now)];
  if (old.length !== fresh.length) return null;
  const elsewhere = fresh.find(
    (cell) => (cellOf(before, cell.id)?.part ?? cell.part) !== cell.part,
  );
  if (elsewhere) return elsewhere.id;
  return movedOf(
    old.map(({ id }) => id),
    fresh.map(({ id }) => id),
  );
}

/** The one of the same things that left its place; null where they are others, or all stand as they stood. */
function movedOf<T>(before: readonly T[], now: readonly T[]): T | null {
  if (before.length !== now.length) return null;
  const first = now.findIndex((one, i) => one !== before[i]);
  const [was, is] = [before[first], now[first]];
  if (was === undefined || is === undefined || !before.includes(is) || !now.includes(was))
    return null;
  // One that went down lets the next one stand in its place.
  return before[first + 1] === is ? was : is;
}

function says({ name, formula, remarks, table }: Cell): string {
  return [
    name,
    formula,
    table?.source ?? '',
    ...remarks.map(({ word, text }) => `${word}: ${text}`),
  ].join('\n');
}
