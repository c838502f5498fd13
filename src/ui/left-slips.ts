// What a page left that could not keep it: here again, or beside this as a copy where others kept more since.
import type { Slip } from '../store/journal.ts';
import type { Keeper } from '../store/keeper.ts';
import { copied } from './copied.ts';
import type { DeskSettings } from './desk-settings.ts';
import type { Session } from './session.ts';

/** The notebook for which they are looked for. */
interface Finding {
  readonly keeper: Keeper;
  /** Whether it still is the one on the desk. */
  readonly isOpen: () => boolean;
  /** Shows what was found, where it is not what stands here, and keeps it. */
  readonly again: (found: Slip['notebook'] | null) => void;
}

export class LeftSlips {
  readonly #settings: DeskSettings;
  readonly #session: Session;
  /** Slips that are in the way once what they hold is kept. */
  #slips: string[] = [];

  constructor(settings: DeskSettings, session: Session) {
    this.#settings = settings;
    this.#session = session;
  }

  async find({ keeper, isOpen, again }: Finding): Promise<void> {
    const { journal } = this.#settings;
    for (const slip of journal.left(keeper.id)) {
      const { text } = slip.notebook;
      const here = text === this.#session.door.notebook.text;
      if (here && keeper.revision > slip.revision) journal.drop(slip.key);
      else if (!keeper.waits && slip.revision === keeper.revision) {
        this.#slips.push(slip.key);
        again(here ? null : slip.notebook);
        const words =
          'What was changed here last could not be kept before the page was left. It is here again.';
        this.#session.tell({ text: words, lasts: 'stays' });
      } else await this.#besides(slip);
      if (!isOpen()) return;
    }
  }

  /** What was found is kept in its place now. */
  kept(): void {
    for (const key of this.#slips.splice(0)) this.#settings.journal.drop(key);
  }

  async #besides({ key, notebook }: Slip): Promise<void> {
    const { estimate, shelf, journal, newId, now } = this.#settings;
    const door = estimate(notebook.text);
    door.replaceText(copied(door));
    const { text, title } = door.notebook;
    const copy = { id: newId(), title, text, identities: null };
    const kept = await shelf.keep(copy, 0, now()).catch(() => null);
    if (kept?.kind !== 'kept') return;
    journal.drop(key);
    const words = `Changes that another page could not keep were found. They are kept as "${title}" under Notebooks.`;
    this.#session.tell({ text: words, lasts: 'stays' });
  }
}
