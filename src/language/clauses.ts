// Level 3: clauses, with or without a comma. Each closes the sum to its left and works on it.
import type { Reader } from './reader.ts';
import { LENGTH, hardPart } from '../quantity/dimension.ts';
import { roughDimension } from './rough.ts';
import type { Formula } from './tree.ts';
import { amountAfterComma, perOne, wholeOnes } from './after-comma.ts';
import { cutFromStock, inClause, inUnitsAfter, toUnits, unitAlone } from './in-clause.ts';
import { reasonAt, trailAt } from './leads-and-trails.ts';
import { rounded, seesRounding } from './rounding.ts';
import { tablePhraseAt } from './table-phrases.ts';
import { ALL_LIMITS, LIMITS, SHARE_OF } from './limit-words.ts';
import { asClause, wholeAlone } from './as-clause.ts';
import { expectSlot, expectValue, slotEnd } from './values.ts';
import { stockAfter } from './stock.ts';
import { forClause } from './for-clause.ts';
import { seesMarginAfter } from './products.ts';

/** The clause that stands here, perhaps after a comma, worked on `of`; null where there is none. */
export function maybeClause(r: Reader, of: Formula): Formula | null {
  // `, but at least $350`
  const but = r.sees('but') || r.sees(',', 'but');
  const comma = (r.sees(',') ? 1 : 0) + (but ? 1 : 0);
  const first = r.peek(comma);
  if (first.kind !== 'word') return comma === 1 && !but ? amountAfterComma(r, of) : null;
  if (comma === 1 && !but) {
    const whole = wholeOnes(r, of) ?? perOne(r, of);
    if (whole) return whole;
  }
  if (!OPENERS.has(first.text)) return comma === 1 && !but ? unitAlone(r, of) : null;
  if (comma <= 1 && trailAt(r, comma) > 0) return null;
  if (seesRounding(r, comma)) return rounded(r, of, comma);
  if (r.seesAt(comma, 'marked', 'up')) {
    r.at += comma;
    r.take(2, 'phrase');
    return markedUp(r, of);
  }
  // `labour at least $3,500`: without an `is` it is no comparison.
  const least = comma === 0 && r.conditions === 0 && tablePhraseAt(r, 1) === null;
  if (least && r.sees('at', 'least')) return limited(r, of, 0, 'not-less', 2);
  if (least && r.sees('at', 'most')) return limited(r, of, 0, 'not-more', 2);
  for (const [words, side] of comma > 0 ? ALL_LIMITS : LIMITS) {
    if (!r.seesAll(comma, words)) continue;
    // `is at least 3 in but not more than 5 in` compares again.
    if (but && r.beside > 0) return null;
    return checkOrLimit(r, of, comma, side, words) ?? limited(r, of, comma, side, words.length);
  }
  const shareOf = SHARE_OF.find((words) => r.seesAll(comma, words));
  if (shareOf) {
    r.at += comma;
    r.take(shareOf.length, 'phrase');
    return wholeAlone(r, of, expectSlot(r));
  }
  if (r.seesAt(comma, 'as')) return reasonAt(r, comma) ? null : asClause(r, of, comma);
  if (r.seesAt(comma, 'in')) return inClause(r, of, comma);
  const to = toUnits(r, comma);
  if (to > 0) return inUnitsAfter(r, of, to);
  const cut = stockAfter(r, comma);
  if (cut > 0 && (comma === 0 || !r.seesAt(comma, 'from'))) return cutFromStock(r, of, comma + cut);
  if (r.seesAt(comma, 'for')) return forClause(r, of, comma);
  if (comma === 0 && r.sees('at') && seesMarginAfter(r)) return forClause(r, of, comma);
  return null;
}

/** The words that a clause can begin with: most of what stands after a value is none of them. */
export const OPENERS: ReadonlySet<string> = new Set([
  ...ALL_LIMITS.map(([[first = '']]) => first),
  'rounded',
  'nearest',
  'up',
  'down',
  'to',
  'roundup',
  'round',
  'rnd',
  'rd',
  'rounding',
  'marked',
  'as',
  'in',
  'for',
  'at',
  'into',
  'converted',
  'convert',
  'changed',
  'turned',
  'expressed',
  'shown',
  'cut',
  'ripped',
  'sawn',
  'made',
  'taken',
  'from',
  'out',
]);

/** What stands after `marked up`. */
export function markedUp(r: Reader, of: Formula): Formula {
  // A name may begin with the word: `marked up by the yard`. The longer one wins.
  const own = r.nameAt(0)?.length ?? 0;
  if (r.sees('by') && own < (r.nameAt(1)?.length ?? 0) + 1) r.take(1, 'phrase');
  const share = expectSlot(r);
  return { kind: 'marked-up', of, share, spot: r.since(of.spot.from) };
}

/** `unit rise no more than 200 mm`: of one cell's measure it could be a check as well. Null where it is a limit. */
function checkOrLimit(
  r: Reader,
  of: Formula,
  comma: number,
  side: 'not-less' | 'not-more',
  words: readonly string[],
): Formula | null {
  if (comma > 0 || of.kind !== 'name' || words[0] !== 'no' || r.brackets > 0) return null;
  const rough = roughDimension(r, of);
  if (!rough) return null;
  // `labour no more than 45% of subtotal`
  const end = slotEnd(r, words.length);
  const half = r.seesAt(words.length, 'half', 'of');
  const ofAnother = half || (end > 0 && r.seesAt(end, 'of'));
  if (hardPart(rough) !== LENGTH && !ofAnother) return null;
  const opSpot = r.take(words.length, 'phrase');
  const limit = expectLimit(r);
  if (r.problem) return limit;
  const [name, bound] = [r.slice(of.spot), r.slice(limit.spot)];
  const spot = { from: of.spot.from, to: limit.spot.to };
  const than = side === 'not-more' ? 'more' : 'less';
  return r.fail({
    code: 'two-readings',
    spots: [opSpot],
    about: `"${r.slice(spot)}" could ask whether it is so, or hold "${name}" to that. Write the one that is meant.`,
    fixes: [
      r.fix('Is it so?', spot, `${name} is at ${than === 'more' ? 'most' : 'least'} ${bound}`),
      r.fix('Hold it to that', spot, `${name}, not ${than} than ${bound}`),
    ],
  });
}

function limited(
  r: Reader,
  of: Formula,
  comma: number,
  side: 'not-less' | 'not-more',
  words: number,
): Formula {
  r.at += comma;
  const opSpot = r.take(words, 'phrase');
  const limit = expectLimit(r);
  return { kind: 'limited', of, side, limit, opSpot, spot: r.since(of.spot.from) };
}

/** One amount, name or bracket, or a share of one: `not more than 45% of subtotal`. */
function expectLimit(r: Reader): Formula {
  if (r.sees('half', 'of') && r.nameAt(0) === null) return expectValue(r);
  const limit = expectSlot(r);
  if (r.problem || !r.sees('of') || !r.holdsShare(limit)) return limit;
  r.take(1, 'operator');
  const of = expectSlot(r);
  return { kind: 'part-of', share: limit, of, spot: r.since(limit.spot.from) };
}
