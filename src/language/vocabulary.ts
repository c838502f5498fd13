// What can be named: the cells and parts of a notebook, units and counted things, each found by its words.
// A name in reach of a formula: the own part's first, then the notebook's; see `nameAt`.
import type { Nouns } from '../quantity/nouns.ts';
import type { CellId } from './tree.ts';
import type { NamedCell, PartName } from './reading.ts';
import { inReach, insert, type NameFound, type Namesakes, ofParts, standsAt } from './namesakes.ts';
import { Trie } from './trie.ts';
import type { TableShape } from './table-shape.ts';
import { ARTICLES, nameWords, type Token, tokensOf } from './lexer.ts';
import { OPERATOR_WORDS } from './words.ts';
import type { SizeTable } from './size-table.ts';
import { type ChoiceColumn, listedChoices } from './listed-choices.ts';
import { type Unit, unitPhrases } from '../quantity/units.ts';

export class Vocabulary {
  readonly nouns: Nouns;
  readonly sign: string;
  /** Whether messages offer the nearest names: left out where formulas are read over and over and nobody reads messages. */
  offers: 'near-names' | 'nothing' = 'near-names';
  readonly #cells = new Map<CellId, NamedCell>();
  /** By name as it is written: like sections have the same names over and over. */
  readonly #byName = new Map<string, Namesakes>();
  readonly #names = new Trie<Namesakes>();
  readonly #namesakes = new Map<string, Namesakes>();
  readonly #parts = new Trie<string>();
  readonly #nouns = new Trie<string>();
  readonly #tables = new Map<CellId, TableShape>();
  /** What the `choices` of a cell say. */
  readonly #choices = new Map<CellId, string>();
  /** Tables that every notebook can read from; the notebook's own go before them. */
  #reference: ReferenceTables | null = null;
  #tries = false;
  #tried = 0;
  #partNames: readonly PartName[] = [];
  #nameOfPart: ReadonlyMap<string, string> = new Map();

  /** `sign` is the notebook's one currency: `$`, `£`, `€`. */
  constructor(nouns: Nouns, sign = '$') {
    this.nouns = nouns;
    this.sign = sign;
    for (const [phrase, noun] of nouns.phrases) this.#nouns.add(nameWords(phrase), noun);
  }

  setParts(parts: readonly PartName[]): void {
    for (const part of this.#partNames) this.#parts.remove(nameWords(part.name), part.key);
    this.#partNames = parts;
    this.#nameOfPart = new Map(parts.map((part) => [part.key, part.name]));
    for (const part of parts) {
      const words = nameWords(part.name);
      if (words.length > 0) this.#parts.add(words, part.key);
    }
  }

  add(cell: NamedCell): void {
    this.#cells.set(cell.id, cell);
    const namesakes = this.#byName.get(cell.name) ?? this.#namesakesOf(cell.name);
    if (!namesakes) return;
    insert(cell.id, namesakes.all);
    const ids = namesakes.byPart.get(cell.part);
    if (ids) insert(cell.id, ids);
    else namesakes.byPart.set(cell.part, [cell.id]);
  }

  /** The cells with the words of this name; null where it has none. */
  #namesakesOf(name: string): Namesakes | null {
    const words = nameWords(name);
    if (words.length === 0) return null;
    const key = words.join(' ');
    let namesakes = this.#namesakes.get(key);
    if (!namesakes) {
      const needsPart = words.some((w) => OPERATOR_WORDS.has(w));
      namesakes = { words, spellings: [], all: [], byPart: new Map(), needsPart };
      this.#namesakes.set(key, namesakes);
      this.#names.add(words, namesakes);
    }
    this.#byName.set(name, namesakes);
    namesakes.spellings.push(name);
    return namesakes;
  }

  remove(id: CellId): void {
    const cell = this.#cells.get(id);
    if (!cell) return;
    this.#cells.delete(id);
    const namesakes = this.#byName.get(cell.name);
    const ids = namesakes?.byPart.get(cell.part);
    if (!namesakes || !ids) return;
    ids.splice(ids.indexOf(id), 1);
    namesakes.all.splice(namesakes.all.indexOf(id), 1);
    if (ids.length === 0) namesakes.byPart.delete(cell.part);
    if (namesakes.byPart.size > 0) return;
    const { words, spellings } = namesakes;
    this.#namesakes.delete(words.join(' '));
    this.#names.remove(words, namesakes);
    for (const spelling of spellings) this.#byName.delete(spelling);
  }

