// The walk over the tree: operands before what works on them, on a stack of its own,
// so that ten thousand plus signs in a row need no deeper call than one.
import { Fraction, OPEN } from '../../quantity/measure.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Binary, Formula, Negative } from '../tree.ts';
import { checkAdding } from './adding.ts';
import { checkAt } from './at.ts';
import { type Checking, refuse } from './checking.ts';
import { checkAsNoun, checkInUnits } from './clauses.ts';
import { notAnAmount } from './clashes.ts';
import { checkBetween, checkComparison } from './comparing.ts';
import { checkCondition, checkLogic, checkNot } from './conditions.ts';
import {
  checkCircle,
  checkDiagonal,
  checkPower,
  checkSquareRoot,
  checkTriangle,
} from './geometry.ts';
import { made, madeLeaf, scaled } from './holding.ts';
import { checkLimited, checkList, checkPick } from './lists.ts';
import { checkOver, checkTimes } from './multiplying.ts';
import { checkAmount, checkName, checkPi, checkWords, checkYesNo } from './names.ts';
import { checkInPacks, checkPieces } from './packs.ts';
import { partsOf } from './parts.ts';
import { checkRange } from './ranges.ts';
import { checkRecap } from './recaps.ts';
import { checkRounded } from './rounding.ts';
import { checkForShares, checkMarkedUp, checkPartOf, checkWhatShare } from './shares.ts';
import { checkSize, checkSized } from './sized.ts';
import { checkColumn, checkLookUp, checkRowCount } from './tables.ts';
import { checkEvenGap, checkFewest, checkSpaced } from './spacing.ts';

interface Frame {
  readonly formula: Formula;
  readonly parts: readonly Formula[];
  readonly done: Checked[];
  /** How many of the parts were looked at. */
  seen: number;
}

/** Checks a tree from its leaves up. Null where something is at fault or waited for. */
export function work(tree: Formula, checking: Checking): Checked | null {
  const stack: Frame[] = [frame(tree)];
  for (;;) {
    const top = stack.at(-1);
    if (!top) throw new Error('Walked past the root');
    const next = top.parts[top.seen];
    if (next) {
      top.seen += 1;
      stack.push(frame(next));
      continue;
    }
    stack.pop();
    const checked = settle(top, checking);
    const below = stack.at(-1);
    if (!below) return checked;
    if (checked) below.done.push(checked);
  }
}

function frame(formula: Formula): Frame {
  return { formula, parts: partsOf(formula), done: [], seen: 0 };
}

/** One mistake, one message: what rests on something at fault is not looked at. */
function settle({ formula, done: parts, seen }: Frame, checking: Checking): Checked | null {
  if (parts.length < seen) return null;
  if (parts.some(isOpen)) {
    const open = parts.filter(isOpen);
    const total = formula.kind === 'list' && formula.what === 'total';
    const looks = formula.kind === 'look-up' || formula.kind === 'range';
    if (!looks && (!total || open.length === parts.length)) return leftOpen(formula, parts, open);
  }
  return rule(formula, parts, checking);
}

function isOpen(part: Checked): boolean {
  return part.holds.measure === OPEN;
}

/** Rests on a `?` of which nobody has said what it measures: unknown too, for the same givens. */
function leftOpen(formula: Formula, parts: readonly Checked[], open: readonly Checked[]): Checked {
  const plan = open
    .map((part) => part.plan)
    .reduce((left, right): Plan => ({ op: 'add', left, right }));
  return made(formula, parts, OPEN, plan);
}

