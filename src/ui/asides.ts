// What the page asks about a cell beside the estimate's doorway: its working, the quantity it prices,
// how far a value set by hand is from the worked one. Every number comes from the estimate. What explains a
// number comes after the page stands: it is half as much again as all that draws.
import type { Working } from '../explain/step.ts';
import type { Checked } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';
import type { Notebook } from '../notebook/document.ts';
import { MONEY } from '../quantity/dimension.ts';
import type { Measure } from '../quantity/measure.ts';
import { Nouns } from '../quantity/nouns.ts';
import { type ShowSettings, otherNotation, show } from '../quantity/show.ts';
import type { Asides } from './session.ts';

let workingOf: ((door: EstimateDoor, cell: CellId) => Working) | null = null;

/** Once workings can be told; asked for at once, so that it is here when the page has been drawn. */
export const explaining: Promise<void> = import('../explain/working.ts').then((explain) => {
  workingOf = explain.workingOf;
});

export function asidesOf(door: EstimateDoor): Asides {
  // The same working until something changes: what was opened in it stays open when the page draws it again.
  let told: { readonly cell: CellId; readonly of: Notebook; readonly working: Working } | null =
    null;
  return {
    working(cell) {
      if (!workingOf) return null;
      if (told?.cell !== cell || told.of !== door.notebook) {
        told = { cell, of: door.notebook, working: workingOf(door, cell) };
      }
      return told.working;
    },
    quantity: (cell) => quantityOf(door, cell),
    difference: (cell) => differenceOf(door, cell),
    otherwise: (draft) =>
      draft.outcome.kind === 'value' && draft.reading.checked
        ? otherNotation(draft.outcome.value, draft.reading.checked.holds, settingsOf(door.notebook))
        : null,
  };
}

/** The left side of the last `at` or `times` that turned a quantity into money. */
function quantityOf(door: EstimateDoor, cell: CellId): string | null {
  let checked: Checked | null = door.state(cell).reading.checked;
  while (checked) {
    const { formula } = checked;
    const [first] = checked.parts;
    if (!first || !isMoney(checked.holds.measure)) return null;
    if (formula.kind === 'binary' && ['at', 'times', 'by'].includes(formula.op)) {
      if (!isMoney(first.holds.measure)) return shownPart(door, first);
      checked = first;
    } else if (
      formula.kind === 'bracket' ||
      formula.kind === 'rounded' ||
      formula.kind === 'limited'
    ) {
      checked = first;
    } else return null;
  }
  return null;
}

function shownPart(door: EstimateDoor, part: Checked): string | null {
  const outcome = door.evaluate(part.plan);
  if (outcome.kind !== 'value' || part.holds.measure.kind !== 'amount') return null;
  return show(outcome.value, part.holds, settingsOf(door.notebook)).text;
}

function isMoney(measure: Measure): boolean {
  return measure.kind === 'amount' && measure.dimension === MONEY;
}

/** `worked 40 bags, 5 bags less by hand`. */
function differenceOf(door: EstimateDoor, cell: CellId): string | null {
  const { outcome, worked, holds, reading } = door.state(cell);
  const shown = door.shownWorked(cell);
  if (!shown) return null;
  const words = `worked: ${shown.text}`;
  if (outcome.kind !== 'value' || worked.kind !== 'value' || !holds || !reading.checked)
    return words;
  if (typeof outcome.value !== 'object' || typeof worked.value !== 'object') return words;
  if (holds.measure !== reading.checked.holds.measure) return words;
  const difference = outcome.value.minus(worked.value);
  if (difference.isZero()) return `${words}, the same`;
  const by = show(difference.abs(), holds, settingsOf(door.notebook)).text;
  return `${words}; by hand it is ${by} ${difference.isNegative() ? 'less' : 'more'}`;
}

const settings = new WeakMap<Notebook, ShowSettings>();

function settingsOf(notebook: Notebook): ShowSettings {
  const known = settings.get(notebook);
  if (known) return known;
  const { counted, currency, fractions, measures } = notebook.settings;
  const nouns = new Nouns(counted);
  const made = { currency, fractions, measures, many: (noun: string) => nouns.many(noun) };
  settings.set(notebook, made);
  return made;
}
