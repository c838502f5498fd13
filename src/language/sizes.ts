// Sizes with dimensions of their own where they are written: `2x8`, `2×8`, `5/4x6`, `#4`. Which there are is asked
// of the tables that the vocabulary is handed; how one is written is all that is known here.
import { termAfter } from './rates.ts';
import type { Reader } from './reader.ts';
import { type SizeTable, sizeOf } from './size-table.ts';
import type { Formula, Size } from './tree.ts';

/** A size found at a token: how many tokens it takes, and the table that holds it. */
export interface SizeSeen {
  readonly length: number;
  readonly text: string;
  readonly table: SizeTable;
  /** False: it is written like one of this table, which does not have it. */
  readonly known: boolean;
}

/** May it be written with blanks, `2 x 8`? Only where nothing but a size can stand. */
export type Blanks = 'tight' | 'blanks';

/** The size that stands so many tokens ahead. A unit after it makes its numbers lengths: `2x8 ft`. */
export function sizeAt(r: Reader, ahead: number, blanks: Blanks = 'tight'): SizeSeen | null {
  const tables = r.vocabulary.sizeTables;
  if (tables.length === 0) return null;
  const seen = r.seesAt(ahead, '#')
    ? numbered(r, ahead, tables)
    : crossed(r, ahead, tables, blanks);
  if (!seen) return null;
  const length = seen.length + pluralAt(r, ahead + seen.length);
  return unitAt(r, ahead + length) ? null : { ...seen, length };
}

/** Does a size stand there that no name wins over? */
export function sizeStandsAt(r: Reader, ahead: number, blanks: Blanks = 'tight'): SizeSeen | null {
  const seen = sizeAt(r, ahead, blanks);
  return seen && (r.nameAt(ahead)?.length ?? 0) < seen.length ? seen : null;
}

/** `#4` */
function numbered(r: Reader, ahead: number, tables: readonly SizeTable[]): SizeSeen | null {
  const number = r.peek(ahead + 1);
  if (number.kind !== 'number' || number.gap || !/^\d+$/.test(number.text)) return null;
  const text = `#${number.text}`;
  const found = sizeOf(tables, text);
  const table = found?.table ?? tables.find((each) => [...each.rows.keys()][0]?.startsWith('#'));
  return table ? { length: 2, text, table, known: found !== null } : null;
}

/** `2x8`, `5/4x6`; the third number of `2x8x14` is its length. */
function crossed(
  r: Reader,
  ahead: number,
  tables: readonly SizeTable[],
  blanks: Blanks,
): SizeSeen | null {
  const over = sideAt(r, ahead);
  if (over === 0 || !isCross(r, ahead + over)) return null;
  const under = sideAt(r, ahead + over + 1);
  if (under === 0) return null;
  const length = over + 1 + under;
  const tight = [over, over + 1].every((each) => !r.peek(ahead + each).gap);
  if (!tight && blanks === 'tight') return null;
  // `12x2x8` is no 2x8.
  const before = r.tokens[r.at + ahead - 1];
  if (before && isCross(r, ahead - 1) && !r.peek(ahead).gap) return null;
  const spot = { from: r.peek(ahead).from, to: r.peek(ahead + length - 1).to };
  const text = r.slice(spot).replace(/\s+/g, '').replace(/[×X]/, 'x');
  const found = sizeOf(tables, text);
  if (found) return { length, text: found.size, table: found.table, known: true };
  const table = tables.find((each) => looksLikeOne(each, text));
  return table && tight ? { length, text, table, known: false } : null;
}

/** How many tokens a side takes: a whole number, or quarters such as 5/4. */
function sideAt(r: Reader, ahead: number): number {
  const first = r.peek(ahead);
  if (first.kind !== 'number' || !/^\d{1,2}$/.test(first.text)) return 0;
  const [slash, last] = [r.peek(ahead + 1), r.peek(ahead + 2)];
  if (slash.text !== '/' || slash.gap) return 1;
  const quarters = last.kind === 'number' && !last.gap && Number(first.text) > Number(last.text);
  return quarters ? 3 : 0;
}

