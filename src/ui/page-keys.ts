// What keys do on the page: on a chosen row, on the rod, and anywhere for undoing.
// While something is written its own editor takes the keys first.
import type { CellId } from '../language/tree.ts';
import type { Result } from '../moves-it/stood.ts';
import { isBlank } from '../notebook/new-table.ts';
import { duplicate, moveBy, movePartBy } from './moving.ts';
import type { RodView } from './rod-scale.ts';
import { firstPlace } from './row-places.ts';
import type { Session } from './session.ts';
import { tapeUnder } from './tape-reading.ts';

/** What a key asks of the page, beyond what the session does itself. */
export type Asked =
  | 'nothing'
  | 'done'
  | 'working'
  | 'remove'
  | 'move'
  | 'goes-into'
  | 'go-to'
  | 'show-how';

/** A key on the row of this cell; `on` tells whether its name has the keyboard. */
export function rowKey(session: Session, id: CellId, key: string, on: 'name' | 'other'): Asked {
  const cell = session.cell(id);
  if (!cell) return 'nothing';
  switch (key) {
    case 'ArrowDown':
    case 'ArrowUp': {
      const next = session.neighbour(id, key === 'ArrowDown' ? 1 : -1);
      if (next !== null) session.bring(next);
      return 'done';
    }
    case 'Enter': {
      if (on !== 'name') return 'nothing';
      // A table has no formula; its rows are written where they stand.
      if (cell.table) session.bringRow(firstPlace(session.door, id), 'goes');
      else session.write({ kind: lineOf(session, id), cell: id });
      return 'done';
    }
    case 'F2':
      session.write({ kind: 'name', cell: id });
      return 'done';
    case 't':
    case 'T':
      if (tapeUnder(session.door, cell)) session.openTape(id);
      return 'done';
    case 'w':
    case 'W':
      return 'working';
    case 'd':
    case 'D':
      duplicate(session, id);
      return 'done';
    case 'm':
    case 'M':
      return 'move';
    case 'i':
    case 'I':
      return 'goes-into';
    case 'g':
    case 'G':
      return 'go-to';
    case 'k':
    case 'K':
      return 'show-how';
    case 'Insert':
      session.write({ kind: 'new-cell', part: cell.part, after: id });
      return 'done';
    case 'l':
    case 'L':
      session.write(
        isBlank(cell)
          ? { kind: 'table-here', cell: id }
          : { kind: 'new-table', part: cell.part, after: id },
      );
      return 'done';
    case 'Delete':
      return 'remove';
    default:
      if (on !== 'name' || cell.table || !/^[\d$€£?.½¼¾]$/.test(key)) return 'nothing';
      // The start of an amount: a number is changed by typing it.
      session.write({ kind: lineOf(session, id), cell: id, typed: key });
      return 'done';
  }
}

/** Alt with an arrow moves what has the keyboard: a row, or a part by its heading. */
export function moveKey(
  session: Session,
  on: { readonly cell: CellId } | { readonly part: string },
  event: KeyboardEvent,
): Asked {
  if (!event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return 'nothing';
  if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return 'nothing';
  const by = event.key === 'ArrowUp' ? -1 : 1;
  if ('cell' in on) moveBy(session, on.cell, by);
  else movePartBy(session, on.part, by);
  return 'done';
}

/** Ctrl G, from anywhere, also out of a line that is being written. */
export function goToKey(event: KeyboardEvent): Asked {
  const asked = (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey;
  return asked && event.key.toLowerCase() === 'g' ? 'go-to' : 'nothing';
}

/** What is written when its number is changed. */
function lineOf(session: Session, id: CellId): 'formula' | 'by-hand' {
  return session.door.state(id).input.byHand === null ? 'formula' : 'by-hand';
}

/** Ctrl Z and its like; not in a line that is being written, which has an undoing of its own. */
export function undoKey(session: Session, event: KeyboardEvent): Asked {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return 'nothing';
  if (isWritten(event)) return 'nothing';
  const key = event.key.toLowerCase();
  if (key === 'z' && !event.shiftKey) session.undo();
  else if (key === 'y' || key === 'z') session.redo();
  else return 'nothing';
  return 'done';
}

/** Alt and a digit makes a mend of the chosen cell; N goes to the next one with something to mend, Shift N back. */
export function problemKey(session: Session, event: KeyboardEvent): Asked {
  if (event.ctrlKey || event.metaKey || session.writing !== null || isWritten(event)) {
    return 'nothing';
  }
  const digit = /^Digit([1-9])$/.exec(event.code)?.[1];
  if (event.altKey) {
    if (digit === undefined || event.shiftKey) return 'nothing';
    return session.mendChosen(Number(digit) - 1) ? 'done' : 'nothing';
  }
  if (event.key.toLowerCase() !== 'n') return 'nothing';
  session.goToProblem(event.shiftKey ? -1 : 1);
  return 'done';
}

/** Does the key go into a line that is being written? */
function isWritten(event: KeyboardEvent): boolean {
  const [on] = event.composedPath();
  return on instanceof HTMLInputElement || on instanceof HTMLTextAreaElement;
}

/** F1 anywhere; H where nothing is being written. */
export function guideKey(session: Session, event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  // In a list of choices a letter goes to the choice that begins with it.
  const chooses = event.composedPath()[0] instanceof HTMLSelectElement;
  const free = !isWritten(event) && !chooses && session.writing === null;
  const plain = event.key.toLowerCase() === 'h' && free;
  return event.key === 'F1' || plain;
}

/** S where nothing is being written. */
export function snapshotsKey(session: Session, event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return false;
  return event.key.toLowerCase() === 's' && !isWritten(event) && session.writing === null;
}

/** C where nothing is being written and no tape is open: what it tries out is no price yet. */
export function clientKey(session: Session, event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return false;
  const chooses = event.composedPath()[0] instanceof HTMLSelectElement;
  return event.key.toLowerCase() === 'c' && !isWritten(event) && !chooses && session.isAtRest;
}

/** V where nothing is being written. */
export function movesKey(session: Session, event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return false;
  return event.key.toLowerCase() === 'v' && !isWritten(event) && session.writing === null;
}

/** A where nothing is being written. */
export function whatIfKey(session: Session, event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return false;
  return event.key.toLowerCase() === 'a' && !isWritten(event) && session.writing === null;
}

/** E watches the cell or the part that has the keyboard, or lets it go; Shift E the price, from anywhere. */
export function watchKey(
  session: Session,
  on: { readonly cell: CellId } | { readonly part: string } | null,
  event: KeyboardEvent,
): Result | null {
  if (event.ctrlKey || event.metaKey || event.altKey || session.writing !== null) return null;
  if (event.key.toLowerCase() !== 'e' || isWritten(event)) return null;
  if (event.shiftKey) return { of: 'price' };
  if (!on) return null;
  return 'cell' in on ? { of: 'cell', cell: on.cell } : { of: 'part', part: on.part };
}

/** How far a key on the rod scrolls, in pixels; null for other keys. */
export function rodKey(key: string, { height, total }: RodView): number | null {
  switch (key) {
    case 'ArrowDown':
      return 40;
    case 'ArrowUp':
      return -40;
    case 'PageDown':
      return height * 0.9;
    case 'PageUp':
      return -height * 0.9;
    case 'Home':
      return -total;
    case 'End':
      return total;
    default:
      return null;
  }
}
