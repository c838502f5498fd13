// Ranges: `13 hours, 12 at best, 16 at worst`, and `12 to 16 hours`, which is read as that without a first value.
// They are whole formulas. Where one stands inside a formula it is refused, with its plain value offered.
import { seesAmount, writtenAmount } from './amounts.ts';
import { type End, type Found, type Item, type Joint, asRange } from './range-made.ts';
import type { Reader } from './reader.ts';
import type { Formula, Hole, Negative, Range } from './tree.ts';

/** range = amounts 'at best' 'at worst' | [amount] (amount 'to' amount | 'between' amount 'and' amount) */
export function maybeRange(r: Reader): Formula | null {
  if (!saysRange(r)) return null;
  const { at, brackets } = r;
  const marks = r.marks.length;
  const found = rangeHere(r, 'alone');
  if (found && endsHere(r)) {
    const range = asRange(r, found, 'alone');
    if (range) return range;
  }
  r.goBack(at, marks, brackets);
  return null;
}

/** A range that stands inside a formula, where what could not be read there is the range. */
export function rangeInside(r: Reader): Hole | null {
  const { problem } = r;
  if (!problem || problem.code === 'half-a-range' || !saysRange(r)) return null;
  const { at, brackets } = r;
  const marks = r.marks.length;
  for (let start = 0; start < r.tokens.length - 1; start++) {
    r.goBack(start, marks, brackets);
    const found = opensRange(r) ? rangeHere(r, 'inside') : null;
    // `2x8 to 2x10` are sizes.
    if (found && (isTight(r, start) || r.sees('x'))) continue;
    const within =
      found && problem.spots.some((spot) => spot.from < found.to && found.from <= spot.to);
    if (!found || !within || found.joint === 'unsure') continue;
    const range = asRange(r, found, 'inside');
    if (range?.kind !== 'range') continue;
    r.problem = null;
    r.marks.length = marks;
    return refuseInside(r, range);
  }
  r.goBack(at, marks, brackets);
  r.problem = problem;
  return null;
}

/** Does it hang on the word before it? */
function isTight(r: Reader, start: number): boolean {
  return start > 0 && !r.tokens[start].gap && r.tokens[start - 1].kind !== 'symbol';
}

