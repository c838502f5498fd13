// A result as a given moves along, in plain doubles, and where it jumps: whole packs, whole boards, a row of a table.
// A jump is narrowed down by looking between two places until hardly anything lies between them; a slope goes as it is
// narrowed, a jump stays.
import type { CellId } from '../language/tree.ts';
import { BLOCK, type Cents, FloatWork } from './floats.ts';
import { type Asked, webOf } from './web.ts';

/** A result at so many places; places and results are numbers as the cells hold them. */
export type Along = (places: readonly number[]) => readonly number[];

/** NaN where the result has no value. */
export function along(asked: Asked, given: CellId, result: CellId, cents: Cents): Along {
  const web = webOf(asked, [given], [result]);
  if (result !== given && !web.steps.some(({ cell }) => cell === result)) {
    const { outcome } = asked.state(result);
    const still = outcome.kind === 'value' ? Number(outcome.value) : NaN;
    return (places) => places.map(() => still);
  }
  const work = new FloatWork(asked, web, cents);
  const [put, got] = [work.lane(given), work.lane(result)];
  return (places) => {
    const results: number[] = [];
    for (let from = 0; from < places.length; from += BLOCK) {
      const some = places.slice(from, from + BLOCK);
      put.set(some);
      work.run(some.length);
      for (let i = 0; i < some.length; i++) results.push(got[i]);
    }
    return results;
  };
}

export interface Jump {
  readonly at: number;
  /** The result right before and right after it. */
  readonly before: number;
  readonly after: number;
}

export interface Jumps {
  /** In the order of the places. */
  readonly jumps: readonly Jump[];
  /** There are so many that not all were looked for. */
  readonly more: boolean;
}

/** So many jumps tell all that a picture can show. */
const MOST_JUMPS = 200;

const MOST_PLACES = 100_000;

/** Where between two places it is looked: nothing that comes in equal steps hides there. */
const BETWEEN = [0.2361, 0.4721, 0.7639];

/** To this share of the whole way a jump is narrowed down. */
const NARROW = 1e-11;

/** Jumps of more than `least` between places that ascend. */
export function jumpsAlong(
  look: Along,
  places: readonly number[],
  results: readonly number[],
  least: number,
): Jumps {
  const whole = (places.at(-1) ?? 0) - (places[0] ?? 0);
  let open: Stretch[] = places.slice(1).map((to, i) => ({
    from: places[i],
    to,
    before: results[i],
    after: results[i + 1],
  }));
  const jumps: Jump[] = [];
  let looked = 0;
  while (open.length > 0 && looked < MOST_PLACES && jumps.length < MOST_JUMPS) {
    const inside = open.flatMap(({ from, to }) => BETWEEN.map((part) => from + (to - from) * part));
    const found = look(inside);
    looked += inside.length;
    open = open.flatMap((stretch, k) => {
      const at = k * BETWEEN.length;
      const own = found.slice(at, at + BETWEEN.length);
      if (isSmooth(stretch, own, least / 4)) return [];
      const pieces = piecesOf(stretch, inside.slice(at, at + BETWEEN.length), own);
      const narrow = (stretch.to - stretch.from) * 0.3 < whole * NARROW;
      if (!narrow) return pieces;
      jumps.push(...pieces.filter((p) => Math.abs(p.after - p.before) > least / 2).map(jumpIn));
      return [];
    });
  }
  jumps.sort((a, b) => a.at - b.at);
  return { jumps, more: open.length > 0 };
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly before: number;
  readonly after: number;
}

/** Does the result go straight from one end to the other, or has it no value all the way? */
function isSmooth({ before, after }: Stretch, own: readonly number[], within: number): boolean {
  if ([before, after, ...own].every((value) => Number.isNaN(value))) return true;
  return BETWEEN.every((part, i) => Math.abs(before + (after - before) * part - own[i]) <= within);
}

function piecesOf(whole: Stretch, at: readonly number[], own: readonly number[]): Stretch[] {
  const places = [whole.from, ...at, whole.to];
  const results = [whole.before, ...own, whole.after];
  return places.slice(1).map((to, i) => ({
    from: places[i],
    to,
    before: results[i],
    after: results[i + 1],
  }));
}

function jumpIn({ from, to, before, after }: Stretch): Jump {
  return { at: Number(((from + to) / 2).toPrecision(10)), before, after };
}
