// Reading what a person writes for a cell without touching the notebook: as the value that the cell would hold.
import { handHolds } from '../engine/by-hand.ts';
import type { Outcome } from '../engine/outcome.ts';
import type { Reading } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import { Dec } from '../quantity/decimal.ts';
import { describe } from '../quantity/describe.ts';
import type { Put } from './exactly.ts';
import { heldIn } from './spread.ts';
import type { Asked } from './web.ts';

/** Asked as `Asked` is, and read from: an `Estimate`. */
export interface Reads extends Asked {
  draft(cell: CellId, formula: string): { readonly reading: Reading; readonly outcome: Outcome };
}

export type Read =
  | { readonly kind: 'value'; readonly value: Put }
  /** Why it can't stand there, in words. */
  | { readonly kind: 'refused'; readonly why: string };

/** A bare number is so many of what the cell holds where it counts things, hours or money. */
export function readFor(reads: Reads, cell: CellId, text: string): Read {
  const { reading, outcome } = reads.draft(cell, text);
  const [problem] = reading.problems;
  if (problem) return refused(`${problem.headline} ${problem.explanation}`);
  if (outcome.kind === 'fault') {
    return refused(`${outcome.report.headline} ${outcome.report.explanation}`);
  }
  if (outcome.kind !== 'value' || !reading.checked) return refused(`"${text}" has no value yet.`);
  const { holds: own, input } = reads.state(cell);
  if (!own) return refused(`${input.name} has no value yet.`);
  // A line of money comes to dollars whatever it is written in.
  if (input.money) return { kind: 'value', value: outcome.value };
  const as = handHolds(reading.checked.holds, own);
  if (!as) {
    const [here, there] = [reading.checked.holds.measure, own.measure];
    return refused(`${input.name} holds ${describe(there)}, and this is ${describe(here)}.`);
  }
  if (!(outcome.value instanceof Dec)) return { kind: 'value', value: outcome.value };
  return { kind: 'value', value: heldIn(outcome.value, as.measure, own.measure) };
}

/** A value of a cell as a formula that reads back as the same, or null. */
export function formulaFor(reads: Reads, cell: CellId, value: Dec): string | null {
  const { holds } = reads.state(cell);
  if (!holds) return null;
  const { text, exact, unit } = reads.say(value, holds);
  for (const written of [text, writtenIn(unit, exact)]) {
    const read = readFor(reads, cell, written);
    if (read.kind !== 'value' || !(read.value instanceof Dec)) continue;
    if (read.value.toSignificantDigits(30).eq(value.toSignificantDigits(30))) return written;
  }
  return null;
}

function writtenIn(unit: string, exact: string): string {
  const coin = /^([$€£])(.*)$/.exec(unit);
  if (coin) {
    const sign = exact.startsWith('-') ? '-' : '';
    return `${sign}${coin[1]}${exact.slice(sign.length)}${coin[2]}`;
  }
  if (unit === '%') return `${exact}%`;
  return unit === '' ? exact : `${exact} ${unit}`;
}

function refused(why: string): Read {
  return { kind: 'refused', why };
}