  cell(id: CellId): NamedCell | undefined {
    return this.#cells.get(id);
  }

  /** From now on this cell is a table of this shape. */
  putTable(shape: TableShape): void {
    this.#tables.set(shape.id, shape);
  }

  dropTable(id: CellId): void {
    this.#tables.delete(id);
  }

  table(id: CellId): TableShape | undefined {
    return this.#tables.get(id);
  }

  /** Is a formula read that is only tried, for what could be offered? A table of the trade is not brought in for it. */
  get tries(): boolean {
    return this.#tries;
  }

  /** How many formulas were tried so far. */
  get tried(): number {
    return this.#tried;
  }

  /** Reads a formula that stands in no cell. */
  trying<T>(work: () => T): T {
    const before = this.#tries;
    this.#tries = true;
    this.#tried++;
    try {
      return work();
    } finally {
      this.#tries = before;
    }
  }

  setReference(tables: ReferenceTables): void {
    this.#reference = tables;
  }

  /** Tables of sizes with dimensions of their own, such as 2x8. */
  get sizeTables(): readonly SizeTable[] {
    return this.#reference?.sizes ?? NO_SIZES;
  }

  /** The table whose name stands here, an article before it skipped; one of the notebook before one of reference. */
  tableAt(
    tokens: readonly Token[],
    at: number,
    part: string,
    self: CellId | null,
  ): { readonly length: number; readonly table: TableShape } | null {
    const found = this.nameAt(tokens, at, part, self);
    const [only, ...more] = found?.cells ?? [];
    const table = only === undefined || more.length > 0 ? undefined : this.#tables.get(only);
    if (found && table) return { length: found.length, table };
    return this.#reference?.at(tokens, at) ?? null;
  }

