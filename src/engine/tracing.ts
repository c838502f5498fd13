// Where in a formula it is that can't be worked.
import { divisors, underRoot } from '../language/check/at-work.ts';
import type { Checked, Plan } from '../language/plan.ts';
import type { Spot } from '../words/spot.ts';
import { Dec } from '../quantity/decimal.ts';
import { Fault, type Held, bare, isNoValue } from './held.ts';

/** How far down a formula the fault is followed; each level is worked anew. */
const DEEPEST = 100;

export type Working = (plan: Plan) => Held;

/** The smallest stretch that is at fault though all that it is worked from is not. */
export function whereAtFault(checked: Checked, work: Working): Checked {
  let at = checked;
  for (let level = 0; level < DEEPEST; level++) {
    const deeper =
      at.formula.kind === 'condition' ? reached(at, work) : at.parts.find((p) => isFault(p, work));
    if (!deeper || !isFault(deeper, work)) break;
    at = deeper;
  }
  return at;
}

/** What of such a stretch comes to nothing, or is rooted; `says` it of the words that stand at the spot. */
export function culprit(
  at: Checked,
  work: Working,
): { readonly spot: Spot; readonly says: (words: string) => string } {
  const quoted = (words: string): string => `"${words}"`;
  const below = divisors(at);
  const nothing = below.find((each) => isNothing(work(each.plan)));
  if (nothing) return { spot: nothing.formula.spot, says: quoted };
  const [first] = below;
  if (at.formula.kind === 'even-gap' && first) {
    return { spot: first.formula.spot, says: (words) => `One more than "${words}"` };
  }
  return { spot: underRoot(at.formula).spot, says: quoted };
}

/** What a condition comes to stands in the branch that holds; the others are not worked. */
function reached({ parts }: Checked, work: Working): Checked | undefined {
  for (let i = 1; i < parts.length; i += 2) {
    const when = parts[i];
    const holds = when && work(when.plan);
    if (holds === true) return parts[i - 1];
    if (holds !== false) return when;
  }
  return parts.at(-1);
}

function isFault({ plan }: Checked, work: Working): boolean {
  return work(plan) instanceof Fault;
}

function isNothing(held: Held): boolean {
  if (isNoValue(held)) return false;
  const value = bare(held);
  return value instanceof Dec && value.isZero();
}
