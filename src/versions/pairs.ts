// Which part and cell of one version is which in the other: by the keys that last, then by what they are called;
// where the two share no keys at all, by all that can be told from the texts. The same whichever comes first.
import type { CellId } from '../language/tree.ts';
import type { Cell, Part } from '../notebook/document.ts';
import { type Unknown, matched } from '../notebook/identity.ts';
import { cellsOf } from '../notebook/lines.ts';
import { nameKey } from '../notebook/names.ts';
import type { Version } from './version.ts';

export interface Pairs {
  /** Keys of parts and ids of cells, from before to after. */
  readonly parts: ReadonlyMap<string, string>;
  readonly cells: ReadonlyMap<CellId, CellId>;
}

export function pairsOf(before: Version, after: Version): Pairs {
  if (!comesFirst(before, after)) {
    const { parts, cells } = pairsFrom(after, before);
    return { parts: turned(parts), cells: turned(cells) };
  }
  return pairsFrom(before, after);
}

/** One of the two ways around, always the same: what is worked out that way mirrors when the two are swapped. */
export function comesFirst(before: Version, after: Version): boolean {
  return before.estimate.notebook.text <= after.estimate.notebook.text;
}

export function turned<T>(pairs: ReadonlyMap<T, T>): ReadonlyMap<T, T> {
  return new Map([...pairs].map(([one, other]) => [other, one] as const));
}

function pairsFrom(before: Version, after: Version): Pairs {
  const old = partsOf(before);
  const now = partsOf(after);
  const parts = new Map(old.has('') && now.has('') ? [['', '']] : []);
  old.delete('');
  now.delete('');
  pairByKey(before.identities.parts, after.identities.parts, old, now, parts);
  const oldCells = cellsIn(before);
  const nowCells = cellsIn(after);
  const cells = new Map<CellId, CellId>();
  pairByKey(before.identities.cells, after.identities.cells, oldCells, nowCells, cells);
  const related = cells.size > 0;
  const rest = related ? pairByLabel : pairByAll;
  rest([...old.values()].map(asPart), [...now.values()].map(asPart), parts);

  const cellOf = (version: Version, partName: (key: string) => string) => (cell: Cell) => ({
    identity: cell.id,
    ...asCell(version, partName(cell.part), cell, related),
  });
  const left = [...oldCells.values()].map(cellOf(before, (key) => parts.get(key) ?? `gone ${key}`));
  const right = [...nowCells.values()].map(cellOf(after, (key) => key));
  rest(left, right, cells);
  return { parts, cells };
}

function partsOf({ estimate }: Version): Map<string, Part> {
  return new Map(estimate.notebook.parts.map((part) => [part.key, part]));
}

function cellsIn({ estimate }: Version): Map<CellId, Cell> {
  return new Map(
    estimate.notebook.parts.flatMap((part) => cellsOf(part).map((cell) => [cell.id, cell])),
  );
}

function asPart({ key, name }: Part): { readonly identity: string } & Unknown {
  return { identity: key, label: nameKey(name), source: nameKey(name), name: null };
}

function asCell({ estimate }: Version, part: string, cell: Cell, related: boolean): Unknown {
  const { from, to } = cell.spot;
  const label = `${part}\0${nameKey(cell.name)}`;
  const source = related ? label : estimate.notebook.text.slice(from, to).trimEnd();
  return { label, source, name: nameKey(cell.name) };
}

function pairByKey<T, V>(
  before: ReadonlyMap<T, string>,
  after: ReadonlyMap<T, string>,
  old: Map<T, V>,
  now: Map<T, V>,
  pairs: Map<T, T>,
): void {
  const there = new Map([...now.keys()].map((here) => [after.get(here), here]));
  for (const here of [...old.keys()]) {
    const key = before.get(here);
    const other = key === undefined ? undefined : there.get(key);
    if (other === undefined) continue;
    pairs.set(here, other);
    old.delete(here);
    now.delete(other);
  }
}

function pairByAll<T>(
  old: readonly ({ readonly identity: T } & Unknown)[],
  now: readonly ({ readonly identity: T } & Unknown)[],
  pairs: Map<T, T>,
): void {
  matched(old, now, () => undefined).forEach((found, i) => {
    if (found !== null) pairs.set(found, now[i].identity);
  });
}

/** What was taken out and written again under its name is the same to whoever reads it. */
function pairByLabel<T>(
  old: readonly ({ readonly identity: T } & Unknown)[],
  now: readonly ({ readonly identity: T } & Unknown)[],
  pairs: Map<T, T>,
): void {
  const waiting = new Map<string, T[]>();
  for (const { identity, label } of old) {
    const list = waiting.get(label);
    if (list) list.push(identity);
    else waiting.set(label, [identity]);
  }
  for (const { identity, label } of now) {
    const found = waiting.get(label)?.shift();
    if (found !== undefined) pairs.set(found, identity);
  }
}
