// Where the owner looks: everything in an estimate that is at fault, open, set by hand, counted twice or unproved.
import type { CellState, Glance, Outcome } from '../engine/outcome.ts';
import type { Reading } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import type { Holds } from '../quantity/form.ts';
import type { Cell, Finding, Remark } from './document.ts';
import { doubleCounted } from './double-counting.ts';
import { feesTwice } from './fees-twice.ts';
import type { Section } from './identified.ts';
import { nameKey } from './names.ts';
import { passedOver } from './passed-over.ts';
import { tableFindings } from './table-findings.ts';
import { type PictureState, pictureRemarks } from './pictures.ts';
import { asksForRecap } from './recap-table.ts';
import { remarkText, sourceOf } from './remarks.ts';
import { type Limits, outsideLimits, readLimits, sameAmount, upTo } from './sensible.ts';
import { tieFindings } from './ties.ts';
import { amountsIn } from './tree-parts.ts';
import { fromFraction } from '../quantity/decimal.ts';

/** What the findings ask of an estimate. */
export interface Findable {
  readonly sections: readonly Section[];
  /** Where each section starts in the text. */
  readonly starts: readonly number[];
  state(cell: CellId): CellState;
  glance(cell: CellId): Glance;
  /** The cells of a table, row by row. */
  rows(cell: CellId): readonly (readonly CellId[])[] | null;
  /** Is there a cell of this name for a formula of this part? */
  isName(text: string, part: string): boolean;
  /** A value in words. */
  say(outcome: Outcome, holds: Holds | null): string | null;
  draft(
    part: string,
    cell: CellId | null,
    text: string,
  ): { readonly reading: Reading; readonly outcome: Outcome };
  /** What a `picture` remark comes to; `neighbours` are the cells of its part. */
  picture(cell: Cell, remark: Remark, neighbours: readonly Cell[]): PictureState;
  /** Parts with a name that no total knows of. */
  unpriced(): readonly string[];
}

/** In notebook order; those about the text itself come from the notebook. */
export function findingsOf(estimate: Findable): readonly Finding[] {
  const found: Finding[] = [];
  const nameOf = (id: CellId): string => estimate.state(id).input.name;
  for (const [index, section] of estimate.sections.entries()) {
    const { cells } = section;
    found.push(
      ...passedOver(
        section,
        estimate.starts[index],
        (part, text) => estimate.draft(part, null, text).reading,
      ),
    );
    const byName = new Map(cells.map((cell) => [nameKey(cell.name), cell]));
    for (const cell of cells) {
      const state = estimate.state(cell.id);
      const point = (code: string, message: string): void => {
        found.push({ code, message, part: cell.part, cell: cell.id, spot: null });
      };
      const { outcome } = state;
      found.push(...pictureFindings(estimate, cell, cells));
      if (asksForRecap(cell)) {
        for (const name of estimate.unpriced()) {
          point(
            'part-not-priced',
            `"${name}" has no cost line, and nothing in it goes into one: no total knows of it.`,
          );
        }
      }
      if (cell.table) {
        found.push(...tableFindings(estimate, cell, cell.table));
        continue;
      }
      if (outcome.kind === 'fault') {
        point(outcome.report.code, `${outcome.report.headline} ${outcome.report.explanation}`);
      }
      if (outcome.kind === 'unknown' && outcome.for.includes(cell.id)) {
        point('not-yet-known', `"${cell.name}" is not yet known.`);
      }
      if (state.input.byHand !== null) point('set-by-hand', sayByHand(estimate, cell, state));
      if (state.kind === 'check' && outcome.kind === 'value' && outcome.value === false) {
        const caution = remarkText(cell.remarks, 'caution');
        point('check-fails', `"${cell.name}" does not hold.${caution ? ` ${caution}` : ''}`);
      }
      if (outcome.kind !== 'fault') {
        sourceless(cell, state, point);
        sensible(estimate, cell, state, point);
        certain(estimate, cell, state, point);
        otherShare(cell, state, byName, estimate, point);
      }
    }
  }
  found.push(
    ...tieFindings(
      estimate.sections.flatMap(({ cells }) => cells),
      (id) => estimate.state(id),
    ),
  );
  for (const { line, counted } of doubleCounted(estimate.sections, (id) => estimate.state(id))) {
    found.push({
      code: 'counted-twice',
      message: `"${nameOf(line)}" adds "${nameOf(counted)}" in, which is a cost line of its own: it is counted twice.`,
      part: estimate.state(line).input.part,
      cell: line,
      spot: null,
      about: counted,
    });
  }
  for (const { line, first } of feesTwice(estimate.sections, (id) => estimate.state(id))) {
    const { name, part } = estimate.state(line).input;
    const other = estimate.sections.find(({ cells }) => cells.some(({ id }) => id === first));
    found.push({
      code: 'fee-twice',
      message: `"${name}" is a fee here and in "${other?.name ?? ''}" as well. Where the job pays it once, take one of them out.`,
      part,
      cell: line,
      spot: null,
      about: first,
    });
  }
  return found;
}

/** What keeps the pictures of a cell from being drawn, beside cells that have no value yet. */
function pictureFindings(
  estimate: Findable,
  cell: Cell,
  neighbours: readonly Cell[],
): readonly Finding[] {
  return pictureRemarks(cell).flatMap((remark) => {
    const picture = estimate.picture(cell, remark, neighbours);
    if (picture.kind !== 'wrong') return [];
    return picture.problems.map(({ code, message }): Finding => ({
      code,
      message,
      part: cell.part,
      cell: cell.id,
      spot: null,
    }));
  });
}

