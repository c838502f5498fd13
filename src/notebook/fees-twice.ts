// Fees of one name in two parts: a permit, an inspection or a dump fee is paid once for the job, and each part that was
// put in may bring its own.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Section } from './identified.ts';
import { nameKey } from './names.ts';

export interface FeeTwice {
  /** The fee that stands later in the notebook. */
  readonly line: CellId;
  /** The first of its name, in another part. */
  readonly first: CellId;
}

/** A fee that comes to nothing, or has no value yet, is paid nowhere. */
export function feesTwice(
  sections: readonly Section[],
  state: (cell: CellId) => CellState,
): readonly FeeTwice[] {
  const firsts = new Map<string, { readonly line: CellId; readonly part: string }>();
  const found: FeeTwice[] = [];
  for (const { cells } of sections) {
    for (const { id, name, part, money } of cells) {
      if (money?.line !== 'cost' || money.kind !== 'fee' || !isPaid(state(id))) continue;
      const key = nameKey(name);
      const first = firsts.get(key);
      if (!first) firsts.set(key, { line: id, part });
      else if (first.part !== part) found.push({ line: id, first: first.line });
    }
  }
  return found;
}

function isPaid({ outcome }: CellState): boolean {
  if (outcome.kind !== 'value') return false;
  const { value } = outcome;
  return typeof value === 'object' && !value.isZero();
}
