// How the things in a formula are called in the words of a step: by name, as written, or in a bracket.
import type { Checked } from '../language/plan.ts';
import type { CellId, Formula } from '../language/tree.ts';
import type { Book } from './book.ts';
import { type Word, saying } from './step.ts';

/** A formula with more in it than this is not said again inside another one. */
const SAID_AT_MOST = 14;

/** Brackets taken off. */
export function bare(formula: Formula): Formula {
  let inner = formula;
  while (inner.kind === 'bracket') inner = inner.of;
  return inner;
}

/** The part without brackets around it. */
export function bared(checked: Checked): Checked {
  let inner = checked;
  while (inner.formula.kind === 'bracket') {
    const [only] = inner.parts;
    if (!only) return inner;
    inner = only;
  }
  return inner;
}

/** Written in the formula itself: nothing to work or to look up. */
export function isWritten(formula: Formula): boolean {
  let inner = bare(formula);
  while (inner.kind === 'negative') inner = bare(inner.of);
  return (
    inner.kind === 'amount' ||
    inner.kind === 'words' ||
    inner.kind === 'size' ||
    inner.kind === 'yes-no' ||
    inner.kind === 'pi' ||
    inner.kind === 'hole'
  );
}

/** A name or a written amount. */
export function isSimple(formula: Formula): boolean {
  return bare(formula).kind === 'name' || isWritten(formula);
}

/** An operand in the words of the step that uses it. */
export function said(book: Book, checked: Checked): readonly Word[] {
  const inner = bared(checked);
  const { formula } = inner;
  if (formula.kind === 'name') return [{ text: formula.say, cell: formula.cell }];
  if (formula.kind === 'amount') return saying(amountSaid(formula.say, formula.label));
  if (isWritten(formula)) return saying(book.say(formula));
  const names = namesIn(inner);
  if (names === null) return saying(WORKED_BELOW);
  return linked(`(${book.say(formula)})`, names);
}

/** The same where nothing stands beside it that could run into it: without brackets. */
export function saidAlone(book: Book, checked: Checked): readonly Word[] {
  const inner = bared(checked);
  if (isSimple(inner.formula)) return said(book, inner);
  const names = namesIn(inner);
  return names === null ? said(book, inner) : linked(book.say(inner.formula), names);
}

/** Can it be said again inside another one? */
export function isShortEnough(checked: Checked): boolean {
  return namesIn(bared(checked)) !== null;
}

/** What is said in the place of a stretch of a formula that is too long to be said again. */
export const WORKED_BELOW = 'what is worked below';

/** A whole formula in words, its names marked, however long it is. */
export function saidInFull(book: Book, checked: Checked): readonly Word[] {
  const names = new Map<string, Word>();
  const left: Checked[] = [checked];
  for (let next = left.pop(); next; next = left.pop()) {
    const { formula } = next;
    if (formula.kind === 'name') names.set(formula.say, { text: formula.say, cell: formula.cell });
    left.push(...next.parts);
  }
  return linked(book.say(checked.formula), [...names.values()]);
}

/** A whole formula in words, its names marked; in short where it is long. */
export function saidWhole(book: Book, checked: Checked): readonly Word[] {
  const names = namesIn(checked);
  return names === null ? saying('a long formula') : linked(book.say(checked.formula), names);
}

/** The same for terms that say the same of the same cells; null for one that is too long to be said again, or is no work. */
export function termKey(book: Book, checked: Checked): string | null {
  const inner = bared(checked);
  const names = namesIn(inner);
  if (names === null || isSimple(inner.formula)) return null;
  return [book.say(inner.formula), ...names.map(({ cell }) => cell), ...readFrom(inner)].join('|');
}

/** The tables, columns and cost lines that it reads from. */
function readFrom(checked: Checked): readonly CellId[] {
  const { formula, parts } = checked;
  const own: readonly CellId[] =
    formula.kind === 'column' || formula.kind === 'look-up'
      ? [formula.table, ...formula.cells]
      : formula.kind === 'recap'
        ? formula.lines
        : formula.kind === 'row-count'
          ? [formula.table]
          : [];
  return [...own, ...parts.flatMap(readFrom)];
}

function amountSaid(say: string, label: string | null): string {
  return label === null || say.endsWith(label) ? say : `${say} ${label}`;
}

/** The names in it, or null when there is too much of it to be said. */
function namesIn(checked: Checked): readonly Word[] | null {
  const names: Word[] = [];
  const left: Checked[] = [checked];
  const visited: Checked[] = [];
  for (let next = left.pop(); next; next = left.pop()) {
    visited.push(next);
    if (visited.length > SAID_AT_MOST || next.parts.length > SAID_AT_MOST) return null;
    if (next.formula.kind === 'name')
      names.push({ text: next.formula.say, cell: next.formula.cell });
    left.push(...next.parts);
  }
  return names;
}

function linked(text: string, names: readonly Word[]): readonly Word[] {
  const longestFirst = names.toSorted((a, b) => (a.text.length < b.text.length ? 1 : -1));
  let words = saying(text);
  for (const name of longestFirst) {
    words = words.flatMap((word) => (word.cell === null ? linkedOnce(word.text, name) : [word]));
  }
  return words;
}

function linkedOnce(text: string, name: Word): readonly Word[] {
  const pieces = text.split(name.text);
  return pieces.flatMap((piece, place) => (place === 0 ? saying(piece) : saying([name], piece)));
}
