// One side of a comparison: a snapshot, or the notebook as it stands now, with what it comes to.
import { Estimate } from '../notebook/estimate.ts';
import { type Identities, readIdentities, withNew } from './identities.ts';
import type { Snapshot } from './snapshot.ts';

export interface Version {
  /** `Bid 1`; of the notebook itself whatever the page calls it. */
  readonly name: string;
  /** Only asked, never changed. */
  readonly estimate: Estimate;
  readonly identities: Identities;
  /** The price and direct cost that stand for it: of a snapshot as they were frozen. */
  readonly price: string;
  readonly direct: string;
}

/** Worked again from its text: where today's tool comes to another total than was frozen, a comparison says so. */
export function versionOf(snapshot: Snapshot): Version {
  const { name, text, identities, values } = snapshot;
  const estimate = new Estimate(text);
  const { price, direct } = values.total;
  return {
    name,
    estimate,
    identities: readIdentities(identities, estimate.notebook),
    price,
    direct,
  };
}

export function versionNow(name: string, estimate: Estimate, identities: Identities): Version {
  const { price, direct } = estimate.costs().total;
  return { name, estimate, identities: withNew(identities, estimate.notebook), price, direct };
}
