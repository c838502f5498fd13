// What would it take: what a given must be for a result to come to a target. It is looked for in plain doubles between
// the given's limits; every answer is an amount that can be written, put back into the exact engine before it is told.
import type { Value } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Notebook } from '../notebook/document.ts';
import { cellsOf } from '../notebook/lines.ts';
import { remarkText } from '../notebook/remarks.ts';
import { type Limit, readLimits } from '../notebook/sensible.ts';
import { Dec, snapped } from '../quantity/decimal.ts';
import { along } from './along.ts';
import { ExactWork } from './exactly.ts';
import { isWholeCount, numberOf } from './givens.ts';
import { type Looked, type Meeting, meetingsAlong, meetingsAt } from './meeting.ts';
import { type Reads, formulaFor, readFor } from './putting.ts';
import { heldIn, spreadOf } from './spread.ts';
import { shownUnit } from './unit.ts';
import { webOf } from './web.ts';
import { Writable } from './writable.ts';

export interface Wish {
  readonly given: CellId;
  readonly result: CellId;
  /** As it would be written for the result: `$5,000`. */
  readonly target: string;
  /** Where to look, as it would be written for the given; else within what is sensible for it, or around what it is. */
  readonly between?: readonly [string, string];
}

/** An amount of the given, and what the result comes to with it. */
export interface Answer {
  readonly value: Dec;
  readonly shown: string;
  /** A formula for the given that reads as this amount; null where it has no end of digits. */
  readonly formula: string | null;
  readonly comesTo: string;
}

export interface Span {
  readonly from: Answer;
  readonly to: Answer;
  /** Where the answer lies between two marks of its tape, or two cents: these, and what they come to. */
  readonly beside: readonly Answer[];
  /** `exactly`: put back it is the target to the last digit; `as shown`: it has no end of digits, and shows as the target. */
  readonly meets: 'exactly' | 'as shown';
}

export type Taken =
  | {
      readonly kind: 'met';
      /** Each a single amount, or all amounts from one to another; in the order of the given's numbers. */
      readonly answers: readonly Span[];
      readonly looked: LookedBetween;
    }
  | {
      readonly kind: 'none';
      /** The target as the result would show it. */
      readonly target: string;
      /** The nearest that there is under the target, and over it; null: there is none. */
      readonly under: Answer | null;
      readonly over: Answer | null;
      readonly looked: LookedBetween;
    }
  | { readonly kind: 'refused'; readonly why: string };

export interface LookedBetween {
  readonly low: string;
  readonly high: string;
  readonly because: 'asked' | 'sensible' | 'range' | 'around';
}

/** An `Estimate`. */
export interface Solves extends Reads {
  readonly notebook: Notebook;
}

/** How many places are looked at before what lies between them. */
const PLACES = 2_000;

/** So many whole things are tried one by one. */
const MOST_WHOLE = 20_000;

export function whatWouldItTake(job: Solves, wish: Wish): Taken {
  const given = job.state(wish.given);
  const result = job.state(wish.result);
  const unit = shownUnit(job, given);
  if (given.kind !== 'given' || !unit)
    return refused(`${given.input.name} is no number that is given.`);
  if (!numberOf(result)) return refused(`${result.input.name} is no number.`);
  if (!job.reach([wish.given], 'up').includes(wish.result)) {
    return refused(`${result.input.name} does not depend on ${given.input.name}.`);
  }
  const target = readFor(job, wish.result, wish.target);
  if (target.kind === 'refused') return target;
  if (!(target.value instanceof Dec)) return refused(`"${wish.target}" is no number.`);
  const bounds = boundsOf(job, wish);
  if ('kind' in bounds) return bounds;
  const whole = isWholeCount(given);
  return new Solving(job, wish, target.value, new Writable(unit, whole), bounds).taken(whole);
}

interface Bounds {
  readonly low: number;
  readonly high: number;
  readonly because: LookedBetween['because'];
}

class Solving {
  readonly #job: Solves;
  readonly #wish: Wish;
  readonly #target: Dec;
  readonly #writable: Writable;
  readonly #exact: ExactWork;
  readonly #bounds: Bounds;

  constructor(job: Solves, wish: Wish, target: Dec, writable: Writable, bounds: Bounds) {
    this.#job = job;
    this.#bounds = bounds;
    this.#wish = wish;
    this.#target = target;
    this.#writable = writable;
    this.#exact = new ExactWork(job, webOf(job, [wish.given], [wish.result]));
  }

