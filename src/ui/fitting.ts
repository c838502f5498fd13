// How well what a cell holds fits what is wanted at a place: the smaller the better, 0 is just what is wanted.
import { AREA, type Dimension, LENGTH, MONEY, hardPart, isHard } from '../quantity/dimension.ts';
import type { AmountMeasure, Measure } from '../quantity/measure.ts';
import type { Line, WantedHere } from './wanted-here.ts';

/** Just what is wanted, nearly, able to be read there, not meant there. */
export type Fit = 0 | 1 | 2 | 3;

export function fitOf(holds: Measure | null, wanted: WantedHere, line: Line): Fit {
  // What can't be told may be anything.
  if (!holds || holds.kind === 'open') return 2;
  switch (wanted.kind) {
    case 'anything':
    case 'column':
    case 'table':
    case 'row condition':
    case 'noun':
    case 'part':
    case 'cost kind':
      return 0;
    case 'length':
      if (isAmountOf(holds, LENGTH)) return 0;
      return isAmountOf(holds, AREA) ? 2 : 3;
    case 'count':
      if (isCount(holds)) return 0;
      return isNumber(holds) ? 1 : 3;
    case 'share':
      return holds.kind === 'share' ? 0 : isNumber(holds) ? 2 : 3;
    case 'money':
      if (isAmountOf(holds, MONEY)) return 0;
      return isPlain(holds) ? 1 : 2;
    case 'condition':
      return holds.kind === 'yes-no' ? 0 : 1;
    case 'factor':
      return isNumber(holds) || isCount(holds) || holds.kind === 'share' ? 0 : 1;
    case 'number for':
      return alike(holds, wanted.left) || isNumber(holds) || isCount(holds)
        ? 0
        : isRate(holds)
          ? 1
          : 2;
    case 'rate':
      return fitOfRate(holds, wanted.left, line);
    case 'like':
      return alike(holds, wanted.left) ? 0 : wanted.left ? 3 : 2;
    case 'added':
      if (holds.kind === 'share') return 0;
      return alike(holds, wanted.left) ? 0 : wanted.left ? 3 : 2;
    case 'pack':
      if (isRate(holds)) return alike(holds.rate.over, wanted.left) ? 0 : 3;
      return alike(holds, wanted.left) ? 1 : 3;
  }
}

/** First rates whose lower side measures what stands at the left, then those whose upper side does. */
function fitOfRate(holds: Measure, left: Measure | null, line: Line): Fit {
  if (!isRate(holds)) return 3;
  if (!left) return 1;
  const { over, under } = holds.rate;
  if (!alike(under, left)) return alike(over, left) ? 1 : 2;
  return line === 'cost' && !isAmountOf(over, MONEY) ? 1 : 0;
}

type Rate = AmountMeasure & { readonly rate: NonNullable<AmountMeasure['rate']> };

function isRate(holds: Measure): holds is Rate {
  return holds.kind === 'amount' && holds.rate !== null;
}

/** An amount and no rate. */
function isPlain(holds: Measure): holds is AmountMeasure {
  return holds.kind === 'amount' && holds.rate === null;
}

function isAmountOf(holds: Measure, dimension: Dimension): boolean {
  return isPlain(holds) && hardPart(holds.dimension) === dimension;
}

export function isCount(holds: Measure): boolean {
  return isPlain(holds) && !isHard(holds.dimension) && holds.dimension.nouns.length > 0;
}

export function isNumber(holds: Measure): boolean {
  return isPlain(holds) && !isHard(holds.dimension) && holds.dimension.nouns.length === 0;
}

/** Do both measure the same? Labels don't matter beside a hard unit; `each` goes with any count. */
function alike(holds: Measure, left: Measure | null): boolean {
  if (!left) return false;
  if (holds.kind !== 'amount' || left.kind !== 'amount') return holds.kind === left.kind;
  if (!isPlain(holds) && isPlain(left)) return false;
  if (isHard(holds.dimension) || isHard(left.dimension)) {
    return hardPart(holds.dimension) === hardPart(left.dimension);
  }
  const nouns = [holds, left].map((m) => m.dimension.nouns.map(({ noun }) => noun).join());
  return nouns[0] === nouns[1] || nouns.includes('each');
}
