// Sums, products, quotients and rates, in words and in numbers.
// A run of plus and minus, or of times and by, is one line: 12 ft × 4 ft × 4 in.
import { withoutNounsAbove } from '../../quantity/dimension.ts';
import type { Checked } from '../../language/plan.ts';
import type { Arithmetic, Binary, Formula, Negative } from '../../language/tree.ts';
import type { Side } from '../cancel.ts';
import type { Book } from '../book.ts';
import type { Target, Token } from '../line.ts';
import { bared, isSimple, said } from '../naming.ts';
import { type Word, saying } from '../step.ts';
import { towardsRate, towardsUnit } from './factors.ts';
import { type Told, type Used, byItsPlan, operand, riser, use } from './told.ts';

/** A longer run goes on in the step below. */
export const TERMS_AT_MOST = 12;

type RunKind = 'sum' | 'product';

/** Which run an operator belongs to; shares, rates and quotients stand alone. */
function runOf(checked: Checked): RunKind | null {
  const { formula, manner } = checked;
  if (formula.kind !== 'binary' || manner !== null) return null;
  switch (formula.op) {
    case 'plus':
    case 'minus':
      return 'sum';
    case 'times':
    case 'by':
      return 'product';
    case 'at':
    case 'over':
      return null;
  }
}

interface Link {
  readonly op: Arithmetic;
  readonly checked: Checked;
}

interface Run {
  readonly first: Checked;
  readonly links: readonly Link[];
}

/** The run that ends in this node: what it starts from, and each operator with what follows it. */
export function runIn(checked: Checked, belongs: (inner: Checked) => boolean): Run {
  const links: Link[] = [];
  let first = checked;
  while (first.formula.kind === 'binary' && belongs(first) && links.length < TERMS_AT_MOST) {
    const { op, left, right } = first.formula;
    links.unshift({ op, checked: operand(first, right) });
    first = bared(operand(first, left));
  }
  return { first, links };
}

export function tellArithmetic(
  book: Book,
  checked: Checked,
  formula: Binary,
  target: Target,
): Told {
  const run = runOf(checked);
  if (run !== null)
    return tellRun(
      book,
      checked,
      runIn(checked, (one) => runOf(one) === run),
      run,
      target,
    );
  const priced = pricedRun(checked, formula);
  return priced
    ? tellRun(book, checked, priced, 'product', target)
    : tellPair(book, checked, formula, target);
}

/**
 * `3 people times 8 hours at $50 per hour per person`: shown by themselves the hours would not tell
 * whose they are, so product and price stand in one line.
 */
function pricedRun(checked: Checked, formula: Binary): Run | null {
  if (checked.manner !== 'at-multiplied') return null;
  const left = bared(operand(checked, formula.left));
  const { measure } = left.holds;
  if (runOf(left) !== 'product' || measure.kind !== 'amount') return null;
  if (withoutNounsAbove(measure.dimension) === measure.dimension) return null;
  const { first, links } = runIn(left, (one) => runOf(one) === 'product');
  return { first, links: [...links, { op: formula.op, checked: operand(checked, formula.right) }] };
}

function tellRun(
  book: Book,
  checked: Checked,
  { first, links }: Run,
  kind: RunKind,
  target: Target,
): Told {
  const side: Side = kind === 'product' ? 'over' : 'apart';
  const start = use(book, first, side);
  const rest = links.map((link) => ({ op: link.op, used: use(book, link.checked, side) }));
  const used = [start, ...rest.map((link) => link.used)];
  const across =
    kind === 'product'
      ? new Map([...towardsFeet(book, used, target), ...towardsRates(book, used)])
      : NO_FACTORS;
  const tokens: readonly Token[] = [
    start,
    ...(across.get(start) ?? []),
    ...rest.flatMap((link): readonly Token[] => [
      SIGNS[link.op],
      link.used,
      ...(across.get(link.used) ?? []),
    ]),
  ];
  return [
    riser(book, {
      said: runSaid(book, first, links),
      tokens,
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, used)],
      used,
    }),
  ];
}

/**
 * Inches among feet where the product is shown in square or cubic feet: whoever punches the line needs the 12 in sight.
 * What has a rate in its line is turned towards that.
 */
