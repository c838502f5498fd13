// Which cells a cell needs in either of two versions that were put into one world.
import type { CellId } from '../language/tree.ts';
import type { Estimate } from '../notebook/estimate.ts';
import { nameKey } from '../notebook/names.ts';
import type { Merged } from './merged.ts';

export interface Needs {
  /** In either version. */
  of(cell: CellId): readonly CellId[];
  /** Cells that money comes of, each with one that it names and that only this version has. */
  readonly together: readonly (readonly [CellId, CellId])[];
}

export function needsOf(before: Estimate, after: Estimate, world: Merged): Needs {
  const sides = [side(before, world.before), side(after, world.after)] as const;
  return {
    of: (cell) => sides.flatMap((version) => version.needs(cell)),
    together: [
      ...namedOnlyThere(sides[0], (cell) => !world.after.has(cell)),
      ...namedOnlyThere(sides[1], (cell) => !world.before.has(cell)),
    ],
  };
}

interface Side {
  readonly estimate: Estimate;
  /** Ids in this version by the ids of the world. */
  readonly there: ReadonlyMap<CellId, CellId>;
  needs(cell: CellId): readonly CellId[];
}

function side(estimate: Estimate, there: ReadonlyMap<CellId, CellId>): Side {
  const here = new Map([...there].map(([world, own]) => [own, world]));
  return {
    estimate,
    there,
    needs(cell) {
      const id = there.get(cell);
      if (id === undefined) return [];
      return estimate.state(id).needs.flatMap((need) => {
        const owner = need > 0 ? need : (estimate.state(need).input.inTable ?? 0);
        return here.get(owner) ?? [];
      });
    },
  };
}

function namedOnlyThere(
  version: Side,
  isOnlyThere: (cell: CellId) => boolean,
): readonly (readonly [CellId, CellId])[] {
  const found: (readonly [CellId, CellId])[] = [];
  const seen = new Set<CellId>();
  const left = [...version.there.keys()].filter((cell) => inputOf(version, cell)?.money);
  for (let cell = left.pop(); cell !== undefined; cell = left.pop()) {
    if (seen.has(cell)) continue;
    seen.add(cell);
    for (const need of version.needs(cell)) {
      left.push(need);
      if (need !== cell && isOnlyThere(need) && names(version, cell, need))
        found.push([cell, need]);
    }
  }
  return found;
}

/** A line that a total adds up is needed by it without being named. */
function names(version: Side, cell: CellId, need: CellId): boolean {
  const [input, needed] = [inputOf(version, cell), inputOf(version, need)];
  if (!input || !needed?.money) return true;
  return nameKey(`${input.formula} ${input.byHand ?? ''}`).includes(nameKey(needed.name));
}

function inputOf({ estimate, there }: Side, cell: CellId) {
  const id = there.get(cell);
  return id === undefined ? null : estimate.state(id).input;
}
