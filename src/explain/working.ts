// The working of a number: from the answer down to what was measured, quoted, looked up or assumed.
//
// Steps go down like risers. From each step the working goes on with the one operand that has a
// working of its own (or with the first, where that is a formula and no name); the other operands
// stand as parts below their step. So a long formula, or a chain of cells that each build on the one
// before, is a list and not a staircase to the right, and nothing here recurses along it.
//
// Not everything is worked at once: after STEPS_AT_ONCE steps, or LEVELS_AT_ONCE parts within parts,
// or PARTS_AT_ONCE operands of one step, a step keeps `open`, which works the next stretch when asked.
// A cell is worked the first time it is met, in reading order, and referred to after that; so is a term within formulas.
import type { CellState } from '../engine/outcome.ts';
import type { Checked } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import { type Book, type Explainable, bookOf } from './book.ts';
import { givenStep, named, referredStep, referredTerm, targetOfCell } from './cell-steps.ts';
import { headsOf } from './heads.ts';
import { figureOf } from './figure.ts';
import { type Target, targetOf } from './line.ts';
import { notes, stepOf } from './making.ts';
import { bared, isWritten, saidWhole, termKey } from './naming.ts';
import { type Step, type Working, saying } from './step.ts';
import { tell } from './tell/tell.ts';
import type { AddedLine, Operand, Riser } from './tell/told.ts';

export const STEPS_AT_ONCE = 60;
export const LEVELS_AT_ONCE = 6;
export const PARTS_AT_ONCE = 40;

export function workingOf(estimate: Explainable, cell: CellId): Working {
  const book = bookOf(estimate);
  const state = book.state(cell);
  const target = targetOfCell(book, state);
  const soFar = state.outcome.kind === 'value' && state.outcome.leftOut.length > 0;
  return {
    cell,
    name: book.facts(cell).name,
    shown: soFar ? `${target.text} so far` : target.text,
    steps: flight(
      { book, seen: new Set(), terms: new Set(), steps: [] },
      { kind: 'cell', cell, target },
      [],
    ),
    goesInto: state.goesInto
      .toSorted((a, b) => (book.isBefore(a, b) ? -1 : 1))
      .map((into) => ({ cell: into, name: book.facts(into).name })),
  };
}

/** Remembers no term: told in another order, the place where one is met first is another. */
class NoTerms extends Set<string> {
  override add(): this {
    return this;
  }
}

/**
 * The steps of a cell's own formula, top first: cells in `known` stand below them with what they come to, and are not worked
 * again; a term that is met twice is worked twice.
 */
export function ownSteps(
  estimate: Explainable,
  cell: CellId,
  known: ReadonlySet<CellId>,
): readonly Step[] {
  const book = bookOf(estimate);
  const seen = new Set([...known].filter((each) => each !== cell));
  return flight({ book, seen, terms: new NoTerms(), steps: [] }, placeOfCell(book, cell), []);
}

/** One stretch of working. */
interface Walk {
  readonly book: Book;
  /** Cells worked already, in this stretch or before it. */
  readonly seen: Set<CellId>;
  /** Terms within formulas that were worked, by what they say of which cells. */
  readonly terms: Set<string>;
  /** Every step made in this stretch, for its number only. */
  readonly steps: Step[];
}

/** Where a flight starts or goes on. */
type Place = CellPlace | InnerPlace;
interface CellPlace {
  readonly kind: 'cell';
  readonly cell: CellId;
  readonly target: Target;
}
interface InnerPlace {
  readonly kind: 'inner';
  readonly checked: Checked;
  readonly target: Target;
}

/** The places one is inside of, outermost first; only how many there are matters. */
type Within = readonly Place[];

function isSpent(walk: Walk): boolean {
  return walk.steps.length >= STEPS_AT_ONCE;
}

function made(walk: Walk, step: Step): Step {
  walk.steps.push(step);
  return step;
}

/** The steps from a place down, top first. */
function flight(walk: Walk, start: Place, within: Within): readonly Step[] {
  const steps: Step[] = [];
  let place: Place | null = start;
  while (place) {
    const last = steps.at(-1);
    if (last && isSpent(walk)) {
      const from = place;
      const open = opening(walk, (next) => withMore(last, flight(next, from, [])));
      steps.splice(-1, 1, { ...last, open });
      break;
    }
    const stretch = stretchFrom(walk, place, within);
    steps.push(...stretch.steps);
    place = stretch.next;
  }
  return steps;
}

