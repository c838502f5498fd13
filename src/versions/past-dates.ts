// Givens whose source says until when it is good, and that day is over: pointed out, and turned into `?` in one go.
import type { CellId } from '../language/tree.ts';
import type { Cell, Change, Splice } from '../notebook/document.ts';
import type { Estimate } from '../notebook/estimate.ts';
import { cellsOf } from '../notebook/lines.ts';
import { remarkText, sourceOf } from '../notebook/remarks.ts';
import { dayNumber, datedBy } from './days.ts';

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
  /** It is a given that can become a `?`; what was set by hand is for its owner to take back. */
  readonly canAsk: boolean;
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
          canAsk: isPlainGiven(estimate, cell),
        },
      ];
    }),
  );
  return found.sort((a, b) => b.daysPast - a.daysPast);
}

/** `quoted 94 days ago, good for 30`. */
export function sayPast({ daysAgo, goodFor, daysPast }: PastDate): string {
  if (daysAgo !== null && goodFor !== null)
    return `quoted ${inDays(daysAgo)} ago, good for ${goodFor}`;
  return `no longer good since ${inDays(daysPast)}`;
}

/** One edit that asks for all of them again; what each was stays beside its source. Null: none of them can be asked for. */
export function askAgain(estimate: Estimate, past: readonly PastDate[]): Change | null {
  const wanted = new Set(past.filter(({ canAsk }) => canAsk).map(({ cell }) => cell));
  const cells = estimate.notebook.parts
    .flatMap(cellsOf)
    .filter((cell) => wanted.has(cell.id) && isPlainGiven(estimate, cell));
  if (cells.length === 0) return null;
  const [only] = cells;
  const what = cells.length === 1 && only ? only.name : `${cells.length} prices past their date`;
  return { say: `Ask again for ${what}`, splices: cells.flatMap(asked) };
}

function asked({ formula, formulaSpot, remarks }: Cell): readonly Splice[] {
  const from = remarks.find(({ kind }) => kind === 'from');
  const said = from
    ? [{ from: from.textSpot.to, to: from.textSpot.to, insert: `; was ${formula}` }]
    : [];
  return [{ ...formulaSpot, insert: '?' }, ...said];
}

function isPlainGiven(estimate: Estimate, { id, remarks, table }: Cell): boolean {
  const byHand = remarkText(remarks, 'by hand') !== null;
  return table === null && !byHand && estimate.state(id).kind === 'given';
}

function inDays(count: number): string {
  return count === 1 ? '1 day' : `${count} days`;
}