type Point = (code: string, message: string) => void;

function sayByHand(estimate: Findable, cell: Cell, state: CellState): string {
  const value = estimate.say(state.outcome, state.holds) ?? state.input.byHand ?? '';
  const worked = estimate.say(state.worked, state.workedHolds);
  const beside = worked === null ? '' : ` in place of ${worked}`;
  const why = sourceOf(cell.remarks);
  return `"${cell.name}" is set by hand: ${value}${beside}${why ? ` (${why})` : '; no reason is given'}.`;
}

/** A given that says nowhere where it comes from; amounts that stand in a worked formula without a source. */
function sourceless(cell: Cell, state: CellState, point: Point): void {
  if (remarkText(cell.remarks, 'from') !== null) return;
  if (state.kind === 'given') {
    const isOpen = state.outcome.kind === 'unknown';
    if (!isOpen)
      point(
        'given-without-source',
        `"${cell.name}" does not say where ${cell.formula} comes from.`,
      );
    return;
  }
  const amounts = amountsIn(state.reading.tree).filter((a) => {
    if (a.value === null || a.value.n === 0n) return false;
    // A bare whole number (twice, three sides) is arithmetic, and so is a part said in words: half, a third of.
    if (!a.bare) return true;
    const inWords = !/[\d\u00bc-\u00be\u2150-\u215e]/.test(
      cell.formula.slice(a.spot.from, a.spot.to),
    );
    return a.value.d !== 1n && !(inWords && a.value.compare(1) < 0);
  });
  if (amounts.length === 0) return;
  const said = [...new Set(amounts.map((a) => a.say))];
  const those = said.length === 1 ? said[0] : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
  point('assumed-amount', `"${cell.name}" takes ${those} without saying where that comes from.`);
}

const limitsRead = new WeakMap<Cell, Limits | null>();

function sensible(estimate: Findable, cell: Cell, state: CellState, point: Point): void {
  const text = remarkText(cell.remarks, 'sensible');
  if (text === null) return;
  let limits = limitsRead.get(cell);
  if (limits === undefined) {
    limits = readLimits(text, (side) => estimate.draft(cell.part, cell.id, side));
    if (!limits || limits.fixed) limitsRead.set(cell, limits);
  }
  if (!limits) {
    const { tree } = estimate.draft(cell.part, cell.id, text).reading;
    const ends = tree.kind === 'range' ? upTo(tree) : null;
    point(
      'limits-not-read',
      ends
        ? `The sensible limits of "${cell.name}" can't be a range: "${text}". Write them as "${ends}".`
        : `The sensible limits of "${cell.name}" can't be read: "${text}". They are written as in "3 1/2 in up to 8 in".`,
    );
    return;
  }
  for (const end of ['best', 'worst'] as const) {
    const found = state.range?.[end];
    if (!found) continue;
    const outcome: Outcome = { kind: 'value', value: found.value, leftOut: [] };
    const beyond = outsideLimits({ outcome, holds: found.holds }, limits);
    if (beyond !== 'below' && beyond !== 'above') continue;
    const shown = estimate.say(outcome, found.holds) ?? '';
    point(
      'outside-limits',
      `"${cell.name}" is ${shown} at ${end}, ${beyond} what is sensible: ${text}.`,
    );
  }
  const side = outsideLimits(state, limits);
  if (side === null) return;
  const value = estimate.say(state.outcome, state.holds) ?? cell.formula;
  if (side === 'unlike') {
    point(
      'limits-unlike',
      `The sensible limits of "${cell.name}", ${text}, measure something else than ${value}.`,
    );
  } else {
    point('outside-limits', `"${cell.name}" is ${value}, ${side} what is sensible: ${text}.`);
  }
}

/** A range whose ends are the same leaves nothing open. */
function certain(estimate: Findable, cell: Cell, { range }: CellState, point: Point): void {
  if (!range) return;
  const [best, worst] = [range.best, range.worst].map(({ value, holds }) =>
    estimate.say({ kind: 'value', value, leftOut: [] }, holds),
  );
  if (best !== worst || !sameAmount(range.best, range.worst)) return;
  point('range-of-one', `"${cell.name}" is ${best} at best and at worst: nothing is left open.`);
}

/** `10% waste` in a formula beside a cell Waste that holds another share. */
function otherShare(
  cell: Cell,
  state: CellState,
  byName: ReadonlyMap<string, Cell>,
  estimate: Findable,
  point: Point,
): void {
  for (const { label, value, say } of amountsIn(state.reading.tree)) {
    if (label === null || value === null) continue;
    const beside = byName.get(label);
    if (!beside || beside.id === cell.id) continue;
    const { outcome, holds } = estimate.state(beside.id);
    if (outcome.kind !== 'value' || holds?.measure.kind !== 'share') continue;
    if (typeof outcome.value !== 'object' || outcome.value.equals(fromFraction(value))) continue;
    const shown = estimate.say(outcome, holds) ?? beside.formula;
    point(
      'other-share',
      `"${cell.name}" takes ${say}, while "${beside.name}" is ${shown}. Write the name to take that.`,
    );
  }
}
