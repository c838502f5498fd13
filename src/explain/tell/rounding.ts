// Rounding, units and packs: what a number was brought to.
import { LENGTH, hardPart } from '../../quantity/dimension.ts';
import type { Checked, Plan } from '../../language/plan.ts';
import type { AsNoun, InPacks, InUnits, Rounded } from '../../language/tree.ts';
import type { Holds } from '../../quantity/form.ts';
import type { Book } from '../book.ts';
import { type Figure, figureOf } from '../figure.ts';
import { type LineAsked, type Target, type Term, targetOf } from '../line.ts';
import { bare, bared, said } from '../naming.ts';
import { type Word, saying } from '../step.ts';
import { beginning } from './arithmetic.ts';
import { factorBetween, towardsRate, unitCalled } from './factors.ts';
import { type Riser, type Told, type Used, byItsPlan, known, operand, riser, use } from './told.ts';

export function tellRounded(book: Book, checked: Checked, formula: Rounded, target: Target): Told {
  const of = use(book, bared(operand(checked, formula.of)));
  const step = formula.step === null ? null : operand(checked, formula.step);
  const way = WAYS[formula.way];
  const already = unchanged(of.figure, target.figure);
  const across = otherUnit(book, of, checked, target);
  return [
    riser(book, {
      said: saying(
        beginning(of.checked.formula, said(book, of.checked)),
        step === null ? `${way.whole} ${wholeOf(book, checked.holds)}` : way.step,
        step === null ? '' : saying(' ', stepSaid(book, step)),
        already ? ', which it is already' : '',
      ),
      tokens: already ? [] : [of, ...across.tokens],
      joint: '→',
      result: target,
      comesOut: [byItsPlan(checked, [of]), ...across.comesOut],
      between: across.between,
      apart: true,
      used: step === null ? [of] : [of, use(book, step)],
    }),
  ];
}

/**
 * Cubic feet that are rounded to a whole step of cubic yards stand in these first. A length is read off either edge of a
 * tape.
 */
function otherUnit(
  book: Book,
  of: Used,
  checked: Checked,
  target: Target,
): Required<Pick<LineAsked, 'tokens' | 'comesOut' | 'between'>> {
  const factor = isLength(of.checked) ? [] : factorBetween(book, of.figure, target.figure);
  if (factor.length === 0) return { tokens: [], comesOut: [], between: [] };
  const holds = { ...of.checked.holds, showIn: checked.holds.showIn };
  const figure = figureOf(book, { plan: of.checked.plan, holds });
  const there: Term = { figure, side: 'apart', instead: '' };
  const swap = (stands: (term: Term) => Plan): Plan =>
    byItsPlan(checked, [of])((term) => stands(term === of ? there : term));
  const between = [{ to: there, work: (stands: (term: Term) => Plan): Plan => stands(of) }];
  return { tokens: [...factor, ' = ', there], comesOut: [swap], between };
}

function isLength({ holds: { measure } }: Checked): boolean {
  return measure.kind === 'amount' && hardPart(measure.dimension) === LENGTH;
}

const WAYS = {
  up: { whole: 'rounded up to', step: 'rounded up to the next' },
  down: { whole: 'rounded down to', step: 'rounded down to a whole step of' },
  nearest: { whole: 'rounded to', step: 'rounded to the nearest' },
} as const;

/** `whole bags`, `a whole number`. */
export function wholeOf(book: Book, holds: Holds): string {
  const { measure } = holds;
  const [only, ...others] = measure.kind === 'amount' ? measure.dimension.nouns : [];
  return only && others.length === 0 && only.power === 1
    ? `whole ${book.show.many(only.noun)}`
    : 'a whole number';
}

/** `1/4 cubic yard`, and `cent` rather than `1 cent`. */
function stepSaid(book: Book, step: Checked): readonly Word[] {
  const words = said(book, step);
  const inner = bare(step.formula);
  if (inner.kind !== 'amount') return words;
  if (inner.say === '$0.01') return saying('cent');
  const [, unit] = /^1 (?![\d½¼¾])(.+)$/.exec(inner.say) ?? [];
  return saying(unit === undefined ? inner.say : (ONE_SPELLED[unit] ?? unit));
}

export function unchanged(before: Figure, after: Figure): boolean {
  return (
    known(before) &&
    known(after) &&
    before.shown.exact === after.shown.exact &&
    before.shown.unit === after.shown.unit
  );
}

/** `in cubic yards`, with how many of the one make one of the other where that is a whole number. */
export function tellInUnits(book: Book, checked: Checked, formula: InUnits, target: Target): Told {
  const of = use(book, bared(operand(checked, formula.of)), 'over');
  const factor = factorBetween(book, of.figure, target.figure);
  const already = known(of.figure) && of.figure.shown.text === target.text;
  return [
    riser(book, {
      said: saying(
        beginning(of.checked.formula, said(book, of.checked)),
        known(target.figure) ? `in ${unitSaid(target.figure)}` : clauseSaid(book, formula),
        already ? ', which it is already' : '',
      ),
      tokens: already ? [] : [of, ...factor],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [of])],
      used: [of],
    }),
  ];
}

