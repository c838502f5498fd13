// Two states of a table: its columns, and its rows one by one.
import type { Table } from '../notebook/document.ts';
import { nameKey } from '../notebook/names.ts';
import { type Run, stepsBetween, wordsApart } from './words-apart.ts';

export type ColumnChange =
  | { readonly kind: 'added' | 'removed'; readonly name: string }
  | { readonly kind: 'renamed'; readonly name: string; readonly was: string }
  /** The formula in its header; null: none. */
  | {
      readonly kind: 'formula';
      readonly name: string;
      readonly before: string | null;
      readonly after: string | null;
    };

export interface RowChange {
  /** Where the row stands, from 0; null: it doesn't stand there. */
  readonly before: number | null;
  readonly after: number | null;
  /** Of a changed row only the cells that changed, of another one all with something in them. */
  readonly cells: readonly {
    readonly column: string;
    readonly before: string;
    readonly after: string;
    readonly words: readonly Run[];
  }[];
}

export interface TableChange {
  readonly columns: readonly ColumnChange[];
  readonly rows: readonly RowChange[];
}

/** Which row and column is which: indexes in the other table, null where it has none. */
export interface TablePairs {
  /** In the order of the table after, those that went where they stood. */
  readonly rows: readonly (readonly [before: number | null, after: number | null])[];
  readonly columns: readonly (readonly [before: number | null, after: number | null])[];
}

export function tableChange(before: Table, after: Table): TableChange {
  const pairs = tablePairs(before, after);
  return {
    columns: pairs.columns.flatMap(([old, now]) => columnChange(before, after, old, now)),
    rows: pairs.rows.flatMap((pair) => rowChange(before, after, pair, pairs.columns)),
  };
}

export function tablePairs(before: Table, after: Table): TablePairs {
  const columns = columnPairs(before, after);
  const shared = columns.filter(([old, now]) => old !== null && now !== null);
  const line = (table: Table, row: number, side: 0 | 1): string =>
    shared.map((pair) => table.rows[row].texts[pair[side] ?? 0]).join('\0');
  const steps = stepsBetween(
    before.rows.map((_, i) => line(before, i, 0)),
    after.rows.map((_, i) => line(after, i, 1)),
  );
  const rows: [number | null, number | null][] = [];
  let at = 0;
  let gone: number[] = [];
  let came: number[] = [];
  const settle = (): void => {
    rows.push(...nearRows(before, after, gone, came));
    gone = [];
    came = [];
  };
  for (const [kind, index] of steps) {
    if (kind === 'gone') gone.push(index);
    else if (kind === 'new') {
      came.push(index);
      at = index + 1;
    } else {
      settle();
      rows.push([index, at++]);
    }
  }
  settle();
  return { rows, columns };
}

/** Between two rows that stayed: those that begin alike are one row changed, then one for one where as many went as came. */
function nearRows(
  before: Table,
  after: Table,
  gone: readonly number[],
  came: readonly number[],
): readonly [number | null, number | null][] {
  const first = (table: Table, row: number): string => nameKey(table.rows[row].texts[0] ?? '');
  const waiting = [...gone];
  const partner = new Map<number, number>();
  for (const now of came) {
    const found = waiting.findIndex((old) => first(before, old) === first(after, now));
    if (found >= 0) partner.set(now, waiting.splice(found, 1)[0]);
  }
  const alone = came.filter((now) => !partner.has(now));
  if (alone.length === waiting.length) {
    for (const now of alone) partner.set(now, waiting.shift() ?? 0);
  }
  return [
    ...waiting.map((old): [number, null] => [old, null]),
    ...came.map((now): [number | null, number] => [partner.get(now) ?? null, now]),
  ];
}

function columnPairs(before: Table, after: Table): TablePairs['columns'] {
  const left = before.columns.map(({ name }) => nameKey(name));
  const right = after.columns.map(({ name }) => nameKey(name));
  const old = new Set(left.keys());
  const found = right.map((name) => {
    const at = [...old].find((i) => left[i] === name);
    if (at !== undefined) old.delete(at);
    return at ?? null;
  });
  const sameCount = left.length === right.length;
  const pairs = found.map((at, i): [number | null, number] => {
    if (at !== null || !sameCount || !old.has(i)) return [at, i];
    old.delete(i);
    return [i, i];
  });
  return [...[...old].map((i): [number, null] => [i, null]), ...pairs];
}

function columnChange(
  before: Table,
  after: Table,
  old: number | null,
  now: number | null,
): readonly ColumnChange[] {
  if (now === null)
    return old === null ? [] : [{ kind: 'removed', name: before.columns[old].name }];
  const { name, formula } = after.columns[now];
  if (old === null) return [{ kind: 'added', name }];
  const was = before.columns[old];
  const changes: ColumnChange[] = [];
  if (was.name !== name) changes.push({ kind: 'renamed', name, was: was.name });
  if (was.formula !== formula)
    changes.push({ kind: 'formula', name, before: was.formula, after: formula });
  return changes;
}

function rowChange(
  before: Table,
  after: Table,
  [old, now]: readonly [number | null, number | null],
  columns: TablePairs['columns'],
): readonly RowChange[] {
  const cells = columns.flatMap(([left, right]) => {
    const was = old === null || left === null ? '' : before.rows[old].texts[left];
    const is = now === null || right === null ? '' : after.rows[now].texts[right];
    if (was === is) return [];
    const column = (right === null ? before.columns[left ?? 0] : after.columns[right]).name;
    return [{ column, before: was, after: is, words: wordsApart(was, is) }];
  });
  if (old !== null && now !== null && cells.length === 0) return [];
  return [{ before: old, after: now, cells }];
}
