// Wording what the rules find: names and values as they were written, headlines that stay short.
import { withoutNounsAbove } from '../../quantity/dimension.ts';
import { describe } from '../../quantity/describe.ts';
import { type Measure, amountMeasure } from '../../quantity/measure.ts';
import type { Checked } from '../plan.ts';
import { type Checking, typed } from './checking.ts';

/** A headline stays under 60 characters. */
const LONGEST = 60;

/** The first of some headlines that is short enough; the last one always is. */
export function headline(...choices: readonly string[]): string {
  const found = choices.find((c) => c.length < LONGEST) ?? choices.at(-1) ?? '';
  return capital(found);
}

export function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** What a value measures, in words, counts beside a hard unit left out: `a length`, `a price per bag`. */
export function whatItIs(checked: Checked): string {
  return described(checked.holds.measure);
}

export function described(measure: Measure): string {
  if (measure.kind !== 'amount') return describe(measure);
  const kept = withoutNounsAbove(measure.dimension);
  return describe(
    kept === measure.dimension ? measure : amountMeasure(kept, measure.scale, measure.rate),
  );
}

/** How it is called: a name (as typed, where only capitals differ), an amount as typed, other words in quotes. */
export function called(checking: Checking, checked: Checked): string {
  const { formula } = checked;
  const words = typed(checking, formula);
  if (formula.kind === 'name') {
    const name = checking.surroundings.nameOf(formula.cell);
    return name.toLowerCase() === words.toLowerCase() ? words : name;
  }
  if (formula.kind === 'amount') return words;
  return `"${words.length > 40 ? words.slice(0, 38) + '…' : words}"`;
}

/** One fact about it: `slab length is 12 ft`, `12 ft is a length`. */
export function fact(checking: Checking, checked: Checked): string {
  const { formula } = checked;
  const shown = formula.kind === 'name' ? checking.surroundings.shownOf(formula.cell) : null;
  const what = whatItIs(checked);
  return `${called(checking, checked)} is ${shown ?? (what === 'hours' ? 'a time' : what)}`;
}

/** `36 boards` is a count of boards, `$3 per ft` a price per ft: written out, they need not be said again. */
function saysItself({ formula, holds: { measure } }: Checked): boolean {
  if (formula.kind !== 'amount' || measure.kind !== 'amount') return false;
  return measure.rate !== null || measure.dimension.nouns.length > 0;
}

/** Two facts in one sentence. */
export function facts(checking: Checking, a: Checked, b: Checked): string {
  const said = [a, b].filter((each) => !saysItself(each)).map((each) => fact(checking, each));
  if (said.length === 0) return `${capital(fact(checking, a))}; ${fact(checking, b)}.`;
  return `${capital(said.join('; '))}.`;
}
