// `for a 20% margin`, `for 10% overhead and 15% profit`, `for 11% fee`: shares of the answer.
// Other words after `for` are a note to the reader when none of them could be meant.
import { Fraction } from '../quantity/measure.ts';
import { seesAmount, writtenAmount } from './amounts.ts';
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { expectName, expectSlot } from './values.ts';
import { OPERATOR_WORDS, SHARE_LABELS } from './words.ts';

interface LabelledShare {
  readonly share: Formula;
  readonly label: string | null;
}

export function forClause(r: Reader, of: Formula, comma: number): Formula | null {
  const before = r.at;
  r.at += comma;
  const forSpot = r.take(1, 'phrase');
  r.skipArticle();
  if (r.sees('margin', 'of')) {
    r.take(2, 'phrase');
    const share = expectSlot(r);
    return {
      kind: 'for-shares',
      of,
      shares: [{ share, label: 'margin' }],
      spot: r.since(of.spot.from),
    };
  }
  if (seesPercent(r) || seesShareName(r)) {
    const shares: LabelledShare[] = [expectShare(r)];
    for (;;) {
      const gap = r.sees(',', 'and') ? 2 : r.sees('and') || r.sees(',') ? 1 : 0;
      const at = r.at;
      r.at += gap;
      r.skipArticle();
      if (gap === 0 || !(seesPercent(r) || seesShareName(r))) {
        r.at = at;
        break;
      }
      shares.push(expectShare(r));
    }
    return { kind: 'for-shares', of, shares, spot: r.since(of.spot.from) };
  }
  return noteAfterFor(r, of, before, forSpot.from);
}

function seesPercent(r: Reader): boolean {
  return (r.token.kind === 'number' || r.sees('?')) && percentSoon(r);
}

/** `7 1/2%`: the percent sign stands behind a mixed number. */
function percentSoon(r: Reader): boolean {
  for (let i = 1; i <= 5; i++) {
    if (r.seesAt(i, '%') || r.seesAt(i, 'percent')) return true;
    if (r.peek(i).kind !== 'number' && r.peek(i).text !== '/' && r.peek(i).text !== '-')
      return false;
  }
  return false;
}

function seesShareName(r: Reader): boolean {
  const found = r.nameAt(0);
  const id = found?.cells[0];
  if (!found || id === undefined) return false;
  r.askedHolds = true;
  if (!r.surroundings) return true;
  const holds = r.surroundings.holdsOf(id);
  return holds === null || holds.measure.kind === 'share' || holds.measure.kind === 'open';
}

function expectShare(r: Reader): LabelledShare {
  const share = seesAmount(r) ? writtenAmount(r) : expectName(r);
  const label = share.kind === 'amount' ? share.label : null;
  if (r.token.kind === 'word' && (r.sees('margin') || SHARE_LABELS.has(r.token.text))) {
    const word = r.token.text;
    r.take(1, 'phrase');
    return { share, label: word };
  }
  return { share, label };
}

function noteAfterFor(r: Reader, of: Formula, before: number, from: number): Formula | null {
  let count = 0;
  for (;;) {
    const token = r.peek(count);
    const ends = token.kind === 'end' || token.kind === 'symbol';
    if (ends || (count > 0 && OPERATOR_WORDS.has(token.text))) break;
    const at = r.at + count;
    const known =
      token.kind === 'number' ||
      r.vocabulary.unitAt(r.tokens, at) ||
      r.vocabulary.nounAt(r.tokens, at) ||
      r.nameAt(count);
    if (known) return askAboutFor(r, of, from);
    count++;
  }
  if (count === 0) {
    r.at = before;
    return r.fail({
      code: 'missing-value',
      spots: [{ from, to: from + 3 }],
      after: 'for',
      fixes: [r.fix('Leave "for" out', { from: r.gapBefore(from), to: from + 3 }, '')],
    });
  }
  r.take(count, 'unread');
  return of;
}

function askAboutFor(r: Reader, of: Formula, from: number): Formula {
  const spot = { from, to: r.endOfBracket() };
  const note = r.slice(spot);
  const rest = r
    .slice({ from: from + 4, to: spot.to })
    .trim()
    .replace(/^(?:an?|the)\s+/i, '');
  const tail = { from: of.spot.to, to: spot.to };
  const margin = /^(0?\.\d+|\d+)\s+margin$/i.exec(rest)?.[1];
  const percent = margin
    ? new Fraction(margin.replace(/^\./, '0.')).mul(margin.includes('.') ? 100 : 1)
    : null;
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${note}" could be a note to the reader, or something to work with. Leave it out, or say what is to be done with "${rest}".`,
    fixes: [
      r.fix('Leave it out', tail, ''),
      percent
        ? r.fix('A share of the price', tail, ` for a ${percent.toString()}% margin`)
        : r.fix('Multiply by it', tail, ` times ${rest}`),
    ],
  });
}
