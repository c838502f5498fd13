// The cursor over a formula's tokens: looking, taking, and leaving a hole with a problem.
// One mistake, one message: after the first problem everything else is passed over quietly.
import { nearNames } from '../words/near.ts';
import { countOf } from '../quantity/dimension.ts';
import { type Form, NONE_WRITTEN, type Term } from '../quantity/form.ts';
import { Fraction, NUMBER } from '../quantity/measure.ts';
import { unitPhrases } from '../quantity/units.ts';
import type { Fix } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';
import { ARTICLES, type Token } from './lexer.ts';
import type { ReadingProblem } from './problems.ts';
import type { Mark, Surroundings } from './reading.ts';
import type { Amount, CellId, Formula, Hole, RecapScope } from './tree.ts';
import { choosingOrs, closingBrackets } from './brackets.ts';
import type { NameFound } from './namesakes.ts';
import type { Vocabulary } from './vocabulary.ts';

/** In what an amount was written: a form, with the larger units that stand before the last (`12 ft 6 in`), or percent. */
export type WrittenIn =
  | { readonly kind: 'form'; readonly form: Form; readonly larger: readonly string[] }
  | { readonly kind: 'share' };

/** How many brackets and phrases may stand inside one another. */
export const DEEPEST = 200;

export class Reader {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly vocabulary: Vocabulary;
  readonly part: string;
  readonly self: CellId | null;
  /** Null while only names are looked for. */
  readonly surroundings: Surroundings | null;

  readonly mentions: CellId[] = [];
  readonly recaps: RecapScope[] = [];
  readonly columns: CellId[] = [];
  readonly marks: Mark[] = [];
  problem: ReadingProblem | null = null;
  at = 0;
  depth = 0;
  /** How many values were read, for bounding the work. */
  steps = 0;
  /** How many brackets are open here. */
  brackets = 0;
  /** Above nought where `and` parts two things: `between 4 ft and 6 ft`. */
  separating = 0;
  /** True while a value is read in which `12 feet and 6 inches` is one length. */
  joinsInches = false;
  /** Beside how many comparisons: there `and` joins them. */
  beside = 0;
  /** Inside how many conditions: there `over` compares where nothing else does. */
  conditions = 0;
  /** Every plus, minus, less and with, for conditions: where it stands and inside how many brackets. */
  readonly sums: { readonly spot: Spot; readonly brackets: number }[] = [];
  /** In what the amount was written that was read last; null for a bare number. */
  writtenIn: WrittenIn | null = null;
  /** True when how the formula reads hangs on what a named cell holds. */
  askedHolds = false;
  /** Does `together` or `added up` stand anywhere? */
  readonly saysTogether: boolean;
  #choosingOrs: ReadonlySet<number> | null = null;
  #closing: ReadonlyMap<number, number> | null = null;
  /** Names that were looked for, by token index: the same place is asked about again and again. */
  readonly #names: (NameFound | null)[] = [];
  /** What stands between brackets: the loosest level, handed in because it leans on everything else. */
  readonly readFormula: (r: Reader) => Formula;

  constructor(
    text: string,
    tokens: readonly Token[],
    vocabulary: Vocabulary,
    part: string,
    self: CellId | null,
    surroundings: Surroundings | null,
    readFormula: (r: Reader) => Formula,
  ) {
    this.text = text;
    this.tokens = tokens;
    this.vocabulary = vocabulary;
    this.part = part;
    this.self = self;
    this.surroundings = surroundings;
    this.readFormula = readFormula;
    this.saysTogether = tokens.some((t) => t.text === 'together' || t.text === 'added');
  }

