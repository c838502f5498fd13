// Phrases about lengths: every slot of them has to hold one.
import { LENGTH, hardPart } from '../../quantity/dimension.ts';
import type { Checked } from '../plan.ts';
import { bareNumber, bareWords, formsToAsk } from './bare-numbers.ts';
import { type Checking, mended, refuse } from './checking.ts';
import { writtenIn } from './forms.ts';
import { askWhichDimension } from './which-dimension.ts';
import { capital, fact, headline, whatItIs } from './saying.ts';

/** Are they all lengths? Reports the first that is none; `what` says what they are, for the message. */
export function areLengths(items: readonly Checked[], what: string, checking: Checking): boolean {
  const odd = items.find((item) => !isLength(item));
  if (!odd) return true;
  const asked = askWhichDimension(odd, checking);
  if (asked) {
    refuse(checking, asked);
    return false;
  }
  const like = items.find(isLength);
  const number = bareNumber(odd) === null ? null : bareWords(odd, checking);
  const forms = number === null ? [] : formsToAsk(like ?? withLength(odd));
  const choices = forms.map((form) => writtenIn(number ?? '', form, checking.nouns));
  refuse(checking, {
    code: number === null ? 'not-a-length' : 'bare-number',
    headline: headline(
      choices.length > 0 ? `Is that ${choices.join(' or ')}?` : `${whatItIs(odd)} is not a length.`,
      'This is not a length.',
    ),
    spots: [odd.formula.spot],
    explanation: `${capital(fact(checking, odd))}. ${what} are measured as lengths.`,
    fixes: choices.map((by) => mended(checking, `Write ${by}`, { spot: odd.formula.spot, by })),
  });
  return false;
}

export function isLength(checked: Checked): boolean {
  const { measure } = checked.holds;
  return measure.kind === 'amount' && hardPart(measure.dimension) === LENGTH;
}

/** The number as if it were a length, to ask for the usual units of one. */
function withLength(checked: Checked): Checked {
  const { measure } = checked.holds;
  if (measure.kind !== 'amount') return checked;
  return { ...checked, holds: { ...checked.holds, measure: { ...measure, dimension: LENGTH } } };
}
