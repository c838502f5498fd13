// Showing how a number came about, one cell a step, from the givens up to the result: which cells there are to show in
// what order, and what there is to say of each. Nothing is worked here that the working does not work.
import type { CellState } from '../engine/outcome.ts';
import type { Checked } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import { type Book, type Explainable, bookOf } from './book.ts';
import { targetOfCell } from './cell-steps.ts';
import { WORKED_BELOW, saidInFull } from './naming.ts';
import { type Piece, type Step, type Word, plainWords, saying } from './step.ts';
import { ownSteps } from './working.ts';

/** An estimate, as far as showing how needs it. */
export interface Followed extends Explainable {
  reach(cells: readonly CellId[], way: 'up' | 'down'): readonly CellId[];
}

/** One line of the working of a step. */
export interface ShownLine {
  readonly words: string;
  readonly pieces: readonly Piece[];
  readonly result: string;
  readonly note: string | null;
}

/** What is put into a step: a given, or what an earlier step came to. */
export interface PutIn {
  readonly cell: CellId;
  readonly name: string;
  readonly result: string;
  /** `worked`: in a step of its own; `row`: in a row of a table. */
  readonly kind: 'given' | 'worked' | 'row';
  /** Where a given comes from; of a cell that a row works, how. */
  readonly source: string | null;
  readonly caution: string | null;
}

export interface ShownStep {
  readonly cell: CellId;
  readonly name: string;
  readonly kind: 'given' | 'worked';
  /** The formula in words; of a given, that it is one. */
  readonly sentence: readonly Word[];
  /** What is worked first comes first; the last line comes to the result. */
  readonly lines: readonly ShownLine[];
  /** In the order in which the lines need them. */
  readonly putIn: readonly PutIn[];
  readonly result: string;
  readonly source: string | null;
  readonly caution: string | null;
  /** Of a check that holds the caution is for where it does not. */
  readonly cautions: 'now' | 'otherwise';
  readonly note: string | null;
}

const WORKED_ABOVE = 'what is worked above';

/** So many lines of one step are worked; a formula that is longer goes on where it is written. */
const LINES_AT_MOST = 60;

/** The cells that are worked on the way to this one, each after what it needs; it stands last, given or worked. */
export function stepsUpTo(estimate: Followed, cell: CellId): readonly CellId[] {
  const needs = needsBelow(estimate, cell);
  const order: CellId[] = [];
  const seen = new Set<CellId>([cell]);
  // Depth first without recursion: a cell is taken when all that it needs was.
  const open: { readonly cell: CellId; readonly left: CellId[] }[] = [
    { cell, left: [...(needs.get(cell) ?? [])].toReversed() },
  ];
  for (let at = open.at(-1); at; at = open.at(-1)) {
    const next = at.left.pop();
    if (next === undefined) {
      open.pop();
      if (at.cell === cell || isStep(estimate.state(at.cell))) order.push(at.cell);
    } else if (!seen.has(next)) {
      seen.add(next);
      open.push({ cell: next, left: [...(needs.get(next) ?? [])].toReversed() });
    }
  }
  return order;
}

/**
 * The steps by how far they stand before the result: itself, what goes into it, what goes into that, … Each stands where
 * it is met first.
 */
export function stepsBefore(
  estimate: Followed,
  order: readonly CellId[],
): readonly (readonly CellId[])[] {
  const [last] = order.slice(-1);
  if (last === undefined) return [];
  const needs = needsBelow(estimate, last);
  const steps = new Set(order);
  const seen = new Set<CellId>();
  const layers: (readonly CellId[])[] = [];
  for (let layer: readonly CellId[] = [last]; layer.length > 0;) {
    for (const cell of layer) seen.add(cell);
    const met = layer.filter((cell) => steps.has(cell));
    if (met.length > 0) layers.push(met);
    layer = [...new Set(layer.flatMap((cell) => needs.get(cell) ?? []))].filter(
      (cell) => !seen.has(cell),
    );
  }
  return layers;
}

/** The steps that are left where some are known: neither those, nor what only leads up to them. */
export function stepsLeft(
  estimate: Followed,
  order: readonly CellId[],
  known: ReadonlySet<CellId>,
): readonly CellId[] {
  const [last] = order.slice(-1);
  if (last === undefined) return [];
  const needs = needsBelow(estimate, last);
  const seen = new Set<CellId>();
  const left: CellId[] = [last];
  for (let next = left.pop(); next !== undefined; next = left.pop()) {
    if (seen.has(next) || known.has(next)) continue;
    seen.add(next);
    left.push(...(needs.get(next) ?? []));
  }
  return order.filter((cell) => cell === last || seen.has(cell));
}

