// The parser alone over a small vocabulary: trees, sentences and problems without any working.
import { Nouns } from '../../src/quantity/nouns.ts';
import { LENGTH } from '../../src/quantity/dimension.ts';
import { SHARE, amountMeasure } from '../../src/quantity/measure.ts';
import { tokensOf } from '../../src/language/lexer.ts';
import { type Parsed, parseTokens } from '../../src/language/parse.ts';
import { wordProblem } from '../../src/language/problems.ts';
import type { Surroundings } from '../../src/language/reading.ts';
import { sentence } from '../../src/language/sentence.ts';
import type { SizeTable, SizesTold } from '../../src/language/size-table.ts';
import type { TableShape } from '../../src/language/table-shape.ts';
import { BARS, LUMBER } from '../../src/reference/sizes.ts';
import { Vocabulary } from '../../src/language/vocabulary.ts';
import type { Report } from '../../src/words/report.ts';

const LANDING = [
  'Slab length',
  'Slab width',
  'Thickness',
  'Bags',
  'Waste',
  'Markup',
  'Length of run',
  'Total',
  'Hole diameter',
  'Bag yield',
  '# of posts',
];
const STEPS = ['Total rise', 'Thickness', 'Run by step', 'Stringers'];
const DECK = ['Stringers', 'Deck area'];

export const nouns = new Nouns(['sleeper']);
export const vocabulary = new Vocabulary(nouns);
vocabulary.setParts([
  { key: 'landing', name: 'Landing' },
  { key: 'steps', name: 'Steps' },
  { key: 'deck', name: 'Deck surface' },
]);
const names = new Map<number, string>();
[LANDING, STEPS, DECK].forEach((cells, part) => {
  for (const name of cells) {
    const id = names.size + 1;
    names.set(id, name);
    vocabulary.add({ id, name, part: ['landing', 'steps', 'deck'][part] ?? '' });
  }
});

/** A table of the Landing; its cells are only counted here. */
const BAYS = names.size + 1;
names.set(BAYS, 'Slab bays');
vocabulary.add({ id: BAYS, name: 'Slab bays', part: 'landing' });
vocabulary.putTable({
  id: BAYS,
  name: 'Slab bays',
  part: 'landing',
  caution: null,
  rows: 2,
  columns: ['species', 'run', 'clear span'].map((name, k) => ({
    id: -1 - k,
    name,
    cells: [-10 - 2 * k, -11 - 2 * k],
    blanks: [],
    texts: k === 0 ? ['hem-fir', 'southern pine'] : null,
  })),
});

/** Sizes with a few of their columns; here too cells are only counted. */
const COLUMNS = ['size', 'nominal thickness', 'nominal width', 'thickness', 'width'];
const LUMBER_SIZES = ['1x6', '5/4x6', '2x4', '2x6', '2x8', '2x12', '4x4', '6x6'];
const BAR_COLUMNS = ['bar', 'diameter', 'area', 'weight'];
const BAR_SIZES = ['#3', '#4', '#5'];
vocabulary.setReference({
  names: [],
  sizes: [
    sizesFor('Lumber sizes', -100, LUMBER, COLUMNS, LUMBER_SIZES),
    sizesFor('Bar sizes', -200, BARS, BAR_COLUMNS, BAR_SIZES),
  ],
  at: () => null,
});

function sizesFor(
  name: string,
  id: number,
  told: SizesTold,
  columns: readonly string[],
  sizes: readonly string[],
): SizeTable {
  const shape: TableShape = {
    id,
    name,
    part: '',
    caution: null,
    rows: sizes.length,
    columns: columns.map((column, k) => ({
      id: id - 1 - k,
      name: column,
      cells: sizes.map((_, row) => id - 10 - 10 * row - k),
      blanks: [],
      texts: k === 0 ? sizes : null,
    })),
  };
  return { name, told, rows: new Map(sizes.map((size) => [size, new Map()])), shape: () => shape };
}

export const surroundings: Surroundings = {
  holdsOf: (id) => ({
    measure: /^(waste|markup)$/i.test(names.get(id) ?? '') ? SHARE : amountMeasure(LENGTH),
    showIn: null,
    written: [],
  }),
  nameOf: (id) => names.get(id) ?? '',
  shownOf: () => null,
  linesOf: () => [],
};

export function cellName(id: number): string {
  return names.get(id) ?? '';
}

/** Parsed as if it stood in the part Landing. */
export function parsed(text: string): Parsed {
  return parseTokens(text, tokensOf(text), vocabulary, 'landing', null, surroundings);
}

/** The canonical sentence, or the code of the problem in angle marks. */
export function said(text: string): string {
  const found = parsed(text);
  return found.problem ? `<${found.problem.code}>` : sentence(found.tree, nouns);
}

export function problemOf(text: string): Report | null {
  const { problem } = parsed(text);
  return problem ? wordProblem(problem) : null;
}

/** A tree without its spots and without how amounts were said: what must be the same when read again. */
export function bare(tree: unknown): unknown {
  return JSON.parse(
    JSON.stringify(tree, (key, value: unknown) => {
      if (/spot$/i.test(key) || key === 'say') return undefined;
      return typeof value === 'bigint' ? value.toString() : value;
    }),
  );
}
