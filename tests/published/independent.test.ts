// Conversions and rounding against two general-purpose libraries that share no code or table with the project's own arithmetic:
// convert for factors (in doubles, so to 14 digits), big.js for decimals (exactly).
import Big from 'big.js';
import { convert } from 'convert';
import { describe, expect, it, test } from 'vitest';
import { Dec, roundedToWhole } from '../../src/quantity/decimal.ts';
import { UNITS, unitByKey } from '../../src/quantity/units.ts';
import { Chance } from '../properties/chance.ts';

/** Our key and theirs, by what they measure. */
const SHARED = {
  length: { in: 'in', ft: 'ft', yd: 'yd', mi: 'mi', mm: 'mm', cm: 'cm', m: 'm', km: 'km' },
  area: {
    'sq in': 'in2',
    'sq ft': 'ft2',
    'sq yd': 'yd2',
    'sq mi': 'mi2',
    'sq mm': 'mm2',
    'sq cm': 'cm2',
    'sq m': 'm2',
    'sq km': 'km2',
    acre: 'acre',
    hectare: 'hectare',
  },
  volume: {
    'cubic in': 'in3',
    'cubic ft': 'ft3',
    'cubic yd': 'yd3',
    'cubic mm': 'mm3',
    'cubic cm': 'cm3',
    'cubic m': 'm3',
    'cubic km': 'km3',
    gal: 'US liquid gallon',
    qt: 'US liquid quart',
    pt: 'US liquid pint',
    'fl oz': 'US fluid ounce',
    litre: 'L',
    ml: 'mL',
  },
  weight: { lb: 'lb', oz: 'oz', ton: 'US ton', kg: 'kg', g: 'g', tonne: 'tonne' },
  time: { second: 's', min: 'min', hour: 'h' },
} as const;
/** Not in their table, or not as what it is: their cubic mile is a millionth of one, their psi off by 4 in 100 million. */
const APART = ['$', 'board ft', 'cent', 'cubic mi', 'mbf', 'person-hour', 'psf', 'psi', 'square'];
const AMOUNTS = ['1', '12.5', '0.37', '1250'];

/** Their function takes only units of one kind together, known when it is written; here they come from a list. */
const converted = convert as unknown as (
  amount: number,
  from: string,
) => { to(unit: string): number };

describe('a conversion', () => {
  test.each(Object.entries(SHARED))('of %s is what convert makes it', (_, keys) => {
    const list = Object.entries(keys);
    for (const [from, theirFrom] of list) {
      for (const [to, theirTo] of list) {
        for (const amount of AMOUNTS) {
          const ours = unitByKey(from).scale.div(unitByKey(to).scale).mul(amount).valueOf();
          const theirs = converted(Number(amount), theirFrom).to(theirTo);
          expect(Math.abs(ours / theirs - 1), `${amount} ${from} in ${to}`).toBeLessThan(1e-14);
        }
      }
    }
  });

  it('is compared for every unit that both know', () => {
    const compared = Object.values(SHARED).flatMap((keys) => Object.keys(keys));
    expect([...compared, ...APART].toSorted()).toEqual(UNITS.map((u) => u.key).toSorted());
  });
});

/** Down and up here are toward and from the bottom, as an estimator says it; big.js names them by zero. */
function theirs(x: Big, step: Big, way: 'up' | 'down' | 'nearest'): Big {
  const steps = x.div(step);
  if (way === 'nearest') return steps.round(0, Big.roundHalfUp).times(step);
  const cut = steps.round(0, Big.roundDown);
  if (cut.eq(steps)) return cut.times(step);
  const above = way === 'up' ? steps.gt(0) : false;
  const below = way === 'down' ? steps.lt(0) : false;
  return (above ? cut.plus(1) : below ? cut.minus(1) : cut).times(step);
}

describe('rounding', () => {
  it('to a step is what big.js gives, on 20,000 random decimals, up, down and half away from zero', () => {
    const c = new Chance(11);
    // Steps that divide exactly in decimals: what is compared is rounding, not division.
    const steps = ['1', '0.25', '0.5', '0.0625', '0.01', '5', '10', '50', '1000'];
    let halves = 0;
    for (let i = 0; i < 20_000; i++) {
      const places = c.whole(0, 6);
      const digits = String(c.whole(-99_999_999, 99_999_999));
      const step = c.of(steps);
      // Every fourth stands exactly half way between two steps.
      const text = c.in(0.25)
        ? new Big(step).times(`${c.whole(-9999, 9999)}.5`).toFixed()
        : new Big(digits).div(new Big(10).pow(places)).toFixed();
      if (new Big(text).div(step).mod(1).abs().eq('0.5')) halves++;
      for (const way of ['up', 'down', 'nearest'] as const) {
        const ours = roundedToWhole(new Dec(text).div(step), way).times(step);
        expect(
          ours.eq(theirs(new Big(text), new Big(step), way).toFixed()),
          `${text} ${way} to ${step}`,
        ).toBe(true);
      }
    }
    expect(halves).toBeGreaterThan(4000);
  });

  it('of plus, minus and times has the digits of big.js, on 20,000 pairs', () => {
    const c = new Chance(12);
    const one = (): string => `${c.whole(-999_999, 999_999)}.${c.whole(0, 999_999)}`;
    for (let i = 0; i < 20_000; i++) {
      const [a, b] = [one(), one()];
      expect(new Dec(a).plus(b).toFixed()).toBe(new Big(a).plus(b).toFixed());
      expect(new Dec(a).minus(b).toFixed()).toBe(new Big(a).minus(b).toFixed());
      expect(new Dec(a).times(b).toFixed()).toBe(new Big(a).times(b).toFixed());
    }
  });
});
