// What matters: how far a result goes when one given goes along its range, or ten per cent to either side where it has
// none, all others staying as they are. Jumps by whole packs and boards are told as jumps.
import type { CellId } from '../language/tree.ts';
import { type Along, type Jump, along, jumpsAlong } from './along.ts';
import { givensOf, isWholeCount, numberOf } from './givens.ts';
import { type Goes, inOneGo } from './goes.ts';
import { type Packs, packsBetween } from './packs.ts';
import { spreadOf } from './spread.ts';
import { type ShownUnit, shownUnit } from './unit.ts';
import type { Asked } from './web.ts';

/** A place of the given and what the result comes to there, each in the unit it is shown in. */
export interface Point {
  readonly at: number;
  readonly result: number;
}

export interface Matter {
  readonly given: CellId;
  /**
   * `range`: from its best to its worst; `tenth`: from ten per cent less to ten per cent more; `whole`: so many whole
   * things less and more, ten per cent of them and at least one.
   */
  readonly by: 'range' | 'tenth' | 'whole';
  /** In what the given is shown, and the numbers of its places with it. */
  readonly unit: string;
  readonly from: Point;
  readonly to: Point;
  /** From the least to the greatest that the result comes to on the way; what is sorted by. */
  readonly swing: number;
  /** Along the way, in the order of the given's numbers. */
  readonly points: readonly Point[];
  readonly jumps: readonly Jump[];
  /** There are more jumps than are told. */
  readonly more: boolean;
  /** Where it jumps, or the given itself counts: what is bought or built in whole things on the way, and how many at `from` and at `to`. */
  readonly packs: readonly Packs[];
}

export interface Matters {
  readonly result: CellId;
  readonly unit: string;
  /** What the result comes to as the notebook stands. */
  readonly plain: number;
  /** The one with the greatest swing first; those that don't move it last. */
  readonly givens: readonly Matter[];
}

/** How many stretches the way is looked along in. */
const STRETCHES = 64;

/** A jump under this share of the swing looks like a slope. */
const LEAST_JUMP = 1 / 500;

/** Null where the result is no number. */
export function whatMatters(asked: Asked, result: CellId): Matters | null {
  return inOneGo(mattersInGoes(asked, result));
}

/** The same, stopping after each given. */
export function* mattersInGoes(asked: Asked, result: CellId): Goes<Matters | null> {
  const state = asked.state(result);
  const [unit, plain] = [shownUnit(asked, state), numberOf(state)];
  if (!unit || !plain) return null;
  const all = givensOf(asked, result);
  const givens: Matter[] = [];
  for (const [k, given] of all.entries()) {
    const found = matterOf(asked, given, result, unit);
    if (found) givens.push(found);
    yield (k + 1) / all.length;
  }
  return {
    result,
    unit: unit.unit,
    plain: plain.toNumber() * unit.factor,
    givens: givens.sort((a, b) => b.swing - a.swing),
  };
}

function matterOf(
  asked: Asked,
  given: CellId,
  result: CellId,
  { factor }: ShownUnit,
): Matter | null {
  const state = asked.state(given);
  const own = shownUnit(asked, state);
  const [from, to] = wayOf(asked, given);
  if (!own || from === to) return null;
  const places = isWholeCount(state) ? wholePlaces(from, to) : evenPlaces(from, to);
  // To the cent every line would be a stair.
  const look = along(asked, given, result, 'left');
  const results = look(places);
  const known = results.filter((value) => Number.isFinite(value));
  if (known.length === 0) return null;
  const swing = Math.max(...known) - Math.min(...known);
  const { jumps, more } = isWholeCount(state)
    ? { jumps: [], more: false }
    : lookFor(look, places, results, swing);
  const point = (at: number, value: number): Point => ({
    at: tidy(at * own.factor),
    result: tidy(value * factor),
  });
  const ends = look([from, to]);
  return {
    given,
    by: spreadOf(state) ? 'range' : isWholeCount(state) ? 'whole' : 'tenth',
    unit: own.unit,
    from: point(from, ends[0]),
    to: point(to, ends[1]),
    swing: tidy(swing * factor),
    points: places.map((at, i) => point(at, results[i])),
    jumps: jumps.map(({ at, before, after }) => ({
      at: tidy(at * own.factor),
      before: narrowed(before * factor),
      after: narrowed(after * factor),
    })),
    more,
    packs:
      jumps.length > 0 || isWholeCount(state) ? packsBetween(asked, given, result, [from, to]) : [],
  };
}

function lookFor(
  look: Along,
  places: readonly number[],
  results: readonly number[],
  swing: number,
): ReturnType<typeof jumpsAlong> {
  // A swing of the last digits of doubles is none.
  const size = Math.max(...results.map((value) => Math.abs(value)).filter(Number.isFinite));
  if (swing <= size * 1e-11) return { jumps: [], more: false };
  return jumpsAlong(look, places, results, swing * LEAST_JUMP);
}

/** From best to worst, or from ten per cent less to ten per cent more: whole things go to the next whole one. */
function wayOf(asked: Asked, given: CellId): readonly [number, number] {
  const state = asked.state(given);
  const spread = spreadOf(state);
  if (spread) return [spread.best, spread.worst];
  const plain = numberOf(state)?.toNumber() ?? 0;
  const ends = [plain * 0.9, plain * 1.1].sort((a, b) => a - b);
  return isWholeCount(state) ? [Math.floor(ends[0]), Math.ceil(ends[1])] : [ends[0], ends[1]];
}

function evenPlaces(from: number, to: number): readonly number[] {
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  return Array.from({ length: STRETCHES + 1 }, (_, i) =>
    i === STRETCHES ? high : low + ((high - low) * i) / STRETCHES,
  );
}

/** Every whole number on the way, or so many of them. */
function wholePlaces(from: number, to: number): readonly number[] {
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  if (high - low <= 4 * STRETCHES) {
    return Array.from({ length: high - low + 1 }, (_, i) => low + i);
  }
  return evenPlaces(low, high).map((place) => Math.round(place));
}

/** A jump is only narrowed down: right beside it a slope has gone on by so little. */
function narrowed(value: number): number {
  return Number(value.toPrecision(9));
}

/** Without the last digits of doubles, which are noise. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
