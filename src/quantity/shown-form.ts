// In which form a value is shown: the one that was asked for, else by the units its givens were written in.
import { formMeasure } from './amount.ts';
import {
  type Dimension,
  LENGTH,
  MASS,
  TIME,
  VOLUME,
  countOf,
  dimension,
  hardPart,
  withoutNounsAbove,
} from './dimension.ts';
import type { Form, Holds, Term } from './form.ts';
import { type AmountMeasure, type Fraction, conversion } from './measure.ts';
import { onceAPair } from './once.ts';
import { type Unit, unitByKey, unitOf } from './units.ts';

/** How the number over the line is written. `tape` is feet, inches and fractions; `clock` hours, and minutes where they are whole. */
export type Manner = 'decimal' | 'money' | 'inches' | 'tape' | 'clock';

export interface ShownForm {
  readonly form: Form;
  readonly manner: Manner;
  /** The number held × this = the number in the form. */
  readonly scale: Fraction;
}

/** Forms that were asked for: what a cell holds seldom changes, and it is shown at every stroke. */
const chosen = { us: new WeakMap<Holds, ShownForm>(), metric: new WeakMap<Holds, ShownForm>() };

/** `usual` decides where the givens are written in both measures or in neither. */
export function shownForm(measure: AmountMeasure, holds: Holds, usual: 'us' | 'metric'): ShownForm {
  if (holds.showIn === null) return byRules[usual](measure, holds.written);
  const known = chosen[usual].get(holds);
  if (known) return known;
  const asked = askedForm(measure, holds.showIn);
  const made = asked
    ? inForm(measure, asked, mannerOf(asked.over))
    : byRules[usual](measure, holds.written);
  chosen[usual].set(holds, made);
  return made;
}

const byRules = {
  us: onceAPair((m: AmountMeasure, written: readonly string[]) => formByRules(m, written, 'us')),
  metric: onceAPair((m: AmountMeasure, written: readonly string[]) =>
    formByRules(m, written, 'metric'),
  ),
};

/** In the sides of a rate as they were written; else in a choice of units. */
function formByRules(
  measure: AmountMeasure,
  written: readonly string[],
  usual: 'us' | 'metric',
): ShownForm {
  const sides = askedForm(measure, sidesAsWritten(measure));
  if (sides) return inForm(measure, sides, mannerOf(sides.over));
  const form = new Choice(written, usual).formOf(measure.dimension);
  return inForm(measure, form, mannerByRules(form.over));
}

export function inForm(measure: AmountMeasure, form: Form, manner: Manner): ShownForm {
  return { form, manner, scale: conversion(measure, formMeasure(form)) };
}

/** A form that was asked for, where it measures the same; nouns below the line are never lost. */
function askedForm(measure: AmountMeasure, form: Form | null): Form | null {
  if (!form) return null;
  const asked = formMeasure(form).dimension;
  if (hardPart(asked) !== hardPart(measure.dimension)) return null;
  const counted = asked.nouns.some((n) => n.noun === 'each');
  const missing = measure.dimension.nouns.filter(
    (n) => n.power < 0 && !counted && !asked.nouns.some((a) => a.noun === n.noun),
  );
  return {
    over: form.over.map(inDollars),
    under: [...form.under.map(inDollars), ...missing.flatMap((n) => nounTerms(n.noun, -n.power))],
  };
}

/** Cents are a way to write money, not to show it. */
function inDollars(term: Term): Term {
  return term.kind === 'unit' && term.unit.key === 'cent' ? unitTerm(unitByKey('$')) : term;
}

/** The two sides of a rate, where each is one unit or noun. */
function sidesAsWritten({ rate }: AmountMeasure): Form | null {
  const over = rate && sideTerm(rate.over);
  const under = rate && sideTerm(rate.under);
  return over && under ? { over: [over], under: [under] } : null;
}

function sideTerm(side: AmountMeasure): Term | null {
  const unit = unitOf(side.dimension, side.scale);
  if (unit) return unitTerm(unit);
  const [noun] = side.dimension.nouns;
  if (!noun || side.dimension !== countOf(noun.noun)) return null;
  return nounTerm(noun.noun, side.scale.equals(1) ? null : side.scale.toString());
}

function mannerOf(over: readonly Term[]): Manner {
  const [term] = over;
  if (over.length !== 1 || term?.kind !== 'unit') return 'decimal';
  return term.unit.key === '$' ? 'money' : term.unit.key === 'in' ? 'inches' : 'decimal';
}

