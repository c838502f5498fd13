// Whose turn it is to write in the open notebook: this page's or that of another, which this one follows and can take over from.
import { type Role, Turn, type TurnSettings } from '../store/turn.ts';
import type { Session } from './session.ts';

interface Desk {
  readonly session: Session;
  /** Shows what another page kept, where nothing waits here. */
  catchUp(): Promise<void>;
}

export class WhoseTurn {
  readonly #desk: Desk;
  readonly #said: () => void;
  #turn: Turn | null = null;
  #turning: Promise<void> = Promise.resolve();

  constructor(desk: Desk, said: () => void) {
    this.#desk = desk;
    this.#said = said;
  }

  get role(): Role {
    return this.#turn?.role ?? 'writes';
  }

  /** From now on it is about this notebook; it has to be begun. */
  of(id: string, settings: Omit<TurnSettings, 'changed'>): Turn {
    const changed = (role: Role): void => void (this.#turning = this.#turned(role));
    const turn = new Turn(id, { ...settings, changed });
    this.#turn?.close();
    this.#turn = turn;
    return turn;
  }

  /** Whether this page writes, and in the notebook that this turn is about. */
  isOf(turn: Turn): boolean {
    return turn === this.#turn && turn.role === 'writes';
  }

  /** Writes here from now on; the page that does so far follows. */
  async takeOver(): Promise<void> {
    const taken = await this.#turn?.takeOver();
    await this.#turning;
    if (taken !== 'refused') return;
    const text =
      'The other tab can’t keep what was changed there and does not let go of it: look there first.';
    this.#desk.session.tell({ text, lasts: 'stays' });
  }

  async #turned(role: Role): Promise<void> {
    const { session } = this.#desk;
    const turn = this.#turn;
    if (role === 'follows') {
      const act = { say: 'Write here instead', go: () => void this.takeOver() };
      const text = 'Nothing was changed: this notebook is being written in another tab.';
      session.hold({ text, lasts: 'plain', act });
    } else {
      await this.#desk.catchUp();
      if (!turn || !this.isOf(turn)) return;
      session.hold(null);
      if (session.notice?.act?.say === 'Write here instead') session.tell(null);
    }
    this.#said();
  }
}
