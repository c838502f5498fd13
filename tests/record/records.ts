// Entries for tests: short to write, numbered in the order they are made.
import type { CostKind } from '../../src/language/tree.ts';
import type { Budget } from '../../src/record/budget.ts';
import { eachKind } from '../../src/record/budget.ts';
import type { Correction, Cost, Entry, PartNamed, Progress, Said } from '../../src/record/entry.ts';

export const LANDING: PartNamed = { key: 'k-1', name: 'Landing' };
export const RAILING: PartNamed = { key: 'k-2', name: 'Railing' };

export function said(
  cost: string | readonly [hours: string, rate: string],
  own: Partial<Said> = {},
): Said {
  return {
    date: '2026-05-04',
    part: LANDING,
    kind: typeof cost === 'string' ? 'material' : 'labour',
    what: 'something',
    cost: costOf(cost),
    note: '',
    currency: '$',
    receipt: null,
    ...own,
  };
}

function costOf(cost: string | readonly [string, string]): Cost {
  if (typeof cost === 'string') return { by: 'amount', amount: cost };
  return { by: 'time', minutes: String(Number(cost[0]) * 60), rate: cost[1] };
}

const KEPT = { v: 1, entered: '2026-05-04T16:00:00Z' } as const;

export function entry(id: string, says: Said): Entry {
  return { ...KEPT, record: 'entry', id, says };
}

export function correction(id: string, corrects: string, says: Correction['says']): Correction {
  return { ...KEPT, record: 'correction', id, corrects, why: 'misread', says };
}

export function progress(
  id: string,
  part: PartNamed,
  kind: CostKind | null,
  done: string,
  date = '2026-05-04',
): Progress {
  return { ...KEPT, record: 'progress', id, date, part, kind, done };
}

/** Cents by kind for each part; kinds that aren't told cost nothing. */
export function budget(
  ...parts: readonly (readonly [PartNamed, Partial<Record<CostKind, bigint>>])[]
): Budget {
  return {
    name: 'Bid 1',
    seal: null,
    currency: '$',
    parts: parts.map(([{ key, name }, cents]) => ({
      key,
      name,
      cents: eachKind((kind) => cents[kind] ?? 0n),
      incomplete: false,
    })),
  };
}
