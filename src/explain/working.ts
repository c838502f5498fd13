// The working of a number: from the answer down to what was measured, quoted, looked up or assumed.
//
// Steps go down like risers. From each step the working goes on with the one operand that has a
// working of its own (or with the first, where that is a formula and no name); the other operands
// stand as parts below their step. So a long formula, or a chain of cells that each build on the one
// before, is a list and not a staircase to the right, and nothing here recurses along it.
//
// Not everything is worked at once: after STEPS_AT_ONCE steps, or LEVELS_AT_ONCE parts within parts,
// or PARTS_AT_ONCE operands of one step, a step keeps `open`, which works the next stretch when asked.
// A cell is worked the first time it is met, in reading order, and referred to after that.
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { Checked } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import { MONEY } from '../quantity/dimension.ts';
import { amountMeasure } from '../quantity/measure.ts';
import { constantOf, differenceOf, heldIn } from './asks.ts';
import { type Book, type Explainable, bookOf } from './book.ts';
import { type Figure, figureFrom, figureOf } from './figure.ts';
import { type Target, targetOf } from './line.ts';
import { bared, isWritten, saidWhole } from './naming.ts';
import { type Step, type Word, type Working, plainWords, saying } from './step.ts';
import { leftOutNote } from './tell/adding.ts';
import { tell } from './tell/tell.ts';
import { type AddedLine, type Aside, type Operand, type Riser, riser } from './tell/told.ts';
import { whyLacking } from './lacking.ts';

export const STEPS_AT_ONCE = 80;
export const LEVELS_AT_ONCE = 6;
export const PARTS_AT_ONCE = 40;

export function workingOf(estimate: Explainable, cell: CellId): Working {
  const book = bookOf(estimate);
  const walk: Walk = { book, seen: new Set(), steps: [], limit: STEPS_AT_ONCE };
  const state = book.state(cell);
  const target = targetOfCell(book, state);
  return {
    cell,
    name: book.facts(cell).name,
    shown: target.text,
    steps: flight(walk, { kind: 'cell', cell, target }, []),
    goesInto: state.goesInto
      .toSorted((a, b) => (book.isBefore(a, b) ? -1 : 1))
      .map((into) => ({ cell: into, name: book.facts(into).name })),
  };
}

/** One stretch of working: what was met before it, and the steps it has made so far. */
interface Walk {
  readonly book: Book;
  readonly seen: Set<CellId>;
  /** Every step made in this stretch, for its number only. */
  readonly steps: Step[];
  readonly limit: number;
}

/** Where a flight starts or goes on. */
type Place =
  | { readonly kind: 'cell'; readonly cell: CellId; readonly target: Target }
  | { readonly kind: 'inner'; readonly checked: Checked; readonly target: Target };

/** The cells and steps one is inside of, outermost first; only how many there are matters. */
type Within = readonly Place[];

function isSpent(walk: Walk): boolean {
  return walk.steps.length >= walk.limit;
}

/** The next stretch, opened by hand: it knows what was worked before. */
function later(walk: Walk, place: Place): () => readonly Step[] {
  let made: readonly Step[] | null = null;
  return () => (made ??= flight({ ...walk, steps: [] }, place, []));
}

/** The steps from a place down, top first. */
function flight(walk: Walk, start: Place, within: Within): readonly Step[] {
  const steps: Step[] = [];
  let place: Place | null = start;
  while (place) {
    const last = steps.at(-1);
    if (last && isSpent(walk)) {
      steps.splice(-1, 1, { ...last, open: later(walk, place) });
      break;
    }
    const stretch = stretchFrom(walk, place, within);
    steps.push(...stretch.steps);
    place = stretch.next;
  }
  return steps;
}

interface Stretch {
  readonly steps: readonly Step[];
  readonly next: Place | null;
}

/** The risers of one node, or of one cell's outermost node, and where it goes on below them. */
function stretchFrom(walk: Walk, place: Place, within: Within): Stretch {
  if (place.kind === 'inner') return risersOf(walk, place, within, null);
  const { cell, target } = place;
  if (walk.seen.has(cell))
    return { steps: [made(walk, referredStep(walk.book, cell, target))], next: null };
  walk.seen.add(cell);
  return cellStretch(walk, place, within);
}

