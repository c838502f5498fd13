// What can be named in a row of a table: its other columns, then all that can be named in the table's part.
// Of equal length a column's name wins over a cell's; a longer name wins, as everywhere.
import { ARTICLES, type Token, nameWords } from './lexer.ts';
import type { NamedCell, PartName } from './reading.ts';
import type { SizeTable } from './size-table.ts';
import type { ColumnShape, TableShape } from './table-shape.ts';
import type { CellId } from './tree.ts';
import type { NameFound } from './namesakes.ts';
import { plainName, Vocabulary } from './vocabulary.ts';

export class RowVocabulary extends Vocabulary {
  readonly #around: Vocabulary;
  readonly #table: CellId;
  readonly #own: CellId | null;

  /** `own` is the column whose formula is read: its own name is not a name in it. */
  constructor(around: Vocabulary, table: CellId, own: CellId | null) {
    super(around.nouns, around.sign);
    this.#around = around;
    this.#table = table;
    this.#own = own;
  }

  override get parts(): readonly PartName[] {
    return this.#around.parts;
  }

  override partName(key: string): string {
    return this.#around.partName(key);
  }

  override partAt(
    tokens: readonly Token[],
    at: number,
  ): { readonly length: number; readonly key: string } | null {
    return this.#around.partAt(tokens, at);
  }

  override cell(id: CellId): NamedCell | undefined {
    const shape = this.#shape;
    const column = shape?.columns.find((c) => c.id === id);
    if (!shape || !column) return this.#around.cell(id);
    return { id, name: column.name, part: shape.part };
  }

  override nameAt(tokens: readonly Token[], at: number, part: string): NameFound | null {
    const around = this.#around.nameAt(tokens, at, part, null);
    const article = ARTICLES.has(tokens[at]?.text ?? '') ? 1 : 0;
    // A column may be called A.
    for (const skip of article ? [1, 0] : [0]) {
      const found = longestColumn(tokens, at + skip, this.#columns);
      const length = found ? found.length + skip : 0;
      if (found && length >= (around?.length ?? 0)) return { length, cells: [found.column.id] };
    }
    return around;
  }

  override wayToSay(id: CellId, part: string): string {
    const column = this.#shape?.columns.find((c) => c.id === id);
    if (column) return plainName(column.name);
    const alone = this.#around.wayToSay(id, part, null);
    const cell = this.#around.cell(id);
    if (!cell || !this.#columns.some((c) => sameWords(c.name, alone))) return alone;
    return `${this.partName(cell.part)} ${plainName(cell.name)}`.trim();
  }

  override *namesIn(part: string): Iterable<{ say: string; id: CellId }> {
    for (const { id, name } of this.#columns) yield { say: plainName(name), id };
    yield* this.#around.namesIn(part, null);
  }

  override table(id: CellId): TableShape | undefined {
    return this.#around.table(id);
  }

  override tableAt(
    tokens: readonly Token[],
    at: number,
    part: string,
  ): { readonly length: number; readonly table: TableShape } | null {
    return this.#around.tableAt(tokens, at, part, null);
  }

  override get sizeTables(): readonly SizeTable[] {
    return this.#around.sizeTables;
  }

  override tableNames(): readonly string[] {
    return this.#around.tableNames();
  }

  override choicesOf(id: CellId): readonly string[] | null {
    const column = this.#shape?.columns.find((c) => c.id === id);
    return column ? column.texts : this.#around.choicesOf(id);
  }

  get #shape(): TableShape | undefined {
    return this.#around.table(this.#table);
  }

  get #columns(): readonly ColumnShape[] {
    return (this.#shape?.columns ?? []).filter((c) => c.id !== this.#own);
  }
}

/** The column with the longest name that begins here. */
export function longestColumn(
  tokens: readonly Token[],
  at: number,
  columns: readonly ColumnShape[],
): { readonly length: number; readonly column: ColumnShape } | null {
  let best: { length: number; column: ColumnShape } | null = null;
  for (const column of columns) {
    const words = wordsOf(column);
    if (words.length <= (best?.length ?? 0)) continue;
    const fits = words.every((word, i) => {
      const token = tokens[at + i];
      return token?.text === word && token.kind !== 'quoted';
    });
    if (fits) best = { length: words.length, column };
  }
  return best;
}

const words = new WeakMap<ColumnShape, readonly string[]>();

function wordsOf(column: ColumnShape): readonly string[] {
  let found = words.get(column);
  if (!found) words.set(column, (found = nameWords(column.name)));
  return found;
}

function sameWords(a: string, b: string): boolean {
  return nameWords(a).join(' ') === nameWords(b).join(' ');
}
