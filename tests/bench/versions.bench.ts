// Comparing two versions of a large job and saying why its total moved, against working the notebook once from its text.
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import { compare } from '../../src/versions/compare.ts';
import { newIdentities } from '../../src/versions/identities.ts';
import { freeze } from '../../src/versions/snapshot.ts';
import { versionNow, versionOf } from '../../src/versions/version.ts';
import { whyMoved } from '../../src/versions/why-moved.ts';
import { largeJob } from './sheds.ts';
import { type Row, runTable, shortest, shortestOfBoth } from './table.ts';

/** 80 sheds of 25 cells are 2,000. */
const SHEDS = 80;
const CHANGES = 200;

const { text } = largeJob(SHEDS);

function changed() {
  const estimate = new Estimate(text, Infinity);
  const identities = newIdentities(estimate.notebook, 'k');
  const naming = { name: 'Bid 1', note: '', date: '2026-03-03', tool: '0.0.0' };
  const before = versionOf(freeze(estimate, identities, naming));
  const givens = estimate.notebook.parts
    .flatMap(cellsOf)
    .filter(({ name }) => ['slab length', 'board price', 'waste'].includes(name));
  let made = 0;
  for (const { id, name } of givens) {
    if (made === CHANGES) break;
    const now = { 'slab length': `${9 + (made % 13)} ft 3 in`, 'board price': '$15.10 per board' };
    const done = estimate.setFormula(id, name in now ? now[name as keyof typeof now] : '12%');
    if ('change' in done) made++;
  }
  if (made !== CHANGES) throw new Error(`only ${made} changes were made`);
  return { before, after: versionNow('now', estimate, identities) };
}

const { before, after } = changed();
const comparison = compare(before, after);
const why = whyMoved(comparison);
if (!why || why.pieces.length < CHANGES / 2) throw new Error('nothing is told of why it moved');

const ratio = ([one, other]: readonly [number, number]): number => one / other;
const opening = (): void => void new Estimate(text, Infinity).costs();

const rows: readonly Row[] = [
  {
    what: `comparing, ${CHANGES} changes of 2,000 cells, against opening the notebook`,
    measure: () => ratio(shortestOfBoth(3, () => compare(before, after), opening)),
    goal: 0.5,
    gate: 1.5,
    better: 'lower',
    unit: ' ×',
  },
  {
    what: `why the total moved, the same, against opening the notebook`,
    measure: () => ratio(shortestOfBoth(1, () => whyMoved(comparison), opening)),
    goal: 10,
    gate: 25,
    better: 'lower',
    unit: ' ×',
  },
];

runTable('Versions', rows);
if (!process.argv.includes('--gate'))
  for (const [what, ms] of [
    ['opening 2,000 cells', shortest(3, opening)],
    ['comparing', shortest(3, () => compare(before, after))],
    ['why the total moved', shortest(1, () => whyMoved(comparison))],
  ] as const)
    console.log(`${ms.toPrecision(3).padStart(8)} ms  ${what}`);
