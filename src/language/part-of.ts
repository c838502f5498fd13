// A part of a value, and what part one is of another: `10% of X`, `half of X`, `twice X`, `what share A is of B`.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { expectSlot, expectValue, slotEnd } from './values.ts';
import { slotProblem } from './phrases.ts';

/** `of` or `on` after a share, a fraction or a percent. */
export function partOf(r: Reader, share: Formula): Formula {
  r.take(1, 'operator');
  const of = alsoOf(r, share, expectValue(r));
  return { kind: 'part-of', share, of, spot: r.since(share.spot.from) };
}

/** `15% of materials and labour`: of both together. Where a comparison follows, `and` joins that. */
function alsoOf(r: Reader, share: Formula, first: Formula): Formula {
  const isOne = first.kind === 'name' || first.kind === 'amount';
  if (r.problem || !r.sees('and') || !isOne || !r.holdsShare(share) || first.kind === 'amount') {
    return first;
  }
  const items: Formula[] = [first];
  let end = slotEnd(r, 1);
  if (end < 0 || r.nameAt(1) === null || GOES_ON_AND.has(r.peek(end).text)) return first;
  while (r.sees('and') && end > 0 && r.nameAt(1) !== null && !GOES_ON_AND.has(r.peek(end).text)) {
    r.take(1, 'operator');
    items.push(expectSlot(r));
    end = slotEnd(r, 1);
  }
  const spot = r.since(first.spot.from);
  if (r.sees('together') || r.sees('combined')) r.take(1, 'unread');
  return { kind: 'list', what: 'total', items, spot };
}

/** After the second thing these would compare it, or work on it alone. */
export const GOES_ON_AND: ReadonlySet<string> = new Set(
  'is are = > < ≥ ≤ ≠ equals plus minus times by at over divided x × ÷ / + - less with under'.split(
    ' ',
  ),
);

/** `half of X`, `a third of X`: a fraction in words. */
export function readFraction(r: Reader, value: string, words: string): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(words.split(' ').length, 'amount');
  const share = r.number(value, words === 'half' ? words : value, r.since(from));
  if (r.sees('of')) return partOf(r, share);
  const of = expectValue(r);
  return { kind: 'part-of', share, of, spot: r.since(from) };
}

/** `twice X`. */
export function readTimes(r: Reader, value: string): Formula {
  const from = r.token.from;
  const opSpot = r.take(1, 'operator');
  r.maybe('of');
  const left = r.number(value, value, opSpot);
  const right = expectValue(r);
  return { kind: 'binary', op: 'times', opSpot, left, right, spot: r.since(from) };
}

/** `same as X` is X. */
export function readSame(r: Reader): Formula {
  r.skipArticle();
  r.take(2, 'phrase');
  return expectValue(r);
}

export function readWhatShare(r: Reader, opening = 2): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(opening, 'phrase');
  if (r.sees('that')) r.take(1, 'phrase');
  if (r.sees('is') || r.sees('of')) return readShareAsked(r, from);
  const of = expectSlot(r);
  if (!r.maybe('is', 'of')) {
    return slotProblem(
      r,
      from,
      'what share',
      '"is of" and the whole',
      'what share $42 is of $60',
      'is of ?',
    );
  }
  const whole = expectSlot(r);
  return { kind: 'what-share', of, whole, spot: r.since(from) };
}

/** `what percent is A of B`, `what percentage of B is A`. */
function readShareAsked(r: Reader, from: number): Formula {
  const wholeFirst = r.sees('of');
  r.take(1, 'phrase');
  const first = expectSlot(r);
  const joined = wholeFirst ? r.maybe('is') : r.maybe('of');
  if (r.problem || !joined) {
    if (r.problem) return first;
    const open = wholeFirst ? 'is ?' : 'of ?';
    return slotProblem(
      r,
      from,
      'what percent',
      '"of" and the whole',
      'what share $42 is of $60',
      open,
    );
  }
  const second = expectSlot(r);
  const [of, whole] = wholeFirst ? [second, first] : [first, second];
  return { kind: 'what-share', of, whole, spot: r.since(from) };
}
