// Amounts for the tests of this floor, as a formula would hold them.
import { formMeasure, formOf, heldAmount } from '../../src/quantity/amount.ts';
import { type Dec, fromFraction } from '../../src/quantity/decimal.ts';
import { type Form, type Holds, writtenUnits } from '../../src/quantity/form.ts';
import { Fraction } from '../../src/quantity/measure.ts';
import { Nouns } from '../../src/quantity/nouns.ts';
import { type Shown, type ShowSettings, otherNotation, show } from '../../src/quantity/show.ts';
import { unitPhrases } from '../../src/quantity/units.ts';

export const nouns = new Nouns();

export const settings: ShowSettings = {
  currency: '$',
  fractions: 16,
  measures: 'us',
  many: (noun) => nouns.many(noun),
};

/** `$ per bag`, `cubic yards per 1000 sq ft per in`: a form from its words. */
export function form(words: string): Form {
  const [over = '', ...under] = words.split(' per ');
  return {
    over: over === '' ? [] : formOf([known(over)]).over,
    under: under.flatMap((text) => {
      const [, count, word = ''] = /^(?:([\d.]+) )?(.+)$/.exec(text) ?? [];
      return formOf([], [known(word)]).under.map((term) => ({ ...term, count: count ?? null }));
    }),
  };
}

function known(word: string) {
  if (word === 'each') return word;
  const found = unitPhrases.get(word) ?? nouns.phrases.get(word);
  if (found === undefined) throw new Error(`no unit and no noun: ${word}`);
  return found;
}

export interface Given {
  readonly value: Dec;
  readonly holds: Holds;
}

/** A written amount: `number` may be a fraction. A rate shows as it is written. */
export function given(number: string, words: string, alsoWritten: readonly string[] = []): Given {
  const written = form(words);
  const held = heldAmount(new Fraction(number), written);
  const keys = [...written.over, ...written.under].flatMap((term) =>
    term.kind === 'unit' && term.unit.dimension.money === 0 ? [term.unit.key] : [],
  );
  return {
    value: fromFraction(held.value),
    holds: {
      measure: held.measure,
      showIn: written.under.length > 0 ? written : null,
      written: writtenUnits(keys, alsoWritten),
    },
  };
}

/** A result that measures what `words` say, held as 1 of them, resting on amounts written in these units. */
export function result(number: string, words: string, written: readonly string[]): Given {
  const measure = { ...formMeasure(form(words)) };
  return {
    value: fromFraction(new Fraction(number)),
    holds: { measure: { ...measure, rate: null }, showIn: null, written: writtenUnits(written) },
  };
}

export function shown({ value, holds }: Given, other: Partial<ShowSettings> = {}): Shown {
  return show(value, holds, { ...settings, ...other });
}

/** As it reads after `in …`. */
export function shownIn(words: string, { value, holds }: Given): Shown {
  return show(value, { ...holds, showIn: form(words) }, settings);
}

export function echo({ value, holds }: Given): string | null {
  return otherNotation(value, holds, settings);
}
