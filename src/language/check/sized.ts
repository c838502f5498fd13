// Sizes with dimensions of their own: a text, and so many pieces of one, counted, measured along or by what they are sold by.
import {
  type Dimension,
  LENGTH,
  PLAIN,
  hardPart,
  timesDimension,
  withoutNounsAbove,
} from '../../quantity/dimension.ts';
import { NUMBER, amountMeasure } from '../../quantity/measure.ts';
import { formMeasure } from '../../quantity/amount.ts';
import { type Form, withUnit } from '../../quantity/form.ts';
import { unitByKey } from '../../quantity/units.ts';
import type { Report } from '../../words/report.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Formula, LookUp, Size, Sized } from '../tree.ts';
import { countsOrNumber } from './agreeing.ts';
import { type Checking, mended, noted, refuse, typed } from './checking.ts';
import { areLengths } from './lengths.ts';
import { amountOf, inScale, made, madeLeaf, restsOn } from './holding.ts';
import { HOLDS_TEXT } from './names.ts';
import { capital, fact, headline } from './saying.ts';
import { sizeHeld } from './which-dimension.ts';

export function checkSize(formula: Size): Checked {
  return madeLeaf(formula, HOLDS_TEXT, { op: 'text', value: formula.text });
}

/** What is meant of so many pieces of one size: how many, how long all together, or what they are sold by. */
type View = 'count' | 'run' | 'sold';

export function checkSized(
  formula: Sized,
  parts: readonly Checked[],
  checking: Checking,
): Checked | null {
  const { count, length, size } = partsOfSized(formula, parts);
  if (size.holds.measure.kind !== 'text') return refuse(checking, noSize(size, checking));
  if (count && !countsOne(count)) {
    return refuse(checking, {
      code: 'not-a-count',
      headline: 'How many pieces?',
      spots: [count.formula.spot],
      explanation: `${capital(fact(checking, count))}. Before a size say how many pieces of it there are.`,
      fixes: [],
    });
  }
  if (length && !areLengths([length], 'Pieces of one size', checking)) return null;
  if (!length) return viewed(formula, parts, 'count');
  if (!count) return viewed(formula, parts, 'run');
  if (formula.usual === 'sold') noteSold(formula, checking);
  return viewed(formula, parts, formula.usual);
}

function countsOne({ holds: { measure } }: Checked): boolean {
  if (measure.kind !== 'amount' || !countsOrNumber(measure)) return false;
  return measure.dimension === PLAIN || hardPart(measure.dimension) === PLAIN;
}

const BY_NOMINAL = 'Board feet are counted from the nominal size.';

function noteSold({ unit }: Sized, checking: Checking): void {
  if (unit === 'board ft') noted(checking, BY_NOMINAL);
}

/** What stands beside the pieces takes them otherwise than they were taken at first. */
function unnoteSold({ notes }: Checking): void {
  const at = notes.indexOf(BY_NOMINAL);
  if (at >= 0) notes.splice(at, 1);
}

interface SizedParts {
  readonly count: Checked | null;
  readonly length: Checked | null;
  readonly size: Checked;
  readonly sold: readonly Checked[];
}

function partsOfSized(formula: Sized, parts: readonly Checked[]): SizedParts {
  const left = [...parts];
  const count = formula.count ? (left.shift() ?? null) : null;
  const length = formula.length ? (left.shift() ?? null) : null;
  const size = left.shift();
  if (!size) throw new Error('Pieces of no size');
  return { count, length, size, sold: left };
}

/** The same pieces, taken in one way. */
function viewed(formula: Sized, parts: readonly Checked[], view: View): Checked {
  const { count, length, sold } = partsOfSized(formula, parts);
  if (view === 'count' || !length) {
    if (!count) throw new Error('Neither a number of pieces nor a length');
    return made(formula, parts, count.holds.measure, count.plan);
  }
  const along = amountMeasure(
    withoutNounsAbove(amountOf(length).dimension),
    amountOf(length).scale,
  );
  const factors = view === 'sold' ? [...sold, length] : [length];
  let measure = view === 'sold' ? NUMBER : along;
  if (view === 'sold') {
    for (const factor of factors) {
      const own = factor === length ? along : amountOf(factor);
      measure = amountMeasure(
        timesDimension(measure.dimension, own.dimension),
        measure.scale.mul(own.scale),
      );
    }
  }
  const plans = [...(count ? [inScale(count, NUMBER)] : []), ...factors.map(({ plan }) => plan)];
  const plan = plans.reduce((left, right): Plan => ({ op: 'multiply', left, right }));
  const written = restsOn(parts);
  return made(formula, parts, measure, plan, {
    written: view === 'sold' ? withUnit(written, unitByKey(formula.unit)) : written,
  });
}

