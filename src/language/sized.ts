// So many pieces of one size: `22 2x8 x 14 ft`, `12 2x6 boards`, `308 ft of 2x8`; and a size that stands alone.
import { isWrittenLength } from './amounts-held.ts';
import { writtenAmount } from './amounts.ts';
import { heldAmount } from '../quantity/amount.ts';
import { type Form, NONE_WRITTEN } from '../quantity/form.ts';
import { Fraction } from '../quantity/measure.ts';
import { ARTICLES } from './lexer.ts';
import { expectDecimal } from './numbers.ts';
import { phraseAt } from './phrases.ts';
import type { Reader } from './reader.ts';
import { askOf, mayHoldText } from './size-phrases.ts';
import { crossAt, maybeLength } from './size-length.ts';
import type { SizeTable } from './size-table.ts';
import { type SizeSeen, sizeAt, sizeStandsAt, takeSize } from './sizes.ts';
import { barsSpaced } from './spaced.ts';
import type { Fix } from '../words/report.ts';
import type { Amount, Formula, LookUp } from './tree.ts';
import { expectSlot } from './values.ts';

/** A size that stands here, or so many pieces of one: `2x8`, `22 2x8 x 14 ft`, `22 joists of 2x8`. */
export function maybeSized(r: Reader): Formula | null {
  if (r.vocabulary.sizeTables.length === 0) return null;
  const from = r.token.from;
  const here = sizeStandsAt(r, 0);
  if (here) return sizeAlone(r, here);
  if (r.token.kind !== 'number') return null;
  return spacedAlone(r) ?? countThenSize(r, from);
}

/** `2x8`; before a thing it is said for the reader (`4x4 posts every 6 ft …`); before a length, one piece of it. */
function sizeAlone(r: Reader, seen: SizeSeen): Formula {
  const from = r.token.from;
  const size = takeSize(r, seen, 'product');
  if (r.problem) return size;
  const spaced = r.vocabulary.nounAt(r.tokens, r.at) ? phraseAt(r) : null;
  if (spaced) return spaced.read(r);
  const bars = seen.table.told.noun === null ? null : barsAfter(r, from);
  if (bars) return bars;
  takeThing(r);
  const { told } = seen.table;
  const lead = `1 ${told.noun ?? 'piece'} of ${seen.text} by`;
  const sold = saysSoldUnit(r, seen.table);
  const length = maybeLength(r, 'crossed', sold ? null : { from, lead });
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  if (!length) return { ...size, spot: r.since(from) };
  if (!sold) return refuseOnePiece(r, seen, lead, length, from);
  const count = counted(r, '1', seen.table, { from, to: from });
  return pieces(r, seen.table, count, size, length, from);
}

function barsAfter(r: Reader, from: number): Formula | null {
  if (r.sees('rebar')) r.take(1, 'amount');
  return barsSpaced(r, from);
}

/** `4x6 x 3 ft` could also be three lengths: without a number of pieces it asks. */
function refuseOnePiece(
  r: Reader,
  seen: SizeSeen,
  lead: string,
  length: Formula,
  from: number,
): Formula {
  const spot = r.since(from);
  const long = r.slice(length.spot);
  const sides = /^(\d+)x(\d+)$/.exec(seen.text);
  const unit = length.kind === 'amount' ? /\s(ft|in|yd|m|cm|mm)$/.exec(length.say)?.[1] : undefined;
  const three = sides
    ? `${sides[1]} ${unit ?? 'ft'} x ${sides[2]} ${unit ?? 'ft'} x ${long}`
    : null;
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${r.slice(spot)}" could be one piece of ${seen.text}, ${long} long, or three lengths multiplied. Write the one that is meant, or how many pieces there are.`,
    fixes: [
      r.fix('One piece of that size', spot, `${lead} ${long}`),
      ...(three ? [r.fix('Three lengths', spot, three)] : []),
    ],
  });
}

/** `2 x 8` alone, with blanks: the size, or two numbers multiplied? */
function spacedAlone(r: Reader): Formula | null {
  if (r.at !== 0) return null;
  const seen = sizeAt(r, 0, 'blanks');
  if (!seen?.known || r.peek(seen.length).kind !== 'end' || r.slice(r.peek(1)) === '×') return null;
  const spot = { from: r.token.from, to: r.peek(seen.length - 1).to };
  const product = r.slice(spot).replace(/\s*x\s*/i, ' times ');
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${r.slice(spot)}" could be the size ${seen.text}, or ${product}. Write the one that is meant.`,
    fixes: [
      r.fix(`The size ${seen.text}`, spot, seen.text),
      r.fix('Multiply the numbers', spot, product),
    ],
  });
}

