// Which part and cell of one version is which in the other: by the keys that last, then by what they are called;
// where the two share no keys at all, by what can be told from the texts. The same whichever comes first.
import type { CellId } from '../language/tree.ts';
import type { Cell, Part } from '../notebook/document.ts';
import { cellsOf } from '../notebook/lines.ts';
import { nameKey } from '../notebook/names.ts';
import type { Version } from './version.ts';

export interface Pairs {
  /** Keys of parts and ids of cells, from before to after. */
  readonly parts: ReadonlyMap<string, string>;
  readonly cells: ReadonlyMap<CellId, CellId>;
}

export function pairsOf(before: Version, after: Version): Pairs {
  if (comesFirst(before, after)) return pairsFrom(before, after);
  const { parts, cells } = pairsFrom(after, before);
  return { parts: turned(parts), cells: turned(cells) };
}

/** One of the two ways around, always the same: what is worked out that way mirrors when the two are swapped. */
export function comesFirst(before: Version, after: Version): boolean {
  return before.estimate.notebook.text <= after.estimate.notebook.text;
}

function turned<T>(pairs: ReadonlyMap<T, T>): ReadonlyMap<T, T> {
  return new Map([...pairs].map(([one, other]) => [other, one] as const));
}

function pairsFrom(before: Version, after: Version): Pairs {
  const parts = new Pairing(partsOf(before), partsOf(after));
  const cells = new Pairing(cellsIn(before), cellsIn(after));
  parts.byLabel((_, key) => (key === '' ? '' : null), 'one');
  parts.byKeys(before.identities.parts, after.identities.parts);
  cells.byKeys(before.identities.cells, after.identities.cells);
  const related = cells.found.size > 0;
  parts.byLabel(({ name }) => nameKey(name), 'in-order');
  if (!related)
    parts.byLabel((part) => JSON.stringify(cellsOf(part).map(({ name }) => nameKey(name))), 'one');
  const partOf = (cell: Cell, side: Side): string =>
    side === 'after' ? cell.part : (parts.found.get(cell.part) ?? `gone ${cell.part}`);
  // What was taken out and written again under its name is the same to whoever reads it.
  cells.byLabel((cell, _, side) => `${partOf(cell, side)}\0${nameKey(cell.name)}`, 'in-order');
  if (!related) {
    cells.byLabel(({ name }) => nameKey(name), 'one');
    cells.byLabel((cell, _, side) => `${partOf(cell, side)}\0${bodyOf(cell)}`, 'one');
  }
  return { parts: parts.found, cells: cells.found };
}

type Side = 'before' | 'after';

/** All that a cell says under its name. */
function bodyOf({ formula, table, remarks }: Cell): string {
  return JSON.stringify([formula, table?.source, remarks.map(({ word, text }) => [word, text])]);
}

function partsOf({ estimate }: Version): Map<string, Part> {
  return new Map(estimate.notebook.parts.map((part) => [part.key, part]));
}

function cellsIn({ estimate }: Version): Map<CellId, Cell> {
  return new Map(
    estimate.notebook.parts.flatMap((part) => cellsOf(part).map((cell) => [cell.id, cell])),
  );
}

/** What is left on both sides, and what has been found. */
class Pairing<T, V> {
  readonly found = new Map<T, T>();
  readonly #before: Map<T, V>;
  readonly #after: Map<T, V>;

  constructor(before: Map<T, V>, after: Map<T, V>) {
    this.#before = before;
    this.#after = after;
  }

  byKeys(before: ReadonlyMap<T, string>, after: ReadonlyMap<T, string>): void {
    const there = new Map([...this.#after.keys()].map((here) => [after.get(here), here]));
    for (const here of this.#before.keys()) {
      const key = before.get(here);
      const other = key === undefined ? undefined : there.get(key);
      if (other !== undefined) this.#pair(here, other);
    }
  }

  /** `one`: only where each side has one of the label; `in-order`: the first with the first. Null: none. */
  byLabel(labelOf: (thing: V, key: T, side: Side) => string | null, how: 'one' | 'in-order'): void {
    const old = labelled(this.#before, (thing, key) => labelOf(thing, key, 'before'));
    const now = labelled(this.#after, (thing, key) => labelOf(thing, key, 'after'));
    for (const [label, here] of old) {
      const there = now.get(label) ?? [];
      if (how === 'one' && (here.length > 1 || there.length > 1)) continue;
      for (let i = 0; i < Math.min(here.length, there.length); i++) this.#pair(here[i], there[i]);
    }
  }

  #pair(here: T, there: T): void {
    if (!this.#before.delete(here) || !this.#after.delete(there)) return;
    this.found.set(here, there);
  }
}

function labelled<T, V>(
  things: ReadonlyMap<T, V>,
  labelOf: (thing: V, key: T) => string | null,
): ReadonlyMap<string, readonly T[]> {
  const lists = new Map<string, T[]>();
  for (const [key, thing] of things) {
    const label = labelOf(thing, key);
    if (label === null) continue;
    const list = lists.get(label);
    if (list) list.push(key);
    else lists.set(label, [key]);
  }
  return lists;
}
