// Written amounts: a number with its unit or noun, money, a share, a rate. They bind tightest of all.
import { heldAmount } from '../quantity/amount.ts';
import { type Form, type Holds, NONE_WRITTEN, type Term, withUnit } from '../quantity/form.ts';
import { Fraction, NUMBER, ONE, OPEN, SHARE } from '../quantity/measure.ts';
import { LENGTH, MONEY, TIME } from '../quantity/dimension.ts';
import { grouped } from '../quantity/number-text.ts';
import { type Unit, unitByKey } from '../quantity/units.ts';
import { isUnknown, sortBefore } from './asides.ts';
import {
  type WrittenNumber,
  expectDecimal,
  expectNumber,
  isNumberWord,
  seesNumberWord,
} from './numbers.ts';
import { goesOnWithLabel, labelAt, skipThing, takeLabel } from './outlines.ts';
import { cutFrom } from './phrases.ts';
import type { Fix } from '../words/report.ts';
import { LEAVE_OPEN } from './problems.ts';
import type { Reader, WrittenIn } from './reader.ts';
import type { Amount, Formula } from './tree.ts';
import { SHARE_LABELS } from './words.ts';

/** May an amount begin here? (A sign is read elsewhere.) */
export function seesAmount(r: Reader): boolean {
  return r.token.kind === 'number' || r.sees(r.vocabulary.sign) || r.sees('?') || seesNumberWord(r);
}

/** An amount where a value is needed: also joins `24' x 20'`, and refuses a noun left over after a unit. */
export function expectAmount(r: Reader): Formula {
  const from = r.token.from;
  const before = r.at;
  const amount = writtenAmount(r);
  if (r.problem) return amount;
  // `7 3/4 in max`, `3 in deep`: said for the reader.
  if (MOST_OR_LEAST.has(r.token.text) && r.token.kind === 'word') r.take(1, 'unread');
  if (amount.kind === 'amount' && isLength(amount.holds)) {
    const labelled = labelAt(r, 0) > 0;
    takeLabel(r);
    if (labelled) skipThing(r);
    const noun = r.vocabulary.nounAt(r.tokens, r.at);
    if (noun && !goesOnWithLabel(r) && !r.seesAt(noun.length, 'every') && cutFrom(r, 0) === 0)
      return refuseNounAfterUnit(r, before, amount, noun);
    return joinedByX(r, amount, from);
  }
  return amount;
}

const MOST_OR_LEAST: ReadonlySet<string> = new Set(['max', 'min', 'maximum', 'minimum']);

/** One written amount and no more: what packs and stock lengths are made of. */
export function writtenAmount(r: Reader): Formula {
  const from = r.token.from;
  const start = r.at;
  r.writtenIn = null;
  if (r.maybeMark(r.vocabulary.sign)) return money(r, from, start);
  const number = expectNumber(r);
  if (!number) return { kind: 'hole', spot: r.since(from) };
  if (r.sees('%') || r.sees('percent')) return share(r, number, from, start);
  if (r.sees('cents') || r.sees('cent') || r.sees('¢')) {
    r.at++;
    const say = `${number.say} ${number.value?.equals(1) ? 'cent' : 'cents'}`;
    return withTails(r, number, [unitTerm(unitByKey('cent'))], say, from, start);
  }
  if (r.sees("'")) return feetMark(r, number, from, start);
  if (r.sees('"')) {
    r.at++;
    return withTails(r, number, [unitTerm(unitByKey('in'))], `${number.say} in`, from, start);
  }
  if (r.sees('#')) {
    r.at++;
    return withTails(r, number, [unitTerm(unitByKey('lb'))], null, from, start);
  }
  if (r.sees(':') && !r.token.gap && r.peek(1).kind === 'number') {
    const unit = r.vocabulary.unitAt(r.tokens, r.at + 2);
    const isTime = unit?.unit.dimension === TIME;
    return isTime ? clock(r, number, from, start) : ratio(r, number, from, start);
  }
  if (r.sees('in') && r.peek(1).kind === 'number') {
    const slope = maybeSlope(r, number, from, start);
    if (slope) return slope;
  }
  const unit = r.vocabulary.unitAt(r.tokens, r.at);
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  if (unit && unit.length >= (noun?.length ?? 0) && !packsFollow(r)) {
    r.at += unit.length;
    return compound(r, number, unit.unit, from, start);
  }
  if (noun) {
    r.at += noun.length;
    return withTails(
      r,
      number,
      [{ kind: 'noun', noun: noun.noun, count: null }],
      null,
      from,
      start,
    );
  }
  const sort = sortBefore(r, 0);
  const sorted = sort > 0 ? r.vocabulary.nounAt(r.tokens, r.at + sort) : null;
  if (sorted) {
    // `8 barrow loads`
    r.at += sort + sorted.length;
    const term: Term = { kind: 'noun', noun: sorted.noun, count: null };
    return withTails(r, number, [term], null, from, start);
  }
  if (number.value === null) {
    return finish(
      r,
      { value: null, holds: plain(OPEN), bare: false, label: null, say: '?' },
      from,
      start,
    );
  }
  return finish(
    r,
    { value: number.value, holds: plain(NUMBER), bare: true, label: null, say: number.say },
    from,
    start,
  );
}

