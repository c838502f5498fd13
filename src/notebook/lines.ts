// How new lines are written: as their neighbours are.
import type { Cell, Part } from './document.ts';
import type { NotebookText } from './notebook-text.ts';
import { lineEnd } from './outline.ts';

const LEAD = /^[ \t]*(?:[-+*]|\d{1,9}[.)])[ \t]+/;

/** The line break that this text uses. */
export function lineBreak(text: string): string {
  return /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
}

/** One line: line breaks and other characters that no line has become spaces. */
export function oneLine(text: string): string {
  // eslint-disable-next-line no-control-regex
  return text.replace(/[\0-\x1f\x7f\x85\u2028\u2029]+/g, ' ').trim();
}

/** Blanks, bullet and blanks before the text of the line at `at`; null when it is no item. */
export function leadAt(text: string, at: number): string | null {
  return LEAD.exec(text.slice(at, lineEnd(text, at)))?.[0] ?? null;
}

/** The lead of a new cell after this one: the same bullet, or the next number. */
export function nextLead(lead: string): string {
  return lead.replace(/\d{1,9}/, (n) => String(Number(n) + 1));
}

/** The lead of cells in this part, or in the nearest one that has cells. */
export function cellLead(notebook: NotebookText, part: Part): string {
  const here = notebook.parts.indexOf(part);
  const near = [...notebook.parts.keys()].sort((a, b) => Math.abs(a - here) - Math.abs(b - here));
  for (const index of near) {
    const cell = cellsOf(notebook.parts[index]).at(-1);
    const lead = cell && leadAt(notebook.text, cell.spot.from);
    if (lead) return index === here ? nextLead(lead) : lead.replace(/\d{1,9}/, '1');
  }
  return '- ';
}

/** The blanks before the rows of a table in a new cell of this part, or after this one. */
export function tableLead(notebook: NotebookText, part: Part, after: Cell | null): string {
  const neighbour = after ?? cellsOf(part).at(-1);
  const lead =
    (neighbour && leadAt(notebook.text, neighbour.spot.from)) ?? cellLead(notebook, part);
  return nextLead(lead).replace(/[^\t]/g, ' ');
}

/** The lead of a new remark under this cell: as its other remarks, or as remarks of cells that begin alike. */
export function remarkLead(notebook: NotebookText, cell: Cell): string {
  const { text } = notebook;
  const own = cell.remarks.at(-1);
  const ownLead = own && leadAt(text, own.spot.from);
  if (ownLead) return nextLead(ownLead);
  const lead = leadAt(text, cell.spot.from) ?? '- ';
  const neighbours = [notebook.part(cell.part), ...notebook.parts];
  for (const part of neighbours) {
    if (!part) continue;
    for (const other of cellsOf(part)) {
      const remark = other.remarks[0];
      if (!remark || leadAt(text, other.spot.from)?.length !== lead.length) continue;
      const found = leadAt(text, remark.spot.from);
      if (found) return found;
    }
  }
  const bullet = /[-+*]/.exec(lead)?.[0] ?? '-';
  return `${lead.replace(/[^\t]/g, ' ')}${bullet} `;
}

export function cellsOf(part: Part): readonly Cell[] {
  return part.blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell] : []));
}
