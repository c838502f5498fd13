// Conditions, and, or, not: what has to be yes or no, and answers that measure the same.
import { YES_NO } from '../../quantity/measure.ts';
import type { Report } from '../../words/report.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Condition, Logic, Not } from '../tree.ts';
import { agree } from './agreeing.ts';
import { type Checking, mended, refuse, typedAsOne } from './checking.ts';
import { CHOOSING } from './clashes.ts';
import { made, restsOn } from './holding.ts';
import { capital, called, fact, facts, headline } from './saying.ts';

/** `A where C, B where D, otherwise E`; the parts stand in that order. */
export function checkCondition(
  formula: Condition,
  parts: readonly Checked[],
  checking: Checking,
): Checked | null {
  const whens = parts.filter((_, i) => i % 2 === 1);
  if (!areYesNo(whens, checking)) return null;
  const answers = parts.filter((_, i) => i % 2 === 0);
  const agreed = agree(answers, CHOOSING, checking);
  const otherwise = agreed?.plans.at(-1);
  if (!agreed || !otherwise) return null;
  const branches = whens.map((when, i) => {
    const then = agreed.plans[i];
    if (!then) throw new Error('A condition without an answer');
    return { when: when.plan, then };
  });
  const plan: Plan = { op: 'choose', branches, otherwise };
  const inPlace = parts.map((part, i) => (i % 2 === 0 ? (agreed.parts[i / 2] ?? part) : part));
  // The units of the conditions say nothing about the answer.
  return made(formula, inPlace, agreed.measure, plan, {
    showIn: agreed.showIn,
    written: restsOn(agreed.parts),
  });
}

export function checkLogic(
  formula: Logic,
  left: Checked,
  right: Checked,
  checking: Checking,
): Checked | null {
  if (formula.kind === 'and' && bothAmounts(left, right)) {
    return refuse(checking, askWhetherAdded(left, right, checking));
  }
  if (!areYesNo([left, right], checking)) return null;
  return made(formula, [left, right], YES_NO, {
    op: formula.kind,
    left: left.plan,
    right: right.plan,
  });
}

export function checkNot(formula: Not, of: Checked, checking: Checking): Checked | null {
  if (!isYesNo(of, checking)) return null;
  return made(formula, [of], YES_NO, { op: 'not', of: of.plan });
}

function bothAmounts(left: Checked, right: Checked): boolean {
  const { kind } = right.holds.measure;
  return left.holds.measure.kind === 'amount' && (kind === 'amount' || kind === 'share');
}

/** `labour and materials`: `and` joins conditions; amounts are added with plus. */
function askWhetherAdded(left: Checked, right: Checked, checking: Checking): Report {
  const [a, b] = [left.formula.spot, right.formula.spot];
  return {
    code: 'not-yes-or-no',
    headline: '"And" adds nothing up.',
    spots: [{ from: a.to, to: b.from }],
    explanation: `${facts(checking, left, right)} "And" joins two conditions; two amounts are added with "plus".`,
    fixes: [mended(checking, 'Add them', { spot: { from: a.to, to: b.from }, by: ' plus ' })],
  };
}

/** Each that is not has a problem of its own. */
function areYesNo(items: readonly Checked[], checking: Checking): boolean {
  return items.filter((item) => !isYesNo(item, checking)).length === 0;
}

function isYesNo(checked: Checked, checking: Checking): boolean {
  const { kind } = checked.holds.measure;
  if (kind === 'yes-no') return true;
  const words = typedAsOne(checking, checked.formula);
  refuse(checking, {
    code: 'not-yes-or-no',
    headline: headline(
      `${called(checking, checked)} is neither yes nor no.`,
      'This is neither yes nor no.',
    ),
    spots: [checked.formula.spot],
    explanation: `${capital(fact(checking, checked))}. A condition compares something, such as "${words} is more than 0".`,
    fixes:
      kind === 'amount' || kind === 'share'
        ? [
            mended(checking, 'Ask whether it is more than 0', {
              spot: checked.formula.spot,
              by: `(${words} is more than 0)`,
            }),
          ]
        : [],
  });
  return false;
}
