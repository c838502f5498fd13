// Phrases about tables: `total of volume in slab bays`, `greatest volume in …`, `how many slab bays`, and
// `read size off joist spans for species hem-fir, span at least joist length`.
import { nearNames } from '../words/near.ts';
import type { Fix } from '../words/report.ts';
import { expectChoice } from './choices.ts';
import { ARTICLES, nameWords } from './lexer.ts';
import type { Phrase } from './phrases.ts';
import type { Reader } from './reader.ts';
import { costKindAt, seesRecap } from './recaps.ts';
import { longestColumn } from './row-vocabulary.ts';
import type { ColumnShape, TableShape } from './table-shape.ts';
import type { ColumnOf, Formula, LookUpCondition, Relation } from './tree.ts';
import { expectSlot, seesSlot } from './values.ts';
import { plainName } from './vocabulary.ts';

/** The phrase about a table that begins here, an article so many tokens ahead already seen. */
export function tablePhraseAt(r: Reader, skip: number): Phrase | null {
  if (r.seesAt(skip, 'how', 'many')) return { opening: skip + 2, read: readRowCount };
  if (r.seesAt(skip, 'read')) {
    return offAt(r, skip + 1) === null ? null : { opening: skip + 1, read: readLookUp };
  }
  const what = WHATS.find(({ words }) => r.seesAll(skip, words));
  if (!what) return null;
  const found = columnPhrase(r, skip + what.words.length);
  if (!found && seesRecap(r, skip + what.words.length)) return null;
  if (!found) return mistypedTable(r, skip + what.words.length);
  if (!found.column && costKindAt(r, skip + what.words.length)) return null;
  return {
    opening: found.inAt + 1,
    read: () => readColumn(r, what.what, skip + what.words.length),
  };
}

export const WHATS: readonly {
  readonly words: readonly string[];
  readonly what: ColumnOf['what'];
}[] = [
  { words: ['total', 'of'], what: 'total' },
  { words: ['average', 'of'], what: 'average' },
  { words: ['average'], what: 'average' },
  { words: ['greatest', 'of'], what: 'greatest' },
  { words: ['greatest'], what: 'greatest' },
  { words: ['largest'], what: 'greatest' },
  { words: ['least', 'of'], what: 'least' },
  { words: ['least'], what: 'least' },
  { words: ['smallest'], what: 'least' },
];

/** The most words that are looked at for the name of a column. */
const LONGEST_NAME = 10;

interface ColumnPhrase {
  readonly table: TableShape;
  /** Null: the table has no column of that name. */
  readonly column: ColumnShape | null;
  /** How many tokens ahead the `in` stands. */
  readonly inAt: number;
  readonly nameFrom: number;
  readonly tableLength: number;
}

/** A name, then `in`, then a table. */
function columnPhrase(r: Reader, ahead: number): ColumnPhrase | null {
  const article = ARTICLES.has(r.peek(ahead).text) && !r.seesAt(ahead + 1, 'in');
  const nameFrom = article ? ahead + 1 : ahead;
  let odd: ColumnPhrase | null = null;
  for (let at = nameFrom + 1; at <= nameFrom + LONGEST_NAME; at++) {
    const before = r.peek(at - 1);
    if (before.kind === 'end' || /^[,()[\]]$/.test(before.text)) break;
    if (!r.seesAt(at, 'in')) continue;
    const found = r.vocabulary.tableAt(r.tokens, r.at + at + 1, r.part, r.self);
    if (!found) continue;
    const named = longestColumn(r.tokens, r.at + nameFrom, found.table.columns);
    const column = named?.length === at - nameFrom ? named.column : null;
    const phrase = { table: found.table, column, inAt: at, nameFrom, tableLength: found.length };
    if (column) return phrase;
    odd ??= phrase;
  }
  return odd;
}

/** A name, then `in`, then words near the name of a table that has such a column. */
function mistypedTable(r: Reader, ahead: number): Phrase | null {
  const nameFrom = ARTICLES.has(r.peek(ahead).text) ? ahead + 1 : ahead;
  // A bracket opens something else, which may well speak of a table itself.
  if (!isNameToken(r, nameFrom)) return null;
  let inAt = nameFrom + 1;
  while (inAt <= nameFrom + LONGEST_NAME && isNameToken(r, inAt) && !r.seesAt(inAt, 'in')) inAt++;
  if (!r.seesAt(inAt, 'in')) return null;
  let to = inAt + 1;
  while (to < inAt + 6 && isNameToken(r, to)) to++;
  const words = r.slice({ from: r.peek(inAt + 1).from, to: r.peek(to - 1).to });
  if (to === inAt + 1 || nearNames(words, r.vocabulary.tableNames(), 1).length === 0) return null;
  return {
    opening: inAt + 1,
    read: () => {
      r.at += inAt + 1;
      return unknownTable(r);
    },
  };
}