function isCross(r: Reader, ahead: number): boolean {
  const token = r.peek(ahead);
  return (token.kind === 'word' && token.text === 'x') || r.slice(token) === '×';
}

/** Thin side first, and not far beyond what the table holds: 3x7, but not 12x4 or 24x20. */
function looksLikeOne(table: SizeTable, text: string): boolean {
  const [thin, wide] = sidesOf(text);
  const all = [...table.rows.keys()].filter((size) => size.includes('x')).map(sidesOf);
  const thickest = Math.max(...all.map(([each]) => each));
  const widest = Math.max(...all.map(([, each]) => each));
  return thin > 0 && thin <= wide && thin <= thickest && wide <= 2 * widest;
}

function sidesOf(size: string): readonly [number, number] {
  const [thin = 0, wide = 0] = size.split('x').map((side) => {
    const [over = 0, under = 1] = side.split('/').map(Number);
    return over / under;
  });
  return [thin, wide];
}

/** `2x8s`, `2x8's` */
function pluralAt(r: Reader, ahead: number): number {
  const tight = (at: number): boolean => !r.peek(ahead + at).gap;
  if (r.seesAt(ahead, 's') && tight(0)) return 1;
  return r.seesAt(ahead, "'", 's') && tight(0) && tight(1) ? 2 : 0;
}

/** Does a unit stand there? Not the `in` of a clause. */
function unitAt(r: Reader, ahead: number): boolean {
  const token = r.peek(ahead);
  if (token.kind === 'symbol') return /^['"%]$/.test(token.text) && !token.gap;
  if (!r.vocabulary.unitAt(r.tokens, r.at + ahead)) return false;
  return !(r.seesAt(ahead, 'in') && clauseFollows(r, ahead + 1));
}

function clauseFollows(r: Reader, ahead: number): boolean {
  const { kind } = r.peek(ahead);
  return kind === 'number' || r.nameAt(ahead) !== null || termAfter(r, ahead) !== null;
}

/** What numbers written like a size could be instead. */
type Instead = 'product' | 'nothing';

/** Takes the size that stands here; one that its table does not hold is refused. */
export function takeSize(r: Reader, seen: SizeSeen, or: Instead = 'nothing'): Formula {
  const spot = { from: r.token.from, to: r.peek(seen.length - 1).to };
  if (!seen.known) return refuseUnknown(r, seen, spot, or);
  return { kind: 'size', text: seen.text, spot: r.take(seen.length, 'amount') } satisfies Size;
}

function refuseUnknown(
  r: Reader,
  { text, table }: SizeSeen,
  spot: { readonly from: number; readonly to: number },
  or: Instead,
): Formula {
  const near = nearSizes(text, table);
  const typed = r.slice(spot);
  const product = or === 'product' ? /^(\d+)x(\d+)$/.exec(text) : null;
  return r.fail({
    code: 'unknown-size',
    spots: [spot],
    word: typed,
    table: table.name,
    near,
    fixes: [
      ...near.map((size) => r.fix(`Use ${size}`, spot, size)),
      ...(product
        ? [r.fix('Multiply the numbers', spot, `${product[1]} times ${product[2]}`)]
        : []),
    ],
  });
}

/** The three with the nearest sides. */
function nearSizes(text: string, table: SizeTable): readonly string[] {
  const away = (size: string): number => {
    if (text.startsWith('#')) return Math.abs(Number(size.slice(1)) - Number(text.slice(1)));
    const [thin, wide] = sidesOf(size);
    const [ownThin, ownWide] = sidesOf(text);
    return Math.abs(thin - ownThin) + Math.abs(wide - ownWide);
  };
  return [...table.rows.keys()].sort((a, b) => away(a) - away(b)).slice(0, 3);
}
