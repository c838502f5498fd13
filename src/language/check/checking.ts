// What every checking rule is handed: the formula's text, whom to ask, and where to leave what was found.
import type { Nouns } from '../../quantity/nouns.ts';
import type { Fix, Report } from '../../words/report.ts';
import type { Spot } from '../../words/spot.ts';
import type { Surroundings } from '../reading.ts';
import type { SizeTable } from '../size-table.ts';
import type { CellId, Formula } from '../tree.ts';

export interface Checking {
  /** The formula as typed: fixes are made by replacing spots in it. */
  readonly text: string;
  readonly surroundings: Surroundings;
  readonly nouns: Nouns;
  /** Tables of sizes with dimensions of their own. */
  readonly sizes: readonly SizeTable[];
  readonly problems: Report[];
  readonly waitsFor: CellId[];
  readonly notes: string[];
}

/** One stretch of the formula and what is to stand there instead. */
export interface Edit {
  readonly spot: Spot;
  readonly by: string;
}

/** Leaves a problem. Always null, so that a rule can end with it. */
export function refuse(checking: Checking, report: Report): null {
  checking.problems.push(report);
  return null;
}

/** Leaves a note once. */
export function noted(checking: Checking, note: string): string {
  if (!checking.notes.includes(note)) checking.notes.push(note);
  return note;
}

/** The whole formula with some stretches replaced, as a fix. */
export function mended(checking: Checking, say: string, ...edits: readonly Edit[]): Fix {
  let formula = checking.text;
  for (const { spot, by } of [...edits].sort((a, b) => b.spot.from - a.spot.from)) {
    formula = formula.slice(0, spot.from) + by + formula.slice(spot.to);
  }
  return { say, formula };
}

/** The words of a part of the formula, as typed. */
export function typed(checking: Checking, formula: Formula): string {
  return checking.text.slice(formula.spot.from, formula.spot.to);
}

/** The words of an amount without the brackets around it, which the parser leaves in its spot. */
export function typedAmount(checking: Checking, formula: Formula): string {
  let words = typed(checking, formula);
  while (/^[([].*[)\]]$/.test(words)) words = words.slice(1, -1).trim();
  return words;
}

/** The same words, in brackets where they are more than one thing. */
export function typedAsOne(checking: Checking, formula: Formula): string {
  const words = typed(checking, formula);
  const one =
    formula.kind === 'words' ||
    formula.kind === 'yes-no' ||
    formula.kind === 'amount' ||
    formula.kind === 'name' ||
    formula.kind === 'bracket';
  return one ? words : `(${words})`;
}

/** Spots from first to last. */
export function inOrder(...spots: readonly Spot[]): readonly Spot[] {
  return [...spots].sort((a, b) => a.from - b.from);
}

/** A word in place of a sign, with blanks where the sign was typed tight, as in `12x4`. */
export function spacedOut(checking: Checking, spot: Spot, word: string): string {
  const before = /\s/.test(checking.text[spot.from - 1] ?? ' ') ? '' : ' ';
  const after = /\s/.test(checking.text[spot.to] ?? ' ') ? '' : ' ';
  return before + word + after;
}