/** `1,260 in boxes of 350`: this `in` is no inch. */
function packsFollow(r: Reader): boolean {
  if (!r.sees('in')) return false;
  const noun = r.vocabulary.nounAt(r.tokens, r.at + 1);
  return noun !== null && r.seesAt(1 + noun.length, 'of');
}

function money(r: Reader, from: number, start: number): Formula {
  const sign = r.sees('-') && !r.token.gap;
  if (sign) r.at++;
  if (r.token.kind !== 'number' && !r.sees('?')) {
    const spot = r.since(from);
    return r.fail({
      code: 'missing-value',
      spots: [spot],
      after: r.vocabulary.sign,
      fixes: [r.fix(LEAVE_OPEN, spot, `${r.vocabulary.sign}?`)],
    });
  }
  // `$100/4 hours` is a rate: the slash belongs to the hours, not to a fraction.
  const rate = r.seesAt(1, '/') && !r.peek(1).gap && termAfter(r, 2);
  const number = rate ? expectDecimal(r) : expectNumber(r);
  if (!number) return { kind: 'hole', spot: r.since(from) };
  const signed = sign && number.value ? { ...number, value: number.value.neg() } : number;
  const say = `${sign ? '−' : ''}${r.vocabulary.sign}${number.say}`;
  return withTails(r, signed, [unitTerm(unitByKey('$'))], say, from, start);
}

function share(r: Reader, number: WrittenNumber, from: number, start: number): Formula {
  r.at++;
  let label: string | null = null;
  if (SHARE_SORTS.has(r.token.text) && SHARE_LABELS.has(r.peek(1).text)) {
    label = `${r.token.text} ${r.peek(1).text}`;
    r.at += 2;
  } else if (/^[A-Z]{2,4}$/.test(r.slice(r.token)) && isUnknown(r, 0)) {
    // A tax by its letters, wherever that is.
    label = r.slice(r.token);
    r.at++;
  } else if (SHARE_LABELS.has(r.token.text) && r.token.kind === 'word') {
    label = TAXES.has(r.token.text) ? r.token.text.toUpperCase() : r.token.text;
    r.at++;
  } else if (r.sees('for')) {
    // `plus 10% for waste`: the word says what the percent is for, even beside a cell of that name.
    const ahead = SHARE_LABELS.has(r.peek(1).text) ? 1 : SHARE_LABELS.has(r.peek(2).text) ? 2 : 0;
    const word = r.peek(ahead);
    if (ahead > 0 && r.peek(1).kind === 'word' && word.kind === 'word') {
      label = word.text;
      r.at += ahead + 1;
    }
  }
  r.writtenIn = WRITTEN_IN_PERCENT;
  const say = `${number.say}%${label ? ' ' + label : ''}`;
  const value = number.value ? number.value.div(100) : null;
  return finish(r, { value, holds: plain(SHARE), bare: false, label, say }, from, start);
}

