// After any sequence of edits the workings are what they would be had the notebook just been opened.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CellInput } from '../../src/engine/outcome.ts';
import type { CellEdit } from '../../src/engine/workings.ts';
import { Job } from './job.ts';

/** Names that run into one another, on purpose. */
const NAMES = [
  'slab',
  'slab area',
  'area',
  'area of slab',
  'bags',
  'price',
  'waste',
  'Deck width',
  'width',
  'total',
];
const PARTS = ['', 'deck', 'landing'];
const PART_NAMES = ['Deck', 'Landing', 'Slab', 'Yard'];

const name = fc.constantFrom(...NAMES);
const partName = fc.constantFrom(...PART_NAMES);

const formula = fc.oneof(
  fc.constantFrom(
    '2',
    '0',
    '?',
    '12 ft',
    '4 sq ft',
    '30 bags',
    '$6.48 per bag',
    '$5',
    '10%',
    'yes',
    '',
    'hm (',
  ),
  fc
    .tuple(
      name,
      fc.constantFrom('times 2', 'plus 1', 'divided by 3, rounded up', 'squared', 'at $3'),
    )
    .map((w) => w.join(' ')),
  fc
    .tuple(
      name,
      fc.constantFrom('plus', 'less', 'times', 'at', 'divided by', 'is at least', 'or'),
      name,
    )
    .map((w) => w.join(' ')),
  fc.tuple(name, name).map(([m, n]) => `total of ${m} and ${n}`),
  fc.tuple(name, name, name).map(([m, n, o]) => `${m} where ${n} is more than 2, otherwise ${o}`),
  fc.tuple(partName, name).map(([p, n]) => `${p} ${n} times 2`),
  partName.map((p) => `total of material in ${p}`),
  fc.constantFrom(
    'total cost of this part',
    'total cost of the job',
    '11% of total of material in every part',
  ),
);

const money: fc.Arbitrary<CellInput['money']> = fc.oneof(
  { weight: 3, arbitrary: fc.constant(null) },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom('material' as const, 'labour' as const)
      .map((kind) => ({ line: 'cost' as const, kind })),
  },
  { weight: 1, arbitrary: fc.constant({ line: 'price' as const, kind: 'markup' }) },
);

const cell = fc.record({
  id: fc.integer({ min: 1, max: 9 }),
  part: fc.constantFrom(...PARTS),
  name,
  formula,
  byHand: fc.oneof({ weight: 4, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: formula }),
  money,
});

type Edit =
  | { readonly kind: 'put'; readonly cell: CellInput }
  | { readonly kind: 'formula'; readonly id: number; readonly formula: string }
  | { readonly kind: 'drop'; readonly id: number }
  | { readonly kind: 'part'; readonly part: number; readonly name: string }
  | { readonly kind: 'order'; readonly by: number };

const edit: fc.Arbitrary<Edit> = fc.oneof(
  { weight: 4, arbitrary: cell.map((each) => ({ kind: 'put' as const, cell: each })) },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('formula' as const),
      id: fc.integer({ min: 1, max: 9 }),
      formula,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('drop' as const),
      id: fc.integer({ min: 1, max: 9 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('part' as const),
      part: fc.integer({ min: 1, max: 2 }),
      name: partName,
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('order' as const),
      by: fc.integer({ min: 1, max: 8 }),
    }),
  },
);

/** Applies an edit to the job's own list of cells and says it as the workings are told it. */
function told(job: Job, each: Edit): CellEdit | null {
  switch (each.kind) {
    case 'put':
      job.cells.set(each.cell.id, each.cell);
      return each;
    case 'formula': {
      const was = job.cells.get(each.id);
      if (!was) return null;
      const now = { ...was, formula: each.formula };
      job.cells.set(each.id, now);
      return { kind: 'put', cell: now };
    }
    case 'drop':
      return job.cells.delete(each.id) ? each : null;
    case 'part':
      job.parts = job.parts.map((part, i) =>
        i === each.part ? { ...part, name: each.name } : part,
      );
      return { kind: 'parts', parts: job.parts };
    case 'order': {
      const all = [...job.cells.values()];
      const turned = [...all.slice(each.by), ...all.slice(0, each.by)];
      job.cells.clear();
      for (const each of turned) job.cells.set(each.id, each);
      return { kind: 'order', ids: turned.map((each) => each.id) };
    }
  }
}

function starting(): Job {
  const job = new Job();
  job.parts = [
    { key: '', name: '' },
    { key: 'deck', name: 'Deck' },
    { key: 'landing', name: 'Landing' },
  ];
  job.workings.load(job.parts, []);
  return job;
}

describe('after any sequence of edits', () => {
  test('all is as if the notebook had just been opened', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(edit, { minLength: 1, maxLength: 4 }), { maxLength: 12 }),
        (batches) => {
          const job = starting();
          for (const batch of batches) {
            const edits = batch.map((each) => told(job, each)).filter((each) => each !== null);
            const ran = job.workings.change(edits);
            expect(new Set(ran).size).toBe(ran.length);
          }
          const opened = new Job();
          opened.parts = job.parts;
          for (const [id, input] of job.cells) opened.cells.set(id, input);
          opened.workings.load(job.parts, [...job.cells.values()]);
          expect(job.all()).toEqual(opened.all());
        },
      ),
      { numRuns: Number(process.env['RUNS'] ?? 150) },
    );
  });
});
