// Writing an alternative's formulas into a copy of the notebook: each has to hold what its cell holds, and what can't
// stand there is told with what could.
import { handHolds } from '../engine/by-hand.ts';
import type { CellId } from '../language/tree.ts';
import type { Applied, EstimateDoor } from '../notebook/estimate.ts';
import { oneLine } from '../notebook/lines.ts';
import { Dec } from '../quantity/decimal.ts';
import { describe } from '../quantity/describe.ts';
import { NUMBER } from '../quantity/measure.ts';
import type { Fix } from '../words/report.ts';
import { formulaFor } from './putting.ts';

export interface Put {
  readonly cell: CellId;
  readonly formula: string;
}

export interface NotPut {
  readonly cell: CellId;
  /** In words. */
  readonly why: string;
  /** Formulas that could stand there instead. */
  readonly fixes: readonly Fix[];
}

export interface PutIn {
  /** So many steps are to be taken back. */
  readonly made: number;
  readonly refused: readonly NotPut[];
}

/** At most so many are offered. */
const MOST_FIXES = 3;

/** All that can stand there together; what is at fault once all of it stands is refused, and the rest put in without it. */
export function putIn(
  copy: EstimateDoor,
  puts: readonly Put[],
  place: (cell: CellId) => CellId,
): PutIn {
  const refused: NotPut[] = [];
  let made = 0;
  const stand: Put[] = [];
  for (const put of puts) {
    const done = write(copy, put, place(put.cell));
    if (done === 'as it was') continue;
    if ('change' in done) {
      made++;
      stand.push(put);
    } else refused.push(done);
  }
  const atFault = stand.flatMap((put) => faultOf(copy, put, place(put.cell)) ?? []);
  if (atFault.length === 0) return { made, refused };
  for (let step = 0; step < made; step++) copy.takeBack();
  const faulty = new Set(atFault.map(({ cell }) => cell));
  const others = stand.filter(({ cell }) => !faulty.has(cell));
  const rest = putIn(copy, others, place);
  return { made: rest.made, refused: [...refused, ...atFault, ...rest.refused] };
}

/** A value that was set by hand is written by hand: its formula would change nothing. */
function write(copy: EstimateDoor, put: Put, here: CellId): Applied | NotPut | 'as it was' {
  const { input } = copy.state(here);
  const now = input.byHand ?? input.formula;
  if (oneLine(put.formula) === oneLine(now)) return 'as it was';
  const read = readFor(copy, put, here);
  if (typeof read !== 'string') return read;
  const done =
    input.byHand === null ? copy.setFormula(here, read) : copy.setByHand(here, read, null);
  return 'change' in done ? done : { cell: put.cell, why: done.message, fixes: [] };
}

/** As it is to be written: a bare number is so many of what the cell counts. */
function readFor(copy: EstimateDoor, put: Put, here: CellId): string | NotPut {
  const { formula } = put;
  const { reading, outcome } = copy.draft(here, formula);
  const [problem] = reading.problems;
  if (problem) return notPut(copy, put, here, `${problem.headline} ${problem.explanation}`);
  const { holds, input } = copy.state(here);
  const given = reading.checked?.holds;
  // Of what has no kind yet anything may be said; a line of money comes to dollars whatever it is written in.
  if (!holds || !given || given.measure.kind === 'open' || input.money) return formula;
  if (handHolds(given, holds) === null) {
    const [own, other] = [describe(holds.measure), describe(given.measure)];
    return notPut(copy, put, here, `${input.name} holds ${own}, and this is ${other}.`);
  }
  const value = outcome.kind === 'value' ? outcome.value : null;
  if (given.measure !== NUMBER || holds.measure === NUMBER || !(value instanceof Dec)) {
    return formula;
  }
  return formulaFor(copy, here, value) ?? formula;
}

function faultOf(copy: EstimateDoor, put: Put, here: CellId): NotPut | null {
  const { outcome } = copy.state(here);
  if (outcome.kind !== 'fault') return null;
  const { headline, explanation } = outcome.report;
  return notPut(copy, put, here, `${headline} ${explanation}`);
}

function notPut(copy: EstimateDoor, { cell, formula }: Put, here: CellId, why: string): NotPut {
  const unit = copy.shown(here)?.unit ?? '';
  const withUnit = /^[$€£]?[\d\s.,/½¼¾]+$/.test(formula) ? leftOutOf(unit, formula) : [];
  const meant = withUnit
    .map(([before, after]) => `${before}${formula.trim()}${after}`)
    .filter((text) => fits(copy, here, text))
    .map((text): Fix => ({ say: text, formula: text }));
  return { cell, why, fixes: [...meant, ...copy.mendsOfDraft(here, formula)].slice(0, MOST_FIXES) };
}

/** What may have been left out before and after a number. */
function leftOutOf(unit: string, formula: string): readonly (readonly [string, string])[] {
  if (unit === '') return [];
  const [, sign, per] = /^([$€£])( per .*)?$/.exec(unit) ?? [];
  if (sign !== undefined) return [[formula.includes(sign) ? '' : sign, per ?? '']];
  if (unit === '%') return [['', '%']];
  const lengths = ['ft', 'in'];
  const units = lengths.includes(unit) ? new Set([unit, ...lengths]) : [unit];
  return [...units].map((one) => ['', ` ${one}`] as const);
}

function fits(copy: EstimateDoor, here: CellId, text: string): boolean {
  const { reading } = copy.draft(here, text);
  const { holds } = copy.state(here);
  const given = reading.checked?.holds;
  return reading.problems.length === 0 && !!given && !!holds && handHolds(given, holds) !== null;
}
