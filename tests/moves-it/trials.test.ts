// Trials against what is known in closed form, against a worked example of three-point estimating, and their promises.
import { describe, expect, it, test } from 'vitest';
import {
  chancePassing,
  chanceWithin,
  contingencyFor,
  curveOf,
  deviationOf,
  meanOf,
  quantile,
} from '../../src/moves-it/curve.ts';
import { trialFigures } from '../../src/moves-it/figures.ts';
import { type CellTrials, runTrials } from '../../src/moves-it/trials.ts';
import { TRIALS, opened } from './opened.ts';

/** Mean and variance of a triangular spread from a over its likeliest value m to b. */
const triangular = (a: number, m: number, b: number) => ({
  mean: (a + m + b) / 3,
  variance: (a * a + m * m + b * b - a * m - a * b - m * b) / 18,
});

/** What a share u of a triangular spread stays under. */
const triangularQuantile = (a: number, m: number, b: number, u: number): number =>
  u < (m - a) / (b - a)
    ? a + Math.sqrt(u * (b - a) * (m - a))
    : b - Math.sqrt((1 - u) * (b - a) * (b - m));

/** Four standard errors: missed once in sixteen thousand tries, and the seed is fixed. */
function expectMean(sample: CellTrials, mean: number, variance: number): void {
  const error = Math.sqrt(variance / TRIALS);
  expect(Math.abs(meanOf(sample) - mean)).toBeLessThan(4 * error);
  expect(deviationOf(sample) / Math.sqrt(variance)).toBeGreaterThan(0.97);
  expect(deviationOf(sample) / Math.sqrt(variance)).toBeLessThan(1.03);
}

describe('trials against closed forms', () => {
  test.for([
    [5, 6, 9],
    [5, 5, 9],
    [5, 9, 9],
    [9, 6, 5],
  ] as const)('a range from %i over %i to %i has the quantiles of its triangle', ([a, m, b]) => {
    const sample = opened(`Work: ${m} hours, ${a} at best, ${b} at worst`).trials('Work');
    const { mean, variance } = triangular(a, m, b);
    expectMean(sample, mean, variance);
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    for (const u of [0.05, 0.1, 0.5, 0.8, 0.9, 0.95]) {
      const wanted = triangularQuantile(low, m, high, u);
      expect(Math.abs(quantile(sample, u) - wanted)).toBeLessThan(0.05);
    }
    expect(sample.sorted[0]).toBeGreaterThanOrEqual(low);
    expect(sample.sorted[TRIALS - 1]).toBeLessThanOrEqual(high);
  });

  it('spread a range without a first value evenly between its ends', () => {
    const sample = opened('Rate: $50 to $60 per hour').trials('Rate');
    expect(sample.unit).toBe('$ per hour');
    expectMean(sample, 55, 100 / 12);
    for (const u of [0.05, 0.1, 0.5, 0.8, 0.9, 0.95]) {
      expect(Math.abs(quantile(sample, u) - (50 + 10 * u))).toBeLessThan(0.15);
    }
  });

  it('add independent ranges up: means and variances add', () => {
    const spreads = [
      [5, 6, 9],
      [10, 14, 15],
      [2, 2, 8],
      [20, 24, 31],
    ] as const;
    const lines = spreads.map(([a, m, b], i) => `W${i}: ${m} hours, ${a} at best, ${b} at worst`);
    const sample = opened(...lines, 'All: W0 plus W1 plus W2 plus W3').trials('All');
    const all = spreads.map(([a, m, b]) => triangular(a, m, b));
    expectMean(
      sample,
      all.reduce((sum, each) => sum + each.mean, 0),
      all.reduce((sum, each) => sum + each.variance, 0),
    );
  });

  it('multiply independent ranges: the mean of hours at a rate is the product of their means', () => {
    const sample = opened(
      'Hours: 6 hours, 5 at best, 9 at worst',
      'Rate: $50 to $60 per hour',
      'Labour: hours at rate',
      '  - cost: labour',
    ).trials('Labour');
    const hours = triangular(5, 6, 9);
    const rate = { mean: 55, variance: 100 / 12 };
    const variance =
      hours.variance * rate.variance +
      hours.variance * rate.mean ** 2 +
      rate.variance * hours.mean ** 2;
    expectMean(sample, hours.mean * rate.mean, variance);
    // A cost line is whole cents in every trial.
    for (const value of sample.sorted)
      expect(Math.abs(value * 100 - Math.round(value * 100))).toBeLessThan(1e-8);
  });

  it('come to what was published of three-point estimating', () => {
    // U.S. Government Accountability Office, Cost Estimating and Assessment Guide (GAO-20-195G), table 12: least, most likely and
    // greatest cost of an aircraft's parts in $K, each a triangle. Published with it: the most likely ones add up to
    // $77 million, and to $2.47 billion for 32 of them. What its own trials came to is not taken from there.
    const table = [
      ['Airframe', 17_955, 19_645, 21_785],
      ['Propulsion', 8_500, 10_553, 13_000],
      ['Communications', 4_000, 4_306, 5_100],
      ['Navigation', 4_100, 4_305, 4_650],
      ['Central computer', 550, 600, 650],
      ['Software', 32_300, 35_547, 52_500],
      ['Integration', 1_950, 2_136, 2_600],
    ] as const;
    const open = opened(
      ...table.map(
        ([name, low, likely, high]) => `${name}: $${likely}, $${low} at best, $${high} at worst`,
      ),
      `One: total of ${table.map(([name]) => name).join(', ')}`,
      'All: one times 32',
    );
    const plain = Number(open.estimate.shown(open.cell('One'))?.exact);
    expect(Math.round(plain / 1_000)).toBe(77);
    const all = open.trials('All');
    expect(Math.round((plain * 32) / 10_000)).toBe(247);
    const spreads = table.map(([, low, likely, high]) => triangular(low, likely, high));
    const mean = spreads.reduce((sum, each) => sum + each.mean, 0);
    const variance = spreads.reduce((sum, each) => sum + each.variance, 0);
    expectMean(all, 32 * mean, 32 * 32 * variance);
    // The guide's point: the sum of what is likeliest is no likely sum.
    expect(chanceWithin(all, plain * 32)).toBeLessThan(0.2);
    expect(contingencyFor(all, plain * 32, 0.8).amount).toBeGreaterThan(32 * (mean - plain));
  });
});

