// What is taken off, with its word after it: `with 10% off`, `at a 5% discount`, `, $50 off`, `with early discount`.
import { plainName } from './vocabulary.ts';
import { ARTICLES } from './lexer.ts';
import type { Reader } from './reader.ts';
import type { Arithmetic, Formula } from './tree.ts';
import { endsValue } from './unknown-words.ts';
import { slotEnd } from './values.ts';

/** Does an amount with its `off` or `discount` stand so many tokens ahead, and nothing that it is off? */
export function offAt(r: Reader, ahead: number): boolean {
  const article = ARTICLES.has(r.peek(ahead).text) ? 1 : 0;
  const first = r.peek(ahead + article);
  if (first.kind !== 'number' && first.text !== r.vocabulary.sign) return false;
  if (r.nameAt(ahead + article)) return false;
  const end = slotEnd(r, ahead + article);
  if (end < 0) return false;
  return offWords(r, end) > 0 || (r.seesAt(end - 1, 'discount') && endsOff(r, end));
}

/** How many words say that it is taken off, so many ahead: `off`, `taken off`, `discount`; 0 for none. */
export function offWords(r: Reader, ahead: number): number {
  if (r.peek(ahead).kind !== 'word' || r.nameAt(ahead)) return 0;
  const words = OFF.find((each) => r.seesAll(ahead, each))?.length ?? 0;
  return words > 0 && endsOff(r, ahead + words) ? words : 0;
}

/** A reason, or a step that goes on, may follow too. */
function endsOff(r: Reader, ahead: number): boolean {
  const { text } = r.peek(ahead);
  return text !== 'of' && text !== 'from' && (endsValue(r, ahead) || text === 'because');
}

const OFF: readonly (readonly string[])[] = [
  ['off'],
  ['taken', 'off'],
  ['taken', 'away'],
  ['knocked', 'off'],
  ['deducted'],
  ['subtracted'],
  ['removed'],
  ['discount'],
  ['reduction'],
  ['rebate'],
];

/** `with 10% discount`, `with trade discount`: what comes with it is taken off. */
export function isDiscount(r: Reader, value: Formula): boolean {
  if (value.kind === 'amount') return value.label === 'discount';
  if (value.kind !== 'name' || !r.holdsShare(value)) return false;
  return /\bdiscount$/i.test(plainName(r.vocabulary.cell(value.cell)?.name ?? ''));
}

/** The operator, where what follows may turn it round: `with 10% off` takes off. Null: it asks. */
export function takenOff(
  r: Reader,
  opSpot: { readonly from: number; readonly to: number },
  op: Arithmetic,
  value: Formula,
): Arithmetic | null {
  const word = r.slice(opSpot).toLowerCase();
  const off = offWords(r, 0);
  if (op === 'minus') {
    if (off > 0) r.take(off, 'unread');
    return op;
  }
  const comes = /^(with|w\/)$/.test(word);
  if (comes && off > 0) {
    r.take(off, 'operator');
    return 'minus';
  }
  if (!isDiscount(r, value)) return op;
  if (comes) return 'minus';
  return word.startsWith('inc') ? null : op;
}

/** `materials including 10% discount`: is it in already, or still to be taken off? */
export function askWithDiscount(
  r: Reader,
  opSpot: { readonly from: number; readonly to: number },
  value: Formula,
): Formula {
  const spot = { from: r.gapBefore(opSpot.from), to: value.spot.to };
  const share = r.slice(value.spot);
  return r.fail({
    code: 'two-readings',
    spots: [{ from: opSpot.from, to: value.spot.to }],
    about: `"${share}" could be still to be taken off, or be in the price already. Write the one that is meant.`,
    fixes: [r.fix('Take it off', spot, ` less ${share}`), r.fix('It is in already', spot, '')],
  });
}
