// A length beside an area: so thick, or divided by it? `24' x 30' @ 4"`, `5" of concrete over 80 sq ft`.
import type { Reader } from './reader.ts';
import type { Arithmetic, Formula } from './tree.ts';
import { isWrittenLength } from './amounts-held.ts';
import { AREA, hardPart, LENGTH } from '../quantity/dimension.ts';
import { labelAt } from './length-labels.ts';
import { roughDimension } from './rough.ts';

/** `27 sq m divided by 450 mm × 450 mm`: is it divided by the area of one, or by one side and multiplied by the other? */
export function askAreaOver(
  r: Reader,
  left: Formula,
  op: Arithmetic,
  right: Formula,
): Formula | null {
  if ((op !== 'times' && op !== 'by') || left.kind !== 'binary' || left.op !== 'over') return null;
  const sides = [left.right, right].every(
    (side) => side.kind === 'amount' && isWrittenLength(side),
  );
  if (!sides || r.problem || /^[([]/.test(r.slice(left.spot))) return null;
  if (hardPartOf(r, left.left) !== AREA) return null;
  const under = { from: left.right.spot.from, to: right.spot.to };
  return r.fail({
    code: 'two-readings',
    spots: [under],
    about: `"${r.slice(under)}" could be the area to divide by, or "${r.slice(right.spot)}" could multiply what stands before it. Brackets say which.`,
    fixes: [
      r.fix('Divide by that area', under, `(${r.slice(under)})`),
      r.fix('From left to right', left.spot, `(${r.slice(left.spot)})`),
    ],
  });
}

/** `deck area over thickness`, `48 sq ft over 4 in thick`: divided by that, or so thick? */
export function askLayer(
  r: Reader,
  left: Formula,
  opSpot: { readonly from: number; readonly to: number },
  right: Formula,
): Formula | null {
  if (r.problem || !/^over$/i.test(r.slice(opSpot))) return null;
  const named = right.kind === 'name' && /\b(thickness|depth)$/i.test(right.say);
  const said =
    right.kind === 'amount' && isWrittenLength(right) && /^(thick|deep)$/.test(lastWord(r));
  if (!(named || said) || hardPartOf(r, left) !== AREA || hardPartOf(r, right) !== LENGTH)
    return null;
  const spot = { from: left.spot.from, to: right.spot.to };
  const [area, thick] = [r.slice(left.spot), r.slice(right.spot)];
  const whole = { from: spot.from, to: r.since(spot.from).to };
  return r.fail({
    code: 'two-readings',
    spots: [whole],
    about: `"${thick}" could be how thick it is, or what the area is divided by. Write the one that is meant.`,
    fixes: [
      r.fix('So thick', whole, `${area} by ${thick}`),
      r.fix('Divided by it', whole, `${area} divided by ${thick}`),
    ],
  });
}

/** The label that was passed over last, or stands here. */
function lastWord(r: Reader): string {
  return labelAt(r, 0) > 0 ? r.token.text : (r.tokens[r.at - 1]?.text ?? '');
}

export function hardPartOf(r: Reader, tree: Formula): object | null {
  const rough = roughDimension(r, tree);
  return rough && hardPart(rough);
}

/** `24' x 30' @ 4"`, `5" of concrete over 80 sq ft`: a length beside an area can only be how thick it is. */
export function isLayer(
  r: Reader,
  left: Formula,
  op: Arithmetic,
  opSpot: { readonly from: number; readonly to: number },
  right: Formula,
): boolean {
  if (op === 'at') return isThickness(r, left, right);
  if (op !== 'over' || !/^over$/i.test(r.slice(opSpot))) return false;
  return left.kind === 'amount' && isWrittenLength(left) && hardPartOf(r, right) === AREA;
}

function isThickness(r: Reader, left: Formula, right: Formula): boolean {
  if (right.kind !== 'amount' || !isWrittenLength(right)) return false;
  const hard = hardPartOf(r, left);
  return hard === AREA || (hard === LENGTH && left.kind === 'binary' && left.op === 'by');
}
