// What a worker is asked: the same figures as when they are worked at once, in goes, by places that any reading of the text
// knows; and ties that stand in the text.
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { quantile } from '../../src/moves-it/curve.ts';
import { trialFigures } from '../../src/moves-it/figures.ts';
import { inOneGo } from '../../src/moves-it/goes.ts';
import { whatMatters } from '../../src/moves-it/matters.ts';
import { answerTo, cellsOfAnswer, placeIn } from '../../src/moves-it/questions.ts';
import { tiesOf } from '../../src/moves-it/ties.ts';
import { JOB_PRICE, withTotals } from '../../src/moves-it/whole-job.ts';
import { opened } from './opened.ts';

const JOB = [
  'Hours: 40 hours, 30 at best, 60 at worst',
  '  - moves with: one crew',
  'Hauling: 10 hours, 8 at best, 15 at worst',
  '  - moves with: one crew',
  'Rate: $50 per hour',
  'Bags: 41 bags, 38 at best, 52 at worst',
  'Rows:',
  '',
  '  | plant | price |',
  '  |---|---|',
  '  | fern | $6 per plant, $5 at best, $9 at worst |',
  '',
  'All hours: hours plus hauling',
  'Labour: all hours at rate',
  '  - cost: labour',
  'Concrete: bags at $6.48 per bag',
  '  - cost: material',
];

const job = () => withTotals(opened(...JOB).estimate);

/** A copy as a worker has it: the same text, read anew after ids were given to other cells. */
function elsewhere() {
  const other = new Estimate(`# Other\n\n## Part\n\n- A: 1 ft\n- B: 2 ft\n`);
  other.replaceText({
    say: 'all',
    splices: [
      { from: 0, to: other.notebook.text.length, insert: opened(...JOB).estimate.notebook.text },
    ],
  });
  return withTotals(other);
}

describe('answers', () => {
  it('give a cell the figures that the headless run gives it, for the same seed', () => {
    const here = job();
    const told = trialFigures(opened(...JOB).estimate, { trials: 2_000, seed: 7 });
    for (const name of ['All hours', 'Labour', 'Concrete', 'Rows: fern: price']) {
      const cell = opened(...JOB).cell(name);
      const question = { kind: 'trials', result: placeIn(here, cell), trials: 2_000, seed: 7 };
      const answer = inOneGo(answerTo(elsewhere(), question as never));
      if (answer.kind !== 'trials') throw new Error(answer.kind);
      const figure = told.cells.find((each) => each.name === name);
      for (const [share, wanted] of [
        [0.05, figure?.p5],
        [0.5, figure?.p50],
        [0.8, figure?.p80],
      ] as const)
        expect(quantile(answer, share)).toBeCloseTo(wanted ?? NaN, 8);
    }
  });

  it('tell what matters with the cells that stand in the same places here', () => {
    const here = job();
    const there = elsewhere();
    const answer = inOneGo(answerTo(there, { kind: 'matters', result: placeIn(here, JOB_PRICE) }));
    if (answer.kind !== 'matters' || !answer.matters) throw new Error(answer.kind);
    expect(cellsOfAnswer(here, answer.matters)).toEqual(whatMatters(here, JOB_PRICE));
  });

  it('come in goes that say how much is done, in order and up to all of it', () => {
    const goes = answerTo(job(), { kind: 'trials', result: -1, trials: 3_000, seed: 1 });
    const done: number[] = [];
    for (let went = goes.next(); !went.done; went = goes.next()) done.push(went.value);
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(done.length).toBeGreaterThan(3);
    expect(done.at(-1)).toBe(1);
  });

  it('are empty where the result depends on no range', () => {
    const { estimate, cell } = opened('Side: 4 ft', 'Area: side by side');
    const here = withTotals(estimate);
    const result = placeIn(here, cell('Area'));
    expect(inOneGo(answerTo(here, { kind: 'trials', result, trials: 10, seed: 1 }))).toEqual({
      kind: 'trials',
      sorted: new Float64Array(0),
      none: 0,
    });
  });
});

describe('ties that stand in the text', () => {
  const widest = (lines: readonly string[]): number => {
    const figure = trialFigures(opened(...lines).estimate, { trials: 5_000, seed: 3 });
    return figure.cells.find(({ name }) => name === 'All hours')?.sd ?? NaN;
  };

  it('are honoured: deviations of what moves together add, of what does not less', () => {
    const free = JOB.filter((line) => !line.includes('moves with'));
    const figures = trialFigures(opened(...JOB).estimate, { trials: 5_000, seed: 3 });
    const sd = (name: string) => figures.cells.find((each) => each.name === name)?.sd ?? NaN;
    // Their triangles lean alike, not quite: tied by chances they are all but in step.
    expect(widest(JOB) / (sd('Hours') + sd('Hauling'))).toBeGreaterThan(0.99);
    expect(widest(free)).toBeLessThan(0.95 * widest(JOB));
  });

  it('hold for all givens in the rows of a table, and not for what has no range', () => {
    const open = opened(
      'Rate: $50 per hour',
      '  - moves with: one crew',
      'Plants:',
      '  - moves with: one crew',
      '',
      '  | plant | price | count |',
      '  |---|---|---|',
      '  | fern | $6 per plant, $5 at best, $9 at worst | 4 plants |',
      '  | sedge | $3 per plant, $2 at best, $4 at worst | 9 plants |',
      '',
    );
    expect(tiesOf(open.estimate)).toEqual([
      [open.cell('Plants: fern: price'), open.cell('Plants: sedge: price')],
    ]);
  });
});
