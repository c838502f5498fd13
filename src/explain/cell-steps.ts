// Steps that are told of a cell as such: that it is given, or was worked above; and the name, source and
// caution that the first of its steps carries.
import type { CellState } from '../engine/outcome.ts';
import type { Checked } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import { showRange } from '../notebook/ranges.ts';
import type { Book } from './book.ts';
import { figureFrom } from './figure.ts';
import { whyLacking } from './lacking.ts';
import { type Target, targetOf } from './line.ts';
import { notes, stepOf } from './making.ts';
import { saidAlone } from './naming.ts';
import { type Step, saying } from './step.ts';
import { leftOutNote } from './tell/adding.ts';

/** The value of a cell as the page shows it, or why there is none. */
export function targetOfCell(book: Book, state: CellState): Target {
  const { outcome, holds } = state;
  if (outcome.kind === 'value' && holds) return targetOf(figureFrom(book, outcome, holds), '');
  const lacking = outcome.kind === 'value' ? { kind: 'waiting' as const, for: [] } : outcome;
  const text = whyLacking(book, lacking, state.input.id);
  return { figure: { kind: 'lacking', outcome: lacking }, digits: 'shown', text };
}

export function givenStep(book: Book, state: CellState, target: Target): Step {
  const { outcome, reading, input } = state;
  const isFault = outcome.kind === 'fault';
  const words = isFault ? outcome.report.headline : 'given';
  const differs = target.figure.kind === 'known' && !readsTheSame(reading.sentence, target.text);
  const step = stepOf({
    said: saying(outcome.kind === 'value' || isFault ? words : target.text),
    result: target.text,
    note: notes(
      state.range ? `${capital(showRange(state.range, book.show).text)}.` : null,
      differs && !state.range ? `Written as ${input.formula.trim()}.` : null,
      reading.checked?.note ?? null,
      isFault ? outcome.report.explanation : null,
    ),
  });
  return named(book, state, step);
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** `$7,500` and `$7,500.00` do. */
function readsTheSame(one: string, other: string): boolean {
  const [a, b] = [one, other].map((text) =>
    text.replaceAll(/[\s,]|\.00(?!\d)/g, '').replace('−', '-'),
  );
  return a === b;
}

export function referredStep(book: Book, cell: CellId, target: Target): Step {
  const step = stepOf({ said: saying('as worked above'), result: target.text });
  return { ...step, cell, name: book.facts(cell).name, referredTo: true };
}

/** A term that was worked in a formula further up. */
export function referredTerm(book: Book, checked: Checked, target: Target): Step {
  const words = saying(saidAlone(book, checked), ', as worked above');
  return { ...stepOf({ said: words, result: target.text }), referredTo: true };
}

/** The first of a cell's steps, with what is known of the cell. */
export function named(book: Book, state: CellState, first: Step): Step {
  const { id } = state.input;
  const { name, from, caution } = book.facts(id);
  const note = notes(...unsaid(state), first.note, leftOutNote(book, state.outcome));
  return { ...first, cell: id, name, source: from, caution, note };
}

/** What was decided in reading the formula as a whole, and not at one spot of it. */
function unsaid({ reading }: CellState): readonly string[] {
  if (reading.notes.length === 0 || !reading.checked) return reading.notes;
  const atSpots: (string | null)[] = [];
  const left: Checked[] = [reading.checked];
  for (let next = left.pop(); next; next = left.pop()) {
    atSpots.push(next.note);
    left.push(...next.parts);
  }
  return reading.notes.filter((note) => !atSpots.includes(note));
}