/** `22 2x8`, `22 - 2x8 x 14'`, `22 x 2x8 x 14 ft`, `22 pieces of 2x8`, `22 joists 2x8`. */
function countThenSize(r: Reader, from: number): Formula | null {
  if (!/^[\d,]+$/.test(r.token.text)) return null;
  const noun = r.vocabulary.nounAt(r.tokens, r.at + 1);
  const dash = r.seesAt(1, '-');
  const cross = r.seesAt(1, 'x') && r.peek(1).gap;
  const after = 1 + (noun?.length ?? (dash || cross ? 1 : 0));
  const of = r.seesAt(after, 'of') ? 1 : 0;
  if (of > 0 && !noun) return null;
  const seen = sizeStandsAt(r, after + of, cross ? 'tight' : 'blanks');
  if (!seen) return of > 0 && noun ? piecesOfName(r, noun, from) : null;
  if (!seen.known && (dash || cross)) return null;
  if (dash && !crossAt(r, after + seen.length)) return null;
  const number = r.token;
  const written = expectDecimal(r).say;
  r.take(after - 1 + of, noun ? 'amount' : 'phrase');
  const size = takeSize(r, seen);
  if (r.problem) return size;
  const own = noun?.noun ?? null;
  const thing = takeThing(r);
  const count = counted(r, written, seen.table, number, own ?? thing);
  const length = maybeLength(r, 'said');
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  return pieces(r, seen.table, count, size, length, from);
}

/** Is a cell called as a dimension is? */
function isDimension({ told }: SizeTable, name: string): boolean {
  const [last = ''] = name.toLowerCase().split(' ').slice(-1);
  return told.figures.some(({ say, also }) => [say, ...also].some((each) => each.endsWith(last)));
}

/** `22 pieces of joist stock by 14 ft`: the size that a cell holds. */
function piecesOfName(
  r: Reader,
  noun: { readonly length: number; readonly noun: string },
  from: number,
): Formula | null {
  const ahead = 2 + noun.length;
  const name = r.nameAt(ahead);
  const table = tableFor(r, noun.noun);
  if (!name || !table || !crossAt(r, ahead + name.length)) return null;
  const number = r.token;
  const written = expectDecimal(r).say;
  r.take(noun.length, 'amount');
  r.take(1, 'phrase');
  const size = expectSlot(r);
  if (r.problem) return size;
  const count = counted(r, written, table, number, noun.noun);
  const length = maybeLength(r, 'crossed');
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  return pieces(r, table, count, size, length, from);
}

/** `joists of 2x8 x 14 ft`, `308 ft of 2x8`: what stands before `of` was read already. Null: no size follows. */
export function sizedOf(r: Reader, before: Formula): Formula | null {
  if (r.vocabulary.sizeTables.length === 0 || !r.sees('of')) return null;
  const run = before.kind === 'amount' && isWrittenLength(before);
  const article = ARTICLES.has(r.peek(1).text) ? 1 : 0;
  const seen = sizeStandsAt(r, 1 + article, 'blanks');
  const name = run && !seen && mayHoldText(r, 1) ? r.nameAt(1) : null;
  if (!seen && !name) return null;
  const table = seen?.table ?? tableFor(r, null);
  if (!table) return null;
  // A cell Thickness before a size counts no pieces: `(thickness) of 2x8`.
  if (before.kind === 'name' && isDimension(table, before.say)) return null;
  r.take(1 + article, 'phrase');
  const size = seen ? takeSize(r, seen) : expectSlot(r);
  if (r.problem) return size;
  takeThing(r);
  const from = before.spot.from;
  const length = maybeLength(r, run ? 'crossed' : 'said');
  if (r.problem) return { kind: 'hole', spot: r.since(from) };
  if (run && !length) return pieces(r, table, null, size, before, from);
  return pieces(r, table, before, size, length, from);
}