  /** Token indices of every `or` that belongs to `whichever is …`. */
  get choosingOrs(): ReadonlySet<number> {
    return (this.#choosingOrs ??= choosingOrs(this.tokens));
  }

  /** For every opening bracket's token index, that of the one that closes it. */
  get closing(): ReadonlyMap<number, number> {
    return (this.#closing ??= closingBrackets(this.tokens));
  }

  get token(): Token {
    return this.peek(0);
  }

  /** Is this the end of the text, or of the bracket that is open? */
  get closes(): boolean {
    return this.token.kind === 'end' || this.sees(')') || this.sees(']');
  }

  peek(ahead: number): Token {
    const { tokens } = this;
    const at = this.at + ahead;
    return tokens[at < tokens.length ? at : tokens.length - 1];
  }

  /** The longest name that stands so many tokens ahead. */
  nameAt(ahead: number): NameFound | null {
    const at = this.at + ahead;
    const known = this.#names[at];
    if (known !== undefined) return known;
    const found = this.vocabulary.nameAt(this.tokens, at, this.part, this.self);
    this.#names[at] = found;
    return found;
  }

  /** Do these words (or marks) stand here? */
  sees(first: string, second?: string, third?: string): boolean {
    return this.seesAt(0, first, second, third);
  }

  seesAt(ahead: number, first: string, second?: string, third?: string): boolean {
    return (
      this.#says(ahead, first) &&
      (second === undefined || this.#says(ahead + 1, second)) &&
      (third === undefined || this.#says(ahead + 2, third))
    );
  }

  /** Do all these words stand there, one after the other? */
  seesAll(ahead: number, words: readonly string[]): boolean {
    for (let i = 0; i < words.length; i++) {
      if (!this.#says(ahead + i, words[i])) return false;
    }
    return true;
  }

  #says(ahead: number, word: string): boolean {
    const { text, kind } = this.peek(ahead);
    return text === word && (kind === 'word' || kind === 'symbol');
  }

  /** Takes the words if they stand here. Marks them as operator words. */
  maybe(first: string, second?: string, third?: string): boolean {
    if (!this.seesAt(0, first, second, third)) return false;
    this.take(third !== undefined ? 3 : second !== undefined ? 2 : 1, 'operator');
    return true;
  }

  /** Takes a mark that is part of an amount. */
  maybeMark(mark: string): boolean {
    if (!this.sees(mark)) return false;
    this.at++;
    return true;
  }

  /** Goes on by so many tokens, marked as what they are. */
  take(count: number, kind: Mark['kind'], cell: CellId | null = null): Spot {
    const { from } = this.token;
    const { to } = this.peek(Math.max(0, count - 1));
    if (count > 0) this.marks.push({ from, to, kind, cell });
    this.at += count;
    return { from, to };
  }

  /** Back to a place that was left to try something; what the try made of it is forgotten. */
  goBack(at: number, marks: number, brackets: number): void {
    this.at = at;
    this.marks.length = marks;
    this.brackets = brackets;
    this.problem = null;
  }

  /** Takes the words of a column's name in a phrase about its table. */
  takeColumn(count: number, column: CellId): Spot {
    const spot = { from: this.token.from, to: this.peek(Math.max(0, count - 1)).to };
    this.marks.push({ ...spot, kind: 'name', cell: null, column });
    if (!this.columns.includes(column)) this.columns.push(column);
    this.at += count;
    return spot;
  }

  skipArticle(): void {
    if (this.token.kind === 'word' && ARTICLES.has(this.token.text)) this.at++;
  }

  /** From a place to the end of what was read last. */
  since(from: number): Spot {
    const last = this.tokens[this.at - 1];
    return { from, to: Math.max(from, last?.to ?? from) };
  }

  /** Leaves a hole and goes to the end; only the first problem is kept. */
  fail(problem: ReadingProblem): Hole {
    const spot = problem.spots[0] ?? { from: this.token.from, to: this.token.to };
    this.problem ??= problem;
    this.at = this.tokens.length - 1;
    return { kind: 'hole', spot };
  }

  /** The text with a stretch replaced, as a fix. */
  fix(say: string, spot: Spot, insert: string): Fix {
    return { say, formula: this.text.slice(0, spot.from) + insert + this.text.slice(spot.to) };
  }

  /** Right behind what was read last: where more of a phrase would be written. */
  afterLast(): Spot {
    const at = this.tokens[this.at - 1]?.to ?? 0;
    return { from: at, to: at };
  }

  /** Where the blanks before this place, and a comma before them, begin. */
  gapBefore(at: number): number {
    return this.text.slice(0, at).replace(/\s*,?\s*$/, '').length;
  }

  slice(spot: Spot): string {
    return this.text.slice(spot.from, spot.to);
  }

  mention(cell: CellId): void {
    if (!this.mentions.includes(cell)) this.mentions.push(cell);
  }

  /** Does the tree hold a share, as far as can be told here? */
  holdsShare(tree: Formula): boolean {
    if (tree.kind === 'amount') return tree.holds.measure.kind === 'share';
    if (tree.kind === 'name') {
      this.askedHolds = true;
      return this.surroundings?.holdsOf(tree.cell)?.measure.kind === 'share';
    }
    return false;
  }

  /** A plain written number, made for a word such as `half`. */
  number(value: string, say: string, spot: Spot): Amount {
    const holds = { measure: NUMBER, showIn: null, written: NONE_WRITTEN };
    return {
      kind: 'amount',
      value: new Fraction(value),
      holds,
      bare: true,
      label: null,
      say,
      spot,
    };
  }

  /** Where the bracket that is open here closes, or the text ends. */
  endOfBracket(): number {
    let open = 0;
    for (let i = this.at; i < this.tokens.length; i++) {
      const token = this.tokens[i];
      if (token.text === '(' || token.text === '[') open++;
      if (token.text === ')' || token.text === ']') {
        if (open === 0) return token.from;
        open--;
      }
    }
    return this.text.trimEnd().length;
  }

  /** Does a cell hold what this unit or noun measures? For suggesting what to divide by. */
  holdsTerm(id: CellId, term: Term | null): boolean {
    const measure = this.surroundings?.holdsOf(id)?.measure;
    if (measure?.kind !== 'amount' || measure.rate || !term) return false;
    const wanted = term.kind === 'unit' ? term.unit.dimension : countOf(term.noun);
    return measure.dimension === wanted;
  }

  /** Units and counted things with a name near this word. */
  nearUnits(word: string): readonly string[] {
    const nouns = this.vocabulary.nouns.phrases;
    const near = nearNames(word, [...unitPhrases.keys(), ...nouns.keys()], 9);
    // `yard`, `yards` and `yds` are one and the same.
    const meant = new Map(near.map((say) => [unitPhrases.get(say) ?? nouns.get(say), say]));
    for (const say of near.toReversed()) meant.set(unitPhrases.get(say) ?? nouns.get(say), say);
    return [...meant.values()].slice(0, 3);
  }
}
