// Which of several pages on one notebook writes in it; the others follow. A lock tells, where the browser has locks: it is
// free again when its page is gone, however that went. Elsewhere the pages ask each other. Either only keeps people from
// getting into each other's way: what keeps two pages from writing over one another is the revision that each keeping compares.
import type { Channel } from './keeper.ts';

/** As far as the browser's locks are needed here. */
export type Locks = Pick<LockManager, 'request'>;

export type Role = 'writes' | 'follows';

export interface TurnSettings {
  readonly locks: Locks | undefined;
  readonly channel: Channel | null;
  /** Tells this page from the others. */
  readonly page: string;
  /** Calls back when an answer is no longer waited for. */
  readonly patience: (call: () => void) => () => void;
  readonly changed: (role: Role) => unknown;
  /** Another page wants to write here: stop, and keep all that waits. False where it can't be kept. */
  readonly handOver: () => Promise<boolean>;
}

/** What pages say to each other about it. */
interface Said {
  readonly id: string;
  readonly turn: 'who' | 'mine' | 'asks' | 'handed' | 'refused';
  readonly from: string;
}

type Answer = 'handed' | 'refused' | 'nobody';

export class Turn {
  readonly #id: string;
  readonly #settings: TurnSettings;
  #role: Role = 'writes';
  #closed = false;
  #letGo: () => void = () => undefined;
  #queue: AbortController | null = null;
  #answered: ((answer: Answer) => void) | null = null;

  constructor(id: string, settings: TurnSettings) {
    this.#id = id;
    this.#settings = settings;
    settings.channel?.addEventListener('message', ({ data }) => this.#hear(data));
  }

  get role(): Role {
    return this.#role;
  }

  /** Takes the notebook if nobody has it. Until an answer comes a page writes: most are alone. */
  async begin(): Promise<void> {
    const { locks } = this.#settings;
    if (!locks) {
      this.#say('who');
      return;
    }
    if (await this.#take({ ifAvailable: true })) return;
    this.#become('follows');
    this.#wait();
  }

  /** From the page that writes to this one, with all that it had; from a page that doesn't answer, with all that it kept. */
  async takeOver(): Promise<'taken' | 'refused'> {
    if (this.#role === 'writes') return 'taken';
    const answer = await this.#ask();
    if (answer === 'refused') return 'refused';
    this.#queue?.abort();
    this.#queue = null;
    if (this.#settings.locks) await this.#take({ steal: true });
    this.#become('writes');
    return 'taken';
  }

  /** Where pages have no locks, one that hears another writing and has nothing of its own follows from then on. */
  another(): void {
    if (!this.#settings.locks) this.#become('follows');
  }

  close(): void {
    this.#closed = true;
    this.#queue?.abort();
    this.#letGo();
    this.#answered?.('nobody');
  }

  #ask(): Promise<Answer> {
    const { channel, patience } = this.#settings;
    if (!channel) return Promise.resolve('nobody');
    return new Promise((resolve) => {
      const stop = patience(() => this.#answered?.('nobody'));
      this.#answered = (answer) => {
        this.#answered = null;
        stop();
        resolve(answer);
      };
      this.#say('asks');
    });
  }

  /** Resolves as soon as it is known whether this page has the lock, which it then holds until it lets go. */
  #take(how: { readonly ifAvailable: true } | { readonly steal: true }): Promise<boolean> {
    return new Promise((resolve) => {
      this.#request(how, resolve).catch(() => resolve(true));
    });
  }

  /** Takes its turn when the page that writes is gone. */
  #wait(): void {
    if (this.#closed) return;
    const queue = new AbortController();
    this.#queue = queue;
    const come = (): void => {
      this.#queue = null;
      this.#become('writes');
    };
    this.#request({ signal: queue.signal }, come).catch(() => undefined);
  }

  async #request(how: LockOptions, told: (has: boolean) => void): Promise<void> {
    let mine = false;
    let stolen = false;
    const { locks } = this.#settings;
    const until = (lock: Lock | null): Promise<void> | undefined => {
      mine = lock !== null;
      told(mine);
      return mine && !this.#closed ? new Promise((done) => (this.#letGo = done)) : undefined;
    };
    try {
      await locks?.request(`notebook/${this.#id}`, how, until);
    } catch (cause) {
      if (!mine) throw cause;
      stolen = true;
    }
    if (!stolen || this.#closed) return;
    this.#become('follows');
    this.#wait();
  }

  #hear(data: unknown): void {
    if (this.#closed || !isSaid(data) || data.id !== this.#id) return;
    if (data.from === this.#settings.page) return;
    switch (data.turn) {
      case 'who':
        if (this.#role === 'writes' && !this.#settings.locks) this.#say('mine');
        break;
      case 'mine':
        this.another();
        break;
      case 'asks':
        if (this.#role === 'writes') void this.#handOver();
        break;
      case 'handed':
      case 'refused':
        this.#answered?.(data.turn);
        break;
    }
  }

  async #handOver(): Promise<void> {
    this.#become('follows');
    const kept = await this.#settings.handOver();
    if (!kept) {
      this.#become('writes');
      this.#say('refused');
      return;
    }
    this.#letGo();
    this.#letGo = () => undefined;
    this.#say('handed');
    // Behind the one that asked, who doesn't wait for a turn.
    if (this.#settings.locks) this.#wait();
  }

  #say(turn: Said['turn']): void {
    const said: Said = { id: this.#id, turn, from: this.#settings.page };
    if (!this.#closed) this.#settings.channel?.postMessage(said);
  }

  #become(role: Role): void {
    if (this.#closed || role === this.#role) return;
    this.#role = role;
    this.#settings.changed(role);
  }
}

function isSaid(data: unknown): data is Said {
  return (
    typeof data === 'object' &&
    data !== null &&
    'turn' in data &&
    typeof data.turn === 'string' &&
    'id' in data &&
    typeof data.id === 'string' &&
    'from' in data &&
    typeof data.from === 'string'
  );
}
