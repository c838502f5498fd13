// What draws pictures is fetched with the first of them.

/** What draws pictures, once it was asked for. */
class Drawing {
  #here = false;
  #fetched: Promise<void> | null = null;

  get here(): boolean {
    return this.#here;
  }

  fetched(): Promise<void> {
    this.#fetched ??= import('./story-picture.ts').then(() => {
      this.#here = true;
    });
    return this.#fetched;
  }
}

export const drawing = new Drawing();
