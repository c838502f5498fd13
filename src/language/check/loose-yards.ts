// `$145 per yard` beside a volume or an area: the trade says yard for a cubic or square one, so it is asked.
import { AREA, LENGTH, VOLUME, hardPart } from '../../quantity/dimension.ts';
import type { Checked } from '../plan.ts';
import { type Checking, mended, refuse, typedAmount } from './checking.ts';
import { capital, fact } from './saying.ts';

/** Does the rate say "per yard" beside a volume or an area? Reports it if so, with the yard that fits. */
export function asksWhichYard(rate: Checked, amount: Checked, checking: Checking): boolean {
  const word = yardOf(amount);
  if (word === null || !isPerYard(rate)) return false;
  const price = typedAmount(checking, rate.formula);
  // "per linear yard" says already that a length is meant.
  if (/\blin/i.test(price)) return false;
  const by = price.replace(/\b(yards?|yds?)\b\.?/i, word);
  if (by === price) return false;
  refuse(checking, {
    code: 'per-which-yard',
    headline: `Per ${word}?`,
    spots: [rate.formula.spot],
    explanation: `${capital(fact(checking, amount))}; a yard by itself is a length.`,
    fixes: [mended(checking, `Write ${by}`, { spot: rate.formula.spot, by })],
  });
  return true;
}

function yardOf({ holds: { measure } }: Checked): 'cubic yard' | 'square yard' | null {
  if (measure.kind !== 'amount') return null;
  const hard = hardPart(measure.dimension);
  return hard === VOLUME ? 'cubic yard' : hard === AREA ? 'square yard' : null;
}

function isPerYard({ formula, holds }: Checked): boolean {
  const under = holds.showIn?.under[0];
  const { measure } = holds;
  return (
    formula.kind === 'amount' &&
    measure.kind === 'amount' &&
    measure.rate?.under.dimension === LENGTH &&
    under?.kind === 'unit' &&
    under.unit.key === 'yd'
  );
}

/** `slab volume / 27 cf per yd`: so many cubic feet go to a cubic yard, not to one along a line. */
export function asksYardOfRate(amount: Checked, rate: Checked, checking: Checking): boolean {
  const over =
    rate.holds.measure.kind === 'amount' ? rate.holds.measure.rate?.over.dimension : undefined;
  if (!over || !isPerYard(rate) || yardOf(amount) === null) return false;
  const hard = hardPart(over);
  const word = hard === VOLUME ? 'cubic yard' : hard === AREA ? 'square yard' : null;
  const said = typedAmount(checking, rate.formula);
  const by = word && said.replace(/\b(yards?|yds?)\b\.?/i, word);
  if (!word || !by || by === said || /\blin/i.test(said)) return false;
  refuse(checking, {
    code: 'per-which-yard',
    headline: `Per ${word}?`,
    spots: [rate.formula.spot],
    explanation: `${capital(fact(checking, rate))}; a yard by itself is a length.`,
    fixes: [mended(checking, `Write ${by}`, { spot: rate.formula.spot, by })],
  });
  return true;
}

/** `volume in 10 yd loads`: a load of so many yards holds cubic ones. */
export function asksPacksOfYards(of: Checked, pack: Checked, checking: Checking): boolean {
  const word = yardOf(of);
  const { measure, written } = pack.holds;
  if (word === null || pack.formula.kind !== 'amount' || measure.kind !== 'amount') return false;
  if (measure.dimension !== LENGTH || written.length !== 1 || written[0] !== 'yd') return false;
  const said = typedAmount(checking, pack.formula);
  const by = said.replace(/(yards?|yds?)\b\.?/i, word);
  if (by === said) return false;
  refuse(checking, {
    code: 'per-which-yard',
    headline: `${capital(word)}s?`,
    spots: [pack.formula.spot],
    explanation: `${capital(fact(checking, of))}; a yard by itself is a length.`,
    fixes: [mended(checking, `Write ${by}`, { spot: pack.formula.spot, by })],
  });
  return true;
}
