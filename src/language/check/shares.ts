// Shares: of what stands before them, from a whole, marked up, for a margin, a part of something.
import { NUMBER, ONE, SHARE } from '../../quantity/measure.ts';
import type { Fix, Report } from '../../words/report.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Binary, ForShares, Formula, MarkedUp, PartOf, ShareThatIs } from '../tree.ts';
import { agree } from './agreeing.ts';
import { bareNumber } from './bare-numbers.ts';
import { type Checking, inOrder, mended, noted, refuse, typed, typedAsOne } from './checking.ts';
import { COMPARING, isItPercent, notAnAmount } from './clashes.ts';
import { constant, inScale, made } from './holding.ts';
import { capital, called, fact, headline } from './saying.ts';

/** Plus or minus a share: added to a share, taken from a bare 1 or 100%, else a share of the left side. */
export function addShare(
  formula: Binary,
  left: Checked,
  share: Checked,
  checking: Checking,
): Checked {
  const op = formula.op === 'plus' ? 'add' : 'subtract';
  const { measure } = left.holds;
  const parts = [left, share];
  if (isWhole(left)) {
    const plan: Plan = { op, left: left.plan, right: share.plan };
    return made(formula, parts, measure, plan, { manner: 'from-whole' });
  }
  if (measure.kind === 'share') {
    const plan: Plan = { op, left: left.plan, right: share.plan };
    return made(formula, parts, SHARE, plan, { manner: 'share-added' });
  }
  tellOfWhat(left, share, checking);
  return made(formula, parts, measure, times(left.plan, wholeAnd(op, share.plan)), {
    showIn: left.holds.showIn,
    written: left.holds.written,
    manner: 'share-of',
  });
}

/** `materials plus overhead plus markup`: of what the second is taken could be read otherwise, so it is told. */
function tellOfWhat(left: Checked, share: Checked, checking: Checking): void {
  const { formula } = left;
  if (left.manner !== 'share-of' || formula.kind !== 'binary') return;
  if (checking.text[formula.spot.from] === '(') return;
  const [whole, first] = [typed(checking, formula), typed(checking, formula.left)];
  noted(
    checking,
    `${capital(typed(checking, share.formula))} is taken of "${whole}", not of "${first}" alone.`,
  );
}

/** A bare written 1 or 100%, or such a whole less shares already. A bracket closes it. */
function isWhole(left: Checked): boolean {
  if (left.formula.kind === 'bracket') return false;
  if (left.manner === 'from-whole' && left.formula.kind === 'binary') return true;
  if (left.formula.kind !== 'amount' || left.plan.op !== 'constant') return false;
  const { kind } = left.holds.measure;
  return left.plan.value.equals(ONE) && (kind === 'share' || bareNumber(left) !== null);
}

/** 1 + share or 1 − share. */
function wholeAnd(op: 'add' | 'subtract', share: Plan): Plan {
  if (share.op === 'constant') {
    return constant(op === 'add' ? ONE.add(share.value) : ONE.sub(share.value));
  }
  return { op, left: constant(1), right: share };
}

function times(left: Plan, right: Plan): Plan {
  return { op: 'multiply', left, right };
}

/** `marked up 20%`: the amount and a share of it on top. */
export function checkMarkedUp(
  formula: MarkedUp,
  of: Checked,
  share: Checked,
  checking: Checking,
): Checked | null {
  if (!isAmountOrShare(of, 'marked up', checking)) return null;
  if (!isShare(share, checking, addedOn(formula, of, share, checking))) return null;
  const plan = times(of.plan, wholeAnd('add', share.plan));
  return made(formula, [of, share], of.holds.measure, plan, {
    showIn: of.holds.showIn,
    written: of.holds.written,
    manner: 'share-of',
  });
}

/** `for a 20% margin`: the answer of which these shares are taken leaves the amount. */
export function checkForShares(
  formula: ForShares,
  of: Checked,
  shares: readonly Checked[],
  checking: Checking,
): Checked | null {
  if (!isAmountOrShare(of, 'priced for a share', checking)) return null;
  if (!shares.every((share) => isShare(share, checking))) return null;
  const left = shares.reduce<Plan>((whole, share) => less(whole, share.plan), constant(1));
  if (left.op === 'constant' && left.value.compare(0) <= 0) {
    const together = `${ONE.sub(left.value).mul(100).toString()}%`;
    return refuse(checking, nothingLeft(formula, of, shares, together, checking));
  }
  return made(
    formula,
    [of, ...shares],
    of.holds.measure,
    { op: 'divide', left: of.plan, right: someLeft(left) },
    { showIn: of.holds.showIn, written: of.holds.written, manner: 'from-whole' },
  );
}

