// Keeps the open notebook as it changes: soon after each change, at once when the page is left, and never
// over what another page kept. It knows no clock: time and waiting are handed in.
import type { Journal } from './journal.ts';
import type { KeptText, Shelf } from './shelf.ts';

export type KeeperState =
  | { readonly kind: 'kept'; readonly at: number | null }
  | { readonly kind: 'keeping' }
  /** It could not be written; the page still has everything. */
  | {
      readonly kind: 'not-kept';
      readonly why: 'full' | 'refused';
      /** A slip of it stands in the journal meanwhile. */
      readonly noted: boolean;
    }
  /** Another page kept this notebook later than this one knew of: nothing is written until the person says what to do. */
  | { readonly kind: 'behind' };

/** What pages tell each other when one has kept a notebook. */
interface Told {
  readonly id: string;
  readonly revision: number;
}

/** As far as a BroadcastChannel is needed here. */
export interface Channel {
  postMessage(message: unknown): void;
  addEventListener(kind: 'message', listener: (event: { readonly data: unknown }) => void): void;
  close(): void;
}

export interface KeeperSettings {
  readonly shelf: Shelf;
  readonly journal: Journal;
  readonly now: () => number;
  /** Calls back: soon after a change, or again after a failure. Returns how to call it off. */
  readonly later: (call: () => void, wait: 'soon' | 'again') => () => void;
  readonly channel: Channel | null;
  readonly changed: (state: KeeperState) => void;
  /** Another page kept this notebook, and nothing waits here: it can be followed. */
  readonly moved: () => void;
}

export class Keeper {
  readonly id: string;
  readonly #settings: KeeperSettings;
  #revision: number;
  #state: KeeperState;
  #waiting: KeptText | null = null;
  #wait: 'soon' | 'again' | null = null;
  #callOff: (() => void) | null = null;
  #working: Promise<void> = Promise.resolve();
  #closed = false;

  constructor(id: string, revision: number, keptAt: number | null, settings: KeeperSettings) {
    this.id = id;
    this.#revision = revision;
    this.#settings = settings;
    this.#state = { kind: 'kept', at: keptAt };
    settings.channel?.addEventListener('message', ({ data }) => this.#hear(data));
  }

  get state(): KeeperState {
    return this.#state;
  }

  /** The last revision that this page knows of. */
  get revision(): number {
    return this.#revision;
  }

  /** Whether something is not kept yet. */
  get waits(): boolean {
    return this.#waiting !== null;
  }

  /** The page shows what another one kept by now. */
  follow(revision: number, keptAt: number): void {
    this.#revision = revision;
    this.#say({ kind: 'kept', at: keptAt });
  }

  /** Keeps this soon; a later one takes its place. */
  keepSoon(notebook: KeptText): void {
    this.#waiting = notebook;
    if (this.#state.kind === 'behind' || this.#closed) return;
    this.#say({ kind: 'keeping' });
    // Who writes without a pause is kept all the same: nothing waits longer than the first change may.
    if (this.#wait === 'soon') return;
    this.#waitFor('soon');
  }

  /** The page is left: what is not kept goes into the journal at once, and then into the database if there is time. */
  leave(): Promise<void> {
    this.#note();
    return this.flush();
  }

  /** Keeps at once what still waits. Resolves when it is written, or when it is known why not. */
  flush(): Promise<void> {
    this.#waitNoMore();
    this.#working = this.#working.then(() => this.#write());
    return this.#working;
  }

  /** What waits is wanted no more, or is kept elsewhere. */
  giveUp(): void {
    this.#waiting = null;
    this.#waitNoMore();
    this.#settings.journal.done(this.id);
  }

  /** No more is kept through this one. */
  async close(): Promise<void> {
    await this.flush();
    // What could not be kept is not forgotten with the page that shows it.
    this.#note();
    this.#closed = true;
    this.#waitNoMore();
    this.#settings.channel?.close();
  }

  async #write(): Promise<void> {
    const notebook = this.#waiting;
    if (!notebook || this.#closed || this.#state.kind === 'behind') return;
    const { shelf, now, channel } = this.#settings;
    const at = now();
    try {
      const done = await shelf.keep(notebook, this.#revision, at);
      if (done.kind === 'behind') {
        this.#note();
        this.#say({ kind: 'behind' });
        return;
      }
      this.#revision = done.revision;
      channel?.postMessage({ id: this.id, revision: done.revision });
      if (this.#waiting !== notebook) return;
      this.#waiting = null;
      this.#settings.journal.done(this.id);
      this.#say({ kind: 'kept', at });
    } catch (cause) {
      // Not by its class: the database gives a DOMException, which is no Error in every browser.
      const name = typeof cause === 'object' && cause && 'name' in cause ? cause.name : null;
      const why = name === 'QuotaExceededError' ? 'full' : 'refused';
      this.#say({ kind: 'not-kept', why, noted: this.#note() });
      this.#waitFor('again');
    }
  }

  #note(): boolean {
    const { journal, now } = this.#settings;
    if (!this.#waiting || this.#closed) return false;
    return journal.note(this.#waiting, this.#revision, now());
  }

  #waitFor(wait: 'soon' | 'again'): void {
    this.#callOff?.();
    this.#wait = wait;
    this.#callOff = this.#settings.later(() => void this.flush(), wait);
  }

  #waitNoMore(): void {
    this.#callOff?.();
    this.#callOff = null;
    this.#wait = null;
  }

  #hear(data: unknown): void {
    if (!isTold(data) || data.id !== this.id || data.revision <= this.#revision) return;
    if (this.#waiting === null) {
      this.#settings.moved();
      return;
    }
    this.#waitNoMore();
    this.#note();
    this.#say({ kind: 'behind' });
  }

  #say(state: KeeperState): void {
    this.#state = state;
    if (!this.#closed) this.#settings.changed(state);
  }
}

function isTold(data: unknown): data is Told {
  return (
    typeof data === 'object' &&
    data !== null &&
    'id' in data &&
    typeof data.id === 'string' &&
    'revision' in data &&
    typeof data.revision === 'number'
  );
}