/** `sales tax`, `payroll burden`: which tax or burden it is. */
const SHARE_SORTS: ReadonlySet<string> = new Set(
  'sales payroll labour labor service land property'.split(' '),
);

const TAXES: ReadonlySet<string> = new Set(['vat', 'gst', 'hst', 'pst']);

const WRITTEN_IN_PERCENT: WrittenIn = { kind: 'share' };

/** `12'`, `12' 6-1/2"`, `12'-6 1/2"`, `11'9`; a spaced hyphen could be a minus and is refused. */
function feetMark(r: Reader, feet: WrittenNumber, from: number, start: number): Formula {
  r.at++;
  const hyphen = r.sees('-') ? 1 : 0;
  const next = r.peek(hyphen);
  if (next.kind === 'number' && feet.whole) {
    const tight = hyphen === 1 ? !r.token.gap && !next.gap : !next.gap;
    const before = r.at;
    r.at += hyphen;
    const inches = expectNumber(r);
    if (!inches) return { kind: 'hole', spot: r.since(from) };
    const marked = r.sees('"') || r.sees('in') || r.sees('inches') || r.sees('inch');
    if (marked && hyphen === 1 && !tight) {
      r.at++;
      return refuseSpacedHyphen(r, feet, inches, from);
    }
    // `12'-16'` are two lengths.
    if (marked || (tight && !r.sees("'"))) {
      if (marked) r.at++;
      return feetAndInches(r, feet, inches, from, start);
    }
    r.at = before;
  }
  return withTails(r, feet, [unitTerm(unitByKey('ft'))], `${feet.say} ft`, from, start);
}

const FEET_WRITTEN = withUnit(NONE_WRITTEN, unitByKey('ft'));

function feetAndInches(
  r: Reader,
  feet: WrittenNumber,
  inches: WrittenNumber,
  from: number,
  start: number,
): Formula {
  const value = feet.value && inches.value ? feet.value.mul(12).add(inches.value) : null;
  const say = `${feet.say} ft ${inches.say} in`;
  const number = { value, say, whole: false };
  return withTails(r, number, [unitTerm(unitByKey('in'))], say, from, start, FEET_WRITTEN);
}

function refuseSpacedHyphen(
  r: Reader,
  feet: WrittenNumber,
  inches: WrittenNumber,
  from: number,
): Formula {
  const spot = r.since(from);
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${r.slice(spot)}" could be one length, ${feet.say} ft ${inches.say} in, or ${feet.say} ft less ${inches.say} in. Write the one that is meant.`,
    fixes: [
      r.fix('One length', spot, `${feet.say} ft ${inches.say} in`),
      r.fix('The difference', spot, `${feet.say} ft minus ${inches.say} in`),
    ],
  });
}

/** `8:30 hours`: hours and minutes as a clock shows them. */
function clock(r: Reader, hours: WrittenNumber, from: number, start: number): Formula {
  const minutes = r.peek(1);
  r.at += 2;
  const unit = r.vocabulary.unitAt(r.tokens, r.at);
  const reads = hours.whole && /^[0-5]\d$/.test(minutes.text) && unit?.unit.key === 'hour';
  if (!reads || !unit || !hours.value) {
    const spot = r.since(from);
    return r.fail({
      code: 'odd-number',
      spots: [spot],
      text: r.slice(spot),
      why: 'Hours and minutes are written "8:30 hours", with two digits of minutes under 60.',
      fixes: asHours(r, hours, minutes.text, spot),
    });
  }
  r.at += unit.length;
  const value = hours.value.add(new Fraction(`${minutes.text}/60`));
  const number = { value, say: '', whole: false };
  const say = `${hours.say}:${minutes.text} hours`;
  return withTails(r, number, [unitTerm(unitByKey('hour'))], say, from, start);
}

