// Pieces of one size: how many, how long together, or what they are sold by, with the dimensions that were taken.
import type { Checked } from '../../language/plan.ts';
import type { Formula, Sized } from '../../language/tree.ts';
import type { Book } from '../book.ts';
import type { Target, Token } from '../line.ts';
import { said } from '../naming.ts';
import { type Word, saying } from '../step.ts';
import { joinedBy } from './adding.ts';
import { type Told, type Used, byItsPlan, operand, riser, use } from './told.ts';

export function tellSized(book: Book, checked: Checked, formula: Sized, target: Target): Told {
  const { count, length, size } = formula;
  const of = (part: Formula): Used => use(book, operand(checked, part), 'over');
  const number = count ? of(count) : null;
  const long = length ? of(length) : null;
  const bySold = length !== null && holdsMore(checked, long);
  const figures = bySold ? formula.sold.map(of) : [];
  const counts = number !== null && checked.holds.measure === number.checked.holds.measure;
  const used = counts ? [number] : [number, ...figures, long].filter((each) => each !== null);
  const tokens: readonly Token[] = joinedBy(' × ', used);
  const words: readonly Word[] = saying(
    ...(number ? [said(book, number.checked), ' of '] : []),
    ...(number === null && long ? [said(book, long.checked), ' of '] : []),
    said(book, of(size).checked),
    ...(number && long && !counts ? [' by ', said(book, long.checked)] : []),
    basisOf(formula, figures),
  );
  return [
    riser(book, {
      said: words,
      tokens: used.length > 1 ? tokens : [],
      joint: '=',
      result: target,
      comesOut: used.length > 1 ? [byItsPlan(checked, used)] : [],
      used,
    }),
  ];
}

/** More than its length: what it is sold by. */
function holdsMore(checked: Checked, long: Used | null): boolean {
  const [own, along] = [checked.holds.measure, long?.checked.holds.measure];
  if (own.kind !== 'amount' || along?.kind !== 'amount') return false;
  return own.dimension.length !== along.dimension.length || own.dimension.mass > 0;
}

function basisOf({ unit }: Sized, figures: readonly Used[]): string {
  if (figures.length === 0) return '';
  return unit === 'board ft' ? ', by its nominal size' : ', by its weight';
}
