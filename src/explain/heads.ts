// What is told of a cell before its formula: set by hand, rounded to the cent, at fault, waiting.
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { Checked, Plan } from '../language/plan.ts';
import { MONEY } from '../quantity/dimension.ts';
import { amountMeasure } from '../quantity/measure.ts';
import { constantOf, differenceOf, heldIn, numberOf } from './asks.ts';
import type { Book } from './book.ts';
import { type Figure, type Known, figureFrom, figureOf } from './figure.ts';
import { whyLacking } from './lacking.ts';
import { type Target, targetOf } from './line.ts';
import { notes, stepOf } from './making.ts';
import { type Step, saying } from './step.ts';
import { riser } from './tell/told.ts';

export interface Head {
  readonly step: Step;
  /** How what the formula itself comes to is written in it. */
  readonly below: Target;
  /** Whether there is a formula to go on with. */
  readonly then: 'the formula' | 'nothing';
}

/** Top one first; none for a cell whose formula says all. */
export function headsOf(book: Book, state: CellState, target: Target): readonly Head[] {
  const { checked } = state.reading;
  const worked = workedFigure(book, state);
  const isByHand = state.input.byHand !== null;
  const below = isByHand ? targetOf(worked, '') : target;
  const byHand = isByHand ? [byHandHead(book, state, target, worked)] : [];
  if (state.worked.kind === 'fault') return [...byHand, faultHead(state.worked, below)];
  if (!checked) return [...byHand, waitingHead(book, state.worked, below)];
  return [...byHand, ...centHead(book, state, checked, below)];
}

/** What the formula itself comes to. A cost or price line is held in dollars. */
function workedFigure(book: Book, state: CellState): Figure {
  const { worked: outcome, input, reading } = state;
  if (outcome.kind !== 'value') return { kind: 'lacking', outcome };
  const holds = reading.checked?.holds;
  if (!holds) throw new Error(`${input.name} has a value but was not read`);
  const held = input.money ? { ...holds, measure: amountMeasure(MONEY) } : holds;
  return figureFrom(book, outcome, held);
}

function byHandHead(book: Book, state: CellState, target: Target, worked: Figure): Head {
  const { outcome } = state;
  const fault = outcome.kind === 'fault' ? outcome.report.explanation : null;
  const step = stepOf({
    said: saying('set by hand'),
    result: target.text,
    note: notes(fault, byHandNote(book, state, target.figure, worked)),
  });
  return { step, below: targetOf(worked, ''), then: 'the formula' };
}

/** The worked value beside the one by hand, and the difference. */
function byHandNote(book: Book, state: CellState, used: Figure, worked: Figure): string {
  if (worked.kind === 'lacking') {
    return `The formula has no value: ${whyLacking(book, worked.outcome)}.`;
  }
  const comes = `The formula comes to ${worked.shown.text}`;
  const [more, less] =
    used.kind === 'known' ? differences(book, state, used, worked) : [null, null];
  if (more?.kind !== 'known' || less?.kind !== 'known') return `${comes}.`;
  if (more.shown.exact === '0') return `${comes} as well.`;
  return more.shown.exact.startsWith('-')
    ? `${comes}; by hand it is ${less.shown.text} less.`
    : `${comes}; by hand it is ${more.shown.text} more.`;
}

/** By how much the value by hand is more, and by how much it is less; nulls for what is no amount. */
function differences(
  book: Book,
  state: CellState,
  used: Known,
  worked: Known,
): readonly [Figure | null, Figure | null] {
  if (typeof used.value !== 'object' || typeof worked.value !== 'object') return [null, null];
  const [from, to] = [state.holds?.measure, worked.holds.measure];
  const given = constantOf(used.value);
  const hand = from?.kind === 'amount' && to.kind === 'amount' ? heldIn(given, from, to) : given;
  const own = constantOf(worked.value);
  const { holds } = worked;
  return [
    figureOf(book, { plan: differenceOf(hand, own), holds }),
    figureOf(book, { plan: differenceOf(own, hand), holds }),
  ];
}

/** Faults that only the values show: the formula was read, so its working can be followed to the spot. */
const SHOWN_BY_VALUES: ReadonlySet<string> = new Set([
  'division-by-zero',
  'root-of-negative',
  'nothing-left',
  'piece-too-long',
  'no-triangle',
  'too-large',
]);

function faultHead({ report }: Extract<Outcome, { kind: 'fault' }>, below: Target): Head {
  const step = stepOf({
    said: saying(report.headline),
    result: 'no value yet',
    note: report.explanation,
  });
  return { step, below, then: SHOWN_BY_VALUES.has(report.code) ? 'the formula' : 'nothing' };
}

function waitingHead(book: Book, outcome: Outcome, below: Target): Head {
  const why = outcome.kind === 'value' ? 'no value yet' : whyLacking(book, outcome);
  return { step: stepOf({ said: saying(why), result: why }), below, then: 'nothing' };
}

function roundedToTheCent(plan: Plan, { holds: { measure } }: Known): Plan {
  const dollars = measure.kind === 'amount' ? heldIn(plan, measure, amountMeasure(MONEY)) : plan;
  return { op: 'round', way: 'nearest', of: dollars, step: numberOf('0.01') };
}

/** A cost line is its amount rounded to the cent; said where there was more to it than cents. */
function centHead(book: Book, state: CellState, checked: Checked, target: Target): readonly Head[] {
  const { money } = state.input;
  if (money === null) return [];
  const raw = figureOf(book, checked);
  const rounded = workedFigure(book, state);
  if (raw.kind === 'lacking' || rounded.kind === 'lacking') return [];
  if (raw.shown.exact === rounded.shown.exact) return [];
  const term = { figure: raw, side: 'apart', instead: '' } as const;
  const made = riser(book, {
    said: saying(`rounded to the cent, as every ${money.line} line is`),
    tokens: [term],
    joint: '→',
    result: target,
    // `$309.455` would be rounded up by a reader, where $309.4546 is not.
    comesOut: [(stands) => roundedToTheCent(stands(term), raw)],
    apart: true,
    used: [],
  });
  const below = made.targets.get(term) ?? targetOf(raw, '');
  return [{ step: stepOf(made), below, then: 'the formula' }];
}
