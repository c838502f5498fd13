// What is kept beside the open notebook and only ever added to: its versions and their logs. What another page added in
// between is read again and added to in turn; what can't be written stays waiting on the page.
import type { Channel } from '../store/keeper.ts';
import { type KeptVersions, NO_VERSIONS, type Versions } from '../store/versions-shelf.ts';
import type { VersionsShelf } from '../store/versions-shelf.ts';

/** How versions are kept here. */
export type BesideState =
  | { readonly kind: 'here' }
  | { readonly kind: 'reading' }
  /** They stand on the page and could not be written. */
  | { readonly kind: 'not-kept'; readonly why: 'full' | 'refused' }
  /** Kept by a later version of the page, or not readable: left alone, and nothing can be added. */
  | { readonly kind: 'closed'; readonly why: 'newer' | 'unreadable' };

export type Adding = (versions: Versions) => Versions;

/** What pages tell each other. */
interface Told {
  readonly id: string;
  readonly added: true;
}

/** Another page may be adding at the same time. */
const TRIES = 6;
const NONE: KeptVersions = { versions: NO_VERSIONS, revision: 0, unreadable: [] };

export class BesideNotebook {
  readonly #shelf: VersionsShelf;
  /** Null where pages can't hear each other. */
  readonly #channel: Channel | null;
  readonly #said: () => void;
  #id = '';
  #kept: KeptVersions = NONE;
  /** What was added and is not kept yet, in order. */
  #adding: readonly Adding[] = [];
  #versions: Versions = NO_VERSIONS;
  #state: BesideState = { kind: 'reading' };
  #working: Promise<void> = Promise.resolve();

  constructor(shelf: VersionsShelf, channel: Channel | null, said: () => void) {
    this.#shelf = shelf;
    this.#channel = channel;
    this.#said = said;
    channel?.addEventListener('message', ({ data }) => {
      if (isAbout(data, this.#id)) void this.catchUp();
    });
  }

  /** Of the notebook that it is kept beside. */
  get id(): string {
    return this.#id;
  }
  /** How often something was added. */
  get revision(): number {
    return this.#kept.revision;
  }
  get versions(): Versions {
    return this.#versions;
  }
  get state(): BesideState {
    return this.#state;
  }
  /** Something was added that could not be written yet: it would go with the page. */
  get waits(): boolean {
    return this.#adding.length > 0;
  }
  /** Seals of snapshots that are listed and can't be read here. */
  get unreadable(): readonly string[] {
    return this.#kept.unreadable;
  }

  /** Beside another notebook from now on. */
  read(id: string): Promise<void> {
    return this.#next(() => this.#take(id));
  }

  /** Reads what another page added in between. */
  catchUp(): Promise<void> {
    return this.#next(() => this.#lookAgain());
  }

  /** False: nothing was added. What could not be written stands on the page all the same, and that is told. */
  async add(adding: Adding): Promise<boolean> {
    await this.#working;
    if (this.#state.kind === 'closed') return false;
    this.#adding = [...this.#adding, adding];
    this.#settle();
    await this.#next(() => this.#keep());
    return true;
  }

  /** What is kept in the same place was added to by this page. */
  tellOthers(): void {
    this.#channel?.postMessage({ id: this.#id, added: true } satisfies Told);
  }

  /** One after the other. */
  #next(work: () => Promise<void>): Promise<void> {
    this.#working = this.#working.then(work);
    return this.#working;
  }

  async #take(id: string): Promise<void> {
    this.#id = id;
    this.#kept = NONE;
    this.#adding = [];
    this.#state = { kind: 'reading' };
    this.#settle();
    const taken = await this.#shelf.take(id).catch(() => null);
    if (taken === null) this.#state = { kind: 'not-kept', why: 'refused' };
    else if (taken.kind === 'taken') {
      this.#kept = taken.value;
      this.#state = { kind: 'here' };
    } else if (taken.kind !== 'absent') this.#state = { kind: 'closed', why: taken.kind };
    this.#settle();
  }

  async #lookAgain(): Promise<void> {
    if (this.#state.kind === 'closed') return;
    const taken = await this.#shelf.take(this.#id).catch(() => null);
    if (taken?.kind !== 'taken' || taken.value.revision <= this.#kept.revision) return;
    this.#kept = taken.value;
    this.#settle();
  }

  async #keep(): Promise<void> {
    for (let tries = 0; tries < TRIES && this.#adding.length > 0; tries++) {
      const adding = this.#adding;
      const versions = this.#versions;
      try {
        const done = await this.#shelf.keep(this.#id, this.#kept, versions);
        if (done.kind === 'kept') {
          this.#kept = { ...this.#kept, versions, revision: done.revision };
          this.#adding = this.#adding.slice(adding.length);
          this.#state = { kind: 'here' };
          this.tellOthers();
        } else {
          const taken = await this.#shelf.take(this.#id);
          if (taken.kind === 'newer' || taken.kind === 'unreadable') {
            this.#state = { kind: 'closed', why: taken.kind };
            break;
          }
          this.#kept = taken.kind === 'taken' ? taken.value : NONE;
        }
      } catch (cause) {
        const full = cause instanceof Error && cause.name === 'QuotaExceededError';
        this.#state = { kind: 'not-kept', why: full ? 'full' : 'refused' };
        break;
      }
      this.#settle();
    }
    this.#settle();
  }

  #settle(): void {
    this.#versions = this.#adding.reduce((all, add) => add(all), this.#kept.versions);
    this.#said();
  }
}

function isAbout(data: unknown, id: string): boolean {
  if (typeof data !== 'object' || data === null || !('added' in data)) return false;
  return 'id' in data && data.id === id;
}