/** Pieces of one size under the brackets around them, or null. */
function sizedIn(
  checked: Checked,
): { readonly formula: Sized; readonly parts: readonly Checked[] } | null {
  let inner = checked;
  while (inner.formula.kind === 'bracket' && inner.parts[0]) inner = inner.parts[0];
  return inner.formula.kind === 'sized' ? { formula: inner.formula, parts: inner.parts } : null;
}

/**
 * Pieces of one size as what stands beside them asks: `in board feet` and `at $5 per board foot` by what they are sold
 * by, `in feet` and `at $1.20 per ft` by their length, `at $18 each` by their number. Anything else stays as it is.
 */
export function sizedFor(checked: Checked, wanted: Dimension, checking: Checking): Checked {
  const found = sizedIn(checked);
  if (!found) return checked;
  const { formula, parts } = found;
  const { count, length, sold } = partsOfSized(formula, parts);
  if (length && sold.length > 0 && hardPart(wanted) === soldDimension(sold)) {
    noteSold(formula, checking);
    return viewed(formula, parts, 'sold');
  }
  if (length && hardPart(wanted) === LENGTH && hardPart(wanted) === wanted) {
    unnoteSold(checking);
    return viewed(formula, parts, 'run');
  }
  if (count && hardPart(wanted) === PLAIN && wanted !== PLAIN) {
    unnoteSold(checking);
    return viewed(formula, parts, 'count');
  }
  return checked;
}

/** As a count of pieces, where plain money is the price of each. */
export function sizedAsCount(checked: Checked, checking: Checking): Checked {
  const found = sizedIn(checked);
  if (!found?.formula.count) return checked;
  unnoteSold(checking);
  return viewed(found.formula, found.parts, 'count');
}

function soldDimension(sold: readonly Checked[]): Dimension {
  return hardPart(sold.reduce((d, each) => timesDimension(d, amountOf(each).dimension), LENGTH));
}

/** Shown in a unit: by it, and nothing but what they are sold by where it measures the same. */
export function sizedInUnits(of: Checked, form: Form, checking: Checking): Checked | null {
  const found = sizedIn(of);
  const [term] = form.over;
  const inBoardFeet = term?.kind === 'unit' && /^(board ft|mbf)$/.test(term.unit.key);
  if (!found) return inBoardFeet && sizeHeld(of, checking) ? howLong(of.formula, checking) : of;
  const { formula, parts } = found;
  const { length, sold } = partsOfSized(formula, parts);
  if (inBoardFeet && !length) return howLong(formula, checking);
  const asked = formMeasure(form).dimension;
  const isVolume = formula.unit === 'board ft' && sold.length > 0 && asked === soldDimension(sold);
  if (isVolume && !inBoardFeet) return refuseVolume(formula, checking);
  return sizedFor(of, asked, checking);
}

/** `22 2x8 in board feet` */
function howLong(formula: Formula, checking: Checking): null {
  return refuse(checking, {
    code: 'length-of-each',
    headline: 'How long is each of them?',
    spots: [formula.spot],
    explanation: `Board feet need a length. Write it after the size, as in "${typed(checking, formula)} x 12 ft".`,
    fixes: [],
  });
}

/** `22 2x8 x 14 ft in cubic feet`: by the nominal size it is one volume, by the actual one another. */
function refuseVolume(formula: Sized, checking: Checking): null {
  const { count, length, size } = formula;
  if (!length) throw new Error('A volume without a length');
  const many = count ? `${typedCount(count, checking)} times ` : '';
  const of = size.kind === 'size' ? size.text : typed(checking, size);
  const long = typed(checking, length);
  const sides = (basis: string): string =>
    `${many}(${basis} thickness of ${of}) times (${basis} width of ${of}) times ${long}`;
  return refuse(checking, {
    code: 'two-readings',
    headline: 'By the nominal size, or the actual one?',
    spots: [formula.spot],
    explanation: `A volume of ${of} could be that of its nominal size, as board feet are, or of the wood that is there. Write the one that is meant.`,
    fixes: ['actual', 'nominal'].map((basis) =>
      mended(checking, `By the ${basis} size`, { spot: formula.spot, by: sides(basis) }),
    ),
  });
}

function typedCount(count: Formula, checking: Checking): string {
  if (count.kind === 'amount') return count.say.replace(/\s.*$/, '');
  return typed(checking, count);
}

/** What `actual width of …` is asked of has to be a size, so far a text. */
export function isSizeAsked(
  formula: LookUp,
  values: readonly Checked[],
  checking: Checking,
): boolean {
  const [size] = values;
  if (formula.asked === undefined || !size || /^(text|open)$/.test(size.holds.measure.kind))
    return true;
  refuse(checking, noSize(size, checking));
  return false;
}

function noSize(size: Checked, checking: Checking): Report {
  return {
    code: 'not-a-size',
    headline: headline(`${typed(checking, size.formula)} is not a size.`, 'This is not a size.'),
    spots: [size.formula.spot],
    explanation: `${capital(fact(checking, size))}. A size is needed here, such as a cell that holds 2x8.`,
    fixes: [],
  };
}
