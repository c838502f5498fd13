// What an explanation asks of whoever holds the notebook, and the little it looks up by itself:
// names, sources and cautions of cells, and what a unit word measures.
import type { CellInput, CellState, Outcome } from '../engine/outcome.ts';
import type { Plan } from '../language/plan.ts';
import { sentence } from '../language/sentence.ts';
import type { CellId, Formula } from '../language/tree.ts';
import type { Cell, Notebook } from '../notebook/document.ts';
import { type Dimension, MONEY, countOf } from '../quantity/dimension.ts';
import { Nouns } from '../quantity/nouns.ts';
import type { ShowSettings } from '../quantity/show.ts';
import { unitPhrases } from '../quantity/units.ts';

/** An estimate, as far as explaining one of its numbers needs it. */
export interface Explainable {
  readonly notebook: Notebook;
  state(cell: CellId): CellState;
  /** Works any plan with the cells as they stand now. */
  evaluate(plan: Plan): Outcome;
}

export interface CellFacts {
  readonly name: string;
  readonly from: string | null;
  readonly caution: string | null;
}

export interface Book {
  readonly show: ShowSettings;
  state(cell: CellId): CellState;
  evaluate(plan: Plan): Outcome;
  facts(cell: CellId): CellFacts;
  /** Does a cell stand before another in the notebook? */
  isBefore(a: CellId, b: CellId): boolean;
  /** A formula said back in tidy words. */
  say(formula: Formula): string;
  /** What a unit or noun word measures: `cubic feet` is a volume; null for any other word. */
  measures(word: string): Dimension | null;
}

export function bookOf(estimate: Explainable): Book {
  const { notebook } = estimate;
  const { currency, counted, fractions, measures } = notebook.settings;
  const nouns = nounsWith(counted);
  /** The cell in the notebook: a row's cell stands where its table does. */
  const standing = (cell: CellId): CellId => estimate.state(cell).input.inTable ?? cell;
  const partOf = (cell: CellId): PartIndex | null =>
    indexOf(notebook, estimate.state(cell).input.part);
  return {
    show: { currency, fractions, measures, many: (noun) => nouns.many(noun) },
    state: (cell) => estimate.state(cell),
    evaluate: (plan) => estimate.evaluate(plan),
    facts: (cell) => factsOf(partOf(cell)?.cells.get(standing(cell)), estimate.state(cell).input),
    isBefore(a, b) {
      const [one, other] = [partOf(a), partOf(b)];
      const [first, second] = [standing(a), standing(b)];
      // Rows of one table were given their ids from the first on, downwards from nought.
      if (first === second) return a > b;
      if (!one || !other || one === other) return placeIn(one, first) < placeIn(other, second);
      return one.place < other.place;
    },
    say: (formula) => sentence(formula, nouns),
    measures: (word) => measuredBy(word, currency, nouns),
  };
}

/** The cells of one part, found when somebody asks for one of them. */
interface PartIndex {
  readonly place: number;
  readonly cells: ReadonlyMap<CellId, Cell>;
  readonly order: readonly CellId[];
}

/** A notebook is a value, so what is read from it once holds for as long as it is kept. */
const indexes = new WeakMap<Notebook, Map<string, PartIndex | null>>();

function indexOf(notebook: Notebook, key: string): PartIndex | null {
  const known = indexes.get(notebook) ?? new Map<string, PartIndex | null>();
  indexes.set(notebook, known);
  const found = known.get(key);
  if (found !== undefined) return found;
  const place = notebook.parts.findIndex((part) => part.key === key);
  const blocks = notebook.parts[place]?.blocks ?? [];
  const cells = blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell] : []));
  const made: PartIndex = {
    place,
    cells: new Map(cells.map((cell) => [cell.id, cell])),
    order: cells.map((cell) => cell.id),
  };
  known.set(key, made);
  return made;
}

function placeIn(part: PartIndex | null, cell: CellId): number {
  return part?.order.indexOf(cell) ?? Infinity;
}

let lastNouns: { readonly counted: string; readonly nouns: Nouns } | null = null;

/** The trade's nouns and the notebook's own; kept from one asking to the next, as they seldom change. */
function nounsWith(counted: readonly string[]): Nouns {
  const key = counted.join('\n');
  if (lastNouns?.counted !== key) lastNouns = { counted: key, nouns: new Nouns(counted) };
  return lastNouns.nouns;
}

function measuredBy(word: string, currency: string, nouns: Nouns): Dimension | null {
  if (word === currency) return MONEY;
  const unit = unitPhrases.get(word.toLowerCase());
  if (unit) return unit.dimension;
  const noun = nouns.phrases.get(word.toLowerCase());
  return noun === undefined ? null : countOf(noun);
}

function factsOf(cell: Cell | undefined, input: CellInput): CellFacts {
  const { name, source = null, caution = null } = input;
  return {
    name,
    from: remark(cell, 'from') ?? source,
    caution: remark(cell, 'caution') ?? caution,
  };
}

function remark(cell: Cell | undefined, kind: 'from' | 'caution'): string | null {
  const texts = (cell?.remarks ?? []).filter((r) => r.kind === kind && r.text.trim() !== '');
  return texts.length === 0 ? null : texts.map((r) => r.text.trim()).join('; ');
}