/** `8:30` without its hours, or `8:75 hours` with minutes that make another hour. */
function asHours(
  r: Reader,
  hours: WrittenNumber,
  minutes: string,
  spot: { from: number; to: number },
): readonly Fix[] {
  if (!hours.whole || !hours.value || !/^\d\d$/.test(minutes)) return [];
  const whole = hours.value.add(Math.floor(Number(minutes) / 60)).toString();
  const said = `${whole}:${String(Number(minutes) % 60).padStart(2, '0')}`;
  const unit = r.vocabulary.unitAt(r.tokens, r.at);
  if (unit) return unit.unit.key === 'hour' ? [r.fix(`Write ${said}`, spot, said)] : [];
  return [r.fix(`Write ${said} hours`, spot, `${said} hours`)];
}

/** `1:80`: a slope of one in eighty. */
function ratio(r: Reader, rise: WrittenNumber, from: number, start: number): Formula {
  r.at++;
  const run = expectNumber(r);
  if (!run) return { kind: 'hole', spot: r.since(from) };
  if (!run.value || !rise.value || run.value.n === 0n) {
    const spot = r.since(from);
    const why = 'A slope is written with two numbers: 1:80, or 1/4 in per ft.';
    return r.fail({ code: 'odd-number', spots: [spot], text: r.slice(spot), why, fixes: [] });
  }
  return slope(r, rise, run, from, start);
}

/** `6 in 12` is a slope: so much rise in so much run. Null where `in` is the inch of the first number. */
function maybeSlope(r: Reader, rise: WrittenNumber, from: number, start: number): Formula | null {
  const before = r.at;
  r.at++;
  const run = expectNumber(r);
  if (!run?.value || !rise.value || run.value.n === 0n) {
    if (!r.problem) r.at = before;
    return null;
  }
  const unit = r.vocabulary.unitAt(r.tokens, r.at);
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  const marked = r.sees("'") || r.sees('"') || r.sees('%');
  if (unit || noun || marked) {
    r.at += unit?.length ?? noun?.length ?? 1;
    const after = unit ? r.vocabulary.nounAt(r.tokens, r.at) : null;
    if (after) r.at += after.length;
    const spot = r.since(from);
    const stock = r.slice(spot).replace(/^.*?\bin\b\s*/, '');
    return r.fail({
      code: 'two-readings',
      spots: [spot],
      about: `"${r.slice(spot)}" could be ${rise.say} inches bought in lengths, or a slope of so much in so much. Write the one that is meant.`,
      fixes: [
        r.fix('Bought in lengths', spot, `${rise.say} in in ${stock}${after ? '' : ' pieces'}`),
        r.fix(
          'A slope',
          spot,
          `${rise.say} in per ${stock.replace(/\s+[a-z]+$/, after ? '' : '$&')}`,
        ),
      ],
    });
  }
  return slope(r, rise, run, from, start);
}

function slope(
  r: Reader,
  rise: WrittenNumber,
  run: WrittenNumber,
  from: number,
  start: number,
): Formula {
  const inch = unitByKey('in');
  const count = decimalText(run.value ?? new Fraction(1));
  const form: Form = {
    over: [unitTerm(inch)],
    under: [{ kind: 'unit', unit: inch, count }],
  };
  return built(r, rise, form, `${rise.say} in ${run.say}`, from, start, NONE_WRITTEN);
}

/** After a unit: a smaller unit of the same dimension goes on with it (`12 ft 6 1/2 in`, `5 h 35 min`). */
function compound(
  r: Reader,
  number: WrittenNumber,
  unit: Unit,
  from: number,
  start: number,
): Formula {
  const hyphen =
    r.sees('-') && !r.token.gap && r.peek(1).kind === 'number' && !r.peek(1).gap ? 1 : 0;
  const and = hyphen === 0 ? andInches(r, unit) : 0;
  const next = r.peek(hyphen + and);
  const goesOn = next.kind === 'number' || (next.kind === 'word' && isNumberWord(next.text));
  if (number.whole && goesOn && number.value) {
    const before = r.at;
    r.at += hyphen + and;
    const more = expectNumber(r);
    if (!more) return { kind: 'hole', spot: r.since(from) };
    const mark = r.sees('"') ? { length: 1, unit: unitByKey('in') } : null;
    const smaller = mark ?? r.vocabulary.unitAt(r.tokens, r.at);
    const minutes = unit.key === 'hour' && !next.gap && !smaller ? unitByKey('min') : null;
    const fits =
      smaller?.unit.dimension === unit.dimension && smaller.unit.scale.compare(unit.scale) < 0;
    if (more.value && ((smaller && fits) || minutes)) {
      const small = minutes ?? smaller?.unit ?? unit;
      if (hyphen === 1 && unit.dimension === LENGTH) {
        r.at += smaller?.length ?? 0;
        return refuseSpacedHyphen(r, number, more, from);
      }
      r.at += minutes ? 0 : (smaller?.length ?? 0);
      const value = number.value.mul(unit.scale).div(small.scale).add(more.value);
      const say = `${number.say} ${unit.key === 'hour' ? 'h' : unit.key} ${more.say} ${small.key}`;
      const also = withUnit(NONE_WRITTEN, unit);
      return withTails(r, { value, say, whole: false }, [unitTerm(small)], say, from, start, also);
    }
    r.at = before;
  }
  return withTails(r, number, [unitTerm(unit)], null, from, start);
}