  taken(whole: boolean): Taken {
    const { low, high, because } = this.#bounds;
    const look = along(this.#job, this.#wish.given, this.#wish.result, 'kept');
    const target = this.#target.toNumber();
    const found =
      whole && high - low <= MOST_WHOLE
        ? meetingsAt(look, wholeFrom(low, high), target)
        : meetingsAlong(look, evenly(low, high, this.#now()), target);
    const looked = { low: this.#say(new Dec(low)), high: this.#say(new Dec(high)), because };
    const answers = joined(found, whole).flatMap((meeting) => this.#span(meeting) ?? []);
    if (answers.length > 0) return { kind: 'met', answers, looked };
    const [under, over] = [this.#near(found.under, -1), this.#near(found.over, 1)];
    return (
      this.#asShown([under, over], whole) ?? {
        kind: 'none',
        target: this.#shows(this.#target),
        under,
        over,
        looked,
      }
    );
  }

  /**
   * Where the result goes in steps, one of them can show as the target and have more digits than that: hours that are no
   * whole cents at a whole rate. All amounts of that step are answers.
   */
  #asShown(near: readonly (Answer | null)[], whole: boolean): Taken | null {
    for (const answer of near) {
      if (answer?.comesTo !== this.#shows(this.#target)) continue;
      const there = this.#run(answer.value);
      if (!(there instanceof Dec) || snapped(there).eq(snapped(this.#target))) continue;
      const again = new Solving(this.#job, this.#wish, there, this.#writable, this.#bounds).taken(
        whole,
      );
      if (again.kind !== 'met') continue;
      return { ...again, answers: again.answers.map((span) => ({ ...span, meets: 'as shown' })) };
    }
    return null;
  }

  #now(): number {
    return numberOf(this.#job.state(this.#wish.given))?.toNumber() ?? 0;
  }

  /** The amounts of a meeting that can be written; what can't be put back is no answer. */
  #span({ from, to }: Meeting): Span | null {
    let first = this.#writable.from(from);
    let last = this.#writable.upTo(to);
    // The ends of what doubles tell may be a hair off.
    if (!this.#meets(first)) first = this.#writable.next(first, 1);
    if (!this.#meets(last)) last = this.#writable.next(last, -1);
    if (first.lte(last) && this.#meets(first) && this.#meets(last)) {
      const [one, other] = [this.#answer(first), this.#answer(last)];
      return { from: one, to: other, beside: [], meets: 'exactly' };
    }
    const hair = Math.max(Math.abs(from), Math.abs(to)) * 1e-12;
    const { low, high } = this.#bounds;
    const least = Math.max(low, from - hair);
    const simple = this.#writable.simplest(least, Math.min(high, to + hair));
    const one = this.#meets(simple) ? simple : this.#refined(from, to);
    if (!one) return null;
    const answer = this.#answer(one);
    const meets = this.#meets(one) ? 'exactly' : 'as shown';
    const marks = [this.#writable.upTo(from), this.#writable.from(to)];
    const beside = marks.filter((mark) => this.#isWithin(mark) && !mark.eq(one));
    return { from: answer, to: answer, beside: beside.map((mark) => this.#answer(mark)), meets };
  }

  /** Narrowed down on the exact engine: where the result passes through the target, with all digits that are kept. */
  #refined(from: number, to: number): Dec | null {
    const hair = new Dec(Math.max(Math.abs(from), Math.abs(to))).times('1e-11');
    let [a, b] = [new Dec(from).minus(hair), new Dec(to).plus(hair)];
    let [fa, fb] = [this.#off(a), this.#off(b)];
    for (let i = 0; i < 12 && fa && fb && !fb.isZero(); i++) {
      const rise = fb.minus(fa);
      if (rise.isZero()) break;
      const next = b.minus(fb.times(b.minus(a)).div(rise));
      [a, fa] = [b, fb];
      [b, fb] = [next, this.#off(next)];
    }
    const value = snapped(b);
    const got = this.#run(value);
    return got instanceof Dec && this.#shows(got) === this.#shows(this.#target) ? value : null;
  }

  #off(value: Dec): Dec | null {
    const got = this.#run(value);
    return got instanceof Dec ? got.minus(this.#target) : null;
  }

  #meets(value: Dec): boolean {
    const got = this.#run(value);
    return got instanceof Dec && snapped(got).eq(snapped(this.#target));
  }

  #run(value: Dec): Value | null {
    this.#exact.run(new Map([[this.#wish.given, value]]));
    return this.#exact.value(this.#wish.result);
  }

  /** Of the amounts around a place that can be written, the one that comes nearest to the target on that side of it. */
  #near(place: number | null, side: -1 | 1): Answer | null {
    if (place === null) return null;
    const [up, down] = [this.#writable.from(place), this.#writable.upTo(place)];
    const around = [up, down, this.#writable.next(up, 1), this.#writable.next(down, -1)];
    let nearest: { readonly value: Dec; readonly off: Dec } | null = null;
    for (const value of around) {
      const off = this.#off(value)?.times(side);
      if (this.#isWithin(value) && off?.gt(0) && !(nearest && off.gte(nearest.off)))
        nearest = { value, off };
    }
    return this.#answer(nearest?.value ?? new Dec(place));
  }

  /** Nothing is told of what lies beyond the limits: less than no board, a pace that nobody keeps. */
  #isWithin(value: Dec): boolean {
    const { low, high } = this.#bounds;
    const hair = (high - low) * 1e-12;
    return value.gte(new Dec(low).minus(hair)) && value.lte(new Dec(high).plus(hair));
  }

  #answer(value: Dec): Answer {
    const { given } = this.#wish;
    return {
      value,
      shown: this.#say(value),
      formula: formulaFor(this.#job, given, value),
      comesTo: this.#shows(this.#run(value)),
    };
  }

  #say(value: Dec): string {
    const { holds } = this.#job.state(this.#wish.given);
    return holds ? this.#job.say(value, holds).text : '';
  }

  #shows(value: Value | null): string {
    const { holds } = this.#job.state(this.#wish.result);
    return value === null || !holds ? '' : this.#job.say(value, holds).text;
  }
}

function boundsOf(
  job: Solves,
  { given, between }: Wish,
): Bounds | Extract<Taken, { kind: 'refused' }> {
  const state = job.state(given);
  if (between) {
    const ends = between.map((text) => readFor(job, given, text));
    const numbers: number[] = [];
    for (const end of ends) {
      if (end.kind === 'refused') return end;
      numbers.push(Number(end.value));
    }
    return { low: Math.min(...numbers), high: Math.max(...numbers), because: 'asked' };
  }
  const now = numberOf(state)?.toNumber() ?? 0;
  const around = [0, now === 0 ? 100 : 5 * now].sort((a, b) => a - b);
  const cell = job.notebook.parts.flatMap(cellsOf).find(({ id }) => id === given);
  const sensible = cell && remarkText(cell.remarks, 'sensible');
  const limits = sensible ? readLimits(sensible, (text) => job.draft(given, text)) : null;
  if (limits) {
    const held = (limit: Limit | null): number | null =>
      limit &&
      state.holds &&
      heldIn(limit.value, limit.holds.measure, state.holds.measure).toNumber();
    const low = held(limits.low) ?? Math.min(around[0], held(limits.high) ?? 0);
    const high = held(limits.high) ?? Math.max(around[1], 5 * low);
    if (low < high) return { low, high, because: 'sensible' };
  }
  const spread = spreadOf(state);
  if (spread && spread.best !== spread.worst) {
    const [low, high] = [spread.best, spread.worst].sort((a, b) => a - b);
    return { low, high, because: 'range' };
  }
  return { low: around[0], high: around[1], because: 'around' };
}

/** Whole things that meet the target one after the other are one stretch. */
function joined({ meetings }: Looked, whole: boolean): readonly Meeting[] {
  if (!whole) return meetings;
  const spans: Meeting[] = [];
  for (const { from, to } of meetings) {
    const last = spans.at(-1);
    if (last && from <= last.to + 1) spans[spans.length - 1] = { from: last.from, to };
    else spans.push({ from, to });
  }
  return spans;
}

function evenly(low: number, high: number, now: number): readonly number[] {
  const places = Array.from({ length: PLACES + 1 }, (_, i) =>
    i === PLACES ? high : low + ((high - low) * i) / PLACES,
  );
  if (now > low && now < high) places.push(now);
  return [...new Set(places)].sort((a, b) => a - b);
}

function wholeFrom(low: number, high: number): readonly number[] {
  const first = Math.ceil(low);
  return Array.from({ length: Math.max(0, Math.floor(high) - first + 1) }, (_, i) => first + i);
}

function refused(why: string): Extract<Taken, { kind: 'refused' }> {
  return { kind: 'refused', why };
}
