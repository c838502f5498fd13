// What a cell in a circle is told: the way around, and for a fee in its own total the formula that has none.
import { marks } from '../language/marks.ts';
import type { Mark, Scan } from '../language/reading.ts';
import type { Report } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';
import { circle, largeCircle, ownTotal } from './faults.ts';
import type { CellInput } from './outcome.ts';

/** A formula without the circle, or null; `others`: the lines that its recaps add beside it. */
export type Mend = (share: string) => string | null;

/**
 * `path`: from this cell around to the one that needs it again, each needing the next; `found`: its formula;
 * `isNext`: does a mark in it name the next cell of the way?
 */
export function circleReport(
  found: Scan,
  path: readonly CellInput[],
  isNext: (mark: Mark) => boolean,
  mend: Mend,
): Report {
  const [cell] = path;
  const names = path.map((each) => each.name);
  const spots = spotsOf(found, isNext);
  if (spots.length > 0) return circle(names, spots);
  const whole = { from: 0, to: found.text.length };
  if (path.length > 1 || cell?.money?.line !== 'cost') return circle(names, [whole]);
  const share = /\d+(?:\.\d+)?\s*%/.exec(found.text)?.[0];
  const formula = share === undefined ? null : mend(share);
  const fixes = formula === null ? [] : [{ say: `Take ${share} of the whole`, formula }];
  return ownTotal(cell.name, share ?? '10%', [whole], fixes);
}

/** Where the way around is too long to look for: the next cell on it, and how many wait for one another. */
export function largeCircleReport(
  found: Scan,
  cell: CellInput,
  next: CellInput,
  isNext: (mark: Mark) => boolean,
  many: number,
): Report {
  const spots = spotsOf(found, isNext);
  const whole = { from: 0, to: found.text.length };
  return largeCircle(cell.name, next.name, many, spots.length > 0 ? spots : [whole]);
}

/** `11% of total cost of this part` in a line of that part: the same fee, worked from the other lines. */
export function feeOfWhole(share: string, others: readonly string[]): string | null {
  const last = others.at(-1);
  if (last === undefined || others.length > MOST_LINES) return null;
  const listed = `total of ${others.slice(0, -1).join(', ')} and ${last},`;
  return `${share} of (${others.length === 1 ? last : listed} for ${share} fee)`;
}

/** A list of more lines than this is no formula to offer. */
const MOST_LINES = 8;

function spotsOf(found: Scan, isNext: (mark: Mark) => boolean): readonly Spot[] {
  return marks(found)
    .filter(isNext)
    .map(({ from, to }) => ({ from, to }));
}
