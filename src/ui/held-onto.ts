// Whether the browser holds on to what is kept, and what is in it and in no file.
import { type Standing, type Unsaved, sayUnsaved } from '../store/ground.ts';
import type { DeskSettings } from './desk-settings.ts';

export class HeldOnto {
  readonly #settings: Pick<DeskSettings, 'standing' | 'shelf' | 'now'>;
  readonly #said: () => void;
  /** Null: the browser was not asked yet. */
  #standing: Standing | null = null;
  #asked = false;
  /** The revision that is in a file, too. */
  #saved = 0;

  constructor(settings: Pick<DeskSettings, 'standing' | 'shelf' | 'now'>, said: () => void) {
    this.#settings = settings;
    this.#said = said;
  }

  get standing(): Standing | null {
    return this.#standing;
  }

  unsaved(revision: number): Unsaved | null {
    return sayUnsaved(revision - this.#saved, this.#standing);
  }

  async look(): Promise<void> {
    this.#standing = await this.#settings.standing('look');
    this.#said();
  }

  /** Asks once for a page; a browser may ask the person. */
  async ask(): Promise<void> {
    if (this.#asked) return;
    this.#asked = true;
    this.#standing = await this.#settings.standing('ask');
    this.#said();
  }

  /** Another notebook is open, and this revision of it is in a file. */
  open(saved: number): void {
    this.#saved = saved;
  }

  async savedAsFile(id: string, revision: number): Promise<void> {
    const { shelf, now } = this.#settings;
    this.#saved = revision;
    this.#said();
    await shelf.keepSaved(id, revision, now()).catch(() => undefined);
  }
}
