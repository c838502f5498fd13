// What the record teaches for the next job: the hours that one unit took as it was built, written into the notebook as
// a given with its source, in one change.
import type { CellId } from '../language/tree.ts';
import type { Change, Finding, Notebook } from '../notebook/document.ts';
import { Twin } from '../notebook/twin.ts';
import { Dec } from '../quantity/decimal.ts';
import { grouped } from '../quantity/number-text.ts';
import type { Shown } from '../quantity/show.ts';
import { type Said, hoursText } from './entry.ts';

/** The digits to which hours per unit are given; the source tells what they were worked from. */
const DIGITS = 4;

export interface Learned {
  /** `17.5` */
  readonly hours: string;
  readonly entries: number;
  /** `0.2344 hours per sq ft` */
  readonly formula: string;
  /** `learned on Kestrel Court: 52.5 hours for 224 sq ft by its job record, up to 2026-05-14` */
  readonly from: string;
}

export type Learning =
  | { readonly kind: 'learned'; readonly learned: Learned }
  | { readonly kind: 'refused'; readonly why: string };

/** From the hours of these entries and what was built with them. */
export function learn(
  entries: readonly Said[],
  built: Pick<Shown, 'text' | 'unit' | 'exact'>,
  job: string,
): Learning {
  let minutes = new Dec(0);
  let count = 0;
  let last = '';
  for (const { cost, date } of entries) {
    if (cost.by !== 'time') continue;
    minutes = minutes.plus(cost.minutes);
    count++;
    if (date > last) last = date;
  }
  if (count === 0) return refused('No hours stand in the record for this.');
  const { unit, text, exact } = built;
  if (unit === '' || unit === '%' || unit.includes('$') || unit.includes(' per ') || exact === '')
    return refused(`"${text}" counts and measures nothing that hours could be for.`);
  const quantity = new Dec(exact);
  if (quantity.lte(0)) return refused(`Nothing was built yet: ${text}.`);
  const each = minutes.div(60).div(quantity).toSignificantDigits(DIGITS, Dec.ROUND_HALF_UP);
  const hours = hoursText(minutes.toFixed());
  return {
    kind: 'learned',
    learned: {
      hours,
      entries: count,
      formula: `${each.toFixed()} hours per ${unit}`,
      from: `learned on ${job}: ${inHours(hours)} for ${text} by its job record, up to ${last}`,
    },
  };
}

export type Built =
  | { readonly kind: 'amount'; readonly shown: Shown }
  | { readonly kind: 'refused'; readonly why: string };

/** What somebody says was built, `deck area` or `224 sq ft`, read as a new cell at the end of a part would read it. */
export function builtAmount(notebook: Notebook, part: string, formula: string): Built {
  const twin = new Twin(notebook);
  const { estimate } = twin;
  for (const name of ['Built by the record', 'Built by the record, tried']) {
    const done = estimate.addCell(twin.part(part), null, name, formula);
    if (!('change' in done)) continue;
    const { added } = twin;
    if (added === null) throw new Error('the new cell is not there');
    const shown = estimate.shown(added);
    if (shown) return { kind: 'amount', shown };
    const { outcome } = estimate.state(added);
    return refused(
      outcome.kind === 'fault' ? outcome.report.headline : 'What was built has no value yet.',
    );
  }
  return refused('That can’t be read here.');
}

/** Where it is written: over a given of the notebook, or as a new one at the end of a part. */
export type Into =
  | { readonly kind: 'given'; readonly cell: CellId }
  | { readonly kind: 'new'; readonly part: string; readonly name: string };

/** One change that can be undone as one; or why it can't be made. */
export function learnedChange(
  notebook: Notebook,
  into: Into,
  { formula, from }: Learned,
): Change | Finding {
  const twin = new Twin(notebook);
  const { estimate } = twin;
  const first =
    into.kind === 'given'
      ? estimate.setFormula(twin.cell(into.cell).id, formula)
      : estimate.addCell(twin.part(into.part), null, into.name, formula);
  if (!('change' in first)) return first;
  const cell = into.kind === 'given' ? twin.cell(into.cell).id : twin.added;
  if (cell === null) throw new Error('the new cell is not there');
  const second = estimate.setRemark(cell, 'from', from);
  if (!('change' in second)) return second;
  return twin.change(`${estimate.state(cell).input.name}: ${formula}`);
}

function inHours(hours: string): string {
  return hours === '1' ? '1 hour' : `${grouped(hours)} hours`;
}

function refused(why: string): { readonly kind: 'refused'; readonly why: string } {
  return { kind: 'refused', why };
}
