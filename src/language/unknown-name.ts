// Words that are no name here: the nearest names, units and things, or the formula without them.
import { nearNames } from '../words/near.ts';
import { shortFor } from '../words/short-names.ts';
import type { Fix } from '../words/report.ts';
import { ARTICLES } from './lexer.ts';
import { LEAVE_OUT, type ReadingProblem } from './problems.ts';
import type { Reader } from './reader.ts';
import { counts } from './unknown-words.ts';
import { OPERATOR_WORDS, SHARE_LABELS } from './words.ts';

/** A problem about words that are no name here, with the nearest names. */
export function unknownName(r: Reader): ReadingProblem {
  let count = 0;
  while (count < 8) {
    const token = r.peek(count);
    const reads =
      token.kind === 'word' && !OPERATOR_WORDS.has(token.text)
        ? true
        : count > 0 && token.kind === 'number' && r.peek(count - 1).kind === 'word';
    if (!reads) break;
    count++;
  }
  if (count === 0) {
    const spot = { from: r.token.from, to: r.token.to };
    return { code: 'unread', spots: [spot], word: r.slice(spot), fixes: [] };
  }
  const spot = { from: r.token.from, to: r.peek(count - 1).to };
  const word = r.slice(spot);
  const names = [...r.vocabulary.namesIn(r.part, r.self)].map((n) => n.say);
  let near: readonly string[] = [];
  let nearSpot = spot;
  const worded = nearWorded(r, names);
  if (worded) return worded;
  // The mistyped name may be followed by other words: try the longest stretch first.
  for (let words = count; words > 0 && near.length === 0; words--) {
    nearSpot = { from: spot.from, to: r.peek(words - 1).to };
    const article = words > 1 && ARTICLES.has(r.token.text) ? r.peek(1).from : spot.from;
    nearSpot = { from: article, to: nearSpot.to };
    const short = shortFor(r.slice(nearSpot), names).slice(0, 3);
    const alike = nearNames(r.slice(nearSpot), names, 3).filter((name) => !short.includes(name));
    near = [...short, ...alike].slice(0, 3);
  }
  // `slab depth` near `slab area`: the words that nothing could take go with it.
  if (near.length > 0) nearSpot = { ...nearSpot, to: endOfWords(r, nearSpot.to, count) };
  return {
    code: 'unknown-name',
    spots: [near.length > 0 ? nearSpot : spot],
    word: near.length > 0 ? r.slice(nearSpot) : word,
    near,
    fixes: [
      ...nearAfterPer(r),
      ...near.map((name) => r.fix(`Use "${name}"`, nearSpot, name)),
      ...withoutWords(r, count),
    ],
  };
}

/** `screws per bord`: near a name that has a word of the language in it. */
function nearWorded(r: Reader, names: readonly string[]): ReadingProblem | null {
  const worded = names.filter((name) => name.split(' ').some((word) => OPERATOR_WORDS.has(word)));
  if (worded.length === 0) return null;
  let count = 0;
  while (count < 8 && r.peek(count).kind === 'word') count++;
  for (let words = count; words > 1; words--) {
    const spot = { from: r.token.from, to: r.peek(words - 1).to };
    const word = r.slice(spot);
    if (OPERATOR_WORDS.has(r.peek(words - 1).text)) continue;
    if (!word.split(/\s+/).some((each) => OPERATOR_WORDS.has(each.toLowerCase()))) return null;
    const near = nearNames(word, worded, 3);
    if (near.length === 0) continue;
    const fixes = near.map((name) => r.fix(`Use "${name}"`, spot, name));
    return { code: 'unknown-name', spots: [spot], word, near, fixes };
  }
  return null;
}

/** `per bgas`: what stands under the line of a rate is a unit or a thing that is counted. */
function nearAfterPer(r: Reader): readonly Fix[] {
  if (r.tokens[r.at - 1]?.text !== 'per') return [];
  const spot = { from: r.token.from, to: r.token.to };
  return r.nearUnits(r.token.text).map((unit) => r.fix(`Use "${unit}"`, spot, unit));
}

/** How far words go on from here, of so many, before one that goes on from a value. */
function endOfWords(r: Reader, to: number, count: number): number {
  for (let i = 0; i < count; i++) {
    const { from, text } = r.peek(i);
    if (from < to) continue;
    if (GOES_ON.has(text)) break;
    to = r.peek(i).to;
  }
  return to;
}

/** Words after a value that are no operators and no part of a name. */
const GOES_ON = new Set(
  'squared cubed equals together added max min to between than please ways same each'.split(' '),
);

/** The formula without the unknown words that stand here (and an `of` or `for` before them). */
function withoutWords(r: Reader, count: number): readonly Fix[] {
  let words = 0;
  while (words < count && r.peek(words).kind === 'word') {
    if (words > 0 && r.nameAt(words)) break;
    words++;
  }
  // What counts can't be left out without meaning something else.
  for (let i = 0; i < words; i++) {
    const { text } = r.peek(i);
    if (counts(text) && !SHARE_LABELS.has(text)) return [];
  }
  const before = r.tokens[r.at - 1];
  const joined = before?.text === 'of' || before?.text === 'for';
  const from = joined ? before.from : r.token.from;
  const spot = { from, to: r.peek(words).from };
  const fix = r.fix(LEAVE_OUT, spot, '');
  return words === 0 || fix.formula.trim() === '' ? [] : [fix];
}
