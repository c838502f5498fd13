// Shares: of what each was taken, and for markups and margins the proof that each comes out as asked.
import type { Checked, Plan } from '../../language/plan.ts';
import type { Binary, ForShares, MarkedUp, PartOf, ShareThatIs } from '../../language/tree.ts';
import { SHARE } from '../../quantity/measure.ts';
import type { Holds } from '../../quantity/form.ts';
import { differenceOf, productOf, quotientOf, sumOf } from '../asks.ts';
import type { Book } from '../book.ts';
import { figureOf } from '../figure.ts';
import { type Target, type Term, type Token, lineOf, targetOf } from '../line.ts';
import { bare, bared, isSimple, said } from '../naming.ts';
import { type Word, plainWords, saying } from '../step.ts';
import { beginning, runIn } from './arithmetic.ts';
import { type Aside, type Told, type Used, byItsPlan, known, operand, riser, use } from './told.ts';

const A_SHARE: Holds = { measure: SHARE, showIn: null, written: [] };

/** `slab volume plus waste`: a share of what stands before it. */
export function tellShareOf(book: Book, checked: Checked, formula: Binary, target: Target): Told {
  const whole = use(book, bared(operand(checked, formula.left)));
  const share = use(book, operand(checked, formula.right));
  const word = formula.op === 'minus' ? 'less ' : 'plus ';
  const work = formula.op === 'minus' ? differenceOf : sumOf;
  return shareOnTop(book, checked, whole, share, target, {
    sign: formula.op === 'minus' ? ' − ' : ' + ',
    said: saying(word, shareSaid(book, share), takenOf(share), wholeSaid(book, whole)),
    work,
    beside: [],
  });
}

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

interface OnTop {
  readonly sign: ' + ' | ' − ';
  readonly said: readonly Word[];
  readonly work: (left: Plan, right: Plan) => Plan;
  readonly beside: readonly Aside[];
}

function shareOnTop(
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
    proof(
      book,
      saying('check: the share of the cost, as asked'),
      [over, ' ÷ ', cost],
      (s) => quotientOf(s(over), s(cost)),
      quotientOf(added.plan, whole.checked.plan),
    ),
    proof(
      book,
      saying('of the answer it is less: a markup, not a margin'),
      [over, ' ÷ ', answer],
      (s) => quotientOf(s(over), s(answer)),
      quotientOf(added.plan, checked.plan),
    ),
  ];
}

function proof(
  book: Book,
  words: readonly Word[],
  tokens: readonly Token[],
  work: (stands: (term: Term) => Plan) => Plan,
  whole: Plan,
): Aside {
  const result = targetOf(figureOf(book, { plan: whole, holds: A_SHARE }), '');
  const { pieces } = lineOf(book, { tokens, joint: '=', result, comesOut: [work] });
  return { said: words, pieces, result: result.text };
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
  const names = shares.map((s) =>
    saying(shareSaid(book, s.used), labelAfter(book, s.used, s.label)),
  );
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

function sharesProof(
  book: Book,
  checked: Checked,
  of: Used,
  shares: readonly { readonly label: string | null; readonly used: Used }[],
  target: Target,
): readonly Aside[] {
  const { holds } = checked;
  const answer: Term = { figure: target.figure, side: 'apart', instead: '' };
  const taken = shares.map(({ used }) =>
    termOf(book, productOf(used.checked.plan, checked.plan), holds),
  );
  const each = shares.map(({ used, label }, place): Aside => {
    const amount = taken[place] ?? termOf(book, used.checked.plan, holds);
    const result = targetOf(amount.figure, '');
    const { pieces } = lineOf(book, {
      tokens: [used, ' × ', answer],
      joint: '=',
      result,
      comesOut: [(stands) => productOf(stands(used), stands(answer))],
    });
    return {
      said: saying(
        'check: ',
        shareSaid(book, used),
        labelAfter(book, used, label),
        ' of the answer',
      ),
      pieces,
      result: result.text,
    };
  });
  const left = taken.reduce((so, amount) => differenceOf(so, amount.plan), checked.plan);
  const rest = targetOf(figureOf(book, { plan: left, holds }), '');
  const { pieces } = lineOf(book, {
    tokens: [answer, ...taken.flatMap((amount): Token[] => [' − ', amount])],
    joint: '=',
    result: rest,
    comesOut: [
      (stands) => taken.reduce((so, amount) => differenceOf(so, stands(amount)), stands(answer)),
    ],
  });
  return [
    ...each,
    { said: saying('check: what is left is ', wholeSaid(book, of)), pieces, result: rest.text },
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

interface PlannedTerm extends Term {
  readonly plan: Plan;
}

function termOf(book: Book, plan: Plan, holds: Holds): PlannedTerm {
  return { plan, figure: figureOf(book, { plan, holds }), side: 'apart', instead: '' };
}

/** `waste, 10%` for a name, `10% waste` for a written share. */
function shareSaid(book: Book, share: Used): readonly Word[] {
  const words = said(book, share.checked);
  if (bare(share.checked.formula).kind === 'amount' || !known(share.figure)) return words;
  return saying(words, `, ${share.figure.shown.text}`);
}

/** `10% waste, of` but `10% of`. */
function takenOf(share: Used): string {
  const formula = bare(share.checked.formula);
  return formula.kind === 'amount' && formula.label !== null ? ', of ' : ' of ';
}

/** The label that follows a share in `for 10% overhead and 15% profit`, where the share does not carry it. */
function labelAfter(book: Book, share: Used, label: string | null): string {
  if (label === null || plainWords(said(book, share.checked)).endsWith(label)) return '';
  return ` ${label}`;
}

/** What a share was taken of: by name, or as the amount that stands before it. */
export function wholeSaid(book: Book, whole: Used): readonly Word[] {
  if (isSimple(whole.checked.formula)) return said(book, whole.checked);
  return saying(known(whole.figure) ? whole.figure.shown.text : 'what stands before it');
}

/** `a, b and c`. */
export function listed(items: readonly (readonly Word[])[]): readonly (readonly Word[])[] {
  return items.flatMap((item, place) => {
    if (place === 0) return [item];
    return [saying(item === items.at(-1) ? ' and ' : ', '), item];
  });
}
