// Whole packs, and pieces cut from stock lengths: always enough, rounded up.
import { LENGTH, PLAIN, countOf, hardPart, timesDimension } from '../../quantity/dimension.ts';
import { NUMBER, amountMeasure } from '../../quantity/measure.ts';
import type { Report } from '../../words/report.ts';
import type { Checked, Plan } from '../plan.ts';
import type { InPacks, Pieces } from '../tree.ts';
import { agree, countsOrNumber } from './agreeing.ts';
import { type Checking, inOrder, mended, noted, refuse, typed } from './checking.ts';
import { asHowMany } from './bare-numbers.ts';
import { COMPARING, type Task, notAnAmount } from './clashes.ts';
import { countedNoun, fitEach, powerOf } from './counted.ts';
import { amountOf, inScale, made } from './holding.ts';
import { areLengths } from './lengths.ts';
import { asksPacksOfYards } from './loose-yards.ts';
import { capital, called, fact, facts, headline } from './saying.ts';

const PACKING: Task = {
  ...COMPARING,
  cannot: "don't go into one another",
  works: 'Packing works',
};

/** `X in boxes of 350 screws`, `X in bags of bag yield`. */
export function checkInPacks(
  formula: InPacks,
  of: Checked,
  holdsEach: Checked,
  checking: Checking,
): Checked | null {
  const odd = [of, holdsEach].find((c) => c.holds.measure.kind !== 'amount');
  if (odd) return refuse(checking, notAnAmount(odd, 'packed', checking));
  if (asksPacksOfYards(of, holdsEach, checking)) return null;
  const size = sizeOfOne(formula, holdsEach, checking);
  if (!size) return null;
  const agreed = agree([of, size], PACKING, checking);
  const [whole, one] = agreed?.plans ?? [];
  if (!agreed || !whole || !one) return null;
  const plan: Plan = {
    op: 'round',
    way: 'up',
    of: { op: 'divide', left: whole, right: one },
    step: null,
  };
  const run =
    agreed.measure.kind === 'amount' && hardPart(agreed.measure.dimension) === LENGTH
      ? noted(
          checking,
          `${capital(checking.nouns.many(formula.noun))} are counted for one continuous run, joints allowed.`,
        )
      : null;
  return made(formula, agreed.parts, amountMeasure(countOf(formula.noun)), plan, { note: run });
}

/** What one pack holds: an amount, or a rate per that noun taken for one of it. */
function sizeOfOne(formula: InPacks, holdsEach: Checked, checking: Checking): Checked | null {
  const measure = amountOf(holdsEach);
  const per = fitEach(measure.dimension, countOf(formula.noun, -1));
  const below = per.nouns.find((n) => n.power < 0);
  if (!below) return holdsEach;
  if (powerOf(per, formula.noun) === -1) {
    const one = timesDimension(per, countOf(formula.noun));
    return {
      ...holdsEach,
      holds: { ...holdsEach.holds, measure: amountMeasure(one, measure.scale), showIn: null },
    };
  }
  const things = checking.nouns.many(formula.noun);
  const meant = checking.nouns.many(below.noun);
  return refuse(checking, {
    code: 'noun-clash',
    headline: headline(
      `The packs are ${things}, the size is per ${below.noun}.`,
      'The size is for another pack.',
    ),
    spots: inOrder(formula.nounSpot, holdsEach.formula.spot),
    explanation: `${capital(fact(checking, holdsEach))}. What one of the ${things} holds is an amount, or so much per ${formula.noun}.`,
    fixes:
      below.power === -1
        ? [mended(checking, `In ${meant}`, { spot: formula.nounSpot, by: meant })]
        : [],
  });
}

/** `5 pieces of 9 ft from 16 ft boards`: so many whole pieces from each board, the rest is offcut. */
export function checkPieces(
  formula: Pieces,
  count: Checked,
  length: Checked,
  stock: Checked,
  checking: Checking,
): Checked | null {
  const { measure } = count.holds;
  if (measure.kind !== 'amount') return refuse(checking, notAnAmount(count, 'cut', checking));
  if (
    !countsOrNumber(measure) ||
    (measure.dimension !== PLAIN && countedNoun(measure.dimension) === null)
  ) {
    return refuse(checking, {
      code: 'not-a-count',
      headline: 'How many pieces?',
      spots: [count.formula.spot],
      explanation: `${capital(fact(checking, count))}. Before "of" say how many pieces are cut.`,
      fixes: asHowMany(count, checking),
    });
  }
  if (!areLengths([length, stock], 'A piece and its stock', checking)) return null;
  const agreed = agree([length, stock], PACKING, checking);
  const [piece, whole] = agreed?.plans ?? [];
  if (!agreed || !piece || !whole) return null;
  if (piece.op === 'constant' && whole.op === 'constant' && piece.value.compare(whole.value) > 0) {
    return refuse(checking, pieceTooLong(formula, length, stock, checking));
  }
  const pieces: Plan = {
    op: 'round',
    way: 'down',
    of: { op: 'divide', left: whole, right: piece },
    step: null,
  };
  const fromEach: Plan = { op: 'some', of: pieces, code: 'piece-too-long' };
  const plan: Plan = {
    op: 'round',
    way: 'up',
    of: { op: 'divide', left: inScale(count, NUMBER), right: fromEach },
    step: null,
  };
  return made(formula, [count, ...agreed.parts], amountMeasure(countOf(formula.noun)), plan);
}

/** No whole piece comes out of the stock: seen in what is written, or when it is worked. */
export function pieceTooLong(
  formula: Pieces,
  length: Checked,
  stock: Checked,
  checking: Checking,
): Report {
  const things = checking.nouns.many(formula.noun);
  const run = `${typed(checking, formula.count)} times ${typed(checking, length.formula)}, in ${things} of ${typed(checking, stock.formula)}`;
  const alone = formula.spot.to - formula.spot.from === checking.text.trim().length;
  return {
    code: 'piece-too-long',
    headline: headline(
      `No ${called(checking, length)} piece comes out of ${called(checking, stock)}.`,
      'The pieces are longer than the stock.',
    ),
    spots: inOrder(length.formula.spot, stock.formula.spot),
    explanation: `${facts(checking, length, stock)} A piece has to be shorter than what it is cut from. If joints are allowed, buy it as one run.`,
    fixes: [
      mended(checking, 'As one run with joints', {
        spot: formula.spot,
        by: alone ? run : `(${run})`,
      }),
    ],
  };
}
