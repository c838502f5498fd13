// The engine on a large job: working all of it, an edit, opening it, and what a cell weighs.
import { compile } from '../../src/engine/compile.ts';
import { toTheCent } from '../../src/engine/cost-line.ts';
import type { Held } from '../../src/engine/held.ts';
import type { CellInput } from '../../src/engine/outcome.ts';
import { Workings } from '../../src/engine/workings.ts';
import type { Plan } from '../../src/language/plan.ts';
import type { CellId } from '../../src/language/tree.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { Dec, scaled, snapped } from '../../src/quantity/decimal.ts';
import { Nouns } from '../../src/quantity/nouns.ts';
import { show } from '../../src/quantity/show.ts';
import { decimalClosure, floatClosure } from './closures.ts';
import { largeJob, type LargeJob } from './sheds.ts';
import { type Row, runTable, shortest, shortestOfBoth } from './table.ts';

const nouns = new Nouns([]);
const SHOW = {
  currency: '$',
  fractions: 16,
  measures: 'us' as const,
  many: (noun: string) => nouns.many(noun),
};

const SHEDS = 400;
const job = largeJob(SHEDS);
const gated = process.argv.includes('--gate');

function opened(from: LargeJob): Workings {
  const workings = new Workings({ nouns, show: SHOW });
  workings.load(from.parts, from.cells);
  const without = from.cells.find((cell) => workings.state(cell.id).outcome.kind !== 'value');
  if (without) throw new Error(`"${without.name}: ${without.formula}" has no value`);
  return workings;
}

/** Every formula of the job, in an order in which it can be worked, three times over. */
interface AllWorked {
  readonly engine: () => void;
  readonly decimals: () => void;
  readonly floats: () => void;
}

function allWorked(workings: Workings): AllWorked {
  const order = workings.ran;
  const slots = new Map(order.map((id, slot) => [id, slot]));
  const slotOf = (id: CellId): number => slots.get(id) ?? 0;
  const held: Held[] = [];
  const decimal: Dec[] = [];
  const float = new Float64Array(order.length);
  const engine: (() => Held)[] = [];
  const decimals: (() => Dec)[] = [];
  const floats: (() => number)[] = [];
  for (const id of order) {
    const { reading, input } = workings.state(id);
    const plan = reading.checked?.plan as Plan;
    const measure = reading.checked?.holds.measure;
    const work = compile(plan, { values: held, placeOf: slotOf }, id);
    const bare = decimalClosure(plan, decimal, slotOf);
    const quick = floatClosure(plan, float, slotOf);
    if (!input.money || measure?.kind !== 'amount') {
      engine.push(work);
      decimals.push(bare);
      floats.push(quick);
      continue;
    }
    const byCents = measure.scale.valueOf() * 100;
    engine.push(() => toTheCent(work(), measure));
    decimals.push(() =>
      snapped(scaled(bare(), measure.scale)).toDecimalPlaces(2, Dec.ROUND_HALF_UP),
    );
    floats.push(() => Math.round(quick() * byCents) / 100);
  }
  const all: AllWorked = {
    engine: () => {
      for (let i = 0; i < engine.length; i++) held[i] = engine[i]();
    },
    decimals: () => {
      for (let i = 0; i < decimals.length; i++) decimal[i] = decimals[i]();
    },
    floats: () => {
      for (let i = 0; i < floats.length; i++) float[i] = floats[i]();
    },
  };
  all.engine();
  all.decimals();
  all.floats();
  order.forEach((id, i) => {
    const [a, b, c] = [Number(held[i]), decimal[i]?.toNumber() ?? NaN, float[i] ?? NaN];
    const off = Math.max(Math.abs(a - b), Math.abs(a - c));
    if (!(off <= 1e-9 * Math.max(1, Math.abs(a)))) {
      throw new Error(`cell ${id} is ${a} by the engine, ${b} by decimals, ${c} by float64`);
    }
  });
  return all;
}

const workings = opened(job);
const all = allWorked(workings);

/** Milliseconds of one edit, the best of several runs of some dozens. */
function edit(of: Workings, cell: CellInput, formula: (turn: number) => string): number {
  let turn = 0;
  const many = 50;
  return (
    shortest(12, () => {
      for (let i = 0; i < many; i++) {
        of.change([{ kind: 'put', cell: { ...cell, formula: formula(turn++) } }]);
      }
    }) / many
  );
}

const length = (turn: number): string => `${10 + (turn % 7)} ft`;

function openedFromText(text: string): void {
  const estimate = new Estimate(text, Infinity);
  for (const part of estimate.notebook.parts) {
    for (const block of part.blocks) if (block.kind === 'cell') estimate.shown(block.cell.id);
  }
}

function bytesACell(): number {
  const { gc } = globalThis as unknown as { gc?: () => void };
  if (!gc) throw new Error('needs node --expose-gc');
  const weigh = (): number => {
    gc();
    gc();
    return process.memoryUsage().heapUsed;
  };
  const before = weigh();
  const kept = opened(job);
  const after = weigh();
  return (after - before) / job.cells.length + Number(kept.ran.length === 0);
}

