// Why the total moved: the difference of two versions divided among what was changed, to the cent. Each piece is the
// average effect of its change over the orders in which all of them can be made. What nobody changed has no piece.
import type { CellId } from '../language/tree.ts';
import { Bundles } from './bundles.ts';
import type { Way } from './cell-change.ts';
import { centsOf, givenOut, moneyText } from './cents.ts';
import type { Comparison } from './compare.ts';
import {
  type Effects,
  MOST_EXACT,
  type Weighing,
  averagedEffects,
  exactEffects,
  finished,
} from './effects.ts';
import { hashOf } from './hash.ts';
import { type Merged, merged } from './merged.ts';
import { comesFirst, pairsOf } from './pairs.ts';
import { needsOf } from './needs.ts';
import { inNamesOf } from './same-names.ts';
import type { Version } from './version.ts';
import { type Switch, type TotalOf, World } from './world.ts';

export type Method =
  /** Every order was weighed. */
  | { readonly kind: 'exact'; readonly changes: number }
  /** So many shuffled orders and the reverse of each. */
  | { readonly kind: 'averaged'; readonly changes: number; readonly pairs: number }
  /** The changes could not be told apart: there is one piece of all of them. */
  | { readonly kind: 'together' };

/** What was changed, by its ids in the two versions; of a table's row with its places. */
export type Changed =
  | {
      readonly kind: 'cell';
      readonly before: CellId | null;
      readonly after: CellId | null;
    }
  | {
      readonly kind: 'row';
      readonly before: CellId;
      readonly after: CellId;
      readonly rows: readonly [before: number | null, after: number | null];
    }
  | { readonly kind: 'part'; readonly before: string; readonly after: string };

export interface Piece {
  /** Several: they only work together. Empty: today's tool comes to another total than was frozen. */
  readonly changes: readonly Changed[];
  readonly ways: readonly Way[];
  /** Decimal text with two places; pieces add up to the difference. */
  readonly amount: string;
}

export interface WhyMoved {
  readonly of: TotalOf;
  readonly difference: string;
  readonly method: Method;
  readonly pieces: readonly Piece[];
}

/** So many totals are worked where not every order can be weighed. */
const MOST_TOTALS = 2_400;
const FEWEST_PAIRS = 3;

/** Null: the two are in different currencies. */
export function whyMoved(comparison: Comparison, of: TotalOf = 'price'): WhyMoved | null {
  return finished(weighing(comparison, of));
}

/** The same step by step: a large job takes a moment, and a page may want to go on meanwhile. */
export function* weighing(comparison: Comparison, of: TotalOf): Weighing<WhyMoved | null> {
  if (comparison.currencies) return null;
  const { before, after } = comparison;
  const difference = centsOf(after[of]) - centsOf(before[of]);
  // Worked the same way around whichever comes first, so that swapping the two turns every sign and nothing else.
  const forward = comesFirst(before, after);
  const [one, other] = forward ? [before, after] : [after, before];
  const weighed = yield* weigh(one, other, of);
  const sign = forward ? 1n : -1n;
  const pieces = weighed.cents.map((cents, i): Piece => {
    const changes = weighed.bundles[i].map((each) => (forward ? each : swapped(each)));
    return {
      changes,
      ways: waysOf(changes, comparison),
      amount: moneyText(cents * sign),
    };
  });
  const left = difference - weighed.cents.reduce((sum, cents) => sum + cents * sign, 0n);
  const tool: Piece = { changes: [], ways: [], amount: moneyText(left) };
  return {
    of,
    difference: moneyText(difference),
    method: weighed.method,
    pieces: left === 0n ? pieces : [...pieces, tool],
  };
}

interface Weighed {
  readonly bundles: readonly (readonly Changed[])[];
  readonly cents: readonly bigint[];
  readonly method: Method;
}

