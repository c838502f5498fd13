// An amount written in a form, for notes and fixes: `40 bags`, `$0.50 per bag`.
import { formOf, underText } from '../../quantity/amount.ts';
import type { Form } from '../../quantity/form.ts';
import type { Nouns } from '../../quantity/nouns.ts';
import type { Unit } from '../../quantity/units.ts';

/** One unit and nothing else. */
export function unitForm(unit: Unit): Form {
  return formOf([unit]);
}

/** One noun and nothing else. */
export function nounForm(noun: string): Form {
  return formOf([noun]);
}

/** A number as typed, in a form. */
export function writtenIn(number: string, form: Form, nouns: Nouns): string {
  return overText(number, form, nouns) + underText(form, nouns);
}

function overText(number: string, form: Form, nouns: Nouns): string {
  const [first, ...rest] = form.over;
  const signed = /^[-−]/.test(number);
  if (!first) return number;
  if (first.kind === 'unit' && first.unit.key === '$') {
    return signed ? `−$${number.slice(1).trim()}` : `$${number}`;
  }
  // `1 bag`, `1/2 bag`, but `0.5 bags`.
  const one = /^[-−]?(1|\d+\/\d+)$/.test(number);
  const words = [first, ...rest].map((term, i) => {
    const single = one && i === 0;
    if (term.kind === 'unit') return single ? term.unit.one : term.unit.many;
    return single ? term.noun : nouns.many(term.noun);
  });
  return `${number} ${words.join(' ')}`;
}
