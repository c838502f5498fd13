// What each of several changes does to a total: its average effect over the orders in which they can be made. Told
// nothing of notebooks: a game is switched over change by change and asked for its total in cents. Nothing here is
// rounded: effects are whole numbers over one common number.

export interface Game {
  /** Switches one change over, from before to after or back. */
  toggle(index: number): void;
  /** Null: what is switched over now doesn't work without another change. */
  total(): bigint | null;
}

/** Each effect is `over / under`; together they are the whole difference. */
export interface Effects {
  readonly overs: readonly bigint[];
  readonly under: bigint;
}

/** Work that can be put down between any two totals, so that a page can go on meanwhile. */
export type Weighing<T> = Generator<undefined, T>;

/** The work done in one go. */
export function finished<T>(work: Weighing<T>): T {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}

/** Up to so many changes every order is weighed. */
export const MOST_EXACT = 12;

/** Over all orders, by way of every set of changes. The game stands as it stood; null where a set does not work. */
export function* exactEffects(game: Game, count: number): Weighing<Effects | null> {
  const totals: bigint[] = [];
  // From one set to the next a single change is switched: the first one oftenest.
  let set = 0;
  for (let step = 0; step < 2 ** count; step++) {
    if (step > 0) {
      const index = 31 - Math.clz32(step & -step);
      game.toggle(index);
      set ^= 1 << index;
    }
    const total = game.total();
    if (total === null) return null;
    totals[set] = total;
    yield;
  }
  if (count > 0) game.toggle(count - 1);

  const factorials = [1n];
  for (let i = 1; i <= count; i++) factorials.push(factorials[i - 1] * BigInt(i));
  const overs = Array.from({ length: count }, () => 0n);
  for (let without = 0; without < totals.length; without++) {
    const size = bitsIn(without);
    for (let i = 0; i < count; i++) {
      if (without & (1 << i)) continue;
      const effect = totals[without | (1 << i)] - totals[without];
      overs[i] += effect * factorials[size] * factorials[count - 1 - size];
    }
  }
  return { overs, under: factorials[count] };
}

/** Over as many pairs of a shuffled order and its reverse. The same seed shuffles the same. */
export function* averagedEffects(
  game: Game,
  count: number,
  pairs: number,
  seed: number,
): Weighing<Effects | null> {
  const overs = Array.from({ length: count }, () => 0n);
  const random = randomFrom(seed);
  const start = game.total();
  if (start === null) return null;
  let total = start;
  for (let pair = 0; pair < pairs; pair++) {
    const order = shuffled(count, random);
    // There in this order; back in it too, which meets the sets of the reverse order.
    for (const sign of [1n, -1n]) {
      for (const index of order) {
        game.toggle(index);
        const next = game.total();
        if (next === null) return null;
        overs[index] += sign * (next - total);
        total = next;
        yield;
      }
    }
  }
  return { overs, under: BigInt(2 * pairs) };
}

function bitsIn(set: number): number {
  let count = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) count++;
  return count;
}

function shuffled(count: number, random: (below: number) => number): readonly number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const other = random(i + 1);
    [order[i], order[other]] = [order[other], order[i]];
  }
  return order;
}

/** A 32-bit generator by shifts; whole numbers below a bound. */
function randomFrom(seed: number): (below: number) => number {
  let state = seed >>> 0 || 0x9e3779b9;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return Math.floor(((state >>> 0) / 2 ** 32) * below);
  };
}
