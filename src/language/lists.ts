// Lists: `total of A, B and C`, `average of …`, `the greater of A and B`.
// An item is one amount, name or bracket, or one of these `at` a rate; anything else wants brackets.
import type { Reader } from './reader.ts';
import type { Fix } from '../words/report.ts';
import type { Formula } from './tree.ts';
import { GOES_ON_AND } from './part-of.ts';
import { expectSlot, seesSlot, slotEnd } from './values.ts';

/** Reads a list whose opening (`total of`, with or without an article) stands here. */
export function expectList(
  r: Reader,
  what: 'total' | 'average' | 'greater' | 'less',
  opening = 2,
): Formula {
  const from = r.token.from;
  const picks = what === 'greater' || what === 'less';
  r.skipArticle();
  r.take(opening, 'phrase');
  if (picks && opening > 2 && !r.maybe('of') && !r.maybe(',')) r.maybe(':');
  const items: Formula[] = [expectItem(r)];
  while (!r.problem) {
    const comma = r.sees(',') ? 1 : 0;
    // After a comma the word may belong to a name: `3 ft, and so on and 2 ft`.
    const joins = !(comma === 1 && r.nameAt(1));
    // `the larger of A or B`
    const or = picks && r.seesAt(comma, 'or') && !r.choosingOrs.has(r.at + comma);
    const and = joins && (r.seesAt(comma, 'and') || or) ? 1 : 0;
    if (comma + and === 0) break;
    const before = r.at;
    r.at += comma + and;
    const signed = r.sees('-') && !r.peek(1).gap;
    if (!seesSlot(r) && !signed) {
      // A comma that closes the list, or a name that nobody knows.
      const closes = comma === 1 && and === 0;
      r.at = before;
      if (closes) break;
      r.at += comma + and;
    }
    items.push(expectItem(r));
    const shared = r.problem ? null : askShareOfBoth(r, items.at(-1), and === 1 ? 'last' : 'more');
    if (shared) return shared;
    if (and === 1 && !andMore(r)) break;
  }
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  const spot = r.since(from);
  if (picks && items.length < 2) return refuseOne(r, spot);
  const list: Formula =
    what === 'total' || what === 'average'
      ? { kind: 'list', what, items, spot }
      : { kind: 'pick', which: what, items, spot };
  return afterList(r, list, items.at(-1));
}

/** `total of A and B and C`: one more, unless it is compared. */
function andMore(r: Reader): boolean {
  if (!r.sees('and')) return false;
  const end = slotEnd(r, 1);
  if (end < 0) return false;
  // A total that is not compared yet can't be joined to a condition: what comes after `and` is one more of it.
  return r.beside === 0 || !GOES_ON_AND.has(r.peek(end).text);
}

/** `the lesser of $3,500`: of which others? */
function refuseOne(r: Reader, spot: { from: number; to: number }): Formula {
  const wanted = 'at least two to choose from';
  const like = 'the greater of $85 and $120';
  const open = r.closes ? [r.fix('Leave it open for now', r.afterLast(), ' and ?')] : [];
  const phrase = r.slice(spot).split(/\s+of\s/)[0] ?? 'greater';
  return r.fail({ code: 'phrase-slot', spots: [spot], phrase, wanted, like, fixes: open });
}

/** `A, B and C together`, `A and B added up` or `added together`: a total with its items first. Null where that is not said. */
export function maybeTogether(r: Reader): Formula | null {
  if (!r.saysTogether || !listedTogether(r)) return null;
  const from = r.token.from;
  const items: Formula[] = [expectItem(r)];
  while (!r.problem && (r.sees(',') || r.sees('and'))) {
    if (!r.maybe(',') || !r.nameAt(0)) r.maybe('and');
    items.push(expectItem(r));
  }
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  r.take(r.sees('together') ? 1 : 2, 'phrase');
  return { kind: 'list', what: 'total', items, spot: r.since(from) };
}

/** Do items with commas or `and` between them stand here, and then `together` or `added up`? */
function listedTogether(r: Reader): boolean {
  let at = itemEnd(r, 0);
  let items = 1;
  while (at > 0 && (r.seesAt(at, ',') || r.seesAt(at, 'and'))) {
    const comma = r.seesAt(at, ',') ? 1 : 0;
    const and = r.seesAt(at + comma, 'and') && !(comma === 1 && r.nameAt(at + 1)) ? 1 : 0;
    at = itemEnd(r, at + comma + and);
    items++;
  }
  return (
    at > 0 &&
    items > 1 &&
    (r.seesAt(at, 'together') || r.seesAt(at, 'added', 'up') || r.seesAt(at, 'added', 'together'))
  );
}

