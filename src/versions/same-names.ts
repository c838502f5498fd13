// A rename moves no money. Before changes are weighed, the earlier version is written in the names of the later one,
// in a copy of its own; only what can't be renamed that way is left as a change.
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import { Estimate } from '../notebook/estimate.ts';
import { cellsOf } from '../notebook/lines.ts';
import { nameKey } from '../notebook/names.ts';
import type { Pairs } from './pairs.ts';
import { tablePairs } from './rows-apart.ts';
import type { Version } from './version.ts';

/** More than so many renames are left as changes: each is an edit of the whole notebook. */
const MOST_RENAMES = 100;

/** The earlier version as it is weighed. */
export interface Renamed {
  readonly estimate: Estimate;
  readonly pairs: Pairs;
  /** The id that a cell of this estimate has in the version itself. */
  readonly origin: ReadonlyMap<CellId, CellId>;
}

/** With the names of the later one where its totals stay what they were, else as it is. */
export function inNamesOf(before: Estimate, after: Estimate, pairs: Pairs): Renamed {
  const asItIs = { estimate: before, pairs, origin: new Map(cellsIn(before).map(idTwice)) };
  const renames = renamesBetween(before, after, pairs);
  if (renames.length === 0 || renames.length > MOST_RENAMES) return asItIs;
  const estimate = new Estimate(before.notebook.text);
  // A copy that was just read has ids and keys of its own, in the same order.
  const cells = cellsIn(estimate);
  const ids = new Map(cellsIn(before).map(({ id }, i) => [id, cells[i].id]));
  const keys = new Map(
    before.notebook.parts.map(({ key }, i) => [key, estimate.notebook.parts[i].key]),
  );
  for (const rename of renames) rename(estimate, ids, keys);
  if (sums(before) !== sums(estimate)) return asItIs;
  return {
    estimate,
    pairs: { parts: rekeyed(pairs.parts, keys), cells: rekeyed(pairs.cells, ids) },
    origin: new Map([...ids].map(([was, is]) => [is, was])),
  };
}

/** The cells of before as they read with the names of after, by their ids in before. */
export function saidInNamesOf(
  { estimate: before }: Version,
  { estimate: after }: Version,
  pairs: Pairs,
): ReadonlyMap<CellId, Cell> {
  const { estimate, origin } = inNamesOf(before, after, pairs);
  return new Map(cellsIn(estimate).map((cell) => [origin.get(cell.id) ?? cell.id, cell]));
}

function idTwice({ id }: Cell): readonly [CellId, CellId] {
  return [id, id];
}

function rekeyed<T>(pairs: ReadonlyMap<T, T>, keys: ReadonlyMap<T, T>): ReadonlyMap<T, T> {
  return new Map([...pairs].map(([one, other]) => [keys.get(one) ?? one, other] as const));
}

/** All money in it, without the names of parts. */
function sums(estimate: Estimate): string {
  const { parts, total } = estimate.costs();
  return JSON.stringify(
    [...parts, total].map(({ lines, direct, price }) => [lines, direct, price]),
  );
}

type Rename = (
  estimate: Estimate,
  ids: ReadonlyMap<CellId, CellId>,
  keys: ReadonlyMap<string, string>,
) => void;

function renamesBetween(before: Estimate, after: Estimate, pairs: Pairs): readonly Rename[] {
  const renames: Rename[] = [];
  const nowParts = new Map(after.notebook.parts.map((part) => [part.key, part]));
  const nowCells = new Map(cellsIn(after).map((cell) => [cell.id, cell]));
  for (const part of before.notebook.parts) {
    const now = nowParts.get(pairs.parts.get(part.key) ?? part.key);
    if (part.key !== '' && pairs.parts.has(part.key) && now && now.name !== part.name)
      renames.push((estimate, _ids, keys) =>
        estimate.renamePart(keys.get(part.key) ?? '', now.name),
      );
  }
  for (const cell of cellsIn(before)) {
    const now = nowCells.get(pairs.cells.get(cell.id) ?? Number.NaN);
    if (!now) continue;
    if (nameKey(now.name) !== nameKey(cell.name))
      renames.push((estimate, ids) => estimate.rename(ids.get(cell.id) ?? cell.id, now.name));
    renames.push(...columnRenames(cell, now));
  }
  return renames;
}

function columnRenames(cell: Cell, now: Cell): readonly Rename[] {
  if (!cell.table || !now.table || cell.table.source === now.table.source) return [];
  const [old, fresh] = [cell.table.columns, now.table.columns];
  return tablePairs(cell.table, now.table).columns.flatMap(([left, right]): readonly Rename[] => {
    if (left === null || right === null || old[left].name === fresh[right].name) return [];
    return [
      (estimate, ids) =>
        estimate.renameColumn(ids.get(cell.id) ?? cell.id, left, fresh[right].name),
    ];
  });
}

function cellsIn({ notebook }: Estimate): readonly Cell[] {
  return notebook.parts.flatMap(cellsOf);
}