/** Shares that cells hold may leave nothing too: that shows when they are worked. */
function someLeft(left: Plan): Plan {
  return left.op === 'constant' ? left : { op: 'some', of: left, code: 'nothing-left' };
}

/** `together`: what the shares come to, in words. */
export function nothingLeft(
  formula: Formula,
  of: Checked,
  shares: readonly Checked[],
  together: string,
  checking: Checking,
): Report {
  const added = shares.map((share) => typedAsOne(checking, share.formula)).join(' plus ');
  const by = `(${typedAsOne(checking, of.formula)} marked up ${shares.length > 1 ? `(${added})` : added})`;
  return {
    code: 'nothing-left',
    headline: 'These shares leave nothing of the price.',
    spots: inOrder(...shares.map((s) => s.formula.spot)),
    explanation: `Each is a share of the answer, and together they come to ${together}. They have to stay under 100%.`,
    fixes: [mended(checking, 'Take them of the cost', { spot: formula.spot, by })],
  };
}

function less(whole: Plan, share: Plan): Plan {
  if (whole.op === 'constant' && share.op === 'constant') {
    return constant(whole.value.sub(share.value));
  }
  return { op: 'subtract', left: whole, right: share };
}

/** `10% of X`, `half of X`, `sales tax on materials`. */
export function checkPartOf(
  formula: PartOf,
  share: Checked,
  of: Checked,
  checking: Checking,
): Checked | null {
  if (!isAmountOrShare(of, 'shared out', checking)) return null;
  const { measure } = share.holds;
  const number =
    measure.kind === 'amount' && measure.dimension === NUMBER.dimension && !measure.rate;
  if (measure.kind !== 'share' && !number) {
    const [a, b] = [typedAsOne(checking, share.formula), typedAsOne(checking, of.formula)];
    return refuse(checking, {
      code: 'not-a-share',
      headline: headline(`${called(checking, share)} is not a share.`, 'This is not a share.'),
      spots: [share.formula.spot],
      explanation: `${capital(fact(checking, share))}. What stands before "of" has to be a share such as 10%, or a number such as half.`,
      fixes: [mended(checking, 'Multiply them', { spot: formula.spot, by: `(${a} times ${b})` })],
    });
  }
  const plan = times(inScale(share, NUMBER), of.plan);
  return made(formula, [share, of], of.holds.measure, plan, {
    showIn: of.holds.showIn,
    written: of.holds.written,
  });
}

/** `what share X is of Y`. */
export function checkWhatShare(
  formula: ShareThatIs,
  of: Checked,
  whole: Checked,
  checking: Checking,
): Checked | null {
  const odd = [of, whole].find((c) => !holdsAmountOrShare(c));
  if (odd) return refuse(checking, notAnAmount(odd, 'a share of anything', checking));
  const agreed = agree([of, whole], COMPARING, checking);
  const [left, right] = agreed?.plans ?? [];
  if (!agreed || !left || !right) return null;
  return made(formula, agreed.parts, SHARE, { op: 'divide', left, right });
}

/** `marked up $500`: so much more, no share. */
function addedOn(formula: Formula, of: Checked, more: Checked, checking: Checking): readonly Fix[] {
  const [a, b] = [of.holds.measure, more.holds.measure];
  if (a.kind !== 'amount' || b.kind !== 'amount' || a.dimension !== b.dimension) return [];
  const [whole, words] = [of, more].map((each) => typedAsOne(checking, each.formula));
  return [mended(checking, 'Add it on', { spot: formula.spot, by: `(${whole} plus ${words})` })];
}

function isShare(checked: Checked, checking: Checking, fixes: readonly Fix[] = []): boolean {
  if (checked.holds.measure.kind === 'share') return true;
  const number = bareNumber(checked);
  if (number) {
    refuse(checking, isItPercent(checked, number, null, checking));
    return false;
  }
  refuse(checking, {
    code: 'not-a-share',
    headline: headline(`${called(checking, checked)} is not a share.`, 'This is not a share.'),
    spots: [checked.formula.spot],
    explanation: `${capital(fact(checking, checked))}. A share is needed here, written with a percent sign or held by a cell.`,
    fixes,
  });
  return false;
}

function holdsAmountOrShare(checked: Checked): boolean {
  return checked.holds.measure.kind === 'amount' || checked.holds.measure.kind === 'share';
}

function isAmountOrShare(checked: Checked, doing: string, checking: Checking): boolean {
  if (holdsAmountOrShare(checked)) return true;
  refuse(checking, notAnAmount(checked, doing, checking));
  return false;
}