function itemEnd(r: Reader, ahead: number): number {
  const end = slotEnd(r, ahead);
  return end > 0 && (r.seesAt(end, 'at') || r.seesAt(end, '@')) ? slotEnd(r, end + 1) : end;
}

function expectItem(r: Reader): Formula {
  const item = expectSlot(r);
  if (r.problem) return item;
  if ((r.sees('of') || r.sees('on')) && r.holdsShare(item)) {
    // `the larger of $500 and 10% of materials`: of that one thing.
    r.take(1, 'operator');
    const of = expectSlot(r);
    return { kind: 'part-of', share: item, of, spot: r.since(item.spot.from) };
  }
  if (!r.sees('at') && !r.sees('@')) return item;
  const opSpot = r.take(1, 'operator');
  const right = expectSlot(r);
  const spot = r.since(item.spot.from);
  return { kind: 'binary', op: 'at', opSpot, left: item, right, spot };
}

const GOES_ON = [
  'plus',
  'minus',
  'less',
  'with',
  '+',
  '-',
  'times',
  'by',
  'x',
  '×',
  '÷',
  '/',
  'over',
  'per',
];
const CLAUSES = ['in', 'rounded', 'marked', 'for', 'as'];

/** After the last item, arithmetic or a clause without a comma could belong to it or to the whole. */
function afterList(r: Reader, list: Formula, last: Formula | undefined): Formula {
  const more =
    [...GOES_ON, ...CLAUSES].some((word) => r.sees(word)) ||
    r.sees('divided', 'by') ||
    r.sees('multiplied', 'by') ||
    r.sees('not', 'less', 'than') ||
    r.sees('not', 'more', 'than');
  if (!more || !last) return list;
  const rest = { from: r.token.from, to: r.endOfBracket() };
  const whole = { from: last.spot.from, to: rest.to };
  const tail = r.slice(rest).trim();
  return r.fail({
    code: 'two-readings',
    spots: [{ from: rest.from, to: rest.to }],
    about: `"${tail}" could belong to "${r.slice(last.spot)}" alone or to the whole list. A comma gives it to the whole; brackets give it to the last.`,
    fixes: [
      ...shareOfAll(r, last, rest.to),
      r.fix('To the last alone', whole, `(${r.slice(whole).trimEnd()})`),
      r.fix('To the whole', { from: last.spot.to, to: rest.from }, ', '),
    ],
  });
}

/** `total of $5, 10% of materials and labour`: is the share of both, or is the last one more item? */
function askShareOfBoth(
  r: Reader,
  last: Formula | undefined,
  place: 'last' | 'more',
): Formula | null {
  if (last?.kind !== 'part-of' || last.of.kind !== 'name' || !r.sees('and')) return null;
  if (/^[([]/.test(r.slice(last.spot))) return null;
  const also = r.nameAt(1);
  if (!also) return null;
  const both = { from: last.of.spot.from, to: r.peek(also.length).to };
  const [one, other] = [r.slice(last.of.spot), r.slice({ from: r.peek(1).from, to: both.to })];
  return r.fail({
    code: 'two-readings',
    spots: [both],
    about: `The share could be of "${one}" alone, or of "${one}" and "${other}" together. Brackets say which.`,
    fixes: [
      r.fix('Of both together', both, `(${one} plus ${other})`),
      ...(place === 'more'
        ? [r.fix('Of the first alone', last.spot, `(${r.slice(last.spot)})`)]
        : []),
    ],
  });
}

/** `the larger of $500 and 10% of materials plus labour`: the share may be of all that follows. */
function shareOfAll(r: Reader, last: Formula, to: number): readonly Fix[] {
  if (last.kind !== 'part-of' || !/^(plus|minus|less|\+|-)$/.test(r.token.text)) return [];
  const all = { from: last.of.spot.from, to };
  return [r.fix('The share of all of it', all, `(${r.slice(all).trimEnd()})`)];
}
