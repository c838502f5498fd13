// Markups and margins, told apart: of what the share was taken, and the proof that it comes out as asked.
import type { Checked, Plan } from '../../language/plan.ts';
import type { ForShares, MarkedUp } from '../../language/tree.ts';
import type { Holds } from '../../quantity/form.ts';
import { SHARE } from '../../quantity/measure.ts';
import { differenceOf, productOf, quotientOf, sumOf } from '../asks.ts';
import type { Book } from '../book.ts';
import { figureOf } from '../figure.ts';
import { type Target, type Term, type Token, lineOf, targetOf } from '../line.ts';
import { bare, bared, said } from '../naming.ts';
import { type Word, plainWords, saying } from '../step.ts';
import { beginning } from './arithmetic.ts';
import { listed, shareOnTop, shareSaid, termOf, wholeSaid } from './shares.ts';
import { type Aside, type Told, type Used, byItsPlan, known, operand, riser, use } from './told.ts';

const A_SHARE: Holds = { measure: SHARE, showIn: null, written: [] };

/** `marked up 20%`: a share of the cost, told apart from a margin. */
export function tellMarkedUp(
  book: Book,
  checked: Checked,
  formula: MarkedUp,
  target: Target,
): Told {
  const whole = use(book, bared(operand(checked, formula.of)));
  const share = use(book, operand(checked, formula.share));
  return shareOnTop(book, checked, whole, share, target, {
    sign: ' + ',
    said: saying(
      beginning(whole.checked.formula, said(book, whole.checked)),
      'marked up ',
      shareSaid(book, share),
      ', taken of the cost, not of the answer',
    ),
    work: sumOf,
    beside: markupProof(book, checked, whole, share, target),
  });
}

/** What was added is the share asked for of the cost, and a smaller one of the answer. */
function markupProof(
  book: Book,
  checked: Checked,
  whole: Used,
  share: Used,
  target: Target,
): readonly Aside[] {
  if (!known(target.figure) || whole.checked.holds.measure !== checked.holds.measure) return [];
  const added = termOf(book, productOf(whole.checked.plan, share.checked.plan), checked.holds);
  const cost: Term = { figure: whole.figure, side: 'under', instead: whole.instead };
  const answer: Term = { figure: target.figure, side: 'under', instead: '' };
  const over: Term = { ...added, side: 'over' };
  return [
    proof(book, {
      said: saying('check: the share of the cost, as asked'),
      tokens: [over, ' ÷ ', cost],
      work: (stands) => quotientOf(stands(over), stands(cost)),
      plan: quotientOf(added.plan, whole.checked.plan),
      holds: A_SHARE,
    }),
    proof(book, {
      said: saying('of the answer it is less: a markup, not a margin'),
      tokens: [over, ' ÷ ', answer],
      work: (stands) => quotientOf(stands(over), stands(answer)),
      plan: quotientOf(added.plan, checked.plan),
      holds: A_SHARE,
    }),
  ];
}

interface LabelledShare {
  readonly label: string | null;
  readonly used: Used;
}

/** `for a 20% margin`, `for 10% overhead and 15% profit`: shares of the answer. */
export function tellForShares(
  book: Book,
  checked: Checked,
  formula: ForShares,
  target: Target,
): Told {
  const of = use(book, bared(operand(checked, formula.of)));
  const shares = formula.shares.map(({ share, label }) => ({
    label,
    used: use(book, operand(checked, share)),
  }));
  const used = [of, ...shares.map((s) => s.used)];
  const names = shares.map((s) => labelled(book, s));
  return [
    riser(book, {
      said: saying(
        beginning(of.checked.formula, said(book, of.checked)),
        'for ',
        ...listed(names),
        shares.length === 1
          ? ', taken of the answer, not of the cost'
          : ', each taken of the answer, not of the cost',
      ),
      tokens: [of, ' ÷ (1', ...shares.flatMap((s): Token[] => [' − ', s.used]), ')'],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, used)],
      used,
      beside: known(target.figure) ? sharesProof(book, checked, of, shares, target) : [],
    }),
  ];
}

/** Each share of the answer comes out as asked, and the rest is what went in. */
function sharesProof(
  book: Book,
  checked: Checked,
  of: Used,
  shares: readonly LabelledShare[],
  target: Target,
): readonly Aside[] {
  const { holds } = checked;
  const answer: Term = { figure: target.figure, side: 'apart', instead: '' };
  const taken = shares.map((share) => ({
    ...share,
    amount: termOf(book, productOf(share.used.checked.plan, checked.plan), holds),
  }));
  const each = taken.map(({ used, label, amount }) =>
    proof(book, {
      said: saying(
        'check: ',
        shareSaid(book, used),
        isNamed(used) ? '' : labelAfter(book, used, label),
        isNamed(used) ? ', of the answer' : ' of the answer',
      ),
      tokens: [used, ' × ', answer],
      work: (stands) => productOf(stands(used), stands(answer)),
      plan: amount.plan,
      holds,
    }),
  );
  const whole = wholeSaid(book, of, () => (known(of.figure) ? of.figure.shown.text : of.instead));
  const rest = proof(book, {
    said: saying('check: the rest is ', whole),
    tokens: [answer, ...taken.flatMap(({ amount }): Token[] => [' − ', amount])],
    work: (stands) =>
      taken.reduce((so, one) => differenceOf(so, stands(one.amount)), stands(answer)),
    plan: taken.reduce((so, one) => differenceOf(so, one.amount.plan), checked.plan),
    holds,
  });
  return [...each, rest];
}

interface Proof {
  readonly said: readonly Word[];
  readonly tokens: readonly Token[];
  /** The same from what is written. */
  readonly work: (stands: (term: Term) => Plan) => Plan;
  readonly plan: Plan;
  readonly holds: Holds;
}

function proof(book: Book, { said: words, tokens, work, plan, holds }: Proof): Aside {
  const result = targetOf(figureOf(book, { plan, holds }), '');
  const { pieces } = lineOf(book, { tokens, joint: '=', result, comesOut: [work] });
  return { said: words, pieces, result: result.text };
}

/** `a 20% margin`, `10% overhead`, and `a margin of profit share, 15%`. */
function labelled(book: Book, { label, used }: LabelledShare): readonly Word[] {
  const isMargin = label === 'margin';
  if (isMargin && isNamed(used)) return saying('a margin of ', shareSaid(book, used));
  const words = shareSaid(book, used);
  const article = /^(?:8|1[18]\b)/.test(plainWords(words)) ? 'an ' : 'a ';
  return saying(isMargin ? article : '', words, labelAfter(book, used, label));
}

function isNamed(share: Used): boolean {
  return bare(share.checked.formula).kind !== 'amount';
}

/** The label that follows a share in `for 10% overhead and 15% profit`, where the share does not carry it. */
function labelAfter(book: Book, share: Used, label: string | null): string {
  if (label === null || plainWords(said(book, share.checked)).endsWith(label)) return '';
  return ` ${label}`;
}
