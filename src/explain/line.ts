// One line of numbers: `17.6 cubic feet ÷ 0.45 cubic feet per bag = 39.11 bags`.
// Its figures get as many digits as it takes for the line to come out as it says.
import type { Plan } from '../language/plan.ts';
import type { Holds } from '../quantity/form.ts';
import { MINUS } from '../quantity/number-text.ts';
import type { Book } from './book.ts';
import { type Factor, type Side, cancelled } from './cancel.ts';
import {
  type Digits,
  ENOUGH,
  type Figure,
  type Known,
  STEPS,
  type Written,
  figureFrom,
  isShownInFull,
  readFromShown,
  written,
} from './figure.ts';
import type { Piece } from './step.ts';

/** A figure in a line. `instead` stands for it where there is no value. */
export interface Term {
  readonly figure: Figure;
  readonly side: Side;
  readonly instead: string;
}

export type Token = string | Term;

/** How the line of the step above writes the result of this one. */
export interface Target {
  readonly figure: Figure;
  readonly digits: Digits;
  readonly text: string;
}

export interface LineAsked {
  readonly tokens: readonly Token[];
  /** `→` where something is chosen or rounded rather than worked. */
  readonly joint: '=' | '→';
  readonly result: Target;
  /** Ways in which a reader may work the line from what is written, term by term; each has to come to the result. */
  readonly comesOut: readonly ((stands: (term: Term) => Plan) => Plan)[];
  /** What is printed in between: each has to come out of what stands before it. */
  readonly between?: readonly Between[];
  /** Where a figure is rounded, it is written so that it differs from the result. */
  readonly apart?: true;
}

export interface Between {
  readonly to: Term;
  readonly work: (stands: (term: Term) => Plan) => Plan;
}

export interface Line {
  readonly pieces: readonly Piece[];
  /** How each term is written, for the steps below. */
  readonly targets: ReadonlyMap<Term, Target>;
}

export function targetOf(figure: Figure, instead: string): Target {
  return {
    figure,
    digits: 'shown',
    text: figure.kind === 'known' ? figure.shown.text : lackingText(figure, instead),
  };
}

export function lineOf(book: Book, asked: LineAsked): Line {
  const terms = asked.tokens.filter((token) => typeof token !== 'string');
  const targets = settled(book, asked, terms);
  const factors: readonly Factor[] = terms.map((term) => ({
    text: targets.get(term)?.text ?? '',
    side: term.side,
  }));
  const struck = cancelled(factors, (word) => book.measures(word));
  let sign = '';
  const pieces = asked.tokens.flatMap((token) => {
    const before = sign;
    sign = typeof token === 'string' ? token : '';
    if (typeof token === 'string') return [{ text: token, struck: false }];
    const figures = struck[terms.indexOf(token)] ?? [];
    const isBelow = targets.get(token)?.text.startsWith(MINUS) === true;
    // After a sign of its own a minus would be read as another: `0 in − (−3 7/8 in)`.
    return isBelow && /[+−×÷] $/.test(before) ? inBrackets(figures) : figures;
  });
  const comes = asked.tokens.length > 0 && asked.result.figure.kind === 'known';
  const result = comes ? ` ${asked.joint} ${asked.result.text}` : '';
  return { pieces: joined([...pieces, { text: result, struck: false }]), targets };
}

function inBrackets(pieces: readonly Piece[]): readonly Piece[] {
  return [{ text: '(', struck: false }, ...pieces, { text: ')', struck: false }];
}

/** How each term is written: the fewest digits with which the line comes out. */
function settled(book: Book, asked: LineAsked, terms: readonly Term[]): ReadonlyMap<Term, Target> {
  const last = terms.some((term) => isCut(term.figure)) ? fewestDigits(book, asked, terms) : null;
  return new Map(
    terms.map((term) => {
      const form = last?.get(term);
      return [
        term,
        form
          ? { figure: term.figure, digits: form.digits, text: form.text }
          : targetOf(term.figure, term.instead),
      ];
    }),
  );
}

function fewestDigits(
  book: Book,
  asked: LineAsked,
  terms: readonly Term[],
): ReadonlyMap<Term, Written> {
  for (const digits of ['shown', ...STEPS, 'fraction'] as const) {
    const all = writtenAll(book, terms, digits);
    if (holdsGood(book, asked, all)) return all;
  }
  return writtenAll(book, terms, ENOUGH);
}

function writtenAll(
  book: Book,
  terms: readonly Term[],
  digits: Digits,
): ReadonlyMap<Term, Written> {
  const all = new Map<Term, Written>();
  for (const term of terms) {
    if (term.figure.kind === 'lacking') continue;
    all.set(term, writtenWith(book, term.figure, digits));
  }
  return all;
}

/** A figure shown in full needs no more digits, whatever its neighbours need. */
function writtenWith(book: Book, figure: Known, digits: Digits): Written {
  if (isShownInFull(figure)) return written(book, figure, 'shown');
  return digits === 'shown' ? readFromShown(book, figure) : written(book, figure, digits);
}

function holdsGood(book: Book, asked: LineAsked, all: ReadonlyMap<Term, Written>): boolean {
  const { result } = asked;
  if (result.figure.kind === 'lacking') return true;
  const { holds } = result.figure;
  const stands = (term: Term): Plan => all.get(term)?.stands ?? { op: 'unknown' };
  if (asked.apart && [...all].some(([term, w]) => w.text === result.text && isCut(term.figure))) {
    return false;
  }
  const comesTo = (plan: Plan, as: Holds, to: Pick<Target, 'digits' | 'text'>): boolean => {
    const figure = figureFrom(book, book.evaluate(plan), as);
    if (figure.kind === 'lacking') return false;
    return onItsMark(written(book, figure, to.digits).text) === onItsMark(to.text);
  };
  const between = (asked.between ?? []).every(({ to, work }) => {
    const printed = all.get(to);
    return (
      !printed || to.figure.kind === 'lacking' || comesTo(work(stands), to.figure.holds, printed)
    );
  });
  return between && asked.comesOut.every((work) => comesTo(work(stands), holds, result));
}

/** A length beside its mark and one on it are the same to a reader with a pencil. */
function onItsMark(text: string): string {
  return text.replace(/, a hair (shy|over)$/, '');
}

/** Is there more of it than is shown? */
function isCut(figure: Figure): boolean {
  return figure.kind === 'known' && !isShownInFull(figure);
}

function lackingText(figure: Figure, instead: string): string {
  return figure.kind === 'lacking' && figure.outcome.kind === 'unknown' ? '?' : instead;
}

/** Neighbours that are alike made one piece. */
function joined(pieces: readonly Piece[]): readonly Piece[] {
  const all: Piece[] = [];
  for (const piece of pieces) {
    const before = all.at(-1);
    if (piece.text === '') continue;
    if (before && before.struck === piece.struck) {
      all.splice(-1, 1, { text: `${before.text}${piece.text}`, struck: piece.struck });
    } else all.push(piece);
  }
  return all;
}