/** Unasked, lengths are shown as on a tape and hours as on a clock. */
function mannerByRules(over: readonly Term[]): Manner {
  const [term] = over;
  if (over.length !== 1 || term?.kind !== 'unit') return 'decimal';
  if (term.unit.key === 'hour') return 'clock';
  return term.unit.key === 'ft' ? 'tape' : mannerOf(over);
}

/** The choice of units by what was written among the givens. */
class Choice {
  readonly #written: readonly Unit[];
  readonly #measures: 'us' | 'metric';

  constructor(written: readonly string[], usual: 'us' | 'metric') {
    this.#written = written.map(unitByKey);
    const systems = new Set(this.#written.map((u) => u.measures).filter((m) => m !== 'both'));
    const [only = usual] = systems;
    this.#measures = systems.size === 1 ? only : usual;
  }

  /** The one unit of this dimension that was written, if it is the only one. Lengths and money have rules of their own. */
  soleUnit(measured: Dimension): Unit | null {
    if (measured === LENGTH) return null;
    const [unit, ...more] = this.#written.filter((u) => u.dimension === measured);
    return unit && unit.key !== 'cent' && more.length === 0 ? unit : null;
  }

  formOf(whole: Dimension): Form {
    const sole = this.soleUnit(whole);
    if (sole) return { over: [unitTerm(sole)], under: [] };
    const measured = withoutNounsAbove(whole);
    const hard = this.soleUnit(hardPart(measured));
    const over = hard ? [unitTerm(hard)] : this.#hardTerms(measured, 1);
    const under = hard ? [] : this.#hardTerms(measured, -1);
    return {
      over: [...over, ...nounsOn(measured, 1)],
      under: [...under, ...nounsOn(measured, -1)],
    };
  }

  /** Units for the hard powers on one side of the line. */
  #hardTerms(measured: Dimension, side: 1 | -1): readonly Term[] {
    const money = Math.max(0, measured.money * side);
    const terms = Array.from({ length: money }, () => unitByKey('$'));
    if (measured.mass * side > 0)
      terms.push(...repeated(this.#unitFor(MASS), measured.mass * side));
    terms.push(...this.#lengthUnits(measured.length * side, side));
    if (measured.time * side > 0)
      terms.push(...repeated(this.#unitFor(TIME), measured.time * side));
    return terms.map(unitTerm);
  }

  #lengthUnits(power: number, side: 1 | -1): readonly Unit[] {
    if (power <= 0) return [];
    if (power > 3) return [this.#unitFor(VOLUME), ...this.#lengthUnits(power - 3, side)];
    if (power > 1) return [this.#unitFor(dimension({ length: power }))];
    return [side === 1 ? this.#lengthOver() : this.#lengthUnder()];
  }

  #lengthOver(): Unit {
    const lengths = this.#written.filter((u) => u.dimension === LENGTH);
    if (this.#measures === 'metric') {
      const [unit, ...more] = lengths.filter((u) => u.measures === 'metric');
      return unit && more.length === 0 ? unit : unitByKey('mm');
    }
    // All in inches, or all on the road, is shown so; anything else in feet.
    const alone = ['in', 'mi'].find(
      (key) => lengths.length > 0 && lengths.every((u) => u.key === key),
    );
    return unitByKey(alone ?? 'ft');
  }

  #lengthUnder(): Unit {
    const [unit, ...more] = this.#written.filter((u) => u.dimension === LENGTH);
    return unit && more.length === 0 ? unit : unitByKey(this.#measures === 'metric' ? 'm' : 'ft');
  }

  #unitFor(measured: Dimension): Unit {
    const usual = USUAL[this.#measures].find((u) => u.dimension === measured);
    const unit = this.soleUnit(measured) ?? usual;
    if (!unit) throw new Error(`no unit is usual for ${measured.key}`);
    return unit;
  }
}

const USUAL = {
  us: ['sq ft', 'cubic ft', 'lb', 'hour'].map(unitByKey),
  metric: ['sq m', 'cubic m', 'kg', 'hour'].map(unitByKey),
} as const;

function repeated(unit: Unit, times: number): readonly Unit[] {
  return Array.from({ length: times }, () => unit);
}

function nounsOn(measured: Dimension, side: 1 | -1): readonly Term[] {
  return measured.nouns.flatMap((n) => nounTerms(n.noun, Math.max(0, n.power * side)));
}

function nounTerms(noun: string, times: number): readonly Term[] {
  return Array.from({ length: times }, () => nounTerm(noun, null));
}

function nounTerm(noun: string, count: string | null): Term {
  return { kind: 'noun', noun, count };
}

function unitTerm(unit: Unit): Term {
  return { kind: 'unit', unit, count: null };
}
