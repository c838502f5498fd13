// Level 4: sums. A share after plus, minus, less or with is of what stands before it.
// The loop goes on to the left, so a chain of ten thousand plus signs needs no stack.
import type { Reader } from './reader.ts';
import type { Arithmetic, Formula, Spaced } from './tree.ts';
import { addsShare, askBothShares } from './and-shares.ts';
import { askWithDiscount, takenOff } from './taken-off.ts';
import { besideLength } from './times-beside.ts';
import { itAt } from './told-steps.ts';
import { termFrom } from './products.ts';
import { closedWhole, expectValue } from './values.ts';
import { sumOperator, termOperator } from './operators.ts';
import { refuseTightRange } from './ranges.ts';
import { refuseMargin, refuseShareTimes, shareSaidAfter } from './added-shares.ts';
import { refuseOneMore } from './spaced.ts';
import { skipOnHand, skipWhatMoneyIsFor } from './asides.ts';
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
    const both = /^and$/i.test(r.slice(opSpot)) ? askBothShares(r, left, opSpot, value) : null;
    if (both) return both;
    // `less 10% then 5%`: taken off as the first was.
    const repeated = /then$/i.test(r.slice(opSpot)) && addsShare(r, left) ? left.op : found.op;
    const op = takenOff(r, opSpot, repeated, value);
    if (!op) return askWithDiscount(r, opSpot, value);
    if (op === 'plus' && left.kind === 'spaced' && isOneMore(r, left, value)) {
      return refuseOneMore(r, left, opSpot, value);
    }
    if (op === 'plus' && r.sees('over') && r.holdsShare(value) && endsOver(r)) r.take(1, 'unread');
    if (r.sees('on', 'top', 'of')) skipFromIt(r, op);
    if (r.sees('on', 'top') || r.sees('extra') || r.sees('more') || r.sees('again')) {
      if (r.nameAt(0) === null && r.holdsShare(value)) r.take(r.sees('on') ? 2 : 1, 'unread');
    }
    if (op === 'minus') skipOnHand(r);
    if (op === 'plus') skipAdded(r);
    if (!/^with$/i.test(r.slice(opSpot)) || r.holdsShare(value)) skipFromIt(r, op);
    if (!r.sees('margin')) skipWhatMoneyIsFor(r, value);
    // `price / (1 - 20% margin)`
    if (op === 'minus' && r.sees('margin') && isWhole(left) && r.holdsShare(value))
      r.take(1, 'unread');
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
    const again = r.problem ? null : askTwiceWhat(r, left, right);
    if (again) return again;
    const priced = r.problem ? null : askPricedAll(r, left, opSpot, value, right);
    if (priced) return priced;
    const spot = { from: left.spot.from, to: Math.max(right.spot.to, r.since(left.spot.from).to) };
    left = { kind: 'binary', op, opSpot, ...besideLength(r, left, right), spot };
    if (isShare && termOperator(r, 0)) left = termFrom(r, closedWhole(left));
  }
  return left;
}

/** `and 10% over, whole sheets`: nothing that it would be divided by. */
function endsOver(r: Reader): boolean {
  const { kind, text } = r.peek(1);
  return kind === 'end' || /^[,.)?]$/.test(text);
}

/** One, or a hundred percent, from which shares are taken. */
function isWhole(tree: Formula): boolean {
  let first = tree;
  while (first.kind === 'binary' && first.op === 'minus') first = first.left;
  return first.kind === 'amount' && /^(1|100%)$/.test(first.say);
}

/** `with overhead added`, `plus $85 added on`: said twice. */
function skipAdded(r: Reader): void {
  if (!r.sees('added') || r.nameAt(0) || /^(to|up|together)$/.test(r.peek(1).text)) return;
  r.take(r.seesAt(1, 'on') || r.seesAt(1, 'in') ? 2 : 1, 'unread');
}

/** `add 10% to it`, `take $50 off that`: to what was told so far, as it is anyway. */
function skipFromIt(r: Reader, op: Arithmetic): void {
  const joined = op === 'plus' ? /^(to|onto|on)$/ : /^(off|from)$/;
  if (!joined.test(r.token.text)) return;
  const of = r.sees('on', 'top', 'of') ? 3 : r.sees('off', 'of') ? 2 : 1;
  const it = itAt(r, of);
  if (it > 0) r.take(of + it, 'unread');
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

/** `labour plus materials twice`: the last alone, or all of it? Null where that is not said, or more follows. */
function askTwiceWhat(r: Reader, left: Formula, right: Formula): Formula | null {
  const last = r.tokens[r.at - 1];
  if (!last || (last.text !== 'twice' && last.text !== 'times') || right.kind !== 'binary')
    return null;
  const said = right.opSpot;
  if (!r.closes || right.op !== 'times' || said.to !== last.to) return null;
  const times = right.left.kind === 'amount' ? right.left.say : '2';
  const by = times === '2' ? 'twice' : `${times} times`;
  const [all, one] = [
    r.slice({ from: left.spot.from, to: right.right.spot.to }),
    r.slice(right.right.spot),
  ];
  return r.fail({
    code: 'two-readings',
    spots: [said],
    about: `"${r.slice(said)}" could work on "${one}" alone or on all that stands before it. Write the one that is meant.`,
    fixes: [
      r.fix('The last alone', { from: right.right.spot.from, to: said.to }, `(${by} ${one})`),
      r.fix('All of it', { from: left.spot.from, to: said.to }, `${by} (${all})`),
    ],
  });
}

/** `40 bags less 6 at $6.48`: money can't be taken from bags, so the price is of all that are left. It is offered so. */
function askPricedAll(
  r: Reader,
  left: Formula,
  opSpot: { readonly from: number; readonly to: number },
  value: Formula,
  right: Formula,
): Formula | null {
  const noun = roughCount(r, left);
  if (noun === null || right.kind !== 'binary' || right.op !== 'at' || right.left !== value)
    return null;
  const bare = value.kind === 'amount' && value.bare;
  if (!bare && roughCount(r, value) !== noun) return null;
  const price = roughDimension(r, right.right);
  if (!price || price.money !== 1 || roughDimension(r, right) === roughDimension(r, left))
    return null;
  const all = { from: left.spot.from, to: right.opSpot.from };
  return r.fail({
    code: 'two-readings',
    spots: [{ from: opSpot.from, to: right.spot.to }],
    about: `The price could be of all of "${r.slice(all).trimEnd()}", or of "${r.slice(value.spot)}" alone, and then it can't be added to a count. Brackets say which.`,
    fixes: [r.fix('All of them at that price', all, `(${r.slice(all).trimEnd()}) `)],
  });
}

/** A bare one, or one of the very thing that is set out, after a count with both its ends. */
function isOneMore(r: Reader, spaced: Spaced, value: Formula): boolean {
  if (spaced.ends !== 'both' || value.kind !== 'amount' || !value.value?.equals(1)) return false;
  if (/^[([]/.test(r.slice(spaced.spot))) return false;
  return value.bare || roughCount(r, value) === spaced.noun;
}
