// Two versions side by side, part by part: what a person changed, what only follows from it, and what it costs.
import type { CellId } from '../language/tree.ts';
import type { Cell, Part } from '../notebook/document.ts';
import { cellsOf } from '../notebook/lines.ts';
import { type CellChange, type CellThere, cellChange, cellThere, towardOf } from './cell-change.ts';
import { centsOf, moneyText } from './cents.ts';
import { type Pairs, pairsOf } from './pairs.ts';
import { keptInOrder } from './kept-in-order.ts';
import { saidInNamesOf } from './same-names.ts';
import type { Version } from './version.ts';

export interface PartChange {
  /** The name before and after; null: it isn't there. */
  readonly before: string | null;
  readonly after: string | null;
  readonly ways: readonly ('added' | 'removed' | 'renamed' | 'moved')[];
  /** Of what changed by hand. A cell that moved here from another part stands here. */
  readonly cells: readonly CellChange[];
  /** Cells nobody touched that come to something else. */
  readonly follows: readonly Follows[];
  /** What the part's cost lines came to and come to. */
  readonly direct: Amounts;
}

export interface Follows {
  readonly before: CellThere;
  readonly after: CellThere;
  readonly toward: CellChange['toward'];
}

/** Decimal text with two places. */
export interface Amounts {
  readonly before: string;
  readonly after: string;
  readonly difference: string;
}

export interface Comparison {
  readonly before: Version;
  readonly after: Version;
  readonly pairs: Pairs;
  /** Those with any difference, in the order of after; parts that went come where they stood. */
  readonly parts: readonly PartChange[];
  readonly price: Amounts;
  readonly direct: Amounts;
  /** A total on either side leaves out lines that have no value. */
  readonly incomplete: boolean;
  /** The two are not in one currency: their totals can't be taken from one another. */
  readonly currencies: readonly [string, string] | null;
}

export function compare(before: Version, after: Version): Comparison {
  const pairs = pairsOf(before, after);
  const [old, now] = [before, after].map(({ estimate }) => estimate);
  const costs = [old.costs(), now.costs()];
  const currencies = [old.notebook.settings.currency, now.notebook.settings.currency] as const;
  return {
    before,
    after,
    pairs,
    parts: new PartsApart(before, after, pairs).changes(),
    price: amounts(before.price, after.price),
    direct: amounts(before.direct, after.direct),
    incomplete: costs.some(({ total }) => total.incomplete.length > 0),
    currencies: currencies[0] === currencies[1] ? null : currencies,
  };
}

export function amounts(before: string, after: string): Amounts {
  return { before, after, difference: moneyText(centsOf(after) - centsOf(before)) };
}

class PartsApart {
  readonly #before: Version;
  readonly #after: Version;
  readonly #pairs: Pairs;
  readonly #backTo: ReadonlyMap<CellId, CellId>;
  /** Cells before, written in the names of after. */
  readonly #said: ReadonlyMap<CellId, Cell>;
  readonly #old = new Map<CellId, { readonly cell: Cell; readonly part: Part }>();
  /** Cells that stand among the others as they did. */
  readonly #inOrder: ReadonlySet<CellId>;

