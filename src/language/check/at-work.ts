// Faults that only the values show, worded as those that are seen in what is written; and what of a formula
// it is that comes to nothing.
import type { Report } from '../../words/report.ts';
import type { Checked } from '../plan.ts';
import type { Formula } from '../tree.ts';
import type { Checking } from './checking.ts';
import { noTriangle } from './geometry.ts';
import { pieceTooLong } from './packs.ts';
import { nothingLeft } from './shares.ts';

/**
 * Shares that leave nothing, a piece longer than its stock, sides that never meet; null where it is none of
 * these. `together`: what the shares come to, in words.
 */
export function faultAtWork(checked: Checked, together: string, checking: Checking): Report | null {
  const { formula, parts } = checked;
  if (formula.kind === 'triangle') return noTriangle(formula);
  const [of] = parts;
  if (formula.kind === 'for-shares' && of) {
    return nothingLeft(formula, of, parts.slice(1), together, checking);
  }
  const [, length, stock] = parts;
  if (formula.kind !== 'pieces' || !length || !stock) return null;
  return pieceTooLong(formula, length, stock, checking);
}

/** What a formula divides by: one of these comes to 0 where it divides by nothing. */
export function divisors({ formula, parts }: Checked): readonly Checked[] {
  const [first, second, third] = parts;
  const found = (...items: readonly (Checked | undefined)[]): readonly Checked[] =>
    items.filter((item) => item !== undefined);
  switch (formula.kind) {
    case 'binary':
    case 'rounded':
    case 'in-packs':
    case 'what-share':
    case 'pieces':
      return found(second);
    case 'spaced':
    case 'even-gap':
      return found(first);
    case 'fewest':
      return found(third, first);
    default:
      return [];
  }
}

/** What the root is taken of, where the formula says so. */
export function underRoot(formula: Formula): Formula {
  return formula.kind === 'square-root' ? formula.of : formula;
}
