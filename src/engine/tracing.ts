// Where in a formula it is that can't be worked.
import type { Checked, Plan } from '../language/plan.ts';
import type { Formula } from '../language/tree.ts';
import type { Spot } from '../words/spot.ts';

/** How far down a formula the fault is followed; each level is worked anew. */
const DEEPEST = 100;

/** The smallest stretch that is at fault though all its operands are not: what it divides by, or roots. */
export function spotOfFault(checked: Checked, isFault: (plan: Plan) => boolean): Spot {
  let at = checked;
  for (let level = 0; level < DEEPEST; level++) {
    const deeper = at.parts.find((part) => isFault(part.plan));
    if (!deeper) break;
    at = deeper;
  }
  return culprit(at.formula).spot;
}

function culprit(formula: Formula): Formula {
  if (formula.kind === 'binary' && formula.op === 'over') return formula.right;
  return formula.kind === 'square-root' ? formula.of : formula;
}
