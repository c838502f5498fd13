// Shares in words and numbers: of what each was taken.
import type { Checked, Plan } from '../../language/plan.ts';
import type { Binary, PartOf, ShareThatIs } from '../../language/tree.ts';
import type { Holds } from '../../quantity/form.ts';
import { differenceOf, productOf, sumOf } from '../asks.ts';
import type { Book } from '../book.ts';
import { figureOf } from '../figure.ts';
import { type Target, type Term, type Token } from '../line.ts';
import { bare, bared, isSimple, said } from '../naming.ts';
import { type Word, saying } from '../step.ts';
import { runIn } from './arithmetic.ts';
import {
  type Aside,
  type RiserAsked,
  type Told,
  type Used,
  byItsPlan,
  known,
  operand,
  riser,
  use,
} from './told.ts';

/** `slab volume plus waste`: a share of what stands before it. */
export function tellShareOf(book: Book, checked: Checked, formula: Binary, target: Target): Told {
  const whole = use(book, bared(operand(checked, formula.left)));
  const share = use(book, operand(checked, formula.right));
  const word = formula.op === 'minus' ? 'less ' : 'plus ';
  const work = formula.op === 'minus' ? differenceOf : sumOf;
  return shareOnTop(book, checked, whole, share, target, {
    sign: formula.op === 'minus' ? ' − ' : ' + ',
    said: (written) =>
      saying(word, shareSaid(book, share), takenOf(share), wholeSaid(book, whole, written)),
    work,
    beside: [],
  });
}

/** A share of a whole, added to it or taken from it. */
export interface OnTop {
  readonly sign: ' + ' | ' − ';
  readonly said: RiserAsked['said'];
  readonly work: (left: Plan, right: Plan) => Plan;
  readonly beside: readonly Aside[];
}

export function shareOnTop(
  book: Book,
  checked: Checked,
  whole: Used,
  share: Used,
  target: Target,
  on: OnTop,
): Told {
  const part = termOf(book, productOf(whole.checked.plan, share.checked.plan), whole.checked.holds);
  const sameScale = whole.checked.holds.measure === checked.holds.measure;
  const shown: readonly Token[] = known(part.figure) ? [' (', part, ')'] : [];
  return [
    riser(book, {
      said: on.said,
      tokens: [whole, on.sign, share, ...shown],
      joint: '=',
      result: target,
      comesOut: [
        byItsPlan(checked, [whole, share]),
        ...(sameScale ? [(stands: (t: Term) => Plan) => on.work(stands(whole), stands(part))] : []),
      ],
      used: [whole, share],
      beside: on.beside,
    }),
  ];
}

/** Shares added to shares, or taken from a whole: `1 − 10% − 15%`. */
export function tellShareRun(book: Book, checked: Checked, target: Target): Told {
  const { first, links } = runIn(checked, (inner) => inner.manner === checked.manner);
  const start = use(book, first);
  const rest = links.map((link) => ({ op: link.op, used: use(book, link.checked) }));
  const used = [start, ...rest.map((link) => link.used)];
  const tokens: readonly Token[] = rest.flatMap((link): readonly Token[] => [
    link.op === 'minus' ? ' − ' : ' + ',
    link.used,
  ]);
  const added = rest.flatMap((link) =>
    saying(link.op === 'minus' ? ' less ' : ' plus ', said(book, link.used.checked)),
  );
  const after = listed(rest.map((link) => said(book, link.used.checked)));
  return [
    riser(book, {
      said:
        checked.manner === 'from-whole'
          ? saying('what is left of the whole after ', ...after)
          : saying(said(book, first), added, ', shares of the same whole'),
      tokens: [start, ...tokens],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, used)],
      used,
    }),
  ];
}

/** `10% of X`, `half of X`. */
export function tellPartOf(book: Book, checked: Checked, formula: PartOf, target: Target): Told {
  const share = use(book, operand(checked, formula.share));
  const of = use(book, operand(checked, formula.of));
  return [
    riser(book, {
      said: saying(shareSaid(book, share), ' of ', said(book, of.checked)),
      tokens: [share, ' × ', of],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [share, of])],
      used: [share, of],
    }),
  ];
}

/** `what share X is of Y`. */
export function tellWhatShare(
  book: Book,
  checked: Checked,
  formula: ShareThatIs,
  target: Target,
): Told {
  const of = use(book, operand(checked, formula.of), 'over');
  const whole = use(book, operand(checked, formula.whole), 'under');
  return [
    riser(book, {
      said: saying('what share ', said(book, of.checked), ' is of ', said(book, whole.checked)),
      tokens: [of, ' ÷ ', whole],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [of, whole])],
      used: [of, whole],
    }),
  ];
}

export interface PlannedTerm extends Term {
  readonly plan: Plan;
}

export function termOf(book: Book, plan: Plan, holds: Holds): PlannedTerm {
  return { plan, figure: figureOf(book, { plan, holds }), side: 'apart', instead: '' };
}

/** `waste, 10%` for a name, `10% waste` for a written share. */
export function shareSaid(book: Book, share: Used): readonly Word[] {
  const words = said(book, share.checked);
  if (bare(share.checked.formula).kind === 'amount' || !known(share.figure)) return words;
  return saying(words, `, ${share.figure.shown.text}`);
}

/** `10% waste, of` but `10% of`. */
function takenOf(share: Used): string {
  const formula = bare(share.checked.formula);
  return formula.kind === 'amount' && formula.label !== null ? ', of ' : ' of ';
}

/** What a share was taken of: by name, or as the amount that stands before it. */
export function wholeSaid(
  book: Book,
  whole: Used,
  written: (term: Term) => string,
): readonly Word[] {
  if (isSimple(whole.checked.formula)) return said(book, whole.checked);
  return saying(known(whole.figure) ? written(whole) : 'what stands before it');
}

/** `a, b and c`. */
export function listed(items: readonly (readonly Word[])[]): readonly (readonly Word[])[] {
  return items.flatMap((item, place) => {
    if (place === 0) return [item];
    return [saying(item === items.at(-1) ? ' and ' : ', '), item];
  });
}