function isNameToken(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  return kind === 'word' || kind === 'number' || (kind === 'symbol' && /^[#&'.-]$/.test(text));
}

/** `total of` column `in` table. */
function readColumn(r: Reader, what: ColumnOf['what'], opening: number): Formula {
  const from = r.token.from;
  const found = columnPhrase(r, opening);
  if (!found) throw new Error('a phrase about a table that is none');
  const { table, column, inAt, nameFrom, tableLength } = found;
  r.take(nameFrom, 'phrase');
  const words = inAt - nameFrom;
  if (!column) return unknownColumn(r, table, words, amounts(table));
  r.takeColumn(words, column.id);
  r.take(1, 'phrase');
  const tableSay = takeTable(r, table, tableLength);
  return {
    kind: 'column',
    what,
    table: table.id,
    column: column.id,
    columnSay: plainName(column.name),
    tableSay,
    cells: column.cells,
    spot: r.since(from),
  };
}

/** `how many` table. */
function readRowCount(r: Reader): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(2, 'phrase');
  const found = r.vocabulary.tableAt(r.tokens, r.at, r.part, r.self);
  if (!found) return unknownTable(r);
  const { table, length } = found;
  const tableSay = takeTable(r, table, length);
  const last = nameWords(table.name).at(-1) ?? '';
  const noun = r.vocabulary.nouns.phrases.get(last) ?? null;
  return {
    kind: 'row-count',
    table: table.id,
    tableSay,
    rows: table.rows,
    noun,
    spot: r.since(from),
  };
}

/** `read` column `off` table `for` condition { [','] ['and'] condition } */
function readLookUp(r: Reader): Formula {
  const from = r.token.from;
  r.skipArticle();
  r.take(1, 'phrase');
  if (!r.seesAt(1, 'off')) r.skipArticle();
  const off = offAt(r, 0) ?? 1;
  const found = r.vocabulary.tableAt(r.tokens, r.at + off + 1, r.part, r.self);
  if (!found) {
    r.at += off + 1;
    return unknownTable(r);
  }
  const { table } = found;
  const answer = longestColumn(r.tokens, r.at, table.columns);
  if (!answer || answer.length !== off) return unknownColumn(r, table, off);
  const columnSpot = r.takeColumn(off, answer.column.id);
  r.take(1, 'phrase');
  const tableSay = takeTable(r, table, found.length);
  const like = `read ${plainName(answer.column.name)} off ${tableSay} for ${plainName(table.columns[0]?.name ?? 'size')} …`;
  if (!r.sees('for') && !r.sees('where')) {
    return r.fail({
      code: 'phrase-slot',
      spots: [r.since(from)],
      phrase: 'read … off',
      wanted: '"for" and which row',
      like,
      fixes: firstRows(r, table),
    });
  }
  r.take(1, 'phrase');
  const conditions: LookUpCondition[] = [];
  do {
    const condition = expectCondition(r, table);
    if (!condition || r.problem) return { kind: 'hole', spot: r.since(from) };
    conditions.push(condition);
  } while (goesOn(r, table));
  return {
    kind: 'look-up',
    table: table.id,
    column: answer.column.id,
    columnSay: plainName(answer.column.name),
    columnSpot,
    tableSay,
    cells: answer.column.cells,
    conditions,
    caution: table.caution,
    spot: r.since(from),
  };
}

/** A further condition: a comma or `and`, and a column after it. Takes what joins them. */
function goesOn(r: Reader, table: TableShape): boolean {
  const comma = r.sees(',') ? 1 : 0;
  const and = r.seesAt(comma, 'and') ? 1 : 0;
  if (comma + and === 0) return false;
  const at = r.at + comma + and;
  const article = ARTICLES.has(r.peek(comma + and).text);
  const here = longestColumn(r.tokens, at, table.columns);
  if (!here && !(article && longestColumn(r.tokens, at + 1, table.columns))) return false;
  r.at = at;
  return true;
}

/** What may stand between a column and its value. */
export const RELATIONS: readonly (readonly [readonly string[], Relation])[] = [
  [['is', 'not'], 'is-not'],
  [['at', 'least'], 'at-least'],
  [['not', 'less', 'than'], 'at-least'],
  [['at', 'most'], 'at-most'],
  [['not', 'more', 'than'], 'at-most'],
  [['up', 'to'], 'at-most'],
  [['more', 'than'], 'more'],
  [['less', 'than'], 'less'],
  [['over'], 'more'],
  [['under'], 'less'],
  [['≥'], 'at-least'],
  [['≤'], 'at-most'],
  [['>'], 'more'],
  [['<'], 'less'],
];

/** Rows told by the first column, where it is one of texts. */
function firstRows(r: Reader, table: TableShape): readonly Fix[] {
  const [first] = table.columns;
  if (!first?.texts || r.token.kind !== 'end') return [];
  const name = plainName(first.name);
  return first.texts
    .slice(0, 3)
    .map((text) => r.fix(`For ${name} ${text}`, r.afterLast(), ` for ${name} ${text}`));
}

/** condition = column [ 'is' ] [ relation ] slot */
function expectCondition(r: Reader, table: TableShape): LookUpCondition | null {
  if (longestColumn(r.tokens, r.at + 1, table.columns)) r.skipArticle();
  const named = longestColumn(r.tokens, r.at, table.columns);
  if (!named) {
    unknownColumn(r, table, 1);
    return null;
  }
  const { column } = named;
  const columnSpot = r.takeColumn(named.length, column.id);
  const negated = r.sees('is', 'not') && !r.seesAt(2, 'less') && !r.seesAt(2, 'more');
  if ((r.sees('is') && !negated) || r.sees('=')) r.take(1, 'operator');
  const found = RELATIONS.find(([words]) => r.seesAll(0, words));
  if (found) r.take(found[0].length, 'operator');
  const choice = column.texts ? expectChoice(r, column.texts) : null;
  if (r.problem) return null;
  if (!choice && r.token.kind !== 'quoted' && !seesSlot(r) && !r.sees('-')) {
    r.fail({
      code: 'phrase-slot',
      spots: [columnSpot],
      phrase: plainName(column.name),
      wanted: 'a value after it',
      like: `${plainName(column.name)} ${column.texts?.[0] ?? 'at least 12 ft'}`,
      fixes:
        r.token.kind === 'end'
          ? (column.texts ?? [])
              .slice(0, 3)
              .map((text) => r.fix(`Write ${text}`, r.afterLast(), ` ${text}`))
          : [],
    });
    return null;
  }
  const value = choice ?? (r.token.kind === 'quoted' ? quoted(r) : expectSlot(r));
  return {
    column: column.id,
    columnSay: plainName(column.name),
    columnSpot,
    cells: column.cells,
    blanks: column.blanks,
    relation: found?.[1] ?? 'is',
    value,
    listed: choice !== null,
  };
}

function quoted(r: Reader): Formula {
  const { text } = r.token;
  return { kind: 'words', text, spot: r.take(1, 'amount') };
}

/** How many tokens ahead the `off` stands that ends the name of a column. */
function offAt(r: Reader, ahead: number): number | null {
  let any: number | null = null;
  for (let at = ahead + 1; at <= ahead + LONGEST_NAME; at++) {
    if (r.peek(at - 1).kind === 'end') break;
    if (!r.seesAt(at, 'off')) continue;
    if (r.vocabulary.tableAt(r.tokens, r.at + at + 1, r.part, r.self)) return at;
    any ??= at;
  }
  return any;
}

function takeTable(r: Reader, table: TableShape, length: number): string {
  const skipped = ARTICLES.has(r.token.text) && length > nameWords(table.name).length ? 1 : 0;
  const cell = r.vocabulary.cell(table.id);
  if (!cell) {
    r.take(length, 'phrase');
    return plainName(table.name);
  }
  r.take(length, 'name', table.id);
  r.mention(table.id);
  const qualified = length - skipped > nameWords(cell.name).length;
  const name = plainName(cell.name);
  return qualified ? `${r.vocabulary.partName(cell.part)} ${name}` : name;
}

function unknownTable(r: Reader): Formula {
  let count = 0;
  while (count < 6 && r.peek(count).kind === 'word' && !r.seesAt(count, 'for')) count++;
  const spot = { from: r.token.from, to: r.peek(Math.max(0, count - 1)).to };
  const word = r.slice(spot);
  const near = nearNames(word, r.vocabulary.tableNames(), 3);
  return r.fail({
    code: 'unknown-table',
    spots: [spot],
    word,
    near,
    fixes: (near.length > 0 ? near : few(r.vocabulary.tableNames())).map((name) =>
      r.fix(`Use "${name}"`, spot, plainName(name)),
    ),
  });
}

/** All of them where they are few enough to choose from. */
function few(names: readonly string[]): readonly string[] {
  return names.length <= 4 ? names : [];
}

/** Columns that can be added up. */
function amounts(table: TableShape): readonly ColumnShape[] {
  return table.columns.filter((column) => column.texts === null);
}

function unknownColumn(
  r: Reader,
  table: TableShape,
  words: number,
  fitting: readonly ColumnShape[] = table.columns,
): Formula {
  const spot = { from: r.token.from, to: r.peek(Math.max(0, words - 1)).to };
  const word = r.slice(spot);
  const columns = table.columns.map((c) => c.name).filter((name) => name !== '');
  const fits = fitting.map((c) => c.name).filter((name) => name !== '');
  const near = nearNames(word, fits, 3);
  const offered = near.length > 0 || fits.length > 4 ? near : fits;
  return r.fail({
    code: 'unknown-column',
    spots: [spot],
    word,
    table: table.name,
    columns,
    fixes: offered.map((name) => r.fix(`Use "${name}"`, spot, plainName(name))),
  });
}
