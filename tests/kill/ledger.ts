// What was acknowledged, kept outside the browser that is killed, and whether what is found on reopening holds it.
import type { Acknowledged, Found, Whole } from './phases.ts';
import { WholeJobs } from './whole-jobs.ts';

type TextTold = Extract<Acknowledged, { readonly kind: 'text' }>;
type SnapshotTold = Extract<Acknowledged, { readonly kind: 'snapshot' }>;

export interface Loss {
  /** Acknowledged writes that are not there. */
  readonly lost: number;
  readonly why: readonly string[];
}

export class Ledger {
  readonly #texts = new Map<string, TextTold[]>();
  readonly #snapshots = new Map<string, SnapshotTold[]>();
  /** Snapshots that are gone are counted once. */
  readonly #missed = new Set<string>();
  readonly #jobs = new WholeJobs();
  count = 0;

  acknowledged(told: Acknowledged): void {
    this.count++;
    if (told.kind === 'text') list(this.#texts, told.id).push(told);
    else if (told.kind === 'snapshot') list(this.#snapshots, told.id).push(told);
    else this.#jobs.acknowledged(told);
  }

  /** A whole job is about to come or to go. */
  begun(whole: Whole): void {
    this.#jobs.begun(whole);
  }

  /** All faults of what is found, and how many acknowledged writes they come to. */
  missing(found: readonly Found[]): Loss {
    const losses = [...this.#texts.keys()].map((id) =>
      this.#missingIn(id, found.find((one) => one.id === id) ?? null),
    );
    losses.push(this.#jobs.missing(found));
    return {
      lost: losses.reduce((sum, { lost }) => sum + lost, 0),
      why: losses.flatMap(({ why }) => why),
    };
  }

  #missingIn(id: string, found: Found | null): Loss {
    const texts = this.#texts.get(id) ?? [];
    const snapshots = this.#snapshots.get(id) ?? [];
    if (!found) return { lost: texts.length + snapshots.length, why: [`${id} is gone`] };
    const why: string[] = [];
    const say = (words: string): unknown => why.push(`${id}: ${words}`);
    const last = texts.at(-1);
    // A later text holds every earlier edit: what is lost are those after the one that is found.
    const after = texts.filter(({ revision }) => revision > found.revision);
    let lost = after.length;
    if (lost > 0) say(`revision ${found.revision} stands, ${last?.revision} was acknowledged`);
    const same = texts.find(({ revision }) => revision === found.revision);
    if (same && same.hash !== found.hash) {
      lost++;
      say(`revision ${found.revision} is not what was acknowledged`);
    }
    // One more may be written that nobody could acknowledge any more.
    if (last && found.revision > last.revision + 1)
      say(`revision ${found.revision} came from nowhere`);
    if (found.count === null) say(`what is kept does not parse`);
    else if (last && lost === 0 && found.count < last.count) {
      lost++;
      say(`edit ${found.count} stands, ${last.count} was acknowledged`);
    }
    if (found.listed !== found.revision)
      say(`the list says ${found.listed}, the notebook ${found.revision}`);
    for (const seal of found.unreadable) say(`snapshot ${seal} can't be read`);
    for (const { seal, right } of found.snapshots) if (!right) say(`snapshot ${seal} is not right`);
    const right = new Set(
      found.snapshots.filter((one) => one.right).map(({ seal, hash }) => seal + hash),
    );
    for (const { seal, hash } of snapshots) {
      if (right.has(seal + hash) || this.#missed.has(seal)) continue;
      this.#missed.add(seal);
      lost++;
      say(`snapshot ${seal} was acknowledged and is not there`);
    }
    this.#forget(id, found);
    return { lost, why };
  }

  /** What was lost is counted once; the page goes on from what it found. */
  #forget(id: string, { revision, hash }: Found): void {
    const texts = this.#texts.get(id) ?? [];
    this.#texts.set(
      id,
      texts.filter(
        (text) => text.revision < revision || (text.revision === revision && text.hash === hash),
      ),
    );
  }
}

function list<T>(map: Map<string, T[]>, id: string): T[] {
  const found = map.get(id) ?? [];
  map.set(id, found);
  return found;
}
