// A written amount said back in tidy words.
import type { Form, Term } from '../quantity/form.ts';
import { MONEY } from '../quantity/dimension.ts';
import type { Reader, WrittenIn } from './reader.ts';
import { Fraction } from '../quantity/measure.ts';
import type { WrittenNumber } from './numbers.ts';
import { grouped } from '../quantity/number-text.ts';

function isMoney(over: readonly Term[]): boolean {
  return over.some((t) => t.kind === 'unit' && t.unit.dimension === MONEY);
}

/** A number in words as one would write it so. */
export function sayAs(r: Reader, say: string, as: WrittenIn | null): string {
  if (as === null) return say;
  return as.kind === 'share'
    ? `${say}%`
    : saidIn(r, { value: new Fraction(say.replaceAll(',', '')), say, whole: false }, as.form);
}

export function saidIn(r: Reader, number: WrittenNumber, form: Form): string {
  const [over] = form.over;
  const [under] = form.under;
  const key = over?.kind === 'unit' ? over.unit.key : null;
  const isSlope = key === 'in' && under?.kind === 'unit' && under.unit.key === 'in';
  if (isSlope && under.count !== null) return `${number.say} in ${under.count}`;
  const start =
    key === '$'
      ? `${r.vocabulary.sign}${number.say}`
      : key === 'cent'
        ? `${number.say} ${number.value?.equals(1) ? 'cent' : 'cents'}`
        : sayOver(r, number, form);
  return start + sayUnder(r, form);
}

export function sayOver(r: Reader, number: WrittenNumber, form: Form): string {
  const term = form.over[0];
  if (!term) return number.say;
  // 1/4 cubic yard, but 0.25 cubic yards.
  const one =
    number.value !== null &&
    (number.value.equals(1) || /^\d+\/\d+$|^[½⅓⅔¼¾⅛⅜⅝⅞]$/.test(number.say));
  return `${number.say} ${sayTerm(r, term, one)}`;
}

export function sayUnder(r: Reader, form: Form): string {
  return form.under
    .map((term) => {
      if (term.kind === 'noun' && term.noun === 'each') return ' each';
      if (isMoney([term])) return ` per ${r.vocabulary.sign}${grouped(term.count ?? '1')}`;
      return ` per ${term.count ? term.count + ' ' : ''}${sayTerm(r, term, term.count === null)}`;
    })
    .join('');
}

function sayTerm(r: Reader, term: Term, one: boolean): string {
  if (term.kind === 'noun') return one ? term.noun : r.vocabulary.nouns.many(term.noun);
  return one ? term.unit.one : term.unit.many;
}