function cellStretch(walk: Walk, place: Extract<Place, { kind: 'cell' }>, within: Within): Stretch {
  const { book } = walk;
  const state = book.state(place.cell);
  const { checked } = state.reading;
  if (state.kind === 'given' && state.input.byHand === null) {
    return { steps: [made(walk, givenStep(book, place.cell, state, place.target))], next: null };
  }
  const heads = headsOf(book, state, place.target);
  const head = heads.at(0);
  if (!checked || heads.some((one) => one.ends)) {
    const steps = heads.map((one) => made(walk, draft(one)));
    return {
      steps: named(book, place.cell, state, withWaitedFor(walk, state, steps, within)),
      next: null,
    };
  }
  const below: Place = { kind: 'inner', checked, target: heads.at(-1)?.below ?? place.target };
  const tops = heads.map((one) => made(walk, draft(one)));
  if (head) return { steps: named(book, place.cell, state, tops), next: below };
  const stretch = risersOf(walk, below, within, place);
  return { steps: named(book, place.cell, state, stretch.steps), next: stretch.next };
}

/** Something told of a cell before its formula: by hand, rounded to the cent, at fault. */
interface Head {
  readonly said: readonly Word[];
  readonly riser: Riser | null;
  readonly result: string;
  readonly note: string | null;
  /** How the formula's own value is written in it. */
  readonly below: Target;
  /** There is nothing to go on with. */
  readonly ends: boolean;
}

function headsOf(book: Book, state: CellState, target: Target): readonly Head[] {
  const { checked } = state.reading;
  const worked = workedFigure(book, state);
  const workedTarget = state.input.byHand === null ? target : targetOf(worked, '');
  const byHand = state.input.byHand === null ? [] : [byHandHead(book, state, target, worked)];
  if (state.worked.kind === 'fault') return [...byHand, faultHead(state.worked, workedTarget)];
  if (!checked) return [...byHand, waitingHead(book, state.worked, workedTarget)];
  return [...byHand, ...centHead(book, state, checked, workedTarget)];
}

/** What the formula itself comes to. A cost or price line is held in whole dollars and cents. */
function workedFigure(book: Book, state: CellState): Figure {
  const { worked: outcome, input, reading } = state;
  if (outcome.kind !== 'value') {
    return { kind: 'lacking', outcome, text: whyLacking(book, outcome) };
  }
  const holds = reading.checked?.holds;
  if (!holds) throw new Error(`${input.name} has a value but was not read`);
  return figureFrom(
    book,
    outcome,
    input.money ? { ...holds, measure: amountMeasure(MONEY) } : holds,
  );
}

function byHandHead(book: Book, state: CellState, target: Target, worked: Figure): Head {
  return {
    said: saying('set by hand'),
    riser: null,
    result: target.text,
    note: notes(faultNote(state.outcome), byHandNote(book, state, target, worked)),
    below: targetOf(worked, ''),
    ends: false,
  };
}

function faultNote(outcome: Outcome): string | null {
  return outcome.kind === 'fault' ? outcome.report.explanation : null;
}

function byHandNote(book: Book, state: CellState, target: Target, worked: Figure): string {
  if (worked.kind === 'lacking')
    return `The formula has no value yet: ${whyLacking(book, worked.outcome)}.`;
  const comes = `The formula comes to ${worked.shown.text}`;
  const { figure } = target;
  const [used, own] = [state.holds?.measure, worked.holds.measure];
  if (
    figure.kind === 'lacking' ||
    typeof figure.value !== 'object' ||
    typeof worked.value !== 'object'
  ) {
    return `${comes}.`;
  }
  const usedPlan = constantOf(figure.value);
  const same =
    used?.kind === 'amount' && own.kind === 'amount' ? heldIn(usedPlan, used, own) : usedPlan;
  const more = figureOf(book, {
    plan: differenceOf(same, constantOf(worked.value)),
    holds: worked.holds,
  });
  const less = figureOf(book, {
    plan: differenceOf(constantOf(worked.value), same),
    holds: worked.holds,
  });
  if (more.kind === 'lacking' || less.kind === 'lacking') return `${comes}.`;
  if (more.shown.exact === '0') return `${comes} as well.`;
  return more.shown.exact.startsWith('-')
    ? `${comes}; by hand it is ${less.shown.text} less.`
    : `${comes}; by hand it is ${more.shown.text} more.`;
}