function towardsFeet(
  book: Book,
  used: readonly Used[],
  { figure }: Target,
): ReadonlyMap<Used, readonly Token[]> {
  const factors = new Map<Used, readonly Token[]>();
  if (figure.kind !== 'known' || used.some(isRate)) return factors;
  if (!FEET_SHOWN.has(figure.shown.unit)) return factors;
  for (const one of used) {
    const across = towardsUnit(book, one.figure, 'ft');
    if (across.length > 0) factors.set(one, across);
  }
  return factors;
}

const FEET_SHOWN: ReadonlySet<string> = new Set(['sq ft', 'cubic ft']);

const NO_FACTORS: ReadonlyMap<Used, readonly Token[]> = new Map();

/** What an amount is turned by to meet the unit of a rate in the same product: minutes and dollars per hour. */
function towardsRates(book: Book, used: readonly Used[]): ReadonlyMap<Used, readonly Token[]> {
  const factors = new Map<Used, readonly Token[]>();
  for (const rate of used.filter(isRate)) {
    const amount = used.find(
      (one) => !isRate(one) && towardsRate(book, one.figure, rate.figure, 'under').length > 0,
    );
    const isMet = used.some((one) => !isRate(one) && meets(one, rate));
    if (amount && !isMet && !factors.has(amount)) {
      factors.set(amount, towardsRate(book, amount.figure, rate.figure, 'under'));
    }
  }
  return factors;
}

function isRate({ checked: { holds } }: Used): boolean {
  return holds.measure.kind === 'amount' && holds.measure.rate !== null;
}

/** Stands there in the very unit that the rate is per. */
function meets(one: Used, rate: Used): boolean {
  if (one.figure.kind !== 'known' || rate.figure.kind !== 'known') return false;
  return rate.figure.shown.unit.split(' per ').slice(1).includes(one.figure.shown.unit);
}

/** All of it where it starts from a name or an amount; else only what is done to what stands below. */
function runSaid(book: Book, first: Checked, links: readonly Link[]): readonly Word[] {
  const rest = links.flatMap((link) => saying(` ${WORDS[link.op]} `, said(book, link.checked)));
  if (isSimple(first.formula)) return saying(said(book, first), rest);
  const [head, ...tail] = rest;
  return head ? saying(head.text.trimStart(), tail) : [];
}

const SIGNS: Readonly<Record<Arithmetic, string>> = {
  plus: ' + ',
  minus: ' − ',
  times: ' × ',
  by: ' × ',
  at: ' × ',
  over: ' ÷ ',
};

const WORDS: Readonly<Record<Arithmetic, string>> = {
  plus: 'plus',
  minus: 'less',
  times: 'times',
  by: 'by',
  at: 'at',
  over: 'divided by',
};

/** `at` and `divided by`. */
function tellPair(book: Book, checked: Checked, formula: Binary, target: Target): Told {
  const divides = formula.op === 'over' || checked.manner === 'at-divided';
  const left = use(book, bared(operand(checked, formula.left)), 'over');
  const right = use(book, operand(checked, formula.right), divides ? 'under' : 'over');
  const used: readonly Used[] = [left, right];
  const across = divides
    ? isRate(left) || !isRate(right)
      ? []
      : towardsRate(book, left.figure, right.figure, 'over')
    : null;
  const factors = across === null ? towardsRates(book, used) : new Map([[left, across]]);
  return [
    riser(book, {
      said: saying(
        beginning(left.checked.formula, said(book, left.checked)),
        `${WORDS[formula.op]} `,
        said(book, right.checked),
        checked.manner === 'at-divided' ? ', which divides' : '',
      ),
      tokens: [
        left,
        ...(factors.get(left) ?? []),
        divides ? ' ÷ ' : ' × ',
        right,
        ...(factors.get(right) ?? []),
      ],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, used)],
      used,
    }),
  ];
}

/** What a step starts from, where that is short enough to be said again. */
export function beginning(formula: Formula, words: readonly Word[]): readonly Word[] {
  return isSimple(formula) ? saying(words, ' ') : [];
}

export function tellNegative(
  book: Book,
  checked: Checked,
  formula: Negative,
  target: Target,
): Told {
  const of = use(book, operand(checked, formula.of));
  return [
    riser(book, {
      said: saying('taken away: ', said(book, of.checked)),
      tokens: ['0 − ', of],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [of])],
      used: [of],
    }),
  ];
}
