// Prices whose source says until when it is good, and that day is over: pointed out, with what can be done about each.
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import type { Estimate } from '../notebook/estimate.ts';
import { cellsOf } from '../notebook/lines.ts';
import { remarkText, sourceOf } from '../notebook/remarks.ts';
import { dayNumber, datedBy, dayText } from './days.ts';
import { pricesIn } from './taken-out.ts';

export interface PastDate {
  readonly cell: CellId;
  readonly part: string;
  readonly name: string;
  readonly formula: string;
  readonly from: string;
  /** How long ago it was quoted, and for how many days it was good; null where no day of the quote is told. */
  readonly daysAgo: number | null;
  readonly goodFor: number | null;
  /** Days since it was good last. */
  readonly daysPast: number;
  /** What can be done about it here. */
  readonly way: PastWay;
}

export type PastWay =
  /** A given: it can become a `?`. */
  | { readonly kind: 'ask' }
  /** Its prices stand inside a formula: each can have a cell of its own. */
  | { readonly kind: 'take-out'; readonly prices: readonly string[] }
  /** None is written out in its formula. */
  | { readonly kind: 'formula' }
  /** Set by hand, or in a table: for its owner to write anew. */
  | { readonly kind: 'by-hand' }
  | { readonly kind: 'table' };

/** When the prices of an estimate were quoted, and until when all of them are good. */
export interface Validity {
  /** The price that was quoted first. */
  readonly oldest: { readonly name: string; readonly day: string } | null;
  /** The price that runs out first. */
  readonly first: { readonly name: string; readonly until: string };
}

/** As of `today` (`2026-06-05`), the longest past first. */
export function pastDates(estimate: Estimate, today: string): readonly PastDate[] {
  const day = dayNumber(today);
  if (day === null) throw new Error(`"${today}" is no day`);
  const found = estimate.notebook.parts.flatMap((part) =>
    cellsOf(part).flatMap((cell): readonly PastDate[] => {
      const { id, name, formula, remarks } = cell;
      const from = sourceOf(remarks);
      const dated = from === null ? null : datedBy(from);
      if (from === null || !dated || dated.until >= day) return [];
      if (estimate.state(id).outcome.kind === 'unknown') return [];
      const { quoted, until } = dated;
      return [
        {
          cell: id,
          part: part.name,
          name,
          formula,
          from,
          daysAgo: quoted === null ? null : day - quoted,
          goodFor: quoted === null ? null : until - quoted,
          daysPast: day - until,
          way: wayOf(estimate, cell),
        },
      ];
    }),
  );
  return found.sort((a, b) => b.daysPast - a.daysPast);
}

/** Null where no source tells until when it is good. */
export function validity(estimate: Pick<Estimate, 'notebook'>): Validity | null {
  const dated = estimate.notebook.parts.flatMap(cellsOf).flatMap(({ name, remarks }) => {
    const dates = datedBy(sourceOf(remarks) ?? '');
    return dates ? [{ name, ...dates }] : [];
  });
  if (dated.length === 0) return null;
  const first = dated.reduce((a, b) => (b.until < a.until ? b : a));
  const oldest = dated
    .flatMap(({ name, quoted }) => (quoted === null ? [] : [{ name, quoted }]))
    .reduce<{ name: string; quoted: number } | null>(
      (a, b) => (a && a.quoted <= b.quoted ? a : b),
      null,
    );
  return {
    oldest: oldest && { name: oldest.name, day: dayText(oldest.quoted) },
    first: { name: first.name, until: dayText(first.until) },
  };
}

/** `quoted 94 days ago, good for 30`. */
export function sayPast({ daysAgo, goodFor, daysPast }: PastDate): string {
  if (daysAgo !== null && goodFor !== null)
    return `quoted ${inDays(daysAgo)} ago, good for ${goodFor}`;
  return `no longer good since ${inDays(daysPast)}`;
}

function wayOf(estimate: Estimate, { id, remarks, table }: Cell): PastWay {
  if (table !== null) return { kind: 'table' };
  if (remarkText(remarks, 'by hand') !== null) return { kind: 'by-hand' };
  if (estimate.state(id).kind === 'given') return { kind: 'ask' };
  const prices = pricesIn(estimate, id).map(({ say }) => say);
  return prices.length > 0 ? { kind: 'take-out', prices } : { kind: 'formula' };
}

function inDays(count: number): string {
  return count === 1 ? '1 day' : `${count} days`;
}