/** Faults that only the values show: the formula was read, so its working can be followed to the spot. */
const AT_FAULT_WHEN_WORKED: ReadonlySet<string> = new Set([
  'division-by-zero',
  'root-of-negative',
  'too-large',
]);

function faultHead(outcome: Extract<Outcome, { kind: 'fault' }>, below: Target): Head {
  return {
    said: saying(outcome.report.headline),
    riser: null,
    result: 'no value yet',
    note: outcome.report.explanation,
    below,
    ends: !AT_FAULT_WHEN_WORKED.has(outcome.report.code),
  };
}

function waitingHead(book: Book, outcome: Outcome, below: Target): Head {
  const why = outcome.kind === 'value' ? 'no value yet' : whyLacking(book, outcome);
  return { said: saying(why), riser: null, result: 'no value yet', note: null, below, ends: true };
}

/** A cost line is its amount rounded to the cent; said where there was more to it than cents. */
function centHead(book: Book, state: CellState, checked: Checked, target: Target): readonly Head[] {
  if (state.input.money === null) return [];
  const raw = figureOf(book, checked);
  const rounded = workedFigure(book, state);
  if (raw.kind === 'lacking' || rounded.kind === 'lacking') return [];
  if (raw.shown.exact === rounded.shown.exact) return [];
  const term = { figure: raw, side: 'apart', instead: '' } as const;
  const line = state.input.money.line === 'cost' ? 'cost' : 'price';
  const made = riser(book, {
    said: saying(`rounded to the cent, as every ${line} line is`),
    tokens: [term],
    joint: '→',
    result: target,
    comesOut: [],
    apart: true,
    used: [],
  });
  const below = made.targets.get(term) ?? targetOf(raw, '');
  return [{ said: made.said, riser: made, result: made.result, note: null, below, ends: false }];
}

function draft(head: Head): Step {
  return {
    ...EMPTY,
    ...wordsOf(head.said),
    ...numbersOf(head.riser?.pieces ?? []),
    result: head.result,
    note: head.note,
  };
}

/** The first of a cell's steps carries its name, its source and its caution. */
function named(
  book: Book,
  cell: CellId,
  state: CellState,
  steps: readonly Step[],
): readonly Step[] {
  const [first, ...rest] = steps;
  if (!first) return steps;
  const { name, from, caution } = book.facts(cell);
  const note = notes(first.note, leftOutNote(book, state.outcome));
  return [{ ...first, cell, name, source: from, caution, note }, ...rest];
}

function notes(...all: readonly (string | null)[]): string | null {
  const said = [...new Set(all.filter((note) => note !== null && note !== ''))];
  return said.length === 0 ? null : said.join(' ');
}

/** A cell that could not be read for want of others shows those below it. */
function withWaitedFor(
  walk: Walk,
  state: CellState,
  steps: readonly Step[],
  within: Within,
): readonly Step[] {
  const last = steps.at(-1);
  const { outcome } = state;
  if (!last || outcome.kind === 'value' || outcome.kind === 'fault') return steps;
  const others = outcome.for.filter((cell) => cell !== state.input.id);
  const places = others.map((cell): Place => {
    return { kind: 'cell', cell, target: targetOfCell(walk.book, walk.book.state(cell)) };
  });
  return [...steps.slice(0, -1), { ...last, parts: branches(walk, places, within) }];
}