describe('trials', () => {
  const job = [
    'Hours: 6 hours, 5 at best, 9 at worst',
    'More hours: 10 hours, 8 at best, 16 at worst',
    'All hours: hours plus more hours',
  ];

  it('stand at both extremes together where givens are tied', () => {
    const open = opened(...job);
    const ties = [[open.cell('Hours'), open.cell('More hours')]];
    const tied = open.trials('All hours', { ties });
    const free = open.trials('All hours');
    // Of 20,000 draws the least has a share of some 1/20,000 of the chances under it.
    const [low, high] = [0.0005, 0.9995].map(
      (u) => triangularQuantile(5, 6, 9, u) + triangularQuantile(8, 10, 16, u),
    );
    expect(tied.sorted[0]).toBeLessThan(low);
    expect(tied.sorted[TRIALS - 1]).toBeGreaterThan(high);
    expect(free.sorted[0]).toBeGreaterThan(tied.sorted[0]);
    // Of what moves together the deviations add, and the quantiles too.
    const alone = ['Hours', 'More hours'].map((name) => open.trials(name, { ties }));
    for (const u of [0, 0.1, 0.5, 0.9, 1]) {
      const sum = alone.reduce((all, sample) => all + quantile(sample, u), 0);
      expect(quantile(tied, u)).toBeCloseTo(sum, 9);
    }
    expect(deviationOf(tied)).toBeGreaterThan(1.2 * deviationOf(free));
    expect(meanOf(tied)).toBeCloseTo(meanOf(free), 1);
  });

  it('tie from best to worst where less is worse', () => {
    const open = opened(
      'Hours: 5 to 9 hours',
      'Pace: 40 sq ft per hour, 50 at best, 30 at worst',
      'Done: hours times 1 plus 100 sq ft divided by pace',
    );
    const ties = [[open.cell('Hours'), open.cell('Pace')]];
    const sample = open.trials('Done', { ties });
    expect(sample.sorted[0]).toBeCloseTo(5 + 100 / 50, 2);
    expect(sample.sorted[TRIALS - 1]).toBeCloseTo(9 + 100 / 30, 1);
  });

  it('give the same figures for the same seed, and others for another', () => {
    const { estimate } = opened(...job);
    const figures = (seed: number) => trialFigures(estimate, { trials: 3_000, seed });
    expect(figures(4)).toEqual(figures(4));
    expect(figures(4).cells).not.toEqual(figures(5).cells);
    expect(figures(4)).toMatchObject({ seed: 4, trials: 3_000 });
  });

  it('come to the same whichever cells are asked for, and however many at once', () => {
    const open = opened(...job);
    const all = runTrials(open.estimate, open.cells(), { trials: 1_234, seed: 9 });
    const one = open.trials('All hours', { trials: 1_234, seed: 9 });
    expect(all.find(({ cell }) => cell === one.cell)).toEqual(one);
  });

  it('tell of no cell where no given has a range', () => {
    const { estimate, cells } = opened('Hours: 6 hours', 'Labour: hours at $50 per hour');
    expect(runTrials(estimate, cells(), { trials: 10, seed: 1 })).toEqual([]);
  });

  it('equal the shown answer where best and worst are one', () => {
    const open = opened(
      'Waste: 10%, 10 at best, 10 at worst',
      'Volume: 16 cubic feet',
      'Bags: volume plus waste, in bags of 0.45 cubic feet per bag',
      'Concrete: bags at $6.48 per bag',
      '  - cost: material',
    );
    for (const name of ['Bags', 'Concrete']) {
      const sample = open.trials(name, { trials: 50 });
      expect(new Set(sample.sorted).size).toBe(1);
      expect(sample.sorted[0]).toBe(Number(open.estimate.shown(open.cell(name))?.exact));
    }
  });

  it('leave out what the answer leaves out, and count trials without a value', () => {
    const open = opened(
      'Gap: 1 in, 0 at best, 2 at worst',
      'Late: ? hours',
      'Hours: 5 to 9 hours',
      'Known: total of hours, late',
      'Rest: hours minus 6 hours',
      'Odd: 10 ft divided by (gap rounded down to the next 1 in)',
    );
    const known = open.trials('Known');
    expect(known.none).toBe(0);
    expect(known.sorted[TRIALS - 1]).toBeLessThanOrEqual(9);
    const odd = open.trials('Odd');
    // Half of the chances of the triangle lie under one inch.
    expect(odd.none / TRIALS).toBeCloseTo(0.5, 1);
    expect(odd.none + odd.sorted.length).toBe(TRIALS);
    const figure = trialFigures(open.estimate, { trials: 500, seed: 1 });
    expect(figure.cells.find(({ name }) => name === 'Odd')?.none).toBeGreaterThan(200);
    expect(figure.cells.some(({ name }) => name === 'Late')).toBe(false);
  });

  it('reach through tables: rows with ranges, columns that are totalled', () => {
    const open = opened(
      'Depth: 4 in, 4 at best, 6 at worst',
      'Bays:',
      '',
      '  | bay | length | volume: length by 4 ft by depth |',
      '  |---|---|---|',
      '  | A | 12 ft | |',
      '  | B | 5 ft, 4 at best, 6 at worst | |',
      '',
      'Concrete: total of volume in bays',
    );
    const sample = open.trials('Concrete');
    const depth = triangular(4 / 12, 4 / 12, 6 / 12).mean;
    expect(meanOf(sample)).toBeCloseTo((12 + 5) * 4 * depth, 0);
    expect(open.trials('Bays: A: volume').sorted[TRIALS - 1]).toBeLessThanOrEqual(24);
  });
});

