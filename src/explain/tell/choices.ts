// Comparisons, conditions, limits and picks: what held, which branch was taken and why, which one won.
import { hardPart, isHard } from '../../quantity/dimension.ts';
import type { Checked, Plan } from '../../language/plan.ts';
import type {
  Between,
  Comparison,
  Condition,
  Limited,
  Logic,
  Not,
  Pick,
  Relation,
} from '../../language/tree.ts';
import { comparisonOf, differenceOf, heldIn } from '../asks.ts';
import type { Book } from '../book.ts';
import { figureOf, isShownInFull } from '../figure.ts';
import type { Target, Token } from '../line.ts';
import { bared, isShortEnough, said, saidAlone, saidWhole } from '../naming.ts';
import { type Word, plainWords, saying } from '../step.ts';
import { TERMS_AT_MOST, beginning } from './arithmetic.ts';
import { listed } from './shares.ts';
import { type Told, type Used, byItsPlan, known, operand, riser, use } from './told.ts';

const RELATIONS: Readonly<Record<Relation, { readonly words: string; readonly sign: string }>> = {
  is: { words: 'is', sign: ' = ' },
  'is-not': { words: 'is not', sign: ' ≠ ' },
  more: { words: 'is more than', sign: ' > ' },
  less: { words: 'is less than', sign: ' < ' },
  'at-least': { words: 'is at least', sign: ' ≥ ' },
  'at-most': { words: 'is at most', sign: ' ≤ ' },
};

export function tellComparison(
  book: Book,
  checked: Checked,
  formula: Comparison,
  target: Target,
): Told {
  const left = use(book, operand(checked, formula.left));
  const right = use(book, operand(checked, formula.right));
  const { words, sign } = RELATIONS[formula.relation];
  return [
    riser(book, {
      said: saying(said(book, left.checked), ` ${words} `, said(book, right.checked)),
      tokens: [left, sign, right],
      joint: '→',
      result: target,
      comesOut: [byItsPlan(checked, [left, right])],
      used: [left, right],
      note: toSpare(book, formula.relation, left, right, target),
    }),
  ];
}

/** By how much it holds, or misses. */
function toSpare(
  book: Book,
  relation: Relation,
  left: Used,
  right: Used,
  target: Target,
): string | null {
  if (relation === 'is' || relation === 'is-not' || !known(target.figure)) return null;
  const across = inOneScale(left.checked, right.checked);
  if (across === null) return null;
  const upward = relation === 'at-most' || relation === 'less';
  const above = target.figure.value === upward;
  const [more, less] = above ? [across.right, across.left] : [across.left, across.right];
  const apart = figureOf(book, { plan: differenceOf(more, less), holds: left.checked.holds });
  if (!known(apart)) return null;
  if (apart.shown.exact === '0') return 'Exactly at the limit.';
  if (target.figure.value === true) return `${apart.shown.text} to spare.`;
  const { measure } = left.checked.holds;
  const counts = measure.kind === 'amount' && !isHard(measure.dimension);
  const [much, little] = counts ? ['many', 'few'] : ['much', 'little'];
  return `${apart.shown.text} too ${upward ? much : little}.`;
}

/** Two amounts that measure the same, as plans in the scale of the first; null for any others. */
function inOneScale(left: Checked, right: Checked): { left: Plan; right: Plan } | null {
  const [a, b] = [left.holds.measure, right.holds.measure];
  if (a.kind === 'share' && b.kind === 'share') return { left: left.plan, right: right.plan };
  if (a.kind !== 'amount' || b.kind !== 'amount') return null;
  if (hardPart(a.dimension) !== hardPart(b.dimension)) return null;
  return { left: left.plan, right: heldIn(right.plan, b, a) };
}

export function tellBetween(book: Book, checked: Checked, formula: Between, target: Target): Told {
  const of = use(book, operand(checked, formula.of));
  const low = use(book, operand(checked, formula.low));
  const high = use(book, operand(checked, formula.high));
  const used = [of, low, high];
  return [
    riser(book, {
      said: saying(
        said(book, of.checked),
        ' is between ',
        said(book, low.checked),
        ' and ',
        said(book, high.checked),
      ),
      tokens: [low, ' ≤ ', of, ' ≤ ', high],
      joint: '→',
      result: target,
      comesOut: [byItsPlan(checked, used)],
      used,
    }),
  ];
}

export function tellLogic(book: Book, checked: Checked, formula: Logic, target: Target): Told {
  const left = use(book, operand(checked, formula.left));
  const right = use(book, operand(checked, formula.right));
  return [
    riser(book, {
      said: saying(
        formula.kind === 'and' ? 'both have to hold: ' : 'one of them has to hold: ',
        saidWhole(book, left.checked),
        ` ${formula.kind} `,
        saidWhole(book, right.checked),
      ),
      tokens: [left, ` ${formula.kind} `, right],
      joint: '→',
      result: target,
      comesOut: [byItsPlan(checked, [left, right])],
      used: [left, right],
    }),
  ];
}

export function tellNot(book: Book, checked: Checked, formula: Not, target: Target): Told {
  const of = use(book, operand(checked, formula.of));
  return [
    riser(book, {
      said: saying('it holds where this does not: ', saidWhole(book, of.checked)),
      tokens: ['not ', of],
      joint: '→',
      result: target,
      comesOut: [byItsPlan(checked, [of])],
      used: [of],
    }),
  ];
}