/** The risers of one node, with their parts; the last of them may go on. */
function risersOf(
  walk: Walk,
  place: Place & { kind: 'inner' },
  within: Within,
  top: Place | null,
): Stretch {
  const { book } = walk;
  const inner = bared(place.checked);
  const risers = tell(book, inner, place.target);
  const inside: Within = [...within, top ?? place];
  const last = risers.at(-1);
  const onward = last ? goesOn(walk, last.operands) : null;
  const steps = risers.map((one, at) => {
    const step = made(walk, {
      ...EMPTY,
      ...wordsOf(one.said),
      ...numbersOf(one.pieces),
      result: one.result,
      note: notes(at === 0 ? decisionOf(inner) : null, one.note),
    });
    const beside = one.beside.map((aside) => made(walk, asideStep(aside)));
    const others = one.operands
      .filter((operand) => operand !== onward)
      .flatMap((operand) => placeOf(book, operand));
    const parts = [...branches(walk, others, inside), ...lineSteps(walk, one.lines), ...beside];
    return { ...step, parts };
  });
  return { steps, next: onward ? (placeOf(book, onward)[0] ?? null) : null };
}

/** What the reader decided in the writer's stead; that a pack is a run is said in the words of its step. */
function decisionOf(checked: Checked): string | null {
  return checked.formula.kind === 'in-packs' ? null : checked.note;
}

/** The operand with which the working goes on below: the only one that is worked, or the formula it starts with. */
function goesOn(walk: Walk, operands: readonly Operand[]): Operand | null {
  const [first] = operands;
  if (first && isInner(first)) return first;
  const worked = operands.filter((operand) => isInner(operand) || isWorkedCell(walk, operand));
  return worked.length === 1 ? (worked[0] ?? null) : null;
}

function isInner(operand: Operand): boolean {
  const { formula } = bared(operand.checked);
  return formula.kind !== 'name' && !isWritten(formula);
}

function isWorkedCell(walk: Walk, operand: Operand): boolean {
  const { formula } = bared(operand.checked);
  if (formula.kind !== 'name' || walk.seen.has(formula.cell)) return false;
  return walk.book.state(formula.cell).kind !== 'given';
}

/** What there is to say about an operand below its step; nothing for what is written in the formula. */
function placeOf(book: Book, operand: Operand): readonly Place[] {
  const inner = bared(operand.checked);
  const { formula } = inner;
  if (isWritten(formula)) return [];
  return formula.kind === 'name'
    ? [
        {
          kind: 'cell',
          cell: formula.cell,
          target: targetInLine(book, formula.cell, operand.target),
        },
      ]
    : [{ kind: 'inner', checked: inner, target: operand.target }];
}

/** A cell is shown as it is on the page, but for a line that needs more of its digits. */
function targetInLine(book: Book, cell: CellId, inLine: Target): Target {
  return inLine.digits === 'shown' ? targetOfCell(book, book.state(cell)) : inLine;
}

/** Operands that stand as parts: each with all of its own steps below it. */
function branches(walk: Walk, places: readonly Place[], within: Within): readonly Step[] {
  const now = places.slice(0, PARTS_AT_ONCE);
  const rest = places.slice(PARTS_AT_ONCE);
  const steps = now.map((place) => branch(walk, place, within));
  return rest.length === 0
    ? steps
    : [...steps, moreStep(rest.length, () => branches({ ...walk, steps: [] }, rest, []))];
}

function branch(walk: Walk, place: Place, within: Within): Step {
  if ((within.length > LEVELS_AT_ONCE || isSpent(walk)) && !isShort(walk, place)) {
    return folded(walk, place);
  }
  const [first, ...rest] = flight(walk, place, within);
  if (!first) throw new Error('a flight has at least one step');
  return { ...first, parts: [...first.parts, ...rest] };
}

/** Givens and cells worked already are one step and no more. */
function isShort(walk: Walk, place: Place): boolean {
  if (place.kind === 'inner') return false;
  return walk.seen.has(place.cell) || walk.book.state(place.cell).kind === 'given';
}

