// What is told of one node of a formula: one or more risers, each with its words, its line of
// numbers and the operands that are worked below it.
import { partsOf } from '../../language/check/parts.ts';
import type { Checked, Plan } from '../../language/plan.ts';
import type { Book } from '../book.ts';
import { type Figure, figureOf } from '../figure.ts';
import { type Line, type LineAsked, type Target, type Term, lineOf } from '../line.ts';
import type { Side } from '../cancel.ts';
import { bared, said } from '../naming.ts';
import type { CellId, Formula } from '../../language/tree.ts';
import { type Piece, type Word, plainWords } from '../step.ts';
import { standingFor, swapped } from '../asks.ts';

/** An operand and how the line above writes it. */
export interface Operand {
  readonly checked: Checked;
  readonly target: Target;
}

export interface Riser {
  readonly said: readonly Word[];
  readonly pieces: readonly Piece[];
  readonly result: string;
  readonly note: string | null;
  readonly operands: readonly Operand[];
  /** Steps that stand on their own below this one: proofs that shares come out, the fewest but one. */
  readonly beside: readonly Aside[];
  /** Whole cells that a recap adds; each stands below with its amount and opens in place. */
  readonly lines: readonly AddedLine[];
  /** How the line writes each of its terms. */
  readonly targets: ReadonlyMap<Term, Target>;
}

export interface AddedLine {
  readonly cell: CellId;
  readonly target: Target | null;
}

/** A line with nothing to follow below it. */
export interface Aside {
  readonly said: readonly Word[];
  readonly pieces: readonly Piece[];
  readonly result: string;
}

/** Top riser first; what the last one uses may go on down. */
export type Told = readonly Riser[];

/** An operand as a term of a line. */
export interface Used extends Term {
  readonly checked: Checked;
}

export function use(book: Book, checked: Checked, side: Side = 'apart'): Used {
  const instead = plainWords(said(book, checked));
  return { checked, side, figure: asWritten(checked, figureOf(book, checked)), instead };
}

/** An amount in the formula stands in the line as it was written there, which is all there is of it. */
function asWritten(checked: Checked, figure: Figure): Figure {
  const { formula } = bared(checked);
  if (formula.kind !== 'amount' || !known(figure)) return figure;
  // A bare number that took its unit from its neighbour is shown with it; `half` is shown as a number.
  if (formula.holds.measure !== checked.holds.measure || !/\d/.test(formula.say)) return figure;
  const { label, say } = formula;
  const text =
    label !== null && say.endsWith(` ${label}`) ? say.slice(0, -label.length).trimEnd() : say;
  return { ...figure, shown: { ...figure.shown, text }, inFull: true };
}

/** The operand of a node that `formula` is. A checker that lost it made a mistake. */
export function operand(checked: Checked, formula: Formula): Checked {
  const part = checked.parts[partsOf(checked.formula).indexOf(formula)];
  if (!part) throw new Error(`a ${checked.formula.kind} has no part for its ${formula.kind}`);
  return part;
}

/** The node's own plan worked from what is written for its operands. */
export function byItsPlan(
  checked: Pick<Checked, 'plan'>,
  used: readonly Used[],
): (stands: (term: Term) => Plan) => Plan {
  return (stands) => {
    const swaps = used.flatMap((one) => standingFor(bared(one.checked).plan, stands(one)));
    return swapped(checked.plan, new Map(swaps));
  };
}

export interface RiserAsked extends LineAsked {
  /** In words; or how to say it once it is settled how each term is written. */
  readonly said: readonly Word[] | ((written: (term: Term) => string) => readonly Word[]);
  readonly used: readonly Used[];
  readonly note?: string | null;
  readonly beside?: readonly Aside[];
}

export function riser(book: Book, asked: RiserAsked): Riser {
  const line = lineOf(book, asked);
  return {
    said: typeof asked.said === 'function' ? asked.said((t) => textOf(line, t)) : asked.said,
    pieces: line.pieces,
    result: asked.result.text,
    note: asked.note ?? null,
    operands: operandsOf(line, asked.used),
    beside: asked.beside ?? [],
    lines: [],
    targets: line.targets,
  };
}

function textOf(line: Line, term: Term): string {
  return line.targets.get(term)?.text ?? term.instead;
}

function operandsOf(line: Line, used: readonly Used[]): readonly Operand[] {
  return used.map((one) => ({
    checked: one.checked,
    target: line.targets.get(one) ?? wordless(one),
  }));
}

/** An operand that its line does not show, such as a condition. */
function wordless(one: Used): Target {
  return {
    figure: one.figure,
    digits: 'shown',
    text: one.figure.kind === 'known' ? one.figure.shown.text : lackingWords(one),
  };
}

function lackingWords({ figure, instead }: Used): string {
  return figure.kind === 'lacking' && figure.outcome.kind === 'unknown' ? 'not yet known' : instead;
}

export function known(figure: Figure): figure is Extract<Figure, { kind: 'known' }> {
  return figure.kind === 'known';
}
