// A bare number `x` a length, added to a length: `6 ft + 2 x deck length`. As two sides of something it could not be added,
// so it is a number of times. Alone it is asked about, and so is `12x4 ft`, which is written as a size.
import { LENGTH, hardPart } from '../quantity/dimension.ts';
import type { Reader } from './reader.ts';
import { roughDimension } from './rough.ts';
import type { Binary, Formula } from './tree.ts';

/** Both sides of a sum, with what is a number of times read so. */
export function besideLength(
  r: Reader,
  left: Formula,
  right: Formula,
): { readonly left: Formula; readonly right: Formula } {
  const [first, last] = [numberByLength(r, left), numberByLength(r, right)];
  if (last && isLength(r, left)) return { left, right: asTimes(last) };
  if (first && isLength(r, right)) return { left: asTimes(first), right };
  return { left, right };
}

/** `2 x deck length`, with blanks around the sign. */
function numberByLength(r: Reader, tree: Formula): Binary | null {
  if (tree.kind !== 'binary' || tree.op !== 'by') return null;
  const { left, right, opSpot } = tree;
  if (left.kind !== 'amount' || !left.bare || !isLength(r, right)) return null;
  const blanks = `${r.text[opSpot.from - 1] ?? ''}${r.text[opSpot.to] ?? ''}`;
  return /^\s\s$/.test(blanks) ? tree : null;
}

function asTimes(by: Binary): Binary {
  return { ...by, op: 'times' };
}

function isLength(r: Reader, tree: Formula): boolean {
  if (tree.kind === 'binary' && tree.op === 'by' && numberOfSides(tree) > 0) return false;
  const dimension = roughDimension(r, tree);
  return dimension !== null && hardPart(dimension) === LENGTH;
}

/** How many bare numbers stand where sides would. */
function numberOfSides({ left, right }: Binary): number {
  return [left, right].filter((side) => side.kind === 'amount' && side.bare).length;
}
