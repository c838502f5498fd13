// Estimate against actual, by part and kind of cost, in whole cents: what was spent, what is still to go, what it comes
// to in the end. Every sum is the sum of its fields, so that parts, kinds and the whole always agree.
//
// One field is one kind of cost in one part. What it comes to in the end:
//   done by 100 %                      what was spent;
//   done by a told share, money spent  what was spent ÷ the share done, to the cent, half a cent up;
//   no share told, or nothing spent    the estimate, or what was spent where that is more.
// To go is that less what was spent.
import type { CostKind } from '../language/tree.ts';
import { nameKey } from '../notebook/names.ts';
import { COST_KINDS } from '../notebook/recap.ts';
import { centsOf } from '../versions/cents.ts';
import { type Budget, type ByKind, eachKind } from './budget.ts';
import { type PartNamed, type Progress, centsFor } from './entry.ts';
import type { Stands } from './standing.ts';

/** Whole cents. */
export interface Figures {
  readonly estimate: bigint;
  readonly actual: bigint;
  readonly toGo: bigint;
  /** Actual and to go. */
  readonly forecast: bigint;
  /** Forecast less estimate: more than nothing is over, less is under. */
  readonly over: bigint;
}

export interface AgainstPart {
  readonly part: PartNamed;
  readonly inEstimate: boolean;
  readonly kinds: ByKind<Figures>;
  readonly whole: Figures;
  /** Percent done as told last, kind by kind; null: nobody told. */
  readonly done: ByKind<string | null>;
  readonly incomplete: boolean;
}

export interface Against {
  readonly budget: Budget;
  readonly parts: readonly AgainstPart[];
  readonly kinds: ByKind<Figures>;
  readonly whole: Figures;
  /** Entries in another currency, which stand in no sum. */
  readonly otherCurrency: number;
}

export interface Warning {
  /** Null: the whole job. */
  readonly part: string | null;
  readonly over: bigint;
}

interface Gathered {
  readonly key: string | null;
  readonly name: string;
  readonly incomplete: boolean;
  readonly estimate: ByKind;
  readonly actual: Record<CostKind, bigint>;
  readonly done: Record<CostKind, Progress | null>;
}

export function against(budget: Budget, { entries, progress }: Stands): Against {
  const rows: Gathered[] = budget.parts.map(({ key, name, cents, incomplete }) =>
    gathered(key, name, incomplete, cents),
  );
  const rowOf = (part: PartNamed): Gathered => {
    const found = rowFor(rows, part);
    if (found) return found;
    const fresh = gathered(
      part.key,
      part.name,
      false,
      eachKind(() => 0n),
    );
    rows.push(fresh);
    return fresh;
  };
  let otherCurrency = 0;
  for (const { says } of entries) {
    if (!says) continue;
    if (says.currency === budget.currency)
      rowOf(says.part).actual[says.kind] += centsFor(says.cost);
    else otherCurrency++;
  }
  for (const told of progress) {
    const row = rowFor(rows, told.part);
    if (!row) continue;
    for (const kind of told.kind === null ? COST_KINDS : [told.kind]) {
      const before = row.done[kind];
      // Of two of the same day the one that was put in later counts.
      if (!before || told.date >= before.date) row.done[kind] = told;
    }
  }
  const parts = rows.map((row, i): AgainstPart => {
    const kinds = eachKind((kind) =>
      fieldOf(row.estimate[kind], row.actual[kind], row.done[kind]?.done ?? null),
    );
    return {
      part: { key: row.key, name: row.name },
      inEstimate: i < budget.parts.length,
      kinds,
      whole: sumOf(COST_KINDS.map((kind) => kinds[kind])),
      done: eachKind((kind) => row.done[kind]?.done ?? null),
      incomplete: row.incomplete,
    };
  });
  const kinds = eachKind((kind) => sumOf(parts.map((part) => part.kinds[kind])));
  return { budget, parts, kinds, whole: sumOf(parts.map((part) => part.whole)), otherCurrency };
}

/** Where the forecast is over the estimate by more than `allowed`: the whole job first, then parts, the furthest first. */
export function warnings({ parts, whole }: Against, allowed: string): readonly Warning[] {
  const limit = centsOf(allowed);
  const found = parts
    .filter((part) => part.whole.over > limit)
    .map((part): Warning => ({ part: part.part.name, over: part.whole.over }))
    .sort((a, b) => (a.over === b.over ? 0 : a.over > b.over ? -1 : 1));
  return whole.over > limit ? [{ part: null, over: whole.over }, ...found] : found;
}

/** By the key that lasts; by name where it is written by hand or comes from another notebook. */
function rowFor(rows: readonly Gathered[], { key, name }: PartNamed): Gathered | null {
  const byKey = key === null ? undefined : rows.find((row) => row.key === key);
  return byKey ?? rows.find((row) => nameKey(row.name) === nameKey(name)) ?? null;
}

function gathered(
  key: string | null,
  name: string,
  incomplete: boolean,
  estimate: ByKind,
): Gathered {
  const actual = { ...eachKind(() => 0n) };
  const done = { ...eachKind((): Progress | null => null) };
  return { key, name, incomplete, estimate, actual, done };
}

function fieldOf(estimate: bigint, actual: bigint, done: string | null): Figures {
  const forecast = inTheEnd(estimate, actual, done);
  return { estimate, actual, toGo: forecast - actual, forecast, over: forecast - estimate };
}

function inTheEnd(estimate: bigint, actual: bigint, done: string | null): bigint {
  const hundredths = done === null ? 0n : centsOf(twoPlaces(done));
  if (hundredths === 10_000n) return actual;
  if (hundredths > 0n && actual > 0n) return (actual * 20_000n + hundredths) / (hundredths * 2n);
  return actual > estimate ? actual : estimate;
}

function twoPlaces(percent: string): string {
  const [whole = '0', part = ''] = percent.split('.');
  return `${whole}.${part.padEnd(2, '0')}`;
}

function sumOf(figures: readonly Figures[]): Figures {
  const sum = (name: keyof Figures): bigint => figures.reduce((all, each) => all + each[name], 0n);
  return {
    estimate: sum('estimate'),
    actual: sum('actual'),
    toGo: sum('toGo'),
    forecast: sum('forecast'),
    over: sum('over'),
  };
}
