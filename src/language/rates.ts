// What makes a rate of an amount: `per bag`, `/cy`, `each`, `an hour`, `to the cubic metre`, and what stands under its line.
import type { Reader } from './reader.ts';
import type { Amount, Formula } from './tree.ts';
import { writtenAmount } from './amounts.ts';
import { sortBefore } from './asides.ts';
import { endsValue } from './unknown-words.ts';
import { MONEY } from '../quantity/dimension.ts';
import { type Form, NONE_WRITTEN, type Term } from '../quantity/form.ts';
import { built, finish, heldIn, oneOfThese } from './amounts-held.ts';
import { sayOver, sayUnder } from './amounts-said.ts';
import { expectNumber, type WrittenNumber } from './numbers.ts';
import { Fraction } from '../quantity/measure.ts';
import { unitByKey } from '../quantity/units.ts';

/** `20' sticks` after a division: so much in each. Null where no noun follows the amount. */
export function maybePerNoun(r: Reader): Amount | null {
  if (r.token.kind !== 'number') return null;
  const { from } = r.token;
  const { at } = r;
  const marks = r.marks.length;
  const amount = writtenAmount(r);
  const sort = sortBefore(r, 0);
  const noun = r.vocabulary.nounAt(r.tokens, r.at + sort);
  const written = r.writtenIn;
  const plainForm = written?.kind === 'form' && written.form.under.length === 0;
  const [over] = plainForm ? written.form.over : [];
  const hard = over?.kind === 'unit' && over.unit.dimension !== MONEY;
  if (r.problem || amount.kind !== 'amount' || !noun || !plainForm || !hard || !amount.value) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  r.at += sort + noun.length;
  const form: Form = {
    over: written.form.over,
    under: [{ kind: 'noun', noun: noun.noun, count: null }],
  };
  const value = amount.value.div(oneOfThese(written));
  r.marks.length = marks;
  r.writtenIn = { kind: 'form', form, larger: written.larger };
  const say = amount.say + sayUnder(r, form);
  return finish(r, { ...heldIn(value, form, written.larger), label: null, say }, from, at);
}

/** `350 per box` beside screws: so many of them in each. Null where no rate stands here. */
export function maybeManyPer(r: Reader, noun: string): Amount | null {
  if (r.token.kind !== 'number' || !r.seesAt(1, 'per')) return null;
  const term = termAfter(r, 2);
  if (!term || (term.term.kind === 'noun' && term.term.noun === noun)) return null;
  const { from } = r.token;
  const start = r.at;
  const number = expectNumber(r);
  if (!number?.value) return null;
  return withNoun(r, number, noun, term, from, start);
}

function withNoun(
  r: Reader,
  number: WrittenNumber,
  noun: string,
  term: { term: Term; length: number },
  from: number,
  start: number,
): Amount {
  r.at = start + term.length;
  const form: Form = { over: [{ kind: 'noun', noun, count: null }], under: [term.term] };
  const say = sayOver(r, number, form) + sayUnder(r, form);
  return built(r, number, form, say, from, start, NONE_WRITTEN);
}

/** `per bag`, `/cy`, `per 1000 sq ft per inch`, `each`: whatever makes a rate of it. */
export function withTails(
  r: Reader,
  number: WrittenNumber,
  over: readonly Term[],
  say: string | null,
  from: number,
  start: number,
  alsoWritten: readonly string[] = NONE_WRITTEN,
): Formula {
  const more = say === null && number.whole ? andFraction(r, 0) : null;
  if (more) {
    r.at += more.words;
    const value = number.value && number.value.add(new Fraction(more.value));
    const mixed = { value, say: `${number.say} ${more.value}`, whole: false };
    return withTails(r, mixed, over, null, from, start, alsoWritten);
  }
  const under: Term[] = [];
  for (;;) {
    // `1 1/2 in each end` is no rate.
    const isEnd = /^(ends?|sides?|edges?)$/.test(r.peek(1).text);
    if (r.sees('ea') || r.sees('apiece') || (r.sees('each') && !isEnd)) {
      r.at++;
      under.push({ kind: 'noun', noun: 'each', count: null });
      continue;
    }
    if (under.length === 0 && (r.sees('a') || r.sees('an'))) {
      // `$50 an hour`, `8 hours a day`
      const term = termAfter(r, 1);
      if (term && !r.seesAt(term.length, 'every')) {
        r.at += term.length;
        under.push(term.term);
        continue;
      }
    }
    const slash = r.sees('/') && !r.token.gap && !r.peek(1).gap;
    if (!slash && !r.sees('per') && !toOne(r)) break;
    const term = termAfter(r, slash || r.sees('per') ? 1 : 2);
    if (!term) break;
    r.at += term.length;
    under.push(term.term);
  }
  const form: Form = { over, under };
  const tidy = (say ?? sayOver(r, number, form)) + sayUnder(r, form);
  return built(r, number, form, tidy, from, start, alsoWritten);
}

