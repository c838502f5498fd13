// Shares that `and` joins to what stands before them: `30 boards and waste`, `materials and 10% overhead`, `and then markup`.
// Two shares one after the other could be added up first, so they ask.
import { ARTICLES } from './lexer.ts';
import { seesAmount } from './amounts.ts';
import type { Reader } from './reader.ts';
import type { Binary, Formula } from './tree.ts';
import { slotEnd } from './values.ts';

/** Is it a share that stands so many tokens ahead, with nothing after it that would make something else of it? */
export function shareAhead(r: Reader, ahead: number): boolean {
  if (r.conditions > 0 || r.separating > 0 || r.beside > 0) return false;
  const article = ARTICLES.has(r.peek(ahead).text) && r.nameAt(ahead) === null ? 1 : 0;
  const from = ahead + article;
  const name = r.nameAt(from);
  if (name) {
    const [id, ...more] = name.cells;
    const spot = { from: 0, to: 0 };
    const isShare =
      id !== undefined &&
      more.length === 0 &&
      r.holdsShare({ kind: 'name', cell: id, say: '', spot });
    return isShare && endsShare(r, from + name.length);
  }
  const percent = percentEnd(r, from);
  return percent > 0 && endsShare(r, percent);
}

/** Where the percent ends that stands so many tokens ahead; 0: there is none. */
export function percentEnd(r: Reader, ahead: number): number {
  const { at } = r;
  r.at += ahead;
  const seen = r.token.text !== r.vocabulary.sign && seesAmount(r);
  r.at = at;
  if (!seen) return 0;
  const end = slotEnd(r, ahead);
  for (let i = ahead + 1; i < end; i++) {
    if (r.seesAt(i, '%') || r.seesAt(i, 'percent')) return end;
  }
  return 0;
}

/** After a share these would take it of something, or compare it. */
function endsShare(r: Reader, ahead: number): boolean {
  return r.seesAt(ahead, 'on', 'top') || !NOT_AFTER.has(r.peek(ahead).text);
}

const NOT_AFTER: ReadonlySet<string> = new Set(
  'of on off is are = ≠ < > ≤ ≥ equals margin more less times x × by per'.split(' '),
);

/** `plus 12% overhead and 10% profit`: one after the other, or added up first? Null where only one share is there. */
export function askBothShares(
  r: Reader,
  left: Formula,
  opSpot: { readonly from: number; readonly to: number },
  share: Formula,
): Formula | null {
  if (!addsShare(r, left)) return null;
  const both = { from: left.right.spot.from, to: share.spot.to };
  const [one, other] = [r.slice(left.right.spot), r.slice(share.spot)];
  const word = left.op === 'minus' ? 'less' : 'plus';
  const spot = { from: left.right.spot.to, to: share.spot.to };
  return r.fail({
    code: 'two-readings',
    spots: [both],
    about: `"${other}" could be of what "${one}" comes to, or both could be added up first. Write the one that is meant.`,
    fixes: [
      r.fix('One after the other', spot, ` ${word} ${other}`),
      r.fix('Added up first', both, `(${one} plus ${other})`),
    ],
  });
}

/** Was a share added or taken off last? */
export function addsShare(r: Reader, tree: Formula): tree is Binary {
  if (tree.kind !== 'binary' || (tree.op !== 'plus' && tree.op !== 'minus')) return false;
  return r.holdsShare(tree.right) && !/^[([]/.test(r.slice(tree.spot));
}
