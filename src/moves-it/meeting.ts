// Where a result meets a target as a given moves along, in plain doubles: single places where it passes through, stretches
// where it stays on it (whole packs, whole cents), and none where it jumps over.
import type { Along } from './along.ts';
import { order } from './lanes.ts';

/** From the first to the last place at which the target is met; one place where both are the same. */
export interface Meeting {
  readonly from: number;
  readonly to: number;
}

export interface Looked {
  /** In the order of the places. */
  readonly meetings: readonly Meeting[];
  /** Of all that was looked at: the place of the greatest result under the target, and of the least over it. */
  readonly under: number | null;
  readonly over: number | null;
}

/** -1, 0, 1; NaN where there is no value. */
type Side = number;

interface Place {
  readonly at: number;
  readonly result: number;
  readonly side: Side;
}

/** So often a stretch is halved: less than a double can tell lies between its ends then. */
const HALVINGS = 64;

/** So many turning points are looked into for a target that is only touched. */
const MOST_TURNS = 50;

/** `places` ascend; what lies between two of them on one side of the target is taken to stay there, but for turns. */
export function meetingsAlong(look: Along, places: readonly number[], target: number): Looked {
  const looking = new Looking(look, target);
  const seen = looking.at(places);
  looking.at(turnsOf(seen, target).flatMap((turn) => looking.turned(turn)));
  const all = looking.places();
  for (let i = 1; i < all.length; i++) looking.between(all[i - 1], all[i]);
  return looking.told();
}

/** Whole things only: every place stands for itself. */
export function meetingsAt(look: Along, places: readonly number[], target: number): Looked {
  const looking = new Looking(look, target);
  looking.at(places);
  return looking.told();
}

class Looking {
  readonly #look: Along;
  readonly #target: number;
  readonly #seen = new Map<number, Place>();
  /** Right before and right after the result passes smoothly through the target. */
  readonly #passes: Meeting[] = [];

  constructor(look: Along, target: number) {
    this.#look = look;
    this.#target = target;
  }

  at(places: readonly number[]): readonly Place[] {
    const results = this.#look(places);
    return places.map((at, i) => {
      const place = { at, result: results[i], side: sideOf(results[i], this.#target) };
      this.#seen.set(at, place);
      return place;
    });
  }

  places(): readonly Place[] {
    return [...this.#seen.values()].sort((a, b) => a.at - b.at);
  }

  /** Narrows down where the result changes sides between two places, and looks on behind it. */
  between(from: Place, to: Place): void {
    let left = from;
    while (!sameSide(left.side, to.side)) {
      let right = to;
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (left.at + right.at) / 2;
        if (middle <= left.at || middle >= right.at) break;
        const [place] = this.at([middle]);
        if (sameSide(place.side, left.side)) left = place;
        else right = place;
      }
      if (left.side * right.side === -1 && isClose(left, right, this.#target)) {
        this.#passes.push({ from: left.at, to: right.at });
      }
      left = right;
    }
  }

  /** The place between two others at which the result comes nearest to the target. */
  turned([from, to]: readonly [number, number]): readonly number[] {
    let [low, high] = [from, to];
    for (let i = 0; i < HALVINGS * 2; i++) {
      const [a, b] = [low + (high - low) * 0.382, low + (high - low) * 0.618];
      if (!(a > low && b < high && a < b)) break;
      const [one, other] = this.#look([a, b]);
      if (Math.abs(one - this.#target) <= Math.abs(other - this.#target)) high = b;
      else low = a;
    }
    return [(low + high) / 2];
  }

  told(): Looked {
    const all = this.places();
    const meetings: Meeting[] = [...this.#passes];
    let first: Place | null = null;
    all.forEach((place, i) => {
      if (place.side !== 0) return;
      first ??= place;
      if (all[i + 1]?.side === 0) return;
      meetings.push({ from: first.at, to: place.at });
      first = null;
    });
    const under = all.filter(({ side }) => side === -1);
    const over = all.filter(({ side }) => side === 1);
    return {
      meetings: meetings.sort((a, b) => a.from - b.from),
      under: best(under, (a, b) => a.result > b.result),
      over: best(over, (a, b) => a.result < b.result),
    };
  }
}

function best(places: readonly Place[], isBetter: (a: Place, b: Place) => boolean): number | null {
  let found: Place | null = null;
  for (const place of places) if (!found || isBetter(place, found)) found = place;
  return found ? found.at : null;
}

function sideOf(result: number, target: number): Side {
  return Number.isFinite(result) ? Math.sign(order(result, target)) : NaN;
}

function sameSide(a: Side, b: Side): boolean {
  return a === b || (Number.isNaN(a) && Number.isNaN(b));
}

/** With hardly anything between them: is it a slope, and no jump? */
function isClose(a: Place, b: Place, target: number): boolean {
  const size = Math.max(Math.abs(a.result), Math.abs(b.result), Math.abs(target));
  return Math.abs(a.result - b.result) <= size * 1e-9;
}

/** Where the result comes nearer to the target and goes away again without meeting it. */
function turnsOf(places: readonly Place[], target: number): readonly (readonly [number, number])[] {
  const turns: (readonly [number, number])[] = [];
  const far = (i: number): number => Math.abs(places[i].result - target);
  for (let i = 1; i < places.length - 1 && turns.length < MOST_TURNS; i++) {
    const [before, here, after] = [places[i - 1], places[i], places[i + 1]];
    if (here.side === 0 || before.side !== here.side || after.side !== here.side) continue;
    if (
      far(i) <= far(i - 1) &&
      far(i) <= far(i + 1) &&
      (far(i) < far(i - 1) || far(i) < far(i + 1))
    )
      turns.push([before.at, after.at]);
  }
  return turns;
}
