// Forms and what is held of an amount that was written in one.
// A plain amount is folded by a whole number to the finest unit of its family, so that `12 ft` and
// `12 ft 6 in` are held alike; a rate keeps its number, with both its sides and an exact scale.
import { type Dimension, PLAIN, countOf, timesDimension } from './dimension.ts';
import type { Form, Term } from './form.ts';
import {
  type AmountMeasure,
  Fraction,
  ONE,
  amountMeasure,
  conversion,
  rateMeasure,
} from './measure.ts';
import { grouped } from './number-text.ts';
import { onceEach } from './once.ts';
import { UNITS, type Unit, unitByKey } from './units.ts';

/** The value and measure that an amount is held in. */
export interface Held {
  readonly value: Fraction;
  readonly measure: AmountMeasure;
}

export function heldAmount(number: Fraction, form: Form): Held {
  const measure = formMeasure(form);
  if (measure.rate) return { value: number, measure };
  const finest = foldedInto(form);
  if (!finest || finest === measure) return { value: number, measure };
  return { value: number.mul(conversion(measure, finest)), measure: finest };
}

/** What something measures that is written in this form: 1 of it, unfolded. */
export function formMeasure(form: Form): AmountMeasure {
  const over = sideMeasure(form.over);
  return form.under.length === 0 ? over : rateMeasure(over, sideMeasure(form.under));
}

function sideMeasure(terms: readonly Term[]): AmountMeasure {
  const [only] = terms;
  if (only?.count === null && terms.length === 1) return oneOf(only);
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

/** Most amounts are of one unit or noun. */
function oneOf(term: Term): AmountMeasure {
  return term.kind === 'unit' ? oneUnit(term.unit) : oneThing(term.noun);
}

const oneUnit = onceEach((unit: Unit) => amountMeasure(unit.dimension, unit.scale));
const oneThing = onceEach((noun: string) => amountMeasure(countOf(noun)));

function nounOf(term: Term): Dimension {
  return term.kind === 'noun' ? countOf(term.noun) : PLAIN;
}

/** What the one unit in this form is held in: the finest of its family; null where there is no family. */
function foldedInto(form: Form): AmountMeasure | null {
  const [term] = form.over;
  if (term?.kind !== 'unit' || form.over.length > 1) return null;
  return FOLDED.get(term.unit) ?? null;
}

const FINEST = ['in', 'sq in', 'cubic in', 'oz', 'mm', 'sq mm', 'cubic mm', 'g', 'min', '$'].map(
  unitByKey,
);

const FOLDED: ReadonlyMap<Unit, AmountMeasure> = new Map(
  UNITS.flatMap((unit) => {
    const finest = FINEST.find(
      (f) => f.dimension === unit.dimension && f.measures === unit.measures,
    );
    // A second is no whole number of minutes: it stays.
    if (!finest || unit.key === 'second') return [];
    return [[unit, amountMeasure(unit.dimension, finest.scale)]];
  }),
);

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
      if (term.kind === 'unit' && term.unit.key === '$')
        return ` per $${grouped(term.count ?? '1')}`;
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