function clauseSaid(book: Book, formula: InUnits): string {
  return book
    .say(formula)
    .slice(book.say(formula.of).length)
    .replace(/^[\s,]+/, '');
}

function unitSaid(figure: Extract<Figure, { kind: 'known' }>): string {
  const { unit } = figure.shown;
  return SPELLED[unit] ?? unitCalled(unit)?.many ?? unit;
}

/** Short units that read badly after `the next`. */
const ONE_SPELLED: Readonly<Record<string, string>> = { in: 'inch', ft: 'foot', yd: 'yard' };

/** Short units that read badly after `in`. */
const SPELLED: Readonly<Record<string, string>> = { in: 'inches', ft: 'feet', yd: 'yards' };

/** `in bags of bag yield`: divided, then rounded up to whole packs. */
export function tellInPacks(book: Book, checked: Checked, formula: InPacks, target: Target): Told {
  const of = use(book, bared(operand(checked, formula.of)), 'over');
  const each = use(book, operand(checked, formula.holdsEach), 'under');
  const rounding = roundingIn(checked.plan);
  const packs = rounding?.of ?? checked.plan;
  const before: Term = {
    figure: figureOf(book, { plan: packs, holds: checked.holds }),
    side: 'apart',
    instead: 'packs',
  };
  const top = roundedUp(book, checked, before, target, rounding);
  const run = isLength(of.checked);
  const perPack = ratePer(each.checked, formula.noun) ? '' : ` per ${formula.noun}`;
  return [
    ...top.risers,
    riser(book, {
      said: saying(
        beginning(of.checked.formula, said(book, of.checked)),
        `in ${book.show.many(formula.noun)} of `,
        said(book, each.checked),
        run ? ', as one continuous run with joints allowed' : '',
        top.whole,
      ),
      tokens: [of, ...towardsRate(book, of.figure, each.figure, 'over'), ' ÷ ', each, perPack],
      joint: '=',
      result: top.reached,
      comesOut: [
        byItsPlan({ plan: packs }, [of, each]),
        ...roundsTo(top, rounding, packs, [of, each]),
      ],
      used: [of, each],
    }),
  ];
}

/** What comes out whole comes out so from what is written, too: a hair more would be another pack. */
function roundsTo(
  { whole }: RoundedUp,
  rounding: Extract<Plan, { op: 'round' }> | null,
  packs: Plan,
  used: readonly Used[],
): LineAsked['comesOut'] {
  if (whole === '' || !rounding) return [];
  const work = byItsPlan({ plan: packs }, used);
  return [(stands) => ({ ...rounding, of: work(stands) })];
}

/** The rounding up to whole packs, where there is anything to round. */
export interface RoundedUp {
  readonly risers: readonly Riser[];
  /** How what is rounded is written. */
  readonly reached: Target;
  /** For the step below. */
  readonly whole: '' | ', which comes out whole';
}

export function roundedUp(
  book: Book,
  checked: Checked,
  before: Term,
  target: Target,
  rounding: Extract<Plan, { op: 'round' }> | null,
): RoundedUp {
  if (unchanged(before.figure, target.figure)) {
    return { risers: [], reached: target, whole: ', which comes out whole' };
  }
  const made = riser(book, {
    said: saying(`rounded up to ${wholeOf(book, checked.holds)}`),
    tokens: [before],
    joint: '→',
    result: target,
    comesOut: rounding ? [(stands) => ({ ...rounding, of: stands(before) })] : [],
    apart: true,
    used: [],
  });
  const reached = made.targets.get(before) ?? targetOf(before.figure, before.instead);
  return { risers: [made], reached, whole: '' };
}

/** The rounding that is the last thing a plan does. */
export function roundingIn(plan: Plan): Extract<Plan, { op: 'round' }> | null {
  let outer = plan;
  while (outer.op === 'scale') outer = outer.of;
  return outer.op === 'round' ? outer : null;
}

/** Is it a rate per this noun already: 0.45 cubic feet per bag? */
function ratePer(each: Checked, noun: string): boolean {
  const { measure } = each.holds;
  return (
    measure.kind === 'amount' &&
    measure.dimension.nouns.some((n) => n.noun === noun && n.power === -1)
  );
}

/** `, as boards`. */
export function tellAsNoun(book: Book, checked: Checked, formula: AsNoun, target: Target): Told {
  const of = use(book, bared(operand(checked, formula.of)));
  const already = known(of.figure) && of.figure.shown.text === target.text;
  return [
    riser(book, {
      said: saying(
        beginning(of.checked.formula, said(book, of.checked)),
        `counted as ${book.show.many(formula.noun)}${already ? ', which they are already' : ''}`,
      ),
      tokens: already ? [] : [of],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [of])],
      used: [of],
    }),
  ];
}