/** What there is to show of one cell; `known` are those that need no working here. */
export function shownStep(estimate: Followed, cell: CellId, known: ReadonlySet<CellId>): ShownStep {
  const book = bookOf(estimate);
  const state = book.state(cell);
  const { from, caution, name } = book.facts(cell);
  const result = targetOfCell(book, state).text;
  const steps = ownSteps(estimate, cell, known);
  const [top] = steps;
  if (isGivenNumber(state)) {
    const sentence = saying(top?.words ?? 'given');
    const note = top?.note ?? null;
    const told = { lines: [], putIn: [], result, source: from, caution, note };
    const cautions = 'now';
    return { cell, name, kind: 'given', sentence, cautions, ...told };
  }
  const found = { lines: [] as ShownLine[], putIn: new Map<CellId, PutIn>() };
  tellAll(estimate, steps.toReversed(), { own: cell, depth: 'flight' }, found);
  const { checked } = state.reading;
  return {
    cell,
    name,
    kind: 'worked',
    sentence: checked ? saidInFull(book, checked) : saying(state.input.formula),
    lines: found.lines.map((line) => withoutCautions(line, [...found.putIn.values()])),
    putIn: inFormulaOrder(state, [...found.putIn.values()]),
    result,
    source: from,
    caution,
    cautions: isHolding(state) ? 'otherwise' : 'now',
    note: null,
  };
}

/** What stands before a caution. */
export const CAUTION = { now: 'Caution', otherwise: 'Where it does not hold' } as const;

/** The step in one text, as it is heard. */
export function stepText(step: ShownStep): string {
  const sentence = plainWords(step.sentence);
  const lines = step.lines.map(({ words, pieces, result, note }) => {
    const numbers = pieces.map(({ text }) => text).join('');
    const line = numbers === '' ? result : numbers;
    return [words === sentence ? '' : words, line, note ?? ''].filter((text) => text !== '');
  });
  return [
    `${step.name}: ${sentence}`,
    ...step.putIn.map(({ name, result, source }) =>
      source === null ? `${name} ${result}` : `${name} ${result}, ${source}`,
    ),
    ...lines.flat(),
    `${step.name} is ${step.result}`,
    step.source === null ? '' : `From: ${step.source}`,
    step.note ?? '',
    step.caution === null ? '' : `${CAUTION[step.cautions]}: ${step.caution}`,
  ]
    .filter((text) => text !== '')
    .map((text) => (/[.?!]$/.test(text) ? text : `${text}.`))
    .join(' ');
}

/** One after the other as they stand here; what a step is worked from goes before it. */
function tellAll(
  estimate: Followed,
  steps: readonly Step[],
  at: { readonly own: CellId; readonly depth: 'flight' | 'inside' },
  found: { readonly lines: ShownLine[]; readonly putIn: Map<CellId, PutIn> },
): void {
  for (const folded of steps) {
    const step =
      found.lines.length < LINES_AT_MOST && folded.open !== null ? folded.open() : folded;
    for (const part of step.parts) {
      if (part.cell !== null && !found.putIn.has(part.cell)) {
        found.putIn.set(part.cell, putIn(estimate, part, part.cell));
      }
    }
    const inner = step.parts.filter((part) => part.cell === null);
    // Inside a part the steps that go on down from it stand among its parts: they too are told from below.
    const order = at.depth === 'flight' ? inner : inner.toReversed();
    tellAll(estimate, order, { ...at, depth: 'inside' }, found);
    if (step.cell !== null && step.cell !== at.own) {
      if (!found.putIn.has(step.cell)) found.putIn.set(step.cell, putIn(estimate, step, step.cell));
      continue;
    }
    const { pieces, result, note } = step;
    // Told from below, what is worked below stands above.
    const words = step.words.replaceAll(WORKED_BELOW, WORKED_ABOVE);
    const line = { words, pieces, result, note };
    // A term that is met twice in a formula is told once.
    if (!found.lines.some((told) => readsTheSame(told, line))) found.lines.push(line);
  }
}

