// Where formulas mention cells and parts, by the language's own reading, and how to say them anew.
import { nameWords, tokensOf } from '../language/lexer.ts';
import { marks } from '../language/marks.ts';
import type { Mark, Scan } from '../language/reading.ts';
import { RowVocabulary } from '../language/row-vocabulary.ts';
import { scan } from '../language/scan.ts';
import type { CellId, RecapScope } from '../language/tree.ts';
import { plainName, type Vocabulary } from '../language/vocabulary.ts';
import { formulasIn } from '../picture/asking.ts';
import type { Spot } from '../words/spot.ts';
import { isTextColumn } from '../engine/tables.ts';
import type { Cell, Splice, Table } from './document.ts';
import type { NotebookText } from './notebook-text.ts';
import { COLUMN_LEAD, endsInTable } from './picture-values.ts';
import { changed } from './change.ts';

/** A text of a cell that is read as a formula: its formula, its value by hand, or what a picture of it is told. */
export interface Saying {
  readonly cell: CellId;
  readonly part: string;
  readonly where: 'formula' | 'by hand' | 'table' | 'picture';
  /** In a picture: which remark of the cell, where in it, and what stands before the text only for reading it. */
  readonly told?: { readonly remark: number; readonly spot: Spot; readonly lead: string };
  /** In a table: the row, or null for what the column says, and the column. */
  readonly at?: { readonly row: number | null; readonly column: number };
  readonly text: string;
}

export interface Mention extends Spot {
  readonly cell: CellId;
}

export function* sayingsOf(notebook: NotebookText): Iterable<Saying> {
  const tables = notebook.sections.flatMap((s) =>
    s.cells.flatMap((cell) => (cell.table ? [cell.name] : [])),
  );
  for (const section of notebook.sections) {
    for (const cell of section.cells) {
      yield { cell: cell.id, part: cell.part, where: 'formula', text: cell.formula };
      if (cell.table) yield* sayingsInTable(cell, cell.table);
      const hand = cell.remarks.find((r) => r.kind === 'by hand');
      if (hand) yield { cell: cell.id, part: cell.part, where: 'by hand', text: hand.text };
      for (const [remark, { kind, text }] of cell.remarks.entries()) {
        if (kind === 'picture') yield* sayingsInPicture(cell, remark, text, tables);
      }
    }
  }
}

/** What a picture is told. A column of a table is read as in a phrase about it. */
function* sayingsInPicture(
  { id, part }: Cell,
  remark: number,
  text: string,
  tables: readonly string[],
): Iterable<Saying> {
  for (const { text: value, from, to } of formulasIn(text)) {
    const lead = endsInTable(value, tables) ? COLUMN_LEAD : '';
    const told = { remark, spot: { from, to }, lead };
    yield { cell: id, part, where: 'picture', told, text: lead + value };
  }
}

/** What the columns and the rows of a table say, but for texts. */
function* sayingsInTable({ id, part }: Cell, table: Table): Iterable<Saying> {
  const where = 'table';
  for (const [column, { name, formula }] of table.columns.entries()) {
    const texts = table.rows.map((row) => row.texts[column] ?? '');
    if (isTextColumn({ name, formula }, texts)) continue;
    if (formula !== null) {
      yield { cell: id, part, where, at: { row: null, column }, text: formula };
    }
    for (const [row, text] of texts.entries()) {
      if (/\p{L}/u.test(text)) yield { cell: id, part, where, at: { row, column }, text };
    }
  }
}

/** What can be named where this stands. */
export function vocabularyOf(saying: Saying, vocabulary: Vocabulary): Vocabulary {
  if (!saying.at) return vocabulary;
  const own = vocabulary.table(saying.cell)?.columns[saying.at.column]?.id ?? null;
  return new RowVocabulary(vocabulary, saying.cell, own);
}

export function scanOf(text: string, saying: Saying, vocabulary: Vocabulary): Scan {
  const self = selfOf(saying);
  return scan(text, vocabularyOf(saying, vocabulary), saying.part, self);
}

/** Whose own name is none in it: a picture under a cell may well name that cell. */
function selfOf({ at, where, cell }: Saying): CellId | null {
  return at || where === 'picture' ? null : cell;
}

