// What each line of the costs comes to, in cents, with the sign with which it stands in the price.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Cell, MoneyLine } from '../notebook/document.ts';
import { cellsOf } from '../notebook/lines.ts';
import { scaled } from '../quantity/decimal.ts';
import type { Version } from './version.ts';

export interface Line {
  readonly cell: Cell;
  readonly part: string;
  readonly money: MoneyLine;
  /** Null: it has no value. */
  readonly cents: bigint | null;
}

export function linesOf({ estimate }: Version): ReadonlyMap<CellId, Line> {
  const lines = new Map<CellId, Line>();
  for (const part of estimate.notebook.parts) {
    for (const cell of cellsOf(part)) {
      const { id, money } = cell;
      if (!money) continue;
      const cents = centsOfLine(estimate.state(id), money);
      lines.set(id, { cell, part: part.name, money, cents });
    }
  }
  return lines;
}

/** A line is a whole number of cents everywhere. A discount is taken off, whichever sign it is written with. */
export function centsOfLine(
  { outcome, holds }: Pick<CellState, 'outcome' | 'holds'>,
  { line, kind }: { readonly line: string; readonly kind: string },
): bigint | null {
  if (outcome.kind !== 'value' || typeof outcome.value !== 'object') return null;
  if (holds?.measure.kind !== 'amount') return null;
  const cents = BigInt(scaled(outcome.value, holds.measure.scale).times(100).toFixed(0));
  return line === 'price' && kind === 'discount' && cents > 0n ? -cents : cents;
}
