// So much fall over so much run: `a fall of 1 in 60 over 20 ft`, `rise of a 6 in 12 slope over a run of 14 ft`.
import type { Reader } from './reader.ts';
import type { Amount, Formula } from './tree.ts';
import { writtenAmount } from './amounts.ts';
import { ARTICLES } from './lexer.ts';
import { expectSlot, slotEnd } from './values.ts';
import { hardPartOf } from './layers.ts';
import { LENGTH } from '../quantity/dimension.ts';

export const FALLS: ReadonlySet<string> = new Set(
  'fall rise drop slope gradient grade pitch'.split(' '),
);

/** `fall of 1 in 60 over 20 ft`, `rise of a 6 in 12 slope over a run of 14 ft`; alone it is the slope. */
export function readFall(r: Reader, opening: number): Formula {
  const from = r.token.from;
  r.take(opening, 'phrase');
  r.skipArticle();
  const slope = writtenAmount(r);
  if (r.problem) return slope;
  while (FALLS.has(r.token.text)) r.take(1, 'phrase');
  return alongSlope(r, slope, from) ?? slope;
}

/** `over 20 ft` after a slope: so much rise in that run. Null where no run follows. */
export function alongSlope(r: Reader, slope: Formula, from: number): Formula | null {
  if (slope.kind !== 'amount' || !isSlope(slope)) return null;
  let ahead = 0;
  if (FALLS.has(r.token.text) && !r.nameAt(0)) ahead = 1;
  if (!['over', 'along', 'across', 'for', 'in'].includes(r.peek(ahead).text)) return null;
  const spotOp = { from: r.peek(ahead).from, to: r.peek(ahead).to };
  let skip = ahead + 1;
  if (ARTICLES.has(r.peek(skip).text)) skip++;
  if (
    (r.seesAt(skip, 'run') || r.seesAt(skip, 'length') || r.seesAt(skip, 'distance')) &&
    r.seesAt(skip + 1, 'of')
  )
    skip += 2;
  // A bracket is read once only: what it measures is not known before.
  if (slotEnd(r, skip) < 0 || /^[([]$/.test(r.peek(skip).text)) return null;
  const { at } = r;
  const marks = r.marks.length;
  r.take(skip, 'phrase');
  const run = expectSlot(r);
  if (r.problem) return run;
  if (hardPartOf(r, run) !== LENGTH) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  const spot = r.since(from);
  const isShare = slope.holds.measure.kind === 'share';
  return isShare
    ? { kind: 'part-of', share: slope, of: run, spot }
    : { kind: 'binary', op: 'at', opSpot: spotOp, left: run, right: slope, spot };
}

/** A length per length, or a percent after `fall of`. */
function isSlope({ holds: { measure } }: Amount): boolean {
  if (measure.kind === 'share') return true;
  if (measure.kind !== 'amount' || !measure.rate) return false;
  return measure.rate.over.dimension === LENGTH && measure.rate.under.dimension === LENGTH;
}