/** What a step is once it is opened: worked when first asked for, knowing what was worked before. */
function opening(walk: Walk, opened: (next: Walk) => Step): () => Step {
  let step: Step | null = null;
  return () => (step ??= opened({ ...walk, steps: [] }));
}

/** A step with the steps that go on below it among its parts. */
function withMore(step: Step, more: readonly Step[]): Step {
  return { ...step, parts: [...step.parts, ...more], open: null };
}

interface Stretch {
  readonly steps: readonly Step[];
  readonly next: Place | null;
}

/** The risers of one node, or of one cell's outermost node, and where it goes on below them. */
function stretchFrom(walk: Walk, place: Place, within: Within): Stretch {
  if (place.kind === 'inner') return termStretch(walk, place, within);
  const { book, seen } = walk;
  const state = book.state(place.cell);
  if (seen.has(place.cell)) {
    const step = made(walk, referredStep(book, place.cell, place.target));
    return { steps: [step], next: null };
  }
  seen.add(place.cell);
  if (isGiven(state)) {
    return { steps: [made(walk, givenStep(book, state, place.target))], next: null };
  }
  return cellStretch(walk, place, state, within);
}

/** A term within a formula; one that was worked already, in this formula or another, is referred to. */
function termStretch(walk: Walk, place: InnerPlace, within: Within): Stretch {
  const key = termKey(walk.book, place.checked);
  if (key !== null && walk.terms.has(key)) {
    return {
      steps: [made(walk, referredTerm(walk.book, place.checked, place.target))],
      next: null,
    };
  }
  met(walk, key);
  return risersOf(walk, place, [...within, place]);
}

function met({ terms: seen }: Walk, key: string | null): void {
  if (key !== null) seen.add(key);
}

function isGiven(state: CellState): boolean {
  return state.kind === 'given' && state.input.byHand === null;
}

function cellStretch(walk: Walk, place: CellPlace, state: CellState, within: Within): Stretch {
  const { book } = walk;
  const { checked } = state.reading;
  const heads = headsOf(book, state, place.target);
  const steps = heads.map((head) => made(walk, head.step));
  if (!checked || heads.some((head) => head.then === 'nothing')) {
    return { steps: withName(book, state, withWaitedFor(walk, state, steps, within)), next: null };
  }
  const below = heads.at(-1)?.below ?? place.target;
  const target = state.input.money ? inItsOwnScale(book, checked, below) : below;
  const next: InnerPlace = { kind: 'inner', checked, target };
  if (steps.length > 0) return { steps: withName(book, state, steps), next };
  met(walk, termKey(book, checked));
  const stretch = risersOf(walk, next, [...within, place]);
  return { steps: withName(book, state, stretch.steps), next: stretch.next };
}

/** A cost line is held in dollars; its formula may work in another scale. */
function inItsOwnScale(book: Book, checked: Checked, target: Target): Target {
  const figure = figureOf(book, checked);
  if (figure.kind === 'lacking') return target;
  return target.digits === 'shown' ? targetOf(figure, '') : { ...target, figure };
}

function withName(book: Book, state: CellState, steps: readonly Step[]): readonly Step[] {
  return steps.map((step, place) => (place === 0 ? named(book, state, step) : step));
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
  const parts = branches(
    walk,
    others.map((cell) => placeOfCell(walk.book, cell)),
    within,
  );
  return [...steps.slice(0, -1), { ...last, parts }];
}

function placeOfCell(book: Book, cell: CellId): CellPlace {
  return { kind: 'cell', cell, target: targetOfCell(book, book.state(cell)) };
}

/** The risers of one node, with their parts; the last of them may go on. */
function risersOf(walk: Walk, place: InnerPlace, within: Within): Stretch {
  const { book } = walk;
  const inner = bared(place.checked);
  const risers = tell(book, inner, place.target);
  const onward = goesOn(walk, risers.at(-1)?.operands ?? []);
  const decided = decisionsOf(inner, risers);
  const steps = risers.map((one, at) => {
    const note = notes(...(at === 0 ? decided : []), one.note);
    const step = made(walk, stepOf({ ...one, note }));
    const others = one.operands.filter((operand) => operand !== onward);
    const parts = [
      ...branches(
        walk,
        others.flatMap((operand) => placeOf(book, operand)),
        within,
      ),
      ...lineSteps(walk, one.lines),
      ...one.beside.map((aside) => made(walk, stepOf(aside))),
    ];
    return { ...step, parts };
  });
  return { steps, next: onward ? (placeOf(book, onward)[0] ?? null) : null };
}