function* weigh(one: Version, other: Version, of: TotalOf): Weighing<Weighed> {
  const found = inNamesOf(one.estimate, other.estimate, pairsOf(one, other));
  const { estimate, pairs, origin } = found;
  const both = merged(estimate, other.estimate, pairs);
  const world = new World(both.cells, both.parts, [estimate, other.estimate], of);
  const changed = world.switches.map((each) => changedBy(each, both, world, origin));
  const ends = [one, other].map((version) => centsOf(version.estimate.costs().total[of]));
  const difference = ends[1] - ends[0];
  const together: Weighed = {
    bundles: [changed],
    cents: [difference],
    method: { kind: 'together' },
  };
  if (!endsAt(world, ends)) return together;
  const bundles = new Bundles(world, needsOf(estimate, other.estimate, both));
  for (;;) {
    const { method, effects } = yield* averages(bundles, seedOf(one, other));
    if (!effects) {
      bundles.joinLast();
      continue;
    }
    // A cent that is over goes to whoever comes first in the notebook, not to whoever was weighed first.
    const all = bundles.all
      .map((bundle, i) => ({ bundle, over: effects.overs[i] }))
      .sort((a, b) => a.bundle[0] - b.bundle[0]);
    const overs = all.map(({ over }) => over);
    return {
      bundles: all.map(({ bundle }) => bundle.map((i) => changed[i])),
      cents: givenOut(overs, effects.under),
      method,
    };
  }
}

function* averages(
  bundles: Bundles,
  seed: number,
): Weighing<{ readonly method: Method; readonly effects: Effects | null }> {
  const changes = bundles.all.length;
  if (changes <= MOST_EXACT)
    return { method: { kind: 'exact', changes }, effects: yield* exactEffects(bundles, changes) };
  const pairs = Math.max(FEWEST_PAIRS, Math.floor(MOST_TOTALS / (2 * changes)));
  return {
    method: { kind: 'averaged', changes, pairs },
    effects: yield* averagedEffects(bundles, changes, pairs, seed),
  };
}

/** Does the one world come to what the two versions come to? */
function endsAt(world: World, [before, after]: readonly bigint[]): boolean {
  if (world.total !== before) return false;
  world.setAll(true);
  const there = world.total === after;
  world.setAll(false);
  return there && world.total === before;
}

/** From the two texts: the same two are always shuffled alike. */
function seedOf(one: Version, other: Version): number {
  const hash = hashOf([one.estimate.notebook.text, other.estimate.notebook.text]);
  return Number.parseInt(hash.slice(0, 8), 16);
}

function changedBy(
  each: Switch,
  both: Merged,
  world: World,
  origin: ReadonlyMap<CellId, CellId>,
): Changed {
  if (each.kind === 'part') {
    const part = both.parts.find(({ key }) => key === each.part);
    return { kind: 'part', before: part?.before ?? '', after: part?.after ?? '' };
  }
  const before = both.before.get(each.cell);
  const old = before === undefined ? null : (origin.get(before) ?? before);
  const now = both.after.get(each.cell) ?? null;
  if (each.kind === 'cell' || old === null || now === null)
    return { kind: 'cell', before: old, after: now };
  const rows = both.rows.get(each.cell)?.[each.row] ?? [null, null];
  return { kind: 'row', before: old, after: now, rows };
}

function swapped(each: Changed): Changed {
  switch (each.kind) {
    case 'part':
      return { kind: 'part', before: each.after, after: each.before };
    case 'cell':
      return { kind: 'cell', before: each.after, after: each.before };
    case 'row': {
      const [old, now] = each.rows;
      return { kind: 'row', before: each.after, after: each.before, rows: [now, old] };
    }
  }
}

/** What was done, in the words of the comparison; what says nothing of money is left out. */
function waysOf(changes: readonly Changed[], comparison: Comparison): readonly Way[] {
  const cells = comparison.parts.flatMap((part) => part.cells);
  const ways = changes.flatMap((each): readonly Way[] => {
    switch (each.kind) {
      case 'part':
        return ['renamed'];
      case 'row':
        return ['table'];
      case 'cell': {
        const found = cells.find(
          ({ before, after }) =>
            (before?.id ?? null) === each.before && (after?.id ?? null) === each.after,
        );
        return found?.ways ?? [];
      }
    }
  });
  return [...new Set(ways)].filter((way) => !BESIDE.includes(way));
}

const BESIDE: readonly Way[] = ['source', 'remarks'];
