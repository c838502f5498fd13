// How sure: the notebook worked over and over, its givens drawn from their ranges. The same notebook, seed and number of
// trials come to the same figures anywhere, in a worker as in the headless run.
//
// Each given draws from a stream of its own. Givens that are tied move together: all stand where the same share of
// their chances lies before them, so that they are at their best at once and at their worst at once, and each
// still keeps to its own range.
import type { CellId } from '../language/tree.ts';
import { type Sample, deviationOf, meanOf, quantile, sampleOf } from './curve.ts';
import { type Draws, streams } from './draws.ts';
import { BLOCK, FloatWork } from './floats.ts';
import { type Goes, inOneGo } from './goes.ts';
import type { Lane } from './lanes.ts';
import { type Spread, spreadOf, valueAt } from './spread.ts';
import { type ShownUnit, shownUnit } from './unit.ts';
import { type Asked, type Web, webOf } from './web.ts';

export interface TrialsAsked {
  readonly trials: number;
  /** A whole number from 0 on. */
  readonly seed: number;
  /** Givens that move together, each in one group at most. */
  readonly ties?: readonly (readonly CellId[])[];
  /** Only these are told of; else every cell that depends on a range, in the order of the notebook. */
  readonly cells?: readonly CellId[];
}

export interface CellTrials extends Sample, ShownUnit {
  readonly cell: CellId;
}

/** How many values are kept at once: 64 MB of them. More cells than that are worked in turns, with the same draws. */
const MOST_KEPT = 8_000_000;

/** A given with a range, and how its values are spread. */
export interface Ranged {
  readonly cell: CellId;
  readonly spread: Spread;
}

/** Of these cells, those that have a range to draw from. */
export function rangedAmong(asked: Asked, cells: readonly CellId[]): readonly Ranged[] {
  return cells.flatMap((cell) => {
    const spread = spreadOf(asked.state(cell));
    return spread ? [{ cell, spread }] : [];
  });
}

/** `cells`: all of the notebook, those in rows of tables too, in its order. Figures that are no numbers are left out. */
export function runTrials(
  asked: Asked,
  cells: readonly CellId[],
  wish: TrialsAsked,
): readonly CellTrials[] {
  return inOneGo(trialsInGoes(asked, cells, wish));
}

/** The same, stopping after each block of trials. */
export function* trialsInGoes(
  asked: Asked,
  cells: readonly CellId[],
  wish: TrialsAsked,
): Goes<readonly CellTrials[]> {
  const ranged = rangedAmong(asked, cells);
  const web = webOf(
    asked,
    ranged.map((each) => each.cell),
    wish.cells ?? null,
  );
  const moves = new Set([...web.moved, ...web.steps.map((step) => step.cell)]);
  const told = (wish.cells ?? cells).flatMap((cell) => {
    const unit = moves.has(cell) ? shownUnit(asked, asked.state(cell)) : null;
    return unit ? [{ cell, ...unit }] : [];
  });
  const atOnce = Math.max(1, Math.floor(MOST_KEPT / Math.max(1, wish.trials)));
  const done: CellTrials[] = [];
  for (let from = 0; from < told.length; from += atOnce) {
    done.push(...(yield* someCells(asked, web, ranged, wish, told.slice(from, from + atOnce))));
  }
  return done;
}

function* someCells(
  asked: Asked,
  web: Web,
  ranged: readonly Ranged[],
  { trials, seed, ties = [] }: TrialsAsked,
  told: readonly (ShownUnit & { readonly cell: CellId })[],
): Goes<readonly CellTrials[]> {
  const work = new FloatWork(asked, web, 'kept');
  const kept = told.map((each) => ({
    ...each,
    lane: work.lane(each.cell),
    values: new Float64Array(trials),
  }));
  const drawn = drawing(work, ranged, seed, ties);
  for (let from = 0; from < trials; from += BLOCK) {
    const many = Math.min(BLOCK, trials - from);
    for (const draw of drawn) draw(many);
    work.run(many);
    for (const { lane, values, factor } of kept) {
      for (let i = 0; i < many; i++) values[from + i] = lane[i] * factor;
    }
    yield (from + many) / trials;
  }
  return kept.map(({ cell, unit, factor, exactFactor, values }) => ({
    cell,
    unit,
    factor,
    exactFactor,
    ...sampleOf(values),
  }));
}

/** Puts the next draws into the lanes of the givens. */
function drawing(
  work: FloatWork,
  ranged: readonly Ranged[],
  seed: number,
  ties: readonly (readonly CellId[])[],
): readonly ((many: number) => void)[] {
  const draws = streams(seed, ranged.length);
  const leader = new Map<CellId, CellId>();
  for (const tie of ties) {
    const first = ranged.find(({ cell }) => tie.includes(cell));
    if (!first) continue;
    for (const cell of tie) {
      if (leader.has(cell)) throw new Error(`cell ${cell} is tied twice`);
      leader.set(cell, first.cell);
    }
  }
  const chances = new Map<CellId, Lane>();
  return ranged.map(({ cell, spread }, k) => {
    const lane = work.lane(cell);
    const leads = leader.get(cell) ?? cell;
    if (leads !== cell) {
      const shared = chances.get(leads) as Lane;
      return (many) => spreadOver(lane, spread, shared, many);
    }
    const own = new Float64Array(BLOCK);
    chances.set(cell, own);
    return (many) => {
      draw(own, draws[k], many);
      spreadOver(lane, spread, own, many);
    };
  });
}

function draw(chances: Lane, draws: Draws, many: number): void {
  for (let i = 0; i < many; i++) chances[i] = draws.next();
}

function spreadOver(lane: Lane, spread: Spread, chances: Lane, many: number): void {
  for (let i = 0; i < many; i++) lane[i] = valueAt(spread, chances[i]);
}

export interface TrialFigure {
  readonly mean: number;
  readonly sd: number;
  readonly p5: number;
  readonly p10: number;
  readonly p50: number;
  readonly p80: number;
  readonly p90: number;
  readonly p95: number;
}

export function figureOf(sample: Sample): TrialFigure {
  return {
    mean: meanOf(sample),
    sd: deviationOf(sample),
    p5: quantile(sample, 0.05),
    p10: quantile(sample, 0.1),
    p50: quantile(sample, 0.5),
    p80: quantile(sample, 0.8),
    p90: quantile(sample, 0.9),
    p95: quantile(sample, 0.95),
  };
}
