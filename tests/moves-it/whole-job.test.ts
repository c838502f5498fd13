// The job as a whole: the figures of the footing, asked about as cells are.
import { describe, expect, it } from 'vitest';
import { meanOf } from '../../src/moves-it/curve.ts';
import { whatMatters } from '../../src/moves-it/matters.ts';
import { runTrials } from '../../src/moves-it/trials.ts';
import { DIRECT_COST, JOB_PRICE, withTotals } from '../../src/moves-it/whole-job.ts';
import { whatWouldItTake } from '../../src/moves-it/would-take.ts';
import { opened } from './opened.ts';

describe('the whole job', () => {
  const open = opened(
    'Hours: 40 hours, 30 at best, 50 at worst',
    'Rate: $50 per hour',
    'Labour: hours at rate',
    '  - cost: labour',
    'Lumber: $500',
    '  - cost: material',
    'Late: $?',
    '  - cost: fee',
    'Overhead: 10% of labour',
    '  - price: overhead',
    'Friends: $100',
    '  - price: discount',
  );
  const job = withTotals(open.estimate);

  it('comes to what the footing says', () => {
    const { total } = open.estimate.costs();
    const said = (cell: number): string => {
      const { outcome, holds } = job.state(cell);
      return outcome.kind === 'value' && holds ? job.say(outcome.value, holds).exact : '';
    };
    expect([said(DIRECT_COST), said(JOB_PRICE)]).toEqual(['2500', '2600']);
    expect([total.direct, total.price]).toEqual(['2500.00', '2600.00']);
  });

  it('is told of in trials, in what matters and as a target', () => {
    const [price] = runTrials(job, open.cells(), { trials: 5000, seed: 1, cells: [JOB_PRICE] });
    expect(Math.abs(meanOf(price) - 2600)).toBeLessThan(15);
    const found = whatMatters(job, JOB_PRICE);
    expect(found?.givens.map(({ given, swing }) => [given, swing])).toEqual([
      [open.cell('Hours'), 1100],
      [open.cell('Rate'), 440],
      [open.cell('Lumber'), 100],
      [open.cell('Friends'), 20],
    ]);
    const taken = whatWouldItTake(job, {
      given: open.cell('Rate'),
      result: JOB_PRICE,
      target: '$2,820',
    });
    expect(taken).toMatchObject({
      kind: 'met',
      answers: [{ from: { formula: '$55.00 per hour' } }],
    });
  });

  it('is nothing to ask where there is no line of money', () => {
    const none = withTotals(opened('Hours: 40 hours').estimate);
    expect(() => none.state(DIRECT_COST)).toThrow('no line of money');
  });
});
