// Moving and duplicating at random: no cell comes to anything else, nothing gets a fault, and all of it can be undone.
// For a long run: MOVE_RUNS=2000 MOVE_SEED=2 npx vitest run --project unit tests/properties/moving.test.ts
import fs from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { CellId } from '../../src/language/tree.ts';
import type { Cell } from '../../src/notebook/document.ts';
import { type Applied, Estimate } from '../../src/notebook/estimate.ts';
import type { Finding } from '../../src/notebook/document.ts';
import { cellsIn } from '../notebook/cells.ts';
import { Chance } from './chance.ts';
import { casesOf } from './spoken-notebook.ts';

const RUNS = Number(process.env['MOVE_RUNS'] ?? 12);
const SEED = Number(process.env['MOVE_SEED'] ?? 1);

const template = (name: string): string =>
  fs.readFileSync(`${import.meta.dirname}/../../templates/${name}.md`, 'utf8');

/** A table whose rows name cells around it, choices from it, names that are shared, prose and a heading. */
const WITH_TABLE = `# Kestrel Court

- Waste: 10%

## Slab

Poured in one go.

- Depth: 4 in
- Width: 4 ft
- Bays:

  | bay | length | volume: length by width by depth plus waste |
  | --- | --- | --- |
  | south | 6 ft | |
  | north | 8 ft | |

- Poured: total of volume in bays
- Bags: poured in bags of 0.45 cubic feet
- Concrete: bags at $6.48 per bag
  - cost: material

### Checks

- Deep enough: depth is at least 3 1/2 in

## Fence

1. Width: 3 ft
2. Posts: posts every 8 ft along 40 ft
3. First bay: south
   - choices: bay of bays
4. Its length: read length off bays for bay first bay
5. Rails: width times posts plus Slab width

## Summary

* Direct: total cost of every part

* Material: total of material in Slab
* Longest: greatest length in Slab bays
`;

function textFor(chance: Chance): string {
  const which = chance.whole(0, 5);
  if (which === 0) return template('kestrel-court');
  if (which === 1) return template(chance.of(['slab', 'landing', 'steps']));
  if (which < 4) return WITH_TABLE;
  const cells = casesOf(chance.whole(0, 5000), 10).map(
    (k) => `- ${k.name}: ${k.text}\n${k.isCost ? '  - cost: material\n' : ''}`,
  );
  return `# Job\n\n## Yard\n\n${cells.slice(0, 5).join('')}\n## North wall\n\n${cells.slice(5).join('')}`;
}

/** What every cell and every row comes to, by identity. */
function standing(e: Estimate, ids: readonly CellId[]): readonly string[] {
  return ids.map((id) => {
    const rows = e.rows(id)?.map((row) => row.map((one) => worth(e, one)).join(' | ')) ?? [];
    return `${worth(e, id)} ${rows.join(' / ')}`;
  });
}

function worth(e: Estimate, id: CellId): string {
  const { outcome } = e.state(id);
  return outcome.kind === 'value' ? `${String(outcome.value)} ${e.shown(id)?.text}` : outcome.kind;
}

const idsOf = (e: Estimate): readonly CellId[] => cellsIn(e.notebook).map(({ id }) => id);

function isMade(result: Applied | Finding): boolean {
  return 'change' in result;
}

describe('at random', () => {
  test('moving cells and parts changes no value and makes no fault', { timeout: 600_000 }, () => {
    let made = 0;
    const refusedFor = new Map<string, number>();
    for (let run = 0; run < RUNS; run++) {
      const chance = new Chance(SEED * 7919 + run);
      const text = textFor(chance);
      const e = new Estimate(text);
      const ids = idsOf(e);
      const before = standing(e, ids);
      const names = cellsIn(e.notebook).map(({ name }) => name);
      for (let step = 0; step < 12; step++) {
        const { parts } = e.notebook;
        const result = chance.in(0.2)
          ? e.movePart(chance.of(parts).key, chance.whole(0, parts.length - 1), 'kept')
          : e.moveCell(
              chance.of(ids),
              { part: chance.of(parts).key, place: chance.whole(0, 12) },
              'kept',
            );
        if (isMade(result)) made++;
        else if ('code' in result) {
          refusedFor.set(result.code, (refusedFor.get(result.code) ?? 0) + 1);
        }
        expect(standing(e, ids)).toEqual(before);
      }
      // As the text stands, and not only as the estimate remembers it.
      const opened = new Estimate(e.notebook.text);
      const places = new Map(idsOf(e).map((id, i) => [id, i]));
      const fresh = ids.map((id) => idsOf(opened)[places.get(id) ?? -1] ?? -1);
      expect(standing(opened, fresh)).toEqual(before);
      expect(
        cellsIn(e.notebook)
          .map(({ name }) => name)
          .sort(),
      ).toEqual([...names].sort());
      while (e.canUndo() !== null) e.undo();
      expect(e.notebook.text).toBe(text);
    }
    // A refusal is for what can't be had; most moves are made.
    expect([...refusedFor.keys()].sort()).toEqual(
      [...refusedFor.keys()].filter((code) => REFUSED_FOR.has(code)).sort(),
    );
    expect(made).toBeGreaterThan(RUNS * 5);
  });

  test(
    'a duplicate leaves every other cell as it was, but for sums that hold it too',
    { timeout: 600_000 },
    () => {
      for (let run = 0; run < RUNS; run++) {
        const chance = new Chance(SEED * 104_729 + run);
        const e = new Estimate(textFor(chance));
        for (let step = 0; step < 4; step++) {
          const ids = idsOf(e).filter((id) => !leansOnRecap(e, id));
          const before = standing(e, ids);
          const known = new Set(idsOf(e));
          const { parts } = e.notebook;
          const part = chance.of(parts.slice(1));
          const first = chance.in(0.5) ? null : chance.of(cellsIn(e.notebook));
          const wanted = first ? [first] : cellsOf(part);
          const result = first ? e.duplicateCell(first.id) : e.duplicatePart(part.key);
          if (!isMade(result)) continue;
          expect(standing(e, ids)).toEqual(before);
          const copies = cellsIn(e.notebook).filter(({ id }) => !known.has(id));
          expect(copies.map(({ remarks }) => remarks.map((r) => [r.word, r.text]))).toEqual(
            wanted.map(({ remarks }) => remarks.map((r) => [r.word, r.text])),
          );
          wanted.forEach(({ id, name }, i) => {
            const copy = copies[i]?.id ?? -1;
            if (leansOnRecap(e, id)) return;
            expect(standing(e, [copy]), name).toEqual(standing(e, [id]));
          });
        }
      }
    },
  );
});

const REFUSED_FOR = new Set([
  'stays',
  'same-name',
  'values-change',
  'not-a-part',
  'not-read-back',
  'name-changes-reading',
]);

function cellsOf(part: Estimate['notebook']['parts'][number]): readonly Cell[] {
  return part.blocks.flatMap((b) => (b.kind === 'cell' ? [b.cell] : []));
}

/** Does it add up cost lines, or rest on what does? A second cost line is in such a sum. */
function leansOnRecap(e: Estimate, id: CellId, seen = new Set<CellId>()): boolean {
  if (seen.has(id)) return false;
  seen.add(id);
  const { input, needs } = e.state(id);
  if (/\btotal (cost )?of .*(part|job)|\btotal (cost )?of/i.test(input.formula)) return true;
  return needs.some((need) => leansOnRecap(e, need, seen));
}
