// Two versions put into one world: cells and parts that are one and the same get one id and one key there.
import type { CellInput } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Part, Table } from '../notebook/document.ts';
import type { Estimate } from '../notebook/estimate.ts';
import { cellsOf } from '../notebook/lines.ts';
import { inputOf } from '../notebook/worked-cells.ts';
import type { Pairs } from './pairs.ts';
import { tablePairs } from './rows-apart.ts';
import type { WorldCell, WorldPart, WorldRow } from './world.ts';

export interface Merged {
  readonly cells: readonly WorldCell[];
  readonly parts: readonly WorldPart[];
  /** Ids in either version by the ids here. */
  readonly before: ReadonlyMap<CellId, CellId>;
  readonly after: ReadonlyMap<CellId, CellId>;
  /** Rows of a table in either version, by their places here. */
  readonly rows: ReadonlyMap<CellId, readonly (readonly [number | null, number | null])[]>;
}

/** Of a table that changed in more places its rows are one change together. */
const MOST_ROWS = 200;

export function merged(before: Estimate, after: Estimate, pairs: Pairs): Merged {
  const old = before.notebook.parts;
  const now = after.notebook.parts;
  const backTo = new Map([...pairs.cells].map(([one, other]) => [other, one]));
  const backToPart = new Map([...pairs.parts].map(([one, other]) => [other, one]));
  const most = old.flatMap(cellsOf).reduce((top, { id }) => Math.max(top, id), 0);
  const idOf = (id: CellId): CellId => backTo.get(id) ?? most + id;
  const keyOf = (key: string): string => backToPart.get(key) ?? `after ${key}`;
  const nowCells = new Map(now.flatMap(cellsOf).map((cell) => [idOf(cell.id), cell]));
  const oldCells = new Map(old.flatMap(cellsOf).map((cell) => [cell.id, cell]));
  const rows = new Map<CellId, readonly (readonly [number | null, number | null])[]>();
  const cells = [...new Set([...oldCells.keys(), ...nowCells.keys()])].map((id): WorldCell => {
    const was = oldCells.get(id);
    const is = nowCells.get(id);
    const input = is ? { ...inputOf(is), id, part: keyOf(is.part) } : null;
    const found = was?.table && is?.table ? rowsBetween(was.table, is.table) : null;
    if (found) rows.set(id, found.pairs);
    return { id, before: was ? inputOf(was) : null, after: input, rows: found?.rows ?? null };
  });
  return {
    cells: cells.map(sharingTables),
    parts: partsOf(old, now, pairs, keyOf),
    before: new Map([...oldCells].map(([id, cell]) => [id, cell.id])),
    after: new Map([...nowCells].map(([id, cell]) => [id, cell.id])),
    rows,
  };
}

function partsOf(
  old: readonly Part[],
  now: readonly Part[],
  pairs: Pairs,
  keyOf: (key: string) => string,
): readonly WorldPart[] {
  const names = new Map(now.map(({ key, name }) => [key, name]));
  return [
    ...old.map(({ key, name }): WorldPart => {
      const other = pairs.parts.get(key);
      return { key, before: name, after: (other === undefined ? null : names.get(other)) ?? name };
    }),
    ...now
      .filter(({ key }) => keyOf(key).startsWith('after '))
      .map(({ key, name }): WorldPart => ({ key: keyOf(key), before: name, after: name })),
  ];
}

/** Rows are told apart one by one where the columns are the same in both; else the table is one change. */
function rowsBetween(before: Table, after: Table) {
  if (before.source === after.source) return null;
  const columns = (table: Table): string =>
    JSON.stringify(table.columns.map(({ name, formula }) => [name, formula]));
  if (columns(before) !== columns(after)) return null;
  const pairs = tablePairs(before, after).rows;
  const rows = pairs.map(([old, now]): WorldRow => {
    const was = old === null ? null : before.rows[old].texts;
    const is = now === null ? null : after.rows[now].texts;
    return { before: was, after: is, same: JSON.stringify(was) === JSON.stringify(is) };
  });
  return rows.filter(({ same }) => !same).length > MOST_ROWS ? null : { pairs, rows };
}

/** A table that says the same is one and the same to the engine. */
function sharingTables(cell: WorldCell): WorldCell {
  const { before, after } = cell;
  if (!before?.table || !after?.table || !sameTable(before, after)) return cell;
  return { ...cell, after: { ...after, table: before.table } };
}

function sameTable(a: CellInput, b: CellInput): boolean {
  return JSON.stringify(a.table) === JSON.stringify(b.table);
}
