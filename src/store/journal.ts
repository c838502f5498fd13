// Slips for what is not in the database yet: written in one go, so that there is time for one even while the page is
// being closed, and where the database refuses. Read when the notebook is opened next; thrown away once it is kept.
import * as v from 'valibot';
import { IDENTITIES_1 } from './identities-shape.ts';
import { taken } from './shapes.ts';
import type { KeptText } from './shelf.ts';

/** As far as localStorage is needed here. */
export type Slips = Pick<Storage, 'length' | 'key' | 'getItem' | 'setItem' | 'removeItem'>;

export interface Slip {
  readonly key: string;
  readonly notebook: KeptText;
  /** The revision that the page had seen: who wrote since did not know of this. */
  readonly revision: number;
  readonly at: number;
}

const SLIP_1 = v.strictObject({
  v: v.literal(1),
  id: v.string(),
  title: v.string(),
  text: v.string(),
  identities: v.nullable(IDENTITIES_1),
  revision: v.pipe(v.number(), v.safeInteger(), v.minValue(0)),
  at: v.number(),
});

const SLIP = 'storyrod/unkept/';

export class Journal {
  readonly #slips: Slips | null;
  /** Tells this page from the others. */
  readonly page: string;

  constructor(slips: Slips | null, page: string) {
    this.#slips = slips;
    this.page = page;
  }

  /** False where there is no room for it, or no such place. */
  note(notebook: KeptText, revision: number, at: number): boolean {
    const { id, title, text, identities } = notebook;
    try {
      const slip = { v: 1, id, title, text, identities, revision, at };
      this.#slips?.setItem(this.#keyOf(id), JSON.stringify(slip));
      return this.#slips !== null;
    } catch {
      return false;
    }
  }

  /** This page's own slip is no longer needed. */
  done(id: string): void {
    this.drop(this.#keyOf(id));
  }

  /** What pages left of this notebook, the last first. */
  left(id: string): readonly Slip[] {
    return this.#keys(`${SLIP}${id}/`)
      .flatMap((key) => this.#read(key))
      .sort((a, b) => b.revision - a.revision || b.at - a.at);
  }

  /** The notebook that was written last among all slips, for a browser that kept none. */
  latest(): string | null {
    const all = this.#keys(SLIP).flatMap((key) => this.#read(key));
    return all.sort((a, b) => b.at - a.at)[0]?.notebook.id ?? null;
  }

  drop(key: string): void {
    try {
      this.#slips?.removeItem(key);
    } catch {
      // What can't be thrown away is found again, and is then no newer than what is kept.
    }
  }

  #keyOf(id: string): string {
    return `${SLIP}${id}/${this.page}`;
  }

  #keys(start: string): readonly string[] {
    try {
      const slips = this.#slips;
      const keys = Array.from({ length: slips?.length ?? 0 }, (_, i) => slips?.key(i) ?? '');
      return keys.filter((key) => key.startsWith(start));
    } catch {
      return [];
    }
  }

  /** A slip that can't be read is left where it is. */
  #read(key: string): readonly Slip[] {
    try {
      const raw: unknown = JSON.parse(this.#slips?.getItem(key) ?? 'null');
      const read = taken(SLIP_1, 1, raw);
      if (read.kind !== 'taken') return [];
      const { id, title, text, identities, revision, at } = read.value;
      const notebook: KeptText = {
        id,
        title,
        text,
        identities: identities,
      };
      return [{ key, notebook, revision, at }];
    } catch {
      return [];
    }
  }
}
