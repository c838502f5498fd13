// A range made of the amounts that were found: bare numbers take the unit of the others, and it is settled which
// end is best. What could be something else asks.
import { formKey } from '../quantity/amount.ts';
import { Fraction } from '../quantity/measure.ts';
import { grouped } from '../quantity/number-text.ts';
import { likeWritten, oneOfThese } from './amounts-held.ts';
import { sayAs } from './amounts-said.ts';
import { type Signed, isMoreInATime, standing, valueOf, wordsOf } from './range-ends.ts';
import type { Reader, WrittenIn } from './reader.ts';
import type { Amount, Formula, Hole, Negative, Range } from './tree.ts';

export type End = 'best' | 'worst';

/** One of the amounts of a range: as written, and in what. */
export interface Item {
  readonly amount: Amount;
  readonly negative: Negative | null;
  readonly writtenIn: WrittenIn | null;
  readonly end: End | null;
}

/** How the two ends of a range without words are joined: `12 to 16`, `12–16`; `unsure` could be a minus. */
export type Joint = 'to' | 'tight' | 'unsure';

export interface Found {
  readonly from: number;
  readonly to: number;
  readonly items: readonly Item[];
  /** Between two amounts that say of neither which is best; null where words say it. */
  readonly joint: Joint | null;
}

/** An item whose unit is settled. */
interface Settled {
  readonly amount: Signed;
  readonly as: WrittenIn | null;
  readonly end: End | null;
}

/** The range; a hole where it is half a one or could be something else; null where it is none. */
export function asRange(r: Reader, found: Found, place: 'alone' | 'inside'): Formula | null {
  const { items, joint } = found;
  const spot = { from: found.from, to: found.to };
  if (joint === null && !isWhole(items)) return halfARange(r, items, spot);
  const like = usualFor(items);
  const bare = items.find((one) => one.amount.bare);
  if (bare && like?.kind === 'form' && like.larger.length > 0) return askUnit(r, bare.amount, like);
  const settled = items.map((one) => settle(r, one, like));
  if (joint === null) return inWords(r, settled, spot);
  const range = withoutWords(r, settled, spot, joint);
  if (!range || joint === 'to' || place === 'inside') return range;
  const order = standing(settled[0]?.amount, settled[1]?.amount) ?? 0;
  // A minus here would leave less than nothing; the other way round it would not.
  if (joint === 'tight' && order < 0) return range;
  if (joint === 'unsure' && order >= 0) return null;
  return inDoubt(r, settled, range, like);
}

/** In what bare numbers are taken to be written: as the first that says it, a rate before what it is a rate of. */
function usualFor(items: readonly Item[]): WrittenIn | null {
  const said = items.flatMap((one) => one.writtenIn ?? []);
  return said.find((as) => as.kind === 'form' && as.form.under.length > 0) ?? said[0] ?? null;
}

function isWhole(items: readonly Item[]): boolean {
  const count = (end: End | null): number => items.filter((one) => one.end === end).length;
  return count('best') === 1 && count('worst') === 1 && count(null) <= 1;
}

function settle(
  r: Reader,
  { amount, negative, writtenIn, end }: Item,
  like: WrittenIn | null,
): Settled {
  const short = writtenIn && like ? withoutItsRate(amount, writtenIn, like) : null;
  const bare = amount.bare ? amount : short;
  const full = bare && like ? likeWritten(r, bare, like) : amount;
  const as = bare ? like : writtenIn;
  return { amount: negative ? { ...negative, of: full } : full, as, end };
}

/** `$50` in `$50 to $60 per hour`: a bare number of what the others say in full; null where it says all. */
function withoutItsRate(amount: Amount, as: WrittenIn, like: WrittenIn): Amount | null {
  if (as.kind !== 'form' || like.kind !== 'form' || as.form.under.length > 0) return null;
  if (like.form.under.length === 0 || as.larger.length > 0 || !amount.value) return null;
  if (formKey(as.form) !== formKey({ ...like.form, under: [] })) return null;
  const value = amount.value.div(oneOfThese(as));
  return {
    ...amount,
    value,
    say: /[\d½⅓⅔¼¾⅛⅜⅝⅞][\d,./ ½⅓⅔¼¾⅛⅜⅝⅞]*/.exec(amount.say)?.[0].trim() ?? '',
  };
}

function inWords(r: Reader, settled: readonly Settled[], spot: Range['spot']): Range | null {
  const at = (end: End | null): Settled | null => settled.find((one) => one.end === end) ?? null;
  const [best, worst] = [at('best'), at('worst')];
  return best && worst ? ranging(r, at(null), best, worst, spot) : null;
}

