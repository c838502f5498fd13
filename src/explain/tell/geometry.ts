// Powers, roots and shapes.
import type { Checked, Plan } from '../../language/plan.ts';
import type { Circle, Diagonal, Power, SquareRoot, Triangle } from '../../language/tree.ts';
import { differenceOf, heldIn, numberOf, quotientOf, sumOf } from '../asks.ts';
import type { Book } from '../book.ts';
import { figureOf } from '../figure.ts';
import { type Target, type Term, type Token, targetOf } from '../line.ts';
import { said } from '../naming.ts';
import { saying } from '../step.ts';
import { type Told, type Used, byItsPlan, known, operand, riser, use } from './told.ts';

export function tellPower(book: Book, checked: Checked, formula: Power, target: Target): Told {
  const of = use(book, operand(checked, formula.of));
  const third: readonly Token[] = formula.power === 3 ? [' × ', of] : [];
  return [
    riser(book, {
      said: saying(said(book, of.checked), formula.power === 3 ? ' cubed' : ' squared'),
      tokens: [of, ' × ', of, ...third],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [of])],
      used: [of],
    }),
  ];
}

export function tellSquareRoot(
  book: Book,
  checked: Checked,
  formula: SquareRoot,
  target: Target,
): Told {
  const of = use(book, operand(checked, formula.of));
  return [
    riser(book, {
      said: saying('square root of ', said(book, of.checked)),
      tokens: ['√(', of, ')'],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [of])],
      used: [of],
    }),
  ];
}

export function tellDiagonal(
  book: Book,
  checked: Checked,
  formula: Diagonal,
  target: Target,
): Told {
  const a = use(book, operand(checked, formula.a));
  const b = use(book, operand(checked, formula.b));
  return [
    riser(book, {
      said: saying(
        'diagonal of ',
        said(book, a.checked),
        ' and ',
        said(book, b.checked),
        ': the root of both squares together',
      ),
      tokens: ['√(', a, ' × ', a, ' + ', b, ' × ', b, ')'],
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [a, b])],
      used: [a, b],
    }),
  ];
}

export function tellCircle(book: Book, checked: Checked, formula: Circle, target: Target): Told {
  const size = use(book, operand(checked, formula.size));
  const of = `${formula.what === 'area' ? 'circle area' : 'circumference'} for `;
  return [
    riser(book, {
      said: saying(of, said(book, size.checked), ` ${formula.across}`),
      tokens: circleLine(formula, size),
      joint: '=',
      result: target,
      comesOut: [byItsPlan(checked, [size])],
      used: [size],
    }),
  ];
}

function circleLine(formula: Circle, size: Used): readonly Token[] {
  if (formula.what === 'circumference') {
    return formula.across === 'diameter' ? ['π × ', size] : ['2 × π × ', size];
  }
  return formula.across === 'diameter'
    ? ['π × ', size, ' × ', size, ' ÷ 4']
    : ['π × ', size, ' × ', size];
}

/** From its three sides, by way of half the length round it. */
export function tellTriangle(
  book: Book,
  checked: Checked,
  formula: Triangle,
  target: Target,
): Told {
  const [a, b, c] = formula.sides.map((side) => use(book, operand(checked, side)));
  if (!a || !b || !c) throw new Error('a triangle has three sides');
  const plan = halfRound(a, b, c, (side) => side.checked.plan);
  const half: Term = {
    figure: figureOf(book, { plan, holds: a.checked.holds }),
    side: 'apart',
    instead: 'half the way round',
  };
  const short = [a, b, c].map((side): Term => {
    const rest = differenceOf(plan, inScale(side, a, side.checked.plan));
    return {
      figure: figureOf(book, { plan: rest, holds: a.checked.holds }),
      side: 'apart',
      instead: 'what is left',
    };
  });
  const product = short.flatMap((one): Token[] => [' × ', one]);
  const top = riser(book, {
    said: saying(
      'triangle area: half the way round, times how much more it is than each side; then the square root',
    ),
    tokens: known(half.figure) ? ['√(', half, ...product, ')'] : [],
    joint: '=',
    result: target,
    comesOut: [byItsPlan(checked, [a, b, c])],
    used: [],
  });
  const below = riser(book, {
    said: saying(
      'half the way round ',
      said(book, a.checked),
      ', ',
      said(book, b.checked),
      ' and ',
      said(book, c.checked),
    ),
    tokens: ['(', a, ' + ', b, ' + ', c, ') ÷ 2'],
    joint: '=',
    result: top.targets.get(half) ?? targetOf(half.figure, half.instead),
    comesOut: [(stands) => halfRound(a, b, c, stands)],
    used: [a, b, c],
  });
  return [top, below];
}

function halfRound(a: Used, b: Used, c: Used, plan: (side: Used) => Plan): Plan {
  const sum = sumOf(sumOf(plan(a), inScale(b, a, plan(b))), inScale(c, a, plan(c)));
  return quotientOf(sum, numberOf('2'));
}

function inScale(side: Used, as: Used, plan: Plan): Plan {
  const [from, to] = [side.checked.holds.measure, as.checked.holds.measure];
  return from.kind === 'amount' && to.kind === 'amount' ? heldIn(plan, from, to) : plan;
}
