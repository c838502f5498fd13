// Level 5: products. The loop goes on to the left, as in a sum.
import type { Arithmetic, Formula } from './tree.ts';
import type { Reader } from './reader.ts';
import { roughCount, roughDimension } from './rough.ts';
import { maybeManyPer, maybePerNoun } from './rates.ts';
import { crossedByLabel } from './length-labels.ts';
import { type Operator, termOperator } from './operators.ts';
import { askPerWhat, perUnit, refusesPer } from './per-what.ts';
import { expectValue } from './values.ts';
import { skipCentres, spacedAlong } from './spaced.ts';
import { LENGTH } from '../quantity/dimension.ts';
import { askAreaOver, askLayer, isLayer } from './layers.ts';

/** `2 people times 3 days at $180 a day each`: per day and per person, so it multiplies both. */
function isForEachOne(right: Formula): boolean {
  return right.kind === 'amount' && / per \S+ each$/.test(right.say);
}

/** What is in each, after a division: `20' sticks`, `350 per box`. Null where it is said in full. */
function inEach(r: Reader, left: Formula, op: Arithmetic): Formula | null {
  if ((op !== 'over' && op !== 'at') || r.token.kind !== 'number' || r.nameAt(0)) return null;
  const noun = r.seesAt(1, 'per') ? roughCount(r, left) : null;
  if (noun !== null) return maybeManyPer(r, noun);
  return op === 'at' || r.seesAt(1, 'per') ? null : maybePerNoun(r);
}

/** term = value { operator value } */
export function termFrom(r: Reader, first: Formula): Formula {
  let left = first;
  while (!r.problem) {
    const crossed = crossedByLabel(r, left);
    if (crossed) {
      left = crossed;
      continue;
    }
    const tight = r.sees('(') && !r.token.gap && left.kind === 'amount' && left.bare;
    const found: Operator | null = tight ? { op: 'times', words: 0 } : termOperator(r, 0);
    if (!found) return left;
    if (r.sees('per') && refusesPer(r)) return perUnit(r, left) ?? askPerWhat(r, left);
    if (found.op === 'at' && seesMarginAfter(r)) return left;
    const twice = askPerTwice(r, left);
    if (twice) return twice;
    const here = { from: r.token.from, to: r.token.from };
    const opSpot = found.words > 0 ? r.take(found.words, 'operator') : here;
    const right = inEach(r, left, found.op) ?? expectValue(r);
    if (r.sees('ways')) r.take(1, 'phrase');
    if (found.op === 'over') skipCentres(r);
    if (found.op === 'at' && !r.problem) {
      const spaced = roughDimension(r, left) === LENGTH ? spacedAlong(r, left, right) : null;
      if (spaced) {
        left = spaced;
        continue;
      }
    }
    const asked = askAreaOver(r, left, found.op, right) ?? askLayer(r, left, opSpot, right);
    if (asked) return asked;
    const each = found.op === 'at' && isForEachOne(right);
    const op = isLayer(r, left, found.op, opSpot, right) ? 'by' : each ? 'times' : found.op;
    const spot = { from: left.spot.from, to: r.since(left.spot.from).to };
    left = { kind: 'binary', op, opSpot, left, right, spot };
  }
  return left;
}

/** `(924 screws / 100) × $7.95 per 100`: by the hundred once, or divided twice? Null where only one is there. */
function askPerTwice(r: Reader, left: Formula): Formula | null {
  if (!r.sees('per') || r.peek(1).kind !== 'number' || left.kind !== 'binary') return null;
  if (left.op === 'over' || left.right.kind !== 'amount') return null;
  const by = /^[\d,]+$/.test(r.peek(1).text) ? Number(r.peek(1).text.replaceAll(',', '')) : 0;
  const before = left.left.kind === 'bracket' ? left.left.of : left.left;
  if (by < 2 || before.kind !== 'binary' || before.op !== 'over') return null;
  const under = before.right;
  if (under.kind !== 'amount' || !under.bare || !under.value?.equals(by)) return null;
  const spot = { from: r.gapBefore(r.token.from), to: r.peek(1).to };
  const said = r.slice({ from: r.token.from, to: spot.to });
  const whole = { from: left.spot.from, to: spot.to };
  return r.fail({
    code: 'two-readings',
    spots: [{ from: r.token.from, to: spot.to }],
    about: `It is divided by ${r.slice(under.spot)} already; "${said}" could say that again, or divide once more.`,
    fixes: [
      r.fix('Divided once', spot, ''),
      r.fix('Divided twice', whole, `(${r.slice(left.spot)}) divided by ${r.peek(1).text}`),
    ],
  });
}

/** `at a 20% margin` closes the sum before it, as `for` does. */
export function seesMarginAfter(r: Reader): boolean {
  for (let i = 1; i <= 7 && r.peek(i).kind !== 'end'; i++) {
    if (r.seesAt(i, '%', 'margin') || r.seesAt(i, 'percent', 'margin')) return true;
    if (!['a', 'an', '/', '-'].includes(r.peek(i).text) && r.peek(i).kind !== 'number')
      return false;
  }
  return false;
}
