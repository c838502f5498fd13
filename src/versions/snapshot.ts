// A snapshot: an estimate as it stood, under a name, that can be proved unchanged. It is never edited; what happened
// to it (sent, accepted, superseded) stands in a log beside it.
import type { Estimate } from '../notebook/estimate.ts';
import type { Plain } from './canonical.ts';
import { type Frozen, frozenOf } from './frozen.ts';
import { fingerprint, hashOf } from './hash.ts';
import { type Identities, type KeptIdentities, keptIdentities, withNew } from './identities.ts';

export interface Snapshot {
  readonly name: string;
  readonly note: string;
  /** As it was handed in, e.g. `2026-03-03T14:05:00Z`. */
  readonly date: string;
  /** The version of the tool that worked the values. */
  readonly tool: string;
  readonly text: string;
  readonly values: Frozen;
  readonly identities: KeptIdentities;
  /** Over text, values and tool: what the estimate says. */
  readonly hash: string;
  /** Over that hash, name, note, date and identities: this snapshot and no other. */
  readonly seal: string;
}

/** Given by whoever freezes: no clock runs on this floor. */
export interface Naming {
  readonly name: string;
  readonly note: string;
  readonly date: string;
  readonly tool: string;
}

export function freeze(estimate: Estimate, identities: Identities, naming: Naming): Snapshot {
  const { notebook } = estimate;
  const { name, note, date, tool } = naming;
  const kept = keptIdentities(withNew(identities, notebook), notebook);
  const content = { text: notebook.text, values: frozenOf(estimate), tool };
  const hash = contentHash(content);
  const label = { name, note, date, identities: kept, hash };
  return deepFrozen({ ...label, ...content, seal: sealOf(label) });
}

/** What doesn't match its hash any more. */
export type Mismatch =
  /** The text, a value, or the version of the tool. */
  | 'content'
  /** The name, note, date or identities, or the hash that they are sealed with. */
  | 'label';

/** Empty: it is what was frozen, to the last letter. */
export function verify(snapshot: Snapshot): readonly Mismatch[] {
  const faults: Mismatch[] = [];
  if (contentHash(snapshot) !== snapshot.hash) faults.push('content');
  if (sealOf(snapshot) !== snapshot.seal) faults.push('label');
  return faults;
}

/** In words, for whoever opens it. */
export function sayMismatch({ name }: Snapshot, mismatch: Mismatch): string {
  switch (mismatch) {
    case 'content':
      return `"${name}" is not what was frozen: its text or values were changed since.`;
    case 'label':
      return `"${name}" is not as it was sealed: its name, note, date or list of cells was changed since.`;
  }
}

/** How it is marked on paper: `Bid 1, 3f2a 91c0 77de`. */
export function markOf({ name, seal }: Pick<Snapshot, 'name' | 'seal'>): string {
  return `${name}, ${fingerprint(seal)}`;
}

function contentHash({ text, values, tool }: Pick<Snapshot, 'text' | 'values' | 'tool'>): string {
  return hashOf({ form: 'snapshot content 1', text, tool, values: plain(values) });
}

function sealOf(label: Pick<Snapshot, 'name' | 'note' | 'date' | 'identities' | 'hash'>): string {
  const { name, note, date, identities, hash } = label;
  return hashOf({
    form: 'snapshot label 1',
    name,
    note,
    date,
    identities: plain(identities),
    hash,
  });
}

/** Saved shapes hold nothing but what the canonical form can write. */
function plain(value: Frozen | KeptIdentities): Plain {
  return value as unknown as Plain;
}

function deepFrozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFrozen(inner);
  }
  return value;
}
