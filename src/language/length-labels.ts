// Words that say which way a length lies, and what it is of: `40 ft long and 3 ft wide`, `224 sq ft, 4 in deep`, `24' x 30' slab, 4" thick`.
import type { Reader } from './reader.ts';
import { OPERATOR_WORDS } from './words.ts';
import { expectValue, slotEnd } from './values.ts';
import type { Formula } from './tree.ts';
import { roughDimension } from './rough.ts';
import { AREA, hardPart, isHard, LENGTH } from '../quantity/dimension.ts';

/** `8' x 10' x 5" slab in cy`: what the product of lengths is of, where nothing else could go on with it. */
export function skipThingAtEnd(r: Reader): void {
  const length = thingLength(r);
  if (length === 0) return;
  const { kind, text } = r.peek(length);
  if (kind === 'end' || /^(in|,|plus|with|to|as|at|@|rounded|less|\+|\))$/.test(text))
    r.take(length, 'unread');
}

/** `perimeter of a 24 ft by 30 ft slab` */
export function skipThing(r: Reader): void {
  const noun = r.nameAt(0) === null ? r.vocabulary.nounAt(r.tokens, r.at) : null;
  if (noun) r.take(noun.length, 'unread');
}

const LABELS: ReadonlySet<string> = new Set('deep wide long high tall thick lg dp thk'.split(' '));

const LETTERS: ReadonlySet<string> = new Set(['w', 'l', 'h', 'd', 't']);

/** How many tokens say which way a length lies, so many ahead: `wide`, `in depth`, the `w` of `16"w`. */
export function labelAt(r: Reader, ahead: number): number {
  const { kind, text, gap } = r.peek(ahead);
  if (kind !== 'word') return 0;
  if (LABELS.has(text)) return 1;
  if (text === 'in' && /^(length|width|depth|height|thickness)$/.test(r.peek(ahead + 1).text))
    return 2;
  if (!LETTERS.has(text) || r.seesAt(ahead + 1, '/')) return 0;
  const next = r.peek(ahead + 1);
  const ends =
    next.kind === 'end' || next.kind === 'symbol' || /^(x|by|in|and|at)$/.test(next.text);
  return !gap || ends ? 1 : 0;
}

/** Says which way the length lies that was read; for the reader. */
export function takeLabel(r: Reader): void {
  const words = labelAt(r, 0);
  if (words > 0) r.take(words, 'unread');
}

/**
 * How many tokens stand before a length with its label that goes on from what was read: `40 ft long and 3 ft wide`,
 * `224 sq ft, 4 in deep`. 0 for none; 1 more than what is to be passed over.
 */
export function labelledNext(r: Reader): number {
  // Most of what stands after a value is an end or an operator, and this is asked after every value.
  const { kind, text } = r.token;
  if (kind === 'end' || kind === 'quoted') return 0;
  if (kind !== 'number' && OPERATOR_WORDS.has(text) && !MAY_LEAD.has(text)) return 0;
  const comma = thingLength(r) + (r.seesAt(thingLength(r), ',') ? 1 : 0);
  const joined =
    comma + (r.seesAt(comma, 'and') || r.seesAt(comma, 'at') || r.seesAt(comma, '@') ? 1 : 0);
  const next = r.peek(joined);
  if (next.kind !== 'number' && next.kind !== 'word') return 0;
  if (next.kind === 'word' && r.nameAt(joined)) return 0;
  const end = slotEnd(r, joined);
  const each = end > 0 && comma > 0 && joined === comma && /^(each|ea)$/.test(r.peek(end - 1).text);
  return end > 0 && (labelAt(r, end) > 0 || each) ? joined + 1 : 0;
}

const MAY_LEAD: ReadonlySet<string> = new Set([',', 'and', 'at', '@']);

/** `24' x 30' slab, 4" thick`: what it is of, said between. */
function thingLength(r: Reader): number {
  if (r.token.kind !== 'word' || r.nameAt(0)) return 0;
  return r.vocabulary.nounAt(r.tokens, r.at)?.length ?? 0;
}

/** Does a length with its label follow, after a word for what it is of? */
export function goesOnWithLabel(r: Reader): boolean {
  return thingLength(r) > 0 && labelledNext(r) > 0;
}

/** The product that a labelled length makes with what stands before it; null where none follows. */
export function crossedByLabel(r: Reader, left: Formula): Formula | null {
  const next = labelledNext(r);
  if (next === 0) return null;
  const rough = roughDimension(r, left);
  if (!rough) return null;
  const count = !isHard(rough) && rough.nouns.length > 0;
  // `10 x 10 slab 4" thick` may be feet, `2 boards each 4 ft long` says each of which: neither is a number of times.
  const odd =
    left.kind === 'binary'
      ? left.op === 'by'
      : left.kind === 'amount' && left.say.endsWith(' each');
  if (count && odd) return null;
  const hard = hardPart(rough);
  if (!count && hard !== LENGTH && hard !== AREA) return null;
  const opSpot = next > 1 ? r.take(next - 1, 'operator') : { from: r.token.from, to: r.token.from };
  const right = expectValue(r);
  takeLabel(r);
  const spot = r.since(left.spot.from);
  return { kind: 'binary', op: count ? 'times' : 'by', opSpot, left, right, spot };
}
