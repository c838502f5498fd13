// The seeded draws against the published algorithms: SplitMix64 and xoshiro128**, Blackman and Vigna, prng.di.unimi.it.
import { describe, expect, it } from 'vitest';
import { Draws, splitMix, streams } from '../../src/moves-it/draws.ts';

describe('draws', () => {
  it('are those of xoshiro128** from the state 1, 2, 3, 4', () => {
    // What ports of the generator are checked with; from memory.
    const draws = new Draws([1, 2, 3, 4]);
    expect(Array.from({ length: 4 }, () => draws.bits())).toEqual([11520, 0, 5927040, 70819200]);
  });

  it('are those of the recurrence as its authors write it, worked on whole numbers of any size', () => {
    const plain = recurrence([0x9e3779b9n, 0x243f6a88n, 0xb7e15162n, 0xdeadbeefn]);
    const draws = new Draws([0x9e3779b9 | 0, 0x243f6a88, 0xb7e15162 | 0, 0xdeadbeef | 0]);
    for (let i = 0; i < 1000; i++) expect(draws.bits()).toBe(plain());
  });

  it('are seeded by SplitMix64', () => {
    // Known from ports of it for the seed 1234567; from memory.
    const words = splitMix(1234567n);
    expect([words(), words(), words()]).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
    ]);
  });

  it('lie from 0 up to 1, evenly', () => {
    const [draws] = streams(5, 1);
    const tenths = Array.from({ length: 10 }, () => 0);
    let sum = 0;
    let outside = 0;
    for (let i = 0; i < 100_000; i++) {
      const u = draws.next();
      if (!(u >= 0 && u < 1)) outside += 1;
      tenths[Math.floor(u * 10)] += 1;
      sum += u;
    }
    expect(outside).toBe(0);
    expect(sum / 100_000).toBeCloseTo(0.5, 2);
    // Chi squared with nine degrees of freedom: under 27.9 but once in a thousand.
    expect(tenths.reduce((all, n) => all + (n - 10_000) ** 2 / 10_000, 0)).toBeLessThan(27.9);
  });

  it('come again for the same seed, and a further stream leaves those before it as they are', () => {
    const first = (seed: number, many: number): readonly number[] =>
      streams(seed, many).map((each) => each.next());
    expect(first(7, 3)).toEqual(first(7, 3));
    expect(first(7, 4).slice(0, 3)).toEqual(first(7, 3));
    expect(first(8, 3)).not.toEqual(first(7, 3));
    expect(new Set(first(7, 3)).size).toBe(3);
  });

  it('refuse what is no seed', () => {
    for (const seed of [-1, 1.5, NaN, 2 ** 53]) expect(() => streams(seed, 1)).toThrow('a seed is');
  });
});

/** Words of 32 bits, as the authors' program has them. */
function recurrence(state: [bigint, bigint, bigint, bigint]): () => number {
  const word = (n: bigint): bigint => n & 0xffffffffn;
  const turned = (n: bigint, by: bigint): bigint => word(n << by) | (n >> (32n - by));
  return () => {
    const result = word(turned(word(state[1] * 5n), 7n) * 9n);
    const t = word(state[1] << 9n);
    state[2] ^= state[0];
    state[3] ^= state[1];
    state[1] ^= state[2];
    state[0] ^= state[3];
    state[2] ^= t;
    state[3] = turned(state[3], 11n);
    return Number(result);
  };
}