/** Said in its own words and not worked until it is opened. */
function folded(walk: Walk, place: Place): Step {
  const { book } = walk;
  if (place.kind === 'inner') {
    const words = wordsOf(saidWhole(book, place.checked));
    return { ...EMPTY, ...words, result: place.target.text, open: opened(walk, place) };
  }
  const state = book.state(place.cell);
  const { checked } = state.reading;
  const words = wordsOf(checked ? saidWhole(book, checked) : saying(state.input.formula));
  const step = { ...EMPTY, ...words, result: place.target.text, open: opened(walk, place) };
  return named(book, place.cell, state, [step])[0] ?? step;
}

/** What opens under a folded step: all the steps of its cell or formula. */
function opened(walk: Walk, place: Place): () => readonly Step[] {
  return later(walk, place);
}

/** The cost lines of a recap, each with its amount; they open in place. */
function lineSteps(walk: Walk, lines: readonly AddedLine[]): readonly Step[] {
  const now = lines.slice(0, PARTS_AT_ONCE).map(({ cell, target }) => {
    const place: Place = {
      kind: 'cell',
      cell,
      target: target ?? targetOfCell(walk.book, walk.book.state(cell)),
    };
    return made(walk, isShort(walk, place) ? branch(walk, place, []) : folded(walk, place));
  });
  const rest = lines.slice(PARTS_AT_ONCE);
  return rest.length === 0
    ? now
    : [...now, moreStep(rest.length, () => lineSteps({ ...walk, steps: [] }, rest))];
}

function moreStep(count: number, open: () => readonly Step[]): Step {
  return { ...EMPTY, ...wordsOf(saying(`${count} more`)), open };
}

function givenStep(book: Book, cell: CellId, state: CellState, target: Target): Step {
  const { checked } = state.reading;
  const { formula } = state.input;
  const asTyped =
    target.figure.kind === 'known' && !readsTheSame(state.reading.sentence, target.text);
  const step = {
    ...EMPTY,
    ...wordsOf(saying(state.outcome.kind === 'fault' ? state.outcome.report.headline : 'given')),
    result: target.text,
    note: notes(
      asTyped ? `Written as ${formula.trim()}.` : null,
      checked?.note ?? null,
      faultNote(state.outcome),
    ),
  };
  return named(book, cell, state, [step])[0] ?? step;
}

/** `$7,500` and `$7,500.00` do. */
function readsTheSame(one: string, other: string): boolean {
  const [a, b] = [one, other].map((text) => text.replaceAll(/[\s,]|\.00$/g, '').replace('−', '-'));
  return a === b;
}

function referredStep(book: Book, cell: CellId, target: Target): Step {
  const { name } = book.facts(cell);
  const words = wordsOf(saying('as worked above'));
  return { ...EMPTY, ...words, cell, name, result: target.text, referredTo: true };
}

function asideStep(aside: Aside): Step {
  return { ...EMPTY, ...wordsOf(aside.said), ...numbersOf(aside.pieces), result: aside.result };
}

function targetOfCell(book: Book, state: CellState): Target {
  const { outcome, holds } = state;
  if (outcome.kind === 'value' && holds) return targetOf(figureFrom(book, outcome, holds), '');
  const lacking = outcome.kind === 'value' ? { kind: 'waiting' as const, for: [] } : outcome;
  const text = whyLacking(book, lacking);
  return { figure: { kind: 'lacking', outcome: lacking, text }, digits: 'shown', text };
}

function made(walk: Walk, step: Step): Step {
  walk.steps.push(step);
  return step;
}

function wordsOf(said: readonly Word[]): Pick<Step, 'said' | 'words'> {
  return { said, words: plainWords(said) };
}

function numbersOf(pieces: Step['pieces']): Pick<Step, 'pieces' | 'numbers'> {
  return { pieces, numbers: pieces.map((piece) => piece.text).join('') };
}

const EMPTY: Step = {
  cell: null,
  name: null,
  words: '',
  said: [],
  numbers: '',
  pieces: [],
  result: '',
  source: null,
  caution: null,
  note: null,
  parts: [],
  referredTo: false,
  open: null,
};
