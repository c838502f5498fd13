// Numbers that look like chance and come again for the same seed, the same on every machine.
// The generator is xoshiro128** by David Blackman and Sebastiano Vigna; its state is filled by SplitMix64, as
// they advise. Each stream takes the next stretch of SplitMix64, so that one more given with a range at the
// end of a notebook leaves the draws of those before it as they were.

/** The greatest seed: seeds are whole numbers from 0 on. */
export const GREATEST_SEED: number = Number.MAX_SAFE_INTEGER;

export class Draws {
  #a: number;
  #b: number;
  #c: number;
  #d: number;

  constructor(state: readonly [number, number, number, number]) {
    [this.#a, this.#b, this.#c, this.#d] = state;
  }

  /** The next 32 bits. */
  bits(): number {
    const b = this.#b;
    const result = Math.imul(turned(Math.imul(b, 5), 7), 9) >>> 0;
    this.#c ^= this.#a;
    this.#d ^= b;
    this.#b ^= this.#c;
    this.#a ^= this.#d;
    this.#c ^= b << 9;
    this.#d = turned(this.#d, 11);
    return result;
  }

  /** From 0 up to, and never, 1: 53 bits of it. */
  next(): number {
    const high = this.bits() >>> 5;
    const low = this.bits() >>> 6;
    return (high * 67_108_864 + low) / 9_007_199_254_740_992;
  }
}

/** So many streams of draws out of one seed. */
export function streams(seed: number, many: number): readonly Draws[] {
  if (!Number.isInteger(seed) || seed < 0 || seed > GREATEST_SEED) {
    throw new RangeError(`a seed is a whole number from 0 on, not ${seed}`);
  }
  const words = splitMix(BigInt(seed));
  return Array.from({ length: many }, () => {
    const [one, other] = [words(), words()];
    return new Draws([low(one), high(one), low(other), high(other)]);
  });
}

/** SplitMix64: 64 bits a call. */
export function splitMix(seed: bigint): () => bigint {
  let state = BigInt.asUintN(64, seed);
  return () => {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n);
    let z = state;
    z = BigInt.asUintN(64, (z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n);
    z = BigInt.asUintN(64, (z ^ (z >> 27n)) * 0x94d049bb133111ebn);
    return z ^ (z >> 31n);
  };
}

function low(word: bigint): number {
  return Number(word & 0xffffffffn) | 0;
}

function high(word: bigint): number {
  return Number(word >> 32n) | 0;
}

function turned(bits: number, by: number): number {
  return (bits << by) | (bits >>> (32 - by));
}
