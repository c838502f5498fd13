// Versions for tests: a notebook and what becomes of it by edits, so that cells keep who they are.
import type { Cell } from '../../src/notebook/document.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { type Identities, newIdentities } from '../../src/versions/identities.ts';
import { type Snapshot, freeze } from '../../src/versions/snapshot.ts';
import { type Version, versionNow, versionOf } from '../../src/versions/version.ts';
import { compare } from '../../src/versions/compare.ts';
import { type WhyMoved, whyMoved } from '../../src/versions/why-moved.ts';
import { cellNamed } from '../notebook/cells.ts';

export const TOOL = '0.1.0';

export interface Opened {
  readonly estimate: Estimate;
  readonly identities: Identities;
}

export function opened(text: string): Opened {
  const estimate = new Estimate(text);
  return { estimate, identities: newIdentities(estimate.notebook, 'k') };
}

export function frozen({ estimate, identities }: Opened, name = 'Bid 1'): Snapshot {
  return freeze(estimate, identities, { name, note: '', date: '2026-03-03', tool: TOOL });
}

/** Before and after an edit of one notebook. */
export function edited(
  text: string,
  edit: (estimate: Estimate, cell: (name: string) => Cell) => void,
): readonly [Version, Version] {
  const job = opened(text);
  const before = versionOf(frozen(job));
  edit(job.estimate, (name) => cellNamed(job.estimate.notebook, name));
  return [before, versionNow('now', job.estimate, job.identities)];
}

/** Two texts with nothing beside them. */
export function apart(before: string, after: string): readonly [Version, Version] {
  const side = (name: string, text: string): Version => {
    const estimate = new Estimate(text);
    return versionNow(name, estimate, newIdentities(estimate.notebook, name));
  };
  return [side('before', before), side('after', after)];
}

/** The pieces by what they are pieces of: `Bag price: 20.00`. */
export function why([before, after]: readonly [Version, Version]): WhyMoved & {
  readonly said: readonly string[];
} {
  const moved = whyMoved(compare(before, after));
  if (!moved) throw new Error('in different currencies');
  const nameOf = ({ estimate }: Version, id: number): string => estimate.state(id).input.name;
  const said = moved.pieces.map(({ changes, amount }) => {
    const names = changes.map((each) => {
      if (each.kind === 'part') return `${each.before} to ${each.after}`;
      const name =
        each.after === null ? nameOf(before, each.before ?? 0) : nameOf(after, each.after);
      return each.kind === 'row' ? `${name} ${JSON.stringify(each.rows)}` : name;
    });
    return `${names.join(' + ') || 'tool'}: ${amount}`;
  });
  return { ...moved, said };
}
