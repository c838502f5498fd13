// Written amounts: a number with its unit or noun. They bind tightest of all.
import type { Reader } from './reader.ts';
import { expectNumber, seesNumberWord } from './numbers.ts';
import type { Amount, Formula } from './tree.ts';
import { finish, isLength, plain, unitTerm } from './amounts-held.ts';
import { goesOnWithLabel, labelAt, skipThing, skipThingAtEnd, takeLabel } from './length-labels.ts';
import { cutFrom } from './stock.ts';
import { money, share } from './money-and-shares.ts';
import { withTails } from './rates.ts';
import { unitByKey } from '../quantity/units.ts';
import { compound, feetMark } from './feet-and-inches.ts';
import { TIME } from '../quantity/dimension.ts';
import { clock } from './clock-hours.ts';
import { maybeSlope, ratio } from './slopes.ts';
import { endsValue } from './unknown-words.ts';
import { sortBefore } from './asides.ts';
import type { Term } from '../quantity/form.ts';
import { NUMBER, OPEN } from '../quantity/measure.ts';

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
    if (crossesLength(r, before)) skipThingAtEnd(r);
    const noun = r.vocabulary.nounAt(r.tokens, r.at);
    if (noun && isOneThing(r, noun)) r.take(noun.length, 'unread');
    else if (noun && !goesOnWithLabel(r) && !r.seesAt(noun.length, 'every') && cutFrom(r, 0) === 0)
      return refuseNounAfterUnit(r, before, amount, noun);
    return joinedByX(r, amount, from, DIVIDES.has(r.tokens[before - 1]?.text ?? ''));
  }
  return amount;
}

/** `30 in wall`, `10 1/4 in tread`: in the singular it is the one thing that is so long; a count of them would say walls. */
function isOneThing(r: Reader, noun: { readonly length: number; readonly noun: string }): boolean {
  const said = r.tokens.slice(r.at, r.at + noun.length).map(({ text }) => text);
  if (said.join(' ') !== noun.noun || r.vocabulary.nouns.many(noun.noun) === noun.noun)
    return false;
  const next = r.peek(noun.length);
  return (
    next.kind === 'end' || (endsValue(r, noun.length) && !/^(every|of|from|at|@)$/.test(next.text))
  );
}

/** `slab length x slab width x 4" stone`: after a side that is no bare number the thing is what the product is of. */
function crossesLength(r: Reader, start: number): boolean {
  const [x, side] = [r.tokens[start - 1]?.text, r.tokens[start - 2]];
  return (x === 'x' || x === '×' || x === 'by') && side !== undefined && side.kind !== 'number';
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
  // `6 no. holes`
  if (/^(no|nr)$/.test(r.token.text) && r.vocabulary.nounAt(r.tokens, r.at + 1 + sortBefore(r, 1)))
    r.at++;
  const unit = r.vocabulary.unitAt(r.tokens, r.at);
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  if (unit && unit.length >= (noun?.length ?? 0) && !packsFollow(r)) {
    r.at += unit.length;
    return compound(r, number, unit.unit, from, start);
  }
  if (noun) {
    const head = headNoun(r, noun);
    r.at += head.length;
    return withTails(
      r,
      number,
      [{ kind: 'noun', noun: head.noun, count: null }],
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

/** `6 gate posts`, `2 end joists`: the last of the two is what is counted. What holds things comes first: `3 boxes screws`. */
function headNoun(
  r: Reader,
  first: { readonly length: number; readonly noun: string },
): { readonly length: number; readonly noun: string } {
  if (!SORTING.has(first.noun) || r.nameAt(first.length)) return first;
  const head = r.vocabulary.nounAt(r.tokens, r.at + first.length);
  if (!head || r.tokens[r.at]?.text !== first.noun) return first;
  return { length: first.length + head.length, noun: head.noun };
}

/** Things that often say which sort another one is. */
const SORTING: ReadonlySet<string> = new Set(
  `gate end corner fence deck wall joist stair step post rail roof door window floor edge beam brick
   block footing landing line header rafter room board panel lattice`.split(/\s+/),
);

/** `1,260 in boxes of 350`: this `in` is no inch. */
function packsFollow(r: Reader): boolean {
  if (!r.sees('in')) return false;
  const noun = r.vocabulary.nounAt(r.tokens, r.at + 1);
  return noun !== null && r.seesAt(1 + noun.length, 'of');
}

/** After these only `x` joins two lengths: with a sign it asks. */
const DIVIDES: ReadonlySet<string> = new Set(['/', '÷', 'over', 'by', 'into']);

/** `24' x 20' x 4 in`: lengths joined into one area or volume. */
function joinedByX(r: Reader, first: Formula, from: number, isDivisor: boolean): Formula {
  let left = first;
  while (
    (r.sees('x') || (r.sees('×') && !isDivisor)) &&
    (r.peek(1).kind === 'number' || r.peek(1).text === '?')
  ) {
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
