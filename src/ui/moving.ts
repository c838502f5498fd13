// Moving and duplicating from the page: one place up or down, past prose and headings and on into the next part,
// to a part that was chosen, or to where something was dropped.
import type { CellId } from '../language/tree.ts';
import type { Part } from '../notebook/document.ts';
import type { Session } from './session.ts';

/** One place up (-1) or down (1); at the end of its part the cell goes on into the next one. */
export function moveBy(session: Session, id: CellId, by: -1 | 1): void {
  const cell = session.cell(id);
  const part = cell && session.part(cell.part);
  if (!cell || !part) return;
  const place = part.blocks.findIndex((b) => b.kind === 'cell' && b.cell.id === id);
  const to = place + by;
  // Counted without the cell itself there is one place fewer.
  if (to >= 0 && to < part.blocks.length) {
    moveTo(session, id, part.key, to);
    return;
  }
  const { parts } = session.door.notebook;
  const next = parts[parts.findIndex(({ key }) => key === part.key) + by];
  if (next) moveTo(session, id, next.key, by < 0 ? next.blocks.length : 0);
}

export function moveTo(session: Session, id: CellId, part: string, place: number): void {
  const name = session.cell(id)?.name ?? '';
  const moved = session.move(name, (door, values) => door.moveCell(id, { part, place }, values));
  if (moved) session.bring(id);
}

/** To the end of a part that was chosen. */
export function moveToPart(session: Session, id: CellId, part: string): void {
  moveTo(session, id, part, session.part(part)?.blocks.length ?? 0);
}

/** One place among the parts; what stands above the first of them stays. */
export function movePartBy(session: Session, key: string, by: -1 | 1): void {
  const parts = movable(session);
  const to = parts.findIndex((part) => part.key === key) + by;
  if (to >= 0 && to < parts.length) movePartTo(session, key, to);
}

export function movePartTo(session: Session, key: string, place: number): void {
  const name = session.part(key)?.name ?? '';
  const moved = session.move(name, (door, values) => door.movePart(key, place, values));
  if (moved) session.bringPart(key);
}

export function duplicate(session: Session, id: CellId): void {
  if (!session.apply((door) => door.duplicateCell(id))) return;
  const copy = session.neighbour(id, 1);
  session.tellDone();
  if (copy !== null) session.bring(copy);
}

export function duplicatePart(session: Session, key: string): void {
  const before = new Set(session.door.notebook.parts.map((part) => part.key));
  if (!session.apply((door) => door.duplicatePart(key))) return;
  session.tellDone();
  const copy = session.door.notebook.parts.find((part) => !before.has(part.key));
  if (copy) session.bringPart(copy.key);
}

/** The parts that have an order: all but what stands above the first. */
export function movable(session: Session): readonly Part[] {
  return session.door.notebook.parts.filter(({ key }) => key !== '');
}
