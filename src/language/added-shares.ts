// Shares in a sum as they are said, and what is asked about them: `plus VAT at 20%`, `plus 25% margin`.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { ARTICLES } from './lexer.ts';
import { writtenAmount } from './amounts.ts';
import { OPERATOR_WORDS, SHARE_LABELS } from './words.ts';
import { termFrom } from './products.ts';

/** `plus VAT at 20%`, `plus overhead of 12%`: a share with its name before it. Null where none stands so. */
export function shareSaidAfter(r: Reader): Formula | null {
  let words = 0;
  const article = ARTICLES.has(r.token.text) ? 1 : 0;
  while (words < 2 && saysShare(r, article + words)) words++;
  const joined = article + words;
  if (words === 0 || !(r.seesAt(joined, 'at') || r.seesAt(joined, 'of') || r.seesAt(joined, '@')))
    return null;
  if (r.peek(joined + 1).kind !== 'number') return null;
  for (let i = joined + 2; i < joined + 5; i++) {
    if (r.seesAt(i, '%') || r.seesAt(i, 'percent')) {
      r.take(joined + 1, 'unread');
      return writtenAmount(r);
    }
  }
  return null;
}

/** A label of a share, or a word that is nothing else here: `VAT`. */
function saysShare(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  if (kind !== 'word' || OPERATOR_WORDS.has(text)) return false;
  return SHARE_LABELS.has(text) || /^(vat|gst|hst|pst|sales|tax|oh|ohp|p)$/.test(text);
}

export function refuseMargin(
  r: Reader,
  opSpot: { from: number },
  amount: { from: number; to: number },
): Formula {
  const percent = r.slice(amount);
  const spot = { from: opSpot.from, to: r.token.to };
  return r.fail({
    code: 'margin-or-markup',
    spots: [{ from: amount.from, to: r.token.to }],
    percent,
    fixes: [
      r.fix('A share of the price', spot, `for a ${percent} margin`),
      r.fix('A share of the cost', spot, `marked up ${percent}`),
    ],
  });
}

export function refuseShareTimes(
  r: Reader,
  left: Formula,
  opSpot: { from: number; to: number },
  share: Formula,
): Formula {
  const begin = r.token.from;
  const right = termFrom(r, share);
  if (r.problem) return right;
  const whole = { from: left.spot.from, to: share.spot.to };
  const product = { from: share.spot.from, to: r.since(share.spot.from).to };
  return r.fail({
    code: 'two-readings',
    spots: [
      { from: opSpot.from, to: share.spot.to },
      { from: begin, to: product.to },
    ],
    about: `"${r.slice({ from: begin, to: product.to })}" could work on everything before it, or on "${r.slice(share.spot)}" alone. Brackets say which.`,
    fixes: [
      r.fix('On everything before it', whole, `(${r.slice(whole)})`),
      r.fix('On the share alone', product, `(${r.slice(product)})`),
    ],
  });
}
