// What is laid beside the open notebook, as it is kept on this machine: read when a notebook is opened, written at once,
// and where another page laid something there in between the same is done to that.
import type { Alongside } from '../store/alongside-shapes.ts';
import type { Shelf } from '../store/shelf.ts';

/** From what lies there to what lies there then. */
export type Act = (beside: Alongside) => Alongside;

interface OpenDesk {
  readonly openId: string;
  keepAnyway(): Promise<void>;
}

/** What lies beside one notebook, and what was done to it that is not kept yet. */
interface Laid {
  readonly id: string;
  beside: Alongside;
  /** The last that is known to be kept; 0: none. */
  revision: number;
  readonly waiting: Act[];
}

const NOTHING: Alongside = { watched: [], varied: [], alternatives: [] };

const NOT_READ =
  'What was watched here before can’t be read by this version. It is left as it is; what is watched now stays on this page only.';

/** So often it begins again when another page was quicker. */
const MOST_TRIES = 8;

export class LaidAlongside {
  readonly #desk: OpenDesk;
  readonly #shelf: Shelf;
  /** Called when something else lies there than before, or it is known how it is kept. */
  readonly #changed: () => void;
  #laid: Laid = { id: '', beside: NOTHING, revision: 0, waiting: [] };
  #trouble: string | null = null;
  /** Reading and writing, one after the other. */
  #work: Promise<void> = Promise.resolve();

  constructor(desk: OpenDesk, shelf: Shelf, changed: () => void) {
    this.#desk = desk;
    this.#shelf = shelf;
    this.#changed = changed;
  }

  /** Of the notebook beside which it lies; empty before one was open. */
  get id(): string {
    return this.#laid.id;
  }

  get beside(): Alongside {
    return this.#laid.beside;
  }

  /** Why it is not kept, where it is not. */
  get trouble(): string | null {
    return this.#trouble;
  }

  /** Another notebook was opened. */
  open(): void {
    const laid = this.#begin();
    this.#trouble = null;
    this.#changed();
    this.#work = this.#work.then(() => this.#read(laid));
  }

  /** The same notebook goes on under another id. */
  follow(): void {
    const { beside } = this.#laid;
    this.#begin();
    if (beside !== NOTHING) this.lay(() => beside);
  }

  lay(act: Act): void {
    const laid = this.#laid;
    laid.beside = act(laid.beside);
    laid.waiting.push(act);
    this.#work = this.#work.then(() => this.#keep(laid));
  }

  /** Resolves when all that was laid so far is kept, or it is known why not. */
  settled(): Promise<void> {
    return this.#work;
  }

  #begin(): Laid {
    this.#laid = { id: this.#desk.openId, beside: NOTHING, revision: 0, waiting: [] };
    return this.#laid;
  }

  async #read(laid: Laid): Promise<void> {
    const found = await this.#shelf.alongside(laid.id).catch(() => null);
    // What was laid meanwhile is put to what is found when that is kept.
    if (laid !== this.#laid || laid.waiting.length > 0) return;
    if (found?.kind === 'taken') [laid.beside, laid.revision] = [found.value, found.value.revision];
    if (found?.kind === 'newer' || found?.kind === 'unreadable') this.#trouble = NOT_READ;
    this.#changed();
  }

  async #keep(laid: Laid): Promise<void> {
    const acts = [...laid.waiting];
    if (acts.length === 0 || laid.id === '') return;
    try {
      // Beside a notebook that is not kept it would be found by nobody.
      if (laid.id === this.#desk.openId) await this.#desk.keepAnyway();
      for (let tries = 0; tries < MOST_TRIES; tries++) {
        const found = await this.#shelf.alongside(laid.id);
        if (found.kind === 'newer' || found.kind === 'unreadable') {
          this.#say(laid, NOT_READ);
          return;
        }
        const [there, revision] =
          found.kind === 'taken' ? [found.value, found.value.revision] : [NOTHING, 0];
        const fresh = revision === laid.revision ? laid.beside : after(there, acts);
        const done = await this.#shelf.keepAlongside(laid.id, fresh, revision);
        if (done.kind !== 'kept') continue;
        laid.waiting.splice(0, acts.length);
        if (revision !== laid.revision) laid.beside = after(fresh, laid.waiting);
        laid.revision = done.revision;
        this.#say(laid, null);
        return;
      }
      this.#say(laid, 'Not kept: other pages write here all the time. It stands on this page.');
    } catch {
      const why = 'Not kept: this browser keeps nothing here just now. It stands on this page.';
      this.#say(laid, why);
    }
  }

  #say(laid: Laid, trouble: string | null): void {
    if (laid !== this.#laid) return;
    this.#trouble = trouble;
    this.#changed();
  }
}

function after(beside: Alongside, acts: readonly Act[]): Alongside {
  return acts.reduce((so, act) => act(so), beside);
}
