// So many or so much for each of what was counted, told after a comma: `6 posts, 8 lags per post`, `66 balusters, 2 holes each`,
// `9 bolts, 2 per`.
import { NONE_WRITTEN } from '../quantity/form.ts';
import { heldIn } from './amounts-held.ts';
import { seesAmount, writtenAmount } from './amounts.ts';
import type { Reader } from './reader.ts';
import { roughCount } from './rough.ts';
import type { Formula } from './tree.ts';
import { closedWhole } from './values.ts';

/** A rate of what stands before the comma multiplies it; null where it is per something else. */
export function eachTakesAfter(r: Reader, of: Formula): Formula | null {
  const noun = roughCount(r, of);
  if (noun === null || !r.sees(',')) return null;
  const { at, brackets } = r;
  const marks = r.marks.length;
  const opSpot = { from: r.token.from, to: r.token.to };
  r.at++;
  if (!seesAmount(r)) {
    r.goBack(at, marks, brackets);
    return null;
  }
  const amount = writtenAmount(r);
  const bare = amount.kind === 'amount' && amount.bare && r.sees('per') && endsPer(r);
  const rate = amount.kind === 'amount' && amount.holds.measure.kind === 'amount' ? amount : null;
  const per =
    rate?.holds.measure.kind === 'amount' ? rate.holds.measure.rate?.under.dimension : null;
  const [only, ...more] = per?.nouns ?? [];
  const fits = only && more.length === 0 && (only.noun === noun || only.noun === 'each');
  if (r.problem || !rate || !(fits || bare) || isPrice(rate)) {
    r.goBack(at, marks, brackets);
    return null;
  }
  if (bare) r.take(1, 'phrase');
  const right = bare
    ? { ...rate, ...heldIn(rate.value, PLAIN_FORM, NONE_WRITTEN), bare: true }
    : rate;
  const spot = r.since(of.spot.from);
  return { kind: 'binary', op: 'times', opSpot, left: closedWhole(of), right, spot };
}

const PLAIN_FORM = { over: [], under: [] } as const;

function endsPer(r: Reader): boolean {
  const { kind, text } = r.peek(1);
  return kind === 'end' || /^[,.)?]$/.test(text);
}

/** A price after a comma could be for all of them. */
function isPrice({ holds }: Extract<Formula, { kind: 'amount' }>): boolean {
  return holds.measure.kind === 'amount' && holds.measure.dimension.money !== 0;
}