/** What stands as a caution beside what is put in is not said again in a note. */
function withoutCautions(line: ShownLine, putIn: readonly PutIn[]): ShownLine {
  let { note } = line;
  for (const { caution } of putIn) {
    if (note !== null && caution !== null) note = note.replace(caution, '').trim();
  }
  return { ...line, note: note === '' ? null : note };
}

function readsTheSame(one: ShownLine, other: ShownLine): boolean {
  const [a, b] = [one, other].map(({ words, pieces }) =>
    [words, ...pieces.map(({ text }) => text)].join(' '),
  );
  return one.pieces.length > 0 && a === b;
}

function putIn(estimate: Followed, step: Step, cell: CellId): PutIn {
  const state = estimate.state(cell);
  const { from, caution, name } = bookOf(estimate).facts(cell);
  const isInRow = state.input.inTable !== undefined;
  const kind = isInRow ? 'row' : isGivenNumber(state) ? 'given' : 'worked';
  const isWorked = kind === 'worked';
  const worksInRow = isInRow && state.kind !== 'given' ? rowWorked(estimate, step, state) : null;
  return {
    cell,
    name: step.name ?? name,
    result: step.result,
    kind,
    source: isWorked ? null : (worksInRow ?? step.source ?? from),
    caution: isWorked ? null : caution,
  };
}

/** What a row works was not measured where its table says: `length by width, 6 ft × 4 ft = 24 sq ft`. */
function rowWorked(estimate: Followed, step: Step, { reading }: CellState): string | null {
  const { checked } = reading;
  if (!checked) return null;
  const words = plainWords(saidInFull(bookOf(estimate), checked));
  const { numbers, parts } = step.open?.() ?? step;
  const isOneLine = numbers !== '' && parts.every(({ cell }) => cell !== null);
  return isOneLine ? `${words}, ${numbers}` : words;
}

/** As one meets them in reading the formula. */
function inFormulaOrder(state: CellState, all: readonly PutIn[]): readonly PutIn[] {
  const order = namedIn(state.reading.checked);
  const place = (each: PutIn): number => {
    const at = order.indexOf(each.cell);
    return at < 0 ? Infinity : at;
  };
  return all.toSorted((a, b) => (place(a) < place(b) ? -1 : place(a) > place(b) ? 1 : 0));
}

function namedIn(checked: Checked | null): readonly CellId[] {
  const named: CellId[] = [];
  const left: Checked[] = checked ? [checked] : [];
  for (let next = left.pop(); next; next = left.pop()) {
    if (next.formula.kind === 'name') named.push(next.formula.cell);
    left.push(...next.parts.toReversed());
  }
  return named;
}

function isHolding({ kind, outcome }: CellState): boolean {
  return kind === 'check' && outcome.kind === 'value' && outcome.value === true;
}

function isGivenNumber({ kind, input }: CellState): boolean {
  return kind === 'given' && input.byHand === null;
}

/** A cell of a table, or a table itself, stands in the step that asks it. */
function isStep(state: CellState): boolean {
  const { table, inTable, source } = state.input;
  const isPlain = !table && inTable === undefined && (source ?? null) === null;
  return isPlain && state.input.id >= 0 && !isGivenNumber(state);
}

/** Of each cell below this one, and of itself: what it is worked from, as one meets it in its formula. */
function needsBelow(estimate: Followed, cell: CellId): ReadonlyMap<CellId, readonly CellId[]> {
  const book: Book = bookOf(estimate);
  const below = new Set([cell, ...estimate.reach([cell], 'down')]);
  const needs = new Map<CellId, CellId[]>();
  for (const one of below) {
    for (const into of estimate.state(one).goesInto) {
      if (!below.has(into) || into === one) continue;
      const known = needs.get(into) ?? [];
      known.push(one);
      needs.set(into, known);
    }
  }
  for (const [into, all] of needs) {
    const order = namedIn(estimate.state(into).reading.checked);
    const place = (id: CellId): number => {
      const at = order.indexOf(id);
      return at < 0 ? Infinity : at;
    };
    const isSooner = (a: CellId, b: CellId): boolean =>
      place(a) === place(b) ? book.isBefore(a, b) : place(a) < place(b);
    all.sort((a, b) => (isSooner(a, b) ? -1 : 1));
  }
  return needs;
}