  /** The names of all tables, for messages. */
  tableNames(): readonly string[] {
    const own = [...this.#tables.values()].map((table) => table.name);
    return [...new Set([...own, ...(this.#reference?.names ?? [])])];
  }

  /** What may be chosen for a cell of text: `pine, hem-fir`, or `species of joist spans`. Null: it has no choices. */
  setChoices(id: CellId, text: string | null): void {
    if (text === null) this.#choices.delete(id);
    else this.#choices.set(id, text);
  }

  choicesOf(id: CellId): readonly string[] | null {
    const text = this.#choices.get(id);
    const cell = this.#cells.get(id);
    if (text === undefined || !cell) return null;
    return this.choiceColumn(id)?.texts ?? listedChoices(text);
  }

  /** The column that the choices of a cell are taken from, with its table. */
  choiceColumn(id: CellId): ChoiceColumn | null {
    const text = this.#choices.get(id);
    const cell = this.#cells.get(id);
    if (text === undefined || !cell) return null;
    const tokens = tokensOf(text);
    for (let at = 1; at < tokens.length; at++) {
      if (tokens[at]?.text !== 'of') continue;
      const found = this.tableAt(tokens, at + 1, cell.part, id);
      if (!found || at + 1 + found.length !== tokens.length - 1) continue;
      const name = nameWords(text.slice(0, tokens[at]?.from)).join(' ');
      const column = found.table.columns.find((c) => nameWords(c.name).join(' ') === name);
      if (!column?.texts) continue;
      const spots = {
        column: { from: 0, to: tokens[at - 1]?.to ?? 0 },
        table: { from: tokens[at + 1]?.from ?? 0, to: tokens.at(-2)?.to ?? text.length },
      };
      return { from: found.table.id, texts: column.texts, spots };
    }
    return null;
  }

  partName(key: string): string {
    return this.#nameOfPart.get(key) ?? '';
  }

  get parts(): readonly PartName[] {
    return this.#partNames;
  }

  /** The words of a name as they are looked for in formulas. */
  wordsOf(name: string): readonly string[] {
    return this.#byName.get(name)?.words ?? nameWords(name);
  }

  /**
   * Could it make a difference to these tokens that a name of these words came or went? Not where a longer
   * name begins with them: it is read before as after.
   */
  turnsOn(
    words: readonly string[],
    tokens: readonly Token[],
    part: string,
    self: CellId | null,
  ): boolean {
    for (let at = 0; at + words.length < tokens.length; at++) {
      if (!standsAt(words, tokens, at)) continue;
      if (this.#followsPart(tokens, at)) return true;
      const found = this.nameAt(tokens, at, part, self);
      if (!found || found.length <= words.length) return true;
    }
    return false;
  }

  /** Does the name of a part end right before `at`? */
  #followsPart(tokens: readonly Token[], at: number): boolean {
    for (let from = at - 1; from >= 0; from--) {
      for (const { length } of this.#parts.all(tokens, from)) if (from + length === at) return true;
    }
    return false;
  }

  /**
   * The longest name at `at` that can be read in `part`, an article before it skipped.
   * Of equal length the own part's wins; then one written with its part's name; then the only other
   * part's that has it. Several cells: parts share it and none can be told from the words.
   */
  nameAt(
    tokens: readonly Token[],
    at: number,
    part: string,
    self: CellId | null,
  ): NameFound | null {
    const article = ARTICLES.has(tokens[at]?.text ?? '');
    const found = this.#nameFrom(tokens, at, article ? 1 : 0, part, self);
    // A cell may be called A.
    return found ?? (article ? this.#nameFrom(tokens, at, 0, part, self) : null);
  }

  #nameFrom(
    tokens: readonly Token[],
    at: number,
    skip: number,
    part: string,
    self: CellId | null,
  ): NameFound | null {
    const start = at + skip;
    let best: NameFound | null = null;
    for (const found of this.#names.all(tokens, start)) {
      const cells = inReach(found.values, part, self);
      if (cells.length > 0) {
        best = { length: found.length + skip, cells };
        break;
      }
    }
    for (const prefix of this.#parts.all(tokens, start)) {
      for (const found of this.#names.all(tokens, start + prefix.length)) {
        const length = skip + prefix.length + found.length;
        if (best && best.length >= length) break;
        const cells = ofParts(found.values, prefix.values, self);
        if (cells.length > 0) best = { length, cells };
      }
    }
    return best;
  }

  /** How a cell has to be written in a formula of `part`: alone where that reads as it, else with its part's name. */
  wayToSay(id: CellId, part: string, self: CellId | null): string {
    const cell = this.#cells.get(id);
    if (!cell) return '';
    const alone = this.#reads(cell.name, id, part, self);
    return alone ? plainName(cell.name) : `${this.partName(cell.part)} ${plainName(cell.name)}`;
  }

  /** Every name that can be written in a formula of `part`, as it has to be written, with its cell. */
  *namesIn(part: string, self: CellId | null): Iterable<{ say: string; id: CellId }> {
    if (this.offers === 'nothing') return;
    for (const cell of this.#cells.values()) {
      if (cell.id !== self) yield { say: this.wayToSay(cell.id, part, self), id: cell.id };
    }
  }

  partAt(tokens: readonly Token[], at: number): { length: number; key: string } | null {
    const found = this.#parts.longest(tokens, at);
    const key = found?.values[0];
    return found && key !== undefined ? { length: found.length, key } : null;
  }

  unitAt(tokens: readonly Token[], at: number): { length: number; unit: Unit } | null {
    const found = UNITS_BY_WORDS.longest(tokens, at);
    const unit = found?.values[0];
    return found && unit ? { length: found.length, unit } : null;
  }

  nounAt(tokens: readonly Token[], at: number): { length: number; noun: string } | null {
    const found = this.#nouns.longest(tokens, at);
    const noun = found?.values[0];
    return found && noun !== undefined ? { length: found.length, noun } : null;
  }

  #reads(name: string, id: CellId, part: string, self: CellId | null): boolean {
    const tokens = tokensOf(name);
    const found = this.nameAt(tokens, 0, part, self);
    return (
      found !== null &&
      found.length === tokens.length - 1 &&
      found.cells[0] === id &&
      found.cells.length === 1
    );
  }
}

const NO_SIZES: readonly SizeTable[] = [];

/** Tables of the trade, by their names. */
export interface ReferenceTables {
  readonly names: readonly string[];
  readonly sizes: readonly SizeTable[];
  at(
    tokens: readonly Token[],
    at: number,
  ): { readonly length: number; readonly table: TableShape } | null;
}

const UNITS_BY_WORDS = new Trie<Unit>();

for (const [phrase, unit] of unitPhrases) UNITS_BY_WORDS.add(nameWords(phrase), unit);

/** A name as it is written inside a formula: lower case but for words that carry their own capitals. */
export function plainName(name: string): string {
  // Most begin with a small letter.
  if (/^[a-z]/.test(name)) return name;
  return name.replace(/^\p{Lu}(?=\p{Ll}|$)/u, (c) => c.toLowerCase());
}