function rule(formula: Formula, parts: readonly Checked[], checking: Checking): Checked | null {
  switch (formula.kind) {
    case 'hole':
      return null;
    case 'amount':
      return checkAmount(formula);
    case 'words':
      return checkWords(formula);
    case 'size':
      return checkSize(formula);
    case 'sized':
      return checkSized(formula, parts, checking);
    case 'yes-no':
      return checkYesNo(formula);
    case 'name':
      return checkName(formula, checking);
    case 'pi':
      return checkPi(formula);
    case 'recap':
      return checkRecap(formula, checking);
    case 'column':
      return checkColumn(formula, checking);
    case 'row-count':
      return checkRowCount(formula);
    case 'look-up':
      return checkLookUp(formula, parts, checking);
    case 'binary':
      return binary(formula, part(parts, 0), part(parts, 1), checking);
    case 'negative':
      return negative(formula, part(parts, 0), checking);
    case 'bracket':
      return bracket(formula, part(parts, 0));
    case 'comparison':
      return checkComparison(formula, part(parts, 0), part(parts, 1), checking);
    case 'between':
      return checkBetween(formula, parts, checking);
    case 'and':
    case 'or':
      return checkLogic(formula, part(parts, 0), part(parts, 1), checking);
    case 'not':
      return checkNot(formula, part(parts, 0), checking);
    case 'condition':
      return checkCondition(formula, parts, checking);
    case 'range':
      return checkRange(formula, parts, checking);
    case 'in-units':
      return checkInUnits(formula, part(parts, 0), checking);
    case 'in-packs':
      return checkInPacks(formula, part(parts, 0), part(parts, 1), checking);
    case 'as-noun':
      return checkAsNoun(formula, part(parts, 0), checking);
    case 'rounded':
      return checkRounded(formula, part(parts, 0), parts[1] ?? null, checking);
    case 'marked-up':
      return checkMarkedUp(formula, part(parts, 0), part(parts, 1), checking);
    case 'for-shares':
      return checkForShares(formula, part(parts, 0), parts.slice(1), checking);
    case 'limited':
      return checkLimited(formula, part(parts, 0), part(parts, 1), checking);
    case 'pick':
      return checkPick(formula, parts, checking);
    case 'list':
      return checkList(formula, parts, checking);
    case 'part-of':
      return checkPartOf(formula, part(parts, 0), part(parts, 1), checking);
    case 'what-share':
      return checkWhatShare(formula, part(parts, 0), part(parts, 1), checking);
    case 'power':
      return checkPower(formula, part(parts, 0), checking);
    case 'square-root':
      return checkSquareRoot(formula, part(parts, 0), checking);
    case 'diagonal':
      return checkDiagonal(formula, part(parts, 0), part(parts, 1), checking);
    case 'circle':
      return checkCircle(formula, part(parts, 0), checking);
    case 'triangle':
      return checkTriangle(formula, parts, checking);
    case 'pieces':
      return checkPieces(formula, part(parts, 0), part(parts, 1), part(parts, 2), checking);
    case 'spaced':
      return checkSpaced(formula, part(parts, 0), part(parts, 1), checking);
    case 'fewest':
      return checkFewest(formula, part(parts, 0), part(parts, 1), part(parts, 2), checking);
    case 'even-gap':
      return checkEvenGap(formula, part(parts, 0), part(parts, 1), part(parts, 2), checking);
  }
}

function part(parts: readonly Checked[], place: number): Checked {
  const found = parts[place];
  if (!found) throw new Error(`A formula without its part ${place}`);
  return found;
}

function binary(
  formula: Binary,
  left: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  switch (formula.op) {
    case 'plus':
    case 'minus':
      return checkAdding(formula, left, right, checking);
    case 'times':
    case 'by':
      return checkTimes(formula, left, right, checking);
    case 'at':
      return checkAt(formula, left, right, checking);
    case 'over':
      return checkOver(formula, left, right, checking);
  }
}

const MINUS_ONE = new Fraction(-1);

function negative(formula: Negative, of: Checked, checking: Checking): Checked | null {
  const { kind } = of.holds.measure;
  if (kind !== 'amount' && kind !== 'share') {
    return refuse(checking, notAnAmount(of, 'made negative', checking));
  }
  return { ...madeLeaf(formula, of.holds, scaled(of.plan, MINUS_ONE)), parts: [of] };
}

function bracket(formula: Formula, of: Checked): Checked {
  return { ...madeLeaf(formula, of.holds, of.plan), parts: [of] };
}
