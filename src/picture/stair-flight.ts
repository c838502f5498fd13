// A flight as it is told: its risers one by one, and the heights they reach.
import type { Given, Size } from './given.ts';

export interface Flight {
  readonly risers: readonly Size[];
  readonly run: Size;
  /** Finished height above the floor below after each riser. */
  readonly heights: readonly number[];
  /** Where the floor above is. */
  readonly floor: number;
  /** How far the floor above goes on beyond the last riser, and the one below before the first. */
  readonly beyond: number;
  readonly before: number;
}

export function flightOf(given: Given): Flight {
  const run = given.size('run');
  const rise = given.maybe('rise');
  const count = given.count('risers');
  // A table of risers may go on above the last one that is built.
  let risers = given.sizes('heights').slice(0, count ?? undefined);
  if (risers.length === 0 && rise) risers = Array.from({ length: count ?? 1 }, () => rise);
  const first = given.maybe('first');
  const last = given.maybe('last');
  risers = risers.map((each, i) =>
    i === 0 && first ? first : i === risers.length - 1 && last ? last : each,
  );
  let height = 0;
  const heights = risers.map(({ inches }) => (height += inches));
  const floor = given.maybe('total')?.inches ?? height;
  const platform = given.some('platform');
  const usual = run.inches * 1.5;
  return { risers, run, heights, floor, beyond: platform?.inches ?? usual, before: usual };
}
