// A change order: what is added, dropped and changed between two versions, with amounts, as it is priced and signed.
// It is a value that is never edited; asked, priced, approved, done and billed stand in a log beside it.
import { centsOf, moneyText } from './cents.ts';
import type { Comparison } from './compare.ts';
import { type Line, linesOf } from './money-lines.ts';

export interface OrderLine {
  readonly kind: 'added' | 'dropped' | 'changed';
  readonly part: string;
  readonly name: string;
  readonly line: 'cost' | 'price';
  /** What it is of: material, labour …, or overhead, tax … */
  readonly of: string;
  /** How it is worked; null where it is not there. */
  readonly workedBefore: string | null;
  readonly workedAfter: string | null;
  /** Money with two places, with the sign it has in the price; null: it isn't there, or has no value. */
  readonly before: string | null;
  readonly after: string | null;
  readonly difference: string;
}

export interface ChangeOrder {
  readonly number: number;
  readonly date: string;
  /** Why, as it is told to whoever signs. */
  readonly reason: string;
  /** Names of the two versions, and the seals of those that are snapshots. */
  readonly from: VersionNamed;
  readonly to: VersionNamed;
  readonly currency: string;
  readonly lines: readonly OrderLine[];
  readonly before: string;
  readonly net: string;
  readonly after: string;
  /** What the lines don't come to of the net, where today's tool works a total otherwise than it was frozen. */
  readonly rest: string;
  /** Lines without a value stand in one of the totals. */
  readonly incomplete: boolean;
}

export interface VersionNamed {
  readonly name: string;
  readonly seal: string | null;
}

export interface OrderNaming {
  readonly number: number;
  readonly date: string;
  readonly reason: string;
  /** Seals of the snapshots that were compared; null: the notebook as it stood. */
  readonly fromSeal: string | null;
  readonly toSeal: string | null;
}

/** Null: the two are in different currencies. */
export function changeOrder(comparison: Comparison, naming: OrderNaming): ChangeOrder | null {
  if (comparison.currencies) return null;
  const { before, after, price, incomplete } = comparison;
  const lines = orderLines(comparison);
  const told = lines.reduce((sum, line) => sum + centsOf(line.difference), 0n);
  const { number, date, reason, fromSeal, toSeal } = naming;
  return {
    number,
    date,
    reason,
    from: { name: before.name, seal: fromSeal },
    to: { name: after.name, seal: toSeal },
    currency: after.estimate.notebook.settings.currency,
    lines,
    before: price.before,
    net: price.difference,
    after: price.after,
    rest: moneyText(centsOf(price.difference) - told),
    incomplete,
  };
}

/** In the order of the notebook after; what was dropped comes first. */
function orderLines({ before, after, pairs }: Comparison): readonly OrderLine[] {
  const old = linesOf(before);
  const now = linesOf(after);
  const backTo = new Map([...pairs.cells].map(([one, other]) => [other, one]));
  const kept = new Set([...now.keys()].map((id) => backTo.get(id)));
  const dropped = [...old].filter(([id]) => !kept.has(id));
  return [
    ...dropped.map(([, line]) => orderLine(line, null)),
    ...[...now].flatMap(([id, line]) => {
      const was = old.get(backTo.get(id) ?? Number.NaN) ?? null;
      return was && was.cents === line.cents ? [] : [orderLine(was, line)];
    }),
  ];
}

function orderLine(before: Line | null, after: Line | null): OrderLine {
  const there = after ?? before;
  if (!there) throw new Error('a line of neither version');
  const text = (line: Line | null): string | null =>
    line === null || line.cents === null ? null : moneyText(line.cents);
  return {
    kind: !before ? 'added' : !after ? 'dropped' : 'changed',
    part: there.part,
    name: there.cell.name,
    line: there.money.line,
    of: there.money.kind,
    workedBefore: before?.cell.formula ?? null,
    workedAfter: after?.cell.formula ?? null,
    before: text(before),
    after: text(after),
    difference: moneyText((after?.cents ?? 0n) - (before?.cents ?? 0n)),
  };
}