  constructor(before: Version, after: Version, pairs: Pairs) {
    this.#before = before;
    this.#after = after;
    this.#pairs = pairs;
    this.#said = saidInNamesOf(before, after, pairs);
    this.#backTo = new Map([...pairs.cells].map(([one, other]) => [other, one]));
    for (const part of before.estimate.notebook.parts) {
      for (const cell of cellsOf(part)) this.#old.set(cell.id, { cell, part });
    }
    const places = new Map([...this.#old.keys()].map((id, i) => [id, i]));
    const stayed = after.estimate.notebook.parts.flatMap((part) =>
      cellsOf(part).flatMap(({ id }) => {
        const was = this.#backTo.get(id);
        const there = was === undefined ? undefined : this.#old.get(was);
        if (was === undefined || pairs.parts.get(there?.part.key ?? '') !== part.key) return [];
        return [{ id, place: places.get(was) ?? 0, part: part.key }];
      }),
    );
    this.#inOrder = new Set(
      after.estimate.notebook.parts.flatMap(({ key }) => {
        const here = stayed.filter(({ part }) => part === key);
        return keptInOrder(here.map(({ place }) => place)).map((i) => here[i].id);
      }),
    );
  }

  changes(): readonly PartChange[] {
    const oldParts = this.#before.estimate.notebook.parts;
    const nowParts = this.#after.estimate.notebook.parts;
    const was = new Map([...this.#pairs.parts].map(([one, other]) => [other, one]));
    const places = new Map(oldParts.map(({ key }, i) => [key, i]));
    const stayed = nowParts.filter(({ key }) => was.has(key));
    const order = keptInOrder(stayed.map(({ key }) => places.get(was.get(key) ?? '') ?? 0));
    const inOrder = new Set(order.map((i) => stayed[i].key));
    const found: PartChange[] = [];
    const gone = oldParts.filter(({ key }) => !this.#pairs.parts.has(key));
    const put = (part: PartChange): void => {
      if (part.ways.length + part.cells.length + part.follows.length > 0) found.push(part);
    };
    let next = 0;
    for (const part of nowParts) {
      const old = oldParts.find(({ key }) => key === was.get(part.key)) ?? null;
      const place = old ? (places.get(old.key) ?? 0) : -1;
      while (next < gone.length && (places.get(gone[next].key) ?? 0) < place)
        put(this.#part(gone[next++], null, true));
      put(this.#part(old, part, inOrder.has(part.key)));
    }
    while (next < gone.length) put(this.#part(gone[next++], null, true));
    return found;
  }

  #part(old: Part | null, now: Part | null, inOrder: boolean): PartChange {
    const ways: PartChange['ways'][number][] = [];
    if (!old) ways.push('added');
    else if (!now) ways.push('removed');
    else {
      if (old.name !== now.name) ways.push('renamed');
      if (!inOrder) ways.push('moved');
    }
    const cells: CellChange[] = [];
    const follows: Follows[] = [];
    for (const cell of old ? cellsOf(old) : []) {
      if (!this.#pairs.cells.has(cell.id))
        cells.push(alone('removed', cellThere(this.#before, old?.name ?? '', cell)));
    }
    for (const cell of now ? cellsOf(now) : []) {
      const after = cellThere(this.#after, now?.name ?? '', cell);
      const was = this.#old.get(this.#backTo.get(cell.id) ?? Number.NaN);
      if (!was) {
        cells.push(alone('added', after));
        continue;
      }
      const before = cellThere(this.#before, was.part.name, was.cell);
      const moved = !this.#inOrder.has(cell.id);
      const versions = [this.#before, this.#after] as const;
      const said = this.#said.get(was.cell.id) ?? was.cell;
      const change = cellChange(versions, [was.cell, cell], said, [before, after], moved);
      if (change) cells.push(change);
      else {
        const toward = towardOf(
          this.#before.estimate.state(was.cell.id),
          this.#after.estimate.state(cell.id),
        );
        const other = toward === null ? before.shown !== after.shown : toward !== 'same';
        if (other) follows.push({ before, after, toward });
      }
    }
    return {
      before: old?.name ?? null,
      after: now?.name ?? null,
      ways,
      cells,
      follows,
      direct: amounts(directOf(this.#before, old), directOf(this.#after, now)),
    };
  }
}

function alone(way: 'added' | 'removed', there: CellThere): CellChange {
  const [before, after] = way === 'added' ? [null, there] : [there, null];
  return { before, after, ways: [way], words: [], table: null, toward: null };
}

function directOf({ estimate }: Version, part: Part | null): string {
  return estimate.costs().parts.find(({ key }) => key === part?.key)?.direct ?? '0.00';
}
