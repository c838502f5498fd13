// Asking a step before it is shown: how often it was tried, what was wrong, and how it came out in the end.
import type { CellId } from '../language/tree.ts';
import { Dec } from '../quantity/decimal.ts';
import { LENGTH, MONEY, isHard } from '../quantity/dimension.ts';
import type { Reads } from '../moves-it/putting.ts';
import { type AskedStep, type Diagnosis, stepOfCell } from './diagnose.ts';
import type { Mistake } from './mistake.ts';

/** Right at once, right after it was wrong, or shown; null while it is still asked. */
export type CameOut = 'first' | 'after-hint' | 'shown';

export interface Tried {
  readonly cell: CellId;
  /** What was typed and could be read, last one last. */
  readonly answers: readonly string[];
  /** Every mistake that was recognised, each once. */
  readonly mistakes: readonly Mistake[];
  readonly cameOut: CameOut | null;
}

export function untried(cell: CellId): Tried {
  return { cell, answers: [], mistakes: [], cameOut: null };
}

/** What can't be read is no try. */
export function afterAnswer(tried: Tried, text: string, diagnosis: Diagnosis): Tried {
  if (tried.cameOut !== null) return tried;
  const answers = [...tried.answers, text.trim()];
  switch (diagnosis.kind) {
    case 'right':
      return { ...tried, answers, cameOut: tried.answers.length === 0 ? 'first' : 'after-hint' };
    case 'wrong': {
      const met = diagnosis.mistakes.map(({ mistake }) => mistake);
      return { ...tried, answers, mistakes: [...new Set([...tried.mistakes, ...met])] };
    }
    case 'unread':
    case 'nothing-to-ask':
      return tried;
  }
}

/** Whoever had it right keeps it so. */
export function afterShown(tried: Tried): Tried {
  return { ...tried, cameOut: tried.cameOut ?? 'shown' };
}

/** A step with a number that is worked by its formula; null where there is nothing to be asked. */
export function askable(reads: Reads, cell: CellId): AskedStep | null {
  const { kind, input, outcome } = reads.state(cell);
  if (kind !== 'worked' || input.byHand !== null || outcome.kind !== 'value') return null;
  if (!(outcome.value instanceof Dec)) return null;
  return stepOfCell(reads, cell);
}

export interface HowAsked {
  /** How exact it has to be, in words: `to the cent`. */
  readonly exact: string;
  /** What a number without a unit is read as; null where it is plain. */
  readonly bare: string | null;
}

/** In words, what counts as an answer; nothing of it tells the number. */
export function howAsked(reads: Reads, { node }: AskedStep): HowAsked {
  const outcome = reads.evaluate(node.plan);
  const isNumber = outcome.kind === 'value' && outcome.value instanceof Dec;
  if (!isNumber) return { exact: '', bare: null };
  const { unit, text } = reads.say(outcome.value, node.holds);
  const { measure } = node.holds;
  const bare = unit === '' ? null : unit;
  if (measure.kind === 'amount') {
    if (measure.dimension === MONEY) return { exact: 'to the cent', bare };
    const isTape = measure.dimension === LENGTH && (unit === 'ft' || unit === 'in');
    if (isTape) return { exact: 'to a sixteenth of an inch', bare };
    const isCount = !isHard(measure.dimension) && measure.dimension.nouns.length > 0;
    if (isCount && outcome.value.isInteger()) return { exact: 'in whole ones', bare };
  }
  const places = /\d\.(\d+)/.exec(text)?.[1]?.length ?? 0;
  if (places > 3) return { exact: `to ${places} places`, bare };
  return { exact: 'to three digits', bare };
}