/** `crew times 12-16 hours`: hardly a minus. Null where it is one. */
export function refuseTightRange(r: Reader, op: { from: number; to: number }): Hole | null {
  const tight = /[\w½¼¾⅓⅔⅛⅜⅝⅞"'’”%]/;
  if (r.text[op.from] === '−' || !tight.test(r.text[op.from - 1] ?? '')) return null;
  if (op.to - op.from !== 1 || !seesAmount(r) || r.token.from !== op.to) return null;
  const { at, brackets, problem } = r;
  const marks = r.marks.length;
  const last = r.marks.findLast((mark) => mark.to === op.from && mark.kind === 'amount');
  const start = last ? r.tokens.findIndex((token) => token.from === last.from) : -1;
  if (start < 0) return null;
  r.at = start;
  const found = rangeHere(r, 'inside');
  const range = found && asRange(r, found, 'alone');
  r.goBack(at, marks, brackets);
  r.problem = problem;
  return range?.kind === 'range' ? refuseInside(r, range, op) : null;
}

function refuseInside(
  r: Reader,
  range: Range,
  dash: { from: number; to: number } | null = null,
): Hole {
  const { spot, plain } = range;
  const minus = dash ? [r.fix('One less the other', dash, ' minus ')] : [];
  return r.fail({
    code: 'range-in-formula',
    spots: [spot],
    range: r.slice(spot),
    fixes: [
      r.fix('Take the plain value', spot, plain.startsWith('average') ? `(${plain})` : plain),
      ...minus,
    ],
  });
}

/** Most formulas hold none of the words and marks of a range. */
function saysRange(r: Reader): boolean {
  return r.tokens.some(
    ({ text }) =>
      text === 'best' || text === 'worst' || text === 'to' || text === '-' || text === 'between',
  );
}

function opensRange(r: Reader): boolean {
  return (
    seesAmount(r) ||
    r.sees('between') ||
    r.sees('from') ||
    r.sees('best') ||
    r.sees('worst') ||
    r.sees('at', 'best') ||
    r.sees('at', 'worst')
  );
}

/** A comma, a full stop or a question mark at the very end says nothing. */
function endsHere(r: Reader): boolean {
  const marks = r.sees(',') || r.sees('.') || r.sees('?') ? 1 : 0;
  if (r.peek(marks).kind !== 'end') return false;
  r.at += marks;
  return true;
}

/** The amounts of a range that begin here, whole or not; null where nothing like one stands here. */
function rangeHere(r: Reader, place: 'alone' | 'inside'): Found | null {
  const from = r.token.from;
  const pair = betweenTwo(r);
  if (pair) return { from, to: r.since(from).to, items: pair, joint: 'to' };
  if (r.sees('from') && !r.nameAt(0)) r.take(1, 'phrase');
  const first = item(r);
  if (!first) return null;
  const second = first.end === null ? joined(r) : null;
  if (second) {
    return { from, to: r.since(from).to, items: [first, second.item], joint: second.joint };
  }
  return listed(r, from, first, place);
}

/** `between 12 and 16 hours`. */
function betweenTwo(r: Reader): readonly [Item, Item] | null {
  if (!r.sees('between') || r.nameAt(0)) return null;
  const { at } = r;
  const marks = r.marks.length;
  r.take(1, 'phrase');
  const low = item(r);
  if (low && (r.maybe('and') || r.maybe('to'))) {
    const high = item(r);
    if (high && low.end === null && high.end === null) return [low, high];
  }
  r.at = at;
  r.marks.length = marks;
  return null;
}

/** `to 16 hours`, `up to 16 hours`, `–16 hours` after an amount. */
function joined(r: Reader): { readonly item: Item; readonly joint: Joint } | null {
  const { at } = r;
  const marks = r.marks.length;
  const joint = seesJoint(r);
  if (!joint) return null;
  r.take(r.sees('up') ? 2 : 1, 'phrase');
  const next = item(r);
  if (next && next.end === null) return { item: next, joint };
  r.at = at;
  r.marks.length = marks;
  return null;
}

function seesJoint(r: Reader): Joint | null {
  if (r.sees('to') || r.sees('up', 'to')) return 'to';
  if (!r.sees('-')) return null;
  const dash = r.text[r.token.from];
  if (dash === '−') return null;
  if (!r.token.gap && !r.peek(1).gap) return 'tight';
  // A writing program makes a long dash of a minus between blanks.
  return dash === '–' || dash === '—' ? 'unsure' : null;
}

/** Further amounts after commas, `and`, or in brackets; words say which is best and which is worst. */
function listed(r: Reader, from: number, first: Item, place: 'alone' | 'inside'): Found | null {
  const items = [first];
  let to = r.since(from).to;
  let open = false;
  while (items.length < 3) {
    const { at } = r;
    const marks = r.marks.length;
    const bracket = !open && items.length === 1 && r.sees('(');
    if (bracket || r.sees(',') || r.sees(';')) r.at++;
    if (r.sees('and') && !bracket) r.take(1, 'phrase');
    if (r.at === at) break;
    // Inside a formula a comma may part the items of a list: `total of 3 ft, 4 to 5 ft and 6 ft`.
    const pairs = items.length === 1 && first.end === null && (bracket || place === 'alone');
    const pair = pairs ? pairHere(r) : null;
    const next = pair ? null : item(r);
    if (!pair && !next) {
      r.at = at;
      r.marks.length = marks;
      break;
    }
    if (bracket) open = true;
    if (pair) items.push(...pair);
    else if (next) items.push(next);
    to = r.since(from).to;
    if (pair) {
      return closed(r, open) ? { from, to: r.since(from).to, items, joint: 'to' } : null;
    }
  }
  if (!closed(r, open)) return null;
  if (open) to = r.since(from).to;
  return items.some((one) => one.end !== null) ? { from, to, items, joint: null } : null;
}

/** The two ends after a first value: `13 hours (12 to 16)`. */
function pairHere(r: Reader): readonly [Item, Item] | null {
  const between = betweenTwo(r);
  if (between) return between;
  const { at } = r;
  const marks = r.marks.length;
  const low = item(r);
  const high = low && low.end === null ? joined(r) : null;
  if (low && high && high.joint !== 'unsure') return [low, high.item];
  r.at = at;
  r.marks.length = marks;
  return null;
}

function closed(r: Reader, open: boolean): boolean {
  if (!open) return true;
  if (!r.sees(')')) return false;
  r.at++;
  return true;
}

/** item = [end] ['-'] amount [end] */
function item(r: Reader): Item | null {
  const { at } = r;
  const marks = r.marks.length;
  const before = takeEnd(r);
  const from = r.token.from;
  const signed = r.sees('-') && !r.peek(1).gap;
  if (signed) r.take(1, 'operator');
  if (!r.problem && seesAmount(r)) {
    r.steps++;
    const amount = writtenAmount(r);
    const { writtenIn } = r;
    if (!r.problem && amount.kind === 'amount') {
      const spot = r.since(from);
      const negative: Negative | null = signed ? { kind: 'negative', of: amount, spot } : null;
      return { amount, negative, writtenIn, end: before ?? takeEnd(r) };
    }
  }
  r.problem = null;
  r.at = at;
  r.marks.length = marks;
  return null;
}

/** `at best`, `at the worst`, `best case`, `at worst case`. */
function takeEnd(r: Reader): End | null {
  let words = r.sees('at') || r.sees('in') ? 1 : 0;
  if (words > 0 && r.seesAt(1, 'the')) words++;
  const { text, kind } = r.peek(words);
  if (kind !== 'word' || (text !== 'best' && text !== 'worst')) return null;
  words++;
  if (r.seesAt(words, 'case')) words++;
  r.take(words, 'phrase');
  return text;
}
