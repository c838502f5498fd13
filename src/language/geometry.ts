// Roots, diagonals, circles and triangles.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { expectSlot, expectValue, slotEnd } from './values.ts';
import { skipThing, takeLabel } from './length-labels.ts';
import { slotProblem } from './phrases.ts';
import { skipStuffAfter } from './asides.ts';
import { sizeStandsAt } from './sizes.ts';
import { seesAmount, writtenAmount } from './amounts.ts';

export function readSquareRoot(r: Reader, opening: number): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(opening, 'phrase');
  const of = expectValue(r);
  const spot = r.since(from);
  return askRootOfSum(r, of, spot) ?? { kind: 'square-root', of, spot };
}

/** `square root of 3 squared plus 4 squared`: of both together, or of the first alone? */
function askRootOfSum(r: Reader, of: Formula, spot: { from: number; to: number }): Formula | null {
  const joins = r.sees('plus') || r.sees('+') || r.sees('minus') || r.sees('-') || r.sees('less');
  if (r.problem || !joins || of.kind !== 'power' || of.power !== 2) return null;
  const end = slotEnd(r, 1);
  if (end < 0 || !(r.seesAt(end, 'squared') || r.seesAt(end, '²'))) return null;
  if (/^[([]/.test(r.slice(of.spot))) return null;
  const all = { from: of.spot.from, to: r.peek(end).to };
  return r.fail({
    code: 'two-readings',
    spots: [all],
    about: 'The square root could be of both together, or of the first alone. Brackets say which.',
    fixes: [
      r.fix('Of both together', all, `(${r.slice(all)})`),
      r.fix('Of the first alone', spot, `(${r.slice(spot)})`),
    ],
  });
}

/** `diagonal of A and B`, `corner to corner of a A by B patio`. */
export function readDiagonal(r: Reader, opening: number): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(opening, 'phrase');
  // A cell may be called A.
  if (!r.nameAt(0)) r.skipArticle();
  const a = side(r, 'first');
  takeLabel(r);
  if (r.problem) return a;
  if (!(r.maybe('and') || r.maybe('by') || r.maybe('x') || r.maybe('×'))) {
    return slotProblem(
      r,
      from,
      'diagonal of',
      'two sides',
      'diagonal of 3 ft and 4 ft',
      'and ? ft',
    );
  }
  const b = side(r, 'second');
  takeLabel(r);
  const spot = r.since(from);
  skipThing(r);
  skipStuffAfter(r);
  return { kind: 'diagonal', a, b, spot };
}

/** `diagonal of 2x8` names two sides; where the other side is still told, `2x8` is the size, which then asks what is meant. */
function side(r: Reader, which: 'first' | 'second'): Formula {
  const size = sizeStandsAt(r, 0);
  const after = size ? r.peek(size.length).text : '';
  if (size?.known && (which === 'second' || after === 'and' || after === 'by'))
    return expectSlot(r);
  return seesAmount(r) ? writtenAmount(r) : expectSlot(r);
}

export function readCircle(r: Reader, what: 'area' | 'circumference'): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(what === 'area' ? 3 : 2, 'phrase');
  r.skipArticle();
  const size = expectSlot(r);
  const named = size.kind === 'name' ? /\b(diameter|radius)$/.exec(size.say)?.[1] : undefined;
  const across = r.sees('diameter') || r.sees('radius') ? r.token.text : named;
  if (r.sees('diameter') || r.sees('radius')) r.take(1, 'phrase');
  if (across !== 'diameter' && across !== 'radius') {
    const phrase = what === 'area' ? 'circle area for' : 'circumference for';
    return slotProblem(r, from, phrase, '"diameter" or "radius"', `${phrase} 12 in diameter`, [
      ['Across it', 'diameter'],
      ['From its middle', 'radius'],
    ]);
  }
  return { kind: 'circle', what, across, size, spot: r.since(from) };
}

export function readTriangle(r: Reader): Formula {
  const from = r.token.from;
  r.take(4, 'phrase');
  const a = expectSlot(r);
  r.maybe(',');
  const b = expectSlot(r);
  r.maybe(',');
  const joined = r.maybe('and');
  const c = joined ? expectSlot(r) : null;
  if (!c) {
    return slotProblem(
      r,
      from,
      'triangle area for sides',
      'three sides',
      'triangle area for sides 3 ft, 4 ft and 5 ft',
      'and ? ft',
    );
  }
  return { kind: 'triangle', sides: [a, b, c], spot: r.since(from) };
}