const rows: readonly (Row & { readonly slow?: true })[] = [
  {
    what: `recompute ${job.cells.length.toLocaleString('en-US')} cells, against float64 closures`,
    // Both as warm as they get: right after the engine the closures would have to be fetched anew.
    measure: () => shortest(60, all.engine) / shortest(600, all.floats),
    goal: 40,
    gate: 80,
    better: 'lower',
    unit: ' ×',
  },
  {
    what: 'mathjs nodes, against bare decimal closures',
    measure: () => ratio(shortestOfBoth(40, all.engine, all.decimals)),
    goal: 1.2,
    gate: 1.5,
    better: 'lower',
    unit: ' ×',
  },
  {
    what: 'one length edited, against recomputing all',
    measure: () => edit(workings, job.length, length) / shortest(20, all.engine),
    goal: 1 / 250,
    gate: null,
    better: 'lower',
    unit: ' ×',
  },
  {
    what: 'open from text to values shown, against recomputing all',
    measure: () => ratio(shortestOfBoth(6, () => openedFromText(job.text), all.engine)),
    goal: 6,
    gate: null,
    better: 'lower',
    unit: ' ×',
  },
  {
    what: 'ten times as many cells: open',
    measure: () => {
      const large = largeJob(SHEDS * 10);
      return ratio(
        shortestOfBoth(
          3,
          () => openedFromText(large.text),
          () => openedFromText(job.text),
        ),
      );
    },
    goal: 11,
    gate: null,
    better: 'lower',
    unit: ' ×',
    slow: true,
  },
  {
    what: 'ten times as many cells: one edit',
    measure: () => {
      const large = largeJob(SHEDS * 10);
      const many = opened(large);
      return edit(many, large.length, length) / edit(workings, job.length, length);
    },
    goal: 1.2,
    gate: null,
    better: 'lower',
    unit: ' ×',
    slow: true,
  },
  {
    what: 'a look-up in each of 4,000 rows off 4,000, against 400 off 400: one edit that reaches all',
    measure: () => lookUps(4000) / lookUps(400),
    goal: 12,
    gate: null,
    better: 'lower',
    unit: ' ×',
    slow: true,
  },
  {
    what: 'one length edited in 5,000 rows of 6, against opening them',
    measure: () => {
      const text = rowsOfSix(5000);
      const estimate = new Estimate(text);
      const table = firstCell(estimate);
      let turn = 0;
      const one = shortest(12, () => {
        estimate.setRowCell(table, 4321, 1, `${20 + (turn++ % 9)} ft`);
      });
      return one / shortest(3, () => void new Estimate(text));
    },
    goal: 1 / 10,
    gate: null,
    better: 'lower',
    unit: ' ×',
    slow: true,
  },
  {
    what: 'memory a cell',
    measure: () => bytesACell() / 1000,
    goal: 3,
    gate: null,
    better: 'lower',
    unit: ' kB',
  },
];

function firstCell(estimate: Estimate): CellId {
  const blocks = estimate.notebook.parts.flatMap((part) => part.blocks);
  const found = blocks.find((block) => block.kind === 'cell');
  if (found?.kind !== 'cell') throw new Error('no cell in it');
  return found.cell.id;
}

function rowsOfSix(many: number): string {
  const rows = Array.from(
    { length: many },
    (_, i) => `  | B${i} | ${(i % 9) + 1} ft | 4 ft | 4 in | | |`,
  );
  return `# Rows\n\n## Slabs\n\n- Bays:\n\n  | bay | length | width | depth | volume: length by width by depth | cost: volume at $6 per cubic foot |\n  |---|---|---|---|---|---|\n${rows.join('\n')}\n- All: total of cost in bays\n`;
}

/** Milliseconds of one edit of a list of so many rows, off which as many rows of another table are read. */
function lookUps(many: number): number {
  const list = Array.from({ length: many }, (_, i) => `  | k${i} | ${(i % 9) + 1} ft |`).join('\n');
  const asks = Array.from({ length: many }, (_, i) => `  | k${(i * 7) % many} | |`).join('\n');
  const estimate = new Estimate(
    `# Rows\n\n## Lists\n\n- List:\n\n  | code | run |\n  |---|---|\n${list}\n- Asked:\n\n  | key | got: read run off list for code key |\n  |---|---|\n${asks}\n`,
    Infinity,
  );
  const table = firstCell(estimate);
  let turn = 0;
  return shortest(6, () => {
    estimate.setRowCell(table, 5, 1, `${20 + (turn++ % 9)} ft`);
  });
}

function ratio([one, other]: readonly [number, number]): number {
  return one / other;
}

function milliseconds(): void {
  const names = {
    name: 'slab',
    part: 'summary',
    id: job.cells.length + 1,
    byHand: null,
    money: null,
  };
  const times: readonly (readonly [string, number])[] = [
    ['recompute all', shortest(20, all.engine)],
    [
      `edit a length, ${workings.change([{ kind: 'put', cell: { ...job.length, formula: '9 ft' } }]).length} cells run`,
      edit(workings, job.length, length),
    ],
    ['edit that rounding absorbs', edit(workings, job.waste, (turn) => `10.0${turn % 2}%`)],
    [
      `edit the rate, ${workings.change([{ kind: 'put', cell: { ...job.rate, formula: '$9 per hour' } }]).length} cells run`,
      edit(workings, job.rate, (turn) => `$${40 + (turn % 9)} per hour`),
    ],
    ['load formulas', shortest(4, () => void opened(job))],
    ['open from text to values shown', shortest(4, () => openedFromText(job.text))],
    [
      'a name added that 2,000 formulas have the word of, and dropped',
      shortest(4, () => {
        workings.change([{ kind: 'put', cell: { ...names, formula: '2' } }]);
        workings.change([{ kind: 'drop', id: names.id }]);
      }),
    ],
    [
      'show all values',
      shortest(4, () => {
        for (const cell of job.cells) {
          const { outcome, holds } = workings.state(cell.id);
          if (outcome.kind === 'value' && holds) show(outcome.value, holds, SHOW);
        }
      }),
    ],
  ];
  for (const [what, ms] of times) console.log(`${ms.toPrecision(3).padStart(8)} ms  ${what}`);
}

// Rows that have no gate only tell; in CI they would cost a minute.
runTable('Engine', gated ? rows.filter((row) => row.gate !== null) : rows);
if (!gated) milliseconds();
