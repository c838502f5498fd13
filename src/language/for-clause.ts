// `for a 20% margin`, `for 10% overhead and 15% profit`, `for 11% fee`: shares of the answer.
// Other words after `for` are a note to the reader when none of them could be meant.
import { Fraction } from '../quantity/measure.ts';
import { TIME, countOf } from '../quantity/dimension.ts';
import { isTime } from './after-amount.ts';
import { seesAmount, writtenAmount } from './amounts.ts';
import { forEach } from './for-each.ts';
import { noteLength } from './asides.ts';
import type { Reader } from './reader.ts';
import { roughCount, roughDimension } from './rough.ts';
import type { Binary, Formula } from './tree.ts';
import { MULTIPLY } from './problems.ts';
import { expectName } from './names.ts';
import { expectSlot } from './values.ts';
import { OPERATOR_WORDS, SHARE_LABELS } from './words.ts';

interface LabelledShare {
  readonly share: Formula;
  readonly label: string | null;
}

export function forClause(r: Reader, of: Formula, comma: number): Formula | null {
  const before = r.at;
  r.at += comma;
  const forSpot = r.take(1, 'phrase');
  const each = forEach(r, of);
  if (each) return each;
  if (r.sees('all') && r.nameAt(0) === null) r.take(r.seesAt(1, 'of') ? 2 : 1, 'unread');
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
    const [only, ...more] = shares;
    if (
      only?.label === null &&
      more.length === 0 &&
      only.share.kind === 'amount' &&
      r.sees('for')
    ) {
      return askOffOrOf(r, of, only.share.spot, forSpot.from);
    }
    return { kind: 'for-shares', of, shares, spot: r.since(of.spot.from) };
  }
  return timesFor(r, of) ?? noteAfterFor(r, of, before, forSpot.from);
}

/** `materials for 2% for paying early`: that much off, or a share of the answer? */
function askOffOrOf(
  r: Reader,
  of: Formula,
  share: { from: number; to: number },
  from: number,
): Formula {
  const spot = { from, to: r.endOfBracket() };
  const percent = r.slice(share);
  const gap = { from: of.spot.to, to: spot.to };
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${r.slice(spot)}" could be taken off, or be a share of the answer. Write the one that is meant.`,
    fixes: [
      r.fix(`Less ${percent}`, gap, ` less ${percent}`),
      r.fix('A share of the answer', gap, ` for ${percent}`),
    ],
  });
}

/** `$22.50 per hour for 4 hours`, `two men for three days`, `8 hours for each of two men`. Null where it could be meant otherwise. */
function timesFor(r: Reader, of: Formula): Formula | null {
  const { at } = r;
  const marks = r.marks.length;
  const opSpot = { from: r.tokens[r.at - 1]?.from ?? 0, to: r.token.from };
  const each = r.sees('each', 'of') || r.sees('every', 'one', 'of');
  if (each) r.take(2, 'phrase');
  if (!seesAmount(r) && !r.nameAt(0)) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  const first = expectSlot(r);
  const right = r.problem ? first : ofHours(r, first);
  if (!r.problem && of.kind === 'binary' && of.op === 'at' && goTogether(r, of.right, first)) {
    return refuseTitle(r, of, first);
  }
  if (r.problem || !(each || goTogether(r, of, first))) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  return { kind: 'binary', op: 'times', opSpot, left: of, right, spot: r.since(of.spot.from) };
}

/** `labour at $22.50 per hour for 4 hours`: is the first a heading, or worked at that rate? */
function refuseTitle(r: Reader, of: Binary, hours: Formula): Formula {
  const [left, rate] = [r.slice(of.left.spot), r.slice(of.right.spot)];
  const spot = { from: of.left.spot.from, to: hours.spot.to };
  const long = r.slice(hours.spot);
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${left}" could only say what is done at ${rate}, or be worked at that rate and then multiplied. Write the one that is meant.`,
    fixes: [
      r.fix(`${long} at ${rate}`, spot, `${long} at ${rate}`),
      r.fix('Multiply all of it', spot, `(${left} at ${rate}) times ${long}`),
    ],
  });
}

/** `two days of eight hours` */
function ofHours(r: Reader, days: Formula): Formula {
  if (!r.sees('of') || !isTime(r, days) || r.peek(1).kind === 'end') return days;
  const opSpot = r.take(1, 'operator');
  const right = expectSlot(r);
  return { kind: 'binary', op: 'times', opSpot, left: days, right, spot: r.since(days.spot.from) };
}

/** A rate for so much of what it is per, or people for a time: only multiplying is meant. */
function goTogether(r: Reader, left: Formula, right: Formula): boolean {
  const [of, by] = [roughDimension(r, left), roughDimension(r, right)];
  if (!of || !by) return false;
  const people = roughCount(r, left) === 'person' || roughCount(r, right) === 'person';
  if (people && (isTime(r, left) || isTime(r, right))) return true;
  const [noun] = by.nouns;
  if (by === TIME) return of.time < 0;
  if (noun && by === countOf(noun.noun)) {
    return of.nouns.some((each) => each.noun === noun.noun && each.power < 0);
  }
  return false;
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
  const things = noteLength(r, 0);
  // `for the posts`, but not `for a post`: that could be the price of one.
  if (things > 0 && !/^(?:an?|each|every)$/i.test(r.tokens[r.at - 1]?.text ?? '')) {
    r.take(things, 'unread');
    return of;
  }
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
      // A note with a price in it was meant to change something.
      ...(/[$£€¥]|\band\b.*\d|\b(?:across|deep|wide|long|thick|high|each|every|dia[a-z]*)\b/i.test(
        rest,
      ) && !percent
        ? []
        : [r.fix('Leave it out', tail, '')]),
      percent
        ? r.fix('A share of the price', tail, ` for a ${percent.toString()}% margin`)
        : r.fix(MULTIPLY, tail, ` times ${rest}`),
    ],
  });
}
