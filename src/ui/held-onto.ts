// Whether the browser holds on to what is kept, and what is in it and in no file.
import { type Standing, type Unsaved, sayUnsaved } from '../store/ground.ts';
import { NO_REVISIONS, type Revisions } from '../store/shelf.ts';
import type { DeskSettings } from './desk-settings.ts';

export class HeldOnto {
  readonly #settings: Pick<DeskSettings, 'standing' | 'shelf' | 'now'>;
  readonly #said: () => void;
  /** Null: the browser was not asked yet. */
  #standing: Standing | null = null;
  #asked = false;
  /** What is in a file, too. */
  #saved = NO_REVISIONS;
  /** How often something was added beside the notebook; 0 until that is read. */
  #beside = 0;

  constructor(settings: Pick<DeskSettings, 'standing' | 'shelf' | 'now'>, said: () => void) {
    this.#settings = settings;
    this.#said = said;
  }

  get standing(): Standing | null {
    return this.#standing;
  }

  unsaved(revision: number): Unsaved | null {
    const inNone = {
      notebook: Math.max(0, revision - this.#saved.revision),
      beside: Math.max(0, this.#beside - this.#saved.beside),
    };
    return sayUnsaved(inNone, this.#standing);
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

  /** Another notebook is open, and so much of it is in a file. */
  open(saved: Revisions): void {
    this.#saved = saved;
    this.#beside = 0;
  }

  besideNow(revision: number): void {
    if (revision === this.#beside) return;
    this.#beside = revision;
    this.#said();
  }

  /** A file of the text holds nothing of what stands beside it. */
  async savedAsFile(id: string, revision: number, file: 'text' | 'whole job'): Promise<void> {
    const { shelf, now } = this.#settings;
    const beside = file === 'text' ? this.#saved.beside : this.#beside;
    this.#saved = { revision, beside };
    this.#said();
    await shelf.keepSaved(id, this.#saved, now()).catch(() => undefined);
  }
}