/** `an hour and a half`, `2 days and three quarters`: so much more of one, so many tokens ahead. */
export function andFraction(r: Reader, ahead: number): { words: number; value: string } | null {
  if (!r.seesAt(ahead, 'and') || r.nameAt(ahead + 1) || r.nameAt(ahead + 2)) return null;
  const many = r.seesAt(ahead + 1, 'three') || r.seesAt(ahead + 1, 'two');
  const one = r.seesAt(ahead + 1, 'a') || r.seesAt(ahead + 1, 'one');
  const value = (many ? MANY_PARTS : ONE_PART).get(r.peek(ahead + 2).text);
  if (!(one || many) || value === undefined) return null;
  if (many && r.seesAt(ahead + 1, 'two') !== (value === '2/3')) return null;
  // `3 ft and a half of it`, `3 ft and a quarter inch` go on otherwise.
  return endsValue(r, ahead + 3) && !r.seesAt(ahead + 3, 'of') ? { words: 3, value } : null;
}

const ONE_PART: ReadonlyMap<string, string> = new Map([
  ['half', '1/2'],
  ['third', '1/3'],
  ['quarter', '1/4'],
]);

const MANY_PARTS: ReadonlyMap<string, string> = new Map([
  ['quarters', '3/4'],
  ['thirds', '2/3'],
]);

/** `1.5 tonnes to the cubic metre`: so much for each. */
function toOne(r: Reader): boolean {
  if (!r.sees('to') || !/^(the|an?|each|every)$/.test(r.peek(1).text)) return false;
  return r.nameAt(1) === null && r.nameAt(2) === null;
}

/** A unit or noun, perhaps with a number before it, so many tokens ahead. */
export function termAfter(r: Reader, ahead: number): { term: Term; length: number } | null {
  let at = r.at + ahead;
  let count: string | null = null;
  const number = r.tokens[at];
  const thousand = number?.text === 'thousand' || (number && r.slice(number) === 'M');
  if (thousand) {
    const of = r.vocabulary.nounAt(r.tokens, at + 1);
    const term: Term = { kind: 'noun', noun: of?.noun ?? 'each', count: '1000' };
    return { term, length: at + 1 + (of?.length ?? 0) - r.at };
  }
  if (number?.text === r.vocabulary.sign) return moneyTerm(r, at);
  if (number?.kind === 'number' && /^[\d,.]+$/.test(number.text)) {
    count = number.text.replaceAll(',', '');
    if (/^0*\.?0*$/.test(count)) return null;
    at++;
  } else if (number?.text === 'a' || number?.text === 'an') at++;
  const unit = r.vocabulary.unitAt(r.tokens, at);
  const noun = r.vocabulary.nounAt(r.tokens, at);
  if (unit && unit.length >= (noun?.length ?? 0)) {
    return { term: { kind: 'unit', unit: unit.unit, count }, length: at + unit.length - r.at };
  }
  if (noun) {
    return { term: { kind: 'noun', noun: noun.noun, count }, length: at + noun.length - r.at };
  }
  return null;
}

/** `$12 per $1,000`: so much for so much of the value. */
function moneyTerm(r: Reader, at: number): { term: Term; length: number } | null {
  const of = r.tokens[at + 1];
  if (of?.kind !== 'number' || of.gap || !/^[\d,.]+$/.test(of.text)) return null;
  const count = of.text.replaceAll(',', '');
  if (/^0*\.?0*$/.test(count)) return null;
  return { term: { kind: 'unit', unit: unitByKey('$'), count }, length: at + 2 - r.at };
}
