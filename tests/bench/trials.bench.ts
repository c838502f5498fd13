// How sure, on the demo: 20,000 trials with all that is told of them, against a bare loop over the same formulas.
import fs from 'node:fs';
import { cellsOf } from '../../src/notebook/lines.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { streams } from '../../src/moves-it/draws.ts';
import { everyCell, trialFigures } from '../../src/moves-it/figures.ts';
import { whatMatters } from '../../src/moves-it/matters.ts';
import { valueAt } from '../../src/moves-it/spread.ts';
import { rangedAmong, runTrials } from '../../src/moves-it/trials.ts';
import { bareLoop } from './bare-loop.ts';
import { type Row, runTable, shortest, shortestOfBoth } from './table.ts';

const TRIALS = 20_000;

/** Givens of the demo, with what each is at best and at worst. */
const RANGES: Readonly<Record<string, string>> = {
  'Deck width': '13 ft 10 in at best, 14 ft 6 in at worst',
  'Board waste': '3% at best, 12% at worst',
  'Board price': '$25 per board at best, $33 per board at worst',
  'Laying pace': '28 sq ft per hour at best, 15 sq ft per hour at worst',
  Wage: '$25 per hour at best, $31 per hour at worst',
  Thickness: '3 3/4 in at best, 4 1/2 in at worst',
  Waste: '5% at best, 15% at worst',
  'Time off': '120 hours at best, 240 hours at worst',
};

function demo(): Estimate {
  const estimate = new Estimate(fs.readFileSync('templates/kestrel-court.md', 'utf8'));
  for (const cell of estimate.notebook.parts.flatMap(cellsOf)) {
    const range = RANGES[cell.name];
    if (range) estimate.setFormula(cell.id, `${cell.formula}, ${range}`);
  }
  return estimate;
}

const estimate = demo();
const cells = everyCell(estimate).map(({ cell }) => cell);
const ranged = rangedAmong(estimate, cells);
if (ranged.length < 6) throw new Error(`only ${ranged.length} givens of the demo have a range`);

const price = cells.find((cell) => estimate.state(cell).input.name === 'Price') ?? NaN;

/** The mean of the price, one trial after the other. */
function bare(): number {
  const draws = streams(1, ranged.length);
  const moved = ranged.map(({ cell }) => cell);
  const { values, slotOf, run } = bareLoop(estimate, moved);
  const slots = moved.map(slotOf);
  const out = slotOf(price);
  let sum = 0;
  for (let i = 0; i < TRIALS; i++) {
    for (let k = 0; k < ranged.length; k++) {
      values[slots[k]] = valueAt(ranged[k].spread, draws[k].next());
    }
    run();
    sum += values[out];
  }
  return sum / TRIALS;
}

const wish = { trials: TRIALS, seed: 1 };

// Without the last digits now and then a whole pack more or less is bought, no more.
const [told] = runTrials(estimate, cells, { ...wish, cells: [price] });
const mean = told.sorted.reduce((a, b) => a + b, 0) / TRIALS;
if (Math.abs(mean - bare()) > 1)
  throw new Error(`the price is ${mean}, by the bare loop ${bare()}`);

const ratio = ([one, other]: readonly [number, number]): number => one / other;

const rows: readonly Row[] = [
  {
    what: `${TRIALS} trials of the demo's price, against a bare loop over the same formulas`,
    measure: () =>
      ratio(shortestOfBoth(5, () => runTrials(estimate, cells, { ...wish, cells: [price] }), bare)),
    goal: 1,
    gate: 2,
    better: 'lower',
    unit: ' ×',
  },
  {
    what: `the same with every cell told of that depends on a range`,
    measure: () => ratio(shortestOfBoth(5, () => trialFigures(estimate, wish), bare)),
    goal: 4,
    gate: null,
    better: 'lower',
    unit: ' ×',
  },
];

runTable('Trials', rows);
if (!process.argv.includes('--gate')) {
  const times = [
    [`${TRIALS} trials, every cell told of`, shortest(3, () => trialFigures(estimate, wish))],
    ["what matters to the demo's price", shortest(3, () => whatMatters(estimate, price))],
  ] as const;
  for (const [what, ms] of times) console.log(`${ms.toPrecision(3).padStart(8)} ms  ${what}`);
}
