// What stands before a sum as its title: `forms: 2 x 24 ft`, `solid steps, 4 ft x 12 in`, `path 40 ft long`.
import type { Reader } from './reader.ts';
import { isFarFromAll, isUnknown, STUFF } from './unknown-words.ts';
import { ARTICLES } from './lexer.ts';
import { labelledAt } from './asides.ts';
import { percentEnd } from './and-shares.ts';
import { SHARE_LABELS } from './words.ts';
import { slotEnd } from './values.ts';

/** `forms: 2 x 24 ft`: what stands before a colon is a title. */
export function skipTitle(r: Reader): void {
  let words = 0;
  while (words < 5 && r.peek(words).kind === 'word') words++;
  for (let i = 0; i < words; i++) if (ASKS.has(r.peek(i).text)) return;
  if (words > 0 && r.seesAt(words, ':') && r.peek(words + 1).kind !== 'end') {
    r.take(words + 1, 'unread');
    return;
  }
  // `solid steps, 4 ft x 12 in`: before a comma only words that could be nothing else.
  let things = 0;
  while (things < 4 && isHeading(r, things)) things++;
  if (things > 0 && r.seesAt(things, ',') && startsAmount(r, things + 1)) {
    r.take(things + 1, 'unread');
  }
}

/** No heading: they ask for something else than what stands after them. */
const ASKS: ReadonlySet<string> = new Set(
  'perimeter circumference diagonal hypotenuse average mean difference ratio product both either half twice double triple'.split(
    ' ',
  ),
);

/** A thing or a word that nothing knows, and no slip of a name. */
function isHeading(r: Reader, ahead: number): boolean {
  if (!isThing(r, ahead)) return false;
  return !isUnknown(r, ahead) || isFarFromAll(r, ahead);
}

function startsAmount(r: Reader, ahead: number): boolean {
  return r.peek(ahead).kind === 'number' || r.seesAt(ahead, r.vocabulary.sign);
}

/** `path 40 ft long`, `stone 12 ft x 4 ft`: of what, said first. */
export function skipStuffBefore(r: Reader): void {
  const article = ARTICLES.has(r.token.text) ? 1 : 0;
  let count = article;
  while (count < 4 && STUFF.has(r.peek(count).text) && !r.nameAt(count)) count++;
  const stuff = r.peek(count).kind === 'number' ? count : 0;
  if (stuff > article) {
    r.take(stuff, 'unread');
    return;
  }
  // `gravel for a path 900 mm wide`
  if (stuff === 0 && count > article && r.seesAt(count, 'for')) {
    const of = count + (ARTICLES.has(r.peek(count + 1).text) ? 2 : 1);
    let things = of;
    while (things < of + 3 && isThing(r, things)) things++;
    if (things > of && (labelledAt(r, things) || crossedAt(r, things))) r.take(things, 'unread');
    if (things > of) return;
  }
  // `handrail 80 7/8 in plus a foot`: words that nothing knows or is near to, before a measured length
  count = article;
  while (count < 3 && isHeading(r, count)) count++;
  if (count > article && isUnknown(r, article) && measuredAt(r, count)) {
    r.take(count, 'unread');
    return;
  }
  // `contingency 5% of subtotal`, `card fee 2.9% of $3,300`
  count = article;
  while (count < 4 && (isThing(r, count) || isShareWord(r, count))) count++;
  const percent = count > article && isShareWord(r, count - 1) ? percentEnd(r, count) : 0;
  if (percent > 0 && (r.seesAt(percent, 'of') || r.seesAt(percent, 'on'))) {
    r.take(count, 'unread');
    return;
  }
  // `wall 20 ft long and 8 ft high`
  count = article;
  while (count < 4 && isThing(r, count)) count++;
  if (count > article && (labelledAt(r, count) || crossedAt(r, count))) r.take(count, 'unread');
}

/** A number with its unit. */
function measuredAt(r: Reader, ahead: number): boolean {
  if (r.peek(ahead).kind !== 'number' || r.nameAt(ahead)) return false;
  const end = slotEnd(r, ahead);
  return end > ahead + 1 && r.peek(end - 1).kind !== 'number' && !r.seesAt(end - 1, '%');
}

/** `fee`, `contingency`: what a share is called. */
function isShareWord(r: Reader, ahead: number): boolean {
  return r.peek(ahead).kind === 'word' && SHARE_LABELS.has(r.peek(ahead).text) && !r.nameAt(ahead);
}

/** `slab 24' x 30'` */
function crossedAt(r: Reader, ahead: number): boolean {
  if (r.peek(ahead).kind !== 'number') return false;
  const end = slotEnd(r, ahead);
  const mark = r.peek(end - 1);
  return end > ahead + 1 && mark.kind !== 'number' && (r.seesAt(end, 'x') || r.seesAt(end, '×'));
}

/** A word that is a counted thing or nothing here. */
function isThing(r: Reader, ahead: number): boolean {
  if (r.nameAt(ahead)) return false;
  return isUnknown(r, ahead) || r.vocabulary.nounAt(r.tokens, r.at + ahead)?.length === 1;
}