/** The names in a text as it is read, in order; those after a spot that can't be read are found by their words. */
export function mentionsIn(
  text: string,
  saying: Saying,
  vocabulary: Vocabulary,
): readonly Mention[] {
  const found = scanOf(text, saying, vocabulary);
  const read = marks(found).flatMap((m) =>
    m.cell === null ? [] : [{ from: m.from, to: m.to, cell: m.cell }],
  );
  if (found.mentions.every((id) => read.some((m) => m.cell === id))) return read;
  const own = vocabularyOf(saying, vocabulary);
  const swept: Mention[] = [...read];
  const tokens = tokensOf(text);
  const readTo = read.at(-1)?.to ?? 0;
  for (let at = 0; at < tokens.length; at++) {
    if (tokens[at].from < readTo) continue;
    const name = own.nameAt(tokens, at, saying.part, selfOf(saying));
    if (!name) continue;
    const cell = name.cells[0];
    if (cell !== undefined) {
      swept.push({ from: tokens[at].from, to: tokens[at + name.length - 1].to, cell });
    }
    at += name.length - 1;
  }
  return swept;
}

/** Which cells and columns a text names, in order, and which recaps it asks for. */
export interface Named {
  readonly names: readonly CellId[];
  readonly mentions: readonly CellId[];
  readonly recaps: readonly RecapScope[];
}

export function namesIn(text: string, saying: Saying, vocabulary: Vocabulary): Named {
  const found = scanOf(text, saying, vocabulary);
  const names = marks(found).flatMap((m) => m.cell ?? m.column ?? []);
  return { names, mentions: found.mentions, recaps: found.recaps };
}

/** Two texts of which this says the same read the same. A cell and a part may be meant by another one afterwards. */
export function sayNamed(
  { names, mentions, recaps }: Named,
  meant: (id: CellId) => CellId = (id) => id,
  partLater: (key: string) => string = (key) => key,
): string {
  const later = recaps.map((r) => ({ ...r, part: r.part === null ? null : partLater(r.part) }));
  return JSON.stringify([names.map(meant), mentions.map(meant), later]);
}

export function namedIn(text: string, saying: Saying, vocabulary: Vocabulary): string {
  return sayNamed(namesIn(text, saying, vocabulary));
}

/** The words of the name itself within a mention: without an article and a part's name before it. */
export function nameWithin(text: string, mention: Spot, name: string): Spot {
  const tokens = tokensOf(text.slice(mention.from, mention.to)).slice(0, -1);
  const first = tokens[tokens.length - nameWords(name).length];
  return { from: mention.from + (first?.from ?? 0), to: mention.to };
}

/** The part's name before the cell's within a mention, or null where the cell is named alone. */
export function partWithin(text: string, mention: Spot, cell: string, part: string): Spot | null {
  const tokens = tokensOf(text.slice(mention.from, mention.to)).slice(0, -1);
  const nameAt = tokens.length - nameWords(cell).length;
  const partAt = nameAt - nameWords(part).length;
  if (partAt < 0 || nameAt <= partAt) return null;
  return { from: mention.from + tokens[partAt].from, to: mention.from + tokens[nameAt - 1].to };
}

/** The spots where a recap phrase says this part. */
export function recapSpots(
  text: string,
  saying: Saying,
  vocabulary: Vocabulary,
  part: string,
): readonly Spot[] {
  const found = scanOf(text, saying, vocabulary);
  const key = vocabulary.parts.find((p) => p.name === part)?.key;
  if (key === undefined || !found.recaps.some((r) => r.part === key)) return [];
  const words = nameWords(part).join(' ');
  return marks(found).filter(
    (m: Mark) => m.kind === 'phrase' && nameWords(text.slice(m.from, m.to)).join(' ') === words,
  );
}

/** The spots of words that belong to a phrase and look like this. */
export function phraseSpots(
  text: string,
  saying: Saying,
  vocabulary: Vocabulary,
  like: RegExp,
): readonly Spot[] {
  return marks(scanOf(text, saying, vocabulary)).filter(
    (m: Mark) => m.kind === 'phrase' && like.test(text.slice(m.from, m.to)),
  );
}

/** A name as it goes into a formula in the place of `typed`: with a capital only where there was one. */
export function inPlaceOf(typed: string, name: string): string {
  return /^\p{Lu}\p{Ll}/u.test(typed) ? name : plainName(name);
}

/** The text with each spot said anew. */
export function said(text: string, splices: readonly Splice[]): string {
  return changed(text, { say: '', splices });
}

/** Do all the words stand somewhere in the text? A cheap question before a reading. */
export function mayName(text: string, name: string): boolean {
  const low = text.toLowerCase();
  const words = nameWords(name);
  return words.length > 0 && words.every((w) => low.includes(w) || !/^[\p{L}\p{N}]+$/u.test(w));
}

export function cellOf(notebook: NotebookText, id: CellId): Cell {
  const cell = notebook.cell(id);
  if (!cell) throw new Error(`no cell ${id} in the notebook`);
  return cell;
}
