// Things set out along a length: how many at a spacing, how many pieces from a board, gaps between.
import { countOf } from '../../quantity/dimension.ts';
import type { Holds } from '../../quantity/form.ts';
import { amountMeasure } from '../../quantity/measure.ts';
import type { Checked, Plan } from '../../language/plan.ts';
import type { Ends, EvenGap, Fewest, Pieces, Spaced } from '../../language/tree.ts';
import { differenceOf, heldIn, numberOf, productOf, quotientOf, sumOf } from '../asks.ts';
import type { Book } from '../book.ts';
import { PLAIN_NUMBER, figureOf } from '../figure.ts';
import { type Target, type Term, type Token, lineOf, targetOf } from '../line.ts';
import { said, saidAlone } from '../naming.ts';
import { saying } from '../step.ts';
import { roundedUp } from './rounding.ts';
import { type Aside, type Told, type Used, byItsPlan, known, operand, riser, use } from './told.ts';

const ONE_MORE = numberOf('1');

/** `joists every 16 in along 12 ft`: ⌈12 ft ÷ 16 in⌉ + 1. */
export function tellSpaced(book: Book, checked: Checked, formula: Spaced, target: Target): Told {
  const along = use(book, operand(checked, formula.along), 'over');
  const spacing = use(book, operand(checked, formula.spacing), 'under');
  const spaces: Term = {
    figure: figureOf(book, {
      plan: quotientOf(along.checked.plan, inScaleOf(spacing.checked, along.checked)),
      holds: PLAIN_NUMBER,
    }),
    side: 'apart',
    instead: 'spaces',
  };
  const { after, words } = ENDS[formula.ends];
  const line: readonly Token[] = ['⌈', along, ' ÷ ', spacing, `⌉${after}`];
  const rounded: readonly Token[] = known(spaces.figure) ? [' = ⌈', spaces, `⌉${after}`] : [];
  return [
    riser(book, {
      said: saying(
        `${book.show.many(formula.noun)} every `,
        said(book, spacing.checked),
        formula.ends === 'loop' ? ' around ' : ' along ',
        said(book, along.checked),
        `: ${words}`,
      ),
      tokens: [...line, ...rounded],
      joint: '=',
      result: target,
      comesOut: [
        byItsPlan(checked, [along, spacing]),
        (stands) =>
          withEnds(formula.ends, { op: 'round', way: 'up', of: stands(spaces), step: null }),
      ],
      between: [{ to: spaces, work: (stands) => quotientIn(along, spacing, stands) }],
      used: [along, spacing],
    }),
  ];
}

const ENDS: Readonly<Record<Ends, { readonly after: string; readonly words: string }>> = {
  both: { after: ' + 1', words: 'the spaces, rounded up, and one more to end on' },
  one: { after: '', words: 'one for each space, rounded up, with one end left open' },
  neither: {
    after: ' − 1',
    words: 'one fewer than the spaces, rounded up, with both ends left open',
  },
  loop: { after: '', words: 'one for each space, rounded up, as the line closes on itself' },
};

function withEnds(ends: Ends, spaces: Plan): Plan {
  switch (ends) {
    case 'both':
      return sumOf(spaces, ONE_MORE);
    case 'one':
    case 'loop':
      return spaces;
    case 'neither':
      return { op: 'greatest', items: [differenceOf(spaces, ONE_MORE), numberOf('0')] };
  }
}

/** One operand by another, both from what is written. */
function quotientIn(of: Used, by: Used, stands: (term: Term) => Plan): Plan {
  return quotientOf(stands(of), inScaleOf({ ...by.checked, plan: stands(by) }, of.checked));
}

/** An operand as a number in the scale of another that measures the same. */
function inScaleOf(part: Checked, other: Checked): Plan {
  const [from, to] = [part.holds.measure, other.holds.measure];
  return from.kind === 'amount' && to.kind === 'amount' ? heldIn(part.plan, from, to) : part.plan;
}