/** Which branch was taken and why; the conditions that were looked at are worked below it. */
export function tellCondition(
  book: Book,
  checked: Checked,
  formula: Condition,
  target: Target,
): Told {
  const failed: Used[] = [];
  for (const branch of formula.branches) {
    const when = use(book, operand(checked, branch.when));
    if (known(when.figure) && when.figure.value === false) {
      failed.push(when);
      continue;
    }
    const value = operand(checked, branch.value);
    if (!known(when.figure)) {
      return undecided(book, checked, [...failed, when], target);
    }
    const others = [...formula.branches.map((b) => b.value), formula.otherwise];
    return taken(book, checked, value, [...failed, when], target, {
      before: '',
      why: saying(', because ', saidWhole(book, when.checked)),
      left: others.filter((other) => other !== branch.value).map((o) => operand(checked, o)),
    });
  }
  const reasons = failed.map((when) => saying('“', saidWhole(book, when.checked), '”'));
  return taken(book, checked, operand(checked, formula.otherwise), failed, target, {
    before: 'otherwise ',
    why: saying(': ', ...listed(reasons), reasons.length === 1 ? ' does not hold' : ' do not hold'),
    left: formula.branches.map((branch) => operand(checked, branch.value)),
  });
}

interface Taking {
  /** Said before the value and after it. */
  readonly before: string;
  readonly why: readonly Word[];
  /** The values that were not taken. */
  readonly left: readonly Checked[];
}

function taken(
  book: Book,
  checked: Checked,
  value: Checked,
  looked: readonly Used[],
  target: Target,
  taking: Taking,
): Told {
  const used = use(book, value);
  const told = riser(book, {
    said: saying(taking.before, saidAlone(book, value), taking.why),
    tokens: [used],
    joint: '→',
    result: target,
    comesOut: [byItsPlan(checked, [used])],
    used: [used, ...looked],
    note: `Not taken: ${notTaken(book, taking.left)}.`,
  });
  // What was taken is the answer: a line would say it twice, but for digits that the line above needs.
  const isSame = told.operands[0]?.target.text === target.text;
  const isWhole = known(used.figure) && isShownInFull(used.figure);
  return [isSame || isWhole ? { ...told, pieces: [] } : told];
}

function notTaken(book: Book, left: readonly Checked[]): string {
  const say = left.length === 1 ? saidAlone : said;
  // It is not worked, so a long one is no more than named.
  const inShort = (one: Checked): readonly Word[] =>
    isShortEnough(one) ? say(book, one) : saying('a longer formula');
  return left.map((one) => plainWords(inShort(one))).join(', ');
}

function undecided(book: Book, checked: Checked, looked: readonly Used[], target: Target): Told {
  return [
    riser(book, {
      said: saying('it can’t be told yet which one is taken: ', saidWhole(book, checked)),
      tokens: [],
      joint: '→',
      result: target,
      comesOut: [],
      used: looked,
    }),
  ];
}

/** `not less than 5 in`: and whether the limit was reached. */
export function tellLimited(book: Book, checked: Checked, formula: Limited, target: Target): Told {
  const of = use(book, bared(operand(checked, formula.of)));
  const limit = use(book, operand(checked, formula.limit));
  const words = formula.side === 'not-less' ? 'not less than ' : 'not more than ';
  const kept = same(book, of.checked, checked);
  const moved = formula.side === 'not-less' ? ', so raised to it' : ', so brought down to it';
  return [
    riser(book, {
      said: saying(
        beginning(of.checked.formula, said(book, of.checked)),
        words,
        said(book, limit.checked),
        known(target.figure) ? (kept ? ', which it is already' : moved) : '',
      ),
      tokens: [of, `, ${words}`, limit],
      joint: '→',
      result: target,
      comesOut: [byItsPlan(checked, [of, limit])],
      used: [of, limit],
    }),
  ];
}

/** `A or B, whichever is greater`: and which one won. */
export function tellPick(book: Book, checked: Checked, formula: Pick, target: Target): Told {
  const used = formula.items.map((item) => use(book, operand(checked, item)));
  const winner = known(target.figure)
    ? used.find((one) => same(book, one.checked, checked))
    : undefined;
  const short = used.length <= TERMS_AT_MOST;
  const which = PICKED[formula.which][used.length > 2 ? 'of many' : 'of two'];
  const joined = used.flatMap((one, place): Token[] => (place === 0 ? [one] : [' or ', one]));
  return [
    riser(book, {
      said: saying(
        `the ${which} of `,
        ...(short
          ? listed(used.map((one) => said(book, one.checked)))
          : [`${used.length} amounts`]),
        ...(winner ? [': ', saidAlone(book, winner.checked)] : []),
      ),
      tokens: short ? joined : [`${used.length} amounts`],
      joint: '→',
      result: target,
      comesOut: short ? [byItsPlan(checked, used)] : [],
      used,
    }),
  ];
}

/** Does an operand come to the same as the node it stands in? */
function same(book: Book, part: Checked, whole: Checked): boolean {
  const across = inOneScale(part, whole);
  const outcome = book.evaluate(
    across
      ? comparisonOf('is', across.left, across.right)
      : comparisonOf('is', part.plan, whole.plan),
  );
  return outcome.kind === 'value' && outcome.value === true;
}

const PICKED = {
  greater: { 'of two': 'greater', 'of many': 'greatest' },
  less: { 'of two': 'lesser', 'of many': 'least' },
} as const;
