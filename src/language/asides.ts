// Words said for the reader that change no number: what an amount is of, what money is for, what sort a thing is.
// Only where nothing else could be meant by them: a word near one that counts is asked about, never passed over.
import type { Reader } from './reader.ts';
import { ARTICLES } from './lexer.ts';
import { endsValue, isFarFromAll, isNearName, isUnknown, SORTS, STUFF } from './unknown-words.ts';
import { slotEnd } from './values.ts';
import { labelAt } from './length-labels.ts';
import type { Formula } from './tree.ts';
import { MONEY } from '../quantity/dimension.ts';
import { SHARE_LABELS } from './words.ts';
import { roughDimension } from './rough.ts';

/** `410 ft of decking`, `2.7 cubic m of good topsoil`: what it is of. Things that are counted only after a measure. */
export function skipOfStuff(r: Reader, isHard: 'measure' | 'count'): void {
  if (!r.sees('of')) return;
  let count = ARTICLES.has(r.peek(1).text) ? 2 : 1;
  const first = count;
  for (;;) {
    // `ready-mix`
    const hyphen =
      count > first && r.seesAt(count, '-') && !r.peek(count).gap && !r.peek(count + 1).gap;
    if (hyphen && isUnknown(r, count + 1)) {
      count += 2;
      continue;
    }
    if (isUnknown(r, count)) {
      const { text } = r.peek(count);
      if (!STUFF.has(text) && isNearName(r, text)) return;
      count++;
      continue;
    }
    const noun = isHard === 'measure' && r.nameAt(count) === null;
    const length = noun ? (r.vocabulary.nounAt(r.tokens, r.at + count)?.length ?? 0) : 0;
    if (length === 0) break;
    count += length;
  }
  if (count === first || !(endsValue(r, count) || labelledAt(r, count))) return;
  r.take(count, 'unread');
}

/** `720 sq ft mesh`, `8 in ftg`: what it is of, said right after it. */
export function skipStuffAfter(r: Reader): void {
  let count = 0;
  while (count < 3 && isUnknown(r, count)) count++;
  if (count === 0 || !(endsValue(r, count) || labelledAt(r, count))) return;
  for (let i = 0; i < count; i++) if (!isFarFromAll(r, i)) return;
  r.take(count, 'unread');
}

/** `120 lf ftg 16" wide`: a length with its label goes on. */
export function labelledAt(r: Reader, ahead: number): boolean {
  if (r.peek(ahead).kind !== 'number') return false;
  const end = slotEnd(r, ahead);
  return end > 0 && labelAt(r, end) > 0;
}

/**
 * `+ $85 delivery`, `+ $95 short load`: money that is added, and what it is for. No price per load can be added to
 * money, so nothing else can be meant.
 */
export function skipWhatMoneyIsFor(r: Reader, value: Formula): void {
  if (value.kind !== 'amount' || r.token.kind !== 'word') return;
  const { measure } = value.holds;
  if (measure.kind !== 'amount' || measure.dimension !== MONEY || measure.rate) return;
  let count = 0;
  for (;;) {
    const name = r.nameAt(count);
    if (name) {
      const cells = name.cells.filter((id) => holdsMoney(r, id));
      if (cells.length !== name.cells.length) return;
      count += name.length;
      continue;
    }
    const noun = r.vocabulary.nounAt(r.tokens, r.at + count);
    if (noun) count += noun.length;
    else if (isUnknown(r, count) || SHARE_LABELS.has(r.peek(count).text)) count++;
    else break;
  }
  if (count === 0 || !endsValue(r, count) || r.seesAt(count, 'of')) return;
  r.take(count, 'unread');
}

/** What a cell holds is asked for, so the formula leans on it. */
function holdsMoney(r: Reader, id: number): boolean {
  r.askedHolds = true;
  r.mention(id);
  if (!r.surroundings) return true;
  const spot = { from: 0, to: 0 };
  return roughDimension(r, { kind: 'name', cell: id, say: '', spot }) === MONEY;
}

/** `850 kg bulk bags`, `8 barrow loads`: a word before a noun that only says what sort it is. 0: none stands here. */
export function sortBefore(r: Reader, ahead: number): number {
  let count = 0;
  while (count < 2 && isSort(r, ahead + count)) count++;
  return count > 0 && r.vocabulary.nounAt(r.tokens, r.at + ahead + count) ? count : 0;
}

function isSort(r: Reader, ahead: number): boolean {
  if (r.nameAt(ahead) !== null) return false;
  const { kind, text } = r.peek(ahead);
  if (kind === 'word' && SORTS.has(text)) return true;
  return isUnknown(r, ahead) && isFarFromAll(r, ahead);
}

/** `less 6 on hand`, `minus 3 already on site`: why they are left out. */
export function skipOnHand(r: Reader): void {
  if (r.token.kind !== 'word' || r.nameAt(0)) return;
  const words = ON_HAND.find((each) => r.seesAll(0, each))?.length ?? 0;
  if (words > 0) r.take(words, 'unread');
}

const ON_HAND: readonly (readonly string[])[] = [
  'already on hand',
  'already on site',
  'already in stock',
  'already here',
  'already there',
  'that we have',
  'that we already have',
  'we already have',
  'i already have',
  'we have',
  'i have',
  'on hand',
  'in hand',
  'in stock',
  'on site',
  'in the yard',
  'in the shed',
  'in the truck',
  'in the garage',
  'left over',
  'to spare',
].map((words) => words.split(' '));

/** `for the posts`, `as a deposit`: for what, where it can't be a price or an amount for each. */
export function noteLength(r: Reader, ahead: number): number {
  let count = 0;
  for (;;) {
    if (isUnknown(r, ahead + count) || SHARE_LABELS.has(r.peek(ahead + count).text)) {
      if (r.nameAt(ahead + count)) return 0;
      count++;
      continue;
    }
    if (r.nameAt(ahead + count)) return 0;
    const noun = r.vocabulary.nounAt(r.tokens, r.at + ahead + count);
    if (!noun) break;
    count += noun.length;
  }
  if (count === 0) return 0;
  const place = placeLength(r, ahead + count);
  return endsValue(r, ahead + count + place) ? count + place : 0;
}

/** `in the bottom`, `at the end`, `under the steps`: where it goes, said after what it is for. 0: nowhere is said. */
export function placeLength(r: Reader, ahead: number): number {
  if (!PLACES.has(r.peek(ahead).text) || !r.seesAt(ahead + 1, 'the') || r.nameAt(ahead + 1))
    return 0;
  let count = ahead + 2;
  while (count < ahead + 5 && isPlace(r, count)) count++;
  return count > ahead + 2 ? count - ahead : 0;
}

const PLACES: ReadonlySet<string> = new Set(
  'in at on under of by along behind above below'.split(' '),
);

function isPlace(r: Reader, ahead: number): boolean {
  if (r.nameAt(ahead)) return false;
  if (isUnknown(r, ahead)) return true;
  return (r.vocabulary.nounAt(r.tokens, r.at + ahead)?.length ?? 0) === 1;
}
