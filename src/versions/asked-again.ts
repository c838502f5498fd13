// Prices past their date turned into `?` in one go: one that stands inside a formula gets a cell of its own first.
import type { CellId } from '../language/tree.ts';
import { difference } from '../notebook/change.ts';
import type { Cell, Change, Splice } from '../notebook/document.ts';
import type { Estimate } from '../notebook/estimate.ts';
import { cellsOf } from '../notebook/lines.ts';
import { Twin } from '../notebook/twin.ts';
import type { PastDate } from './past-dates.ts';
import { takeOut } from './taken-out.ts';

/** One edit that asks for all of them again; what each was stays beside its source. Null: none of them can be asked for. */
export function askAgain({ notebook }: Estimate, past: readonly PastDate[]): Change | null {
  const twin = new Twin(notebook);
  const { estimate } = twin;
  const wanted = new Map(past.map((one) => [one.cell, one]));
  // From the last cell to the first: what stands before a cell is still where it stands in the notebook.
  const cells = notebook.parts.flatMap(cellsOf).filter(({ id }) => wanted.has(id));
  const splices: Splice[] = [];
  const asked: string[] = [];
  for (const { id, name } of cells.toReversed()) {
    const before = estimate.notebook.text;
    const prices = pricesOf(estimate, twin.cell(id).id, wanted.get(id)?.way.kind);
    if (prices.length === 0) continue;
    for (const price of prices) ask(estimate, price);
    splices.unshift(difference(before, estimate.notebook.text));
    asked.push(name);
  }
  const [only] = asked;
  if (only === undefined) return null;
  const what = asked.length === 1 ? only : `${asked.length} prices past their date`;
  const say = `Ask again for ${what}`;
  // Where a new name made something else be written anew, too, the stretches may lie in one another.
  const apart = splices.every(({ from }, i) => i === 0 || (splices[i - 1]?.to ?? 0) <= from);
  return apart ? { say, splices } : twin.change(say);
}

/** The cells that hold the prices, the last first; none where they can't be asked for. */
function pricesOf(
  estimate: Estimate,
  id: CellId,
  way: PastDate['way']['kind'] | undefined,
): readonly CellId[] {
  switch (way) {
    case 'ask':
      return [id];
    case 'take-out': {
      const own = takeOut(estimate, id);
      return own === null || 'code' in own ? [] : own.toReversed();
    }
    case 'formula':
    case 'by-hand':
    case 'table':
    case undefined:
      return [];
  }
}

function ask(estimate: Estimate, id: CellId): void {
  const cell = estimate.notebook.parts.flatMap(cellsOf).find((one) => one.id === id);
  if (!cell) throw new Error(`no cell ${id} to ask for again`);
  const done = estimate.replaceText({ say: `Ask again for ${cell.name}`, splices: asking(cell) });
  if (!('change' in done)) throw new Error(`"${cell.name}" can't be asked for: ${done.message}`);
}

function asking({ formula, formulaSpot, remarks }: Cell): readonly Splice[] {
  const from = remarks.find(({ kind }) => kind === 'from');
  const said = from
    ? [{ from: from.textSpot.to, to: from.textSpot.to, insert: `; was ${formula}` }]
    : [];
  return [{ ...formulaSpot, insert: '?' }, ...said];
}
