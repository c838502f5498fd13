// Keeping what was written over a cell: as its formula, or as an amount set by hand beside it.
// Each answers whether it is done: an amount or a formula that was refused stays to be mended.
import type { CellId } from '../language/tree.ts';
import type { Draft } from '../notebook/estimate.ts';
import { textToKeep } from '../notebook/ranges.ts';
import type { Session } from './session.ts';
import { isPlainAmount } from './spots-in.ts';

export interface Written {
  readonly cell: CellId;
  /** Which of the two was opened to be written. */
  readonly what: 'formula' | 'by-hand';
  readonly text: string;
}

/** A plain amount over a worked formula: nobody loses a formula by typing a number. */
export function asksByHand(session: Session, { cell, what, text }: Written, draft: Draft): boolean {
  if (what === 'by-hand' || text.trim() === '') return false;
  const { kind, input } = session.door.state(cell);
  if (kind === 'given' || text.trim() === input.formula.trim()) return false;
  return draft.reading.problems.length === 0 && isPlainAmount(draft.reading.tree);
}

/** Nothing written takes the amount back. */
export function keptByHand(session: Session, { cell, text }: Written): boolean {
  const amount = text.trim() === '' ? null : text.trim();
  if (amount === session.door.state(cell).input.byHand) return true;
  return session.apply((door) => door.setByHand(cell, amount, null));
}

/** Nothing written leaves the formula as it was. */
export function keptFormula(session: Session, { cell, text }: Written): boolean {
  const formula = text.trim();
  if (formula === '' || formula === session.door.state(cell).input.formula.trim()) return true;
  const kept = textToKeep(session.door.draft(cell, formula).reading, formula);
  return session.apply((door) => door.setFormula(cell, kept));
}