/**
 * What the reader decided in the writer's stead, for all of the formula that a step tells of: the node,
 * those it draws together in one line, and what is written in them. That a pack is a run is in its words.
 */
function decisionsOf(inner: Checked, risers: readonly Riser[]): readonly (string | null)[] {
  const below = new Set(
    risers.flatMap((one) => one.operands.map((operand) => bared(operand.checked))),
  );
  const decided: (string | null)[] = [];
  const left: Checked[] = [inner];
  for (let next = left.pop(); next; next = left.pop()) {
    const { kind } = next.formula;
    if (next !== inner && below.has(next) && !isWritten(next.formula)) continue;
    if (kind !== 'in-packs' && kind !== 'name') decided.push(next.note);
    if (next.parts.length <= PARTS_AT_ONCE) left.push(...next.parts.toReversed());
  }
  return decided;
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
  return !isGiven(walk.book.state(formula.cell));
}

/** What there is to say about an operand below its step; nothing for what is written in the formula. */
function placeOf(book: Book, operand: Operand): readonly Place[] {
  const inner = bared(operand.checked);
  const { formula } = inner;
  const { target } = operand;
  if (isWritten(formula)) return [];
  if (formula.kind !== 'name') return [{ kind: 'inner', checked: inner, target }];
  // A cell is shown as it is on the page, but for a line that needs more of its digits.
  if (target.digits === 'shown') return [placeOfCell(book, formula.cell)];
  return [{ kind: 'cell', cell: formula.cell, target }];
}

/** Operands that stand as parts: each with all of its own steps below it. */
function branches(walk: Walk, places: readonly Place[], within: Within): readonly Step[] {
  const now = places.slice(0, PARTS_AT_ONCE).map((place) => branch(walk, place, within));
  const rest = places.slice(PARTS_AT_ONCE);
  if (rest.length === 0) return now;
  return [...now, moreStep(walk, rest.length, (next) => branches(next, rest, []))];
}

function branch(walk: Walk, place: Place, within: Within): Step {
  const isFar = within.length > LEVELS_AT_ONCE || isSpent(walk);
  return isFar && !isShort(walk, place) ? folded(walk, place) : nested(flight(walk, place, within));
}

/** The first step with those that go on below it as its parts. */
function nested([first, ...rest]: readonly Step[]): Step {
  if (!first) throw new Error('a flight has at least one step');
  return { ...first, parts: [...first.parts, ...rest] };
}

/** Givens and cells worked already are one step and no more. */
function isShort(walk: Walk, place: Place): boolean {
  if (place.kind === 'inner') return false;
  return walk.seen.has(place.cell) || isGiven(walk.book.state(place.cell));
}

/** Said in its own words and not worked until it is opened. */
function folded(walk: Walk, place: Place): Step {
  const { book } = walk;
  const result = place.target.text;
  const open = opening(walk, (next) => nested(flight(next, place, [])));
  if (place.kind === 'inner') {
    return { ...stepOf({ said: saidWhole(book, place.checked), result }), open };
  }
  const state = book.state(place.cell);
  const { checked } = state.reading;
  const formula = checked ? saidWhole(book, checked) : saying(state.input.formula);
  const said = state.input.byHand === null ? formula : saying('set by hand');
  return named(book, state, { ...stepOf({ said, result }), open });
}

/** The cost lines of a recap, each with its amount; they open in place. */
function lineSteps(walk: Walk, lines: readonly AddedLine[]): readonly Step[] {
  const now = lines.slice(0, PARTS_AT_ONCE).map(({ cell, target }) => {
    const place = target ? { kind: 'cell' as const, cell, target } : placeOfCell(walk.book, cell);
    return isShort(walk, place) ? branch(walk, place, []) : made(walk, folded(walk, place));
  });
  const rest = lines.slice(PARTS_AT_ONCE);
  if (rest.length === 0) return now;
  return [...now, moreStep(walk, rest.length, (next) => lineSteps(next, rest))];
}

function moreStep(walk: Walk, count: number, rest: (next: Walk) => readonly Step[]): Step {
  const step = stepOf({ said: saying(`${count} more`), result: '' });
  return { ...step, open: opening(walk, (next) => withMore(step, rest(next))) };
}
