// Level 4: sums. A share after plus, minus, less or with is of what stands before it.
// The loop goes on to the left, so a chain of ten thousand plus signs needs no stack.
import type { Reader } from './reader.ts';
import type { Formula, Spaced } from './tree.ts';
import { termFrom } from './products.ts';
import { closedWhole, expectValue } from './values.ts';
import { sumOperator, termOperator } from './operators.ts';
import { refuseTightRange } from './ranges.ts';
import { refuseMargin, refuseShareTimes, shareSaidAfter } from './added-shares.ts';
import { refuseOneMore } from './spaced.ts';
import { skipWhatMoneyIsFor } from './asides.ts';
import { roughCount, roughDimension } from './rough.ts';
import { LENGTH } from '../quantity/dimension.ts';

export function readSum(r: Reader): Formula {
  return sumFrom(r, termFrom(r, expectValue(r)));
}

/** sum = term { ('plus' | 'minus' | 'less' | 'with') term }; a share takes no multiplication to itself. */
export function sumFrom(r: Reader, first: Formula): Formula {
  let left = first;
  while (!r.problem) {
    const found = sumOperator(r, 0);
    if (!found) return left;
    const opSpot = r.take(found.words, 'operator');
    r.sums.push({ spot: opSpot, brackets: r.brackets });
    if (r.slice(opSpot) !== 'minus' && found.op === 'minus') {
      const hole = refuseTightRange(r, opSpot);
      if (hole) return hole;
    }
    const said = shareSaidAfter(r) ?? expectValue(r);
    if (r.problem) return left;
    const value = atBothEnds(r, said) ?? said;
    if (found.op === 'plus' && left.kind === 'spaced' && isOneMore(r, left, value)) {
      return refuseOneMore(r, left, opSpot, value);
    }
    if (r.sees('on', 'top') || r.sees('extra') || r.sees('more') || r.sees('again')) {
      if (r.nameAt(0) === null && r.holdsShare(value)) r.take(r.sees('on') ? 2 : 1, 'unread');
    }
    if (!r.sees('margin')) skipWhatMoneyIsFor(r, value);
    if (value.kind === 'amount' && r.holdsShare(value) && r.sees('margin')) {
      if (r.slice(opSpot).toLowerCase() !== 'with') return refuseMargin(r, opSpot, value.spot);
      // `labour with a 20% margin`
      r.take(1, 'phrase');
      const shares = [{ share: value, label: 'margin' }];
      left = { kind: 'for-shares', of: left, shares, spot: r.since(left.spot.from) };
      continue;
    }
    const isShare = r.holdsShare(value);
    const more = isShare ? termOperator(r, 0) : null;
    if (more && more.op !== 'at') return refuseShareTimes(r, left, opSpot, value);
    const right = isShare ? value : termFrom(r, value);
    const spot = { from: left.spot.from, to: Math.max(right.spot.to, r.since(left.spot.from).to) };
    left = { kind: 'binary', op: found.op, opSpot, left, right, spot };
    if (isShare && termOperator(r, 0)) left = termFrom(r, closedWhole(left));
  }
  return left;
}

/** `less 1 1/2 in both ends`, `plus 3 in at each side`: twice that length. Null where it is said of none. */
function atBothEnds(r: Reader, value: Formula): Formula | null {
  const joined = /^(at|on|off|from|for)$/.test(r.token.text) ? 1 : 0;
  const each = r.peek(joined);
  if (each.kind !== 'word' || !/^(both|each|either)$/.test(each.text)) return null;
  if (!/^(ends?|sides?|edges?)$/.test(r.peek(joined + 1).text) || r.nameAt(joined)) return null;
  if (roughDimension(r, value) !== LENGTH) return null;
  const opSpot = r.take(joined + 2, 'operator');
  const left = r.number('2', '2', opSpot);
  return {
    kind: 'binary',
    op: 'times',
    opSpot,
    left,
    right: value,
    spot: r.since(value.spot.from),
  };
}

/** A bare one, or one of the very thing that is set out, after a count with both its ends. */
function isOneMore(r: Reader, spaced: Spaced, value: Formula): boolean {
  if (spaced.ends !== 'both' || value.kind !== 'amount' || !value.value?.equals(1)) return false;
  if (/^[([]/.test(r.slice(spaced.spot))) return false;
  return value.bare || roughCount(r, value) === spaced.noun;
}
