// What it would come to if the prices past their date had moved: tried on a twin, the notebook stays as it is.
import type { Estimate } from '../notebook/estimate.ts';
import { Twin } from '../notebook/twin.ts';
import type { PastDate } from './past-dates.ts';
import { pricesIn } from './taken-out.ts';

export interface Moved {
  /** The price as it stands, and with those prices moved; dollars and cents as text. */
  readonly before: string;
  readonly after: string;
  /** How many cells have a price that was moved. */
  readonly count: number;
}

/** `percent` as it is written: `12`, `-5`. Null where none of them can be moved here. */
export function ifMoved(
  original: Estimate,
  past: readonly PastDate[],
  percent: string,
): Moved | null {
  const twin = new Twin(original.notebook);
  const { estimate } = twin;
  const [how, share] = percent.startsWith('-')
    ? ['less', percent.slice(1)]
    : (['plus', percent] as const);
  let count = 0;
  for (const { cell, way } of past) {
    const { id } = twin.cell(cell);
    const { formula } = estimate.state(id).input;
    const spots =
      way.kind === 'ask'
        ? [{ from: 0, to: formula.length }]
        : way.kind === 'take-out'
          ? pricesIn(estimate, id).map((price) => price.spot)
          : [];
    if (spots.length === 0) continue;
    let put = formula;
    for (const { from, to } of spots.toSorted((a, b) => b.from - a.from))
      put = `${put.slice(0, from)}(${put.slice(from, to)} ${how} ${share}%)${put.slice(to)}`;
    if ('change' in estimate.setFormula(id, put)) count++;
  }
  if (count === 0) return null;
  return { before: original.costs().total.price, after: estimate.costs().total.price, count };
}
