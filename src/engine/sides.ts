// Reading a text into something that can be worked: a formula, or what is set by hand in its place.
import { sameForm } from '../language/check/holding.ts';
import { read } from '../language/read.ts';
import type { Reading, Scan, Surroundings } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import type { Holds } from '../quantity/form.ts';
import type { AmountMeasure } from '../quantity/measure.ts';
import type { Report } from '../words/report.ts';
import { handHolds } from './by-hand.ts';
import { type Cells, type Work, compile } from './compile.ts';
import { costHolds, toTheCent } from './cost-line.ts';
import { handNotRead, handOfAnotherKind, notYetACost } from './faults.ts';
import { FAULT_OF_TEXT, type Held, Waiting } from './held.ts';
import type { CellInput } from './outcome.ts';
import { type RangePlace, refusingRange } from './ranges.ts';

/** One text that is worked. */
export interface Side {
  readonly reading: Reading;
  /** Null where there is nothing to work. */
  readonly work: Work | null;
  /** What its value holds; null at fault and while it waits. */
  readonly holds: Holds | null;
  /** Of a cost or price line: in what measure the sum is that is rounded to the cent. */
  readonly cents?: AmountMeasure;
  /** What is at fault in its text; null: nothing. */
  readonly fault: Report | null;
  /** What it came to the last time it was worked. */
  held: Held;
}

/** What reading and working lean on. */
export interface Ground {
  readonly vocabulary: Vocabulary;
  readonly surroundings: Surroundings;
  readonly cells: Cells;
}

/** A formula, as the amount of a cost or price line where it is one. */
export function formulaSide(
  found: Scan,
  self: CellId | null,
  money: CellInput['money'],
  ground: Ground,
): Side {
  const side = plainSide(found, self, ground);
  return money ? costSide(side, money, found.text) : side;
}

/** What is set by hand, beside the formula that it stands in for. */
export function handSide(found: Scan, input: CellInput, formula: Side, ground: Ground): Side {
  const hand = refusedSide(plainSide(found, input.id, ground), found.text, 'by hand');
  if (hand.fault) return { ...hand, fault: handNotRead(hand.fault) };
  if (!hand.holds) return hand;
  const worked = formula.holds ?? hand.holds;
  const holds = handHolds(hand.holds, worked);
  if (!holds) {
    const fault = handOfAnotherKind(input.name, hand.holds.measure, worked.measure);
    return { ...hand, work: null, holds, fault };
  }
  const side = { ...hand, holds };
  return input.money ? costSide(side, input.money, found.text) : side;
}

/** The side where no range may stand, or none that leaves open which end is best. */
export function refusedSide(side: Side, text: string, place: RangePlace): Side {
  const reading = refusingRange(side.reading, text, place);
  if (reading === side.reading) return side;
  const [fault = null] = reading.problems;
  return { reading, work: null, holds: null, fault, held: FAULT_OF_TEXT };
}

export function workSide(side: Side): Held {
  if (side.work) return side.work();
  return side.fault ? FAULT_OF_TEXT : new Waiting(side.reading.waitsFor);
}

/** Would a formula that names it be read in the same way? */
export function sameHolds(a: Holds | null, b: Holds | null): boolean {
  if (a === null || b === null) return a === b;
  return a.measure === b.measure && a.written === b.written && sameForm(a.showIn, b.showIn);
}

function plainSide(found: Scan, self: CellId | null, ground: Ground): Side {
  const reading = read(found, ground.vocabulary, ground.surroundings);
  const { checked } = reading;
  const [fault = null] = reading.problems;
  if (fault || !checked) return { reading, work: null, holds: null, fault, held: FAULT_OF_TEXT };
  const work = compile(checked.plan, ground.cells, self);
  return { reading, work, holds: checked.holds, fault: null, held: FAULT_OF_TEXT };
}

function costSide(side: Side, money: NonNullable<CellInput['money']>, text: string): Side {
  const { work, holds: own, reading } = side;
  if (!work || !own || !reading.checked) return side;
  const holds = costHolds(own, reading.checked.plan);
  if (!holds) {
    return { ...side, work: null, holds, fault: notYetACost(money.line, own.measure, text) };
  }
  const { measure } = own;
  if (measure.kind !== 'amount') return { ...side, holds };
  return { ...side, holds, cents: measure, work: () => toTheCent(work(), measure) };
}
