// What the parts of a job cost, kind by kind with their shares, as the remark `recap: every part` lays it out under a
// cell. It follows the notebook: a part that is added stands in it, and one that has a name and no price is told.
import type { CellState } from '../engine/outcome.ts';
import type { CellId, CostKind } from '../language/tree.ts';
import type { Cell } from './document.ts';
import type { Section } from './identified.ts';
import { COST_KINDS, type CostRow, type Costs } from './recap.ts';
import { remarkText } from './remarks.ts';

/** What the remark may say. */
export const RECAP_OF = 'every part';

export interface RecapTable {
  /** Parts with cost lines, in notebook order. */
  readonly rows: readonly RecapLine[];
  readonly total: RecapLine;
  /** Parts that have a name and no price. */
  readonly unpriced: readonly string[];
  /** What the sums leave out, by name; `count` is all of them. */
  readonly open: { readonly names: readonly string[]; readonly count: number };
}

export interface RecapLine {
  readonly name: string;
  readonly kinds: readonly {
    readonly kind: CostKind;
    readonly amount: string;
    /** Of this line, in tenths of a percent; null where the line comes to nothing. */
    readonly share: number | null;
  }[];
  readonly direct: string;
  /** Of the whole job, in tenths of a percent. */
  readonly share: number | null;
}

export interface Recapped {
  readonly sections: readonly Section[];
  costs(): Costs;
  state(cell: CellId): CellState;
  rows(cell: CellId): readonly (readonly CellId[])[] | null;
  reach(cells: readonly CellId[], way: 'up'): readonly CellId[];
}

/** As many names as are told of what is open. */
const MOST_NAMES = 12;

export function asksForRecap({ remarks }: Pick<Cell, 'remarks'>): boolean {
  return remarkText(remarks, 'recap')?.trim().toLowerCase() === RECAP_OF;
}

export function recapTable(job: Recapped): RecapTable {
  const { parts, total } = job.costs();
  const priced = parts.filter(({ lines }) => lines > 0);
  const shares = sharesOf(priced.map(({ direct }) => direct));
  const { incomplete } = total;
  return {
    rows: priced.map((row, i) => lineOf(row.part, row, shares[i] ?? null)),
    total: lineOf('whole job', total, priced.length > 0 ? 1000 : null),
    unpriced: unpricedParts(job),
    open: {
      names: [...new Set(incomplete.map((id) => job.state(id).input.name))].slice(0, MOST_NAMES),
      count: incomplete.length,
    },
  };
}

/**
 * By name: no cost or price line, nothing that one is worked from, and no money of any sort. What an hour costs may be
 * worked out in a part of its own that nothing takes it from yet.
 */
export function unpricedParts(job: Recapped): readonly string[] {
  const money = new Set(
    job.sections.flatMap(({ cells }) => cells.filter((c) => c.money).map(({ id }) => id)),
  );
  return job.sections.flatMap(({ key, name, cells }) => {
    if (key === '' || cells.some((cell) => cell.money || asksForRecap(cell))) return [];
    const own = cells.flatMap(({ id }) => [id, ...(job.rows(id)?.flat() ?? [])]);
    if (own.some((id) => isMoney(job.state(id)))) return [];
    return job.reach(own, 'up').some((id) => money.has(id)) ? [] : [name];
  });
}

function isMoney({ holds }: CellState): boolean {
  return holds?.measure.kind === 'amount' && holds.measure.dimension.money !== 0;
}

function lineOf(name: string, row: CostRow, share: number | null): RecapLine {
  const shares = sharesOf(COST_KINDS.map((kind) => row[kind]));
  return {
    name,
    kinds: COST_KINDS.map((kind, i) => ({ kind, amount: row[kind], share: shares[i] ?? null })),
    direct: row.direct,
    share,
  };
}

/**
 * Tenths of a percent that add up to the whole: each rounded down, and what is missing goes to those that lost most.
 * Amounts are decimal text with two places. Null for each where they come to nothing or some are below it.
 */
export function sharesOf(amounts: readonly string[]): readonly (number | null)[] {
  const cents = amounts.map((amount) => BigInt(amount.replace('.', '')));
  const whole = cents.reduce((sum, each) => sum + each, 0n);
  if (whole <= 0n || cents.some((each) => each < 0n)) return amounts.map(() => null);
  const tenths = cents.map((each) => (each * 1000n) / whole);
  const lost = cents.map((each) => (each * 1000n) % whole);
  const missing = Number(1000n - tenths.reduce((sum, each) => sum + each, 0n));
  const order = lost
    .map((rest, i) => ({ rest, i }))
    .toSorted((a, b) => (a.rest === b.rest ? a.i - b.i : a.rest < b.rest ? 1 : -1))
    .slice(0, missing);
  const raised = new Set(order.map(({ i }) => i));
  return tenths.map((each, i) => Number(each) + (raised.has(i) ? 1 : 0));
}
