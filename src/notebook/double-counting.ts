// Cost lines that hold another cost line whole, by name or through worked cells that are no cost lines themselves:
// both would stand in every total. Price lines may take recaps of cost; they are not looked at.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Section } from './identified.ts';
import { wholesIn } from './tree-parts.ts';

export interface DoubleCount {
  readonly line: CellId;
  /** The cost line that stands in it as well. */
  readonly counted: CellId;
}

export function doubleCounted(
  sections: readonly Section[],
  state: (cell: CellId) => CellState,
): readonly DoubleCount[] {
  const found: DoubleCount[] = [];
  const wholes = new Map<CellId, readonly CellId[]>();
  const wholesOf = (id: CellId): readonly CellId[] => {
    const known = wholes.get(id);
    if (known) return known;
    const found = state(id);
    const isWorked = found.kind !== 'given' && found.input.byHand === null;
    const checked = isWorked ? found.reading.checked : null;
    const made = checked ? wholesIn(checked) : [];
    wholes.set(id, made);
    return made;
  };
  // A table may have thousands of rows: they are only looked at where what they name can hold a cost line.
  const tables = new Map<CellId, boolean>();
  const mayHold = (id: CellId): boolean => {
    const { inTable } = state(id).input;
    if (inTable === undefined) return true;
    const known = tables.get(inTable);
    if (known !== undefined) return known;
    const leads = leadsToCost(state(inTable).needs, state);
    tables.set(inTable, leads);
    return leads;
  };
  for (const { cells } of sections) {
    for (const { id, money } of cells) {
      if (money?.line !== 'cost') continue;
      const seen = new Set<CellId>([id]);
      const waiting = [...wholesOf(id)];
      for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
        if (seen.has(next) || !mayHold(next)) continue;
        seen.add(next);
        if (state(next).input.money?.line === 'cost') found.push({ line: id, counted: next });
        else waiting.push(...wholesOf(next));
      }
    }
  }
  return found;
}

/** Is one of these a cost line, or does it need one? */
function leadsToCost(from: readonly CellId[], state: (cell: CellId) => CellState): boolean {
  const seen = new Set<CellId>();
  const left = [...from];
  for (let id = left.pop(); id !== undefined; id = left.pop()) {
    if (seen.has(id)) continue;
    seen.add(id);
    const { input, needs } = state(id);
    if (input.money?.line === 'cost') return true;
    left.push(...needs);
  }
  return false;
}
