// Asking a step before it is shown: how often it was tried, what was wrong, and how it came out in the end.
import type { CellId } from '../language/tree.ts';
import { Dec } from '../quantity/decimal.ts';
import { isHard } from '../quantity/dimension.ts';
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
  /** Half of the last digit that is asked for, in the unit that it is shown in. */
  readonly half: Dec;
  /** What a number without a unit is read as; null where it is plain. */
  readonly bare: string | null;
}

/**
 * What counts as an answer; nothing of it tells the number. Three digits are enough for anybody with a pencil, also
 * where more of them are shown; a length is as exact as a tape, money as its coins, and whole things are whole.
 */
export function howAsked(reads: Reads, { node }: AskedStep): HowAsked {
  const outcome = reads.evaluate(node.plan);
  const isNumber = outcome.kind === 'value' && outcome.value instanceof Dec;
  if (!isNumber) return { exact: '', half: new Dec(0), bare: null };
  const { unit, text, exact: digits } = reads.say(outcome.value, node.holds);
  const bare = unit === '' ? null : inWords(unit, text);
  if (/^[$€£]/.test(unit)) return { exact: 'to the cent', half: new Dec('0.005'), bare };
  if (/^in\b/.test(unit))
    return { exact: 'to a sixteenth of an inch', half: new Dec(1).div(32), bare };
  if (unit === 'ft') return { exact: 'to a sixteenth of an inch', half: new Dec(1).div(384), bare };
  const exact = new Dec(digits === '' ? outcome.value : digits);
  const { measure } = node.holds;
  const isCount =
    measure.kind === 'amount' &&
    !isHard(measure.dimension) &&
    measure.dimension.nouns.length > 0 &&
    exact.isInteger();
  if (isCount) return { exact: 'as a whole number', half: new Dec(0), bare };
  const places = exact.isZero() ? 2 : Math.max(0, 2 - exact.e);
  const half = new Dec(10).pow(-places).div(2);
  return { exact: places === 0 ? 'to the nearest whole one' : 'to three digits', half, bare };
}

/** `cubic feet`, as the number itself is written, and not `cubic ft`. */
function inWords(unit: string, text: string): string {
  const written = /^[−-]?[\d.,]+ ([a-z].*)$/.exec(text)?.[1];
  return unit === 'ft' || unit === 'in' ? unit : (written ?? unit);
}
