// Round shapes as they are said: `area of a circle 12 ft across`, `circumference of a circular bed of 12 ft diameter`, `10" dia x 3' deep`.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { seesAmount, writtenAmount } from './amounts.ts';
import { slotProblem } from './phrases.ts';
import { expectSlot } from './values.ts';
import { isWrittenLength } from './amounts-held.ts';
import { labelledNext } from './length-labels.ts';

const ROUND: ReadonlySet<string> = new Set(['circle', 'circular', 'round', 'cylinder']);

/** `a circle 3 m in diameter`, `circle with radius 3 ft`: a shape and then its size. */
export function isRoundShape(r: Reader, skip: number): boolean {
  if (!ROUND.has(r.peek(skip).text) || r.nameAt(skip)) return false;
  if (r.seesAt(skip + 1, 'area')) return false;
  return sizeSoon(r, skip + 1);
}

/** Does an amount, a name or a bracket come after at most four words? */
function sizeSoon(r: Reader, ahead: number): boolean {
  for (let i = ahead; i < ahead + 6; i++) {
    const { kind, text } = r.peek(i);
    if (kind === 'number' || text === '(' || r.nameAt(i)) return true;
    if (kind !== 'word') return false;
  }
  return false;
}

/** Is a circle what is said next, before its size or after it? */
export function roundSoon(r: Reader, ahead: number): boolean {
  for (let i = ahead; i < ahead + 8; i++) {
    const { kind, text } = r.peek(i);
    if (ROUND.has(text)) return true;
    if (kind === 'end' || text === ',' || text === 'plus' || text === 'x') return false;
  }
  return false;
}

/** `circumference of a circular bed of 12 ft diameter`: the size, with how it is measured before or after it. */
export function readRound(r: Reader, what: 'area' | 'circumference'): Formula {
  const from = r.token.from;
  let across: 'diameter' | 'radius' | null = null;
  for (let i = 0; i < 10 && !seesAmount(r) && !r.sees('(') && r.token.kind === 'word'; i++) {
    if (r.nameAt(0) && !ROUND.has(r.token.text)) break;
    across = acrossSaid(r.token.text) ?? across;
    r.take(1, 'phrase');
  }
  const size = expectRoundSize(r);
  if (r.problem) return size;
  const named = size.kind === 'name' ? acrossSaid(size.say.split(' ').at(-1) ?? '') : null;
  across = takeAcross(r) ?? across ?? named;
  while (ROUND.has(r.token.text)) r.take(1, 'phrase');
  if (!across) {
    const phrase = what === 'area' ? 'circle area for' : 'circumference for';
    return slotProblem(r, from, phrase, '"diameter" or "radius"', `${phrase} 12 in diameter`, [
      ['Across it', 'diameter'],
      ['From its middle', 'radius'],
    ]);
  }
  return { kind: 'circle', what, across, size, spot: r.since(from) };
}

function expectRoundSize(r: Reader): Formula {
  return seesAmount(r) ? writtenAmount(r) : expectSlot(r);
}

function acrossSaid(word: string): 'diameter' | 'radius' | null {
  if (word === 'radius') return 'radius';
  return DIAMETER.has(word) ? 'diameter' : null;
}

const DIAMETER: ReadonlySet<string> = new Set(['diameter', 'dia', 'diam', 'across']);

/** `in diameter`, `dia`, `across`, `wide` after the size of something round. */
function takeAcross(r: Reader): 'diameter' | 'radius' | null {
  const skip = r.sees('in') || r.sees('of') ? 1 : 0;
  const said = acrossSaid(r.peek(skip).text) ?? (r.sees('wide') ? 'diameter' : null);
  if (!said) return null;
  r.take(skip + 1, 'phrase');
  return said;
}

/** Is this length said to be one across, so many tokens ahead: `10" dia`, `3 m in diameter`? */
function acrossAt(r: Reader, ahead: number): boolean {
  const skip = r.seesAt(ahead, 'in') ? 1 : 0;
  const { kind, text } = r.peek(ahead + skip);
  return kind === 'word' && text !== 'across' && acrossSaid(text) !== null;
}

/** `10" dia x 3' deep`, `a 12 ft diameter circle`: the area that a length across makes. Null where it makes none. */
export function roundFrom(r: Reader, size: Formula): Formula | null {
  if (size.kind !== 'amount' || !isWrittenLength(size)) return null;
  const shaped = ROUND.has(r.token.text) && r.token.text !== 'round';
  if (!shaped && !acrossAt(r, 0)) return null;
  const { at } = r;
  const marks = r.marks.length;
  const across = takeAcross(r);
  if (across === null) {
    return slotProblem(
      r,
      size.spot.from,
      'circle area for',
      '"diameter" or "radius"',
      'circle area for 12 in diameter',
      [
        ['Across it', 'diameter'],
        ['From its middle', 'radius'],
      ],
    );
  }
  let said = 0;
  while (said < 2 && (ROUND.has(r.token.text) || r.vocabulary.nounAt(r.tokens, r.at))) {
    if (r.nameAt(0)) break;
    r.take(1, 'phrase');
    said++;
  }
  const goesOn =
    r.sees('x') || r.sees('×') || r.sees('by') || r.sees('times') || labelledNext(r) > 0;
  if (!goesOn && !shaped && said === 0) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  return { kind: 'circle', what: 'area', across, size, spot: r.since(size.spot.from) };
}
