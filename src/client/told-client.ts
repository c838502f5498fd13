// What the owner wrote under a line for the client's eyes: the remarks `client`. Nothing else of a line is told.
import type { Cell } from '../notebook/document.ts';

export function toldClient(cell: Cell): readonly string[] {
  return cell.remarks.flatMap(({ kind, text }) => (kind === 'client' && text !== '' ? [text] : []));
}