/** The lesser is best, but for a rate of work in a time: there it is more. */
function withoutWords(
  r: Reader,
  settled: readonly Settled[],
  spot: Range['spot'],
  joint: Joint,
): Range | null {
  const [a, b] = settled.slice(-2);
  if (!a || !b) return null;
  const order = standing(a.amount, b.amount);
  // Unlike things are refused in checking, where `to` says that a range is meant; a dash may be a minus.
  if (order === null && joint !== 'to') return null;
  const [low, high] = (order ?? 0) <= 0 ? [a, b] : [b, a];
  const more = low.as?.kind === 'form' && isMoreInATime(low.as.form);
  const first = settled.length === 3 ? (settled[0] ?? null) : null;
  return more ? ranging(r, first, high, low, spot) : ranging(r, first, low, high, spot);
}

function ranging(
  r: Reader,
  first: Settled | null,
  best: Settled,
  worst: Settled,
  spot: Range['spot'],
): Range {
  return {
    kind: 'range',
    first: first?.amount ?? null,
    best: best.amount,
    worst: worst.amount,
    plain: first ? wordsOf(first.amount) : middleSaid(r, best, worst),
    spot,
  };
}

/** The middle as one amount, where it can be written in full. */
function middleSaid(r: Reader, a: Settled, b: Settled): string {
  const [one, other] = [valueOf(a.amount), valueOf(b.amount)];
  if (one && other && sameAs(a.as, b.as)) {
    const middle = one.add(other).div(2).div(oneOfThese(a.as));
    const digits = middle.abs().toString(20);
    if (!digits.includes('(') && new Fraction(digits).equals(middle.abs())) {
      return `${middle.s < 0n ? '−' : ''}${sayAs(r, grouped(digits), a.as)}`;
    }
  }
  return `average of ${wordsOf(a.amount)} and ${wordsOf(b.amount)}`;
}

/** Are both written in one and the same unit, with no larger one before it? */
function sameAs(a: WrittenIn | null, b: WrittenIn | null): boolean {
  if (a?.kind !== 'form' || b?.kind !== 'form') return a?.kind === b?.kind;
  const plain = a.larger.length === 0 && b.larger.length === 0;
  return plain && formKey(a.form) === formKey(b.form);
}

function halfARange(r: Reader, items: readonly Item[], spot: Range['spot']): Hole | null {
  const [says] = items.flatMap((one) => one.end ?? []);
  // With a cell of that name it may be a price: `13 hours at best`.
  if (!says || r.tokens.some(({ text }, at) => text === says && isNamed(r, at))) return null;
  const first = items.find((one) => one.end === null) ?? items[0];
  const kept = first ? r.slice((first.negative ?? first.amount).spot) : '';
  return r.fail({
    code: 'half-a-range',
    spots: [spot],
    says,
    lacks: says === 'best' ? 'worst' : 'best',
    fixes: kept === '' ? [] : [r.fix(`Only ${kept}`, spot, kept)],
  });
}

function isNamed(r: Reader, at: number): boolean {
  return r.vocabulary.nameAt(r.tokens, at, r.part, r.self) !== null;
}

/** `8 to 10 ft 6 in`: feet or inches? */
function askUnit(r: Reader, bare: Amount, like: Extract<WrittenIn, { kind: 'form' }>): Hole {
  const [over] = like.form.over;
  const small = over?.kind === 'unit' ? over.unit.key : '';
  const said = r.slice(bare.spot);
  const ways = [...like.larger.filter((key) => key !== small), small].map(
    (key) => `${said} ${key}`,
  );
  return r.fail({
    code: 'two-readings',
    spots: [bare.spot],
    about: `"${said}" could be ${ways.join(' or ')}. Write the unit beside it.`,
    fixes: ways.map((way) => r.fix(way, bare.spot, way)),
  });
}

/** `16-12 hours`: a range written from its greater end, or a minus. */
function inDoubt(
  r: Reader,
  settled: readonly Settled[],
  { best, worst, spot }: Range,
  like: WrittenIn | null,
): Hole {
  // Less a share of it: the number stays as it is written.
  const typed = like?.kind === 'share';
  const [a, b] = settled.map(({ amount }) => (typed ? r.slice(amount.spot) : wordsOf(amount)));
  const range = `${wordsOf(best)} at best, ${wordsOf(worst)} at worst`;
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${r.slice(spot)}" could be anything from the one to the other, or one less the other. Write the one that is meant.`,
    fixes: [
      r.fix('From the one to the other', spot, range),
      r.fix('One less the other', spot, `${a} minus ${b}`),
    ],
  });
}
