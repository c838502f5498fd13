// What stands of the record after all corrections, and what in it points at nothing.
import type { Correction, Entry, Progress, Recorded, Said, Watch } from './entry.ts';

export interface Standing {
  readonly entry: Entry;
  /** As it stands now; null: it was taken out. */
  readonly says: Said | null;
  /** In the order in which they were made. */
  readonly corrections: readonly Correction[];
  /** What the next correction points at. */
  readonly last: string;
  /** Two corrections were made of the same state, in two places at once: the later stands. */
  readonly twice: boolean;
}

export interface Stands {
  /** In the order in which they were put in. */
  readonly entries: readonly Standing[];
  readonly progress: readonly Progress[];
  /** What was chosen last; null: nothing was. */
  readonly watch: Watch | null;
  /** Corrections of what is not here, and what came with a number that was there already. None of it counts. */
  readonly strays: readonly Recorded[];
}

interface Growing {
  readonly entry: Entry;
  says: Said | null;
  /** The picture that stood last, also while the entry is taken out. */
  receipt: Said['receipt'];
  readonly corrections: Correction[];
  twice: boolean;
}

export function standingOf(records: readonly Recorded[]): Stands {
  const seen = new Set<string>();
  const growing = new Map<string, Growing>();
  /** The entry that each entry and correction is in the end about. */
  const roots = new Map<string, Growing>();
  const progress: Progress[] = [];
  const strays: Recorded[] = [];
  let watch: Watch | null = null;
  for (const one of records) {
    if (seen.has(one.id)) {
      strays.push(one);
      continue;
    }
    seen.add(one.id);
    switch (one.record) {
      case 'entry': {
        const { says } = one;
        const fresh = { entry: one, says, receipt: says.receipt, corrections: [], twice: false };
        growing.set(one.id, fresh);
        roots.set(one.id, fresh);
        break;
      }
      case 'correction': {
        const root = roots.get(one.corrects);
        if (!root) {
          strays.push(one);
          break;
        }
        roots.set(one.id, root);
        correct(root, one);
        break;
      }
      case 'progress':
        progress.push(one);
        break;
      case 'watch':
        watch = one;
        break;
    }
  }
  const entries = [...growing.values()].map(({ entry, says, corrections, twice }) => ({
    entry,
    says,
    corrections,
    last: corrections.at(-1)?.id ?? entry.id,
    twice,
  }));
  return { entries, progress, watch, strays };
}

function correct(root: Growing, correction: Correction): void {
  if (root.corrections.some(({ corrects }) => corrects === correction.corrects)) root.twice = true;
  root.corrections.push(correction);
  const { says } = correction;
  if (says === null) {
    root.says = null;
    return;
  }
  const receipt = says.receipt === 'same' ? root.receipt : says.receipt;
  root.says = { ...says, receipt };
  root.receipt = receipt;
}
