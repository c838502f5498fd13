// How long each piece of a size is: `x 14 ft`, `14 ft long`, `@ 14'`.
import { isWrittenLength } from './amounts-held.ts';
import { writtenAmount } from './amounts.ts';
import type { Reader } from './reader.ts';
import type { Amount, Formula } from './tree.ts';
import { expectSlot } from './values.ts';

/** Where one piece of a size may begin, and how that is written. */
interface OnePiece {
  readonly from: number;
  readonly lead: string;
}

/** How long each is: `x 14 ft`, `by joist length`; where pieces were counted also `14 ft long`, `@ 14'`. */
export function maybeLength(
  r: Reader,
  how: 'crossed' | 'said',
  one: OnePiece | null = null,
): Formula | null {
  const { at, brackets } = r;
  const marks = r.marks.length;
  const crossed = crossAt(r, 0);
  const comma = how === 'said' && r.sees(',') ? 1 : 0;
  const atWord = r.seesAt(comma, 'at') || r.seesAt(comma, '@');
  const said = how === 'said' && !crossed && atWord ? 1 : 0;
  if (!crossed && (how === 'crossed' || r.peek(comma + said).kind !== 'number')) return null;
  r.take(crossed ? 1 : comma + said, 'operator');
  if (r.token.kind !== 'number') {
    if (r.nameAt(0) || r.sees('(') || r.sees('[')) {
      const slot = expectSlot(r);
      // A bare number in brackets is no more a length than one without.
      return slot.kind === 'amount' && slot.bare ? refuseBareLength(r, slot, one) : slot;
    }
    r.goBack(at, marks, brackets);
    return null;
  }
  const length = writtenAmount(r);
  if (length.kind === 'amount' && !r.problem) {
    const onCentre = said > 0 && (r.sees('o', 'c') || r.sees('oc') || r.sees('on'));
    const long = r.sees('long');
    if (isWrittenLength(length) && !onCentre && (comma === 0 || long)) {
      if (long) r.take(1, 'unread');
      return length;
    }
    if (length.bare && crossed) return refuseBareLength(r, length, one);
  }
  r.goBack(at, marks, brackets);
  return null;
}

function refuseBareLength(r: Reader, length: Amount, one: OnePiece | null): Formula {
  const { spot } = length;
  const words = r
    .slice(spot)
    .replaceAll(/[()[\]]/g, '')
    .trim();
  const whole = one ? { from: one.from, to: spot.to } : spot;
  const numbers = r.slice(whole).split(/\s*x\s*/i);
  const product =
    one && numbers.every((each) => /^\d+$/.test(each)) ? numbers.join(' times ') : null;
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${words}" after a size is the length of each, in feet or in inches${product ? '; or the numbers are multiplied' : ''}. Write the one that is meant.`,
    fixes: [
      ...['ft', 'in'].map((unit) =>
        r.fix(`${words} ${unit} long`, whole, `${one ? `${one.lead} ` : ''}${words} ${unit}`),
      ),
      ...(product ? [r.fix('Multiply the numbers', whole, product)] : []),
    ],
  });
}

/** `x`, `×` or `by`; a star multiplies. */
export function crossAt(r: Reader, ahead: number): boolean {
  const token = r.peek(ahead);
  if (token.kind !== 'word') return token.kind === 'symbol' && r.slice(token) === '×';
  return token.text === 'x' || token.text === 'by';
}
