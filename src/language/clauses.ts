// Level 3: clauses, with or without a comma. Each closes the sum to its left and works on it.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { amountAfterComma, perOne, wholeOnes } from './after-comma.ts';
import { cutFromStock, inClause, inUnitsAfter, toUnits, unitAlone } from './in-clause.ts';
import { trailAt } from './leads-and-trails.ts';
import { rounded, seesRounding } from './rounding.ts';
import { tablePhraseAt } from './table-phrases.ts';
import { ALL_LIMITS, LIMITS, SHARE_OF } from './limit-words.ts';
import { asClause, wholeAlone } from './as-clause.ts';
import { expectSlot } from './values.ts';
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
  if (r.seesAt(comma, 'marked', 'up')) return markedUp(r, of, comma);
  // `labour at least $3,500`: without an `is` it is no comparison.
  const least = comma === 0 && r.conditions === 0 && tablePhraseAt(r, 1) === null;
  if (least && r.sees('at', 'least')) return limited(r, of, 0, 'not-less', 2);
  if (least && r.sees('at', 'most')) return limited(r, of, 0, 'not-more', 2);
  for (const [words, side] of comma > 0 ? ALL_LIMITS : LIMITS) {
    if (r.seesAll(comma, words)) return limited(r, of, comma, side, words.length);
  }
  const shareOf = SHARE_OF.find((words) => r.seesAll(comma, words));
  if (shareOf) {
    r.at += comma;
    r.take(shareOf.length, 'phrase');
    return wholeAlone(r, of, expectSlot(r));
  }
  if (r.seesAt(comma, 'as')) return asClause(r, of, comma);
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

function markedUp(r: Reader, of: Formula, comma: number): Formula {
  r.at += comma;
  r.take(2, 'phrase');
  // A name may begin with the word: `marked up by the yard`. The longer one wins.
  const own = r.nameAt(0)?.length ?? 0;
  if (r.sees('by') && own < (r.nameAt(1)?.length ?? 0) + 1) r.take(1, 'phrase');
  const share = expectSlot(r);
  return { kind: 'marked-up', of, share, spot: r.since(of.spot.from) };
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
  const limit = expectSlot(r);
  return { kind: 'limited', of, side, limit, opSpot, spot: r.since(of.spot.from) };
}
