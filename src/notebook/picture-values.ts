// The values of a picture's slots: worked like any formula, then told as sizes in inches, counts, slopes or words.
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { Reading } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import type { GivenValue, Size } from '../picture/given.ts';
import { type SlotTakes, mayBeNothing, takesSaid } from '../picture/pictures.ts';
import { Dec, scaled, snapped } from '../quantity/decimal.ts';
import { describe } from '../quantity/describe.ts';
import { LENGTH, PLAIN, hardPart } from '../quantity/dimension.ts';
import { type Holds, writtenUnits } from '../quantity/form.ts';
import { amountMeasure } from '../quantity/measure.ts';
import { type ShowSettings, show } from '../quantity/show.ts';
import { unitByKey } from '../quantity/units.ts';
import { nameKey } from './names.ts';

/** What pictures ask of an estimate. */
export interface Picturable {
  state(cell: CellId): CellState;
  draft(
    part: string,
    cell: CellId | null,
    text: string,
  ): { readonly reading: Reading; readonly outcome: Outcome; readonly holds: Holds | null };
  readonly show: ShowSettings;
  /** The names of all tables that can be read from. */
  tableNames(): readonly string[];
}

export type Worked =
  | { readonly kind: 'worked'; readonly values: readonly Plainly[] }
  | { readonly kind: 'waits'; readonly for: readonly CellId[] }
  /** `fixes` are other ways to write it. */
  | {
      readonly kind: 'wrong';
      readonly code: 'picture-value-not-read' | 'picture-value-unlike' | 'picture-value-odd';
      readonly why: string;
      readonly fixes: readonly string[];
    };

/** One value with what it holds. */
export interface Plainly {
  readonly value: Dec | boolean | string;
  readonly holds: Holds;
}

/** Before a column's name, so that the language reads it as one: it has no lists. */
export const COLUMN_LEAD = 'greatest ';

/** The value of a text in a part; all cells of a column where the text says one. */
export function workedValues(estimate: Picturable, part: string, text: string): Worked {
  if (endsInTable(text, estimate.tableNames())) {
    const { tree } = estimate.draft(part, null, COLUMN_LEAD + text).reading;
    if (tree.kind === 'column') {
      return together(tree.cells.map((id) => workedCell(estimate.state(id), id)));
    }
  }
  const { reading, outcome, holds } = estimate.draft(part, null, text);
  const [problem] = reading.problems;
  if (problem) {
    const fixes = problem.fixes.map(({ formula }) => formula);
    return wrong('picture-value-not-read', `${problem.headline} ${problem.explanation}`, fixes);
  }
  return workedOutcome(outcome, holds ?? reading.checked?.holds ?? null);
}

/** `length in slab bays`: asked before it is read, because what can't be read takes long to be told why. */
export function endsInTable(text: string, tables: readonly string[]): boolean {
  const table = nameKey(/\sin\s+(.+)$/i.exec(text)?.[1] ?? '');
  return table !== '' && tables.some((name) => ` ${table}`.endsWith(` ${nameKey(name)}`));
}

function workedCell({ outcome, holds }: CellState, id: CellId): Worked {
  return outcome.kind === 'fault' ? { kind: 'waits', for: [id] } : workedOutcome(outcome, holds);
}

function workedOutcome(outcome: Outcome, holds: Holds | null): Worked {
  switch (outcome.kind) {
    case 'value':
      return holds === null
        ? { kind: 'waits', for: [] }
        : { kind: 'worked', values: [{ value: outcome.value, holds }] };
    case 'unknown':
    case 'waiting':
      return { kind: 'waits', for: outcome.for };
    case 'fault': {
      const { headline, explanation } = outcome.report;
      return wrong('picture-value-not-read', `${headline} ${explanation}`, []);
    }
  }
}

/** One after the other; what is wrong goes before what waits. */
export function together(all: readonly Worked[]): Worked {
  const bad = all.find((each) => each.kind === 'wrong');
  if (bad) return bad;
  const waits = all.filter((each) => each.kind === 'waits');
  if (waits.length > 0) return { kind: 'waits', for: [...new Set(waits.flatMap((w) => w.for))] };
  return {
    kind: 'worked',
    values: all.flatMap((each) => (each.kind === 'worked' ? each.values : [])),
  };
}

function wrong(
  code: Extract<Worked, { kind: 'wrong' }>['code'],
  why: string,
  fixes: readonly string[],
): Worked {
  return { kind: 'wrong', code, why, fixes };
}

