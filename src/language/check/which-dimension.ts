// A size where an amount is needed: which of its dimensions, or how many pieces of it?
import type { Report } from '../../words/report.ts';
import type { Spot } from '../../words/spot.ts';
import type { Checked } from '../plan.ts';
import { figureOfSize, sizeOf } from '../size-table.ts';
import { bareNumber } from './bare-numbers.ts';
import { type Checking, mended, typed, typedAmount } from './checking.ts';
import { isLength } from './lengths.ts';
import { capital, headline } from './saying.ts';

/** What a size stands beside, and what is done with the two. */
interface Beside {
  readonly other: Checked;
  readonly op: 'added' | 'subtracted' | 'multiplied' | 'divided' | 'priced';
}

/**
 * A size where an amount is needed: which of its dimensions? Null where it is no size. Beside a number or a length
 * a number of pieces, or one so long, can be meant.
 */
export function askWhichDimension(
  checked: Checked,
  checking: Checking,
  beside: Beside | null = null,
): Report | null {
  const found = sizeHeld(checked, checking);
  if (!found) return null;
  const { table, size } = found;
  const { spot } = checked.formula;
  const words = checked.formula.kind === 'size' ? size : typedAmount(checking, checked.formula);
  const choices = table.told.lengths.map((say) => ({
    say,
    value: figureOfSize(table, size, say) ?? '',
  }));
  const said = choices.map(({ say, value }) => `${say} ${value}`);
  const alone = spot.to - spot.from === checking.text.trim().length;
  const asDimension = choices.map(({ say, value }) => {
    const by = `${say} of ${words}`;
    return mended(checking, `Its ${say}, ${value}`, { spot, by: alone ? by : `(${by})` });
  });
  const thing = table.told.noun ?? 'piece';
  const asPieces = beside ? piecesInstead(words, spot, beside, thing, checking) : null;
  // From a plain number no dimension can be taken away, and pieces are priced.
  const onlyPieces = beside?.op === 'priced' || (asPieces !== null && beside?.op === 'subtracted');
  if (onlyPieces) {
    return {
      code: 'how-many',
      headline: headline(`How many ${checking.nouns.many(thing)} of ${words}?`, 'How many of it?'),
      spots: [spot],
      explanation: `${capital(words)} is ${words === size ? '' : `${size}, `}a size. Say how many ${checking.nouns.many(thing)} of it there are.`,
      fixes: asPieces ? [asPieces] : [],
    };
  }
  return {
    code: 'which-dimension',
    headline: headline(
      `${words}: ${said.slice(0, 2).join(' or ')}?`,
      'Which dimension of this size?',
    ),
    spots: [spot],
    explanation: `${capital(words)} is ${words === size ? '' : `${size}, `}a size and no length: its ${said.join(', its ')}. Write the one that is meant.`,
    fixes: [...(asPieces ? [asPieces] : []), ...(onlyPieces ? [] : asDimension)],
  };
}

/** `stock x 14 ft`, `12 times 2x8`, `22 - 2x8`: one piece so long, or so many pieces. */
function piecesInstead(
  words: string,
  spot: Spot,
  { other, op }: Beside,
  thing: string,
  checking: Checking,
): Report['fixes'][number] | null {
  const whole = {
    from: Math.min(spot.from, other.formula.spot.from),
    to: Math.max(spot.to, other.formula.spot.to),
  };
  const beside = typed(checking, other.formula);
  const before = other.formula.spot.from < spot.from;
  if (op === 'multiplied' && isLength(other) && !before) {
    const by = `(1 ${thing} of ${words} by ${beside})`;
    return mended(checking, 'One piece of that length', { spot: whole, by });
  }
  if (op === 'priced') {
    const one = `1 ${thing} of ${words}`;
    return isWrittenSize(words) ? mended(checking, `Price one ${thing}`, { spot, by: one }) : null;
  }
  const count = bareNumber(other);
  if (count === null || !before || (op !== 'multiplied' && op !== 'subtracted')) return null;
  // A cell's size is only known to be one where a length follows.
  if (!isWrittenSize(words)) return null;
  const by = `${beside} ${checking.nouns.many(thing)} of ${words}`;
  return mended(checking, `So many ${checking.nouns.many(thing)}`, { spot: whole, by });
}

function isWrittenSize(words: string): boolean {
  return /^(\d|#)/.test(words);
}

/** The size that a checked formula is, or that the cell it names holds. */
export function sizeHeld(checked: Checked, checking: Checking): ReturnType<typeof sizeOf> {
  if (checked.holds.measure.kind !== 'text') return null;
  let { formula } = checked;
  while (formula.kind === 'bracket') formula = formula.of;
  if (formula.kind === 'size') return sizeOf(checking.sizes, formula.text);
  const shown = formula.kind === 'name' ? checking.surroundings.shownOf(formula.cell) : null;
  return shown === null ? null : sizeOf(checking.sizes, shown);
}

/** The size among some that should measure the same as an amount. */
export function sizeAmong(items: readonly Checked[], checking: Checking): Report | null {
  if (!items.some(({ holds }) => holds.measure.kind === 'amount')) return null;
  for (const item of items) {
    const asked = askWhichDimension(item, checking);
    if (asked) return asked;
  }
  return null;
}
