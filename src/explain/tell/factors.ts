// How many of one unit make one of another, written into a line, so that its units cancel in sight.
import { UNITS, type Unit } from '../../quantity/units.ts';
import { quotientOf } from '../asks.ts';
import type { Book } from '../book.ts';
import { type Figure, PLAIN_NUMBER, figureOf } from '../figure.ts';
import type { Term, Token } from '../line.ts';
import { known } from './told.ts';

/** From the unit of one figure to that of another; nothing where no whole number of the one makes the other. */
export function factorBetween(book: Book, from: Figure, to: Figure): readonly Token[] {
  if (!known(from) || !known(to)) return [];
  return factor(book, unitCalled(from.shown.unit), unitCalled(to.shown.unit));
}

/**
 * From the unit of an amount to the one that a rate names for the same: minutes towards $45 per hour. `over`: the rate
 * divides, so it is what stands before its `per`.
 */
export function towardsRate(
  book: Book,
  amount: Figure,
  rate: Figure,
  side: 'over' | 'under',
): readonly Token[] {
  if (!known(amount) || !known(rate)) return [];
  const from = unitCalled(amount.shown.unit);
  const [over = '', ...under] = rate.shown.unit.split(' per ');
  const units = (side === 'over' ? [over] : under).map(unitCalled);
  return factor(book, from, units.find((unit) => unit?.dimension === from?.dimension) ?? null);
}

/** From the unit of a length to the one of this key. */
export function towardsUnit(book: Book, length: Figure, key: string): readonly Token[] {
  if (!known(length)) return [];
  const [from, to] = [unitCalled(length.shown.unit), unitCalled(key)];
  return from?.dimension === to?.dimension ? factor(book, from, to) : [];
}

/** By the key of `Shown.unit`. */
export function unitCalled(key: string): Unit | null {
  return UNITS_BY_KEY.get(key) ?? null;
}

const UNITS_BY_KEY: ReadonlyMap<string, Unit> = new Map(UNITS.map((unit) => [unit.key, unit]));

function factor(book: Book, from: Unit | null, to: Unit | null): readonly Token[] {
  if (!from || !to || from === to) return [];
  const fewer = wholeQuotient(book, to, from);
  if (fewer !== null) return [' ÷ ', factorTerm(fewer, from, to, 'under')];
  const more = wholeQuotient(book, from, to);
  return more === null ? [] : [' × ', factorTerm(more, to, from, 'over')];
}

/** How many of the smaller make one of the bigger, if that is a whole number. */
function wholeQuotient(book: Book, bigger: Unit, smaller: Unit): Figure | null {
  const plan = quotientOf(
    { op: 'constant', value: bigger.scale },
    { op: 'constant', value: smaller.scale },
  );
  const figure = figureOf(book, { plan, holds: PLAIN_NUMBER });
  return known(figure) && !figure.shown.exact.includes('.') ? figure : null;
}

function factorTerm(figure: Figure, of: Unit, per: Unit, side: 'over' | 'under'): Term {
  if (!known(figure)) return { figure, side, instead: '' };
  const text = `${figure.shown.text} ${of.many} per ${per.one}`;
  return { figure: { ...figure, shown: { ...figure.shown, text } }, side, instead: '' };
}
