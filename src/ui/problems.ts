// What is to be mended on the page, cell by cell in reading order, found once for each state of the estimate.
import type { CellId } from '../language/tree.ts';
import type { Finding } from '../notebook/document.ts';
import { type Mend, isToMend } from '../notebook/mends.ts';
import type { Door } from './session.ts';
import { allCells } from './reading-order.ts';

type Problems = ReadonlyMap<CellId, readonly Finding[]>;

/** Findings are the same array until something changes. */
const found = new WeakMap<readonly Finding[], Problems>();

/** Of each cell that has something to mend; a cell's own fault stands first. */
export function problemsBy(door: Door): Problems {
  const findings = door.findings();
  const known = found.get(findings);
  if (known) return known;
  const made = new Map<CellId, Finding[]>();
  for (const finding of findings) {
    if (finding.cell === null || !isToMend(finding)) continue;
    const there = made.get(finding.cell);
    if (!there) made.set(finding.cell, [finding]);
    else if (isFault(door, finding)) there.unshift(finding);
    else there.push(finding);
  }
  found.set(findings, made);
  return made;
}

/** Is it the fault that keeps its cell from having a value? */
export function isFault(door: Door, { cell, code, place }: Finding): boolean {
  if (cell === null || place) return false;
  const { outcome } = door.state(cell);
  return outcome.kind === 'fault' && outcome.report.code === code;
}

/** Everything that is offered in the row of a cell, in the order in which the keys count it. */
export function mendsIn(door: Door, cell: CellId): readonly Mend[] {
  return (problemsBy(door).get(cell) ?? []).filter(inItsRow).flatMap((one) => door.mendsFor(one));
}

/** What is wrong in a table's row is told there. */
export function inItsRow({ place }: Finding): boolean {
  return place === undefined;
}

/** The cells with something to mend, in reading order. */
export function problemCells(door: Door): readonly CellId[] {
  const problems = problemsBy(door);
  if (problems.size === 0) return [];
  return allCells(door.notebook)
    .map(({ id }) => id)
    .filter((id) => problems.has(id));
}

/** The next cell with something to mend after this one, or before it; round the end of the notebook. */
export function problemFrom(door: Door, from: CellId | null, steps: 1 | -1): CellId | null {
  const cells = problemCells(door);
  if (cells.length === 0) return null;
  const order = allCells(door.notebook).map(({ id }) => id);
  const here = from === null ? -1 : order.indexOf(from);
  const places = cells.map((id) => order.indexOf(id));
  const next =
    steps === 1
      ? places.findIndex((place) => place > here)
      : places.findLastIndex((place) => place < here || here < 0);
  return cells.at(next < 0 ? (steps === 1 ? 0 : -1) : next) ?? null;
}

/** Cells of which something else is to be said than before. */
export function toldOtherwise(before: Problems, now: Problems): readonly CellId[] {
  if (before === now) return [];
  const say = (all: readonly Finding[] | undefined): string =>
    (all ?? []).map(({ message }) => message).join('\n');
  return [...new Set([...before.keys(), ...now.keys()])].filter(
    (id) => say(before.get(id)) !== say(now.get(id)),
  );
}