/** `5 pieces of 9 ft from 16 ft boards`: pieces are not a run. */
export function tellPieces(book: Book, checked: Checked, formula: Pieces, target: Target): Told {
  const count = use(book, operand(checked, formula.count));
  const length = use(book, operand(checked, formula.length), 'under');
  const stock = use(book, operand(checked, formula.stock), 'over');
  const fit = quotientOf(stock.checked.plan, inScaleOf(length.checked, stock.checked));
  const whole: Plan = { op: 'round', way: 'down', of: fit, step: null };
  const each: Term = {
    figure: figureOf(book, { plan: whole, holds: countHolds('piece') }),
    side: 'apart',
    instead: 'pieces',
  };
  const packs = quotientOf(count.checked.plan, whole);
  const boards: Term = {
    figure: figureOf(book, { plan: packs, holds: countHolds(formula.noun) }),
    side: 'apart',
    instead: book.show.many(formula.noun),
  };
  const rounding = { op: 'round', way: 'up', of: packs, step: null } as const;
  const top = roundedUp(book, checked, boards, target, rounding);
  const perBoard = known(each.figure)
    ? `, ${formula.noun === 'piece' ? soleFigure(each.figure.shown) : each.figure.shown.text} from each ${formula.noun}`
    : '';
  const below = riser(book, {
    said: saying(saidAlone(book, count.checked), perBoard, top.whole),
    tokens: [count, ' ÷ ', each, ` per ${formula.noun}`],
    joint: '=',
    result: top.reached,
    comesOut: [(stands) => quotientOf(stands(count), stands(each))],
    used: [count],
    beside: known(each.figure) ? leftOver(book, stock, length, each, whole) : [],
  });
  const fits = plainTerm(book, fit);
  const cut = riser(book, {
    said: saying(
      `pieces from one ${formula.noun}: `,
      said(book, stock.checked),
      ' in lengths of ',
      said(book, length.checked),
      ', rounded down, as pieces are not a run',
    ),
    tokens: [stock, ' ÷ ', length, ...(known(fits.figure) ? [' = ', fits] : [])],
    joint: '→',
    result: targetOf(each.figure, ''),
    // The lengths as they are written have to fit as often as what comes out of them.
    comesOut: [
      (stands) => ({ op: 'round', way: 'down', of: stands(fits), step: null }),
      (stands) => ({ op: 'round', way: 'down', of: quotientIn(stock, length, stands), step: null }),
    ],
    between: [{ to: fits, work: (stands) => quotientIn(stock, length, stands) }],
    used: [stock, length],
  });
  return [...top.risers, below, cut];
}

/** `3`, where `3 pieces from each piece` would be read twice. */
function soleFigure({ exact }: { readonly exact: string }): string {
  return exact;
}

/** What is left of each board. */
function leftOver(
  book: Book,
  stock: Used,
  length: Used,
  each: Term,
  whole: Plan,
): readonly Aside[] {
  const used = productOf(whole, inScaleOf(length.checked, stock.checked));
  const plan = differenceOf(stock.checked.plan, used);
  // Its length may be asked for in feet; what is left of it is read off a tape.
  const holds = { ...stock.checked.holds, showIn: null };
  const result = targetOf(figureOf(book, { plan, holds }), '');
  const [from, many, long] = [apart(stock), plainTerm(book, whole), apart(length)];
  const { pieces } = lineOf(book, {
    tokens: [from, ' − ', many, ' × ', long],
    joint: '=',
    result,
    comesOut: [
      (stands) =>
        differenceOf(
          stands(from),
          productOf(stands(many), inScaleOf({ ...long.checked, plan: stands(long) }, from.checked)),
        ),
    ],
  });
  return [{ said: saying('left of each one'), pieces, result: result.text }];
}