/** `1,014' #4 bar`, `8 ft 2x4 x 12`: a length and, right after it, the size. Null where nothing says how they go together. */
export function sizeBeside(r: Reader, length: Amount): Formula | null {
  if (r.vocabulary.sizeTables.length === 0 || !isWrittenLength(length)) return null;
  const seen = sizeStandsAt(r, 0);
  if (!seen?.known) return null;
  const { from } = length.spot;
  const { at } = r;
  const marks = r.marks.length;
  const size = takeSize(r, seen);
  if (r.problem) return size;
  takeThing(r);
  const many = r.peek(1);
  const times = (r.sees('x') || r.sees('×')) && many.kind === 'number' && /^\d+$/.test(many.text);
  const unit = r.vocabulary.unitAt(r.tokens, r.at + 2) ?? r.vocabulary.nounAt(r.tokens, r.at + 2);
  if (times && !unit && !/^['"%]$/.test(r.peek(2).text)) {
    r.take(2, 'amount');
    return pieces(r, seen.table, counted(r, many.text, seen.table, many), size, length, from);
  }
  if (seen.table.told.usual === 'run') return pieces(r, seen.table, null, size, length, from);
  r.goBack(at, marks, r.brackets);
  return null;
}

function tableFor(r: Reader, noun: string | null): SizeTable | null {
  const tables = r.vocabulary.sizeTables;
  return (
    tables.find(({ told }) => noun !== null && told.noun === noun) ??
    tables.find(({ told }) => told.noun === null) ??
    null
  );
}

function pieces(
  r: Reader,
  table: SizeTable,
  count: Formula | null,
  size: Formula,
  length: Formula | null,
  from: number,
): Formula {
  const spot = r.since(from);
  const { sold, unit } = soldOf(r, table, size, length);
  return { kind: 'sized', count, length, size, sold, unit, usual: table.told.usual, spot };
}

const NOTHING = { sold: [], unit: '' } as const;

/** What it is sold by hangs on a length. */
function soldOf(
  r: Reader,
  table: SizeTable,
  size: Formula,
  length: Formula | null,
): { readonly sold: readonly LookUp[]; readonly unit: string } {
  const { told } = table;
  if (length === null) return NOTHING;
  const sold = told.sold.columns.flatMap((column) => {
    const say = told.figures.find((figure) => figure.column === column)?.say;
    const asked = say === undefined ? null : askOf(r, table, say, size, size.spot);
    return asked ? [asked] : [];
  });
  return { sold, unit: told.sold.unit };
}

/** So many things; pieces, where nobody says of what. */
function counted(
  r: Reader,
  written: string,
  table: SizeTable,
  number: { readonly from: number; readonly to: number },
  thing: string | null = null,
): Amount {
  const noun = thing ?? table.told.noun ?? 'piece';
  const form: Form = { over: [{ kind: 'noun', noun, count: null }], under: [] };
  const { value, measure } = heldAmount(new Fraction(written.replaceAll(',', '')), form);
  return {
    kind: 'amount',
    value,
    holds: { measure, showIn: null, written: NONE_WRITTEN },
    bare: false,
    label: null,
    say: `${written} ${written === '1' ? noun : r.vocabulary.nouns.many(noun)}`,
    spot: { from: number.from, to: number.to },
  };
}

/** `boards`, `rebar`: the thing, said after its size. */
export function takeThing(r: Reader): string | null {
  if (r.sees('rebar')) {
    r.take(1, 'amount');
    return null;
  }
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  if (!noun) return null;
  r.take(noun.length, 'amount');
  return noun.noun;
}

/** Does the formula ask for board feet further on? Then nothing but lumber is meant. */
function saysSoldUnit(r: Reader, table: SizeTable): boolean {
  if (table.told.noun !== null) return true;
  for (let ahead = 0; r.peek(ahead).kind !== 'end'; ahead++) {
    const key = r.vocabulary.unitAt(r.tokens, r.at + ahead)?.unit.key;
    if (key === table.told.sold.unit || key === 'mbf') return true;
  }
  return false;
}

/** The fix for a size that stands right after something which takes none: in brackets, or as one piece so long. */
export function besideSize(r: Reader): readonly Fix[] {
  const seen = sizeStandsAt(r, 0);
  const last = r.marks.at(-1);
  const before = r.tokens[r.at - 1];
  if (!seen?.known || last?.kind !== 'amount' || !before) return [];
  const { at, brackets } = r;
  const marks = r.marks.length;
  if (before.kind === 'number') {
    r.at--;
    const sized = maybeSized(r);
    const spot = sized && !r.problem ? sized.spot : null;
    r.goBack(at, marks, brackets);
    return spot ? [r.fix('Put the pieces in brackets', spot, `(${r.slice(spot)})`)] : [];
  }
  const length = tokensFrom(r, last.from);
  const isLength = length !== null && length.kind === 'amount' && isWrittenLength(length);
  r.goBack(at, marks, brackets);
  if (!isLength) return [];
  const spot = { from: last.from, to: r.peek(seen.length - 1).to };
  const thing = seen.table.told.noun ?? 'piece';
  return [r.fix('One piece of it', spot, `1 ${thing} of ${seen.text} by ${r.slice(last)}`)];
}

/** The amount that begins at this place of the text, read again. */
function tokensFrom(r: Reader, from: number): Formula | null {
  const index = r.tokens.findIndex((token) => token.from === from);
  if (index < 0) return null;
  r.at = index;
  return writtenAmount(r);
}
