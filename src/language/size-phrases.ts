// What is asked of a size: `actual width of 2x8`, `diameter of #4 bar`. It is a look-up in the size's table, in words of its own.
import { ARTICLES } from './lexer.ts';
import type { Phrase } from './phrases.ts';
import type { Reader } from './reader.ts';
import { type FigureTold, type SizeTable, figureOfSize } from './size-table.ts';
import { sizeAt, sizeStandsAt, takeSize } from './sizes.ts';
import { takeThing } from './sized.ts';
import type { Formula, LookUp } from './tree.ts';
import { expectSlot } from './values.ts';
import { plainName } from './vocabulary.ts';
import { byFirstWord } from './words.ts';

/** The figure of a size that is asked for here, an article so many tokens ahead already seen. */
export function sizePhraseAt(r: Reader, skip: number): Phrase | null {
  for (const table of r.vocabulary.sizeTables) {
    for (const { words, figure } of openingsOf(table).get(r.peek(skip).text) ?? []) {
      if (!r.seesAll(skip, words)) continue;
      const opening = skip + words.length;
      const article = ARTICLES.has(r.peek(opening).text) ? 1 : 0;
      if (figure.beforeSize && !sizeAt(r, opening + article, 'blanks')) continue;
      return { opening, read: () => readFigure(r, table, figure, opening) };
    }
    const vague = vagueFigures(r, skip, table);
    if (vague) return { opening: skip + 2, read: () => refuseVague(r, skip, table, vague) };
  }
  return null;
}

interface Opening {
  readonly words: readonly string[];
  readonly figure: FigureTold;
}

const openings = new WeakMap<SizeTable, ReadonlyMap<string, readonly Opening[]>>();

/** The words that ask for its figures, by the first of them. */
function openingsOf(table: SizeTable): ReadonlyMap<string, readonly Opening[]> {
  let found = openings.get(table);
  if (!found) {
    found = byFirstWord(
      table.told.figures.flatMap((figure) =>
        [figure.say, ...figure.also].map((say) => ({ words: [...say.split(' '), 'of'], figure })),
      ),
    );
    openings.set(table, found);
  }
  return found;
}

/** figure = words 'of' (size | slot) */
function readFigure(r: Reader, table: SizeTable, figure: FigureTold, opening: number): Formula {
  const from = r.token.from;
  r.take(opening, 'phrase');
  r.skipArticle();
  const size = expectSizeOrName(r, table, `${figure.say} of`);
  if (r.problem) return size;
  return askOf(r, table, figure.say, size, r.since(from)) ?? noTable(r, from);
}

function expectSizeOrName(r: Reader, table: SizeTable, phrase: string): Formula {
  const seen = sizeStandsAt(r, 0, 'blanks');
  if (seen) {
    const size = takeSize(r, seen);
    takeThing(r);
    return size;
  }
  if (r.nameAt(0) || r.sees('(') || r.sees('[')) return expectSlot(r);
  const like = `${phrase} ${[...table.rows.keys()].at(-1) ?? ''}`;
  const isEnd = r.token.kind === 'end';
  const rows = isEnd ? [...table.rows.keys()].slice(0, 3) : [];
  const fixes = rows.map((size) => r.fix(`Of ${size}`, r.afterLast(), ` ${size}`));
  const spots = [isEnd ? (r.tokens[r.at - 1] ?? r.token) : r.token];
  return r.fail({ code: 'phrase-slot', spots, phrase, wanted: 'a size', like, fixes });
}

/** The look-up that an asking comes to: `read width off lumber sizes for size 2x8`. */
export function askOf(
  r: Reader,
  table: SizeTable,
  say: string,
  size: Formula,
  spot: { readonly from: number; readonly to: number },
): LookUp | null {
  const { told } = table;
  const shape = table.shape();
  const named = told.figures.find((figure) => figure.say === say)?.column;
  const answer = shape?.columns.find((column) => column.name === named);
  const key = shape?.columns.find((column) => column.name === told.column);
  if (!shape || !answer || !key) return null;
  for (const { id } of [answer, key]) if (!r.columns.includes(id)) r.columns.push(id);
  const condition = {
    column: key.id,
    columnSay: plainName(key.name),
    columnSpot: size.spot,
    cells: key.cells,
    blanks: key.blanks,
    relation: 'is',
    value: size,
    listed: false,
  } as const;
  return {
    kind: 'look-up',
    table: shape.id,
    column: answer.id,
    columnSay: plainName(answer.name),
    columnSpot: spot,
    tableSay: plainName(shape.name),
    cells: answer.cells,
    conditions: [condition],
    caution: shape.caution,
    asked: say,
    spot,
  };
}

function noTable(r: Reader, from: number): Formula {
  return r.fail({
    code: 'unknown-table',
    spots: [r.since(from)],
    word: r.slice(r.since(from)),
    near: [],
    fixes: [],
  });
}

/** `width of 2x8`: the figures that this could mean, or null where it is not asked so. */
function vagueFigures(r: Reader, skip: number, table: SizeTable): readonly FigureTold[] | null {
  const word = r.peek(skip).text;
  if (r.peek(skip).kind !== 'word' || !r.seesAt(skip + 1, 'of')) return null;
  const meant = table.told.figures.filter(({ say, also }) =>
    [say, ...also].some((each) => each.includes(' ') && each.endsWith(` ${word}`)),
  );
  if (meant.length < 2) return null;
  const ahead = skip + 2 + (ARTICLES.has(r.peek(skip + 2).text) ? 1 : 0);
  if (sizeStandsAt(r, ahead, 'blanks')?.table === table) return meant;
  return holdsText(r, ahead) ? meant : null;
}

/** Does a cell stand there that is one of text, as far as can be told? */
export function mayHoldText(r: Reader, ahead: number): boolean {
  return r.nameAt(ahead) !== null && (!r.surroundings || holdsText(r, ahead));
}

/** Does a cell of text stand there? */
function holdsText(r: Reader, ahead: number): boolean {
  const [id, ...more] = r.nameAt(ahead)?.cells ?? [];
  if (id === undefined || more.length > 0) return false;
  r.askedHolds = true;
  return r.surroundings?.holdsOf(id)?.measure.kind === 'text';
}

function refuseVague(
  r: Reader,
  skip: number,
  table: SizeTable,
  meant: readonly FigureTold[],
): Formula {
  const word = r.peek(skip);
  const ahead = skip + 2 + (ARTICLES.has(r.peek(skip + 2).text) ? 1 : 0);
  const seen = sizeStandsAt(r, ahead, 'blanks');
  const length = seen?.length ?? r.nameAt(ahead)?.length ?? 1;
  const what = r.slice({ from: r.peek(ahead).from, to: r.peek(ahead + length - 1).to });
  const told = meant.map(({ say }) => {
    const value = seen?.known ? figureOfSize(table, seen.text, say) : null;
    return { say, words: value === null ? say : `${say}, ${value}` };
  });
  return r.fail({
    code: 'two-readings',
    spots: [{ from: word.from, to: r.peek(ahead + length - 1).to }],
    about: `The ${r.slice(word)} of ${what} could be its ${told.map(({ words }) => words).join(', or its ')}. Write the one that is meant.`,
    fixes: told.map(({ say }) => r.fix(`The ${say}`, { from: word.from, to: word.to }, say)),
  });
}
