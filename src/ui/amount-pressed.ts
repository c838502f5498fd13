// What pressing a cell's number does, wherever it is drawn.
import type { Cell } from '../notebook/document.ts';
import { firstPlace } from './row-places.ts';
import type { Session } from './session.ts';
import { tapeUnder } from './tape-reading.ts';

/** A given's number opens the tape under it; pressed again, or where nothing slides, it is written. */
export function pressAmount(session: Session, cell: Cell): void {
  // A table has no formula of its own: its rows are written where they stand.
  if (cell.table) session.bringRow(firstPlace(session.door, cell.id), 'goes');
  else if (session.trial?.cell !== cell.id && tapeUnder(session.door, cell))
    session.openTape(cell.id);
  else writeAmount(session, cell);
}

/** Writes what is used: the formula, or the amount by hand that stands over it. */
export function writeAmount(session: Session, cell: Cell, typed?: string): void {
  const kind = session.door.state(cell.id).input.byHand === null ? 'formula' : 'by-hand';
  session.write({ kind, cell: cell.id, ...(typed === undefined ? {} : { typed }) });
}