/** `12 feet and 6 inches`: the `and` between feet and inches under twelve. 0: there is none. */
function andInches(r: Reader, unit: Unit): number {
  if (!r.joinsInches || unit.key !== 'ft' || !r.sees('and') || r.peek(1).kind !== 'number')
    return 0;
  const { text } = r.peek(1);
  if (!/^\d+$/.test(text) || Number(text) > 11) return 0;
  for (let i = 2; i < 6; i++) {
    if (r.vocabulary.unitAt(r.tokens, r.at + i)?.unit.key === 'in' || r.seesAt(i, '"')) return 1;
    if (r.peek(i).kind !== 'number' && r.peek(i).text !== '/') return 0;
  }
  return 0;
}

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
function withTails(
  r: Reader,
  number: WrittenNumber,
  over: readonly Term[],
  say: string | null,
  from: number,
  start: number,
  alsoWritten: readonly string[] = NONE_WRITTEN,
): Formula {
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

/** `1.5 tonnes to the cubic metre`: so much for each. */
function toOne(r: Reader): boolean {
  if (!r.sees('to') || !/^(the|an?|each|every)$/.test(r.peek(1).text)) return false;
  return r.nameAt(1) === null && r.nameAt(2) === null;
}

function isMoney(over: readonly Term[]): boolean {
  return over.some((t) => t.kind === 'unit' && t.unit.dimension === MONEY);
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

function built(
  r: Reader,
  number: WrittenNumber,
  form: Form,
  say: string,
  from: number,
  start: number,
  alsoWritten: readonly string[],
): Amount {
  r.writtenIn = { kind: 'form', form, larger: alsoWritten };
  return finish(r, { ...heldIn(number.value, form, alsoWritten), label: null, say }, from, start);
}

function heldIn(
  number: Fraction | null,
  form: Form,
  alsoWritten: readonly string[],
): Pick<Amount, 'value' | 'holds' | 'bare'> {
  const held = heldAmount(number ?? new Fraction(1), form);
  const holds: Holds = {
    measure: held.measure,
    showIn: form.under.length > 0 ? form : null,
    written: unitsIn(form, alsoWritten),
  };
  return { value: number === null ? null : held.value, holds, bare: false };
}

/** A bare number in the form in which another amount was written: `12` beside `16 hours`. */
export function likeWritten(r: Reader, bare: Amount, as: WrittenIn): Amount {
  const { kind, value, say, spot } = bare;
  if (as.kind === 'share') {
    const share = value && value.div(100);
    const holds = plain(SHARE);
    return { kind, value: share, holds, bare: false, label: null, say: `${say}%`, spot };
  }
  return {
    kind,
    ...heldIn(value, as.form, NONE_WRITTEN),
    label: null,
    say: saidIn(r, { value, say, whole: false }, as.form),
    spot,
  };
}

/** The held number of one in what it was written in: 12 for a foot, 0.01 for a percent. */
export function oneOfThese(as: WrittenIn | null): Fraction {
  if (as === null) return ONE;
  return as.kind === 'share' ? PERCENT : heldAmount(ONE, as.form).value;
}

const PERCENT = new Fraction('1/100');

/** A number in words as one would write it so. */
export function sayAs(r: Reader, say: string, as: WrittenIn | null): string {
  if (as === null) return say;
  return as.kind === 'share'
    ? `${say}%`
    : saidIn(r, { value: new Fraction(say.replaceAll(',', '')), say, whole: false }, as.form);
}

function saidIn(r: Reader, number: WrittenNumber, form: Form): string {
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

function finish(
  r: Reader,
  amount: Omit<Amount, 'kind' | 'spot'>,
  from: number,
  start: number,
): Amount {
  const spot = r.since(from);
  if (r.at > start) r.marks.push({ ...spot, kind: 'amount', cell: null });
  const { value, holds, bare, label, say } = amount;
  return { kind: 'amount', value, holds, bare, label, say, spot };
}

function sayOver(r: Reader, number: WrittenNumber, form: Form): string {
  const term = form.over[0];
  if (!term) return number.say;
  // 1/4 cubic yard, but 0.25 cubic yards.
  const one =
    number.value !== null &&
    (number.value.equals(1) || /^\d+\/\d+$|^[½⅓⅔¼¾⅛⅜⅝⅞]$/.test(number.say));
  return `${number.say} ${sayTerm(r, term, one)}`;
}

function sayUnder(r: Reader, form: Form): string {
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

function unitTerm(unit: Unit): Term {
  return { kind: 'unit', unit, count: null };
}

function unitsIn(form: Form, besides: readonly string[]): readonly string[] {
  let written = besides;
  for (const term of form.over) if (term.kind === 'unit') written = withUnit(written, term.unit);
  for (const term of form.under) if (term.kind === 'unit') written = withUnit(written, term.unit);
  return written;
}

function plain(measure: Holds['measure']): Holds {
  return { measure, showIn: null, written: NONE_WRITTEN };
}

/** Is it a length as written: no rate, no number without a unit? */
export function isWrittenLength(amount: Amount): boolean {
  return isLength(amount.holds);
}

function isLength(holds: Holds): boolean {
  const { measure } = holds;
  return measure.kind === 'amount' && measure.dimension === LENGTH && measure.rate === null;
}

/** `24' x 20' x 4 in`: lengths joined into one area or volume. */
function joinedByX(r: Reader, first: Formula, from: number): Formula {
  let left = first;
  while (r.sees('x') && (r.peek(1).kind === 'number' || r.peek(1).text === '?')) {
    const before = r.at;
    const opSpot = r.take(1, 'operator');
    const right = writtenAmount(r);
    if (right.kind !== 'amount' || !isLength(right.holds)) {
      r.at = before;
      r.marks.length -= 1;
      break;
    }
    const labelled = labelAt(r, 0) > 0;
    takeLabel(r);
    if (labelled) skipThing(r);
    left = { kind: 'binary', op: 'by', opSpot, left, right, spot: r.since(from) };
  }
  return left;
}

/** `16 1/2 in boards`: a length and a noun, with nothing that says how they go together. */
function refuseNounAfterUnit(
  r: Reader,
  start: number,
  amount: Amount,
  noun: { length: number; noun: string },
): Formula {
  r.at += noun.length;
  const spot = r.since(amount.spot.from);
  const many = r.vocabulary.nouns.many(noun.noun);
  const first = r.tokens[start]?.text ?? '1';
  const mixed = /^(\S+) (\d+\/\d+ .*)$/.exec(amount.say);
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: mixed
      ? `"${r.slice(spot)}" could be ${first} ${many} of ${mixed[2]}, or ${many} of ${amount.say}. Write the one that is meant.`
      : `"${r.slice(spot)}" could be a length of ${amount.say}, or a number of ${many}. Write the one that is meant.`,
    fixes: [
      r.fix(
        `A number of ${many}`,
        spot,
        mixed ? `${first} ${many} times ${mixed[2]}` : `${first} ${many}`,
      ),
      r.fix('A length', spot, amount.say),
    ],
  });
}

function decimalText(value: Fraction): string {
  return value.d === 1n ? value.n.toString() : value.toString(20);
}
