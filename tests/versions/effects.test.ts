// The average over orders on bare games: exact against every order counted out, and fair in what it gives.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centsOf, givenOut, moneyText } from '../../src/versions/cents.ts';
import {
  type Effects,
  type Game,
  averagedEffects,
  exactEffects,
  finished,
} from '../../src/versions/effects.ts';

/** A game by the total of each set of changes; `turned` plays it from the other end. */
class Played implements Game {
  readonly #totals: readonly bigint[];
  #set: number;

  constructor(totals: readonly bigint[], start = 0) {
    this.#totals = totals;
    this.#set = start;
  }

  toggle(index: number): void {
    this.#set ^= 1 << index;
  }

  total(): bigint {
    return this.#totals[this.#set] ?? 0n;
  }
}

/** Every order walked through. */
function counted(totals: readonly bigint[], count: number): readonly [bigint[], bigint] {
  const overs = Array.from({ length: count }, () => 0n);
  let orders = 0n;
  const walk = (set: number): void => {
    if (set === 2 ** count - 1) orders++;
  };
  const each = (order: readonly number[]): void => {
    if (order.length < count) {
      for (let i = 0; i < count; i++) if (!order.includes(i)) each([...order, i]);
      return;
    }
    let set = 0;
    for (const i of order) {
      overs[i] = (overs[i] ?? 0n) + (totals[set | (1 << i)] ?? 0n) - (totals[set] ?? 0n);
      set |= 1 << i;
    }
    walk(set);
  };
  each([]);
  return [overs, orders];
}

const game = fc.integer({ min: 1, max: 5 }).chain((count) =>
  fc.tuple(
    fc.constant(count),
    fc.array(fc.bigInt({ min: -9_999n, max: 9_999n }), {
      minLength: 2 ** count,
      maxLength: 2 ** count,
    }),
  ),
);

const centsIn = (effects: Effects | null): readonly bigint[] =>
  effects ? givenOut(effects.overs, effects.under) : [];

describe('the average over every order', () => {
  it('is what counting every order out gives', () => {
    fc.assert(
      fc.property(game, ([count, totals]) => {
        const [overs, orders] = counted(totals, count);
        const effects = finished(exactEffects(new Played(totals), count));
        expect(effects?.overs.map((over) => over * orders)).toEqual(
          overs.map((over) => over * (effects?.under ?? 1n)),
        );
      }),
    );
  });

  it('leaves the game where it stood', () => {
    fc.assert(
      fc.property(game, ([count, totals]) => {
        const played = new Played(totals);
        finished(exactEffects(played, count));
        expect(played.total()).toBe(totals[0]);
      }),
    );
  });
});

describe.for<readonly [string, (game: Game, count: number) => Effects | null]>([
  ['every order', (played, count) => finished(exactEffects(played, count))],
  ['shuffled pairs', (played, count) => finished(averagedEffects(played, count, 4, 12345))],
])('%s', ([_name, effectsOf]) => {
  it('gives cents that add up, nothing to what does nothing, and the same with its sign turned from the other end', () => {
    fc.assert(
      fc.property(game, fc.nat(4), ([count, made], idle) => {
        // One change that does nothing: every set comes to what it comes to without it.
        const without = (set: number): number => set & ~(1 << (idle % count));
        const totals = made.map((_, set) => made[without(set)] ?? 0n);
        const full = totals.length - 1;
        const cents = centsIn(effectsOf(new Played(totals), count));
        expect(cents.reduce((a, b) => a + b, 0n)).toBe((totals[full] ?? 0n) - (totals[0] ?? 0n));
        expect(cents[idle % count]).toBe(0n);
        const back = centsIn(effectsOf(new Played(totals, full), count));
        expect(back).toEqual(cents.map((cent) => -cent));
      }),
    );
  });
});

describe('cents', () => {
  it('go first to those that lost most by being cut', () => {
    expect(givenOut([100n, 100n, 100n], 3n)).toEqual([34n, 33n, 33n]);
    expect(givenOut([-100n, -100n, -100n], 3n)).toEqual([-34n, -33n, -33n]);
    expect(givenOut([5n, 0n, 1n], 6n)).toEqual([1n, 0n, 0n]);
    expect(() => givenOut([1n], 2n)).toThrow('no whole number of cents');
  });

  it('are read from money and written as money', () => {
    for (const money of ['0.00', '-0.05', '1412.60', '-12.34'])
      expect(moneyText(centsOf(money))).toBe(money);
    expect(() => centsOf('12')).toThrow('no money');
  });
});
