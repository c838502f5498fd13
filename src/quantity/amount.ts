// Forms and what is held of an amount that was written in one.
// A plain amount is folded by a whole number to the finest unit of its family, so that `12 ft` and
// `12 ft 6 in` are held alike; a rate keeps its number, with both its sides and an exact scale.
import { type Dimension, PLAIN, countOf, timesDimension } from './dimension.ts';
import type { Form, Term } from './form.ts';
import { type AmountMeasure, Fraction, ONE, amountMeasure, rateMeasure } from './measure.ts';
import { type Unit, unitByKey } from './units.ts';

/** The value and measure that an amount is held in. */
export interface Held {
  readonly value: Fraction;
  readonly measure: AmountMeasure;
}

export function heldAmount(number: Fraction, form: Form): Held {
  const measure = formMeasure(form);
  if (measure.rate) return { value: number, measure };
  const finest = foldedInto(form);
  if (!finest) return { value: number, measure };
  return {
    value: number.mul(measure.scale).div(finest.scale),
    measure: amountMeasure(measure.dimension, finest.scale),
  };
}

/** What something measures that is written in this form: 1 of it, unfolded. */
export function formMeasure(form: Form): AmountMeasure {
  const over = sideMeasure(form.over);
  return form.under.length === 0 ? over : rateMeasure(over, sideMeasure(form.under));
}

function sideMeasure(terms: readonly Term[]): AmountMeasure {
  let dimension: Dimension = PLAIN;
  let scale = ONE;
  for (const term of terms) {
    const unit = term.kind === 'unit' ? term.unit : null;
    dimension = timesDimension(dimension, unit?.dimension ?? nounOf(term));
    if (unit) scale = scale.mul(unit.scale);
    if (term.count !== null) scale = scale.mul(new Fraction(term.count.replaceAll(',', '')));
  }
  return amountMeasure(dimension, scale);
}

function nounOf(term: Term): Dimension {
  return term.kind === 'noun' ? countOf(term.noun) : PLAIN;
}

/** The finest unit of the family of the one unit in this form; null where there is no family. */
function foldedInto(form: Form): Unit | null {
  const [term, ...more] = form.over;
  if (term?.kind !== 'unit' || more.length > 0) return null;
  return finestOf(term.unit);
}

const FINEST = ['in', 'sq in', 'cubic in', 'oz', 'mm', 'sq mm', 'cubic mm', 'g', 'min', '$'].map(
  unitByKey,
);

function finestOf(unit: Unit): Unit | null {
  // A second is no whole number of minutes: it stays.
  if (unit.key === 'second') return null;
  return FINEST.find((f) => f.dimension === unit.dimension && f.measures === unit.measures) ?? null;
}

/** A form of these units and nouns; a text is a noun. */
export function formOf(
  over: readonly (Unit | string)[],
  under: readonly (Unit | string)[] = [],
): Form {
  return { over: over.map(termOf), under: under.map(termOf) };
}

function termOf(what: Unit | string): Term {
  return typeof what === 'string'
    ? { kind: 'noun', noun: what, count: null }
    : { kind: 'unit', unit: what, count: null };
}

/** Whoever knows the plural of a noun. */
export interface Plurals {
  many(noun: string): string;
}

/** A form in words: `cubic yards`, `$ per bag`, `$ each`, `cubic yards per 1000 sq ft per in`. `many` is for what stands over the line. */
export function formText(form: Form, many: boolean, plurals: Plurals): string {
  const over = form.over.map((term) => termText(term, many, plurals)).join(' × ');
  return over + underText(form, plurals);
}

/** What stands below the line, with a space before it: ` per 1000 sq ft`, ` each`. */
export function underText(form: Form, plurals: Plurals): string {
  return form.under
    .map((term) => {
      if (term.kind === 'noun' && term.noun === 'each') return ' each';
      const count = term.count === null ? '' : `${term.count} `;
      return ` per ${count}${termText(term, term.count !== null, plurals)}`;
    })
    .join('');
}

function termText(term: Term, many: boolean, plurals: Plurals): string {
  if (term.kind === 'noun') return many ? plurals.many(term.noun) : term.noun;
  return many ? term.unit.many : term.unit.one;
}

/** A form in plain keys, for machines: `cubic yd`, `$ per 1000 sq ft`, `$ each`. */
export function formKey(form: Form): string {
  const over = form.over.map(termKey).join(' × ');
  const under = form.under.map((term) =>
    term.kind === 'noun' && term.noun === 'each'
      ? ' each'
      : ` per ${term.count === null ? '' : `${term.count} `}${termKey(term)}`,
  );
  return over + under.join('');
}

function termKey(term: Term): string {
  return term.kind === 'noun' ? term.noun : term.unit.key;
}
