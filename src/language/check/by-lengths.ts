// A bare number `by` a length: a side of something, or a number of times? Both readings are shown.
import { AREA, type Dimension, LENGTH, hardPart } from '../../quantity/dimension.ts';
import type { Form } from '../../quantity/form.ts';
import type { Checked } from '../plan.ts';
import type { Binary, Formula } from '../tree.ts';
import { bareNumber, bareWords, formsToAsk } from './bare-numbers.ts';
import { type Checking, type Edit, inOrder, mended, refuse, spacedOut, typed } from './checking.ts';
import { writtenIn } from './forms.ts';
import { headline } from './saying.ts';

/** `12 by 4 ft`, `slab area by 4`: a bare number where a side is expected. */
export function isNumberByLength(left: Checked, right: Checked): boolean {
  return (
    (isBareSide(left) && hardOf(right) === LENGTH) ||
    (isBareSide(right) &&
      (hardOf(left) === LENGTH || (hardOf(left) === AREA && isBy(left.formula))))
  );
}

export function askByHow(formula: Binary, left: Checked, right: Checked, checking: Checking): null {
  const bareLeft = isBareSide(left);
  const [bare, length] = bareLeft ? [left, right] : [right, left];
  const numbers = bareNumber(bare) === null ? bare.parts : [bare];
  const beside = hardOf(length) === AREA ? (length.parts.at(-1) ?? length) : length;
  const forms = formsToAsk(beside);
  const sideOf = (form: Form): readonly Edit[] =>
    numbers.map((side) => ({
      spot: side.formula.spot,
      by: writtenIn(bareWords(side, checking), form, checking.nouns),
    }));
  const signs = isBy(bare.formula) ? [formula.opSpot, bare.formula.opSpot] : [formula.opSpot];
  const asTimes = signs.map((spot) => ({ spot, by: spacedOut(checking, spot, 'times') }));
  // `12x4 ft` with a unit after the 12 needs its blanks: `12 ft x 4 ft`.
  const asTyped = signs.map((spot) => {
    const word = checking.text.slice(spot.from, spot.to);
    return { spot, by: spacedOut(checking, spot, word) };
  });
  const number = typed(checking, bare.formula);
  const words = typed(checking, length.formula);
  return refuse(checking, {
    code: 'two-readings',
    headline: headline(
      `Is ${number} a length here, or a number of times?`,
      'Is that a length, or a number of times?',
    ),
    spots: inOrder(...numbers.map((n) => n.formula.spot)),
    explanation: `"${typed(checking, formula)}" could be two sides of something, or ${number} times ${words}. Write the one that is meant.`,
    fixes: [
      ...forms.map((form) => {
        const edits = sideOf(form);
        return mended(
          checking,
          `A side of ${edits.map((e) => e.by).join(' by ')}`,
          ...edits,
          ...asTyped,
        );
      }),
      mended(checking, `${number} times ${words}`, ...asTimes),
    ],
  });
}

/** A bare number, or bare numbers joined by `by`. */
function isBareSide(checked: Checked): boolean {
  if (bareNumber(checked) !== null) return true;
  return isBy(checked.formula) && checked.parts.every((part) => bareNumber(part) !== null);
}

function isBy(formula: Formula): formula is Binary {
  return formula.kind === 'binary' && formula.op === 'by';
}

function hardOf(checked: Checked): Dimension | null {
  const { measure } = checked.holds;
  return measure.kind === 'amount' ? hardPart(measure.dimension) : null;
}