/** `fewest balusters …`: with that many the gaps are under the limit, with one fewer they are not. */
export function tellFewest(book: Book, checked: Checked, formula: Fewest, target: Target): Told {
  const width = use(book, operand(checked, formula.width));
  const across = use(book, operand(checked, formula.across));
  const limit = use(book, operand(checked, formula.gap));
  const sign = formula.gapRelation === 'under' ? ' < ' : ' ≤ ';
  const words = formula.gapRelation === 'under' ? 'gaps under ' : 'gaps of at most ';
  const things = book.show.many(formula.noun);
  const gap = gapLine(book, across, width, checked.plan);
  const used = [width, across, limit];
  return [
    riser(book, {
      said: saying(
        `fewest ${things} of `,
        said(book, width.checked),
        ' across ',
        said(book, across.checked),
        ` that leave ${words}`,
        said(book, limit.checked),
      ),
      tokens: known(target.figure) ? [...gap.tokens, ' = ', gap.gap, sign, limit] : [],
      joint: '→',
      result: target,
      comesOut: [byItsPlan(checked, used)],
      between: known(target.figure) ? [{ to: gap.gap, work: gap.work }] : [],
      used,
      beside: known(target.figure) ? oneFewer(book, checked, across, width, words, limit) : [],
    }),
  ];
}

function oneFewer(
  book: Book,
  checked: Checked,
  across: Used,
  width: Used,
  words: string,
  limit: Used,
): readonly Aside[] {
  const fewer = differenceOf(checked.plan, ONE_MORE);
  const count = figureOf(book, { plan: fewer, holds: checked.holds });
  if (!known(count) || count.shown.exact.startsWith('-')) return [];
  const gap = gapLine(book, across, width, fewer);
  const result = targetOf(gap.gap.figure, '');
  const { pieces } = lineOf(book, {
    tokens: gap.tokens,
    joint: '=',
    result,
    comesOut: [gap.work],
  });
  return [
    {
      said: saying(
        `one fewer, ${count.shown.text}, does not leave ${words}`,
        said(book, limit.checked),
      ),
      pieces,
      result: result.text,
    },
  ];
}

/** `even gap for 13 balusters of 1 1/2 in across 72 in`. */
export function tellEvenGap(book: Book, checked: Checked, formula: EvenGap, target: Target): Told {
  const count = use(book, operand(checked, formula.count));
  const width = use(book, operand(checked, formula.width));
  const across = use(book, operand(checked, formula.across));
  const gap = gapLine(book, across, width, count.checked.plan);
  return [
    riser(book, {
      said: saying(
        'even gap for ',
        said(book, count.checked),
        ' of ',
        said(book, width.checked),
        ' across ',
        said(book, across.checked),
        ': what they leave, split over one gap more than there are of them',
      ),
      tokens: gap.tokens,
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [count, width, across])],
      used: [count, width, across],
    }),
  ];
}

interface GapLine {
  readonly tokens: readonly Token[];
  readonly gap: Term;
  readonly work: (stands: (term: Term) => Plan) => Plan;
}

/** `(72 in − 13 × 1 1/2 in) ÷ 14`. */
function gapLine(book: Book, across: Used, width: Used, count: Plan): GapLine {
  const many = plainTerm(book, count);
  const gaps = plainTerm(book, sumOf(count, ONE_MORE));
  const between = (whole: Plan, n: Plan, one: Plan, spaces: Plan): Plan =>
    quotientOf(differenceOf(whole, productOf(n, one)), spaces);
  const one = inScaleOf(width.checked, across.checked);
  const plan = between(across.checked.plan, count, one, sumOf(count, ONE_MORE));
  return {
    tokens: ['(', across, ' − ', many, ' × ', width, ') ÷ ', gaps],
    gap: {
      figure: figureOf(book, { plan, holds: across.checked.holds }),
      side: 'apart',
      instead: 'gap',
    },
    work: (stands) =>
      between(
        stands(across),
        stands(many),
        inScaleOf({ ...width.checked, plan: stands(width) }, across.checked),
        stands(gaps),
      ),
  };
}

function plainTerm(book: Book, plan: Plan): Term {
  return { figure: figureOf(book, { plan, holds: PLAIN_NUMBER }), side: 'apart', instead: '' };
}

function apart(used: Used): Used {
  return { ...used, side: 'apart' };
}

function countHolds(noun: string): Holds {
  return { measure: amountMeasure(countOf(noun)), showIn: null, written: [] };
}
