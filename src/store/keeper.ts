// Keeps the open notebook as it changes: soon after each change, at once when the page is left, and never
// over what another page kept. It knows no clock: time and waiting are handed in.
import type { KeptText, Shelf } from './shelf.ts';

export type KeeperState =
  | { readonly kind: 'kept'; readonly at: number | null }
  | { readonly kind: 'keeping' }
  /** It could not be written; the page still has everything. */
  | { readonly kind: 'not-kept'; readonly why: 'full' | 'refused' }
  /** Another page kept this notebook later than this one knew of: nothing is written until the person says what to do. */
  | { readonly kind: 'behind' };

/** What pages tell each other. */
interface Told {
  readonly id: string;
  readonly revision: number;
}

/** As far as a BroadcastChannel is needed here. */
export interface Channel {
  postMessage(message: Told): void;
  addEventListener(kind: 'message', listener: (event: { readonly data: unknown }) => void): void;
  close(): void;
}

export interface KeeperSettings {
  readonly shelf: Shelf;
  readonly now: () => number;
  /** Calls back later; returns how to call it off. */
  readonly later: (call: () => void) => () => void;
  readonly channel: Channel | null;
  readonly changed: (state: KeeperState) => void;
}

export class Keeper {
  readonly id: string;
  readonly #settings: KeeperSettings;
  #revision: number;
  #state: KeeperState;
  #waiting: KeptText | null = null;
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

  /** Keeps this soon; a later one takes its place. */
  keepSoon(notebook: KeptText): void {
    this.#waiting = notebook;
    if (this.#state.kind === 'behind' || this.#closed) return;
    this.#say({ kind: 'keeping' });
    this.#callOff?.();
    this.#callOff = this.#settings.later(() => void this.flush());
  }

  /** Keeps at once what still waits. Resolves when it is written, or when it is known why not. */
  flush(): Promise<void> {
    this.#callOff?.();
    this.#callOff = null;
    this.#working = this.#working.then(() => this.#write());
    return this.#working;
  }

  /** No more is kept through this one. */
  async close(): Promise<void> {
    await this.flush();
    this.#closed = true;
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
        this.#say({ kind: 'behind' });
        return;
      }
      this.#revision = done.revision;
      channel?.postMessage({ id: this.id, revision: done.revision });
      if (this.#waiting !== notebook) return;
      this.#waiting = null;
      this.#say({ kind: 'kept', at });
    } catch (cause) {
      const full = cause instanceof Error && cause.name === 'QuotaExceededError';
      this.#say({ kind: 'not-kept', why: full ? 'full' : 'refused' });
    }
  }

  #hear(data: unknown): void {
    if (!isTold(data) || data.id !== this.id || data.revision <= this.#revision) return;
    this.#callOff?.();
    this.#callOff = null;
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