describe('what trials tell', () => {
  const sample = opened('Price: $1000 to $2000', '  - cost: material').trials('Price');

  it('is the chance that a budget is passed', () => {
    expect(chancePassing(sample, 1250)).toBeCloseTo(0.75, 2);
    expect(chanceWithin(sample, 1250)).toBeCloseTo(0.25, 2);
    expect([chancePassing(sample, 999), chancePassing(sample, 2000)]).toEqual([1, 0]);
  });

  it('is the contingency that a certainty needs, and never less than nothing', () => {
    const { amount, share } = contingencyFor(sample, 1500, 0.8);
    expect(Math.abs(amount - 300)).toBeLessThan(10);
    expect(share).toBeCloseTo(0.2, 2);
    expect(contingencyFor(sample, 1500, 0.3)).toEqual({ amount: 0, share: 0 });
  });

  it('is a curve whose bars hold all trials', () => {
    const bars = curveOf(sample, 20);
    expect(bars).toHaveLength(20);
    expect(bars.reduce((all, bar) => all + bar.share, 0)).toBeCloseTo(1, 12);
    for (const bar of bars) expect(bar.share).toBeCloseTo(0.05, 1);
    expect(bars[0].from).toBe(sample.sorted[0]);
    expect(bars[19].to).toBe(sample.sorted[TRIALS - 1]);
  });
});
