// Why the total moved, on the demo after shuffled edits: renames, cells and parts that come and go, amounts that change.
import fs from 'node:fs';
import { expect, test } from 'vitest';
import type { Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import { centsOf } from '../../src/versions/cents.ts';
import { versionNow, versionOf } from '../../src/versions/version.ts';
import { Chance } from '../properties/chance.ts';
import { frozen, opened, why } from './sides.ts';

const TEXT = fs.readFileSync(new URL('../../templates/kestrel-court.md', import.meta.url), 'utf8');

/** Renames alone say nothing of money. */
const RENAMES = ['cell', 'part'] as const;
const OTHERS = ['remove', 'add', 'amount', 'amount'] as const;

function edit(estimate: Estimate, what: string, chance: Chance, n: number): void {
  const cells = estimate.notebook.parts.flatMap(cellsOf).filter(({ table }) => table === null);
  const cell = chance.of(cells);
  switch (what) {
    case 'cell':
      estimate.rename(cell.id, `Called ${n} now`);
      return;
    case 'part':
      estimate.renamePart(cell.part, `Part called ${n}`);
      return;
    case 'remove':
      estimate.removeCell(cell.id);
      return;
    case 'add': {
      const done = estimate.addCell(cell.part, cell.id, `Extra ${n}`, `$${n + 10}.37`);
      const added = estimate.notebook.parts
        .flatMap(cellsOf)
        .find(({ name }) => name === `Extra ${n}`);
      if ('change' in done && added) estimate.setRemark(added.id, 'cost', 'material');
      return;
    }
    default: {
      const found = /\d+/.exec(cell.formula);
      if (!found) return;
      const { index } = found;
      const more = String(Number(found[0]) + 1);
      const rest = cell.formula.slice(index + found[0].length);
      estimate.setFormula(cell.id, cell.formula.slice(0, index) + more + rest);
    }
  }
}

test.for([1, 2, 3])(
  'pieces add up and mirror after shuffled edits, number %i',
  { timeout: 60_000 },
  (seed) => {
    const chance = new Chance(seed);
    const job = opened(TEXT);
    const before = versionOf(frozen(job));
    for (let n = 0; n < 8; n++) edit(job.estimate, chance.of([...RENAMES, ...OTHERS]), chance, n);
    const after = versionNow('now', job.estimate, job.identities);
    const moved = why([before, after]);
    const amounts = moved.pieces.map(({ amount }) => centsOf(amount));
    expect(moved.method.kind).toBe('exact');
    expect(amounts.reduce((sum, cents) => sum + cents, 0n)).toBe(
      centsOf(after.price) - centsOf(before.price),
    );
    const back = why([after, before]);
    expect(back.pieces.map(({ amount }) => -centsOf(amount))).toEqual(amounts);
  },
);

test('however much is renamed, nothing of it has a piece', { timeout: 60_000 }, () => {
  const chance = new Chance(77);
  const job = opened(TEXT);
  const before = versionOf(frozen(job));
  for (let n = 0; n < 20; n++) edit(job.estimate, chance.of(RENAMES), chance, n);
  expect(job.estimate.notebook.text).not.toBe(TEXT);
  const moved = why([before, versionNow('now', job.estimate, job.identities)]);
  expect(moved).toMatchObject({
    difference: '0.00',
    pieces: [],
    method: { kind: 'exact', changes: 0 },
  });
});