/** The values as a slot takes them, or why it can't. */
export function givenOf(
  slot: string,
  takes: SlotTakes,
  values: readonly Plainly[],
  showing: ShowSettings,
): GivenValue | NothingThere | Extract<Worked, { kind: 'wrong' }> {
  switch (takes) {
    case 'length':
    case 'lengths': {
      const sizes: Size[] = [];
      for (const each of values) {
        const size = sizeOf(each, showing);
        if (!size) return unlike(slot, takes, each);
        if (!(size.inches >= 0) || size.inches > MOST_INCHES) return odd(slot, size.said);
        sizes.push(size);
      }
      const some = mayBeNothing(slot) || sizes.some(({ inches }) => inches > 0);
      return some ? { kind: 'sizes', sizes } : NOTHING_THERE;
    }
    case 'count':
    case 'counts': {
      const counts: number[] = [];
      for (const each of values) {
        const count = countOf(each);
        if (count === null) return unlike(slot, takes, each);
        const said = show(each.value, each.holds, showing).text;
        if (!count.isInteger() || count.isNegative() || count.greaterThan(MOST))
          return odd(slot, said);
        counts.push(count.toNumber());
      }
      const some = mayBeNothing(slot) || counts.some((count) => count > 0);
      return some ? { kind: 'counts', counts } : NOTHING_THERE;
    }
    case 'slope': {
      const [each] = values;
      const ratio = each && slopeOf(each);
      if (!each || !ratio) return unlike(slot, takes, each);
      const said = show(each.value, each.holds, showing).text;
      const number = ratio.toNumber();
      return number >= 0 && number <= 1 ? { kind: 'slope', ratio: number, said } : odd(slot, said);
    }
    default: {
      const [each] = values;
      const word = each?.value === true ? 'yes' : each?.value === false ? 'no' : each?.value;
      const found = takes.find((one) => one === word);
      return found === undefined ? unlike(slot, takes, each) : { kind: 'word', word: found };
    }
  }
}

/** A size or a count is none: no steps, no rows, no base. */
export interface NothingThere {
  readonly kind: 'nothing';
}

const NOTHING_THERE: NothingThere = { kind: 'nothing' };

/** Ten miles, and as many of a thing as can still be told apart. */
const MOST_INCHES = 633_600;
const MOST = 500;

function unlike(slot: string, takes: SlotTakes, value: Plainly | undefined) {
  const is = value ? `, and this is ${describe(value.holds.measure)}` : '';
  const why = `"${slot}" takes ${takesSaid(takes)}${is}.`;
  return { kind: 'wrong', code: 'picture-value-unlike', why, fixes: [] } as const;
}

function odd(slot: string, said: string) {
  const why = `"${slot}" is ${said}, which can't be drawn.`;
  return { kind: 'wrong', code: 'picture-value-odd', why, fixes: [] } as const;
}

/** Zero needs no unit; what a length is for (`in per riser`) is no matter here. */
function sizeOf({ value, holds }: Plainly, showing: ShowSettings): Size | null {
  if (typeof value !== 'object' || holds.measure.kind !== 'amount') return null;
  const inches = snapped(scaled(value, holds.measure.scale));
  const isLength = hardPart(holds.measure.dimension) === LENGTH;
  if (!isLength && !(inches.isZero() && holds.measure.dimension === PLAIN)) return null;
  return { inches: inches.toNumber(), said: onDrawing(show(value, holds, showing).text) };
}

/** As it stands on a drawing: 7 1/2 in, not 7 1/2 in per riser, and at the mark of the tape. */
function onDrawing(text: string): string {
  return text.replace(/, a hair (?:shy|over)$/, '').replace(/ per .*$/, '');
}

function countOf({ value, holds }: Plainly): Dec | null {
  const { measure } = holds;
  if (typeof value !== 'object' || measure.kind !== 'amount' || measure.rate) return null;
  return hardPart(measure.dimension) === PLAIN ? snapped(scaled(value, measure.scale)) : null;
}

function slopeOf({ value, holds }: Plainly): Dec | null {
  const { measure } = holds;
  if (typeof value !== 'object') return null;
  if (measure.kind === 'share') return value;
  if (measure.kind !== 'amount' || measure.dimension !== PLAIN) return null;
  return snapped(scaled(value, measure.scale));
}

/** Says sizes that no cell holds, in the units in which these are written, and which measures those are. */
export function sayingLike(
  values: readonly Plainly[],
  showing: ShowSettings,
): { readonly say: (inches: number) => string; readonly measures: 'us' | 'metric' } {
  const lengths = values
    .filter(
      ({ holds: { measure } }) =>
        measure.kind === 'amount' && hardPart(measure.dimension) === LENGTH,
    )
    .map(({ holds }) => holds.written);
  const written = writtenUnits(...lengths);
  const systems = new Set(
    written.map((key) => unitByKey(key).measures).filter((m) => m !== 'both'),
  );
  const [only = showing.measures] = systems;
  const measures = systems.size === 1 ? only : showing.measures;
  // In the unit of the measures: what lies past so many places of it is only noise of adding up.
  const unit = unitByKey(measures === 'metric' ? 'mm' : 'in');
  const holds: Holds = { measure: amountMeasure(LENGTH, unit.scale), showIn: null, written };
  const inUnit = 1 / unit.scale.valueOf();
  return {
    say: (inches) => onDrawing(show(new Dec((inches * inUnit).toFixed(6)), holds, showing).text),
    measures,
  };
}
