// What the guide asks of its own notebook: what a line said at first, and the lines that an example needs.
import type { CellId } from '../language/tree.ts';
import type { Cell, Remark } from '../notebook/document.ts';
import { remarkText } from '../notebook/remarks.ts';
import { allCells } from './reading-order.ts';
import type { Door, Session } from './session.ts';

/** The guide as it was fetched: what each line said, and what the numbers in its prose are numbers of. */
export interface AtFirst {
  readonly cells: ReadonlyMap<CellId, Cell>;
  /** By the part and the number as it was shown at first. */
  readonly numbers: ReadonlyMap<string, CellId>;
}

export function atFirst(door: Door): AtFirst {
  const cells = allCells(door.notebook);
  const numbers = new Map<string, CellId>();
  for (const { id, part } of cells) {
    const key = numberKey(part, door.shown(id)?.text ?? '');
    if (!numbers.has(key)) numbers.set(key, id);
  }
  return { cells: new Map(cells.map((cell) => [cell.id, cell])), numbers };
}

/** A number of the prose as it is now; as it is written where no line of the part came to it. */
export function numberNow(door: Door, first: AtFirst, part: string, written: string): string {
  const id = first.numbers.get(numberKey(part, written));
  return (id === undefined ? null : door.shown(id)?.text) ?? written;
}

function numberKey(part: string, shown: string): string {
  return `${part}: ${shown}`;
}

/** Was something written over this line of the guide? */
export function isChanged(now: Cell, first: Cell | undefined): boolean {
  if (!first) return false;
  return (
    now.formula !== first.formula ||
    now.name !== first.name ||
    now.table?.source !== first.table?.source ||
    remarkText(now.remarks, 'by hand') !== remarkText(first.remarks, 'by hand')
  );
}

/** One line as it was, by one change that the guide's own undo knows. */
export function putBack(session: Session, now: Cell, first: Cell, text: string): void {
  const source = text.slice(first.spot.from, first.spot.to);
  const { from, to } = now.spot;
  session.apply((door) =>
    door.replaceText({ say: `Put back: ${first.name}`, splices: [{ from, to, insert: source }] }),
  );
}

/**
 * The lines that this one stands on, and itself, each in its part, as a text that can be inserted;
 * notes to the reader of the guide stay behind.
 */
export function exampleText(door: Door, cell: CellId): string {
  const wanted = new Set<CellId>();
  const waiting = [cell];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    const holder = holderOf(door, id);
    if (holder === null || wanted.has(holder)) continue;
    wanted.add(holder);
    const rows = door.rows(holder)?.flat() ?? [];
    for (const each of [holder, ...rows]) waiting.push(...door.state(each).needs);
    if (holder !== id) waiting.push(...door.state(id).needs);
  }
  const parts = door.notebook.parts.flatMap((part) => {
    const lines = part.blocks.flatMap((block) =>
      block.kind === 'cell' && wanted.has(block.cell.id) ? [lineOf(door, block.cell)] : [],
    );
    return lines.length === 0 ? [] : [`## ${part.name}\n\n${lines.join('\n')}\n`];
  });
  return `# From the guide\n\n${parts.join('\n')}`;
}

/** The line of the notebook that a cell stands in: itself, or the table whose row or column it is. */
function holderOf(door: Door, id: CellId): CellId | null {
  const cells = allCells(door.notebook);
  if (cells.some((cell) => cell.id === id)) return id;
  const table = cells.find(
    (cell) => cell.table !== null && (door.rows(cell.id) ?? []).some((row) => row.includes(id)),
  );
  return table?.id ?? null;
}

function lineOf(door: Door, cell: Cell): string {
  const { text } = door.notebook;
  let left = '';
  let at = cell.spot.from;
  for (const remark of cell.remarks.filter(isForReaders)) {
    left += text.slice(at, lineStart(text, remark.spot.from));
    at = Math.max(at, lineEnd(text, remark.spot.to));
  }
  return (left + text.slice(at, cell.spot.to)).trimEnd();
}

function isForReaders({ kind, text }: Remark): boolean {
  return kind === 'note' && /[`*]/.test(text);
}

function lineStart(text: string, at: number): number {
  return text.lastIndexOf('\n', at - 1) + 1;
}

function lineEnd(text: string, at: number): number {
  if (text[at - 1] === '\n') return at;
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end + 1;
}
